//! The section of a burner file about how well its inputs are known: half widths at k = 2, all optional.

use std::prelude::rust_2024::*;

use crate::file::burner_file::{BurnerFile, optional, ranged};
use crate::file::document::Section;
use crate::file::error::FileError;
use crate::gas::Species;
use crate::limits::Input;
use crate::measure::{Dial, DialClass, Sizing, Spreads, starting_bore};
use crate::orifice::DrillList;
use crate::plant::description::{BlowerCurve, JetSize, SitePressure};
use crate::plant::installation::Assembled;
use crate::quantity::{GaugePressure, Length, PressureDifference, TemperatureDifference};

/// Air pressure by a barometer on the spot, and by a forecast (common practice, no source).
const BAROMETER: f64 = 200.0;
const FORECAST: f64 = 400.0;
/// Flow of a gas whose supplier names no limits, as a share.
const ANY_GAS: f64 = 0.015;
/// Share of propane from which a gas is sold by the limits of its grade.
const GRADED: f64 = 0.9;
/// Pressure of a blower known by its two ends only, as a share.
const ENDS_ONLY: f64 = 0.25;

/// How well the inputs are known, as far as the file says.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct UncertaintyEntry {
    /// Of the bore.
    pub bore: Option<Length>,
    /// Rounding or burr of the mouth.
    pub edge_rounding: Option<Length>,
    /// Of the coefficient by the model, as a share.
    pub coefficient: Option<f64>,
    /// Full scale of the gauge.
    pub gauge_span: Option<GaugePressure>,
    /// Its class.
    pub gauge_class: Option<DialClass>,
    /// Its error, instead of the class.
    pub gauge_error: Option<GaugePressure>,
    /// Whether the gauge is not the one that was read at a weighing.
    pub is_other_gauge: bool,
    /// Of the gas before the jet.
    pub gas_temperature: Option<TemperatureDifference>,
    /// Of the flow for the composition, as a share.
    pub composition: Option<f64>,
    /// Of the air around.
    pub air_pressure: Option<PressureDifference>,
    /// Of that air.
    pub air_temperature: Option<TemperatureDifference>,
    /// Of the damper's mark.
    pub damper: Option<f64>,
    /// Of the blower's pressure.
    pub blower: Option<f64>,
    /// Of the head's open area.
    pub head: Option<f64>,
    /// Of the mixture in the ports.
    pub mixture_temperature: Option<TemperatureDifference>,
    /// Of what each layer of the wall conducts, as a share.
    pub walls: Option<f64>,
}

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

/// Half width of the bore as the file knows it; none for a contact tip by its mark.
#[must_use]
pub fn bore_spread(file: &BurnerFile, rig: &Assembled) -> Option<Length> {
    let sizing = match (&file.jet.size, rig.drill) {
        (JetSize::Bore(_), _) => Sizing::Measured,
        (JetSize::Drill(_), Some(drill)) if drill.list() == DrillList::Tips => Sizing::MarkedTip,
        (JetSize::Drill(_), _) => Sizing::Drilled,
    };
    file.uncertainty.bore.or_else(|| starting_bore(rig.jet.bore.diameter(), sizing))
}

/// The gauge: what the file says, else what a shop would have for its highest reading.
#[must_use]
pub fn dial(file: &BurnerFile, highest: GaugePressure) -> Dial {
    let given = &file.uncertainty;
    match (given.gauge_error, given.gauge_span) {
        (Some(error), _) => Dial::Error(error),
        (None, Some(span)) => Dial::Class { span, class: given.gauge_class.unwrap_or(DialClass::USUAL) },
        (None, None) => Dial::usual(highest),
    }
}

/// What is known of every input: what the file says, else starting values. `bore` is that of the bore, `highest` the
/// largest reading of the gauge.
#[must_use]
pub fn spreads(file: &BurnerFile, rig: &Assembled, bore: Length, highest: GaugePressure) -> Spreads {
    let given = &file.uncertainty;
    let start = Spreads::starting(rig.jet.bore.diameter(), bore, dial(file, highest));
    let weather = match file.site.pressure {
        SitePressure::Altitude(_) => start.air_pressure,
        SitePressure::Station(_) => PressureDifference::from_pascals(BAROMETER),
        SitePressure::Forecast { .. } => PressureDifference::from_pascals(FORECAST),
    };
    let is_graded = rig.gas.mixture().fraction(Species::Propane) >= GRADED;
    let ends_only = file.blower.as_ref().is_some_and(|blower| matches!(blower.curve, BlowerCurve::Ends { .. }));
    Spreads {
        edge_rounding: given.edge_rounding.unwrap_or(start.edge_rounding),
        hole: given.coefficient,
        gas_temperature: given.gas_temperature.unwrap_or(start.gas_temperature),
        composition: given.composition.unwrap_or(if is_graded { start.composition } else { ANY_GAS }),
        air_pressure: given.air_pressure.unwrap_or(weather),
        air_temperature: given.air_temperature.unwrap_or(start.air_temperature),
        damper: given.damper.unwrap_or(start.damper),
        blower: given.blower.unwrap_or(if ends_only { ENDS_ONLY } else { start.blower }),
        head: given.head.unwrap_or(start.head),
        mixture_temperature: given.mixture_temperature.unwrap_or(start.mixture_temperature),
        ..start
    }
}
