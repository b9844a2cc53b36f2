//! Published and independently computed values, one a row of the files beside this one, against ours.
//!
//! A topic is a file of rows and a module here that answers them. A row that nothing answers fails.
//! `JETWRIGHT_WRITE_PAGE=1 cargo test --test main reference` writes the page of every row anew.

mod air;
mod burning;
mod combustion;
mod compressible;
mod coupled;
mod drills;
mod flame;
mod flue;
mod fuel;
mod furnace;
mod heating;
mod ledger;
mod lighting;
mod measure;
mod orifice;
mod page;
mod reactor;
mod real_gas;
mod row;
mod site;

use crate::tolerance::{SINGLE_PRECISION, share_used};
use jetwright::{Float, Scalar};
use row::{Row, rows};

/// Every topic, in the order the gas flows.
const TOPICS: &[&str] = &[
    "site",
    "heating",
    "real_gas",
    "orifice",
    "drills",
    "compressible",
    "combustion",
    "flame",
    "flue",
    "reactor",
    "burning",
    "air",
    "lighting",
    "fuel",
    "furnace",
    "coupled",
    "measure",
];

/// Our value for a row, in its unit; nothing when no arm answers its quantity.
fn ours<S: Float>(topic: &str, row: &Row) -> Option<S> {
    match topic {
        "site" => site::ours(row),
        "heating" => heating::ours(row),
        "real_gas" => real_gas::ours(row),
        "orifice" => orifice::ours(row),
        "drills" => drills::ours(row),
        "compressible" => compressible::ours(row),
        "combustion" => combustion::ours(row),
        "flame" => flame::ours(row),
        "flue" => flue::ours(row),
        "reactor" => reactor::ours(row),
        "burning" => burning::ours(row),
        "air" => air::ours(row),
        "lighting" => lighting::ours(row),
        "fuel" => fuel::ours(row),
        "furnace" => furnace::ours(row),
        "coupled" => coupled::ours(row),
        "measure" => measure::ours(row),
        _ => None,
    }
}

/// Holds every row of a topic to its tolerance, and single precision to double.
fn hold(topic: &str) {
    let (mut faults, mut seen) = (Vec::new(), 0);
    for row in rows(topic) {
        seen += 1;
        let found = ours::<f64>(topic, &row).unwrap_or_else(|| panic!("no arm answers {row}"));
        let used = share_used(found, row.value, &row.tolerance);
        let met = used <= 1.0;
        if !met {
            faults.push(format!("{used:.2} of the tolerance: we have {found}, {row}"));
        }
        let single = ours::<f32>(topic, &row).map_or(f64::NAN, Scalar::to_f64);
        let agrees = (single - found).abs() <= SINGLE_PRECISION * found.abs();
        if !agrees {
            faults.push(format!("single precision has {single}, double {found}, {row}"));
        }
    }
    assert!(seen > 0, "{topic} has no rows");
    assert!(faults.is_empty(), "{} faults in {seen} rows of {topic}:\n{}", faults.len(), faults.join("\n"));
}

macro_rules! topics {
    ($($topic:ident)+) => {
        mod topics {
            $(#[test] fn $topic() { super::hold(stringify!($topic)); })+
        }
    };
}
topics!(site heating real_gas orifice drills compressible combustion flame flue reactor burning air lighting fuel furnace coupled measure);

#[test]
fn every_file_of_rows_is_a_topic() {
    let mut files: Vec<String> = std::fs::read_dir(row::directory())
        .unwrap()
        .filter_map(|entry| Some(entry.unwrap().file_name().to_str()?.strip_suffix(".csv")?.to_owned()))
        .collect();
    files.sort();
    let mut topics = TOPICS.to_vec();
    topics.sort_unstable();
    assert_eq!(files, topics);
}

/// A quantity stands on two lines, or says why not; a reason that is no longer needed goes.
#[test]
fn every_quantity_has_two_lines_or_a_reason() {
    let mut faults = Vec::new();
    let mut reasons: Vec<&str> = ledger::REASONS.iter().map(|(quantity, _)| *quantity).collect();
    for topic in TOPICS {
        let all = rows(topic);
        let mut quantities: Vec<&str> = all.iter().map(|row| row.quantity.as_str()).collect();
        quantities.sort_unstable();
        quantities.dedup();
        for quantity in quantities {
            let known: Vec<&Row> = all.iter().filter(|row| row.quantity == quantity).collect();
            let lines = ledger::lines(&known);
            let has_reason = reasons.contains(&quantity);
            if (lines < ledger::LINES) != has_reason {
                faults.push(format!(
                    "{topic} {quantity}: {lines} lines, {}",
                    if has_reason { "and a reason" } else { "no reason" }
                ));
            }
            reasons.retain(|reason| *reason != quantity);
        }
    }
    faults.extend(reasons.into_iter().map(|quantity| format!("a reason for {quantity}, which has no rows")));
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

#[test]
fn the_page_is_current() {
    let (path, built) = (row::directory().join("README.md"), page::page());
    if std::env::var("JETWRIGHT_WRITE_PAGE").is_ok_and(|set| set == "1") {
        std::fs::write(&path, &built).unwrap();
    }
    let kept = std::fs::read_to_string(&path).unwrap_or_default();
    let line = kept.lines().zip(built.lines()).position(|(old, new)| old != new);
    assert!(
        kept == built,
        "tests/reference/README.md is not current from line {line:?}: JETWRIGHT_WRITE_PAGE=1 rewrites it"
    );
}
