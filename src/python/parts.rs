//! Dampers, ducts, a blower's duty, and the perfect gas of textbooks.

use std::prelude::rust_2024::*;

use pyo3::prelude::*;

use super::operands::{Answer, Operand, map};
use crate::air::{Damper, DamperKind, Duty, Resistance};
use crate::friction::Friction;
use crate::limits::{Input, check};
use crate::orifice::{Stream, frictional_bore};
use crate::quantity::{ActualVolumeFlow, Density, Length, PressureDifference};

/// Loss coefficient of a damper (0 blast gate, 1 butterfly, 2 ball valve, 3 gate valve) at each (opening, gap of a disc).
#[pyfunction]
pub fn damper_loss<'py>(py: Python<'py>, kind: u8, operands: Vec<Operand<'py>>, shape: Vec<usize>) -> Answer<'py> {
    let kinds = [DamperKind::BlastGate, DamperKind::Butterfly, DamperKind::BallValve, DamperKind::GateValve];
    let kind = kinds[usize::from(kind).min(kinds.len() - 1)];
    // The coefficient is the same for every diameter.
    let duct = Length::from_meters(0.1);
    let whole = Damper::new(kind, duct).map_err(super::operands::refuse)?;
    map::<2, 1, (), _>(py, &operands, &shape, |&[opening, gap], _| {
        let loss = match kind {
            DamperKind::Butterfly => Damper::disc(duct, gap)?.loss_coefficient(opening)?,
            _ => whole.loss_coefficient(opening)?,
        };
        Ok([loss])
    })
}

/// Pressure lost of (flow, loss coefficient, diameter, density).
#[pyfunction]
pub fn duct_loss<'py>(py: Python<'py>, operands: Vec<Operand<'py>>, shape: Vec<usize>) -> Answer<'py> {
    map::<4, 1, (), _>(py, &operands, &shape, |&[flow, coefficient, diameter, density], _| {
        let flow = ActualVolumeFlow::from_cubic_meters_per_second(check(Input::AirFlow, flow)?);
        let coefficient = check(Input::FittingLoss, coefficient)?;
        let diameter = Length::from_meters(check(Input::DuctDiameter, diameter)?);
        let density = Density::from_kilograms_per_cubic_meter(check(Input::AirDensity, density)?);
        Ok([Resistance::from_loss_coefficient(coefficient, diameter, density).loss(flow).pascals()])
    })
}

/// Air power, shaft power, and static pressure and shaft power as if at 1.2 kg/m3, of (flow, static pressure, density,
/// efficiency).
#[pyfunction]
pub fn duty<'py>(py: Python<'py>, operands: Vec<Operand<'py>>, shape: Vec<usize>) -> Answer<'py> {
    map::<4, 4, (), _>(py, &operands, &shape, |&[flow, pressure, density, efficiency], _| {
        let flow = ActualVolumeFlow::from_cubic_meters_per_second(flow);
        let density = Density::from_kilograms_per_cubic_meter(density);
        let duty = Duty::new(flow, PressureDifference::from_pascals(pressure), density, Some(efficiency))?;
        let watts = |power: Option<crate::quantity::Power>| power.map_or(f64::NAN, |power| power.watts());
        let standard = duty.as_standard_air;
        Ok([
            duty.air_power.watts(),
            watts(duty.shaft_power),
            standard.static_pressure.pascals(),
            watts(standard.shaft_power),
        ])
    })
}

/// Pressure ratio at the mouth's end, flux over p0/sqrt(R T), a bore's flow over it and whether that is choked, of
/// (exponent, pressure ratio, entry loss, friction length).
#[pyfunction]
pub fn perfect_gas<'py>(py: Python<'py>, operands: Vec<Operand<'py>>, shape: Vec<usize>) -> Answer<'py> {
    map::<4, 4, (), _>(py, &operands, &shape, |&[exponent, ratio, entry, factor], _| {
        let stream = Stream::perfect_gas(exponent, ratio);
        let bore = frictional_bore(entry, &stream, |_| Friction { factor, log_slope: 0.0 })?;
        Ok([stream.pressure_ratio, stream.flux_squared.sqrt(), bore.coefficient, f64::from(u8::from(bore.choked))])
    })
}
