//! The blank burner file: every section and key with what it is, what holds without it, and an example.

use std::format;
use std::prelude::rust_2024::*;
use std::vec::Vec;

use crate::file::begin::{Trade, compose, example_answers};
use crate::plant::description::{Breach, Description, Example, Otherwise, Presence, Row, Rule, Section};
use crate::prose::breaches::breach_words;

/// First line of a burner file, by which editors find the schema that completes and checks it: an open convention of
/// TOML's editors.
pub const SCHEMA_LINE: &str = "#:schema ./burner.schema.json";
/// Sections and keys of the short file.
const SHORT: &[(&str, &[&str])] = &[
    ("", &["name"]),
    ("site", &["altitude", "air_temperature"]),
    ("gas", &["kind"]),
    ("jet", &["drill", "edge"]),
    ("blower", &["shut_off", "free_delivery"]),
    ("head", &["ports", "port_diameter", "open_fraction", "port_length"]),
    ("chamber", &["exhaust_opening", "temperature"]),
    ("setting", &["name", "gauge"]),
];
/// What stands before the first key: cautions, and how to write a value.
const HEAD: &str = include_str!("blank_head.txt");
/// Longest line of a remark.
const WIDTH: usize = 116;

/// A commented burner file to start from, which itself reads without an error.
///
/// # Examples
///
/// ```
/// use jetwright::file::{blank::blank, burner_file::parse};
/// assert!(!parse(&blank(), "blank").unwrap().entries.settings.is_empty());
/// ```
#[must_use]
pub fn blank() -> String {
    let mut text = format!("{SCHEMA_LINE}\n{HEAD}");
    for section in Description::SECTIONS.iter().filter(|section| section.list.is_empty()) {
        text.push('\n');
        let entries = shown(section);
        // A section of which nothing is in use is a remark as a whole.
        let mark = if entries == 0 { "# " } else { "" };
        if !section.name.is_empty() {
            text.push_str(&remark(&(sentences(section.help) + &ways(section))));
        }
        for entry in 0..entries.max(1) {
            if entry > 0 {
                text.push('\n');
            }
            if !section.name.is_empty() {
                let (open, close) = if section.is_list() { ("[[", "]]") } else { ("[", "]") };
                text.push_str(&format!("{mark}{open}{}{close}\n", section.name));
            }
            for list in section.lists.iter().filter_map(|list| Description::list(section.name, list)) {
                if entry == 0 {
                    text.push_str(&points(list));
                }
            }
            for row in section.rows {
                text.push_str(&key(row, entry));
            }
        }
    }
    text
}

/// As few keys as a sheet needs: site, gas, jet, blower, head, chamber and one setting.
///
/// # Examples
///
/// ```
/// use jetwright::file::{blank::short, burner_file::parse};
/// assert!(parse(&short(), "short").unwrap().entries.head.is_some());
/// ```
#[must_use]
pub fn short() -> String {
    let mut text = format!("{SCHEMA_LINE}\n");
    text.push_str(&remark(
        "A short burner file for jetwright. Every number is INVENTED: put in your own. Every key: jetwright blank.",
    ));
    for (name, keys) in SHORT {
        let Some(section) = Description::section(name) else { continue };
        text.push('\n');
        if !name.is_empty() {
            let (open, close) = if section.is_list() { ("[[", "]]") } else { ("[", "]") };
            text.push_str(&format!("{open}{name}{close}\n"));
        }
        for row in keys.iter().filter_map(|key| section.row(key)) {
            text.push_str(&format!(
                "{}{} = {}\n",
                remark(&sentences(row.help)),
                row.key,
                written(row, row.example.one())
            ));
        }
    }
    text
}

/// The file of a trade's examples, as `jetwright begin` writes one.
///
/// # Examples
///
/// ```
/// use jetwright::file::{begin::TRADES, blank::for_trade, burner_file::parse};
/// assert_eq!(parse(&for_trade(&TRADES[2]), "kiln").unwrap().entries.settings[1].name, "rise");
/// ```
#[must_use]
pub fn for_trade(trade: &Trade) -> String {
    compose(&example_answers(trade.key))
}

