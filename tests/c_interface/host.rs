//! The C example on a computer.

use std::fs;
use std::path::Path;
use std::process::Command;

use super::expected::expected;
use super::invented::{burner_image, table_image};
use super::{root, run, static_library};

/// What a line tells: its name, its numbers.
pub type Line = (String, Vec<f64>);

/// Every number of the answer, a line a list.
pub fn numbers(text: &str) -> Vec<Line> {
    text.lines()
        .map(|line| {
            let mut words = line.split_whitespace();
            let name = words.next().unwrap_or_default().to_owned();
            (name, words.map(|word| word.parse().unwrap()).collect())
        })
        .collect()
}

/// The images that the calls are made on.
pub fn write_images(directory: &Path) {
    let table = table_image();
    let mut image = vec![0; table.bytes()];
    table.write(&mut image).unwrap();
    fs::write(directory.join("table.jwt"), image).unwrap();
    fs::write(directory.join("burner.jwt"), burner_image()).unwrap();
}

/// What the calls told in C, against Rust.
pub fn compare(in_c: &[Line]) {
    let in_rust = expected();
    assert_eq!(in_c.len(), in_rust.len(), "{in_c:?}");
    for (c, rust) in in_c.iter().zip(&in_rust) {
        assert_eq!(c.0, rust.0);
        assert_eq!(c.1.len(), rust.1.len(), "{c:?} {rust:?}");
        for (ours, theirs) in rust.1.iter().zip(&c.1) {
            // The same source: two builds may round a last digit of a transcendental function differently.
            assert!((ours - theirs).abs() <= 1e-6 * ours.abs(), "{c:?} {rust:?}");
        }
    }
    // What the story must have been: purging, ready, the fire at its heat, locked on the lost sensor.
    let states: Vec<f64> = in_c.iter().filter(|line| line.0 == "tick").map(|line| line.1[0]).collect();
    assert_eq!(states.first(), Some(&1.0), "{states:?}");
    assert!(states.contains(&2.0) && states.contains(&4.0), "{states:?}");
    assert_eq!(states.last(), Some(&6.0), "{states:?}");
}

#[test]
fn a_program_in_c_gets_the_numbers_of_rust() {
    let directory = Path::new(env!("CARGO_TARGET_TMPDIR")).join("c_interface");
    fs::create_dir_all(&directory).unwrap();
    let library = static_library();
    let program = directory.join("host");
    let compiler = std::env::var_os("CC").unwrap_or("cc".into());
    run(Command::new(&compiler)
        .args(["-std=c99", "-Wall", "-Wextra", "-Werror", "-pedantic", "-I"])
        .arg(root().join("examples/c/src"))
        .args(["host.c", "calls.c"].map(|name| root().join("examples/c/extras").join(name)))
        .arg(&library)
        .args(["-lm", "-lpthread", "-ldl", "-o"])
        .arg(&program));
    write_images(&directory);
    let answer = run(Command::new(&program).args(["table.jwt", "burner.jwt"].map(|name| directory.join(name))));
    compare(&numbers(&String::from_utf8(answer.stdout).unwrap()));
}
