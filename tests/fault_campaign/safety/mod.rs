//! The safety argument: what can hurt, what stands against it, and that each line that does is missed when it is gone.

mod deliberate;
mod page;

use jetwright::control::{Event, State};

const TABLE: &str = include_str!("table.txt");

/// What can hurt, and what stands against it.
#[derive(Default)]
struct Hazard {
    danger: &'static str,
    rule: &'static str,
    rows: Vec<(State, Event, State)>,
    faults: Vec<Fault>,
}

/// Lines of the source, broken on purpose.
struct Fault {
    name: &'static str,
    /// The test that catches it; or what else holds it, where it is redundant and no test can.
    held_by: &'static str,
    is_redundant: bool,
    edits: Vec<Edit>,
}

/// A place of the source and what is put there.
struct Edit {
    /// In `src`, without its ending.
    file: &'static str,
    from: String,
    to: String,
}

impl Fault {
    /// The tests of the campaign itself share their name.
    fn test(&self) -> &str {
        if self.held_by == "campaign" { "no_run_breaks_a_rule" } else { self.held_by }
    }
}

fn edit(parts: [&'static str; 3]) -> Edit {
    let code = |text: &str| if text == "-" { String::new() } else { text.replace("\\|", "|").replace("\\n", "\n") };
    Edit { file: parts[0], from: code(parts[1]), to: code(parts[2]) }
}

fn named<T: Copy + std::fmt::Debug>(all: &[T], name: &str) -> T {
    *all.iter().find(|one| format!("{one:?}") == name).unwrap_or_else(|| panic!("{name}: none of {all:?}"))
}

fn row(text: &str) -> (State, Event, State) {
    let [from, event, to] = text.split_whitespace().collect::<Vec<_>>()[..] else {
        panic!("{text:?}: wants three words")
    };
    (named(&State::ALL, from), named(&Event::ALL, event), named(&State::ALL, to))
}

fn hazards() -> Vec<Hazard> {
    let mut hazards: Vec<Hazard> = Vec::new();
    for line in TABLE.lines().filter(|line| !line.is_empty() && !line.starts_with('#')) {
        let (key, value) = line.split_once(':').unwrap_or_else(|| panic!("{line:?}: wants a key"));
        let value = value.trim();
        let parts: Vec<&str> = value.split(" | ").map(str::trim).collect();
        if key == "hazard" {
            hazards.push(Hazard { danger: value, ..Hazard::default() });
            continue;
        }
        let hazard = hazards.last_mut().expect("a hazard before its rule");
        match (key.trim(), &parts[..]) {
            ("rule", _) => hazard.rule = value,
            ("rows", _) => hazard.rows = value.split(';').filter(|row| !row.trim().is_empty()).map(row).collect(),
            (key @ ("fault" | "redundant"), &[name, held_by, file, from, to]) => {
                let is_redundant = key == "redundant";
                hazard.faults.push(Fault { name, held_by, is_redundant, edits: vec![edit([file, from, to])] });
            }
            ("and", &[file, from, to]) => {
                hazard.faults.last_mut().expect("a fault before its second line").edits.push(edit([file, from, to]));
            }
            _ => panic!("{line:?}: wants a key and its parts"),
        }
    }
    hazards
}

#[test]
fn the_rows_of_the_argument_are_those_of_the_sequence() {
    for hazard in hazards() {
        assert!(!hazard.rule.is_empty(), "{}", hazard.danger);
        for (from, event, to) in hazard.rows {
            assert_eq!(from.after(event), to, "{}: {from:?} {event:?}", hazard.danger);
        }
    }
}

#[test]
fn each_hazard_has_faults_each_of_a_name_of_its_own_and_a_test_that_is_there() {
    let tests = [
        include_str!("../main.rs"),
        include_str!("../single_orders.rs"),
        include_str!("../refused.rs"),
        include_str!("../images.rs"),
        include_str!("../from_c.rs"),
    ]
    .concat();
    let mut names = std::collections::BTreeSet::new();
    for hazard in hazards() {
        assert!(hazard.faults.len() >= 3, "{}", hazard.danger);
        for fault in &hazard.faults {
            assert!(names.insert(fault.name), "{} is there twice", fault.name);
            assert!(fault.is_redundant || tests.contains(&format!("{}(", fault.test())), "{}", fault.held_by);
        }
    }
    assert!(names.len() >= 100);
}

#[test]
fn each_fault_breaks_a_line_that_stands_in_the_source_once() {
    for fault in hazards().iter().flat_map(|hazard| &hazard.faults) {
        for Edit { file, from, to } in &fault.edits {
            let path = format!("{}/src/{file}.rs", env!("CARGO_MANIFEST_DIR"));
            let source = std::fs::read_to_string(&path).unwrap_or_else(|error| panic!("{path}: {error}"));
            let count = source.matches(from.as_str()).count();
            assert!(count == 1 && from != to, "{}: {count} times in {file}: {from}", fault.name);
        }
    }
}
