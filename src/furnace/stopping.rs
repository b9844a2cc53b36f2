//! The draft of a hot chamber through what stands open, such as a stopped burner.

use super::surface::{AIR_GAS_CONSTANT, GRAVITY};
use crate::error::Result;
use crate::limits::{Input, check};
use crate::quantity::{AbsolutePressure, Area, Length, MassFlow, PressureDifference, Temperature};
use crate::scalar::Scalar;

/// Draft of a hot column: p g H / R (1/T_room - 1/T_hot).
///
/// # Errors
///
/// An input out of range.
///
/// # Examples
///
/// ```
/// use jetwright::furnace::draft_pressure;
/// use jetwright::quantity::{AbsolutePressure, Length, Temperature};
/// let draft = draft_pressure(
///     AbsolutePressure::from_hectopascals(835.0_f64),
///     Temperature::from_celsius(20.0),
///     Temperature::from_celsius(1300.0),
///     Length::from_meters(0.5),
/// );
/// // Air 0.992 against 0.185 kg/m3 over half a meter: 4 Pa.
/// assert!((draft.unwrap().pascals() - 3.96).abs() < 0.02);
/// ```
pub fn draft_pressure<S: Scalar>(
    ambient: AbsolutePressure<S>,
    room: Temperature<S>,
    hot: Temperature<S>,
    height: Length<S>,
) -> Result<PressureDifference<S>> {
    check(Input::StationPressure, ambient.pascals())?;
    check(Input::AirTemperature, room.kelvin())?;
    check(Input::ChamberTemperature, hot.kelvin())?;
    check(Input::DraftHeight, height.meters())?;
    let lighter = (hot.kelvin() - room.kelvin()) / (room.kelvin() * hot.kelvin());
    let column = ambient.pascals() * S::c(GRAVITY / AIR_GAS_CONSTANT) * height.meters();
    Ok(PressureDifference::from_pascals(column * lighter))
}

/// What a draft drives through an opening: 0.6 A sqrt(2 density dp), at the temperature of what passes.
///
/// # Source
///
/// Sharp-edged opening, coefficient 0.6 (ISO 5167-2 as the opening grows small beside its approach).
///
/// # Errors
///
/// An input out of range.
pub fn draft_flow<S: Scalar>(
    draft: PressureDifference<S>,
    opening: Area<S>,
    ambient: AbsolutePressure<S>,
    passing: Temperature<S>,
) -> Result<MassFlow<S>> {
    check(Input::ExhaustArea, opening.square_meters())?;
    check(Input::StationPressure, ambient.pascals())?;
    check(Input::ChamberTemperature, passing.kelvin())?;
    let density = ambient.pascals() / (S::c(AIR_GAS_CONSTANT) * passing.kelvin());
    let drop = draft.pascals().larger(S::zero());
    Ok(MassFlow::from_kilograms_per_second(S::c(0.6) * opening.square_meters() * (S::c(2.0) * density * drop).sqrt()))
}
