//! Standard output: one whole answer or nothing.

use std::io::{self, ErrorKind, Write};

use jetwright::report::Shop;
use jetwright::report::render::{csv, html, json, text};
use jetwright::report::tree::Tree;

use crate::command_error::CommandError;
use crate::common::{AnswerArguments, Format, Units};

/// The units a page is asked in.
pub fn shop(asked: &AnswerArguments) -> Shop {
    Shop { inch: asked.units == Units::Inch }
}

/// The answer in the format asked; `title` heads a page of HTML.
pub fn print(tree: &Tree, title: &str, asked: &AnswerArguments) -> Result<String, CommandError> {
    Ok(match asked.format {
        Format::Text => text::render(tree, &shop(asked)),
        Format::Html => html::render(tree, title, &shop(asked)),
        Format::Json => json::render(tree),
        Format::Csv => {
            // The table goes out alone.
            let warnings = text::render(&tree.warnings(), &shop(asked));
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
