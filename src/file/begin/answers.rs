//! What was answered, and how each answer is read.

use std::format;
use std::prelude::rust_2024::*;
use std::vec::Vec;

use super::questions::{QUESTIONS, Question};
use crate::Input;
use crate::furnace::Material;
use crate::limits::check;
use crate::plant::description::value::Given;
use crate::plant::description::{Description, JetHole};
use crate::quantity::{Length, Power, parse_count, parse_within};

/// What was said to a question: a text that was accepted, or that it is not known.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Answer {
    /// This.
    Said(String),
    /// It is not known.
    Unknown,
}

/// Why a text is no answer.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Refused(pub String);

impl From<&str> for Refused {
    fn from(text: &str) -> Self {
        Self(text.into())
    }
}

impl core::fmt::Display for Refused {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        f.write_str(&self.0)
    }
}

/// The answers so far.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Answers {
    said: Vec<(&'static str, Answer)>,
}

impl Answers {
    /// Takes an answer, once it is checked.
    ///
    /// # Errors
    ///
    /// [`Refused`] where it is none.
    pub fn take(&mut self, question: &'static Question, answer: Answer) -> Result<(), Refused> {
        match &answer {
            Answer::Said(text) => question.check(text)?,
            Answer::Unknown if question.unknown.is_none() => {
                return Err(Refused(format!("an answer is needed, such as {}", question.example(""))));
            }
            Answer::Unknown => {}
        }
        self.said.retain(|(key, _)| *key != question.key);
        self.said.push((question.key, answer));
        Ok(())
    }

    /// What was said to a question; none where it was not answered, or is not known.
    #[must_use]
    pub fn text(&self, key: &str) -> Option<&str> {
        match self.answer(key) {
            Some(Answer::Said(text)) => Some(text),
            _ => None,
        }
    }

    /// The answer to a question, if it was answered.
    #[must_use]
    pub fn answer(&self, key: &str) -> Option<&Answer> {
        self.said.iter().find(|(said, _)| *said == key).map(|(_, answer)| answer)
    }

    /// The next question that they call for.
    #[must_use]
    pub fn next(&self) -> Option<&'static Question> {
        QUESTIONS.iter().find(|asked| asked.is_asked && self.answer(asked.key).is_none() && (asked.applies)(self))
    }

    /// The answers as lines to keep, `key = "text"`, an unknown one empty.
    #[must_use]
    pub fn kept(&self) -> String {
        let line = |(key, answer): &(&str, Answer)| match answer {
            Answer::Said(text) => format!("{key} = {}\n", quoted(text)),
            Answer::Unknown => format!("{key} = \"\"\n"),
        };
        self.said.iter().map(line).collect()
    }

    /// The answers of such lines.
    ///
    /// # Errors
    ///
    /// [`Refused`] at what is no answer.
    pub fn of_kept(text: &str) -> Result<Self, Refused> {
        let table: toml::Table = text.parse().map_err(|_| Refused::from("lines of key = \"text\" are accepted"))?;
        let mut answers = Self::default();
        for asked in QUESTIONS {
            let answer = match table.get(asked.key).map(|value| value.as_str()) {
                None => continue,
                Some(Some("")) => Answer::Unknown,
                Some(Some(text)) => Answer::Said(text.into()),
                Some(None) => return Err(Refused(format!("{}: text in quotes is accepted", asked.key))),
            };
            answers.take(asked, answer).map_err(|why| Refused(format!("{}: {why}", asked.key)))?;
        }
        Ok(answers)
    }
}

/// A text as TOML quotes it.
pub(super) fn quoted(text: &str) -> String {
    toml::Value::String(text.into()).to_string()
}

type Accepted = Result<(), Refused>;

fn within<Q: crate::quantity::Quantity>(text: &str, input: Input) -> Result<Q, Refused> {
    parse_within::<Q>(text, input).map_err(|error| Refused(error.to_string()))
}

fn row(section: &str, key: &str, text: &str) -> Accepted {
    let Some(section) = Description::section(section) else { return Ok(()) };
    let mut scratch = Description::default();
    (section.add)(&mut scratch, [0, 0]);
    let Some(row) = section.row(key) else { return Ok(()) };
    (row.put)(&mut scratch, [0, 0], Given::Text(text)).map_err(|error| Refused(error.to_string()))
}

pub(super) fn accepts_word(_: &str) -> Accepted {
    Ok(())
}

pub(super) fn accepts_name(text: &str) -> Accepted {
    row("", "name", text)
}

pub(super) fn accepts_height(text: &str) -> Accepted {
    row("site", "altitude", text)
}

pub(super) fn accepts_temperature(text: &str) -> Accepted {
    row("site", "air_temperature", text)
}

pub(super) fn accepts_gas(text: &str) -> Accepted {
    crate::gas::parse(text).map(|_| ()).map_err(|error| Refused(error.to_string()))
}

