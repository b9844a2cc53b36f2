//! The settings table of a burner file, on the chip and from the command.

use std::path::PathBuf;

use serde_json::Value;

use super::burners::{demo, drawn};
use super::emulator::{M0, M4F, build, build_for, built, directory, heats, jetwright, ran, run_on};

/// Half of the last digit the chip prints.
const PRINTED: f64 = 0.000_5;
/// Single precision against double.
const SINGLE_PRECISION: f64 = 1e-4;

#[test]
fn the_chip_prints_the_settings_of_the_command() {
    let Some(built) = built() else { return };
    let directory = directory("firmware-settings");
    let drawn = (1..=3).map(|seed| {
        let path: PathBuf = directory.join(format!("drawn-{seed}.toml"));
        std::fs::write(&path, drawn(seed)).expect("the directory can be written");
        path
    });
    let on_others = std::iter::once((M0, demo()));
    for (chip, file) in std::iter::once(demo()).chain(drawn).map(|file| (M4F, file)).chain(on_others) {
        let program = build_for(chip, &built, &file, &directory, "settings");
        let printed = run_on(chip, &program, &directory);
        let sheet = jetwright(&["sheet", file.to_str().expect("a path of text"), "--format", "json"]);
        let sheet: Value = serde_json::from_str(&sheet).expect("JSON");
        let mut lines = printed.lines();
        assert_eq!(
            lines.next(),
            Some("setting,gauge_pressure_pa,heat_net_w,gas_kg_per_h,air_kg_per_h,air_ratio,damper_opening")
        );
        let settings = sheet["settings"].as_array().expect("settings");
        assert!(settings.len() >= 2);
        for setting in settings {
            let line: Vec<&str> = lines.next().expect("a line a setting").split(',').collect();
            assert_eq!(line[0], setting["name"], "{printed}");
            let number = |key: &str| setting[key].as_f64().unwrap_or_else(|| panic!("{key} of {setting}"));
            let expected = [
                number("gauge_pressure_pa"),
                number("heat_net_w"),
                number("mass_flow_kg_per_s") * 3600.0,
                number("air_kg_per_s") * 3600.0,
                number("air_ratio"),
                number("damper_opening"),
            ];
            for (text, expected) in line[1..].iter().zip(expected) {
                let found: f64 = text.parse().unwrap_or_else(|_| panic!("{text} in {printed}"));
                assert!(
                    (found - expected).abs() <= PRINTED + SINGLE_PRECISION * expected,
                    "{found} {expected} {file:?}"
                );
            }
        }
        if file == demo() && chip.is_usual() {
            shown(&printed);
        }
        // The fire follows: at the end of each half the heat is that of the table's end.
        let fires: Vec<Vec<f64>> = lines
            .filter(|line| line.starts_with(|first: char| first.is_ascii_digit()))
            .map(|line| line.split(',').map(|text| text.parse().unwrap_or(f64::NAN)).collect())
            .collect();
        let [smallest, largest] = heats(&file);
        let (up, down) = (&fires[fires.len() / 2 - 1], &fires[fires.len() - 1]);
        assert!(
            (up[1] / largest - 1.0).abs() < SINGLE_PRECISION && (down[1] / smallest - 1.0).abs() < SINGLE_PRECISION
        );
        // What the estimate makes of the sensors is the heat set: half a percent of its jets, a little of the table.
        assert!((up[5] / largest - 1.0).abs() < 0.01 && (up[6] / 1.05 - 1.0).abs() < 0.02, "{up:?} {printed}");
        assert!(printed.contains("a listed flame safeguard stays in charge of the gas valve"));
    }
}

/// The README of the package shows what is printed. Another compiler may round a last figure differently.
fn shown(printed: &str) {
    const OTHER_COMPILER: f64 = 1e-6;
    let readme = include_str!("../../examples/firmware/README.md");
    for line in printed.lines().skip(1).take(2) {
        let words: Vec<&str> = line.split(',').collect();
        let shown = readme.lines().find(|shown| shown.starts_with(&format!("{},", words[0])));
        let shown: Vec<&str> = shown.unwrap_or_else(|| panic!("{line} is not in the README")).split(',').collect();
        assert_eq!(shown.len(), words.len());
        for (shown, printed) in shown[1..].iter().zip(&words[1..]) {
            let [shown, printed] = [shown, printed].map(|text| text.parse::<f64>().expect("a number"));
            assert!((shown - printed).abs() <= PRINTED + OTHER_COMPILER * printed, "{shown} {line}");
        }
    }
}

#[test]
fn a_damaged_image_is_refused_and_the_gas_is_off() {
    let Some(built) = built() else { return };
    let directory = directory("firmware-damaged");
    let whole = std::fs::read(build(&built, &demo(), &directory, "settings")).expect("the program was built");
    for name in ["burner.bin", "table.bin"] {
        let image = std::fs::read(directory.join(name)).expect("the image was written");
        let mut bytes = whole.clone();
        let at = bytes.windows(image.len()).position(|part| part == image).expect("the image is in the program");
        bytes[at + image.len() / 2] ^= 1;
        let damaged = directory.join("damaged");
        std::fs::write(&damaged, bytes).expect("the directory can be written");
        let (well, printed) = ran(M4F, &damaged, &directory);
        let of =
            format!("the image of the {}: damaged, the checksum does not fit: gas off", name.trim_end_matches(".bin"));
        assert!(!well && printed.contains(&of), "{printed}");
    }
}

#[test]
fn the_table_of_another_burner_is_refused_and_the_gas_is_off() {
    let Some(built) = built() else { return };
    let directory = directory("firmware-other");
    let program = build(&built, &demo(), &directory, "settings");
    // The same bell foundry with the next drill.
    let file = directory.join("other.toml");
    let text = std::fs::read_to_string(demo()).expect("the file is there");
    std::fs::write(&file, text.replace("number 50", "number 49")).expect("the directory can be written");
    let other = directory.join("other.bin");
    let path = |path: &std::path::Path| path.to_str().expect("a path of text").to_owned();
    let [lowest, highest] = heats(&file).map(|watts| format!("{watts} W net"));
    jetwright(&["setpoints", &path(&file), "--from", &lowest, "--to", &highest, "--image", &path(&other)]);
    // Built so, for what the compiler knows of an image it may work out itself.
    let script = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/firmware.sh");
    let output = std::process::Command::new("bash")
        .args([script, "build", "--target", "thumbv7em-none-eabihf", "--profile", "release", "--bin", "settings"])
        .env("BURNER_IMAGE", directory.join("burner.bin"))
        .env("TABLE_IMAGE", other)
        .output()
        .expect("bash starts");
    assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
    let (well, printed) = ran(M4F, &program, &directory);
    assert!(!well && printed.contains("the image of the table: of another burner"), "{printed}");
}
