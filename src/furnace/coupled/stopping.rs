//! What a hot furnace does after a stop: how long its walls light gas, and how long air must run.

use super::firing::{Firing, Until};
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
/// Halvings of the air's time.
const HALVINGS: usize = 9;

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

    /// The shortest time air must run, s, so that afterwards, with everything off and shut, no hot face is ever hotter
    /// than a limit; at most two days.
    ///
    /// # Errors
    ///
    /// As of [`Firing::run`].
    pub fn air_on(&self, flow: S, limit: S) -> Result<S> {
        let rebound = |time: S| -> Result<S> {
            let mut other = self.clone();
            if time > S::zero() {
                other.run(&Drive::Air { flow, draft: true }, Until::Time(time))?;
            }
            let mut highest = other.hottest_face();
            // Once it falls by itself it never rises again: heat only spreads.
            let mut peak = |firing: &Firing<'_, S>| highest = highest.larger(firing.hottest_face());
            for _ in 0..12 {
                let before = other.hottest_face();
                other.run(&Drive::Off { draft: false }, Until::Time(S::c(600.0)))?;
                peak(&other);
                if other.hottest_face() < before {
                    break;
                }
            }
            Ok(highest)
        };
        if rebound(S::zero())? <= limit {
            return Ok(S::zero());
        }
        let (mut low, mut high) = (S::zero(), S::c(600.0));
        while rebound(high)? > limit {
            low = high;
            high = high * S::c(2.0);
            if high > S::c(LONG) {
                return Ok(S::c(LONG));
            }
        }
        for _ in 0..HALVINGS {
            let middle = S::c(0.5) * (low + high);
            if rebound(middle)? > limit { low = middle } else { high = middle }
        }
        Ok(high)
    }
}
