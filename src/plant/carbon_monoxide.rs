//! Carbon monoxide of a setting's fire.

use crate::burner::{Conditions, GLOW_CELSIUS};
use crate::combustion::{Product, Reactants};
use crate::plant::installation::Plant;
use crate::quantity::Temperature;

/// Above this share of carbon monoxide in the dry products a fire is dangerous: what NIOSH lets no one breathe.
pub(crate) const MONOXIDE: f64 = 200e-6;
/// Below this air ratio a fire makes carbon monoxide in earnest, where no flame is worked out for it.
const RICH: f64 = 0.98;

/// Carbon monoxide of the products at the setting's chamber, the chamber at work or a glow, whichever is hottest: a
/// chamber lit cold soon glows, and the hotter, the more a rich fire makes.
pub(crate) fn monoxide(plant: &Plant, conditions: &Conditions, air_ratio: f64) -> Option<f64> {
    let mut at = Temperature::from_celsius(GLOW_CELSIUS);
    for chamber in [conditions.chamber_temperature, plant.conditions.chamber_temperature] {
        at = if chamber > at { chamber } else { at };
    }
    let reactants =
        Reactants::new(&conditions.gas, &conditions.site, air_ratio, conditions.mixture_temperature).ok()?;
    Some(reactants.products_at(at).ok()?.dry(Product::CarbonMonoxide))
}

/// Whether a fire makes so much carbon monoxide that it is cautioned of.
pub(crate) fn poisons(air_ratio: f64, monoxide: Option<f64>) -> bool {
    monoxide.map_or(air_ratio < RICH, |share| share > MONOXIDE)
}
