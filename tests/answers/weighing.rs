//! The commands `weigh` and `meter`, and the file they write.

use serde_json::Value;

use super::{BELLS, BurnerFile, answer, jetwright, json, number, refused};

/// The model's flow of the bells' first setting, kg/s.
fn model(file: &BurnerFile) -> f64 {
    number(&file.json(), "/settings/0/mass_flow_kg_per_s")
}

/// A weighing of the first setting: gas lost over the model's, minutes, and more options.
fn weigh(file: &BurnerFile, factor: f64, minutes: f64, more: &[&str]) -> Vec<String> {
    let lost = format!("{} kg", factor * model(file) * 60.0 * minutes);
    let options = ["weigh", file.path(), "--setting", "melt", "--scale", "5 g", "--lost", &lost, "--time"];
    let mut options: Vec<String> = options.map(str::to_owned).to_vec();
    options.push(format!("{minutes} min"));
    options.extend(more.iter().map(|&option| option.to_owned()));
    options
}

fn run(options: &[String]) -> Vec<&str> {
    options.iter().map(String::as_str).collect()
}

/// A place for a measured jet beside the burner files of the tests.
fn place(name: &str) -> String {
    let folder = std::path::Path::new(env!("CARGO_TARGET_TMPDIR"));
    folder.join(format!("{name}-{}.toml", std::process::id())).to_str().unwrap().to_owned()
}

/// Answers that between them fill and empty every key.
pub fn answers() -> Vec<Value> {
    let (file, saved) = (BurnerFile::bells(&[]), place("keys"));
    let of = |options: Vec<String>| json(&run(&options));
    let found = vec![
        json(&["weigh", file.path(), "--setting", "melt", "--scale", "5 g"]),
        of(weigh(&file, 1.02, 30.0, &["--save", &saved])),
        of(weigh(&file, 1.01, 30.0, &["--earlier", &saved])),
    ];
    let _ = std::fs::remove_file(saved);
    found
}

#[test]
fn a_weighing_gives_back_the_jet_and_how_sure_it_is() {
    let file = BurnerFile::bells(&[]);
    let found = json(&run(&weigh(&file, 1.03, 30.0, &[])));
    let at = |key: &str| number(&found, &format!("/{key}"));
    assert!((at("measured_over_model") - 1.03).abs() < 1e-6 && found["trust"] == "agrees");
    // 5 g read twice are 4.08 g at k = 2, of some 1.1 kg; the clock two seconds of 1800.
    let lost = 1.03 * model(&file) * 1800.0;
    let by_hand = ((4.082e-3 / lost).powi(2) + (2.0_f64 / 1800.0).powi(2)).sqrt();
    assert!((number(&found, "/rows/0/run_uncertainty_share") / by_hand - 1.0).abs() < 1e-3);
    assert!(at("joined_uncertainty_share") < at("measured_uncertainty_share"));
    assert!(at("joined_uncertainty_share") < at("model_uncertainty_share"));
    // The area of the bore goes with the flow.
    assert!((at("effective_bore_m") / at("bore_m") - 1.03_f64.sqrt()).abs() < 1e-3);
}

