//! What a controller went through last, and causes in words.

#![allow(unsafe_code, reason = "exported names count as unsafe")]

use core::ffi::c_char;

use super::controller::{JetwrightController, JetwrightState};
use super::status::{JetwrightStatus, given, status, unless_answered};
use crate::control::{REASONS, RECORD_CAP, Reason};

/// Events of a `JetwrightRecord`.
pub const JETWRIGHT_RECORD_EVENTS: usize = 8;

const _: () = assert!(JETWRIGHT_RECORD_EVENTS == RECORD_CAP);

/// A change of state, and what was read then.
#[derive(Clone, Copy, Debug)]
#[repr(C)]
pub struct JetwrightEvent {
    /// The counter of milliseconds.
    pub now_ms: u32,
    /// Where the controller was.
    pub from: JetwrightState,
    /// Where it went.
    pub to: JetwrightState,
    /// What locked out: zero for nothing, else a number that `jetwright_cause_text` puts into words.
    pub cause: u32,
    /// The sensor of the cause; -1 for none of them.
    pub cause_sensor: i32,
    /// The sensors' readings.
    pub readings: [f32; 3],
    /// Heat of the gas as it was read, W.
    pub gas_w: f32,
    /// Heat of the air as it was read, W.
    pub air_w: f32,
}

/// The last changes of state, from the oldest to the newest.
#[derive(Clone, Copy, Debug)]
#[repr(C)]
pub struct JetwrightRecord {
    /// How many there are.
    pub count: u32,
    /// The first `count` of these.
    pub events: [JetwrightEvent; JETWRIGHT_RECORD_EVENTS],
}

impl JetwrightRecord {
    const EMPTY: Self = Self {
        count: 0,
        events: [JetwrightEvent {
            now_ms: 0,
            from: JetwrightState::Off,
            to: JetwrightState::Off,
            cause: 0,
            cause_sensor: -1,
            readings: [0.0; 3],
            gas_w: 0.0,
            air_w: 0.0,
        }; JETWRIGHT_RECORD_EVENTS],
    };
}

pub(super) fn code(reason: Option<Reason>) -> u32 {
    reason.map_or(0, |reason| u32::from(reason.code()))
}

pub(super) fn sensor(reason: Option<Reason>) -> i32 {
    reason.and_then(Reason::sensor).map_or(-1, i32::from)
}

/// The last changes of state of a controller, each with what was read then.
#[must_use]
#[unsafe(no_mangle)]
pub extern "C" fn jetwright_controller_record(
    controller: Option<&JetwrightController>,
    record: Option<&mut JetwrightRecord>,
) -> JetwrightStatus {
    let record = unless_answered(record, JetwrightRecord::EMPTY);
    status(|| {
        let (controller, record) = (given(controller)?, given(record)?);
        let desk = controller.idle()?;
        for (place, event) in record.events.iter_mut().zip(desk.record().iter()) {
            record.count += 1;
            *place = JetwrightEvent {
                now_ms: event.now,
                from: event.from.into(),
                to: event.to.into(),
                cause: code(event.cause),
                cause_sensor: sensor(event.cause),
                readings: event.readings,
                gas_w: event.gas.watts(),
                air_w: event.air.watts(),
            };
        }
        Ok(())
    })
}

/// A cause in words, ended by a zero; for a number that is none, words that say so. Never null.
#[must_use]
#[unsafe(no_mangle)]
pub extern "C" fn jetwright_cause_text(cause: u32) -> *const c_char {
    let found = REASONS.iter().find(|reason| u32::from(reason.code()) == cause);
    let none = if cause == 0 { c"nothing" } else { c"no cause has this number" };
    found.map_or(none, |reason| reason.text()).as_ptr()
}
