//! The small file of a measured jet: written by `jetwright weigh` and `jetwright meter`, named in a burner file.

use std::path::Path;
use std::prelude::rust_2024::*;
use std::{format, string};

use crate::file::document::{self, Document};
use crate::file::error::{FileError, Places};
use crate::file::node::describe_part;
use crate::measure::Trend;
use crate::orifice::Supply;
use crate::plant::description::asked::MeasuredJet;
use crate::plant::entries::MeasuredEntry;
use crate::quantity::{Number, Share};

/// The file's text.
#[must_use]
pub fn measured_text(measured: &MeasuredEntry) -> String {
    let quoted = |text: &str| toml::Value::String(text.into()).to_string();
    let share = |share: f64| format!("\"{:.3} %\"", 100.0 * share);
    let mut text = format!(
        "# A measured jet, written by jetwright. Name this file in a burner file: [jet] measured = \"...\"\n\
         # Uncertainties are at k = 2; factors are gas passed over what the model says of the bore.\n\
         name = {}\nhow = {}\nruns = {}\nbore = \"{} mm\"\n",
        quoted(&measured.name),
        quoted(&measured.how),
        measured.runs,
        round(measured.bore.millimeters(), 1e6),
    );
    let supply = &measured.supply;
    let mut line = |key: &str, value: string::String| text.push_str(&format!("{key} = {value}\n"));
    line("gauge_at_jet", format!("\"{} kPa\"", round(supply.gauge.kilopascals(), 1e5)));
    line("back_pressure", format!("\"{} Pa\"", round(supply.back.pascals(), 1e3)));
    line("gas_temperature", format!("\"{} K\"", round(supply.temperature.kelvin(), 1e3)));
    line("ambient_pressure", format!("\"{} hPa\"", round(supply.ambient.hectopascals(), 1e4)));
    line("measured_factor", format!("{:.5}", measured.measured_factor));
    line("measured_uncertainty", share(measured.measured_uncertainty));
    line("measured_uncertainty_without_gauge", share(measured.measured_uncertainty_without_gauge));
    if let Some(trend) = measured.trend {
        line("trend", format!("{:.5}", trend.slope));
        line("trend_uncertainty", format!("{:.5}", 2.0 * trend.own));
        line("trend_uncertainty_by_gauge", format!("{:.5}", 2.0 * trend.gauge));
    }
    line("factor", format!("{:.5}", measured.factor));
    line("weight", format!("{:.4}", measured.weight));
    line("uncertainty", share(measured.uncertainty));
    line("uncertainty_without_gauge", share(measured.uncertainty_without_gauge));
    line("discharge_coefficient", format!("{:.4}", measured.discharge_coefficient));
    line("effective_bore", format!("\"{:.3} mm\"", measured.effective_bore.millimeters()));
    text
}

fn round(value: f64, scale: f64) -> f64 {
    (value * scale).round() / scale
}

/// Reads the file of a measured jet.
///
/// # Errors
///
/// [`FileError`] at the first thing that is wrong.
pub fn read_measured(path: &Path) -> Result<MeasuredEntry, FileError> {
    parse_measured(&document::load(path)?, &path.display().to_string())
}

/// Reads the text of such a file; `name` is what messages call it.
///
/// # Errors
///
/// [`FileError`] at the first thing that is wrong.
pub fn parse_measured(text: &str, name: &str) -> Result<MeasuredEntry, FileError> {
    let document = Document::parse(text, name)?;
    let (description, places) = describe_part(&document.root(), name, const { &MeasuredJet::SECTION })?;
    let said = description.asked.measured;
    let (trend, supply) = (trend(&said, &places)?, supply(&said));
    if supply.back > supply.gauge {
        return Err(places.refuse("back_pressure", "accepted is no more than the gauge at the jet"));
    }
    Ok(MeasuredEntry {
        name: said.name.unwrap_or_default(),
        how: said.how.unwrap_or_default(),
        runs: said.runs.unwrap_or_default(),
        bore: said.bore.unwrap_or_default(),
        supply,
        measured_factor: number(said.measured_factor),
        measured_uncertainty: share(said.measured_uncertainty),
        measured_uncertainty_without_gauge: share(said.measured_uncertainty_without_gauge),
        trend,
        factor: number(said.factor),
        weight: share(said.weight),
        uncertainty: share(said.uncertainty),
        uncertainty_without_gauge: share(said.uncertainty_without_gauge),
        discharge_coefficient: number(said.discharge_coefficient),
        effective_bore: said.effective_bore.unwrap_or_default(),
    })
}

