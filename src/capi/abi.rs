//! Whether the header and the library are of one version.

#![allow(unsafe_code, reason = "exported names count as unsafe")]

use super::controller::{JetwrightController, JetwrightControllerSettings, JetwrightInputs, JetwrightOutputs};
use super::estimate::JetwrightBurner;
use super::limiting::{JetwrightAirChanges, JetwrightCrossLimit, JetwrightCrossLimitSettings, JetwrightTotals};
use super::record::JetwrightRecord;
use super::status::JetwrightStatus;
use super::table::{JetwrightHazards, JetwrightTable};

/// Counts up with every change of a struct or a function of this header.
pub const JETWRIGHT_ABI: u32 = 2;

/// Sizes of the structs that a program keeps, each times its place: what the header's macro adds up.
const BYTES: usize = size_of::<JetwrightController>()
    + 2 * size_of::<JetwrightTable>()
    + 3 * size_of::<JetwrightBurner>()
    + 4 * size_of::<JetwrightCrossLimit>()
    + 5 * size_of::<JetwrightAirChanges>()
    + 6 * size_of::<JetwrightTotals>()
    + 7 * size_of::<JetwrightInputs>()
    + 8 * size_of::<JetwrightOutputs>()
    + 9 * size_of::<JetwrightControllerSettings>()
    + 10 * size_of::<JetwrightCrossLimitSettings>()
    + 11 * size_of::<JetwrightRecord>()
    + 12 * size_of::<JetwrightHazards>();

/// Whether the library is the one of this header: call it first, as `JETWRIGHT_CHECK_ABI()`. `Abi` where it is not.
#[must_use]
#[unsafe(no_mangle)]
pub extern "C" fn jetwright_check_abi(abi: u32, bytes: usize) -> JetwrightStatus {
    if abi == JETWRIGHT_ABI && bytes == BYTES { JetwrightStatus::Ok } else { JetwrightStatus::Abi }
}
