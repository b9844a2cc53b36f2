//! How sure the sheet's numbers are: computed, said and keyed.

use std::collections::BTreeMap;
use std::prelude::rust_2024::*;
use std::{format, vec};

use serde_json::{Map, Value, json};

use crate::burner::Conditions;
use crate::file::burner_file::BurnerFile;
use crate::measure::{Answers, Budget, Source, Spreads, UncertainBurner, UncertainJet};
use crate::plant::evaluation::{Setting, Sheet, conditions_of};
use crate::plant::installation::Assembled;
use crate::plant::spreads::{bore_spread, spreads};
use crate::quantity::GaugePressure;
use crate::report::page::{heading, paragraph};
use crate::report::units::Shop;

/// How sure one number is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sure {
    /// The number, SI.
    pub value: f64,
    /// Half width at k = 2, SI.
    pub half_width: f64,
    /// Whether the first order tells it.
    pub is_straight: bool,
    /// Share of each source, in the order of [`Source`].
    pub shares: [f64; Source::COUNT],
}

impl Sure {
    fn of<const N: usize>(budget: &Budget<f64, N>) -> Self {
        Self {
            value: budget.value,
            half_width: budget.half_width(),
            is_straight: budget.is_straight(),
            shares: core::array::from_fn(|input| budget.share(input)),
        }
    }

    /// The half width as a share of the number.
    #[must_use]
    pub fn relative(&self) -> f64 {
        self.half_width / self.value
    }

    /// The source with the largest share.
    #[must_use]
    pub fn least_sure(&self) -> Source {
        let most =
            (0..Source::COUNT).fold(0, |most, next| if self.shares[next] > self.shares[most] { next } else { most });
        Source::ALL[most]
    }
}

/// How sure the numbers of a setting are.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SettingSure {
    /// Gas in kg/s; fire and money have the same shares.
    pub gas: Sure,
    /// Discharge coefficient.
    pub coefficient: Sure,
    /// Air ratio; none without the air side.
    pub air_ratio: Option<Sure>,
}

impl SettingSure {
    fn of<const N: usize>(answers: &Answers<f64, N>) -> Self {
        Self {
            gas: Sure::of(&answers.gas),
            coefficient: Sure::of(&answers.coefficient),
            air_ratio: answers.air_ratio.as_ref().map(Sure::of),
        }
    }
}

/// How sure each setting is, in their order; none where no gas flows, or where nothing is known of the bore.
#[must_use]
pub fn sure_settings(file: &BurnerFile, rig: &Assembled, settings: &[Setting]) -> Vec<Option<SettingSure>> {
    let highest =
        settings.iter().fold(GaugePressure::default(), |most, next| if next.gauge > most { next.gauge } else { most });
    let is_measured = file.entries.jet.measured.is_some() || file.entries.jet.measured_coefficient.is_some();
    // What is said of a bore that has been weighed no longer matters.
    let bore = bore_spread(&file.entries, rig).or(is_measured.then(Default::default));
    let Some(bore) = bore else { return vec![None; settings.len()] };
    let spreads = spreads(&file.entries, rig, bore, highest);
    settings.iter().map(|setting| sure(file, rig, setting, &spreads).filter(|sure| sure.gas.value > 0.0)).collect()
}

fn sure(file: &BurnerFile, rig: &Assembled, setting: &Setting, spreads: &Spreads) -> Option<SettingSure> {
    let tie = file.entries.jet.measured.as_ref().map(|measured| measured.tie(!file.entries.uncertainty.is_other_gauge));
    let shape = &file.entries.jet.shape;
    // What the line takes and how cold the gas comes are those of the setting; a gauge that errs moves both alike.
    let conditions = Conditions { gas_temperature: setting.gas_temperature, ..conditions_of(rig, &setting.entry) };
    if let (Some(burner), Some(air)) = (&rig.burner, &setting.air) {
        let at = (setting.at_jet, air.opening.unwrap_or(1.0));
        let burner = UncertainBurner::new(burner, shape, &conditions, at, tie, spreads).ok()?;
        return burner.answers().ok().map(|answers| SettingSure::of(&answers));
    }
    let open_air = rig.supply(&conditions, setting.at_jet, GaugePressure::from_pascals(0.0));
    let jet = UncertainJet::new(&rig.jet, shape, &rig.gas, &open_air, tie, spreads).ok()?;
    jet.answers().ok().map(|answers| SettingSure::of(&answers))
}

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
        let Some(tip) = sheet.rig.drill.filter(|_| bore_spread(&sheet.file.entries, &sheet.rig).is_none()) else {
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
    if let Some(measured) = &sheet.file.entries.jet.measured {
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
