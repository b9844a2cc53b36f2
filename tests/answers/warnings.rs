//! Every warning from both sides of where it begins, through the command. The burners are invented.

use jetwright::plant::HazardKind;
use jetwright::plant::hazards::Measure;
use serde_json::Value;

use super::{BurnerFile, GAUGE, HOLD, POINTS, number};

/// The words of a sheet's warnings, each with its setting.
fn found(sheet: &Value) -> Vec<(String, Option<String>)> {
    let cautions = sheet["warnings"].as_array().expect("an array");
    let text = |value: &Value| value.as_str().map(str::to_owned);
    cautions.iter().map(|caution| (text(&caution["kind"]).unwrap(), text(&caution["setting"]))).collect()
}

fn has(sheet: &Value, word: &str) -> bool {
    found(sheet).iter().any(|(found, _)| found == word)
}

/// The first warning of a word.
fn warning<'v>(sheet: &'v Value, word: &str) -> &'v Value {
    let found = sheet["warnings"].as_array().expect("an array").iter().find(|warning| warning["kind"] == word);
    found.unwrap_or_else(|| panic!("no {word}: {:?}", self::found(sheet)))
}

/// A warning, where it begins, how to read its number, and a change of the burner on either side of it.
struct Border {
    word: &'static str,
    at: f64,
    read: fn(&Value) -> f64,
    /// Whether the warning is for what lies above.
    above: bool,
    without: Vec<(&'static str, &'static str)>,
    with: Vec<(&'static str, &'static str)>,
}

fn setting(sheet: &Value, key: &str) -> f64 {
    number(sheet, &format!("/settings/0/{key}"))
}

