//! Lines of a text page.

use std::format;
use std::prelude::rust_2024::*;

/// Columns of the page.
pub(crate) const WIDTH: usize = 96;
/// Where sentences begin beside their labels.
const INDENT: usize = 9;

/// Adds a paragraph: the first line after a label, the others under it.
pub(crate) fn paragraph(page: &mut String, label: &str, text: &str) {
    let line = format!("{label:<INDENT$}");
    wrap(page, line, INDENT, text);
}

/// Adds sentences without a margin.
pub(crate) fn line(page: &mut String, text: &str) {
    wrap(page, String::new(), 0, text);
}

fn wrap(page: &mut String, mut line: String, indent: usize, text: &str) {
    let mut used = line.chars().count();
    // The inch of water ends in a point of its own.
    for word in text.replace("w.c..", "w.c.").split_whitespace() {
        if used > indent && used + 1 + word.chars().count() > WIDTH {
            page.push_str(line.trim_end());
            page.push('\n');
            line = " ".repeat(indent);
            used = indent;
        } else if used > indent {
            line.push(' ');
            used += 1;
        }
        line.push_str(word);
        used += word.chars().count();
    }
    page.push_str(line.trim_end());
    page.push('\n');
}

/// Adds a heading under an empty line.
pub(crate) fn heading(page: &mut String, text: &str) {
    page.push('\n');
    page.push_str(text);
    page.push('\n');
}
