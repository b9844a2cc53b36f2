//! Combustion: how much air a gas needs, how hot and into what it burns, where it burns at all and how fast, and what
//! its flue gas tells.

mod air_enthalpy;
mod air_need;
mod atmosphere;
mod autoignition;
mod burning_limits;
mod burning_velocity;
mod equilibrium;
mod flame;
mod flue_gas;
mod flue_reading;
mod stirred_reactor;
mod stirred_reactor_table;
mod thermochemistry;

pub use air_enthalpy::dry_air_enthalpy;
pub use air_need::{AirNeed, equivalence_ratio};
pub use atmosphere::{Character, Scale, ScaleTendency};
pub use autoignition::autoignition;
pub use burning_limits::{BurningRange, LimitStandard, burning_range, explosive_range, leanest_air_ratio};
pub use burning_velocity::{
    BURNING_VELOCITY_BIAS, BURNING_VELOCITY_RANGE, burning_velocity, burning_velocity_band,
    burning_velocity_bias_holds, flames_measured,
};
pub use flame::{Flame, Products, Reactants};
pub use flue_gas::{FlueLoss, Leaving};
pub use flue_reading::{Basis, ExpectedReading, FlueReading, air_ratio_from_oxygen, expected_reading};
pub use stirred_reactor::{EQUILIBRIUM_GUIDES_ABOVE_CELSIUS, Reactor, ReactorFuel, carbon_monoxide_of_reactor};
pub use thermochemistry::Product;
