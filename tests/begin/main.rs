//! The first burner file by questions: in a terminal, by options, on bad input, and against invented shops whose truth
//! is known.

#![cfg(feature = "cli")]

mod bad_input;
mod options;
mod shops;
#[cfg(unix)]
mod terminal;

use std::path::{Path, PathBuf};
use std::process::{Command, Output, Stdio};

/// The command in a directory, without a terminal.
fn jetwright(directory: &Path, arguments: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_jetwright"))
        .args(arguments)
        .current_dir(directory)
        .stdin(Stdio::null())
        .output()
        .expect("the command starts")
}

/// A directory for one test's files, empty at its start.
fn directory(name: &str) -> PathBuf {
    let path = Path::new(env!("CARGO_TARGET_TMPDIR")).join("begin").join(name);
    let _ = std::fs::remove_dir_all(&path);
    std::fs::create_dir_all(&path).expect("a directory for the test");
    path
}

/// The sheet of a file, which must print.
fn sheet(directory: &Path, file: &str) -> String {
    let output = jetwright(directory, &["sheet", file]);
    assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
    String::from_utf8(output.stdout).expect("UTF-8")
}
