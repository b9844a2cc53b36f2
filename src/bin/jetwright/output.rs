//! Standard output: one whole answer or nothing.

use std::io::{self, ErrorKind, Write};

use jetwright::quantity::Unit;
use jetwright::report::Shop;
use jetwright::report::render::{csv, html, json, text};
use jetwright::report::tree::Tree;

use crate::command_error::CommandError;
use crate::common::{AnswerArguments, Format};

/// The units a page is asked in; metric where none are.
pub fn shop(asked: &AnswerArguments) -> Shop {
    Shop::of(asked.is_inch())
}

/// The units a page is asked in, else those its question was written in.
pub fn shop_of(asked: &AnswerArguments, question: &'static Unit) -> Shop {
    // What programs read does not turn on how the question was written.
    if asked.units.is_none() && asked.is_page() { Shop::asked(question) } else { shop(asked) }
}

/// The same, with gauges in the unit one was written in.
pub fn shop_with_gauge(asked: &AnswerArguments, question: &'static Unit, gauge: &'static Unit) -> Shop {
    let shop = shop_of(asked, question);
    if asked.is_page() { shop.with_gauge(gauge, asked.units.is_some()) } else { shop }
}

/// The answer of a burner file in the format asked; `title` heads a page of HTML.
pub fn print(tree: &Tree, title: &str, asked: &AnswerArguments) -> Result<String, CommandError> {
    print_in(tree, title, &shop(asked), asked)
}

/// The answer in the format asked, a page in these units; `title` heads a page of HTML.
pub fn print_in(tree: &Tree, title: &str, shop: &Shop, asked: &AnswerArguments) -> Result<String, CommandError> {
    Ok(match asked.format {
        Format::Text => text::render(tree, shop),
        Format::Html => html::render(tree, title, shop),
        Format::Json => json::render(tree),
        Format::Csv => {
            // The table goes out alone.
            let warnings = text::render(&tree.warnings(), shop);
            if !warnings.is_empty() {
                anstream::eprintln!("{}", warnings.trim());
            }
            csv::render(tree).map_err(CommandError::table)?
        }
    })
}

/// Writes the finished answer; styles in it survive only on a terminal, and a reader that has left is no error.
pub fn write(text: &str) -> io::Result<()> {
    let mut stdout = anstream::stdout().lock();
    match stdout.write_all(text.as_bytes()).and_then(|()| stdout.flush()) {
        Err(error) if error.kind() == ErrorKind::BrokenPipe => Ok(()),
        result => result,
    }
}
