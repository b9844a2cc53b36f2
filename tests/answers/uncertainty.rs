//! How sure the sheet says its numbers are, and what a measured jet makes of it.

use serde_json::Value;

use super::{BELLS, BurnerFile, GAUGE, HOLD, number};

/// Share of the fire of a setting that is unsure.
fn fire(sheet: &Value, setting: usize) -> f64 {
    let at = |key: &str| number(sheet, &format!("/settings/{setting}/{key}"));
    at("heat_net_expanded_w") / at("heat_net_w")
}

fn with(section: &str) -> Value {
    BurnerFile::of(&format!("{BELLS}\n[uncertainty]\n{section}\n"), &[]).json()
}

/// The bells at 5 psi: measured bore 0.01 of 1.8 mm, coefficient 5 in 100, a 0-15 psi gauge 0.3 of 5 psi and half of that
/// in the flow, gas 8 K, composition 1, edge some 2, air pressure some 1: the root of the sum of squares is 6.6.
#[test]
fn the_bells_are_as_sure_as_a_hand_calculation_says() {
    let sheet = BurnerFile::bells(&[]).json();
    assert!((fire(&sheet, 0) - 0.066).abs() < 0.006, "{}", fire(&sheet, 0));
    assert_eq!(sheet["settings"][0]["fire_largest_uncertainty"], "hole");
}

#[test]
fn every_key_of_the_section_moves_what_it_names() {
    let base = with("");
    let budget = |sheet: &Value, row: usize, key: &str| {
        let at = |key: &str| number(sheet, &format!("/budgets/{row}/{key}"));
        at(&format!("{key}_share")) * at("uncertainty_share").powi(2)
    };
    for (section, source) in [
        ("bore = \"0.1 mm\"", "bore"),
        ("edge_rounding = \"0.1 mm\"", "edge"),
        ("coefficient = \"15 %\"", "hole"),
        ("gauge_span = \"60 psi\"", "gauge"),
        ("gauge_span = \"15 psi\"\ngauge_class = \"4\"", "gauge"),
        ("gauge_error = \"0.8 psi\"", "gauge"),
        ("gas_temperature = \"25 K\"", "gas_temperature"),
        ("composition = \"5 %\"", "composition"),
        ("air_pressure = \"60 hPa\"", "air_pressure"),
        ("air_temperature = \"10 K\"", "air_temperature"),
        ("damper = \"10 %\"", "damper"),
        ("blower = \"30 %\"", "blower"),
        ("head = \"15 %\"", "head"),
        ("mixture_temperature = \"60 K\"", "mixture_temperature"),
    ] {
        let wider = with(section);
        // The first row is the fire of the first setting, the second its air ratio.
        let moved = |row| budget(&wider, row, source) / budget(&base, row, source);
        let row = usize::from(["air_temperature", "damper", "blower", "head", "mixture_temperature"].contains(&source));
        assert!(moved(row) > 2.0, "{section}: {}", moved(row));
        let other = if source == "hole" { "gauge" } else { "hole" };
        let kept = budget(&wider, row, other) / budget(&base, row, other);
        assert!((kept - 1.0).abs() < 0.02, "{section}: {kept}");
    }
}

#[test]
fn the_shares_add_to_one_and_the_largest_is_named() {
    let sheet = BurnerFile::bells(&[(GAUGE, "gauge = \"1.2 psi\"")]).json();
    for row in sheet["budgets"].as_array().unwrap() {
        let shares: Vec<(&String, f64)> = row
            .as_object()
            .unwrap()
            .iter()
            .filter(|(key, _)| key.ends_with("_share") && *key != "uncertainty_share")
            .map(|(key, value)| (key, value.as_f64().unwrap()))
            .collect();
        assert!(shares.len() == 15 && (shares.iter().map(|share| share.1).sum::<f64>() - 1.0).abs() < 1e-9);
        let largest = shares.iter().max_by(|a, b| a.1.total_cmp(&b.1)).unwrap().0;
        let settings = sheet["settings"].as_array().unwrap();
        let setting = settings.iter().find(|setting| setting["name"] == row["budget_setting"]).unwrap();
        let key = if row["budget_of"] == "fire" { "fire_largest_uncertainty" } else { "air_ratio_largest_uncertainty" };
        assert_eq!(format!("{}_share", setting[key].as_str().unwrap()), **largest);
    }
}

#[test]
fn a_tip_by_its_mark_has_no_plus_minus_but_a_request_to_measure_it() {
    let tip = [("bore = \"1.8 mm\"", "drill = \"tip 1.8 mm\"")];
    let tip = |more: &str| {
        if super::jetwright(&["flow", "--gas", "propane", "--gauge", "5 psi", "--drill", "tip 1.8 mm"]).status.success()
        {
            BurnerFile::of(&format!("{BELLS}{more}"), &tip)
        } else {
            BurnerFile::of(&format!("{BELLS}{more}"), &[("bore = \"1.8 mm\"", "drill = \"tip 1.6 mm\"")])
        }
    };
    let sheet = tip("").json();
    assert!(sheet["settings"][0]["heat_net_expanded_w"].is_null() && sheet["budgets"].as_array().unwrap().is_empty());
    // Whoever has measured it says how well.
    let measured = tip("\n[uncertainty]\nbore = \"0.02 mm\"\n").json();
    assert!(fire(&measured, 0) > 0.05);
}

#[test]
fn a_gauge_near_its_lowest_mark_says_that_plus_minus_is_not_enough() {
    let low = BurnerFile::bells(&[(HOLD, ""), (GAUGE, "gauge = \"0.5 psi\"\ndamper = \"20 %\"")]);
    assert_eq!(low.json()["settings"][0]["fire_straight"], false);
    let high = BurnerFile::bells(&[]);
    assert_eq!(high.json()["settings"][0]["fire_straight"], true);
}

/// Walls whose conductivity is known better are kept by a fire that is; a wall known exactly leaves the rest.
#[test]
fn the_fire_that_keeps_the_chamber_is_as_sure_as_its_walls() {
    let run = |walls: &str| {
        super::furnace::run(&[("[work]", &format!("[uncertainty]\nwalls = \"{walls}\"\n\n[work]"))]).json()
    };
    let at = |sheet: &Value, key: &str| number(sheet, &format!("/furnace/keep_steady_{key}_w"));
    let up = |walls: &str| {
        let sheet = run(walls);
        (at(&sheet, "heat_net_high") / at(&sheet, "heat_net")).ln()
    };
    let (none, tenth, fifth) = (up("0 %"), up("10 %"), up("20 %"));
    // Side by side in quadrature: what the walls add is twice as much for twice the spread.
    let [small, large] = [tenth, fifth].map(|all: f64| (all * all - none * none).sqrt());
    assert!((large / small - 2.0).abs() < 0.15, "{none} {tenth} {fifth}");
    // A tenth more through the walls is at most a tenth more fire, and no less than the walls' part of it.
    let sheet = run("10 %");
    let part = at(&sheet, "walls") / (at(&sheet, "walls") + at(&sheet, "openings"));
    assert!(small > 0.6 * 0.1 * part && small < 0.1, "{small} {part}");
    // Unless told, the materials' own, a quarter.
    let usual = super::furnace::run(&[]).json();
    assert!((at(&usual, "heat_net_high") / at(&usual, "heat_net")).ln() > fifth);
}
