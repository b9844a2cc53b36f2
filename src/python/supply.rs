//! Cylinder under draw and low-pressure pipe.

use std::prelude::rust_2024::*;

use pyo3::prelude::*;

use super::gas::Gas;
use super::operands::{Answer, Operand, map};
use crate::error::Result as CheckedResult;
use crate::fuel::{Charge, Cylinder, low_pressure_pipe_flow, low_pressure_pipe_mass_flow};
use crate::limits::{Input, check};
use crate::plant::Store;
use crate::quantity::{Duration, GaugePressure, Length, Mass, MassFlow, PressureDifference, Temperature};

/// Steady draw, whether that is enough, seconds until too cold and until empty, gas left, liquid temperature and gauge
/// pressure in the end, gauge pressure at first.
///
/// Of (draw, capacity, diameter, left, empty mass, count, need, duration), behind them the site's four inputs. What does not
/// come within the duration is infinite.
#[pyfunction]
pub fn cylinder<'py>(
    py: Python<'py>,
    gas: PyRef<'py, Gas>,
    kind: u8,
    operands: Vec<Operand<'py>>,
    shape: Vec<usize>,
) -> Answer<'py> {
    let gas = &gas.core;
    map::<12, 8, (), _>(py, &operands, &shape, |inputs, _| {
        drawn(gas, kind, inputs, |store, flow, needs, time| {
            let needed = needs.to_absolute(store.ambient);
            let steady = store.cylinder.steady_draw(gas, store.charge.mass, store.air, needed)?;
            let end = store.cylinder.draw(gas, store.charge, store.air, flow, time, needed)?;
            let after = |time: Option<Duration>| time.map_or(f64::INFINITY, Duration::seconds);
            Ok([
                steady.kilograms_per_second(),
                f64::from(u8::from(flow <= steady)),
                after(end.too_cold_after),
                after(end.empty_after),
                end.left.kilograms(),
                end.temperature.kelvin(),
                end.pressure.to_gauge(store.ambient).pascals(),
                store.pressure()?.pascals(),
            ])
        })
    })
}

/// The cylinders of one element, with what is drawn, what the regulator needs, and for how long.
pub(super) fn drawn<T>(
    gas: &crate::gas::Gas,
    kind: u8,
    inputs: &[f64; 12],
    ask: impl FnOnce(&Store<'_>, MassFlow, GaugePressure, Duration) -> CheckedResult<T>,
) -> CheckedResult<T> {
    let &[draw, capacity, diameter, left, empty, count, needs, duration, a, b, kelvin, humidity] = inputs;
    let ambient = super::site::one(kind, a, b, kelvin, humidity)?.ambient_pressure();
    let (kilograms, air) = (Mass::from_kilograms, Temperature::from_kelvin(kelvin));
    let cylinder = Cylinder::new(Length::from_meters(diameter), kilograms(capacity), Some(kilograms(empty)), count)?;
    let needs = GaugePressure::from_pascals(check(Input::InletPressure, needs)?);
    let charge = Charge { mass: kilograms(left * count), temperature: air };
    let store = Store { gas, ambient, cylinder: &cylinder, count: count as u32, charge, air };
    ask(&store, MassFlow::from_kilograms_per_second(draw), needs, Duration::from_seconds(duration))
}

/// Volume flow as the code measures it and mass flow of (diameter, length, pressure drop).
#[pyfunction]
pub fn low_pressure_line<'py>(
    py: Python<'py>,
    gas: PyRef<'py, Gas>,
    operands: Vec<Operand<'py>>,
    shape: Vec<usize>,
) -> Answer<'py> {
    let gas = &gas.core;
    let relative = gas.mixture().calorific_values(Default::default(), Default::default()).relative_density;
    let viscosity = gas.viscosity(Temperature::from_fahrenheit(60.0));
    map::<3, 2, (), _>(py, &operands, &shape, |&[diameter, length, drop], _| {
        let (diameter, length) = (Length::from_meters(diameter), Length::from_meters(length));
        let drop = PressureDifference::from_pascals(drop);
        let flow = low_pressure_pipe_flow(diameter, length, drop, relative, viscosity)?;
        let mass = low_pressure_pipe_mass_flow(gas, flow)?;
        Ok([flow.cubic_meters_per_second(), mass.kilograms_per_second()])
    })
}
