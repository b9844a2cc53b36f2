//! A tree of keys and values, from a file or from a program, walked by the table of inputs into a description.

use std::format;
use std::prelude::rust_2024::*;

use crate::file::error::{FileError, Places};
use crate::plant::description::value::{Given, Kind};
use crate::plant::description::{At, Description, Otherwise, Presence, Section};
use crate::plant::{Place, Refusal};

/// Characters of a given value that a message repeats.
pub(crate) const SHOWN: usize = 60;

/// A value, and where it stands.
pub trait Node: Sized {
    /// What it is.
    fn shape(&self) -> Shape<Self>;
    /// Its line, in a file.
    fn line(&self) -> Option<usize>;
    /// How it was written, shortened.
    fn given(&self) -> String;
}

/// What a node is.
pub enum Shape<N> {
    /// Keys and what they hold, in the order they stand.
    Table(Vec<(String, N)>),
    /// A list.
    List(Vec<N>),
    /// A text.
    Text(String),
    /// A number as it was written.
    Bare(String),
    /// What no input can be.
    Other,
}

impl<N> Shape<N> {
    fn given(&self) -> Given<'_> {
        match self {
            Shape::Text(text) => Given::Text(text),
            Shape::Bare(text) => Given::Bare(text),
            Shape::Table(_) | Shape::List(_) | Shape::Other => Given::Other,
        }
    }
}

/// The description that a tree holds, and where everything stands; `file` is what messages call it.
///
/// # Errors
///
/// [`FileError`] at the first section that holds something else, key that is not known, or value that does not read.
pub fn describe<N: Node>(root: &N, file: &str) -> Result<(Description, Places), FileError> {
    let mut walk =
        Walk { description: Description::default(), places: Places { file: file.into(), ..Places::default() } };
    let Shape::Table(keys) = root.shape() else { return Err(walk.refuse(root, "", "accepted are keys and sections")) };
    let top = |section: &&Section| section.list.is_empty();
    let known: Vec<_> = Description::SECTIONS
        .iter()
        .filter(top)
        .flat_map(|section| if section.name.is_empty() { section.keys().collect() } else { std::vec![section.name] })
        .collect();
    walk.refuse_unknown(&keys, "", &known)?;
    for section in Description::SECTIONS.iter().filter(top) {
        if section.name.is_empty() {
            walk.fill(section, &keys, "", [0, 0])?;
        } else if let Some((_, node)) = keys.iter().find(|(key, _)| key == section.name) {
            walk.section(section, node, section.name, [0, 0])?;
        }
    }
    Ok((walk.description, walk.places))
}

/// Keys by an earlier name: the section, what the key was called, and what it is called now.
const RENAMED: [(&str, &str, &str); 7] = [
    ("cylinder", "holds", "capacity"),
    ("cylinder", "left", "contents"),
    ("cylinder", "empty_mass", "tare"),
    ("regulator", "needs", "minimum_inlet_pressure"),
    ("chamber", "exhaust_area", "exhaust_opening"),
    ("work", "substance", "material"),
    ("room", "monoxide", "carbon_monoxide"),
];

/// The keys of one section alone, as a tree without sections holds them; `file` is what messages call it.
///
/// # Errors
///
/// [`FileError`] at the first key that is not known, does not read, or does not go with the others.
pub fn describe_part<N: Node>(root: &N, file: &str, section: &Section) -> Result<(Description, Places), FileError> {
    let mut walk =
        Walk { description: Description::default(), places: Places { file: file.into(), ..Places::default() } };
    let Shape::Table(keys) = root.shape() else { return Err(walk.refuse(root, "", "accepted are keys")) };
    let known: Vec<_> = section.keys().collect();
    walk.refuse_unknown(&keys, "", &known)?;
    walk.fill(section, &keys, "", [0, 0])?;
    let Walk { description, places } = walk;
    section.check_keys(&description, &known).map_err(|refusal| {
        let there = Place { section: "", ..refusal.place };
        places.told(&Refusal { place: there, ..refusal })
    })?;
    Ok((description, places))
}

struct Walk {
    description: Description,
    places: Places,
}

