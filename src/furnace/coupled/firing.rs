//! A furnace through time: one stage after another, with steps as long as the error allows.

use heapless::Vec;

use super::model::{CONTENT_CAP, Content, Drive, Furnace, Ledger, State, hot};
use crate::error::{Error, Result};
use crate::limits::Input;
use crate::scalar::Scalar;

/// Most surfaces a report lists: builds, then contents.
pub const FACE_CAP: usize = 7;
/// Temperature by which a step and its two halves may differ, K.
const ALLOWED: f64 = 1.0;
/// The first step of a stage, and the least, s.
const FIRST: f64 = 2.0;
const LEAST_STEP: f64 = 1e-6;
/// A step is shortened so far ahead of an event before it is crossed by a straight line, s.
const EVENT: f64 = 0.5;
/// A stage that has not ended by now never will, s.
pub const LONGEST: f64 = 4e5;
/// Most steps of a stage.
const STEP_CAP: usize = 20_000;

/// What ends a stage.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Until<S = f64> {
    /// Time, s.
    Time(S),
    /// The chamber as hot as this, K.
    ChamberRisesTo(S),
    /// The chamber as cold as this, K.
    ChamberFallsTo(S),
    /// The coldest wall as cold as this, K.
    ColdestFaceFallsTo(S),
    /// The core of the content put in last as hot as this, K.
    CoreRisesTo(S),
}

/// What came of a stage.
#[derive(Clone, Debug, PartialEq)]
pub struct Passed<S = f64> {
    /// How long it took, s.
    pub time: S,
    /// Whether it ended by what was to end it, not by [`LONGEST`].
    pub ended: bool,
    /// Temperature of the chamber at its end, K, and the highest and the lowest in it.
    pub chamber: S,
    /// Highest.
    pub highest: S,
    /// Lowest.
    pub lowest: S,
    /// Temperature the gas leaves at, K, at the end.
    pub gas: S,
    /// The fire at the end, W.
    pub fire: S,
    /// The largest fire, W.
    pub most_fire: S,
    /// Hot faces of builds and contents at the end, K.
    pub faces: Vec<S, FACE_CAP>,
    /// The core of the content put in last; of a crucible its charge.
    pub core: Option<S>,
    /// Heats.
    pub ledger: Ledger<S>,
    /// Steps taken and thrown away.
    pub steps: (usize, usize),
}

/// A furnace in use.
#[derive(Clone, Debug)]
pub struct Firing<'f, S: Scalar = f64> {
    furnace: &'f Furnace<S>,
    contents: Vec<Content<S>, CONTENT_CAP>,
    state: State<S>,
    allowed: S,
}

impl<'f, S: Scalar> Firing<'f, S> {
    /// From cold.
    #[must_use]
    pub fn cold(furnace: &'f Furnace<S>) -> Self {
        Self { furnace, contents: Vec::new(), state: furnace.cold(), allowed: S::c(ALLOWED) }
    }

