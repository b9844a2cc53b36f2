//! How sure a jet's flow is, and what a weighing says of it.

use std::format;
use std::prelude::rust_2024::*;

use pyo3::exceptions::PyValueError;
use pyo3::prelude::*;

use super::flow::{INPUTS, JetInputs};
use super::gas::Gas;
use super::operands::{Answer, Kept, Operand, map, refuse};
use crate::error::Result as CheckedResult;
use crate::limits::{Input, check};
use crate::measure::{
    Compared, Dial, DialClass, Finding, Joined, Measured, Reading, Run, Source, Spreads, Tie, Trend, Trust,
    UncertainJet, WeighingError, compare as compare_measured, join, measured_jet, of_hole, of_supply, plan,
};
use crate::orifice::{BoreShape, Coefficient, Jet, Supply};
use crate::quantity::{
    AbsolutePressure, Duration, GaugePressure, Length, Mass, PressureDifference, Temperature, TemperatureDifference,
};

/// Expanded uncertainties, behind the inputs of a jet: bore, edge rounding, coefficient (infinite for the model's own), gauge
/// (infinite for a dial of class 3-2-3), span of that dial, gas temperature, composition, air pressure.
const EXPANDED: usize = 8;
const ALL: usize = INPUTS + EXPANDED;
/// Mass flow, heat gross and net, coefficient; expanded uncertainty of the flow as a share and of the coefficient; whether the
/// first order tells it; the shares of the flow's sources.
const OUTPUTS: usize = 7 + Source::OF_A_JET;

fn spreads(widths: &[f64; EXPANDED]) -> CheckedResult<Spreads> {
    let [bore, edge, coefficient, gauge, span, kelvin, composition, ambient] = *widths;
    let share = |share: f64| check(Input::UncertaintyShare, share);
    let length = |meters: f64| check(Input::LengthUncertainty, meters).map(Length::from_meters);
    let dial = if gauge == f64::INFINITY {
        let span = GaugePressure::from_pascals(check(Input::GaugeSpan, span)?);
        Dial::Class { span, class: DialClass::USUAL }
    } else {
        Dial::Error(GaugePressure::from_pascals(check(Input::PressureUncertainty, gauge)?))
    };
    let start = Spreads::starting(Length::default(), length(bore)?, dial);
    Ok(Spreads {
        edge_rounding: length(edge)?,
        hole: if coefficient == f64::INFINITY { None } else { Some(share(coefficient)?) },
        gas_temperature: TemperatureDifference::from_kelvin(check(Input::TemperatureUncertainty, kelvin)?),
        composition: share(composition)?,
        air_pressure: PressureDifference::from_pascals(check(Input::PressureUncertainty, ambient)?),
        ..start
    })
}

/// The jet of an element, its shape and its supply.
fn jet(edge: u8, inputs: &[f64; INPUTS]) -> CheckedResult<(Jet, BoreShape, Supply)> {
    let inputs = JetInputs::from(inputs);
    let supply = inputs.supply()?;
    Ok((inputs.jet(edge)?, inputs.shape(edge), supply))
}

/// A measured jet: ambient, gauge and back pressure, temperature, factor, weight of the gauge, expanded uncertainty.
type Weighed = [f64; 7];

fn tie(weighed: Weighed) -> (Coefficient, Tie) {
    let [ambient, gauge, back, kelvin, factor, gauge_weight, expanded] = weighed;
    let supply = Supply {
        ambient: AbsolutePressure::from_pascals(ambient),
        gauge: GaugePressure::from_pascals(gauge),
        back: GaugePressure::from_pascals(back),
        temperature: Temperature::from_kelvin(kelvin),
    };
    (Coefficient::Corrected { factor, uncertainty: expanded }, Tie { supply, gauge_weight, expanded })
}

