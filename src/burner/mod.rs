//! The burner: head, jet, air and chamber at work together.

mod chamber;
mod demand;
mod glow;
mod gradient;
mod guess;
mod head;
mod lighting;
mod ports;
mod prepared;
mod remedy;
mod rig;
mod running;
mod unlit;

pub use chamber::Exhaust;
pub use demand::{AirSetting, DamperSeen, Demand};
pub use glow::{GLOW_CELSIUS, Glow, ignition_delay, residence};
pub use gradient::{BLOW_OFF_SCATTER, FLASHBACK_SCATTER, FlameGradients, thermal_diffusivity};
pub use head::{Head, HeadFlow};
pub use lighting::{GoesOut, Lighting, LightingRange, Lights, Span};
pub use ports::PortState;
pub use prepared::{Operating, Prepared};
pub use remedy::Remedies;
pub use rig::{Burner, Conditions};
pub use running::Running;
pub use unlit::{ExplosiveChamber, LEAST_CHANGES, SAFE_SHARE, UnlitChamber, air_changes, fills_after};
