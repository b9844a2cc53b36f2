//! What a single question warns of: the same functions as for a whole installation, for as much of it as is known.

use super::air::of_air_ratio;
use super::gas::{of_gas, of_late_ignition, of_saturation};
use super::jet::{of_bore, of_jet, of_stream};
use super::lighting::of_flashback_known;
use super::list::{Hazard, Hazards, at_setting};
use super::supply::{of_draw, of_frost, of_mixture, of_short};
use crate::Scalar;
use crate::combustion::{flames_measured, leanest_air_ratio};
use crate::gas::Gas;
use crate::orifice::{Bore, Drill, JetFlow};
use crate::plant::carbon_monoxide::at_hottest;
use crate::plant::cylinder::CylinderRow;
use crate::plant::refusal::Place;
use crate::quantity::Temperature;
use crate::site::Site;

/// A flow through a jet, with the supply pressure over the dew-point pressure.
#[derive(Clone, Copy, Debug)]
pub struct Flowing<'f> {
    /// The bore.
    pub bore: &'f Bore,
    /// The drill that made it, if it was named.
    pub drill: Option<Drill>,
    /// What flows.
    pub flow: &'f JetFlow,
    /// Supply pressure over the dew-point pressure.
    pub saturation_ratio: f64,
}

impl Flowing<'_> {
    fn judge(&self, place: Place, found: &mut Hazards) {
        found.extend(of_saturation(self.saturation_ratio, place));
        found.extend(of_stream(self.flow.mass_flow, self.flow.reynolds_number, place));
    }
}

/// One flow through one jet, one by one.
pub fn of_flow<S: Scalar>(
    gas: &Gas<S>,
    bore: &Bore<S>,
    flow: &JetFlow<S>,
    saturation_ratio: S,
) -> impl Iterator<Item = Hazard<S>> + use<S> {
    let place = at_setting(0);
    let of_state =
        [of_gas(gas), of_saturation(saturation_ratio, place), of_stream(flow.mass_flow, flow.reynolds_number, place)];
    of_state.into_iter().flatten().chain(of_bore(bore))
}

/// One jet at several gauges, each a setting.
pub fn of_gauges<'f>(gas: &Gas, flows: impl IntoIterator<Item = Flowing<'f>>) -> Hazards {
    let mut found: Hazards = of_gas(gas).into_iter().collect();
    for (index, flowing) in flows.into_iter().enumerate() {
        if index == 0 {
            found.extend(of_jet(flowing.bore, flowing.drill));
        }
        flowing.judge(at_setting(index), &mut found);
    }
    found
}

/// Several jets, each a setting.
pub fn of_jets<'f>(gas: &Gas, flows: impl IntoIterator<Item = Flowing<'f>>) -> Hazards {
    let mut found: Hazards = of_gas(gas).into_iter().collect();
    for (index, flowing) in flows.into_iter().enumerate() {
        let place = at_setting(index);
        found.extend(of_jet(flowing.bore, flowing.drill).map(|hazard| Hazard { place, ..hazard }));
        flowing.judge(place, &mut found);
    }
    found
}

/// A gas burning at an air ratio: the mixture's temperature before the flame, and the chamber it burns in.
#[must_use]
pub fn of_flame(gas: &Gas, site: &Site, mixture: Temperature, chamber: Temperature, air_ratio: f64) -> Hazards {
    let late = of_late_ignition(gas, chamber, Place::section("fire"));
    of_fire(gas, site, (mixture, chamber), air_ratio).chain(late).collect()
}

/// The same in any number type, one by one, but for a late ignition, whose table is in double precision: the temperatures are those of the mixture and of the chamber.
pub fn of_fire<S: Scalar>(
    gas: &Gas<S>,
    site: &Site<S>,
    (mixture, chamber): (Temperature<S>, Temperature<S>),
    air_ratio: S,
) -> impl Iterator<Item = Hazard<S>> + use<S> {
    let carbon_monoxide = at_hottest(gas, site, mixture, &[chamber], air_ratio);
    let place = Place::section("fire");
    let of_air = of_air_ratio(air_ratio, leanest_air_ratio(gas, site).ok(), carbon_monoxide, place);
    let flashback = of_flashback_known(flames_measured(gas).is_ok());
    [of_gas(gas), of_air, flashback].into_iter().flatten()
}

/// A cylinder under one draw.
#[must_use]
pub fn of_one_draw(gas: &Gas, row: &CylinderRow) -> Hazards {
    let mut found: Hazards = of_gas(gas).into_iter().chain(of_mixture(gas.mixture())).collect();
    found.extend(of_draw(row, Place::section("cylinder")));
    found.extend(of_short(row.too_cold_after.filter(|after| *after < row.used).or(row.end.empty_after)));
    found.extend(of_frost(row.end.temperature));
    found
}
