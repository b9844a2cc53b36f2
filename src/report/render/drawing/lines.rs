//! Line weights, mm: ISO 128-2 as a convention (from memory).

/// A curve, and the frame of what must be seen first.
pub const CURVE: f64 = 1.0;
/// Outline on a card, which is looked at from further away.
pub const BOLD: f64 = 0.7;
/// Dimension, leader, hatching.
pub const THIN: f64 = 0.25;
/// Millimeters of a typographic point.
pub const POINT: f64 = 25.4 / 72.0;
