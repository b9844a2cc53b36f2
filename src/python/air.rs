//! Air needed, blower and head.

use std::prelude::rust_2024::*;

use pyo3::prelude::*;

use super::gas::Gas;
use super::operands::{Answer, Operand, map, refuse};
use crate::air::{self, BlowerPoint, operating_point};
use crate::burner;
use crate::combustion::AirNeed;
use crate::quantity::{ActualVolumeFlow, Density, Length, MassFlow, Power, PressureDifference};

/// Moist air of the site in kg/s for (gas flow, air ratio), behind them the site's four inputs.
#[pyfunction]
pub fn air_needed<'py>(
    py: Python<'py>,
    gas: PyRef<'py, Gas>,
    kind: u8,
    operands: Vec<Operand<'py>>,
    shape: Vec<usize>,
) -> Answer<'py> {
    let gas = &gas.core;
    map::<6, 1, (), _>(py, &operands, &shape, |&[flow, ratio, a, b, kelvin, humidity], _| {
        let need = AirNeed::new(gas, &super::site::one(kind, a, b, kelvin, humidity)?);
        Ok([need.air_for(MassFlow::from_kilograms_per_second(flow), ratio)?.kilograms_per_second()])
    })
}

/// Air supplied over air needed of (gas flow, air flow), behind them the site's four inputs.
#[pyfunction]
pub fn air_ratio<'py>(
    py: Python<'py>,
    gas: PyRef<'py, Gas>,
    kind: u8,
    operands: Vec<Operand<'py>>,
    shape: Vec<usize>,
) -> Answer<'py> {
    let gas = &gas.core;
    map::<6, 1, (), _>(py, &operands, &shape, |&[flow, air, a, b, kelvin, humidity], _| {
        let need = AirNeed::new(gas, &super::site::one(kind, a, b, kelvin, humidity)?);
        let kilograms = MassFlow::from_kilograms_per_second;
        Ok([need.air_ratio(kilograms(air), kilograms(flow)).unwrap_or(f64::NAN)])
    })
}

/// A blower's curve.
#[pyclass(frozen, module = "jetwright._native", name = "Blower")]
pub struct Blower {
    core: air::Blower,
}

#[pymethods]
impl Blower {
    /// Points of (m3/s, Pa, W or none) at a density in kg/m3.
    #[new]
    fn new(points: Vec<(f64, f64, Option<f64>)>, density: f64) -> PyResult<Self> {
        let points: Vec<BlowerPoint> = points
            .into_iter()
            .map(|(flow, pressure, power)| BlowerPoint {
                flow: ActualVolumeFlow::from_cubic_meters_per_second(flow),
                static_pressure: PressureDifference::from_pascals(pressure),
                shaft_power: power.map(Power::from_watts),
            })
            .collect();
        let density = Density::from_kilograms_per_cubic_meter(density);
        Ok(Self { core: air::Blower::new(&points, density).map_err(refuse)? })
    }

    /// A curve from its two ends.
    #[staticmethod]
    fn from_ends(shut_off: f64, free_delivery: f64, density: f64) -> PyResult<Self> {
        let core = air::Blower::from_two_numbers(
            PressureDifference::from_pascals(shut_off),
            ActualVolumeFlow::from_cubic_meters_per_second(free_delivery),
            Density::from_kilograms_per_cubic_meter(density),
        );
        Ok(Self { core: core.map_err(refuse)? })
    }

    /// The same at another density, speed and size.
    fn scaled(&self, density: f64, speed_ratio: f64, size_ratio: f64) -> PyResult<Self> {
        let density = Density::from_kilograms_per_cubic_meter(density);
        Ok(Self { core: self.core.scaled(density, speed_ratio, size_ratio).map_err(refuse)? })
    }

    /// kg/m3.
    #[getter]
    fn density(&self) -> f64 {
        self.core.density().kilograms_per_cubic_meter()
    }

