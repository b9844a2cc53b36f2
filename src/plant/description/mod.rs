//! Every input, stated once: what it is called, what it holds, its range, what holds without it, and what it is.
//!
//! A [`Description`] is what was said of an installation, by a file, by options, by a mapping or by a program; half
//! known by nature, so every field may be missing. Readers, options, documentation, schema and the blank file walk
//! [`Description::SECTIONS`], and what single questions ask besides, [`Description::QUESTIONS`].
//!
#![doc = include_str!("inputs.md")]

// A row reads into and out of the description, so these modules and this one name each other: the one circle here.
mod air_side;
pub mod asked;
mod burner;
mod burner_entries;
mod checks;
pub mod choices;
mod furnace;
mod furnace_entries;
mod macros;
pub mod row;
mod rules;
mod supply;
pub mod value;
#[cfg(test)]
mod tests;

use heapless::Vec;

pub use air_side::{BlowerGiven, BlowerPointGiven, ChamberGiven, DamperGiven, DuctGiven, HeadGiven};
pub use asked::Asked;
pub use burner::{Fire, GasSupplied, JetHole, Lighting, Setting, Site, Title, Uncertainty};
pub use furnace::{
    CastableGiven, ConductivityGiven, LayerGiven, PanelGiven, RoomGiven, SpecificHeatGiven, SteelGiven, WorkGiven,
};
pub use row::{At, Breach, Example, Otherwise, Presence, Row, Rule, Section};
pub use supply::{CylinderGiven, DroopPointGiven, LineGiven, RegulatorGiven};

use crate::air::DUCT_CAP;
use crate::furnace::{LAYER_CAP, PANEL_CAP};
use crate::plant::entries::MOST_SETTINGS;

/// What was said of an installation.
///
/// # Examples
///
/// ```
/// use jetwright::plant::description::{Description, JetHole};
/// use jetwright::quantity::Length;
/// let bore = Some(Length::from_millimeters(1.8));
/// let description = Description { jet: Some(JetHole { bore, ..JetHole::default() }), ..Description::default() };
/// let jet = Description::section("jet").unwrap();
/// assert!((jet.row("bore").unwrap().seen)(&description, [0, 0]).unwrap().is_said());
/// ```
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Description {
    /// Name and note.
    pub title: Title,
    /// The site.
    pub site: Option<Site>,
    /// The gas.
    pub gas: Option<GasSupplied>,
    /// The cylinder.
    pub cylinder: Option<CylinderGiven>,
    /// The regulator.
    pub regulator: Option<RegulatorGiven>,
    /// The line from the gauge to the jet.
    pub line: Option<LineGiven>,
    /// The jet.
    pub jet: Option<JetHole>,
    /// The blower.
    pub blower: Option<BlowerGiven>,
    /// The ducts.
    pub duct: Vec<DuctGiven, DUCT_CAP>,
    /// The damper.
    pub damper: Option<DamperGiven>,
    /// The head.
    pub head: Option<HeadGiven>,
    /// The chamber.
    pub chamber: Option<ChamberGiven>,
    /// The fire.
    pub fire: Fire,
    /// What was seen of its lighting.
    pub lighting: Option<Lighting>,
    /// The settings.
    pub setting: Vec<Setting, MOST_SETTINGS>,
    /// How well things are known.
    pub uncertainty: Uncertainty,
    /// Layers of the wall.
    pub layer: Vec<LayerGiven, LAYER_CAP>,
    /// Panels of the chamber.
    pub panel: Vec<PanelGiven, PANEL_CAP>,
    /// The castable.
    pub castable: Option<CastableGiven>,
    /// Steel inside the wall.
    pub steel: Option<SteelGiven>,
    /// What is heated.
    pub work: Option<WorkGiven>,
    /// The room's air.
    pub room: Option<RoomGiven>,
    /// What a single question says besides; no part of an installation.
    pub asked: Asked,
}

impl Description {
    /// Every section in the order of the blank file, each before the lists that its keys hold.
    pub const SECTIONS: &'static [Section] = &[
        Title::SECTION,
        Site::SECTION,
        GasSupplied::SECTION,
        CylinderGiven::SECTION,
        RegulatorGiven::SECTION,
        DroopPointGiven::SECTION,
        LineGiven::SECTION,
        JetHole::SECTION,
        BlowerGiven::SECTION,
        BlowerPointGiven::SECTION,
        DuctGiven::SECTION,
        DamperGiven::SECTION,
        HeadGiven::SECTION,
        ChamberGiven::SECTION,
        Fire::SECTION,
        Lighting::SECTION,
        Setting::SECTION,
        Uncertainty::SECTION,
        LayerGiven::SECTION,
        ConductivityGiven::SECTION,
        SpecificHeatGiven::SECTION,
        PanelGiven::SECTION,
        CastableGiven::SECTION,
        SteelGiven::SECTION,
        WorkGiven::SECTION,
        RoomGiven::SECTION,
    ];

    /// What single questions say besides, as options of a command, and the file of a measured jet. No burner file has
    /// these sections.
    pub const QUESTIONS: &'static [Section] = asked::QUESTIONS;

    /// The section of a name.
    #[must_use]
    pub fn section(name: &str) -> Option<&'static Section> {
        Self::list(name, "")
    }

    /// The list that a key of a section holds.
    #[must_use]
    pub fn list(name: &str, list: &str) -> Option<&'static Section> {
        Self::SECTIONS.iter().find(|section| section.name == name && section.list == list)
    }
}
