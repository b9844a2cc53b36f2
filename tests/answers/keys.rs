//! The keys of every answer against their document, both ways.

use std::collections::{BTreeMap, BTreeSet};

use jetwright::report::answers::ANSWERS;
use jetwright::report::render::keys;
use serde_json::{Map, Value};

use super::furnace::{WORK_CRUCIBLE, WORK_PIECE};
use super::{BELLS, BurnerFile, GAUGE, HOLD, POINTS, answer, json};

const DOCUMENT: &str = include_str!("../../src/report/json_keys.md");

/// A section of the document: its keys, in its own headings or named as above.
#[derive(Default)]
struct Section {
    keys: BTreeSet<String>,
}

/// The sections by heading, and the words under the heading of each key.
fn document() -> (BTreeMap<String, Section>, BTreeMap<String, String>) {
    let (mut sections, mut words) = (BTreeMap::<String, Section>::new(), BTreeMap::<String, String>::new());
    let (mut section, mut key) = (String::new(), String::new());
    for line in DOCUMENT.lines() {
        if let Some(heading) = line.strip_prefix("## ") {
            (section, key) = (heading.to_owned(), String::new());
            sections.entry(section.clone()).or_default();
        } else if let Some(heading) = line.strip_prefix("### ") {
            key = heading.to_owned();
            assert!(words.insert(key.clone(), String::new()).is_none(), "{key} has two anchors");
            sections.get_mut(&section).expect("a section").keys.insert(key.clone());
        } else if key.is_empty() || line.starts_with("As above: ") || line.starts_with("[`") {
            key.clear();
        } else if let Some(words) = words.get_mut(&key) {
            words.push_str(line);
            words.push(' ');
        }
        if let Some(section) = sections.get_mut(&section) {
            // Named as above: [`key`](#key).
            for piece in line.split("[`").skip(1) {
                let (name, link) = piece.split_once("`](#").expect("a link");
                assert!(link.starts_with(&format!("{name})")), "{piece}");
                assert!(words.contains_key(name), "{name} is not documented above");
                section.keys.insert(name.to_owned());
            }
        }
    }
    (sections, words)
}

/// What was seen: the keys of each section, and of each key whether it was null and whether it was not.
#[derive(Default)]
struct Seen {
    sections: BTreeMap<String, BTreeSet<String>>,
    null: BTreeSet<(String, String)>,
    filled: BTreeSet<String>,
    numbers: BTreeMap<String, Vec<f64>>,
    cautions: BTreeSet<String>,
}

impl Seen {
    fn object(&mut self, section: &str, object: &Map<String, Value>) {
        for (key, value) in object {
            self.sections.entry(section.to_owned()).or_default().insert(key.clone());
            match value {
                Value::Null => {
                    self.null.insert((section.to_owned(), key.clone()));
                }
                Value::Number(number) => {
                    self.filled.insert(key.clone());
                    self.numbers.entry(key.clone()).or_default().push(number.as_f64().unwrap());
                }
                _ => {
                    self.filled.insert(key.clone());
                }
            }
        }
    }

    fn all(&mut self, section: &str, value: &Value) {
        match value {
            Value::Array(array) => array.iter().for_each(|value| self.all(section, value)),
            Value::Object(object) => self.object(section, object),
            _ => {}
        }
    }

