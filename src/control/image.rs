//! A table as bytes, for a chip's flash or a file, that shows damage.

use core::fmt;

use super::setpoints::{InterpolationBound, Setpoint, SetpointTable};
use crate::quantity::{GaugePressure, NetHeatRate, PressureDifference};
use crate::scalar::Scalar;

const MARK: [u8; 4] = *b"JWST";
const VERSION: u16 = 1;
/// Mark, version, rows, lowest heat, step, two bounds.
const HEAD: usize = 4 + 2 + 2 + 4 * 4;
const ROW: usize = 8;
const CHECKSUM: usize = 4;

/// Why bytes are not a table.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum ImageError {
    /// They do not begin like one.
    NotATable,
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
    /// The checksum fits, but the numbers are no table: not finite, or not rising.
    Content,
}

impl fmt::Display for ImageError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match *self {
            ImageError::NotATable => f.write_str("not a setpoint table"),
            ImageError::Version { found } => write!(f, "a setpoint table of version {found}, wanted {VERSION}"),
            ImageError::Rows { found } => write!(f, "a setpoint table of {found} rows"),
            ImageError::Length { needed } => write!(f, "cut off or too long, wanted {needed} bytes"),
            ImageError::Damaged => f.write_str("damaged: the checksum does not fit"),
            ImageError::Content => f.write_str("the numbers are no setpoint table"),
        }
    }
}

impl core::error::Error for ImageError {}

/// CRC-32 of IEEE 802.3, bit by bit: it runs once, and a table of it would be larger than the setpoints.
pub(super) fn checksum(bytes: &[u8]) -> u32 {
    !bytes.iter().fold(!0, |sum: u32, &byte| {
        (0..8).fold(sum ^ u32::from(byte), |sum, _| (sum >> 1) ^ (0xEDB8_8320 & (sum & 1).wrapping_neg()))
    })
}

impl<const N: usize> SetpointTable<N, f32> {
    /// Bytes of an image.
    pub const IMAGE_BYTES: usize = HEAD + ROW * N + CHECKSUM;

    /// Writes the table as bytes: mark `JWST`, version and rows as 16-bit numbers, lowest heat, step and both bounds
    /// as single-precision numbers in SI, a pair of them a row (gauge pressure, air setting), and the CRC-32 of all
    /// before it. All little-endian.
    ///
    /// # Errors
    ///
    /// [`ImageError::Length`] unless `image` has [`IMAGE_BYTES`](Self::IMAGE_BYTES).
    ///
    /// # Examples
    ///
    /// ```
    /// use jetwright::control::{ImageError, Setpoint, SetpointTable};
    /// use jetwright::quantity::{GaugePressure, NetHeatRate};
    /// type Table = SetpointTable<2, f32>;
    /// let table = Table::build(NetHeatRate::from_kilowatts(10.0), NetHeatRate::from_kilowatts(20.0), 3, |heat| {
    ///     Ok(Setpoint { gauge: GaugePressure::from_pascals(heat.watts()), air: 0.5 })
    /// }).unwrap();
    /// let mut image = [0; Table::IMAGE_BYTES];
    /// table.write_image(&mut image).unwrap();
    /// assert_eq!(Table::read_image(&image), Ok(table));
    /// image[30] ^= 1;
    /// assert_eq!(Table::read_image(&image), Err(ImageError::Damaged));
    /// ```
    pub fn write_image(&self, image: &mut [u8]) -> Result<(), ImageError> {
        let length = ImageError::Length { needed: Self::IMAGE_BYTES };
        if image.len() != Self::IMAGE_BYTES {
            return Err(length);
        }
        let head = [self.lowest.watts(), self.step, self.bound.gauge.pascals(), self.bound.air];
        let rows = self.rows.iter().flat_map(|row| [row.gauge.pascals(), row.air]);
        let words = head.into_iter().chain(rows).flat_map(f32::to_le_bytes);
        let counts = [VERSION, N as u16].into_iter().flat_map(u16::to_le_bytes);
        let (content, end) = image.split_last_chunk_mut::<CHECKSUM>().ok_or(length)?;
        for (to, from) in content.iter_mut().zip(MARK.into_iter().chain(counts).chain(words)) {
            *to = from;
        }
        *end = checksum(content).to_le_bytes();
        Ok(())
    }

    /// Reads a table back, and refuses bytes that are not the whole of one.
    ///
    /// # Errors
    ///
    /// [`ImageError`] says which way they are not.
    pub fn read_image(image: &[u8]) -> Result<Self, ImageError> {
        let length = ImageError::Length { needed: Self::IMAGE_BYTES };
        let (mark, rest) = image.split_first_chunk::<4>().ok_or(length)?;
        if *mark != MARK {
            return Err(ImageError::NotATable);
        }
        let (version, rest) = rest.split_first_chunk::<2>().ok_or(length)?;
        let found = u16::from_le_bytes(*version);
        if found != VERSION {
            return Err(ImageError::Version { found });
        }
        let (rows, rest) = rest.split_first_chunk::<2>().ok_or(length)?;
        let found = u16::from_le_bytes(*rows);
        if usize::from(found) != N {
            return Err(ImageError::Rows { found });
        }
        let (content, end) = image.split_last_chunk::<CHECKSUM>().ok_or(length)?;
        if image.len() != Self::IMAGE_BYTES {
            return Err(length);
        }
        if checksum(content) != u32::from_le_bytes(*end) {
            return Err(ImageError::Damaged);
        }
        let mut words = rest.chunks_exact(4).map(|word| match word.first_chunk::<4>() {
            Some(&word) => f32::from_le_bytes(word),
            None => f32::NAN,
        });
        let mut next = || words.next().unwrap_or(f32::NAN);
        let (lowest, step, gauge, air) = (next(), next(), next(), next());
        let bound = InterpolationBound { gauge: PressureDifference::from_pascals(gauge), air };
        let mut rows = [Setpoint::default(); N];
        for row in &mut rows {
            *row = Setpoint { gauge: GaugePressure::from_pascals(next()), air: next() };
        }
        let table = Self::stored(NetHeatRate::from_watts(lowest), step, rows, bound);
        if table.is_usable() { Ok(table) } else { Err(ImageError::Content) }
    }

    fn is_usable(&self) -> bool {
        let zero = 0.0;
        let heats = self.lowest.watts() > zero && self.step > zero && self.highest().watts().is_finite();
        let bounds = self.bound.gauge.pascals() >= zero && self.bound.air >= zero;
        let finite = self.rows.iter().all(|row| row.gauge.pascals().is_finite() && row.air.is_finite());
        let rising = self.rows.iter().zip(self.rows.iter().skip(1)).all(|(a, b)| a.gauge <= b.gauge && a.air <= b.air);
        heats && bounds && finite && rising
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
        SetpointTable::stored(NetHeatRate::from_watts(self.lowest.watts().to_f32()), self.step.to_f32(), rows, bound)
    }
}

#[cfg(test)]
mod tests {
    use super::checksum;

    #[test]
    fn the_checksum_is_the_standard_one() {
        // The check value of CRC-32 (ISO-HDLC, IEEE 802.3) in the catalogues: that of the nine digits (from memory).
        assert_eq!(checksum(b"123456789"), 0xCBF4_3926);
    }
}
