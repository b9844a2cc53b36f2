//! The work, the lining's quantities, and the room's air.

use std::prelude::rust_2024::*;

use pyo3::prelude::*;

use super::material::Substance;
use super::operands::{Answer, Operand, map, map_from, refuse};
use crate::furnace::room;
use crate::furnace::work::{Charge, Crucible, average};
use crate::furnace::{
    self, Castable, Lining, Method, PANEL_CAP, Panel, Piece, Shape, Sling, Soak, anchors, draft_flow, draft_pressure,
    drying, drying_heat, heating_time,
};
use crate::quantity::{AbsolutePressure, ActualVolumeFlow, Area, Density, Duration, Length, Mass, Temperature};

/// Heat of the charge, of a kilogram, on average; volume; whole time, melting's begin and end, mean and first heat in
/// the crucible; a piece's time, surface and Biot number, and whether it counts as warm all through: of (mass, start,
/// target, pieces an hour, crucible's mass, wall and area, chamber temperature, film coefficient, size). What is not
/// asked by the flags (crucible, chamber, 0 for no piece or 1 for a plate or 2 for a bar) is NaN.
#[pyfunction]
pub fn work<'py>(
    py: Python<'py>,
    substance: PyRef<'py, Substance>,
    crucible: Option<PyRef<'py, Substance>>,
    flags: (bool, u8),
    operands: Vec<Operand<'py>>,
    shape: Vec<usize>,
) -> Answer<'py> {
    let (substance, holder) = (substance.core.clone(), crucible.map(|substance| substance.core.clone()));
    let (in_chamber, piece) = flags;
    map_from::<10, 13, (), _>(8, py, &operands, &shape, |inputs, _| {
        let [kilograms, start, target, pieces, crucible_mass, wall, area, chamber, film, size] = *inputs;
        let (from, to) = (Temperature::from_kelvin(start), Temperature::from_kelvin(target));
        let crucible = holder.as_ref().map(|substance| Crucible {
            substance: substance.clone(),
            mass: Mass::from_kilograms(crucible_mass),
            wall: Length::from_meters(wall),
            area: Area::from_square_meters(area),
        });
        let has_crucible = crucible.is_some();
        let mass = Mass::from_kilograms(kilograms);
        let charge = Charge { substance: substance.clone(), mass, crucible }.checked()?;
        let chamber = Temperature::from_kelvin(chamber);
        let mut answers = [f64::NAN; 13];
        answers[0] = charge.heat(from, to)?;
        answers[1] = substance.heat(from, to);
        answers[2] = average(answers[0], pieces).watts();
        answers[3] = charge.volume();
        if in_chamber && has_crucible {
            let melt = charge.melt(chamber, from, to, film)?;
            let seconds = |time: Option<Duration>| time.map_or(f64::NAN, Duration::seconds);
            answers[4] = melt.time.seconds();
            answers[5] = seconds(melt.melting_begins);
            answers[6] = seconds(melt.melted);
            answers[7] = melt.mean.watts();
            answers[8] = melt.most.watts();
        }
        if in_chamber && piece > 0 {
            let size = Length::from_meters(size);
            let shape = if piece == 1 { Shape::Slab { thickness: size } } else { Shape::Round { diameter: size } };
            let emissivity = substance.emissivity();
            let soak = Soak { chamber, start: from, target: to, film_coefficient: film, emissivity };
            let soak = heating_time(&Piece { substance: substance.clone(), shape }, &soak)?;
            answers[9] = soak.time.seconds();
            answers[10] = soak.surface.kelvin();
            answers[11] = soak.biot;
            answers[12] = f64::from(u8::from(soak.method == Method::Lumped));
        }
        Ok(answers)
    })
}

/// Measures of a panel.
const MEASURES: usize = 4;

fn panel(kind: u8, measures: &[f64]) -> Panel {
    let meters = |place: usize| Length::from_meters(measures[place]);
    let area = Area::from_square_meters(measures[0]);
    match kind {
        0 => Panel::Cylinder { diameter: meters(0), length: meters(1), thickness: meters(2) },
        1 => Panel::HalfRound { diameter: meters(0), length: meters(1), thickness: meters(2) },
        2 => Panel::Box { width: meters(0), height: meters(1), depth: meters(2), thickness: meters(3) },
        3 => Panel::Flat { area, thickness: meters(1) },
        4 => Panel::Courses { width: meters(0), course: meters(1), count: measures[2], thickness: meters(3) },
        _ => Panel::Opening { area },
    }
}

/// Hot area, area of openings, volumes of chamber and lining, what is left open and what closes it, of the measures of
/// sixteen panels (those beyond `kinds` unused).
#[pyfunction]
pub fn lining<'py>(py: Python<'py>, kinds: Vec<u8>, operands: Vec<Operand<'py>>, shape: Vec<usize>) -> Answer<'py> {
    map::<{ PANEL_CAP * MEASURES }, 6, (), _>(py, &operands, &shape, |inputs, _| {
        let panels: Vec<Panel> =
            kinds.iter().zip(inputs.chunks(MEASURES)).map(|(&kind, measures)| panel(kind, measures)).collect();
        let lining = Lining::new(&panels)?;
        let sum = lining.take_off();
        Ok([
            sum.hot_area.square_meters(),
            sum.opening_area.square_meters(),
            sum.chamber_volume,
            sum.lining_volume,
            sum.to_close.square_meters(),
            sum.closing.square_meters(),
        ])
    })
}

