//! A round duct and the air in it.

use super::resistance::round_area;
use crate::error::Result;
use crate::friction::Wall;
use crate::limits::{Input, check};
use crate::quantity::{ActualVolumeFlow, Density, Length, PressureDifference, Temperature};
use crate::scalar::Scalar;
use crate::words::words;

/// Keeps 64/Re finite at rest; the friction it leaves out is of flows a micron a second.
const LEAST_REYNOLDS_NUMBER: f64 = 1e-3;

/// A round duct with its fittings.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Duct<S = f64> {
    diameter: Length<S>,
    length: Length<S>,
    fitting_loss: S,
    wall: Wall<S>,
}

words!(Duct { diameter, length, fitting_loss, wall });

impl<S: Scalar> Duct<S> {
    /// A duct of this inside diameter, length and wall roughness; `fitting_loss` is the sum of the loss
    /// coefficients of its bends and changes, on the velocity in it.
    ///
    /// # Errors
    ///
    /// [`Error::NotFinite`](crate::Error::NotFinite) or [`Error::OutOfRange`](crate::Error::OutOfRange).
    pub fn new(diameter: Length<S>, length: Length<S>, roughness: Length<S>, fitting_loss: S) -> Result<Self> {
        let across = check(Input::DuctDiameter, diameter.meters())?;
        check(Input::DuctLength, length.meters())?;
        let wall = Wall::new(check(Input::Roughness, roughness.meters())? / across);
        Ok(Self { diameter, length, fitting_loss: check(Input::FittingLoss, fitting_loss)?, wall })
    }

    /// The same in another number type.
    #[must_use]
    pub fn cast<T: Scalar>(&self) -> Duct<T> {
        Duct {
            diameter: self.diameter.cast(),
            length: self.length.cast(),
            fitting_loss: T::c(self.fitting_loss.to_f64()),
            wall: self.wall.cast(),
        }
    }

    /// The pressure lost: (f L/D + sum K) rho v^2 / 2, backward for a flow backward.
    ///
    /// # Units
    ///
    /// `viscosity` is the dynamic viscosity in Pa s, see [`air_viscosity`].
    ///
    /// # Source
    ///
    /// Darcy and Weisbach; the factor of [`Wall::friction`].
    ///
    /// # Examples
    ///
    /// Ten meters per second in 4 m of smooth 100 mm duct with bends of 0.8 heads. Re = 65 900, f = 0.0195 by
    /// Colebrook, so 0.78 + 0.8 heads of 60 Pa:
    ///
    /// ```
    /// use jetwright::air::Duct;
    /// use jetwright::quantity::{ActualVolumeFlow, Density, Length};
    /// let (diameter, length) = (Length::from_millimeters(100.0_f64), Length::from_meters(4.0));
    /// let duct = Duct::new(diameter, length, Length::from_meters(0.0), 0.8).unwrap();
    /// let flow = ActualVolumeFlow::from_cubic_meters_per_second(0.0785398);
    /// let loss = duct.loss(flow, Density::from_kilograms_per_cubic_meter(1.2), 18.2e-6);
    /// assert!((loss.pascals() - 94.8).abs() < 1.0);
    /// ```
    #[must_use]
    pub fn loss(&self, flow: ActualVolumeFlow<S>, density: Density<S>, viscosity: S) -> PressureDifference<S> {
        let velocity = self.velocity(flow);
        let density = density.kilograms_per_cubic_meter();
        let reynolds_number = density * velocity.abs() * self.diameter.meters() / viscosity;
        let friction = self.wall.friction(reynolds_number.larger(S::c(LEAST_REYNOLDS_NUMBER)));
        let heads = friction.factor * self.length.meters() / self.diameter.meters() + self.fitting_loss;
        PressureDifference::from_pascals(heads * S::c(0.5) * density * velocity * velocity.abs())
    }

    /// The mean velocity of a flow in it, in m/s.
    #[must_use]
    pub fn velocity(&self, flow: ActualVolumeFlow<S>) -> S {
        flow.cubic_meters_per_second() / round_area(self.diameter)
    }

    /// The inside diameter.
    #[must_use]
    pub const fn diameter(&self) -> Length<S> {
        self.diameter
    }
}

/// The dynamic viscosity of air in Pa s: 1.458e-6 T^1.5 / (T + 110.4).
///
/// Within 0.5 % of the reference equation between 240 and 320 K.
///
/// # Range
///
/// 100 to 2 000 K; the nearer of the two beyond.
///
/// # Source
///
/// Sutherland's formula with the constants of ISO 2533:1975, equation 22 (number from memory), and of the
/// U.S. Standard Atmosphere 1976, equation 51.
///
/// # Examples
///
/// ```
/// use jetwright::air::air_viscosity;
/// use jetwright::quantity::Temperature;
/// assert!((air_viscosity(Temperature::from_celsius(15.0_f64)) - 17.894e-6).abs() < 1e-9);
/// ```
#[must_use]
pub fn air_viscosity<S: Scalar>(temperature: Temperature<S>) -> S {
    let kelvin = temperature.kelvin().clamped(S::c(100.0), S::c(2000.0));
    S::c(1.458e-6) * kelvin * kelvin.sqrt() / (kelvin + S::c(110.4))
}

