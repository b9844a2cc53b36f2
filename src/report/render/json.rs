//! JSON: keys and SI values, in the order of the sections.

use std::format;
use std::prelude::rust_2024::*;

use serde_json::{Map, Value as Json, json};

use crate::report::field::{Column, Datum, Value};
use crate::report::tree::{Member, Node, Row, Section, Tree};

/// The answer as one object.
#[must_use]
pub fn object(tree: &Tree) -> Json {
    Json::Object(of(tree.section, &tree.nodes))
}

/// The answer, indented, with a newline at its end.
#[must_use]
pub fn render(tree: &Tree) -> String {
    format!("{:#}\n", object(tree))
}

/// What is found for a section in these parts: its fields, and the sections in it.
pub(super) fn of(section: &'static Section, nodes: &[Node]) -> Map<String, Json> {
    let mut found = Map::new();
    for member in section.members {
        match member {
            Member::Columns(columns) => {
                for column in columns.iter().filter(|column| column.is_for_programs()) {
                    put(&mut found, column, field(column, nodes));
                }
            }
            Member::Section(inner) => {
                let value = inside(inner, nodes);
                found.insert(inner.key.into(), value.unwrap_or(Json::Null));
            }
        }
    }
    found
}

/// A row of a table.
pub(super) fn row(section: &'static Section, row: &Row) -> Map<String, Json> {
    let mut found = Map::new();
    for column in section.columns().filter(|column| column.is_for_programs()) {
        put(&mut found, column, of_row(column, row));
    }
    found
}

/// The rows of a section, wherever they stand.
pub(super) fn rows_of(section: &'static Section, nodes: &[Node]) -> Option<Vec<Map<String, Json>>> {
    nodes.iter().find_map(|node| match node {
        Node::Table(table) if is(table.section, section) => {
            Some(table.rows.iter().map(|cells| row(section, cells)).collect())
        }
        Node::Block(block) => rows_of(section, &block.nodes),
        _ => None,
    })
}

fn is(found: Option<&'static Section>, section: &'static Section) -> bool {
    found.is_some_and(|found| core::ptr::eq(found, section) || found == section)
}

/// What stands under a section's key: an array, an object, or nothing.
fn inside(section: &'static Section, nodes: &[Node]) -> Option<Json> {
    if section.is_many {
        let rows = rows_of(section, nodes)?;
        return Some(Json::Array(rows.into_iter().map(Json::Object).collect()));
    }
    nodes.iter().find_map(|node| match node {
        Node::Block(block) if is(block.section, section) => Some(Json::Object(of(section, &block.nodes))),
        // A block for the page alone may hold one for programs.
        Node::Block(block) if block.section.is_none() => inside(section, &block.nodes),
        _ => None,
    })
}

/// A field among these parts; those of other sections are not looked into.
fn field<'n>(column: &Column, nodes: &'n [Node]) -> Option<&'n Value> {
    nodes.iter().find_map(|node| match node {
        Node::Fields(row) => of_row(column, row),
        Node::Block(block) if block.section.is_none() => field(column, &block.nodes),
        _ => None,
    })
}

fn of_row<'n>(column: &Column, row: &'n Row) -> Option<&'n Value> {
    row.iter().find(|(found, ..)| found.key == column.key).map(|(_, value, _)| value)
}

fn put(found: &mut Map<String, Json>, column: &Column, value: Option<&Value>) {
    found.insert(column.key.into(), value.map_or(Json::Null, |value| datum(&value.datum)));
    if column.within {
        let ends = value.and_then(Value::ends);
        let [low, high] = column.ends();
        found.insert(low, json!(ends.map(|ends| ends.0)));
        found.insert(high, json!(ends.map(|ends| ends.1)));
    }
}

fn datum(datum: &Datum) -> Json {
    match datum {
        Datum::Nothing => Json::Null,
        Datum::Number(si) => json!(si),
        Datum::Whole(count) => json!(count),
        Datum::Truth(truth) => json!(truth),
        Datum::Word(word) => json!(word),
        Datum::Numbers(numbers) => json!(numbers),
        Datum::Words(words) => json!(words),
        Datum::Named(named) => Json::Object(named.iter().map(|(name, number)| (name.clone(), json!(number))).collect()),
    }
}
