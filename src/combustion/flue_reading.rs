//! The air ratio that an oxygen reading of the flue gas tells, and the reading an air ratio should give.

use super::air_need::AirNeed;
use crate::error::{Error, Result};
use crate::gas::Gas;
use crate::limits::{Input, check};
use crate::scalar::Scalar;
use crate::site::{OXYGEN_IN_DRY_AIR, Site};

/// Carbon dioxide in dry air by volume.
const DIOXIDE_IN_DRY_AIR: f64 = 0.000_36;

/// Whether a reading counts the water.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Basis {
    /// Of gas drawn off and cooled, its water condensed: most analyzers.
    Dry,
    /// Of the gas as it is: a hot probe in the flue.
    Wet,
}

/// What an analyzer reads in the flue gas, by volume.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FlueReading<S = f64> {
    /// Oxygen.
    pub oxygen: S,
    /// Carbon monoxide, if it is read; else zero.
    pub carbon_monoxide: S,
    /// Whether the two count the water.
    pub basis: Basis,
}

/// What an analyzer should read when all burns to the end, by volume.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ExpectedReading<S = f64> {
    /// Oxygen, water condensed.
    pub oxygen_dry: S,
    /// Oxygen, water counted.
    pub oxygen_wet: S,
    /// Carbon dioxide, water condensed.
    pub carbon_dioxide_dry: S,
}

/// The air ratio that a reading of the flue gas tells.
///
/// Moles of flue gas a mole of gas are a + b ratio, and the oxygen (ratio - 1) of that needed; so
/// ratio = (needed + y a) / (needed - y b), y = (oxygen - CO/2) / (1 - CO/2).
///
/// # Range
///
/// Oxygen 0 to 20.9 %, carbon monoxide 0 to 15 %. Zero oxygen tells 1 or less, and the answer is 1: a rich fire is
/// told by its carbon monoxide, and reads too high, since its hydrogen is not read.
/// False air drawn in before the probe reads as air ratio.
///
/// # Errors
///
/// A reading out of range; [`Error::CannotBurn`]; [`Error::NoSolution`] for more oxygen than the site's air has.
///
/// # Source
///
/// Balance of atoms, in every textbook of combustion.
///
/// # Examples
///
/// ```
/// use jetwright::combustion::{Basis, FlueReading, air_ratio_from_oxygen};
/// use jetwright::{Site, gas::{Gas, Species}};
/// use jetwright::quantity::{Length, Temperature};
/// let site = Site::at_altitude(Length::from_meters(0.0_f64), Temperature::from_celsius(15.0), 0.0).unwrap();
/// let reading = FlueReading { oxygen: 0.03, carbon_monoxide: 0.0, basis: Basis::Dry };
/// let ratio = air_ratio_from_oxygen(&Gas::from(Species::Methane), &site, reading).unwrap();
/// // 8.55 dry moles and 0.15 times the 9.55 of air: (2 - 0.03) / (2 - 0.03 * 9.55)
/// assert!((ratio - (2.0 - 0.03) / (2.0 - 0.03 * 9.548)).abs() < 1e-4);
/// ```
pub fn air_ratio_from_oxygen<S: Scalar>(gas: &Gas<S>, site: &Site<S>, reading: FlueReading<S>) -> Result<S> {
    let oxygen = check(Input::OxygenReading, reading.oxygen)?;
    let half = S::c(0.5) * check(Input::CarbonMonoxideReading, reading.carbon_monoxide)?;
    let moles = Moles::of(gas, site)?;
    let (fixed, by_ratio) = match reading.basis {
        Basis::Dry => (moles.dry, moles.dry_by_ratio),
        Basis::Wet => (moles.dry + moles.water, moles.dry_by_ratio + moles.water_by_ratio),
    };
    let share = (oxygen - half) / (S::one() - half);
    let left = moles.needed - share * by_ratio;
    if left <= S::c(1e-3) * moles.needed {
        let nearest = Input::LeanAirRatio.range().max as f32;
        return Err(Error::NoSolution { input: Input::LeanAirRatio, nearest });
    }
    Ok((moles.needed + share * fixed) / left)
}

/// What an analyzer should read at an air ratio from 1 on, when all burns to the end.
///
/// # Errors
///
/// [`Error::CannotBurn`]; an air ratio below 1: a rich flue is told by [`Reactants`](super::Reactants).
///
/// # Examples
///
/// ```
/// use jetwright::combustion::expected_reading;
/// use jetwright::{Site, gas::{Gas, Species}};
/// use jetwright::quantity::{Length, Temperature};
/// let site = Site::at_altitude(Length::from_meters(0.0_f64), Temperature::from_celsius(15.0), 0.0).unwrap();
/// let reading = expected_reading(&Gas::from(Species::Propane), &site, 1.0).unwrap();
/// // 3 moles of carbon dioxide in 21.87 dry ones.
/// assert!(reading.oxygen_dry.abs() < 1e-12 && (reading.carbon_dioxide_dry - 0.1376).abs() < 1e-4);
/// ```
pub fn expected_reading<S: Scalar>(gas: &Gas<S>, site: &Site<S>, air_ratio: S) -> Result<ExpectedReading<S>> {
    let ratio = check(Input::LeanAirRatio, air_ratio)?;
    let moles = Moles::of(gas, site)?;
    let oxygen = (ratio - S::one()) * moles.needed;
    let dry = moles.dry + ratio * moles.dry_by_ratio;
    let wet = dry + moles.water + ratio * moles.water_by_ratio;
    let dioxide = moles.carbon + ratio * moles.dry_by_ratio * S::c(DIOXIDE_IN_DRY_AIR);
    Ok(ExpectedReading { oxygen_dry: oxygen / dry, oxygen_wet: oxygen / wet, carbon_dioxide_dry: dioxide / dry })
}

/// Moles of flue gas a mole of gas, burnt to the end: a fixed part and one that goes with the air ratio.
struct Moles<S> {
    needed: S,
    carbon: S,
    dry: S,
    dry_by_ratio: S,
    water: S,
    water_by_ratio: S,
}

impl<S: Scalar> Moles<S> {
    fn of(gas: &Gas<S>, site: &Site<S>) -> Result<Self> {
        let needed = gas.oxygen_to_burn();
        if needed <= S::zero() {
            return Err(Error::CannotBurn);
        }
        let (mut carbon, mut water, mut inert) = (S::zero(), S::zero(), S::zero());
        for (species, share) in gas.mixture().parts() {
            carbon += share * S::count(species.atoms().carbon);
            water += S::c(0.5) * share * S::count(species.atoms().hydrogen);
            if species.atoms().stands_aside() {
                inert += share;
            }
        }
        // Of the air everything but the oxygen burnt comes out again.
        Ok(Self {
            needed,
            carbon,
            dry: carbon + inert - needed,
            dry_by_ratio: needed / S::c(OXYGEN_IN_DRY_AIR),
            water,
            water_by_ratio: AirNeed::new(gas, site).volume_ratio * site.water_fraction(),
        })
    }
}
