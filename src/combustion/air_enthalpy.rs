//! Heat that dry air carries.

use super::thermochemistry::Product;
use crate::gas::GAS_CONSTANT;
use crate::quantity::Temperature;
use crate::scalar::Scalar;
use crate::site::DRY_AIR_MOLAR_MASS;

/// Dry air by mole fraction, as the flame takes it.
const DRY_AIR: [(Product, f64); 4] = [
    (Product::Oxygen, 0.209_46),
    (Product::Nitrogen, 0.780_84),
    (Product::Argon, 0.009_34),
    (Product::CarbonDioxide, 0.000_36),
];

/// Enthalpy of dry air, J/kg, on the scale of the elements: differences are what it means.
///
/// # Range
///
/// 200 to 3 500 K.
///
/// # Examples
///
/// ```
/// use jetwright::combustion::dry_air_enthalpy;
/// use jetwright::quantity::Temperature;
/// let at = |kelvin: f64| dry_air_enthalpy(Temperature::from_kelvin(kelvin));
/// // Air tables from 300 to 1000 K: 746.8 kJ/kg (Cengel, table A-17, from memory).
/// assert!((at(1000.0) - at(300.0) - 746.8e3).abs() < 1.5e3);
/// ```
#[must_use]
pub fn dry_air_enthalpy<S: Scalar>(temperature: Temperature<S>) -> S {
    let kelvin = temperature.kelvin();
    let molar =
        DRY_AIR.iter().fold(S::zero(), |sum, &(product, share)| sum + S::c(share) * product.fit().enthalpy(kelvin));
    molar * S::c(GAS_CONSTANT * 1e3 / DRY_AIR_MOLAR_MASS) * kelvin
}
