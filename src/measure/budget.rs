//! Uncertainty carried from inputs to results.

use crate::dual::Dual;
use crate::error::Result;
use crate::scalar::{Float, Scalar};

/// What coverage factor the expanded uncertainties of this room have.
const COVERAGE: f64 = 2.0;
/// A first-order spread is believed when the second order moves it by no more than this share.
const STRAIGHT: f64 = 0.1;
/// Points of the plan that looks for inputs acting together.
const DESIGN: usize = 32;
/// Columns of that plan that no pair of others adds up to: those with an odd number of ones.
const COLUMNS: [u8; 16] = [1, 2, 4, 8, 16, 7, 11, 13, 14, 19, 21, 22, 25, 26, 28, 31];

/// Results that follow from uncertain inputs.
pub trait Measurand<const N: usize, const M: usize> {
    /// The results where each input departs from its best estimate by so much, in the input's own unit.
    ///
    /// # Errors
    ///
    /// What the rooms refuse.
    fn results<S: Scalar>(&self, deviations: [S; N]) -> Result<[S; M]>;
}

/// How sure one result is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Budget<F, const N: usize> {
    /// The result at the best estimates.
    pub value: F,
    /// What a standard uncertainty of each input moves the result by, to first order, with its sign.
    pub contributions: [F; N],
    /// The standard uncertainty with curvature and inputs acting together counted.
    pub second_order: F,
    /// How far the mean of the result lies from its value, because of curvature.
    pub shift: F,
    /// Whether an input's spread reaches beyond what has an answer.
    pub at_limit: bool,
}

impl<F: Float, const N: usize> Budget<F, N> {
    /// Standard uncertainty, to first order: the root of the sum of the squared contributions.
    #[must_use]
    pub fn standard(&self) -> F {
        self.variance().sqrt()
    }

    fn variance(&self) -> F {
        self.contributions.iter().fold(F::zero(), |sum, part| sum + part.squared())
    }

    /// Share of an input in the variance, 0 to 1.
    #[must_use]
    pub fn share(&self, input: usize) -> F {
        let variance = self.variance();
        match self.contributions.get(input) {
            Some(part) if variance > F::zero() => part.squared() / variance,
            _ => F::zero(),
        }
    }

    /// The input with the largest share; none when every input is sure.
    #[must_use]
    pub fn largest(&self) -> Option<usize> {
        let mut largest = None;
        let mut most = F::zero();
        for (input, part) in self.contributions.iter().enumerate() {
            if part.abs() > most {
                (largest, most) = (Some(input), part.abs());
            }
        }
        largest
    }

    /// Whether the first order tells the spread within a tenth. Near a limit, or where a curve bends within the
    /// spread, it does not.
    #[must_use]
    pub fn is_straight(&self) -> bool {
        let standard = self.standard();
        !self.at_limit
            && (self.second_order - standard).abs() <= F::c(STRAIGHT) * standard
            && self.shift.abs() <= F::c(COVERAGE * STRAIGHT) * standard
    }

    /// Expanded uncertainty at k = 2: to first order where that holds, else the larger of both orders.
    #[must_use]
    pub fn expanded(&self) -> F {
        let standard = self.standard();
        F::c(COVERAGE) * if self.is_straight() { standard } else { standard.larger(self.second_order) }
    }
}

