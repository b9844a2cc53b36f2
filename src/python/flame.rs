//! The flame.

use std::prelude::rust_2024::*;

use pyo3::prelude::*;

use super::gas::Gas;
use super::operands::{Answer, Operand};
use super::site::map_on_site;
use crate::combustion::{Product, Reactants};
use crate::quantity::Temperature;

/// Formulas of the products, in the order of the arrays.
#[pyfunction]
pub fn products() -> Vec<&'static str> {
    Product::ALL.iter().map(|product| product.symbol()).collect()
}

/// Columns before the products.
const FIRST: usize = 9;
/// All of them.
const COLUMNS: usize = FIRST + Product::COUNT;

/// Of (air ratio, mixture temperature, chamber temperature, ambient pressure, air temperature, humidity): flame
/// temperature and available heat; dry carbon monoxide, oxygen and carbon dioxide at the chamber's temperature; sensible
/// and unburnt loss, dew point and drive of scale, not a number where there is none; then the wet products of the flame.
#[pyfunction]
pub fn flame<'py>(
    py: Python<'py>,
    gas: PyRef<'py, Gas>,
    operands: Vec<Operand<'py>>,
    shape: Vec<usize>,
) -> Answer<'py> {
    map_on_site::<6, COLUMNS>(py, &gas, &operands, &shape, |gas, site, &[ratio, mixture, chamber, ..]| {
        let kelvin = Temperature::from_kelvin;
        let reactants = Reactants::new(gas, site, ratio, kelvin(mixture))?;
        let flame = reactants.flame()?;
        let leaving = reactants.leaving(kelvin(chamber))?;
        let left = &leaving.products;
        let mut answers = [0.0; COLUMNS];
        let first: [f64; FIRST] = [
            flame.temperature.kelvin(),
            leaving.available_heat,
            left.dry(Product::CarbonMonoxide),
            left.dry(Product::Oxygen),
            left.dry(Product::CarbonDioxide),
            leaving.loss.sensible,
            leaving.loss.unburnt,
            left.dew_point(site.ambient_pressure()).map_or(f64::NAN, Temperature::kelvin),
            left.scale(kelvin(chamber)).map_or(f64::NAN, |scale| scale.drive),
        ];
        answers[..FIRST].copy_from_slice(&first);
        for (answer, product) in answers[FIRST..].iter_mut().zip(Product::ALL) {
            *answer = flame.products.wet(product);
        }
        Ok(answers)
    })
}
