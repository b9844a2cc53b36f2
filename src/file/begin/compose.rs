//! The burner file that answers make.

use std::format;
use std::prelude::rust_2024::*;
use std::vec::Vec;

use super::answers::{Answer, Answers, bore_key, material, opening_area, plate, ports, quoted, sizes};
use super::questions::{QUESTIONS, question};
use super::trades::{TRADES, Trade, trade};
use crate::Input;
use crate::file::blank::SCHEMA_LINE;
use crate::file::burner_file::parse;
use crate::quantity::{GaugePressure, parse_written};

/// What stands for answers that are not known.
const ALTITUDE: &str = "300 m";
const AIR_TEMPERATURE: &str = "20 C";
const BORE: &str = "1.5 mm";
const GAUGE: &str = "0.3 bar";
const THICKNESS: &str = "75 mm";
/// Share of the front that an opening nobody measured takes.
const OPENING: f64 = 0.1;
/// Length of a port's hole and of a plain pipe end (common practice, no source).
const PORT_LENGTH: &str = "25 mm";

/// A file under the pen.
struct Pen {
    text: String,
    uncertainty: Vec<(&'static str, &'static str, &'static str)>,
}

impl Pen {
    fn section(&mut self, head: &str) {
        self.text.push_str(&format!("\n{head}\n"));
    }

    fn key(&mut self, key: &str, value: &str) {
        self.text.push_str(&format!("{key} = {}\n", quoted(value)));
    }

    fn bare(&mut self, key: &str, value: &str) {
        self.text.push_str(&format!("{key} = {value}\n"));
    }

    fn remark(&mut self, remark: &str) {
        let mut line = String::from("#");
        for word in remark.split_whitespace() {
            if line.len() + 1 + word.len() > 96 {
                self.text.push_str(&line);
                self.text.push('\n');
                line = String::from("#");
            }
            line.push(' ');
            line.push_str(word);
        }
        self.text.push_str(&line);
        self.text.push('\n');
    }

    /// That a value was not known, and how well what stands for it is.
    fn unknown(&mut self, question_key: &str, spread: Option<(&'static str, &'static str)>) {
        if let Some(cost) = question(question_key).and_then(|asked| asked.unknown) {
            self.remark(&format!("NOT KNOWN, {cost}."));
        }
        if let Some((key, value)) = spread {
            self.uncertainty.push((key, value, "for what was not known"));
        }
    }

