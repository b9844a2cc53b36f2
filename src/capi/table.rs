//! The setpoint table from its image.

#![allow(unsafe_code, reason = "exported names count as unsafe, and an image comes as a pointer and a length")]

use core::mem::MaybeUninit;

use super::kept::{MADE, keep, kept};
use super::status::{JetwrightStatus, bytes, given, status, unless_answered};
use crate::control::{HAZARD_CAP, ImageHazard, Setpoint, SetpointImage, SetpointTable};
use crate::quantity::NetHeatRate;

/// Rows of a table of the C interface.
pub const JETWRIGHT_ROWS: usize = 17;

/// Words of a `JetwrightTable`.
pub const JETWRIGHT_TABLE_WORDS: usize = 41;

/// Most hazards of an image.
pub const JETWRIGHT_HAZARDS: usize = 16;

/// In place of a row: at every one.
pub const JETWRIGHT_EVERY_ROW: u8 = 255;

const _: () = assert!(JETWRIGHT_ROWS == crate::control::USUAL_ROWS);
const _: () = assert!(JETWRIGHT_HAZARDS == HAZARD_CAP && JETWRIGHT_EVERY_ROW == ImageHazard::EVERY_ROW);

pub(super) type Table = SetpointTable<JETWRIGHT_ROWS, f32>;

/// A table of settings, made by `jetwright_table_read`. Its words are not for reading.
#[derive(Debug)]
#[repr(C)]
pub struct JetwrightTable {
    /// Set when the table has been made.
    made: u32,
    /// The table.
    words: [MaybeUninit<u32>; JETWRIGHT_TABLE_WORDS],
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

/// Something that can hurt at the settings of a table, as the image says it.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[repr(C)]
pub struct JetwrightHazard {
    /// What it is.
    pub kind: u16,
    /// How much it can hurt; the more, the worse.
    pub severity: u8,
    /// The row it is met at, from 0, or `JETWRIGHT_EVERY_ROW`.
    pub row: u8,
    /// How much there is of it, in SI; zero for a kind that has no number.
    pub number: f32,
}

/// What can hurt at the settings of a table.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[repr(C)]
pub struct JetwrightHazards {
    /// How many there are; -1 where the image does not say, which is not the same as none.
    pub count: i32,
    /// The first `count` of these.
    pub hazards: [JetwrightHazard; JETWRIGHT_HAZARDS],
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
#[must_use]
#[unsafe(no_mangle)]
pub unsafe extern "C" fn jetwright_table_read(
    table: Option<&mut JetwrightTable>,
    image: *const u8,
    length: usize,
) -> JetwrightStatus {
    status(|| {
        let table = given(table)?;
        table.made = 0;
        // SAFETY: the caller answers for the length.
        let read = Table::read_image(unsafe { bytes(image, length) }?)?;
        keep(&mut table.words, read);
        table.made = MADE;
        Ok(())
    })
}

/// Lists what can hurt at a table's settings, from the same bytes, refused as by `jetwright_table_read`.
///
/// # Safety
///
/// `image` is null or points at `length` bytes.
#[must_use]
#[unsafe(no_mangle)]
pub unsafe extern "C" fn jetwright_table_hazards(
    hazards: Option<&mut JetwrightHazards>,
    image: *const u8,
    length: usize,
) -> JetwrightStatus {
    let unknown = JetwrightHazards { count: -1, ..JetwrightHazards::default() };
    let hazards = unless_answered(hazards, unknown);
    status(|| {
        let hazards = given(hazards)?;
        // SAFETY: the caller answers for the length.
        let read = SetpointImage::<JETWRIGHT_ROWS>::read(unsafe { bytes(image, length) }?)?;
        if let Some(read) = read.hazards {
            hazards.count = read.len() as i32;
            for (to, &ImageHazard { kind, severity, row, number }) in hazards.hazards.iter_mut().zip(&read) {
                *to = JetwrightHazard { kind, severity, row, number };
            }
        }
        Ok(())
    })
}

/// The net heats of the first and the last row, W: the smallest and the largest fire of a cross-limiter at most.
#[must_use]
#[unsafe(no_mangle)]
pub extern "C" fn jetwright_table_range(
    table: Option<&JetwrightTable>,
    lowest_w: Option<&mut f32>,
    highest_w: Option<&mut f32>,
) -> JetwrightStatus {
    let (lowest_w, highest_w) = (unless_answered(lowest_w, f32::NAN), unless_answered(highest_w, f32::NAN));
    status(|| {
        let (lowest, highest) = (given(lowest_w)?, given(highest_w)?);
        let table = given(table)?.table()?;
        (*lowest, *highest) = (table.lowest().watts(), table.highest().watts());
        Ok(())
    })
}

/// What to set for a net heat in W; the first or last row outside the table's range, the first for no number.
#[must_use]
#[unsafe(no_mangle)]
pub extern "C" fn jetwright_table_at(
    table: Option<&JetwrightTable>,
    heat_net_w: f32,
    set: Option<&mut JetwrightSetpoint>,
) -> JetwrightStatus {
    let set = unless_answered(set, JetwrightSetpoint { gauge_pa: f32::NAN, air: f32::NAN });
    status(|| {
        let set = given(set)?;
        *set = given(table)?.table()?.at(NetHeatRate::from_watts(heat_net_w)).into();
        Ok(())
    })
}

/// The air ratio that a table's settings give: the target of its cross-limiter.
#[must_use]
#[unsafe(no_mangle)]
pub extern "C" fn jetwright_table_air_ratio(
    table: Option<&JetwrightTable>,
    air_ratio: Option<&mut f32>,
) -> JetwrightStatus {
    let air_ratio = unless_answered(air_ratio, f32::NAN);
    status(|| {
        let air_ratio = given(air_ratio)?;
        *air_ratio = given(table)?.table()?.made_for().air_ratio;
        Ok(())
    })
}

impl JetwrightTable {
    /// One that is not made yet.
    #[must_use]
    pub const fn unmade() -> Self {
        Self { made: 0, words: [MaybeUninit::uninit(); JETWRIGHT_TABLE_WORDS] }
    }
}