    fn sheet(&mut self, sheet: &Value) {
        self.all("jetwright sheet", sheet);
        for part in ["site", "gas", "jet", "settings", "budgets", "gauge_table", "run", "air", "warnings"] {
            self.all(&format!("sheet: {part}"), &sheet[part]);
        }
        self.all("sheet: card", &sheet["card"]);
        self.all("sheet: card blocks", &sheet["card"]["blocks"]);
        self.all("sheet: procedures", &sheet["card"]["procedures"]);
        self.all("sheet: card warnings", &sheet["card"]["short_warnings"]);
        self.all("sheet: built", &sheet["built"]);
        self.all("sheet: ducts", &sheet["built"]["ducts"]);
        self.all("sheet: blower curve", &sheet["built"]["blower_curve"]);
        self.all("sheet: wall layers", &sheet["built"]["wall_layers"]);
        self.all("sheet: wall curve", &sheet["built"]["wall_curve"]);
        if !sheet["furnace"].is_null() {
            self.all("sheet: furnace", &sheet["furnace"]);
            self.all("sheet: plan", &sheet["furnace"]["plan"]);
            self.all("sheet: castable", &sheet["furnace"]["castable"]);
        }
        if !sheet["lighting"].is_null() {
            let lighting = &sheet["lighting"];
            self.all("sheet: lighting", lighting);
            self.all("sheet: lighting range", &lighting["damper_left_range"]);
            self.all("sheet: lighting range", &lighting["air_turned_down_range"]);
            self.all("sheet: picture", &lighting["picture"]);
            self.all("sheet: heads_tried", &lighting["heads_tried"]);
        }
        if !sheet["cylinder"].is_null() {
            self.all("sheet: cylinder", &sheet["cylinder"]);
            self.all("sheet: draws", &sheet["cylinder"]["draws"]);
            self.all("sheet: cylinder_run", &sheet["cylinder"]["cylinder_run"]);
        }
        for caution in sheet["warnings"].as_array().unwrap() {
            self.cautions.insert(format!("warning: {}", caution["kind"].as_str().unwrap()));
        }
    }
}

/// Burner files that between them fill and empty every key.
fn sheets() -> Vec<BurnerFile> {
    let bells = BurnerFile::bells;
    let (start, end) = (BELLS.find("[blower]").unwrap(), BELLS.find("[head]").unwrap());
    let air_side = &BELLS[start..end];
    let weak = "shut_off = \"0.3 inH2O\"\nfree_delivery = \"60 cfm\"";
    let tube = "mixing_tube_diameter = \"2 in\"\n";
    let shoulder = "edge = \"square\"";
    vec![
        BurnerFile::of(&jetwright::file::blank::blank(), &[]),
        bells(&[]),
        bells(&[("note = \"All numbers are invented.\"\n", ""), ("price = \"2.40 per kg\"\n", "")]),
        bells(&[("minutes = \"60 min\"", ""), ("minutes = \"20 min\"", ""), ("efficiency = \"40 %\"", "")]),
        bells(&[(air_side, "")]),
        // Blower too small, with cures and without.
        bells(&[(GAUGE, "gauge = \"14 psi\"")]),
        bells(&[(HOLD, ""), (POINTS, weak), ("ports = 60", "ports = 3"), (tube, ""), (GAUGE, "gauge = \"20 psi\"")]),
        bells(&[
            (POINTS, "shut_off = \"0.001 inH2O\"\nfree_delivery = \"0.1 cfm\""),
            (tube, ""),
            (GAUGE, "gauge = \"9 psi\""),
        ]),
        bells(&[("port_length", "count = 3\nport_length"), (shoulder, "count = 6\nedge = \"square\"")]),
        bells(&[("[damper]\nkind = \"blast gate\"\ndiameter = \"2 in\"\n", "")]),
        bells(&[(GAUGE, "gauge = \"0.42 psi\"\ndamper = \"100 %\"")]),
        bells(&[(HOLD, ""), (GAUGE, "gauge = \"0.042 psi\"\ndamper = \"100 %\"")]),
        bells(&[(GAUGE, "gauge = \"5 psi\"\ndamper = \"15 %\"")]),
        bells(&[("\"blast gate\"", "\"ball valve\"")]),
        bells(&[("2.0 in", "1.7 in"), ("1.9 in", "2.0 in"), (GAUGE, "gauge = \"3 psi\"")]),
        bells(&[("temperature = \"15 C\"", "temperature = \"-35 C\"")]),
        bells(&[(air_side, ""), (HOLD, ""), ("bore = \"1.8 mm\"", "drill = \"number 80\"")]),
        bells(&[(air_side, ""), (HOLD, ""), ("bore = \"1.8 mm\"", "bore = \"6 mm\"")]),
        bells(&[
            ("\"12 mm\"", "\"2 mm\""),
            ("bore = \"1.8 mm\"", "drill = \"tip 2.0 mm\"\napproach_diameter = \"5 mm\""),
        ]),
        bells(&[(HOLD, ""), ("\"1.8 mm\"", "\"0.4 mm\""), (GAUGE, "gauge = \"1 psi\"")]),
        bells(&[("\"propane\"", "\"C3H8=0.9,CH4=0.1\""), (shoulder, "edge = \"rounded\"\nedge_radius = \"1 mm\"")]),
    ]
}

