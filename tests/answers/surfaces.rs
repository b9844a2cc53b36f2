//! What one state warns of, asked of every command: each says what the sheet of that state says. The burners are
//! invented.

use std::collections::BTreeSet;

use jetwright::control::{ImageHazard, SetpointImage, SetpointTable, USUAL_ROWS};
use jetwright::plant::HazardKind;
use serde_json::Value;

use super::{BELLS, BurnerFile, GAUGE, HOLD, answer, jetwright, json};

/// The kinds of an answer's warnings.
fn kinds(answer: &Value) -> BTreeSet<String> {
    let warnings = answer["warnings"].as_array().unwrap_or_else(|| panic!("no warnings in {answer}"));
    warnings.iter().map(|warning| warning["kind"].as_str().unwrap().to_owned()).collect()
}

/// Those of a sheet that a surface can know of, by the words of what it is told.
fn among(sheet: &Value, known: &[&str]) -> BTreeSet<String> {
    kinds(sheet).into_iter().filter(|kind| known.contains(&kind.as_str())).collect()
}

fn one_line(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// What a gas, a jet and a gauge tell.
const OF_JET: &[&str] = &["heavy_gas", "near_condensing", "no_gas", "slow_jet", "short_bore", "unmeasured_tip"];
/// What a gas and an air ratio tell.
const OF_FLAME: &[&str] = &["heavy_gas", "carbon_monoxide", "too_lean", "flashback_unknown"];
/// What a cylinder under draw tells.
const OF_CYLINDER: &[&str] = &["heavy_gas", "cylinder_cannot_keep_up", "cylinder_short", "frost", "blend_boils_apart"];

/// The bells without air side.
fn jet_alone(changes: &[(&str, &str)]) -> BurnerFile {
    let (start, end) = (BELLS.find("[blower]").unwrap(), BELLS.find("[head]").unwrap());
    BurnerFile::bells(&[&[(&BELLS[start..end], "")], changes].concat())
}

#[test]
fn flow_and_jet_warn_as_the_sheet_does() {
    let mut met = BTreeSet::new();
    for (gas, temperature, bore, length, gauge) in [
        ("propane", "15 C", "1.8 mm", "12 mm", "5 psi"),
        ("propane", "-35 C", "1.8 mm", "12 mm", "5 psi"),
        ("propane", "15 C", "1.8 mm", "2 mm", "0 psi"),
        ("natural-gas", "15 C", "0.44 mm", "12 mm", "1 psi"),
        ("butane", "8 C", "1.8 mm", "2.6 mm", "8 psi"),
    ] {
        let sheet = jet_alone(&[
            (HOLD, ""),
            ("\"propane\"", &format!("\"{gas}\"")),
            ("temperature = \"15 C\"", &format!("temperature = \"{temperature}\"")),
            ("\"1.8 mm\"", &format!("\"{bore}\"")),
            ("\"12 mm\"", &format!("\"{length}\"")),
            (GAUGE, &format!("gauge = \"{gauge}\"")),
        ])
        .json();
        let flow = json(&[
            "flow",
            "--gas",
            gas,
            "--gas-temperature",
            temperature,
            "--bore",
            bore,
            "--bore-length",
            length,
            "--edge",
            "square",
            "--gauge",
            gauge,
            "--altitude",
            "1600 m",
        ]);
        assert_eq!(kinds(&flow), among(&sheet, OF_JET), "{gas} {temperature} {bore} {length} {gauge}");
        met.extend(kinds(&flow));
    }
    assert!(met.len() >= 5, "the states differ: {met:?}");
    // The jet's neighbors among the tips are marked sizes, as the sheet of such a jet says.
    let tips = json(&["jet", "--gas", "propane", "--gauge", "5 psi", "--heat", "26 kW net", "--drills", "tips"]);
    let sheet = BurnerFile::bells(&[("bore = \"1.8 mm\"", "drill = \"tip 1.6 mm\"")]).json();
    assert!(kinds(&tips).contains("unmeasured_tip") && kinds(&sheet).contains("unmeasured_tip"));
}

#[test]
fn a_weighing_and_a_metering_warn_as_the_sheet_does() {
    let mut met = BTreeSet::new();
    for (gas, length, gauge) in
        [("propane", "12 mm", "5 psi"), ("natural-gas", "12 mm", "0.4 psi"), ("butane", "2.6 mm", "5 psi")]
    {
        let file = BurnerFile::bells(&[
            (HOLD, ""),
            ("\"propane\"", &format!("\"{gas}\"")),
            ("\"12 mm\"", &format!("\"{length}\"")),
            (GAUGE, &format!("gauge = \"{gauge}\"\nair_ratio = 1.3")),
        ]);
        let sheet = file.json();
        let name = sheet["settings"][0]["name"].as_str().unwrap().to_owned();
        let weigh = json(&["weigh", file.path(), "--setting", &name, "--scale", "10 g"]);
        assert_eq!(kinds(&weigh), among(&sheet, OF_JET), "{gas} {length} {gauge}");
        met.extend(kinds(&weigh));
    }
    assert!(["heavy_gas", "short_bore"].iter().all(|kind| met.contains(*kind)), "{met:?}");
    let file = BurnerFile::bells(&[]);
    let metered = json(&[
        "meter",
        file.path(),
        "--gauge",
        "5 psi",
        "--counted",
        "0.78 m3",
        "--time",
        "30 min",
        "--meter-pressure",
        "20 mbar",
        "--meter-temperature",
        "15 C",
    ]);
    assert!(kinds(&metered).contains("heavy_gas"), "{metered}");
}

#[test]
fn air_and_flame_warn_as_the_sheet_does() {
    let mut met = BTreeSet::new();
    for (gas, gauge, air) in [
        ("propane", "5 psi", "air_ratio = 0.7"),
        ("propane", "5 psi", "air_ratio = 0.97"),
        ("propane", "5 psi", "air_ratio = 1.05"),
        ("propane", "1 psi", "damper = \"100 %\""),
        ("natural-gas", "3 psi", "air_ratio = 0.99"),
    ] {
        let sheet = BurnerFile::bells(&[
            (HOLD, ""),
            ("\"propane\"", &format!("\"{gas}\"")),
            (GAUGE, &format!("gauge = \"{gauge}\"\n{air}")),
        ])
        .json();
        let found = sheet["settings"][0]["air_ratio"].as_f64().unwrap();
        for command in ["air", "flame"] {
            let more: &[&str] = if command == "air" { &["--heat", "26 kW net"] } else { &[] };
            let asked = found.to_string();
            let arguments = [&[command, "--gas", gas, "--air-ratio", &asked, "--altitude", "1600 m"], more].concat();
            let answered = json(&arguments);
            assert_eq!(kinds(&answered), among(&sheet, OF_FLAME), "{command} {gas} {air}: {found}");
            met.extend(kinds(&answered));
        }
    }
    assert!(["heavy_gas", "carbon_monoxide", "too_lean"].iter().all(|kind| met.contains(*kind)), "{met:?}");
}

#[test]
fn a_cylinder_warns_as_the_sheet_does() {
    let mut met = BTreeSet::new();
    for (gas, left, minutes) in
        [("propane", "45 kg", "60 min"), ("propane", "6 kg", "240 min"), ("propane-butane", "20 kg", "60 min")]
    {
        let tank = format!(
            "[cylinder]\ncapacity = \"45 kg\"\ndiameter = \"375 mm\"\ncontents = \"{left}\"\n[regulator]\nminimum_inlet_pressure = \"1 bar\"\n"
        );
        let text = BELLS.replacen("[jet]", &format!("{tank}\n[jet]"), 1);
        let file = BurnerFile::of(
            &text,
            &[
                (HOLD, ""),
                ("\"propane\"", &format!("\"{gas}\"")),
                ("minutes = \"60 min\"", &format!("minutes = \"{minutes}\"")),
            ],
        );
        let sheet = file.json();
        let draw = format!("{} kg/h", 3600.0 * sheet["settings"][0]["mass_flow_kg_per_s"].as_f64().unwrap());
        let cylinder = json(&[
            "cylinder",
            "--gas",
            gas,
            "--capacity",
            "45 kg",
            "--diameter",
            "375 mm",
            "--contents",
            left,
            "--minimum-inlet-pressure",
            "1 bar",
            "--draw",
            &draw,
            "--minutes",
            minutes,
            "--altitude",
            "1600 m",
            "--air-temperature",
            "15 C",
        ]);
        assert_eq!(kinds(&cylinder), among(&sheet, OF_CYLINDER), "{gas} {left} {minutes}");
        met.extend(kinds(&cylinder));
    }
    assert!(met.len() >= 4, "the states differ: {met:?}");
    let line = json(&super::supply::PIPE);
    assert_eq!(kinds(&line), BTreeSet::new(), "natural gas is lighter than air");
}

#[test]
fn a_chamber_and_the_writer_of_a_chips_burner_say_all_that_the_sheet_says() {
    let file = super::furnace::run(&[]);
    let sheet = file.json();
    assert_eq!(json(&["chamber", file.path()])["warnings"], sheet["warnings"]);
    let image = std::path::Path::new(env!("CARGO_TARGET_TMPDIR")).join("surfaces-burner.image");
    let said = answer(&["chip", file.path(), "--image", image.to_str().unwrap()]);
    let warned = |text: &str| text.split_once("WARNINGS\n").expect("warnings").1.to_owned();
    let page = file.text("metric");
    assert!(warned(&page).starts_with(warned(&said).trim_end()), "{said}");
}

#[test]
fn a_table_of_setpoints_warns_as_a_sheet_of_its_rows_does() {
    for ratio in ["0.7", "1.05", "1.4"] {
        let file = BurnerFile::bells(&[]);
        let table = json(&["setpoints", file.path(), "--air-ratio", ratio]);
        let rows = table["rows"].as_array().unwrap();
        let warnings = table["warnings"].as_array().unwrap();
        for (index, row) in rows.iter().enumerate().step_by(4) {
            let set = format!(
                "gauge = \"{} bar\"\ndamper = \"{} %\"",
                row["gauge_pressure_pa"].as_f64().unwrap() / 1e5,
                100.0 * row["air_setting"].as_f64().unwrap()
            );
            let sheet = BurnerFile::bells(&[(HOLD, ""), (GAUGE, &set)]).json();
            let watts = row["heat_net_w"].as_f64().unwrap();
            // Rows are named by their heat input, in three figures.
            let of_row = |warning: &&Value| match warning["setting"].as_str() {
                Some(name) => {
                    let kilowatts: f64 = name.split(' ').next().unwrap().parse().unwrap();
                    (1e3 * kilowatts / watts - 1.0).abs() < 0.006
                }
                None => true,
            };
            let found: BTreeSet<_> =
                warnings.iter().filter(of_row).map(|warning| warning["kind"].as_str().unwrap().to_owned()).collect();
            assert_eq!(found, kinds(&sheet), "row {index} at {ratio}");
        }
        assert_eq!(kinds(&table).contains("carbon_monoxide"), ratio == "0.7");
    }
    let file = BurnerFile::bells(&[]);
    // The image carries the kinds of the answer, the worst first; a chip reads the table from it all the same.
    let image = std::path::Path::new(env!("CARGO_TARGET_TMPDIR")).join("surfaces-table.image");
    let table = json(&["setpoints", file.path(), "--air-ratio", "0.7", "--image", image.to_str().unwrap()]);
    let image = std::fs::read(image).unwrap();
    let read = SetpointImage::<USUAL_ROWS>::read(&image).unwrap();
    let hazards = read.hazards.expect("the writer has looked");
    let carried = hazards.iter().map(|hazard| HazardKind::of_code(hazard.kind).expect("a kind").key().to_owned());
    assert_eq!(carried.collect::<BTreeSet<_>>(), kinds(&table));
    assert_eq!(hazards[0].kind, HazardKind::CarbonMonoxide as u16);
    assert!(hazards[0].number > 0.05 && hazards[0].severity == 4 && hazards[0].row == ImageHazard::EVERY_ROW);
    assert!(hazards.windows(2).all(|pair| pair[0].severity >= pair[1].severity));
    assert_eq!(SetpointTable::<USUAL_ROWS, f32>::read_image(&image), Ok(read.table));
    for source in ["c", "rust"] {
        let text = answer(&["setpoints", file.path(), "--air-ratio", "0.7", "--source", source]);
        assert!(one_line(&text).contains("CARBON MONOXIDE"), "{text}");
    }
}

#[test]
fn csv_says_its_warnings_beside_the_table() {
    let file = BurnerFile::bells(&[("air_ratio = 1.05", "air_ratio = 0.8")]);
    for arguments in [
        vec!["sheet", file.path()],
        vec!["setpoints", file.path()],
        vec!["air", "--gas", "propane", "--heat", "26 kW net", "--air-ratio", "0.8"],
        vec!["flame", "--gas", "propane", "--air-ratio", "0.8"],
    ] {
        let output = jetwright(&[&arguments[..], &["--format", "csv"]].concat());
        let (table, beside) = (String::from_utf8(output.stdout).unwrap(), String::from_utf8(output.stderr).unwrap());
        assert!(output.status.success() && !table.contains("WARNINGS"), "{table}");
        assert!(
            beside.starts_with("WARNINGS\n") && one_line(&beside).contains("CARBON MONOXIDE"),
            "{arguments:?}: {beside}"
        );
    }
}
