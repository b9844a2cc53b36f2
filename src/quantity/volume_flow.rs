//! Volume flow: as it passes, or as it would be at a reference state.

use super::density::CUBIC_FOOT;
use super::mass_flow::MassFlow;
use super::pressure::ATMOSPHERE;
use super::temperature::Temperature;
use super::{AbsolutePressure, Density, additive, quantity, readable};
use crate::scalar::Scalar;

quantity! {
    /// Volume flow at the temperature and pressure where it passes.
    ///
    /// It is not a standard volume flow:
    ///
    /// ```compile_fail,E0308
    /// use jetwright::quantity::{ActualVolumeFlow, StandardVolumeFlow};
    /// let flow: StandardVolumeFlow = ActualVolumeFlow::from_cubic_feet_per_minute(30.0);
    /// ```
    ActualVolumeFlow, "an actual volume flow", from_cubic_meters_per_second, cubic_meters_per_second, "cubic meters per second, as it passes";
    from_liters_per_second, liters_per_second, 1e-3, "liters per second, as it passes";
    from_cubic_meters_per_hour, cubic_meters_per_hour, 1.0 / 3600.0, "cubic meters per hour, as it passes";
    from_cubic_feet_per_minute, cubic_feet_per_minute, CUBIC_FOOT / 60.0, "cubic feet per minute, as it passes";
}
additive!(ActualVolumeFlow);
readable!(
    ActualVolumeFlow,
    "an actual volume flow",
    from_cubic_meters_per_second,
    ["cfm" = CUBIC_FOOT / 60.0, "L/s" = 1e-3, "L/min" = 1e-3 / 60.0, "m3/h" = 1.0 / 3600.0, "m3/s" = 1.0,]
);

impl<S: Scalar> ActualVolumeFlow<S> {
    /// The mass flow, at the density where it passes.
    #[must_use]
    pub fn at(self, density: Density<S>) -> MassFlow<S> {
        MassFlow::from_kilograms_per_second(self.0 * density.kilograms_per_cubic_meter())
    }
}

impl<S: Scalar> MassFlow<S> {
    /// The volume flow, at the density where it passes.
    #[must_use]
    pub fn at(self, density: Density<S>) -> ActualVolumeFlow<S> {
        ActualVolumeFlow(self.kilograms_per_second() / density.kilograms_per_cubic_meter())
    }
}

/// The state a standard volume is counted at.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
#[non_exhaustive]
pub enum ReferenceState {
    /// 15 degC and 101.325 kPa: ISO 13443.
    #[default]
    Celsius15,
    /// 60 degF (15.56 degC) and 14.696 psia: the standard cubic foot of the gas trade.
    Fahrenheit60,
    /// 0 degC and 101.325 kPa: the normal cubic meter.
    Celsius0,
    /// 20 degC and 101.325 kPa.
    Celsius20,
}

impl ReferenceState {
    /// Its temperature.
    #[must_use]
    pub fn temperature<S: Scalar>(self) -> Temperature<S> {
        Temperature::from_celsius(S::c(match self {
            ReferenceState::Celsius15 => 15.0,
            ReferenceState::Fahrenheit60 => 140.0 / 9.0,
            ReferenceState::Celsius0 => 0.0,
            ReferenceState::Celsius20 => 20.0,
        }))
    }
    /// Its pressure, one standard atmosphere.
    #[must_use]
    pub fn pressure<S: Scalar>(self) -> AbsolutePressure<S> {
        AbsolutePressure::from_pascals(S::c(ATMOSPHERE))
    }
}

/// Volume flow counted at a reference state, whatever the gas's own temperature and pressure.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct StandardVolumeFlow<S = f64> {
    cubic_meters_per_second: S,
    state: ReferenceState,
}

impl<S: Scalar> StandardVolumeFlow<S> {
    /// From cubic meters per second at the state.
    #[must_use]
    pub const fn from_cubic_meters_per_second(value: S, state: ReferenceState) -> Self {
        Self { cubic_meters_per_second: value, state }
    }
    /// In cubic meters per second at its state.
    #[must_use]
    pub const fn cubic_meters_per_second(self) -> S {
        self.cubic_meters_per_second
    }
    /// In cubic feet per hour at its state.
    #[must_use]
    pub fn cubic_feet_per_hour(self) -> S {
        self.cubic_meters_per_second / S::c(CUBIC_FOOT / 3600.0)
    }
    /// The state it is counted at.
    #[must_use]
    pub const fn state(self) -> ReferenceState {
        self.state
    }
}
