//! A TOML document as a tree of nodes that know their lines.

use std::borrow::Cow;
use std::format;
use std::io::Read;
use std::ops::Range;
use std::path::Path;
use std::prelude::rust_2024::*;

use toml::Spanned;
use toml::de::{DeTable, DeValue};

use crate::file::error::{FileError, shorten};
use crate::file::node::{Node, SHOWN, Shape};
use crate::plant::description::Description;

/// Largest file read, in bytes; a burner file has some thousands.
pub const LARGEST_FILE: u64 = 1 << 20;

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

/// A parsed document.
pub struct Document<'t> {
    text: &'t str,
    table: Spanned<DeTable<'t>>,
}

impl<'t> Document<'t> {
    /// Parses the text; `name` is what messages call the file.
    ///
    /// # Errors
    ///
    /// [`FileError`] at the first place that is not TOML.
    pub fn parse(text: &'t str, name: &str) -> Result<Self, FileError> {
        DeTable::parse(text).map(|table| Self { text, table }).map_err(|error| {
            let span = error.span().unwrap_or_default();
            let given = text.get(span.clone()).unwrap_or_default();
            let line = whole_line(text, span.start);
            // A second table of a name that should be a list.
            let mut lists = Description::SECTIONS.iter().filter(|section| section.list.is_empty() && section.is_list());
            let is_twice = error.message().contains("duplicate key");
            let list = lists.find(|list| is_twice && line == format!("[{}]", list.name));
            let begun = list.map_or(String::new(), |list| format!("; each is begun with [[{}]]", list.name));
            // An empty span stands where something is missing: the line says more.
            let given = if given.trim().is_empty() { line } else { given };
            FileError {
                file: name.into(),
                line: Some(line_at(text.as_bytes(), span.start)),
                field: String::new(),
                given: shorten(given, SHOWN),
                accepted: format!("this is not TOML: {}{begun}", shorten(error.message(), 200)),
            }
        })
    }

    /// The keys before the first section, and the sections.
    #[must_use]
    pub fn root(&self) -> TomlNode<'_> {
        TomlNode { text: self.text, held: Held::Table(self.table.get_ref()), span: 0..0 }
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

/// A value of the document and where it stands.
pub struct TomlNode<'d> {
    text: &'d str,
    held: Held<'d>,
    span: Range<usize>,
}

enum Held<'d> {
    Table(&'d DeTable<'d>),
    Value(&'d DeValue<'d>),
}

impl<'d> TomlNode<'d> {
    fn of(&self, value: &'d Spanned<DeValue<'d>>) -> Self {
        let held = match value.get_ref() {
            DeValue::Table(table) => Held::Table(table),
            other => Held::Value(other),
        };
        Self { text: self.text, held, span: value.span() }
    }

    fn source(&self) -> &'d str {
        self.text.get(self.span.clone()).unwrap_or_default()
    }
}

impl<'d> Node for TomlNode<'d> {
    fn shape(&self) -> Shape<Self> {
        match self.held {
            Held::Table(table) => {
                let mut keys: Vec<_> = table.iter().collect();
                keys.sort_by_key(|(key, _)| key.span().start);
                let node = |(key, value): (&Spanned<Cow<'_, str>>, &'d Spanned<DeValue<'d>>)| {
                    let of = self.of(value);
                    // A section is named by its header, a value by itself.
                    let span = if matches!(of.held, Held::Table(_)) { key.span() } else { of.span.clone() };
                    (shorten(key.get_ref(), SHOWN), Self { span, ..of })
                };
                Shape::Table(keys.into_iter().map(node).collect())
            }
            Held::Value(DeValue::Array(array)) => Shape::List(array.iter().map(|value| self.of(value)).collect()),
            Held::Value(DeValue::String(text)) => Shape::Text(text.clone().into_owned()),
            Held::Value(DeValue::Integer(_) | DeValue::Float(_)) => Shape::Bare(self.source().into()),
            Held::Value(_) => Shape::Other,
        }
    }

    fn line(&self) -> Option<usize> {
        Some(line_at(self.text.as_bytes(), self.span.start))
    }

    fn given(&self) -> String {
        match self.held {
            Held::Table(_) => "a table".into(),
            Held::Value(_) => shorten(self.source(), SHOWN),
        }
    }
}
