//! What the flue gas carries off: heat, unburnt gas, water.

use super::equilibrium::Balance;
use super::flame::{Products, REFERENCE, Reactants, enthalpy_of};
use super::thermochemistry::Product;
use crate::error::Result;
use crate::gas::GAS_CONSTANT;
use crate::limits::{Input, check};
use crate::quantity::{AbsolutePressure, Temperature};
use crate::scalar::Scalar;
use crate::site::saturation_log;
use crate::solve;

/// Where a dew point is sought, K: hoarfrost before, water's boiling at 2 bar behind.
const DEW: (f64, f64) = (213.15, 393.15);

/// Where the net heat goes, as shares of it; with the available heat they add to one and what preheating brings.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FlueLoss<S = f64> {
    /// Warmth of the gases over 25 degC.
    pub sensible: S,
    /// Heat of what left unburnt: carbon monoxide, hydrogen, and what came apart.
    pub unburnt: S,
    /// Warmth the mixture brought over 25 degC; below zero for a colder one.
    pub preheat: S,
}

/// What leaves a chamber at one temperature.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Leaving<S = f64> {
    /// The gases, in equilibrium there; real mixing leaves more carbon monoxide.
    pub products: Products<S>,
    /// Share of the net heat that stays, as [`Reactants::available_heat`].
    pub available_heat: S,
    /// Where the rest goes.
    pub loss: FlueLoss<S>,
}

impl<S: Scalar> Reactants<S> {
    /// The gases that leave a chamber at a temperature and what they take along.
    ///
    /// sensible = sum n (h(T) - h(25 degC)) / net heat, unburnt = sum n (heat of burning) / net heat
    ///
    /// # Errors
    ///
    /// Temperature outside 600 to 2 900 K.
    ///
    /// # Source
    ///
    /// Enthalpies of GRI-Mech 3.0; the split is the one of every heat balance of a furnace.
    ///
    /// # Examples
    ///
    /// ```
    /// use jetwright::combustion::Reactants;
    /// use jetwright::{Site, gas::{Gas, Species}};
    /// use jetwright::quantity::{Length, Temperature};
    /// let cold = Temperature::from_kelvin(298.15_f64);
    /// let site = Site::at_altitude(Length::from_meters(0.0), cold, 0.0).unwrap();
    /// let reactants = Reactants::new(&Gas::from(Species::Propane), &site, 1.0, cold).unwrap();
    /// let leaving = reactants.leaving(Temperature::from_kelvin(1500.0)).unwrap();
    /// // 16.68 kg of products carry 1.50 MJ/kg off, 54 % of 46.35 MJ.
    /// assert!((leaving.loss.sensible - 0.54).abs() < 0.005);
    /// assert!((leaving.loss.sensible + leaving.loss.unburnt + leaving.available_heat - 1.0).abs() < 1e-6);
    /// ```
    pub fn leaving(&self, temperature: Temperature<S>) -> Result<Leaving<S>> {
        let kelvin = check(Input::ProductTemperature, temperature.kelvin())?;
        let balance = self.balance_at(kelvin)?;
        let (hot, cold) = (enthalpy_of(&balance, kelvin), enthalpy_of(&balance, S::c(REFERENCE)));
        Ok(Leaving {
            products: Products::of(&balance),
            available_heat: (self.enthalpy - hot) / self.net_heat,
            loss: FlueLoss {
                sensible: (hot - cold) / self.net_heat,
                unburnt: unburnt(&balance) / self.net_heat,
                preheat: self.preheat / self.net_heat,
            },
        })
    }
}

/// Heat of burning of what is left, J by the mole of gas: what each product holds over carbon dioxide and water.
fn unburnt<S: Scalar>(balance: &Balance<S>) -> S {
    let reference = S::c(REFERENCE);
    let formation = |product: Product| product.fit().enthalpy(reference);
    let (dioxide, water) = (formation(Product::CarbonDioxide), formation(Product::Water));
    let half = S::c(0.5);
    // Those of the elements are all but zero; with them the balance closes to the last digit.
    let (oxygen, nitrogen) = (half * formation(Product::Oxygen), half * formation(Product::Nitrogen));
    let half_water = half * (water - oxygen);
    let sum = [
        (Product::CarbonMonoxide, dioxide - oxygen),
        (Product::Hydrogen, water - oxygen),
        (Product::Hydroxyl, half_water + oxygen),
        (Product::HydrogenAtom, half_water),
        (Product::OxygenAtom, oxygen),
        (Product::NitricOxide, oxygen + nitrogen),
    ]
    .into_iter()
    .fold(S::zero(), |sum, (product, end)| sum + balance.moles[product as usize] * (formation(product) - end));
    sum * S::c(GAS_CONSTANT) * reference
}

impl<S: Scalar> Products<S> {
    /// The temperature at which the first water falls out: where water's vapor pressure is the share of water times
    /// the pressure. None for gas so dry that it would be under -60 degC.
    ///
    /// # Source
    ///
    /// Vapor pressure of CIPM-2007.
    ///
    /// # Examples
    ///
    /// ```
    /// use jetwright::combustion::Reactants;
    /// use jetwright::{Site, gas::{Gas, Species}};
    /// use jetwright::quantity::{Length, Temperature};
    /// let cold = Temperature::from_kelvin(298.15_f64);
    /// let site = Site::at_altitude(Length::from_meters(0.0), cold, 0.0).unwrap();
    /// let reactants = Reactants::new(&Gas::from(Species::Propane), &site, 1.0, cold).unwrap();
    /// let flue = reactants.products_at(Temperature::from_kelvin(800.0)).unwrap();
    /// // 15.5 % water, 15.7 kPa of it at sea level; water's vapor has that at 54.9 degC.
    /// assert!((flue.dew_point(site.ambient_pressure()).unwrap().celsius() - 54.9).abs() < 0.1);
    /// ```
    #[must_use]
    pub fn dew_point(&self, pressure: AbsolutePressure<S>) -> Option<Temperature<S>> {
        let vapor = self.wet(Product::Water) * pressure.pascals();
        if vapor <= S::zero() {
            return None;
        }
        let log = vapor.ln();
        let found = solve::root(Input::AirTemperature, S::c(DEW.0), S::c(DEW.1), |kelvin| saturation_log(kelvin) - log);
        found.ok().map(|root| Temperature::from_kelvin(root.x))
    }
}
