//! Air needed and air ratio.

use crate::error::Result;
use crate::gas::Gas;
use crate::limits::{Input, check};
use crate::quantity::MassFlow;
use crate::scalar::Scalar;
use crate::site::{OXYGEN_IN_DRY_AIR, Site};

/// The air that just burns a gas, on one site.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AirNeed<S = f64> {
    /// Volumes of the site's moist air to a volume of gas, both ideal.
    pub volume_ratio: S,
    /// Kilograms of the site's moist air to a kilogram of gas.
    pub mass_ratio: S,
    /// Kilograms of dry air to a kilogram of gas.
    pub dry_mass_ratio: S,
}

impl<S: Scalar> AirNeed<S> {
    /// Air to just burn the gas: oxygen to burn it over the oxygen in the air.
    ///
    /// # Source
    ///
    /// Balance of atoms; dry air with 20.946 % oxygen and 28.965 46 kg/kmol.
    ///
    /// # Examples
    ///
    /// ```
    /// use jetwright::{Site, combustion::AirNeed, gas::{Gas, Species}};
    /// use jetwright::quantity::{Length, Temperature};
    /// let dry = Site::at_altitude(Length::from_meters(0.0_f64), Temperature::from_celsius(15.0), 0.0).unwrap();
    /// let need = AirNeed::new(&Gas::from(Species::Propane), &dry);
    /// assert!((need.volume_ratio - 5.0 / 0.20946).abs() < 1e-9);
    /// assert!((need.mass_ratio - 15.68).abs() < 0.01);
    /// ```
    #[must_use]
    pub fn new(gas: &Gas<S>, site: &Site<S>) -> Self {
        let oxygen = gas.oxygen_to_burn();
        let molar_mass = gas.molar_mass();
        let volume_ratio = oxygen / site.oxygen_fraction();
        Self {
            volume_ratio,
            mass_ratio: volume_ratio * site.air_molar_mass() / molar_mass,
            dry_mass_ratio: oxygen * S::c(crate::site::DRY_AIR_MOLAR_MASS / OXYGEN_IN_DRY_AIR) / molar_mass,
        }
    }

    /// The moist air a gas flow needs at an air ratio: 1 = just enough.
    ///
    /// # Errors
    ///
    /// Air ratio out of its range.
    pub fn air_for(&self, gas: MassFlow<S>, air_ratio: S) -> Result<MassFlow<S>> {
        Ok(gas * (self.mass_ratio * check(Input::AirRatio, air_ratio)?))
    }

    /// Air supplied over air needed, of moist air and gas flows; nothing for no gas.
    #[must_use]
    pub fn air_ratio(&self, air: MassFlow<S>, gas: MassFlow<S>) -> Option<S> {
        let needed = gas.kilograms_per_second() * self.mass_ratio;
        (needed > S::zero()).then(|| air.kilograms_per_second() / needed)
    }
}

/// The equivalence ratio of an air ratio, and the other way: each is one over the other.
///
/// # Errors
///
/// Air ratio (or equivalence ratio) that is not positive and finite.
///
/// ```
/// assert_eq!(jetwright::combustion::equivalence_ratio(1.25_f64), Ok(0.8));
/// ```
pub fn equivalence_ratio<S: Scalar>(air_ratio: S) -> Result<S> {
    if !air_ratio.is_finite() {
        return Err(crate::Error::NotFinite { input: Input::AirRatio });
    }
    if air_ratio <= S::zero() {
        return Err(crate::Error::OutOfRange { input: Input::AirRatio, given: air_ratio.to_f32() });
    }
    Ok(S::one() / air_ratio)
}