#[test]
fn a_saved_weighing_is_used_by_every_later_number_and_makes_them_surer() {
    let (file, saved) = (BurnerFile::bells(&[]), place("saved"));
    answer(&run(&weigh(&file, 1.04, 40.0, &["--save", &saved])));
    let named = &saved;
    let measured = BurnerFile::bells(&[("edge = \"square\"", &format!("edge = \"square\"\nmeasured = \"{named}\""))]);
    let (before, after) = (file.json(), measured.json());
    let joined = json(&run(&weigh(&file, 1.04, 40.0, &[])))["joined_over_model"].as_f64().unwrap();
    for setting in [0, 1] {
        let share = |sheet: &Value| {
            let at = |key: &str| number(sheet, &format!("/settings/{setting}/{key}"));
            at("heat_net_expanded_w") / at("heat_net_w")
        };
        assert!(share(&after) < 0.7 * share(&before), "{} {}", share(&after), share(&before));
    }
    let flow = |sheet: &Value| number(sheet, "/settings/0/mass_flow_kg_per_s");
    // The damper follows to keep the air ratio, and the air the jet blows into with it.
    assert!((flow(&after) / flow(&before) / joined - 1.0).abs() < 2e-3);
    // Another bore is another jet.
    let other = [
        ("bore = \"1.8 mm\"", "bore = \"1.7 mm\""),
        ("edge = \"square\"", &format!("edge = \"square\"\nmeasured = \"{named}\"")),
    ];
    let message = refused(&["sheet", BurnerFile::of(BELLS, &other).path()]);
    assert!(message.contains("jet.measured") && message.contains("weigh it again"), "{message}");
    std::fs::remove_file(saved).unwrap();
    let message = refused(&["sheet", measured.path()]);
    assert!(message.contains("jet.measured"), "{message}");
}

#[test]
fn a_later_weighing_tells_wear_from_chance() {
    let (file, saved) = (BurnerFile::bells(&[]), place("earlier"));
    answer(&run(&weigh(&file, 1.0, 40.0, &["--save", &saved])));
    for (factor, finding) in [(1.06, "worn"), (0.95, "dirty"), (1.004, "no real difference")] {
        let options = weigh(&file, factor, 40.0, &["--earlier", &saved]);
        let found = json(&run(&options));
        assert_eq!(found["finding"], finding, "{factor}");
        assert!((number(&found, "/change_share") - (factor - 1.0)).abs() < 1e-4);
        assert_eq!(number(&found, "/change_odds") > 0.0455, finding == "no real difference");
    }
    std::fs::remove_file(saved).unwrap();
}

/// A regulator that gives way shows as a jet that passes less the more it passes, wear alike at every pressure.
#[test]
fn runs_at_several_pressures_tell_a_drooping_regulator_from_dirt() {
    let (file, saved) = (BurnerFile::bells(&[]), place("droop"));
    let site = ["--altitude", "1600 m", "--humidity", "40 %", "--gas-temperature", "15 C"];
    let gauges = ["--gauge", "2 psi", "--gauge", "4 psi", "--gauge", "7 psi"];
    let flows = json(&[&["flow", "--gas", "propane", "--bore", "1.8 mm"][..], &gauges, &site].concat());
    let weigh = |factors: [f64; 3], more: [&str; 2]| {
        let lost: Vec<String> = (0..3)
            .map(|run| {
                format!("{} kg", 2400.0 * factors[run] * number(&flows, &format!("/rows/{run}/mass_flow_kg_per_s")))
            })
            .collect();
        let lost: Vec<&str> = lost.iter().flat_map(|lost| ["--lost", lost, "--time", "40 min"]).collect();
        json(&[&["weigh", file.path(), "--scale", "5 g"][..], &gauges, &lost, &more].concat())
    };
    let first = weigh([1.0; 3], ["--save", &saved]);
    assert!((number(&first, "/measured_over_model") - 1.0).abs() < 1e-4, "{first}");
    for (factors, finding) in [([1.0, 0.96, 0.91], "drooping"), ([0.93; 3], "dirty"), ([1.0; 3], "no real difference")]
    {
        assert_eq!(weigh(factors, ["--earlier", &saved])["finding"], finding, "{factors:?}");
    }
    std::fs::remove_file(saved).unwrap();
}

