//! The order of a firing, as one table: from off through purging to the fire and out again.
//!
//! Not a flame safeguard. [`State::asks_for_gas`] is a request; a listed safeguard decides.

/// Where the controller is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[repr(u8)]
pub enum State {
    /// Nothing runs.
    Off,
    /// Air on, counting its changes; no gas.
    PrePurge,
    /// Purged, air and gas set for lighting; no gas, waiting for a person.
    Ready,
    /// Gas asked for, and not there yet.
    Lighting,
    /// Gas asked for, following the heat wanted.
    Firing,
    /// Gas off, air still on to carry the fire's gases out and keep heat from the blower.
    PostPurge,
    /// Something was at fault: gas off, air on, until a person resets.
    Lockout,
}

/// What can happen in a tick, in the order it goes through the table: a fault has the last word.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[repr(u8)]
pub enum Event {
    /// The air has been changed often enough since it was last lost.
    Purged,
    /// The gas reads what it was set to.
    GasFlowing,
    /// The state has lasted longer than it may.
    TooLong,
    /// A person wants the air on.
    Start,
    /// A person wants the fire, with the actuators where they must be and the safeguard willing.
    Light,
    /// A person has looked at what was at fault.
    Reset,
    /// A person wants the fire off.
    Stop,
    /// Gas reads, or has not read shut for the closing time since it last did or was asked for.
    GasPresent,
    /// The safeguard does not permit gas.
    PermissiveLost,
    /// There is not enough air.
    AirLost,
    /// A reading, the clock, the mixture or the order of things cannot be trusted.
    Fault,
}

use State::{Firing, Lighting, Lockout, Off, PostPurge, PrePurge, Ready};

/// Where each event leads from each state: a row a state, a column an event, both in the order of their lists.
#[rustfmt::skip]
const NEXT: [[State; 11]; 7] = [
    // Purged    GasFlowing  TooLong    Start      Light      Reset      Stop       GasPresent  PermissiveLost  AirLost    Fault
    [Off,      Off,        Off,       PrePurge,  Off,       Off,       Off,       PostPurge,  Off,            Off,       Lockout], // Off
    [Ready,    PrePurge,   PrePurge,  PrePurge,  PrePurge,  PrePurge,  Off,       PrePurge,   PrePurge,       PrePurge,  Lockout], // PrePurge
    [Ready,    Ready,      PrePurge,  Ready,     Lighting,  Ready,     Off,       Ready,      Ready,          PrePurge,  Lockout], // Ready
    [Lighting, Firing,     Lockout,   Lighting,  Lighting,  PostPurge, PostPurge, Lighting,   Lockout,        Lockout,   Lockout], // Lighting
    [Firing,   Firing,     Firing,    Firing,    Firing,    PostPurge, PostPurge, Firing,     Lockout,        Lockout,   Lockout], // Firing
    [Off,      PostPurge,  PostPurge, PostPurge, PostPurge, Off,       PostPurge, PostPurge,  PostPurge,      PostPurge, Lockout], // PostPurge
    [Lockout,  Lockout,    Lockout,   Lockout,   Lockout,   Off,       Lockout,   Lockout,    Lockout,        Lockout,   Lockout], // Lockout
];

impl State {
    /// Every state, in the order of the table's rows.
    pub const ALL: [State; 7] = [Off, PrePurge, Ready, Lighting, Firing, PostPurge, Lockout];

    /// Where an event leads.
    ///
    /// # Examples
    ///
    /// ```
    /// use jetwright::control::{Event, State};
    /// assert_eq!(State::Ready.after(Event::Light), State::Lighting);
    /// // There is one way to gas, and it begins with the air.
    /// assert_eq!(State::Off.after(Event::Light), State::Off);
    /// assert_eq!(State::Firing.after(Event::Fault), State::Lockout);
    /// ```
    #[must_use]
    pub fn after(self, event: Event) -> State {
        let row = NEXT.get(self as usize);
        row.and_then(|row| row.get(event as usize)).copied().unwrap_or(Lockout)
    }

    /// Whether gas is asked for, which a listed safeguard may refuse.
    #[must_use]
    pub fn asks_for_gas(self) -> bool {
        matches!(self, Lighting | Firing)
    }

    /// Whether the blower is to run.
    #[must_use]
    pub fn wants_air(self) -> bool {
        !matches!(self, Off)
    }
}

impl Event {
    /// Every event, in the order of the table's columns.
    pub const ALL: [Event; 11] = [
        Event::Purged,
        Event::GasFlowing,
        Event::TooLong,
        Event::Start,
        Event::Light,
        Event::Reset,
        Event::Stop,
        Event::GasPresent,
        Event::PermissiveLost,
        Event::AirLost,
        Event::Fault,
    ];
}

#[cfg(test)]
mod tests {
    use super::{Event, State};

    #[test]
    fn the_table_is_read_in_the_order_of_its_lists() {
        assert!(State::ALL.iter().enumerate().all(|(index, &state)| state as usize == index));
        assert!(Event::ALL.iter().enumerate().all(|(index, &event)| event as usize == index));
    }

    #[test]
    fn faults_and_lost_air_end_every_request_for_gas() {
        for state in State::ALL {
            assert_eq!(state.after(Event::Fault), State::Lockout);
            for event in [Event::AirLost, Event::PermissiveLost, Event::Stop, Event::Reset] {
                assert!(!state.after(event).asks_for_gas() || !state.asks_for_gas(), "{state:?} {event:?}");
            }
        }
    }

    #[test]
    fn the_only_way_to_gas_leads_from_off_through_blowing_and_ready() {
        for state in State::ALL {
            for event in Event::ALL {
                let next = state.after(event);
                if next.asks_for_gas() && !state.asks_for_gas() {
                    assert_eq!((state, event, next), (State::Ready, Event::Light, State::Lighting));
                }
                if next == State::Ready && state != State::Ready {
                    assert_eq!((state, event), (State::PrePurge, Event::Purged));
                }
                if state == State::Lockout && next != State::Lockout {
                    assert_eq!((event, next), (Event::Reset, State::Off));
                }
            }
        }
    }
}
