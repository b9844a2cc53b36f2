//! Bytes for a chip's flash or a file, that show damage: a header, then sections, so that a later part adds its own.
//!
//! | bytes | of the header |
//! |---|---|
//! | 4 | what it is: `JWST` a setpoint table, `JWBN` a burner |
//! | 2 | version of this layout |
//! | 2 | length of the whole, bytes |
//! | 4 | id of the burner |
//! | 4 | CRC-32 of all but these four |
//!
//! | bytes | of a section |
//! |---|---|
//! | 2 | its [`Kind`] |
//! | 1 | version of its contents |
//! | 1 | 1 where a reader that does not know kind and version must refuse the whole, 0 where it passes over the section |
//! | 4 | length of its contents, bytes |
//! | | its contents |
//!
//! All numbers are little-endian, all fractions single precision.

use core::fmt;

use crate::burner::{Burner, Conditions};
use crate::scalar::Scalar;
use crate::words::Words;

/// Of every kind of image: they go together.
const VERSION: u16 = 3;
/// The header but for its checksum, and with it.
const COVERED: usize = 4 + 2 + 2 + 4;
const HEADER: usize = COVERED + 4;
const SECTION_HEADER: usize = 2 + 1 + 1 + 4;
pub(super) const WORD: usize = 4;

/// A kind of section. Its number is never given to another; what its contents mean changes with the version alone.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Kind(u32);

impl Kind {
    /// Where the word that begins a section says that it must not be passed over.
    const REQUIRED: u32 = 1 << 24;

    const fn new(number: u16, version: u8) -> Self {
        Self(number as u32 | (version as u32) << 16)
    }
}

/// Air ratio, lowest heat, step, both bounds, and a pair a row.
pub(super) const SETPOINTS: Kind = Kind::new(1, 1);
/// What can hurt at the settings of the table, eight bytes each.
pub(super) const HAZARDS: Kind = Kind::new(2, 1);
/// A burner, its conditions and its settings.
pub(super) const BURNER: Kind = Kind::new(3, 1);

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
    /// A part that must not be passed over is of a kind or a version that this program does not know.
    Section {
        /// Number of its kind.
        kind: u16,
    },
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
            ImageError::Section { kind } => write!(f, "has a section of kind {kind} that this program does not know"),
        }
    }
}

impl core::error::Error for ImageError {}

/// CRC-32 of IEEE 802.3, bit by bit: it runs once, and a table of it would be larger than the setpoints.
#[derive(Clone, Copy, Debug)]
struct Checksum(u32);

impl Checksum {
    fn new() -> Self {
        Self(!0)
    }

    /// Of bytes in two places.
    fn of(parts: [&[u8]; 2]) -> Self {
        parts.into_iter().fold(Self::new(), Self::with)
    }

    #[must_use]
    fn with(self, bytes: &[u8]) -> Self {
        bytes.iter().fold(self, |sum, &byte| sum.with_byte(byte))
    }

    // A call a byte: its steps unrolled at each use would be most of a small program, and of a burner's some hundred
    // words thirty kilobytes.
    #[inline(never)]
    fn with_byte(self, byte: u8) -> Self {
        let step = |sum: u32, _| (sum >> 1) ^ (0xEDB8_8320 & (sum & 1).wrapping_neg());
        Self((0..8).fold(self.0 ^ u32::from(byte), step))
    }

    fn value(self) -> u32 {
        !self.0
    }
}

/// A number that two burners, or one under two conditions, hardly share: the CRC-32 of their numbers.
pub(super) fn burner_id<S: Scalar>(burner: &Burner<S>, conditions: &Conditions<S>) -> u32 {
    let mut sum = Checksum::new();
    // And a call a word.
    #[inline(never)]
    fn add(sum: &mut Checksum, word: f32) {
        *sum = sum.with(&word.to_le_bytes());
    }
    let mut put = |word: f32| add(&mut sum, word);
    burner.write(&mut put);
    conditions.write(&mut put);
    sum.value()
}

/// Bytes of an image whose sections hold so many bytes in all.
pub(super) const fn image_bytes(sections: usize, contents: usize) -> usize {
    HEADER + SECTION_HEADER * sections + contents
}

/// What an image is filled by, in order.
pub(super) struct Writer<'i> {
    rest: &'i mut [u8],
    is_full: bool,
}

