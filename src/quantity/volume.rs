//! Volume.

use super::density::CUBIC_FOOT;
use super::{additive, quantity, readable};

quantity! {
    /// A volume, as it is.
    Volume, "a volume", from_cubic_meters, cubic_meters, "cubic metres";
    from_liters, liters, 1e-3, "litres";
    from_cubic_feet, cubic_feet, CUBIC_FOOT, "cubic feet";
}
additive!(Volume);
readable!(Volume, "a volume", from_cubic_meters, ["m3" = 1.0, "L" = 1e-3, "ft3" = CUBIC_FOOT]);
