//! The site and the gas.

use crate::quantity::{AbsolutePressure, Length, PricePerMass, Temperature};

/// Where the pressure of the air is taken from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum SitePressure {
    /// The standard atmosphere at an altitude.
    Altitude(Length),
    /// A barometer on the site.
    Station(AbsolutePressure),
    /// A forecast, which is reduced to sea level and so needs the altitude.
    Forecast {
        /// The forecast's pressure.
        sea_level: AbsolutePressure,
        /// Height of the site.
        altitude: Length,
    },
}

/// The site and its weather.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SiteEntry {
    /// Pressure of the air.
    pub pressure: SitePressure,
    /// Temperature of the air.
    pub air_temperature: Temperature,
    /// Relative humidity, 0 to 1; dry unless given.
    pub humidity: f64,
}

/// The gas and its price.
#[derive(Clone, Debug, PartialEq)]
pub struct GasEntry {
    /// A named gas, or mole fractions such as `C3H8=0.95,C2H6=0.05`; not looked up yet.
    pub kind: heapless::String<200>,
    /// Temperature before the jet; that of the air unless given.
    pub temperature: Temperature,
    /// Whether it was; if not, and there is a cylinder, throttling decides it.
    pub temperature_is_given: bool,
    /// Price, if known.
    pub price: Option<PricePerMass>,
    /// Sign of the money, `$` unless given.
    pub currency: heapless::String<32>,
}
