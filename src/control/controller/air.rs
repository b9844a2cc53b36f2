//! The air as its sensors read it.

use crate::control::crosslimit::AirReading;
use crate::control::tick::Inputs;
use crate::quantity::ActualVolumeFlow;
use crate::scalar::Scalar;

/// By the sensor that is believed, and by a second one where it is fitted.
pub(super) struct Air<S> {
    /// m3/s.
    pub flow: S,
    pub second: Option<S>,
    pub heat: AirReading<S>,
}

impl<S: Scalar> Air<S> {
    pub fn of<const K: usize>(inputs: &Inputs<K, S>) -> Self {
        let flow = inputs.air_flow.cubic_meters_per_second();
        let second = inputs.second_air_flow.map(ActualVolumeFlow::cubic_meters_per_second);
        let believed = inputs.air.watts();
        let least = match second {
            Some(second) if second < flow && flow > S::zero() => believed * (second / flow),
            _ => believed,
        };
        Self { flow, second, heat: AirReading { believed, least } }
    }

    pub fn least_flow(&self) -> S {
        self.second.map_or(self.flow, |second| second.smaller(self.flow))
    }

    pub fn most(&self) -> S {
        self.second.map_or(self.flow, |second| second.larger(self.flow))
    }
}
