//! The liquid in a cylinder: its pressure, and what it takes to boil it.
//!
//! The composition of the gas is taken for that of the liquid. The first vapor of a blend is richer in what boils
//! easily, and the last poorer; a pure gas has neither.

use super::mixture::Mixture;
use super::saturation::vapor_pressure;
use crate::error::{Error, Result};
use crate::limits::{Input, check};
use crate::quantity::{AbsolutePressure, Density, Temperature};
use crate::scalar::Scalar;
use crate::solve;
use crate::species::{SpeciesRow, Supply};

/// Temperature of the liquids of the table of species, K.
const TABLE_TEMPERATURE: f64 = 250.0;
/// How latent heat falls towards the critical point: Watson, Ind. Eng. Chem. 35 (1943) 398.
const LATENT_EXPONENT: f64 = 0.38;
/// How the liquid expands: Rackett's form with the constant of Spencer and Danner, J. Chem. Eng. Data 17 (1972) 236.
const RACKETT_EXPONENT: f64 = 2.0 / 7.0;
const RACKETT_CONSTANT: f64 = 0.2766;
/// How the liquid's heat capacity rises: within 3 % of the reference equations from 225 to 313 K, our own fit.
const CAPACITY_EXPONENT: f64 = 0.29;
/// Temperatures a boiling point is sought between, K.
const COLDEST: f64 = 150.0;
const WARMEST: f64 = 328.15;

/// A liquid and its vapor at one temperature.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Saturated<S = f64> {
    /// Pressure at which the liquid boils.
    pub pressure: AbsolutePressure<S>,
    /// Heat to boil it, J/kg.
    pub latent_heat: S,
    /// Density of the liquid.
    pub density: Density<S>,
    /// Heat capacity of the liquid, J/(kg K).
    pub heat_capacity: S,
}

impl<S: Scalar> Mixture<S> {
    /// The liquid of this composition at a temperature, with the pressure in its cylinder.
    ///
    /// p = sum of fraction * vapor pressure; latent heat and heat capacity by mass, volumes added.
    ///
    /// # Range
    ///
    /// -35 to 55 degC.
    ///
    /// # Errors
    ///
    /// Temperature out of range; [`Error::NotLiquefied`] when a gas of the mixture is not sold as a liquid;
    /// [`Error::MissingProperty`].
    ///
    /// # Source
    ///
    /// Raoult's law with the vapor pressures of McGarry (1983): propane within 0.5 % of the reference equation from
    /// -40 to 50 degC; latent heat within 1 %, density within 0.5 %, heat capacity within 3 %.
    ///
    /// # Examples
    ///
    /// ```
    /// use jetwright::gas::{Mixture, Species};
    /// use jetwright::quantity::Temperature;
    /// let propane = Mixture::<f64>::pure(Species::Propane);
    /// let liquid = propane.saturated(Temperature::from_celsius(15.56)).unwrap();
    /// // The reference equation has 742.67 kPa, 351.59 kJ/kg and 506.69 kg/m3 at 60 degF.
    /// assert!((liquid.pressure.pascals() / 742_670.0 - 1.0).abs() < 0.005);
    /// assert!((liquid.latent_heat / 351_590.0 - 1.0).abs() < 0.01);
    /// assert!((liquid.density.kilograms_per_cubic_meter() / 506.69 - 1.0).abs() < 0.005);
    /// ```
    pub fn saturated(&self, temperature: Temperature<S>) -> Result<Saturated<S>> {
        let kelvin = temperature.kelvin();
        if !(kelvin >= S::c(COLDEST) && kelvin <= S::c(WARMEST)) {
            check(Input::GasTemperature, kelvin)?;
        }
        let (mut pressure, mut mass, mut volume, mut latent, mut capacity) =
            (S::zero(), S::zero(), S::zero(), S::zero(), S::zero());
        for (species, fraction) in self.parts() {
            let Supply::Liquefied(liquid) = species.supply()? else {
                return Err(Error::NotLiquefied { given: fraction.to_f32() });
            };
            let data = species.row();
            let critical = S::c(data.critical_temperature);
            // Held a little below the critical point of what boils easiest.
            let left = (S::one() - kelvin / critical).larger(S::c(0.02));
            let ratio = left / (S::one() - S::c(TABLE_TEMPERATURE) / critical);
            let part = fraction * S::c(data.molar_mass);
            let racket = left.powf(S::c(RACKETT_EXPONENT))
                - (S::one() - S::c(TABLE_TEMPERATURE) / critical).powf(S::c(RACKETT_EXPONENT));
            let density = S::c(liquid.density) * (-racket * S::c(RACKETT_CONSTANT).ln()).exp();
            pressure += fraction * extended(data, kelvin);
            mass += part;
            volume += part / density;
            latent += part * S::c(liquid.latent_heat) * ratio.powf(S::c(LATENT_EXPONENT));
            capacity += part * S::c(liquid.heat_capacity) * ratio.powf(S::c(-CAPACITY_EXPONENT));
        }
        Ok(Saturated {
            pressure: AbsolutePressure::from_pascals(pressure),
            latent_heat: latent / mass,
            density: Density::from_kilograms_per_cubic_meter(mass / volume),
            heat_capacity: capacity / mass,
        })
    }

    /// The temperature at which the liquid boils under a pressure: the inverse of [`Mixture::saturated`].
    ///
    /// # Errors
    ///
    /// [`Error::NotLiquefied`]; [`Error::MissingProperty`]; [`Error::NoSolution`] when it boils neither between -123 nor 55 degC.
    ///
    /// # Examples
    ///
    /// ```
    /// use jetwright::gas::{Mixture, Species};
    /// use jetwright::quantity::AbsolutePressure;
    /// let propane = Mixture::<f64>::pure(Species::Propane);
    /// let boiling = propane.boiling_temperature(AbsolutePressure::from_pascals(101_325.0)).unwrap();
    /// assert!((boiling.celsius() + 42.1).abs() < 0.1);
    /// ```
    pub fn boiling_temperature(&self, pressure: AbsolutePressure<S>) -> Result<Temperature<S>> {
        let wanted = pressure.pascals().ln();
        let at =
            |kelvin: S| self.saturated(Temperature::from_kelvin(kelvin)).map(|found| found.pressure.pascals().ln());
        at(S::c(WARMEST))?;
        let root = solve::root(Input::GasTemperature, S::c(COLDEST), S::c(WARMEST), |kelvin| {
            at(kelvin).map_or(S::zero(), |found| found - wanted)
        })?;
        Ok(Temperature::from_kelvin(root.x))
    }
}

/// Vapor pressure, carried beyond 0.98 of the critical temperature along the slope it has there, so that a little
/// ethane in warm propane counts.
fn extended<S: Scalar>(data: &SpeciesRow, kelvin: S) -> S {
    let last = S::c(0.98 * data.vapor_pressure.reduced_by[0]);
    if kelvin <= last {
        return vapor_pressure(data, kelvin);
    }
    let (there, before) = (vapor_pressure(data, last), vapor_pressure(data, last * S::c(0.995)));
    let slope = (there / before).ln() / S::c(1.0 / 0.995 - 1.0);
    there * (slope * (S::one() - last / kelvin)).exp()
}
