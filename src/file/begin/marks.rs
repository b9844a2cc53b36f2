//! Marks to make and things to have, of a burner's sheet.

use std::format;
use std::prelude::rust_2024::*;
use std::vec::Vec;

use crate::air::DamperKind;
use crate::measure::Dial;
use crate::plant::Sheet;
use crate::quantity::{GaugePressure, Temperature};

/// Hottest a type of thermocouple is used at for long, Celsius, stout wire (ASTM E230, IEC 60584, from memory).
const THERMOCOUPLES: [(f64, &str); 4] =
    [(1100.0, "K"), (1200.0, "N"), (1450.0, "S or R, in a ceramic sheath"), (1700.0, "B, in a ceramic sheath")];

/// A line a mark and a thing.
#[must_use]
pub fn marks(sheet: &Sheet) -> Vec<String> {
    let mut lines = Vec::new();
    let entries = &sheet.plant.entries;
    if let Some(damper) = entries.damper.filter(|damper| damper.kind_is_known) {
        let mark = |opening: f64| match damper.kind {
            DamperKind::BlastGate => Some(format!("{:.1} mm open", 1e3 * opening * damper.diameter.meters())),
            DamperKind::Butterfly | DamperKind::BallValve => Some(format!("{:.0} degrees from shut", 90.0 * opening)),
            DamperKind::GateValve => None,
        };
        let marked = sheet.settings.iter().filter_map(|setting| {
            let opening = setting.air.as_ref()?.opening?;
            Some(format!("{} {}", setting.entry.name, mark(opening)?))
        });
        let marked: Vec<String> = marked.collect();
        if !marked.is_empty() {
            lines.push(format!("Mark the damper: {}.", marked.join(", ")));
        }
    }
    let highest = sheet.settings.iter().map(|setting| setting.gauge.pascals()).fold(0.0, f64::max);
    if let Dial::Class { span, .. } = Dial::usual(GaugePressure::from_pascals(highest)) {
        let (bar, psi) = (span.pascals() * 1e-5, span.psi());
        lines.push(format!("A gas gauge to {bar:.1} bar ({psi:.0} psi), class 1.6 or better."));
    }
    let bore = sheet.plant.jet.bore.diameter().millimeters();
    lines.push(format!("Pin gauges from {:.2} mm to {:.2} mm, to gauge the jet.", 0.95 * bore, 1.05 * bore));
    if let Some(chamber) = &entries.chamber {
        let celsius = Temperature::celsius(chamber.temperature);
        if let Some((_, kind)) = THERMOCOUPLES.iter().find(|(hottest, _)| celsius <= *hottest) {
            let place = "its tip a few centimeters inside, out of the flame";
            lines.push(format!("A thermocouple of type {kind} for {celsius:.0} C, {place}."));
        }
    }
    lines
}
