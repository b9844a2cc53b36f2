//! What is at fault in a tick: the mixture, a sensor, the clock, air or gas that is there unasked.

use super::air::Air;
use super::{Controller, duration, seconds};
use crate::control::clock::Timer;
use crate::control::crosslimit::MixtureFault;
use crate::control::reason::Reason;
use crate::control::sensors::SensorFault;
use crate::control::sequence::State;
use crate::control::tick::Inputs;
use crate::quantity::{Duration, NetHeatRate};
use crate::scalar::Scalar;

impl<const N: usize, const K: usize, S: Scalar> Controller<N, K, S> {
    /// Estimates the actuators to now, and limits gas and air against each other where there is a fire.
    pub(super) fn limit_now(
        &mut self,
        inputs: &Inputs<K, S>,
        air: &Air<S>,
        elapsed: Option<u32>,
    ) -> Result<(NetHeatRate<S>, NetHeatRate<S>), MixtureFault> {
        let time = elapsed.map_or(Duration::from_seconds(-S::one()), duration);
        if self.state == State::Firing {
            let limited = self.limit.step_by(inputs.wanted, inputs.gas, air.heat, time);
            return limited.fault.map_or(Ok((limited.gas, limited.air)), Err);
        }
        self.limit.estimate(time);
        let lighting = self.settings.lighting;
        match self.state {
            State::PrePurge | State::Ready | State::Lighting if !self.limit.believes_air(inputs.air) => {
                Err(MixtureFault::AirContradicts)
            }
            State::Lighting if !self.limit.has_air_by(inputs.gas, air.heat) => Err(MixtureFault::OutsideBand),
            _ => Ok((lighting, lighting)),
        }
    }

    /// The first thing that is at fault.
    pub(super) fn reason(
        &mut self,
        inputs: &Inputs<K, S>,
        air: &Air<S>,
        elapsed: Option<u32>,
        mixture: Option<MixtureFault>,
    ) -> Option<Reason> {
        let (live, milliseconds) = (self.state.asks_for_gas(), elapsed.unwrap_or(0));
        let time = duration(milliseconds);
        let mut sensors = None;
        for (place, (sensor, &reading)) in self.sensors.iter_mut().zip(&inputs.readings).enumerate() {
            if let Err(fault) = sensor.check(reading, time, live) {
                sensors = sensors.or(Some(Reason::Sensor(place as u8, fault)));
            }
        }
        let agreed = self.agreement.check(air.flow, air.second.unwrap_or(air.flow), time);
        let fitted = match (self.settings.has_second_air, air.second) {
            (true, None) => Err(SensorFault::NotANumber),
            (false, Some(_)) => Err(SensorFault::NotFitted),
            _ => Ok(()),
        };

        let gas = inputs.gas.watts();
        let shut = self.shut();
        let is_heat = |heat: S| heat.is_finite() && heat > -shut;
        let are_heats = is_heat(gas) && is_heat(inputs.air.watts());
        let is_shut = gas < shut;
        self.gas_unasked = if live || is_shut { Timer::default() } else { self.gas_unasked.after(milliseconds) };
        let goes_on = |timer: Option<Timer>| Some(timer.map_or(Timer::default(), |timer| timer.after(milliseconds)));
        // A sensor that is at fault may be the gas's. No number reads as shut in neither of the two comparisons: one of
        // them would do.
        let reads_shut = !live && is_shut && is_heat(gas) && sensors.is_none();
        self.gas_shut = if reads_shut { goes_on(self.gas_shut) } else { None };
        let reads_right = self.limit.believes_gas(inputs.gas) && self.limit.is_in_band_by(inputs.gas, air.heat);
        let lights_steadily = self.state == State::Lighting && reads_right;
        self.gas_steady = if lights_steadily { goes_on(self.gas_steady) } else { None };

        let runs_down =
            self.state == State::Off && self.in_state.seconds::<S>() <= seconds(self.settings.run_down_time);
        let stands = self.state == State::Off && !runs_down && inputs.chamber_is_cold;
        [
            elapsed.is_none().then_some(Reason::Late),
            sensors,
            agreed.err().or(fitted.err()).map(Reason::Air),
            (!are_heats).then_some(Reason::Mixture(MixtureFault::Reading)),
            (!self.is_heat_of(air.flow, inputs.air.watts())).then_some(Reason::AirHeat),
            (self.gas_unasked.seconds::<S>() > seconds(self.settings.closing_time)).then_some(Reason::GasUnasked),
            (stands && air.most() >= self.least_air()).then_some(Reason::AirWithoutBlower),
            mixture.map(Reason::Mixture),
        ]
        .into_iter()
        .find_map(|reason| reason)
    }

    /// Whether an air flow and its heat are of one air, to a factor of two; little of either may be noise.
    fn is_heat_of(&self, flow: S, heat: S) -> bool {
        let expected = flow * self.settings.air_heat;
        let is_little = expected.larger(heat) < self.least_air() * self.settings.air_heat;
        is_little || (heat <= S::c(2.0) * expected && expected <= S::c(2.0) * heat)
    }
}
