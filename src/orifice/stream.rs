//! The lossless stream a coefficient is referred to, as plain ratios.

use crate::gas::Expansion;
use crate::scalar::Scalar;

/// An expansion without loss, made dimensionless by the supply's pressure and density.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stream<S = f64> {
    /// (supply pressure - pressure ahead) / supply pressure.
    pub fall: S,
    /// Pressure where the stream is fastest over the supply's.
    pub pressure_ratio: S,
    /// Density there over the supply's.
    pub density_ratio: S,
    /// flux^2 / (supply pressure * supply density).
    pub flux_squared: S,
    /// Isentropic exponent.
    pub exponent: S,
}

impl<S: Scalar> Stream<S> {
    /// The stream of an expansion of the real gas.
    #[must_use]
    pub fn new(expansion: &Expansion<S>, fall: S) -> Self {
        Self {
            fall,
            pressure_ratio: expansion.pressure_ratio,
            density_ratio: expansion.density_ratio,
            flux_squared: expansion.flux_squared,
            exponent: expansion.exponent,
        }
    }

    /// The stream of a perfect gas of constant exponent k into a pressure ratio:
    /// flux^2 = 2k/(k-1) r^(2/k) (1 - r^((k-1)/k)), r not below (2/(k+1))^(k/(k-1)).
    ///
    /// ```
    /// use jetwright::orifice::Stream;
    /// // Air choked: C*^2 with C* = 0.684731 and r* = 0.528282 (NACA 1135).
    /// let air = Stream::perfect_gas(1.4_f64, 0.1);
    /// assert!((air.flux_squared.sqrt() - 0.684731).abs() < 1e-6);
    /// assert!((air.pressure_ratio - 0.528282).abs() < 1e-6);
    /// ```
    #[must_use]
    pub fn perfect_gas(exponent: S, pressure_ratio: S) -> Self {
        let one = S::one();
        let power = (exponent - one) / exponent;
        let throat = ((S::c(2.0) / (exponent + one)).ln() / power).exp();
        let at = pressure_ratio.larger(throat);
        let density_ratio = (at.ln() / exponent).exp();
        let flux_squared = -S::c(2.0) / power * density_ratio.squared() * (power * at.ln()).exp_m1();
        Self { fall: one - pressure_ratio, pressure_ratio: at, density_ratio, flux_squared, exponent }
    }
}
