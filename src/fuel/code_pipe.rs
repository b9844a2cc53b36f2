//! The low-pressure pipe formula of the fuel-gas codes.

use crate::error::{Error, Result};
use crate::gas::Gas;
use crate::limits::{Input, check};
use crate::quantity::{AbsolutePressure, ActualVolumeFlow, Length, MassFlow, PressureDifference, Temperature};
use crate::scalar::Scalar;

/// Cubic meters an hour in a cubic foot an hour.
const CUBIC_FOOT: f64 = 0.028_316_846_592;
/// Absolute temperature the code takes, degrees Rankine.
const RANKINE: f64 = 520.0;
/// Constant and powers of the formula.
const DIAMETER: f64 = 19.17;
const FLOW_POWER: f64 = 0.381;
const SLOPE_POWER: f64 = 0.206;

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
/// Diameter, length (zero among them) or drop out of range.
///
/// # Source
///
/// International Fuel Gas Code, section 402.4, low-pressure formula; the printed rows stand 0.2 to 0.9 % under it, those of
/// propane when their heat is taken as of 2488 Btu/ft3. Local codes and a licensed gas fitter decide.
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
    let slope = slope(length, drop, relative_density, viscosity)?;
    if slope <= S::zero() {
        return Ok(ActualVolumeFlow::from_cubic_meters_per_second(S::zero()));
    }
    let base = S::c(DIAMETER) * diameter.inches() * slope.powf(S::c(SLOPE_POWER));
    let cubic_feet = base.powf(S::c(1.0 / FLOW_POWER));
    Ok(ActualVolumeFlow::from_cubic_meters_per_second(cubic_feet * S::c(CUBIC_FOOT / 3600.0)))
}

/// The least inside diameter for a flow, at the code's 60 degF and 30 inches of mercury: the inverse of
/// [`low_pressure_pipe_flow`].
///
/// # Errors
///
/// Length, drop or diameter out of range; [`Error::NoSolution`] without a pressure drop.
///
/// # Examples
///
/// ```
/// use jetwright::fuel::low_pressure_pipe_diameter;
/// use jetwright::quantity::{ActualVolumeFlow, Length, PressureDifference};
/// let (drop, flow) = (PressureDifference::from_inches_of_water(3.0_f64), 748.0 / 60.0);
/// let flow = ActualVolumeFlow::from_cubic_feet_per_minute(flow);
/// let diameter = low_pressure_pipe_diameter(flow, Length::from_feet(50.0), drop, 0.60, 12e-6).unwrap();
/// // The printed row stands for 1 inch schedule 40, 1.049 in inside.
/// assert!((diameter.inches() - 1.049).abs() < 0.01);
/// ```
pub fn low_pressure_pipe_diameter<S: Scalar>(
    flow: ActualVolumeFlow<S>,
    length: Length<S>,
    drop: PressureDifference<S>,
    relative_density: S,
    viscosity: S,
) -> Result<Length<S>> {
    let slope = slope(length, drop, relative_density, viscosity)?;
    if slope <= S::zero() {
        return Err(Error::NoSolution { input: Input::PipeDiameter, nearest: drop.pascals().to_f32() });
    }
    let cubic_feet = flow.cubic_meters_per_second() * S::c(3600.0 / CUBIC_FOOT);
    let inches = cubic_feet.larger(S::zero()).powf(S::c(FLOW_POWER)) / (S::c(DIAMETER) * slope.powf(S::c(SLOPE_POWER)));
    let diameter = Length::from_inches(inches);
    check(Input::PipeDiameter, diameter.meters())?;
    Ok(diameter)
}

/// Mass in a flow of the code: at 60 degF and 30 inches of mercury.
///
/// # Errors
///
/// [`Error::Liquid`] for a gas that is none there.
pub fn low_pressure_pipe_mass_flow<S: Scalar>(gas: &Gas<S>, flow: ActualVolumeFlow<S>) -> Result<MassFlow<S>> {
    let pressure = AbsolutePressure::from_inches_of_mercury(S::c(30.0));
    let density = gas.density(pressure, Temperature::from_fahrenheit(S::c(60.0)))?.kilograms_per_cubic_meter();
    Ok(MassFlow::from_kilograms_per_second(flow.cubic_meters_per_second() * density))
}

/// dH / (Cr L), or zero where no pressure is lost.
fn slope<S: Scalar>(length: Length<S>, drop: PressureDifference<S>, relative_density: S, viscosity: S) -> Result<S> {
    if check(Input::PipeLength, length.meters())? <= S::zero() {
        // A pipe without length would pass any flow.
        return Err(Error::OutOfRange { input: Input::PipeLength, given: 0.0 });
    }
    check(Input::PipeDrop, drop.pascals())?;
    let centipoises = viscosity * S::c(1e3);
    let factor = S::c(0.003_54 * RANKINE) * relative_density * (centipoises / relative_density).powf(S::c(0.152));
    let slope = drop.inches_of_water() / (factor * length.feet());
    Ok(if slope > S::zero() && slope.is_finite() { slope } else { S::zero() })
}
