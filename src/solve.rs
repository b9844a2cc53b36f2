//! One bracketed root finder with a fixed cap, used by every inverse.

use crate::error::{Error, Result};
use crate::limits::Input;
use crate::scalar::Scalar;

/// Most evaluations [`root`] ever makes after those at the two ends.
pub const ITERATION_CAP: usize = 80;

/// A root and what it cost.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Root<S> {
    /// Where the function is zero.
    pub x: S,
    /// Evaluations made between the ends.
    pub iterations: usize,
}

/// The zero of a continuous function between `low` and `high`, at whose values it has opposite signs.
///
/// Inverse quadratic interpolation where it is safe, bisection elsewhere, until the bracket is a few
/// spacings of the number type wide. Derivatives come to the root by the implicit function: those of the function
/// there, over its slope, for which a number that carries any pays two more evaluations.
///
/// # Errors
///
/// [`Error::NoSolution`] naming `sought` when both ends have the same sign, with the value at the end
/// nearer to zero; [`Error::NotConverged`] when the cap is used up or the function is not finite.
///
/// # Source
///
/// Chandrupatla, "A new hybrid quadratic/bisection algorithm for finding the zero of a nonlinear
/// function without using derivatives", Advances in Engineering Software 28 (1997) 145 (from memory).
///
/// # Examples
///
/// ```
/// use jetwright::{Input, solve};
/// let root = solve::root(Input::Bore, 0.0, 2.0, |x: f64| x * x - 2.0).unwrap();
/// assert!((root.x - 1.4142135623730951).abs() < 1e-14);
/// assert!(root.iterations < 12);
/// ```
pub fn root<S: Scalar>(sought: Input, low: S, high: S, mut function: impl FnMut(S) -> S) -> Result<Root<S>> {
    let (zero, one, half) = (S::zero(), S::one(), S::c(0.5));
    let (mut a, mut b) = (high.detach(), low.detach());
    let (mut fa, mut fb) = (function(a), function(b));
    if !(fa.is_finite() && fb.is_finite()) {
        return Err(Error::NotConverged { input: sought });
    }
    if fa != zero && fb != zero && (fa > zero) == (fb > zero) {
        let nearest = if fa.abs() < fb.abs() { fa } else { fb };
        return Err(Error::NoSolution { input: sought, nearest: nearest.to_f32() });
    }
    let (mut c, mut fc);
    let mut fraction = half;
    for iterations in 0..ITERATION_CAP {
        let (best, f_best) = if fa.abs() < fb.abs() { (a, fa) } else { (b, fb) };
        let tolerance = S::c(2.0) * S::EPSILON * best.abs() / (b - a).abs();
        if f_best == zero || a == b || tolerance >= half {
            let carried = if S::CARRIES_DERIVATIVES {
                carried(best, f_best, (low.detach(), high.detach()), &mut function)
            } else {
                zero
            };
            return Ok(Root { x: best - carried, iterations });
        }
        let x = a + fraction.clamped(tolerance, one - tolerance) * (b - a);
        let fx = function(x);
        if !fx.is_finite() {
            return Err(Error::NotConverged { input: sought });
        }
        if (fx > zero) == (fa > zero) {
            (c, fc) = (a, fa);
        } else {
            (c, fc, b, fb) = (b, fb, a, fa);
        }
        (a, fa) = (x, fx);
        fraction = interpolated(a, fa.detach(), b, fb.detach(), c, fc.detach());
    }
    Err(Error::NotConverged { input: sought })
}

/// What the derivatives of the function move the root by: (f - its value) / (df/dx).
///
/// The slope is a central difference over the cube root of a spacing, since the bracket left by the search is too
/// narrow to hold one.
fn carried<S: Scalar>(x: S, fx: S, (low, high): (S, S), function: &mut impl FnMut(S) -> S) -> S {
    let width = (high - low).abs();
    let step = S::EPSILON.cbrt() * x.abs().larger(S::c(1e-3) * width).smaller(width);
    let after = (x + step).smaller(low.larger(high));
    let before = (x - step).larger(low.smaller(high));
    let slope = (function(after).detach() - function(before).detach()) / (after - before);
    if slope == S::zero() || !slope.is_finite() { S::zero() } else { (fx - fx.detach()) / slope }
}

/// Halvings of [`highest_answered`], which bring the border to a spacing of single precision.
const HALVINGS: usize = 24;

