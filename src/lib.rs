#![doc = include_str!("library.md")]
#![no_std]

// With the C interface the static library takes its panic handler from it, but for a bare chip.
#[cfg(any(feature = "std", test, all(feature = "capi", not(target_os = "none"))))]
extern crate std;

// In the order the gas flows; each module uses only modules above it.
mod scalar;
mod dual;
mod words;
mod species;
pub mod error;
pub mod limits;
pub mod quantity;
pub mod solve;
pub mod interpolate;
pub mod friction;

pub mod site;
pub mod gas;
pub mod orifice;
pub mod combustion;
pub mod air;
pub mod burner;
pub mod fuel;
pub mod furnace;
pub mod measure;
pub mod control;
pub mod plant;
#[cfg(feature = "report")]
pub mod prose;
#[cfg(feature = "report")]
pub mod file;
#[cfg(feature = "report")]
pub mod report;
#[cfg(feature = "python")]
mod python;
#[cfg(feature = "capi")]
pub mod capi;
#[cfg(test)]
mod made_up_fuel;

pub use dual::Dual;
pub use error::{Error, Result};
pub use limits::Input;
pub use scalar::{Float, Scalar};
pub use site::Site;
