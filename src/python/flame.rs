//! The flame.

use std::prelude::rust_2024::*;

use numpy::PyArray2;
use pyo3::prelude::*;

use super::gas::Gas;
use super::operands::{Operand, Told, map, told};
use crate::combustion::{Product, Reactants};
use crate::quantity::{AbsolutePressure, Temperature};
use crate::site::Site;

/// Formulas of the products, in the order of the arrays.
#[pyfunction]
pub fn products() -> Vec<&'static str> {
    Product::ALL.iter().map(|product| product.symbol()).collect()
}

/// Flame temperature, available heat, dry carbon monoxide at the chamber's temperature, then the wet products of
/// (air ratio, mixture temperature, chamber temperature, ambient pressure, air temperature, humidity).
#[pyfunction]
pub fn flame<'py>(
    py: Python<'py>,
    gas: PyRef<'py, Gas>,
    operands: Vec<Operand<'py>>,
    shape: Vec<usize>,
) -> PyResult<(Bound<'py, PyArray2<f64>>, Option<Told>)> {
    let gas = &*gas;
    let (array, failure) = map::<6, 14, (), _>(py, &operands, &shape, |inputs, _| {
        let [ratio, mixture, chamber, ambient, air, humidity] = *inputs;
        let kelvin = Temperature::from_kelvin;
        let site = Site::at_station_pressure(AbsolutePressure::from_pascals(ambient), kelvin(air), humidity)?;
        let reactants = Reactants::new(&gas.core, &site, ratio, kelvin(mixture))?;
        let flame = reactants.flame()?;
        let cooled = reactants.products_at(kelvin(chamber))?;
        let mut answers = [0.0; 14];
        answers[0] = flame.temperature.kelvin();
        answers[1] = reactants.available_heat(kelvin(chamber))?;
        answers[2] = cooled.dry(Product::CarbonMonoxide);
        for (answer, product) in answers[3..].iter_mut().zip(Product::ALL) {
            *answer = flame.products.wet(product);
        }
        Ok(answers)
    })?;
    Ok((array, told(failure)))
}
