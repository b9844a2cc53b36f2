//! HTML: one page that needs nothing beside it.

use std::format;
use std::prelude::rust_2024::*;

use crate::report::render::cells::{fields, printed};
use crate::report::tree::{Node, Table, Tree};
use crate::report::units::Shop;

const HEAD: &str = "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n\
    <meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n";
const STYLE: &str = "<style>\nbody { font-family: sans-serif; max-width: 60em; margin: 1em auto; padding: 0 1em; }\n\
    h2 { font-size: 1em; margin-bottom: 0.3em; }\np { margin: 0.3em 0; }\ntable { border-collapse: collapse; }\n\
    th, td { padding: 0.1em 0.6em; text-align: right; vertical-align: top; border-bottom: 1px solid; }\n\
    th.words, td.words { text-align: left; }\npre { overflow-x: auto; }\n</style>\n";

/// The answer as a page under a title.
#[must_use]
pub fn render(tree: &Tree, title: &str, shop: &Shop) -> String {
    let title = escaped(title);
    let mut page = format!("{HEAD}<title>{title}</title>\n{STYLE}</head>\n<body>\n<h1>{title}</h1>\n");
    for node in &tree.nodes {
        write(&mut page, node, shop);
    }
    page + "</body>\n</html>\n"
}

/// Text that no browser takes for markup.
fn escaped(text: &str) -> String {
    let mut safe = String::new();
    for character in text.chars() {
        match character {
            '&' => safe.push_str("&amp;"),
            '<' => safe.push_str("&lt;"),
            '>' => safe.push_str("&gt;"),
            '"' => safe.push_str("&quot;"),
            '\'' => safe.push_str("&#39;"),
            _ => safe.push(character),
        }
    }
    safe
}

fn write(page: &mut String, node: &Node, shop: &Shop) {
    match node {
        Node::Block(block) if block.title.is_empty() => block.nodes.iter().for_each(|node| write(page, node, shop)),
        Node::Block(block) => {
            page.push_str(&format!("<section>\n<h2>{}</h2>\n", escaped(&block.title)));
            block.nodes.iter().for_each(|node| write(page, node, shop));
            page.push_str("</section>\n");
        }
        Node::Fields(row) => {
            for (label, value) in fields(row, shop) {
                page.push_str(&format!("<p>{}: {}</p>\n", escaped(label), escaped(&value)));
            }
        }
        Node::Table(rows) => table(page, rows, shop),
        Node::Said { label, text } if label.is_empty() => page.push_str(&format!("<p>{}</p>\n", escaped(text))),
        Node::Said { label, text } => {
            page.push_str(&format!("<p><b>{}</b> {}</p>\n", escaped(label.trim()), escaped(text)));
        }
        Node::Line(text) => page.push_str(&format!("<p>{}</p>\n", escaped(text))),
        Node::Drawn(text) => page.push_str(&format!("<pre>\n{}</pre>\n", escaped(text))),
    }
}

fn table(page: &mut String, rows: &Table, shop: &Shop) {
    let printed = printed(rows, shop);
    if printed.titles.is_empty() {
        return;
    }
    let line = |cells: &[String], tag: &str| {
        let cells = cells.iter().enumerate().map(|(column, cell)| {
            let class = if printed.is_words[column] { " class=\"words\"" } else { "" };
            format!("<{tag}{class}>{}</{tag}>", escaped(cell))
        });
        format!("<tr>{}</tr>\n", cells.collect::<String>())
    };
    page.push_str(&format!("<table>\n<thead>\n{}</thead>\n<tbody>\n", line(&printed.titles, "th")));
    for row in &printed.rows {
        page.push_str(&line(row, "td"));
    }
    page.push_str("</tbody>\n</table>\n");
}