/// Where the numbers of [`super::keys`] say that each warning begins.
fn borders() -> Vec<Border> {
    let air = "[[setting]]\nname = \"melt\"";
    vec![
        Border {
            word: "near_condensing",
            at: 0.85,
            read: |sheet| setting(sheet, "saturation_ratio"),
            above: true,
            without: vec![("temperature = \"15 C\"", "temperature = \"-34 C\"")],
            with: vec![("temperature = \"15 C\"", "temperature = \"-35 C\"")],
        },
        Border {
            word: "carbon_monoxide",
            // NIOSH's ceiling, 200 ppm.
            at: 200e-6,
            read: |sheet| setting(sheet, "carbon_monoxide_dry"),
            above: true,
            without: vec![(air, "[[setting]]\nname = \"melt\"\nair_ratio = 0.9994")],
            with: vec![(air, "[[setting]]\nname = \"melt\"\nair_ratio = 0.99934")],
        },
        Border {
            word: "damper_nearly_shut",
            at: 0.2,
            read: |sheet| setting(sheet, "damper_opening"),
            above: false,
            without: vec![(air, "[[setting]]\nname = \"melt\"\ndamper = \"20.5 %\"")],
            with: vec![(air, "[[setting]]\nname = \"melt\"\ndamper = \"19.5 %\"")],
        },
        Border {
            word: "back_pressure",
            at: 0.1,
            read: |sheet| setting(sheet, "back_pressure_pa") / setting(sheet, "gauge_pressure_pa"),
            above: true,
            without: vec![(GAUGE, "gauge = \"0.44 psi\"\ndamper = \"100 %\"")],
            with: vec![(GAUGE, "gauge = \"0.42 psi\"\ndamper = \"100 %\"")],
        },
        Border {
            word: "slow_jet",
            at: 5000.0,
            read: |sheet| setting(sheet, "reynolds_number"),
            above: false,
            without: vec![(HOLD, ""), (GAUGE, "gauge = \"1 psi\""), ("\"1.8 mm\"", "\"0.46 mm\"")],
            with: vec![(HOLD, ""), (GAUGE, "gauge = \"1 psi\""), ("\"1.8 mm\"", "\"0.44 mm\"")],
        },
        Border {
            word: "short_bore",
            at: 1.5,
            read: |sheet| number(sheet, "/jet/bore_length_m") / number(sheet, "/jet/bore_m"),
            above: false,
            without: vec![("\"12 mm\"", "\"2.75 mm\"")],
            with: vec![("\"12 mm\"", "\"2.65 mm\"")],
        },
        Border {
            word: "short_bore",
            at: 0.3,
            read: |sheet| number(sheet, "/jet/bore_length_m") / number(sheet, "/jet/bore_m"),
            above: true,
            without: vec![("\"12 mm\"", "\"0.53 mm\"")],
            with: vec![("\"12 mm\"", "\"0.55 mm\"")],
        },
        Border {
            word: "heavy_gas",
            at: 1.0,
            read: |sheet| number(sheet, "/gas/relative_density"),
            above: true,
            without: vec![("\"propane\"", "\"C3H8=0.44,CH4=0.56\"")],
            with: vec![("\"propane\"", "\"C3H8=0.46,CH4=0.54\"")],
        },
        Border {
            word: "altitude",
            at: 0.97 * 101_325.0,
            read: |sheet| number(sheet, "/site/ambient_pressure_pa"),
            above: false,
            without: vec![("altitude = \"1600 m\"", "station_pressure = \"983 hPa\"")],
            with: vec![("altitude = \"1600 m\"", "station_pressure = \"982 hPa\"")],
        },
        Border {
            word: "left_of_peak",
            // The highest point of the changed curve, 20 cubic feet of 0.3048^3 m3 a minute.
            at: 20.0 * 0.028_316_846_592 / 60.0,
            read: |sheet| setting(sheet, "air_flow_m3_per_s"),
            above: false,
            without: vec![(HOLD, ""), ("2.0 in", "1.7 in"), ("1.9 in", "2.0 in"), (GAUGE, "gauge = \"4 psi\"")],
            with: vec![(HOLD, ""), ("2.0 in", "1.7 in"), ("1.9 in", "2.0 in"), (GAUGE, "gauge = \"3.9 psi\"")],
        },
        Border {
            word: "damper_too_wide",
            // At its narrowest the damper gives the ratio asked, 1.05, or more.
            at: 1.05,
            read: |sheet| setting(sheet, "air_ratio"),
            above: true,
            without: vec![(HOLD, ""), (GAUGE, "gauge = \"0.74 psi\"")],
            with: vec![(HOLD, ""), (GAUGE, "gauge = \"0.73 psi\"")],
        },
        Border {
            word: "blower_too_small",
            at: 1.05,
            read: |sheet| setting(sheet, "air_ratio"),
            above: false,
            without: vec![(HOLD, ""), (GAUGE, "gauge = \"11.4 psi\"")],
            with: vec![(HOLD, ""), (GAUGE, "gauge = \"11.6 psi\"")],
        },
        Border {
            word: "no_gas",
            // With the damper wide open the blower holds its shut-off pressure or a little less: 2 inches of
            // water of 249.089 Pa, here in air of 0.989 kg/m3 instead of 1.2; less what the head gives off.
            at: 0.5,
            read: |sheet| f64::from(setting(sheet, "mass_flow_kg_per_s") > 0.0),
            above: false,
            without: vec![(HOLD, ""), (GAUGE, "gauge = \"0.043 psi\"\ndamper = \"100 %\"")],
            with: vec![(HOLD, ""), (GAUGE, "gauge = \"0.042 psi\"\ndamper = \"100 %\"")],
        },
    ]
}

#[test]
fn each_warning_begins_where_its_number_says() {
    for border in borders() {
        for (changes, wanted) in [(&border.without, false), (&border.with, true)] {
            let sheet = BurnerFile::bells(changes).json();
            let value = (border.read)(&sheet);
            assert_eq!(has(&sheet, border.word), wanted, "{} at {value}: {:?}", border.word, found(&sheet));
            // A ratio asked for and met sits on its border, within the solver's rounding.
            let beyond = if border.above { value - border.at } else { border.at - value };
            let side = if wanted { beyond > 0.0 } else { beyond < 1e-9 };
            assert!(side, "{} begins at {}, not at {value}", border.word, border.at);
            let near = border.word == "no_gas" || (value / border.at - 1.0).abs() < 0.06;
            assert!(near, "{}: {value} is far from {}", border.word, border.at);
        }
    }
}

