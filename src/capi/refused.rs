//! Which setting a `_make` function refused.

use core::ffi::c_char;

use super::status::JetwrightStatus;
use crate::control::ControlError;
use crate::limits::Input;

/// Bytes of a name, its zero at the end with them.
pub const JETWRIGHT_NAME_BYTES: usize = 48;

/// Which setting a `_make` function refused, in the words of the Rust errors: print it while you set up.
#[derive(Clone, Copy, Debug)]
#[repr(C)]
pub struct JetwrightRefused {
    /// What the setting is called, ended by a zero; empty where no setting was refused.
    pub name: [c_char; JETWRIGHT_NAME_BYTES],
    /// Of a sensor's limit, which sensor, from 0; else -1.
    pub sensor: i32,
}

/// Puts in what an error of a `_make` function names, or nothing. The call's status comes back.
pub(super) fn told(refused: Option<&mut JetwrightRefused>, error: ControlError) -> JetwrightStatus {
    if let Some(refused) = refused {
        let (name, sensor) = match error {
            ControlError::Setting { name } => (name, -1),
            ControlError::Sensor { place, name } => (name, place as i32),
            ControlError::BandTooNarrow { .. } => ("air-ratio band", -1),
            // The one number of a controller that the rooms above look at: the names of all would be 10 kB of a chip.
            ControlError::Refused(_) => (const { Input::AirRatio.range().name }, -1),
            ControlError::NotRising { .. } => ("", -1),
        };
        put(refused, name, sensor);
    }
    error.into()
}

/// With no name in it yet, so that what an earlier call has written is not read as this one's.
pub(super) fn cleared(mut refused: Option<&mut JetwrightRefused>) -> Option<&mut JetwrightRefused> {
    if let Some(refused) = &mut refused {
        put(refused, "", -1);
    }
    refused
}

fn put(refused: &mut JetwrightRefused, name: &str, sensor: i32) {
    let most = JETWRIGHT_NAME_BYTES - 1;
    let letters = name.bytes().take(most).chain(core::iter::repeat(0));
    refused.name.iter_mut().zip(letters).for_each(|(place, letter)| *place = letter as c_char);
    refused.sensor = sensor;
}
