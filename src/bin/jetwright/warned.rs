//! The warnings of an answer, in each format: below a text, a key of JSON, on standard error beside CSV.

use jetwright::plant::Sheet;
use jetwright::plant::hazards::{Hazard, Hazards};
use jetwright::plant::work::THE_WORK;
use jetwright::report::Shop;
use jetwright::report::warnings::{warnings_json, warnings_text};
use serde_json::Value;

/// What an answer warns of, and what its states are called.
pub struct Warned {
    hazards: Hazards,
    names: Vec<String>,
}

impl Warned {
    /// Of an answer of one state.
    pub fn of<'h>(hazards: impl IntoIterator<Item = &'h Hazard>) -> Self {
        Self { hazards: hazards.into_iter().copied().collect(), names: Vec::new() }
    }

    /// Of an answer whose states have these names, in their order.
    pub fn named(hazards: Hazards, names: Vec<String>) -> Self {
        Self { hazards, names }
    }

    /// Of a sheet.
    pub fn of_sheet(sheet: &Sheet) -> Self {
        let names = sheet.settings.iter().map(|setting| setting.entry.name.as_str().to_owned()).collect();
        Self { hazards: sheet.hazards.clone(), names }
    }

    fn name(&self, hazard: &Hazard) -> Option<&str> {
        if hazard.at_work() && !self.names.is_empty() {
            return Some(THE_WORK);
        }
        self.names.get(hazard.setting()?).map(String::as_str)
    }

    /// For an object of JSON.
    pub fn json(&self) -> Value {
        warnings_json(&self.hazards, |hazard| self.name(hazard))
    }

    /// For the end of a text.
    pub fn text(&self, shop: &Shop) -> String {
        let mut text = String::new();
        warnings_text(&mut text, &self.hazards, |hazard| self.name(hazard), shop, usize::MAX);
        text
    }

    /// Beside a table of CSV, which goes out alone on standard output.
    pub fn beside(&self, shop: &Shop) {
        let text = self.text(shop);
        if !text.is_empty() {
            anstream::eprintln!("{}", text.trim());
        }
    }
}
