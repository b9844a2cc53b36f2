//! Price of gas.

use super::mass_flow::POUND;
use super::{quantity, readable};

quantity! {
    /// Money for a mass of gas; the currency is the user's own.
    PricePerMass, "a price", from_per_kilogram, per_kilogram, "money per kilogram";
    from_per_pound, per_pound, 1.0 / POUND, "money per pound";
}
readable!(PricePerMass, "a price", from_per_kilogram, ["per kg" = 1.0, "per lb" = 1.0 / POUND]);
