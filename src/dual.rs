//! A number that carries its derivatives: exact sensitivities of any result from the same source.

use core::cmp::Ordering;
use core::ops::{Add, AddAssign, Div, Mul, Neg, Sub, SubAssign};

use crate::scalar::{Float, Scalar, sealed};

/// A value with its partial derivatives by `N` inputs.
///
/// Comparisons, range checks and what an error reports look at the value alone, so a computation takes the branch
/// that the plain number takes and the derivatives are those of that branch. At a value of zero the root's slope
/// is infinite; its derivatives are given as zero there.
///
/// # Source
///
/// Griewank and Walther, Evaluating Derivatives, 2nd ed. (2008), chapter 3, forward mode (from memory).
///
/// # Examples
///
/// ```
/// use jetwright::{Dual, Scalar};
/// let [x, y] = Dual::variables([3.0_f64, 4.0]);
/// let distance = (x * x + y * y).sqrt();
/// assert_eq!(distance.value, 5.0);
/// // By hand: x / distance and y / distance.
/// assert!((distance.partials[0] - 0.6).abs() < 1e-15 && (distance.partials[1] - 0.8).abs() < 1e-15);
/// ```
#[derive(Clone, Copy, Debug)]
pub struct Dual<F, const N: usize> {
    /// The value.
    pub value: F,
    /// Its derivative by each of the inputs.
    pub partials: [F; N],
}

impl<F: Float, const N: usize> Dual<F, N> {
    /// A number that depends on none of the inputs.
    #[must_use]
    #[inline]
    pub fn constant(value: F) -> Self {
        Self { value, partials: [F::zero(); N] }
    }

    /// The inputs themselves: the derivative of each by itself is one.
    #[must_use]
    pub fn variables(values: [F; N]) -> [Self; N] {
        let mut index = 0;
        values.map(|value| {
            let mut variable = Self::constant(value);
            variable.partials[index] = F::one();
            index += 1;
            variable
        })
    }

    /// The chain rule: a function's value here and its slope.
    #[inline]
    fn chain(self, value: F, slope: F) -> Self {
        Self { value, partials: self.partials.map(|partial| partial * slope) }
    }

    /// The chain rule for two arguments.
    #[inline]
    fn joined(self, other: Self, value: F, slope: F, other_slope: F) -> Self {
        let partials = core::array::from_fn(|at| self.partials[at] * slope + other.partials[at] * other_slope);
        Self { value, partials }
    }
}

impl<F: Float, const N: usize> Default for Dual<F, N> {
    fn default() -> Self {
        Self::constant(F::zero())
    }
}

impl<F: Float, const N: usize> PartialEq for Dual<F, N> {
    #[inline]
    fn eq(&self, other: &Self) -> bool {
        self.value == other.value
    }
}

impl<F: Float, const N: usize> PartialOrd for Dual<F, N> {
    #[inline]
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        self.value.partial_cmp(&other.value)
    }
}

impl<F: Float, const N: usize> Add for Dual<F, N> {
    type Output = Self;
    #[inline]
    fn add(self, other: Self) -> Self {
        self.joined(other, self.value + other.value, F::one(), F::one())
    }
}

impl<F: Float, const N: usize> Sub for Dual<F, N> {
    type Output = Self;
    #[inline]
    fn sub(self, other: Self) -> Self {
        self.joined(other, self.value - other.value, F::one(), -F::one())
    }
}

impl<F: Float, const N: usize> Mul for Dual<F, N> {
    type Output = Self;
    #[inline]
    fn mul(self, other: Self) -> Self {
        self.joined(other, self.value * other.value, other.value, self.value)
    }
}

impl<F: Float, const N: usize> Div for Dual<F, N> {
    type Output = Self;
    #[inline]
    fn div(self, other: Self) -> Self {
        let (inverse, value) = (F::one() / other.value, self.value / other.value);
        self.joined(other, value, inverse, -value * inverse)
    }
}

impl<F: Float, const N: usize> Neg for Dual<F, N> {
    type Output = Self;
    #[inline]
    fn neg(self) -> Self {
        self.chain(-self.value, -F::one())
    }
}

impl<F: Float, const N: usize> AddAssign for Dual<F, N> {
    #[inline]
    fn add_assign(&mut self, other: Self) {
        *self = *self + other;
    }
}

impl<F: Float, const N: usize> SubAssign for Dual<F, N> {
    #[inline]
    fn sub_assign(&mut self, other: Self) {
        *self = *self - other;
    }
}

impl<F: Float, const N: usize> sealed::Sealed for Dual<F, N> {}

impl<F: Float, const N: usize> Scalar for Dual<F, N> {
    const EPSILON: Self = Self { value: F::EPSILON, partials: [F::ZERO; N] };
    const CARRIES_DERIVATIVES: bool = true;