/// Flow and heat of a jet with their expanded uncertainties, for every element.
#[pyfunction]
pub fn flow_uncertainty<'py>(
    py: Python<'py>,
    gas: PyRef<'py, Gas>,
    edge: u8,
    weighed: Option<Weighed>,
    operands: Vec<Operand<'py>>,
    shape: Vec<usize>,
) -> Answer<'py> {
    let gas = &gas.core;
    map::<ALL, OUTPUTS, (), _>(py, &operands, &shape, |inputs, _: &mut Kept<()>| {
        let (of_jet, widths) = inputs.split_at(INPUTS);
        let of_jet = core::array::from_fn(|at| of_jet[at]);
        let spreads = spreads(&core::array::from_fn(|at| widths[at]))?;
        let (mut jet, shape, supply) = jet(edge, &of_jet)?;
        let mut tied = None;
        if let Some(weighed) = weighed {
            let (coefficient, tie) = tie(weighed);
            (jet.coefficient, tied) = (coefficient, Some(tie));
        }
        let flow = jet.flow(gas, &supply)?;
        let answers = UncertainJet::new(&jet, &shape, gas, &supply, tied, &spreads)?.answers()?;
        let flows = flow.mass_flow.kilograms_per_second() > 0.0;
        let mut found = [0.0; OUTPUTS];
        found[0] = flow.mass_flow.kilograms_per_second();
        found[1] = flow.heat_gross.watts();
        found[2] = flow.heat_net.watts();
        found[3] = flow.discharge_coefficient;
        found[4] = if flows { answers.gas.expanded() / answers.gas.value } else { 0.0 };
        found[5] = answers.coefficient.expanded();
        found[6] = f64::from(u8::from(answers.gas.is_straight()));
        for source in 0..Source::OF_A_JET {
            found[7 + source] = answers.gas.share(source);
        }
        Ok(found)
    })
}

/// The names of the sources, in the order of their shares.
#[pyfunction]
pub fn uncertainty_sources() -> Vec<&'static str> {
    Source::ALL.into_iter().take(Source::OF_A_JET).map(Source::key).collect()
}

fn weighing_error(error: WeighingError) -> PyErr {
    PyValueError::new_err(match error {
        WeighingError::Refused { error, .. } => return refuse(error),
        WeighingError::NothingLost { run } => format!("mass_lost: run {run} lost nothing or took no time"),
        WeighingError::TooShort { run, needs } => {
            format!("duration: run {run} is too short for this scale, take {needs:.0} s or longer for 1 %")
        }
        WeighingError::EmptyCylinder { run } => {
            format!("mass_lost: in run {run} the cylinder was empty before the end")
        }
        WeighingError::RunsDisagree { ratio } => {
            format!(
                "mass_lost: the runs contradict each other, the least is {ratio:.2} of the largest; they are not averaged"
            )
        }
        _ => "mass_lost: give a run or more".into(),
    })
}