impl Writer<'_> {
    /// Begins a section of so many bytes that a reader must know.
    pub fn required(&mut self, kind: Kind, length: usize) {
        self.section(Kind(kind.0 | Kind::REQUIRED), length);
    }

    /// Begins a section of so many bytes that a reader may pass over.
    pub fn optional(&mut self, kind: Kind, length: usize) {
        self.section(kind, length);
    }

    fn section(&mut self, kind: Kind, length: usize) {
        self.put(kind.0.to_le_bytes());
        self.put((length as u32).to_le_bytes());
    }

    pub fn put<const N: usize>(&mut self, bytes: [u8; N]) {
        match core::mem::take(&mut self.rest).split_first_chunk_mut() {
            Some((place, rest)) => {
                *place = bytes;
                self.rest = rest;
            }
            None => self.is_full = true,
        }
    }

    pub fn word(&mut self, word: f32) {
        self.put(word.to_le_bytes());
    }
}

/// Fills an image, which must be as long as what `write` puts: `needed` bytes with the header.
pub(super) fn seal(
    image: &mut [u8],
    magic: [u8; 4],
    burner: u32,
    needed: usize,
    write: impl FnOnce(&mut Writer),
) -> Result<(), ImageError> {
    let wrong = ImageError::Length { needed };
    let length = u16::try_from(needed).map_err(|_| wrong)?;
    if image.len() != needed {
        return Err(wrong);
    }
    let mut writer = Writer { rest: &mut *image, is_full: false };
    writer.put(magic);
    writer.put(VERSION.to_le_bytes());
    writer.put(length.to_le_bytes());
    writer.put(burner.to_le_bytes());
    writer.put([0; 4]);
    write(&mut writer);
    if writer.is_full || !writer.rest.is_empty() {
        return Err(wrong);
    }
    let (header, sections) = image.split_first_chunk_mut::<HEADER>().ok_or(wrong)?;
    let (covered, sum) = header.split_first_chunk_mut::<COVERED>().ok_or(wrong)?;
    sum.copy_from_slice(&Checksum::of([covered, sections]).value().to_le_bytes());
    Ok(())
}

/// What a whole image holds that is not damaged.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Opened<'i, const K: usize> {
    /// The id of the burner.
    pub burner: u32,
    /// The contents of each kind that the reader knows.
    pub sections: [Option<&'i [u8]>; K],
}

/// Opens an image. `other` is what bytes are that do not begin with `magic`.
pub(super) fn open<const K: usize>(
    image: &[u8],
    magic: [u8; 4],
    other: ImageError,
    known: [Kind; K],
) -> Result<Opened<'_, K>, ImageError> {
    let short = ImageError::Length { needed: HEADER };
    if *image.first_chunk::<4>().ok_or(short)? != magic {
        return Err(other);
    }
    let (header, mut rest) = image.split_first_chunk::<HEADER>().ok_or(short)?;
    let (covered, sum) = header.split_first_chunk::<COVERED>().ok_or(short)?;
    let [.., v0, v1, l0, l1, b0, b1, b2, b3] = *covered;
    let (found, needed) = (u16::from_le_bytes([v0, v1]), usize::from(u16::from_le_bytes([l0, l1])));
    if found != VERSION {
        return Err(ImageError::Version { found });
    }
    if image.len() != needed {
        return Err(ImageError::Length { needed });
    }
    if Checksum::of([covered, rest]).value().to_le_bytes() != *sum {
        return Err(ImageError::Damaged);
    }
    let mut sections = [None; K];
    while !rest.is_empty() {
        let (&[k0, k1, k2, k3, l0, l1, l2, l3], after) =
            rest.split_first_chunk::<SECTION_HEADER>().ok_or(ImageError::Content)?;
        let (kind, length) = (u32::from_le_bytes([k0, k1, k2, k3]), u32::from_le_bytes([l0, l1, l2, l3]));
        let (contents, after) = after.split_at_checked(length as usize).ok_or(ImageError::Content)?;
        let mut is_known = kind < Kind::REQUIRED;
        for (section, known) in sections.iter_mut().zip(known) {
            if known.0 == kind & !Kind::REQUIRED {
                *section = Some(contents);
                is_known = true;
            }
        }
        if !is_known {
            return Err(ImageError::Section { kind: kind as u16 });
        }
        rest = after;
    }
    Ok(Opened { burner: u32::from_le_bytes([b0, b1, b2, b3]), sections })
}

/// Contents as numbers, if they are nothing else.
pub(super) fn numbers(contents: &[u8]) -> Result<impl Iterator<Item = f32> + '_, ImageError> {
    let words = contents.chunks_exact(WORD);
    let of = |word: &[u8]| word.first_chunk().map_or(f32::NAN, |&word| f32::from_le_bytes(word));
    if words.remainder().is_empty() { Ok(words.map(of)) } else { Err(ImageError::Content) }
}

