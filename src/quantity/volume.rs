//! Volume.

use super::density::CUBIC_FOOT;
use super::{additive, quantity, readable};

quantity! {
    /// A volume.
    Volume, "a volume", from_cubic_meters, cubic_meters, "cubic meters";
    from_liters, liters, 1e-3, "liters";
    from_cubic_feet, cubic_feet, CUBIC_FOOT, "cubic feet";
}
additive!(Volume);
readable!(Volume, "a volume", from_cubic_meters, ["L" = 1e-3, "m3" = 1.0, "ft3" = CUBIC_FOOT, "cu ft" = CUBIC_FOOT]);
