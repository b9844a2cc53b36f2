//! Time from a counter of milliseconds that wraps, goes astray or skips.

use crate::quantity::Duration;
use crate::scalar::Scalar;

/// Ticks in a row without a millisecond after which the counter has stopped: with 10 us a tick, little on a chip, a
/// counter that runs never lets a hundred of them pass.
const STILL: u16 = 1000;

/// Whether a setting is a time that can pass: above nought, and finite.
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
    /// The time since the last tick; none when it is longer than `longest` milliseconds, as it also looks when the
    /// counter went backward, and none when it has stopped. A wrap of the counter is no gap.
    pub fn elapsed<S: Scalar>(&mut self, now: u32, longest: u32) -> Option<Duration<S>> {
        let since = self.last.map_or(0, |last| now.wrapping_sub(last));
        self.last = Some(now);
        self.still = if since == 0 { self.still.saturating_add(1) } else { 0 };
        (since <= longest && self.still < STILL).then(|| Duration::from_seconds(S::count(since) * S::c(1e-3)))
    }
}

#[cfg(test)]
mod tests {
    use super::Clock;

    #[test]
    fn a_wrap_is_no_gap_and_a_step_back_is_one() {
        let mut clock = Clock::default();
        let mut elapsed = |now| clock.elapsed::<f64>(now, 500).map(|time| (time.seconds() * 1e3).round());
        assert_eq!(elapsed(u32::MAX - 99), Some(0.0));
        assert_eq!(elapsed(100), Some(200.0));
        assert_eq!(elapsed(100), Some(0.0));
        assert_eq!(elapsed(99), None);
        assert_eq!(elapsed(600), None);
        assert_eq!(elapsed(1_100), Some(500.0));
    }

    #[test]
    fn a_counter_that_stands_still_has_stopped_until_it_goes_on() {
        let mut clock = Clock::default();
        let told = |clock: &mut Clock, now| clock.elapsed::<f64>(now, 500).is_some();
        assert!((1..1000).all(|_| told(&mut clock, 7)));
        assert!((0..100_000).all(|_| !told(&mut clock, 7)));
        assert!(told(&mut clock, 8));
    }
}
