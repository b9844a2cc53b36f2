//! The whole installation as one value, and every question about it. No text, no file.

pub mod carbon_monoxide;
pub mod chip;
pub mod cylinder;
pub mod description;
pub mod entries;
pub mod evaluation;
pub mod firing;
pub mod furnace;
pub mod furnace_spread;
pub mod gauge_to_jet;
pub mod hazards;
pub mod installation;
pub mod lighting;
pub mod lighting_gauge;
pub mod purge;
pub mod refusal;
pub mod spreads;
pub mod sweep;
pub mod work;

pub use cylinder::{CylinderBlock, CylinderEvening, CylinderRow, Store};
pub use entries::Entries;
pub use evaluation::{AirBlock, Setting, SettingAir, Sheet, WrongDrill, compose};
pub use firing::{PlanStep, furnace_advice};
pub use gauge_to_jet::BeforeJet;
pub use hazards::{Hazard, HazardKind, Hazards, Severity};
pub use installation::{Assembled, assemble};
pub use lighting_gauge::Known;
pub use purge::BlowThrough;
pub use refusal::{Place, Reason, Refusal};
pub use sweep::Rung;
pub use work::{OutOfReach, WorkBlock};
