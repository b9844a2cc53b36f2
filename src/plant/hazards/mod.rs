//! What can hurt, each drawn from a number.

pub mod burner;
pub mod furnace;
pub mod lighting;
pub mod supply;