    /// m3/s at no static pressure.
    #[getter]
    fn free_delivery(&self) -> f64 {
        self.core.free_delivery().cubic_meters_per_second()
    }

    /// The highest point: m3/s and Pa.
    #[getter]
    fn peak(&self) -> (f64, f64) {
        let (flow, pressure) = self.core.peak();
        (flow.cubic_meters_per_second(), pressure.pascals())
    }

    /// Static pressure at each flow.
    fn static_pressure<'py>(&self, py: Python<'py>, operands: Vec<Operand<'py>>, shape: Vec<usize>) -> Answer<'py> {
        map::<1, 1, (), _>(py, &operands, &shape, |&[flow], _| {
            let flow = crate::limits::check(crate::Input::AirFlow, flow)?;
            Ok([self.core.static_pressure(ActualVolumeFlow::from_cubic_meters_per_second(flow)).pascals()])
        })
    }

    /// Flow, static pressure and left-of-peak on each resistance k of dp = k Q^2, Pa s2/m6.
    fn operating_point<'py>(&self, py: Python<'py>, operands: Vec<Operand<'py>>, shape: Vec<usize>) -> Answer<'py> {
        map::<1, 3, (), _>(py, &operands, &shape, |&[resistance], _| {
            if !resistance.is_finite() || resistance < 0.0 {
                return Err(crate::Error::OutOfRange { input: crate::Input::FittingLoss, given: resistance as f32 });
            }
            let point = operating_point(&self.core, |flow| resistance * flow * flow)?;
            let left = f64::from(u8::from(point.left_of_peak));
            Ok([point.flow.cubic_meters_per_second(), point.static_pressure.pascals(), left])
        })
    }
}

/// A burner head.
#[pyclass(frozen, module = "jetwright._native", name = "Head")]
pub struct Head {
    core: burner::Head,
}

#[pymethods]
impl Head {
    /// Round ports.
    #[staticmethod]
    fn ports(count: f64, diameter: f64, length: f64, open_fraction: f64) -> PyResult<Self> {
        let meters = Length::from_meters;
        let core = burner::Head::with_ports(count, meters(diameter), meters(length), open_fraction);
        Ok(Self { core: core.map_err(refuse)? })
    }

    /// One slot.
    #[staticmethod]
    fn slot(width: f64, slot_length: f64, depth: f64) -> PyResult<Self> {
        let meters = Length::from_meters;
        let core = burner::Head::with_slot(meters(width), meters(slot_length), meters(depth));
        Ok(Self { core: core.map_err(refuse)? })
    }

    /// m2.
    #[getter]
    fn area(&self) -> f64 {
        self.core.area().square_meters()
    }

    /// Loss coefficient on the ports' speed at each friction factor.
    fn loss_coefficient<'py>(&self, py: Python<'py>, operands: Vec<Operand<'py>>, shape: Vec<usize>) -> Answer<'py> {
        map::<1, 1, (), _>(py, &operands, &shape, |&[factor], _| Ok([self.core.loss_coefficient(factor)]))
    }

    /// Pressure, port speed and Reynolds number of (mass flow, density, viscosity).
    fn flow<'py>(&self, py: Python<'py>, operands: Vec<Operand<'py>>, shape: Vec<usize>) -> Answer<'py> {
        map::<3, 3, (), _>(py, &operands, &shape, |&[flow, density, viscosity], _| {
            for value in [flow, density, viscosity] {
                if !value.is_finite() || value < 0.0 {
                    return Err(crate::Error::OutOfRange { input: crate::Input::AirFlow, given: value as f32 });
                }
            }
            let density = Density::from_kilograms_per_cubic_meter(density);
            let flow = self.core.flow(MassFlow::from_kilograms_per_second(flow), density, viscosity);
            Ok([flow.pressure.pascals(), flow.speed.meters_per_second(), flow.reynolds_number])
        })
    }
}