// A number that the table needs has been refused where it is missing.
fn number(said: Option<Number>) -> f64 {
    said.map_or(0.0, |number| number.0)
}

fn share(said: Option<Share>) -> f64 {
    said.map_or(0.0, |share| share.0)
}

fn supply(said: &MeasuredJet) -> Supply {
    Supply {
        ambient: said.ambient_pressure.unwrap_or_default(),
        gauge: said.gauge_at_jet.unwrap_or_default(),
        back: said.back_pressure.unwrap_or_default(),
        temperature: said.gas_temperature.unwrap_or_default(),
    }
}

fn trend(said: &MeasuredJet, places: &Places) -> Result<Option<Trend>, FileError> {
    let Some(slope) = said.trend else { return Ok(None) };
    let (own, gauge) = (number(said.trend_uncertainty), number(said.trend_uncertainty_by_gauge));
    if own > 0.0 {
        return Ok(Some(Trend { slope: slope.0, own: 0.5 * own, gauge: 0.5 * gauge }));
    }
    Err(places.refuse("trend_uncertainty", "accepted is more than 0"))
}

#[cfg(test)]
mod tests {
    use std::prelude::rust_2024::*;

    use super::{MeasuredJet, measured_text, parse_measured};

    /// A jet of the invented bell foundry.
    const JET: &str = "name = 'bells'\nhow = 'weighing'\nruns = 3\nbore = '1.78 mm'\ngauge_at_jet = '34 kPa'\n\
        back_pressure = '300 Pa'\ngas_temperature = '288 K'\nambient_pressure = '835 hPa'\nmeasured_factor = 0.97\n\
        measured_uncertainty = '3 %'\nmeasured_uncertainty_without_gauge = '2 %'\ntrend = 0.02\n\
        trend_uncertainty = 0.03\ntrend_uncertainty_by_gauge = 0.02\nfactor = 0.98\nweight = 0.8\n\
        uncertainty = '3 %'\nuncertainty_without_gauge = '2 %'\ndischarge_coefficient = 0.82\neffective_bore = '1.76 mm'\n";

    #[test]
    fn what_is_written_has_every_key_of_the_table_and_reads_again() {
        let measured = parse_measured(JET, "jet").unwrap();
        let text = measured_text(&measured);
        let lines = text.lines().filter(|line| !line.starts_with('#'));
        let keys: Vec<_> = lines.filter_map(|line| line.split_once(" = ")).map(|(key, _)| key).collect();
        assert_eq!(keys, MeasuredJet::SECTION.keys().collect::<Vec<_>>());
        assert_eq!(parse_measured(&text, "jet").unwrap(), measured);
    }

    #[test]
    fn a_missing_half_a_trend_and_a_pressure_that_cannot_be_are_refused_by_name() {
        for (old, new, field) in [
            ("runs = 3\n", "", "runs"),
            ("trend_uncertainty = 0.03\n", "", "trend_uncertainty"),
            ("trend_uncertainty = 0.03", "trend_uncertainty = 0", "trend_uncertainty"),
            ("'300 Pa'", "'35 kPa'", "back_pressure"),
            ("weight", "wait", "wait"),
        ] {
            let text = JET.replacen(old, new, 1);
            assert_eq!(parse_measured(&text, "jet").unwrap_err().field, field, "{old}");
        }
    }
}
