//! Mass and mass flow.

use super::{additive, quantity, readable};

/// Kilograms in an avoirdupois pound, exact since 1959.
pub(crate) const POUND: f64 = 0.453_592_37;

quantity! {
    /// A mass.
    Mass, "a mass", from_kilograms, kilograms, "kilograms";
    from_grams, grams, 1e-3, "grams";
    from_pounds, pounds, POUND, "pounds";
}
additive!(Mass);
readable!(Mass, "a mass", from_kilograms, ["kg" = 1.0, "g" = 1e-3, "lb" = POUND]);

quantity! {
    /// Mass in a time.
    MassFlow, "a mass flow", from_kilograms_per_second, kilograms_per_second, "kilograms per second";
    from_grams_per_second, grams_per_second, 1e-3, "grams per second";
    from_kilograms_per_hour, kilograms_per_hour, 1.0 / 3600.0, "kilograms per hour";
    from_pounds_per_hour, pounds_per_hour, POUND / 3600.0, "pounds per hour";
}
additive!(MassFlow);
readable!(
    MassFlow,
    "a mass flow",
    from_kilograms_per_second,
    ["kg/h" = 1.0 / 3600.0, "g/s" = 1e-3, "kg/s" = 1.0, "lb/h" = POUND / 3600.0,]
);
