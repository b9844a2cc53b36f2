//! The one message a bad burner file gets.

use std::collections::BTreeMap;
use std::fmt;
use std::format;
use std::prelude::rust_2024::*;

use crate::limits::Input;
use crate::plant::refusal::{Place, Refusal};
use crate::prose::refusals::reason_words;
use crate::quantity::{GaugePressure, Unit, parse_written};

/// What is wrong with a burner file.
///
/// # Examples
///
/// ```
/// use jetwright::file::FileError;
/// let error = FileError {
///     file: "bells.toml".into(),
///     line: Some(12),
///     field: "jet.bore".into(),
///     given: "\"1.8\"".into(),
///     accepted: "a number without a unit".into(),
/// };
/// assert_eq!(error.to_string(), "bells.toml, line 12, jet.bore: given \"1.8\", a number without a unit");
/// ```
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct FileError {
    /// Name of the file.
    pub file: String,
    /// Line, counted from 1; none when the whole file is meant.
    pub line: Option<usize>,
    /// Dotted path of the field, entries of a list counted from 1; empty when no field is meant.
    pub field: String,
    /// What stands there, shortened; empty when the file cannot be read at all.
    pub given: String,
    /// What is wrong with that, and what is accepted instead.
    pub accepted: String,
}

impl fmt::Display for FileError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&shorten(&self.file, 200))?;
        if let Some(line) = self.line {
            write!(f, ", line {line}")?;
        }
        if !self.field.is_empty() {
            write!(f, ", {}", self.field)?;
        }
        f.write_str(": ")?;
        if !self.given.is_empty() {
            write!(f, "given {}, ", self.given)?;
        }
        f.write_str(&self.accepted)
    }
}

impl std::error::Error for FileError {}

/// The dotted path of a place, entries of a list counted from 1.
///
/// # Examples
///
/// ```
/// use jetwright::{file::error::path, plant::Place};
/// assert_eq!(path(&Place::entry("setting", 1, "gauge")), "setting[2].gauge");
/// let at = [None, Some(2)];
/// assert_eq!(path(&Place { section: "blower", at, key: "points.flow" }), "blower.points[3].flow");
/// ```
#[must_use]
pub fn path(place: &Place) -> String {
    let entry = |index: Option<u8>| index.map_or(String::new(), |index| format!("[{}]", u32::from(index) + 1));
    let (list, key) = match (place.at[1], place.key.split_once('.')) {
        (Some(_), Some((list, key))) => (format!("{list}{}.", entry(place.at[1])), key),
        _ => (String::new(), place.key),
    };
    let dot = if place.section.is_empty() || place.key.is_empty() { "" } else { "." };
    format!("{}{}{dot}{list}{key}", place.section, entry(place.at[0]))
}

/// Where every field of a file stands, so that what is refused later is still named by its line.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Places {
    pub(crate) file: String,
    pub(crate) fields: BTreeMap<String, (Option<usize>, String)>,
}

impl Places {
    /// The unit a setting's gauge is written in, by its place in the list; none where it has no gauge.
    #[must_use]
    pub fn gauge_unit(&self, setting: usize) -> Option<&'static Unit> {
        let (_, given) = self.fields.get(&format!("setting[{}].gauge", setting + 1))?;
        let text = given.trim_matches(['"', '\'']);
        parse_written::<GaugePressure>(text, Input::GaugePressure).ok().map(|written| written.unit)
    }

    /// The error of a field, named by its dotted path, or of the section that should hold it.
    #[must_use]
    pub fn refuse(&self, field: &str, accepted: impl fmt::Display) -> FileError {
        let (line, given) = match self.fields.get(field) {
            Some((line, given)) => (*line, given.clone()),
            None => (self.section_line(field), String::new()),
        };
        FileError { file: self.file.clone(), line, field: field.into(), given, accepted: accepted.to_string() }
    }

    fn section_line(&self, field: &str) -> Option<usize> {
        let (section, _) = field.rsplit_once('.')?;
        self.fields.get(section).map_or_else(|| self.section_line(section), |(line, _)| *line)
    }

    /// The error of a refusal: its place as a field, what was given there, and its reason in words.
    #[must_use]
    pub fn told(&self, refusal: &Refusal) -> FileError {
        let field = path(&refusal.place);
        let error = self.refuse(&field, reason_words(&refusal.reason));
        // What is missing is said to be so.
        if self.fields.contains_key(&field) { error } else { FileError { given: "nothing".into(), ..error } }
    }
}

/// The text with its control characters made visible, and cut after `most` characters with the full count told.
///
/// # Examples
///
/// ```
/// use jetwright::file::shorten;
/// assert_eq!(shorten("5\tpsi", 20), "5\\tpsi");
/// assert_eq!(shorten(&"x".repeat(1000), 3), "xxx... (1000 characters)");
/// ```
#[must_use]
pub fn shorten(text: &str, most: usize) -> String {
    let mut short = String::new();
    for character in text.chars().take(most) {
        if character.is_control() {
            short.extend(character.escape_default());
        } else {
            short.push(character);
        }
    }
    let count = text.chars().count();
    if count > most {
        short.push_str(&std::format!("... ({count} characters)"));
    }
    short
}

#[cfg(test)]
mod tests {
    use super::Places;
    use std::prelude::rust_2024::*;

    #[test]
    fn a_field_left_out_is_named_by_the_line_of_its_section() {
        let mut places = Places { file: "bells.toml".into(), ..Places::default() };
        places.fields.insert("setting[2]".into(), (Some(30), String::new()));
        places.fields.insert("setting[2].gauge".into(), (Some(31), "\"5 psi\"".into()));
        assert_eq!(places.refuse("setting[2].heat", "too much").line, Some(30));
        assert_eq!(
            places.refuse("setting[2].gauge", "too much").to_string(),
            "bells.toml, line 31, setting[2].gauge: given \"5 psi\", too much"
        );
        assert_eq!(places.refuse("gas.kind", "unknown").to_string(), "bells.toml, gas.kind: unknown");
    }
}
