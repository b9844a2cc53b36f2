//! What a controller went through last: a fixed number of events, the oldest forgotten first.

use super::reason::Reason;
use super::sequence::State;
use crate::quantity::NetHeatRate;

/// Events a record keeps.
pub const RECORD_CAP: usize = 8;

/// One change of state, and what was read then.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Recorded<const K: usize, S = f64> {
    /// The counter of milliseconds.
    pub now: u32,
    /// Where the controller was.
    pub from: State,
    /// Where it went.
    pub to: State,
    /// What locked out.
    pub cause: Option<Reason>,
    /// The sensors' readings.
    pub readings: [S; K],
    /// Heat of the gas as it was read.
    pub gas: NetHeatRate<S>,
    /// Heat of the air as it was read.
    pub air: NetHeatRate<S>,
}

/// The last events of a controller.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EventRecord<const K: usize, S = f64> {
    events: [Option<Recorded<K, S>>; RECORD_CAP],
    /// Where the next goes: the oldest, where all are kept.
    next: u8,
}

impl<const K: usize, S: Copy> Default for EventRecord<K, S> {
    fn default() -> Self {
        Self { events: [None; RECORD_CAP], next: 0 }
    }
}

impl<const K: usize, S: Copy> EventRecord<K, S> {
    /// Adds one, in place of the oldest where all are kept.
    pub(super) fn add(&mut self, event: Recorded<K, S>) {
        if let Some(place) = self.events.get_mut(usize::from(self.next)) {
            *place = Some(event);
        }
        self.next = (self.next + 1) % RECORD_CAP as u8;
    }

    /// From the oldest to the newest.
    ///
    /// # Examples
    ///
    /// See [`Controller::tick`](super::Controller::tick).
    pub fn iter(&self) -> impl Iterator<Item = &Recorded<K, S>> {
        let (newer, older) = self.events.split_at_checked(usize::from(self.next)).unwrap_or((&[], &[]));
        older.iter().chain(newer).flatten()
    }
}

#[cfg(test)]
mod tests {
    use super::{EventRecord, RECORD_CAP, Recorded};
    use crate::control::State;
    use crate::quantity::NetHeatRate;
    use std::vec::Vec;

    #[test]
    fn the_oldest_is_forgotten_first() {
        let mut record = EventRecord::<1>::default();
        let zero = NetHeatRate::from_watts(0.0);
        for now in 0..20 {
            let (from, to) = (State::Off, State::PrePurge);
            record.add(Recorded { now, from, to, cause: None, readings: [0.0], gas: zero, air: zero });
            let kept: Vec<u32> = record.iter().map(|event| event.now).collect();
            let oldest = (now + 1).saturating_sub(RECORD_CAP as u32);
            assert_eq!(kept, (oldest..=now).collect::<Vec<_>>());
        }
    }
}
