//! A chamber that warms up, is held and cools: one wall in time, on a grid of fixed size.
//!
//! The chamber has one temperature, that of its hot face; its gases leave above it by the chamber's excess.

use super::chamber::Chamber;
use super::grid::Grid;
use super::material::Material;
use super::surface::{Surroundings, air_specific_heat};
use super::wall::Wall;
use crate::error::{Error, Result};
use crate::limits::{Input, check};
use crate::quantity::{Duration, Length, MassFlow, NetHeatRate, Power, Temperature};
use crate::scalar::Scalar;

/// First step, seconds; each is longer than the one before until [`LONGEST`].
const FIRST: f64 = 1.0;
const GROWTH: f64 = 1.04;
const LONGEST: f64 = 60.0;
/// Each cell behind the hot face over the one before it.
const CELL_GROWTH: f64 = 1.08;
/// Most steps of one leg: more than two days of the longest.
const STEP_CAP: usize = 3000;
/// A chamber above this counts as lit by itself: NFPA 86, bypass of flame supervision at 1400 F (from memory).
pub const REIGNITES_ABOVE_CELSIUS: f64 = 760.0;

/// A part of a firing.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Leg<S = f64> {
    /// How long it took.
    pub time: Duration<S>,
    /// Net heat of the gas burnt, J.
    pub fire: S,
    /// With the gases, J.
    pub flue: S,
    /// Out of openings, J.
    pub openings: S,
    /// Into the work, J.
    pub work: S,
    /// Carried off by air blown or drawn through, J.
    pub air: S,
    /// Stored in the wall, J.
    pub stored: S,
    /// Off the outside, J.
    pub shell: S,
    /// Hot face at its end.
    pub hot_face: Temperature<S>,
    /// Outside at its end.
    pub outside: Temperature<S>,
    /// The fire at its end.
    pub last_fire: NetHeatRate<S>,
}

impl<S: Scalar> Leg<S> {
    /// The average fire.
    #[must_use]
    pub fn mean_fire(&self) -> NetHeatRate<S> {
        NetHeatRate::from_watts(self.fire / self.time.seconds().larger(S::c(1e-9)))
    }
    /// What does not close, over the largest of what is in the account.
    #[must_use]
    pub fn closing_error(&self) -> S {
        let used = self.flue + self.openings + self.work + self.air + self.stored + self.shell;
        let largest = self.fire.abs().larger(self.stored.abs()).larger(S::c(1.0));
        (self.fire - used).abs() / largest
    }
}

/// One chamber through time. Its first wall stands for all; give it the whole hot area.
#[derive(Clone, Debug)]
pub struct Warming<'c, S = f64> {
    chamber: &'c Chamber<S>,
    wall: &'c Wall<S>,
    room: Surroundings<S>,
    grid: Grid<'c, S, Material<S>>,
}

impl<'c, S: Scalar> Warming<'c, S> {
    /// A chamber as cold as its room.
    ///
    /// # Errors
    ///
    /// None for a chamber that was accepted.
    pub fn cold(chamber: &'c Chamber<S>) -> Result<Self> {
        let (wall, room) = chamber.walls().first().ok_or(Error::Points { input: Input::WallArea })?;
        let layers = wall.layers().iter().map(|layer| (&layer.material, layer.thickness.meters()));
        let grid = Grid::new(layers, &wall.body(), room.air.kelvin(), S::c(CELL_GROWTH));
        Ok(Self { chamber, wall, room: *room, grid })
    }

