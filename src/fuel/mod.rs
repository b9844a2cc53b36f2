//! What lies before the jet: cylinder, regulator, and the line from the gauge.
//!
//! A cylinder gives what its wall takes in from the air. The usable draw is always that at the pressure the regulator
//! needs, never the catalog's at zero gauge. Never heat a cylinder with flame.

mod code_pipe;
mod cylinder;
mod line;
mod regulator;
mod throttle;

pub use code_pipe::{low_pressure_pipe_diameter, low_pressure_pipe_flow, low_pressure_pipe_mass_flow};
pub use cylinder::{Charge, Cylinder, Draw};
pub use line::{GAUGE_READS_HIGH, Line, LineFlow, isothermal_inlet};
pub use regulator::Regulator;
pub use throttle::{Hose, throttled};
