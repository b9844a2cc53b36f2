//! Combustion: how much air a gas needs, and how hot and into what it burns.

mod air_need;
mod autoignition;
mod burning_limits;
mod burning_velocity;
mod equilibrium;
mod flame;
mod thermochemistry;

pub use air_need::{AirNeed, equivalence_ratio};
pub use autoignition::autoignition;
pub use burning_limits::{BurningRange, LimitStandard, burning_range, leanest_air_ratio};
pub use burning_velocity::{BURNING_VELOCITY_BIAS, burning_velocity};
pub use flame::{Flame, Products, Reactants};
pub use thermochemistry::Product;
