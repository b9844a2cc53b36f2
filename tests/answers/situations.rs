//! Burners and questions for which a page says something that the examples' pages do not, each with the page kept of it
//! in `tests/pages/situations.trycmd`. All are invented.

use super::furnace::FIRING;
use super::lighting::{FOUNDRY, GOES_OUT, PIPELINE, WIDE};
use super::supply::{CYLINDER, PIPE};
use super::{BELLS, GAUGE, HOLD, changed};

/// Files by the name that a kept command gives them.
pub fn files() -> Vec<(&'static str, String)> {
    let of = |base: &str, changes: &[(&str, &str)]| changed(base, changes);
    let between = |from: &str, to: &str| &FOUNDRY[FOUNDRY.find(from).unwrap()..FOUNDRY.find(to).unwrap()];
    let own_air = |gauge: &str| format!("gauge = \"{gauge}\"\ndamper = \"100 %\"");
    let weak = "shut_off = \"0.60 inH2O\"\nfree_delivery = \"60 cfm\"";
    vec![
        ("bells", BELLS.to_owned()),
        ("rich", of(BELLS, &[("air_ratio = 1.05", "air_ratio = 0.95")])),
        ("barely-enough-air", of(BELLS, &[("air_ratio = 1.05", "air_ratio = 1.00")])),
        ("damper-too-wide", of(BELLS, &[(GAUGE, "gauge = \"0.5 psi\"")])),
        ("too-lean", of(BELLS, &[(GAUGE, &own_air("1 psi"))])),
        ("no-gas", of(BELLS, &[(HOLD, ""), (GAUGE, &own_air("0.042 psi"))])),
        (
            "blows-back",
            of(
                BELLS,
                &[
                    (HOLD, ""),
                    (super::POINTS, weak),
                    ("ports = 60", "ports = 10"),
                    ("mixing_tube_diameter = \"2 in\"\n", ""),
                    (GAUGE, "gauge = \"40 psi\""),
                ],
            ),
        ),
        ("unmeasured-tip", of(BELLS, &[("bore = \"1.8 mm\"", "drill = \"tip 1.6 mm\"")])),
        ("low-gauge", of(BELLS, &[(HOLD, ""), (GAUGE, "gauge = \"0.5 psi\"\ndamper = \"20 %\"")])),
        ("no-chamber-volume", of(FOUNDRY, &[("chamber_volume = \"20 L\"\n", "")])),
        ("large-chamber", of(FOUNDRY, &[("\"20 L\"", "\"200 L\"")])),
        ("no-damper", of(FOUNDRY, &[(between("[damper]", "[head]"), ""), ("damper = \"38 %\"\n", "")])),
        ("exact-gauge", of(FOUNDRY, &[("[fire]\n", "[uncertainty]\ngauge_error = \"0 psi\"\n\n[fire]\n")])),
        ("wide-head", of(FOUNDRY, &WIDE)),
        ("goes-out", of(FOUNDRY, &GOES_OUT)),
        ("hydrogen", of(PIPELINE, &[("\"natural-gas\"", "\"hydrogen\""), ("\"0.45 psi\"", "\"0.03 psi\"")])),
        ("out-of-reach", of(FIRING, &[("minutes = \"40 min\"", "minutes = \"4 min\"")])),
        ("nearly-empty", of(FIRING, &[("contents = \"30 kg\"", "contents = \"1 kg\"")])),
    ]
}

/// A command as a shell takes it.
fn spoken(arguments: &[&str]) -> String {
    let quoted = |word: &&str| if word.contains(' ') { format!("\"{word}\"") } else { (*word).to_owned() };
    arguments.iter().map(quoted).collect::<Vec<_>>().join(" ")
}

/// The sheet of each file, and the questions.
pub fn commands() -> Vec<String> {
    let sheets = files().into_iter().map(|(name, _)| format!("sheet {name}.toml"));
    let units = ["--units", "inch"];
    let flow = ["flow", "--gas", "propane", "--bore", "1.8 mm", "--jets", "64"];
    let flow =
        [&flow[..], &["--gauge", "0 psi", "--gauge", "0.01 psi", "--gauge", "5 psi", "--gauge", "60 psi"]].concat();
    let flame = |gas, ratio| ["flame", "--gas", gas, "--air-ratio", ratio];
    let work = ["work", "--material", "steel", "--mass", "1 kg", "--to", "1150 C", "--chamber", "1250 C"];
    let weigh = ["weigh", "bells.toml", "--setting", "melt", "--scale", "20 g"];
    let questions = [
        spoken(&["sheet", "bells.toml", "--units", "inch"]),
        spoken(&flow),
        spoken(&[&flow[..], &units].concat()),
        spoken(&flame("propane", "3")),
        spoken(&flame("hydrogen", "1")),
        spoken(&flame("CH4=0.2,N2=0.8", "1")),
        spoken(&[&CYLINDER[..], &["--draw", "12 kg/h", "--contents", "8 kg"]].concat()),
        spoken(&[&PIPE[..], &["--heat", "600 kW net"]].concat()),
        spoken(&work),
        spoken(&weigh),
    ];
    sheets.chain(questions).collect()
}
