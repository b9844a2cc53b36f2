//! What the fire does now, from three readings.

use core::borrow::Borrow;

use crate::burner::{Burner, Prepared};
use crate::error::{Error, Result};
use crate::limits::{Input, check};
use crate::quantity::{ActualVolumeFlow, GaugePressure, MassFlow, NetHeatRate, PressureDifference, Temperature};
use crate::scalar::Scalar;

/// Above this share of what the blower holds against a closed path its pressure is not told from a closed path's: a
/// gauge may be off by as much. Invented.
const NOT_CLOSED: f64 = 0.95;

/// A blower that reads less than this share of what its air would need ahead of the jets does not run as its curve
/// says: the path takes pressure and gives none. Half, because readings and models are off by less. Invented.
const LEFT_BY_PATH: f64 = 0.5;

/// Three readings of a running burner.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Readings<S = f64> {
    /// Gauge pressure before the jets, while gas flows.
    pub gauge: GaugePressure<S>,
    /// Temperature of the gas there.
    pub gas_temperature: Temperature<S>,
    /// Static pressure at the blower's outlet, before the damper.
    pub blower_pressure: PressureDifference<S>,
}

/// What they mean. Gas and air are those of all heads together.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Estimate<S = f64> {
    /// Gas, for [`Totals`](super::Totals) of gas, heat and money.
    pub gas: MassFlow<S>,
    /// Its heat, net.
    pub heat_net: NetHeatRate<S>,
    /// Air at the blower's inlet. While purging no gas flows and there is no estimate: [`air_without_gas`] is
    /// what [`AirChanges`](super::AirChanges) count.
    pub air_flow: ActualVolumeFlow<S>,
    /// Air.
    pub air: MassFlow<S>,
    /// Air supplied over air needed; none where the air ahead of the jets holds the gas back.
    pub air_ratio: Option<S>,
    /// Static pressure where the jets stand.
    pub back_pressure: GaugePressure<S>,
}

/// Air at the blower's inlet while no gas flows, from the blower's pressure alone by its curve: what
/// [`AirChanges`](super::AirChanges) count while purging.
///
/// `least` is a little less than the pressure that was seen with the damper fully open: a blower that stands or turns
/// slowly reads less, which by its curve would be more air. It tells nothing of the gas: that none is there must be
/// known otherwise.
///
/// # Errors
///
/// A pressure below zero, out of range or no number; [`Error::NoSolution`] under `least`, where that is zero, and
/// above 95 % of what the blower holds against a closed path, which reads as much without any air. Every error means
/// that the air is not known: count zero, which begins the air changes anew.
///
/// # Source
///
/// [`Blower::flow_at`](crate::air::Blower::flow_at), also for an example; the 95 % are invented.
pub fn air_without_gas<S: Scalar, B: Borrow<Burner<S>>>(
    prepared: &Prepared<B, S>,
    blower_pressure: PressureDifference<S>,
    least: PressureDifference<S>,
) -> Result<ActualVolumeFlow<S>> {
    let pascals = check(Input::BlowerPressure, blower_pressure.pascals())?;
    let least = check(Input::BlowerPressure, least.pascals())?;
    let blower = prepared.blower();
    let (peak, highest) = blower.peak();
    let left = blower.pressures().filter(|&(flow, _)| flow <= peak.cubic_meters_per_second());
    let closed = S::c(NOT_CLOSED) * left.fold(highest.pascals(), |least, (_, pressure)| pressure.smaller(least));
    let refused = |nearest: S| Error::NoSolution { input: Input::BlowerPressure, nearest: nearest.to_f32() };
    if pascals > closed {
        return Err(refused(closed));
    }
    if !(least > S::zero() && pascals >= least) {
        return Err(refused(least));
    }
    blower.flow_at(blower_pressure)
}

impl<S: Scalar> Readings<S> {
    /// Heat and air ratio of a burner prepared for the weather and the altitude.
    ///
    /// The blower's pressure gives the air by its curve in this air, air and gas the pressure ahead of the jets by the
    /// head, gauge and that pressure the gas. No damper mark is trusted. Near the highest point of the blower's curve
    /// a small error of the pressure is a large one of the air.
    ///
    /// # Errors
    ///
    /// A reading out of range or no number; [`Error::NoSolution`](crate::Error::NoSolution) where the blower's
    /// pressure is above its curve, or less than half of what its air would need ahead of the jets, as of a blower that
    /// stands, or the gauge too low to tell. Every error means that nothing is known: count it as
    /// gas off.
    ///
    /// # Source
    ///
    /// Gas within half a percent of the jet's own model, within three percent where the flow in a bore turns turbulent;
    /// the model is itself sure within a few percent.
    pub fn estimate<B: Borrow<Burner<S>>>(&self, prepared: &Prepared<B, S>) -> Result<Estimate<S>> {
        check(Input::BlowerPressure, self.blower_pressure.pascals().abs())?;
        let air_flow = prepared.blower().flow_at(self.blower_pressure)?;
        let air = air_flow.at(prepared.conditions().site.air_density());
        let (gas, back_pressure) = prepared.gas_with_air(self.gauge, self.gas_temperature, air)?;
        let left = S::c(LEFT_BY_PATH) * back_pressure.pascals();
        if self.blower_pressure.pascals() < left {
            return Err(Error::NoSolution { input: Input::BlowerPressure, nearest: left.to_f32() });
        }
        Ok(Estimate {
            gas,
            heat_net: prepared.conditions().gas.net_heating_value().of(gas),
            air_flow,
            air,
            air_ratio: prepared.air_need().air_ratio(air, gas),
            back_pressure,
        })
    }
}