/// The ways of which one is chosen.
fn ways(section: &Section) -> String {
    let one_of = |rule: &Rule| match *rule {
        Rule::OneOf(sets) => Some(format!(" Here {}.", breach_words(&Breach::OneOf(sets), &|key| key.into()))),
        _ => None,
    };
    section.rules.iter().filter_map(one_of).collect()
}

/// How many entries of a section have something in use.
fn shown(section: &Section) -> usize {
    let used = |row: &Row| if let Example::Used(examples) = row.example { examples.len() } else { 0 };
    section.rows.iter().map(used).max().unwrap_or(0)
}

/// A key with its remark, in the first entry; what it is in use for, in the others.
fn key(row: &Row, entry: usize) -> String {
    let used = match row.example {
        Example::Used(examples) => examples.get(entry).copied().unwrap_or_default(),
        Example::Offered(_) => "",
    };
    let remark = if entry == 0 { remark(&explained(row)) } else { String::new() };
    match (used, entry) {
        ("", 0) => format!("{remark}# {} = {}\n", row.key, written(row, row.example.one())),
        ("", _) => String::new(),
        (used, _) => format!("{remark}{} = {}\n", row.key, written(row, used)),
    }
}

/// A list that a key holds, with remarks of what its entries hold.
fn points(list: &Section) -> String {
    let mut about = sentences(list.help);
    if let Presence::List { least, most, .. } = list.presence {
        about.push_str(&format!(" {least} to {most} of them, each with"));
    }
    for (index, row) in list.rows.iter().enumerate() {
        let kind = if row.otherwise == Otherwise::Needed { "" } else { "if known, " };
        let what = explained(row);
        about.push_str(&format!(
            "{} {kind}{}: {}",
            if index == 0 { "" } else { ";" },
            row.key,
            what.trim_end_matches('.')
        ));
    }
    let mut text = remark(&(about + "."));
    let entry = |entry: usize| {
        let pair = |row: &Row| {
            let value = match row.example {
                Example::Used(examples) => examples.get(entry).copied().unwrap_or_default(),
                Example::Offered(example) if shown(list) == 0 => example,
                Example::Offered(_) => "",
            };
            (!value.is_empty()).then(|| format!("{} = {}", row.key, written(row, value)))
        };
        format!("{{ {} }}", list.rows.iter().filter_map(pair).collect::<Vec<_>>().join(", "))
    };
    match shown(list) {
        0 => text.push_str(&format!("# {} = [{}]\n", list.list, entry(0))),
        count => {
            text.push_str(&format!("{} = [\n", list.list));
            (0..count).for_each(|index| text.push_str(&format!("    {},\n", entry(index))));
            text.push_str("]\n");
        }
    }
    text
}

/// A value as TOML writes it.
fn written(row: &Row, value: &str) -> String {
    if (row.kind)().is_bare() { value.into() } else { format!("\"{value}\"") }
}

/// Lines of help as one text.
pub(crate) fn sentences(help: &[&str]) -> String {
    help.iter().map(|line| line.trim()).collect::<Vec<_>>().join(" ")
}

/// What a key is, and what holds without it.
pub(crate) fn explained(row: &Row) -> String {
    format!(
        "{}{}",
        sentences(row.help),
        without(row).map_or(String::new(), |without| format!(" Without it: {without}."))
    )
}

/// What holds without a key.
pub(crate) fn without(row: &Row) -> Option<String> {
    match row.otherwise {
        Otherwise::Needed | Otherwise::Nothing => None,
        Otherwise::This { value, .. } => Some(value.into()),
        Otherwise::Of(key) => Some(format!("that of {key}")),
        Otherwise::Rule(rule) => Some(rule.into()),
    }
}

fn remark(text: &str) -> String {
    let (mut remark, mut line) = (String::new(), String::from("#"));
    for word in text.split_whitespace() {
        if line.len() + 1 + word.len() > WIDTH {
            remark.push_str(&line);
            remark.push('\n');
            line = String::from("#");
        }
        line.push(' ');
        line.push_str(word);
    }
    remark.push_str(&line);
    remark.push('\n');
    remark
}
