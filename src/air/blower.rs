//! A blower: its curve as printed.

use heapless::Vec;

use crate::error::{Error, Result};
use crate::interpolate::{Curve, POINT_CAP};
use crate::limits::{Input, check};
use crate::quantity::{ActualVolumeFlow, Density, Power, PressureDifference};
use crate::scalar::Scalar;
use crate::words::words;

/// One point of a blower's curve.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BlowerPoint<S = f64> {
    /// Flow at the inlet, as it passes.
    pub flow: ActualVolumeFlow<S>,
    /// Static pressure at the outlet over that at the inlet.
    pub static_pressure: PressureDifference<S>,
    /// Power at the shaft, where it is printed.
    pub shaft_power: Option<Power<S>>,
}

/// A blower at one speed, in air of one density.
///
/// Its pressure is defined at every flow. Between the points it is a [`Curve`]. Right of the last it
/// falls in a straight line, on the curve's own slope but no flatter than highest pressure over last
/// flow, so it reaches zero by twice the last flow and goes on below. Left of the first it stays as there.
#[derive(Clone, Debug, PartialEq)]
pub struct Blower<S = f64> {
    pub(super) pressure: Curve<S>,
    pub(super) power: Option<Curve<S>>,
    pub(super) density: Density<S>,
    /// Pressure lost per flow beyond the last point; above zero.
    pub(super) fall: S,
}

words!(Blower { pressure, power, density, fall });

impl<S: Scalar> Blower<S> {
    /// A blower from the points of its curve and the density of the air they were taken in.
    ///
    /// # Range
    ///
    /// 2 to 16 points with rising flow, at least one pressure above zero, shaft power for all or for
    /// none; each within its row of [`limits`](crate::limits).
    ///
    /// # Errors
    ///
    /// [`Error::NotFinite`], [`Error::OutOfRange`], or [`Error::Points`] naming the static pressure or
    /// the shaft power.
    ///
    /// # Examples
    ///
    /// An invented blower of four points:
    ///
    /// ```
    /// use jetwright::air::{Blower, BlowerPoint};
    /// use jetwright::quantity::{ActualVolumeFlow, Density, PressureDifference};
    /// let points = [(0.0, 600.0), (0.02, 580.0), (0.04, 420.0), (0.06, 100.0)].map(|(flow, pressure)| BlowerPoint {
    ///     flow: ActualVolumeFlow::from_cubic_meters_per_second(flow),
    ///     static_pressure: PressureDifference::from_pascals(pressure),
    ///     shaft_power: None,
    /// });
    /// let blower = Blower::new(&points, Density::from_kilograms_per_cubic_meter(1.2)).unwrap();
    /// let flow = ActualVolumeFlow::from_cubic_meters_per_second(0.04);
    /// assert!((blower.static_pressure(flow).pascals() - 420.0_f64).abs() < 1e-9);
    /// ```
    pub fn new(points: &[BlowerPoint<S>], density: Density<S>) -> Result<Self> {
        check(Input::AirDensity, density.kilograms_per_cubic_meter())?;
        let mut pressures: Vec<(S, S), POINT_CAP> = Vec::new();
        let mut powers: Vec<(S, S), POINT_CAP> = Vec::new();
        for point in points {
            let flow = check(Input::AirFlow, point.flow.cubic_meters_per_second())?;
            let pressure = check(Input::BlowerPressure, point.static_pressure.pascals())?;
            pressures.push((flow, pressure)).map_err(|_| Error::Points { input: Input::BlowerPressure })?;
            if let Some(power) = point.shaft_power {
                let power = check(Input::ShaftPower, power.watts())?;
                powers.push((flow, power)).map_err(|_| Error::Points { input: Input::ShaftPower })?;
            }
        }
        let pressure = Curve::new(Input::BlowerPressure, &pressures)?;
        let power = match powers.len() {
            0 => None,
            count if count == points.len() => Some(Curve::new(Input::ShaftPower, &powers)?),
            _ => return Err(Error::Points { input: Input::ShaftPower }),
        };
        let (last_flow, _) = pressure.last();
        let fall = (-pressure.slope(last_flow)).larger(pressure.highest().1 / last_flow);
        if !(fall > S::zero() && fall.is_finite()) {
            return Err(Error::Points { input: Input::BlowerPressure });
        }
        Ok(Self { pressure, power, density, fall })
    }