    /// The hot face now.
    #[must_use]
    pub fn hot_face(&self) -> Temperature<S> {
        Temperature::from_kelvin(self.grid.hot_face())
    }
    /// The outside now.
    #[must_use]
    pub fn outside(&self) -> Temperature<S> {
        Temperature::from_kelvin(self.grid.outside())
    }
    /// Depth behind the hot face and temperature of every cell now.
    pub fn profile(&self) -> impl Iterator<Item = (Length<S>, Temperature<S>)> + '_ {
        self.grid.profile().map(|(depth, kelvin)| (Length::from_meters(depth), Temperature::from_kelvin(kelvin)))
    }
    /// Heat stored in the wall above the room, J.
    #[must_use]
    pub fn stored(&self) -> S {
        self.grid.stored_above(self.room.air.kelvin())
    }

    fn shell_loss(&self) -> impl Fn(S) -> S + use<S> {
        let (room, area) = (self.room, self.wall.outer_area().square_meters());
        move |kelvin| area * room.heat_flux(Temperature::from_kelvin(kelvin))
    }

    fn finish(&self, mut leg: Leg<S>, before: S, last_fire: NetHeatRate<S>) -> Leg<S> {
        leg.stored = self.stored() - before;
        leg.hot_face = self.hot_face();
        leg.outside = self.outside();
        leg.last_fire = last_fire;
        leg
    }

    /// Warms the chamber with a fire until its hot face reaches a temperature.
    ///
    /// # Errors
    ///
    /// [`Error::NoSolution`] with the temperature it stands at after two days when the fire is too small; an input
    /// out of range.
    pub fn warm_up(
        &mut self,
        fire: NetHeatRate<S>,
        target: Temperature<S>,
        available: impl Fn(Temperature<S>) -> S,
    ) -> Result<Leg<S>> {
        self.warm_up_told(fire, target, available, |_, _| {})
    }

    /// The same, told after every step: the time since its start and the chamber then.
    ///
    /// # Errors
    ///
    /// As above.
    pub fn warm_up_told(
        &mut self,
        fire: NetHeatRate<S>,
        target: Temperature<S>,
        available: impl Fn(Temperature<S>) -> S,
        mut told: impl FnMut(Duration<S>, &Self),
    ) -> Result<Leg<S>> {
        let watts = check(Input::HeatRate, fire.watts())?;
        let target = check(Input::ChamberTemperature, target.kelvin())?;
        let (before, shell, chamber) = (self.stored(), self.shell_loss(), self.chamber);
        let kept = |kelvin: S| watts * available(chamber.flue(Temperature::from_kelvin(kelvin)));
        let lost = |kelvin: S| chamber.opening_loss(Temperature::from_kelvin(kelvin)).watts();
        let (mut leg, mut dt) = (Leg::default(), S::c(FIRST));
        let (mut fire_taken, mut openings, mut into) = (S::zero(), S::zero(), S::zero());
        let (mut seconds, mut steps) = (S::zero(), 0);
        while self.grid.hot_face() < target {
            if steps == STEP_CAP {
                return Err(Error::NoSolution {
                    input: Input::ChamberTemperature,
                    nearest: self.grid.hot_face().to_f32(),
                });
            }
            let start = self.grid.clone();
            let mut exchange = self.grid.step(Duration::from_seconds(dt), |t| kept(t) - lost(t), &shell);
            let mut taken = dt;
            if self.grid.hot_face() > target + S::c(0.5) {
                // The last step is cut where it crosses, and taken again.
                let rise = self.grid.hot_face() - start.hot_face();
                taken = dt * ((target - start.hot_face()) / rise).clamped(S::c(1e-3), S::one());
                self.grid = start.clone();
                exchange = self.grid.step(Duration::from_seconds(taken), |t| kept(t) - lost(t), &shell);
            }
            let middle = S::c(0.5) * (start.hot_face() + self.grid.hot_face());
            seconds += taken;
            fire_taken += watts * taken;
            openings += lost(middle) * taken;
            into += exchange.entered;
            leg.shell += exchange.left;
            dt = (dt * S::c(GROWTH)).smaller(S::c(LONGEST));
            steps += 1;
            told(Duration::from_seconds(seconds), self);
        }
        leg.time = Duration::from_seconds(seconds);
        (leg.fire, leg.openings) = (fire_taken, openings);
        leg.flue = fire_taken - openings - into;
        Ok(self.finish(leg, before, fire))
    }

    /// Holds the hot face at a temperature while work takes heat, and finds the fire that does it.
    ///
    /// # Errors
    ///
    /// [`Error::NoSolution`] when no heat of the gas is left at that temperature; an input out of range.
    pub fn hold(
        &mut self,
        chamber_temperature: Temperature<S>,
        time: Duration<S>,
        work: Power<S>,
        available: impl Fn(Temperature<S>) -> S,
    ) -> Result<Leg<S>> {
        self.hold_told(chamber_temperature, time, work, available, |_, _| {})
    }

    /// The same, told after every step: the time since its start and the chamber then.
    ///
    /// # Errors
    ///
    /// As above.
    pub fn hold_told(
        &mut self,
        chamber_temperature: Temperature<S>,
        time: Duration<S>,
        work: Power<S>,
        available: impl Fn(Temperature<S>) -> S,
        mut told: impl FnMut(Duration<S>, &Self),
    ) -> Result<Leg<S>> {
        let target = check(Input::ChamberTemperature, chamber_temperature.kelvin())?;
        let whole = check(Input::Duration, time.seconds())?;
        let share = available(self.chamber.flue(chamber_temperature));
        if share <= S::c(0.01) {
            return Err(Error::NoSolution { input: Input::AvailableHeat, nearest: share.to_f32() });
        }
        let (before, shell) = (self.stored(), self.shell_loss());
        // A film so good that the face stands within a few kelvin of what it is held at.
        let film = S::c(2000.0) * self.wall.hot_area().square_meters();
        let openings = self.chamber.opening_loss(chamber_temperature).watts();
        let (mut leg, mut seconds, mut into, mut rate) = (Leg::default(), S::zero(), S::zero(), S::zero());
        let step = (whole / S::c(240.0)).larger(S::c(FIRST)).smaller(S::c(LONGEST));
        for _ in 0..STEP_CAP {
            let dt = step.smaller(whole - seconds);
            if dt <= S::zero() {
                break;
            }
            let exchange = self.grid.step(Duration::from_seconds(dt), |t| film * (target - t), &shell);
            rate = exchange.entered / dt;
            into += exchange.entered;
            leg.shell += exchange.left;
            seconds += dt;
            told(Duration::from_seconds(seconds), self);
        }
        leg.time = Duration::from_seconds(seconds);
        leg.work = work.watts() * seconds;
        leg.openings = openings * seconds;
        leg.fire = (into + leg.work + leg.openings) / share;
        leg.flue = leg.fire * (S::one() - share);
        let last = NetHeatRate::from_watts((rate + work.watts() + openings) / share);
        Ok(self.finish(leg, before, last))
    }

    /// Cools with the gas off until the hot face is down at a temperature, with air blown or drawn through.
    ///
    /// The air leaves as warm as the hot face: the most it can carry.
    ///
    /// # Errors
    ///
    /// [`Error::NoSolution`] with the temperature after two days when it is not reached.
    pub fn cool_to(&mut self, target: Temperature<S>, air: MassFlow<S>) -> Result<Leg<S>> {
        self.cool_to_told(target, air, |_, _| {})
    }

    /// The same, told after every step: the time since its start and the chamber then.
    ///
    /// # Errors
    ///
    /// As above.
    pub fn cool_to_told(
        &mut self,
        target: Temperature<S>,
        air: MassFlow<S>,
        mut told: impl FnMut(Duration<S>, &Self),
    ) -> Result<Leg<S>> {
        let target = check(Input::ChamberTemperature, target.kelvin())?;
        let flow = air.kilograms_per_second();
        let room = self.room.air.kelvin();
        let (before, shell, chamber) = (self.stored(), self.shell_loss(), self.chamber);
        let carried = |kelvin: S| flow * air_specific_heat(S::c(0.5) * (kelvin + room)) * (kelvin - room);
        let lost = |kelvin: S| chamber.opening_loss(Temperature::from_kelvin(kelvin)).watts();
        let (mut leg, mut dt, mut steps, mut into) = (Leg::default(), S::c(FIRST), 0, S::zero());
        let mut seconds = S::zero();
        while self.grid.hot_face() > target {
            if steps == STEP_CAP {
                return Err(Error::NoSolution {
                    input: Input::ChamberTemperature,
                    nearest: self.grid.hot_face().to_f32(),
                });
            }
            let start = self.grid.clone();
            let mut exchange = self.grid.step(Duration::from_seconds(dt), |t| -carried(t) - lost(t), &shell);
            let mut taken = dt;
            if self.grid.hot_face() < target - S::c(0.5) {
                let fall = start.hot_face() - self.grid.hot_face();
                taken = dt * ((start.hot_face() - target) / fall).clamped(S::c(1e-3), S::one());
                self.grid = start.clone();
                exchange = self.grid.step(Duration::from_seconds(taken), |t| -carried(t) - lost(t), &shell);
            }
            let middle = S::c(0.5) * (start.hot_face() + self.grid.hot_face());
            seconds += taken;
            into += exchange.entered;
            leg.openings += lost(middle) * taken;
            leg.shell += exchange.left;
            dt = (dt * S::c(GROWTH)).smaller(S::c(LONGEST));
            steps += 1;
            told(Duration::from_seconds(seconds), self);
        }
        leg.time = Duration::from_seconds(seconds);
        leg.air = -into - leg.openings;
        Ok(self.finish(leg, before, NetHeatRate::from_watts(S::zero())))
    }
}
