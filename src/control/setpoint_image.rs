//! A setpoint table as bytes, with what can hurt at its settings.

use heapless::Vec;

use super::seal::{self, HAZARDS, ImageError, Opened, SETPOINTS, WORD, image_bytes, numbers, seal};
use super::setpoints::{InterpolationBound, MadeFor, Setpoint, SetpointTable};
use crate::quantity::{GaugePressure, NetHeatRate, PressureDifference};

/// Most hazards an image carries.
pub const HAZARD_CAP: usize = 16;

const TABLE: [u8; 4] = *b"JWST";
/// Air ratio, lowest heat, step, two bounds.
const TABLE_HEAD: usize = 5;
const HAZARD_BYTES: usize = 8;

/// Something that can hurt at the settings of a table, as numbers: the writer says what its kinds and severities are.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct ImageHazard {
    /// What it is.
    pub kind: u16,
    /// How much it can hurt; the more, the worse.
    pub severity: u8,
    /// The row it is met at, from 0, or [`EVERY_ROW`](Self::EVERY_ROW).
    pub row: u8,
    /// How much there is of it, in SI; zero for a kind that has no number.
    pub number: f32,
}

impl ImageHazard {
    /// In place of a row: at every one.
    pub const EVERY_ROW: u8 = u8::MAX;

    fn bytes(self) -> [u8; HAZARD_BYTES] {
        let ([k0, k1], [n0, n1, n2, n3]) = (self.kind.to_le_bytes(), self.number.to_le_bytes());
        [k0, k1, self.severity, self.row, n0, n1, n2, n3]
    }

    fn of([k0, k1, severity, row, n0, n1, n2, n3]: [u8; HAZARD_BYTES]) -> Self {
        let (kind, number) = (u16::from_le_bytes([k0, k1]), f32::from_le_bytes([n0, n1, n2, n3]));
        Self { kind, severity, row, number }
    }

    fn is_usable(&self, rows: usize) -> bool {
        self.number.is_finite() && (usize::from(self.row) < rows || self.row == Self::EVERY_ROW)
    }
}

/// A setpoint table and what can hurt at its settings: the whole of an image.
///
/// A chip that only sets reads [`SetpointTable::read_image`] and passes over the hazards.
///
/// # Examples
///
/// ```
/// use jetwright::control::{ImageHazard, MadeFor, Setpoint, SetpointImage, SetpointTable};
/// use jetwright::quantity::{GaugePressure, NetHeatRate};
/// let kw = NetHeatRate::from_kilowatts;
/// let table = SetpointTable::<2, f32>::build(MadeFor { air_ratio: 0.8, burner: 0 }, kw(10.0), kw(20.0), 3, |heat| {
///     Ok(Setpoint { gauge: GaugePressure::from_pascals(heat.watts()), air: 0.5 })
/// }).unwrap();
/// // An invented kind: 12 % of something at every row.
/// let hazard = ImageHazard { kind: 4, severity: 2, row: ImageHazard::EVERY_ROW, number: 0.12 };
/// let whole = SetpointImage { table, hazards: Some([hazard].into_iter().collect()) };
/// let mut image = [0; SetpointImage::<2>::MOST_BYTES];
/// let image = &mut image[..whole.bytes()];
/// whole.write(image).unwrap();
/// assert_eq!(SetpointImage::<2>::read(image), Ok(whole));
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct SetpointImage<const N: usize> {
    /// The table.
    pub table: SetpointTable<N, f32>,
    /// What can hurt, the worst first as the writer sees it; none where the writer has not looked, which is not the
    /// same as an empty list.
    pub hazards: Option<Vec<ImageHazard, HAZARD_CAP>>,
}

impl<const N: usize> SetpointImage<N> {
    /// Bytes of an image with the most hazards.
    pub const MOST_BYTES: usize = image_bytes(2, WORD * (TABLE_HEAD + 2 * N) + HAZARD_BYTES * HAZARD_CAP);

    /// Bytes of the image.
    #[must_use]
    pub fn bytes(&self) -> usize {
        bytes::<N>(self.hazards.as_deref())
    }

    /// Writes the image.
    ///
    /// # Errors
    ///
    /// [`ImageError::Length`] unless `image` has [`bytes`](Self::bytes); [`ImageError::Content`] for a hazard of a row
    /// that the table does not have, or of no number.
    pub fn write(&self, image: &mut [u8]) -> Result<(), ImageError> {
        write(&self.table, self.hazards.as_deref(), image)
    }

