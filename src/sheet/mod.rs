//! The shop sheet: reads a burner file, asks the rooms, prints. No physics of its own.
//!
//! Process control only, never a flame safeguard.

mod advice;
mod always;
mod assembled;
mod before_jet;
mod blow_through;
pub mod burner_file;
mod caution;
mod chip;
mod compose;
mod cylinder;
mod cylinder_rows;
mod cylinder_text;
pub mod document;
pub mod entries;
mod file_error;
mod file_keys;
pub mod flame_words;
pub mod furnace;
pub mod measured_file;
mod monoxide;
mod furnace_caution;
mod furnace_plan;
mod furnace_rows;
mod furnace_spread;
mod furnace_text;
pub mod lighting;
mod lighting_caution;
mod lighting_gauge;
mod lighting_rows;
mod lighting_text;
pub mod read_furnace;
pub mod read_lighting;
pub mod read_uncertainty;
pub mod read_supply;
pub mod rows;
mod rungs;
mod shop;
mod supply_caution;
mod table;
mod text;
mod tonight;
pub mod uncertainty;
mod work_fire;

pub use advice::{advice, jet_key};
pub use assembled::{Assembled, assemble};
pub use before_jet::BeforeJet;
pub use blow_through::BlowThrough;
pub use caution::Caution;
pub use compose::{AirBlock, Setting, SettingAir, Sheet, WrongDrill, compose};
pub use cylinder::{CylinderBlock, CylinderEvening, CylinderRow, Store};
pub use file_error::{FileError, Places, shorten};
pub use furnace_caution::FurnaceCaution;
pub use furnace_plan::{PlanStep, furnace_advice};
pub use furnace_rows::{furnace_json, lining_json};
pub use furnace_text::{furnace_text, lining_text};
pub use lighting_caution::LightingCaution;
pub use lighting_gauge::Known;
pub use lighting_rows::lighting_json;
pub use lighting_text::lighting_text;
pub use rungs::Rung;
pub use shop::Shop;
pub use supply_caution::SupplyCaution;
pub use table::table;
pub use text::{Extent, sheet_text};
pub use work_fire::{OutOfReach, WorkBlock};

#[doc = include_str!("json_keys.md")]
pub mod json_keys {}
