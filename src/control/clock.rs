//! Time from a counter of milliseconds that wraps, goes astray or skips.

use crate::quantity::Duration;
use crate::scalar::Scalar;

/// The time between two ticks.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct Clock {
    last: Option<u32>,
}

impl Clock {
    /// The time since the last tick; none when it is longer than `longest` milliseconds, as it also looks when the
    /// counter went backward. A wrap of the counter is no gap.
    pub fn elapsed<S: Scalar>(&mut self, now: u32, longest: u32) -> Option<Duration<S>> {
        let since = self.last.map_or(0, |last| now.wrapping_sub(last));
        self.last = Some(now);
        (since <= longest).then(|| Duration::from_seconds(S::count(since) * S::c(1e-3)))
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
}
