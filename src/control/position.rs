//! Where an actuator can stand, estimated from its commands and its speed.

use crate::quantity::NetHeatRate;
use crate::scalar::Scalar;

/// How fast an actuator moves toward its command, as heat of its flow in a second, W/s. Both above zero and finite.
///
/// Time the way between the smallest and the largest fire, and the way up from a standing blower: 15 kW in 5 s are
/// 3 000 W/s.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Travel<S = f64> {
    /// Never slower than this, while it is not there yet. It counts from the command and from a standing blower: take
    /// the dead time and the start with it, as the whole way over the whole time.
    pub slowest: S,
    /// Never faster than this, at no moment of its way; `slowest` or more.
    pub fastest: S,
}

impl<S: Scalar> Travel<S> {
    pub(super) fn numbers(&self) -> [S; 2] {
        [self.slowest, self.fastest]
    }

    pub(super) fn is_usable(&self) -> bool {
        self.slowest > S::zero() && self.fastest >= self.slowest && self.fastest.is_finite()
    }

    /// By a clock that may be wrong by a share of the time that passed: one that counts too little has had more time to
    /// the second than it is off, and one that counts too much not quite as little.
    pub(super) fn by_clock(self, tolerance: S) -> Self {
        Self { slowest: self.slowest * (S::one() - tolerance), fastest: self.fastest / (S::one() - tolerance) }
    }
}

/// The heats between which an actuator's flow stands, W.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Position<S> {
    pub low: S,
    pub high: S,
}

impl<S: Scalar> Position<S> {
    pub fn anywhere_to(high: S) -> Self {
        Self { low: S::zero(), high }
    }

    /// After a time under a command: an end short of it has come at least the slowest way, one that leaves its place
    /// at most the fastest, and none passes it.
    pub fn after(self, command: S, seconds: S, travel: &Travel<S>) -> Self {
        let (slow, fast) = (travel.slowest * seconds, travel.fastest * seconds);
        let low =
            if self.low < command { (self.low + slow).smaller(command) } else { (self.low - fast).larger(command) };
        let high =
            if self.high > command { (self.high - slow).larger(command) } else { (self.high + fast).smaller(command) };
        Self { low, high }
    }

    /// All that is passed on the way to a command: after a time nobody knows, too.
    pub fn toward(self, command: S) -> Self {
        Self { low: self.low.smaller(command), high: self.high.larger(command) }
    }

    /// All that one or the other lets be.
    pub fn or(&self, other: &Self) -> Self {
        Self { low: self.low.smaller(other.low), high: self.high.larger(other.high) }
    }

    pub fn is_at(&self, heat: NetHeatRate<S>) -> bool {
        self.low == heat.watts() && self.high == heat.watts()
    }
}

#[cfg(test)]
mod tests {
    use super::{Position, Travel};

    #[test]
    fn what_moves_while_the_clock_is_off_stays_within_reach() {
        // The clock counts 0.7 s or 1.3 s of each second, in which an actuator moves 50 to 100 W from 0 toward 1000 W.
        let travel = Travel { slowest: 50.0, fastest: 100.0 };
        for counted in [0.7, 1.0, 1.3] {
            let reach = Position { low: 0.0, high: 0.0 }.after(1000.0, counted, &travel.by_clock(0.3));
            assert!(reach.low <= 50.0 && 100.0 <= reach.high + 1e-9, "{reach:?}");
            let back = Position { low: 1000.0, high: 1000.0 }.after(0.0, counted, &travel.by_clock(0.3));
            assert!(back.low <= 900.0 + 1e-9 && 950.0 <= back.high, "{back:?}");
        }
    }
}
