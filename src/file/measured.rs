//! The small file of a measured jet: written by `jetwright weigh` and `jetwright meter`, named in a burner file.

use std::path::Path;
use std::prelude::rust_2024::*;
use std::{format, string};

use crate::file::burner_file::{optional, ranged};
use crate::file::document::{self, Document, Field, Section};
use crate::file::error::FileError;
use crate::limits::Input;
use crate::measure::{Compared, Joined, Measured, Tie, Trend};
use crate::orifice::{Coefficient, Supply};
use crate::quantity::{AbsolutePressure, GaugePressure, Length, Temperature};

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
/// How far the bore of a burner may be from the one that was measured, as a share.
const SAME_BORE: f64 = 0.005;
/// Longest name, in characters.
const NAME: usize = 60;
/// Longest path, in characters.
const PATH: usize = 400;

/// A measured jet. Uncertainties are half widths at k = 2, as shares.
#[derive(Clone, Debug, PartialEq)]
pub struct MeasuredEntry {
    /// The burner it was measured on.
    pub name: String,
    /// `weighing` or `meter`.
    pub how: String,
    /// How many runs.
    pub runs: u32,
    /// The bore that the factors belong to.
    pub bore: Length,
    /// Mean supply of the runs.
    pub supply: Supply,
    /// Gas passed over the model's, by the runs alone.
    pub measured_factor: f64,
    /// Of that.
    pub measured_uncertainty: f64,
    /// The same without the gauge.
    pub measured_uncertainty_without_gauge: f64,
    /// How the factor changes with the flow; standard uncertainties.
    pub trend: Option<Trend>,
    /// Joined with the model.
    pub factor: f64,
    /// Weight of the runs in it.
    pub weight: f64,
    /// Of the joined factor.
    pub uncertainty: f64,
    /// The same without the gauge.
    pub uncertainty_without_gauge: f64,
    /// The joined coefficient of the bore at the supply.
    pub discharge_coefficient: f64,
    /// The bore that passes by the model what the runs passed.
    pub effective_bore: Length,
}

impl MeasuredEntry {
    /// From runs and their joining with the model.
    #[must_use]
    pub fn new(name: &str, how: &str, runs: usize, bore: Length, measured: &Measured, joined: &Joined) -> Self {
        Self {
            name: name.into(),
            how: how.into(),
            runs: u32::try_from(runs).unwrap_or(u32::MAX),
            bore,
            supply: measured.supply,
            measured_factor: measured.factor,
            measured_uncertainty: 2.0 * measured.standard(),
            measured_uncertainty_without_gauge: 2.0 * measured.without_gauge(),
            trend: measured.trend,
            factor: joined.factor,
            weight: joined.weight,
            uncertainty: 2.0 * joined.standard,
            uncertainty_without_gauge: 2.0 * joined.without_gauge,
            discharge_coefficient: measured.coefficient / measured.factor * joined.factor,
            effective_bore: measured.effective_bore,
        }
    }

    /// The coefficient of a jet measured so.
    #[must_use]
    pub fn coefficient(&self) -> Coefficient {
        Coefficient::Corrected { factor: self.factor, uncertainty: self.uncertainty }
    }

    /// How results hang on it, read from the same gauge or another.
    #[must_use]
    pub fn tie(&self, is_same_gauge: bool) -> Tie {
        let (gauge_weight, half_width) =
            if is_same_gauge { (self.weight, self.uncertainty_without_gauge) } else { (0.0, self.uncertainty) };
        Tie { supply: self.supply, gauge_weight, half_width }
    }

    /// As two measurements are compared.
    #[must_use]
    pub fn compared(&self) -> Compared {
        let (all, without_gauge) = (self.measured_uncertainty, self.measured_uncertainty_without_gauge);
        let gauge = 0.5 * (all * all - without_gauge * without_gauge).max(0.0).sqrt();
        Compared { factor: self.measured_factor, standard: 0.5 * without_gauge, gauge, trend: self.trend }
    }