    #[inline]
    fn c(constant: f64) -> Self {
        Self::constant(F::c(constant))
    }
    #[inline]
    fn either(double: f64, single: f32) -> Self {
        Self::constant(F::either(double, single))
    }
    #[inline]
    fn from_f32(number: f32) -> Self {
        Self::constant(F::from_f32(number))
    }
    #[inline]
    fn to_f64(self) -> f64 {
        self.value.to_f64()
    }
    #[inline]
    fn to_f32(self) -> f32 {
        self.value.to_f32()
    }
    #[inline]
    fn detach(self) -> Self {
        Self::constant(self.value)
    }
    #[inline]
    fn count(number: u32) -> Self {
        Self::constant(F::count(number))
    }
    #[inline]
    fn whole(self) -> u32 {
        self.value.whole()
    }
    #[inline]
    fn is_finite(self) -> bool {
        self.value.is_finite()
    }
    #[inline]
    fn sqrt(self) -> Self {
        let root = self.value.sqrt();
        let slope = if root == F::zero() { F::zero() } else { F::c(0.5) / root };
        self.chain(root, slope)
    }
    #[inline]
    fn cbrt(self) -> Self {
        let root = self.value.cbrt();
        let slope = if root == F::zero() { F::zero() } else { F::c(1.0 / 3.0) / root.squared() };
        self.chain(root, slope)
    }
    #[inline]
    fn exp(self) -> Self {
        let value = self.value.exp();
        self.chain(value, value)
    }
    #[inline]
    fn exp_m1(self) -> Self {
        let value = self.value.exp_m1();
        self.chain(value, value + F::one())
    }
    #[inline]
    fn ln(self) -> Self {
        self.chain(self.value.ln(), F::one() / self.value)
    }
    #[inline]
    fn ln_1p(self) -> Self {
        self.chain(self.value.ln_1p(), F::one() / (F::one() + self.value))
    }
}

#[cfg(test)]
mod tests {
    use super::Dual;
    use crate::limits::{Input, check};
    use crate::{Error, Scalar, solve};

    /// Every function of the number type, at a point where all are defined.
    const FUNCTIONS: [fn(Dual<f64, 1>) -> Dual<f64, 1>; 14] = [
        |x| x.sqrt(),
        |x| x.cbrt(),
        |x| x.exp(),
        |x| x.exp_m1(),
        |x| x.ln(),
        |x| x.ln_1p(),
        |x| x.powf(x),
        |x| x.squared() / (Dual::c(1.0) + x),
        |x| (-x).abs() - x * Dual::c(3.0),
        |x| x.larger(Dual::c(0.2)) * x.smaller(Dual::c(9.0)),
        |x| x.clamped(Dual::c(0.1), Dual::c(0.2)),
        |x| Dual::c(1.0) / x,
        |x| {
            let mut sum = x;
            sum += x * x;
            sum -= x;
            sum
        },
        |x| x.detach() * x,
    ];

    #[test]
    fn derivatives_are_those_of_central_differences() {
        for (index, function) in FUNCTIONS.into_iter().enumerate() {
            for at in [0.3, 0.9, 2.5_f64] {
                let [x] = Dual::variables([at]);
                let step = 1e-6 * at;
                let value = |at| function(Dual::constant(at)).value;
                // What is detached stands still.
                let difference = if index == 13 { at } else { (value(at + step) - value(at - step)) / (2.0 * step) };
                let exact = function(x).partials[0];
                assert!((exact - difference).abs() < 1e-8 * (1.0 + exact.abs()), "{index} {at}: {exact} {difference}");
            }
        }
    }

    #[test]
    fn the_root_of_zero_has_no_infinite_derivative() {
        let [x] = Dual::variables([0.0_f64]);
        assert_eq!((x.sqrt().partials, x.cbrt().partials), ([0.0], [0.0]));
    }

    #[test]
    fn checks_and_their_errors_look_at_the_value() {
        let [bore] = Dual::variables([0.02_f64]);
        let refused = check(Input::Bore, bore).unwrap_err();
        assert_eq!(refused, Error::OutOfRange { input: Input::Bore, given: 0.02 });
        assert!(check(Input::Bore, bore * Dual::c(0.1)).is_ok());
    }

    /// d root / da of x^n = a is root / (n a); also where the search meets the root by chance on its first step, or
    /// where one end of the bracket never moves.
    #[test]
    fn a_root_carries_the_derivative_of_the_implicit_function() {
        for (power, at, high) in
            [(2.0, 2.0_f64, 3.0), (2.0, 4.0, 4.0), (5.0, 1.0, 9.0), (1.0, 0.5, 1.0), (8.0, 1e-3, 2.0)]
        {
            let [a] = Dual::variables([at]);
            let found =
                solve::root(Input::Bore, Dual::c(1e-6), Dual::c(high), |x| x.powf(Dual::c(power)) - a).unwrap().x;
            let root = f64::powf(at, 1.0 / power);
            assert!((found.value / root - 1.0).abs() < 1e-12);
            assert!((found.partials[0] / (root / (power * at)) - 1.0).abs() < 1e-6, "{power} {at}: {found:?}");
        }
    }
}
