//! One coupled furnace: gas, walls, openings and what stands in the chamber, through time.
//!
//! [`Furnace`] is what it is: wall builds ([`Chain`]s of nodes), openings, a [`Stream`] from the burner that radiates
//! ([`Radiation`]) through stirred zones in series. [`Firing`] takes it through stages: a fire, a temperature kept, air
//! alone, everything off; things are put in and taken out. Steps are implicit, so that any length is stable.

mod chain;
mod draft;
mod exchange;
mod firing;
mod gas;
mod linear;
mod medium;
mod model;
mod radiation;
mod settled;
mod spread;
mod step;
mod stopping;
mod stream;

pub use chain::{Chain, End, NODE_CAP, Nodes};
pub use draft::{Draft, LID_EXCHANGE, OPENING_DISCHARGE, Place, Vent};
pub use exchange::{Exchange, Part, SURFACE_CAP, Surface};
pub use firing::{FACE_CAP, Firing, LONGEST, Passed, Until};
pub use gas::ZONE_CAP;
pub use medium::{Medium, Metal, Track};
pub use model::{BUILD_CAP, Build, CONTENT_CAP, Content, Drive, Films, Furnace, Ledger, Opening, State, VENT_CAP};
pub use radiation::{GRAY_GASES, Gray, Radiation, mean_beam_length};
pub use settled::Settled;
pub use spread::{Bounded, Cause, Change, Unsure, bounded, bounded_by};
pub use stopping::{LIGHTS_ABOVE, MOST_PROMISED, Moment};
pub use stream::Stream;
