//! The command from outside: good input answers on standard output, bad input gets exit code 2, one
//! message on standard error and nothing on standard output.

#![cfg(feature = "cli")]

use std::io::Read;
use std::path::{Path, PathBuf};
use std::process::{Command, Output, Stdio};
use std::sync::LazyLock;

use jetwright::file::blank::blank;

static BLANK: LazyLock<String> = LazyLock::new(blank);

fn jetwright(arguments: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_jetwright")).args(arguments).output().expect("the command starts")
}

/// Runs the command on input that must be refused, and returns its message.
fn refused(arguments: &[&str]) -> String {
    let output = jetwright(arguments);
    let message = String::from_utf8(output.stderr).expect("messages are UTF-8");
    assert_eq!(output.status.code(), Some(2), "{arguments:?}: {message}");
    assert!(output.stdout.is_empty(), "{arguments:?} printed half an answer");
    assert_eq!(message.matches("error:").count(), 1, "{arguments:?}: {message}");
    assert!(!message.contains("panicked") && message.len() < 2000, "{arguments:?}: {message}");
    message
}

fn accepted(arguments: &[&str]) -> String {
    let output = jetwright(arguments);
    assert_eq!(output.status.code(), Some(0), "{arguments:?}: {}", String::from_utf8_lossy(&output.stderr));
    String::from_utf8(output.stdout).expect("answers are UTF-8")
}

/// Directory for one test's files, empty at its start.
fn directory(name: &str) -> PathBuf {
    let path = Path::new(env!("CARGO_TARGET_TMPDIR")).join(name);
    let _ = std::fs::remove_dir_all(&path);
    std::fs::create_dir_all(&path).expect("a directory for the test");
    path
}

const FLOW: [&str; 7] = ["flow", "--gas", "propane", "--gauge", "5 psi", "--bore", "1.8 mm"];

#[test]
fn bad_options_are_named_with_what_was_given_and_what_is_accepted() {
    let table: &[(&[&str], &[&str])] = &[
        (&["--bore-length", "12"], &["'12'", "without a unit", "mm"]),
        (&["--bore-length", "12 psi"], &["'12 psi'", "not a unit of a length", "mm"]),
        (&["--bore-length", "70 mm"], &["'70 mm'", "from 0 mm to 65 mm"]),
        (&["--bore-length", "3 in"], &["'3 in'", "from 0 in to 2.559 in"]),
        (&["--bore-length", ""], &[]),
        (&["--bore-length", "NaN mm"], &["not a number with a unit"]),
        (&["--bore-length", "1e400 mm"], &["not a number with a unit"]),
        (&["--air-temperature", "-40 C"], &["'-40 C'", "from -35 C to 55 C"]),
        (&["--gas-temperature", "500 K"], &["'500 K'", "from 238.2 K to 328.1 K"]),
        (&["--gauge", "70 psi"], &["'70 psi'", "from 0 psi to 65.26 psi"]),
        (&["--gauge", "-1 psi"], &["'-1 psi'", "from 0 psi"]),
        (&["--humidity", "40"], &["'40'", "from 0 to 1"]),
        (&["--humidity", "140 %"], &["'140 %'", "from 0 % to 100 %"]),
        (&["--altitude", "20000 ft"], &["'20000 ft'", "to 13123 ft"]),
        (&["--station-pressure", "835"], &["'835'", "hPa"]),
        (&["--station-pressure", "835 hPa", "--altitude", "1600 m"], &["one of them"]),
        (&["--sea-level-pressure", "1015 hPa"], &["--altitude", "sea-level"]),
        (&["--drill", "number 50"], &["bore", "one of the two"]),
        (&["--edge", "blunt"], &["'blunt'", "sharp", "square", "chamfered", "rounded"]),
        (&["--edge", "chamfered"], &["--chamfer-depth", "edge is \"chamfered\""]),
        (&["--edge", "chamfered", "--chamfer-depth", "1 mm"], &["--chamfer-angle", "is needed"]),
        (&["--chamfer-angle", "90 deg"], &["chamfered"]),
        (&["--edge", "rounded"], &["--edge-radius", "edge is \"rounded\""]),
        (&["--edge-radius", "1 mm"], &["rounded"]),
        (&["--jets", "2.5"], &["'2.5'", "whole", "1 to 64"]),
        (&["--jets", "0"], &["'0'", "from 1 to 64"]),
        (&["--measured-coefficient", "85 %"], &["'85 %'", "plain number"]),
        (&["--measured-coefficient", "2"], &["'2'", "from 0.2 to 1.1"]),
        (&["--units", "cubits"], &["'cubits'", "inch", "metric"]),
        (&["--format", "xml"], &["'xml'", "text", "json", "csv"]),
        (&["--color", "blue"], &[]),
        (&["--bore", "2 mm"], &[]),
    ];
    for (more, parts) in table {
        let message = refused(&[&FLOW, *more].concat());
        let named = if more[0] == "--edge" || more[0] == "--sea-level-pressure" { "--" } else { more[0] };
        for part in [&[named], *parts].concat() {
            assert!(message.contains(part), "{more:?} wants {part:?} in: {message}");
        }
    }
    assert!(refused(&FLOW[..5]).contains("--bore"));
    assert!(refused(&["flow"]).contains("--gauge"));
    let heat = ["jet", "--gas", "propane", "--gauge", "5 psi", "--heat"];
    assert!(refused(&[&heat[..], &["26 kW"]].concat()).contains("gross or net"));
    assert!(refused(&[&heat[..], &["26 kW net", "--drills", "roman"]].concat()).contains("fractional"));
    assert!(refused(&["air", "--gas", "propane", "--heat", "26 kW net", "--air-ratio", "0.1"]).contains("0.5 to 5"));
    assert!(refused(&["simmer"]).contains("simmer"));
    assert!(refused(&["flow", "--gas", &"x".repeat(100_000)]).contains("100000 characters"));
}

