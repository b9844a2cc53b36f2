//! The number type: `f32` on a chip, `f64` in a notebook, one source for both.
//!
//! [`Scalar`] is sealed and this is the only file that calls `libm`. Code that is generic over it
//! may branch on comparisons only, which look at the value and nothing else, so that a number
//! carrying derivatives, [`Dual`](crate::Dual), goes through it too.

use core::fmt::Debug;
use core::ops::{Add, AddAssign, Div, Mul, Neg, Sub, SubAssign};

pub(crate) mod sealed {
    pub trait Sealed {}
    impl Sealed for f32 {}
    impl Sealed for f64 {}
}

/// A plain number of the processor, which a [`Dual`](crate::Dual) is made of.
pub trait Float: Scalar {
    /// Zero, where a constant is needed.
    const ZERO: Self;
}

impl Float for f32 {
    const ZERO: Self = 0.0;
}

impl Float for f64 {
    const ZERO: Self = 0.0;
}

/// The next whole number, or the number itself if it is one.
pub(crate) fn rounded_up(number: f64) -> f64 {
    libm::ceil(number)
}

/// A real number the physics can be computed in.
///
/// # Examples
///
/// ```
/// use jetwright::Scalar;
/// fn circle_area<S: Scalar>(diameter: S) -> S { S::c(core::f64::consts::FRAC_PI_4) * diameter * diameter }
/// assert!((circle_area(2.0_f64) - 3.141592653589793).abs() < 1e-12);
/// assert!((circle_area(2.0_f32) - 3.1415927).abs() < 1e-6);
/// ```
pub trait Scalar:
    sealed::Sealed
    + Copy
    + Debug
    + Default
    + PartialOrd
    + Add<Output = Self>
    + Sub<Output = Self>
    + Mul<Output = Self>
    + Div<Output = Self>
    + Neg<Output = Self>
    + AddAssign
    + SubAssign
    + Send
    + Sync
    + 'static
{
    /// The spacing of numbers next to one.
    const EPSILON: Self;
    /// Whether the number carries derivatives, for work that a plain one need not do.
    const CARRIES_DERIVATIVES: bool = false;

    /// A constant, written once as `f64` in the source.
    fn c(constant: f64) -> Self;
    /// A table's entry, of which both roundings are made when this compiles: a chip would round it in double precision.
    fn either(double: f64, single: f32) -> Self;
    /// A number that is known only when the program runs.
    fn from_f32(number: f32) -> Self;
    /// The value alone, as `f64`, for printing and for tables.
    fn to_f64(self) -> f64;
    /// The value alone, as `f32`, for the payload of an error.
    fn to_f32(self) -> f32;
    /// The value with any derivatives dropped; the number itself for a plain float.
    fn detach(self) -> Self;
    /// A whole number, where it is not known before the program runs.
    fn count(number: u32) -> Self;
    /// The value without its fraction, for an index: zero below one and for NaN, the largest beyond the largest.
    fn whole(self) -> u32;
    /// Neither infinite nor NaN.
    fn is_finite(self) -> bool;
    /// Square root.
    fn sqrt(self) -> Self;
    /// Cube root.
    fn cbrt(self) -> Self;
    /// Natural exponential.
    fn exp(self) -> Self;
    /// `exp(self) - 1` without loss near zero.
    fn exp_m1(self) -> Self;
    /// Natural logarithm.
    fn ln(self) -> Self;
    /// `ln(1 + self)` without loss near zero.
    fn ln_1p(self) -> Self;

    /// Zero.
    #[inline]
    fn zero() -> Self {
        Self::c(0.0)
    }
    /// One.
    #[inline]
    fn one() -> Self {
        Self::c(1.0)
    }
    /// `self` raised to a real power, for `self > 0`.
    #[inline]
    fn powf(self, exponent: Self) -> Self {
        (exponent * self.ln()).exp()
    }
    /// The square.
    #[inline]
    fn squared(self) -> Self {
        self * self
    }
    /// The absolute value.
    #[inline]
    fn abs(self) -> Self {
        if self < Self::zero() { -self } else { self }
    }
    /// The larger of two numbers, by value.
    #[inline]
    fn larger(self, other: Self) -> Self {
        if self < other { other } else { self }
    }
    /// The smaller of two numbers, by value.
    #[inline]
    fn smaller(self, other: Self) -> Self {
        if other < self { other } else { self }
    }
    /// The number brought into `low ..= high`.
    #[inline]
    fn clamped(self, low: Self, high: Self) -> Self {
        self.larger(low).smaller(high)
    }
}

/// The functions of a bare chip: `libm`'s, but for two that are worth a shorter way in single precision.
#[cfg(any(not(feature = "std"), test))]
mod bare {
    #[cfg(not(feature = "std"))]
    pub(super) use libm::{cbrt, cbrtf, exp, expf, expm1, expm1f, log, log1p, logf, sqrt};

