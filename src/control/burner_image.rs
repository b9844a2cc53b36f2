//! A burner as bytes: worked out on the host in double precision, read by a chip in single.

use heapless::Vec;

use super::seal::{BURNER, ImageError, WORD, burner_id, image_bytes, numbers, open, seal};
use super::setpoints::SetpointTable;
use crate::burner::{Burner, Conditions};
use crate::quantity::{GaugePressure, Temperature};
use crate::scalar::Scalar;
use crate::words::{Words, words};

/// Most settings an image carries.
pub const SETTING_CAP: usize = 12;
/// Longest name of a setting, bytes.
pub const NAME_CAP: usize = 16;

const MAGIC: [u8; 4] = *b"JWBN";

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

impl<S: Scalar> ChipBurner<S> {
    fn count(&self) -> usize {
        let mut count = 0;
        self.write(&mut |_| count += 1);
        count
    }

    /// Bytes the image takes.
    #[must_use]
    pub fn image_bytes(&self) -> usize {
        image_bytes(1, WORD * self.count())
    }

    /// The id of the burner and what it runs under, as they are now: the CRC-32 of their numbers. A table made for
    /// them carries the same.
    #[must_use]
    pub fn burner_id(&self) -> u32 {
        burner_id(&self.burner, &self.conditions)
    }

    /// Refuses a table that is not made for this burner. Ask before its conditions are replaced by today's.
    ///
    /// # Errors
    ///
    /// [`ImageError::OtherBurner`].
    pub fn check_table<const N: usize>(&self, table: &SetpointTable<N, f32>) -> Result<(), ImageError> {
        table.made_for().check_burner(self.burner_id())
    }

    /// Writes the burner as bytes, with its own [`burner_id`](Self::burner_id).
    ///
    /// # Errors
    ///
    /// [`ImageError::Length`] unless `image` has [`image_bytes`](Self::image_bytes).
    pub fn write_image(&self, image: &mut [u8]) -> Result<(), ImageError> {
        let contents = WORD * self.count();
        seal(image, MAGIC, self.burner_id(), image_bytes(1, contents), |writer| {
            writer.required(BURNER, contents);
            self.write(&mut |word| writer.word(word));
        })
    }

    /// Reads a burner back, and refuses bytes that are not the whole of one.
    ///
    /// # Errors
    ///
    /// [`ImageError`] says which way they are not.
    pub fn read_image(image: &[u8]) -> Result<Self, ImageError> {
        let opened = open(image, MAGIC, ImageError::NotABurner, [BURNER])?;
        let [contents] = opened.sections;
        let mut numbers = numbers(contents.ok_or(ImageError::Content)?)?;
        match Self::read(&mut || numbers.next()) {
            Some(burner) if numbers.next().is_none() && burner.burner_id() == opened.burner => Ok(burner),
            _ => Err(ImageError::Content),
        }
    }
}
