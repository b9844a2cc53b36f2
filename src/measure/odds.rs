//! The normal distribution: how likely a departure is by chance.

use crate::scalar::Scalar;

/// Coefficients of the rational approximation below, in Horner order from the constant.
const CHEBYSHEV: [f64; 10] = [
    -1.265_512_23,
    1.000_023_68,
    0.374_091_96,
    0.096_784_18,
    -0.186_288_06,
    0.278_868_07,
    -1.135_203_98,
    1.488_515_87,
    -0.822_152_23,
    0.170_872_77,
];

/// Chance that a normal number departs from its mean by more than `deviations` standard deviations, either way:
/// erfc(z / sqrt 2), within 1.2e-7 of itself everywhere.
///
/// # Source
///
/// Press et al., Numerical Recipes, 2nd ed. (1992), section 6.2, the Chebyshev fit of erfc (from memory); checked in
/// the tests against printed tables.
///
/// # Examples
///
/// ```
/// use jetwright::measure::odds_beyond;
/// // Printed tables: 4.55 in 100 beyond two standard deviations, 0.27 beyond three.
/// assert!((odds_beyond(2.0_f64) - 0.0455).abs() < 1e-5 && (odds_beyond(-3.0_f64) - 0.0027).abs() < 1e-6);
/// ```
#[must_use]
pub fn odds_beyond<S: Scalar>(deviations: S) -> S {
    let x = deviations.abs() * S::c(core::f64::consts::FRAC_1_SQRT_2);
    let t = S::one() / (S::one() + S::c(0.5) * x);
    let sum = CHEBYSHEV.iter().rev().fold(S::zero(), |sum, &coefficient| S::c(coefficient) + t * sum);
    (t * (sum - x.squared()).exp()).smaller(S::one())
}

/// Share of a normal distribution below so many standard deviations over its mean.
///
/// # Examples
///
/// ```
/// use jetwright::measure::share_below;
/// assert!((share_below(1.6449_f64) - 0.95).abs() < 1e-5);
/// ```
#[must_use]
pub fn share_below<S: Scalar>(deviations: S) -> S {
    let beyond = S::c(0.5) * odds_beyond(deviations);
    if deviations < S::zero() { beyond } else { S::one() - beyond }
}

#[cfg(test)]
mod tests {
    use super::{odds_beyond, share_below};
    use crate::Scalar;

    #[test]
    fn the_tails_are_those_of_printed_tables() {
        // Abramowitz and Stegun, Handbook of Mathematical Functions, table 26.1 (from memory, computed anew with SciPy).
        for (z, two_sided) in
            [(0.0, 1.0), (0.5, 0.617_075_08), (1.0, 0.317_310_51), (2.0, 0.045_500_26), (4.0, 6.334_248e-5)]
        {
            let relative = odds_beyond::<f64>(z) / two_sided - 1.0;
            assert!(relative.abs() < 2e-7, "{z}: {relative}");
            assert!((odds_beyond(z as f32).to_f64() / two_sided - 1.0).abs() < 1e-4, "{z}");
        }
        assert!(
            (share_below(-1.0_f64) - 0.158_655_25).abs() < 2e-8 && (share_below(1.0_f64) - 0.841_344_75).abs() < 2e-8
        );
    }
}
