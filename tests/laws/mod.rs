//! Laws that hold whatever the numbers are: limits, round trips, balances, and one answer in two number types.

mod burner;
mod burner_image;
mod burning;
pub mod cases;
mod control;
mod derivatives;
mod effort;
mod estimate;
mod fires;
mod flame;
mod flue;
mod fuel;
mod furnace;
mod prepared;
mod lighting;
mod lighting_claims;
mod reactor;
mod rig;
mod round_trips;
mod single_precision;
mod streams;
mod uncertainty;
mod weighing;
