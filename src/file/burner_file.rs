//! The burner file: one burner described for the shop sheet.

use std::path::Path;
use std::prelude::rust_2024::*;

use crate::file::document::{self, Document};
use crate::file::error::{FileError, Places};
use crate::file::measured::read_measured;
use crate::file::node::{Node, describe};
use crate::plant::entries::Entries;
use crate::plant::{Plant, Sheet};

/// One burner as its file describes it, and where every field of the file stands.
#[derive(Clone, Debug, PartialEq)]
pub struct BurnerFile {
    /// What it describes, typed and in range.
    pub entries: Entries,
    /// Where every field stands.
    pub places: Places,
}

impl BurnerFile {
    /// The installation it describes, and where every field stands.
    ///
    /// # Errors
    ///
    /// [`FileError`] of the field that cannot be.
    pub fn plant(self) -> Result<(Plant, Places), FileError> {
        let Self { entries, places } = self;
        match Plant::new(entries) {
            Ok(plant) => Ok((plant, places)),
            Err(refusal) => Err(places.told(&refusal)),
        }
    }

    /// The same with every question answered; its readings round in psi, or in bar.
    ///
    /// # Errors
    ///
    /// [`FileError`] of the field that cannot be.
    pub fn evaluate(self, round_in_psi: bool) -> Result<(Sheet, Places), FileError> {
        let (plant, places) = self.plant()?;
        match plant.evaluate(round_in_psi) {
            Ok(sheet) => Ok((sheet, places)),
            Err(refusal) => Err(places.told(&refusal)),
        }
    }

    /// The error of a field, such as `gas.kind` or `setting[2].gauge` (counted from 1).
    #[must_use]
    pub fn refuse(&self, field: &str, accepted: impl core::fmt::Display) -> FileError {
        self.places.refuse(field, accepted)
    }
}

/// Reads a burner file.
///
/// # Errors
///
/// [`FileError`] at the first thing that is wrong.
pub fn read(path: &Path) -> Result<BurnerFile, FileError> {
    parse(&document::load(path)?, &path.display().to_string())
}

/// Reads the text of a burner file; `name` is what messages call it.
///
/// # Errors
///
/// [`FileError`] at the first thing that is wrong.
///
/// # Examples
///
/// ```
/// use jetwright::file::burner_file::parse;
/// let error = parse("name = 'bells'\n[site]\naltitude = 1600", "bells.toml").unwrap_err();
/// assert_eq!((error.line, error.field.as_str(), error.given.as_str()), (Some(3), "site.altitude", "1600"));
/// ```
pub fn parse(text: &str, name: &str) -> Result<BurnerFile, FileError> {
    let document = Document::parse(text, name)?;
    of(&document.root(), name)
}

/// The burner that a tree of keys and values describes; `name` is what messages call it, and where it stands.
///
/// # Errors
///
/// [`FileError`] at the first thing that is wrong.
pub fn of(root: &impl Node, name: &str) -> Result<BurnerFile, FileError> {
    let (description, places) = describe(root, name)?;
    let mut entries = Entries::of(&description).map_err(|refusal| places.told(&refusal))?;
    if let Some(file) = description.jet.as_ref().and_then(|jet| jet.measured.as_deref()) {
        let path = Path::new(name).parent().unwrap_or(Path::new("")).join(file);
        entries.jet.measured = Some(read_measured(&path).map_err(|error| places.refuse("jet.measured", error))?);
    }
    Ok(BurnerFile { entries, places })
}
