//! How cold the gas comes to the jet: throttling cools it, the hose warms it again.

use crate::error::Result;
use crate::gas::Gas;
use crate::limits::{Input, check};
use crate::quantity::{AbsolutePressure, Length, MassFlow, Temperature};
use crate::scalar::Scalar;
use crate::solve;

/// Heat a hose takes from still air, W/(m2 K): free convection and radiation (common practice, no source).
const STILL_AIR: f64 = 8.0;
/// Coldest temperature sought, K.
const COLDEST: f64 = 180.0;

/// The gas temperature behind a regulator: h(T, p after) = h(T before, p before).
///
/// # Units
///
/// Both pressures absolute; before it the vapor stands over its liquid, or is any gas.
///
/// # Errors
///
/// [`Error::Liquid`](crate::Error::Liquid) far into the liquid range; [`Error::NoSolution`](crate::Error::NoSolution)
/// when it would be below -93 degC.
///
/// # Source
///
///
/// # Examples
///
/// ```
/// use jetwright::fuel::throttled;
/// use jetwright::gas::{Gas, Species};
/// use jetwright::quantity::{AbsolutePressure, Temperature};
/// let (before, after) = (AbsolutePressure::from_pascals(636_602.0), AbsolutePressure::from_pascals(124_868.0));
/// let behind = throttled(&Gas::<f64>::from(Species::Propane), before, Temperature::from_celsius(10.0), after).unwrap();
/// // The reference equation has 11.88 K.
/// assert!((10.0 - behind.celsius() - 11.88).abs() < 0.2);
/// ```
pub fn throttled<S: Scalar>(
    gas: &Gas<S>,
    before: AbsolutePressure<S>,
    temperature: Temperature<S>,
    after: AbsolutePressure<S>,
) -> Result<Temperature<S>> {
    let enthalpy = gas.enthalpy(before, temperature)?;
    if after >= before {
        return Ok(temperature);
    }
    let root = solve::root(Input::GasTemperature, S::c(COLDEST), temperature.kelvin() + S::one(), |kelvin| {
        // Too cold for a gas is colder than sought.
        gas.enthalpy(after, Temperature::from_kelvin(kelvin)).map_or(-S::c(1e6), |there| there - enthalpy)
    })?;
    Ok(Temperature::from_kelvin(root.x))
}

/// A hose that warms the gas on its way.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Hose<S = f64> {
    /// Length in the air.
    pub length: Length<S>,
    /// Outside diameter.
    pub outside: Length<S>,
    /// Heat it takes from the air, W/(m2 K); [`Hose::in_still_air`] has a usual value.
    pub coefficient: S,
}

impl<S: Scalar> Hose<S> {
    /// A hose in still air.
    #[must_use]
    pub fn in_still_air(length: Length<S>, outside: Length<S>) -> Self {
        Self { length, outside, coefficient: S::c(STILL_AIR) }
    }

    /// The gas temperature at its end: air - (air - T) exp(-U pi D L / (m cp)).
    ///
    /// # Errors
    ///
    /// Length or coefficient out of range; [`Error::Liquid`](crate::Error::Liquid).
    ///
    /// # Examples
    ///
    /// ```
    /// use jetwright::fuel::Hose;
    /// use jetwright::gas::{Gas, Species};
    /// use jetwright::quantity::{AbsolutePressure, Length, MassFlow, Temperature};
    /// let hose = Hose::in_still_air(Length::from_meters(3.0_f64), Length::from_millimeters(16.0));
    /// let (cold, air) = (Temperature::from_celsius(-2.0), Temperature::from_celsius(20.0));
    /// let (pressure, flow) = (AbsolutePressure::from_pascals(130_000.0), MassFlow::from_grams_per_second(0.65));
    /// let end = hose.warmed(&Gas::from(Species::Propane), pressure, cold, air, flow).unwrap();
    /// // By hand: 8 * 0.151 m2 over 0.65 g/s * 1.63 kJ/(kg K) is 1.14, and exp(-1.14) leaves a third of 22 K.
    /// assert!((end.celsius() - 13.0).abs() < 0.5);
    /// ```
    pub fn warmed(
        &self,
        gas: &Gas<S>,
        pressure: AbsolutePressure<S>,
        temperature: Temperature<S>,
        air: Temperature<S>,
        flow: MassFlow<S>,
    ) -> Result<Temperature<S>> {
        let length = check(Input::PipeLength, self.length.meters())?;
        let coefficient = check(Input::HoseCoefficient, self.coefficient)?;
        let (air, kelvin) = (air.kelvin(), temperature.kelvin());
        let warmer = Temperature::from_kelvin(kelvin + S::one());
        let capacity = gas.enthalpy(pressure, warmer)? - gas.enthalpy(pressure, temperature)?;
        let taken = coefficient * S::c(core::f64::consts::PI) * self.outside.meters() * length;
        let carried = flow.kilograms_per_second() * capacity;
        if carried <= S::zero() {
            return Ok(Temperature::from_kelvin(air));
        }
        Ok(Temperature::from_kelvin(air + (kelvin - air) * (-taken / carried).exp()))
    }
}