#[test]
fn what_measures_nothing_is_one_message() {
    let file = BurnerFile::bells(&[]);
    let base = ["weigh", file.path(), "--setting", "melt", "--scale", "10 g"];
    let with = |more: &[&str]| refused(&[&base[..], more].concat());
    for (options, words) in [
        (&["--lost", "-0.5 kg", "--time", "30 min"][..], &["--lost", "-0.5 kg", "0.001 kg"][..]),
        (&["--lost", "0.03 kg", "--time", "60 s"], &["--time", "60 s", "too short", "min or longer"]),
        (&["--lost", "5 kg", "--time", "30 min"], &["--lost", "5 kg", "beyond belief", "not averaged", "--setting is"]),
        (&["--lost", "1.1 kg", "--time", "30 min", "--held", "1.05 kg"], &["--lost", "empty", "--held is \"1.05 kg\""]),
        (
            &["--lost", "1.1 kg", "--time", "30 min", "--lost", "0.9 kg", "--time", "30 min"],
            &["--lost", "contradict each other", "not averaged"],
        ),
        (&["--lost", "1 kg"], &["--time", "one --time for each --lost"]),
        (&["--time", "5 min"], &["--time", "needs --lost"]),
        (
            &["--lost", "1 kg", "--time", "30 min", "--gauge", "5 psi", "--gauge", "6 psi"],
            &["--gauge", "2 readings for 1"],
        ),
    ] {
        let message = with(options);
        assert!(words.iter().all(|word| message.contains(word)), "{options:?}: {message}");
    }
    let message = refused(&["weigh", file.path(), "--scale", "10 g", "--setting", "roast"]);
    assert!(message.contains("--setting: given \"roast\", accepted are melt, hold"), "{message}");
    assert!(refused(&["weigh", file.path(), "--scale", "10 g"]).contains("--setting"));
    assert!(!jetwright(&["weigh", file.path()]).status.success());
}

#[test]
fn without_a_loss_it_plans_and_the_plan_holds() {
    let file = BurnerFile::bells(&[]);
    let base = ["weigh", file.path(), "--setting", "melt", "--scale", "20 g"];
    let plan = json(&base);
    let minutes = number(&plan, "/plan_enough_s") / 60.0;
    let lost = format!("{} kg", number(&plan, "/plan_mass_kg"));
    let time = format!("{minutes} min");
    let found = json(&[&base[..], &["--lost", &lost, "--time", &time]].concat());
    let (planned, reached) = (number(&plan, "/plan_uncertainty_share"), number(&found, "/joined_uncertainty_share"));
    assert!((planned / reached - 1.0).abs() < 1e-3, "{planned} {reached}");
}

#[test]
fn a_meter_and_a_scale_say_the_same_of_the_same_gas() {
    let file = BurnerFile::bells(&[]);
    let lost = model(&file) * 1800.0;
    // Propane at 12 degC and 835.3 + 20 hPa: 1.6161 kg/m3 by the reference equation (Lemmon et al. 2009) [computed with
    // CoolProp 8.0.0].
    let counted = format!("{} m3", lost / METERED_DENSITY);
    let base = ["meter", file.path(), "--setting", "melt", "--counted", &counted, "--time", "30 min"];
    let meter = ["--meter-pressure", "20 mbar", "--meter-temperature", "12 C"];
    let found = json(&[&base[..], &meter].concat());
    assert!((number(&found, "/measured_over_model") - 1.0).abs() < 2e-3, "{found}");
    // Its class of 1.5 in 100 stands beside what the gauge leaves.
    let exact = json(&[&base[..], &meter, &["--meter-class", "0 %"]].concat());
    let squared = |answer: &Value| number(answer, "/measured_uncertainty_share").powi(2);
    assert!(((squared(&found) - squared(&exact)).sqrt() - 0.015).abs() < 1e-4);
    assert_eq!(found["how"], "meter");
}

#[test]
fn the_two_bell_foundries_differ_by_the_weighing_alone() {
    let read = |name: &str| std::fs::read_to_string(format!("{}/examples/{name}", env!("CARGO_MANIFEST_DIR"))).unwrap();
    let (before, after) = (read("bell-foundry.toml"), read("bell-foundry-weighed.toml"));
    let added: Vec<&str> = after.lines().filter(|line| !before.contains(line)).collect();
    assert!(added.len() == 3 && added.iter().any(|line| line.starts_with("measured = ")), "{added:?}");
}

const METERED_DENSITY: f64 = 1.6161;