/// A jet in a narrow tube, a marked tip, and a blower that gas alone holds up: each with and without.
fn others() -> Vec<(&'static str, BurnerFile, BurnerFile)> {
    let edge = "edge = \"square\"";
    let tube = |tube: &str| BurnerFile::bells(&[(edge, &format!("{edge}\napproach_diameter = \"{tube}\""))]);
    let jet = |size: &str| BurnerFile::bells(&[("bore = \"1.8 mm\"", size)]);
    let lean = |opening: &str| BurnerFile::bells(&[(GAUGE, &format!("gauge = \"1 psi\"\ndamper = \"{opening}\""))]);
    let damper = |kind: &str| BurnerFile::bells(&[("\"blast gate\"", &format!("\"{kind}\""))]);
    let low = (GAUGE, "gauge = \"1 psi\"");
    let disc = |gap: &str| BurnerFile::bells(&[("\"blast gate\"", &format!("\"butterfly\"\n{gap}")), low]);
    vec![
        // 1.8 mm in 5.1 and in 5.2 mm: 0.353 and 0.346 of the tube, either side of 0.35.
        ("narrow_approach", tube("5.1 mm"), tube("5.2 mm")),
        ("unmeasured_tip", jet("drill = \"tip 1.6 mm\""), jet("bore = \"1.6 mm\"")),
        ("disc_gap_unknown", disc(""), disc("gap = \"2 %\"")),
        ("throttling_valve", damper("ball valve"), damper("blast gate")),
        ("blows_back", weak_blower("0.60 inH2O"), weak_blower("0.61 inH2O")),
        ("too_lean", lean("100 %"), lean("12 %")),
    ]
}

/// Each hazard of the table has a burner that calls for it and one that does not.
#[test]
fn each_hazard_comes_and_goes() {
    let mut cases = others();
    for border in borders() {
        cases.push((border.word, BurnerFile::bells(&border.with), BurnerFile::bells(&border.without)));
    }
    for more in [super::supply::warnings(), super::furnace::warnings(), super::lighting::warnings()] {
        cases.extend(more);
    }
    for kind in HazardKind::ALL {
        assert!(cases.iter().any(|(word, ..)| *word == kind.key()), "no burner is known to call for {kind:?}");
    }
    for (word, with, without) in &cases {
        let (with, without) = (with.json(), without.json());
        assert!(has(&with, word), "{word} did not come: {:?}", found(&with));
        assert!(!has(&without, word), "{word} did not go: {:?}", found(&without));
        let (warning, kind) = (warning(&with, word), HazardKind::ALL.iter().find(|kind| kind.key() == *word).unwrap());
        assert_eq!(warning["severity"], kind.severity().key());
        let numbered = kind.measure() != Measure::Nothing;
        assert!(numbered || warning["number"].is_null() && warning["limit"].is_null(), "{warning}");
    }
}

#[test]
fn warnings_stand_the_worst_first() {
    let sheet = super::furnace::blank(&[]).json();
    let words: Vec<String> = found(&sheet).into_iter().map(|(word, _)| word).collect();
    let severity = |word: &String| HazardKind::ALL.iter().find(|kind| kind.key() == word).unwrap().severity();
    assert!(words.len() > 3 && words.windows(2).all(|pair| severity(&pair[0]) <= severity(&pair[1])), "{words:?}");
}

#[test]
fn the_bells_call_for_the_warnings_of_place_and_gas_alone() {
    let sheet = BurnerFile::bells(&[]).json();
    assert_eq!(found(&sheet), [("heavy_gas".into(), None), ("altitude".into(), None)]);
}

