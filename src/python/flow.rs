//! The jet.

use std::prelude::rust_2024::*;
use std::string::ToString;

use pyo3::exceptions::PyValueError;
use pyo3::prelude::*;

use super::gas::Gas;
use super::operands::{Answer, Kept, Operand, map, tell};
use crate::error::Result as CheckedResult;
use crate::orifice::{
    BoreLength, BoreShape, Coefficient, DrillList, Edge, Jet, JetFlow, Supply, bore_for_heat, pressure_for_heat,
};
use crate::quantity::{
    AbsolutePressure, Angle, GaugePressure, GrossHeatRate, HeatRate, Length, NetHeatRate, Temperature,
};

/// Inputs of a jet, in the order of the arrays: bore, bore length, edge's first and second measure, roughness,
/// approach diameter (infinite for none), measured coefficient (used only where `MEASURED` is added to the edge's
/// code), jets, gauge, back pressure, gas temperature, ambient pressure.
pub const INPUTS: usize = 12;
/// Answers, in the order of `FIELDS` in `python/jetwright/_flow.py`.
pub const OUTPUTS: usize = 14;
/// Added to the code of the edge where the coefficient is a measured one.
const MEASURED: u8 = 4;
/// The inputs a bore depends on.
const BORE: core::ops::Range<usize> = 0..6;

/// The shape of an element.
pub(super) fn shape(edge: u8, inputs: &[f64; INPUTS]) -> BoreShape {
    let [_, length, first, second, roughness, approach, ..] = *inputs;
    BoreShape {
        length: BoreLength::Fixed(Length::from_meters(length)),
        edge: match edge % MEASURED {
            0 => Edge::Sharp,
            1 => Edge::Square,
            2 => Edge::Chamfered { depth: Length::from_meters(first), angle: Angle::from_radians(second) },
            _ => Edge::Rounded { radius: Length::from_meters(first) },
        },
        roughness: Length::from_meters(roughness),
        approach: (approach != f64::INFINITY).then(|| Length::from_meters(approach)),
    }
}

/// The supply of an element and where its coefficient comes from.
pub(super) fn supply(edge: u8, inputs: &[f64; INPUTS]) -> CheckedResult<(Supply, Coefficient)> {
    let [.., coefficient, _, gauge, back, temperature, ambient] = *inputs;
    crate::limits::check(crate::Input::StationPressure, ambient)?;
    let supply = Supply {
        ambient: AbsolutePressure::from_pascals(ambient),
        gauge: GaugePressure::from_pascals(gauge),
        back: GaugePressure::from_pascals(back),
        temperature: Temperature::from_kelvin(temperature),
    };
    let coefficient = if edge < MEASURED { Coefficient::Model } else { Coefficient::Measured(coefficient) };
    Ok((supply, coefficient))
}

fn heat(gross: bool, watts: f64) -> HeatRate {
    if gross {
        HeatRate::Gross(GrossHeatRate::from_watts(watts))
    } else {
        HeatRate::Net(NetHeatRate::from_watts(watts))
    }
}

fn answers(flow: &JetFlow, saturation_ratio: f64) -> [f64; OUTPUTS] {
    [
        flow.mass_flow.kilograms_per_second(),
        flow.standard_volume_flow.cubic_meters_per_second(),
        flow.actual_volume_flow.cubic_meters_per_second(),
        flow.heat_gross.watts(),
        flow.heat_net.watts(),
        flow.discharge_coefficient,
        flow.coefficient_uncertainty,
        f64::from(u8::from(flow.choked)),
        flow.mass_flux,
        flow.exit_speed.meters_per_second(),
        flow.thrust.newtons(),
        flow.reynolds_number,
        flow.supply_density.kilograms_per_cubic_meter(),
        saturation_ratio,
    ]
}

fn one(gas: &Gas, edge: u8, inputs: &[f64; INPUTS], jet: Option<Jet>) -> CheckedResult<(Jet, [f64; OUTPUTS])> {
    let (supply, coefficient) = supply(edge, inputs)?;
    let jet = match jet {
        Some(jet) => Jet { count: inputs[7], coefficient, ..jet },
        None => {
            let bore = shape(edge, inputs).with_diameter(Length::from_meters(inputs[0]))?;
            Jet { bore, count: inputs[7], coefficient }
        }
    };
    let flow = jet.flow(&gas.core, &supply)?;
    let pressure = supply.gauge.to_absolute(supply.ambient);
    let saturation_ratio = gas.core.mixture().saturation_ratio(pressure, supply.temperature);
    Ok((jet, answers(&flow, saturation_ratio)))
}

/// Every result of a jet for every element.
#[pyfunction]
pub fn flow<'py>(
    py: Python<'py>,
    gas: PyRef<'py, Gas>,
    edge: u8,
    operands: Vec<Operand<'py>>,
    shape: Vec<usize>,
) -> Answer<'py> {
    let gas = &*gas;
    map::<INPUTS, OUTPUTS, _, _>(py, &operands, &shape, |inputs, kept: &mut Kept<Jet>| {
        let known = kept.get(&inputs[BORE]);
        let (jet, answers) = one(gas, edge, inputs, known)?;
        kept.put(&inputs[BORE], jet);
        Ok(answers)
    })
}

/// Every result of one jet.
#[pyfunction]
pub fn flow_one(gas: PyRef<'_, Gas>, edge: u8, inputs: [f64; INPUTS]) -> Result<[f64; OUTPUTS], PyErr> {
    one(&gas, edge, &inputs, None).map(|(_, answers)| answers).map_err(|error| PyValueError::new_err(tell(0, error)))
}

/// The gauge pressure, or the bore, with which each jet makes a heat, gross or net, which stands in its place among the
/// inputs.
#[pyfunction]
pub fn for_heat<'py>(
    py: Python<'py>,
    gas: PyRef<'py, Gas>,
    edge: u8,
    gross: bool,
    bore: bool,
    operands: Vec<Operand<'py>>,
    shape: Vec<usize>,
) -> Answer<'py> {
    let gas = &gas.core;
    map::<INPUTS, 1, _, _>(py, &operands, &shape, |inputs, _: &mut Kept<()>| {
        let (supply, coefficient) = supply(edge, inputs)?;
        let (shape, count) = (self::shape(edge, inputs), inputs[7]);
        if bore {
            let heat = heat(gross, inputs[0]);
            return Ok([bore_for_heat(&shape, count, coefficient, gas, &supply, heat)?.meters()]);
        }
        let jet = Jet { bore: shape.with_diameter(Length::from_meters(inputs[0]))?, count, coefficient };
        Ok([pressure_for_heat(&jet, gas, &supply, heat(gross, inputs[8]))?.pascals()])
    })
}

/// Names and bores of a list of sizes, rising.
#[pyfunction]
pub fn drills(list: &str) -> PyResult<Vec<(String, f64)>> {
    let list = match list {
        "number" => DrillList::Number,
        "letter" => DrillList::Letter,
        "fractional" => DrillList::Fractional,
        "metric" => DrillList::Metric,
        "tips" => DrillList::Tips,
        _ => return Err(PyValueError::new_err("drills is number, letter, fractional, metric or tips")),
    };
    Ok(list.drills().map(|drill| (drill.to_string(), drill.diameter().meters())).collect())
}