/// What a weighing found: factor, its expanded uncertainty, the same without the gauge; joined factor, expanded uncertainty, the same without
/// the gauge, weight; coefficient, effective bore, deviations, odds; then the mean supply: ambient, gauge, back, kelvin.
type Found = ([f64; 15], &'static str, Option<(f64, f64, f64)>);

fn found(measured: &Measured, joined: &Joined) -> Found {
    let supply = &measured.supply;
    let numbers = [
        measured.factor,
        2.0 * measured.standard(),
        2.0 * measured.without_gauge(),
        joined.factor,
        2.0 * joined.standard,
        2.0 * joined.without_gauge,
        joined.weight,
        measured.coefficient / measured.factor * joined.factor,
        measured.effective_bore.meters(),
        joined.deviations,
        joined.odds,
        supply.ambient.pascals(),
        supply.gauge.pascals(),
        supply.back.pascals(),
        supply.temperature.kelvin(),
    ];
    let trust = match joined.trust {
        Trust::Agrees => "agrees",
        Trust::Doubtful => "doubtful",
        Trust::BeyondBelief => "beyond belief",
    };
    (numbers, trust, measured.trend.map(|trend| (trend.slope, trend.own, trend.gauge)))
}

/// What runs (mass, time, gauge) say of a jet.
#[pyfunction]
pub fn weigh(
    gas: PyRef<'_, Gas>,
    edge: u8,
    inputs: [f64; INPUTS],
    widths: [f64; EXPANDED],
    runs: Vec<(f64, f64, f64)>,
    step: f64,
    clock: f64,
) -> PyResult<Found> {
    let (jet, shape, at) = jet(edge, &inputs).map_err(refuse)?;
    let jet = Jet { coefficient: Coefficient::Model, ..jet };
    let spreads = spreads(&widths).map_err(refuse)?;
    let step = check(Input::ScaleStep, step).map_err(refuse)?;
    let time = Duration::from_seconds(check(Input::ClockError, clock).map_err(refuse)?);
    let reading = Reading { time, ..Reading::of_scale(Mass::from_kilograms(step)) };
    let runs: Vec<Run> = runs
        .into_iter()
        .map(|(mass, time, gauge)| Run {
            mass: Mass::from_kilograms(mass),
            time: Duration::from_seconds(time),
            supply: Supply { gauge: GaugePressure::from_pascals(gauge), ..at },
            held: None,
        })
        .collect();
    let measured = measured_jet(&jet, &shape, &gas.core, &runs, &reading, &spreads).map_err(weighing_error)?;
    let before = UncertainJet::new(&jet, &shape, &gas.core, &measured.supply, None, &spreads).map_err(refuse)?;
    let joined = join(&measured, of_hole(&before).map_err(refuse)?);
    Ok(found(&measured, &joined))
}

/// Seconds before which a weighing says nothing, seconds after which it is hardly surer, the gas lost then (kg), and the
/// expanded uncertainty then, joined with the model, as a share.
#[pyfunction]
pub fn plan_weighing(
    gas: PyRef<'_, Gas>,
    edge: u8,
    inputs: [f64; INPUTS],
    widths: [f64; EXPANDED],
    step: f64,
    clock: f64,
) -> PyResult<(f64, f64, f64, f64)> {
    let (jet, shape, supply) = jet(edge, &inputs).map_err(refuse)?;
    let jet = Jet { coefficient: Coefficient::Model, ..jet };
    let spreads = spreads(&widths).map_err(refuse)?;
    let step = check(Input::ScaleStep, step).map_err(refuse)?;
    let time = Duration::from_seconds(check(Input::ClockError, clock).map_err(refuse)?);
    let reading = Reading { time, ..Reading::of_scale(Mass::from_kilograms(step)) };
    let before = UncertainJet::new(&jet, &shape, &gas.core, &supply, None, &spreads).map_err(refuse)?;
    let known = of_hole(&before).map_err(refuse)?;
    let (gauge, others) = of_supply(&jet, &shape, &gas.core, &supply, &spreads).map_err(refuse)?;
    let flow = jet.flow(&gas.core, &supply).map_err(refuse)?.mass_flow;
    let plan = plan(flow, &reading, (gauge * gauge + others * others).sqrt(), known);
    let (least, enough) = (plan.least.seconds(), plan.enough.seconds());
    Ok((least, enough, plan.mass.kilograms(), 2.0 * plan.joined))
}

/// Factor, expanded uncertainty, expanded uncertainty without the gauge, trend (slope, standard uncertainties by the runs and by the gauge).
type Weighted = (f64, f64, f64, Option<(f64, f64, f64)>);

/// Change, its expanded uncertainty, its odds by chance and the finding, against an earlier weighing.
#[pyfunction]
pub fn compare(before: Weighted, now: Weighted, is_same_gauge: bool) -> (f64, f64, f64, &'static str) {
    let of = |(factor, all, without_gauge, trend): Weighted| Compared {
        factor,
        standard: 0.5 * without_gauge,
        gauge: 0.5 * (all * all - without_gauge * without_gauge).max(0.0).sqrt(),
        trend: trend.map(|(slope, own, gauge)| Trend { slope, own, gauge }),
    };
    let found = compare_measured(&of(before), &of(now), is_same_gauge);
    let finding = match found.finding {
        Finding::Worn => "worn",
        Finding::Dirty => "dirty",
        Finding::Drooping => "drooping",
        Finding::NoDifference => "no real difference",
    };
    (found.change, 2.0 * found.standard, found.odds, finding)
}
