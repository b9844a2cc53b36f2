//! Points, and what runs between them.
//!
//! A [`Curve`] is smooth and never swings beyond its points: blowers, dampers, regulators. A [`Polyline`] is straight
//! between them and has an exact integral: properties over temperature. Tables of this crate and evenly spaced rows
//! take their straight line here too.

pub(crate) mod polyline;

mod curve;

pub use curve::{Curve, POINT_CAP};
pub use polyline::{POLYLINE_CAP, Polyline};
