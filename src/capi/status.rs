//! What every function returns, and what it makes of pointers.

#![allow(unsafe_code, reason = "an image comes as a pointer and a length")]

use crate::control::{ControlError, ImageError};
use crate::error::Error;

/// How a call went. Every call writes what it should: with any status but `Ok` no permission, gas off, `NAN` for a
/// measurement, and what a `_make` or `_read` function should have made is not made.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[repr(u32)]
pub enum JetwrightStatus {
    /// The answer is written.
    Ok = 0,
    /// A pointer is null.
    NullPointer = 1,
    /// The struct was not made by its `_make` or `_read` function.
    NotMade = 2,
    /// A number is not finite.
    NotFinite = 3,
    /// A number is outside the accepted range.
    OutOfRange = 4,
    /// An enumerator is none of those listed.
    Unknown = 5,
    /// The gas would be a liquid.
    Liquid = 6,
    /// No answer within the accepted range.
    NoSolution = 7,
    /// A setting is not usable, or the settings do not go together; the `_make` functions say which.
    Setting = 8,
    /// The air-ratio band is too narrow for the tolerances.
    BandTooNarrow = 9,
    /// The image does not begin like a table.
    ImageNotATable = 10,
    /// The image is of another version.
    ImageVersion = 11,
    /// The image has another number of rows than `JETWRIGHT_ROWS`.
    ImageRows = 12,
    /// The image is cut off, or too long.
    ImageLength = 13,
    /// The image is damaged.
    ImageDamaged = 14,
    /// The image's numbers are no table, or no burner.
    ImageContent = 15,
    /// The image does not begin like a burner.
    ImageNotABurner = 16,
    /// The table is not of this burner: make both images of one file.
    ImageOtherBurner = 17,
    /// The table of species has no such property of a gas, and the answer needs it.
    MissingProperty = 18,
    /// The image has a part that this program does not know and must not pass over.
    ImageSection = 19,
    /// The controller is in use by an interrupted call or another thread: this one asks for no gas.
    Busy = 20,
    /// The controller's memory is not as the last call left it: it asks for no gas until it is made anew.
    Damaged = 21,
    /// The header is of another version of the library than the library, or their structs differ in size.
    Abi = 22,
}

impl From<Error> for JetwrightStatus {
    fn from(error: Error) -> Self {
        match error {
            Error::NotFinite { .. } => JetwrightStatus::NotFinite,
            Error::OutOfRange { .. } => JetwrightStatus::OutOfRange,
            Error::Liquid { .. } | Error::NotLiquefied { .. } => JetwrightStatus::Liquid,
            Error::MissingProperty { .. } => JetwrightStatus::MissingProperty,
            Error::NoSolution { .. } | Error::NotConverged { .. } => JetwrightStatus::NoSolution,
            Error::InvertedPair { .. }
            | Error::FractionsSum { .. }
            | Error::CannotBurn
            | Error::TooDilute { .. }
            | Error::NotMeasured { .. }
            | Error::Points { .. } => JetwrightStatus::Setting,
        }
    }
}

impl From<ControlError> for JetwrightStatus {
    fn from(error: ControlError) -> Self {
        match error {
            ControlError::Refused(error) => error.into(),
            ControlError::BandTooNarrow { .. } => JetwrightStatus::BandTooNarrow,
            ControlError::NotRising { .. } | ControlError::Setting { .. } | ControlError::Sensor { .. } => {
                JetwrightStatus::Setting
            }
        }
    }
}

impl From<ImageError> for JetwrightStatus {
    fn from(error: ImageError) -> Self {
        match error {
            ImageError::NotATable => JetwrightStatus::ImageNotATable,
            ImageError::Version { .. } => JetwrightStatus::ImageVersion,
            ImageError::Rows { .. } => JetwrightStatus::ImageRows,
            ImageError::Length { .. } => JetwrightStatus::ImageLength,
            ImageError::Damaged => JetwrightStatus::ImageDamaged,
            ImageError::Content => JetwrightStatus::ImageContent,
            ImageError::NotABurner => JetwrightStatus::ImageNotABurner,
            ImageError::OtherBurner => JetwrightStatus::ImageOtherBurner,
            ImageError::Section { .. } => JetwrightStatus::ImageSection,
        }
    }
}

/// A function's work, with what it returns early made into its status.
pub(super) fn status(work: impl FnOnce() -> Result<(), JetwrightStatus>) -> JetwrightStatus {
    work().err().unwrap_or(JetwrightStatus::Ok)
}

/// What a pointer points at.
pub(super) fn given<T>(pointer: Option<T>) -> Result<T, JetwrightStatus> {
    pointer.ok_or(JetwrightStatus::NullPointer)
}

/// Writes what stands there where the call does not get to its answer.
pub(super) fn unless_answered<T>(mut place: Option<&mut T>, safe: T) -> Option<&mut T> {
    if let Some(place) = &mut place {
        **place = safe;
    }
    place
}

/// The bytes of an image.
///
/// # Safety
///
/// `image` is null or points at `length` bytes, which live and stay as they are for `'b`.
pub(super) unsafe fn bytes<'b>(image: *const u8, length: usize) -> Result<&'b [u8], JetwrightStatus> {
    if image.is_null() {
        return Err(JetwrightStatus::NullPointer);
    }
    // SAFETY: not null, and the caller answers for the length.
    Ok(unsafe { core::slice::from_raw_parts(image, length) })
}
