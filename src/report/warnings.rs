//! The warnings of any answer, for people and for programs.

use std::format;
use std::prelude::rust_2024::*;
use std::vec;

use crate::plant::Sheet;
use crate::plant::hazards::{Hazard, Hazards, Measure};
use crate::plant::work::THE_WORK;
use crate::prose::hazards::{number, sentence, signal_word};
use crate::quantity::{Duration, Length, Mass, NetHeatRate, Temperature};
use crate::report::field::columns;
use crate::report::tree::{Member, Node, Row, Section, Tree};
use crate::report::units::Shop;

/// Where a warning is met: the setting, and what is said of it there.
type Met = (Option<usize>, String);

/// A hazard's number in the units of a shop.
pub(crate) fn printed(shop: &Shop, value: f64, measure: Measure) -> String {
    match measure {
        Measure::Nothing => String::new(),
        Measure::AirRatio | Measure::Ratio => Shop::ratio(value),
        Measure::Share => Shop::share(value),
        Measure::PartsPerMillion => format!("{:.0} ppm", parts(value)),
        Measure::Count => format!("{value:.0}"),
        Measure::Temperature => shop.temperature(Temperature::from_kelvin(value)),
        Measure::Duration if value < 120.0 => format!("{value:.1} s"),
        Measure::Duration => format!("{:.0} min", Duration::from_seconds(value).minutes()),
        Measure::Mass => shop.mass(Mass::from_kilograms(value)),
        Measure::NetHeat => {
            let heat = NetHeatRate::from_watts(value);
            if shop.inch {
                format!("{:.1} kBtu/h", heat.btu_per_hour() / 1e3)
            } else {
                format!("{:.1} kW", heat.kilowatts())
            }
        }
        Measure::Bore => shop.bore(Length::from_meters(value)),
    }
}

/// Parts in a million of a share, in two figures: real mixing leaves more.
fn parts(share: f64) -> f64 {
    let parts = (1e6 * share).max(1.0);
    let step = 10_f64.powf(parts.log10().floor() - 1.0);
    (parts / step).round() * step
}

/// A warning and where it stands.
pub(crate) struct WarningRow<'h> {
    hazard: &'h Hazard,
    setting: Option<&'h str>,
}

impl WarningRow<'_> {
    /// The sentence in metric units, its number before it.
    fn text(&self) -> String {
        let print = |value, measure| printed(&Shop::of(false), value, measure);
        let text = sentence(self.hazard, &print);
        number(self.hazard, &print).map_or(text.clone(), |number| format!("{number}: {text}"))
    }
}

/// What an answer warns of, and what its states are called.
#[derive(Clone, Debug)]
pub struct Warned {
    hazards: Hazards,
    names: Vec<String>,
}

impl Warned {
    /// Of an answer of one state.
    pub fn of<'h>(hazards: impl IntoIterator<Item = &'h Hazard>) -> Self {
        Self { hazards: hazards.into_iter().copied().collect(), names: vec![] }
    }

    /// Of an answer whose states have these names, in their order.
    #[must_use]
    pub const fn named(hazards: Hazards, names: Vec<String>) -> Self {
        Self { hazards, names }
    }

    /// Of a sheet.
    #[must_use]
    pub fn of_sheet(sheet: &Sheet) -> Self {
        let names = sheet.settings.iter().map(|setting| setting.entry.name.as_str().into()).collect();
        Self { hazards: sheet.hazards.clone(), names }
    }

    /// What it warns of as a part of an answer.
    #[must_use]
    pub fn node(&self, shop: &Shop) -> Node {
        warnings(self, shop)
    }

    fn name(&self, hazard: &Hazard) -> Option<&str> {
        if hazard.at_work() && !self.names.is_empty() {
            return Some(THE_WORK);
        }
        self.names.get(hazard.setting()?).map(String::as_str)
    }
}

