//! Plain tables of text: no rules, numbers to the right.

use std::prelude::rust_2024::*;

use comfy_table::{CellAlignment, ColumnConstraint, ContentArrangement, Table, Width, presets};

use crate::report::render::layout::WIDTH;

/// The least room that words are broken to while nothing else is tried, and at all.
const EASY: usize = 16;
const LEAST: usize = 12;

/// A table of a heading row and rows; the first column and every column in `left` stand to the left, others to
/// the right. Lines carry no trailing blanks.
///
/// In a table wider than the page a last column of words is broken, and where that leaves them little room the titles.
#[must_use]
pub fn table(heading: &[&str], left: &[usize], rows: &[Vec<String>]) -> String {
    let titles: Vec<String> = heading.iter().map(|&title| title.into()).collect();
    let (page, wide) = set(&titles, left, rows, None);
    if wide <= WIDTH {
        return page;
    }
    let last = heading.len().saturating_sub(1);
    let room = |wide: usize| longest(rows, last).saturating_sub(wide.saturating_sub(WIDTH));
    if left.contains(&last) && room(wide) >= EASY {
        return set(&titles, left, rows, Some(room(wide))).0;
    }
    let broken: Vec<String> = titles.iter().enumerate().map(|(column, title)| broken(title, column, rows)).collect();
    let (page, wide) = set(&broken, left, rows, None);
    if wide <= WIDTH || !left.contains(&last) {
        return page;
    }
    set(&broken, left, rows, Some(room(wide).max(LEAST))).0
}

fn longest(rows: &[Vec<String>], column: usize) -> usize {
    rows.iter().filter_map(|row| row.get(column)).map(|cell| cell.chars().count()).max().unwrap_or(0)
}

/// A title that is longer than what stands under it, in two lines.
fn broken(title: &str, column: usize, rows: &[Vec<String>]) -> String {
    let is_longer = title.chars().count() > longest(rows, column);
    if is_longer { title.replacen(' ', "\n", 1) } else { title.into() }
}

/// The table and its width, the words of its last column no wider than `room`.
fn set(heading: &[String], left: &[usize], rows: &[Vec<String>], room: Option<usize>) -> (String, usize) {
    let mut table = Table::new();
    table.load_preset(presets::NOTHING).set_content_arrangement(ContentArrangement::Disabled);
    table.set_header(heading);
    for row in rows {
        table.add_row(row.clone());
    }
    let last = heading.len().saturating_sub(1);
    for (index, column) in table.column_iter_mut().enumerate() {
        let before = if index == 0 { 2 } else { 1 };
        column.set_padding((before, 1));
        let to_left = index == 0 || left.contains(&index);
        column.set_cell_alignment(if to_left { CellAlignment::Left } else { CellAlignment::Right });
        if let Some(room) = room.filter(|_| index == last) {
            column.set_constraint(ColumnConstraint::Absolute(Width::Fixed(room as u16 + before + 1)));
        }
    }
    let (mut text, mut wide) = (String::new(), 0);
    for line in table.lines() {
        let line = line.trim_end();
        wide = wide.max(line.chars().count());
        text.push_str(line);
        text.push('\n');
    }
    (text, wide)
}

#[cfg(test)]
mod tests {
    use super::{WIDTH, table};
    use std::prelude::rust_2024::*;
    use std::vec;

    #[test]
    fn a_table_is_no_wider_than_the_page_and_loses_no_word() {
        let words = "rich: soft, reducing, makes carbon monoxide";
        for columns in 2..7 {
            let titles = vec!["fire kBtu/h gross"; columns];
            let mut row = vec!["90.3 ±11.2".to_owned(); columns];
            row[columns - 1] = words.into();
            let text = table(&titles, &[columns - 1], &[row]);
            assert!(text.lines().all(|line| line.chars().count() <= WIDTH), "{text}");
            assert!(words.split(' ').all(|word| text.contains(word)), "{text}");
        }
    }
}
