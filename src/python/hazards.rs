//! What results warn of: a number an element, whose bits are the hazards by their codes.

use std::prelude::rust_2024::*;

use pyo3::exceptions::PyValueError;
use pyo3::prelude::*;

use super::gas::Gas;
use super::lighting::{Facts, aimed, known};
use super::operands::{Answer, Operand, map};
use super::sheet::Burner;
use super::site::map_on_site;
use super::supply::drawn;
use crate::burner::AirSetting;
use crate::combustion::flames_measured;
use crate::plant::certainty::sure_settings;
use crate::plant::entries::{AirAim, GasAim, SettingEntry, shortened};
use crate::plant::hazards::{
    Flowing, HazardKind, Hazards, at_setting, of_burner, of_castable, of_flame, of_flashback_known, of_gas, of_gauges,
    of_line, of_one_draw, of_setting, of_setting_lighting,
};
use crate::plant::lighting::setting_lighting;
use crate::plant::setting::set;
use crate::quantity::{GaugePressure, Mass, Temperature};

// A float holds whole numbers of 53 bits.
const _: () = assert!(HazardKind::ALL.len() <= 53);

/// The hazards as the bits of a whole number.
pub(super) fn bits(hazards: &Hazards) -> f64 {
    let bit = |kind: HazardKind| 1_u64 << (kind as u16 - 1);
    hazards.iter().fold(0, |bits, hazard| bits | bit(hazard.kind)) as f64
}

/// Key and severity of every hazard, the bit of the lowest first.
#[pyfunction]
pub fn hazard_kinds() -> Vec<(&'static str, &'static str)> {
    HazardKind::ALL.iter().map(|kind| (kind.key(), kind.severity().key())).collect()
}

/// Of the inputs of `flow`.
#[pyfunction]
pub fn flow_hazards<'py>(
    py: Python<'py>,
    gas: PyRef<'py, Gas>,
    edge: u8,
    operands: Vec<Operand<'py>>,
    shape: Vec<usize>,
) -> Answer<'py> {
    let gas = &gas.core;
    map::<{ super::flow::INPUTS }, 1, (), _>(py, &operands, &shape, |inputs, _| {
        let inputs = super::flow::JetInputs::from(inputs);
        let (supply, jet) = (inputs.supply()?, inputs.jet(edge)?);
        let flow = jet.flow(gas, &supply)?;
        let pressure = supply.gauge.to_absolute(supply.ambient);
        let saturation_ratio = gas.mixture().saturation_ratio(pressure, supply.temperature);
        Ok([bits(&of_gauges(gas, [Flowing { bore: &jet.bore, drill: None, flow: &flow, saturation_ratio }]))])
    })
}

/// Of the inputs of `flame`.
#[pyfunction]
pub fn flame_hazards<'py>(
    py: Python<'py>,
    gas: PyRef<'py, Gas>,
    operands: Vec<Operand<'py>>,
    shape: Vec<usize>,
) -> Answer<'py> {
    map_on_site::<6, 1>(py, &gas, &operands, &shape, |gas, site, &[ratio, mixture, chamber, ..]| {
        let kelvin = Temperature::from_kelvin;
        Ok([bits(&of_flame(gas, site, kelvin(mixture), kelvin(chamber), ratio))])
    })
}

/// Of the inputs of `Burner.run`.
#[pyfunction]
pub fn run_hazards<'py>(
    py: Python<'py>,
    burner: PyRef<'py, Burner>,
    by_air_ratio: bool,
    has_chamber: bool,
    operands: Vec<Operand<'py>>,
    shape: Vec<usize>,
) -> Answer<'py> {
    let plant = &burner.plant;
    map::<3, 1, (), _>(py, &operands, &shape, |&[gauge, aim, chamber], _| {
        let chamber = has_chamber.then(|| Temperature::from_kelvin(chamber));
        let entry = entry(gauge, aimed(by_air_ratio, aim), chamber);
        let setting = set(plant, &entry)?;
        let (mut found, place) = (Hazards::new(), at_setting(0));
        of_setting(plant, &setting, place, &mut found);
        of_burner(plant, Some(setting.gauge), &mut found);
        if plant.before.line.is_some() {
            found.extend(of_line(setting.gauge, setting.at_jet, place));
        }
        Ok([bits(&found)])
    })
}

/// Of the inputs of `cylinder`.
#[pyfunction]
pub fn cylinder_hazards<'py>(
    py: Python<'py>,
    gas: PyRef<'py, Gas>,
    kind: u8,
    operands: Vec<Operand<'py>>,
    shape: Vec<usize>,
) -> Answer<'py> {
    let gas = &gas.core;
    map::<12, 1, (), _>(py, &operands, &shape, |inputs, _| {
        drawn(gas, kind, inputs, |store, flow, needs, time| {
            Ok([bits(&of_one_draw(gas, &store.row(flow, needs, time)?))])
        })
    })
}

/// Of a gas by itself.
#[pyfunction]
pub fn gas_hazards(gas: PyRef<'_, Gas>) -> f64 {
    bits(&of_gas(&gas.core).into_iter().collect())
}

/// Of (dry mass, water) of a castable.
#[pyfunction]
pub fn castable_hazards<'py>(py: Python<'py>, operands: Vec<Operand<'py>>, shape: Vec<usize>) -> Answer<'py> {
    map::<2, 1, (), _>(py, &operands, &shape, |&[dry, water], _| {
        Ok([bits(&of_castable(Mass::from_kilograms(water), Mass::from_kilograms(dry)).collect())])
    })
}

/// Of the inputs of `lighting`: the ports, unlit gas, and a flame that is blown off.
#[pyfunction]
pub fn lighting_hazards<'py>(
    burner: &Bound<'py, Burner>,
    py: Python<'py>,
    by_air_ratio: bool,
    facts: Facts,
    operands: Vec<Operand<'py>>,
    shape: Vec<usize>,
) -> Answer<'py> {
    let plant = &burner.get().plant;
    let Some(burner) = &plant.burner else { return Err(PyValueError::new_err("no burner")) };
    let is_known = flames_measured(&plant.gas).is_ok();
    map::<2, 1, (), _>(py, &operands, &shape, |&[gauge, aim], _| {
        let setting = set(plant, &entry(gauge, aimed(by_air_ratio, aim), None))?;
        let left = setting.air.as_ref().and_then(|air| air.opening).unwrap_or(1.0);
        let sure = sure_settings(plant, core::slice::from_ref(&setting)).first().copied().flatten();
        let lighting = setting_lighting(burner, plant, &setting, sure.as_ref(), left, &known(facts))?;
        let mut found: Hazards = of_gas(&plant.gas).into_iter().chain(of_flashback_known(is_known)).collect();
        of_setting_lighting(plant, &setting, &lighting, at_setting(0), &mut found);
        Ok([bits(&found)])
    })
}

/// A setting that no file has.
fn entry(gauge: f64, air: AirSetting, chamber_temperature: Option<Temperature>) -> SettingEntry {
    SettingEntry {
        name: shortened("run"),
        gas: GasAim::Gauge(GaugePressure::from_pascals(gauge)),
        air: match air {
            AirSetting::Ratio(ratio) => AirAim::AirRatio(ratio),
            AirSetting::Opening(opening) => AirAim::Damper(opening),
        },
        chamber_temperature,
        minutes: None,
        purpose: None,
        used_for: None,
    }
}
