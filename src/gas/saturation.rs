//! How near the gas is to condensing.

use super::mixture::Mixture;
use super::species::SpeciesData;
use crate::quantity::{AbsolutePressure, Temperature};
use crate::scalar::Scalar;

/// Above this share of its dew-point pressure a supply is called near condensing.
pub const NEAR_CONDENSING: f64 = 0.85;

impl<S: Scalar> Mixture<S> {
    /// Pressure over the dew-point pressure at this temperature: sum of fraction * p / vapour pressure.
    ///
    /// Below [`NEAR_CONDENSING`] the gas is dry; above one some of it would be liquid. A species above its
    /// critical temperature does not condense.
    ///
    /// # Source
    ///
    /// Raoult's law with the vapour pressures of McGarry (1983); propane within 0.5 % of the reference equation.
    ///
    /// # Examples
    ///
    /// ```
    /// use jetwright::gas::{Mixture, Species};
    /// use jetwright::quantity::{AbsolutePressure, Temperature};
    /// let propane = Mixture::<f64>::pure(Species::Propane);
    /// // Propane boils at -42 degC under one atmosphere.
    /// let ratio = propane.saturation_ratio(AbsolutePressure::from_pascals(101_325.0), Temperature::from_celsius(-42.1));
    /// assert!((ratio - 1.0).abs() < 0.01);
    /// ```
    #[must_use]
    pub fn saturation_ratio(&self, pressure: AbsolutePressure<S>, temperature: Temperature<S>) -> S {
        self.parts().fold(S::zero(), |sum, (species, fraction)| {
            let data = species.data();
            if temperature.kelvin() < S::c(data.vapor_pressure.reduced_by[0]) {
                sum + fraction * pressure.pascals() / vapor_pressure(data, temperature.kelvin())
            } else {
                sum
            }
        })
    }
}

/// Vapour pressure of a pure species below its critical temperature, Pa.
pub(super) fn vapor_pressure<S: Scalar>(data: &SpeciesData, kelvin: S) -> S {
    let [critical_temperature, critical_pressure] = data.vapor_pressure.reduced_by;
    let reduced = kelvin / S::c(critical_temperature);
    let x = S::one() - reduced;
    let root = x.sqrt();
    let [a, b, c, d] = data.vapor_pressure.wagner.map(S::c);
    // McGarry's form has x^1.5, x^3 and x^6.
    let cube = x.squared() * x;
    let sum = x * (a + b * root) + cube * c + cube.squared() * d;
    S::c(critical_pressure) * (sum / reduced).exp()
}