/// The budgets of all results, from the standard uncertainty of each input.
///
/// u^2 = sum (df/dx_i u_i)^2, the derivatives exact. Beside it the variance of each input alone by three points
/// (0 and +-sqrt 3 standard uncertainties) and that of inputs acting together by a plan of 32 points at one standard
/// uncertainty, which say whether the first order can be believed.
///
/// # Range
///
/// Up to 16 inputs, independent of each other.
///
/// # Errors
///
/// What the results refuse at the best estimates.
///
/// # Source
///
/// JCGM 100:2008, Guide to the expression of uncertainty in measurement, 5.1.2; the plan: a two-level fraction of
/// resolution IV, Box and Hunter, Technometrics 3 (1961) 311 (from memory).
///
/// # Examples
///
/// A product of 3 and 4, each known to 0.1: by hand sqrt((4 * 0.1)^2 + (3 * 0.1)^2) = 0.5.
///
/// ```
/// use jetwright::{Result, Scalar, measure::{Measurand, budgets}};
/// struct Product;
/// impl Measurand<2, 1> for Product {
///     fn results<S: Scalar>(&self, by: [S; 2]) -> Result<[S; 1]> {
///         Ok([(S::c(3.0) + by[0]) * (S::c(4.0) + by[1])])
///     }
/// }
/// let [budget] = budgets(&Product, [0.1_f64, 0.1]).unwrap();
/// assert!((budget.standard() - 0.5).abs() < 1e-12 && (budget.expanded() - 1.0).abs() < 1e-12);
/// assert!((budget.share(0) - 0.64).abs() < 1e-12 && budget.largest() == Some(0));
/// ```
pub fn budgets<F: Float, const N: usize, const M: usize>(
    of: &impl Measurand<N, M>,
    standard: [F; N],
) -> Result<[Budget<F, N>; M]> {
    const { assert!(N <= COLUMNS.len()) };
    let exact = of.results(Dual::variables([F::zero(); N]))?;
    let mut budgets = exact.map(|result| Budget {
        value: result.value,
        contributions: core::array::from_fn(|input| result.partials[input] * standard[input]),
        second_order: F::zero(),
        shift: F::zero(),
        at_limit: false,
    });
    let mut variances = [F::zero(); M];
    for input in (0..N).filter(|&input| standard[input] > F::zero()) {
        let reach = F::c(3.0).sqrt() * standard[input];
        let moved = |by: F| of.results(core::array::from_fn(|at| if at == input { by } else { F::zero() }));
        let (Ok(less), Ok(more)) = (moved(-reach), moved(reach)) else {
            budgets.iter_mut().for_each(|budget| budget.at_limit = true);
            continue;
        };
        for (result, budget) in budgets.iter_mut().enumerate() {
            let (down, up) = (less[result] - budget.value, more[result] - budget.value);
            let mean = (down + up) / F::c(6.0);
            budget.shift += mean;
            variances[result] += (down.squared() + up.squared()) / F::c(6.0) - mean.squared();
        }
    }
    for (result, together) in acting_together(of, standard, &mut budgets).into_iter().enumerate() {
        budgets[result].second_order = (variances[result] + together).larger(F::zero()).sqrt();
    }
    Ok(budgets)
}

/// The variance that no input has alone, of each result.
fn acting_together<F: Float, const N: usize, const M: usize>(
    of: &impl Measurand<N, M>,
    standard: [F; N],
    budgets: &mut [Budget<F, N>; M],
) -> [F; M] {
    let sign = |row: usize, input: usize| {
        let odd = (row as u8 & COLUMNS[input]).count_ones() % 2 == 1;
        if odd { -F::one() } else { F::one() }
    };
    let (mut sum, mut squares, mut alone) = ([F::zero(); M], [F::zero(); M], [[F::zero(); N]; M]);
    for row in 0..DESIGN {
        let Ok(found) = of.results(core::array::from_fn(|input| sign(row, input) * standard[input])) else {
            budgets.iter_mut().for_each(|budget| budget.at_limit = true);
            return [F::zero(); M];
        };
        for result in 0..M {
            let by = found[result] - budgets[result].value;
            sum[result] += by;
            squares[result] += by.squared();
            for (input, effect) in alone[result].iter_mut().enumerate() {
                *effect += sign(row, input) * by;
            }
        }
    }
    let mean = |total: F| total / F::c(DESIGN as f64);
    core::array::from_fn(|result| {
        let of_all = mean(squares[result]) - mean(sum[result]).squared();
        let of_each = alone[result].iter().fold(F::zero(), |sum, &effect| sum + mean(effect).squared());
        (of_all - of_each).larger(F::zero())
    })
}