impl Walk {
    fn refuse(&self, node: &impl Node, field: &str, accepted: impl core::fmt::Display) -> FileError {
        FileError {
            file: self.places.file.clone(),
            line: node.line(),
            field: field.into(),
            given: node.given(),
            accepted: format!("{accepted}"),
        }
    }

    fn record(&mut self, node: &impl Node, field: &str, given: String) {
        self.places.fields.insert(field.into(), (node.line(), given));
    }

    /// Reads a section, or the list of a key.
    fn section<N: Node>(&mut self, section: &Section, node: &N, field: &str, at: At) -> Result<(), FileError> {
        let given = node.given();
        self.record(node, field, given);
        match (section.presence, node.shape()) {
            (Presence::List { most, .. }, shape) => {
                let key = field.rsplit('.').next().unwrap_or_default();
                let accepted =
                    format!("accepted are up to {most} tables, each begun with [[{key}]] or written in braces");
                let Shape::List(nodes) = shape else { return Err(self.refuse(node, field, accepted)) };
                if nodes.len() > most {
                    let given = format!("{} tables", nodes.len());
                    return Err(FileError { given, ..self.refuse(node, field, accepted) });
                }
                for (index, node) in nodes.iter().enumerate() {
                    let field = format!("{field}[{}]", index + 1);
                    let Shape::Table(keys) = node.shape() else { return Err(self.refuse(node, &field, accepted)) };
                    let at = if section.list.is_empty() { [index, 0] } else { [at[0], index] };
                    (section.add)(&mut self.description, at);
                    self.record(node, &field, String::new());
                    self.fill(section, &keys, &field, at)?;
                }
                Ok(())
            }
            (_, Shape::Table(keys)) => {
                (section.add)(&mut self.description, at);
                self.record(node, field, String::new());
                self.fill(section, &keys, field, at)
            }
            _ => Err(self.refuse(node, field, format!("accepted is a section [{field}]"))),
        }
    }

    /// Reads the keys of one table.
    fn fill<N: Node>(&mut self, section: &Section, keys: &[(String, N)], field: &str, at: At) -> Result<(), FileError> {
        if !field.is_empty() {
            let known: Vec<_> = section.keys().collect();
            self.refuse_unknown(keys, field, &known)?;
        }
        let path = |key: &str| if field.is_empty() { key.into() } else { format!("{field}.{key}") };
        let held = |key: &str| keys.iter().find(|(other, _)| other == key).map(|(_, node)| node);
        for row in section.rows {
            let path = path(row.key);
            let Some(node) = held(row.key) else {
                if row.otherwise == Otherwise::Needed {
                    let missing = (row.put)(&mut self.description, at, Given::Other);
                    missing.map_err(|error| {
                        let like = format!("{error}, such as \"{}\"", row.example.one());
                        let accepted = if let Kind::Text { .. } = (row.kind)() { like } else { format!("{error}") };
                        FileError { given: "nothing".into(), ..self.places.refuse(&path, accepted) }
                    })?;
                }
                continue;
            };
            let read = (row.put)(&mut self.description, at, node.shape().given());
            read.map_err(|error| self.refuse(node, &path, error))?;
            self.record(node, &path, node.given());
        }
        for list in section.lists.iter().filter_map(|list| Description::list(section.name, list)) {
            if let Some(node) = held(list.list) {
                self.section(list, node, &path(list.list), at)?;
            }
        }
        Ok(())
    }

    fn refuse_unknown<N: Node>(&self, keys: &[(String, N)], field: &str, known: &[&str]) -> Result<(), FileError> {
        let Some((key, node)) = keys.iter().find(|(key, _)| !known.contains(&key.as_str())) else { return Ok(()) };
        let path = if field.is_empty() { key.clone() } else { format!("{field}.{key}") };
        let renamed = RENAMED.iter().find(|(section, old, new)| field == *section && key == old && known.contains(new));
        let accepted = renamed.map_or_else(
            || format!("not a key known here, accepted are {}", known.join(", ")),
            |(_, _, new)| format!("this key is called \"{new}\" now"),
        );
        Err(FileError { given: String::new(), ..self.refuse(node, &path, accepted) })
    }
}
