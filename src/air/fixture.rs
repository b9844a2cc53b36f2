//! What the tests of this room share.

use proptest::prelude::*;
use std::vec::Vec;

use super::blower::{Blower, BlowerPoint};
use crate::quantity::{ActualVolumeFlow, Density, Power, PressureDifference};
use crate::{Input, Scalar};

pub(super) fn flow<S: Scalar>(value: S) -> ActualVolumeFlow<S> {
    ActualVolumeFlow::from_cubic_meters_per_second(value)
}

pub(super) fn density<S: Scalar>(value: f64) -> Density<S> {
    Density::from_kilograms_per_cubic_meter(S::c(value))
}

/// Flow, static pressure and shaft power of an invented blower, in air of 1.2 kg/m3.
const INVENTED: [(f64, f64, f64); 6] = [
    (0.0, 900.0, 30.0),
    (0.01, 950.0, 42.0),
    (0.02, 930.0, 55.0),
    (0.035, 760.0, 73.0),
    (0.05, 400.0, 88.0),
    (0.06, 50.0, 95.0),
];

pub(super) fn invented<S: Scalar>() -> Blower<S> {
    let points = INVENTED.map(|(at, pressure, power)| point(S::c(at), S::c(pressure), Some(S::c(power))));
    Blower::new(&points, density(1.2)).unwrap()
}

pub(super) fn point<S: Scalar>(at: S, pressure: S, power: Option<S>) -> BlowerPoint<S> {
    BlowerPoint {
        flow: flow(at),
        static_pressure: PressureDifference::from_pascals(pressure),
        shaft_power: power.map(Power::from_watts),
    }
}

/// Points over the whole of the accepted ranges, flow rising in steps within ten times each other.
pub(super) fn any_points() -> impl Strategy<Value = Vec<(f64, f64)>> {
    let (flows, pressures) = (Input::AirFlow.range(), Input::BlowerPressure.range());
    let steps = prop::collection::vec((0.1..1.0_f64, 1.0..pressures.max), 2..=16);
    (1e-4..flows.max / 16.0, 0.0..1.0_f64, steps).prop_map(|(most, first, steps)| {
        let start = most * steps[0].0 * first;
        let mut at = start - most * steps[0].0;
        let mut next = |step: f64| {
            at += most * step;
            at
        };
        steps.into_iter().map(|(step, pressure)| (next(step), pressure)).collect()
    })
}

pub(super) fn of<S: Scalar>(points: &[(f64, f64)]) -> Blower<S> {
    let points: Vec<_> = points.iter().map(|&(at, pressure)| point(S::c(at), S::c(pressure), None)).collect();
    Blower::new(&points, density(1.2)).unwrap()
}
