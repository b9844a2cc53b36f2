//! One number of all that decides about gas, so that memory that was written over shows.

use super::setpoints::Setpoint;
use crate::scalar::Scalar;

/// A running sum over words: each turns and multiplies what came before, so that any one changed word changes the sum.
///
/// A chip takes four instructions a word for it. It finds a stray write, not one who means to deceive.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Fingerprint(u32);

impl Fingerprint {
    pub fn new() -> Self {
        Self(0x811C_9DC5)
    }

    pub fn word(&mut self, word: u32) {
        // A turn and an odd factor lose nothing: two sums that differ stay apart.
        self.0 = (self.0.rotate_left(5) ^ word).wrapping_mul(0x0100_0193);
    }

    pub fn number<S: Scalar>(&mut self, number: S) {
        self.word(number.to_f32().to_bits());
    }

    pub fn numbers<S: Scalar>(&mut self, numbers: impl IntoIterator<Item = S>) {
        numbers.into_iter().for_each(|number| self.number(number));
    }

    pub fn rows<S: Scalar>(&mut self, rows: &[Setpoint<S>]) {
        rows.iter().for_each(|row| self.numbers([row.gauge.pascals(), row.air]));
    }

    pub fn value(self) -> u32 {
        self.0
    }
}

#[cfg(test)]
mod tests {
    use super::Fingerprint;

    #[test]
    fn any_one_bit_changes_the_sum() {
        let words: [u32; 40] = core::array::from_fn(|index| (index as u32).wrapping_mul(0x9E37_79B9));
        let sum = |words: &[u32]| {
            let mut sum = Fingerprint::new();
            words.iter().for_each(|&word| sum.word(word));
            sum.value()
        };
        for bit in 0..32 * words.len() {
            let mut changed = words;
            changed[bit / 32] ^= 1 << (bit % 32);
            assert_ne!(sum(&changed), sum(&words));
        }
    }
}
