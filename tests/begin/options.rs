//! A round by options alone.

use super::{directory, jetwright, sheet};
use jetwright::file::begin::{QUESTIONS, TRADES};

#[test]
fn each_trade_ends_in_a_file_whose_sheet_prints() {
    let directory = directory("options");
    for trade in TRADES {
        let file = format!("{}.toml", trade.key);
        let mut arguments = vec!["begin".to_owned(), file.clone()];
        for question in QUESTIONS.iter().filter(|question| question.key != "blower-plate") {
            let is_unknown = ["altitude", "damper", "thickness"].contains(&question.key);
            arguments.push(format!("--{}", question.key));
            arguments.push(if is_unknown { "unknown".into() } else { question.example(trade.key).into() });
        }
        let arguments: Vec<&str> = arguments.iter().map(String::as_str).collect();
        let output = jetwright(&directory, &arguments);
        let told = String::from_utf8_lossy(&output.stdout).into_owned();
        assert!(output.status.success(), "{}: {}", trade.key, String::from_utf8_lossy(&output.stderr));
        assert!(told.lines().all(|line| line.chars().count() <= 80), "{told}");
        assert!(told.contains("WILL") && told.contains("DO") && told.contains("Learn next"), "{told}");
        assert!(told.contains("gauge to 1.0 bar (15 psi)") && told.contains("thermocouple of type"), "{told}");
        let page = sheet(&directory, &file);
        assert!(trade.stages.iter().all(|stage| page.contains(stage.name)), "{page}");
        assert!(!directory.join(format!("{file}.answers")).exists());
    }
}

#[test]
fn nobody_is_asked_more_than_fifteen_questions() {
    use jetwright::file::begin::{Answer, Answers};
    for trade in TRADES {
        for knows in [true, false] {
            let (mut answers, mut asked) = (Answers::default(), 0);
            while let Some(question) = answers.next() {
                asked += 1;
                let said = Answer::Said(question.example(trade.key).into());
                let is_skipped = !knows && question.key.starts_with("blower-") && question.key != "blower-plate";
                answers.take(question, if is_skipped { Answer::Unknown } else { said }).unwrap();
            }
            assert!(asked <= 15, "{}: {asked}", trade.key);
        }
    }
}

#[test]
fn an_unknown_makes_the_heat_less_sure() {
    let directory = directory("unsure");
    let told = |file: &str, jet: &str| {
        let options = ["begin", file, "--trade", "forge", "--gas", "propane", "--gauge", "5 psi", "--jet", jet];
        String::from_utf8(jetwright(&directory, &options).stdout).expect("UTF-8")
    };
    let known = told("one.toml", "1.5 mm");
    assert!(known.contains("kW net ± 8 %"), "{known}");
    assert!(told("three.toml", "unknown").contains("kW net ± 70 %"));
}

#[test]
fn a_broken_off_round_is_taken_up() {
    let directory = directory("taken-up");
    let kept = "trade = \"kiln\"\ngas = \"propane\"\njet = \"2 mm\"\naltitude = \"\"\n";
    std::fs::write(directory.join("kiln.toml.answers"), kept).unwrap();
    let output = jetwright(&directory, &["begin", "kiln.toml", "--gauge", "0.2 bar"]);
    assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
    let text = std::fs::read_to_string(directory.join("kiln.toml")).unwrap();
    assert!(text.contains("bore = \"2 mm\"") && text.contains("full fire"), "{text}");
    assert!(!directory.join("kiln.toml.answers").exists());
}

#[test]
fn a_blast_gate_is_marked_in_millimeters_and_a_disc_in_degrees() {
    let directory = directory("marks");
    for (kind, unit) in [("blast gate", " mm open"), ("butterfly", " degrees from shut")] {
        let file = format!("{kind}.toml");
        let known = ["begin", &file, "--trade", "forge", "--gas", "propane", "--jet", "1.5 mm", "--gauge", "5 psi"];
        let air = ["--blower-flow", "100 cfm", "--damper", kind, "--duct", "2 in", "--ports", "80 x 4 mm"];
        let told = String::from_utf8(jetwright(&directory, &[&known[..], &air[..]].concat()).stdout).unwrap();
        let told = told.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(told.contains("Mark the damper: light ") && told.contains(unit), "{told}");
    }
}
