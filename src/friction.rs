//! Friction of a flow in a round wall: one factor for jets, ducts and ports.

use crate::scalar::Scalar;
use crate::words::words;

/// Reynolds number below which a flow is laminar.
const LAMINAR_BELOW: f64 = 2000.0;
/// Reynolds number above which a flow is turbulent.
const TURBULENT_ABOVE: f64 = 4000.0;
/// Roughness over diameter up to which the turbulent factor is published (Moody 1944; Haaland 1983).
const ROUGHEST: f64 = 0.05;

/// The Darcy friction factor and how it falls.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Friction<S = f64> {
    /// Darcy factor: loss over dynamic head, a diameter of length.
    pub factor: S,
    /// d ln(factor) / d ln(Reynolds number).
    pub log_slope: S,
}

/// A wall of given relative roughness.
///
/// What depends on the roughness alone is worked out once.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wall<S = f64> {
    roughness_term: S,
}

words!(Wall { roughness_term });

impl<S: Scalar> Wall<S> {
    /// A wall whose roughness is this share of the diameter; more than a twentieth counts as a twentieth, the
    /// end of the published range.
    #[must_use]
    pub fn new(relative_roughness: S) -> Self {
        let roughness = relative_roughness.smaller(S::c(ROUGHEST));
        let roughness_term = if roughness > S::zero() { (roughness / S::c(3.7)).powf(S::c(1.11)) } else { S::zero() };
        Self { roughness_term }
    }

    /// The same in another number type.
    #[must_use]
    pub fn cast<T: Scalar>(&self) -> Wall<T> {
        Wall { roughness_term: T::c(self.roughness_term.to_f64()) }
    }

    /// The Darcy friction factor: 64/Re below 2000, 1/sqrt(f) = -1.8 log10((e/3.7D)^1.11 + 6.9/Re)
    /// above 4000, and a smooth passage between.
    ///
    /// # Units
    ///
    /// All plain numbers; the Reynolds number is on the diameter and must be positive.
    ///
    /// # Source
    ///
    /// Haaland, J. Fluids Eng. 105 (1983) 89, equation 10, within 2 % of Colebrook; the passage is our own.
    ///
    /// # Examples
    ///
    /// ```
    /// use jetwright::friction::Wall;
    /// let smooth = Wall::new(0.0_f64);
    /// assert!((smooth.friction(1000.0).factor - 0.064).abs() < 1e-12);
    /// assert!((smooth.friction(1e5).factor - 0.0179).abs() < 1e-4); // Colebrook 0.0180
    /// ```
    #[must_use]
    pub fn friction(&self, reynolds_number: S) -> Friction<S> {
        let one = S::one();
        let laminar = S::c(64.0) / reynolds_number;
        if reynolds_number < S::c(LAMINAR_BELOW) {
            return Friction { factor: laminar, log_slope: -one };
        }
        let (turbulent, turbulent_slope) = self.haaland(reynolds_number);
        if reynolds_number > S::c(TURBULENT_ABOVE) {
            return Friction { factor: turbulent, log_slope: turbulent_slope };
        }
        let t = (reynolds_number - S::c(LAMINAR_BELOW)) / S::c(TURBULENT_ABOVE - LAMINAR_BELOW);
        let share = t * t * (S::c(3.0) - S::c(2.0) * t);
        let share_slope = S::c(6.0) * t * (one - t) * reynolds_number / S::c(TURBULENT_ABOVE - LAMINAR_BELOW);
        let factor = laminar + share * (turbulent - laminar);
        let slope = share_slope * (turbulent - laminar) - (one - share) * laminar + share * turbulent_slope * turbulent;
        Friction { factor, log_slope: slope / factor }
    }

    fn haaland(&self, reynolds_number: S) -> (S, S) {
        let per_decade = S::c(1.8 / core::f64::consts::LN_10);
        let viscous = S::c(6.9) / reynolds_number;
        let sum = self.roughness_term + viscous;
        let root_inverse = -per_decade * sum.ln();
        let factor = S::one() / root_inverse.squared();
        (factor, -S::c(2.0) * per_decade * viscous / (sum * root_inverse))
    }
}

#[cfg(test)]
mod tests {
    use super::Wall;

    #[test]
    fn haaland_follows_colebrook() {
        for roughness in [0.0, 1e-4, 1e-3, 5e-3, 2e-2] {
            for exponent in 0..12 {
                let reynolds = 4001.0 * f64::powf(1.6, f64::from(exponent));
                let ours = Wall::new(roughness).friction(reynolds).factor;
                let mut colebrook = 0.02_f64;
                for _ in 0..60 {
                    let sum = roughness / 3.7 + 2.51 / (reynolds * colebrook.sqrt());
                    colebrook = (-2.0 * sum.log10()).powi(-2);
                }
                assert!((ours / colebrook - 1.0).abs() < 0.021, "{roughness} {reynolds}: {ours} {colebrook}");
            }
        }
    }

    #[test]
    fn the_slope_is_that_of_the_factor_and_the_joints_are_closed() {
        let wall = Wall::new(2e-3_f64);
        for step in 1..400 {
            let reynolds = 100.0 * f64::powf(1.02, f64::from(step));
            let (low, high) = (wall.friction(reynolds * 0.9999), wall.friction(reynolds * 1.0001));
            let slope = (high.factor / low.factor).ln() / (1.0001_f64 / 0.9999).ln();
            assert!((slope - wall.friction(reynolds).log_slope).abs() < 1e-3, "{reynolds}");
        }
    }
}
