//! Time from a counter of milliseconds that wraps, goes astray or skips.

use super::fingerprint::Fingerprint;
use crate::quantity::Duration;
use crate::scalar::Scalar;

/// Ticks in a row without a millisecond after which the counter has stopped: with 10 us a tick, little on a chip, a
/// counter that runs never lets a hundred of them pass.
const STILL: u16 = 1000;

/// Whether a setting is a time that can pass: above zero, and finite.
pub(super) fn lasts<S: Scalar>(time: Duration<S>) -> bool {
    time.seconds() > S::zero() && time.seconds().is_finite()
}

/// The time between two ticks.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct Clock {
    last: Option<u32>,
    still: u16,
}

impl Clock {
    /// The milliseconds since the last tick; none when they are more than `longest`, as it also looks when the
    /// counter went backward, and none when it has stopped. A wrap of the counter is no gap.
    pub fn elapsed(&mut self, now: u32, longest: u32) -> Option<u32> {
        let since = self.last.map_or(0, |last| now.wrapping_sub(last));
        self.last = Some(now);
        self.still = if since == 0 { self.still.saturating_add(1) } else { 0 };
        (since <= longest && self.still < STILL).then_some(since)
    }

    pub fn fingerprint(&self, to: &mut Fingerprint) {
        to.word(self.last.unwrap_or(0));
        to.word(u32::from(self.still) << 1 | u32::from(self.last.is_some()));
    }
}

/// A time in whole milliseconds, exact for 49 days, and then at its end.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) struct Timer(u32);

impl Timer {
    #[must_use]
    pub fn after(self, milliseconds: u32) -> Self {
        Self(self.0.saturating_add(milliseconds))
    }

    pub fn seconds<S: Scalar>(self) -> S {
        S::count(self.0) * S::c(1e-3)
    }

    pub fn word(self) -> u32 {
        self.0
    }
}

#[cfg(test)]
mod tests {
    use super::{Clock, Timer};

    #[test]
    fn a_wrap_is_no_gap_and_a_step_back_is_one() {
        let mut clock = Clock::default();
        let mut elapsed = |now| clock.elapsed(now, 500);
        assert_eq!(elapsed(u32::MAX - 99), Some(0));
        assert_eq!(elapsed(100), Some(200));
        assert_eq!(elapsed(100), Some(0));
        assert_eq!(elapsed(99), None);
        assert_eq!(elapsed(600), None);
        assert_eq!(elapsed(1_100), Some(500));
    }

    #[test]
    fn a_counter_that_stands_still_has_stopped_until_it_goes_on() {
        let mut clock = Clock::default();
        let told = |clock: &mut Clock, now| clock.elapsed(now, 500).is_some();
        assert!((1..1000).all(|_| told(&mut clock, 7)));
        assert!((0..100_000).all(|_| !told(&mut clock, 7)));
        assert!(told(&mut clock, 8));
    }

    #[test]
    fn a_timer_of_single_precision_is_exact_for_weeks_and_never_wraps() {
        let mut timer = Timer::default();
        (0..40_000_000).for_each(|_| timer = timer.after(100));
        assert_eq!(timer.word(), 4_000_000_000);
        assert_eq!(timer.after(u32::MAX).word(), u32::MAX);
        assert!((Timer::default().after(60_100).seconds::<f32>() - 60.1).abs() < 1e-4);
    }
}
