//! The accepted range of every input, as data. Checks, messages and property tests are drawn from
//! the one table here.

use core::fmt;

// The one import against the order of the modules: an error names the input it refuses, and `check`, which refuses, stands
// beside the ranges, so that every module asks for both in one place.
use crate::error::{Error, Result};
use crate::scalar::Scalar;

/// The accepted range of one input.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Range {
    /// What the input is called in messages.
    pub name: &'static str,
    /// SI unit of both bounds; empty for a plain number.
    pub unit: &'static str,
    /// Smallest accepted value.
    pub min: f64,
    /// Largest accepted value.
    pub max: f64,
    /// Whether the smallest value itself is refused.
    pub is_open: bool,
}

impl fmt::Display for Range {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let space = if self.unit.is_empty() { "" } else { " " };
        if self.is_open {
            return write!(f, "accepted is more than {}, up to {}{space}{}", self.min, self.max, self.unit);
        }
        write!(f, "accepted is {} to {}{space}{}", self.min, self.max, self.unit)
    }
}

macro_rules! inputs {
    ($($(#[$doc:meta])+ $input:ident = $name:literal, $unit:literal, $min:expr, $max:expr $(, $open:ident)?;)+) => {
        /// Every input that has a range.
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        #[non_exhaustive]
        pub enum Input { $($(#[$doc])+ $input,)+ }

        impl Input {
            /// Every input, in the order the gas flows.
            pub const ALL: &'static [Input] = &[$(Input::$input,)+];

            /// What programs call it: the name of its variant.
            #[must_use]
            pub const fn key(self) -> &'static str {
                match self { $(Input::$input => stringify!($input),)+ }
            }

            /// The accepted range.
            #[must_use]
            pub const fn range(self) -> &'static Range {
                match self {
                    $(Input::$input => {
                        const IS_OPEN: bool = !stringify!($($open)?).is_empty();
                        &Range { name: $name, unit: $unit, min: $min, max: $max, is_open: IS_OPEN }
                    })+
                }
            }
        }
    };
}

inputs! {
    /// Height of the site above sea level.
    Altitude = "altitude", "m", -450.0, 4000.0;
    /// Pressure a barometer on the site reads.
    StationPressure = "station pressure", "Pa", 58_000.0, 110_000.0;
    /// Pressure a forecast gives, reduced to sea level.
    SeaLevelPressure = "sea-level pressure", "Pa", 90_000.0, 108_500.0;
    /// Temperature of the air the blower takes in.
    AirTemperature = "air temperature", "K", 238.15, 328.15;
    /// Relative humidity, 0 to 1.
    Humidity = "relative humidity", "", 0.0, 1.0;
    /// Mole fraction of one species.
    Fraction = "mole fraction", "", 0.0, 1.0;
    /// Temperature of the gas before the jet.
    GasTemperature = "gas temperature", "K", 238.15, 328.15;
    /// Gauge pressure before the jet.
    GaugePressure = "gauge pressure", "Pa", 0.0, 450_000.0;
    /// Absolute pressure of the gas.
    SupplyPressure = "absolute pressure", "Pa", 1_000.0, 600_000.0;
    /// Gauge pressure the jet blows into.
    BackPressure = "back pressure", "Pa", -20_000.0, 450_000.0;
    /// Gas in a full cylinder, or left in one.
    CylinderCharge = "gas in the cylinder", "kg", 0.0, 1_000.0;
    /// Gas that a cylinder holds when full, or that is left in it as long as it gives gas.
    CylinderHolds = "gas in the cylinder", "kg", 0.0, 1_000.0, more;
    /// Outside diameter of a cylinder.
    CylinderDiameter = "cylinder diameter", "m", 0.1, 1.5;
    /// Mass of an empty cylinder.
    CylinderTare = "empty cylinder", "kg", 0.5, 2_000.0;
    /// How many cylinders stand on one manifold.
    CylinderCount = "number of cylinders", "", 1.0, 16.0;
    /// Gas a fire draws from its cylinders.
    GasDraw = "gas drawn", "kg/s", 0.0, 0.1;
    /// Gauge pressure a regulator needs at its inlet.
    InletPressure = "pressure the regulator needs", "Pa", 0.0, 1_000_000.0;
    /// Inside diameter of a gas pipe or hose.
    PipeDiameter = "pipe diameter", "m", 1.5e-3, 0.2;
    /// Pressure that a low-pressure gas pipe may lose; the codes' formula ends at 1.5 psi.
    PipeDrop = "pressure drop of the pipe", "Pa", 0.0, 10_350.0;
    /// Length of a gas pipe or hose.
    PipeLength = "pipe length", "m", 0.0, 200.0;
    /// Flow coefficient of a valve, cubic meters of water an hour at a bar.
    ValveCoefficient = "valve coefficient", "m3/h", 0.01, 1_000.0;
    /// Heat a hose takes from the air, per area and kelvin.
    HoseCoefficient = "hose coefficient", "W/(m2 K)", 0.0, 100.0;
    /// Diameter of the jet.
    Bore = "bore", "m", 0.25e-3, 12.7e-3;
    /// Length of the jet's straight bore.
    BoreLength = "bore length", "m", 0.0, 65.0e-3;
    /// Depth of a chamfer at the mouth of the bore.
    ChamferDepth = "chamfer depth", "m", 0.0, 20.0e-3;
    /// Full cone angle of a chamfer.
    ChamferAngle = "chamfer angle", "rad", 0.0, core::f64::consts::PI;
    /// Radius of a rounded mouth.
    EdgeRadius = "edge radius", "m", 0.0, 20.0e-3;
    /// Height of the roughness of a wall.
    Roughness = "wall roughness", "m", 0.0, 0.5e-3;
    /// Bore over the inside diameter of the tube before it.
    ApproachRatio = "approach ratio", "", 0.0, 0.7;
    /// A coefficient measured by the user.
    DischargeCoefficient = "discharge coefficient", "", 0.2, 1.1;
    /// A measured coefficient over the model's.
    CoefficientFactor = "measured coefficient over the model's", "", 0.2, 2.0;
    /// How many equal jets share the gas.
    JetCount = "number of jets", "", 1.0, 64.0;
    /// Heat of the fire.
    HeatRate = "heat", "W", 1.0, 2.0e8;
    /// Air supplied over air needed.
    AirRatio = "air ratio", "", 0.5, 5.0;
    /// Air supplied over air needed, where a flame is worked out: a richer one makes soot.
    FlameAirRatio = "air ratio of the flame", "", 0.6, 4.0;
    /// Air supplied over air needed, where kinetics decide what leaves.
    ReactorAirRatio = "air ratio of the stirred reactor", "", 0.8, 3.0;
    /// Temperature of a stirred reactor.
    ReactorTemperature = "temperature of the stirred reactor", "K", 973.15, 1_273.15;
    /// Volume of a stirred reactor over the flow at its temperature.
    ReactorResidence = "residence in the stirred reactor", "s", 0.1, 3.0;
    /// Temperature of a flame's products.
    ProductTemperature = "temperature of the products", "K", 600.0, 2_900.0;
    /// Temperature of steel in a flame's gases: iron forms wustite above the lower end.
    ScaleTemperature = "temperature of the steel", "K", 850.0, 1_700.0;
    /// Oxygen an analyzer reads in the flue gas.
    OxygenReading = "oxygen in the flue gas", "", 0.0, 0.209;
    /// Carbon monoxide an analyzer reads in the flue gas.
    CarbonMonoxideReading = "carbon monoxide in the flue gas", "", 0.0, 0.15;
    /// Air ratio of a flame that burns to the end.
    LeanAirRatio = "air ratio of a lean flame", "", 1.0, 1_000.0;
    /// Flow of air.
    AirFlow = "air flow", "m3/s", 0.0, 2.0;
    /// Static pressure a blower makes.
    BlowerPressure = "blower static pressure", "Pa", 0.0, 30_000.0;
    /// Static pressure a blower makes with its outlet shut.
    ShutOff = "shut-off pressure", "Pa", 0.0, 30_000.0, more;
    /// Flow of a blower with nothing in the way.
    FreeDelivery = "free delivery", "m3/s", 0.0, 2.0, more;
    /// Power at the blower's shaft.
    ShaftPower = "shaft power", "W", 0.0, 50_000.0;
    /// Efficiency of the blower, shaft to air.
    BlowerEfficiency = "blower efficiency", "", 0.05, 0.9;
    /// Density the blower's curve was taken at.
    AirDensity = "air density", "kg/m3", 0.6, 1.6;
    /// Turns of the blower's wheel in a second.
    WheelSpeed = "wheel speed", "turns/s", 0.1, 2_000.0;
    /// Turns of the wheel, now over those of the curve.
    SpeedRatio = "wheel speed over the curve's", "", 0.2, 2.0;
    /// Diameter of the wheel, now over that of the curve.
    SizeRatio = "wheel size over the curve's", "", 0.5, 2.0;
    /// Inside diameter of a duct or of the mixing tube.
    DuctDiameter = "duct diameter", "m", 5.0e-3, 0.6;
    /// Length of a duct.
    DuctLength = "duct length", "m", 0.0, 50.0;
    /// How many ducts lie in series.
    DuctCount = "number of ducts in series", "", 0.0, 4.0;
    /// Sum of the loss coefficients of fittings.
    FittingLoss = "fitting loss coefficient", "", 0.0, 1_000.0;
    /// How far a damper stands open, 0 to 1.
    DamperOpening = "damper opening", "", 0.1, 1.0;
    /// Free area round a shut disc, as a share of its duct.
    DiscGap = "gap round the shut disc", "", 0.0, 0.2;
    /// Loss of a damper over that of its table, from one setting seen.
    DamperCorrection = "correction of the damper's loss", "", 0.1, 10.0;
    /// Loss coefficient a damper is asked to have.
    DamperLoss = "damper loss coefficient", "", 0.0, 100_000.0;
    /// How many ports a head has.
    PortCount = "number of ports", "", 1.0, 2_000.0;
    /// Diameter of a port, or gap of a slot.
    PortDiameter = "port diameter", "m", 0.3e-3, 0.2;
    /// Length of a port through the head's wall.
    PortLength = "port length", "m", 0.0, 0.5;
    /// Length of a slot along the head.
    SlotLength = "slot length", "m", 1.0e-3, 2.0;
    /// Share of the head's face that is open.
    OpenFraction = "open fraction", "", 0.0, 0.9;
    /// How many heads hang on one blower.
    HeadCount = "number of heads", "", 1.0, 16.0;
    /// Temperature of the mixture as it passes the ports.
    MixtureTemperature = "mixture temperature", "K", 238.15, 900.0;
    /// Temperature inside the chamber.
    ChamberTemperature = "chamber temperature", "K", 238.15, 2_300.0;
    /// Area of the opening the chamber's gases leave by.
    ExhaustArea = "exhaust opening", "m2", 1.0e-5, 1.0;
    /// Loss coefficient of the exhaust opening.
    ExhaustLoss = "exhaust loss coefficient", "", 0.5, 20.0;
    /// Minutes a setting is used.
    Duration = "duration", "s", 0.0, 172_800.0;
    /// Thickness of one layer of a wall.
    LayerThickness = "layer thickness", "m", 0.2e-3, 1.0;
    /// How deep in a wall its steel lies.
    SteelDepth = "depth of the steel in the wall", "m", 0.2e-3, 1.0;
    /// Conductivity of a material.
    Conductivity = "conductivity", "W/(m K)", 0.005, 500.0;
    /// Specific heat of a material.
    SpecificHeat = "specific heat", "J/(kg K)", 50.0, 10_000.0;
    /// Density of a material.
    MaterialDensity = "material density", "kg/m3", 20.0, 25_000.0;
    /// Emissivity of a surface.
    Emissivity = "emissivity", "", 0.0, 1.0;
    /// Heat a surface takes up by convection, per area and kelvin.
    FilmCoefficient = "film coefficient", "W/(m2 K)", 0.0, 5_000.0;
    /// Length, width or diameter of a panel of the chamber.
    PanelSize = "panel size", "m", 0.01, 10.0;
    /// Area of a wall.
    WallArea = "wall area", "m2", 1.0e-4, 500.0;
    /// Mass of the work or of a crucible.
    WorkMass = "mass of the work", "kg", 0.0, 20_000.0;
    /// Mass of a charge.
    ChargeMass = "mass of the charge", "kg", 0.0, 20_000.0, more;
    /// How long the work may take to come to its temperature.
    WorkTime = "time for the work", "s", 60.0, 172_800.0;
    /// Size of a piece of work.
    WorkSize = "size of the work", "m", 1.0e-4, 5.0;
    /// Temperature the work is brought to.
    WorkTemperature = "work temperature", "K", 238.15, 2_200.0;
    /// How many pieces are heated in an hour.
    PiecesAnHour = "pieces an hour", "", 1.0, 2_000.0;
    /// Volume of the work.
    WorkVolume = "volume of the work", "m3", 0.0, 500.0;
    /// Volume of the chamber.
    ChamberVolume = "volume of the chamber", "m3", 1.0e-6, 500.0;
    /// Heat a chamber that just glows loses.
    GlowLoss = "loss of the glowing chamber", "W", 0.0, 1.0e6;
    /// Gradient at which a head's flames blow off, over that of a plain port.
    HeadConstant = "head constant", "", 0.01, 100_000.0;
    /// Area that panels must close.
    PanelArea = "area of the panels that close the chamber", "m2", 0.0, 500.0;
    /// How far above the chamber its gases leave.
    FlueExcess = "flue above chamber", "K", 0.0, 600.0;
    /// Share of a fire's net heat that stays in the chamber.
    AvailableHeat = "available heat", "", 0.0, 1.0;
    /// Height that makes a draft.
    DraftHeight = "draft height", "m", 0.0, 20.0;
    /// Volume fraction of a gas in a room.
    RoomFraction = "share of the room's air", "", 1.0e-7, 0.1;
    /// Fresh air that a room needs over what it would need if it were stirred.
    MixingFactor = "mixing factor", "", 1.0, 10.0;
    /// Gas a cylinder lost in a weighing.
    MassLost = "mass lost", "kg", 0.001, 1_000.0;
    /// Smallest step a scale shows.
    ScaleStep = "step of the scale", "kg", 1.0e-5, 5.0;
    /// How long a weighing or a meter's reading took.
    WeighingTime = "time weighed", "s", 10.0, 172_800.0;
    /// How well a time is known.
    ClockError = "uncertainty of the time", "s", 0.0, 600.0;
    /// How many runs were weighed or metered.
    RunCount = "number of runs", "", 1.0, 1_000.0;
    /// Change of a measured factor with the flow.
    Trend = "trend of the runs", "", -5.0, 5.0;
    /// Gas a meter counted.
    MeteredVolume = "volume metered", "m3", 1.0e-4, 10_000.0;
    /// Expanded uncertainty of an uncertainty, as a share.
    UncertaintyShare = "uncertainty as a share", "", 0.0, 0.5;
    /// Expanded uncertainty of an uncertainty of a pressure.
    PressureUncertainty = "uncertainty of a pressure", "Pa", 0.0, 100_000.0;
    /// Expanded uncertainty of an uncertainty of a temperature.
    TemperatureUncertainty = "uncertainty of a temperature", "K", 0.0, 200.0;
    /// Expanded uncertainty of an uncertainty of a length of the jet.
    LengthUncertainty = "uncertainty of a length", "m", 0.0, 1.0e-3;
    /// Full scale of a gauge.
    GaugeSpan = "span of the gauge", "Pa", 1_000.0, 2_500_000.0;
    /// Price of one kilogram of gas.
    Price = "price", "per kg", 0.0, 1_000.0;
}

impl Input {
    /// Why the range ends where it does, when no one would guess.
    #[must_use]
    pub const fn reason(self) -> Option<&'static str> {
        match self {
            Input::FlameAirRatio => Some("a flame under 0.6 makes soot, which is not worked out"),
            Input::CylinderHolds => Some("an empty cylinder gives no gas"),
            _ => None,
        }
    }
}

impl fmt::Display for Input {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.range().name)
    }
}

