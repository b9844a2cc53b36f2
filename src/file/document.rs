//! A TOML document read field by field; whatever it holds, the answer is a value or one message.

use std::borrow::Cow;
use std::cell::RefCell;
use std::fmt::Display;
use std::io::Read;
use std::ops::Range;
use std::path::Path;
use std::prelude::rust_2024::*;
use std::{format, vec};

use toml::Spanned;
use toml::de::{DeTable, DeValue};

use crate::file::error::{FileError, Places, shorten};
use crate::limits::Input;
use crate::quantity::{self, Number, Quantity, Share};

/// Largest file read, in bytes; a burner file has some thousands.
pub const LARGEST_FILE: u64 = 1 << 20;

/// Characters of a given value that a message repeats.
const SHOWN: usize = 60;

/// The text of a file.
///
/// # Errors
///
/// [`FileError`] when it cannot be read, is larger than [`LARGEST_FILE`] or is not UTF-8.
pub fn load(path: &Path) -> Result<String, FileError> {
    let file = path.display().to_string();
    let refuse = |line, given: &str, accepted: String| FileError {
        file: file.clone(),
        line,
        field: String::new(),
        given: given.into(),
        accepted,
    };
    let mut bytes = Vec::new();
    std::fs::File::open(path)
        .and_then(|opened| opened.take(LARGEST_FILE + 1).read_to_end(&mut bytes))
        .map_err(|error| refuse(None, "", format!("cannot be read: {error}")))?;
    if bytes.len() as u64 > LARGEST_FILE {
        let accepted = format!("a burner file has at most {} KiB", LARGEST_FILE / 1024);
        return Err(refuse(None, "a larger file", accepted));
    }
    String::from_utf8(bytes).map_err(|error| {
        let line = line_at(error.as_bytes(), error.utf8_error().valid_up_to());
        refuse(Some(line), "bytes that are not text", "accepted is UTF-8 text".into())
    })
}

/// Sections that are lists.
const LISTS: [&str; 4] = ["setting", "duct", "layer", "panel"];

/// A parsed document.
pub struct Document<'t> {
    text: &'t str,
    table: DeTable<'t>,
    places: RefCell<Places>,
}

impl<'t> Document<'t> {
    /// Parses the text; `name` is what messages call the file.
    ///
    /// # Errors
    ///
    /// [`FileError`] at the first place that is not TOML.
    pub fn parse(text: &'t str, name: &str) -> Result<Self, FileError> {
        match DeTable::parse(text) {
            Ok(table) => {
                let places = Places { file: name.into(), ..Places::default() };
                Ok(Self { text, table: table.into_inner(), places: RefCell::new(places) })
            }
            Err(error) => {
                let span = error.span().unwrap_or_default();
                let given = text.get(span.clone()).unwrap_or_default();
                let line = whole_line(text, span.start);
                // A second table of a name that should be a list.
                let is_twice = error.message().contains("duplicate key");
                let list = LISTS.iter().find(|list| is_twice && line == format!("[{list}]"));
                let begun = list.map_or(String::new(), |list| format!("; each is begun with [[{list}]]"));
                // An empty span stands where something is missing: the line says more.
                let given = if given.trim().is_empty() { line } else { given };
                Err(FileError {
                    file: name.into(),
                    line: Some(line_at(text.as_bytes(), span.start)),
                    field: String::new(),
                    given: shorten(given, SHOWN),
                    accepted: format!("this is not TOML: {}{begun}", shorten(error.message(), 200)),
                })
            }
        }
    }

    /// The keys before the first section, and the sections; `known` are all that may stand there.
    #[must_use]
    pub fn root(&self, known: &'static [&'static str]) -> Section<'_> {
        Section { document: self, table: &self.table, field: String::new(), line: None, known }
    }

    /// Where every field asked for stands.
    #[must_use]
    pub fn into_places(self) -> Places {
        self.places.into_inner()
    }

    fn line(&self, span: &Range<usize>) -> usize {
        line_at(self.text.as_bytes(), span.start)
    }

    fn source(&self, span: &Range<usize>) -> &str {
        self.text.get(span.clone()).unwrap_or_default()
    }

    fn record(&self, field: &str, line: usize, given: String) {
        self.places.borrow_mut().fields.insert(field.into(), (line, given));
    }

    fn refuse(&self, line: Option<usize>, field: &str, given: String, accepted: impl Display) -> FileError {
        let file = self.places.borrow().file.clone();
        FileError { file, line, field: field.into(), given, accepted: accepted.to_string() }
    }
}

/// The line, counted from 1, of a byte.
fn line_at(text: &[u8], at: usize) -> usize {
    1 + text.iter().take(at).filter(|&&byte| byte == b'\n').count()
}

