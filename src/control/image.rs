//! Numbers as bytes, for a chip's flash or a file, that show damage; a setpoint table as such.
//!
//! Every image is a mark of its kind, the version of the layout and a count as 16-bit numbers, the mark of the burner,
//! single-precision numbers, and the CRC-32 of all before it. All little-endian.

use core::fmt;

use super::setpoints::{InterpolationBound, MadeFor, Setpoint, SetpointTable};
use crate::limits::{Input, check};
use crate::quantity::{GaugePressure, NetHeatRate, PressureDifference};
use crate::scalar::Scalar;

const TABLE: [u8; 4] = *b"JWST";
/// Of both kinds of image: they go together.
const VERSION: u16 = 2;
/// Kind, version, count, mark of the burner.
const HEAD: usize = 4 + 2 + 2 + 4;
const WORD: usize = 4;
const CHECKSUM: usize = 4;
/// Air ratio, lowest heat, step, two bounds.
const TABLE_HEAD: usize = 5;

/// Why bytes are not the image they should be, or do not go with another.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum ImageError {
    /// They do not begin like a table.
    NotATable,
    /// They do not begin like a burner.
    NotABurner,
    /// They are of another version of the layout.
    Version {
        /// Which.
        found: u16,
    },
    /// The table has another number of rows.
    Rows {
        /// How many.
        found: u16,
    },
    /// Too few of them, or too many.
    Length {
        /// How many there must be.
        needed: usize,
    },
    /// The checksum does not fit: some byte has changed.
    Damaged,
    /// The checksum fits, but the numbers are no table that rises, or no burner.
    Content,
    /// The table is of another burner, or of this one under another site, gas or temperature.
    OtherBurner,
}

impl fmt::Display for ImageError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match *self {
            ImageError::NotATable => f.write_str("not a setpoint table"),
            ImageError::NotABurner => f.write_str("not a burner's image"),
            ImageError::Version { found } => write!(f, "an image of version {found}, wanted {VERSION}"),
            ImageError::Rows { found } => write!(f, "a setpoint table of {found} rows"),
            ImageError::Length { needed } => write!(f, "cut off or too long, wanted {needed} bytes"),
            ImageError::Damaged => f.write_str("damaged: the checksum does not fit"),
            ImageError::Content => f.write_str("the numbers are not what the image says they are"),
            ImageError::OtherBurner => f.write_str("the table is not of this burner: make both images of one file"),
        }
    }
}

impl core::error::Error for ImageError {}

/// CRC-32 of IEEE 802.3, bit by bit: it runs once, and a table of it would be larger than the setpoints.
#[derive(Clone, Copy, Debug)]
pub(super) struct Checksum(u32);

impl Checksum {
    pub fn new() -> Self {
        Self(!0)
    }

    #[must_use]
    pub fn with(self, bytes: &[u8]) -> Self {
        Self(bytes.iter().fold(self.0, |sum, &byte| {
            (0..8).fold(sum ^ u32::from(byte), |sum, _| (sum >> 1) ^ (0xEDB8_8320 & (sum & 1).wrapping_neg()))
        }))
    }

    pub fn value(self) -> u32 {
        !self.0
    }
}

/// Bytes of an image of so many numbers.
pub(super) const fn image_bytes(words: usize) -> usize {
    HEAD + WORD * words + CHECKSUM
}

/// Fills an image with what `write` puts.
pub(super) fn seal(
    image: &mut [u8],
    (kind, count, burner): ([u8; 4], u16, u32),
    words: usize,
    write: impl FnOnce(&mut dyn FnMut(f32)),
) -> Result<(), ImageError> {
    let length = ImageError::Length { needed: image_bytes(words) };
    if image.len() != image_bytes(words) {
        return Err(length);
    }
    let (content, end) = image.split_last_chunk_mut::<CHECKSUM>().ok_or(length)?;
    let (head, body) = content.split_at_mut_checked(HEAD).ok_or(length)?;
    let counts = [VERSION, count].into_iter().flat_map(u16::to_le_bytes);
    let from = kind.into_iter().chain(counts).chain(burner.to_le_bytes());
    head.iter_mut().zip(from).for_each(|(to, from)| *to = from);
    let mut places = body.chunks_exact_mut(WORD);
    write(&mut |word| {
        if let Some(place) = places.next().and_then(<[u8]>::first_chunk_mut) {
            *place = word.to_le_bytes();
        }
    });
    *end = Checksum::new().with(content).value().to_le_bytes();
    Ok(())
}