fn everything() -> Seen {
    let mut seen = Seen::default();
    let flow = ["flow", "--gas", "natural-gas", "--gauge", "5 psi", "--gauge", "40 psi", "--bore", "1.8 mm"];
    seen.all("jetwright flow", &json(&flow));
    seen.all("flow: rows", &json(&flow)["rows"]);
    for (gauge, heat) in [("5 psi", "26 kW net"), ("65 psi", "26 kW gross"), ("5 psi", "900 kW gross")] {
        let answer = json(&["jet", "--gas", "propane", "--gauge", gauge, "--heat", heat, "--jets", "2"]);
        seen.all("jetwright jet", &answer);
        seen.all("jet: nearest", &answer["nearest"]);
    }
    seen.all("jetwright air", &json(&["air", "--gas", "propane", "--heat", "26 kW net"]));
    for gas in ["propane", "hydrogen", "CO=1"] {
        seen.all("jetwright flame", &json(&["flame", "--gas", gas, "--air-ratio", "0.9"]));
    }
    seen.all("jetwright flame", &json(&["flame", "--gas", "propane", "--chamber-temperature", "500 C"]));
    for more in [&["--mass", "1 kg", "--to", "800 C"][..], &WORK_PIECE, &WORK_CRUCIBLE] {
        seen.all("jetwright work", &json(&[&["work", "--material", "brass"], more].concat()));
    }
    let tiny = super::furnace::run(&[("number 50", "number 80")]);
    for file in [super::furnace::run(&[]), super::furnace::blank(&[]), tiny] {
        let lining = json(&["lining", file.path()]);
        seen.all("jetwright lining", &lining);
        seen.all("sheet: castable", &lining["castable"]);
        let chamber = json(&["chamber", file.path()]);
        seen.all("jetwright chamber", &chamber);
        seen.all("chamber: rows", &chamber["rows"]);
    }
    for answer in super::weighing::answers() {
        seen.all("jetwright weigh", &answer);
        seen.all("weigh: rows", &answer["rows"]);
    }
    let bells = BurnerFile::bells(&[]);
    let setpoints = json(&["setpoints", bells.path(), "--from", "15 kW net", "--to", "20 kW net"]);
    seen.all("jetwright setpoints", &setpoints);
    seen.all("setpoints: rows", &setpoints["rows"]);
    for more in super::supply::CYLINDERS {
        seen.all("jetwright cylinder", &json(&[&super::supply::CYLINDER, *more].concat()));
    }
    for more in super::supply::PIPES {
        seen.all("jetwright line", &json(&[&super::supply::PIPE, *more].concat()));
    }
    let files = sheets().into_iter().chain(super::furnace::sheets()).chain(super::supply::sheets());
    for file in files.chain(super::lighting::sheets()) {
        seen.sheet(&file.json());
    }
    seen
}

/// The document is made of the constant lists: run with `JETWRIGHT_WRITE=1` to write it anew.
#[test]
fn the_document_is_current() {
    let made = keys::document(&ANSWERS);
    if std::env::var_os("JETWRIGHT_WRITE").is_some() {
        let path = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("src/report/json_keys.md");
        std::fs::write(path, &made).expect("the document is written");
    }
    assert!(made == DOCUMENT, "src/report/json_keys.md is not what the columns say: JETWRIGHT_WRITE=1 writes it anew");
}

