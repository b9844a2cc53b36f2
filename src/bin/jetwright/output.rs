//! Standard output: one whole answer or nothing.

use std::io::{self, ErrorKind, Write};

use serde_json::Value;

/// Writes the finished answer; styles in it survive only on a terminal, and a reader that has left is no error.
pub fn write(text: &str) -> io::Result<()> {
    let mut stdout = anstream::stdout().lock();
    match stdout.write_all(text.as_bytes()).and_then(|()| stdout.flush()) {
        Err(error) if error.kind() == ErrorKind::BrokenPipe => Ok(()),
        result => result,
    }
}

/// An object for programs, indented, with a newline at its end.
pub fn pretty(value: &Value) -> String {
    format!("{value:#}\n")
}
