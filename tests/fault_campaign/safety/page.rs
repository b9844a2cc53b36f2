//! The page of the safety argument, beside the controller's documentation.

use super::{Hazard, hazards};
use std::fmt::Write;

const WRITE: &str = "JETWRIGHT_WRITE_PAGES";

const HEAD: &str = "Made of `tests/fault_campaign/safety/table.txt`; change it there.

**Process control, not a flame safeguard**: a listed one stays in charge of the gas valve, and this argument leaves it \
what it alone can do. For each hazard: the rule against it, where the [sequence](crate::control#the-order-of-a-firing) \
says so, and lines of the source that were broken on purpose, each with the test that catches it. `campaign` is the \
fault campaign: 100 000 random runs with a plant of their own, judged by a referee that knows where gas and air really \
are. `bash tests/deliberate_faults.sh` breaks the lines again, one by one.
";

fn page(hazards: &[Hazard]) -> String {
    let mut page = String::from(HEAD);
    let mut tell = |line: String| writeln!(page, "{line}").expect("a string takes all");
    for (number, hazard) in (1..).zip(hazards) {
        tell(format!("\n# {number}. {}\n\n{}\n", hazard.danger, hazard.rule));
        let rows: Vec<String> =
            hazard.rows.iter().map(|(from, event, to)| format!("{from:?} \u{d7} {event:?} \u{2192} {to:?}")).collect();
        if !rows.is_empty() {
            tell(format!("In the sequence: {}.\n", rows.join("; ")));
        }
        tell("| broken on purpose | in | caught by |\n|---|---|---|".into());
        for fault in hazard.faults.iter() {
            let files: Vec<String> = fault.edits.iter().map(|edit| format!("`{}.rs`", edit.file)).collect();
            let caught = if fault.is_redundant {
                format!("redundant: {}", fault.held_by)
            } else {
                format!("`{}`", fault.held_by)
            };
            let mut files = files;
            files.dedup();
            tell(format!("| {} | {} | {caught} |", fault.name, files.join(", ")));
        }
    }
    page
}

#[test]
fn the_page_is_what_the_table_says() {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/src/control/safety_argument.md");
    let page = page(&hazards());
    if std::env::var_os(WRITE).is_some() {
        std::fs::write(path, &page).unwrap();
    }
    let kept = std::fs::read_to_string(path).unwrap_or_default();
    assert!(kept == page, "src/control/safety_argument.md is old: {WRITE}=1 cargo test --test fault_campaign page");
}
