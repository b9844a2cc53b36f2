//! The site: how much air there is, and how much oxygen in it.

use crate::error::Result;
use crate::limits::{Input, check};
use crate::quantity::{AbsolutePressure, Density, Length, Temperature};
use crate::scalar::Scalar;
use crate::words::words;

/// Oxygen in dry air by volume.
pub const OXYGEN_IN_DRY_AIR: f64 = 0.209_46;
/// Molar mass of dry air with 400 ppm carbon dioxide, kg/kmol (Picard et al. 2008, table 1).
pub const DRY_AIR_MOLAR_MASS: f64 = 28.965_46;
/// Molar mass of water, kg/kmol.
const WATER_MOLAR_MASS: f64 = 18.015_28;
/// Molar gas constant that CIPM-2007 is written with, J/(mol K).
const CIPM_GAS_CONSTANT: f64 = 8.314_472;

/// Pressure at sea level in the standard atmosphere, Pa.
const SEA_LEVEL_PRESSURE: f64 = 101_325.0;
/// Temperature there, K.
const SEA_LEVEL_TEMPERATURE: f64 = 288.15;
/// Fall of temperature with height, K/m.
const LAPSE_RATE: f64 = 0.0065;
/// Earth's radius of ISO 2533, m.
const EARTH_RADIUS: f64 = 6_356_766.0;
/// g M / (R * lapse rate) with the constants of ISO 2533.
const PRESSURE_EXPONENT: f64 = 5.255_88;

/// Where the furnace stands and what the weather is.
///
/// # Examples
///
/// ```
/// use jetwright::Site;
/// use jetwright::quantity::{Length, Temperature};
/// let site = Site::at_altitude(Length::from_meters(1600.0_f64), Temperature::from_celsius(20.0), 0.4).unwrap();
/// assert!((site.ambient_pressure().hectopascals() - 835.2).abs() < 0.5); // about 5/6 of sea level
/// assert!((site.air_density().kilograms_per_cubic_meter() - 0.988).abs() < 0.002);
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Site<S = f64> {
    ambient_pressure: AbsolutePressure<S>,
    air_temperature: Temperature<S>,
    humidity: S,
    water_fraction: S,
    air_density: Density<S>,
}

words!(Site { ambient_pressure, air_temperature, humidity, water_fraction, air_density });

impl<S: Scalar> Site<S> {
    /// A site known by its altitude alone, in standard weather.
    ///
    /// # Range
    ///
    /// Altitude, air temperature and humidity (0 to 1) of [`limits`](crate::limits).
    ///
    /// # Errors
    ///
    /// The input that is out of its range.
    pub fn at_altitude(altitude: Length<S>, air_temperature: Temperature<S>, humidity: S) -> Result<Self> {
        Self::new(standard_pressure(altitude)?, air_temperature, humidity)
    }

    /// A site with a barometer: its reading as it is, not reduced to sea level.
    ///
    /// # Errors
    ///
    /// The input that is out of its range.
    pub fn at_station_pressure(
        station_pressure: AbsolutePressure<S>,
        air_temperature: Temperature<S>,
        humidity: S,
    ) -> Result<Self> {
        check(Input::StationPressure, station_pressure.pascals())?;
        Self::new(station_pressure, air_temperature, humidity)
    }

    /// A site with a forecast: a pressure reduced to sea level, and the altitude it was reduced from.
    ///
    /// The usual trap is to take the forecast's number as the pressure on the site.
    ///
    /// # Errors
    ///
    /// The input that is out of its range.
    pub fn at_forecast(
        sea_level_pressure: AbsolutePressure<S>,
        altitude: Length<S>,
        air_temperature: Temperature<S>,
        humidity: S,
    ) -> Result<Self> {
        Self::new(station_pressure(sea_level_pressure, altitude)?, air_temperature, humidity)
    }

    fn new(ambient_pressure: AbsolutePressure<S>, air_temperature: Temperature<S>, humidity: S) -> Result<Self> {
        check(Input::AirTemperature, air_temperature.kelvin())?;
        check(Input::Humidity, humidity)?;
        let (air_density, water_fraction) = moist_air(ambient_pressure, air_temperature, humidity);
        Ok(Self { ambient_pressure, air_temperature, humidity, water_fraction, air_density })
    }

    /// Pressure of the air on the site.
    #[must_use]
    pub fn ambient_pressure(&self) -> AbsolutePressure<S> {
        self.ambient_pressure
    }
    /// Temperature of the air.
    #[must_use]
    pub fn air_temperature(&self) -> Temperature<S> {
        self.air_temperature
    }
    /// Relative humidity, 0 to 1.
    #[must_use]
    pub fn humidity(&self) -> S {
        self.humidity
    }
    /// Mole fraction of water in the air.
    #[must_use]
    pub fn water_fraction(&self) -> S {
        self.water_fraction
    }
    /// Density of the moist air.
    #[must_use]
    pub fn air_density(&self) -> Density<S> {
        self.air_density
    }
    /// Mole fraction of oxygen in the moist air: 0.20946 (1 - water fraction).
    #[must_use]
    pub fn oxygen_fraction(&self) -> S {
        S::c(OXYGEN_IN_DRY_AIR) * (S::one() - self.water_fraction)
    }
    /// Molar mass of the moist air, kg/kmol.
    #[must_use]
    pub fn air_molar_mass(&self) -> S {
        S::c(DRY_AIR_MOLAR_MASS) - self.water_fraction * S::c(DRY_AIR_MOLAR_MASS - WATER_MOLAR_MASS)
    }
}

