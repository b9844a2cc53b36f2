//! What a hot furnace does after a stop: how long its walls light gas, and how long air must run.

use super::firing::{Firing, Passed, Until};
use super::model::Drive;
use crate::error::Result;
use crate::scalar::Scalar;

/// Walls hotter than this light gas at once: the temperature above which a flame safeguard may be bypassed.
///
/// # Source
///
/// NFPA 86, 1 400 degF (from memory).
pub const LIGHTS_ABOVE: f64 = 1033.15;
/// The longest that is ever promised without a thermocouple, s: common practice, no source.
pub const MOST_PROMISED: f64 = 600.0;
/// What is not down after this long is as good as never, s.
const LONG: f64 = 48.0 * 3600.0;
/// Looks for the air's time; it is bracketed, and each look at least halves the bracket in the end.
const LOOKS: usize = 12;
/// The air's time is known when its bracket is so narrow, as a share.
const WITHIN: f64 = 0.004;
/// The first moment of a stage at which a stop is tried, s, and each over the one before.
const FIRST_TRIED: f64 = 5.0;
const TRIED_APART: f64 = 1.35;

/// The climb of the faces after the air is looked at in runs of so long, s, and in so many.
const REBOUND_RUN: f64 = 1800.0;
const REBOUND_RUNS: usize = 8;

/// The worst moment of a stage to lose the flame at.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Moment<S = f64> {
    /// When, s from the stage's begin.
    pub at: S,
    /// How long the walls still light gas from then, s.
    pub lights_for: S,
}

impl<S: Scalar> Firing<'_, S> {
    /// How long the coldest wall stays above a temperature if everything stopped now, s; at most two days.
    ///
    /// # Errors
    ///
    /// As of [`Firing::run`].
    pub fn stays_above(&self, kelvin: S, draft: bool) -> Result<S> {
        let mut other = self.clone();
        let passed = other.run(&Drive::Off { draft }, Until::ColdestFaceFallsTo(kelvin))?;
        Ok(passed.time.smaller(S::c(LONG)))
    }

    /// How long the coldest wall stays above [`LIGHTS_ABOVE`] and above another temperature with everything off and
    /// shut, s; at most two days each.
    ///
    /// # Errors
    ///
    /// As of [`Firing::run`].
    pub fn lights_shut(mut self, kelvin: S) -> Result<(S, S)> {
        let mut first = |kelvin: S| -> Result<S> {
            let passed = self.run(&Drive::Off { draft: false }, Until::ColdestFaceFallsTo(kelvin))?;
            Ok(passed.time)
        };
        let bypass = S::c(LIGHTS_ABOVE);
        let (lights, other) = if kelvin < bypass {
            let lights = first(bypass)?;
            (lights, lights + first(kelvin)?)
        } else {
            let other = first(kelvin)?;
            (other + first(bypass)?, other)
        };
        Ok((lights.smaller(S::c(LONG)), other.smaller(S::c(LONG))))
    }

    /// Goes through a stage, and finds the moment in it from which the coldest wall is soonest below a temperature if
    /// everything stopped then.
    ///
    /// # Errors
    ///
    /// As of [`Firing::run`].
    pub fn worst_moment(
        &mut self,
        drive: &Drive<S>,
        until: Until<S>,
        kelvin: S,
        draft: bool,
    ) -> Result<(Passed<S>, Moment<S>)> {
        let mut worst = Moment { at: S::zero(), lights_for: self.stays_above(kelvin, draft)? };
        let (mut other, mut next, mut refused) = (self.clone(), S::c(FIRST_TRIED), None);
        let passed = self.watched(drive, until, |time, state| {
            if time < next {
                return;
            }
            next = time * S::c(TRIED_APART);
            other.set_state(state);
            match other.stays_above(kelvin, draft) {
                Ok(lights_for) if lights_for < worst.lights_for => worst = Moment { at: time, lights_for },
                Ok(_) => {}
                Err(error) => refused = Some(error),
            }
        })?;
        refused.map_or(Ok((passed, worst)), Err)
    }

    /// The shortest time air must run, s, so that afterwards, with everything off and shut, no hot face is ever hotter
    /// than a limit; at most two days.
    ///
    /// # Errors
    ///
    /// As of [`Firing::run`].
    pub fn air_on(&self, flow: S, limit: S) -> Result<S> {
        let over = |firing: &Self| -> Result<S> { Ok(firing.rebound()? - limit) };
        let first = over(self)?;
        if first <= S::zero() {
            return Ok(S::zero());
        }
        let air = Drive::Air { flow, draft: true };
        // The state at the low end goes on: air that has run need not run again.
        let (mut from, mut low, mut over_low) = (self.clone(), S::zero(), first);
        let mut high = S::c(600.0);
        let mut over_high;
        loop {
            let mut other = from.clone();
            other.run(&air, Until::Time(high - low))?;
            over_high = over(&other)?;
            if over_high <= S::zero() {
                break;
            }
            (from, low, over_low) = (other, high, over_high);
            high = high * S::c(2.0);
            if high > S::c(LONG) {
                return Ok(S::c(LONG));
            }
        }
        for look in 0..LOOKS {
            if high - low <= S::c(WITHIN) * high {
                break;
            }
            // By a straight line, and by halves where that creeps.
            let line = low + (high - low) * over_low / (over_low - over_high);
            let edge = S::c(0.5 * WITHIN) * high;
            let half = S::c(0.5) * (low + high);
            let at = if look % 3 == 2 { half } else { line.clamped(low + edge, high - edge) };
            let mut other = from.clone();
            other.run(&air, Until::Time(at - low))?;
            let there = over(&other)?;
            if there > S::zero() {
                (from, low, over_low) = (other, at, there);
            } else {
                (high, over_high) = (at, there);
            }
        }
        Ok(high)
    }

    /// The hottest that a hot face ever is from now on with everything off and shut, K.
    fn rebound(&self) -> Result<S> {
        let mut other = self.clone();
        let mut highest = other.hottest_face();
        // Once it falls by itself it never rises again: heat only spreads.
        for _ in 0..REBOUND_RUNS {
            let before = other.hottest_face();
            let furnace = other.furnace();
            other.watched(&Drive::Off { draft: false }, Until::Time(S::c(REBOUND_RUN)), |_, state| {
                highest = highest.larger(furnace.hottest_face(state));
            })?;
            if other.hottest_face() < before {
                break;
            }
        }
        Ok(highest)
    }
}
