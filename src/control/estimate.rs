//! What the fire does now, from three readings.

use core::borrow::Borrow;

use crate::burner::{Burner, Prepared};
use crate::error::Result;
use crate::limits::{Input, check};
use crate::quantity::{ActualVolumeFlow, GaugePressure, MassFlow, NetHeatRate, PressureDifference, Temperature};
use crate::scalar::Scalar;

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
    /// Air at the blower's inlet, for [`AirChanges`](super::AirChanges).
    pub air_flow: ActualVolumeFlow<S>,
    /// Air.
    pub air: MassFlow<S>,
    /// Air supplied over air needed; none where no gas flows.
    pub air_ratio: Option<S>,
    /// Static pressure where the jets stand.
    pub back_pressure: GaugePressure<S>,
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
    /// pressure is above its curve or the gauge too low to tell. Every error means that nothing is known: count it as
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
