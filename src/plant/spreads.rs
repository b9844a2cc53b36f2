//! How well the inputs of an installation are known: what is said of them, else starting values.

use crate::air::{Damper, GAP_SPREAD};
use crate::gas::Species;
use crate::measure::{Dial, DialClass, Sizing, Spreads, starting_bore};
use crate::orifice::DrillList;
use crate::plant::entries::{BlowerCurve, Entries, JetSize, SitePressure, UNKNOWN_DAMPER_SPREAD};
use crate::plant::installation::Plant;
use crate::plant::setting::Setting;
use crate::quantity::{GaugePressure, Length, PressureDifference};

/// Air pressure by a barometer on the spot, and by a forecast (common practice, no source).
const BAROMETER: f64 = 200.0;
const FORECAST: f64 = 400.0;
/// Flow of a gas whose supplier names no limits, as a share.
const ANY_GAS: f64 = 0.015;
/// Share of propane from which a gas is sold by the limits of its grade.
const GRADED: f64 = 0.9;
/// Loss of a damper by the setting it was corrected from: an air ratio known to a tenth is a loss known to a fifth.
const SEEN: f64 = 0.2;
/// Pressure of a blower known by its two ends only, as a share.
const ENDS_ONLY: f64 = 0.25;

/// A reading that is less than so many times what the gauge may err by says nothing of the fire (engineering judgement).
const READ: f64 = 2.0;

/// Expanded uncertainty of the bore as the file knows it; none for a contact tip by its mark.
#[must_use]
pub fn bore_spread(plant: &Plant) -> Option<Length> {
    let sizing = match (&plant.entries.jet.size, plant.drill) {
        (JetSize::Bore(_), _) => Sizing::Measured,
        (JetSize::Drill(_), Some(drill)) if drill.list() == DrillList::Tips => Sizing::MarkedTip,
        (JetSize::Drill(_), _) => Sizing::Drilled,
    };
    plant.entries.uncertainty.bore.or_else(|| starting_bore(plant.jet.bore.diameter(), sizing))
}

/// The gauge: what the file says, else what a shop would have for its highest reading.
#[must_use]
pub fn dial(entries: &Entries, highest: GaugePressure) -> Dial {
    let given = &entries.uncertainty;
    match (given.gauge_error, given.gauge_span) {
        (Some(error), _) => Dial::Error(error),
        (None, Some(span)) => Dial::Class { span, class: given.gauge_class.unwrap_or(DialClass::USUAL) },
        (None, None) => Dial::usual(highest),
    }
}

/// What is known of every input: what the file says, else starting values. `bore` is that of the bore, `highest` the
/// largest reading of the gauge.
#[must_use]
pub fn spreads(plant: &Plant, bore: Length, highest: GaugePressure) -> Spreads {
    let entries = &plant.entries;
    let given = &entries.uncertainty;
    let start = Spreads::starting(plant.jet.bore.diameter(), bore, dial(entries, highest));
    let weather = match entries.site.pressure {
        SitePressure::Altitude(_) => start.air_pressure,
        SitePressure::Station(_) => PressureDifference::from_pascals(BAROMETER),
        SitePressure::Forecast { .. } => PressureDifference::from_pascals(FORECAST),
    };
    let is_graded = plant.gas.mixture().fraction(Species::Propane) >= GRADED;
    let nameplate = entries.blower.as_ref().and_then(|blower| blower.nameplate_spread);
    let ends_only = entries.blower.as_ref().is_some_and(|blower| matches!(blower.curve, BlowerCurve::Ends { .. }));
    Spreads {
        edge_rounding: given.edge_rounding.unwrap_or(start.edge_rounding),
        hole: given.coefficient,
        gas_temperature: given.gas_temperature.unwrap_or(start.gas_temperature),
        composition: given.composition.unwrap_or(if is_graded { start.composition } else { ANY_GAS }),
        air_pressure: given.air_pressure.unwrap_or(weather),
        air_temperature: given.air_temperature.unwrap_or(start.air_temperature),
        damper: given.damper.unwrap_or(start.damper),
        blower: given.blower.or(nameplate).unwrap_or(if ends_only { ENDS_ONLY } else { start.blower }),
        head: given.head.unwrap_or(start.head),
        mixture_temperature: given.mixture_temperature.unwrap_or(start.mixture_temperature),
        disc_gap: entries.damper.and_then(|damper| damper.gap).map_or(start.disc_gap, |_| GAP_SPREAD.1),
        // A correction other than 1 was taken from a setting seen, its oxygen known to a tenth of the air ratio or so.
        damper_loss: entries
            .damper
            .filter(|damper| !damper.kind_is_known || (damper.correction - 1.0).abs() > 1e-9)
            .map(|damper| if damper.kind_is_known { Damper::calibrated_spread(SEEN) } else { UNKNOWN_DAMPER_SPREAD }),
        ..start
    }
}

/// The lowest reading that a fire can be set by.
pub(crate) fn least_read(entries: &Entries, settings: &[Setting]) -> GaugePressure {
    let highest = settings.iter().map(|setting| setting.gauge.pascals()).fold(0.0, f64::max);
    dial(entries, GaugePressure::from_pascals(highest)).expanded(GaugePressure::from_pascals(0.0)) * READ
}
