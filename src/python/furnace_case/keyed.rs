//! A plain mapping read key by key, each refusal naming the key, what was given and what is accepted.

use std::format;
use std::prelude::rust_2024::*;

use pyo3::PyErr;
use pyo3::exceptions::PyValueError;
use serde_json::{Map, Value};

/// An answer or a refusal.
pub type Read<T> = Result<T, PyErr>;

/// The refusal of what stands at a path.
pub fn refused(path: &str, given: &str, accepted: &str) -> PyErr {
    PyValueError::new_err(format!("{path}: {given} is given; accepted: {accepted}"))
}

/// What is given, shortened where it is long.
fn shown(value: &Value) -> String {
    let text = format!("{value}");
    if text.chars().count() <= 60 { text } else { text.chars().take(57).chain("...".chars()).collect() }
}

/// A mapping and where it stands.
pub struct Keyed<'a> {
    pub path: String,
    entries: &'a Map<String, Value>,
}

impl<'a> Keyed<'a> {
    /// A value that must be a mapping with no other keys than these.
    pub fn of(value: &'a Value, path: String, keys: &[&str]) -> Read<Self> {
        let Value::Object(entries) = value else {
            return Err(refused(&path, &shown(value), &format!("a mapping with {}", keys.join(", "))));
        };
        let made = Self { path, entries };
        match entries.keys().find(|key| !keys.contains(&key.as_str())) {
            Some(key) => {
                let given = format!("the key {key:?}");
                Err(PyValueError::new_err(format!(
                    "{}: {given} is unknown; accepted: {}",
                    made.at(key),
                    keys.join(", ")
                )))
            }
            None => Ok(made),
        }
    }

    /// The path of a key.
    pub fn at(&self, key: &str) -> String {
        if self.path.is_empty() { key.into() } else { format!("{}.{key}", self.path) }
    }

    /// Whether a key is given.
    pub fn has(&self, key: &str) -> bool {
        self.get(key).is_some()
    }

    /// What stands under a key.
    pub fn get(&self, key: &str) -> Option<&'a Value> {
        self.entries.get(key)
    }

    /// What must stand under a key.
    pub fn needed(&self, key: &str, accepted: &str) -> Read<&'a Value> {
        self.get(key)
            .ok_or_else(|| PyValueError::new_err(format!("{}: the key is missing; accepted: {accepted}", self.at(key))))
    }

    /// A number within bounds.
    pub fn number(&self, key: &str, least: f64, most: f64) -> Read<f64> {
        let accepted = format!("a number from {least} to {most}");
        number_of(self.needed(key, &accepted)?, &self.at(key), least, most)
    }

    /// A number within bounds where the key is given.
    pub fn optional(&self, key: &str, least: f64, most: f64) -> Read<Option<f64>> {
        if self.has(key) { self.number(key, least, most).map(Some) } else { Ok(None) }
    }

    /// Text.
    pub fn text(&self, key: &str, accepted: &str) -> Read<&'a str> {
        let value = self.needed(key, accepted)?;
        value.as_str().ok_or_else(|| refused(&self.at(key), &shown(value), accepted))
    }

    /// True or false; false where the key is absent.
    pub fn flag(&self, key: &str) -> Read<bool> {
        match self.get(key) {
            None => Ok(false),
            Some(Value::Bool(flag)) => Ok(*flag),
            Some(value) => Err(refused(&self.at(key), &shown(value), "true or false")),
        }
    }

    /// A list of so many entries, each with its path.
    pub fn list(&self, key: &str, least: usize, most: usize) -> Read<Vec<(String, &'a Value)>> {
        let accepted = format!("a list of {least} to {most} entries");
        let value = self.needed(key, &accepted)?;
        let Value::Array(entries) = value else { return Err(refused(&self.at(key), &shown(value), &accepted)) };
        if entries.len() < least || entries.len() > most {
            return Err(refused(&self.at(key), &format!("a list of {}", entries.len()), &accepted));
        }
        Ok(entries.iter().enumerate().map(|(index, entry)| (format!("{}[{index}]", self.at(key)), entry)).collect())
    }

    /// The one key of several that is given.
    pub fn one_of(&self, keys: &[&'static str]) -> Read<&'static str> {
        let given: Vec<&'static str> = keys.iter().copied().filter(|key| self.has(key)).collect();
        match given[..] {
            [one] => Ok(one),
            [] => Err(PyValueError::new_err(format!(
                "{}: none of the keys is given; accepted: one of {}",
                if self.path.is_empty() { "the case" } else { &self.path },
                keys.join(", ")
            ))),
            _ => Err(refused(&self.path, &given.join(" and "), &format!("one of {}", keys.join(", ")))),
        }
    }
}

/// A finite number within bounds.
pub fn number_of(value: &Value, path: &str, least: f64, most: f64) -> Read<f64> {
    match value.as_f64() {
        Some(number) if number >= least && number <= most => Ok(number),
        _ => Err(refused(path, &shown(value), &format!("a number from {least} to {most}"))),
    }
}
