//! A JSON schema of the burner file, from the table of inputs.
//!
//! It holds what a schema can say: keys, kinds, ranges of plain numbers, and which keys and sections go together. What
//! compares values is left to the reader.

use std::format;
use std::prelude::rust_2024::*;
use std::vec::Vec;

use serde_json::{Map, Value, json};

use crate::file::blank::explained;
use crate::file::blank::sentences;
use crate::plant::description::value::Kind;
use crate::plant::description::{Description, Otherwise, Presence, Row, Rule, Section};
use crate::quantity::{ignores_case, spellings};

/// A number as it is read from text: decimal, fraction, or whole number and fraction.
const NUMBER: &str = r"[+-]?([0-9]+\.?[0-9]*|\.[0-9]+)([eE][+-]?[0-9]+)?(/[0-9]+| [0-9]+/[0-9]+)?";

/// The schema, by the draft 2020-12.
///
/// # Examples
///
/// ```
/// let schema = jetwright::file::schema::schema();
/// assert_eq!(schema["properties"]["jet"]["properties"]["edge"]["enum"][1], "square");
/// assert_eq!(schema["required"][0], "name");
/// ```
#[must_use]
pub fn schema() -> Value {
    let sections = || Description::SECTIONS.iter().filter(|section| section.list.is_empty());
    let mut root = Value::Null;
    for section in sections() {
        if section.name.is_empty() {
            root = table(section);
            root["$schema"] = json!("https://json-schema.org/draft/2020-12/schema");
            root["title"] = json!("A burner file for jetwright");
            continue;
        }
        root["properties"][section.name] = listed(section);
        let is_needed = matches!(section.presence, Presence::Needed | Presence::List { is_needed: true, .. });
        if let (true, Some(required)) = (is_needed, root["required"].as_array_mut()) {
            required.push(json!(section.name));
        }
    }
    let mut between = Vec::new();
    for section in sections() {
        for rule in section.rules {
            let (key, then) = match *rule {
                Rule::NeedsSection(key, other) => (key, json!({ "required": [other] })),
                Rule::NotBeside(key, other) => (key, json!({ "not": { "required": [other] } })),
                _ => continue,
            };
            let named = if key.is_empty() { json!({}) } else { json!({ "required": [key] }) };
            let holds = if section.is_list() { json!({ "contains": named }) } else { named };
            let when = json!({ "required": [section.name], "properties": { section.name: holds } });
            between.push(json!({ "if": when, "then": then }));
        }
    }
    root["allOf"] = json!(between);
    root
}

/// A section or the list of one.
fn listed(section: &Section) -> Value {
    let Presence::List { least, most, .. } = section.presence else { return table(section) };
    json!({ "type": "array", "minItems": least, "maxItems": most, "items": table(section) })
}

fn table(section: &Section) -> Value {
    let mut properties = Map::new();
    for list in section.lists.iter().filter_map(|list| Description::list(section.name, list)) {
        properties.insert(list.list.into(), listed(list));
    }
    for row in section.rows {
        properties.insert(row.key.into(), value(row));
    }
    let needed = section.rows.iter().filter(|row| row.otherwise == Otherwise::Needed).map(|row| row.key);
    let mut table = json!({
        "type": "object",
        "description": sentences(section.help),
        "properties": properties,
        "required": needed.collect::<Vec<_>>(),
        "additionalProperties": false,
    });
    let rules: Vec<_> = section.rules.iter().filter_map(rule).collect();
    if !rules.is_empty() {
        table["allOf"] = json!(rules);
    }
    table
}

fn value(row: &Row) -> Value {
    let kind = (row.kind)();
    let range = kind.input().map(|input| input.range());
    let number = |is_whole: bool| {
        let mut number = json!({ "type": if is_whole { "integer" } else { "number" } });
        if let Some(range) = range {
            number[if range.is_open { "exclusiveMinimum" } else { "minimum" }] = json!(range.min);
            number["maximum"] = json!(range.max);
        }
        number
    };
    let mut value = match kind {
        Kind::Quantity { units, behind, .. } => {
            let symbols: Vec<_> = units.iter().flat_map(spellings).map(spelled).collect();
            let behind: Vec<_> = behind.iter().map(|word| either_case(word)).collect();
            let behind = if behind.is_empty() { String::new() } else { format!(" *({})", behind.join("|")) };
            let text =
                json!({ "type": "string", "pattern": format!("^ *{NUMBER} *({}){behind} *$", symbols.join("|")) });
            let is_bare = units.iter().any(|unit| unit.symbol.is_empty());
            if is_bare { json!({ "anyOf": [number(false), text] }) } else { text }
        }
        Kind::Whole { .. } => json!({ "anyOf": [number(true), { "type": "string", "pattern": "^ *[+]?[0-9]+ *$" }] }),
        Kind::Text { most } => json!({ "type": "string", "minLength": 1, "maxLength": most }),
        Kind::Word { .. } => json!({ "enum": kind.words().collect::<Vec<_>>() }),
    };
    value["description"] = json!(explained(row));
    if let Otherwise::This { value: default, .. } = row.otherwise {
        value["default"] = json!(default);
    }
    value["examples"] = json!([row.example.one()]);
    value
}

/// A spelling of a unit as a pattern, of either case where the reader of quantities takes either.
fn spelled(spelling: &str) -> String {
    if ignores_case(spelling) { either_case(spelling) } else { spelling.chars().map(escaped).collect() }
}

fn either_case(word: &str) -> String {
    let letter = |letter: char| {
        if letter.is_ascii_alphabetic() {
            format!("[{}{}]", letter.to_ascii_uppercase(), letter.to_ascii_lowercase())
        } else {
            escaped(letter)
        }
    };
    word.chars().map(letter).collect()
}

fn escaped(letter: char) -> String {
    if "./^$".contains(letter) { format!("\\{letter}") } else { letter.into() }
}

/// What a schema can say of a rule between the keys of a section.
fn rule(rule: &Rule) -> Option<Value> {
    let required = |keys: &[&str]| json!({ "required": keys });
    let any = |keys: &[&str]| json!({ "anyOf": keys.iter().map(|key| required(&[key])).collect::<Vec<_>>() });
    Some(match *rule {
        Rule::OneOf(sets) => {
            let one = |set: &&[&str]| {
                let others: Vec<_> =
                    sets.iter().flat_map(|set| set.iter().copied()).filter(|key| !set.contains(key)).collect();
                json!({ "required": set, "not": any(&others) })
            };
            json!({ "oneOf": sets.iter().map(one).collect::<Vec<_>>() })
        }
        Rule::NotBoth(first, second) => json!({ "not": { "allOf": [any(first), any(second)] } }),
        Rule::Any(keys) => any(keys),
        Rule::Together(keys) => json!({ "if": any(keys), "then": required(keys) }),
        Rule::Needs(key, other) => json!({ "if": required(&[key]), "then": required(&[other]) }),
        Rule::ByWord(key, words) => {
            let by_word = |(word, keys): &(&str, &'static [&str])| {
                let others: Vec<_> =
                    words.iter().flat_map(|(_, keys)| keys.iter().copied()).filter(|key| !keys.contains(key)).collect();
                let is_word = json!({ "required": [key], "properties": { key: { "const": word } } });
                json!({ "if": is_word, "then": { "required": keys, "not": any(&others) } })
            };
            json!({ "allOf": words.iter().map(by_word).collect::<Vec<_>>() })
        }
        Rule::NeedsSection(..) | Rule::NotBeside(..) | Rule::Check(_) => return None,
    })
}
