//! The balance of a chamber: fire in = work + walls + openings + what the flue takes.

use heapless::Vec;

use super::opening::Opening;
use super::surface::Surroundings;
use super::wall::Wall;
use crate::error::{Error, Result};
use crate::limits::{Input, check};
use crate::quantity::{NetHeatRate, Power, Temperature, TemperatureDifference};
use crate::scalar::Scalar;
use crate::solve;

/// Most walls of different build.
pub const WALL_CAP: usize = 6;
/// Most openings.
pub const OPENING_CAP: usize = 6;

/// A chamber: walls, openings and how far above it its gases leave.
#[derive(Clone, Debug, PartialEq)]
pub struct Chamber<S = f64> {
    walls: Vec<(Wall<S>, Surroundings<S>), WALL_CAP>,
    openings: Vec<Opening<S>, OPENING_CAP>,
    flue_excess: S,
    room: Temperature<S>,
}

/// Where the heat of a fire goes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Balance<S = f64> {
    /// Temperature of the chamber.
    pub chamber: Temperature<S>,
    /// The fire.
    pub fire: NetHeatRate<S>,
    /// Into the work.
    pub work: Power<S>,
    /// Through the walls.
    pub walls: Power<S>,
    /// Out of the openings.
    pub openings: Power<S>,
    /// With the gases that leave.
    pub flue: Power<S>,
    /// Share of the fire that stays in the chamber.
    pub available: S,
}

impl<S: Scalar> Chamber<S> {
    /// A chamber. `flue_excess` is how far above the chamber its gases leave: 0 stirred well, 50 to 150 K in a small
    /// furnace (common practice, no source).
    ///
    /// # Errors
    ///
    /// No wall or too many walls or openings, or an excess out of range.
    pub fn new(
        walls: &[(Wall<S>, Surroundings<S>)],
        openings: &[Opening<S>],
        flue_excess: TemperatureDifference<S>,
    ) -> Result<Self> {
        let too_many = Error::Points { input: Input::WallArea };
        check(Input::FlueExcess, flue_excess.kelvin())?;
        let room = walls.first().ok_or(too_many)?.1.checked()?.air;
        Ok(Self {
            walls: Vec::from_slice(walls).map_err(|_| too_many)?,
            openings: Vec::from_slice(openings).map_err(|_| too_many)?,
            flue_excess: flue_excess.kelvin(),
            room,
        })
    }

    /// The walls.
    #[must_use]
    pub fn walls(&self) -> &[(Wall<S>, Surroundings<S>)] {
        &self.walls
    }
    /// The openings.
    #[must_use]
    pub fn openings(&self) -> &[Opening<S>] {
        &self.openings
    }
    /// Temperature of the room.
    #[must_use]
    pub fn room(&self) -> Temperature<S> {
        self.room
    }
    /// Where the gases leave, for a chamber at a temperature.
    #[must_use]
    pub fn flue(&self, chamber: Temperature<S>) -> Temperature<S> {
        Temperature::from_kelvin(chamber.kelvin() + self.flue_excess)
    }

    /// Heat out of all openings.
    #[must_use]
    pub fn opening_loss(&self, chamber: Temperature<S>) -> Power<S> {
        let sum = self.openings.iter().fold(S::zero(), |sum, hole| sum + hole.heat(chamber, self.room).watts());
        Power::from_watts(sum)
    }

    /// Heat through all walls when they have been steady state.
    ///
    /// # Errors
    ///
    /// A temperature out of range or not above the room's.
    pub fn wall_loss(&self, chamber: Temperature<S>) -> Result<Power<S>> {
        let mut sum = S::zero();
        for (wall, room) in &self.walls {
            sum += wall.steady(chamber, room)?.heat.watts();
        }
        Ok(Power::from_watts(sum))
    }

    /// The fire that keeps a temperature: (work + walls + openings) / available heat.
    ///
    /// `available` gives the share of the net heat that stays when the gases leave at a temperature.
    ///
    /// # Errors
    ///
    /// [`Error::NoSolution`] with the share when no heat of this gas and air is left at that temperature; a
    /// temperature out of range.
    pub fn fire_for(
        &self,
        chamber: Temperature<S>,
        work: Power<S>,
        available: impl Fn(Temperature<S>) -> S,
    ) -> Result<Balance<S>> {
        let (walls, openings) = (self.wall_loss(chamber)?, self.opening_loss(chamber));
        let share = available(self.flue(chamber));
        if share <= S::c(0.01) {
            return Err(Error::NoSolution { input: Input::AvailableHeat, nearest: share.to_f32() });
        }
        let used = work.watts() + walls.watts() + openings.watts();
        let fire = used / share;
        let flue = Power::from_watts(fire - used);
        Ok(Balance { chamber, fire: NetHeatRate::from_watts(fire), work, walls, openings, flue, available: share })
    }

    /// The temperature a fire keeps.
    ///
    /// # Errors
    ///
    /// [`Error::NoSolution`] when it is not even one kelvin above the room, or beyond the range.
    pub fn temperature_for(
        &self,
        fire: NetHeatRate<S>,
        work: Power<S>,
        available: impl Fn(Temperature<S>) -> S,
    ) -> Result<Balance<S>> {
        check(Input::HeatRate, fire.watts())?;
        let (low, high) = (self.room.kelvin() + S::one(), S::c(Input::ChamberTemperature.range().max));
        let left = |kelvin: S| {
            let chamber = Temperature::from_kelvin(kelvin);
            let walls = self.wall_loss(chamber).map_or(S::zero(), Power::watts);
            fire.watts() * available(self.flue(chamber)) - work.watts() - walls - self.opening_loss(chamber).watts()
        };
        let kelvin = solve::root(Input::ChamberTemperature, low, high, left)?.x;
        let chamber = Temperature::from_kelvin(kelvin);
        let (walls, openings) = (self.wall_loss(chamber)?, self.opening_loss(chamber));
        let share = available(self.flue(chamber));
        let flue = Power::from_watts(fire.watts() * (S::one() - share));
        Ok(Balance { chamber, fire, work, walls, openings, flue, available: share })
    }
}