/// The line around a byte, without the blanks at its ends.
fn whole_line(text: &str, at: usize) -> &str {
    let (before, behind) = text.split_at_checked(at).unwrap_or((text, ""));
    let start = before.rfind('\n').map_or(0, |end| end + 1);
    let end = behind.find('\n').map_or(text.len(), |length| before.len() + length);
    text[start..end].trim()
}

/// A table of the document, from which fields are taken by key.
pub struct Section<'d> {
    document: &'d Document<'d>,
    table: &'d DeTable<'d>,
    field: String,
    line: Option<usize>,
    known: &'static [&'static str],
}

impl<'d> Section<'d> {
    fn path(&self, key: &str) -> String {
        if self.field.is_empty() { key.into() } else { format!("{}.{key}", self.field) }
    }

    fn get(&self, key: &'static str) -> Option<&'d Spanned<DeValue<'d>>> {
        debug_assert!(self.known.contains(&key), "{} is read but not among the keys known", self.path(key));
        self.table.get(key)
    }

    /// A key that must be there; that it is not is told when its value is taken.
    #[must_use]
    pub fn required(&self, key: &'static str) -> Field<'d> {
        let field = self.path(key);
        let value = self.get(key);
        let line = value.map_or(self.line, |value| Some(self.document.line(&value.span())));
        // What stands here misspelled is the likely cause of what is missing.
        let unknown = if value.is_none() { self.unknown() } else { vec![] };
        let taken = Field { document: self.document, field, line, value, unknown };
        if let Some(line) = line.filter(|_| value.is_some()) {
            self.document.record(&taken.field, line, taken.given());
        }
        taken
    }

    /// A key that may be left out.
    #[must_use]
    pub fn optional(&self, key: &'static str) -> Option<Field<'d>> {
        let field = self.required(key);
        field.value.is_some().then_some(field)
    }

    /// A section below this one, if it is there; `known` are all its keys.
    ///
    /// # Errors
    ///
    /// [`FileError`] when the key holds something else.
    pub fn section(&self, key: &'static str, known: &'static [&'static str]) -> Result<Option<Section<'d>>, FileError> {
        let Some((name, value)) = self.table.get_key_value(key) else {
            self.get(key);
            return Ok(None);
        };
        let field = self.required(key);
        match value.get_ref() {
            DeValue::Table(table) => Ok(Some(self.below(table, field.field, self.document.line(&name.span()), known))),
            _ => Err(field.refuse(format!("accepted is a section [{key}]"))),
        }
    }

    /// The tables of a list, at most `most` of them, each with the keys `known`; none when the key is left out.
    ///
    /// # Errors
    ///
    /// [`FileError`] when the key holds something else, or too many.
    pub fn sections(
        &self,
        key: &'static str,
        most: usize,
        known: &'static [&'static str],
    ) -> Result<Vec<Section<'d>>, FileError> {
        let Some(field) = self.optional(key) else {
            return Ok(vec![]);
        };
        let accepted = format!("accepted are up to {most} tables, each begun with [[{key}]] or written in braces");
        let Some(DeValue::Array(array)) = field.value.map(Spanned::get_ref) else {
            return Err(field.refuse(accepted));
        };
        if array.len() > most {
            return Err(field.refuse_given(format!("{} tables", array.len()), accepted));
        }
        let mut sections = vec![];
        for (index, value) in array.iter().enumerate() {
            let path = format!("{}[{}]", field.field, index + 1);
            let line = self.document.line(&value.span());
            match value.get_ref() {
                DeValue::Table(table) => sections.push(self.below(table, path, line, known)),
                _ => {
                    let given = shorten(self.document.source(&value.span()), SHOWN);
                    return Err(self.document.refuse(Some(line), &path, given, accepted));
                }
            }
        }
        Ok(sections)
    }

    fn below(&self, table: &'d DeTable<'d>, field: String, line: usize, known: &'static [&'static str]) -> Section<'d> {
        self.document.record(&field, line, String::new());
        Section { document: self.document, table, field, line: Some(line), known }
    }

    /// An error of one of this section's keys, whether it is there or not.
    #[must_use]
    pub fn refuse(&self, key: &'static str, accepted: impl Display) -> FileError {
        self.required(key).refuse(accepted)
    }

    /// The keys that have no place here, in the order they stand.
    fn unknown(&self) -> Vec<&'d Spanned<Cow<'d, str>>> {
        let mut unknown: Vec<_> =
            self.table.keys().filter(|key| !self.known.contains(&key.get_ref().as_ref())).collect();
        unknown.sort_by_key(|key| key.span().start);
        unknown
    }

    /// Refuses keys that have no place here.
    ///
    /// # Errors
    ///
    /// [`FileError`] naming the first one and listing those accepted.
    pub fn finish(self) -> Result<(), FileError> {
        let Some(key) = self.unknown().first().copied() else {
            return Ok(());
        };
        let shown = shorten(key.get_ref(), SHOWN);
        Err(self.document.refuse(
            Some(self.document.line(&key.span())),
            &self.path(&shown),
            String::new(),
            format!("not a key known here, accepted are {}", self.known.join(", ")),
        ))
    }
}

