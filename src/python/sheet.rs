//! The burner file, its sheet and the burner it describes.

use std::prelude::rust_2024::*;
use std::string::ToString;
use std::sync::OnceLock;
use std::vec;

use pyo3::exceptions::PyValueError;
use pyo3::prelude::*;

use super::mapping::burner_of;
use super::operands::{Answer, Operand, map};
use crate::burner::Conditions;
use crate::error::Error;
use crate::file::Places;
use crate::plant::{Lit, Plant};
use crate::quantity::{GaugePressure, Temperature};
use crate::report::render::card::{Content, html::render as render_card};
use crate::report::render::{html, json, text};
use crate::report::{Shop, sheet_tree};

fn refuse(error: impl ToString) -> PyErr {
    PyValueError::new_err(error.to_string())
}

/// The sheet of a burner file's text, or of a mapping: its JSON, and text, HTML and card in metric and in inch units.
#[pyfunction]
pub fn sheet_of(source: &Bound<'_, PyAny>, name: &str) -> PyResult<(String, [String; 3], [String; 3])> {
    let (sheet, places) = burner_of(source, name).and_then(|file| file.evaluate(false)).map_err(refuse)?;
    let unit = (0..sheet.settings.len()).find_map(|setting| places.gauge_unit(setting));
    let card = |sheet: &crate::plant::Sheet, inch: bool| {
        let mut shop = Shop::of(inch);
        if let Some(unit) = unit {
            shop = shop.with_gauge(unit, true);
        }
        let card = Content::of(&sheet_tree(sheet, &shop, unit), &shop);
        render_card(&[card]).unwrap_or_else(|refused| refused.0)
    };
    let pages = |sheet: &crate::plant::Sheet, inch: bool| {
        let shop = Shop::of(inch);
        let tree = sheet_tree(sheet, &shop, unit);
        let tree = tree.with_gauges(sheet, &shop, true, |setting| places.gauge_unit(setting));
        [text::render(&tree, &shop), html::render(&tree, &sheet.plant.entries.name, &shop), card(sheet, inch)]
    };
    let data = json::object(&sheet_tree(&sheet, &Shop::of(false), unit)).to_string();
    Ok((data, pages(&sheet, false), pages(&sheet.rounded(true), true)))
}

/// A class and what it is made of again.
type Reduced<'py> = (Bound<'py, PyAny>, (Py<PyAny>, String));

/// The burner a file describes, ready to run over arrays.
#[pyclass(frozen, module = "jetwright._native", name = "Burner")]
pub struct Burner {
    pub(super) plant: Plant,
    pub(super) places: Places,
    source: Py<PyAny>,
    pub(super) name: String,
    /// What lighting is worked out with, once asked.
    pub(super) lit: OnceLock<Option<Lit>>,
}

#[pymethods]
impl Burner {
    #[new]
    fn new(source: &Bound<'_, PyAny>, name: &str) -> PyResult<Self> {
        let (plant, places) = burner_of(source, name).and_then(|file| file.plant()).map_err(refuse)?;
        if plant.burner.is_none() {
            return Err(PyValueError::new_err("the file describes no blower and head, so there is no burner to run"));
        }
        Ok(Self { plant, places, source: source.clone().unbind(), name: name.into(), lit: OnceLock::new() })
    }

