//! The low-pressure pipe formula of the fuel-gas codes.

use crate::error::Result;
use crate::limits::{Input, check};
use crate::quantity::{ActualVolumeFlow, Length, PressureDifference};
use crate::scalar::Scalar;

/// Cubic metres an hour in a cubic foot an hour.
const CUBIC_FOOT: f64 = 0.028_316_846_592;
/// Absolute temperature the code takes, degrees Rankine.
const RANKINE: f64 = 520.0;

/// Flow through a low-pressure gas pipe: D = Q^0.381 / (19.17 (dH / (Cr L))^0.206), with
/// Cr = 0.00354 S T (Z/S)^0.152; D in inches, Q in cubic feet an hour at 60 degF and 30 inches of mercury, dH in inches
/// of water, L in feet, Z in centipoises.
///
/// # Arguments
///
/// The inside diameter, the length, the pressure drop, and the gas by relative density and viscosity in Pa s.
///
/// # Range
///
/// Gauge pressure below 1.5 psi; pipe as of [`limits`](crate::limits).
///
/// # Errors
///
/// Diameter or length out of range.
///
/// # Source
///
/// International Fuel Gas Code, section 402.4, low-pressure formula; the printed propane rows stand 1.4 to 1.8 % under it.
/// Local codes and a licensed gas fitter decide.
///
/// # Examples
///
/// ```
/// use jetwright::fuel::low_pressure_pipe_flow;
/// use jetwright::quantity::{Length, PressureDifference};
/// // Table 402.4(3), natural gas, 3 inches of water, 50 ft of 1 inch schedule 40: 748 ft3/h.
/// let drop = PressureDifference::from_inches_of_water(3.0_f64);
/// let flow = low_pressure_pipe_flow(Length::from_inches(1.049), Length::from_feet(50.0), drop, 0.60, 12e-6).unwrap();
/// assert!((flow.cubic_feet_per_minute() * 60.0 / 748.0 - 1.0).abs() < 0.02);
/// ```
pub fn low_pressure_pipe_flow<S: Scalar>(
    diameter: Length<S>,
    length: Length<S>,
    drop: PressureDifference<S>,
    relative_density: S,
    viscosity: S,
) -> Result<ActualVolumeFlow<S>> {
    check(Input::PipeDiameter, diameter.meters())?;
    check(Input::PipeLength, length.meters())?;
    let centipoises = viscosity * S::c(1e3);
    let factor = S::c(0.003_54 * RANKINE) * relative_density * (centipoises / relative_density).powf(S::c(0.152));
    let slope = drop.inches_of_water() / (factor * length.feet());
    if !(slope > S::zero() && slope.is_finite()) {
        return Ok(ActualVolumeFlow::from_cubic_meters_per_second(S::zero()));
    }
    let base = S::c(19.17) * diameter.inches() * slope.powf(S::c(0.206));
    let cubic_feet = base.powf(S::c(1.0 / 0.381));
    Ok(ActualVolumeFlow::from_cubic_meters_per_second(cubic_feet * S::c(CUBIC_FOOT / 3600.0)))
}
