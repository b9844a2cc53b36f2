//! The burner: head, jet, air and chamber at work together.

mod chamber;
mod demand;
mod guess;
mod head;
mod prepared;
mod remedy;
mod rig;
mod running;

pub use chamber::Exhaust;
pub use demand::{AirSetting, Demand};
pub use head::{Head, HeadFlow};
pub use prepared::{Operating, Prepared};
pub use remedy::Remedies;
pub use rig::{Burner, Conditions};
pub use running::Running;
