//! How sure a live estimate is.

use core::borrow::Borrow;

use super::estimate::{Estimate, Readings};
use crate::burner::{Burner, Prepared};
use crate::error::Result;
use crate::limits::{Input, check};
use crate::quantity::{GaugePressure, PressureDifference, Temperature};
use crate::scalar::Scalar;

/// How far each reading and each model may be off, two standard deviations.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ReadingSpreads<S = f64> {
    /// Of the gauge.
    pub gauge: PressureDifference<S>,
    /// Of the gas temperature, K.
    pub gas_temperature: S,
    /// Of the blower's pressure.
    pub blower_pressure: PressureDifference<S>,
    /// Of the jet's flow at a given pressure, as a share: the sheet tells it, a weighing narrows it.
    pub jet: S,
    /// Of the blower's flow at a given pressure, as a share.
    pub blower_curve: S,
}

/// Expanded uncertainties of an [`Estimate`] at two standard deviations, as shares of its numbers.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EstimateSpread<S = f64> {
    /// Of gas and heat.
    pub gas: S,
    /// Of the air.
    pub air: S,
    /// Of the air ratio.
    pub air_ratio: S,
}

/// What the error of one reading or model does, as logarithms.
struct Effect<S> {
    gas: S,
    air: S,
}

impl<S: Scalar> Readings<S> {
    /// The estimate and how sure it is: the root of the sum of squares of half the change from one end of a reading's
    /// spread to the other, and of the models' spreads.
    ///
    /// A reading that moves gas and air together moves their ratio by the difference. Costs seven estimates, so ask it
    /// now and then and not in every tick; [`Readings::estimate`] alone costs what it did.
    ///
    /// # Errors
    ///
    /// Those of [`Readings::estimate`], also where a reading means nothing at both ends of its spread (where at one, the
    /// other counts twice); a spread out of range or no number.
    ///
    /// # Source
    ///
    /// JCGM 100:2008, 5.1.3, note 2: differences over the spread in place of derivatives.
    pub fn estimate_with_spread<B: Borrow<Burner<S>>>(
        &self,
        prepared: &Prepared<B, S>,
        spreads: &ReadingSpreads<S>,
    ) -> Result<(Estimate<S>, EstimateSpread<S>)> {
        let here = self.estimate(prepared)?;
        let gauge = check(Input::PressureUncertainty, spreads.gauge.pascals())?;
        let kelvin = check(Input::TemperatureUncertainty, spreads.gas_temperature)?;
        let blower = check(Input::PressureUncertainty, spreads.blower_pressure.pascals())?;
        let jet = check(Input::UncertaintyShare, spreads.jet)?;
        let curve = check(Input::UncertaintyShare, spreads.blower_curve)?;
        let moved = |gauge: S, kelvin: S, blower: S| {
            Readings {
                gauge: GaugePressure::from_pascals(self.gauge.pascals() + gauge),
                gas_temperature: Temperature::from_kelvin(self.gas_temperature.kelvin() + kelvin),
                blower_pressure: PressureDifference::from_pascals(self.blower_pressure.pascals() + blower),
            }
            .estimate(prepared)
        };
        let zero = S::zero();
        let effects = [
            effect(&here, moved(gauge, zero, zero), moved(-gauge, zero, zero))?,
            effect(&here, moved(zero, kelvin, zero), moved(zero, -kelvin, zero))?,
            effect(&here, moved(zero, zero, blower), moved(zero, zero, -blower))?,
            Effect { gas: jet, air: zero },
            Effect { gas: zero, air: curve },
        ];
        let spread = |of: fn(&Effect<S>) -> S| effects.iter().fold(zero, |sum, each| sum + of(each).squared()).sqrt();
        let (gas, air) = (spread(|each| each.gas), spread(|each| each.air));
        Ok((here, EstimateSpread { gas, air, air_ratio: spread(|each| each.air - each.gas) }))
    }
}

/// Half the change between the two ends of a reading's spread.
fn effect<S: Scalar>(here: &Estimate<S>, above: Result<Estimate<S>>, below: Result<Estimate<S>>) -> Result<Effect<S>> {
    let (high, low, share) = match (above, below) {
        (Ok(above), Ok(below)) => (above, below, S::c(0.5)),
        (Ok(above), Err(_)) => (above, *here, S::one()),
        (Err(_), Ok(below)) => (*here, below, S::one()),
        (Err(error), Err(_)) => return Err(error),
    };
    let change = |high: S, low: S| share * (high / low).ln();
    Ok(Effect {
        gas: change(high.gas.kilograms_per_second(), low.gas.kilograms_per_second()),
        air: change(high.air.kilograms_per_second(), low.air.kilograms_per_second()),
    })
}
