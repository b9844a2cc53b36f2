//! Everything an installation is described by: typed, complete, in range, without heap.

mod air_side;
mod furnace;
mod jet;
mod setting;
mod site;
mod supply;
mod uncertainty;

use heapless::Vec;

use crate::air::DUCT_CAP;

pub use air_side::{
    BlowerCurve, BlowerEntry, ChamberEntry, DAMPER_WORDS, DamperEntry, DuctEntry, HeadEntry, PortsEntry,
    UNKNOWN_DAMPER, UNKNOWN_DAMPER_SPREAD,
};
pub use furnace::{FurnaceEntry, RoomEntry, WorkEntry};
pub use jet::{EdgeWord, JetEntry, JetSize, MeasuredEntry, usual_bore_length};
pub use setting::{AirAim, GasAim, LightingEntry, SettingEntry, Use};
pub use site::{GasEntry, SiteEntry, SitePressure};
pub use supply::{CylinderEntry, LineEntry, RegulatorEntry, SupplyEntry};
pub use uncertainty::UncertaintyEntry;

/// Most settings of a burner.
pub const MOST_SETTINGS: usize = 12;
/// Longest name, in characters.
pub const NAME_CHARACTERS: usize = 60;
/// Longest note and longest purpose, in characters.
pub const NOTE_CHARACTERS: usize = 400;

/// A name of up to [`NAME_CHARACTERS`], in UTF-8.
pub type Name = heapless::String<{ 4 * NAME_CHARACTERS }>;
/// A note of up to [`NOTE_CHARACTERS`]; fewer where many of them take more than a byte.
pub type Note = heapless::String<{ 2 * NOTE_CHARACTERS }>;

/// As much of a text as fits.
///
/// # Examples
///
/// ```
/// use jetwright::plant::entries::{Name, shortened};
/// assert_eq!(shortened::<240>("school bell"), "school bell");
/// assert_eq!(shortened::<6>("school bell"), "school");
/// ```
#[must_use]
pub fn shortened<const N: usize>(text: &str) -> heapless::String<N> {
    let mut short = heapless::String::new();
    for character in text.chars() {
        if short.push(character).is_err() {
            break;
        }
    }
    short
}

/// One burner, typed and in range; gas and drill are names still to be looked up.
#[derive(Clone, Debug, PartialEq)]
pub struct Entries {
    /// Name of the burner.
    pub name: Name,
    /// A remark for the sheet.
    pub note: Option<Note>,
    /// The site and its weather.
    pub site: SiteEntry,
    /// The gas.
    pub gas: GasEntry,
    /// The jet.
    pub jet: JetEntry,
    /// The blower, if the air side is described.
    pub blower: Option<BlowerEntry>,
    /// Ducts between blower and head, in order.
    pub ducts: Vec<DuctEntry, DUCT_CAP>,
    /// The damper.
    pub damper: Option<DamperEntry>,
    /// The head, if described.
    pub head: Option<HeadEntry>,
    /// The chamber, if described.
    pub chamber: Option<ChamberEntry>,
    /// Air ratio aimed at.
    pub air_ratio: f64,
    /// The settings, 1 to 12 of them, each with a name of its own.
    pub settings: Vec<SettingEntry, MOST_SETTINGS>,
    /// What was seen of its lighting, if described.
    pub lighting: Option<LightingEntry>,
    /// What is around the fire and in it, if described.
    pub furnace: Option<FurnaceEntry>,
    /// How well the inputs are known, as far as it says.
    pub uncertainty: UncertaintyEntry,
    /// What lies before the jet.
    pub supply: SupplyEntry,
}
