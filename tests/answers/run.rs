//! The firing as the sheet tells it: one firing, its safety steps, and the work's own fire. The burners are invented.

use serde_json::Value;

use super::furnace::{blank, run};
use super::{BurnerFile, number};

const FOUNDRY: &str = include_str!("../../examples/bell-foundry.toml");

fn foundry(changes: &[(&str, &str)]) -> BurnerFile {
    BurnerFile::of(FOUNDRY, changes)
}

/// A block of a sheet, as one line.
fn block(text: &str, heading: &str) -> String {
    let start = text.find(&format!("\n{heading}\n")).unwrap_or_else(|| panic!("no {heading}:\n{text}")) + 1;
    let end = text[start..].find("\n\n").map_or(text.len(), |end| start + end);
    text[start..end].split_whitespace().collect::<Vec<_>>().join(" ")
}

fn has(sheet: &Value, word: &str) -> bool {
    sheet["warnings"].as_array().unwrap().iter().any(|caution| caution["kind"] == word)
}

fn plan_gas(sheet: &Value) -> f64 {
    let plan = sheet["furnace"]["plan"].as_array().unwrap();
    plan.iter().map(|step| step["plan_gas_kg"].as_f64().unwrap()).sum()
}

#[test]
fn the_work_says_its_damper_with_its_gauge() {
    let minutes = ("minutes = \"40 min\"", "minutes = \"30 min\"");
    let file = run(&[minutes]);
    let sheet = file.json();
    let of = |key: &str| number(&sheet, &format!("/furnace/{key}"));
    // Set so, the burner gives the fire asked and its air; with the damper left it is starved by the gas alone, as much
    // as the root of the gauges is apart, or a little less.
    let set = |damper: f64| {
        let gauge = format!("gauge = \"{} Pa\"\ndamper = {damper}", of("work_gauge_pressure_pa"));
        run(&[("gauge = \"3.2 psi\"", &gauge), minutes]).json()
    };
    let right = set(of("work_damper_opening"));
    assert!((number(&right, "/settings/0/heat_net_w") / of("work_fire_net_w") - 1.0).abs() < 1e-4);
    assert!((number(&right, "/settings/0/air_ratio") - 1.05).abs() < 1e-3);
    let left = set(number(&sheet, "/settings/0/damper_opening"));
    let starved = 1.05 * (number(&sheet, "/settings/0/gauge_pressure_pa") / of("work_gauge_pressure_pa")).sqrt();
    let ratio = number(&left, "/settings/0/air_ratio");
    assert!((ratio / starved - 1.0).abs() < 0.04 && has(&left, "carbon_monoxide"), "{ratio} {starved}");
}

#[test]
fn no_firing_asks_for_a_fire_that_is_out_of_reach() {
    let mut met = [0; 2];
    for minutes in [4, 20, 25, 30, 40, 60] {
        let file = run(&[("minutes = \"40 min\"", &format!("minutes = \"{minutes} min\""))]);
        let sheet = file.json();
        // Faster than the chamber can at its temperature, or more than the blower feeds.
        let fire = sheet["furnace"]["work_fire_net_w"].as_f64();
        let out = fire.is_none_or(|fire| fire > number(&sheet, "/air/largest_heat_net_w"));
        met[usize::from(out)] += 1;
        assert_eq!(has(&sheet, "work_out_of_reach"), out, "{minutes} min");
        assert_eq!(sheet["furnace"]["work_gauge_pressure_pa"].is_null(), out, "{minutes} min");
        assert_eq!(sheet["furnace"]["plan"].as_array().unwrap().is_empty(), out, "{minutes} min");
    }
    assert!(met[0] > 1 && met[1] > 1, "{met:?}");
}

#[test]
fn a_work_fire_that_is_rich_is_cautioned_of() {
    // Both settings have air enough of their own; the work burns at the file's air ratio.
    let own = |gauge: &str| format!("{gauge}\nair_ratio = 1.10");
    let (melt, hold) = ("gauge = \"3.2 psi\"", "gauge = \"0.8 psi\"");
    let at = |ratio: &str| run(&[("air_ratio = 1.05", ratio), (melt, &own(melt)), (hold, &own(hold))]).json();
    let places = |sheet: &Value| {
        let cautions = sheet["warnings"].as_array().unwrap();
        let carbon_monoxide = cautions.iter().filter(|caution| caution["kind"] == "carbon_monoxide");
        carbon_monoxide.map(|caution| caution["setting"].as_str().unwrap().to_owned()).collect::<Vec<_>>()
    };
    assert_eq!(places(&at("air_ratio = 0.95")), ["the work"]);
    assert!(places(&at("air_ratio = 1.05")).is_empty());
}

#[test]
fn an_firing_begins_with_air_and_ends_with_the_valve() {
    for (file, heading) in [(foundry(&[]), "RUN PLAN"), (run(&[]), "RUN PLAN")] {
        let told = block(&file.text("metric"), heading);
        let mut from = 0;
        // Air before gas, gas off before air: NFPA 86's order (from memory).
        for step in [
            "gas shut: purge the chamber for 60 s",
            " light",
            "gas off at the cylinder first",
            "keep the air on",
            "air off: shut the damper",
        ] {
            let at = told[from..].find(step).unwrap_or_else(|| panic!("{step:?} is not in its place: {told}"));
            from += at + step.len();
        }
    }
}

