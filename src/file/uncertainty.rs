//! The section of a burner file about how well its inputs are known: half widths at k = 2, all optional.

use std::prelude::rust_2024::*;

use crate::file::burner_file::{optional, ranged};
use crate::file::document::Section;
use crate::file::error::FileError;
use crate::limits::Input;
use crate::measure::DialClass;
use crate::plant::entries::UncertaintyEntry;

const SAME_OR_OTHER: &[(&str, bool)] = &[("same", false), ("other", true)];

/// Reads the section.
///
/// # Errors
///
/// [`FileError`] at the first field that is wrong.
pub fn read_uncertainty(section: Section<'_>) -> Result<UncertaintyEntry, FileError> {
    let share = |key: &'static str| optional(&section, key, |field| field.share(Input::UncertaintyShare));
    let kelvin = |key: &'static str| ranged(&section, key, Input::TemperatureUncertainty);
    let entry = UncertaintyEntry {
        bore: ranged(&section, "bore", Input::LengthUncertainty)?,
        edge_rounding: ranged(&section, "edge_rounding", Input::LengthUncertainty)?,
        coefficient: share("coefficient")?,
        gauge_span: ranged(&section, "gauge_span", Input::GaugeSpan)?,
        gauge_class: optional(&section, "gauge_class", |field| field.choice(&DialClass::NAMED))?,
        gauge_error: ranged(&section, "gauge_error", Input::PressureUncertainty)?,
        is_other_gauge: optional(&section, "gauge_at_weighing", |field| field.choice(SAME_OR_OTHER))?.unwrap_or(false),
        gas_temperature: kelvin("gas_temperature")?,
        composition: share("composition")?,
        air_pressure: ranged(&section, "air_pressure", Input::PressureUncertainty)?,
        air_temperature: kelvin("air_temperature")?,
        damper: share("damper")?,
        blower: share("blower")?,
        head: share("head")?,
        mixture_temperature: kelvin("mixture_temperature")?,
        walls: share("walls")?,
    };
    if entry.gauge_error.is_some() && (entry.gauge_span.is_some() || entry.gauge_class.is_some()) {
        return Err(section.refuse("gauge_error", "accepted is an error, or a span and a class"));
    }
    if entry.gauge_class.is_some() && entry.gauge_span.is_none() {
        return Err(section.refuse("gauge_span", "a class needs the span of the gauge beside it"));
    }
    section.finish()?;
    Ok(entry)
}