#[test]
fn the_document_has_every_key_and_no_other() {
    let (sections, words) = document();
    let seen = everything();
    for (name, section) in &sections {
        let found = if name == "warning words" { &seen.cautions } else { &seen.sections[name] };
        let undocumented: Vec<_> = found.difference(&section.keys).collect();
        let never: Vec<_> = section.keys.difference(found).collect();
        assert!(
            undocumented.is_empty() && never.is_empty(),
            "{name}: undocumented {undocumented:?}, never seen {never:?}"
        );
    }
    assert!(seen.sections.keys().all(|name| sections.contains_key(name)));
    let nullable: BTreeSet<&String> =
        words.iter().filter(|(_, words)| words.to_lowercase().contains("null ")).map(|(key, _)| key).collect();
    for (section, key) in &seen.null {
        assert!(nullable.contains(key), "{key} of {section} was null, which its words do not say");
    }
    let null: BTreeSet<&String> = seen.null.iter().map(|(_, key)| key).collect();
    // No furnace of these files has an end that is not known: that takes one which never cools, or which no gauge keeps.
    let of_furnaces = ["keep_", "may_light_", "reignition_", "settings_end_k"];
    let is_excused = |key: &str| of_furnaces.iter().any(|start| key.starts_with(start));
    let never_null: Vec<_> = nullable.difference(&null).filter(|key| !is_excused(key)).collect();
    assert!(never_null.is_empty(), "said to be null at times, never seen so: {never_null:?}");
    let never_filled: Vec<_> = null.iter().filter(|key| !seen.filled.contains(**key)).collect();
    assert!(never_filled.is_empty(), "never seen with a value: {never_filled:?}");
}

/// Suffixes with their unit and the range that SI numbers of a shop's burner lie in; the longest first.
const SUFFIXES: &[(&str, &str, f64, f64)] = &[
    ("heat_per_mass_j_per_kg", "J/kg", 1e5, 2e6),
    ("mixing_tube_diameter_m", "m", 0.005, 0.5),
    ("damper_diameter_m", "m", 0.005, 0.5),
    ("duct_diameter_m", "m", 0.005, 0.5),
    ("duct_length_m", "m", 0.0, 50.0),
    ("slot_length_m", "m", 0.001, 1.0),
    ("layer_thickness_m", "m", 2e-4, 0.6),
    ("steel_depth_m", "m", 0.0, 0.6),
    ("wall_depth_m", "m", 0.0, 1.0),
    ("gauge_span_pa", "Pa", 1e3, 2.5e6),
    ("_mass_kg", "kg", 0.0, 500.0),
    ("pull_n", "N", 10.0, 10_000.0),
    ("starts_s", "s", 0.0, 90_000.0),
    ("plan_least_s", "s", 5.0, 2000.0),
    ("plan_enough_s", "s", 60.0, 20_000.0),
    ("gradient_per_s", "1/s", 0.0, 1e7),
    // A cold charge takes a wall's light within seconds, and a chamber that works cooler never has any.
    ("reignition_s", "s", 0.0, 172_800.0),
    ("reignition_low_s", "s", 0.0, 600.0),
    ("reignition_high_s", "s", 0.0, 172_800.0),
    ("air_on_s", "s", 0.0, 172_800.0),
    ("air_on_low_s", "s", 0.0, 172_800.0),
    ("air_on_high_s", "s", 0.0, 172_800.0),
    ("air_on_inside_high_s", "s", 0.0, 172_800.0),
    ("burnable_s", "s", 0.1, 600.0),
    ("burnable_without_air_s", "s", 0.1, 600.0),
    ("air_changes_s", "s", 1.0, 3600.0),
    ("capacity_kg", "kg", 0.0, 500.0),
    ("left_kg", "kg", 0.0, 500.0),
    ("_after_s", "s", 0.0, 200_000.0),
    ("_lasts_s", "s", 60.0, 1e6),
    ("cylinder_gauge_pressure_pa", "Pa", 0.0, 1.2e6),
    ("end_gauge_pressure_pa", "Pa", -1e5, 1.2e6),
    ("_kg_per_m2_s", "kg/(m2 s)", 0.0, 5000.0),
    ("_m3_per_m3", "1", 5.0, 50.0),
    ("_kg_per_kg", "1", 5.0, 40.0),
    ("_kg_per_m3", "kg/m3", 0.5, 20.0),
    ("_j_per_m3", "J/m3", 3e7, 1e8),
    ("_m3_per_s", "m3/s", 0.0, 1.0),
    ("_kg_per_s", "kg/s", 0.0, 1.0),
    ("_j_per_kg", "J/kg", 4e7, 6e7),
    ("_m_per_s", "m/s", 0.0, 700.0),
    ("price_per_kg", "money/kg", 2.4, 2.4),
    ("_m2", "m2", 0.001, 10.0),
    ("_m3", "m3", 0.001, 1.0),
    ("_j", "J", 1e5, 2e8),
    ("_pa", "Pa", -2e5, 4.5e5),
    ("_kg", "kg", 0.0, 50.0),
    ("_w", "W", 0.0, 1e6),
    ("_n", "N", 0.0, 10.0),
    ("_k", "K", 238.0, 2500.0),
    ("_m", "m", 2e-4, 0.05),
    ("_s", "s", 60.0, 345_600.0),
];

