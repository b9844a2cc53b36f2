//! What a user enters about a burner, typed and in range, before any room computes with it.
//!
//! The burner file and the command's options fill the same types, so the rules of what goes together
//! stand here once.

use std::prelude::rust_2024::*;

use crate::air::{BlowerPoint, DamperKind};
use crate::file::measured::MeasuredEntry;
use crate::orifice::{BoreShape, Edge};
use crate::quantity::{
    AbsolutePressure, ActualVolumeFlow, Angle, Area, Density, Duration, GaugePressure, HeatRate, Length,
    PressureDifference, PricePerMass, RotationalSpeed, Temperature,
};

/// Inputs that do not go together.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Refusal {
    /// The key that is too many or missing.
    pub key: &'static str,
    /// What is accepted instead.
    pub accepted: &'static str,
}

fn refuse<T>(key: &'static str, accepted: &'static str) -> Result<T, Refusal> {
    Err(Refusal { key, accepted })
}

/// Where the pressure of the air is taken from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum SitePressure {
    /// The standard atmosphere at an altitude.
    Altitude(Length),
    /// A barometer on the site.
    Station(AbsolutePressure),
    /// A forecast, which is reduced to sea level and so needs the altitude.
    Forecast {
        /// The forecast's pressure.
        sea_level: AbsolutePressure,
        /// Height of the site.
        altitude: Length,
    },
}

impl SitePressure {
    /// From what was given of the three.
    ///
    /// # Errors
    ///
    /// [`Refusal`] unless it is an altitude, a station pressure, or a sea-level pressure with an altitude.
    pub fn of(
        altitude: Option<Length>,
        station: Option<AbsolutePressure>,
        sea_level: Option<AbsolutePressure>,
    ) -> Result<Self, Refusal> {
        match (altitude, station, sea_level) {
            (Some(altitude), None, None) => Ok(Self::Altitude(altitude)),
            (None, Some(station), None) => Ok(Self::Station(station)),
            (Some(altitude), None, Some(sea_level)) => Ok(Self::Forecast { sea_level, altitude }),
            (None, None, None) => refuse(
                "altitude",
                "accepted is an altitude, a station pressure, or a sea-level pressure with an altitude",
            ),
            (None, None, Some(_)) => refuse("altitude", "a sea-level pressure needs the altitude beside it"),
            (_, Some(_), _) => refuse(
                "station_pressure",
                "a station pressure stands alone, without an altitude or a sea-level pressure",
            ),
        }
    }
}

/// The site and its weather.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SiteEntry {
    /// Pressure of the air.
    pub pressure: SitePressure,
    /// Temperature of the air.
    pub air_temperature: Temperature,
    /// Relative humidity, 0 to 1; dry unless given.
    pub humidity: f64,
}

/// The gas and its price.
#[derive(Clone, Debug, PartialEq)]
pub struct GasEntry {
    /// A named gas, or mole fractions such as `C3H8=0.95,C2H6=0.05`; not looked up yet.
    pub kind: String,
    /// Temperature before the jet; that of the air unless given.
    pub temperature: Temperature,
    /// Whether it was; if not, and there is a cylinder, throttling decides it.
    pub temperature_is_given: bool,
    /// Price, if known.
    pub price: Option<PricePerMass>,
    /// Sign of the money, `$` unless given.
    pub currency: String,
}

/// How the size of the jet is given.
#[derive(Clone, Debug, PartialEq)]
pub enum JetSize {
    /// A drill, such as `number 50`, `letter A` or `1/16 in`; not looked up yet.
    Drill(String),
    /// A measured bore.
    Bore(Length),
}

impl JetSize {
    /// From what was given of the two.
    ///
    /// # Errors
    ///
    /// [`Refusal`] unless exactly one was.
    pub fn of(drill: Option<String>, bore: Option<Length>) -> Result<Self, Refusal> {
        match (drill, bore) {
            (Some(drill), None) => Ok(Self::Drill(drill)),
            (None, Some(bore)) => Ok(Self::Bore(bore)),
            (Some(_), Some(_)) => refuse("drill", "a drill and a bore exclude each other, accepted is one of the two"),
            (None, None) => refuse("bore", "accepted is a bore or a drill, one of the two"),
        }
    }
}

/// Shape of the mouth of the bore, by its word.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum EdgeWord {
    /// A thin plate with a sharp edge.
    Sharp,
    /// A drilled hole, not broken at the mouth.
    Square,
    /// A hole with a chamfer.
    Chamfered,
    /// A hole with a rounded mouth.
    Rounded,
}

impl EdgeWord {
    /// Every shape by its word.
    pub const WORDS: &'static [(&'static str, Self)] =
        &[("sharp", Self::Sharp), ("square", Self::Square), ("chamfered", Self::Chamfered), ("rounded", Self::Rounded)];
}

