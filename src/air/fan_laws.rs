//! The same blower at another density, speed or size, or known to a share only.

use super::blower::Blower;
use crate::error::Result;
use crate::interpolate::Curve;
use crate::limits::{Input, check};
use crate::quantity::Density;
use crate::scalar::Scalar;

impl<S: Scalar> Blower<S> {
    /// The same blower in air of another density, at another speed, or one of its likeness in another
    /// size: Q ~ N D^3, p ~ rho N^2 D^2, P ~ rho N^3 D^5.
    ///
    /// # Units
    ///
    /// `speed_ratio` and `size_ratio` are the new turns and wheel diameter over those of this curve.
    ///
    /// # Errors
    ///
    /// [`Error::NotFinite`](crate::Error::NotFinite) or [`Error::OutOfRange`](crate::Error::OutOfRange).
    ///
    /// # Source
    ///
    /// AMCA Publication 201, Fans and Systems, the fan laws.
    ///
    /// # Examples
    ///
    /// In air a quarter thinner the pressure is a quarter less, at the same flow:
    ///
    /// ```
    /// use jetwright::air::Blower;
    /// use jetwright::quantity::{ActualVolumeFlow, Density, PressureDifference};
    /// let (flow, shut_off) = (ActualVolumeFlow::from_liters_per_second(60.0_f64), PressureDifference::from_pascals(1000.0));
    /// let printed = Blower::from_two_numbers(shut_off, flow, Density::from_kilograms_per_cubic_meter(1.2)).unwrap();
    /// let here = printed.scaled(Density::from_kilograms_per_cubic_meter(0.9), 1.0, 1.0).unwrap();
    /// let still = ActualVolumeFlow::from_liters_per_second(0.0);
    /// assert!((here.static_pressure(still).pascals() - 750.0).abs() < 1e-9);
    /// ```
    pub fn scaled(&self, density: Density<S>, speed_ratio: S, size_ratio: S) -> Result<Self> {
        let speed = check(Input::SpeedRatio, speed_ratio)?;
        let size = check(Input::SizeRatio, size_ratio)?;
        let thickness =
            check(Input::AirDensity, density.kilograms_per_cubic_meter())? / self.density.kilograms_per_cubic_meter();
        let flow = speed * size.squared() * size;
        let pressure = thickness * (speed * size).squared();
        Ok(Self {
            pressure: self.pressure.stretched(flow, pressure),
            power: self.power.as_ref().map(|power| power.stretched(flow, pressure * flow)),
            density,
            fall: self.fall * pressure / flow,
        })
    }

    /// The same blower with its pressure at every flow multiplied, for a curve that is known to a share only.
    #[must_use]
    pub fn with_pressure(&self, factor: S) -> Self {
        Self { pressure: self.pressure.stretched(S::one(), factor), fall: self.fall * factor, ..self.clone() }
    }

    /// The same in another number type.
    #[must_use]
    pub fn cast<T: Scalar>(&self) -> Blower<T> {
        Blower {
            pressure: self.pressure.cast(),
            power: self.power.as_ref().map(Curve::cast),
            density: self.density.cast(),
            fall: T::c(self.fall.to_f64()),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::super::fixture::{any_points, density, flow, invented, of};
    use proptest::prelude::*;

    #[test]
    fn the_laws_are_those_of_the_published_table() {
        // AMCA 201: twice the speed gives twice the flow, four times the pressure, eight times the power;
        // twice the size at one speed gives 8, 4 and 32; density moves pressure and power alone.
        let blower = invented::<f64>();
        let at = 0.03;
        let (pressure, power) =
            (blower.static_pressure(flow(at)).pascals(), blower.shaft_power(flow(at)).unwrap().watts());
        for (thickness, speed, size, flows, pressures, powers) in
            [(1.0, 2.0, 1.0, 2.0, 4.0, 8.0), (1.0, 1.0, 2.0, 8.0, 4.0, 32.0), (0.75, 1.0, 1.0, 1.0, 0.75, 0.75)]
        {
            let scaled = blower.scaled(density(1.2 * thickness), speed, size).unwrap();
            assert!((scaled.static_pressure(flow(at * flows)).pascals() / (pressure * pressures) - 1.0).abs() < 1e-12);
            let scaled_power = scaled.shaft_power(flow(at * flows)).unwrap().watts();
            assert!((scaled_power / (power * powers) - 1.0).abs() < 1e-12);
            let free = scaled.free_delivery().cubic_meters_per_second();
            assert!((free / (blower.free_delivery().cubic_meters_per_second() * flows) - 1.0).abs() < 1e-12);
            assert!((scaled.density().kilograms_per_cubic_meter() - 1.2 * thickness).abs() < 1e-12);
        }
    }

    proptest! {
        #[test]
        fn there_and_back_by_the_laws_is_the_same_blower(
            points in any_points(), thin in 0.6..1.6_f64, speed in 0.5..2.0_f64, size in 0.5..2.0_f64, share in 0.0..2.0_f64,
        ) {
            let blower = of::<f64>(&points);
            let back = blower.scaled(density(thin), speed, size).unwrap().scaled(density(1.2), 1.0 / speed, 1.0 / size).unwrap();
            let at = flow(points[points.len() - 1].0 * share);
            let difference = back.static_pressure(at).pascals() - blower.static_pressure(at).pascals();
            prop_assert!(difference.abs() < 1e-9 * blower.peak().1.pascals());
        }
    }
}
