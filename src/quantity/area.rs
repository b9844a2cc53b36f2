//! Area.

use super::length::INCH;
use super::{additive, quantity, readable};

quantity! {
    /// An area.
    Area, "an area", from_square_meters, square_meters, "square meters";
    from_square_centimeters, square_centimeters, 1e-4, "square centimeters";
    from_square_inches, square_inches, INCH * INCH, "square inches";
}
additive!(Area);
readable!(
    Area,
    "an area",
    from_square_meters,
    ["cm2" = 1e-4, "mm2" = 1e-6, "m2" = 1.0, "in2" = INCH * INCH, "sq in" = INCH * INCH,]
);
