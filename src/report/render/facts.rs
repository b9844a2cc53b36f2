//! What programs find in an answer, by its keys: the one source of every number on a card or in a drawing.

use std::prelude::rust_2024::*;

use serde_json::Value;

use crate::report::render::json;
use crate::report::tree::Tree;

/// A whole answer, a row of it or a block in it.
#[derive(Clone, Debug)]
pub struct Facts(Value);

impl Facts {
    /// Those of an answer.
    #[must_use]
    pub fn of(tree: &Tree) -> Self {
        Self(json::object(tree))
    }

    fn at(&self, path: &str) -> &Value {
        path.split('.').fold(&self.0, |found, key| &found[key])
    }

    /// A number, SI; none where it does not apply.
    #[must_use]
    pub fn number(&self, path: &str) -> Option<f64> {
        self.at(path).as_f64()
    }

    /// A word; none where it does not apply.
    #[must_use]
    pub fn word(&self, path: &str) -> Option<&str> {
        self.at(path).as_str()
    }

    /// Whether something is true; not where it does not apply.
    #[must_use]
    pub fn is(&self, path: &str) -> bool {
        self.at(path).as_bool().unwrap_or(false)
    }

    /// The rows of an array.
    #[must_use]
    pub fn rows(&self, path: &str) -> Vec<Facts> {
        self.at(path).as_array().into_iter().flatten().cloned().map(Facts).collect()
    }

    /// The words of an array.
    #[must_use]
    pub fn words(&self, path: &str) -> Vec<&str> {
        self.at(path).as_array().into_iter().flatten().filter_map(Value::as_str).collect()
    }
}
