//! Combustion: how much air a gas needs, and how much it gets.

mod air_need;

pub use air_need::{AirNeed, equivalence_ratio};
