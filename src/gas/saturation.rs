//! How near the gas is to condensing.

use super::mixture::Mixture;
use crate::limits::Input;
use crate::quantity::{AbsolutePressure, Temperature};
use crate::scalar::Scalar;
use crate::species::SpeciesRow;
use crate::words::words;

/// Temperature the coefficients of a gas are scaled by, K.
pub(super) const SCALE: f64 = 300.0;

/// Above this share of its dew-point pressure a supply is called near condensing.
pub const NEAR_CONDENSING: f64 = 0.85;

impl<S: Scalar> Mixture<S> {
    /// Pressure over the dew-point pressure at this temperature: sum of fraction * p / vapor pressure.
    ///
    /// Below [`NEAR_CONDENSING`] the gas is dry; above one some of it would be liquid. A species above its
    /// critical temperature does not condense.
    ///
    /// # Source
    ///
    /// Raoult's law with the vapor pressures of McGarry (1983); propane within 0.5 % of the reference equation.
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
            let data = species.row();
            if temperature.kelvin() < S::c(data.vapor_pressure.reduced_by[0]) {
                sum + fraction * pressure.pascals() / vapor_pressure(data, temperature.kelvin())
            } else {
                sum
            }
        })
    }
}

/// The dew-point pressure of one mixture as ln p = a + b x + c x^2, x = 300 K / T, through three temperatures of the
/// accepted range.
///
/// Enough to say how far beyond the dew point a refused state lies: within 1 % for a gas that is sold as a liquid.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct DewPoint<S> {
    pub log_pressure: [S; 3],
}

words!(DewPoint { log_pressure });

impl<S: Scalar> DewPoint<S> {
    /// Most a mixture that never condenses is said to bear, Pa.
    const NEVER: f64 = 1e12;

    pub fn new(mixture: &Mixture<S>) -> Self {
        let range = Input::GasTemperature.range();
        let [low, middle, high] = [range.min, 0.5 * (range.min + range.max), range.max].map(|kelvin| {
            let kelvin = S::c(kelvin);
            let ratio =
                mixture.saturation_ratio(AbsolutePressure::from_pascals(S::one()), Temperature::from_kelvin(kelvin));
            (S::c(SCALE) / kelvin, -ratio.larger(S::c(1.0 / Self::NEVER)).ln())
        });
        // Newton's divided differences.
        let slope = |(x, y): (S, S), (other_x, other_y): (S, S)| (other_y - y) / (other_x - x);
        let first = slope(low, middle);
        let c = (slope(middle, high) - first) / (high.0 - low.0);
        let b = first - c * (low.0 + middle.0);
        Self { log_pressure: [low.1 - low.0 * (b + c * low.0), b, c] }
    }

    /// A pressure over the dew point's.
    pub fn ratio(&self, pascals: S, kelvin: S) -> S {
        let [a, b, c] = self.log_pressure;
        let x = S::c(SCALE) / kelvin;
        pascals * (-(a + x * (b + x * c))).exp()
    }
}

/// Vapor pressure of a pure species below its critical temperature, Pa.
pub(super) fn vapor_pressure<S: Scalar>(data: &SpeciesRow, kelvin: S) -> S {
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

#[cfg(test)]
mod tests {
    use super::{DewPoint, Mixture};
    use crate::gas::Species;
    use crate::quantity::{AbsolutePressure, Temperature};

    #[test]
    fn the_short_form_of_the_dew_point_follows_the_long_one() {
        let parts = |list: &[(Species, f64)]| Mixture::new(list).unwrap();
        for mixture in [
            Mixture::pure(Species::Propane),
            Mixture::pure(Species::NormalPentane),
            parts(&[(Species::Propane, 0.6), (Species::NormalButane, 0.3), (Species::Isobutane, 0.1)]),
        ] {
            let short = DewPoint::new(&mixture);
            for kelvin in [240.0, 255.0, 273.15, 300.0, 320.0] {
                let long =
                    mixture.saturation_ratio(AbsolutePressure::from_pascals(3e5), Temperature::from_kelvin(kelvin));
                assert!((short.ratio(3e5, kelvin) / long - 1.0).abs() < 0.01, "{kelvin}");
            }
        }
    }
}
