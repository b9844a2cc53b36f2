//! The answers as one tree of typed fields, and a file a format: text, JSON, CSV, HTML and the keys' documentation.
//!
//! Process control only, never a flame safeguard.

pub mod answers;
pub mod asked;
mod blower;
pub mod card;
pub mod built;
pub mod budgets;
pub mod field;
pub mod firing;
pub mod flow;
pub mod furnace;
pub mod furnace_fields;
pub mod gauge_table;
pub mod head;
pub mod kind;
pub mod lighting;
pub mod lighting_fields;
pub mod render;
pub mod settings;
pub mod sheet;
pub mod supply;
pub mod tree;
pub mod units;
pub mod warnings;

pub use sheet::sheet_tree;
pub use units::Shop;

#[doc = include_str!("json_keys.md")]
pub mod json_keys {}