/// The value itself if it is finite and within the range of `input`.
///
/// # Errors
///
/// [`Error::NotFinite`] or [`Error::OutOfRange`].
///
/// # Examples
///
/// ```
/// use jetwright::{Input, limits};
/// assert_eq!(limits::check(Input::AirRatio, 1.05_f64), Ok(1.05));
/// assert!(limits::check(Input::AirRatio, f64::NAN).is_err());
/// assert!(limits::check(Input::Altitude, 100_000.0_f64).is_err());
/// ```
pub fn check<S: Scalar>(input: Input, value: S) -> Result<S> {
    if !value.is_finite() {
        return Err(Error::NotFinite { input });
    }
    let range = input.range();
    if value < S::c(range.min) || value > S::c(range.max) || range.is_open && value == S::c(range.min) {
        return Err(Error::OutOfRange { input, given: value.to_f32() });
    }
    Ok(value)
}

#[cfg(test)]
mod tests {
    use super::{Input, check};

    #[test]
    fn both_bounds_are_accepted_and_a_step_beyond_is_not() {
        for &input in Input::ALL {
            let range = input.range();
            assert!(range.min < range.max, "{input}");
            for bound in [range.min, range.max] {
                let is_accepted = !(range.is_open && bound == range.min);
                assert_eq!(check(input, bound).is_ok(), is_accepted, "{input}");
                assert_eq!(check(input, bound as f32).is_ok(), is_accepted, "{input}");
            }
            assert!(check(input, range.min + 1e-6 * (range.max - range.min)).is_ok(), "{input}");
            assert!(check(input, range.min - 1e-6 * (1.0 + range.min.abs())).is_err(), "{input}");
            assert!(check(input, range.max + 1e-6 * (1.0 + range.max.abs())).is_err(), "{input}");
        }
    }
}
