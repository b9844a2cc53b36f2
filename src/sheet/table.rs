//! Plain tables of text: no rules, numbers to the right.

use std::prelude::rust_2024::*;

use comfy_table::{CellAlignment, ContentArrangement, Table, presets};

/// A table of a heading row and rows; the first column and every column in `left` stand to the left, others to
/// the right. Lines carry no trailing blanks.
#[must_use]
pub fn table(heading: &[&str], left: &[usize], rows: &[Vec<String>]) -> String {
    let mut table = Table::new();
    table.load_preset(presets::NOTHING).set_content_arrangement(ContentArrangement::Disabled);
    table.set_header(heading.to_vec());
    for row in rows {
        table.add_row(row.clone());
    }
    for (index, column) in table.column_iter_mut().enumerate() {
        column.set_padding((if index == 0 { 2 } else { 1 }, 1));
        let to_left = index == 0 || left.contains(&index);
        column.set_cell_alignment(if to_left { CellAlignment::Left } else { CellAlignment::Right });
    }
    let mut text = String::new();
    for line in table.lines() {
        text.push_str(line.trim_end());
        text.push('\n');
    }
    text
}
