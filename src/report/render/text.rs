//! Text to read and to print.

use std::format;
use std::prelude::rust_2024::*;

use crate::report::render::cells::{fields, printed};
use crate::report::render::layout::{heading, line, paragraph};
use crate::report::render::table::table;
use crate::report::tree::{Node, Table, Tree};
use crate::report::units::Shop;

/// The answer as one page.
#[must_use]
pub fn render(tree: &Tree, shop: &Shop) -> String {
    nodes(&tree.nodes, shop)
}

/// Parts of an answer.
#[must_use]
pub fn nodes(nodes: &[Node], shop: &Shop) -> String {
    let mut page = String::new();
    for node in nodes {
        write(&mut page, node, shop, "");
    }
    page
}

fn write(page: &mut String, node: &Node, shop: &Shop, margin: &str) {
    match node {
        Node::Block(block) => {
            if !block.title.is_empty() {
                heading(page, &block.title);
            }
            for node in &block.nodes {
                write(page, node, shop, if block.title.is_empty() { margin } else { "  " });
            }
        }
        Node::Fields(row) => {
            for (label, value) in fields(row, shop) {
                paragraph(page, "", &format!("{label}: {value}"));
            }
        }
        Node::Table(rows) => rows_of(page, rows, shop),
        Node::Said { label, text } => {
            // A long label takes some of its own margin.
            let margin = &margin[..margin.len().min(8_usize.saturating_sub(label.len()))];
            let label = if label.is_empty() { String::new() } else { format!("{margin}{label}") };
            paragraph(page, &label, text);
        }
        Node::Line(text) => line(page, text),
        Node::Drawn(text) => page.push_str(text),
    }
}

fn rows_of(page: &mut String, rows: &Table, shop: &Shop) {
    let printed = printed(rows, shop);
    if printed.titles.is_empty() {
        return;
    }
    let titles: Vec<&str> = printed.titles.iter().map(String::as_str).collect();
    let left: Vec<usize> = (0..titles.len()).filter(|&column| printed.is_words[column]).collect();
    page.push_str(&table(&titles, &left, &printed.rows));
}