/// The highest of `low ..= high` that has an answer, where everything below an answer has one.
///
/// # Errors
///
/// What refuses `high`, when `low` is refused too.
pub(crate) fn highest_answered<S: Scalar, T>(low: S, high: S, answer: impl Fn(S) -> Result<T>) -> Result<S> {
    let Err(refused) = answer(high) else { return Ok(high) };
    answer(low).map_err(|_| refused)?;
    let (mut answered, mut beyond) = (low, high);
    for _ in 0..HALVINGS {
        let middle = S::c(0.5) * (answered + beyond);
        if answer(middle).is_ok() { answered = middle } else { beyond = middle }
    }
    Ok(answered)
}

/// Where between `a` and `b` the parabola through three points crosses zero, as a fraction of the way;
/// one half where the parabola cannot be trusted.
fn interpolated<S: Scalar>(a: S, fa: S, b: S, fb: S, c: S, fc: S) -> S {
    let one = S::one();
    let xi = (a - b) / (c - b);
    let phi = (fa - fb) / (fc - fb);
    if phi.squared() < xi && (one - phi).squared() < one - xi {
        fa / (fb - fa) * fc / (fb - fc) + (c - a) / (b - a) * fa / (fc - fa) * fb / (fc - fb)
    } else {
        S::c(0.5)
    }
}

#[cfg(test)]
mod tests {
    use super::{highest_answered, root};
    use crate::{Error, Input, Scalar};

    fn awkward<S: Scalar>() -> usize {
        let functions: [fn(S) -> S; 6] = [
            |x| x * x * x - S::c(1e-3),
            |x| (x - S::c(0.37)) * (S::c(1.0) + S::c(1e4) * (x - S::c(0.37)).squared()),
            |x| if x < S::c(0.71) { S::c(-1.0) } else { S::c(1e6) },
            |x| (S::c(30.0) * (x - S::c(0.9))).exp() - S::c(1e-8),
            |x| S::c(1e-6) - x.squared().squared().squared().squared(),
            |x| x - S::c(1e-5),
        ];
        let mut worst = 0;
        for function in functions {
            let found = root(Input::Bore, S::zero(), S::one(), function).unwrap();
            let step = S::c(1e-5) * found.x.abs().larger(S::c(1e-9));
            let (before, after) = (function(found.x - step), function(found.x + step));
            assert!((before > S::zero()) != (after > S::zero()), "no change of sign at {:?}", found.x);
            worst = worst.max(found.iterations);
        }
        worst
    }

    #[test]
    fn awkward_functions_stay_far_under_the_cap() {
        assert!(awkward::<f64>() <= 64, "{}", awkward::<f64>());
        assert!(awkward::<f32>() <= 40, "{}", awkward::<f32>());
    }

    /// Evaluations that a root takes, and those it counts.
    fn paid<S: Scalar>() -> (usize, usize) {
        let mut calls = 0;
        let found = root(Input::Bore, S::zero(), S::c(2.0), |x| {
            calls += 1;
            x * x * x - S::c(0.7)
        });
        (calls, found.unwrap().iterations)
    }

    #[test]
    fn a_plain_number_pays_nothing_for_derivatives() {
        let ((single, of_single), (double, of_double)) = (paid::<f32>(), paid::<f64>());
        // The two ends and the steps between, and no more.
        assert_eq!((single, double), (of_single + 2, of_double + 2));
        let (carried, of_carried) = paid::<crate::Dual<f32, 3>>();
        assert_eq!((carried, of_carried), (of_single + 4, of_single));
    }

    #[test]
    fn the_border_of_the_answered_is_found() {
        let refused = Error::NotFinite { input: Input::Bore };
        let below = |border: f64| move |x: f64| if x <= border { Ok(()) } else { Err(refused) };
        assert_eq!(highest_answered(0.0, 1.0, below(2.0)), Ok(1.0));
        assert!((highest_answered(0.0, 1.0, below(0.3)).unwrap() - 0.3).abs() < 1e-7);
        assert_eq!(highest_answered(0.0, 1.0, below(-1.0)), Err(refused));
    }

    #[test]
    fn a_bracket_without_a_root_says_what_it_reached() {
        let error = root(Input::GaugePressure, 0.0, 1.0, |x: f64| x + 1.0).unwrap_err();
        assert_eq!(error, Error::NoSolution { input: Input::GaugePressure, nearest: 1.0 });
    }
}