    /// A guess where no curve is printed: p = p0 (1 - (Q/Q0)^2), from the pressure against a shut
    /// outlet and the flow from an open one.
    ///
    /// # Errors
    ///
    /// As [`Blower::new`].
    ///
    /// # Source
    ///
    /// Common practice, no source. A real curve may lie well above or below it between the two ends.
    ///
    /// # Examples
    ///
    /// At half the free flow three quarters of the pressure are left:
    ///
    /// ```
    /// use jetwright::air::Blower;
    /// use jetwright::quantity::{ActualVolumeFlow, Density, PressureDifference};
    /// let free = ActualVolumeFlow::from_liters_per_second(60.0_f64);
    /// let shut_off = PressureDifference::from_pascals(1000.0);
    /// let blower = Blower::from_two_numbers(shut_off, free, Density::from_kilograms_per_cubic_meter(1.2)).unwrap();
    /// assert!((blower.static_pressure(free * 0.5).pascals() - 750.0).abs() < 1.0);
    /// ```
    pub fn from_two_numbers(
        shut_off: PressureDifference<S>,
        free_delivery: ActualVolumeFlow<S>,
        density: Density<S>,
    ) -> Result<Self> {
        let last = POINT_CAP - 1;
        let points: [BlowerPoint<S>; POINT_CAP] = core::array::from_fn(|at| {
            let share = S::c(at as f64) / S::c(last as f64);
            BlowerPoint {
                flow: free_delivery * share,
                static_pressure: shut_off * (S::one() - share.squared()),
                shaft_power: None,
            }
        });
        Self::new(&points, density)
    }

    /// The static pressure at a flow; below zero beyond free delivery.
    #[must_use]
    pub fn static_pressure(&self, flow: ActualVolumeFlow<S>) -> PressureDifference<S> {
        PressureDifference::from_pascals(self.pressure_and_slope(flow.cubic_meters_per_second()).0)
    }

    /// The static pressure at a flow, Pa, and how it changes with the flow, Pa per m3/s.
    pub(crate) fn pressure_and_slope(&self, flow: S) -> (S, S) {
        let (last_flow, last_pressure) = self.pressure.last();
        if flow > last_flow {
            return (last_pressure - self.fall * (flow - last_flow), -self.fall);
        }
        let first = self.pressure.first();
        if flow < first.0 { (first.1, S::zero()) } else { self.pressure.value_and_slope(flow) }
    }

    /// The flow at a static pressure, right of the highest point: the inverse of [`Blower::static_pressure`].
    ///
    /// Near the highest point a little pressure means much flow, and the flow is the less sure.
    ///
    /// # Errors
    ///
    /// [`Error::NoSolution`] naming the blower's pressure above that of the highest point, with the pressure there.
    ///
    /// # Examples
    ///
    /// ```
    /// use jetwright::air::Blower;
    /// use jetwright::quantity::{ActualVolumeFlow, Density, PressureDifference};
    /// let free = ActualVolumeFlow::from_liters_per_second(60.0_f64);
    /// let shut_off = PressureDifference::from_pascals(1000.0);
    /// let blower = Blower::from_two_numbers(shut_off, free, Density::from_kilograms_per_cubic_meter(1.2)).unwrap();
    /// // The parabola has three quarters of its pressure at half of its flow.
    /// let flow = blower.flow_at(PressureDifference::from_pascals(750.0)).unwrap();
    /// assert!((flow.cubic_meters_per_second() - 0.03).abs() < 5e-5);
    /// ```
    pub fn flow_at(&self, static_pressure: PressureDifference<S>) -> Result<ActualVolumeFlow<S>> {
        let pressure = static_pressure.pascals();
        let (last_flow, last_pressure) = self.pressure.last();
        let beyond = pressure < last_pressure;
        let flow = if beyond {
            Some(last_flow + (last_pressure - pressure) / self.fall)
        } else {
            self.pressure.falling_at(pressure)
        };
        let nearest = self.peak().1.pascals().to_f32();
        let flow = flow.ok_or(Error::NoSolution { input: Input::BlowerPressure, nearest })?;
        Ok(ActualVolumeFlow::from_cubic_meters_per_second(flow))
    }

