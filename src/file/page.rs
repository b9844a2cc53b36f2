//! The page of every input, from the table of inputs: kept as `src/plant/description/inputs.md`.

use std::format;
use std::prelude::rust_2024::*;
use std::vec::Vec;

use crate::file::blank::{sentences, without};
use crate::plant::description::value::Kind;
use crate::plant::description::{Description, Otherwise, Presence, Row, Section};

/// The page, in Markdown.
#[must_use]
pub fn inputs_page() -> String {
    let mut page = String::from(
        "# Every input\n\nWritten by the table of inputs; a test holds this page to it. A quantity is a number with one \
         of its units, in quotes.\n",
    );
    for section in Description::SECTIONS {
        page.push_str(&format!("\n## {}\n\n{}{}\n\n", title(section), marked(section.help), presence(section)));
        page.push_str(&lines(section));
    }
    page.push_str(
        "\n# What single questions ask besides\n\nOptions of the commands, and the file of a measured jet. A file of a \
         burner has none of these.\n",
    );
    for section in Description::QUESTIONS {
        page.push_str(&format!("\n## {}\n\n{}\n\n{}", section.name, marked(section.help), lines(section)));
    }
    page
}

fn title(section: &Section) -> String {
    match (section.name, section.list) {
        ("", _) => "Before the first section".into(),
        (name, "") if section.is_list() => format!("`[[{name}]]`"),
        (name, "") => format!("`[{name}]`"),
        (name, list) => format!("`{list}` of `{name}`"),
    }
}

fn presence(section: &Section) -> String {
    match section.presence {
        Presence::Needed => " Needed.".into(),
        Presence::List { least, most, .. } => format!(" {least} to {most} of them."),
        Presence::Always | Presence::Optional => String::new(),
    }
}

/// Help as Markdown: no links, no columns.
fn marked(help: &[&str]) -> String {
    sentences(help).replace('|', r"\|").replace('[', r"\[")
}

fn lines(section: &Section) -> String {
    let head = String::from("| key | what it is | kind | accepted | without it |\n|---|---|---|---|---|\n");
    section.rows.iter().fold(head, |lines, row| lines + &line(row))
}

fn line(row: &Row) -> String {
    let kind = (row.kind)();
    let what = match kind {
        Kind::Quantity { what, .. } => what.into(),
        Kind::Whole { .. } => "a whole number".into(),
        Kind::Text { .. } => "a text".into(),
        Kind::Word { .. } => String::from("a word"),
    };
    let accepted = match kind {
        Kind::Quantity { units, behind, input, .. } => {
            let range = format!("{}", input.range());
            let units: Vec<_> = units.iter().map(|unit| unit.symbol).filter(|symbol| !symbol.is_empty()).collect();
            let units = if units.is_empty() { String::new() } else { format!("; in {}", units.join(", ")) };
            let behind = if behind.is_empty() { String::new() } else { format!(", then {}", behind.join(" or ")) };
            format!("{}{units}{behind}", range.trim_start_matches("accepted is "))
        }
        Kind::Whole { input } => format!("{}", input.range()).trim_start_matches("accepted is ").into(),
        Kind::Text { most } => format!("1 to {most} characters"),
        Kind::Word { .. } => kind.words().map(|word| format!("\"{word}\"")).collect::<Vec<_>>().join(", "),
    };
    let source = match row.otherwise {
        Otherwise::This { source, .. } if !source.is_empty() => format!(" ({source})"),
        _ => String::new(),
    };
    let otherwise = match row.otherwise {
        Otherwise::Needed => "needed".into(),
        _ => without(row).map_or("-".into(), |without| without + &source),
    };
    format!("| `{}` | {} | {what} | {accepted} | {otherwise} |\n", row.key, marked(row.help))
}

#[cfg(test)]
mod tests {
    use std::path::Path;
    use std::prelude::rust_2024::*;

    use super::inputs_page;

    /// Set to write the page anew.
    const WRITE: &str = "JETWRIGHT_WRITE_PAGES";

    #[test]
    fn the_page_is_that_of_the_table() {
        let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("src/plant/description/inputs.md");
        if std::env::var_os(WRITE).is_some() {
            std::fs::write(&path, inputs_page()).unwrap();
        }
        let kept = std::fs::read_to_string(&path).unwrap();
        assert!(kept == inputs_page(), "the table has changed: run this test with {WRITE}=1");
    }
}
