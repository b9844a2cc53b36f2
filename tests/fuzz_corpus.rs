//! Every kept fuzz input, seed or find, runs through the same checks as under the fuzzer.

#![cfg(feature = "cli")]

#[path = "fuzz/checks.rs"]
mod checks;

fn each_file(target: &str, check: fn(&[u8])) {
    let corpus = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/fuzz/corpus").join(target);
    let files: Vec<_> = std::fs::read_dir(corpus).unwrap().map(|entry| entry.unwrap().path()).collect();
    assert!(files.len() >= 5, "{target}: only {} files", files.len());
    for file in files {
        check(&std::fs::read(file).unwrap());
    }
}

#[test]
fn burner_files() {
    each_file("burner_file", checks::burner_file);
}

#[test]
fn quantities() {
    each_file("quantity", checks::quantity);
}