#[test]
fn a_sheet_has_one_time_to_purge() {
    // Four changes of 20 L by any blower here take less than the 60 s that are the least, of 200 L more.
    let times = |volume: &str| {
        let sheet = foundry(&[("chamber_volume = \"20 L\"", &format!("chamber_volume = \"{volume}\""))]).json();
        let settings = sheet["settings"].as_array().unwrap().clone();
        settings.iter().filter_map(|setting| setting["air_changes_s"].as_f64()).fold(0.0, f64::max)
    };
    let (small, large) = (times("20 L"), times("200 L"));
    assert!(small < 60.0 && large > 60.0 && (large / small - 10.0).abs() < 1e-6, "{small} {large}");
    let sheet = run(&[]).json();
    let first = sheet["furnace"]["plan"][0]["what"].as_str().unwrap();
    assert!(first.ends_with(&format!("for {:.0} s", number(&sheet, "/furnace/chamber_purge_s"))), "{first}");
}

#[test]
fn a_sheet_has_one_firing() {
    let cylinder = |sheet: &Value| number(sheet, "/cylinder/cylinder_run/gas_used_kg");
    let sheet = blank(&[]).json();
    assert_eq!(sheet["cylinder"]["cylinder_run"]["by_plan"], true);
    assert!((cylinder(&sheet) / plan_gas(&sheet) - 1.0).abs() < 1e-9);
    // Without a plan the settings' minutes are the firing.
    let hurried = blank(&[("minutes = \"60 min\"\n# Mass", "minutes = \"5 min\"\n# Mass")]);
    let sheet = hurried.json();
    assert_eq!(sheet["cylinder"]["cylinder_run"]["by_plan"], false);
    assert!((cylinder(&sheet) / number(&sheet, "/run/gas_used_kg") - 1.0).abs() < 1e-9);
}

#[test]
fn the_room_feeds_the_largest_fire_of_the_firing() {
    // 15.7 kg of dry air a kg of propane (a volume of 23.9) and a little water, 46.35 MJ/kg net, air of 0.99 kg/m3 at
    // 1600 m (ISO 2533).
    let air = |watts: f64| watts / 46.35e6 * 15.75 * 1.05 / 0.99;
    let sheet = run(&[("minutes = \"40 min\"", "minutes = \"30 min\"")]).json();
    let (work, melt) = (number(&sheet, "/furnace/work_fire_net_w"), number(&sheet, "/settings/0/heat_net_w"));
    assert!(work > 1.1 * melt, "{work} {melt}");
    assert!((number(&sheet, "/furnace/fire_air_m3_per_s") / air(work) - 1.0).abs() < 0.02);
    let gentle = run(&[("minutes = \"40 min\"", "minutes = \"180 min\"")]).json();
    assert!(number(&gentle, "/furnace/work_fire_net_w") < melt);
    assert!((number(&gentle, "/furnace/fire_air_m3_per_s") / air(melt) - 1.0).abs() < 0.02);
}

#[test]
fn blower_and_cylinder_are_judged_at_the_largest_fire_of_the_firing() {
    let hurried = run(&[("minutes = \"40 min\"", "minutes = \"30 min\"")]).json();
    let gentle = run(&[("minutes = \"40 min\"", "minutes = \"180 min\"")]).json();
    assert_eq!((&hurried["air"]["setting"], &gentle["air"]["setting"]), (&"the work".into(), &"melt".into()));
    // Air by the gas: 15.75 kg a kg of propane of 46.35 MJ/kg net, in air of 0.99 kg/m3.
    let air = number(&hurried, "/furnace/work_fire_net_w") / 46.35e6 * 15.75 * 1.05 / 0.99;
    assert!((number(&hurried, "/air/air_flow_m3_per_s") / air - 1.0).abs() < 0.02);
    // A shorter time still, and the blower is too small for it.
    let short = run(&[("minutes = \"40 min\"", "minutes = \"20 min\"")]).json();
    assert!(number(&short, "/air/blower_pressure_surplus_pa") < 0.0);
    assert!(number(&hurried, "/air/blower_pressure_surplus_pa") > 0.0);
    let draws = hurried["cylinder"]["draws"].as_array().unwrap();
    assert_eq!(draws.len(), hurried["settings"].as_array().unwrap().len() + 1);
    let draw = draws.last().unwrap();
    let gas = number(&hurried, "/furnace/work_fire_net_w") / 46.35e6;
    assert!(draw["setting"] == "the work" && (number(draw, "/mass_flow_kg_per_s") / gas - 1.0).abs() < 0.005);
    assert_eq!(short["cylinder"]["draws"].as_array().unwrap().len(), draws.len() - 1);
    // A cylinder that is nearly empty, out in the frost, does not keep up with it.
    let starved = |left: &str| {
        let frost = ("temperature = \"12 C\"", "temperature = \"-10 C\"");
        let minutes = ("minutes = \"40 min\"", "minutes = \"30 min\"");
        let sheet = run(&[("contents = \"30 kg\"", &format!("contents = \"{left}\"")), frost, minutes]).json();
        let cautions = sheet["warnings"].as_array().unwrap().clone();
        cautions.iter().any(|found| found["kind"] == "cylinder_cannot_keep_up" && found["setting"] == "the work")
    };
    assert!(starved("3 kg") && !starved("30 kg"));
}
