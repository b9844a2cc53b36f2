//! Hazards of the jet and of what flows through it.

use super::list::Hazard;
use super::table::HazardKind;
use crate::Scalar;
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
pub fn of_jet(bore: &Bore, drill: Option<Drill>) -> impl Iterator<Item = Hazard> + use<> {
    let tip = drill.filter(|drill| drill.list() == DrillList::Tips);
    let unmeasured = Hazard::new(HazardKind::UnmeasuredTip, Place::section("jet"));
    of_bore(bore).chain(tip.map(|tip| unmeasured.with(tip.diameter().meters(), None)))
}

/// What the jet's shape warns of.
pub fn of_bore<S: Scalar>(bore: &Bore<S>) -> impl Iterator<Item = Hazard<S>> + use<S> {
    let here = |kind| Hazard::new(kind, Place::section("jet"));
    let length = bore.length_ratio();
    let is_short = length >= S::c(NO_LONGER_THIN) && length < S::c(LONG);
    let short = is_short.then(|| here(HazardKind::ShortBore).with(length, S::c(LONG)));
    let approach = bore.approach_ratio();
    let narrow = (approach > S::c(NARROW_APPROACH))
        .then(|| here(HazardKind::NarrowApproach).with(approach, S::c(NARROW_APPROACH)));
    [short, narrow].into_iter().flatten()
}

/// Gas that does not flow, or so slowly that the coefficient is less certain.
#[must_use]
pub fn of_stream<S: Scalar>(gas: MassFlow<S>, reynolds_number: S, place: Place) -> Option<Hazard<S>> {
    if gas.kilograms_per_second() <= S::zero() {
        return Some(Hazard::new(HazardKind::NoGas, place));
    }
    let limit = S::c(VISCOUS);
    (reynolds_number < limit).then(|| Hazard::new(HazardKind::SlowJet, place).with(reynolds_number, limit))
}
