//! The installation that `tests/installation` builds on a chip, on the host: the same answers, and no file.

#[path = "installation/src/bells.rs"]
mod bells;

use jetwright::plant::Plant;

/// Libm on the chip and on the host may differ in last bits, which the searches of opening and air carry on.
const SAME: f64 = 1e-7;

/// Lines as the chip prints them: setting, word, numbers.
fn answers() -> Vec<(String, Vec<f64>)> {
    let plant = Plant::new(bells::bells()).expect("an installation");
    let mut lines = vec![];
    for index in 0..plant.entries.settings.len() {
        let answer = plant.setting(index).expect("a setting");
        let found = &answer.found;
        let numbers = [("gas", found.gas), ("heat_net", found.heat_net), ("air_ratio", found.air_ratio.unwrap())];
        for (name, number) in numbers {
            lines.push((format!("{index} {name}"), vec![number.value, number.low.unwrap(), number.high.unwrap()]));
        }
        lines.extend(answer.hazards.iter().map(|hazard| (format!("{index} warns {}", hazard.kind.key()), vec![])));
    }
    lines
}

#[test]
fn a_rich_setting_warns_of_carbon_monoxide_and_the_others_do_not() {
    let warned = |index: usize| answers().iter().any(|(line, _)| *line == format!("{index} warns carbon_monoxide"));
    assert_eq!([warned(0), warned(1)], [false, true]);
}

#[test]
fn the_chip_answers_as_the_host() {
    let Some(printed) = std::env::var_os("JETWRIGHT_INSTALLATION") else {
        println!("skipped: `bash tests/bare_metal.sh` runs the installation on the emulated chip");
        return;
    };
    let printed = std::fs::read_to_string(printed).expect("what the chip printed");
    let mut lines = printed.lines();
    for (name, numbers) in answers() {
        let line = lines.next().expect("as many lines as the host");
        let rest = line.strip_prefix(&name).unwrap_or_else(|| panic!("{name} on the host, {line} on the chip"));
        let theirs: Vec<f64> = rest.split_whitespace().map(|number| number.parse().expect("a number")).collect();
        assert_eq!(theirs.len(), numbers.len(), "{line}");
        for (ours, theirs) in numbers.iter().zip(&theirs) {
            assert!((theirs / ours - 1.0).abs() < SAME, "{name}: {ours} on the host, {theirs} on the chip");
        }
    }
    assert!(lines.next().is_some_and(|line| line.starts_with("stack ")), "the chip says more than the host");
}
