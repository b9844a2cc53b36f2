//! Everything that looks at the crate from outside, in one binary.

mod laws;
mod properties;
mod reference;
mod sample;
mod tolerance;
