//! The setpoint table from its image.

#![allow(unsafe_code, reason = "exported names count as unsafe, and an image comes as a pointer and a length")]

use super::kept::{MADE, keep, kept};
use super::status::{JetwrightStatus, bytes, given, status};
use crate::control::{Setpoint, SetpointTable};
use crate::quantity::NetHeatRate;

/// Rows of a table of the C interface.
pub const JETWRIGHT_ROWS: usize = 17;

/// Words of a `JetwrightTable`.
pub const JETWRIGHT_TABLE_WORDS: usize = 41;

const _: () = assert!(JETWRIGHT_ROWS == crate::control::USUAL_ROWS);

pub(super) type Table = SetpointTable<JETWRIGHT_ROWS, f32>;

/// A table of settings, made by `jetwright_table_read`. Its words are not for reading.
#[derive(Clone, Copy, Debug)]
#[repr(C)]
pub struct JetwrightTable {
    /// Set when the table has been made.
    pub made: u32,
    /// The table.
    pub words: [u32; JETWRIGHT_TABLE_WORDS],
}

/// What to set for a heat.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[repr(C)]
pub struct JetwrightSetpoint {
    /// Gauge pressure before the jet, Pa.
    pub gauge_pa: f32,
    /// What the air's actuator is set to, such as a damper's opening.
    pub air: f32,
}

impl From<Setpoint<f32>> for JetwrightSetpoint {
    fn from(set: Setpoint<f32>) -> Self {
        Self { gauge_pa: set.gauge.pascals(), air: set.air }
    }
}

impl JetwrightTable {
    pub(super) fn table(&self) -> Result<&Table, JetwrightStatus> {
        kept(self.made, &self.words)
    }
}

/// Reads a table from the bytes that `jetwright setpoints FILE --image OUT` has written.
///
/// A damaged, wrong-version or cut-off image is refused, each with a status of its own.
///
/// # Safety
///
/// `image` is null or points at `length` bytes.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn jetwright_table_read(
    table: Option<&mut JetwrightTable>,
    image: *const u8,
    length: usize,
) -> JetwrightStatus {
    status(|| {
        let table = given(table)?;
        // SAFETY: the caller answers for the length.
        let read = Table::read_image(unsafe { bytes(image, length) }?)?;
        keep(&mut table.words, read);
        table.made = MADE;
        Ok(())
    })
}

/// The net heats of the first and the last row, W: the smallest and the largest fire of a cross-limiter at most.
#[unsafe(no_mangle)]
pub extern "C" fn jetwright_table_range(
    table: Option<&JetwrightTable>,
    lowest_w: Option<&mut f32>,
    highest_w: Option<&mut f32>,
) -> JetwrightStatus {
    status(|| {
        let (lowest, highest) = (given(lowest_w)?, given(highest_w)?);
        let table = given(table)?.table()?;
        (*lowest, *highest) = (table.lowest().watts(), table.highest().watts());
        Ok(())
    })
}

/// What to set for a net heat in W; the first or last row outside the table's range, the first for no number.
#[unsafe(no_mangle)]
pub extern "C" fn jetwright_table_at(
    table: Option<&JetwrightTable>,
    heat_net_w: f32,
    set: Option<&mut JetwrightSetpoint>,
) -> JetwrightStatus {
    status(|| {
        let set = given(set)?;
        *set = given(table)?.table()?.at(NetHeatRate::from_watts(heat_net_w)).into();
        Ok(())
    })
}

/// The air ratio that a table's settings give: the target of its cross-limiter.
#[unsafe(no_mangle)]
pub extern "C" fn jetwright_table_air_ratio(
    table: Option<&JetwrightTable>,
    air_ratio: Option<&mut f32>,
) -> JetwrightStatus {
    status(|| {
        let air_ratio = given(air_ratio)?;
        *air_ratio = given(table)?.table()?.made_for().air_ratio;
        Ok(())
    })
}