#[cfg(test)]
mod tests {
    use super::super::fixture::{density, flow};
    use super::{Duct, air_viscosity};
    use crate::quantity::{Length, Temperature};
    use crate::{Input, Scalar};
    use proptest::prelude::*;

    fn duct<S: Scalar>(across: f64, length: f64, roughness: f64, fittings: f64) -> Duct<S> {
        let meters = |value: f64| Length::from_meters(S::c(value));
        Duct::new(meters(across), meters(length), meters(roughness), S::c(fittings)).unwrap()
    }

    #[test]
    fn viscosity_is_that_of_the_reference_equation() {
        // CoolProp 8.0.0, air at 101 325 Pa; and U.S. Standard Atmosphere 1976, table of sea level.
        for (kelvin, viscosity, within) in
            [(293.1_f64, 18.206e-6, 0.005), (288.7056, 17.989e-6, 0.005), (288.15, 17.894e-6, 1e-4)]
        {
            let ours = air_viscosity(Temperature::from_kelvin(kelvin));
            assert!((ours / viscosity - 1.0).abs() < within, "{kelvin} {ours}");
        }
        assert!(air_viscosity(Temperature::from_kelvin(320.0)) > air_viscosity(Temperature::from_kelvin(240.0_f64)));
        assert!(air_viscosity(Temperature::from_kelvin(-110.4_f32)).is_finite());
    }

    #[test]
    fn a_slow_flow_loses_what_hagen_and_poiseuille_say() {
        // dp = 128 mu L Q / (pi D^4), exact for laminar flow in a long pipe. Re = 700.
        let at = 2e-4;
        let expected = 128.0 * 18.2e-6 * 3.0 * at / (core::f64::consts::PI * 0.024_f64.powi(4));
        let loss = duct::<f64>(0.024, 3.0, 0.0, 0.0).loss(flow(at), density(1.2), 18.2e-6).pascals();
        assert!((loss / expected - 1.0).abs() < 1e-12, "{loss} {expected}");
    }

    #[test]
    fn a_fast_flow_in_a_rough_duct_loses_what_colebrook_says() {
        // Colebrook, 1/sqrt(f) = -2 log10(e/3.7D + 2.51/(Re sqrt(f))), solved here by repetition.
        let (across, length, roughness, fittings, at) = (0.08, 6.0, 0.15e-3, 1.3, 0.1);
        let velocity = at / (core::f64::consts::FRAC_PI_4 * across * across);
        let reynolds = 1.1 * velocity * across / 18e-6;
        let mut factor = 0.02_f64;
        for _ in 0..60 {
            factor = (-2.0 * (roughness / across / 3.7 + 2.51 / (reynolds * factor.sqrt())).log10()).powi(-2);
        }
        let expected = (factor * length / across + fittings) * 0.5 * 1.1 * velocity * velocity;
        let loss = duct::<f64>(across, length, roughness, fittings).loss(flow(at), density(1.1), 18e-6).pascals();
        assert!((loss / expected - 1.0).abs() < 0.015, "{loss} {expected}");
    }

    #[test]
    fn rest_loses_nothing_and_backward_is_the_mirror() {
        let duct = duct::<f32>(0.05, 2.0, 1e-5, 0.5);
        assert_eq!(duct.loss(flow(0.0), density(1.2), 18e-6).pascals(), 0.0);
        let forward = duct.loss(flow(0.02), density(1.2), 18e-6).pascals();
        assert_eq!(duct.loss(flow(-0.02), density(1.2), 18e-6).pascals(), -forward);
        let millimeters = |value: f64| Length::from_millimeters(value);
        assert!(Duct::new(millimeters(2.0), millimeters(0.0), millimeters(0.0), 0.0).is_err());
        assert!(Duct::new(millimeters(50.0), millimeters(0.0), millimeters(0.0), f64::NAN).is_err());
    }

    proptest! {
        #[test]
        fn loss_rises_with_flow_length_and_fittings_and_falls_with_diameter(
            across in Input::DuctDiameter.range().min..Input::DuctDiameter.range().max / 1.1,
            length in 0.01..Input::DuctLength.range().max / 1.1,
            roughness in Input::Roughness.range().min..Input::Roughness.range().max,
            fittings in 0.01..Input::FittingLoss.range().max / 1.1,
            exponent in -6.0..0.3_f64, air in 0.6..1.6_f64,
        ) {
            let at = 10.0_f64.powf(exponent);
            let loss = |across, length, fittings, at| {
                duct::<f64>(across, length, roughness, fittings).loss(flow(at), density(air), 18e-6).pascals()
            };
            let here = loss(across, length, fittings, at);
            prop_assert!(here.is_finite() && here > 0.0);
            prop_assert!(loss(across, length, fittings, at * 1.01) > here);
            prop_assert!(loss(across, length * 1.1, fittings, at) > here);
            prop_assert!(loss(across, length, fittings * 1.1, at) > here);
            prop_assert!(loss(across * 1.1, length, fittings, at) < here);
            let narrow = duct::<f32>(across, length, roughness, fittings).loss(flow(at as f32), density(air), 18e-6);
            prop_assert!((narrow.pascals().to_f64() / here - 1.0).abs() < 2e-5);
        }
    }
}
