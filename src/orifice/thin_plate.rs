//! A thin sharp plate: the stream contracts behind it, and less so the lower the pressure ahead.

use super::stream::Stream;
use crate::scalar::Scalar;

/// Below this Reynolds number the ISO term would run away.
const LEAST_REYNOLDS: f64 = 2500.0;

/// Contraction coefficient at low speed in a wide approach: 0.5961 + 0.000521 (10^6/Re)^0.7.
///
/// # Range
///
/// Reynolds number on the bore; held at its value of 2500 below that.
///
/// The standard itself covers bores from 12.5 mm and diameter ratios from 0.1: for a jet this is an
/// extrapolation, and the spread of the coefficient allows for it.
///
/// # Source
///
/// ISO 5167-2:2003, equation 4 (Reader-Harris/Gallagher) as the diameter ratio goes to zero.
///
/// # Examples
///
/// ```
/// use jetwright::orifice::contraction_coefficient;
/// assert!((contraction_coefficient(1e6_f64) - 0.596621).abs() < 1e-6);
/// assert_eq!(contraction_coefficient(100.0_f64), contraction_coefficient(2500.0));
/// ```
#[must_use]
pub fn contraction_coefficient<S: Scalar>(reynolds_number: S) -> S {
    Contraction::at(reynolds_number).coefficient()
}

/// The contraction at one Reynolds number, from which a near one follows without another power.
pub(super) struct Contraction<S> {
    reynolds_number: S,
    viscous: S,
}

impl<S: Scalar> Contraction<S> {
    pub(super) fn at(reynolds_number: S) -> Self {
        let reynolds_number = reynolds_number.larger(S::c(LEAST_REYNOLDS));
        Self { reynolds_number, viscous: S::c(0.000_521) * (S::c(1e6) / reynolds_number).powf(S::c(0.7)) }
    }

    /// The same at a Reynolds number within a factor of 1.5: (1+x)^0.7 by (1 + 0.85 x) / (1 + 0.15 x), which
    /// is right to 0.2 % of a term that is itself a fiftieth of the whole.
    pub(super) fn moved_to(&self, reynolds_number: S) -> Self {
        let reynolds_number = reynolds_number.larger(S::c(LEAST_REYNOLDS));
        let x = self.reynolds_number / reynolds_number - S::one();
        let power = (S::one() + S::c(0.85) * x) / (S::one() + S::c(0.15) * x);
        Self { reynolds_number, viscous: self.viscous * power }
    }

    pub(super) fn coefficient(&self) -> S {
        S::c(0.5961) + self.viscous
    }
}

/// Discharge coefficient of a thin sharp plate, subsonic and beyond choking:
/// f K^2 C^2 - (K^2/d + r* - r) C + (1 - r) = 0 with the force defect f = 1/Ci - 1/(2 Ci^2).
///
/// K^2, d and r* are the stream's flux squared, density ratio and pressure ratio where it is fastest; r is the
/// pressure ahead over the supply's. Below choking r* = r.
///
/// # Range
///
/// Contraction coefficient 0.5 to 1; any pressure ratio from 0 to 1.
///
/// # Source
///
/// Jobson, "On the flow of a compressible fluid through orifices", Proc. IMechE 169 (1955) 767, the momentum
/// balance re-derived with a general stream in place of the perfect gas.
///
/// # Examples
///
/// ```
/// use jetwright::orifice::{Stream, thin_plate};
/// // Ci = 0.6, k = 1.4: 0.6393 at r = 0.8 and 0.8340 at r = 0.2.
/// assert!((thin_plate(0.6_f64, &Stream::perfect_gas(1.4, 0.8)) - 0.6393).abs() < 1e-4);
/// assert!((thin_plate(0.6_f64, &Stream::perfect_gas(1.4, 0.2)) - 0.8340).abs() < 1e-4);
/// ```
#[must_use]
pub fn thin_plate<S: Scalar>(contraction_coefficient: S, stream: &Stream<S>) -> S {
    let fall = stream.fall;
    if fall <= S::zero() {
        return contraction_coefficient;
    }
    let inverse = S::one() / contraction_coefficient;
    let force_defect = inverse - S::c(0.5) * inverse.squared();
    let beyond_choking = (stream.pressure_ratio - (S::one() - fall)).larger(S::zero());
    let linear = stream.flux_squared / stream.density_ratio + beyond_choking;
    let root = (linear.squared() - S::c(4.0) * force_defect * stream.flux_squared * fall).larger(S::zero()).sqrt();
    S::c(2.0) * fall / (linear + root)
}
