//! What to believe of a sensor: out of range, jumping, stuck, or contradicting another.

use super::clock::lasts;
use super::fingerprint::Fingerprint;
use crate::quantity::Duration;
use crate::scalar::Scalar;

/// What a healthy sensor's readings look like, in its own unit. All are finite.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SensorLimits<S = f64> {
    /// Smallest reading of a healthy sensor: under its zero by its offset, above what a broken wire reads.
    pub lowest: S,
    /// Largest reading of a healthy sensor, above `lowest`; under what a short circuit reads.
    pub highest: S,
    /// Fastest change of what is measured, per second; above zero.
    pub fastest: S,
    /// Change between two readings that noise alone can make; zero or more. Three times what it does at rest is a
    /// start (common practice, no source).
    pub noise: S,
    /// A live sensor never reads exactly the same for this long, above zero; none where it may. Some dozens of ticks
    /// with a converter fine enough that its last digit moves.
    pub stuck_after: Option<Duration<S>>,
}

impl<S: Scalar> SensorLimits<S> {
    /// What of them is not usable.
    pub(super) fn refused(&self) -> Option<&'static str> {
        let zero = S::zero();
        [
            (self.lowest.is_finite(), "lowest reading"),
            (self.highest > self.lowest && self.highest.is_finite(), "highest reading"),
            (self.fastest > zero && self.fastest.is_finite(), "fastest change"),
            (self.noise >= zero && self.noise.is_finite(), "noise"),
            (self.stuck_after.is_none_or(lasts), "time after which it is stuck"),
        ]
        .into_iter()
        .find_map(|(usable, name)| (!usable).then_some(name))
    }
}

/// What is wrong with a sensor.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum SensorFault {
    /// No number.
    NotANumber,
    /// Below or above what a healthy sensor reads.
    OutOfRange,
    /// Changed faster than what it measures can.
    Jumped,
    /// Has read exactly the same for too long.
    Stuck,
    /// Two sensors of one thing have been apart for too long.
    Contradicts,
    /// A second sensor of one thing reads, and the settings know of none.
    NotFitted,
}

/// One sensor under watch.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sensor<S = f64> {
    limits: SensorLimits<S>,
    last: Option<S>,
    same_for: S,
}

impl<S: Scalar> Sensor<S> {
    /// A sensor not read yet.
    ///
    /// # Examples
    ///
    /// ```
    /// use jetwright::control::{Sensor, SensorFault, SensorLimits};
    /// use jetwright::quantity::Duration;
    /// let tick = Duration::from_seconds(0.1);
    /// // A gauge of 0 to 100 kPa that nothing moves by more than 50 kPa in a second.
    /// let mut gauge = Sensor::new(SensorLimits {
    ///     lowest: 0.0, highest: 100e3, fastest: 50e3, noise: 200.0, stuck_after: Some(Duration::from_seconds(5.0)),
    /// });
    /// assert_eq!(gauge.check(20e3, tick, true), Ok(20e3));
    /// assert_eq!(gauge.check(25e3, tick, true), Ok(25e3));
    /// assert_eq!(gauge.check(31e3, tick, true), Err(SensorFault::Jumped));
    /// assert_eq!(gauge.check(-1.0, tick, true), Err(SensorFault::OutOfRange));
    /// ```
    #[must_use]
    pub fn new(limits: SensorLimits<S>) -> Self {
        Self { limits, last: None, same_for: S::zero() }
    }

    /// The reading itself, if it can be believed. `live` says that what it measures cannot stand still now.
    ///
    /// # Errors
    ///
    /// What is wrong. After a jump the reading before it still counts as the last good one.
    pub fn check(&mut self, reading: S, elapsed: Duration<S>, live: bool) -> Result<S, SensorFault> {
        let SensorLimits { lowest, highest, fastest, noise, stuck_after } = self.limits;
        if !reading.is_finite() {
            return Err(SensorFault::NotANumber);
        }
        if !(reading >= lowest && reading <= highest) {
            return Err(SensorFault::OutOfRange);
        }
        let seconds = elapsed.seconds().larger(S::zero());
        if let Some(last) = self.last {
            let is_within_reach = (reading - last).abs() <= fastest * seconds + noise;
            if !is_within_reach {
                return Err(SensorFault::Jumped);
            }
            self.same_for = if reading == last && live { self.same_for + seconds } else { S::zero() };
        }
        self.last = Some(reading);
        match stuck_after {
            Some(longest) if self.same_for >= longest.seconds() => Err(SensorFault::Stuck),
            _ => Ok(reading),
        }
    }

    pub(super) fn fingerprint(&self, to: &mut Fingerprint) {
        let SensorLimits { lowest, highest, fastest, noise, stuck_after } = self.limits;
        let none = -S::one();
        to.numbers([lowest, highest, fastest, noise, stuck_after.map_or(none, Duration::seconds)]);
        to.numbers([self.last.unwrap_or(S::zero()), self.same_for]);
        to.word(u32::from(self.last.is_some()));
    }

    /// Forgets what was read, after a person has looked at the sensor.
    pub fn restart(&mut self) {
        *self = Self::new(self.limits);
    }
}

/// Two sensors of one thing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Agreement<S = f64> {
    share: S,
    floor: S,
    patience: S,
    apart_for: S,
}

impl<S: Scalar> Agreement<S> {
    /// They may differ by a share of the larger or by `floor`, whichever is more, and by more for less than
    /// `patience`.
    ///
    /// # Examples
    ///
    /// ```
    /// use jetwright::control::{Agreement, SensorFault};
    /// use jetwright::quantity::Duration;
    /// let second = Duration::from_seconds(1.0);
    /// let mut pair = Agreement::new(0.1, 0.5, Duration::from_seconds(1.5));
    /// assert_eq!(pair.check(10.0, 10.9, second), Ok(()));
    /// assert_eq!(pair.check(10.0, 12.0, second), Ok(()));
    /// assert_eq!(pair.check(10.0, 12.0, second), Err(SensorFault::Contradicts));
    /// ```
    #[must_use]
    pub fn new(share: S, floor: S, patience: Duration<S>) -> Self {
        Self { share, floor, patience: patience.seconds(), apart_for: S::zero() }
    }

    /// Whether they agree, or have only just parted.
    ///
    /// # Errors
    ///
    /// [`SensorFault::NotANumber`], [`SensorFault::Contradicts`].
    pub fn check(&mut self, first: S, second: S, elapsed: Duration<S>) -> Result<(), SensorFault> {
        if !(first.is_finite() && second.is_finite()) {
            return Err(SensorFault::NotANumber);
        }
        let allowed = (self.share * first.abs().larger(second.abs())).larger(self.floor);
        if (first - second).abs() <= allowed {
            self.apart_for = S::zero();
            return Ok(());
        }
        self.apart_for += elapsed.seconds().larger(S::zero());
        if self.apart_for >= self.patience { Err(SensorFault::Contradicts) } else { Ok(()) }
    }

    pub(super) fn fingerprint(&self, to: &mut Fingerprint) {
        to.numbers([self.share, self.floor, self.patience, self.apart_for]);
    }

    /// Forgets how long they have been apart.
    pub fn restart(&mut self) {
        self.apart_for = S::zero();
    }
}
