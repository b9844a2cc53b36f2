//! A burner as bytes: worked out on the host in double precision, read by a chip in single.

use core::fmt;

use heapless::Vec;

use super::image::checksum;
use crate::burner::{Burner, Conditions};
use crate::quantity::{GaugePressure, Temperature};
use crate::scalar::Scalar;
use crate::words::{Words, words};

/// Most settings an image carries.
pub const SETTING_CAP: usize = 12;
/// Longest name of a setting, bytes.
pub const NAME_CAP: usize = 16;

const MARK: [u8; 4] = *b"JWBN";
const VERSION: u16 = 1;
const WORD: usize = 4;
/// Mark, version, count of words.
const HEAD: usize = 4 + 2 + 2;
const CHECKSUM: usize = 4;

/// A setting of the burner file, worked out.
#[derive(Clone, Debug, PartialEq)]
pub struct ChipSetting<S = f64> {
    /// What it is called, cut to fit.
    pub name: Vec<u8, NAME_CAP>,
    /// What the gauge is set to.
    pub gauge: GaugePressure<S>,
    /// What the line leaves of it at the jet.
    pub at_jet: GaugePressure<S>,
    /// Temperature of the gas there.
    pub gas_temperature: Temperature<S>,
    /// Damper opening.
    pub opening: S,
    /// Temperature of the chamber at it.
    pub chamber_temperature: Temperature<S>,
}

words!(ChipSetting { name, gauge, at_jet, gas_temperature, opening, chamber_temperature });

/// A burner, what it runs under, and its settings.
#[derive(Clone, Debug, PartialEq)]
pub struct ChipBurner<S = f64> {
    /// The burner.
    pub burner: Burner<S>,
    /// Site, gas and temperatures of the burner file; a controller with sensors replaces them by readings.
    pub conditions: Conditions<S>,
    /// Its settings.
    pub settings: Vec<ChipSetting<S>, SETTING_CAP>,
}

words!(ChipBurner { burner, conditions, settings });

/// Why bytes are not a burner.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum ChipImageError {
    /// They do not begin like one.
    NotABurner,
    /// They are of another version of the layout.
    Version {
        /// Which.
        found: u16,
    },
    /// Too few of them, or too many.
    Length {
        /// How many there must be.
        needed: usize,
    },
    /// The checksum does not fit: some byte has changed.
    Damaged,
    /// The checksum fits, but the numbers are no burner.
    Content,
}

impl fmt::Display for ChipImageError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match *self {
            ChipImageError::NotABurner => f.write_str("not a burner's image"),
            ChipImageError::Version { found } => write!(f, "a burner's image of version {found}, wanted {VERSION}"),
            ChipImageError::Length { needed } => write!(f, "cut off or too long, wanted {needed} bytes"),
            ChipImageError::Damaged => f.write_str("damaged: the checksum does not fit"),
            ChipImageError::Content => f.write_str("the numbers are no burner"),
        }
    }
}

impl core::error::Error for ChipImageError {}

impl<S: Scalar> ChipBurner<S> {
    /// Bytes the image takes.
    #[must_use]
    pub fn image_bytes(&self) -> usize {
        let mut count = 0;
        self.write(&mut |_| count += 1);
        HEAD + WORD * count + CHECKSUM
    }

    /// Writes the burner as bytes: mark `JWBN`, version and count of words as 16-bit numbers, the words as
    /// single-precision numbers, and the CRC-32 of all before it. All little-endian.
    ///
    /// # Errors
    ///
    /// [`ChipImageError::Length`] unless `image` has [`image_bytes`](Self::image_bytes).
    pub fn write_image(&self, image: &mut [u8]) -> Result<(), ChipImageError> {
        let needed = self.image_bytes();
        let length = ChipImageError::Length { needed };
        if image.len() != needed {
            return Err(length);
        }
        let (content, end) = image.split_last_chunk_mut::<CHECKSUM>().ok_or(length)?;
        let (head, body) = content.split_at_mut_checked(HEAD).ok_or(length)?;
        let counts = [VERSION, (body.len() / WORD) as u16].into_iter().flat_map(u16::to_le_bytes);
        head.iter_mut().zip(MARK.into_iter().chain(counts)).for_each(|(to, from)| *to = from);
        let mut places = body.chunks_exact_mut(WORD);
        self.write(&mut |word| {
            if let Some(place) = places.next() {
                place.copy_from_slice(&word.to_le_bytes());
            }
        });
        *end = checksum(content).to_le_bytes();
        Ok(())
    }

    /// Reads a burner back, and refuses bytes that are not the whole of one.
    ///
    /// # Errors
    ///
    /// [`ChipImageError`] says which way they are not.
    pub fn read_image(image: &[u8]) -> Result<Self, ChipImageError> {
        let shortest = ChipImageError::Length { needed: HEAD + CHECKSUM };
        let (mark, rest) = image.split_first_chunk::<4>().ok_or(shortest)?;
        if *mark != MARK {
            return Err(ChipImageError::NotABurner);
        }
        let (version, rest) = rest.split_first_chunk::<2>().ok_or(shortest)?;
        let found = u16::from_le_bytes(*version);
        if found != VERSION {
            return Err(ChipImageError::Version { found });
        }
        let (count, rest) = rest.split_first_chunk::<2>().ok_or(shortest)?;
        let needed = HEAD + WORD * usize::from(u16::from_le_bytes(*count)) + CHECKSUM;
        let length = ChipImageError::Length { needed };
        if image.len() != needed {
            return Err(length);
        }
        let (content, end) = image.split_last_chunk::<CHECKSUM>().ok_or(length)?;
        if checksum(content) != u32::from_le_bytes(*end) {
            return Err(ChipImageError::Damaged);
        }
        let (body, _) = rest.split_last_chunk::<CHECKSUM>().ok_or(length)?;
        let mut words =
            body.chunks_exact(WORD).map(|word| word.first_chunk().map_or(f32::NAN, |&word| f32::from_le_bytes(word)));
        let burner = Self::read(&mut || words.next()).ok_or(ChipImageError::Content)?;
        if words.next().is_some() { Err(ChipImageError::Content) } else { Ok(burner) }
    }
}