/// Pressure of the standard atmosphere: p = 101325 (1 - 0.0065 h / 288.15)^5.25588, h the geopotential
/// height r z / (r + z) of the altitude z.
///
/// # Errors
///
/// Altitude out of its range.
///
/// # Source
///
/// ISO 2533:1975, clause 2 (troposphere).
///
/// # Examples
///
/// ```
/// use jetwright::{quantity::Length, site::standard_pressure};
/// assert!((standard_pressure(Length::from_meters(1000.0_f64)).unwrap().pascals() - 89_876.0).abs() < 2.0);
/// ```
pub fn standard_pressure<S: Scalar>(altitude: Length<S>) -> Result<AbsolutePressure<S>> {
    let fall = temperature_fall(altitude)?;
    Ok(AbsolutePressure::from_pascals(S::c(SEA_LEVEL_PRESSURE) * (S::c(PRESSURE_EXPONENT) * (-fall).ln_1p()).exp()))
}

/// Pressure on the site from a pressure reduced to sea level: the altitude at which the standard
/// atmosphere has the reduced pressure, plus the altitude of the site, gives the pressure there.
///
/// # Errors
///
/// An input out of its range.
///
/// # Source
///
/// The altimeter-setting relation of ICAO Doc 7488, that is ISO 2533 entered twice. A forecast reduced
/// with the day's own temperature differs by up to 0.3 % at 1 600 m (common practice, no source).
///
/// # Examples
///
/// ```
/// use jetwright::{quantity::{AbsolutePressure, Length}, site::{standard_pressure, station_pressure}};
/// let altitude = Length::from_meters(1600.0_f64);
/// let station = station_pressure(AbsolutePressure::from_hectopascals(1013.25), altitude).unwrap();
/// assert!((station.pascals() - standard_pressure(altitude).unwrap().pascals()).abs() < 1e-6);
/// ```
pub fn station_pressure<S: Scalar>(
    sea_level_pressure: AbsolutePressure<S>,
    altitude: Length<S>,
) -> Result<AbsolutePressure<S>> {
    let pressure = check(Input::SeaLevelPressure, sea_level_pressure.pascals())?;
    let fall = temperature_fall(altitude)?;
    let departure = ((pressure / S::c(SEA_LEVEL_PRESSURE)).ln() / S::c(PRESSURE_EXPONENT)).exp_m1();
    Ok(AbsolutePressure::from_pascals(
        S::c(SEA_LEVEL_PRESSURE) * (S::c(PRESSURE_EXPONENT) * (departure - fall).ln_1p()).exp(),
    ))
}

/// The fall of temperature from sea level to the site, over the temperature at sea level.
fn temperature_fall<S: Scalar>(altitude: Length<S>) -> Result<S> {
    let z = check(Input::Altitude, altitude.meters())?;
    Ok(S::c(LAPSE_RATE / SEA_LEVEL_TEMPERATURE) * z / (S::one() + z / S::c(EARTH_RADIUS)))
}

/// Logarithm of the pressure in Pa at which water stands with its vapor.
///
/// # Source
///
/// CIPM-2007, equation A1.1; within 0.1 % of the reference equation of water up to 100 degC.
pub(crate) fn saturation_log<S: Scalar>(kelvin: S) -> S {
    S::c(1.237_884_7e-5) * kelvin.squared() - S::c(1.912_131_6e-2) * kelvin + S::c(33.937_110_47)
        - S::c(6.343_164_5e3) / kelvin
}

/// Density of moist air and the mole fraction of water in it:
/// rho = p Ma / (Z R T) (1 - 0.378 x_v), with 400 ppm carbon dioxide.
///
/// # Source
///
/// Picard, Davis, Glaeser, Fujii, "Revised formula for the density of moist air (CIPM-2007)",
/// Metrologia 45 (2008) 149, equations 1 and A1.1 to A1.4. Its stated range is 15 to 27 degC and 600 to
/// 1100 hPa; between -30 and 50 degC it stays within 0.05 % of the reference equation of moist air.
fn moist_air<S: Scalar>(pressure: AbsolutePressure<S>, temperature: Temperature<S>, humidity: S) -> (Density<S>, S) {
    let (p, kelvin, celsius) = (pressure.pascals(), temperature.kelvin(), temperature.celsius());
    let saturation_pressure = saturation_log(kelvin).exp();
    let enhancement = S::c(1.000_62) + S::c(3.14e-8) * p + S::c(5.6e-7) * celsius.squared();
    let water = humidity * enhancement * saturation_pressure / p;
    let per_kelvin = p / kelvin;
    let virial = S::c(1.581_23e-6) - S::c(2.933_1e-8) * celsius
        + S::c(1.104_3e-10) * celsius.squared()
        + (S::c(5.707e-6) - S::c(2.051e-8) * celsius) * water
        + (S::c(1.989_8e-4) - S::c(2.376e-6) * celsius) * water.squared();
    let compression_factor =
        S::one() - per_kelvin * virial + per_kelvin.squared() * (S::c(1.83e-11) - S::c(0.765e-8) * water.squared());
    let lighter = S::one() - S::c(1.0 - WATER_MOLAR_MASS / DRY_AIR_MOLAR_MASS) * water;
    let density = per_kelvin * S::c(DRY_AIR_MOLAR_MASS * 1e-3 / CIPM_GAS_CONSTANT) * lighter / compression_factor;
    (Density::from_kilograms_per_cubic_meter(density), water)
}
