//! How sure the sheet's numbers are: computed, said and keyed.

use std::collections::BTreeMap;
use std::prelude::rust_2024::*;
use std::{format, vec};

use serde_json::{Map, Value, json};

use crate::measure::Source;
use crate::plant::spreads::bore_spread;
use crate::plant::{Setting, SettingSure, Sheet, Sure};
use crate::report::page::{heading, paragraph};
use crate::report::units::Shop;

/// A fire with its plus-minus; a star where a plain plus-minus says too little.
#[must_use]
pub fn fire_cell(shop: &Shop, setting: &Setting, sure: Option<&SettingSure>) -> String {
    let number = shop.heat_number(setting.heat_gross, setting.heat_net);
    let Some(sure) = sure else { return number };
    format!(
        "{number} ±{}{}",
        shop.heat_half_width(setting.heat_gross, setting.heat_net, sure.gas.relative()),
        star(&sure.gas)
    )
}

/// An air ratio with its plus-minus.
#[must_use]
pub fn ratio_cell(ratio: f64, sure: Option<&SettingSure>) -> String {
    let number = Shop::ratio(ratio);
    match sure.and_then(|sure| sure.air_ratio) {
        Some(sure) => format!("{number} ±{:.2}{}", sure.half_width, star(&sure)),
        None => number,
    }
}

fn star(sure: &Sure) -> &'static str {
    if sure.is_straight { "" } else { "*" }
}

/// What stands under the settings.
#[must_use]
pub fn footnote(sheet: &Sheet) -> String {
    let is_bent = |sure: &SettingSure| !sure.gas.is_straight || sure.air_ratio.is_some_and(|ratio| !ratio.is_straight);
    let note = "Air ratio 1 = just enough air. Read the gauge while gas flows.";
    let held = if sheet.sure.iter().any(Option::is_some) { " ± holds 95 times in 100" } else { return note.into() };
    let bent = "; * at least so much, since a limit or a bend lies within it";
    let bent = if sheet.sure.iter().flatten().any(is_bent) { bent } else { "" };
    format!("{note}{held}{bent}.")
}

/// What is least sure, and what to do about it.
pub fn least_sure(page: &mut String, sheet: &Sheet) {
    let all: Vec<(&Setting, &SettingSure)> =
        sheet.settings.iter().zip(&sheet.sure).filter_map(|(setting, sure)| Some((setting, sure.as_ref()?))).collect();
    if all.is_empty() {
        let Some(tip) = sheet.plant.drill.filter(|_| bore_spread(&sheet.plant).is_none()) else {
            return;
        };
        heading(page, "HOW SURE");
        let text = format!(
            "a plus-minus cannot be given: {tip} is a contact tip by its mark, and tips wear. Measure its bore with pins \
             and give it as bore, or weigh the cylinder (jetwright weigh)."
        );
        paragraph(page, "  Jet", &text);
        return;
    }
    heading(page, "LEAST SURE");
    if let Some(measured) = &sheet.plant.entries.jet.measured {
        let (percent, bore) = (100.0 * measured.uncertainty, measured.effective_bore.millimeters());
        let text = format!(
            "measured by {} ({} run{}): its coefficient is sure within {percent:.1} %, as a bore of {bore:.2} mm by the model.",
            measured.how,
            measured.runs,
            if measured.runs == 1 { "" } else { "s" },
        );
        paragraph(page, "  Jet", &text);
    }
    paragraph(page, "  Fire", &ranked(all.iter().map(|(setting, sure)| (*setting, sure.gas))));
    let ratios: Vec<_> = all.iter().filter_map(|(setting, sure)| Some((*setting, sure.air_ratio?))).collect();
    if !ratios.is_empty() {
        paragraph(page, "  Air", &ranked(ratios.into_iter()));
    }
}

/// The settings by their least sure input, with its largest share and its remedy.
fn ranked<'s>(numbers: impl Iterator<Item = (&'s Setting, Sure)>) -> String {
    let mut by_source: BTreeMap<usize, (Vec<&str>, f64)> = BTreeMap::new();
    for (setting, sure) in numbers {
        let source = sure.least_sure();
        let entry = by_source.entry(source as usize).or_default();
        entry.0.push(&setting.entry.name);
        entry.1 = entry.1.max(sure.shares[source as usize]);
    }
    let said: Vec<String> = by_source
        .into_iter()
        .map(|(source, (names, share))| {
            let source = Source::ALL[source];
            let (names, words, remedy) = (names.join(", "), source.words(), source.remedy());
            format!("{names}: {words} ({} of what is unsure); {remedy}", Shop::share(share))
        })
        .collect();
    said.join(". ") + "."
}

/// The keys of a setting.
#[must_use]
pub fn setting_keys(setting: &Setting, sure: Option<&SettingSure>) -> Value {
    let relative = sure.map(|sure| sure.gas.relative());
    let ratio = sure.and_then(|sure| sure.air_ratio);
    json!({
        "mass_flow_half_width_kg_per_s": relative.map(|relative| relative * setting.gas.kilograms_per_second()),
        "heat_gross_half_width_w": relative.map(|relative| relative * setting.heat_gross.watts()),
        "heat_net_half_width_w": relative.map(|relative| relative * setting.heat_net.watts()),
        "discharge_coefficient_half_width": sure.map(|sure| sure.coefficient.half_width),
        "fire_least_sure": sure.map(|sure| sure.gas.least_sure().key()),
        "fire_straight": sure.map(|sure| sure.gas.is_straight),
        "air_ratio_half_width": ratio.map(|ratio| ratio.half_width),
        "air_ratio_least_sure": ratio.map(|ratio| ratio.least_sure().key()),
        "air_ratio_straight": ratio.map(|ratio| ratio.is_straight),
    })
}

/// The budgets: a row a setting and a number.
#[must_use]
pub fn budget_rows(sheet: &Sheet) -> Value {
    let mut rows = vec![];
    for (setting, sure) in sheet.settings.iter().zip(&sheet.sure) {
        let Some(sure) = sure else { continue };
        for (number, sure) in [("fire", Some(sure.gas)), ("air ratio", sure.air_ratio)] {
            let Some(sure) = sure else { continue };
            let mut row = Map::new();
            row.insert("budget_setting".into(), json!(setting.entry.name.as_str()));
            row.insert("budget_of".into(), json!(number));
            row.insert("half_width_share".into(), json!(sure.relative()));
            for source in Source::ALL {
                row.insert(format!("{}_share", source.key()), json!(sure.shares[source as usize]));
            }
            rows.push(Value::Object(row));
        }
    }
    Value::Array(rows)
}
