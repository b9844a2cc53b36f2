//! What linings and work are made of.

use std::prelude::rust_2024::*;

use pyo3::exceptions::PyValueError;
use pyo3::prelude::*;

use super::operands::{Answer, Operand, map, refuse};
use crate::furnace::{self, MATERIALS, Matter, STEELS, SUBSTANCES};
use crate::limits::{Input, check};
use crate::quantity::{Density, Temperature};

/// Keys and sources of the classes of lining material.
#[pyfunction]
pub fn materials() -> Vec<(&'static str, &'static str)> {
    MATERIALS.iter().map(|data| (data.key, data.source)).collect()
}

/// Keys and sources of the substances.
#[pyfunction]
pub fn substances() -> Vec<(&'static str, &'static str)> {
    SUBSTANCES.iter().map(|data| (data.key, data.source)).collect()
}

/// Grades of steel and the temperatures they bear, K.
#[pyfunction]
pub fn steels() -> Vec<(&'static str, f64)> {
    STEELS.iter().map(|grade| (grade.key, Temperature::from_celsius(grade.limit_celsius).kelvin())).collect()
}

/// A lining material.
#[pyclass(frozen, module = "jetwright._native", name = "Material")]
pub struct Material {
    pub core: furnace::Material,
}

#[pymethods]
impl Material {
    /// A class of the table.
    #[new]
    fn new(key: &str) -> PyResult<Self> {
        let core = furnace::Material::named(key).ok_or_else(|| {
            let known: Vec<&str> = MATERIALS.iter().map(|data| data.key).collect();
            PyValueError::new_err(std::format!("material is {key:?}, accepted are {}", known.join(", ")))
        })?;
        Ok(Self { core })
    }

    /// One's own: kg/m3, points of (K, W/(m K)) and (K, J/(kg K)), K.
    #[staticmethod]
    fn by_points(
        density: f64,
        conductivity: Vec<(f64, f64)>,
        specific_heat: Vec<(f64, f64)>,
        limit: f64,
    ) -> PyResult<Self> {
        let density = Density::from_kilograms_per_cubic_meter(density);
        let limit = Temperature::from_kelvin(limit);
        let core = furnace::Material::by_points(density, &conductivity, &specific_heat, limit);
        Ok(Self { core: core.map_err(refuse)? })
    }

    /// The same with its conductivity multiplied.
    fn scaled(&self, factor: f64) -> PyResult<Self> {
        Ok(Self { core: self.core.with_conductivity_factor(factor).map_err(refuse)? })
    }

    /// kg/m3.
    #[getter]
    fn density(&self) -> f64 {
        self.core.density().kilograms_per_cubic_meter()
    }

    /// K.
    #[getter]
    fn limit(&self) -> f64 {
        self.core.limit().kelvin()
    }

    /// A share.
    #[getter]
    fn spread(&self) -> f64 {
        self.core.spread()
    }

    /// Conductivity and specific heat at temperatures.
    fn at<'py>(&self, py: Python<'py>, operands: Vec<Operand<'py>>, shape: Vec<usize>) -> Answer<'py> {
        map::<1, 2, (), _>(py, &operands, &shape, |&[kelvin], _| {
            check(Input::ChamberTemperature, kelvin)?;
            let temperature = Temperature::from_kelvin(kelvin);
            Ok([self.core.conductivity(temperature), Matter::specific_heat(&self.core, kelvin)])
        })
    }
}

/// What is heated.
#[pyclass(frozen, module = "jetwright._native", name = "Substance")]
pub struct Substance {
    pub core: furnace::Substance,
}

#[pymethods]
impl Substance {
    /// A substance of the table.
    #[new]
    fn new(key: &str) -> PyResult<Self> {
        let core = furnace::Substance::named(key).ok_or_else(|| {
            let known: Vec<&str> = SUBSTANCES.iter().map(|data| data.key).collect();
            PyValueError::new_err(std::format!("substance is {key:?}, accepted are {}", known.join(", ")))
        })?;
        Ok(Self { core })
    }

    /// A solid of one's own: as a material, and its emissivity.
    #[staticmethod]
    fn by_points(
        density: f64,
        conductivity: Vec<(f64, f64)>,
        specific_heat: Vec<(f64, f64)>,
        limit: f64,
        emissivity: f64,
    ) -> PyResult<Self> {
        let density = Density::from_kilograms_per_cubic_meter(density);
        let limit = Temperature::from_kelvin(limit);
        let core = furnace::Substance::by_points(density, &conductivity, &specific_heat, limit, emissivity);
        Ok(Self { core: core.map_err(refuse)? })
    }

    /// kg/m3.
    #[getter]
    fn density(&self) -> f64 {
        Matter::density(&self.core)
    }

    /// Where it begins to melt, K.
    #[getter]
    fn solidus(&self) -> f64 {
        self.core.solidus().kelvin()
    }

    /// Where it is all melted, K.
    #[getter]
    fn liquidus(&self) -> f64 {
        self.core.liquidus().kelvin()
    }

    /// As it lies in a fire.
    #[getter]
    fn emissivity(&self) -> f64 {
        self.core.emissivity()
    }

    /// Conductivity and specific heat at temperatures.
    fn at<'py>(&self, py: Python<'py>, operands: Vec<Operand<'py>>, shape: Vec<usize>) -> Answer<'py> {
        map::<1, 2, (), _>(py, &operands, &shape, |&[kelvin], _| {
            check(Input::WorkTemperature, kelvin)?;
            Ok([Matter::conductivity(&self.core, kelvin), Matter::specific_heat(&self.core, kelvin)])
        })
    }

    /// Heat of a kilogram between temperatures, J/kg.
    fn heat<'py>(&self, py: Python<'py>, operands: Vec<Operand<'py>>, shape: Vec<usize>) -> Answer<'py> {
        map::<2, 1, (), _>(py, &operands, &shape, |&[start, target], _| {
            let from = check(Input::WorkTemperature, start)?;
            let to = check(Input::WorkTemperature, target)?;
            Ok([self.core.heat(Temperature::from_kelvin(from), Temperature::from_kelvin(to))])
        })
    }
}
