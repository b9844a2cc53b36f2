//! Any answer as a page: headings, fields, tables and sentences in the order of the tree.

use std::prelude::rust_2024::*;

use maud::{DOCTYPE, Markup, PreEscaped, html};

use crate::report::render::cells::{fields, printed};
use crate::report::tree::{Node, Table, Tree};
use crate::report::units::Shop;

/// How a page looks.
const STYLE: &str = include_str!("page.css");

/// The answer as a page under a title.
#[must_use]
pub fn render(tree: &Tree, title: &str, shop: &Shop) -> String {
    document(
        title,
        STYLE,
        &html! {
            h1 dir="auto" { (title) }
            @for node in &tree.nodes { (part(node, shop)) }
        },
    )
}

/// A document that needs nothing beside it.
pub(in crate::report::render) fn document(title: &str, style: &str, body: &Markup) -> String {
    let page = html! {
        (DOCTYPE)
        html lang="en" {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width, initial-scale=1";
                title { (title) }
                style { (PreEscaped(style)) }
            }
            body { (body) }
        }
    };
    page.into_string() + "\n"
}

/// A part of the answer.
pub(super) fn part(node: &Node, shop: &Shop) -> Markup {
    match node {
        Node::Block(block) if block.title.is_empty() => html! { @for node in &block.nodes { (part(node, shop)) } },
        Node::Block(block) => html! {
            section {
                h2 { (block.title) }
                @for node in &block.nodes { (part(node, shop)) }
            }
        },
        Node::Fields(row) => html! {
            @for (label, value) in fields(row, shop) { p { (label) ": " (value) } }
        },
        Node::Table(rows) => table(rows, shop),
        Node::Said { label, text } if label.is_empty() => html! { p dir="auto" { (text) } },
        Node::Said { label, text } => html! { p { b { (label.trim()) } " " bdi { (text) } } },
        Node::Line(text) => html! { p dir="auto" { (text) } },
        Node::Drawn(text) => html! { pre { (text) } },
    }
}

fn table(rows: &Table, shop: &Shop) -> Markup {
    let printed = printed(rows, shop);
    if printed.titles.is_empty() {
        return html! {};
    }
    let class = |column: usize| printed.is_words[column].then_some("words");
    html! {
        div.wide {
            table {
                thead { tr { @for (column, title) in printed.titles.iter().enumerate() { th class=[class(column)] { (title) } } } }
                tbody {
                    @for row in &printed.rows {
                        tr { @for (column, cell) in row.iter().enumerate() { td class=[class(column)] { bdi { (cell) } } } }
                    }
                }
            }
        }
    }
}
