//! The fire's character, and what it does to steel.

use super::flame::Products;
use super::thermochemistry::Product;
use crate::error::Result;
use crate::gas::GAS_CONSTANT;
use crate::limits::{Input, check};
use crate::quantity::Temperature;
use crate::scalar::Scalar;

/// Pascals of oxygen's standard state in the fit of iron and wustite, over those of the constants here.
const BAR_OVER_ATMOSPHERE: f64 = 1e5 / 101_325.0;
/// Oxygen in the dry gas from which scale grows fast: common practice, no source.
const FREE_OXYGEN: f64 = 0.005;

/// What a fire is called by its air ratio; the borders are common practice, no source.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Character {
    /// Air ratio under 0.85: much carbon monoxide and hydrogen, flame out of the door.
    Reducing,
    /// 0.85 to 0.97.
    SlightlyReducing,
    /// 0.97 to 1.03: neither oxygen nor fuel to speak of.
    Neutral,
    /// 1.03 to 1.15.
    SlightlyOxidizing,
    /// Over 1.15: free oxygen.
    Oxidizing,
}

impl Character {
    /// The character of an air ratio.
    ///
    /// ```
    /// use jetwright::combustion::Character;
    /// assert_eq!(Character::of(0.9_f64), Character::SlightlyReducing);
    /// assert_eq!(Character::of(1.0_f64), Character::Neutral);
    /// ```
    #[must_use]
    pub fn of<S: Scalar>(air_ratio: S) -> Self {
        let borders = [
            (0.85, Character::Reducing),
            (0.97, Character::SlightlyReducing),
            (1.03, Character::Neutral),
            (1.15, Character::SlightlyOxidizing),
        ];
        let below = borders.into_iter().find(|(border, _)| air_ratio < S::c(*border));
        below.map_or(Character::Oxidizing, |(_, character)| character)
    }
}

/// How readily steel scales, said qualitatively.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum ScaleTendency {
    /// The gas takes oxygen from iron: no scale.
    Bright,
    /// Carbon dioxide and water scale it, slowly.
    Slow,
    /// Free oxygen scales it.
    Fast,
}

/// What a fire's gases do to steel at a temperature.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Scale<S = f64> {
    /// CO2/CO, and by the water gas just so H2O/H2, over what iron and its oxide wustite stand with: above 1 scale
    /// grows.
    pub drive: S,
    /// The CO2/CO that iron and wustite stand with.
    pub dioxide_ratio: S,
    /// The H2O/H2 that they stand with.
    pub water_ratio: S,
    /// In words.
    pub tendency: ScaleTendency,
}

impl<S: Scalar> Products<S> {
    /// What these gases, in equilibrium at the steel's temperature, do to the steel.
    ///
    /// # Range
    ///
    /// Steel 850 to 1 700 K. For iron; alloys of chromium scale in any fire. How thick the scale gets depends on time.
    ///
    /// # Errors
    ///
    /// Temperature out of range.
    ///
    /// # Source
    ///
    /// Oxygen over iron and wustite: RT ln p = -550 915 + 269.106 T - 16.9484 T ln T J/mol and bar, O'Neill and Pownall,
    /// Contributions to Mineralogy and Petrology 114 (1993) 296 (from memory; its range above 1 184 K, here used from
    /// 850 K, where it is off by a tenth in the ratio); water gas of GRI-Mech 3.0.
    ///
    /// # Examples
    ///
    /// ```
    /// use jetwright::combustion::{Reactants, ScaleTendency};
    /// use jetwright::{Site, gas::{Gas, Species}};
    /// use jetwright::quantity::{Length, Temperature};
    /// let cold = Temperature::from_celsius(25.0_f64);
    /// let site = Site::at_altitude(Length::from_meters(0.0), cold, 0.0).unwrap();
    /// let reactants = Reactants::new(&Gas::from(Species::Propane), &site, 0.9, cold).unwrap();
    /// let steel = Temperature::from_celsius(1000.0);
    /// let scale = reactants.products_at(steel).unwrap().scale(steel).unwrap();
    /// // Iron and wustite stand with 71 % CO at 1 000 degC, so CO2/CO = 0.4; even a rich forge fire has more.
    /// assert!((scale.dioxide_ratio - 0.40).abs() < 0.02);
    /// assert_eq!(scale.tendency, ScaleTendency::Slow);
    /// ```
    pub fn scale(&self, steel: Temperature<S>) -> Result<Scale<S>> {
        let kelvin = check(Input::ScaleTemperature, steel.kelvin())?;
        let log = kelvin.ln();
        let potential = S::c(-550_915.0) + kelvin * (S::c(269.106) - S::c(16.9484) * log);
        let root = (S::c(0.5) * (potential / (S::c(GAS_CONSTANT) * kelvin) + S::c(BAR_OVER_ATMOSPHERE).ln())).exp();
        let gibbs = |product: Product| product.fit().gibbs(kelvin, log);
        let half = S::c(0.5) * gibbs(Product::Oxygen);
        let ratio = |burnt, fuel| root * (gibbs(fuel) + half - gibbs(burnt)).exp();
        let dioxide_ratio = ratio(Product::CarbonDioxide, Product::CarbonMonoxide);
        let water_ratio = ratio(Product::Water, Product::Hydrogen);
        // By hydrogen where there is no carbon.
        let (burnt, fuel, limit) = if self.wet(Product::CarbonMonoxide) > self.wet(Product::Hydrogen) {
            (Product::CarbonDioxide, Product::CarbonMonoxide, dioxide_ratio)
        } else {
            (Product::Water, Product::Hydrogen, water_ratio)
        };
        let drive = self.wet(burnt) / self.wet(fuel) / limit;
        let tendency = if drive < S::one() {
            ScaleTendency::Bright
        } else if self.dry(Product::Oxygen) < S::c(FREE_OXYGEN) {
            ScaleTendency::Slow
        } else {
            ScaleTendency::Fast
        };
        Ok(Scale { drive, dioxide_ratio, water_ratio, tendency })
    }
}
