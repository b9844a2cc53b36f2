//! The answers of the built command: their keys, their warnings and their numbers.

#![cfg(feature = "cli")]

mod asked;
mod run;
mod furnace;
mod keys;
mod lighting;
mod numbers;
mod output;
mod pages;
mod questions;
mod readme;
mod situations;
mod supply;
mod surfaces;
mod uncertainty;
mod warnings;
mod weighing;
mod words;

use std::process::{Command, Output};

use serde_json::Value;

/// An invented burner that calls for no warning but those of its place and its gas.
const BELLS: &str = include_str!("../fixtures/bells.toml");
/// Its second setting.
const HOLD: &str = "[[setting]]\nname = \"hold\"\nheat = \"26 kW net\"\nminutes = \"20 min\"\n";
/// The gauge of its first setting.
const GAUGE: &str = "gauge = \"5 psi\"";
/// Its blower's curve.
const POINTS: &str = "points = [
    { flow = \"0 cfm\", pressure = \"2.0 inH2O\" },
    { flow = \"20 cfm\", pressure = \"1.9 inH2O\" },
    { flow = \"40 cfm\", pressure = \"1.5 inH2O\" },
    { flow = \"60 cfm\", pressure = \"0.5 inH2O\" },
]";

fn jetwright(arguments: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_jetwright")).args(arguments).output().expect("the command starts")
}

/// The answer on standard output; on standard error only the warnings of a table of CSV may stand.
fn answer(arguments: &[&str]) -> String {
    let output = jetwright(arguments);
    let message = String::from_utf8_lossy(&output.stderr);
    let beside = arguments.contains(&"csv") && message.starts_with("WARNINGS\n");
    assert!(output.status.code() == Some(0) && (message.is_empty() || beside), "{arguments:?}: {message}");
    String::from_utf8(output.stdout).expect("answers are UTF-8")
}

fn json(arguments: &[&str]) -> Value {
    serde_json::from_str(&answer(&[arguments, &["--format", "json"]].concat())).expect("JSON")
}

/// The message of a refused input.
fn refused(arguments: &[&str]) -> String {
    let output = jetwright(arguments);
    assert_eq!((output.status.code(), output.stdout.len()), (Some(2), 0), "{arguments:?}");
    String::from_utf8(output.stderr).expect("messages are UTF-8")
}

/// A number of an answer, by its JSON pointer.
fn number(answer: &Value, pointer: &str) -> f64 {
    let found = answer.pointer(pointer).and_then(Value::as_f64);
    found.unwrap_or_else(|| panic!("no number at {pointer} in {answer}"))
}

/// A text with others in the place of some of its own.
fn changed(text: &str, changes: &[(&str, &str)]) -> String {
    changes.iter().fold(text.to_owned(), |text, (old, new)| {
        assert!(text.contains(old), "{old:?} is not in the file");
        text.replace(old, new)
    })
}

/// A burner file on disk, gone when it is dropped.
struct BurnerFile(std::path::PathBuf);

impl BurnerFile {
    /// The bells with texts replaced.
    fn bells(changes: &[(&str, &str)]) -> Self {
        Self::of(BELLS, changes)
    }

    fn of(text: &str, changes: &[(&str, &str)]) -> Self {
        let changed = changed(text, changes);
        static COUNT: std::sync::atomic::AtomicUsize = std::sync::atomic::AtomicUsize::new(0);
        let count = COUNT.fetch_add(1, std::sync::atomic::Ordering::Relaxed);
        let path = std::path::Path::new(env!("CARGO_TARGET_TMPDIR")).join(format!("answers-{count}.toml"));
        std::fs::write(&path, changed).expect("a file for the test");
        Self(path)
    }

    fn path(&self) -> &str {
        self.0.to_str().expect("a path of text")
    }

    fn json(&self) -> Value {
        json(&["sheet", self.path()])
    }

    fn text(&self, units: &str) -> String {
        answer(&["sheet", self.path(), "--units", units])
    }
}

impl Drop for BurnerFile {
    fn drop(&mut self) {
        let _ = std::fs::remove_file(&self.0);
    }
}