    /// The power at the shaft, where the points give it; as at the first point left of that, straight
    /// beyond the last and never below zero.
    #[must_use]
    pub fn shaft_power(&self, flow: ActualVolumeFlow<S>) -> Option<Power<S>> {
        let power = self.power.as_ref()?;
        let flow = flow.cubic_meters_per_second().larger(power.first().0);
        Some(Power::from_watts(power.value(flow).larger(S::zero())))
    }

    /// The flow from an open outlet, where the static pressure is zero.
    #[must_use]
    pub fn free_delivery(&self) -> ActualVolumeFlow<S> {
        let (last_flow, last_pressure) = self.pressure.last();
        ActualVolumeFlow::from_cubic_meters_per_second(last_flow + last_pressure / self.fall)
    }

    /// The highest of the points: its flow and its static pressure.
    #[must_use]
    pub fn peak(&self) -> (ActualVolumeFlow<S>, PressureDifference<S>) {
        let (flow, pressure) = self.pressure.highest();
        (ActualVolumeFlow::from_cubic_meters_per_second(flow), PressureDifference::from_pascals(pressure))
    }

    /// Whether the flow is less than that of the highest point, where blowers may surge.
    ///
    /// True also left of a first point that is the highest: makers leave the unsteady part out of print
    /// (common practice, no source).
    #[must_use]
    pub fn is_left_of_peak(&self, flow: ActualVolumeFlow<S>) -> bool {
        flow < self.peak().0
    }

    /// Whether the flow is less than that of the first point or more than that of the last, where the
    /// curve is continued and not printed.
    #[must_use]
    pub fn is_beyond_points(&self, flow: ActualVolumeFlow<S>) -> bool {
        let mut flows = self.flows();
        flows.next().is_some_and(|first| flow < first) || flows.next_back().is_some_and(|last| flow > last)
    }

    /// The flows of the points, rising.
    pub fn flows(&self) -> impl DoubleEndedIterator<Item = ActualVolumeFlow<S>> + '_ {
        self.pressure.points().map(|(flow, _)| ActualVolumeFlow::from_cubic_meters_per_second(flow))
    }

    /// Flow and static pressure of the points, in rising order.
    pub(crate) fn pressures(&self) -> impl Iterator<Item = (S, S)> + '_ {
        self.pressure.points()
    }

    /// The density of the air this curve is for.
    #[must_use]
    pub const fn density(&self) -> Density<S> {
        self.density
    }
}

#[cfg(test)]
mod tests {
    use super::super::fixture::{any_points, density, flow, invented, of, point};
    use super::Blower;
    use crate::quantity::PressureDifference;
    use crate::{Error, Input, Scalar};
    use proptest::prelude::*;

    #[test]
    fn between_points_the_pressure_is_that_of_a_public_library() {
        // scipy 1.17.1 PchipInterpolator through the same points.
        let blower = invented::<f64>();
        for (at, pascals) in [(0.003, 923.295), (0.03, 834.678_568_7), (0.045, 540.299_641_6), (0.0575, 146.578_303_8)]
        {
            assert!((blower.static_pressure(flow(at)).pascals() - pascals).abs() < 1e-6, "{at}");
        }
        // The end's slope is -39 400 Pa per m3/s, by the same library.
        assert!((blower.free_delivery().cubic_meters_per_second() - (0.06 + 50.0 / 39_400.0)).abs() < 1e-12);
        assert!((blower.static_pressure(flow(0.07)).pascals() + 344.0).abs() < 1e-6);
        assert_eq!((blower.peak().0.cubic_meters_per_second(), blower.peak().1.pascals()), (0.01, 950.0));
        assert!(blower.is_left_of_peak(flow(0.009)) && !blower.is_left_of_peak(flow(0.011)));
        assert!(blower.is_beyond_points(flow(0.061)) && !blower.is_beyond_points(flow(0.06)));
    }

