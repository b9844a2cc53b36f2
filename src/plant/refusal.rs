//! Why an installation is refused: the place and the reason with its numbers, never a sentence.

use crate::Error;
use crate::control::ControlError;
use crate::gas::GasTextError;
use crate::plant::description::Breach;
use crate::quantity::{Length, NetHeatRate, Temperature, Volume};

/// Where an input stands: a section, an entry of its list, a key, an entry of the key's own list.
///
/// Lists count from 0, and the second index belongs to the first part of the key: `layer[1].conductivity[0].value` is
/// section `layer`, at `[Some(1), Some(0)]`, key `conductivity.value`. A key before the first section has an empty
/// section; a whole section or entry has an empty key.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Place {
    /// The section.
    pub section: &'static str,
    /// Entry of the section's list, then of the key's.
    pub at: [Option<u8>; 2],
    /// The key.
    pub key: &'static str,
}

impl Place {
    /// A key of a section.
    #[must_use]
    pub const fn key(section: &'static str, key: &'static str) -> Self {
        Self { section, at: [None; 2], key }
    }

    /// A whole section.
    #[must_use]
    pub const fn section(section: &'static str) -> Self {
        Self::key(section, "")
    }

    /// A key of an entry of a list, counted from 0.
    #[must_use]
    pub const fn entry(section: &'static str, index: usize, key: &'static str) -> Self {
        // No list has more entries than a byte counts.
        Self { section, at: [Some(index as u8), None], key }
    }

    /// The refusal of what stands here by a function of the core.
    #[must_use]
    pub const fn refused(self, error: Error) -> Refusal {
        self.because(Reason::Refused(error))
    }

    /// The same, to be handed on.
    pub fn refusing(self) -> impl Fn(Error) -> Refusal {
        move |error| self.refused(error)
    }

    /// The refusal of what stands here.
    #[must_use]
    pub const fn because(self, reason: Reason) -> Refusal {
        Refusal { place: self, reason }
    }
}

/// Why it is refused.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum Reason {
    /// A function of the core refuses it.
    Refused(Error),
    /// It breaks a rule of the table of inputs.
    Rule(Breach),
    /// Text that names no gas.
    Gas(GasTextError),
    /// Of no list of drills.
    NoSuchDrill,
    /// The jets do not share out evenly over the heads.
    JetsPerHead {
        /// Jets of the burner.
        jets: u32,
        /// Its heads.
        heads: u32,
    },
    /// The heads do not share out evenly over the chambers.
    HeadsPerChamber {
        /// Heads of the burner.
        heads: u32,
        /// Its chambers.
        chambers: u32,
    },
    /// The jet's measurement is of another bore.
    MeasuredOtherBore {
        /// The bore that was measured.
        measured: Length,
        /// The bore of this jet.
        bore: Length,
    },
    /// A layer is hotter than it lasts.
    LayerTooHot {
        /// What it lasts at.
        limit: Temperature,
        /// Its hot face.
        face: Temperature,
        /// The chamber.
        chamber: Temperature,
    },
    /// Deeper than the wall is thick.
    OutsideWall {
        /// Thickness of the wall.
        thickness: Length,
    },
    /// Not between the air and the chamber.
    WorkTemperature {
        /// The air.
        air: Temperature,
        /// The chamber.
        chamber: Temperature,
    },
    /// Larger than the chamber.
    WorkTooLarge {
        /// The work, dense.
        work: Volume,
        /// The chamber.
        chamber: Volume,
    },
    /// Seen to light where the burner's mixture does not burn cold.
    SeenOutsideLimits {
        /// Its air ratio there.
        air_ratio: f64,
    },
    /// The question needs what the section describes.
    Needed,
    /// The question needs blower, damper and head.
    NeedsAirSide,
    /// The question needs a damper.
    NeedsDamper,
    /// Blower and damper give the air ratio at no fire.
    AirRatioAtNoFire,
    /// Blower and damper give the air ratio at other fires only.
    FireOutOfReach {
        /// The smallest.
        lowest: NetHeatRate,
        /// The largest.
        highest: NetHeatRate,
    },
    /// The largest fire is not larger than the smallest.
    FiresInverted,
    /// No table of setpoints.
    NoTable {
        /// From this fire.
        lowest: NetHeatRate,
        /// To this.
        highest: NetHeatRate,
        /// Why.
        error: ControlError,
    },
    /// Straight lines between the rows of a table turn the air ratio too much.
    TableTooCoarse {
        /// From this fire.
        lowest: NetHeatRate,
        /// To this.
        highest: NetHeatRate,
        /// How much, as a share.
        off: f64,
        /// How much is accepted.
        accepted: f64,
    },
}

/// What is refused, and why.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Refusal {
    /// Where it stands.
    pub place: Place,
    /// Why.
    pub reason: Reason,
}
