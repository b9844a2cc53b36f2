//! Line weights and heights of lettering, mm: ISO 128-2 and ISO 3098-1 as conventions (from memory).

/// A curve, and the frame of what must be seen first.
pub const CURVE: f64 = 1.0;
/// Outline on a card, which is looked at from further away.
pub const BOLD: f64 = 0.7;
/// Outline.
pub const OUTLINE: f64 = 0.5;
/// Dimension, leader, hatching.
pub const THIN: f64 = 0.25;
/// Font size whose capitals are 2.5 mm high: capitals of this type are 0.716 of its size.
pub const LETTERING: f64 = 2.5 / 0.716;
/// Font size whose capitals are 3.5 mm high.
pub const LARGE_LETTERING: f64 = 3.5 / 0.716;
/// Millimeters of a typographic point.
pub const POINT: f64 = 25.4 / 72.0;
