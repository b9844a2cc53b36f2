//! Above which temperature of a wall a gas lights by itself.

use crate::error::Result;
use crate::gas::Mixture;
use crate::quantity::Temperature;
use crate::scalar::Scalar;

/// The lowest autoignition temperature among the parts of a gas that burn and are above a hundredth; none when there is
/// no such part.
///
/// Each is the lowest published, for a warning: butane 288 degC (NFPA 497), where IEC has 372 and textbooks 405; ethane
/// 472 (IEC 515), hydrogen 500 (IEC 560). Measured in glass; a hot brick lights a gas later, never earlier by much.
///
/// # Errors
///
/// [`Error::MissingProperty`](crate::Error::MissingProperty) for a part whose temperature is not known.
///
/// # Source
///
/// NFPA 497 (2008) and IEC 60079-20-1:2010, the lower of both, as kept in the library chemicals 1.5.2.
///
/// # Examples
///
/// ```
/// use jetwright::combustion::autoignition;
/// use jetwright::gas::{Mixture, Species};
/// let propane = Mixture::<f64>::pure(Species::Propane);
/// assert!((autoignition(&propane).unwrap().unwrap().celsius() - 450.0).abs() < 1e-9);
/// ```
pub fn autoignition<S: Scalar>(gas: &Mixture<S>) -> Result<Option<Temperature<S>>> {
    let mut lowest: Option<f64> = None;
    for (species, share) in gas.parts() {
        if species.atoms().burns() && share > S::c(0.01) {
            let celsius = species.autoignition()?;
            lowest = Some(lowest.map_or(celsius, |lowest| if celsius < lowest { celsius } else { lowest }));
        }
    }
    Ok(lowest.map(|celsius| Temperature::from_celsius(S::c(celsius))))
}