#[test]
fn no_fire_that_poisons_is_called_clean() {
    // A furnace that is short of a hundredth of its air leaves some 0.4 % of the fuel's carbon half burnt: at 1200 C the
    // shift of water gas (K = 2.5, from memory) gives two thirds of what lacks to carbon monoxide.
    for ratio in ["0.96", "0.979", "0.98", "0.981", "0.99", "0.995"] {
        let asked = format!("air_ratio = {ratio}");
        let file = BurnerFile::bells(&[("air_ratio = 1.05", &asked)]);
        let sheet = file.json();
        let count = sheet["settings"].as_array().unwrap().len();
        let told = found(&sheet).iter().filter(|(word, _)| word == "carbon_monoxide").count();
        assert_eq!(told, count, "{ratio}: settings of one air ratio share the warning");
        let ends = sheet["settings"].as_array().unwrap().iter().map(|setting| &setting["carbon_monoxide_dry"]);
        assert!(ends.clone().all(|share| share.as_f64().unwrap() > 200e-6), "{ratio}: {:?}", ends.collect::<Vec<_>>());
    }
    let missing = 2.0 * 0.01 * 5.0;
    let dry = 3.0 + 18.8;
    let by_hand = 0.65 * missing / dry;
    let share = setting(&BurnerFile::bells(&[("air_ratio = 1.05", "air_ratio = 0.99")]).json(), "carbon_monoxide_dry");
    assert!((share / by_hand - 1.0).abs() < 0.25, "{share} {by_hand}");
}

#[test]
fn a_fire_lit_cold_is_judged_by_the_chamber_it_makes() {
    // One air ratio, two chambers: the walls of the cold one soon are as hot.
    let rich = ("air_ratio = 1.05", "air_ratio = 0.91");
    let lit = BurnerFile::bells(&[rich, (GAUGE, "gauge = \"5 psi\"\nchamber_temperature = \"20 C\"")]).json();
    let share = |index: usize| number(&lit, &format!("/settings/{index}/carbon_monoxide_dry"));
    assert!((share(0) / share(1) - 1.0).abs() < 1e-6, "{} {}", share(0), share(1));
    // Propane at 0.9 and 1600 K: 3.2 % (GRI-Mech 3.0 thermochemistry).
    assert!((0.025..0.031).contains(&share(0)), "{}", share(0));
}

/// The bells on one strong setting and a blower of this shut-off pressure, which the gas alone may hold up.
fn weak_blower(shut_off: &str) -> BurnerFile {
    let curve = format!("shut_off = \"{shut_off}\"\nfree_delivery = \"60 cfm\"");
    let tube = "mixing_tube_diameter = \"2 in\"\n";
    let changes =
        [(HOLD, ""), (POINTS, &curve), ("ports = 60", "ports = 10"), (tube, ""), (GAUGE, "gauge = \"40 psi\"")];
    BurnerFile::bells(&changes)
}

#[test]
fn gas_alone_that_needs_more_than_the_blower_has_blows_back() {
    let (weak, strong) = (weak_blower("0.60 inH2O"), weak_blower("0.61 inH2O"));
    let sheet = weak.json();
    assert_eq!(found(&sheet)[0], ("blows_back".into(), Some("melt".into())), "the most dangerous stands first");
    assert!(sheet["settings"][0]["air_ratio"].is_null());
    let sheet = strong.json();
    assert!(!has(&sheet, "blows_back") && has(&sheet, "carbon_monoxide"));
    // At next to no flow the blower holds its shut-off pressure in the air here: 0.61 inches of water of
    // 249.089 Pa, by the fan laws times 0.98872 over 1.2 kg/m3 (CIPM-2007 for the site's air).
    let held = 0.61 * 249.089 * 0.988_72 / 1.2;
    let pressure = setting(&sheet, "blower_pressure_pa");
    assert!((pressure / held - 1.0).abs() < 0.01, "{pressure} {held}");
}

#[test]
fn gas_stops_where_the_gauge_meets_the_blower() {
    let sheet = BurnerFile::bells(&[(HOLD, ""), (GAUGE, "gauge = \"0.042 psi\"\ndamper = \"100 %\"")]).json();
    assert_eq!(found(&sheet)[0], ("no_gas".into(), Some("melt".into())));
    assert!(setting(&sheet, "back_pressure_pa") >= setting(&sheet, "gauge_pressure_pa"));
    assert!(!has(&sheet, "back_pressure") && !has(&sheet, "slow_jet"));
    // Without air side too: a gauge of zero passes nothing.
    let (start, end) = (super::BELLS.find("[blower]").unwrap(), super::BELLS.find("[head]").unwrap());
    let file = BurnerFile::bells(&[(&super::BELLS[start..end], ""), (GAUGE, "gauge = \"0 psi\"")]);
    assert!(has(&file.json(), "no_gas"));
}

