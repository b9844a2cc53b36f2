//! Combustion: how much air a gas needs, and how hot and into what it burns.

mod air_need;
mod burning_limits;
mod equilibrium;
mod flame;
mod thermochemistry;

pub use air_need::{AirNeed, equivalence_ratio};
pub use burning_limits::leanest_air_ratio;
pub use flame::{Flame, Products, Reactants};
pub use thermochemistry::Product;
