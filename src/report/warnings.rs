//! The warnings of any answer, as text and as JSON.

use std::format;
use std::prelude::rust_2024::*;
use std::vec;

use serde_json::{Value, json};

use crate::plant::evaluation::Sheet;
use crate::plant::hazards::{Hazard, Hazards, Measure};
use crate::plant::work::THE_WORK;
use crate::prose::hazards::{number, sentence, signal_word};
use crate::quantity::{Duration, Length, Mass, NetHeatRate, Temperature};
use crate::report::page::{heading, paragraph};
use crate::report::units::Shop;

/// Most warnings on the page for the wall: more are not read.
pub const MOST_ON_WALL: usize = 7;

/// The name of the setting that a hazard stands at, of a sheet; none of the whole burner.
#[must_use]
pub fn setting_name<'s>(sheet: &'s Sheet, hazard: &Hazard) -> Option<&'s str> {
    if hazard.at_work() {
        return Some(THE_WORK);
    }
    sheet.settings.get(hazard.setting()?).map(|setting| setting.entry.name.as_str())
}

/// A hazard's number in the units of a shop.
fn printed(shop: &Shop, value: f64, measure: Measure) -> String {
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

/// Adds the warnings to a page, those of one sentence together; of more than `most` sentences the least bad are counted
/// only.
pub fn warnings_text<'n>(
    page: &mut String,
    hazards: &Hazards,
    name: impl Fn(&Hazard) -> Option<&'n str>,
    shop: &Shop,
    most: usize,
) {
    if hazards.as_slice().is_empty() {
        return;
    }
    heading(page, "WARNINGS");
    let print = |value, measure| printed(shop, value, measure);
    let mut said: Vec<(&str, String, Vec<(Option<usize>, String)>)> = vec![];
    for hazard in hazards {
        let text = sentence(hazard, &print);
        let place = match (name(hazard), number(hazard, &print)) {
            (Some(setting), Some(number)) => Some(format!("{setting} ({number})")),
            (setting, number) => setting.map(Into::into).or(number),
        };
        let place = place.map(|place| (hazard.setting(), place));
        match said.iter_mut().find(|(_, said, _)| *said == text) {
            Some((_, _, places)) => places.extend(place),
            None => said.push((signal_word(hazard.severity()), text, place.into_iter().collect())),
        }
    }
    let more = said.len().saturating_sub(most);
    for (word, text, places) in said.into_iter().take(most) {
        let place = if places.is_empty() { String::new() } else { format!("{}: ", listed(&places)) };
        paragraph(page, &format!(" {word}"), &(place + &text));
    }
    if more > 0 {
        paragraph(page, "", &format!("{more} more in the whole sheet"));
    }
}

/// The places of one warning; many settings in a row by the first and the last.
fn listed(places: &[(Option<usize>, String)]) -> String {
    const MANY: usize = 5;
    let in_a_row = places.windows(2).all(|pair| pair[0].0.map(|index| index + 1) == pair[1].0 && pair[1].0.is_some());
    match places {
        [(_, first), .., (_, last)] if in_a_row && places.len() >= MANY => format!("{first} to {last}"),
        _ => places.iter().map(|(_, place)| place.as_str()).collect::<Vec<_>>().join(", "),
    }
}

/// The warnings as an array, numbers and limits in SI units, the sentence in metric ones.
#[must_use]
pub fn warnings_json<'n>(hazards: &Hazards, name: impl Fn(&Hazard) -> Option<&'n str>) -> Value {
    let shop = Shop { inch: false };
    let print = |value, measure| printed(&shop, value, measure);
    let rows = hazards.iter().map(|hazard| {
        let text = sentence(hazard, &print);
        json!({
            "kind": hazard.kind.key(),
            "severity": hazard.severity().key(),
            "setting": name(hazard),
            "number": hazard.number,
            "limit": hazard.limit,
            "text": number(hazard, &print).map_or(text.clone(), |number| format!("{number}: {text}")),
        })
    });
    Value::Array(rows.collect())
}