/// What an image says of itself; nothing of it is checked yet but kind and version.
pub(super) struct Sealed<'i> {
    pub count: u16,
    pub burner: u32,
    image: &'i [u8],
}

impl<'i> Sealed<'i> {
    /// `shortest` is how many bytes it has at least.
    pub fn open(image: &'i [u8], kind: [u8; 4], other: ImageError, shortest: usize) -> Result<Self, ImageError> {
        let length = ImageError::Length { needed: shortest };
        let (mark, rest) = image.split_first_chunk::<4>().ok_or(length)?;
        if *mark != kind {
            return Err(other);
        }
        let (version, rest) = rest.split_first_chunk::<2>().ok_or(length)?;
        let found = u16::from_le_bytes(*version);
        if found != VERSION {
            return Err(ImageError::Version { found });
        }
        let (count, rest) = rest.split_first_chunk::<2>().ok_or(length)?;
        let (burner, _) = rest.split_first_chunk::<4>().ok_or(length)?;
        Ok(Self { count: u16::from_le_bytes(*count), burner: u32::from_le_bytes(*burner), image })
    }

    /// Its numbers, if they are so many and none has changed.
    pub fn words(&self, words: usize) -> Result<impl Iterator<Item = f32> + use<'i>, ImageError> {
        let length = ImageError::Length { needed: image_bytes(words) };
        let (content, end) = self.image.split_last_chunk::<CHECKSUM>().ok_or(length)?;
        if self.image.len() != image_bytes(words) {
            return Err(length);
        }
        if Checksum::new().with(content).value() != u32::from_le_bytes(*end) {
            return Err(ImageError::Damaged);
        }
        let body = content.get(HEAD..).ok_or(length)?;
        let of = |word: &[u8]| word.first_chunk().map_or(f32::NAN, |&word| f32::from_le_bytes(word));
        Ok(body.chunks_exact(WORD).map(of))
    }
}

impl<const N: usize> SetpointTable<N, f32> {
    /// Bytes of an image.
    pub const IMAGE_BYTES: usize = image_bytes(TABLE_HEAD + 2 * N);

    /// Writes the table as bytes: mark `JWST`, version and rows as 16-bit numbers, the mark of its burner, then as
    /// single-precision numbers in SI its air ratio, lowest heat, step, both bounds and a pair a row (gauge pressure,
    /// air setting), and the CRC-32 of all before it. All little-endian.
    ///
    /// # Errors
    ///
    /// [`ImageError::Length`] unless `image` has [`IMAGE_BYTES`](Self::IMAGE_BYTES).
    ///
    /// # Examples
    ///
    /// ```
    /// use jetwright::control::{ImageError, MadeFor, Setpoint, SetpointTable};
    /// use jetwright::quantity::{GaugePressure, NetHeatRate};
    /// type Table = SetpointTable<2, f32>;
    /// let made_for = MadeFor { air_ratio: 1.05, burner: 0 };
    /// let kw = NetHeatRate::from_kilowatts;
    /// let table = Table::build(made_for, kw(10.0), kw(20.0), 3, |heat| {
    ///     Ok(Setpoint { gauge: GaugePressure::from_pascals(heat.watts()), air: 0.5 })
    /// }).unwrap();
    /// let mut image = [0; Table::IMAGE_BYTES];
    /// table.write_image(&mut image).unwrap();
    /// assert_eq!(Table::read_image(&image), Ok(table));
    /// image[30] ^= 1;
    /// assert_eq!(Table::read_image(&image), Err(ImageError::Damaged));
    /// ```
    pub fn write_image(&self, image: &mut [u8]) -> Result<(), ImageError> {
        let MadeFor { air_ratio, burner } = self.made_for;
        let head = [air_ratio, self.lowest.watts(), self.step, self.bound.gauge.pascals(), self.bound.air];
        let rows = self.rows.iter().flat_map(|row| [row.gauge.pascals(), row.air]);
        seal(image, (TABLE, N as u16, burner), TABLE_HEAD + 2 * N, |put| head.into_iter().chain(rows).for_each(put))
    }