/// Dry mass, bags, water and its heat of (volume, dry density, bag, water, margin).
#[pyfunction]
pub fn castable<'py>(py: Python<'py>, operands: Vec<Operand<'py>>, shape: Vec<usize>) -> Answer<'py> {
    map::<5, 4, (), _>(py, &operands, &shape, |&[volume, density, bag, water, margin], _| {
        let dry_density = Density::from_kilograms_per_cubic_meter(density);
        let mix = Castable { dry_density, bag: Mass::from_kilograms(bag), water, margin }.mix(volume)?;
        Ok([mix.dry.kilograms(), f64::from(mix.bags), mix.water.kilograms(), drying_heat(mix.water)])
    })
}

/// Anchors of (area, spacing).
#[pyfunction]
pub fn anchor_count<'py>(py: Python<'py>, operands: Vec<Operand<'py>>, shape: Vec<usize>) -> Answer<'py> {
    map::<2, 1, (), _>(py, &operands, &shape, |&[area, spacing], _| {
        Ok([f64::from(anchors(Area::from_square_meters(area), Length::from_meters(spacing))?)])
    })
}

/// Pull in each of two sling legs of (mass, leg, spread).
#[pyfunction]
pub fn sling_pull<'py>(py: Python<'py>, operands: Vec<Operand<'py>>, shape: Vec<usize>) -> Answer<'py> {
    map::<3, 1, (), _>(py, &operands, &shape, |&[mass, leg, spread], _| {
        let sling = Sling { leg: Length::from_meters(leg), spread: Length::from_meters(spread) };
        Ok([sling.pull(Mass::from_kilograms(mass))?.newtons()])
    })
}

/// Steps of drying out: up to K, K an hour (zero where held), s.
#[pyfunction]
pub fn drying_steps(thickness: f64, room: f64, work: f64) -> PyResult<Vec<(f64, f64, f64)>> {
    let kelvin = Temperature::from_kelvin;
    let steps = drying(Length::from_meters(thickness), kelvin(room), kelvin(work)).map_err(refuse)?;
    Ok(steps.iter().map(|step| (step.to.kelvin(), step.rate_per_hour, step.time.seconds())).collect())
}

/// Keys, fractions and sources of the limits of carbon monoxide.
#[pyfunction]
pub fn carbon_monoxide_limits() -> Vec<(&'static str, f64, &'static str)> {
    room::CARBON_MONOXIDE_LIMITS.iter().map(|limit| (limit.key, limit.fraction, limit.source)).collect()
}

/// Fresh air of (leak of carbon monoxide, limit, outdoor).
#[pyfunction]
pub fn fresh_air<'py>(py: Python<'py>, operands: Vec<Operand<'py>>, shape: Vec<usize>) -> Answer<'py> {
    map::<3, 1, (), _>(py, &operands, &shape, |&[leak, limit, outdoor], _| {
        let leak = ActualVolumeFlow::from_cubic_meters_per_second(leak);
        Ok([room::fresh_air(leak, limit, outdoor)?.cubic_meters_per_second()])
    })
}

/// Draft and what it drives through an opening of (ambient pressure, air temperature, chamber temperature, height,
/// area, passing temperature).
#[pyfunction]
pub fn draft<'py>(py: Python<'py>, operands: Vec<Operand<'py>>, shape: Vec<usize>) -> Answer<'py> {
    map::<6, 2, (), _>(py, &operands, &shape, |inputs, _| {
        let [ambient, air, hot, height, area, passing] = *inputs;
        let (ambient, kelvin) = (AbsolutePressure::from_pascals(ambient), Temperature::from_kelvin);
        let pressure = draft_pressure(ambient, kelvin(air), kelvin(hot), Length::from_meters(height))?;
        let flow = draft_flow(pressure, Area::from_square_meters(area), ambient, kelvin(passing))?;
        Ok([pressure.pascals(), flow.kilograms_per_second()])
    })
}

/// Heat out of an opening of (area, depth, chamber temperature, air temperature).
#[pyfunction]
pub fn opening<'py>(py: Python<'py>, operands: Vec<Operand<'py>>, shape: Vec<usize>) -> Answer<'py> {
    map::<4, 1, (), _>(py, &operands, &shape, |&[area, depth, hot, air], _| {
        let hole = furnace::Opening::new(Area::from_square_meters(area), Length::from_meters(depth))?;
        crate::limits::check(crate::Input::ChamberTemperature, hot)?;
        crate::limits::check(crate::Input::AirTemperature, air)?;
        Ok([hole.heat(Temperature::from_kelvin(hot), Temperature::from_kelvin(air)).watts()])
    })
}