#[test]
fn numbers_below_zero_and_every_option_are_accepted() {
    let more = [
        ["--gauge", "0.3 bar"],
        ["--bore-length", "1/2 in"],
        ["--edge", "chamfered"],
        ["--chamfer-depth", "0.5 mm"],
        ["--chamfer-angle", "90 deg"],
        ["--roughness", "3 um"],
        ["--back-pressure", "-0.5 inH2O"],
        ["--jets", "2"],
        ["--measured-coefficient", "0.8"],
        ["--altitude", "-100 ft"],
        ["--sea-level-pressure", "30.1 inHg"],
        ["--air-temperature", "-5 C"],
        ["--humidity", "0.4"],
        ["--gas-temperature", "-10 C"],
        ["--units", "inch"],
        ["--format", "json"],
    ];
    accepted(&[&FLOW[..], more.as_flattened()].concat());
}

#[test]
fn the_blank_is_a_burner_file_on_any_system() {
    let blank = accepted(&["blank"]);
    assert_eq!(blank, *BLANK);
    for caution in ["never a flame safeguard", "INVENTED", "carbon monoxide", "Wet castings"] {
        assert!(blank.contains(caution), "{caution}");
    }
    let path = directory("blank").join("burner.toml");
    for text in [blank.clone(), format!("\u{feff}{}", blank.replace('\n', "\r\n"))] {
        std::fs::write(&path, text).unwrap();
        accepted(&["sheet", path.to_str().unwrap()]);
    }
}

#[test]
fn a_reader_that_leaves_is_no_error() {
    let mut child = Command::new(env!("CARGO_BIN_EXE_jetwright"))
        .arg("blank")
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    drop(child.stdout.take());
    let mut message = String::new();
    child.stderr.take().unwrap().read_to_string(&mut message).unwrap();
    assert!(child.wait().unwrap().success());
    assert_eq!(message, "");
}

/// Runs the sheet on a file of these bytes, which must be refused.
fn refused_file(directory: &Path, bytes: &[u8]) -> String {
    let path = directory.join("bells.toml");
    std::fs::write(&path, bytes).unwrap();
    let message = refused(&["sheet", path.to_str().unwrap()]);
    assert!(message.contains("bells.toml") && message.trim_end().lines().count() == 1, "{message}");
    message
}

