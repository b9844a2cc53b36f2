//! What leaves the command: no styles where nobody sees them, and no noise when the reader leaves.

use std::io::Read;
use std::process::{Command, Stdio};

use super::{BurnerFile, POINTS, answer, jetwright, refused};

#[test]
fn no_escape_codes_leave_for_a_pipe() {
    let file = BurnerFile::bells(&[]);
    let commands: [&[&str]; 6] = [
        &["--help"],
        &["flow", "--help"],
        &["sheet", file.path()],
        &["flow", "--gas", "propane", "--gauge", "5 psi"],
        &["flow", "--gas", "propane", "--gauge", "5"],
        &["simmer"],
    ];
    for arguments in commands {
        for (name, value) in [("NO_COLOR", "1"), ("TERM", "xterm-256color"), ("COLORTERM", "truecolor")] {
            let output =
                Command::new(env!("CARGO_BIN_EXE_jetwright")).args(arguments).env(name, value).output().unwrap();
            let said = [output.stdout, output.stderr].concat();
            assert!(!said.is_empty() && !said.contains(&0x1b), "{arguments:?} with {name}");
        }
    }
}

#[test]
fn a_reader_that_leaves_ends_every_answer_quietly() {
    let file = BurnerFile::bells(&[]);
    let commands: [&[&str]; 4] = [
        &["sheet", file.path()],
        &["sheet", file.path(), "--format", "json"],
        &["flow", "--gas", "propane", "--gauge", "5 psi", "--bore", "1.8 mm"],
        &["--help"],
    ];
    for arguments in commands {
        let mut child = Command::new(env!("CARGO_BIN_EXE_jetwright"))
            .args(arguments)
            .stdout(Stdio::piped())
            .stderr(Stdio::piped())
            .spawn()
            .unwrap();
        drop(child.stdout.take());
        let mut message = String::new();
        child.stderr.take().unwrap().read_to_string(&mut message).unwrap();
        assert_eq!((child.wait().unwrap().code(), message.as_str()), (Some(0), ""), "{arguments:?}");
    }
}

#[test]
fn a_refusal_names_what_was_given_and_what_it_stands_beside() {
    let flow = ["flow", "--gas", "propane", "--gauge", "1 psi"];
    let bore = ["--bore", "1.8 mm"];
    let cold = ["flow", "--gas", "butane", "--gauge", "1 psi", "--gauge", "60 psi", "--gas-temperature", "-30 C"];
    let heat = ["jet", "--gas", "propane", "--gauge", "5 psi", "--heat"];
    let table: &[(Vec<&str>, &[&str])] = &[
        ([&cold[..], &bore].concat(), &["--gauge: given \"60 psi\"", "liquid", "warm the gas", "\"-30 C\""]),
        ([&flow[..], &bore, &["--back-pressure", "2 psi"]].concat(), &["given \"2 psi\"", "--gauge is \"1 psi\""]),
        ([&flow[..], &bore, &["--drill", "number 50"]].concat(), &["--drill: given \"number 50\""]),
        ([&flow[..], &["--drill", "number 500"]].concat(), &["--drill: given \"number 500\", not a drill"]),
        (flow.to_vec(), &["--bore: given nothing, accepted is bore or drill"]),
        ([&flow[..], &bore, &["--edge", "rounded"]].concat(), &["--edge-radius: given nothing"]),
        ([&flow[..], &bore, &["--edge-radius", "1 mm"]].concat(), &["--edge-radius: given \"1 mm\""]),
        (
            [&flow[..], &["--bore", "5 mm", "--approach-diameter", "6 mm"]].concat(),
            &["--approach-diameter: given \"6 mm\"", "0.83 times", "up to 0.7 times"],
        ),
        (
            [&flow[..], &bore, &["--altitude", "9 m", "--station-pressure", "999 hPa"]].concat(),
            &["--station-pressure: given \"999 hPa\"", "one of them"],
        ),
        ([&heat[..], &["2000 kW net"]].concat(), &["--heat: given \"2000 kW net\"", "12.7 mm", "\"5 psi\""]),
        ([&heat[..], &["1 W net"]].concat(), &["--heat: given \"1 W net\"", "0.25 mm", "fewer jets"]),
    ];
    for (arguments, parts) in table {
        let message = refused(arguments);
        for part in *parts {
            assert!(message.contains(part), "{arguments:?} wants {part:?} in: {message}");
        }
    }
}

