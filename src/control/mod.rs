//! For a controller of your own: a table of settings, air and gas that limit each other, and what not to believe.
//!
//! **This is process control, not a flame safeguard.** Nothing here watches a flame. A listed flame safeguard
//! stays in charge of the gas valve; what this module says about gas is a request the safeguard may refuse, and on
//! any fault the request is off.
//!
//! No physics is computed here. A [`SetpointTable`] holds what [`burner`](crate::burner) answered, for a lookup of a
//! few multiplications; [`CrossLimit`] lets air lead going up and gas lead going down, so that the mixture stays in
//! a band whatever the speed of the actuators.
//!
//! What can hurt, what stands against each hazard, and the test that holds it: the [safety argument](safety_argument).
//!
//! # The order of a firing
//!
//! Where each [`Event`] leads from each [`State`]; empty where it changes nothing. What happens in one tick goes
//! through the table from top to bottom, so that a fault has the last word.
//!
//! |                | Off       | PrePurge | Ready    | Lighting  | Firing    | PostPurge | Lockout |
//! |----------------|-----------|----------|----------|-----------|-----------|-----------|---------|
//! | Purged         |           | Ready    |          |           |           | Off       |         |
//! | GasFlowing     |           |          |          | Firing    |           |           |         |
//! | TooLong        |           |          | PrePurge | Lockout   |           |           |         |
//! | Start          | PrePurge  |          |          |           |           |           |         |
//! | Light          |           |          | Lighting |           |           |           |         |
//! | Reset          |           |          |          | PostPurge | PostPurge | Off       | Off     |
//! | Stop           |           | Off      | Off      | PostPurge | PostPurge |           |         |
//! | GasPresent     | PostPurge |          |          |           |           |           |         |
//! | PermissiveLost |           |          |          | Lockout   | Lockout   |           |         |
//! | AirLost        |           |          | PrePurge | Lockout   | Lockout   |           |         |
//! | Fault          | Lockout   | Lockout  | Lockout  | Lockout   | Lockout   | Lockout   | Lockout |
//!
//! When a [`Controller`] says that they happen, by the state at the tick's beginning:
//!
//! - Purged: in the two purges alone, when the [`AirChanges`] are enough.
//! - GasFlowing: when, while lighting, the gas has read what its regulator gives and the mixture has been in its band for
//!   the steady time without a break.
//! - TooLong: three things. While lighting, the lighting time is over and the gas does not read right; while ready, the
//!   waiting time is over; in every other state never.
//! - Start, Light, Reset: in the one tick in which the command is new. One that did nothing there is gone: it must be
//!   given again. Stop: in every tick that has it.
//! - Light needs five things more: the state is ready, the safeguard permits, the air is there and its changes still
//!   count, the gas reads less than a twentieth of the smallest heat input, and both actuators have had the time to settle
//!   at the lighting heat.
//! - GasPresent: the gas has not read shut for all of the closing time since it last read, was last asked for, or since
//!   the controller was made; while off, the gas reads now. A
//!   reading that cannot be believed counts as gas, and so does any tick with a sensor at fault.
//! - PermissiveLost: the safeguard does not permit gas.
//! - AirLost: the air reads less than its least, by either sensor; while ready, also when the air changes do not count any
//!   more.
//! - Fault: whatever [`Reason`] names.
//!
//! What may surprise:
//!
//! - The blower never stops while gas reads: what leads to off leads to the post-purge instead, and so does a first tick
//!   that reads gas. With a gas sensor that cannot be believed the blower runs on: **shut the gas valve by hand, then cut
//!   the power.**
//! - Air changes are counted from a closing time after the gas was last asked for or read.
//! - A fault while off starts the blower: lockout means air on.
//! - Start in the post-purge is swallowed; give it again when off. So is Light in every state but ready.
//! - Reset while lighting or firing acts as Stop; in the post-purge it ends that, once the gas has read shut.
//! - PermissiveLost does nothing but at the fire, where it locks out. Stop does not end a lockout.
//! - Reset ends a lockout for as long as nothing is at fault: the same tick locks out again where something still is.

mod air_changes;
mod burner_image;
mod clock;
mod control_error;
mod controller;
mod controller_settings;
mod crosslimit;
mod crosslimit_settings;
mod estimate;
mod estimate_spread;
mod fingerprint;
mod position;
mod reason;
mod record;
#[doc = include_str!("safety_argument.md")]
pub mod safety_argument {}
mod seal;
mod sensors;
mod sequence;
mod setpoint_image;
mod setpoints;
mod sum;
mod tick;
mod totals;

pub use air_changes::AirChanges;
pub use burner_image::{ChipBurner, ChipSetting, NAME_CAP, SETTING_CAP};
pub use control_error::ControlError;
pub use controller::Controller;
pub use controller_settings::{ControllerSettings, LONGEST_TICK};
pub use crosslimit::{CrossLimit, Limited, MixtureFault};
pub use crosslimit_settings::{AirRatioBand, CrossLimitSettings};
pub use estimate::{Estimate, Readings, air_without_gas};
pub use estimate_spread::{EstimateSpread, ReadingSpreads};
pub use position::Travel;
#[cfg(feature = "capi")]
pub(crate) use reason::ALL as REASONS;
pub use reason::Reason;
pub use record::{EventRecord, RECORD_CAP, Recorded};
pub use seal::ImageError;
pub use sensors::{Agreement, Sensor, SensorFault, SensorLimits};
pub use sequence::{Event, State};
pub use setpoint_image::{HAZARD_CAP, ImageHazard, SetpointImage};
pub use setpoints::{InterpolationBound, MadeFor, Setpoint, SetpointTable, USUAL_ROWS};
pub use tick::{Command, Inputs, Outputs};
pub use totals::Totals;

#[cfg(test)]
mod tests {
    use super::{Event, State};
    use std::format;
    use std::string::String;

    #[test]
    fn the_table_of_the_documentation_is_the_one_in_force() {
        let lines = include_str!("mod.rs").lines().filter_map(|line| line.strip_prefix("//! | "));
        let mut met = 0;
        for (line, event) in lines.skip(1).zip(Event::ALL) {
            let mut cells = line.split('|').map(str::trim);
            assert_eq!(cells.next(), Some(format!("{event:?}").as_str()));
            for (cell, state) in cells.zip(State::ALL) {
                let next = state.after(event);
                let told = if next == state && event != Event::Fault { String::new() } else { format!("{next:?}") };
                assert_eq!(cell, told, "{state:?} {event:?}");
                met += 1;
            }
        }
        assert_eq!(met, Event::ALL.len() * State::ALL.len());
    }
}