#[test]
fn a_changed_line_of_the_blank_is_named_with_field_given_and_accepted() {
    let directory = directory("changed");
    // Old line, what takes its place, field, parts of the message beside the line's number.
    let table: &[(&str, &str, &str, &[&str])] = &[
        ("kind = \"propane\"", "kind = 5", "gas.kind", &["given 5", "text"]),
        ("drill = \"number 50\"", "bore = \"1.8\"", "jet.bore", &["given \"1.8\"", "without a unit", "mm"]),
        ("drill = \"number 50\"", "bore = 1.8", "jet.bore", &["given 1.8,", "without a unit", "mm"]),
        ("drill = \"number 50\"", "bore = \"18 mm\"", "jet.bore", &["given \"18 mm\"", "from 0.25 mm to 12.7 mm"]),
        ("drill = \"number 50\"", "bore = true", "jet.bore", &["given true", "a length is written like"]),
        ("drill = \"number 50\"", "drill = \"a\"\nbore = \"2 mm\"", "jet.drill", &["given \"a\"", "one of the two"]),
        ("edge = \"square\"", "edge = \"blunt\"", "jet.edge", &["given \"blunt\"", "\"sharp\"", "\"rounded\""]),
        ("edge = \"square\"", "edge = \"rounded\"", "jet.edge_radius", &["given nothing", "edge is \"rounded\""]),
        ("roughness = \"5 um\"", "count = 1.5", "jet.count", &["TOML"]),
        ("roughness = \"5 um\"", "approach_diameter = \"1 mm\"", "jet.approach_diameter", &["from 5 mm to 600 mm"]),
        ("roughness = \"5 um\"", "measured_gauge = \"5 psi\"", "jet.measured_gauge", &["needs measured_coefficient"]),
        ("altitude = \"1600 m\"", "altitude = \"16 km\"", "site.altitude", &["given \"16 km\"", "ft"]),
        ("altitude = \"1600 m\"", "sea_level_pressure = \"1 bar\"", "site.altitude", &["given nothing", "altitude"]),
        ("humidity = \"40 %\"", "humidity = 40", "site.humidity", &["given 40,", "from 0 to 1"]),
        ("humidity = \"40 %\"", "humdity = \"40 %\"", "site.humdity", &["not a key known here", "humidity"]),
        ("price = \"2.40 per kg\"", "price = \"2.40\"", "gas.price", &["given \"2.40\"", "per kg, per lb"]),
        ("speed = \"3450 rpm\"", "now_speed = \"9 rpm\"", "blower.now_speed", &["given \"9 rpm\"", "needs speed"]),
        ("speed = \"3450 rpm\"", "speed = \"9 Hz\"\nnow_speed = \"90 Hz\"", "blower.now_speed", &["0.2 to 2"]),
        ("speed = \"3450 rpm\"", "shut_off = \"6 inH2O\"", "blower.points", &["shut_off and free_delivery together"]),
        ("kind = \"blast gate\"", "kind = \"cork\"", "damper.kind", &["given \"cork\"", "\"butterfly\""]),
        ("ports = 60", "ports = 60.5", "head.ports", &["given 60.5", "whole", "1 to 2000"]),
        ("ports = 60", "slot_width = \"3 mm\"", "head.slot_width", &["slot_length"]),
        ("air_ratio = 1.05", "air_ratio = \"1.05 %\"", "fire.air_ratio", &["plain number"]),
        ("air_ratio = 1.05", "air_ratio = nan", "fire.air_ratio", &["given nan", "plain number"]),
        ("gauge = \"5.5 psi\"", "gauge = \"500 psi\"", "setting[1].gauge", &["from 0 psi to 65.26 psi"]),
        ("damper = \"60 %\"", "damper = \"5 %\"", "setting[2].damper", &["from 10 % to 100 %"]),
        ("damper = \"60 %\"", "damper = 0.6\nair_ratio = 1", "setting[2].damper", &["not both"]),
        ("heat = \"16 kW net\"", "heat = \"12 kW\"", "setting[3].heat", &["gross or net"]),
        ("heat = \"16 kW net\"", "#", "setting[3].gauge", &["given nothing", "one of the two"]),
        ("name = \"hold\"", "name = \"melt\"", "setting[3].name", &["given \"melt\"", "already"]),
        ("minutes = \"60 min\"", "minutes = \"60\"", "setting[2].minutes", &["without a unit", "min"]),
    ];
    for (old, new, field, parts) in table {
        let at = BLANK.find(&format!("\n{old}\n")).expect(old) + 1;
        let changed = format!("{}{new}{}", &BLANK[..at], &BLANK[at + old.len()..]);
        let message = refused_file(&directory, changed.as_bytes());
        for part in *parts {
            assert!(message.contains(part), "{new:?} wants {part:?} in: {message}");
        }
        if message.contains("TOML") {
            continue;
        }
        assert!(message.contains(&format!(", {field}: ")), "{new:?} wants {field} in: {message}");
        let key = field.rsplit('.').next().unwrap();
        if let Some(below) = new.lines().position(|line| line.starts_with(&format!("{key} ="))) {
            let line = BLANK[..at].lines().count() + 1 + below;
            assert!(message.contains(&format!("line {line}, ")), "{new:?} stands on {line}: {message}");
        }
    }
}

