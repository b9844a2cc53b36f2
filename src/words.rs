//! A part as plain single-precision numbers in a fixed order, to carry it from the host to a chip.
//!
//! The host works a burner out in double precision, once, and rounds it once; the chip reads it without the
//! tables and the constructors. What holds the numbers and checks them is a matter of
//! [`control`](crate::control).

use heapless::Vec;

use crate::scalar::Scalar;

/// What can be written as numbers and read again.
pub(crate) trait Words: Sized {
    /// Hands every number to `put`, in order.
    fn write(&self, put: &mut impl FnMut(f32));
    /// Makes the part of the numbers that `next` gives; none where they end early or mean nothing.
    fn read(next: &mut impl FnMut() -> Option<f32>) -> Option<Self>;
}

impl<S: Scalar> Words for S {
    fn write(&self, put: &mut impl FnMut(f32)) {
        put(self.to_f32());
    }
    fn read(next: &mut impl FnMut() -> Option<f32>) -> Option<Self> {
        next().filter(|word| word.is_finite()).map(S::from_f32)
    }
}

impl<T: Words + Copy + Default, const N: usize> Words for [T; N] {
    fn write(&self, put: &mut impl FnMut(f32)) {
        self.iter().for_each(|part| part.write(put));
    }
    fn read(next: &mut impl FnMut() -> Option<f32>) -> Option<Self> {
        let mut parts = [T::default(); N];
        for part in &mut parts {
            *part = T::read(next)?;
        }
        Some(parts)
    }
}

impl Words for u8 {
    fn write(&self, put: &mut impl FnMut(f32)) {
        put(f32::from(*self));
    }
    fn read(next: &mut impl FnMut() -> Option<f32>) -> Option<Self> {
        next().map(|word| word as u8)
    }
}

/// A list: how many there are, then each.
impl<T: Words, const N: usize> Words for Vec<T, N> {
    fn write(&self, put: &mut impl FnMut(f32)) {
        put(self.len() as f32);
        self.iter().for_each(|part| part.write(put));
    }
    fn read(next: &mut impl FnMut() -> Option<f32>) -> Option<Self> {
        let count = next()? as usize;
        let mut parts = Vec::new();
        for _ in 0..count {
            parts.push(T::read(next)?).ok()?;
        }
        Some(parts)
    }
}

/// None or one: as a list.
impl<T: Words> Words for Option<T> {
    fn write(&self, put: &mut impl FnMut(f32)) {
        put(if self.is_some() { 1.0 } else { 0.0 });
        self.iter().for_each(|part| part.write(put));
    }
    fn read(next: &mut impl FnMut() -> Option<f32>) -> Option<Self> {
        if next()? == 0.0 { Some(None) } else { T::read(next).map(Some) }
    }
}

/// The fields of a part, each of which has words of its own, in the order named.
macro_rules! words {
    ($part:ident { $($field:ident),+ $(,)? }) => {
        impl<S: $crate::scalar::Scalar> $crate::words::Words for $part<S> {
            fn write(&self, put: &mut impl FnMut(f32)) {
                $($crate::words::Words::write(&self.$field, put);)+
            }
            fn read(next: &mut impl FnMut() -> Option<f32>) -> Option<Self> {
                Some(Self { $($field: $crate::words::Words::read(next)?,)+ })
            }
        }
    };
}

pub(crate) use words;
