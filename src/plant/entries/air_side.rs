//! The air side: blower, ducts, damper, head and chamber.

use heapless::Vec;

use crate::air::{BlowerPoint, DamperKind, POINT_CAP};
use crate::quantity::{ActualVolumeFlow, Area, Density, Length, PressureDifference, RotationalSpeed, Temperature};

/// What is known of a blower's curve.
// There is no heap to put the larger one in.
#[allow(clippy::large_enum_variant)]
#[derive(Clone, Debug, PartialEq)]
pub enum BlowerCurve {
    /// 2 to 16 points, flow rising.
    Points(Vec<BlowerPoint, POINT_CAP>),
    /// Its two ends.
    Ends {
        /// Static pressure with the outlet shut.
        shut_off: PressureDifference,
        /// Flow with nothing in the way.
        free_delivery: ActualVolumeFlow,
    },
}

/// The blower.
#[derive(Clone, Debug, PartialEq)]
pub struct BlowerEntry {
    /// Its curve.
    pub curve: BlowerCurve,
    /// Spread of its pressure where a nameplate is all that is known of it, as a share (k = 2).
    pub nameplate_spread: Option<f64>,
    /// Wheel speed of the curve.
    pub speed: Option<RotationalSpeed>,
    /// Wheel speed now over that of the curve; 1 unless `now_speed` was given.
    pub speed_ratio: f64,
    /// Air density of the curve, 1.2 kg/m3 unless given.
    pub density: Density,
    /// Efficiency, shaft to air, where the points have no power.
    pub efficiency: Option<f64>,
}

/// A stretch of duct.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DuctEntry {
    /// Inside diameter.
    pub diameter: Length,
    /// Length.
    pub length: Length,
    /// Roughness of its wall.
    pub roughness: Length,
    /// Sum of the loss coefficients of its fittings.
    pub fitting_loss: f64,
}

/// Every kind of damper by its word.
pub const DAMPER_WORDS: &[(&str, DamperKind)] = &[
    ("blast gate", DamperKind::BlastGate),
    ("butterfly", DamperKind::Butterfly),
    ("ball valve", DamperKind::BallValve),
    ("gate valve", DamperKind::GateValve),
];

/// The kind whose loss lies between those of the others at most openings: at half open 2.1 of a blast gate, 5.2 of a gate
/// valve, 10.6 of a ball valve, 19 of a disc.
pub const UNKNOWN_DAMPER: DamperKind = DamperKind::GateValve;
/// Spread of the logarithm of its loss that spans the others (k = 2): three to four times less or more.
pub const UNKNOWN_DAMPER_SPREAD: f64 = 1.3;

/// The damper.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DamperEntry {
    /// Its kind; where nobody knows it, the one that lies between the others.
    pub kind: DamperKind,
    /// Whether that is known.
    pub kind_is_known: bool,
    /// Inside diameter of the duct it stands in.
    pub diameter: Length,
    /// Gap round a disc that is shut, as a share of the duct; none where nobody measured it.
    pub gap: Option<f64>,
    /// Its loss over that of its table, from one setting seen; 1 unless given.
    pub correction: f64,
}

/// The holes of a head.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum PortsEntry {
    /// Round ports.
    Round {
        /// How many a head has.
        count: u32,
        /// Diameter of one.
        diameter: Length,
        /// Share of the head's face that is open.
        open_fraction: f64,
    },
    /// One slot.
    Slot {
        /// Its gap.
        width: Length,
        /// Its length along the head.
        length: Length,
    },
}

/// The burner head, or several equal ones.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HeadEntry {
    /// The holes of one head.
    pub ports: PortsEntry,
    /// Length of the holes through the head's wall.
    pub port_length: Length,
    /// How many heads hang on the blower.
    pub count: u32,
    /// Temperature of the mixture in the ports; that of the air unless given.
    pub mixture_temperature: Temperature,
    /// Inside diameter of the mixing tube, if there is one.
    pub mixing_tube_diameter: Option<Length>,
}

/// The chamber.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ChamberEntry {
    /// Opening the gases leave by.
    pub exhaust_opening: Area,
    /// Loss coefficient of that opening.
    pub exhaust_loss: f64,
    /// Temperature inside when it is at work.
    pub temperature: Temperature,
}
