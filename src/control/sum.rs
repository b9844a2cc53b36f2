//! A sum that a single-precision chip can keep for a year.

use crate::scalar::Scalar;

/// A running sum that carries what each addition rounds away.
///
/// # Source
///
/// Kahan, "Further remarks on reducing truncation errors", Communications of the ACM 8 (1965) 40 (from memory).
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct Sum<S> {
    total: S,
    excess: S,
}

impl<S: Scalar> Sum<S> {
    pub fn add(&mut self, part: S) {
        let part = part - self.excess;
        let total = self.total + part;
        // What is too large for the number type stays so, and is not subtracted from itself.
        self.excess = if total.is_finite() { (total - self.total) - part } else { S::zero() };
        self.total = total;
    }

    pub fn value(&self) -> S {
        self.total
    }

    /// All that it keeps.
    pub fn parts(&self) -> [S; 2] {
        [self.total, self.excess]
    }
}

#[cfg(test)]
mod tests {
    use super::Sum;

    #[test]
    fn a_million_small_parts_are_all_there() {
        let mut sum = Sum::<f32>::default();
        let mut plain = 0.0_f32;
        for _ in 0..1_000_000 {
            sum.add(0.1);
            plain += 0.1;
        }
        assert!((sum.value() - 100_000.0).abs() < 0.02);
        assert!((plain - 100_000.0).abs() > 100.0, "single precision alone would have done");
    }

    #[test]
    fn a_sum_too_large_for_its_type_is_never_no_number() {
        let mut sum = Sum::<f32>::default();
        for part in [3e38, 3e38, 1.0, f32::INFINITY, 1.0] {
            sum.add(part);
            assert!(!sum.value().is_nan());
        }
    }
}
