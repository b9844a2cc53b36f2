//! A gas meter's reading as the mass that passed it.

use crate::error::Result;
use crate::gas::Gas;
use crate::quantity::{AbsolutePressure, Mass, Temperature, Volume};
use crate::scalar::Scalar;

/// The mass of a volume that a meter counted, at the pressure and the temperature inside the meter: m = V rho(p, T).
///
/// # Errors
///
/// Pressure or temperature out of range; [`Error::Liquid`](crate::Error::Liquid).
///
/// # Examples
///
/// ```
/// use jetwright::gas::{Gas, Species};
/// use jetwright::measure::metered_mass;
/// use jetwright::quantity::{AbsolutePressure, Temperature, Volume};
/// let pressure = AbsolutePressure::from_pascals(101_325.0_f64);
/// let counted = Volume::from_cubic_meters(0.5);
/// let mass = metered_mass(&Gas::from(Species::Propane), counted, pressure, Temperature::from_celsius(15.0)).unwrap();
/// // Propane weighs 1.9 kg/m3 (1.8988 by the reference equation).
/// assert!((mass.kilograms() - 0.949).abs() < 0.002);
/// ```
pub fn metered_mass<S: Scalar>(
    gas: &Gas<S>,
    counted: Volume<S>,
    pressure: AbsolutePressure<S>,
    temperature: Temperature<S>,
) -> Result<Mass<S>> {
    let density = gas.density(pressure, temperature)?.kilograms_per_cubic_meter();
    Ok(Mass::from_kilograms(counted.cubic_meters() * density))
}
