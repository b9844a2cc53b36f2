//! Under construction.
#![no_std]
#[cfg(any(feature = "std", test))]
extern crate std;

pub mod air;
pub mod burner;
pub mod combustion;
pub mod error;
pub mod friction;
pub mod gas;
pub mod limits;
pub mod orifice;
pub mod quantity;
mod scalar;
pub mod site;
pub mod solve;

pub use error::{Error, Result};
pub use limits::Input;
pub use scalar::Scalar;
pub use site::Site;