/// The mouth of a bore, from its word and the sizes given with it.
///
/// # Errors
///
/// [`Refusal`] when a size is missing or belongs to another shape.
pub fn edge_of(
    word: EdgeWord,
    chamfer_depth: Option<Length>,
    chamfer_angle: Option<Angle>,
    edge_radius: Option<Length>,
) -> Result<Edge, Refusal> {
    if word != EdgeWord::Chamfered && chamfer_depth.is_some() {
        return refuse("chamfer_depth", "a chamfer depth goes with the edge \"chamfered\" only");
    }
    if word != EdgeWord::Chamfered && chamfer_angle.is_some() {
        return refuse("chamfer_angle", "a chamfer angle goes with the edge \"chamfered\" only");
    }
    if word != EdgeWord::Rounded && edge_radius.is_some() {
        return refuse("edge_radius", "an edge radius goes with the edge \"rounded\" only");
    }
    match (word, chamfer_depth, chamfer_angle, edge_radius) {
        (EdgeWord::Sharp, ..) => Ok(Edge::Sharp),
        (EdgeWord::Square, ..) => Ok(Edge::Square),
        (EdgeWord::Chamfered, Some(depth), Some(angle), _) => Ok(Edge::Chamfered { depth, angle }),
        (EdgeWord::Chamfered, None, ..) => refuse("chamfer_depth", "a chamfered edge needs its depth"),
        (EdgeWord::Chamfered, ..) => refuse("chamfer_angle", "a chamfered edge needs its full cone angle"),
        (EdgeWord::Rounded, _, _, Some(radius)) => Ok(Edge::Rounded { radius }),
        (EdgeWord::Rounded, ..) => refuse("edge_radius", "a rounded edge needs its radius"),
    }
}

/// Length of a bore that is not given: nought for a thin plate, else that of a drilled cap (common practice,
/// no source).
#[must_use]
pub fn usual_bore_length(word: EdgeWord) -> Length {
    Length::from_meters(if word == EdgeWord::Sharp { 0.0 } else { 12.0e-3 })
}

/// Roughness of a drilled bore unless given: common practice, no source.
pub const BORE_ROUGHNESS: Length = Length::from_meters(5.0e-6);

/// Roughness of a duct unless given: between steel pipe and spiral duct, common practice, no source.
pub const DUCT_ROUGHNESS: Length = Length::from_meters(1.0e-4);

/// The jet.
#[derive(Clone, Debug, PartialEq)]
pub struct JetEntry {
    /// Its size.
    pub size: JetSize,
    /// Its shape.
    pub shape: BoreShape,
    /// How many equal jets share the gas.
    pub count: u32,
    /// A coefficient measured by the user.
    pub measured_coefficient: Option<f64>,
    /// The gauge pressure it was measured at.
    pub measured_gauge: Option<GaugePressure>,
    /// A weighing or a meter's reading, by the file that holds it.
    pub measured: Option<MeasuredEntry>,
}

/// What is known of a blower's curve.
#[derive(Clone, Debug, PartialEq)]
pub enum BlowerCurve {
    /// 2 to 16 points, flow rising.
    Points(Vec<BlowerPoint>),
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
pub const DAMPER_WORDS: &[(&str, DamperKind)] =
    &[("blast gate", DamperKind::BlastGate), ("butterfly", DamperKind::Butterfly)];

/// The damper.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DamperEntry {
    /// Its kind.
    pub kind: DamperKind,
    /// Inside diameter of the duct it stands in.
    pub diameter: Length,
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
    pub exhaust_area: Area,
    /// Loss coefficient of that opening.
    pub exhaust_loss: f64,
    /// Temperature inside when it is at work.
    pub temperature: Temperature,
}

/// What a setting is set by on the gas side.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum GasAim {
    /// The gauge.
    Gauge(GaugePressure),
    /// The heat wanted.
    Heat(HeatRate),
}

/// What a setting is set by on the air side.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum AirAim {
    /// How far the damper stands open, 0 to 1.
    Damper(f64),
    /// The air ratio wanted.
    AirRatio(f64),
}

/// One setting of the burner.
#[derive(Clone, Debug, PartialEq)]
pub struct SettingEntry {
    /// Its name.
    pub name: String,
    /// Gas side.
    pub gas: GasAim,
    /// Air side; the air ratio of the whole fire unless given.
    pub air: AirAim,
    /// Temperature of the chamber, if not that of the chamber's section.
    pub chamber_temperature: Option<Temperature>,
    /// How long it is used in an evening.
    pub minutes: Option<Duration>,
    /// What it is for.
    pub purpose: Option<String>,
}
