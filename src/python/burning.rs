//! Limits of burning, burning velocity, and the readings of an analyzer.

use std::prelude::rust_2024::*;

use pyo3::prelude::*;

use super::gas::Gas;
use super::operands::{Answer, Operand, refuse};
use super::site::map_on_site;
use crate::combustion::{
    self, Basis, Character, FlueReading, LimitStandard, air_ratio_from_oxygen, expected_reading as expected,
};
use crate::limits::{Input, check};
use crate::prose::fire::character_words;
use crate::quantity::{Speed, Temperature};

/// Leanest and richest air ratio, lower and upper limit, whether it lights itself, of (temperature, and the site's
/// three inputs).
#[pyfunction]
pub fn burning_range<'py>(
    py: Python<'py>,
    gas: PyRef<'py, Gas>,
    standard: u8,
    operands: Vec<Operand<'py>>,
    shape: Vec<usize>,
) -> Answer<'py> {
    map_on_site::<4, 5>(py, &gas, &operands, &shape, |gas, here, &[kelvin, ..]| {
        let temperature = Temperature::from_kelvin(kelvin);
        let range = match standard {
            0 => combustion::burning_range(gas, here, temperature, LimitStandard::Nfpa497)?,
            1 => combustion::burning_range(gas, here, temperature, LimitStandard::Iec60079)?,
            _ => combustion::explosive_range(gas, here, temperature)?,
        };
        Ok([
            range.leanest_air_ratio,
            range.richest_air_ratio,
            range.lower_limit,
            range.upper_limit,
            f64::from(u8::from(range.lights_itself)),
        ])
    })
}

/// Burning velocity in m/s, and the fastest published, of (air ratio, mixture temperature, and the site's three inputs).
#[pyfunction]
pub fn burning_velocity<'py>(
    py: Python<'py>,
    gas: PyRef<'py, Gas>,
    operands: Vec<Operand<'py>>,
    shape: Vec<usize>,
) -> Answer<'py> {
    map_on_site::<5, 2>(py, &gas, &operands, &shape, |gas, here, &[ratio, kelvin, ..]| {
        let band = combustion::burning_velocity_band(gas, here, ratio, Temperature::from_kelvin(kelvin))?;
        Ok(band.map(Speed::meters_per_second))
    })
}

/// Air ratio of (oxygen, carbon monoxide, and the site's three inputs).
#[pyfunction]
pub fn air_ratio_of_reading<'py>(
    py: Python<'py>,
    gas: PyRef<'py, Gas>,
    wet: bool,
    operands: Vec<Operand<'py>>,
    shape: Vec<usize>,
) -> Answer<'py> {
    let basis = if wet { Basis::Wet } else { Basis::Dry };
    map_on_site::<5, 1>(py, &gas, &operands, &shape, |gas, here, &[oxygen, carbon_monoxide, ..]| {
        Ok([air_ratio_from_oxygen(gas, here, FlueReading { oxygen, carbon_monoxide, basis })?])
    })
}

/// Oxygen dry and wet and carbon dioxide dry of (air ratio, and the site's three inputs).
#[pyfunction]
pub fn expected_reading<'py>(
    py: Python<'py>,
    gas: PyRef<'py, Gas>,
    operands: Vec<Operand<'py>>,
    shape: Vec<usize>,
) -> Answer<'py> {
    map_on_site::<4, 3>(py, &gas, &operands, &shape, |gas, here, &[ratio, ..]| {
        let reading = expected(gas, here, ratio)?;
        Ok([reading.oxygen_dry, reading.oxygen_wet, reading.carbon_dioxide_dry])
    })
}

/// Autoignition temperature in K, if any part of the gas burns.
#[pyfunction]
pub fn autoignition(gas: PyRef<'_, Gas>) -> PyResult<Option<f64>> {
    Ok(combustion::autoignition(gas.core.mixture()).map_err(refuse)?.map(Temperature::kelvin))
}

/// What a fire of this air ratio is called.
#[pyfunction]
pub fn fire_character(air_ratio: f64) -> PyResult<&'static str> {
    Ok(character_words(Character::of(check(Input::AirRatio, air_ratio).map_err(refuse)?)))
}
