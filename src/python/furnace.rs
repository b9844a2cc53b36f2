//! Wall and chamber, steady and in time.

use std::prelude::rust_2024::*;
use std::vec;

use pyo3::prelude::*;

use super::gas::Gas;
use super::material::Material;
use super::operands::{Answer, Kept, Operand, map, map_from, refuse};
use crate::combustion::Reactants;
use crate::error::Result as CheckedResult;
use crate::furnace::warming::{Leg, REIGNITES_ABOVE_CELSIUS, Warming};
use crate::furnace::{
    self, AvailableHeat, Balance, Body, Chamber, Facing, Layer, Opening, Surroundings, Wall, box_shape_factor,
};
use crate::gas::Gas as CoreGas;
use crate::limits::{Input, check};
use crate::quantity::{Area, Duration, Length, MassFlow, NetHeatRate, Power, Temperature, TemperatureDifference};
use crate::site::Site;

/// Inputs of a wall: three measures of its body, height and emissivity of its outside, six thicknesses (those beyond
/// the layers unused), the site's four.
const WALL: usize = 15;
/// Inputs of a chamber: the wall's, six openings (those beyond the count unused), flue above chamber.
const CHAMBER: usize = WALL + furnace::OPENING_CAP + 1;
/// Behind them, where gas burns: the air ratio.
const FIRED: usize = CHAMBER + 1;

/// What no array holds: the body (0 flat, 1 round), where the outside faces (0 side, 1 up, 2 down), openings, and the
/// site's kind.
type Codes = (u8, u8, usize, u8);

fn cores(materials: &[PyRef<'_, Material>]) -> Vec<furnace::Material> {
    materials.iter().map(|material| material.core.clone()).collect()
}

fn site_of(codes: Codes, inputs: &[f64]) -> CheckedResult<Site> {
    super::site::one(codes.3, inputs[11], inputs[12], inputs[13], inputs[14])
}

fn room_of(codes: Codes, site: &Site, height: f64, emissivity: f64) -> CheckedResult<Surroundings> {
    let facing = match codes.1 {
        0 => Facing::Side,
        1 => Facing::Up,
        _ => Facing::Down,
    };
    let room = Surroundings::shell(site.air_temperature(), site.ambient_pressure(), Length::from_meters(height));
    Surroundings { emissivity, facing, ..room }.checked()
}

fn wall_of(materials: &[furnace::Material], codes: Codes, inputs: &[f64]) -> CheckedResult<(Wall, Surroundings)> {
    let meters = Length::from_meters;
    let body = match codes.0 {
        0 => Body::Flat { area: Area::from_square_meters(inputs[0]) },
        _ => Body::Round { inner_radius: meters(inputs[0]), length: meters(inputs[1]) },
    };
    let layers: Vec<Layer> = materials
        .iter()
        .zip(&inputs[5..11])
        .map(|(material, &thickness)| Layer { material: material.clone(), thickness: meters(thickness) })
        .collect();
    let room = room_of(codes, &site_of(codes, inputs)?, inputs[3], inputs[4])?;
    Ok((Wall::new(&layers, body)?, room))
}

fn chamber_of(materials: &[furnace::Material], codes: Codes, inputs: &[f64]) -> CheckedResult<Chamber> {
    let (wall, room) = wall_of(materials, codes, inputs)?;
    let depth = wall.thickness();
    let openings: Vec<Opening> = inputs[WALL..]
        .iter()
        .take(codes.2.min(furnace::OPENING_CAP))
        .map(|&area| Opening::new(Area::from_square_meters(area), depth))
        .collect::<CheckedResult<_>>()?;
    Chamber::new(&[(wall, room)], &openings, TemperatureDifference::from_kelvin(inputs[CHAMBER - 1]))
}

/// The available heat of the gas in the air of an element, kept while the air stays the same.
fn available_of(
    gas: &CoreGas,
    codes: Codes,
    inputs: &[f64],
    kept: &mut Kept<AvailableHeat>,
) -> CheckedResult<AvailableHeat> {
    let state = [inputs[11], inputs[12], inputs[13], inputs[14], inputs[CHAMBER]];
    if let Some(known) = kept.get(&state) {
        return Ok(known);
    }
    let site = site_of(codes, inputs)?;
    let table = AvailableHeat::new(&Reactants::new(gas, &site, inputs[CHAMBER], site.air_temperature())?)?;
    kept.put(&state, table);
    Ok(table)
}

fn layer_number(too_hot: Option<usize>) -> f64 {
    too_hot.map_or(-1.0, |layer| layer as f64)
}

/// Heat through a wall, heat through each square meter of its hot face, seven faces (NaN beyond the last), the layer
/// hotter than its limit (-1 for none) and the temperature at a depth, of a wall's inputs, then (hot face, cold face if
/// `between`, depth if `deep`).
#[pyfunction]
pub fn wall<'py>(
    py: Python<'py>,
    materials: Vec<PyRef<'py, Material>>,
    codes: Codes,
    flags: (bool, bool),
    operands: Vec<Operand<'py>>,
    shape: Vec<usize>,
) -> Answer<'py> {
    let materials = cores(&materials);
    let (between, deep) = flags;
    map::<{ WALL + 3 }, 11, (), _>(py, &operands, &shape, |inputs, _| {
        let (wall, room) = wall_of(&materials, codes, inputs)?;
        let hot = Temperature::from_kelvin(inputs[WALL]);
        let steady = if between {
            wall.between(hot, Temperature::from_kelvin(inputs[WALL + 1]))?
        } else {
            wall.steady(hot, &room)?
        };
        let mut answers = [f64::NAN; 11];
        answers[0] = steady.heat.watts();
        answers[1] = steady.heat.watts() / wall.hot_area().square_meters();
        for (answer, face) in answers[2..9].iter_mut().zip(&steady.faces) {
            *answer = face.kelvin();
        }
        answers[9] = layer_number(steady.too_hot);
        if deep {
            answers[10] = wall.temperature_at(&steady, Length::from_meters(inputs[WALL + 2]))?.kelvin();
        }
        Ok(answers)
    })
}