#[test]
fn sections_are_needed_lists_are_lists_and_ends_are_told() {
    let directory = directory("sections");
    let without = |from: &str, to: &str| {
        let (start, end) = (BLANK.find(from).unwrap(), BLANK.find(to).unwrap());
        format!("{}{}", &BLANK[..start], &BLANK[end..])
    };
    let gas = refused_file(&directory, without("[gas]", "[jet]").as_bytes());
    assert!(gas.contains("gas: given nothing, this section is needed"), "{gas}");
    let blower = refused_file(&directory, without("[blower]", "# Duct between").as_bytes());
    assert!(blower.contains("[blower]"), "{blower}");
    let damper = refused_file(&directory, without("[damper]", "[head]").as_bytes());
    assert!(damper.contains("setting[2].damper") && damper.contains("[damper]"), "{damper}");
    let bare = BLANK.split_once("[[setting]]\n").unwrap().0;
    assert!(refused_file(&directory, bare.as_bytes()).contains("setting: given nothing, accepted are 1 to 12"));
    let one = format!("{bare}[setting]\nname = 'melt'\n");
    assert!(refused_file(&directory, one.as_bytes()).contains("setting: given a table, accepted are up to 12 tables"));
    let many = format!("{bare}{}", "[[setting]]\n".repeat(20_000));
    assert!(refused_file(&directory, many.as_bytes()).contains("setting: given 20000 tables"));
    let word = format!("setting = [ 'melt' ]\n{bare}");
    assert!(refused_file(&directory, word.as_bytes()).contains("line 1, setting[1]: given 'melt'"));
    let site = BLANK.replace("[site]", "[[site]]");
    assert!(refused_file(&directory, site.as_bytes()).contains("site: given"));
}

#[test]
fn whatever_a_file_holds_it_gets_one_message() {
    let directory = directory("garbage");
    let long = format!("name = \"{}\"\n", "x".repeat(200_000));
    let table: &[(&[u8], &str)] = &[
        (b"", "name: given nothing"),
        (b"\n\n  \n", "name: given nothing"),
        (long.as_bytes(), "line 1, name: given \"xxx"),
        (&[b'x'; 200_000], "line 1"),
        (&[b'['; 200_000], "line 1"),
        (&"a = ".repeat(50_000).into_bytes(), "line 1"),
        (&format!("x = {}1{}", "[".repeat(5000), "]".repeat(5000)).into_bytes(), "line 1"),
        (&format!("x = {}", "{a=".repeat(5000)).into_bytes(), "line 1"),
        (&format!("{}a = 1", "a.".repeat(50_000)).into_bytes(), "line 1"),
        (&format!("[{}a]", "a.".repeat(50_000)).into_bytes(), "line 1"),
        (b"name = \"a\0b\"", "line 1"),
        (b"name = \"a\"\n\0", "line 2"),
        (b"name = \"a\\u0000\\u001b[31m\"", "name: given \"a\\u0000\\u001b"),
        (b"name = \"a\"\n\x1b[31m = 2", "line 2"),
        (b"name = \"a\"\nnote = \"\xff\xfe\"", "line 2: given bytes that are not text, accepted is UTF-8"),
        (b"\xff\xfen\0a\0", "line 1: given bytes that are not text"),
        (b"name = \"a\"\nname = \"b\"", "line 2"),
        (b"name = \"a\"\n[site\naltitude = 1", "line 2: given [site, this is not TOML"),
        (b"name = \"a\"\n[jet]\nbore = 1.8 mm\n", "line 3: given 1.8 mm, this is not TOML"),
        (b"name = \"a\"\n[site]\n[site]", "line 3"),
        (b"name = \"a\"\n[setting]\n[setting]", "; each is begun with [[setting]]"),
        (b"name = \"a\"\r\n[site]\r\naltitude = 1\r\n", "line 3, site.altitude: given 1,"),
        (b"\xef\xbb\xbfname = \"a\"\n[site]\naltitude = 1\n", "line 3, site.altitude: given 1,"),
        (b"\xef\xbb\xbf", "name: given nothing"),
        (b"name = \"\"\"a\nb\"\"\"", "name: given \"\"\"a\\nb\"\"\", accepted is a text of one line"),
        (b"name = \" \"", "name: given \" \""),
        (b"name = 99999999999999999999999", "name: given 9999"),
        (b"name = 2026-01-01", "name: given 2026-01-01"),
        (b"name.a.b = 1", "name: given a table"),
        (b"name = \"a\"\rnote = \"b\"", "line 1"),
        (b"site = 5\nname = \"a\"", "line 1, site: given 5, accepted is a section [site]"),
        (&[b'#'; (1 << 20) + 1], "given a larger file, a burner file has at most 1024 KiB"),
    ];
    for (bytes, part) in table {
        let message = refused_file(&directory, bytes);
        let start: String = String::from_utf8_lossy(bytes).chars().take(40).collect();
        assert!(message.contains(part), "{start:?} wants {part:?} in: {message}");
        assert!(message.len() < 700, "{start:?}: {message}");
        assert!(!message.trim_end().chars().any(char::is_control), "{start:?}: {message:?}");
    }
    let missing = refused(&["sheet", directory.join("missing.toml").to_str().unwrap()]);
    assert!(missing.contains("missing.toml: cannot be read: "), "{missing}");
    assert!(refused(&["sheet", directory.to_str().unwrap()]).contains("cannot be read: "));
}

