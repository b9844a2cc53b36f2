//! The furnace: what is heated, what surrounds it, and how long both take.
//!
//! [`work`] is the heat and the time of a piece, a charge or a loaded crucible. [`Lining`] adds panels up to areas,
//! volumes and masses. [`Wall`] is the steady wall, [`Chamber`] the balance between a fire and a temperature,
//! [`warming`] everything that changes with time, [`room`] the air around it. Every number is an estimate: a lining
//! is known to a fifth at best.

mod body;
mod chamber;
pub mod coupled;
mod flue;
mod grid;
mod lining;
mod material;
mod opening;
pub mod room;
mod soak;
mod stopping;
mod substance;
mod surface;
mod wall;
pub mod warming;
pub mod work;

pub use crate::interpolate::{POLYLINE_CAP as LINE_CAP, Polyline};
pub use body::{Body, LAYER_CAP, Matter};
pub use chamber::{Balance, Chamber, OPENING_CAP, WALL_CAP};
pub use flue::AvailableHeat;
pub use grid::{CELLS, Exchange, Grid};
pub use lining::{Castable, DryingStep, Lining, Mix, PANEL_CAP, Panel, Sling, TakeOff, anchors, drying, drying_heat};
pub use material::{MATERIALS, Material, MaterialData, STEELS, SteelGrade};
pub use opening::{Opening, passed_share};
pub use soak::{HeatingTime, Method, Piece, Shape, Soak, heating_time};
pub use stopping::{draft_flow, draft_pressure};
pub use substance::{SUBSTANCES, Substance, SubstanceData};
pub use surface::{Facing, Surroundings};
pub use wall::{Layer, SteadyWall, Wall, box_shape_factor};
