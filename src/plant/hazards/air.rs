//! Hazards of the air that a fire is given.

use super::list::{Hazard, Hazards};
use super::table::HazardKind;
use crate::Scalar;
use crate::air::{DISC_KNOWN_FROM, DamperKind};
use crate::burner::Running;
use crate::plant::carbon_monoxide::{CARBON_MONOXIDE, poisons};
use crate::plant::entries::DamperEntry;
use crate::plant::refusal::Place;
use crate::quantity::GaugePressure;

/// Above this share of the gauge, the air stream's own pressure makes the gauge misleading.
const MUCH_BACK_PRESSURE: f64 = 0.1;
/// Below this opening a small turn of a damper changes much.
const NEARLY_SHUT: f64 = 0.2;

/// The air side of a state.
pub struct Supplied {
    /// The air ratio asked; none when the damper was set instead.
    pub asked: Option<f64>,
    /// Where the damper stands; none without one.
    pub opening: Option<f64>,
    /// The damper; none without one.
    pub damper: Option<DamperEntry>,
    /// The burner at work; none when the mixture would blow back into the blower.
    pub running: Option<Running>,
    /// Whether the blower cannot give the air asked.
    pub short: bool,
    /// Whether the damper at its narrowest, or the lack of one, leaves more air than asked.
    pub too_much: bool,
    /// Whether gas flows.
    pub gas_flows: bool,
    /// The gauge reading.
    pub gauge: GaugePressure,
    /// The leanest air ratio that burns cold; none for a gas without limits of burning.
    pub leanest: Option<f64>,
    /// Carbon monoxide of the dry products; none where no flame is calculated.
    pub carbon_monoxide: Option<f64>,
}

/// Leaner than a cold mixture burns, or so rich that it makes carbon monoxide.
#[must_use]
pub fn of_air_ratio<S: Scalar>(
    air_ratio: S,
    leanest: Option<S>,
    carbon_monoxide: Option<S>,
    place: Place,
) -> Option<Hazard<S>> {
    if let Some(leanest) = leanest.filter(|leanest| air_ratio > *leanest) {
        return Some(Hazard::new(HazardKind::TooLean, place).with(air_ratio, leanest));
    }
    poisons(air_ratio, carbon_monoxide)
        .then(|| Hazard::new(HazardKind::CarbonMonoxide, place).with(carbon_monoxide, S::c(CARBON_MONOXIDE)))
}

/// What blower, damper and mixture of a state warn of.
pub fn of_air(air: &Supplied, place: Place, found: &mut Hazards) {
    let here = |kind| Hazard::new(kind, place);
    let air_ratio = air.running.and_then(|running| running.air_ratio);
    if air.short {
        found.push(here(HazardKind::BlowerTooSmall).with(air_ratio, air.asked));
    }
    let Some(running) = air.running else {
        found.push(here(HazardKind::BlowsBack));
        return;
    };
    if running.left_of_peak {
        found.push(here(HazardKind::LeftOfPeak));
    }
    if let Some(air_ratio) = air_ratio {
        found.extend(of_air_ratio(air_ratio, air.leanest, air.carbon_monoxide, place));
        if air.too_much {
            found.push(here(HazardKind::DamperTooWide).with(air_ratio, air.asked));
        }
    }
    if let Some(opening) = air.opening.filter(|opening| *opening < NEARLY_SHUT && !air.too_much) {
        found.push(here(HazardKind::DamperNearlyShut).with(opening, NEARLY_SHUT));
    }
    if let (Some(damper), Some(opening)) = (air.damper, air.opening) {
        if damper.kind_is_known && damper.kind.is_valve() {
            found.push(here(HazardKind::ThrottlingValve));
        }
        if damper.kind == DamperKind::Butterfly && damper.gap.is_none() && opening < DISC_KNOWN_FROM {
            found.push(here(HazardKind::DiscGapUnknown).with(opening, DISC_KNOWN_FROM));
        }
    }
    let share = running.back_pressure.pascals() / air.gauge.pascals();
    if air.gas_flows && share > MUCH_BACK_PRESSURE {
        found.push(here(HazardKind::BackPressure).with(share, MUCH_BACK_PRESSURE));
    }
}
