//! How long a piece takes to heat through in a hot chamber.

use super::body::{Body, Matter};
use super::grid::Grid;
use super::substance::Substance;
use super::surface::black;
use crate::error::{Error, Result};
use crate::limits::{Input, check};
use crate::quantity::{Area, Duration, Length, Temperature};
use crate::scalar::Scalar;

/// Below this Biot number a piece is warm all through at once (Incropera et al., section 5.2).
const LUMPED_BELOW: f64 = 0.1;
/// Steps in which the lumped time is cut.
const STEPS: usize = 240;
/// Most steps, as many times the lumped time.
const MOST: usize = 40 * STEPS;

/// The shape of a piece.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Shape<S = f64> {
    /// A plate heated from both sides.
    Slab {
        /// Its whole thickness.
        thickness: Length<S>,
    },
    /// A round bar.
    Round {
        /// Its diameter.
        diameter: Length<S>,
    },
}

/// A piece of work.
#[derive(Clone, Debug, PartialEq)]
pub struct Piece<S = f64> {
    /// What it is made of.
    pub substance: Substance<S>,
    /// Its shape.
    pub shape: Shape<S>,
}

/// What it is put into.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Soak<S = f64> {
    /// Temperature of the chamber.
    pub chamber: Temperature<S>,
    /// Temperature of the piece when it goes in.
    pub start: Temperature<S>,
    /// Temperature its middle must reach.
    pub target: Temperature<S>,
    /// Convection of the fire's gases, W/(m2 K): 20 to 50 in a small furnace, common practice, no source.
    pub film_coefficient: S,
    /// Emissivity of piece and chamber together.
    pub emissivity: S,
}

/// By which model.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Method {
    /// Warm all through at once.
    Lumped,
    /// Conduction inside, by cells.
    Grid,
}

/// The time a piece takes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HeatingTime<S = f64> {
    /// How long.
    pub time: Duration<S>,
    /// By which model.
    pub method: Method,
    /// Biot number: the surface's coefficient times volume over area, over conductivity.
    pub biot: S,
    /// Surface when the middle has reached the target.
    pub surface: Temperature<S>,
    /// Heat taken up, J/kg.
    pub heat: S,
}

/// Time until the middle of a piece reaches its target: radiation and convection outside, conduction inside, lumped
/// where the Biot number is below 0.1.
///
/// # Errors
///
/// An input out of range; a start above the target or a target not below the chamber; a target at which the piece
/// melts, as [`Error::NoSolution`] with where it begins to.
///
/// # Source
///
/// Incropera et al., Fundamentals of Heat and Mass Transfer, 6th ed., sections 5.1 to 5.6, against its series
/// solutions.
pub fn heating_time<S: Scalar>(piece: &Piece<S>, soak: &Soak<S>) -> Result<HeatingTime<S>> {
    let chamber = check(Input::ChamberTemperature, soak.chamber.kelvin())?;
    let start = check(Input::WorkTemperature, soak.start.kelvin())?;
    let target = check(Input::WorkTemperature, soak.target.kelvin())?;
    check(Input::FilmCoefficient, soak.film_coefficient)?;
    check(Input::Emissivity, soak.emissivity)?;
    if start >= target {
        return Err(Error::InvertedPair { lesser: Input::AirTemperature, greater: Input::WorkTemperature });
    }
    if target >= chamber {
        return Err(Error::InvertedPair { lesser: Input::WorkTemperature, greater: Input::ChamberTemperature });
    }
    let solidus = piece.substance.solidus().kelvin();
    if target > solidus {
        return Err(Error::NoSolution { input: Input::WorkTemperature, nearest: solidus.to_f32() });
    }
    let flux = |kelvin: S| soak.film_coefficient * (chamber - kelvin) + soak.emissivity * black(chamber, kelvin);
    // Volume over heated area.
    let (depth, body) = match piece.shape {
        Shape::Slab { thickness } => {
            let half = S::c(0.5) * check(Input::WorkSize, thickness.meters())?;
            (half, Body::Flat { area: Area::from_square_meters(S::one()) })
        }
        Shape::Round { diameter } => {
            let radius = S::c(0.5) * check(Input::WorkSize, diameter.meters())?;
            let (inner_radius, length) = (Length::from_meters(S::zero()), Length::from_meters(S::one()));
            (radius, Body::Round { inner_radius, length })
        }
    };
    let reach = match piece.shape {
        Shape::Slab { .. } => depth,
        Shape::Round { .. } => S::c(0.5) * depth,
    };
    let middle = S::c(0.5) * (start + target);
    let biot = flux(middle) / (chamber - middle) * reach / piece.substance.conductivity(middle);
    let heat = piece.substance.heat_between(start, target);
    let lumped = lumped_time(&piece.substance, start, target, reach, flux);
    if biot < S::c(LUMPED_BELOW) {
        let (time, surface) = (Duration::from_seconds(lumped), soak.target);
        return Ok(HeatingTime { time, method: Method::Lumped, biot, surface, heat });
    }
    // Where conduction inside rules, the middle takes longer by as many times as the Biot number says.
    let dt = Duration::from_seconds(lumped * (S::one() + S::c(0.5) * biot) / S::c(STEPS as f64));
    let mut grid = Grid::new(core::iter::once((&piece.substance, depth)), &body, start, S::one());
    let area = body.area_at(depth);
    let is_slab = matches!(piece.shape, Shape::Slab { .. });
    let nothing = |_| S::zero();
    let core_of = |grid: &Grid<'_, S, Substance<S>>| if is_slab { grid.outside() } else { grid.hot_face() };
    let mut seconds = S::zero();
    for _ in 0..MOST {
        let before = core_of(&grid);
        if is_slab {
            grid.step(dt, |kelvin| area * flux(kelvin), nothing);
        } else {
            grid.step(dt, nothing, |kelvin| -area * flux(kelvin));
        }
        let after = core_of(&grid);
        if after >= target {
            let share = (target - before) / (after - before).larger(S::c(1e-9));
            let time = Duration::from_seconds(seconds + share.clamped(S::zero(), S::one()) * dt.seconds());
            let surface = Temperature::from_kelvin(if is_slab { grid.hot_face() } else { grid.outside() });
            let mass = piece.substance.density() * body.volume(S::zero(), depth);
            return Ok(HeatingTime {
                time,
                method: Method::Grid,
                biot,
                surface,
                heat: grid.stored_above(start) / mass,
            });
        }
        seconds += dt.seconds();
    }
    Err(Error::NotConverged { input: Input::Duration })
}

/// Seconds that a body warm all through takes: the sum of heat over flux over small steps of temperature.
pub(super) fn lumped_time<S: Scalar, M: Matter<S>>(
    matter: &M,
    start: S,
    target: S,
    volume_over_area: S,
    flux: impl Fn(S) -> S,
) -> S {
    let step = (target - start) / S::c(STEPS as f64);
    let mut seconds = S::zero();
    for index in 0..STEPS {
        let from = start + S::c(index as f64) * step;
        let heat = matter.density() * volume_over_area * matter.heat_between(from, from + step);
        // Simpson's rule on the reciprocal of the flux.
        let slow = |at: f64| S::one() / flux(from + S::c(at) * step);
        seconds += heat * (slow(0.0) + S::c(4.0) * slow(0.5) + slow(1.0)) / S::c(6.0);
    }
    seconds
}
