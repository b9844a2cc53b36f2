//! Hazards of the jet and of what flows through it.

use super::list::Hazard;
use super::table::HazardKind;
use crate::orifice::{Bore, Drill, DrillList};
use crate::plant::refusal::Place;
use crate::quantity::MassFlow;

/// Above this share of the tube the approach is no longer wide.
const NARROW_APPROACH: f64 = 0.35;
/// From this length over diameter a bore is no longer thin.
const NO_LONGER_THIN: f64 = 0.3;
/// From this length over diameter a bore is long.
const LONG: f64 = 1.5;
/// Below this Reynolds number viscosity rules the coefficient.
const VISCOUS: f64 = 5000.0;

/// What the jet's shape and size warn of.
pub fn of_jet(bore: &Bore, drill: Option<Drill>) -> impl Iterator<Item = Hazard> {
    let here = |kind| Hazard::new(kind, Place::section("jet"));
    let length = bore.length_ratio();
    let short = (NO_LONGER_THIN..LONG).contains(&length).then(|| here(HazardKind::ShortBore).with(length, LONG));
    let approach = bore.approach_ratio();
    let narrow = (approach > NARROW_APPROACH).then(|| here(HazardKind::NarrowApproach).with(approach, NARROW_APPROACH));
    let tip = drill.filter(|drill| drill.list() == DrillList::Tips);
    let tip = tip.map(|tip| here(HazardKind::UnmeasuredTip).with(tip.diameter().meters(), None));
    [short, narrow, tip].into_iter().flatten()
}

/// Gas that does not flow, or so slowly that the coefficient is less certain.
#[must_use]
pub fn of_stream(gas: MassFlow, reynolds_number: f64, place: Place) -> Option<Hazard> {
    if gas.kilograms_per_second() <= 0.0 {
        return Some(Hazard::new(HazardKind::NoGas, place));
    }
    (reynolds_number < VISCOUS).then(|| Hazard::new(HazardKind::SlowJet, place).with(reynolds_number, VISCOUS))
}