/// Coefficient of free convection and heat lost for each square meter of an outside, of (face, height, emissivity, the
/// site's four).
#[pyfunction]
pub fn shell_loss<'py>(py: Python<'py>, codes: Codes, operands: Vec<Operand<'py>>, shape: Vec<usize>) -> Answer<'py> {
    map::<7, 2, (), _>(py, &operands, &shape, |&[face, height, emissivity, a, b, kelvin, humidity], _| {
        let face = Temperature::from_kelvin(check(Input::ChamberTemperature, face)?);
        let site = super::site::one(codes.3, a, b, kelvin, humidity)?;
        let room = room_of(codes, &site, height, emissivity)?;
        Ok([room.convection(face), room.heat_flux(face)])
    })
}

/// Shape factor of a box in m of (width, height, depth, thickness).
#[pyfunction]
pub fn box_factor<'py>(py: Python<'py>, operands: Vec<Operand<'py>>, shape: Vec<usize>) -> Answer<'py> {
    map::<4, 1, (), _>(py, &operands, &shape, |&[width, height, depth, thickness], _| {
        Ok([box_shape_factor([width, height, depth].map(Length::from_meters), Length::from_meters(thickness))?])
    })
}

/// Where the heat of a fire goes, of a fired chamber's inputs, then (chamber temperature, or the fire if `by_fire`;
/// work): temperature, fire, work, walls, openings, flue, available heat, shell, the layer too hot.
#[pyfunction]
pub fn chamber<'py>(
    py: Python<'py>,
    gas: PyRef<'py, Gas>,
    materials: Vec<PyRef<'py, Material>>,
    codes: Codes,
    by_fire: bool,
    operands: Vec<Operand<'py>>,
    shape: Vec<usize>,
) -> Answer<'py> {
    let (gas, materials) = (&gas.core, cores(&materials));
    map_from::<{ FIRED + 2 }, 9, _, _>(64, py, &operands, &shape, |inputs, kept| {
        let chamber = chamber_of(&materials, codes, inputs)?;
        let available = available_of(gas, codes, inputs, kept)?;
        let share = |flue| available.share(flue);
        let (aim, work) = (inputs[FIRED], Power::from_watts(inputs[FIRED + 1]));
        let balance: Balance = if by_fire {
            chamber.temperature_for(NetHeatRate::from_watts(aim), work, share)?
        } else {
            chamber.fire_for(Temperature::from_kelvin(aim), work, share)?
        };
        let (wall, room) = &chamber.walls()[0];
        let steady = wall.steady(balance.chamber, room)?;
        Ok([
            balance.chamber.kelvin(),
            balance.fire.watts(),
            balance.work.watts(),
            balance.walls.watts(),
            balance.openings.watts(),
            balance.flue.watts(),
            balance.available,
            steady.shell().kelvin(),
            layer_number(steady.too_hot),
        ])
    })
}

/// Above which temperature a chamber counts as re-igniting gas by itself, K.
#[pyfunction]
pub fn reignites_above() -> f64 {
    Temperature::from_celsius(REIGNITES_ABOVE_CELSIUS).kelvin()
}

/// Answers of a leg: `LEG` in `python/jetwright/_furnace.py`.
const LEG: usize = 12;

fn leg_of(leg: &Leg) -> [f64; LEG] {
    [
        leg.time.seconds(),
        leg.fire,
        leg.flue,
        leg.openings,
        leg.work,
        leg.air,
        leg.stored,
        leg.shell,
        leg.hot_face.kelvin(),
        leg.outside.kelvin(),
        leg.mean_fire().watts(),
        leg.last_fire.watts(),
    ]
}

