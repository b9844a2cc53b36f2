//! Temperature as a point, and a difference of two.

use super::text::{Quantity, Unit};
use super::{additive, quantity, readable};
use crate::scalar::Scalar;

/// Kelvin at zero degrees Celsius, exact by definition.
const ICE_POINT: f64 = 273.15;
/// Kelvin at zero degrees Fahrenheit.
const FAHRENHEIT_ZERO: f64 = ICE_POINT - 160.0 / 9.0;

quantity! {
    /// A temperature as a point on the scale.
    ///
    /// ```
    /// use jetwright::quantity::Temperature;
    /// assert!((Temperature::from_fahrenheit(60.0_f64).celsius() - 15.5556).abs() < 1e-4);
    /// ```
    ///
    /// Two points cannot be added:
    ///
    /// ```compile_fail,E0369
    /// use jetwright::quantity::Temperature;
    /// let sum = Temperature::from_celsius(20.0) + Temperature::from_celsius(20.0);
    /// ```
    Temperature, "a temperature", from_kelvin, kelvin, "kelvin";
}

impl<S: Scalar> Temperature<S> {
    /// From degrees Celsius.
    #[must_use]
    pub fn from_celsius(value: S) -> Self {
        Self(value + S::c(ICE_POINT))
    }
    /// In degrees Celsius.
    #[must_use]
    pub fn celsius(self) -> S {
        self.0 - S::c(ICE_POINT)
    }
    /// From degrees Fahrenheit.
    #[must_use]
    pub fn from_fahrenheit(value: S) -> Self {
        Self(value / S::c(1.8) + S::c(FAHRENHEIT_ZERO))
    }
    /// In degrees Fahrenheit.
    #[must_use]
    pub fn fahrenheit(self) -> S {
        (self.0 - S::c(FAHRENHEIT_ZERO)) * S::c(1.8)
    }
    /// This point less another.
    #[must_use]
    pub fn above(self, other: Self) -> TemperatureDifference<S> {
        TemperatureDifference(self.0 - other.0)
    }
}

impl Quantity for Temperature<f64> {
    const WHAT: &'static str = "a temperature";
    const UNITS: &'static [Unit] = &[
        Unit { symbol: "C", factor: 1.0, offset: ICE_POINT },
        Unit { symbol: "degC", factor: 1.0, offset: ICE_POINT },
        Unit { symbol: "F", factor: 1.0 / 1.8, offset: FAHRENHEIT_ZERO },
        Unit { symbol: "degF", factor: 1.0 / 1.8, offset: FAHRENHEIT_ZERO },
        Unit { symbol: "K", factor: 1.0, offset: 0.0 },
    ];
    fn from_si(value: f64) -> Self {
        Self::from_kelvin(value)
    }
    fn si(&self) -> f64 {
        self.0
    }
}

quantity! {
    /// A difference of two temperatures.
    TemperatureDifference, "a temperature difference", from_kelvin, kelvin, "kelvin";
    from_fahrenheit_degrees, fahrenheit_degrees, 1.0 / 1.8, "Fahrenheit degrees";
}
additive!(TemperatureDifference);
readable!(TemperatureDifference, "a temperature difference", from_kelvin, ["K" = 1.0, "C" = 1.0, "F" = 1.0 / 1.8]);
