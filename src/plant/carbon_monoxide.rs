//! Carbon monoxide of a setting's fire.

use crate::Scalar;
use crate::burner::{Conditions, GLOW_CELSIUS};
use crate::combustion::{Product, Reactants};
use crate::gas::Gas;
use crate::plant::installation::Plant;
use crate::quantity::Temperature;
use crate::site::Site;

/// Above this share of carbon monoxide in the dry products a fire is dangerous: what NIOSH lets no one breathe.
pub(crate) const CARBON_MONOXIDE: f64 = 200e-6;
/// Below this air ratio a fire makes carbon monoxide in earnest, where no flame is worked out for it.
const RICH: f64 = 0.98;

/// Carbon monoxide of the products at the hottest of these chambers and a glow: a chamber lit cold soon glows, and the
/// hotter, the more a rich fire makes. None where no flame is calculated so rich or so lean.
pub(crate) fn at_hottest<S: Scalar>(
    gas: &Gas<S>,
    site: &Site<S>,
    mixture: Temperature<S>,
    chambers: &[Temperature<S>],
    air_ratio: S,
) -> Option<S> {
    let hotter = |at: Temperature<S>, chamber: &Temperature<S>| if *chamber > at { *chamber } else { at };
    let at = chambers.iter().fold(Temperature::from_celsius(S::c(GLOW_CELSIUS)), hotter);
    let reactants = Reactants::new(gas, site, air_ratio, mixture).ok()?;
    Some(reactants.products_at(at).ok()?.dry(Product::CarbonMonoxide))
}

/// The same at the setting's chamber and the chamber at work.
pub(crate) fn carbon_monoxide(plant: &Plant, conditions: &Conditions, air_ratio: f64) -> Option<f64> {
    let chambers = [conditions.chamber_temperature, plant.conditions.chamber_temperature];
    at_hottest(&conditions.gas, &conditions.site, conditions.mixture_temperature, &chambers, air_ratio)
}

/// Whether a fire makes so much carbon monoxide that it is cautioned of.
pub(crate) fn poisons<S: Scalar>(air_ratio: S, carbon_monoxide: Option<S>) -> bool {
    carbon_monoxide.map_or(air_ratio < S::c(RICH), |share| share > S::c(CARBON_MONOXIDE))
}