    /// Gas, heat gross and net, air, air ratio, damper opening, back pressure, blower pressure, head pressure,
    /// left of peak of (gauge pressure, damper opening or air ratio, chamber temperature, looked at with `has_chamber`).
    fn run<'py>(
        &self,
        py: Python<'py>,
        by_air_ratio: bool,
        has_chamber: bool,
        operands: Vec<Operand<'py>>,
        shape: Vec<usize>,
    ) -> Answer<'py> {
        let Some(burner) = &self.plant.burner else { return Err(PyValueError::new_err("no burner")) };
        map::<3, 10, (), _>(py, &operands, &shape, |&[gauge, aim, chamber], _| {
            let gauge = GaugePressure::from_pascals(gauge);
            let mut conditions: Conditions = self.plant.conditions;
            if has_chamber {
                conditions.chamber_temperature = Temperature::from_kelvin(chamber);
            }
            let conditions = self.plant.conditions_at(&conditions, gauge)?;
            let ((running, opening), _) = self.plant.run_at(&conditions, gauge, |at_jet| {
                let opening = if by_air_ratio { burner.opening_for(&conditions, at_jet, aim)? } else { aim };
                let running = burner.run(&conditions, at_jet, opening)?;
                Ok(((running, opening), running.back_pressure))
            })?;
            let gas = &conditions.gas;
            Ok([
                running.gas.kilograms_per_second(),
                gas.gross_heating_value().of(running.gas).watts(),
                gas.net_heating_value().of(running.gas).watts(),
                running.air.kilograms_per_second(),
                running.air_ratio.unwrap_or(f64::INFINITY),
                opening,
                running.back_pressure.pascals(),
                running.blower_pressure.pascals(),
                running.head_pressure.pascals(),
                f64::from(u8::from(running.left_of_peak)),
            ])
        })
    }

    /// What the burner's file is called.
    #[getter]
    fn name(&self) -> &str {
        &self.name
    }

    /// Density of the site's air, kg/m3.
    #[getter]
    fn air_density(&self) -> f64 {
        self.plant.site.air_density().kilograms_per_cubic_meter()
    }

    /// The blower's curve in the site's air: flows and static pressures.
    fn blower_curve(&self, points: usize) -> PyResult<(Vec<f64>, Vec<f64>)> {
        let Some(burner) = &self.plant.burner else { return Err(PyValueError::new_err("no burner")) };
        let blower = burner
            .blower
            .scaled(self.plant.site.air_density(), 1.0, 1.0)
            .map_err(|error: Error| PyValueError::new_err(error.to_string()))?;
        let free = blower.free_delivery();
        let mut curve = (vec![], vec![]);
        for point in 0..points {
            let flow = free * (point as f64 / (points.max(2) - 1) as f64);
            curve.0.push(flow.cubic_meters_per_second());
            curve.1.push(blower.static_pressure(flow).pascals());
        }
        Ok(curve)
    }

    /// What the burner asks of a blower at a gauge pressure and a damper opening: flows and static pressures,
    /// met by running the wheel from a fifth to twice its speed.
    fn system_curve(&self, gauge: f64, opening: f64, points: usize) -> PyResult<(Vec<f64>, Vec<f64>)> {
        let Some(burner) = &self.plant.burner else { return Err(PyValueError::new_err("no burner")) };
        let range = crate::Input::SpeedRatio.range();
        let gauge = GaugePressure::from_pascals(gauge);
        let conditions = self.plant.conditions_at(&self.plant.conditions, gauge).map_err(refuse)?;
        let run = |at_jet| Ok(((), burner.run(&conditions, at_jet, opening)?.back_pressure));
        let ((), at_jet) = self.plant.run_at(&conditions, gauge, run).map_err(refuse)?;
        let mut curve = (vec![], vec![]);
        for point in 0..points {
            let speed = range.min + (range.max - range.min) * (point as f64 / (points.max(2) - 1) as f64);
            let blower = burner.blower.scaled(burner.blower.density(), speed, 1.0).map_err(refuse)?;
            let running = crate::burner::Burner { blower, ..burner.clone() }.run(&conditions, at_jet, opening);
            match running {
                Ok(running) => {
                    curve.0.push(running.air_flow.cubic_meters_per_second());
                    curve.1.push(running.blower_pressure.pascals());
                }
                // Too slow a wheel holds nothing against the head: the curve starts above it.
                Err(Error::NoSolution { .. }) => {}
                Err(error) => return Err(refuse(error)),
            }
        }
        Ok(curve)
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> PyResult<Reduced<'py>> {
        let burner = slf.get();
        Ok((slf.get_type().into_any(), (burner.source.clone_ref(slf.py()), burner.name.clone())))
    }
}
