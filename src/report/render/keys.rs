//! The documentation of every key, out of the constant lists alone.

use std::collections::BTreeSet;
use std::format;
use std::prelude::rust_2024::*;
use std::vec;

use crate::report::field::Column;
use crate::report::tree::{Member, Section};

const HEAD: &str = "\
Every key of the answers for programs (`--format json` and `--format csv`).

Values are in SI base units with the unit at the end of the key; temperatures are in kelvin, shares run from 0 to 1, a
plain number has the unit 1. Gauge pressures are above the air of the site. A key is always there; what does not apply
is null in JSON and empty in CSV, and only the keys below that say so can be. CSV holds the rows of `flow`, `chamber`
and `setpoints`, the sizes of `jet`, the settings of `sheet` and the one row of every other answer, with the same keys
in the same order.
";

/// The document of these answers.
#[must_use]
pub fn document(answers: &[&'static Section]) -> String {
    let mut document = HEAD.to_owned();
    let mut told = Told::default();
    for answer in answers {
        told.section(&mut document, answer);
    }
    document.push('\n');
    document.push_str(include_str!("../warning_words.md"));
    document
}

/// The words in lines of the document's width.
fn wrapped(words: &str) -> String {
    const WIDTH: usize = 120;
    let mut text = String::new();
    let mut used = 0;
    for word in words.split_whitespace() {
        let length = word.chars().count();
        if used > 0 && used + 1 + length > WIDTH {
            text.push('\n');
            used = 0;
        } else if used > 0 {
            text.push(' ');
            used += 1;
        }
        text.push_str(word);
        used += length;
    }
    text
}

/// What has been told, so that nothing is told twice.
#[derive(Default)]
struct Told {
    keys: BTreeSet<String>,
    sections: BTreeSet<&'static str>,
}

impl Told {
    fn section(&mut self, document: &mut String, section: &'static Section) {
        if !self.sections.insert(section.name) {
            return;
        }
        document.push_str(&format!("\n## {}\n", section.name));
        if !section.about.is_empty() {
            document.push_str(&format!("\n{}\n", wrapped(section.about)));
        }
        let mut above = vec![];
        for member in section.members {
            match member {
                Member::Columns(columns) => {
                    for column in columns.iter().filter(|column| column.is_for_programs()) {
                        self.column(document, column, &mut above);
                    }
                }
                Member::Section(inner) => {
                    let link = inner.name.replace(": ", "-").replace(' ', "-");
                    let words = format!("{}; see [{}](#{link}).", inner.words, inner.name);
                    self.key(document, inner.key, &words, &mut above);
                }
            }
        }
        if !above.is_empty() {
            document.push_str("\nAs above: ");
            document.push_str(&above.join(",\n"));
            document.push_str(".\n");
        }
        for inner in section.sections() {
            self.section(document, inner);
        }
    }

    fn column(&mut self, document: &mut String, column: &Column, above: &mut Vec<String>) {
        let (_, unit) = column.kind.si();
        let words = column.words;
        let words = if unit.is_empty() { words.into() } else { format!("Unit: {unit}. {words}") };
        self.key(document, column.key, &words, above);
        if column.within {
            for (end, words) in column.ends().iter().zip(["Least", "Most"]) {
                let words = format!(
                    "Unit: {unit}. {words} that `{}` may be, 95 times in 100 within both ends (k = 2); null where that \
                     is not\nknown.",
                    column.key
                );
                self.key(document, end, &words, above);
            }
        }
    }

    fn key(&mut self, document: &mut String, key: &str, words: &str, above: &mut Vec<String>) {
        if self.keys.insert(key.into()) {
            document.push_str(&format!("\n### {key}\n\n{}\n", wrapped(words)));
        } else {
            above.push(format!("[`{key}`](#{key})"));
        }
    }
}