/// A key of a section and what it holds.
pub struct Field<'d> {
    document: &'d Document<'d>,
    field: String,
    line: Option<usize>,
    value: Option<&'d Spanned<DeValue<'d>>>,
    unknown: Vec<&'d Spanned<Cow<'d, str>>>,
}

impl<'d> Field<'d> {
    fn given(&self) -> String {
        let Some(value) = self.value else {
            return "nothing".into();
        };
        match value.get_ref() {
            DeValue::Table(_) => "a table".into(),
            _ => shorten(self.document.source(&value.span()), SHOWN),
        }
    }

    /// What is read: the inside of a text, or a bare number as it is written.
    fn content(&self) -> &'d str {
        match self.value.map(|value| (value.get_ref(), value.span())) {
            Some((DeValue::String(text), _)) => text,
            Some((DeValue::Integer(_) | DeValue::Float(_), span)) => self.document.source(&span),
            _ => "",
        }
    }

    /// The error of this field.
    #[must_use]
    pub fn refuse(&self, accepted: impl Display) -> FileError {
        self.refuse_given(self.given(), accepted)
    }

    fn refuse_given(&self, given: String, accepted: impl Display) -> FileError {
        let mut accepted = accepted.to_string();
        if let Some(key) = self.unknown.first() {
            let line = self.document.line(&key.span());
            accepted.push_str(&format!("; unknown key {} here on line {line}", shorten(key.get_ref(), SHOWN)));
        }
        self.document.refuse(self.line, &self.field, given, accepted)
    }

    /// A quantity of any size.
    ///
    /// # Errors
    ///
    /// [`FileError`] when it is missing or not a number with a unit of `Q`.
    pub fn quantity<Q: Quantity>(&self) -> Result<Q, FileError> {
        quantity::parse(self.content()).map_err(|error| self.refuse(error))
    }

    /// A quantity within the range of an input.
    ///
    /// # Errors
    ///
    /// [`FileError`] as of [`Field::quantity`], and when it is out of range.
    pub fn ranged<Q: Quantity>(&self, input: Input) -> Result<Q, FileError> {
        quantity::parse_within(self.content(), input).map_err(|error| self.refuse(error))
    }

    /// A share of one, as a percentage or a plain number.
    ///
    /// # Errors
    ///
    /// [`FileError`] as of [`Field::ranged`].
    pub fn share(&self, input: Input) -> Result<f64, FileError> {
        self.ranged::<Share>(input).map(|share| share.0)
    }

    /// A plain number.
    ///
    /// # Errors
    ///
    /// [`FileError`] as of [`Field::ranged`].
    pub fn number(&self, input: Input) -> Result<f64, FileError> {
        self.ranged::<Number>(input).map(|number| number.0)
    }

    /// A whole number.
    ///
    /// # Errors
    ///
    /// [`FileError`] as of [`Field::ranged`], and when it is not whole.
    pub fn count(&self, input: Input) -> Result<u32, FileError> {
        quantity::parse_count(self.content(), input).map_err(|error| self.refuse(error))
    }

    /// A text of one line, at most `most` characters long.
    ///
    /// # Errors
    ///
    /// [`FileError`] when it is missing, not text, empty or too long, or holds control characters.
    pub fn text(&self, most: usize) -> Result<&'d str, FileError> {
        let accepted = format!("accepted is a text of one line in quotes, 1 to {most} characters");
        match self.value.map(Spanned::get_ref) {
            Some(DeValue::String(text))
                if !text.trim().is_empty() && text.chars().count() <= most && !text.chars().any(char::is_control) =>
            {
                Ok(text.trim())
            }
            _ => Err(self.refuse(accepted)),
        }
    }

    /// The same, held without heap.
    ///
    /// # Errors
    ///
    /// [`FileError`] as of [`Field::text`], and when its characters take more than `N` bytes.
    pub fn held<const N: usize>(&self, most: usize) -> Result<heapless::String<N>, FileError> {
        self.text(most)?.try_into().map_err(|_| {
            self.refuse(format!("so many of its characters are not ASCII, accepted are {N} bytes of UTF-8"))
        })
    }

    /// One of a few words.
    ///
    /// # Errors
    ///
    /// [`FileError`] listing the words when it is none of them.
    pub fn choice<T: Copy>(&self, choices: &[(&str, T)]) -> Result<T, FileError> {
        if let Some(DeValue::String(text)) = self.value.map(Spanned::get_ref) {
            if let Some((_, choice)) = choices.iter().find(|(word, _)| *word == text.trim()) {
                return Ok(*choice);
            }
        }
        let words: Vec<String> = choices.iter().map(|(word, _)| format!("\"{word}\"")).collect();
        Err(self.refuse(format!("accepted are {}", words.join(", "))))
    }
}
