//! The jet: how much gas a hole passes, and which hole passes the gas wanted.
//!
//! The flow is the lossless expansion of the real gas times a discharge coefficient that follows from
//! the shape of the bore, the pressures and the Reynolds number. This room is the template for others:
//! data first, one file a model, one file that joins them, inverses last.

mod bore;
mod bore_equations;
mod discharge;
mod drills;
mod edge;
mod handbook;
mod jet;
mod long_bore;
mod sizing;
mod stream;
mod thin_plate;

pub use bore::{Bore, BoreLength, BoreShape};
pub use discharge::{Discharge, discharge};
pub use drills::{Drill, DrillList};
pub use edge::{Edge, SQUARE_ENTRY_LOSS};
pub use handbook::handbook_flow;
pub use jet::{Coefficient, Jet, JetFlow, Supply};
pub use long_bore::{BoreFlow, frictional_bore};
pub use sizing::{bore_for_heat, pressure_for_heat};
pub use stream::Stream;
pub use thin_plate::{contraction_coefficient, thin_plate};
