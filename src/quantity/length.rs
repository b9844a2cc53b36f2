//! Length and angle.

use super::{additive, quantity, readable};

/// Meters in an inch, exact since 1959.
pub(crate) const INCH: f64 = 0.0254;
/// Radians in a degree.
const DEGREE: f64 = core::f64::consts::PI / 180.0;

quantity! {
    /// A length.
    ///
    /// ```
    /// use jetwright::quantity::Length;
    /// assert_eq!(Length::from_inches(0.0700_f64).millimeters(), 1.778);
    /// ```
    Length, "a length", from_meters, meters, "meters";
    from_millimeters, millimeters, 1e-3, "millimeters";
    from_inches, inches, INCH, "inches";
    from_feet, feet, 12.0 * INCH, "feet";
}
additive!(Length);
readable!(
    Length,
    "a length",
    from_meters,
    [
        "mm" = 1e-3,
        "cm" = 1e-2,
        "m" = 1.0,
        "um" = 1e-6,
        "in" = INCH,
        "inch" = INCH,
        "thou" = 1e-3 * INCH,
        "ft" = 12.0 * INCH,
    ]
);

quantity! {
    /// An angle.
    Angle, "an angle", from_radians, radians, "radians";
    from_degrees, degrees, DEGREE, "degrees";
}
readable!(Angle, "an angle", from_radians, ["deg" = DEGREE, "degrees" = DEGREE, "rad" = 1.0]);
