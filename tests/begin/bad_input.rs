//! What must be refused, with what is accepted, and nothing harmed.

use super::{directory, jetwright};

const GOOD: [&str; 5] = ["begin", "--trade", "forge", "--gas", "propane"];

fn refused(directory: &std::path::Path, arguments: &[&str]) -> String {
    let output = jetwright(directory, arguments);
    let message = String::from_utf8_lossy(&output.stderr).into_owned();
    assert_eq!(output.status.code(), Some(2), "{arguments:?}: {message}");
    assert!(output.stdout.is_empty() && !message.contains("panicked"), "{message}");
    message
}

#[test]
fn absurd_answers_are_named_with_what_is_accepted() {
    let directory = directory("absurd");
    let table = [
        ("--altitude", "99999 m", "accepted from"),
        ("--gas", "steam of hope", "propane"),
        ("--jet", "a big one", "number 50"),
        ("--jet", "2 m", "accepted from"),
        ("--gauge", "5", "without a unit"),
        ("--gauge", "5\u{7} psi", "control character"),
        ("--blower-plate", "60 W", "comma"),
        ("--blower-plate", "-60 W, 120 mm", "accepted"),
        ("--ports", "many", "60 x 4.5 mm"),
        ("--ports", "0 x 4 mm", "accepted"),
        ("--chamber", "300 mm", "300 x 300 x 400 mm"),
        ("--chamber", "1 x 1 x 1 x 1 m", "two or three"),
        ("--lining", "cheese", "light, heavy, soft"),
        ("--damper", "a brick", "blast gate"),
        ("--opening", "5 km", "accepted"),
        ("--trade", "bakery", "forge"),
        ("--gas", "unknown", "propane"),
        ("--name", "", ""),
    ];
    for (option, given, accepted) in table {
        if given.is_empty() {
            continue;
        }
        let message = refused(&directory, &["begin", "new.toml", option, given]);
        assert!(message.contains(accepted), "{option} {given}: {message}");
        assert!(!directory.join("new.toml").exists());
    }
}

#[test]
fn closed_input_names_the_options_that_are_needed() {
    let directory = directory("closed");
    let message = refused(&directory, &["begin", "--trade", "kiln"]);
    assert!(message.contains("--gas") && !message.contains("--trade"), "{message}");
    assert_eq!(std::fs::read_dir(&directory).unwrap().count(), 0, "nothing is left behind");
}

#[test]
fn a_file_that_is_there_is_not_touched() {
    let directory = directory("there");
    std::fs::write(directory.join("burner.toml"), "mine").unwrap();
    assert!(refused(&directory, &GOOD).contains("nothing is overwritten"));
    assert_eq!(std::fs::read_to_string(directory.join("burner.toml")).unwrap(), "mine");
}

#[test]
fn a_folder_that_is_not_there_is_found_before_anything_is_asked() {
    let directory = directory("no-folder");
    let arguments = [&GOOD[..], &["nowhere/burner.toml"]].concat();
    assert!(refused(&directory, &arguments).contains("cannot be written"));
}

#[test]
fn kept_answers_that_are_none_are_refused_and_left() {
    let directory = directory("kept");
    for (text, said) in [("trade = 5", "in quotes"), ("gas = \"hope\"", "gas"), ("{", "key = ")] {
        std::fs::write(directory.join("burner.toml.answers"), text).unwrap();
        assert!(refused(&directory, &GOOD).contains(said), "{text}");
        assert_eq!(std::fs::read_to_string(directory.join("burner.toml.answers")).unwrap(), text);
    }
}
