//! CSV: the rows of an answer, with the keys and values of its JSON.

use std::prelude::rust_2024::*;
use std::string::ToString;
use std::vec;

use serde_json::{Map, Value as Json};

use crate::report::render::json;
use crate::report::tree::Tree;

/// The answer's rows, or its own row without the sections in it.
///
/// # Errors
///
/// None in practice: the text is written to memory.
pub fn render(tree: &Tree) -> Result<String, csv::Error> {
    match tree.csv {
        Some(section) => csv_of(&json::rows_of(section, &tree.nodes).unwrap_or_default()),
        None => {
            let row = json::of(tree.section, &tree.nodes).into_iter();
            csv_of(&[row.filter(|(_, value)| !value.is_object() && !value.is_array()).collect()])
        }
    }
}

/// Rows as CSV: the first row's keys, then the values.
///
/// # Errors
///
/// None in practice: the text is written to memory.
pub fn csv_of(rows: &[Map<String, Json>]) -> Result<String, csv::Error> {
    let mut writer = csv::Writer::from_writer(vec![]);
    if let Some(first) = rows.first() {
        writer.write_record(first.keys())?;
    }
    for row in rows {
        writer.write_record(row.values().map(|value| match value {
            Json::String(text) => text.clone(),
            Json::Null => String::new(),
            other => other.to_string(),
        }))?;
    }
    let bytes = writer.into_inner().map_err(|error| csv::Error::from(error.into_error()))?;
    Ok(String::from_utf8_lossy(&bytes).into_owned())
}
