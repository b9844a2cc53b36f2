//! Density.

use super::{quantity, readable};
use crate::quantity::mass_flow::POUND;

/// Cubic meters in a cubic foot.
pub(crate) const CUBIC_FOOT: f64 = 0.3048 * 0.3048 * 0.3048;

quantity! {
    /// Mass in a volume.
    Density, "a density", from_kilograms_per_cubic_meter, kilograms_per_cubic_meter, "kilograms per cubic meter";
    from_pounds_per_cubic_foot, pounds_per_cubic_foot, POUND / CUBIC_FOOT, "pounds per cubic foot";
}
readable!(Density, "a density", from_kilograms_per_cubic_meter, ["kg/m3" = 1.0, "lb/ft3" = POUND / CUBIC_FOOT,]);