/// The warnings: one row a warning and place for programs; for people those of one sentence together.
pub(crate) fn warnings(warned: &Warned, shop: &Shop) -> Node {
    let rows = warned.hazards.iter().map(|hazard| {
        let setting = warned.name(hazard);
        Row::of([warning(&WarningRow { hazard, setting })])
    });
    let rows = Node::rows(&WARNINGS, rows.collect());
    if warned.hazards.as_slice().is_empty() {
        return rows;
    }
    let mut nodes = vec![rows];
    let print = |value, measure| printed(shop, value, measure);
    let mut said: Vec<(&str, String, Vec<Met>)> = vec![];
    for hazard in &warned.hazards {
        let text = sentence(hazard, &print);
        let place = match (warned.name(hazard), number(hazard, &print)) {
            (Some(setting), Some(number)) => Some(format!("{setting} ({number})")),
            (setting, number) => setting.map(Into::into).or(number),
        };
        let place = place.map(|place| (hazard.setting(), place));
        match said.iter_mut().find(|(_, said, _)| *said == text) {
            Some((_, _, places)) => places.extend(place),
            None => said.push((signal_word(hazard.severity()), text, place.into_iter().collect())),
        }
    }
    for (word, text, places) in said {
        let place = if places.is_empty() { String::new() } else { format!("{}: ", listed(&places)) };
        // As wide as the longest signal word, so that they stand in line.
        nodes.push(Node::labeled(format!("{word:<7}"), place + &text));
    }
    Node::headed("WARNINGS", nodes)
}

/// The places of one warning; many settings in a row by the first and the last.
fn listed(places: &[Met]) -> String {
    const MANY: usize = 5;
    let in_a_row = places.windows(2).all(|pair| pair[0].0.map(|index| index + 1) == pair[1].0 && pair[1].0.is_some());
    match places {
        [(_, first), .., (_, last)] if in_a_row && places.len() >= MANY => format!("{first} to {last}"),
        _ => places.iter().map(|(_, place)| place.as_str()).collect::<Vec<_>>().join(", "),
    }
}

impl Tree {
    /// The answer with what it warns of at its end.
    #[must_use]
    pub fn warned(mut self, warned: &Warned, shop: &Shop) -> Self {
        self.nodes.push(warned.node(shop));
        self
    }

    /// What the answer warns of, alone: beside a table of CSV, which has no room for it.
    #[must_use]
    pub fn warnings(&self) -> Self {
        let is_warning = |node: &&Node| match node {
            Node::Block(block) => block.nodes.iter().any(|node| match node {
                Node::Table(table) => table.section.is_some_and(|section| section.name == WARNINGS.name),
                _ => false,
            }),
            _ => false,
        };
        Self { nodes: self.nodes.iter().filter(is_warning).cloned().collect(), ..*self }
    }
}

/// The warnings for programs.
pub(crate) const WARNINGS: Section = Section {
    key: "warnings",
    name: "sheet: warnings",
    words: "What the numbers warn of, an array, the worst first; CSV leaves them to standard error",
    about: "",
    is_many: true,
    members: &[Member::Columns(WARNING)],
};

columns! {
    /// A warning.
    pub(crate) WARNING, warning(row: &WarningRow<'_>);
    /// The gas as the file names it; of a warning, one of the words under [warning words](#warning-words).
    kind, "kind", Word, Programs => row.hazard.kind.key();
    /// One of `danger` (will kill or maim if it is not avoided), `warning` (could), `caution` (could injure lightly) and
    /// `notice` (damage, waste, or a number less certain than it looks): the signal words of ANSI Z535.6 (from memory).
    severity, "severity", Word, Programs => row.hazard.severity().key();
    /// Name of the setting meant, or `the work` for the work's own fire; null for a warning of the whole burner; of
    /// `flow` the gauge reading, of `jet` the drill, of `setpoints` the heat input of the row.
    setting, "setting", Word, Programs => row.setting;
    /// The number that the warning stands on, in K, s, kg, W or m where it is one of these, else a ratio or a share;
    /// null without one.
    number, "number", OfItsKind, Programs => row.hazard.number;
    /// Where that number becomes a warning, in the same unit; null without one.
    limit, "limit", OfItsKind, Programs => row.hazard.limit;
    /// The warning in a sentence, with its number in metric units.
    text, "text", Word, Programs => row.text();
}
