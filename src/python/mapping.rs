//! A mapping walked like a file: no text in between, and its errors name keys, never lines.

use std::format;
use std::prelude::rust_2024::*;

use pyo3::prelude::*;
use pyo3::types::{PyBool, PyDict, PyFloat, PyInt, PyList, PyString};

use crate::file::burner_file::{self, BurnerFile};
use crate::file::node::{Node, Shape};
use crate::file::{FileError, shorten};

/// Characters of a given value that a message repeats.
const SHOWN: usize = 60;

/// A value of the mapping: dictionaries, lists, texts and numbers.
struct Held<'py>(Bound<'py, PyAny>);

impl Node for Held<'_> {
    fn shape(&self) -> Shape<Self> {
        if let Ok(table) = self.0.cast::<PyDict>() {
            Shape::Table(table.iter().map(|(key, value)| (shorten(&key.to_string(), SHOWN), Held(value))).collect())
        } else if let Ok(list) = self.0.cast::<PyList>() {
            Shape::List(list.iter().map(Held).collect())
        } else if let Ok(text) = self.0.cast::<PyString>() {
            Shape::Text(text.to_string())
        } else if !self.0.is_instance_of::<PyBool>()
            && (self.0.is_instance_of::<PyInt>() || self.0.is_instance_of::<PyFloat>())
        {
            Shape::Bare(self.0.to_string())
        } else {
            Shape::Other
        }
    }

    fn line(&self) -> Option<usize> {
        None
    }

    fn given(&self) -> String {
        match self.shape() {
            Shape::Table(_) => "a mapping".into(),
            Shape::Text(text) => format!("\"{}\"", shorten(&text, SHOWN)),
            _ => shorten(&self.0.to_string(), SHOWN),
        }
    }
}

/// The burner that a text or a mapping describes; `name` is what messages call it.
pub fn burner_of(source: &Bound<'_, PyAny>, name: &str) -> Result<BurnerFile, FileError> {
    match source.cast::<PyString>() {
        Ok(text) => burner_file::parse(&text.to_string(), name),
        Err(_) => burner_file::of(&Held(source.clone()), name),
    }
}
