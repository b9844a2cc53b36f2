//! The site.

use std::prelude::rust_2024::*;

use pyo3::prelude::*;

use super::gas::Gas;
use super::operands::{Answer, Operand, map};
use crate::error::{Error, Result as CheckedResult};
use crate::quantity::{AbsolutePressure, Length, Temperature};
use crate::site::Site;

/// The site of an ambient pressure, an air temperature and a humidity.
pub fn at_station(ambient: f64, temperature: f64, humidity: f64) -> CheckedResult<Site> {
    let ambient = AbsolutePressure::from_pascals(ambient);
    Site::at_station_pressure(ambient, Temperature::from_kelvin(temperature), humidity)
}

/// Calls `function` for every element with the gas, the site of the last three arguments (ambient pressure, air
/// temperature, humidity) and all arguments.
pub fn map_on_site<'py, const IN: usize, const OUT: usize>(
    py: Python<'py>,
    gas: &Gas,
    operands: &[Operand<'py>],
    shape: &[usize],
    function: impl Fn(&crate::gas::Gas, &Site, &[f64; IN]) -> CheckedResult<[f64; OUT]> + Sync,
) -> Answer<'py> {
    let gas = &gas.core;
    map::<IN, OUT, (), _>(py, operands, shape, |inputs, _| {
        let [.., ambient, air, humidity] = *inputs.as_slice() else { return Err(Error::CannotBurn) };
        function(gas, &at_station(ambient, air, humidity)?, inputs)
    })
}

/// The site of one element; `kind` as below.
pub fn one(kind: u8, first: f64, second: f64, temperature: f64, humidity: f64) -> CheckedResult<Site> {
    let temperature = Temperature::from_kelvin(temperature);
    match kind {
        0 => Site::at_altitude(Length::from_meters(first), temperature, humidity),
        1 => at_station(first, temperature.kelvin(), humidity),
        _ => {
            let (sea_level, altitude) = (AbsolutePressure::from_pascals(first), Length::from_meters(second));
            Site::at_forecast(sea_level, altitude, temperature, humidity)
        }
    }
}

/// Ambient pressure, air density, oxygen fraction, water fraction and air's molar mass of each element.
///
/// `kind` is 0 for (altitude, -), 1 for (station pressure, -), 2 for (sea-level pressure, altitude).
#[pyfunction]
pub fn site<'py>(py: Python<'py>, kind: u8, operands: Vec<Operand<'py>>, shape: Vec<usize>) -> Answer<'py> {
    map::<4, 5, (), _>(py, &operands, &shape, |&[first, second, temperature, humidity], _| {
        let site = one(kind, first, second, temperature, humidity)?;
        Ok([
            site.ambient_pressure().pascals(),
            site.air_density().kilograms_per_cubic_meter(),
            site.oxygen_fraction(),
            site.water_fraction(),
            site.air_molar_mass(),
        ])
    })
}
