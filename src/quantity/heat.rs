//! Heat rate, gross or net, and the heat in a mass of gas.

use super::mass_flow::{MassFlow, POUND};
use super::{additive, quantity, readable};
use crate::scalar::Scalar;

/// Joules in an International Table British thermal unit, from the IT calorie, pound and Fahrenheit degree.
const BTU: f64 = 4186.8 * POUND / 1.8;

/// Joules in a therm, 100 000 International Table Btu.
pub(crate) const THERM: f64 = 1e5 * BTU;

quantity! {
    /// Heat in a time with the water of the flue counted as condensed: what gas is sold by.
    ///
    /// ```
    /// use jetwright::quantity::GrossHeatRate;
    /// assert!((GrossHeatRate::from_btu_per_hour(100_000.0_f64).kilowatts() - 29.3071).abs() < 1e-4);
    /// ```
    ///
    /// It is not a net heat rate:
    ///
    /// ```compile_fail,E0308
    /// use jetwright::quantity::{GrossHeatRate, NetHeatRate};
    /// let heat: NetHeatRate = GrossHeatRate::from_kilowatts(26.0);
    /// ```
    GrossHeatRate, "a gross heat rate", from_watts, watts, "watts, gross";
    from_kilowatts, kilowatts, 1e3, "kilowatts, gross";
    from_btu_per_hour, btu_per_hour, BTU / 3600.0, "International Table Btu per hour, gross";
}
additive!(GrossHeatRate);

quantity! {
    /// Heat in a time with the water of the flue leaving as steam: what a furnace can use.
    NetHeatRate, "a net heat rate", from_watts, watts, "watts, net";
    from_kilowatts, kilowatts, 1e3, "kilowatts, net";
    from_btu_per_hour, btu_per_hour, BTU / 3600.0, "International Table Btu per hour, net";
}
additive!(NetHeatRate);

quantity! {
    /// Mechanical or electrical power.
    Power, "a power", from_watts, watts, "watts";
    from_horsepower, horsepower, 550.0 * 0.3048 * POUND * 9.806_65, "mechanical horsepower";
}
readable!(Power, "a power", from_watts, ["W" = 1.0, "kW" = 1e3, "hp" = 550.0 * 0.3048 * POUND * 9.806_65]);

quantity! {
    /// Gross heat in a mass of gas.
    GrossHeatPerMass, "a gross heating value", from_joules_per_kilogram, joules_per_kilogram, "joules per kilogram, gross";
    from_btu_per_pound, btu_per_pound, BTU / POUND, "International Table Btu per pound, gross";
}

quantity! {
    /// Net heat in a mass of gas.
    NetHeatPerMass, "a net heating value", from_joules_per_kilogram, joules_per_kilogram, "joules per kilogram, net";
    from_btu_per_pound, btu_per_pound, BTU / POUND, "International Table Btu per pound, net";
}

/// Whether the water of the flue counts as condensed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HeatBasis {
    /// Condensed.
    Gross,
    /// Leaving as steam.
    Net,
}

/// A heat rate as a user states it, with its basis.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum HeatRate<S = f64> {
    /// Water condensed.
    Gross(GrossHeatRate<S>),
    /// Water as steam.
    Net(NetHeatRate<S>),
}

impl<S: Scalar> GrossHeatPerMass<S> {
    /// The heat rate of a mass flow.
    #[must_use]
    pub fn of(self, flow: MassFlow<S>) -> GrossHeatRate<S> {
        GrossHeatRate(self.0 * flow.kilograms_per_second())
    }
    /// The mass flow that makes a heat rate.
    #[must_use]
    pub fn flow_for(self, heat: GrossHeatRate<S>) -> MassFlow<S> {
        MassFlow::from_kilograms_per_second(heat.0 / self.0)
    }
}

impl<S: Scalar> NetHeatPerMass<S> {
    /// The heat rate of a mass flow.
    #[must_use]
    pub fn of(self, flow: MassFlow<S>) -> NetHeatRate<S> {
        NetHeatRate(self.0 * flow.kilograms_per_second())
    }
    /// The mass flow that makes a heat rate.
    #[must_use]
    pub fn flow_for(self, heat: NetHeatRate<S>) -> MassFlow<S> {
        MassFlow::from_kilograms_per_second(heat.0 / self.0)
    }
}

/// Watts in the units a heat rate is read in; gross or net is read beside them.
pub(super) const HEAT_UNITS: &[super::Unit] = &[
    super::Unit { symbol: "kW", factor: 1e3, offset: 0.0 },
    super::Unit { symbol: "W", factor: 1.0, offset: 0.0 },
    super::Unit { symbol: "MW", factor: 1e6, offset: 0.0 },
    super::Unit { symbol: "Btu/h", factor: BTU / 3600.0, offset: 0.0 },
    super::Unit { symbol: "kBtu/h", factor: BTU / 3.6, offset: 0.0 },
    super::Unit { symbol: "MJ/h", factor: 1e6 / 3600.0, offset: 0.0 },
];