    /// The file's text.
    #[must_use]
    pub fn text(&self) -> String {
        let quoted = |text: &str| toml::Value::String(text.into()).to_string();
        let share = |share: f64| format!("\"{:.3} %\"", 100.0 * share);
        let mut text = format!(
            "# A measured jet, written by jetwright. Name this file in a burner file: [jet] measured = \"...\"\n\
             # Uncertainties are at k = 2; factors are gas passed over what the model says of the bore.\n\
             name = {}\nhow = {}\nruns = {}\nbore = \"{} mm\"\n",
            quoted(&self.name),
            quoted(&self.how),
            self.runs,
            round(self.bore.millimeters(), 1e6),
        );
        let supply = &self.supply;
        let mut line = |key: &str, value: string::String| text.push_str(&format!("{key} = {value}\n"));
        line("gauge_at_jet", format!("\"{} kPa\"", round(supply.gauge.kilopascals(), 1e5)));
        line("back_pressure", format!("\"{} Pa\"", round(supply.back.pascals(), 1e3)));
        line("gas_temperature", format!("\"{} K\"", round(supply.temperature.kelvin(), 1e3)));
        line("ambient_pressure", format!("\"{} hPa\"", round(supply.ambient.hectopascals(), 1e4)));
        line("measured_factor", format!("{:.5}", self.measured_factor));
        line("measured_uncertainty", share(self.measured_uncertainty));
        line("measured_uncertainty_without_gauge", share(self.measured_uncertainty_without_gauge));
        if let Some(trend) = self.trend {
            line("trend", format!("{:.5}", trend.slope));
            line("trend_uncertainty", format!("{:.5}", 2.0 * trend.own));
            line("trend_uncertainty_by_gauge", format!("{:.5}", 2.0 * trend.gauge));
        }
        line("factor", format!("{:.5}", self.factor));
        line("weight", format!("{:.4}", self.weight));
        line("uncertainty", share(self.uncertainty));
        line("uncertainty_without_gauge", share(self.uncertainty_without_gauge));
        line("discharge_coefficient", format!("{:.4}", self.discharge_coefficient));
        line("effective_bore", format!("\"{:.3} mm\"", self.effective_bore.millimeters()));
        text
    }

    /// Why it is not a measurement of a jet with this bore.
    #[must_use]
    pub fn refuses(&self, bore: Length) -> Option<String> {
        let off = (bore.meters() / self.bore.meters() - 1.0).abs();
        (off > SAME_BORE).then(|| {
            let (theirs, ours) = (self.bore.millimeters(), bore.millimeters());
            format!("it was measured with a bore of {theirs:.3} mm, this jet has {ours:.3} mm: weigh it again")
        })
    }
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

/// The measured jet that a burner file names, found from the folder of the burner file.
pub(crate) fn named(field: &Field<'_>, file: &Path) -> Result<MeasuredEntry, FileError> {
    let path = file.parent().unwrap_or(Path::new("")).join(field.text(PATH)?);
    read_measured(&path).map_err(|error| field.refuse(error))
}

/// Reads the text of such a file; `name` is what messages call it.
///
/// # Errors
///
/// [`FileError`] at the first thing that is wrong.
pub fn parse_measured(text: &str, name: &str) -> Result<MeasuredEntry, FileError> {
    let document = Document::parse(text, name)?;
    let root = document.root(MEASURED);
    let share = |key: &'static str| root.required(key).share(Input::UncertaintyShare);
    let number = |key: &'static str| root.required(key).number(Input::CoefficientFactor);
    let entry = MeasuredEntry {
        name: root.required("name").text(NAME)?.into(),
        how: root.required("how").text(NAME)?.into(),
        runs: root.required("runs").count(Input::RunCount)?,
        bore: root.required("bore").ranged(Input::Bore)?,
        supply: Supply {
            ambient: root.required("ambient_pressure").ranged::<AbsolutePressure>(Input::StationPressure)?,
            gauge: root.required("gauge_at_jet").ranged::<GaugePressure>(Input::GaugePressure)?,
            back: root.required("back_pressure").ranged::<GaugePressure>(Input::BackPressure)?,
            temperature: root.required("gas_temperature").ranged::<Temperature>(Input::GasTemperature)?,
        },
        measured_factor: number("measured_factor")?,
        measured_uncertainty: share("measured_uncertainty")?,
        measured_uncertainty_without_gauge: share("measured_uncertainty_without_gauge")?,
        trend: trend(&root)?,
        factor: number("factor")?,
        weight: root.required("weight").share(Input::Fraction)?,
        uncertainty: share("uncertainty")?,
        uncertainty_without_gauge: share("uncertainty_without_gauge")?,
        discharge_coefficient: number("discharge_coefficient")?,
        effective_bore: ranged(&root, "effective_bore", Input::Bore)?.unwrap_or_default(),
    };
    if entry.supply.back > entry.supply.gauge {
        return Err(root.refuse("back_pressure", "accepted is no more than the gauge at the jet"));
    }
    root.finish()?;
    Ok(entry)
}

fn trend(root: &Section<'_>) -> Result<Option<Trend>, FileError> {
    let number = |key: &'static str| optional(root, key, |field| field.number(Input::Trend));
    let (own, gauge) = (number("trend_uncertainty")?, number("trend_uncertainty_by_gauge")?);
    match (number("trend")?, own, gauge) {
        (None, None, None) => Ok(None),
        (Some(slope), Some(own), Some(gauge)) if own > 0.0 => {
            Ok(Some(Trend { slope, own: 0.5 * own, gauge: 0.5 * gauge }))
        }
        _ => {
            Err(root.refuse("trend_uncertainty", "a trend and both its uncertainties, this above nought, go together"))
        }
    }
}