    /// Square root: Heron's rule from half the exponent, which starts within 4 % and squares that thrice; 20
    /// instructions where `libm`'s takes 70. Numbers below the least normal one lose digits.
    #[inline]
    pub(super) fn sqrtf(x: f32) -> f32 {
        if !(x > 0.0 && x < f32::INFINITY) {
            return if x < 0.0 { f32::NAN } else { x };
        }
        let mut root = f32::from_bits((x.to_bits() >> 1) + 0x1FBB_4F2E);
        for _ in 0..3 {
            root = 0.5 * (root + x / root);
        }
        root
    }

    /// ln(1 + x) as ln(u) x / (u - 1), u = 1 + x rounded: what the rounding lost in the logarithm it loses in the
    /// difference too (Kahan's device, from memory).
    #[inline]
    pub(super) fn log1pf(x: f32) -> f32 {
        let u = 1.0 + x;
        if u == 1.0 { x } else { libm::logf(u) * (x / (u - 1.0)) }
    }
}

/// A function of the platform's mathematics where there is one, of `libm` on a bare chip.
macro_rules! mathematics {
    ($float:ident, $($name:ident = $bare:ident;)+) => {$(
        #[inline]
        fn $name(self) -> Self {
            #[cfg(feature = "std")]
            return $float::$name(self);
            #[cfg(not(feature = "std"))]
            return bare::$bare(self);
        }
    )+};
}

macro_rules! scalar {
    ($float:ident, $either:expr, $sqrt:ident, $cbrt:ident, $exp:ident, $exp_m1:ident, $ln:ident, $ln_1p:ident) => {
        impl Scalar for $float {
            const EPSILON: Self = $float::EPSILON;
            #[inline]
            fn c(constant: f64) -> Self {
                constant as $float
            }
            #[inline]
            fn either(double: f64, single: f32) -> Self {
                $either(double, single)
            }
            #[inline]
            fn from_f32(number: f32) -> Self {
                number as $float
            }
            #[inline]
            fn to_f64(self) -> f64 {
                self as f64
            }
            #[inline]
            fn to_f32(self) -> f32 {
                self as f32
            }
            #[inline]
            fn detach(self) -> Self {
                self
            }
            #[inline]
            fn count(number: u32) -> Self {
                number as $float
            }
            #[inline]
            fn whole(self) -> u32 {
                self as u32
            }
            #[inline]
            fn is_finite(self) -> bool {
                $float::is_finite(self)
            }
            mathematics! {
                $float,
                sqrt = $sqrt;
                cbrt = $cbrt;
                exp = $exp;
                exp_m1 = $exp_m1;
                ln = $ln;
                ln_1p = $ln_1p;
            }
        }
    };
}

scalar!(f32, |_, single| single, sqrtf, cbrtf, expf, expm1f, logf, log1pf);
scalar!(f64, |double, _| double, sqrt, cbrt, exp, expm1, log, log1p);

#[cfg(test)]
mod tests {
    use super::{Scalar, bare};

    #[test]
    fn the_short_functions_of_a_bare_chip_keep_single_precision() {
        for step in 1..40_000 {
            let x = (1e-30 * f64::powi(1.0034, step)) as f32;
            let close = |found: f32, exact: f64| (f64::from(found) / exact - 1.0).abs() < 2.0 * f64::from(f32::EPSILON);
            assert!(close(bare::sqrtf(x), f64::from(x).sqrt()), "sqrt {x}");
            if x < 1e30 {
                assert!(close(bare::log1pf(x), f64::from(x).ln_1p()), "ln_1p {x}");
            }
            if x < 0.999 {
                assert!(close(bare::log1pf(-x), (-f64::from(x)).ln_1p()), "ln_1p -{x}");
            }
        }
        assert_eq!((bare::sqrtf(0.0), bare::log1pf(0.0)), (0.0, 0.0));
        assert!(bare::sqrtf(-1.0).is_nan() && bare::log1pf(-2.0).is_nan());
        assert_eq!(bare::log1pf(-1.0), f32::NEG_INFINITY);
    }

    #[test]
    fn a_power_is_the_repeated_product() {
        assert!((3.0_f64.powf(2.0) - 9.0).abs() < 1e-14);
        assert!((Scalar::powf(3.0_f32, 2.0) - 9.0).abs() < 2e-6);
    }

    #[test]
    fn clamping_keeps_a_number_between_its_bounds() {
        assert_eq!(Scalar::clamped(5.0_f64, 1.0, 2.0), 2.0);
        assert_eq!(Scalar::clamped(-5.0_f32, 1.0, 2.0), 1.0);
        assert_eq!(Scalar::clamped(1.5_f32, 1.0, 2.0), 1.5);
    }
}