/// A cold chamber warmed up, of a fired chamber's inputs, then (fire, chamber temperature).
#[pyfunction]
pub fn warm_up<'py>(
    py: Python<'py>,
    gas: PyRef<'py, Gas>,
    materials: Vec<PyRef<'py, Material>>,
    codes: Codes,
    operands: Vec<Operand<'py>>,
    shape: Vec<usize>,
) -> Answer<'py> {
    let (gas, materials) = (&gas.core, cores(&materials));
    map_from::<{ FIRED + 2 }, LEG, _, _>(2, py, &operands, &shape, |inputs, kept| {
        let chamber = chamber_of(&materials, codes, inputs)?;
        let available = available_of(gas, codes, inputs, kept)?;
        let (fire, target) = (NetHeatRate::from_watts(inputs[FIRED]), Temperature::from_kelvin(inputs[FIRED + 1]));
        Ok(leg_of(&Warming::cold(&chamber)?.warm_up(fire, target, |flue| available.share(flue))?))
    })
}

/// A chamber held and then left to cool, of a chamber's inputs, then (held at, held for, cooled to, air).
#[pyfunction]
pub fn cool_down<'py>(
    py: Python<'py>,
    materials: Vec<PyRef<'py, Material>>,
    codes: Codes,
    operands: Vec<Operand<'py>>,
    shape: Vec<usize>,
) -> Answer<'py> {
    let materials = cores(&materials);
    map_from::<{ CHAMBER + 4 }, LEG, (), _>(2, py, &operands, &shape, |inputs, _| {
        let chamber = chamber_of(&materials, codes, inputs)?;
        let [held_at, held, target, air] = [0, 1, 2, 3].map(|place| inputs[CHAMBER + place]);
        let mut warming = Warming::cold(&chamber)?;
        // What the fire has to give for it is not asked.
        warming.hold(
            Temperature::from_kelvin(held_at),
            Duration::from_seconds(held),
            Power::from_watts(0.0),
            |_| 1.0,
        )?;
        let air = MassFlow::from_kilograms_per_second(air);
        Ok(leg_of(&warming.cool_to(Temperature::from_kelvin(target), air)?))
    })
}

/// A step of a firing: its kind (0 warm up, 1 hold, 2 cool down), then (fire W, to K, -), (at K, for s, work W) or
/// (to K, air kg/s, -), and the air ratio.
type Step = (u8, [f64; 3], f64);
/// What is known after a leg: its numbers, and depth and temperature of every cell.
type Stand = ([f64; LEG], Vec<f64>, Vec<f64>);
/// Seconds, hot face and outside in K, J stored, after every step in time.
type Course = Vec<[f64; 4]>;

/// One chamber through the steps of a firing. An error says at which step.
#[pyfunction]
pub fn firing(
    py: Python<'_>,
    gas: PyRef<'_, Gas>,
    materials: Vec<PyRef<'_, Material>>,
    codes: Codes,
    inputs: [f64; FIRED],
    steps: Vec<Step>,
) -> PyResult<(Vec<Stand>, Course)> {
    let (gas, materials) = (&gas.core, cores(&materials));
    let run = || -> Result<(Vec<Stand>, Course), (usize, crate::Error)> {
        let chamber = chamber_of(&materials, codes, &inputs).map_err(|error| (0, error))?;
        let mut warming = Warming::cold(&chamber).map_err(|error| (0, error))?;
        let (mut stands, mut course, mut start) = (vec![], vec![], 0.0);
        course.push(moment(0.0, &warming));
        let mut kept = Kept::new();
        for (number, (kind, [first, second, third], ratio)) in steps.into_iter().enumerate() {
            let mut fired = inputs;
            fired[CHAMBER] = ratio;
            let mut leg = || {
                let available = available_of(gas, codes, &fired, &mut kept)?;
                let share = |flue| available.share(flue);
                let watch = |time: Duration, now: &Warming<'_>| course.push(moment(start + time.seconds(), now));
                let kelvin = Temperature::from_kelvin;
                match kind {
                    0 => warming.warm_up_told(NetHeatRate::from_watts(first), kelvin(second), share, watch),
                    1 => {
                        let (time, work) = (Duration::from_seconds(second), Power::from_watts(third));
                        warming.hold_told(kelvin(first), time, work, share, watch)
                    }
                    _ => warming.cool_to_told(kelvin(first), MassFlow::from_kilograms_per_second(second), watch),
                }
            };
            let leg = leg().map_err(|error| (number, error))?;
            start += leg.time.seconds();
            let (depths, cells) = warming.profile().map(|(depth, at)| (depth.meters(), at.kelvin())).unzip();
            stands.push((leg_of(&leg), depths, cells));
        }
        Ok((stands, course))
    };
    py.detach(run).map_err(|(number, error)| {
        let told = refuse(error);
        pyo3::exceptions::PyValueError::new_err(std::format!("steps[{number}]: {}", told.value(py)))
    })
}

fn moment(seconds: f64, warming: &Warming<'_>) -> [f64; 4] {
    [seconds, warming.hot_face().kelvin(), warming.outside().kelvin(), warming.stored()]
}
