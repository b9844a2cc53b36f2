//! What is most uncertain, and what each uncertainty is made of.

use std::collections::BTreeMap;
use std::prelude::rust_2024::*;
use std::{format, vec};

use crate::measure::Source;
use crate::plant::spreads::bore_spread;
use crate::plant::{Setting, Sheet};
use crate::plant::{SettingSure, Sure};
use crate::report::field::columns;
use crate::report::tree::{Member, Node, Page, Row, Section};
use crate::report::units::Shop;

/// The uncertainty of a number of a setting.
pub(crate) struct BudgetRow<'s> {
    setting: &'s Setting,
    of: &'static str,
    sure: Sure,
}

impl BudgetRow<'_> {
    /// Share of the variance by the source of a key.
    fn share(&self, key: &str) -> Option<f64> {
        let source = Source::ALL.iter().find(|source| source.key() == key)?;
        Some(self.sure.shares[*source as usize])
    }
}

/// A row a setting and a number.
pub(crate) fn budgets(sheet: &Sheet) -> Node {
    let mut rows = vec![];
    for (setting, sure) in sheet.settings.iter().zip(&sheet.sure) {
        let Some(sure) = sure else { continue };
        for (of, sure) in [("fire", Some(sure.gas)), ("air ratio", sure.air_ratio)] {
            rows.extend(sure.map(|sure| Row::of([budget(&BudgetRow { setting, of, sure })])));
        }
    }
    Node::rows(&BUDGETS, rows)
}

/// What stands under the settings.
pub(crate) fn footnote(sheet: &Sheet) -> String {
    let is_bent = |sure: &SettingSure| !sure.gas.is_straight || sure.air_ratio.is_some_and(|ratio| !ratio.is_straight);
    let note = "Air ratio 1 = just enough air. Read the gauge while gas flows.";
    let held = if sheet.sure.iter().any(Option::is_some) { " ± holds 95 times in 100" } else { return note.into() };
    let bent = "; * at least so much, since a limit or a bend lies within it";
    let bent = if sheet.sure.iter().flatten().any(is_bent) { bent } else { "" };
    format!("{note}{held}{bent}.")
}

/// What is most uncertain, and what to do about it.
pub(crate) fn largest_uncertainty(page: &mut Page, sheet: &Sheet) {
    let all: Vec<(&Setting, &SettingSure)> =
        sheet.settings.iter().zip(&sheet.sure).filter_map(|(setting, sure)| Some((setting, sure.as_ref()?))).collect();
    if all.is_empty() {
        let Some(tip) = sheet.plant.drill.filter(|_| bore_spread(&sheet.plant).is_none()) else {
            return;
        };
        page.heading("UNCERTAINTY");
        let text = format!(
            "a ± cannot be given: {tip} is a contact tip by its mark, and tips wear. Measure its bore with pins \
             and give it as bore, or weigh the cylinder (jetwright weigh)."
        );
        page.said("Jet", &text);
        return;
    }
    page.heading("LARGEST UNCERTAINTY");
    if let Some(measured) = &sheet.plant.entries.jet.measured {
        let (percent, bore) = (100.0 * measured.uncertainty, measured.effective_bore.millimeters());
        let text = format!(
            "measured by {} ({} run{}): its coefficient is ±{percent:.1} %, as a bore of {bore:.2} mm by the model.",
            measured.how,
            measured.runs,
            if measured.runs == 1 { "" } else { "s" },
        );
        page.said("Jet", &text);
    }
    page.said("Fire", ranked(all.iter().map(|(setting, sure)| (*setting, sure.gas))));
    let ratios: Vec<_> = all.iter().filter_map(|(setting, sure)| Some((*setting, sure.air_ratio?))).collect();
    if !ratios.is_empty() {
        page.said("Air", ranked(ratios.into_iter()));
    }
}

/// The settings by their most uncertain input, with its largest share and its remedy.
fn ranked<'s>(numbers: impl Iterator<Item = (&'s Setting, Sure)>) -> String {
    let mut by_source: BTreeMap<usize, (Vec<&str>, f64)> = BTreeMap::new();
    for (setting, sure) in numbers {
        let source = sure.largest_uncertainty();
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

/// Sheet: budgets, for programs.
pub(crate) const BUDGETS: Section = Section {
    key: "budgets",
    name: "sheet: budgets",
    words: "What each uncertainty is made of, an array of objects",
    about: "A row a setting and a number: what its uncertainty is made of. Empty where no ± can be given.",
    is_many: true,
    members: &[Member::Columns(BUDGET)],
};

columns! {
    /// What an uncertainty is made of.
    pub(crate) BUDGET, budget(row: &BudgetRow<'_>);
    /// Name of the setting.
    budget_setting, "budget setting", Word, Programs => &row.setting.entry.name;
    /// The number: `fire` or `air ratio`.
    budget_of, "budget of", Word, Programs => row.of;
    /// Expanded uncertainty of its 95 % band (k = 2), as a share of the number.
    uncertainty_share, "expanded uncertainty share", Number, Programs => row.sure.relative();
    /// Share of its variance by the diameter of the bore.
    bore_share, "bore share", Number, Programs => row.share("bore");
    /// Share of its variance by the mouth of the bore.
    edge_share, "edge share", Number, Programs => row.share("edge");
    /// Share of its variance by the model of the hole.
    hole_share, "hole share", Number, Programs => row.share("hole");
    /// Share of its variance by how the coefficient follows the pressure away from that of a weighing.
    pressure_dependence_share, "pressure dependence share", Number, Programs => row.share("pressure_dependence");
    /// Share of its variance by the weighing or the meter.
    weighing_share, "weighing share", Number, Programs => row.share("weighing");
    /// Share of its variance by the gauge.
    gauge_share, "gauge share", Number, Programs => row.share("gauge");
    /// Share of its variance by the temperature of the gas.
    gas_temperature_share, "gas temperature share", Number, Programs => row.share("gas_temperature");
    /// Share of its variance by the composition of the gas.
    composition_share, "composition share", Number, Programs => row.share("composition");
    /// Share of its variance by the air pressure.
    air_pressure_share, "air pressure share", Number, Programs => row.share("air_pressure");
    /// Share of its variance by the air temperature.
    air_temperature_share, "air temperature share", Number, Programs => row.share("air_temperature");
    /// Share of its variance by the mark of the damper.
    damper_share, "damper share", Number, Programs => row.share("damper");
    /// Share of its variance by what a damper of its kind loses at that mark.
    damper_loss_share, "damper loss share", Number, Programs => row.share("damper_loss");
    /// Share of its variance by the blower's curve.
    blower_share, "blower share", Number, Programs => row.share("blower");
    /// Share of its variance by the openings of the head.
    head_share, "head share", Number, Programs => row.share("head");
    /// Share of its variance by the temperature of the mixture.
    mixture_temperature_share, "mixture temperature share", Number, Programs => row.share("mixture_temperature");
}

#[cfg(test)]
mod tests {
    use super::BUDGET;
    use crate::measure::Source;
    use std::format;

    #[test]
    fn every_source_has_its_column_in_order() {
        let keys = BUDGET[3..].iter().map(|column| column.key);
        assert!(keys.eq(Source::ALL.iter().map(|source| format!("{}_share", source.key()))));
    }
}
