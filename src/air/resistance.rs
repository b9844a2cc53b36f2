//! A resistance whose loss is the square of the flow, and several of them joined.

use crate::quantity::{ActualVolumeFlow, Density, Length, PressureDifference};
use crate::scalar::Scalar;

/// A resistance with dp = k Q^2.
///
/// # Examples
///
/// Two like branches side by side pass twice the flow at the same loss:
///
/// ```
/// use jetwright::air::Resistance;
/// use jetwright::quantity::{ActualVolumeFlow, PressureDifference};
/// let flow = ActualVolumeFlow::from_liters_per_second(10.0_f64);
/// let branch = Resistance::from_point(flow, PressureDifference::from_pascals(200.0));
/// assert!((branch.in_parallel(branch).loss(flow * 2.0).pascals() - 200.0).abs() < 1e-9);
/// assert!((branch.in_series(branch).loss(flow).pascals() - 400.0).abs() < 1e-9);
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Resistance<S = f64>(S);

impl<S: Scalar> Resistance<S> {
    /// From `k` in pascals per square of cubic meters per second; a negative one counts as zero.
    #[must_use]
    pub fn from_pascals_per_square_flow(k: S) -> Self {
        Self(k.larger(S::zero()))
    }

    /// From one measured flow and its loss: k = dp / Q^2; none where nothing flows.
    #[must_use]
    pub fn from_point(flow: ActualVolumeFlow<S>, loss: PressureDifference<S>) -> Self {
        let squared = flow.cubic_meters_per_second().squared();
        Self::from_pascals_per_square_flow(if squared > S::zero() { loss.pascals() / squared } else { S::zero() })
    }

    /// From a loss coefficient on the velocity in a round duct: k = zeta rho / (2 A^2).
    ///
    /// # Range
    ///
    /// A diameter above zero.
    ///
    /// # Examples
    ///
    /// One dynamic head at 10 m/s in air of 1.2 kg/m3 is 60 Pa:
    ///
    /// ```
    /// use jetwright::air::Resistance;
    /// use jetwright::quantity::{ActualVolumeFlow, Density, Length};
    /// let (diameter, density) = (Length::from_meters(0.1_f64), Density::from_kilograms_per_cubic_meter(1.2));
    /// let flow = ActualVolumeFlow::from_cubic_meters_per_second(10.0 * 0.00785398163);
    /// let one = Resistance::from_loss_coefficient(1.0, diameter, density);
    /// assert!((one.loss(flow).pascals() - 60.0).abs() < 1e-6);
    /// ```
    #[must_use]
    pub fn from_loss_coefficient(loss_coefficient: S, diameter: Length<S>, density: Density<S>) -> Self {
        let area = round_area(diameter);
        let half_density = S::c(0.5) * density.kilograms_per_cubic_meter();
        Self::from_pascals_per_square_flow(loss_coefficient * half_density / area / area)
    }

    /// `k` in pascals per square of cubic meters per second.
    #[must_use]
    pub const fn pascals_per_square_flow(self) -> S {
        self.0
    }

    /// The loss at a flow, dp = k Q |Q|: a flow backward loses backward.
    #[must_use]
    pub fn loss(self, flow: ActualVolumeFlow<S>) -> PressureDifference<S> {
        let flow = flow.cubic_meters_per_second();
        PressureDifference::from_pascals(self.0 * flow * flow.abs())
    }

    /// One behind the other, the whole flow through both: k = k1 + k2.
    #[must_use]
    pub fn in_series(self, next: Self) -> Self {
        Self(self.0 + next.0)
    }

    /// Side by side, the flow shared: 1/sqrt(k) = 1/sqrt(k1) + 1/sqrt(k2).
    #[must_use]
    pub fn in_parallel(self, beside: Self) -> Self {
        let (a, b) = (self.0.sqrt(), beside.0.sqrt());
        let sum = a + b;
        if sum > S::zero() { Self((a / sum * b).squared()) } else { Self(S::zero()) }
    }
}

/// The area of a round duct.
pub(super) fn round_area<S: Scalar>(diameter: Length<S>) -> S {
    S::c(core::f64::consts::FRAC_PI_4) * diameter.meters().squared()
}

#[cfg(test)]
mod tests {
    use super::super::fixture::{density, flow};
    use super::Resistance;
    use crate::quantity::Length;
    use crate::{Input, Scalar};
    use proptest::prelude::*;

    fn k(value: f64) -> Resistance {
        Resistance::from_pascals_per_square_flow(value)
    }

    #[test]
    fn unlike_branches_share_by_the_root() {
        // By hand: k of 1 and 4 at 1 Pa pass 1 and 1/2, together 1.5, so k = 1/2.25.
        assert!((k(1.0).in_parallel(k(4.0)).pascals_per_square_flow() - 1.0 / 2.25).abs() < 1e-15);
        assert_eq!(k(0.0).in_parallel(k(0.0)), k(0.0));
        assert_eq!(k(0.0).in_parallel(k(5.0)), k(0.0));
        assert_eq!(k(3.0).loss(flow(-2.0)).pascals(), -12.0);
    }

    #[test]
    fn the_velocity_pressure_is_that_of_the_trade_formula() {
        // Velocity pressure = (ft/min / 4005)^2 in w.c. in air of 0.075 lb/ft3 (AMCA 201, from memory),
        // its inch being that of water at 68 degF, 0.18 % less than the conventional one.
        let diameter = Length::from_inches(3.0);
        let area_square_feet = core::f64::consts::FRAC_PI_4 / 16.0;
        let air = crate::quantity::Density::from_pounds_per_cubic_foot(0.075);
        let at = crate::quantity::ActualVolumeFlow::from_cubic_feet_per_minute(4005.0 * area_square_feet);
        let head = Resistance::from_loss_coefficient(1.0, diameter, air).loss(at);
        assert!((head.inches_of_water() - 1.0_f64).abs() < 2.5e-3, "{}", head.inches_of_water());
    }

    proptest! {
        #[test]
        fn joining_orders_and_bounds_hold_and_single_precision_follows(
            zetas in (0.01..Input::FittingLoss.range().max, 0.01..Input::FittingLoss.range().max),
            across in Input::DuctDiameter.range().min..Input::DuctDiameter.range().max,
        ) {
            let of = |zeta: f64| Resistance::from_loss_coefficient(zeta, Length::from_meters(across), density(1.2));
            let narrow = |zeta: f64| {
                Resistance::<f32>::from_loss_coefficient(zeta as f32, Length::from_meters(across as f32), density(1.2))
            };
            let (a, b) = (of(zetas.0), of(zetas.1));
            let least = a.pascals_per_square_flow().smaller(b.pascals_per_square_flow());
            let joined = a.in_parallel(b).pascals_per_square_flow();
            prop_assert!(joined < least && joined >= 0.2499 * least);
            prop_assert!((b.in_parallel(a).pascals_per_square_flow() / joined - 1.0).abs() < 1e-12);
            let single = narrow(zetas.0).in_parallel(narrow(zetas.1)).pascals_per_square_flow().to_f64();
            prop_assert!((single / joined - 1.0).abs() < 1e-5);
        }
    }
}
