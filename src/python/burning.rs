//! Limits of burning, burning velocity, and the readings of an analyser.

use std::prelude::rust_2024::*;

use numpy::PyArray2;
use pyo3::prelude::*;

use super::gas::Gas;
use super::operands::{Operand, Told, map, refuse, told};
use crate::combustion::{
    self, Basis, Character, FlueReading, LimitStandard, air_ratio_from_oxygen, expected_reading as expected,
};
use crate::error::Result as CheckedResult;
use crate::limits::{Input, check};
use crate::quantity::{AbsolutePressure, Temperature};
use crate::sheet::flame_words::character_words;
use crate::site::Site;

type Answer<'py> = PyResult<(Bound<'py, PyArray2<f64>>, Option<Told>)>;

fn site(ambient: f64, air: f64, humidity: f64) -> CheckedResult<Site> {
    Site::at_station_pressure(AbsolutePressure::from_pascals(ambient), Temperature::from_kelvin(air), humidity)
}

/// Leanest and richest air ratio, lower and upper limit, whether it lights itself, of (temperature, and the site's
/// three inputs).
#[pyfunction]
pub fn burning_range<'py>(
    py: Python<'py>,
    gas: PyRef<'py, Gas>,
    wider: bool,
    operands: Vec<Operand<'py>>,
    shape: Vec<usize>,
) -> Answer<'py> {
    let gas = &gas.core;
    let standard = if wider { LimitStandard::Iec60079 } else { LimitStandard::Nfpa497 };
    let (array, failure) = map::<4, 5, (), _>(py, &operands, &shape, |&[kelvin, ambient, air, humidity], _| {
        let here = site(ambient, air, humidity)?;
        let range = combustion::burning_range(gas, &here, Temperature::from_kelvin(kelvin), standard)?;
        Ok([
            range.leanest_air_ratio,
            range.richest_air_ratio,
            range.lower_limit,
            range.upper_limit,
            f64::from(u8::from(range.lights_itself)),
        ])
    })?;
    Ok((array, told(failure)))
}

/// Burning velocity in m/s of (air ratio, mixture temperature, and the site's three inputs).
#[pyfunction]
pub fn burning_velocity<'py>(
    py: Python<'py>,
    gas: PyRef<'py, Gas>,
    operands: Vec<Operand<'py>>,
    shape: Vec<usize>,
) -> Answer<'py> {
    let gas = &gas.core;
    let (array, failure) = map::<5, 1, (), _>(py, &operands, &shape, |&[ratio, kelvin, ambient, air, humidity], _| {
        let here = site(ambient, air, humidity)?;
        let speed = combustion::burning_velocity(gas, &here, ratio, Temperature::from_kelvin(kelvin))?;
        Ok([speed.meters_per_second()])
    })?;
    Ok((array, told(failure)))
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
    let gas = &gas.core;
    let basis = if wet { Basis::Wet } else { Basis::Dry };
    let (array, failure) =
        map::<5, 1, (), _>(py, &operands, &shape, |&[oxygen, carbon_monoxide, ambient, air, humidity], _| {
            let here = site(ambient, air, humidity)?;
            Ok([air_ratio_from_oxygen(gas, &here, FlueReading { oxygen, carbon_monoxide, basis })?])
        })?;
    Ok((array, told(failure)))
}

/// Oxygen dry and wet and carbon dioxide dry of (air ratio, and the site's three inputs).
#[pyfunction]
pub fn expected_reading<'py>(
    py: Python<'py>,
    gas: PyRef<'py, Gas>,
    operands: Vec<Operand<'py>>,
    shape: Vec<usize>,
) -> Answer<'py> {
    let gas = &gas.core;
    let (array, failure) = map::<4, 3, (), _>(py, &operands, &shape, |&[ratio, ambient, air, humidity], _| {
        let reading = expected(gas, &site(ambient, air, humidity)?, ratio)?;
        Ok([reading.oxygen_dry, reading.oxygen_wet, reading.carbon_dioxide_dry])
    })?;
    Ok((array, told(failure)))
}

/// Autoignition temperature in K, if any part of the gas has one.
#[pyfunction]
pub fn autoignition(gas: PyRef<'_, Gas>) -> Option<f64> {
    combustion::autoignition(gas.core.mixture()).map(Temperature::kelvin)
}

/// What a fire of this air ratio is called.
#[pyfunction]
pub fn fire_character(air_ratio: f64) -> PyResult<&'static str> {
    Ok(character_words(Character::of(check(Input::AirRatio, air_ratio).map_err(refuse)?)))
}
