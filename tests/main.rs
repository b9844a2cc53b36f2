//! Everything that looks at the crate from outside, in one binary.

mod reference;
mod tolerance;
