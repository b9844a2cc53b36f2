//! The gas: what it is made of, the heat in it, and how it expands.
//!
//! A [`Mixture`] is a composition; a [`Gas`] is that composition worked out into the few numbers every
//! later room needs.

mod expansion;
mod fuel;
mod heating;
mod liquid;
mod mixture;
mod named;
mod named_words;
mod needed;
mod price;
mod saturation;
mod state;

pub use crate::species::{Property, Species};
pub use expansion::Expansion;
pub(crate) use expansion::NEVER_CHOKED_ABOVE;
pub(crate) use fuel::GAS_CONSTANT;
pub use fuel::Gas;
pub use heating::{CalorificValues, CombustionReference};
pub use liquid::Saturated;
pub use mixture::Mixture;
pub use named::{GasTextError, NAMED, NamedGas, parse};
pub use price::GasPrice;
pub use saturation::NEAR_CONDENSING;
