//! The flame: how hot, and what is left, by equilibrium.

use super::equilibrium::{Balance, Elements, Start};
use super::thermochemistry::{Fit, Product, reactant_enthalpy};
use crate::error::{Error, Result};
use crate::gas::{GAS_CONSTANT, Gas, Species};
use crate::limits::{Input, check};
use crate::quantity::{AbsolutePressure, Temperature};
use crate::scalar::Scalar;
use crate::site::Site;
use crate::solve::{self, Root};

/// Pascals in the atmosphere the constants are written in.
const ATMOSPHERE: f64 = 101_325.0;
/// Dry air by volume.
const DRY_AIR: [(Species, f64); 4] = [
    (Species::Oxygen, 0.209_46),
    (Species::Nitrogen, 0.780_84),
    (Species::Argon, 0.009_34),
    (Species::CarbonDioxide, 0.000_36),
];
/// The least temperature products are worked out at, K: cooler than any flame of the range.
const COOLEST: f64 = 600.0;
/// Share of the net heat within which the energy balance is closed.
const CLOSED: f64 = 1e-10;
/// Temperature heating values are told at, K.
pub(super) const REFERENCE: f64 = 298.15;
/// Most steps of the secant; the usual count is five.
const SECANT_CAP: usize = 12;
/// What a mole of products takes up, J: 27.5 for each kelvin and 0.0065 for its square, dissociation included, as
/// propane's flames of air ratio 1 and 2 show.
const TAKEN_UP: (f64, f64) = (27.5, 0.0065);
/// What each mole of oxygen atoms that is missing leaves unburnt, J.
const MISSING_OXYGEN: f64 = 262e3;
/// No flame of a gas in air is hotter, K.
const HOTTEST: f64 = 2900.0;

/// A gas and its air, mixed and about to burn, by the mole of gas.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reactants<S = f64> {
    pub(super) elements: Elements<S>,
    /// J per mole of gas, formation included.
    pub(super) enthalpy: S,
    /// What of it the mixture brings by not being at 25 degC, J per mole of gas.
    pub(super) preheat: S,
    /// Net heat, J per mole of gas at 25 degC, from the same thermochemistry.
    pub(super) net_heat: S,
    temperature: Temperature<S>,
    pressure: AbsolutePressure<S>,
}

/// What a flame leaves.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Products<S = f64> {
    /// Mole fractions, wet, in the order of [`Product::ALL`].
    wet: [S; Product::COUNT],
    /// Moles by the mole of gas.
    moles: S,
    /// Newton steps of the equilibrium.
    pub iterations: usize,
}

impl<S: Scalar> Products<S> {
    pub(super) fn of(balance: &Balance<S>) -> Self {
        let moles = balance.moles.iter().fold(S::zero(), |sum, &moles| sum + moles);
        Self { wet: balance.moles.map(|share| share / moles), moles, iterations: balance.iterations }
    }

    /// Mole fraction with the water counted.
    #[must_use]
    pub fn wet(&self, product: Product) -> S {
        self.wet[product as usize]
    }

    /// Mole fraction with the water condensed and gone, as an analyzer reads; zero for water.
    #[must_use]
    pub fn dry(&self, product: Product) -> S {
        if product == Product::Water {
            return S::zero();
        }
        self.wet(product) / (S::one() - self.wet(Product::Water))
    }

    /// Moles of products by the mole of gas.
    #[must_use]
    pub fn moles(&self) -> S {
        self.moles
    }
}

/// A flame without loss.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Flame<S = f64> {
    /// Its temperature.
    pub temperature: Temperature<S>,
    /// What it leaves at that temperature.
    pub products: Products<S>,
    /// Temperatures tried.
    pub iterations: usize,
}