    #[test]
    fn two_numbers_give_their_parabola() {
        let blower =
            Blower::from_two_numbers(PressureDifference::from_pascals(1000.0), flow(0.06), density(1.2)).unwrap();
        for step in 0..=60 {
            let share = f64::from(step) / 60.0;
            let pressure = blower.static_pressure(flow(0.06 * share)).pascals();
            assert!((pressure - 1000.0 * (1.0 - share * share)).abs() < 0.5, "{share}: {pressure}");
        }
        assert!((blower.free_delivery().cubic_meters_per_second() - 0.06).abs() < 1e-12);
    }

    #[test]
    fn a_curve_that_does_not_fall_at_its_end_is_made_to() {
        // Highest pressure over last flow is 100 Pa / 0.02 m3/s, so zero is reached at 0.04 m3/s.
        let rising = Blower::new(&[point(0.0, 50.0, None), point(0.02, 100.0, None)], density(1.2)).unwrap();
        assert!((rising.free_delivery().cubic_meters_per_second() - 0.04_f64).abs() < 1e-12);
        assert!((rising.static_pressure(flow(0.03)).pascals() - 50.0).abs() < 1e-9);
    }

    #[test]
    fn bad_points_are_refused_by_name() {
        let none: Option<f64> = None;
        let pressure = Error::Points { input: Input::BlowerPressure };
        let cases = [
            (std::vec![point(0.0, 1.0, none)], pressure),
            (std::vec![point(0.1, 1.0, none), point(0.1, 0.5, none)], pressure),
            (std::vec![point(0.0, 0.0, none), point(0.1, 0.0, none)], pressure),
            (std::vec![point(0.0, 1.0, Some(1.0)), point(0.1, 0.5, none)], Error::Points { input: Input::ShaftPower }),
            (
                std::vec![point(0.0, -1.0, none), point(0.1, 0.5, none)],
                Error::OutOfRange { input: Input::BlowerPressure, given: -1.0 },
            ),
            (std::vec![point(0.0, 1.0, none), point(f64::NAN, 0.5, none)], Error::NotFinite { input: Input::AirFlow }),
        ];
        for (points, error) in cases {
            assert_eq!(Blower::new(&points, density(1.2)).unwrap_err(), error);
        }
        assert!(Blower::new(&[point(0.0, 1.0, none), point(0.1, 0.5, none)], density(12.0)).is_err());
        assert!(invented::<f64>().scaled(density(1.2), 0.0, 1.0).is_err());
    }

    proptest! {
        #[test]
        fn any_blower_falls_to_zero_before_twice_its_last_flow(points in any_points(), share in 1.0..3.0_f64) {
            let (double, single) = (of::<f64>(&points), of::<f32>(&points));
            let last = points[points.len() - 1].0;
            let free = double.free_delivery().cubic_meters_per_second();
            prop_assert!(free > last && free <= 2.0 * last * (1.0 + 1e-12));
            prop_assert!(double.static_pressure(flow(free)).pascals().abs() < 1e-9 * double.peak().1.pascals());
            let (near, far) = (flow(last * share), flow(last * share * 1.01));
            prop_assert!(double.static_pressure(near) > double.static_pressure(far));
            let scale = double.peak().1.pascals() + double.static_pressure(near).pascals().abs();
            let difference = double.static_pressure(near).pascals() - single.static_pressure(flow((last * share) as f32)).pascals().to_f64();
            prop_assert!(difference.abs() < 1e-4 * scale, "{difference} of {scale}");
        }
    }
}