#[test]
fn a_damper_that_cannot_follow_is_not_told_as_an_opening() {
    let file = BurnerFile::bells(&[(GAUGE, "gauge = \"0.5 psi\"")]);
    let sheet = file.json();
    assert_eq!(sheet["settings"][0]["too_much_air"], true);
    assert!(has(&sheet, "damper_too_wide") && !has(&sheet, "damper_nearly_shut"));
    let warning = warning(&sheet, "damper_too_wide");
    assert_eq!(
        (warning["number"].as_f64().unwrap(), warning["limit"].as_f64()),
        (setting(&sheet, "air_ratio"), Some(1.05))
    );
    // No damper at all leaves too much air just the same.
    let damper = "[damper]\nkind = \"blast gate\"\ndiameter = \"2 in\"\n";
    let sheet = BurnerFile::bells(&[(damper, "")]).json();
    assert!(has(&sheet, "damper_too_wide") && sheet["settings"][0]["damper_opening"].is_null());
    // The smallest fires on a strong blower get a sheet, not a refusal.
    for gauge in ["0 psi", "0.001 psi", "0.01 psi", "0.1 psi"] {
        BurnerFile::bells(&[(GAUGE, &format!("gauge = \"{gauge}\"")), ("\"2.0 inH2O\"", "\"90 inH2O\"")]).json();
    }
}

#[test]
fn a_heat_is_met_at_the_air_there_is() {
    // 4 kW wants less air than the damper can give, 60 kW more than the blower has.
    for (kilowatts, word) in [(4.0, "damper_too_wide"), (60.0, "blower_too_small")] {
        let sheet = BurnerFile::bells(&[("26 kW net", &format!("{kilowatts} kW net"))]).json();
        assert!(has(&sheet, word), "{:?}", found(&sheet));
        let given = number(&sheet, "/settings/1/heat_net_w");
        assert!((given / (1e3 * kilowatts) - 1.0).abs() < 1e-6, "{given} instead of {kilowatts} kW");
    }
}

#[test]
fn sea_level_settings_are_told_by_physics() {
    // At 1600 m air has 0.824 of its density at sea level (ISO 2533: 83 528 over 101 325 Pa at one temperature),
    // and the gas at one gauge through a hole falls with less than the root of that, to 0.90 or so.
    let sheet = BurnerFile::bells(&[]).json();
    let ratio = warning(&sheet, "altitude")["number"].as_f64().unwrap();
    assert!((0.8244..0.8244_f64.sqrt() + 0.02).contains(&ratio), "{ratio}");
}

#[test]
fn a_mixture_too_lean_to_burn_cold_is_no_fire() {
    // Propane burns cold up to an air ratio of (1/0.021 - 1)/23.9 = 1.95, by the lower limit of NFPA 497.
    let at = |opening: &str| BurnerFile::bells(&[(GAUGE, &format!("gauge = \"1 psi\"\ndamper = \"{opening}\""))]);
    let mut met = [0; 2];
    for opening in ["12 %", "15 %", "20 %", "30 %", "50 %", "100 %"] {
        let file = at(opening);
        let sheet = file.json();
        // At the lean end of its ±, cold or at work.
        let spread = 1.0 + setting(&sheet, "air_ratio_expanded") / setting(&sheet, "air_ratio");
        let leanest = setting(&sheet, "air_ratio").max(setting(&sheet, "air_ratio_cold") * spread);
        let lean = leanest > 1.95 * 1.01;
        if lean || leanest < 1.95 * 0.99 {
            assert_eq!(has(&sheet, "too_lean"), lean, "{opening}");
            met[usize::from(lean)] += 1;
        }
    }
    assert!(met[0] > 0 && met[1] > 0, "{met:?}");
}
