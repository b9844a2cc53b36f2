//! Heating values, relative density and Wobbe number.

use super::mixture::Mixture;
use crate::quantity::{Density, GrossHeatPerMass, NetHeatPerMass, ReferenceState};
use crate::scalar::Scalar;
use crate::site::DRY_AIR_MOLAR_MASS;
use crate::species::SpeciesRow;

/// Molar gas constant of ISO 6976:2016, J/(mol K).
const GAS_CONSTANT: f64 = 8.314_462_1;
/// Molar heat of vaporisation of water at 0, 15, 15.55, 20 and 25 degC, kJ/mol: ISO 6976:2016.
const WATER_HEAT: [f64; 5] = [45.064, 44.431, 44.408, 44.222, 44.013];
/// Compression factor of air at 0, 15, 15.55 and 20 degC: ISO 6976:2016.
const AIR_COMPRESSION_FACTOR: [f64; 4] = [0.999_419, 0.999_595, 0.999_601, 0.999_645];

/// The temperature a heating value is counted at.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[non_exhaustive]
pub enum CombustionReference {
    /// 0 degC
    Celsius0,
    /// 15 degC, used everywhere in this library unless asked otherwise.
    #[default]
    Celsius15,
    /// 15.55 degC (60 degF)
    Fahrenheit60,
    /// 20 degC
    Celsius20,
    /// 25 degC
    Celsius25,
}

/// What a fuel gas is worth, by ISO 6976.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CalorificValues<S = f64> {
    /// kg/kmol.
    pub molar_mass: S,
    /// p V / (n R T) at the metering state.
    pub compression_factor: S,
    /// Gross, ideal gas, kJ/mol.
    pub gross_molar: S,
    /// Net, ideal gas, kJ/mol.
    pub net_molar: S,
    /// Gross, by mass.
    pub gross_mass: GrossHeatPerMass<S>,
    /// Net, by mass.
    pub net_mass: NetHeatPerMass<S>,
    /// Gross, by volume of the real gas at the metering state, J/m3.
    pub gross_volume: S,
    /// Net, by volume of the real gas at the metering state, J/m3.
    pub net_volume: S,
    /// Of the real gas at the metering state.
    pub density: Density<S>,
    /// To air at the same state, both real.
    pub relative_density: S,
    /// Gross volume value over the root of the relative density, J/m3.
    pub wobbe_gross: S,
    /// Net volume value over the root of the relative density, J/m3.
    pub wobbe_net: S,
}

impl<S: Scalar> Mixture<S> {
    /// Oxygen molecules to burn one molecule of the mixture: carbon + hydrogen/4 - oxygen/2.
    ///
    /// ```
    /// use jetwright::gas::{Mixture, Species};
    /// assert_eq!(Mixture::<f64>::pure(Species::Propane).oxygen_to_burn(), 5.0);
    /// ```
    #[must_use]
    pub fn oxygen_to_burn(&self) -> S {
        self.mean(|data| data.atoms.oxygen_to_burn())
    }

    /// Heating values with their companions at a combustion and a metering reference.
    ///
    /// Hm = Hc / M, Hv = Hc p / (Z R T), Z = 1 - (sum x s)^2, net = gross - (hydrogen atoms / 2) L.
    ///
    /// # Source
    ///
    /// ISO 6976:2016, equations 1 to 16 (metering pressure 101.325 kPa).
    ///
    /// # Examples
    ///
    /// ```
    /// use jetwright::gas::{CombustionReference, Mixture, Species};
    /// use jetwright::quantity::ReferenceState;
    /// let propane = Mixture::<f64>::pure(Species::Propane);
    /// let values = propane.calorific_values(CombustionReference::Celsius15, ReferenceState::Celsius15);
    /// assert!((values.gross_mass.joules_per_kilogram() / 1e6 - 50.370).abs() < 1e-3);
    /// assert!((values.relative_density - 1.5497).abs() < 1e-4);
    /// ```
    #[must_use]
    pub fn calorific_values(&self, combustion: CombustionReference, metering: ReferenceState) -> CalorificValues<S> {
        let burnt = combustion as usize;
        let metered = match metering {
            ReferenceState::Celsius0 => 0,
            ReferenceState::Celsius15 => 1,
            ReferenceState::Fahrenheit60 => 2,
            ReferenceState::Celsius20 => 3,
        };
        let molar_mass = self.molar_mass();
        let gross_molar = self.mean(|data| data.gross_molar[burnt]);
        let hydrogen = self.mean(|data| f64::from(data.atoms.hydrogen));
        let net_molar = gross_molar - S::c(0.5 * WATER_HEAT[burnt]) * hydrogen;
        let compression_factor = S::one() - self.mean(|data: &SpeciesRow| data.summation[metered]).squared();
        // ISO 6976 writes 60 degF as 15.55 degC, but its example 2 is met only at 60 degF exactly.
        let kelvin = metering.temperature::<S>().kelvin();
        let molar_volume = compression_factor * S::c(GAS_CONSTANT) * kelvin / metering.pressure().pascals() * S::c(1e3);
        let density = molar_mass / molar_volume;
        let relative_density =
            molar_mass / S::c(DRY_AIR_MOLAR_MASS) * S::c(AIR_COMPRESSION_FACTOR[metered]) / compression_factor;
        let (gross_volume, net_volume) = (gross_molar * S::c(1e6) / molar_volume, net_molar * S::c(1e6) / molar_volume);
        CalorificValues {
            molar_mass,
            compression_factor,
            gross_molar,
            net_molar,
            gross_mass: GrossHeatPerMass::from_joules_per_kilogram(gross_molar / molar_mass * S::c(1e6)),
            net_mass: NetHeatPerMass::from_joules_per_kilogram(net_molar / molar_mass * S::c(1e6)),
            gross_volume,
            net_volume,
            density: Density::from_kilograms_per_cubic_meter(density),
            relative_density,
            wobbe_gross: gross_volume / relative_density.sqrt(),
            wobbe_net: net_volume / relative_density.sqrt(),
        }
    }
}
