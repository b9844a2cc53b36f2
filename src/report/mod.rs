//! The answers as text, JSON and CSV.
//!
//! Process control only, never a flame safeguard.

pub mod certainty;
pub mod firing;
pub mod furnace;
pub mod furnace_rows;
pub mod lighting;
pub mod lighting_rows;
pub mod page;
pub mod rows;
pub mod supply;
pub mod supply_rows;
pub mod table;
pub mod units;
pub mod warnings;

pub use furnace::{furnace_text, lining_text};
pub use furnace_rows::{furnace_json, lining_json};
pub use lighting::lighting_text;
pub use lighting_rows::lighting_json;
pub use page::{Extent, sheet_text};
pub use table::table;
pub use units::Shop;

#[doc = include_str!("json_keys.md")]
pub mod json_keys {}