    /// Reads a table back, and refuses bytes that are not the whole of one.
    ///
    /// # Errors
    ///
    /// [`ImageError`] says which way they are not.
    pub fn read_image(image: &[u8]) -> Result<Self, ImageError> {
        let sealed = Sealed::open(image, TABLE, ImageError::NotATable, Self::IMAGE_BYTES)?;
        if usize::from(sealed.count) != N {
            return Err(ImageError::Rows { found: sealed.count });
        }
        let mut words = sealed.words(TABLE_HEAD + 2 * N)?;
        let mut next = || words.next().unwrap_or(f32::NAN);
        let (air_ratio, lowest, step, gauge, air) = (next(), next(), next(), next(), next());
        let made_for = MadeFor { air_ratio, burner: sealed.burner };
        let bound = InterpolationBound { gauge: PressureDifference::from_pascals(gauge), air };
        let mut rows = [Setpoint::default(); N];
        for row in &mut rows {
            *row = Setpoint { gauge: GaugePressure::from_pascals(next()), air: next() };
        }
        let table = Self::stored(made_for, NetHeatRate::from_watts(lowest), step, rows, bound);
        if table.is_usable() { Ok(table) } else { Err(ImageError::Content) }
    }

    fn is_usable(&self) -> bool {
        let zero = 0.0;
        let heats = self.lowest.watts() > zero && self.step > zero && self.highest().watts().is_finite();
        let bounds = self.bound.gauge.pascals() >= zero && self.bound.air >= zero;
        let finite = self.rows.iter().all(|row| row.gauge.pascals().is_finite() && row.air.is_finite());
        let rising = self.rows.iter().zip(self.rows.iter().skip(1)).all(|(a, b)| a.gauge <= b.gauge && a.air <= b.air);
        let air_ratio = check(Input::AirRatio, self.made_for.air_ratio).is_ok();
        heats && bounds && finite && rising && air_ratio
    }
}

impl<const N: usize, S: Scalar> SetpointTable<N, S> {
    /// The table in single precision, with the rounding of its rows in its bound.
    #[must_use]
    pub fn to_single(&self) -> SetpointTable<N, f32> {
        let last = self.rows.last().copied().unwrap_or_default();
        let rounding = 8.0 * f32::EPSILON;
        let bound = InterpolationBound {
            gauge: PressureDifference::from_pascals(
                self.bound.gauge.pascals().to_f32() + rounding * last.gauge.pascals().to_f32(),
            ),
            air: self.bound.air.to_f32() + rounding * last.air.to_f32(),
        };
        let rows = self.rows.map(|row| Setpoint {
            gauge: GaugePressure::from_pascals(row.gauge.pascals().to_f32()),
            air: row.air.to_f32(),
        });
        let lowest = NetHeatRate::from_watts(self.lowest.watts().to_f32());
        let made_for = MadeFor { air_ratio: self.made_for.air_ratio.to_f32(), burner: self.made_for.burner };
        SetpointTable::stored(made_for, lowest, self.step.to_f32(), rows, bound)
    }
}

#[cfg(test)]
mod tests {
    use super::Checksum;

    #[test]
    fn the_checksum_is_the_standard_one() {
        // The check value of CRC-32 (ISO-HDLC, IEEE 802.3) in the catalogues: that of the nine digits (from memory).
        assert_eq!(Checksum::new().with(b"12345").with(b"6789").value(), 0xCBF4_3926);
    }
}
