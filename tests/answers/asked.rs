//! Without --units an answer keeps to the units of its question.

use super::{BurnerFile, GAUGE, answer};

const FLOW: [&str; 5] = ["flow", "--gas", "propane", "--bore", "1.8 mm"];

/// The line of a page that holds a text.
fn line<'p>(page: &'p str, text: &str) -> &'p str {
    page.lines().find(|line| line.contains(text)).unwrap_or_else(|| panic!("no {text} in\n{page}"))
}

#[test]
fn each_row_answers_in_the_units_of_its_gauge() {
    let gauges = ["--gauge", "5 psi", "--gauge", "0.3 bar", "--gauge", "0.5 inH2O", "--gauge", "20 mbar"];
    let page = answer(&[&FLOW[..], &gauges].concat());
    for (gauge, unit) in [("5.0 psi", "kBtu/h gross"), ("0.300 bar", "kW gross")] {
        assert!(line(&page, gauge).contains(unit), "{page}");
    }
    assert!(line(&page, "0.500 inH2O").contains("lb/h") && line(&page, "20.0 mbar").contains("kg/h"), "{page}");
    // Units asked for are those of every row, and a gauge in one of that set stays as written.
    let page = answer(&[&FLOW[..], &gauges, &["--units", "inch"]].concat());
    assert!(line(&page, "gauge").contains("heat kBtu/h gross") && !page.contains("bar"), "{page}");
    assert!(line(&page, "0.500 inH2O").contains("7.20"), "{page}");
}

#[test]
fn one_set_of_units_stands_in_the_titles() {
    let page = answer(&[&FLOW[..], &["--gauge", "5 psi", "--gauge", "8 psi"]].concat());
    assert!(line(&page, "gauge psi").contains("heat kBtu/h gross"), "{page}");
}

#[test]
fn a_fire_is_answered_in_the_set_it_was_asked_in() {
    let of = |heat: &str, command: &[&str]| answer(&[command, &["--gas", "propane", "--heat", heat]].concat());
    for (heat, here, not) in [("90 kBtu/h gross", "lb/h", "kg/h"), ("26 kW net", "kg/h", "lb/h")] {
        let air = of(heat, &["air"]);
        assert!(air.contains(here) && !air.contains(not), "{air}");
        let pipe = of(heat, &["line", "--diameter", "27 mm", "--length", "15 m", "--drop", "0.5 inH2O"]);
        assert!(pipe.contains(here) && !pipe.contains(not), "{pipe}");
    }
    let page = of("26 kW net", &["jet", "--gauge", "11 inH2O", "--drills", "metric"]);
    assert!(page.contains("at 11.0 inH2O.") && page.contains("kW net") && !page.contains("psi"), "{page}");
}

#[test]
fn a_setting_written_in_inches_of_water_is_printed_so() {
    let file = BurnerFile::bells(&[(GAUGE, "gauge = \"11 inH2O\"")]);
    for page in
        [answer(&["sheet", file.path()]), file.text("inch"), answer(&["sheet", file.path(), "--format", "html"])]
    {
        assert!(page.contains("11.0 inH2O"), "{page}");
    }
    assert!(!file.text("metric").contains("inH2O"));
}

#[test]
fn programs_read_the_same_however_the_question_was_written() {
    for format in ["json", "csv"] {
        let asked = [&FLOW[..], &["--gauge", "5 psi", "--gauge", "20 mbar", "--format", format]].concat();
        assert_eq!(answer(&asked), answer(&[&asked[..], &["--units", "metric"]].concat()));
    }
}
