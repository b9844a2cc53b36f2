//! The sketch of the library folder.

use std::fs;
use std::path::Path;
use std::process::Command;

use super::{root, run};

/// What a board's core library declares, as far as the sketch uses it.
const BOARD: &str = "#include <stdint.h>\nenum { A0, A1, A2, INPUT, OUTPUT, LOW = 0, HIGH = 1 };\n\
    void pinMode(int, int); void digitalWrite(int, int); int digitalRead(int); int analogRead(int);\n\
    void analogWrite(int, int); unsigned long millis();\n";

#[test]
fn the_sketch_of_the_library_folder_compiles() {
    let directory = Path::new(env!("CARGO_TARGET_TMPDIR")).join("sketch");
    fs::create_dir_all(&directory).unwrap();
    fs::write(directory.join("board.h"), BOARD).unwrap();
    fs::write(directory.join("table.h"), "static const uint8_t TABLE[164] = {0};\n").unwrap();
    run(Command::new(std::env::var_os("CXX").unwrap_or("c++".into()))
        .args(["-x", "c++", "-fsyntax-only", "-Wall", "-Wextra", "-Werror", "-pedantic", "-include"])
        .arg(directory.join("board.h"))
        .arg("-I")
        .arg(&directory)
        .arg("-I")
        .arg(root().join("examples/c/src"))
        .arg(root().join("examples/c/examples/FollowHeat/FollowHeat.ino")));
}