#[test]
fn every_number_is_si_and_says_its_unit() {
    let (_, words) = document();
    for (key, numbers) in everything().numbers {
        let words = &words[&key];
        let unit =
            words.strip_prefix(' ').unwrap_or(words).strip_prefix("Unit: ").and_then(|rest| rest.split('.').next());
        let unit = unit.unwrap_or_else(|| panic!("{key} has no unit: {words}"));
        match SUFFIXES.iter().find(|(suffix, ..)| key.ends_with(suffix)) {
            Some((_, wanted, low, high)) => {
                assert_eq!(unit, *wanted, "{key}");
                for number in numbers {
                    assert!((*low..=*high).contains(&number), "{key} is {number}, not from {low} to {high} {unit}");
                }
            }
            None => assert!(
                ["1", "money", "money/h", "of its kind"].contains(&unit),
                "{key} has the unit {unit} and no suffix"
            ),
        }
    }
}

#[test]
fn csv_has_the_keys_and_values_of_json() {
    let file = BurnerFile::bells(&[]);
    let empty =
        BurnerFile::bells(&[("price = \"2.40 per kg\"\n", ""), ("name = \"melt\"", "name = \"melt, \\\"hot\\\"\"")]);
    let flow = ["flow", "--gas", "propane", "--bore", "1.8 mm", "--gauge", "5 psi", "--gauge", "1 bar"];
    let cylinder = [&super::supply::CYLINDER[..], super::supply::CYLINDERS[0]].concat();
    let commands: [(&[&str], &str); 8] = [
        (&cylinder, ""),
        (&super::supply::PIPE, ""),
        (&flow, "/rows"),
        (&["jet", "--gas", "propane", "--gauge", "5 psi", "--heat", "26 kW net"], "/nearest"),
        (&["air", "--gas", "propane", "--heat", "26 kW net"], ""),
        (&["setpoints", file.path(), "--from", "15 kW net", "--to", "20 kW net"], "/rows"),
        (&["sheet", file.path()], "/settings"),
        (&["sheet", empty.path()], "/settings"),
    ];
    for (arguments, pointer) in commands {
        let answered = json(arguments);
        let rows = match answered.pointer(pointer).unwrap() {
            Value::Array(rows) => rows.clone(),
            row => vec![row.clone()],
        };
        let text = answer(&[arguments, &["--format", "csv"]].concat());
        let mut reader = csv::Reader::from_reader(text.as_bytes());
        let header: Vec<String> = reader.headers().unwrap().iter().map(str::to_owned).collect();
        let records: Vec<csv::StringRecord> = reader.records().map(Result::unwrap).collect();
        assert_eq!(records.len(), rows.len(), "{arguments:?}");
        for (record, row) in records.iter().zip(&rows) {
            // Warnings stand beside a table, not in it.
            let mut row = row.as_object().unwrap().clone();
            row.remove("warnings");
            assert_eq!(header, row.keys().cloned().collect::<Vec<_>>(), "{arguments:?}");
            for (cell, value) in record.iter().zip(row.values()) {
                let same = match value {
                    Value::Null => cell.is_empty(),
                    Value::String(text) => cell == text,
                    other => other.to_string().as_str() == cell,
                };
                assert!(same, "{cell} is not {value}");
            }
        }
    }
}