#[test]
fn a_setpoint_table_is_the_same_in_every_form() {
    use jetwright::control::{SetpointTable, USUAL_ROWS};

    let directory = directory("setpoints");
    let (file, image) = (directory.join("burner.toml"), directory.join("table.bin"));
    std::fs::write(&file, include_str!("../examples/bell-foundry.toml")).unwrap();
    let (file, image) = (file.to_str().unwrap(), image.to_str().unwrap());
    let base = ["setpoints", file, "--from", "10 kW net", "--to", "24 kW net"];
    let with = |more: &[&str]| accepted(&[&base[..], more].concat());
    let json: serde_json::Value = serde_json::from_str(&with(&["--format", "json", "--image", image])).unwrap();
    let bytes = std::fs::read(image).unwrap();
    let table = SetpointTable::<USUAL_ROWS, f32>::read_image(&bytes).unwrap();
    assert_eq!((table.lowest().watts(), table.highest().watts()), (10e3, 24e3));
    for (set, row) in table.rows().iter().zip(json["rows"].as_array().unwrap()) {
        let number = |key: &str| row[key].as_f64().unwrap() as f32;
        assert_eq!((set.gauge.pascals(), set.air), (number("gauge_pressure_pa"), number("air_setting")));
    }
    // Against the sheet's own solution of a setting at the same air ratio.
    let sheet: serde_json::Value = serde_json::from_str(&accepted(&["sheet", file, "--format", "json"])).unwrap();
    let melt = &sheet["settings"].as_array().unwrap().iter().find(|setting| setting["name"] == "melt").unwrap();
    let heat = jetwright::quantity::NetHeatRate::from_watts(melt["heat_net_w"].as_f64().unwrap() as f32);
    let off = table.at(heat).gauge.pascals() - melt["gauge_pressure_pa"].as_f64().unwrap() as f32;
    assert!(off.abs() <= table.bound().gauge.pascals() + 1.0 && table.bound().gauge.pascals() < 200.0, "{off}");
    let in_c = with(&["--source", "c"]);
    let written: Vec<u8> = in_c.split("0x").skip(1).map(|byte| u8::from_str_radix(&byte[..2], 16).unwrap()).collect();
    assert_eq!(written, bytes);
    let in_rust = with(&["--source", "rust"]);
    for set in table.rows() {
        let row = format!("from_pascals({:?}), air: {:?} }}", set.gauge.pascals(), set.air);
        assert!(in_rust.contains(&row), "{row}");
    }

    let bad: &[(&[&str], &[&str])] = &[
        (&["--to", "9 kW net"], &["--to", "\"9 kW net\"", "larger"]),
        (&["--from", "10 kW"], &["--from", "gross or net"]),
        (&["--to", "90 kW net"], &["--to", "\"90 kW net\"", "accepted is from ", "kW net (", "kBtu/h net)"]),
        (&["--from", "1 kW net"], &["--from", "\"1 kW net\"", "accepted is from ", "kW net (", "kBtu/h net)"]),
        // Three times the air that 33 kW take at 1.05 leaves a blower for some 11 kW.
        (&["--air-ratio", "3"], &["--to", "\"24 kW net\"", "accepted is from "]),
        (&["--source", "c", "--format", "json"], &["--source", "\"c\"", "--format is \"json\""]),
        (&["--image", "/nowhere/table.bin"], &["--image", "/nowhere/table.bin"]),
    ];
    for (more, parts) in bad {
        let kept: Vec<&str> = base.iter().copied().filter(|word| !more.contains(word)).collect();
        let kept: Vec<&str> = match more[0] {
            "--to" => kept.into_iter().filter(|word| *word != "24 kW net").collect(),
            "--from" => kept.into_iter().filter(|word| *word != "10 kW net").collect(),
            _ => kept,
        };
        let message = refused(&[&kept[..], more].concat());
        for part in *parts {
            assert!(message.contains(part), "{more:?} {part}: {message}");
        }
    }
}