#[test]
fn a_file_is_refused_at_the_key_that_is_wrong() {
    let table: &[(&[(&str, &str)], &str)] = &[
        (&[("bore = \"1.8 mm\"", "boor = \"1.8 mm\"")], "jet.boor: not a key known here, accepted are drill, bore,"),
        (&[("bore = \"1.8 mm\"", "boor = \"1.8 mm\"")], "line 17, jet.boor"),
        (&[("[gas]", "[gass]")], "line 11, gass: not a key known here, accepted are name, note, site, gas,"),
        (&[("kind = \"propane\"", "knid = \"propane\"")], "gas.knid: not a key known here, accepted are kind,"),
        (
            &[("bore = \"1.8 mm\"", "drill = \"number 20\"\napproach_diameter = \"5 mm\"")],
            "line 18, jet.approach_diameter: given \"5 mm\", the bore is 0.82 times",
        ),
        (
            &[("\"propane\"", "\"butane\""), ("\"15 C\"", "\"-30 C\""), ("\"5 psi\"", "\"60 psi\"")],
            "line 56, setting[1].gauge: given \"60 psi\", the gas is a liquid",
        ),
        (
            &[(POINTS, "shut_off = \"0 Pa\"\nfree_delivery = \"60 cfm\"")],
            "blower.shut_off: given \"0 Pa\", out of range; shut-off pressure is accepted above 0 Pa",
        ),
        (
            &[(POINTS, "shut_off = \"300 Pa\"\nfree_delivery = \"0 cfm\"")],
            "free_delivery: given \"0 cfm\", out of range; free delivery is accepted above 0 cfm",
        ),
        (&[("26 kW net", "900 kW net")], "setting[2].heat: given \"900 kW net\", no gauge pressure up to 4.5 bar"),
    ];
    for (changes, part) in table {
        let file = BurnerFile::bells(changes);
        let message = refused(&["sheet", file.path()]);
        assert!(message.contains(part), "{changes:?} wants {part:?} in: {message}");
        assert!(message.trim_end().lines().count() == 1, "{message}");
    }
    // A condensing gas is no reason to refuse a heat that its lower pressures reach.
    let cold = BurnerFile::bells(&[("\"propane\"", "\"butane\""), ("\"15 C\"", "\"-10 C\""), ("26 kW", "12 kW")]);
    assert!(cold.json()["settings"][1]["gauge_pressure_pa"].is_number());
    assert!(jetwright(&["sheet", cold.path()]).status.success());
}

#[test]
fn the_card_as_text_fits_a_terminal() {
    for name in ["bell-foundry", "casting", "natural-gas", "blower-too-small"] {
        let path = format!("{}/examples/{name}.toml", env!("CARGO_MANIFEST_DIR"));
        for units in ["inch", "metric"] {
            let card = answer(&["sheet", &path, "--card", "--units", units]);
            assert!(card.lines().all(|line| line.chars().count() <= 80), "{card}");
            assert!(card.lines().count() <= 60, "{card}");
            for part in ["FLAME OUT", "LIGHT", "WORK", "KEEP", "STOP", "WARNINGS", "VOID WITH", "safeguard"] {
                assert!(card.contains(part), "{part} in {card}");
            }
            let warned = card.lines().filter(|line| {
                ["DANGER ", "WARNING ", "CAUTION ", "NOTICE "].iter().any(|word| line.starts_with(word))
            });
            assert!(warned.count() <= 7);
        }
    }
    let file = BurnerFile::bells(&[]);
    assert!(refused(&["sheet", file.path(), "--card", "--format", "csv"]).contains("--format"));
    assert!(refused(&["sheet", file.path(), file.path()]).contains("--card"));
}

/// `JETWRIGHT_WRITE=1` writes them anew.
#[test]
fn the_cards_of_the_examples_are_current() {
    for name in ["bell-foundry", "casting", "natural-gas", "blower-too-small"] {
        let root = env!("CARGO_MANIFEST_DIR");
        let card = answer(&["sheet", &format!("{root}/examples/{name}.toml"), "--card", "--format", "html"]);
        let path = format!("{root}/examples/cards/{name}.html");
        if std::env::var_os("JETWRIGHT_WRITE").is_some() {
            std::fs::write(&path, &card).expect("the card is written");
        }
        let kept = std::fs::read_to_string(&path).expect("the kept card");
        assert!(kept == card, "{path} is not what the command prints: JETWRIGHT_WRITE=1 writes it anew");
    }
}

/// A setting whose own judgement refuses it is not shown, and nothing points to it.
#[test]
fn a_block_without_a_safe_setting_shows_none() {
    let melt = ("purpose = \"melt the bronze\"", "purpose = \"melt the bronze\"\nuse = \"work\"");
    let hold = ("heat = \"26 kW net\"", "heat = \"26 kW net\"\nuse = \"keep\"");
    let card = BurnerFile::bells(&[melt, hold]).json()["card"].clone();
    assert_eq!([&card["blocks"][1]["setting"], &card["blocks"][2]["setting"]], ["melt", "hold"]);
    let twice = BurnerFile::bells(&[melt, (hold.0, "heat = \"26 kW net\"\nuse = \"work\"")]);
    assert!(refused(&["sheet", twice.path()]).contains("use"));
    // A damper wide open is too lean to light: no number of it is shown, and FLAME OUT sends nobody to LIGHT.
    let lean = ("gauge = \"5 psi\"", "gauge = \"1 psi\"\ndamper = \"100 %\"\nuse = \"light\"");
    let card = BurnerFile::bells(&[lean]).json()["card"].clone();
    assert!(card["blocks"][0]["missing"].as_str().unwrap().contains("WILL NOT LIGHT"), "{card}");
    assert!(card["blocks"][0]["shown_gauge_pressure_pa"].is_null());
    let steps = card["procedures"].as_array().unwrap();
    assert!(steps.iter().all(|step| step["procedure"] != "light" && !step["text"].as_str().unwrap().contains("LIGHT")));
}

#[test]
fn no_line_is_wider_than_the_page() {
    for text in [
        include_str!("../../examples/bell-foundry.toml"),
        include_str!("../../examples/casting.toml"),
        include_str!("../../examples/natural-gas.toml"),
        include_str!("../../examples/blower-too-small.toml"),
        &jetwright::file::blank::blank(),
    ] {
        for units in ["inch", "metric"] {
            let page = BurnerFile::of(text, &[]).text(units);
            let wide: Vec<_> = page.lines().filter(|line| line.chars().count() > 96).collect();
            assert!(wide.is_empty(), "{units}: {wide:?}");
        }
    }
}
