//! A blower known by its nameplate: the end of its curve that nobody printed.
//!
//! Geometrically alike impellers have the same pressure number, shut-off pressure over density and squared tip speed,
//! and the same flow number, free delivery over tip speed and the area of the impeller's circle. Tip speed is
//! pi times diameter times speed. Two of pressure, flow and diameter follow from the third and the speed.

use core::f64::consts::PI;

use crate::quantity::{ActualVolumeFlow, Density, Length, Power, PressureDifference, RotationalSpeed};
use crate::scalar::Scalar;

/// A motor of two poles between mains of 50 and 60 Hz, slip included.
const TWO_POLES_RPM: f64 = 3150.0;
/// Air power at its largest over the power of a small motor's nameplate (common practice, no source).
const NAMEPLATE_TO_AIR: f64 = 0.25;
/// Largest of x (1 - x^2), the air power of a parabola between its ends: 2 / (3 sqrt 3).
const PARABOLA: f64 = 0.3849;

/// Spread of the pressure by a nameplate, as a share (k = 2): kind known, and not. From numbers that are known to a
/// third (pressure), a half (flow) and an eighth (speed), a quarter for the curve's shape, and wider where any kind may
/// be meant.
pub const NAMEPLATE_SPREAD: (f64, f64) = (0.55, 0.75);

/// Kind of a blower's impeller.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BlowerKind {
    /// A drum of many narrow blades, bent into the turn.
    ForwardCurved,
    /// Few blades that lean away from the turn.
    BackwardCurved,
    /// Straight paddles.
    Radial,
}

impl BlowerKind {
    /// Every kind by its word.
    pub const WORDS: &'static [(&'static str, Self)] =
        &[("forward curved", Self::ForwardCurved), ("backward curved", Self::BackwardCurved), ("radial", Self::Radial)];
}

/// Pressure number and flow number of a kind; between the kinds where it is not known.
///
/// Representative of small single-inlet blowers with casings, from memory of handbooks of fans (Eck; Bleier).
fn numbers(kind: Option<BlowerKind>) -> (f64, f64) {
    match kind {
        Some(BlowerKind::ForwardCurved) => (0.90, 0.35),
        Some(BlowerKind::BackwardCurved) => (0.55, 0.25),
        Some(BlowerKind::Radial) => (0.65, 0.13),
        None => (0.70, 0.20),
    }
}

/// What is read of a blower.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Nameplate<S = f64> {
    /// Flow with nothing in the way.
    FreeDelivery(ActualVolumeFlow<S>),
    /// Pressure with the outlet shut.
    ShutOff(PressureDifference<S>),
    /// Power of the motor and diameter of the impeller.
    Motor {
        /// Power that the nameplate says.
        power: Power<S>,
        /// Outside diameter of the impeller.
        impeller: Length<S>,
    },
}

impl<S: Scalar> Nameplate<S> {
    /// Both ends of the curve, shut-off pressure p = pressure number x density x u^2 and free delivery
    /// Q = flow number x u x pi/4 D^2, u = pi n D; by a motor's power P, Q = 0.25 P / (0.385 p).
    ///
    /// The speed is 3150 a minute unless given, between two-pole motors of both mains.
    ///
    /// # Source
    ///
    /// Similarity of fans; the numbers of each kind are representative, from memory. Take [`NAMEPLATE_SPREAD`] with it.
    ///
    /// # Examples
    ///
    /// A radial impeller of 150 mm at 3450 a minute has a tip speed of 27.1 m/s, so 0.65 x 1.2 x 734 = 573 Pa and
    /// 0.13 x 27.1 x 0.01767 = 0.0623 m3/s:
    ///
    /// ```
    /// use jetwright::air::{BlowerKind, Nameplate};
    /// use jetwright::quantity::{ActualVolumeFlow, Density, RotationalSpeed};
    /// let plate = Nameplate::FreeDelivery(ActualVolumeFlow::from_cubic_meters_per_second(0.0623_f64));
    /// let speed = Some(RotationalSpeed::from_turns_per_second(57.5));
    /// let standard = Density::from_kilograms_per_cubic_meter(1.2);
    /// let (shut_off, _) = plate.ends(Some(BlowerKind::Radial), speed, standard);
    /// assert!((shut_off.pascals() - 573.0).abs() < 3.0);
    /// ```
    #[must_use]
    pub fn ends(
        &self,
        kind: Option<BlowerKind>,
        speed: Option<RotationalSpeed<S>>,
        density: Density<S>,
    ) -> (PressureDifference<S>, ActualVolumeFlow<S>) {
        let (pressure_number, flow_number) = numbers(kind);
        let turns = speed.map_or(S::c(TWO_POLES_RPM / 60.0), RotationalSpeed::turns_per_second);
        let pressure_of = |tip: S| S::c(pressure_number) * density.kilograms_per_cubic_meter() * tip.squared();
        // Flow over the cube of the diameter.
        let cubic = S::c(flow_number * PI * PI / 4.0) * turns;
        match *self {
            Nameplate::FreeDelivery(flow) => {
                let diameter = ((flow.cubic_meters_per_second() / cubic).ln() / S::c(3.0)).exp();
                (PressureDifference::from_pascals(pressure_of(S::c(PI) * turns * diameter)), flow)
            }
            Nameplate::ShutOff(pressure) => {
                let tip = (pressure.pascals() / pressure_of(S::one())).sqrt();
                let diameter = tip / (S::c(PI) * turns);
                let flow = cubic * diameter.squared() * diameter;
                (pressure, ActualVolumeFlow::from_cubic_meters_per_second(flow))
            }
            Nameplate::Motor { power, impeller } => {
                let pressure = pressure_of(S::c(PI) * turns * impeller.meters());
                let flow = S::c(NAMEPLATE_TO_AIR / PARABOLA) * power.watts() / pressure;
                (PressureDifference::from_pascals(pressure), ActualVolumeFlow::from_cubic_meters_per_second(flow))
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::{BlowerKind, Nameplate};
    use crate::quantity::{Density, Length, Power};

    #[test]
    fn each_end_leads_back_to_the_other() {
        let density = Density::from_kilograms_per_cubic_meter(1.2_f64);
        for kind in BlowerKind::WORDS.iter().map(|(_, kind)| Some(*kind)).chain([None]) {
            let plate = Nameplate::Motor { power: Power::from_watts(100.0), impeller: Length::from_meters(0.12) };
            let (pressure, _) = plate.ends(kind, None, density);
            let (_, flow) = Nameplate::ShutOff(pressure).ends(kind, None, density);
            let (again, _) = Nameplate::FreeDelivery(flow).ends(kind, None, density);
            assert!((again.pascals() / pressure.pascals() - 1.0).abs() < 1e-9);
        }
    }

    #[test]
    fn a_motor_gives_a_quarter_of_its_power_to_the_air_at_most() {
        let plate = Nameplate::Motor { power: Power::from_watts(80.0_f64), impeller: Length::from_meters(0.12) };
        let (pressure, flow) = plate.ends(None, None, Density::from_kilograms_per_cubic_meter(1.2));
        let most = (0..1000).map(|at| f64::from(at) / 1000.0).map(|x| x * (1.0 - x * x)).fold(0.0, f64::max);
        let air = most * pressure.pascals() * flow.cubic_meters_per_second();
        assert!((air - 20.0).abs() < 0.02, "{air}");
    }
}