pub(super) fn accepts_gauge(text: &str) -> Accepted {
    row("setting", "gauge", text)
}

pub(super) fn accepts_flow(text: &str) -> Accepted {
    row("blower", "free_delivery", text)
}

pub(super) fn accepts_pressure(text: &str) -> Accepted {
    row("blower", "shut_off", text)
}

pub(super) fn accepts_duct(text: &str) -> Accepted {
    row("damper", "diameter", text)
}

pub(super) fn accepts_thickness(text: &str) -> Accepted {
    row("layer", "thickness", text)
}

pub(super) fn accepts_bore(text: &str) -> Accepted {
    bore_key(text).map(|_| ())
}

pub(super) fn accepts_plate(text: &str) -> Accepted {
    plate(text).map(|_| ())
}

pub(super) fn accepts_ports(text: &str) -> Accepted {
    ports(text).map(|_| ())
}

pub(super) fn accepts_sizes(text: &str) -> Accepted {
    match sizes(text)?.as_slice() {
        [_, _] | [_, _, _] => Ok(()),
        _ => Err("two or three sizes are accepted, such as \"300 x 300 x 400 mm\"".into()),
    }
}

pub(super) fn accepts_opening(text: &str) -> Accepted {
    opening_area(text).map(|_| ())
}

pub(super) fn accepts_lining(text: &str) -> Accepted {
    let known = Material::<f64>::named(material(text)).is_some();
    if known { Ok(()) } else { Err("light, heavy, soft or a material of the table of inputs is accepted".into()) }
}

/// The material that a feel stands for.
pub(super) fn material(text: &str) -> &str {
    match text {
        "light" => "unknown light lining",
        "heavy" => "unknown heavy lining",
        "soft" => "unknown soft lining",
        name => name,
    }
}

/// Whether it is a bore or a drill.
pub(super) fn bore_key(text: &str) -> Result<&'static str, Refused> {
    let Err(why) = within::<Length>(text, Input::Bore) else {
        // A bare fraction of an inch is a drill by its name as well; as a bore it would claim to be measured.
        return Ok(if text.contains('/') { "drill" } else { "bore" });
    };
    let hole = JetHole { drill: Some(crate::plant::entries::shortened(text)), ..JetHole::default() };
    match hole.size().map(|size| size.diameter().is_ok()) {
        Ok(true) => Ok("drill"),
        _ => Err(Refused(format!("{why}, or a drill such as \"number 50\""))),
    }
}

/// Power and diameter of `60 W, 120 mm`.
pub(super) fn plate(text: &str) -> Result<(&str, &str), Refused> {
    let Some((power, impeller)) = text.split_once(',') else {
        return Err("power, a comma and a diameter are accepted, such as \"60 W, 120 mm\"".into());
    };
    let (power, impeller) = (power.trim(), impeller.trim());
    let watts: Power = within(power, Input::ShaftPower)?;
    if watts.watts() < 1.0 {
        return Err("a power from 1 W up is accepted".into());
    }
    within::<Length>(impeller, Input::DuctDiameter)?;
    Ok((power, impeller))
}

/// Count and diameter of `60 x 4.5 mm`.
pub(super) fn ports(text: &str) -> Result<(u32, &str), Refused> {
    let Some((count, diameter)) = text.split_once('x') else {
        return Err("a count, x and a diameter are accepted, such as \"60 x 4.5 mm\"".into());
    };
    let count = parse_count(count.trim(), Input::PortCount).map_err(|error| Refused(error.to_string()))?;
    within::<Length>(diameter.trim(), Input::PortDiameter)?;
    Ok((count, diameter.trim()))
}

/// The sizes of `300 x 300 x 400 mm`, in meters; the last one's unit is that of all.
pub(super) fn sizes(text: &str) -> Result<Vec<f64>, Refused> {
    let parts: Vec<&str> = text.split('x').map(str::trim).collect();
    let unit = parts.last().map_or("", |last| last.trim_start_matches(|c: char| !c.is_alphabetic() && c != '"'));
    let size = |part: &&str| {
        let written = if part.ends_with(unit) { (*part).to_owned() } else { format!("{part} {unit}") };
        within::<Length>(&written, Input::PanelSize).map(|length| length.meters())
    };
    parts.iter().map(size).collect()
}

/// The area of `60 x 100 mm` or of a circle of `80 mm`, in square meters.
pub(super) fn opening_area(text: &str) -> Result<f64, Refused> {
    let area = match sizes(text)?.as_slice() {
        [diameter] => core::f64::consts::FRAC_PI_4 * diameter * diameter,
        [width, height] => width * height,
        _ => return Err("a diameter, or a width x a height, is accepted".into()),
    };
    check(Input::ExhaustArea, area).map_err(|_| Refused::from("an opening of that size is out of range"))
}