#[cfg(test)]
mod tests {
    use super::{BURNER, Checksum, HAZARDS, ImageError, Kind, Opened, SETPOINTS, Writer, image_bytes, open, seal};

    const MAGIC: [u8; 4] = *b"JWXX";
    const LATER: Kind = Kind::new(900, 1);

    /// An image of sections of one byte each, their place.
    fn image(sections: &[(Kind, bool)]) -> std::vec::Vec<u8> {
        let mut image = std::vec![0; image_bytes(sections.len(), sections.len())];
        let needed = image.len();
        let fill = |writer: &mut Writer| {
            for (place, &(kind, is_required)) in sections.iter().enumerate() {
                if is_required {
                    writer.required(kind, 1)
                } else {
                    writer.optional(kind, 1)
                }
                writer.put([place as u8]);
            }
        };
        seal(&mut image, MAGIC, 7, needed, fill).unwrap();
        image
    }

    fn opened(image: &[u8]) -> Result<Opened<'_, 2>, ImageError> {
        open(image, MAGIC, ImageError::NotATable, [SETPOINTS, HAZARDS])
    }

    #[test]
    fn the_checksum_is_the_standard_one() {
        // The check value of CRC-32 (ISO-HDLC, IEEE 802.3) in the catalogs: that of the nine digits (from memory).
        assert_eq!(Checksum::of([b"12345", b"6789"]).value(), 0xCBF4_3926);
    }

    #[test]
    fn the_layout_is_the_one_written_down() {
        let bytes = image(&[(HAZARDS, true)]);
        assert_eq!(bytes[..12], [b'J', b'W', b'X', b'X', 3, 0, 25, 0, 7, 0, 0, 0]);
        assert_eq!(bytes[16..], [2, 0, 1, 1, 1, 0, 0, 0, 0]);
        assert_eq!(bytes[12..16], Checksum::of([&bytes[..12], &bytes[16..]]).value().to_le_bytes());
        assert_eq!(image(&[(LATER, false)])[16..20], [132, 3, 1, 0]);
    }

    #[test]
    fn a_section_is_found_wherever_it_stands_and_whether_required_or_not() {
        let (first, second): (&[u8], &[u8]) = (&[0], &[1]);
        for required in [false, true] {
            let bytes = image(&[(HAZARDS, required), (SETPOINTS, true)]);
            assert_eq!(opened(&bytes), Ok(Opened { burner: 7, sections: [Some(second), Some(first)] }));
        }
        assert_eq!(opened(&image(&[(SETPOINTS, true)])).unwrap().sections, [Some(first), None]);
        assert_eq!(opened(&image(&[])).unwrap().sections, [None, None]);
    }

    #[test]
    fn what_is_not_known_is_passed_over_or_refused_as_it_asks() {
        let second: &[u8] = &[1];
        let bytes = image(&[(LATER, false), (SETPOINTS, true), (BURNER, false)]);
        assert_eq!(opened(&bytes).unwrap().sections, [Some(second), None]);
        let bytes = image(&[(SETPOINTS, true), (LATER, true)]);
        assert_eq!(opened(&bytes), Err(ImageError::Section { kind: 900 }));
        // A later version of a known kind is as little known.
        let later = |kind: Kind| Kind(kind.0 + (1 << 16));
        assert_eq!(opened(&image(&[(later(SETPOINTS), true)])), Err(ImageError::Section { kind: 1 }));
        let bytes = image(&[(later(HAZARDS), false), (SETPOINTS, true)]);
        assert_eq!(opened(&bytes).unwrap().sections, [Some(second), None]);
    }

    #[test]
    fn sections_that_do_not_end_with_the_image_are_refused() {
        let needed = image_bytes(1, 1);
        let sealed = |write: &dyn Fn(&mut Writer)| {
            let mut bytes = std::vec![0; needed];
            seal(&mut bytes, MAGIC, 7, needed, write).map(|()| bytes)
        };
        for length in [0, 2, 400, u32::MAX as usize] {
            let bytes = sealed(&|writer| {
                writer.optional(HAZARDS, length);
                writer.put([0]);
            });
            assert_eq!(opened(&bytes.unwrap()), Err(ImageError::Content), "{length}");
        }
        // A writer that puts more or less than it said fills no image.
        let wrong = Err(ImageError::Length { needed });
        assert_eq!(sealed(&|writer| writer.optional(HAZARDS, 1)), wrong);
        assert_eq!(sealed(&|writer| writer.put([0; 99])), wrong);
        // The length of an image has sixteen bits.
        let mut long = std::vec![0; 70_000];
        let needed = long.len();
        assert_eq!(seal(&mut long, MAGIC, 7, needed, |_| ()), Err(ImageError::Length { needed }));
    }
}