impl<S: Scalar> Reactants<S> {
    /// Gas and the site's moist air at an air ratio, both at one temperature.
    ///
    /// # Range
    ///
    /// Air ratio 0.6 to 4: a richer flame makes soot, which this model does not know. Mixture 238 to 900 K.
    ///
    /// # Errors
    ///
    /// An input out of range; [`Error::CannotBurn`] for a gas of inerts; [`Error::MissingProperty`] for a gas whose
    /// enthalpy of formation is not known.
    pub fn new(gas: &Gas<S>, site: &Site<S>, air_ratio: S, temperature: Temperature<S>) -> Result<Self> {
        let ratio = check(Input::FlameAirRatio, air_ratio)?;
        let kelvin = check(Input::MixtureTemperature, temperature.kelvin())?;
        let needed = gas.oxygen_to_burn();
        if needed <= S::zero() {
            return Err(Error::CannotBurn);
        }
        let air = ratio * needed / site.oxygen_fraction();
        let dry = air * (S::one() - site.water_fraction());
        let zero = S::zero();
        let mut mixed = Mixed {
            elements: Elements {
                carbon: zero,
                hydrogen: zero,
                nitrogen: zero,
                argon: zero,
                excess_oxygen: S::c(2.0) * needed * (ratio - S::one()),
            },
            enthalpy: zero,
            cold: zero,
        };
        let reference = S::c(REFERENCE);
        let mut net_heat = needed * S::c(GAS_CONSTANT) * reference * reactant_enthalpy(Species::Oxygen, reference)?;
        for (species, share) in gas.mixture().parts() {
            mixed.add(species, share, kelvin)?;
            if !species.atoms().stands_aside() {
                net_heat += share * S::c(GAS_CONSTANT) * reference * reactant_enthalpy(species, reference)?;
            }
        }
        let (carbon, hydrogen) = (mixed.elements.carbon, mixed.elements.hydrogen);
        let burnt = |product: Product| product.fit().enthalpy(reference);
        net_heat -= S::c(GAS_CONSTANT)
            * reference
            * (carbon * burnt(Product::CarbonDioxide) + S::c(0.5) * hydrogen * burnt(Product::Water));
        for (species, share) in DRY_AIR.map(|(species, share)| (species, S::c(share))) {
            mixed.add(species, dry * share, kelvin)?;
        }
        mixed.add(Species::Water, air * site.water_fraction(), kelvin)?;
        Ok(Self {
            elements: mixed.elements,
            enthalpy: mixed.enthalpy,
            preheat: mixed.enthalpy - mixed.cold,
            net_heat,
            temperature,
            pressure: site.ambient_pressure(),
        })
    }

    /// The flame without loss: the temperature at which the products hold the reactants' enthalpy.
    ///
    /// # Errors
    ///
    /// [`Error::NotConverged`] never within the range.
    ///
    /// # Source
    ///
    /// Equilibrium of CO2 CO H2O H2 O2 N2 OH O H NO with GRI-Mech 3.0 thermochemistry; the ten reproduce the whole
    /// mechanism's equilibrium within 0.01 K.
    ///
    /// # Examples
    ///
    /// ```
    /// use jetwright::combustion::Reactants;
    /// use jetwright::{Site, gas::{Gas, Species}};
    /// use jetwright::quantity::{Length, Temperature};
    /// let site = Site::at_altitude(Length::from_meters(0.0_f64), Temperature::from_celsius(25.0), 0.0).unwrap();
    /// let cold = Temperature::from_kelvin(298.15);
    /// let flame = Reactants::new(&Gas::from(Species::Propane), &site, 1.0, cold).unwrap().flame().unwrap();
    /// assert!((flame.temperature.kelvin() - 2265.9).abs() < 0.1); // Cantera 3.2.0, gri30, dry air
    /// ```
    pub fn flame(&self) -> Result<Flame<S>> {
        let first = self.estimate();
        let mut start = self.elements.guess(first.kelvin, self.atmospheres());
        let mut surplus = |kelvin: S| match self.elements.equilibrium(kelvin, self.atmospheres(), start) {
            Ok(balance) => {
                start = balance.start;
                let surplus = enthalpy_of(&balance, kelvin) - self.enthalpy;
                // Closer than this the balance is met; the search ends on a zero.
                if surplus.abs() < S::c(CLOSED) * self.net_heat { S::zero() } else { surplus }
            }
            // Not a number ends the search with its own error.
            Err(_) => S::zero() / S::zero(),
        };
        let (coolest, hottest) = (self.temperature.kelvin().larger(S::c(COOLEST)), S::c(HOTTEST));
        let root = match straight(first, coolest, hottest, &mut surplus) {
            Some(root) => root,
            None => solve::root(Input::MixtureTemperature, coolest, hottest, &mut surplus)?,
        };
        let balance = self.elements.equilibrium(root.x, self.atmospheres(), start)?;
        let temperature = Temperature::from_kelvin(root.x);
        Ok(Flame { temperature, products: Products::of(&balance), iterations: root.iterations })
    }

