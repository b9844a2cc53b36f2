//! Above which temperature of a wall a gas lights by itself.

use crate::gas::{Mixture, Species};
use crate::quantity::Temperature;
use crate::scalar::Scalar;

/// Autoignition temperatures, Celsius.
///
/// # Source
///
/// IEC 60079-20-1:2010, as kept in the library chemicals 1.5.2.
const AUTOIGNITION: &[(Species, f64)] = &[
    (Species::Methane, 600.0),
    (Species::Ethane, 515.0),
    (Species::Propane, 450.0),
    (Species::NormalButane, 372.0),
    (Species::Isobutane, 460.0),
    (Species::Propylene, 455.0),
    (Species::Ethylene, 440.0),
    (Species::NormalPentane, 243.0),
    (Species::Isopentane, 420.0),
    (Species::Hydrogen, 560.0),
    (Species::CarbonMonoxide, 607.0),
];

/// The lowest autoignition temperature among the parts of a gas above a hundredth; none when none is known.
///
/// Measured in glass; a hot brick lights a gas later, never earlier by much.
///
/// # Examples
///
/// ```
/// use jetwright::combustion::autoignition;
/// use jetwright::gas::{Mixture, Species};
/// let propane = Mixture::<f64>::pure(Species::Propane);
/// assert!((autoignition(&propane).unwrap().celsius() - 450.0).abs() < 1e-9);
/// ```
#[must_use]
pub fn autoignition<S: Scalar>(gas: &Mixture<S>) -> Option<Temperature<S>> {
    let mut lowest: Option<f64> = None;
    for (species, share) in gas.parts() {
        let known = AUTOIGNITION.iter().find(|(known, _)| *known == species);
        if let (Some((_, celsius)), true) = (known, share > S::c(0.01)) {
            lowest = Some(lowest.map_or(*celsius, |lowest| if *celsius < lowest { *celsius } else { lowest }));
        }
    }
    lowest.map(|celsius| Temperature::from_celsius(S::c(celsius)))
}
