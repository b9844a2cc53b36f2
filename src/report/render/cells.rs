//! What a page prints of columns and values: the same words in every format that people read.

use std::format;
use std::prelude::rust_2024::*;
use std::string::ToString;

use crate::report::field::{Column, Datum, Mark, Value};
use crate::report::tree::{Row, Table};
use crate::report::units::{Kind, Shop};

/// A table as text: titles, which of them stand to the left, and the cells.
pub struct Printed {
    /// A title a column.
    pub titles: Vec<String>,
    /// Whether a column holds words.
    pub is_words: Vec<bool>,
    /// The rows.
    pub rows: Vec<Vec<String>>,
}

/// The columns a page prints, in its order; those that hold nothing in any row leave it.
#[must_use]
pub fn printed(table: &Table, shop: &Shop) -> Printed {
    let mut columns: Vec<(u8, usize, &'static Column)> = vec_of(table.rows.first(), |(index, (column, _, printed))| {
        let place = column.shown.place(shop.inch).filter(|_| printed)?;
        let holds = |row: &Row| row.iter().nth(index).is_some_and(|(_, value, _)| is_something(value));
        table.rows.iter().any(holds).then_some((place, index, column))
    });
    columns.sort_by_key(|&(place, ..)| place);
    let is_renamed = |column: &Column| table.titles.iter().any(|(key, _)| *key == column.key);
    let is_mixed = |kind: Kind| {
        let other = |row: &Row| row.asked.is_some_and(|asked| asked.unit(kind) != shop.unit(kind));
        table.rows.iter().any(other)
    };
    let title = |column: &Column| match table.titles.iter().find(|(key, _)| *key == column.key) {
        Some((_, title)) => title.clone(),
        None if column.kind.is_unit_in_title() && !is_mixed(column.kind) => {
            format!("{} {}", column.label, shop.unit(column.kind)).trim().into()
        }
        None => column.label.into(),
    };
    let cells = |row: &Row| {
        let values: Vec<&Value> = row.iter().map(|(_, value, _)| value).collect();
        let shop = row.asked.as_ref().unwrap_or(shop);
        let with_unit =
            |column: &Column| is_mixed(column.kind) || is_renamed(column) || !column.kind.is_unit_in_title();
        columns.iter().map(|&(_, index, column)| cell(column, values[index], shop, with_unit(column))).collect()
    };
    let rows: Vec<Vec<String>> = table.rows.iter().map(cells).collect();
    let begins = |row: &Vec<String>, place: usize| row[place].chars().next().is_none_or(char::is_alphabetic);
    let is_words = |(place, &(.., column)): (usize, &(u8, usize, &'static Column))| {
        matches!(column.kind, Kind::Word | Kind::Bore) || rows.iter().all(|row| begins(row, place))
    };
    Printed {
        titles: columns.iter().map(|&(.., column)| title(column)).collect(),
        is_words: columns.iter().enumerate().map(is_words).collect(),
        rows,
    }
}

fn vec_of<T>(row: Option<&Row>, of: impl FnMut((usize, (&'static Column, &Value, bool))) -> Option<T>) -> Vec<T> {
    row.into_iter().flat_map(|row| row.iter().enumerate()).filter_map(of).collect()
}

/// The fields a page prints, in its order: label and value.
#[must_use]
pub fn fields(row: &Row, shop: &Shop) -> Vec<(&'static str, String)> {
    let shop = row.asked.as_ref().unwrap_or(shop);
    let mut fields: Vec<(u8, &'static str, String)> = vec_of(Some(row), |(_, (column, value, printed))| {
        let place = column.shown.place(shop.inch).filter(|_| printed && is_something(value))?;
        Some((place, column.label, cell(column, value, shop, true)))
    });
    fields.sort_by_key(|&(place, ..)| place);
    fields.into_iter().map(|(_, label, text)| (label, text)).collect()
}

fn is_something(value: &Value) -> bool {
    match (&value.said, &value.datum) {
        (Some(said), _) => !said.is_empty() && said != "-",
        (None, Datum::Nothing) => false,
        (None, Datum::Word(word)) => !word.is_empty(),
        _ => true,
    }
}

/// A value as a page says it.
fn cell(column: &Column, value: &Value, shop: &Shop, with_unit: bool) -> String {
    if let Some(said) = &value.said {
        let number = value.si().map_or(String::new(), |si| shop.text(column.kind, si));
        return said.replace("{}", &number);
    }
    let number = |si: f64| {
        let text = shop.number(column.kind, si);
        let text = match value.half {
            Some(half) if value.mark != Mark::Quiet => {
                let half = shop.expanded(column.kind, si, half);
                let star = if value.mark == Mark::AtLeast { "*" } else { "" };
                format!("{text} ±{half}{star}")
            }
            _ => text,
        };
        let unit = shop.unit(column.kind);
        if with_unit && !unit.is_empty() { format!("{text} {unit}") } else { text }
    };
    match &value.datum {
        Datum::Nothing => "-".into(),
        Datum::Number(si) => number(*si),
        Datum::Whole(count) => count.to_string(),
        Datum::Truth(truth) => if *truth { "yes" } else { "no" }.into(),
        Datum::Word(word) => word.clone(),
        Datum::Words(words) => words.join(", "),
        Datum::Numbers(numbers) => numbers.iter().map(|&si| number(si)).collect::<Vec<_>>().join(", "),
        Datum::Named(named) => {
            named.iter().map(|(name, si)| format!("{name} {}", number(*si))).collect::<Vec<_>>().join(", ")
        }
    }
}
