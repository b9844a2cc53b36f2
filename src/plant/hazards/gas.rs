//! Hazards of the gas and of the place.

use super::list::Hazard;
use super::table::HazardKind;
use crate::Scalar;
use crate::burner::GLOW_CELSIUS;
use crate::combustion::AirNeed;
use crate::combustion::autoignition;
use crate::gas::{Gas, NEAR_CONDENSING};
use crate::orifice::{Jet, Supply};
use crate::plant::refusal::Place;
use crate::quantity::{AbsolutePressure, GaugePressure, Temperature};
use crate::site::Site;

/// The standard atmosphere at sea level, Pa.
const SEA_LEVEL: f64 = 101_325.0;
/// Below this share of it, some 250 m up, settings copied from sea level mislead.
const HIGH: f64 = 0.97;

/// Gas heavier than air, which pools in low places.
#[must_use]
pub fn of_gas<S: Scalar>(gas: &Gas<S>) -> Option<Hazard<S>> {
    let density = gas.mixture().calorific_values(Default::default(), Default::default()).relative_density;
    (density > S::one()).then(|| Hazard::new(HazardKind::HeavyGas, Place::section("gas")).with(density, S::one()))
}

/// A chamber so hot that it may ignite gas, and not so hot that it does as the gas comes: what has gathered ignites at
/// once. EN 746-2 (from memory) sets 750 degC where NFPA 86 (from memory) sets 760.
#[must_use]
pub fn of_late_ignition(gas: &Gas, chamber: Temperature, place: Place) -> Option<Hazard> {
    let from = autoignition(gas.mixture()).ok()??;
    let glow = Temperature::from_celsius(GLOW_CELSIUS);
    let late = Hazard::new(HazardKind::IgnitesLate, place).with(chamber.kelvin(), glow.kelvin());
    (chamber >= from && chamber < glow).then_some(late)
}

/// Supply pressure over the dew-point pressure: near 1 the gas condenses.
#[must_use]
pub fn of_saturation<S: Scalar>(ratio: S, place: Place) -> Option<Hazard<S>> {
    let limit = S::c(NEAR_CONDENSING);
    (ratio > limit).then(|| Hazard::new(HazardKind::NearCondensing, place).with(ratio, limit))
}

/// A site so high that settings copied from sea level are wrong: what an air ratio of 1 becomes.
#[must_use]
pub fn of_altitude(
    site: &Site,
    gas: &Gas,
    jet: &Jet,
    gauge: GaugePressure,
    temperature: Temperature,
) -> Option<Hazard> {
    if site.ambient_pressure().pascals() >= HIGH * SEA_LEVEL {
        return None;
    }
    let air_ratio = sea_level_settings(site, gas, jet, gauge, temperature)?;
    Some(Hazard::new(HazardKind::Altitude, Place::section("site")).with(air_ratio, 1.0))
}

/// The air ratio that a burner set to 1 at sea level has here: air by density, gas by the jet at the same gauge.
fn sea_level_settings(
    site: &Site,
    gas: &Gas,
    jet: &Jet,
    gauge: GaugePressure,
    temperature: Temperature,
) -> Option<f64> {
    let pressure = AbsolutePressure::from_pascals(SEA_LEVEL);
    let sea_level = Site::at_station_pressure(pressure, site.air_temperature(), site.humidity()).ok()?;
    let gas_at = |site: &Site| {
        let back = GaugePressure::from_pascals(0.0);
        let supply = Supply { ambient: site.ambient_pressure(), gauge, back, temperature };
        Some(jet.flow(gas, &supply).ok()?.mass_flow.kilograms_per_second())
    };
    let air = site.air_density().kilograms_per_cubic_meter() / sea_level.air_density().kilograms_per_cubic_meter();
    let need = AirNeed::new(gas, &sea_level).mass_ratio / AirNeed::new(gas, site).mass_ratio;
    let (gas_there, gas_here) = (gas_at(&sea_level)?, gas_at(site)?);
    (gas_here > 0.0).then(|| air * need * gas_there / gas_here)
}