#[test]
fn a_setpoint_table_unasked_covers_what_blower_and_damper_give() {
    let directory = directory("setpoints-unasked");
    // A gauge that reads low enough for the damper to end the fires.
    let fine = "\n[uncertainty]\ngauge_error = \"100 Pa\"\n";
    let (end, _) = BLANK.split_once("\n[uncertainty]").unwrap();
    for (name, text) in [("foundry", include_str!("../examples/bell-foundry.toml")), ("blank", end)] {
        let text = text.to_owned() + fine;
        let file = directory.join(name);
        std::fs::write(&file, text).unwrap();
        let file = file.to_str().unwrap();
        let json: serde_json::Value =
            serde_json::from_str(&accepted(&["setpoints", file, "--format", "json"])).unwrap();
        let rows = json["rows"].as_array().unwrap();
        let of = |row: usize, key: &str| rows[row][key].as_f64().unwrap();
        // The least a damper is set to is a tenth; at the largest fire it is wide open, just under it about half.
        assert!((of(0, "air_setting") - 0.1).abs() < 0.002, "{}", rows[0]);
        assert!((0.4..0.7).contains(&of(rows.len() - 1, "air_setting")), "{}", rows[rows.len() - 1]);
        if name == "blank" {
            continue;
        }
        // Just outside, the option is refused.
        let heat = |watts: f64| format!("{} kW net", watts / 1e3);
        let (low, high) = (of(0, "heat_net_w"), of(rows.len() - 1, "heat_net_w") / 0.95);
        for (option, watts) in [("--from", 0.995 * low), ("--to", 1.005 * high)] {
            let message = refused(&["setpoints", file, option, &heat(watts)]);
            assert!(message.contains(option) && message.contains("accepted is from"), "{message}");
        }
        accepted(&["setpoints", file, "--to", &heat(0.995 * high)]);
    }
}

#[test]
fn a_setpoint_table_unasked_begins_where_the_gauge_reads() {
    let directory = directory("setpoints-readable");
    let file = directory.join("burner.toml");
    let path = file.to_str().unwrap();
    // The sheet takes a reading of less than twice what the gauge may err by for none: 40 mbar are 4 kPa.
    let text = include_str!("../examples/natural-gas.toml").to_owned() + "\n[uncertainty]\ngauge_error = \"20 mbar\"\n";
    std::fs::write(&file, text).unwrap();
    let json: serde_json::Value = serde_json::from_str(&accepted(&["setpoints", path, "--format", "json"])).unwrap();
    let first = json["rows"][0]["gauge_pressure_pa"].as_f64().unwrap();
    assert!((first / 4e3 - 1.0).abs() < 1e-3, "{first}");
    // Lower it is made when asked, and says so.
    assert!(!accepted(&["setpoints", path]).contains("CAUTION"));
    assert!(accepted(&["setpoints", path, "--from", "20 kW net"]).contains("CAUTION: this gauge cannot be read below"));
    // Far lower the air ratio of a straight line is far off what the table is for.
    let message = refused(&["setpoints", path, "--from", "7.5 kW net"]);
    assert!(message.contains("--from") && message.contains("of the air ratio, accepted is up to 3 %"), "{message}");
}

