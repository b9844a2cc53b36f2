//! Where a mixture of gas and cold air stops burning.

use super::air_need::AirNeed;
use crate::gas::{Gas, Species};
use crate::scalar::Scalar;
use crate::site::Site;

/// Lower limit in air at room temperature, by volume: NFPA 497 (2008), pentanes and ethylene from memory.
const LOWER: [(Species, f64); 11] = [
    (Species::Methane, 0.05),
    (Species::Ethane, 0.03),
    (Species::Propane, 0.021),
    (Species::NormalButane, 0.019),
    (Species::Isobutane, 0.018),
    (Species::NormalPentane, 0.015),
    (Species::Isopentane, 0.014),
    (Species::Ethylene, 0.027),
    (Species::Propylene, 0.024),
    (Species::Hydrogen, 0.04),
    (Species::CarbonMonoxide, 0.125),
];

/// The leanest mixture with cold air that burns, as an air ratio: (1/L - 1) / air needed by volume, with
/// 1/L = sum x / L of the fuels (Le Chatelier); inert gas in the fuel counts as air.
///
/// # Range
///
/// Air and chamber at room temperature; a hot chamber burns leaner mixtures. Published limits differ by a fifth.
///
/// # Source
///
/// Limits of NFPA 497 (2008); Le Chatelier (1891).
///
/// # Examples
///
/// ```
/// use jetwright::combustion::leanest_air_ratio;
/// use jetwright::{Site, gas::{Gas, Species}};
/// use jetwright::quantity::{Length, Temperature};
/// let site = Site::at_altitude(Length::from_meters(0.0_f64), Temperature::from_celsius(20.0), 0.0).unwrap();
/// // Propane: 97.9 volumes of air to 2.1 of gas, over the 23.87 it needs.
/// assert!((leanest_air_ratio(&Gas::from(Species::Propane), &site) - 97.9 / 2.1 / 23.87).abs() < 0.01);
/// ```
#[must_use]
pub fn leanest_air_ratio<S: Scalar>(gas: &Gas<S>, site: &Site<S>) -> S {
    let inverse = gas.mixture().parts().fold(S::zero(), |sum, (species, share)| {
        let limit = LOWER.iter().find(|(fuel, _)| *fuel == species);
        limit.map_or(sum, |(_, lower)| sum + share / S::c(*lower))
    });
    (inverse - S::one()) / AirNeed::new(gas, site).volume_ratio
}