    /// The same state in another furnace of the same builds: another film, opening or fire.
    #[must_use]
    pub fn into<'g>(self, furnace: &'g Furnace<S>) -> Firing<'g, S> {
        Firing { furnace, contents: self.contents, state: self.state, allowed: self.allowed }
    }

    /// The same with steps whose error is so many kelvin, for what is only compared with its like.
    #[must_use]
    pub fn within(self, allowed: S) -> Self {
        Self { allowed, ..self }
    }

    /// Where it stands.
    #[must_use]
    pub fn state(&self) -> &State<S> {
        &self.state
    }

    /// Puts it where it stood at another moment of the same stage.
    pub(super) fn set_state(&mut self, state: &State<S>) {
        self.state = state.clone();
    }

    /// The furnace.
    pub(super) fn furnace(&self) -> &'f Furnace<S> {
        self.furnace
    }

    /// What stands in the chamber.
    #[must_use]
    pub fn contents(&self) -> &[Content<S>] {
        &self.contents
    }

    /// Temperature of the chamber, K.
    #[must_use]
    pub fn chamber(&self) -> S {
        self.furnace.chamber(&self.state)
    }

    /// The hottest hot face, K.
    #[must_use]
    pub fn hottest_face(&self) -> S {
        self.furnace.hottest_face(&self.state)
    }

    /// The coldest hot face, K.
    #[must_use]
    pub fn coldest_face(&self) -> S {
        self.furnace.coldest_face(&self.state)
    }

    /// Puts something in at one temperature, K.
    ///
    /// # Errors
    ///
    /// A fourth content; one that leaves no room for gas.
    pub fn put(&mut self, content: &Content<S>, kelvin: S) -> Result<()> {
        let taken = self.contents.iter().fold(content.volume, |sum, content| sum + content.volume);
        if taken >= self.furnace.volume {
            return Err(Error::OutOfRange { input: Input::WorkMass, given: taken.to_f32() });
        }
        let nodes = content.chain.uniform(kelvin);
        let refused = Error::Points { input: Input::WorkMass };
        self.contents.push(content.clone()).map_err(|_| refused)?;
        self.state.nodes.push(nodes).map_err(|_| refused)
    }

    /// Takes out what was put in last; whether there was anything.
    pub fn take(&mut self) -> bool {
        let was = self.contents.pop().is_some();
        if was {
            let _ = self.state.nodes.pop();
        }
        was
    }

    fn core(&self, state: &State<S>) -> Option<S> {
        (!self.contents.is_empty()).then(|| state.nodes.last().and_then(|nodes| nodes.last().copied())).flatten()
    }

    /// How far past its end a stage is: below zero before it.
    fn beyond(&self, state: &State<S>, until: &Until<S>) -> S {
        match *until {
            Until::Time(_) => -S::one(),
            Until::ChamberRisesTo(kelvin) => self.furnace.chamber(state) - kelvin,
            Until::ChamberFallsTo(kelvin) => kelvin - self.furnace.chamber(state),
            Until::ColdestFaceFallsTo(kelvin) => kelvin - self.furnace.coldest_face(state),
            Until::CoreRisesTo(kelvin) => self.core(state).map_or(-S::one(), |core| core - kelvin),
        }
    }

    /// Goes through a stage.
    ///
    /// # Errors
    ///
    /// A step that does not settle however short it is.
    pub fn run(&mut self, drive: &Drive<S>, until: Until<S>) -> Result<Passed<S>> {
        self.watched(drive, until, |_, _| ())
    }

    /// The same, shown each accepted step with its time, s.
    ///
    /// # Errors
    ///
    /// As of [`Self::run`].
    pub fn watched(
        &mut self,
        drive: &Drive<S>,
        until: Until<S>,
        mut watch: impl FnMut(S, &State<S>),
    ) -> Result<Passed<S>> {
        let zero = S::zero();
        let now = self.chamber();
        let mut passed = Passed {
            time: zero,
            ended: false,
            chamber: now,
            highest: now,
            lowest: now,
            gas: self.state.gas,
            fire: self.state.fire,
            most_fire: zero,
            faces: Vec::new(),
            core: None,
            ledger: Ledger::default(),
            steps: (0, 0),
        };
        let end = if let Until::Time(time) = until { time } else { S::c(LONGEST) };
        let mut dt = S::c(FIRST);
        passed.ended = self.beyond(&self.state, &until) >= zero;
        while !passed.ended && passed.time < end && passed.steps.0 + passed.steps.1 < STEP_CAP {
            let left = end - passed.time;
            let step = dt.smaller(left);
            let Ok((state, ledger, differs)) = self.tried(drive, step) else {
                passed.steps.1 += 1;
                dt = S::c(0.25) * step;
                if dt < S::c(LEAST_STEP) {
                    return Err(Error::NotConverged { input: Input::Duration });
                }
                continue;
            };
            // The error of a step goes with its square.
            let grown = S::c(0.85) * step * (self.allowed / differs.larger(S::c(0.05))).sqrt();
            if differs > self.allowed && step > S::c(LEAST_STEP) {
                passed.steps.1 += 1;
                dt = grown.smaller(S::c(0.7) * step);
                continue;
            }
            let (before, after) = (self.beyond(&self.state, &until), self.beyond(&state, &until));
            let mut share = S::one();
            if after >= zero {
                share = (-before / (after - before)).clamped(zero, S::one());
                if step > S::c(EVENT) {
                    passed.steps.1 += 1;
                    // Just short of the event, then a short step across it.
                    dt = (share * step - S::c(0.4 * EVENT)).larger(S::c(0.8 * EVENT)).smaller(S::c(0.9) * step);
                    continue;
                }
                passed.ended = true;
            }
            let whole = ledger;
            passed.ledger = passed.ledger.with(&whole, |sum, more| sum + share * more);
            passed.time += share * step;
            if share < S::one() {
                self.state = between(&self.state, &state, share);
            } else {
                self.state = state;
            }
            passed.steps.0 += 1;
            let chamber = self.chamber();
            passed.highest = passed.highest.larger(chamber);
            passed.lowest = passed.lowest.smaller(chamber);
            passed.most_fire = passed.most_fire.larger(self.state.fire);
            watch(passed.time, &self.state);
            dt = grown.smaller(S::c(3.0) * step);
        }
        if let Until::Time(_) = until {
            passed.ended = true;
        }
        passed.chamber = self.chamber();
        passed.gas = self.state.gas;
        passed.fire = self.state.fire;
        passed.faces = self.state.nodes.iter().map(hot).collect();
        passed.core = self.core(&self.state);
        Ok(passed)
    }

    /// One step and its two halves: the better state, its heats, and by how much they differ, K.
    fn tried(&self, drive: &Drive<S>, dt: S) -> Result<(State<S>, Ledger<S>, S)> {
        let half = S::c(0.5) * dt;
        let (full, whole) = self.furnace.step(&self.contents, &self.state, drive, dt)?;
        let (middle, first) = self.furnace.step(&self.contents, &self.state, drive, half)?;
        let (end, second) = self.furnace.step(&self.contents, &middle, drive, half)?;
        let mut differs = S::zero();
        for (a, b) in full.nodes.iter().zip(&end.nodes) {
            for (a, b) in a.iter().zip(b) {
                differs = differs.larger((*a - *b).abs());
            }
        }
        let state = self.furnace.extrapolated(&self.contents, &end, &full);
        let halves = first.with(&second, |a, b| a + b);
        let ledger = halves.with(&whole, |halves, whole| S::c(2.0) * halves - whole);
        Ok((state, ledger, differs))
    }
}

/// A state between two.
fn between<S: Scalar>(from: &State<S>, to: &State<S>, share: S) -> State<S> {
    let mut made = to.clone();
    for (made, from) in made.nodes.iter_mut().zip(&from.nodes) {
        for (made, from) in made.iter_mut().zip(from) {
            *made = *from + share * (*made - *from);
        }
    }
    made.gas = from.gas + share * (to.gas - from.gas);
    made.fire = from.fire + share * (to.fire - from.fire);
    made
}
