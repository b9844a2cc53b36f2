//! The small file of a measured jet: written by `jetwright weigh` and `jetwright meter`, named in a burner file.

use std::path::Path;
use std::prelude::rust_2024::*;
use std::{format, string};

use crate::file::document::{self, Document};
use crate::file::error::FileError;
use crate::file::node::{Flat, Node};
use crate::limits::Input;
use crate::measure::Trend;
use crate::orifice::Supply;
use crate::plant::entries::{MeasuredEntry, NAME_CHARACTERS as NAME};
use crate::quantity::{Number, Share};

/// Every key of the file.
pub const MEASURED: &[&str] = &[
    "name",
    "how",
    "runs",
    "bore",
    "gauge_at_jet",
    "back_pressure",
    "gas_temperature",
    "ambient_pressure",
    "measured_factor",
    "measured_uncertainty",
    "measured_uncertainty_without_gauge",
    "trend",
    "trend_uncertainty",
    "trend_uncertainty_by_gauge",
    "factor",
    "weight",
    "uncertainty",
    "uncertainty_without_gauge",
    "discharge_coefficient",
    "effective_bore",
];
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
    let root = Flat::new(&document.root(), name, MEASURED)?;
    let share = |key: &str, input| root.required::<Share>(key, input).map(|share| share.0);
    let number = |key: &str| root.required::<Number>(key, Input::CoefficientFactor).map(|number| number.0);
    let entry = MeasuredEntry {
        name: root.required("name", NAME)?,
        how: root.required("how", NAME)?,
        runs: root.required("runs", Input::RunCount)?,
        bore: root.required("bore", Input::Bore)?,
        supply: Supply {
            ambient: root.required("ambient_pressure", Input::StationPressure)?,
            gauge: root.required("gauge_at_jet", Input::GaugePressure)?,
            back: root.required("back_pressure", Input::BackPressure)?,
            temperature: root.required("gas_temperature", Input::GasTemperature)?,
        },
        measured_factor: number("measured_factor")?,
        measured_uncertainty: share("measured_uncertainty", Input::UncertaintyShare)?,
        measured_uncertainty_without_gauge: share("measured_uncertainty_without_gauge", Input::UncertaintyShare)?,
        trend: trend(&root)?,
        factor: number("factor")?,
        weight: share("weight", Input::Fraction)?,
        uncertainty: share("uncertainty", Input::UncertaintyShare)?,
        uncertainty_without_gauge: share("uncertainty_without_gauge", Input::UncertaintyShare)?,
        discharge_coefficient: number("discharge_coefficient")?,
        effective_bore: root.optional("effective_bore", Input::Bore)?.unwrap_or_default(),
    };
    if entry.supply.back > entry.supply.gauge {
        return Err(root.refuse("back_pressure", "accepted is no more than the gauge at the jet"));
    }
    Ok(entry)
}

fn trend(root: &Flat<'_, impl Node>) -> Result<Option<Trend>, FileError> {
    let number = |key: &str| root.optional::<Number>(key, Input::Trend).map(|number| number.map(|number| number.0));
    let (own, gauge) = (number("trend_uncertainty")?, number("trend_uncertainty_by_gauge")?);
    match (number("trend")?, own, gauge) {
        (None, None, None) => Ok(None),
        (Some(slope), Some(own), Some(gauge)) if own > 0.0 => {
            Ok(Some(Trend { slope, own: 0.5 * own, gauge: 0.5 * gauge }))
        }
        _ => Err(root.refuse("trend_uncertainty", "a trend and both its uncertainties, this above 0, go together")),
    }
}