    /// Reads the image back, and refuses bytes that are not the whole of one.
    ///
    /// # Errors
    ///
    /// [`ImageError`] says which way they are not.
    pub fn read(image: &[u8]) -> Result<Self, ImageError> {
        let opened = open(image)?;
        let [_, found] = opened.sections;
        Ok(Self { table: table(&opened)?, hazards: found.map(hazards::<N>).transpose()? })
    }
}

impl<const N: usize> SetpointTable<N, f32> {
    /// Bytes of an image of the table alone.
    pub const IMAGE_BYTES: usize = image_bytes(1, WORD * (TABLE_HEAD + 2 * N));

    /// Writes the table as bytes, without a word of hazards: see [`SetpointImage`].
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
        write(self, None, image)
    }

    /// Reads a table back, and refuses bytes that are not the whole of one. Hazards are passed over.
    ///
    /// # Errors
    ///
    /// [`ImageError`] says which way they are not.
    pub fn read_image(image: &[u8]) -> Result<Self, ImageError> {
        table(&open(image)?)
    }
}

fn bytes<const N: usize>(hazards: Option<&[ImageHazard]>) -> usize {
    SetpointTable::<N, f32>::IMAGE_BYTES
        + hazards.map_or(0, |hazards| image_bytes(1, HAZARD_BYTES * hazards.len()) - image_bytes(0, 0))
}

fn write<const N: usize>(
    table: &SetpointTable<N, f32>,
    hazards: Option<&[ImageHazard]>,
    image: &mut [u8],
) -> Result<(), ImageError> {
    if !hazards.unwrap_or_default().iter().all(|hazard| hazard.is_usable(N)) {
        return Err(ImageError::Content);
    }
    let MadeFor { air_ratio, burner } = table.made_for;
    seal(image, TABLE, burner, bytes::<N>(hazards), |writer| {
        writer.required(SETPOINTS, WORD * (TABLE_HEAD + 2 * N));
        let head = [air_ratio, table.lowest.watts(), table.step, table.bound.gauge.pascals(), table.bound.air];
        let rows = table.rows.iter().flat_map(|row| [row.gauge.pascals(), row.air]);
        head.into_iter().chain(rows).for_each(|word| writer.word(word));
        if let Some(hazards) = hazards {
            writer.optional(HAZARDS, HAZARD_BYTES * hazards.len());
            hazards.iter().for_each(|hazard| writer.put(hazard.bytes()));
        }
    })
}

fn open(image: &[u8]) -> Result<Opened<'_, 2>, ImageError> {
    seal::open(image, TABLE, ImageError::NotATable, [SETPOINTS, HAZARDS])
}

fn table<const N: usize>(opened: &Opened<'_, 2>) -> Result<SetpointTable<N, f32>, ImageError> {
    let contents = opened.sections[0].ok_or(ImageError::Content)?;
    if contents.len() != WORD * (TABLE_HEAD + 2 * N) {
        return Err(ImageError::Rows { found: ((contents.len() / WORD).saturating_sub(TABLE_HEAD) / 2) as u16 });
    }
    let mut words = numbers(contents)?;
    let mut next = || words.next().unwrap_or(f32::NAN);
    let (air_ratio, lowest, step, gauge, air) = (next(), next(), next(), next(), next());
    let made_for = MadeFor { air_ratio, burner: opened.burner };
    let bound = InterpolationBound { gauge: PressureDifference::from_pascals(gauge), air };
    let mut rows = [Setpoint::default(); N];
    for row in &mut rows {
        *row = Setpoint { gauge: GaugePressure::from_pascals(next()), air: next() };
    }
    let table = SetpointTable::stored(made_for, NetHeatRate::from_watts(lowest), step, rows, bound);
    if table.is_usable() { Ok(table) } else { Err(ImageError::Content) }
}

fn hazards<const N: usize>(contents: &[u8]) -> Result<Vec<ImageHazard, HAZARD_CAP>, ImageError> {
    let entries = contents.chunks_exact(HAZARD_BYTES);
    let mut hazards = Vec::new();
    let is_whole = entries.remainder().is_empty();
    for hazard in entries.filter_map(|entry| entry.first_chunk()).map(|&entry| ImageHazard::of(entry)) {
        if !hazard.is_usable(N) {
            return Err(ImageError::Content);
        }
        hazards.push(hazard).map_err(|_| ImageError::Content)?;
    }
    if is_whole { Ok(hazards) } else { Err(ImageError::Content) }
}
