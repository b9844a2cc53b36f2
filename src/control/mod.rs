//! For a controller of your own: a table of settings, air and gas that limit each other, and what to doubt.
//!
//! **This is process control, not a flame safeguard.** Nothing here watches a flame. A listed flame safeguard
//! stays in charge of the gas valve; what this room says about gas is a request the safeguard may refuse, and on
//! any doubt the request is off.
//!
//! No physics is computed here. A [`SetpointTable`] holds what [`burner`](crate::burner) answered, for a lookup of a
//! few multiplications; [`CrossLimit`] lets air lead going up and gas lead going down, so that the mixture stays in
//! a band whatever the speed of the actuators.

mod air_changes;
mod burner_image;
mod clock;
mod control_error;
mod controller;
mod crosslimit;
mod estimate;
mod estimate_spread;
mod image;
mod position;
mod sensors;
mod sequence;
mod setpoints;
mod sum;
mod totals;

pub use air_changes::AirChanges;
pub use burner_image::{ChipBurner, ChipSetting, NAME_CAP, SETTING_CAP};
pub use control_error::ControlError;
pub use controller::{Command, Controller, ControllerSettings, Inputs, Outputs, Reason};
pub use crosslimit::{AirRatioBand, CrossLimit, CrossLimitSettings, Doubt, Limited};
pub use estimate::{Estimate, Readings};
pub use estimate_spread::{EstimateSpread, ReadingSpreads};
pub use image::ImageError;
pub use position::Travel;
pub use sensors::{Agreement, Sensor, SensorFault, SensorLimits};
pub use sequence::{Event, State};
pub use setpoints::{InterpolationBound, MadeFor, Setpoint, SetpointTable, USUAL_ROWS};
pub use totals::Totals;