    /// A key with an answer, or with what stands for it.
    fn answered(
        &mut self,
        answers: &Answers,
        question_key: &str,
        key: &str,
        instead: &str,
        spread: Option<(&'static str, &'static str)>,
    ) {
        match answers.text(question_key) {
            Some(text) => self.key(key, text),
            None => {
                self.unknown(question_key, spread);
                self.key(key, instead);
            }
        }
    }
}

/// The file of these answers, questions that were not answered taken as not known.
///
/// # Examples
///
/// ```
/// use jetwright::file::begin::{Answer, Answers, compose, question};
/// use jetwright::file::burner_file::parse;
/// let mut answers = Answers::default();
/// for (key, text) in [("trade", "forge"), ("gas", "propane"), ("jet", "1.4 mm"), ("gauge", "5 psi")] {
///     answers.take(question(key).unwrap(), Answer::Said(text.into())).unwrap();
/// }
/// assert_eq!(parse(&compose(&answers), "forge.toml").unwrap().entries.settings[0].name, "light");
/// ```
#[must_use]
pub fn compose(answers: &Answers) -> String {
    let trade = answers.text("trade").and_then(trade).unwrap_or(&TRADES[0]);
    let mut pen = Pen { text: format!("{SCHEMA_LINE}\n"), uncertainty: Vec::new() };
    pen.remark("A burner file for jetwright. An estimate for setting a fire that someone watches, never a flame safeguard: local codes and a licensed gas fitter decide.");
    pen.remark("What was not known is marked NOT KNOWN, with what it costs: learn it, and write it in. Every key: jetwright blank.");
    pen.text.push('\n');
    pen.key("name", answers.text("name").unwrap_or(trade.furnace));
    pen.section("[site]");
    pen.answered(answers, "altitude", "altitude", ALTITUDE, Some(("air_pressure", "60 hPa")));
    let warm = if answers.text("air-temperature").is_some() { None } else { Some(("air_temperature", "10 K")) };
    pen.answered(answers, "air-temperature", "air_temperature", AIR_TEMPERATURE, warm);
    pen.section("[gas]");
    pen.key("kind", answers.text("gas").unwrap_or("propane"));
    jet(&mut pen, answers);
    air_side(&mut pen, answers);
    chamber(&mut pen, answers, trade);
    pen.section("[fire]");
    pen.remark("1 = just enough air, more is oxidizing, less is reducing.");
    pen.bare("air_ratio", trade.air_ratio);
    settings(&mut pen, answers, trade);
    if !pen.uncertainty.is_empty() {
        pen.section("[uncertainty]");
        pen.remark("Of what was not known, 95 times in 100. Take each line away once it is measured.");
        for (key, value, _) in core::mem::take(&mut pen.uncertainty) {
            pen.key(key, value);
        }
    }
    pen.text
}

fn jet(pen: &mut Pen, answers: &Answers) {
    pen.section("[jet]");
    match answers.text("jet") {
        Some(text) => pen.key(bore_key(text).unwrap_or("bore"), text),
        None => {
            pen.unknown("jet", Some(("bore", "0.5 mm")));
            pen.key("bore", BORE);
        }
    }
    pen.remark(
        "A drilled hole with its inlet edge left as it was: \"sharp\", \"square\", \"chamfered\" or \"rounded\".",
    );
    pen.key("edge", "square");
}

fn air_side(pen: &mut Pen, answers: &Answers) {
    let (flow, pressure) = (answers.text("blower-flow"), answers.text("blower-pressure"));
    let motor = answers.text("blower-plate").filter(|_| flow.is_none() && pressure.is_none());
    if flow.is_none() && pressure.is_none() && motor.is_none() {
        return;
    }
    pen.section("[blower]");
    if flow.is_none() || pressure.is_none() {
        pen.remark(
            "By its nameplate alone: a typical curve, its pressure within 75 %, or 55 % with the impeller's kind, \
             \"forward curved\", \"backward curved\" or \"radial\". Points of its curve are best.",
        );
    }
    if let Some(flow) = flow {
        pen.key("free_delivery", flow);
    }
    if let Some(pressure) = pressure {
        pen.key("shut_off", pressure);
    }
    if let Some((power, impeller)) = motor.and_then(|text| plate(text).ok()) {
        pen.key("motor_power", power);
        pen.key("impeller", impeller);
    }
    let Some((count, diameter)) = answers.text("ports").and_then(|text| ports(text).ok()) else {
        return pen.unknown("ports", None);
    };
    if answers.text("damper") != Some("none") {
        damper(pen, answers);
    }
    pen.section("[head]");
    pen.bare("ports", &format!("{count}"));
    pen.key("port_diameter", diameter);
    pen.remark("How much of the head's face the ports open, and how long their holes are: usual values.");
    pen.key("open_fraction", if count == 1 { "80 %" } else { "25 %" });
    pen.key("port_length", PORT_LENGTH);
}

fn damper(pen: &mut Pen, answers: &Answers) {
    let Some(duct) = answers.text("duct") else {
        return pen.unknown("duct", None);
    };
    pen.section("[damper]");
    match answers.text("damper") {
        Some(kind) => pen.key("kind", kind),
        None => pen.unknown("damper", None),
    }
    pen.key("diameter", duct);
}

fn chamber(pen: &mut Pen, answers: &Answers, trade: &Trade) {
    let Some(sizes) = answers.text("chamber").and_then(|text| sizes(text).ok()) else { return };
    let front = match sizes[..] {
        [width, height, _] => width * height,
        [diameter, ..] => core::f64::consts::FRAC_PI_4 * diameter * diameter,
        [] => return,
    };
    let given = answers.text("opening").and_then(|text| opening_area(text).ok());
    let opening = given.unwrap_or(OPENING * front).min(0.95 * front);
    let square = |area: f64| format!("{:.1} cm2", 1e4 * area);
    pen.section("[chamber]");
    if given.is_none() {
        pen.unknown("opening", None);
    }
    pen.key("exhaust_opening", &square(opening));
    pen.remark(&format!("Usual for a {}.", trade.furnace));
    pen.key("temperature", trade.chamber_temperature);
    let Some(lining) = answers.text("lining") else { return };
    pen.section("[[layer]]");
    pen.key("material", material(lining));
    pen.answered(answers, "thickness", "thickness", THICKNESS, Some(("walls", "50 %")));
    let thickness = answers.text("thickness").unwrap_or(THICKNESS);
    let mm = |meters: f64| format!("{:.1} mm", 1e3 * meters);
    let mut panel = |kind: &str, keys: &[(&str, String)]| {
        pen.section("[[panel]]");
        pen.key("kind", kind);
        keys.iter().for_each(|(key, value)| pen.key(key, value));
        if kind != "opening" {
            pen.key("thickness", thickness);
        }
    };
    match sizes[..] {
        [width, height, depth] => {
            panel("box", &[("width", mm(width)), ("height", mm(height)), ("depth", mm(depth))]);
        }
        [diameter, length] => {
            panel("cylinder", &[("diameter", mm(diameter)), ("length", mm(length))]);
            panel("flat", &[("area", square(front))]);
        }
        _ => {}
    }
    panel("door", &[("area", square(front - opening))]);
    panel("opening", &[("area", square(opening))]);
}

fn settings(pen: &mut Pen, answers: &Answers, trade: &Trade) {
    let full = answers.text("gauge").unwrap_or(GAUGE);
    let written = parse_written::<GaugePressure>(full, Input::GaugePressure).ok();
    let air = answers.text("air-temperature").unwrap_or(AIR_TEMPERATURE);
    for (place, stage) in trade.stages.iter().enumerate() {
        pen.section("[[setting]]");
        pen.key("name", stage.name);
        if place == 0 && answers.text("gauge").is_none() {
            pen.unknown("gauge", Some(("gauge_error", "0.15 bar")));
        }
        match &written {
            Some(written) if stage.gauge_share < 1.0 => {
                let value = written.quantity.pascals() * stage.gauge_share / written.unit.factor;
                pen.key("gauge", &format!("{} {}", figures(value), written.unit.symbol));
            }
            _ => pen.key("gauge", full),
        }
        if place == 0 && answers.text("chamber").is_some() {
            pen.key("chamber_temperature", air);
        }
        pen.key("minutes", stage.minutes);
        pen.key("purpose", stage.purpose);
    }
}

/// Three figures.
fn figures(value: f64) -> String {
    let decimals = if value >= 100.0 {
        0
    } else if value >= 10.0 {
        1
    } else if value >= 1.0 {
        2
    } else {
        3
    };
    format!("{value:.decimals$}")
}

/// What can already be said: heat with its ±, and whether the blower will do. None before gauge and jet.
#[must_use]
pub fn growing(answers: &Answers) -> Option<String> {
    answers.answer("gauge")?;
    let (sheet, _) = parse(&compose(answers), "").ok()?.evaluate(false).ok()?;
    let full = sheet
        .settings
        .iter()
        .enumerate()
        .max_by(|(_, one), (_, other)| one.gas.partial_cmp(&other.gas).unwrap_or(core::cmp::Ordering::Equal))?;
    let (place, full) = full;
    let sure = sheet.sure.get(place).copied().flatten();
    let spread = sure.map_or(String::new(), |sure| format!(" ± {:.0} %", 100.0 * sure.gas.relative()));
    let mut text = format!(
        "gauge {:.2} bar ({:.1} psi): {:.1} kW net{spread}, {:.2} kg/h of gas",
        full.gauge.pascals() * 1e-5,
        full.gauge.pascals() / 6894.757,
        full.heat_net.watts() * 1e-3,
        full.gas.kilograms_per_second() * 3600.0,
    );
    if let Some(air) = &sheet.air {
        let verdict = if air.surplus.pascals() >= 0.0 { "WILL DO" } else { "IS TOO WEAK" };
        text.push_str(&format!("; the blower {verdict} ({:.0} Pa to spare)", air.surplus.pascals()));
    }
    Some(text)
}

/// The answers of a trade's examples, every question answered.
#[must_use]
pub(crate) fn example_answers(trade: &str) -> Answers {
    let mut answers = Answers::default();
    for asked in QUESTIONS.iter().filter(|asked| asked.key != "blower-plate") {
        let text = match asked.key {
            "name" => format!("{trade} of a night school (invented)"),
            "trade" => trade.into(),
            _ => asked.example(trade).into(),
        };
        // An example that its own question refuses is a mistake that a test finds.
        let _ = answers.take(asked, Answer::Said(text));
    }
    answers
}
