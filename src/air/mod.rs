//! Air: what a blower gives and what ducts and dampers take.
//!
//! [`Blower`] is a curve of points read from print, carried to another density, speed or size by the
//! fan laws. [`AirPath`] is the ducts and the damper after it. [`operating_point()`] finds the flow at
//! which the blower's pressure is what the whole system asks; the system is any function of the flow,
//! so that a jet, a head and a chamber can join in.

mod blower;
mod damper;
mod damper_tables;
mod duct;
mod duty;
mod fan_laws;
#[cfg(test)]
mod fixture;
mod nameplate;
mod operating_point;
mod path;
mod resistance;

pub use crate::interpolate::{Curve, POINT_CAP};
pub use blower::{Blower, BlowerPoint};
pub use damper::{DISC_KNOWN_FROM, Damper, DamperKind, GAP_SPREAD, USUAL_GAP, disc_gap};
pub use duct::{Duct, air_viscosity};
pub use duty::{Duty, STANDARD_AIR_DENSITY, StandardAirDuty};
pub use nameplate::{BlowerKind, NAMEPLATE_SPREAD, Nameplate};
pub use operating_point::{OperatingPoint, operating_point};
pub use path::{AirPath, DUCT_CAP};
pub use resistance::Resistance;