/// A burner run at a table's own settings is as far off as the command says, and no further.
#[test]
fn what_a_setpoint_table_is_off_is_what_the_burner_makes_of_it() {
    use jetwright::burner::AirSetting;
    use jetwright::control::{SetpointTable, USUAL_ROWS};
    use jetwright::quantity::{GaugePressure, HeatRate, NetHeatRate};

    let directory = directory("setpoints-off");
    let (file, image) = (directory.join("burner.toml"), directory.join("table.bin"));
    // A line or a cylinder would put the gauge's reading between: this file has neither.
    std::fs::write(&file, include_str!("../examples/natural-gas.toml")).unwrap();
    let (path, image) = (file.to_str().unwrap(), image.to_str().unwrap());
    let answer = accepted(&["setpoints", path, "--from", "15 kW net", "--format", "json", "--image", image]);
    let json: serde_json::Value = serde_json::from_str(&answer).unwrap();
    let said = ["heat_off_share", "air_ratio_off_share"].map(|key| json[key].as_f64().unwrap());
    let table = SetpointTable::<USUAL_ROWS, f32>::read_image(&std::fs::read(image).unwrap()).unwrap();
    let sheet = jetwright::file::burner_file::read(&file).unwrap().evaluate(false).unwrap().0;
    let (burner, conditions, ratio) =
        (sheet.plant.burner.as_ref().unwrap(), sheet.plant.conditions, sheet.plant.entries.air_ratio);
    let mut worst = [0.0_f64; 2];
    for index in 0..=1601 {
        let heat = f64::from(table.lowest().watts()) + f64::from(table.step().watts()) * f64::from(index) / 100.07;
        let set = table.at(NetHeatRate::from_watts(heat as f32));
        let gauge = GaugePressure::from_pascals(f64::from(set.gauge.pascals()));
        let found = burner.run(&conditions, gauge, f64::from(set.air)).unwrap();
        let found_heat = conditions.gas.net_heating_value().of(found.gas);
        worst[0] = worst[0].max((found_heat.watts() / heat - 1.0).abs());
        worst[1] = worst[1].max((found.air_ratio.unwrap() / ratio - 1.0).abs());
    }
    for (worst, said) in worst.into_iter().zip(said) {
        assert!((worst / said - 1.0).abs() < 0.02 && said > 1e-3, "{worst} {said}");
    }
    // By hand where it is worst, half way up from the first row: a square law, so the mean of its squares is too much.
    let [low, high] = [0, 1].map(|row: usize| table.rows()[row].gauge.pascals());
    let middle = NetHeatRate::from_watts(f64::from(table.lowest().watts()) + 0.5 * f64::from(table.step().watts()));
    let exact = burner.gauge_for_heat(&conditions, HeatRate::Net(middle), AirSetting::Ratio(ratio)).unwrap();
    assert!(0.5 * f64::from(low + high) > exact.pascals());
}

#[test]
fn a_chips_image_is_written_whole_or_not_at_all() {
    let directory = directory("chip");
    let (burner, image) = (directory.join("burner.toml"), directory.join("burner.bin"));
    let path = |path: &Path| path.to_str().expect("a path of text").to_owned();
    std::fs::write(&burner, &*BLANK).expect("the directory can be written");
    let answer = accepted(&["chip", &path(&burner), "--image", &path(&image)]);
    let bytes = std::fs::read(&image).expect("the image was written");
    assert!(answer.contains(&format!("in {} bytes", bytes.len())), "{answer}");
    let chip = jetwright::control::ChipBurner::<f32>::read_image(&bytes).expect("a burner");
    assert!(!chip.settings.is_empty() && answer.starts_with(&chip.settings.len().to_string()), "{answer}");
    let message = refused(&["chip", &path(&burner), "--image", "/nowhere/burner.bin"]);
    assert!(message.contains("--image: given \"/nowhere/burner.bin\""), "{message}");
    // Without a blower there is no burner to carry.
    let jet = "name = \"jet (invented)\"\n[site]\naltitude = \"0 m\"\nair_temperature = \"20 C\"\nhumidity = \"40 %\"\n\
        [gas]\nkind = \"propane\"\n[jet]\nbore = \"1.5 mm\"\nbore_length = \"9 mm\"\nedge = \"square\"\n[[setting]]\nname = \"a\"\ngauge = \"0.3 bar\"\n";
    std::fs::write(&burner, jet).expect("the directory can be written");
    let none = directory.join("none.bin");
    let message = refused(&["chip", &path(&burner), "--image", &path(&none)]);
    assert!(message.contains("blower") && !none.exists(), "{message}");
}
