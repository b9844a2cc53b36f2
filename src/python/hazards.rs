//! What results warn of: a number an element, whose bits are the hazards by their codes.

use std::prelude::rust_2024::*;

use pyo3::prelude::*;

use super::gas::Gas;
use super::operands::{Answer, Operand, map};
use super::sheet::Burner;
use crate::plant::entries::{AirAim, GasAim, SettingEntry, shortened};
use crate::plant::hazards::{
    Flowing, HazardKind, Hazards, at_setting, of_burner, of_flame, of_gauges, of_line, of_setting,
};
use crate::plant::setting::set;
use crate::quantity::{GaugePressure, Temperature};

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
    let gas = &gas.core;
    map::<6, 1, (), _>(py, &operands, &shape, |inputs, _| {
        let [ratio, mixture, chamber, ambient, air, humidity] = *inputs;
        let site = super::site::at_station(ambient, air, humidity)?;
        let kelvin = Temperature::from_kelvin;
        Ok([bits(&of_flame(gas, &site, kelvin(mixture), kelvin(chamber), ratio))])
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
        let entry = SettingEntry {
            name: shortened("run"),
            gas: GasAim::Gauge(GaugePressure::from_pascals(gauge)),
            air: if by_air_ratio { AirAim::AirRatio(aim) } else { AirAim::Damper(aim) },
            chamber_temperature: has_chamber.then(|| Temperature::from_kelvin(chamber)),
            minutes: None,
            purpose: None,
        };
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
