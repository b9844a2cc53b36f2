//! The types of a burner described as a mapping in Python, from the table of inputs: kept as
//! `python/jetwright/inputs.py`.

use std::format;
use std::prelude::rust_2024::*;
use std::vec::Vec;

use crate::file::blank::{explained, sentences};
use crate::plant::description::value::Kind;
use crate::plant::description::{Description, Otherwise, Presence, Row, Section};

/// The module.
#[must_use]
pub fn typed_module() -> String {
    let mut module = String::from(
        "\"\"\"A burner as a mapping, typed: the sections and keys of the burner file. Written by the table of inputs.\n\n\
         A quantity is a text of a number and a unit, such as ``\"1.8 mm\"``; a plain number may be a number.\n\"\"\"\n\n\
         from __future__ import annotations\n\nimport sys\nfrom typing import Literal, TypedDict\n\n\
         if sys.version_info >= (3, 11):\n    from typing import Required\n",
    );
    // A list stands before the section that holds it.
    let sections = Description::SECTIONS.iter().filter(|section| !section.name.is_empty());
    let (lists, tables): (Vec<_>, Vec<_>) = sections.partition(|section| !section.list.is_empty());
    for section in lists.iter().chain(&tables) {
        module.push_str(&class(&name(section), section));
    }
    let title = &Description::SECTIONS[0];
    module.push_str(&class("Burner", title));
    for section in tables {
        let of = if section.is_list() { format!("list[{}]", name(section)) } else { name(section) };
        let is_needed = matches!(section.presence, Presence::Needed | Presence::List { is_needed: true, .. });
        let of = if is_needed { format!("Required[{of}]") } else { of };
        module.push_str(&format!("    {}: {of}\n", section.name));
    }
    module
}

/// `Setting`, `BlowerPoints`.
fn name(section: &Section) -> String {
    let words = section.name.split('_').chain(section.list.split('_'));
    let capital = |word: &str| word.get(..1).map_or(String::new(), |first| first.to_uppercase() + &word[1..]);
    words.map(capital).collect()
}

fn class(name: &str, section: &Section) -> String {
    let mut class =
        format!("\n\nclass {name}(TypedDict, total=False):\n    \"\"\"{}\"\"\"\n", wrapped(&sentences(section.help)));
    for list in section.lists.iter().filter_map(|list| Description::list(section.name, list)) {
        class.push_str(&format!("\n    {}: list[{}]", list.list, self::name(list)));
    }
    for row in section.rows {
        class.push_str(&key(row));
    }
    class.push('\n');
    class
}

fn key(row: &Row) -> String {
    let kind = (row.kind)();
    let of = match kind {
        Kind::Quantity { units, .. } if units.iter().any(|unit| unit.symbol.is_empty()) => "float | str".into(),
        Kind::Whole { .. } => "int".into(),
        Kind::Quantity { .. } | Kind::Text { .. } => String::from("str"),
        Kind::Word { .. } => {
            format!("Literal[{}]", kind.words().map(|word| format!("\"{word}\"")).collect::<Vec<_>>().join(", "))
        }
    };
    let of = if row.otherwise == Otherwise::Needed { format!("Required[{of}]") } else { of };
    format!("\n    {}: {of}\n    \"\"\"{}\"\"\"", row.key, wrapped(&explained(row)))
}

fn wrapped(text: &str) -> String {
    let (mut wrapped, mut length) = (String::new(), 7);
    // A quotation mark at the end would close the docstring early.
    let text = if text.ends_with('"') { format!("{text} ") } else { text.into() };
    for word in text.split(' ') {
        if length + word.len() > 110 {
            wrapped.push_str("\n    ");
            length = 4;
        } else if !wrapped.is_empty() {
            wrapped.push(' ');
        }
        wrapped.push_str(word);
        length += word.len() + 1;
    }
    wrapped
}

#[cfg(test)]
mod tests {
    use std::path::Path;

    use super::typed_module;

    /// Set to write the module anew.
    const WRITE: &str = "JETWRIGHT_WRITE_PAGES";

    #[test]
    fn the_module_is_that_of_the_table() {
        let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("python/jetwright/inputs.py");
        if std::env::var_os(WRITE).is_some() {
            std::fs::write(&path, typed_module()).unwrap();
        }
        let kept = std::fs::read_to_string(&path).unwrap();
        assert!(kept == typed_module(), "the table has changed: run this test with {WRITE}=1");
    }
}
