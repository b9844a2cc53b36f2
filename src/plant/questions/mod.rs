//! Every question of an installation in one shape: what is found, how sure it is, and what it warns of.
//!
//! `alone` asks a setting, or the gauge, without the rest. `whole` asks what stands on the whole installation: blower,
//! chamber, lighting, purge, firing, cylinder, and the setpoints of a controller; an evaluated [`Sheet`] answers these
//! without working anything out twice, and warns of all that it knows.
//!
//! [`Sheet`]: crate::plant::Sheet

mod alone;
mod whole;

pub use alone::{RungAnswer, SettingAnswer};
pub use whole::{BlowerAnswer, CylinderAnswer, FiringAnswer, HOLDING_CAP, Holding};
