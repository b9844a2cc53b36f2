//! Which events of the sequence happen in a tick, and the air changes that one of them waits for.

use super::air::Air;
use super::{Controller, duration, seconds};
use crate::control::sequence::{Event, State};
use crate::control::tick::{Command, Inputs};
use crate::quantity::{ActualVolumeFlow, Duration};
use crate::scalar::Scalar;

impl<const N: usize, const K: usize, S: Scalar> Controller<N, K, S> {
    /// A command that was not there in the tick before; one that a switch held since the start is none.
    pub(super) fn new_command(&mut self, command: Command) -> Command {
        let is_new = self.last_command.is_some_and(|last| last != command);
        self.last_command = Some(command);
        if is_new || command == Command::Stop { command } else { Command::Nothing }
    }

    pub(super) fn happens(
        &self,
        event: Event,
        before: State,
        inputs: &Inputs<K, S>,
        air: &Air<S>,
        command: Command,
        fault: bool,
    ) -> bool {
        let settings = &self.settings;
        let lasts = |time: Duration<S>| self.in_state.seconds::<S>() > seconds(time);
        // Air that was lost and is back has not purged the chamber.
        let air_is_there =
            || air.least_flow() >= self.least_air() && (before != State::Ready || self.changes.are_enough());
        match event {
            Event::Purged => matches!(before, State::PrePurge | State::PostPurge) && self.changes.are_enough(),
            Event::GasFlowing => {
                self.gas_steady.is_some_and(|so_far| so_far.seconds::<S>() >= seconds(settings.steady_time))
            }
            Event::TooLong => match before {
                State::Lighting => self.gas_steady.is_none() && lasts(settings.lighting_time),
                State::Ready => lasts(settings.ready_time),
                _ => false,
            },
            Event::Start => command == Command::Start,
            // Gas that reads has begun the air changes anew already: the look at it here is a second lock on the same door.
            Event::Light => {
                command == Command::Light
                    && before == State::Ready
                    && inputs.permitted
                    && air_is_there()
                    && inputs.gas.watts() < self.shut()
                    && self.limit.is_settled_at(settings.lighting)
            }
            Event::Reset => command == Command::Reset,
            Event::Stop => command == Command::Stop,
            // Off is where the gas was shut for long, or where nothing is known yet: there only gas that reads counts.
            Event::GasPresent => {
                if before == State::Off {
                    self.gas_shut.is_none()
                } else {
                    !self.is_gas_shut()
                }
            }
            Event::PermissiveLost => !inputs.permitted,
            Event::AirLost => !air_is_there(),
            Event::Fault => fault,
        }
    }

    /// Whether the gas has read shut for the closing time, at the least time that can have passed.
    fn is_gas_shut(&self) -> bool {
        let least_share = S::one() - self.settings.clock_tolerance;
        self.gas_shut.is_some_and(|time| time.seconds::<S>() * least_share >= seconds(self.settings.closing_time))
    }

    /// Counts the air that is there by reading and by estimate both, for the least time that can have passed. Gas that
    /// was asked for or read within the closing time begins the count anew, and so does air that contradicts itself.
    pub(super) fn count_air(&mut self, inputs: &Inputs<K, S>, air: &Air<S>, elapsed: Option<u32>) {
        let least_share = S::one() - self.settings.clock_tolerance;
        let certain = air.least_flow() * self.limit.certain_share(inputs.air);
        match elapsed {
            Some(time) if self.is_gas_shut() && self.limit.believes_air(inputs.air) => {
                let certain = ActualVolumeFlow::from_cubic_meters_per_second(certain);
                self.changes.count(certain, duration(time) * least_share);
            }
            _ => self.changes.restart(),
        }
    }
}