    /// Where the flame's temperature lies, from what its products take up.
    fn estimate(&self) -> Estimate<S> {
        let Elements { carbon, hydrogen, nitrogen, argon, excess_oxygen } = self.elements;
        let half = S::c(0.5);
        let moles = carbon + half * (hydrogen + nitrogen + excess_oxygen.larger(S::zero())) + argon;
        let missing = (-excess_oxygen).larger(S::zero());
        let heat = ((self.net_heat - S::c(MISSING_OXYGEN) * missing) / moles).larger(S::zero());
        let (a, b) = (S::c(TAKEN_UP.0), S::c(TAKEN_UP.1));
        let root = (a.squared() + S::c(4.0) * b * heat).sqrt();
        Estimate { kelvin: self.temperature.kelvin() + half * (root - a) / b, slope: moles * root }
    }

    /// What the flame leaves once it has cooled to a temperature, in equilibrium there; real mixing leaves more
    /// carbon monoxide.
    ///
    /// # Errors
    ///
    /// Temperature outside 600 to 2 900 K.
    pub fn products_at(&self, temperature: Temperature<S>) -> Result<Products<S>> {
        let kelvin = check(Input::ProductTemperature, temperature.kelvin())?;
        Ok(Products::of(&self.balance_at(kelvin)?))
    }

    /// Share of the net heat that is left for the chamber when the products leave it at a temperature.
    ///
    /// (enthalpy of the reactants - enthalpy of the products at that temperature) / net heat
    ///
    /// # Errors
    ///
    /// Temperature outside 600 to 2 900 K.
    pub fn available_heat(&self, temperature: Temperature<S>) -> Result<S> {
        let kelvin = check(Input::ProductTemperature, temperature.kelvin())?;
        Ok((self.enthalpy - enthalpy_of(&self.balance_at(kelvin)?, kelvin)) / self.net_heat)
    }

    pub(super) fn balance_at(&self, kelvin: S) -> Result<Balance<S>> {
        let start: Start<S> = self.elements.guess(kelvin, self.atmospheres());
        self.elements.equilibrium(kelvin, self.atmospheres(), start)
    }

    pub(super) fn atmospheres(&self) -> S {
        self.pressure.pascals() / S::c(ATMOSPHERE)
    }
}

/// Reactants as they are added up.
struct Mixed<S> {
    elements: Elements<S>,
    enthalpy: S,
    /// The same at 25 degC.
    cold: S,
}

impl<S: Scalar> Mixed<S> {
    fn add(&mut self, species: Species, moles: S, kelvin: S) -> Result<()> {
        let atoms = species.atoms();
        self.elements.carbon += moles * S::count(atoms.carbon);
        self.elements.hydrogen += moles * S::count(atoms.hydrogen);
        if atoms.stands_aside() {
            self.elements.nitrogen += moles * S::count(atoms.nitrogen);
            self.elements.argon += moles * S::count(atoms.argon);
        }
        let fit = Fit::of(species.thermochemistry()?);
        let enthalpy = |kelvin| moles * S::c(GAS_CONSTANT) * kelvin * fit.enthalpy(kelvin);
        self.enthalpy += enthalpy(kelvin);
        self.cold += enthalpy(S::c(REFERENCE));
        Ok(())
    }
}

/// A first temperature, and how fast the products' enthalpy rises there.
#[derive(Clone, Copy)]
struct Estimate<S> {
    kelvin: S,
    slope: S,
}

/// The secant from a good estimate; nothing where it does not close at once, or where derivatives are asked for, which
/// the bracketed search brings to the root.
fn straight<S: Scalar>(first: Estimate<S>, low: S, high: S, surplus: &mut impl FnMut(S) -> S) -> Option<Root<S>> {
    if S::CARRIES_DERIVATIVES {
        return None;
    }
    let Estimate { kelvin, mut slope } = first;
    let mut x = kelvin.clamped(low, high);
    let mut before = None;
    for iterations in 1..=SECANT_CAP {
        let value = surplus(x);
        if let Some((at, was)) = before {
            // Held by an end of the range.
            if x == at {
                return None;
            }
            slope = (value - was) / (x - at);
        }
        let step = -value / slope;
        if value == S::zero() || step.abs() <= S::c(8.0) * S::EPSILON * x {
            return Some(Root { x, iterations });
        }
        before = Some((x, value));
        x = (x + step).clamped(low, high);
    }
    None
}

/// Enthalpy of products, J by the mole of gas.
pub(super) fn enthalpy_of<S: Scalar>(balance: &Balance<S>, kelvin: S) -> S {
    let mut sum = S::zero();
    for (product, &moles) in Product::ALL.iter().zip(&balance.moles) {
        sum += moles * product.fit().enthalpy(kelvin);
    }
    sum * S::c(GAS_CONSTANT) * kelvin
}
