//! The page of every row with our value beside it.

use super::ledger;
use super::row::{Row, rows};
use super::{TOPICS, ours};
use crate::tolerance::share_used;
use std::fmt::Write;

const HEAD: &str = "# Published values and ours

Written by `JETWRIGHT_WRITE_PAGE=1 cargo test --test main reference`; a test checks that it is current. The rows are
the files of this directory, read by the Rust and the Python tests alike; `generate/` holds the scripts that wrote many
of them.

How a published number came here ends its source: *found* in print, *found in code* of a general-purpose library,
*computed with* a library and its version, *computed from the formula* of the source by a script that shares nothing
with this crate, or *from memory*, which carries no weight of its own. A difference is relative to the published value.

A source that says *a wide band* or *indicative* has a tolerance as wide as authors differ, set with our value in view:
such a row pins that we still agree, and proves no more. Printings of one table, and reprints of one author's
measurements, count as one source.
";

/// The whole page.
pub fn page() -> String {
    let mut page = String::from(HEAD);
    page.push_str("\n## In short\n\nTolerance used is the largest share of a row's own tolerance.\n\n");
    page.push_str("| topic | quantity | rows | lines | known | largest difference | tolerance used |\n|---|---|--:|--:|---|--:|--:|\n");
    let topics: Vec<(&str, Vec<(Row, f64)>)> = TOPICS.iter().map(|topic| (*topic, answered(topic))).collect();
    for (topic, answers) in &topics {
        for (quantity, rows) in by_quantity(answers) {
            let largest = rows.iter().map(|(row, found)| difference(row, *found).abs()).fold(0.0, f64::max);
            let used =
                rows.iter().map(|(row, found)| share_used(*found, row.value, &row.tolerance)).fold(0.0, f64::max);
            let known: Vec<&Row> = rows.iter().map(|(row, _)| row).collect();
            let (count, lines, ways) = (rows.len(), ledger::lines(&known), ledger::ways(&known));
            let used = used * 100.0;
            writeln!(page, "| {topic} | {quantity} | {count} | {lines} | {ways} | {largest:.4} % | {used:.0} % |")
                .unwrap();
        }
    }
    page.push_str("\n## Fewer than two lines\n\nA quantity that is not here has two or more.\n\n");
    for (quantity, reason) in ledger::REASONS {
        writeln!(page, "- `{quantity}`: {reason}").unwrap();
    }
    page.push_str(ledger::DECISIONS);
    for (topic, answers) in &topics {
        table(&mut page, topic, answers);
    }
    page
}

fn answered(topic: &str) -> Vec<(Row, f64)> {
    let answer = |row: Row| {
        let found = ours(topic, &row).unwrap_or_else(|| panic!("no answer to {row}"));
        (row, found)
    };
    rows(topic).into_iter().map(answer).collect()
}

fn by_quantity(answers: &[(Row, f64)]) -> Vec<(&str, Vec<&(Row, f64)>)> {
    let mut groups: Vec<(&str, Vec<&(Row, f64)>)> = Vec::new();
    for answer in answers {
        match groups.iter_mut().find(|(quantity, _)| *quantity == answer.0.quantity) {
            Some((_, group)) => group.push(answer),
            None => groups.push((&answer.0.quantity, vec![answer])),
        }
    }
    groups
}

/// The rows of a topic, their sources numbered and listed once below.
fn table(page: &mut String, topic: &str, answers: &[(Row, f64)]) {
    write!(page, "\n## {topic}\n\n| quantity | inputs | published | ours | difference | tolerance | source |\n")
        .unwrap();
    page.push_str("|---|---|--:|--:|--:|--:|--:|\n");
    let mut sources: Vec<&str> = Vec::new();
    for (row, found) in answers {
        let number = sources.iter().position(|source| *source == row.source).unwrap_or_else(|| {
            sources.push(&row.source);
            sources.len() - 1
        }) + 1;
        let inputs = row.inputs.replace('|', ", ").replace(';', "; ");
        let off = difference(row, *found);
        writeln!(
            page,
            "| {} | {inputs} | {} | {} | {} | {} | {number} |",
            row.quantity,
            format!("{} {}", row.printed, row.unit).trim_end(),
            significant(*found),
            percent(off),
            row.tolerance
        )
        .unwrap();
    }
    page.push('\n');
    for (index, source) in sources.iter().enumerate() {
        writeln!(page, "{}. {source}", index + 1).unwrap();
    }
}

/// Relative difference, percent.
fn difference(row: &Row, found: f64) -> f64 {
    (found / row.value - 1.0) * 100.0
}

/// A percentage whose digits do not change with the last bit of a result.
fn percent(value: f64) -> String {
    let text = format!("{value:+.4} %");
    if text == "-0.0000 %" { "+0.0000 %".into() } else { text }
}

/// Six significant digits.
fn significant(value: f64) -> String {
    if value == 0.0 {
        return "0".into();
    }
    let magnitude = value.abs().log10().floor() as i32;
    if (-3..9).contains(&magnitude) {
        format!("{value:.*}", (5 - magnitude).max(0) as usize)
    } else {
        format!("{value:.5e}")
    }
}
