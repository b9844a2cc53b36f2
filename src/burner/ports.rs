//! What passes one port, and how the flame stands on it.

use super::gradient::{FLASHBACK_SCATTER, FlameGradients};
use super::rig::{Burner, Conditions, Feed};
use super::running::Running;
use crate::error::Result;
use crate::limits::{Input, check};
use crate::quantity::{NetHeatRate, PressureDifference, Speed};
use crate::scalar::Scalar;

/// The ports of a running burner.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PortState<S = f64> {
    /// Mean speed of the mixture.
    pub speed: Speed<S>,
    /// Reynolds number of a port.
    pub reynolds_number: S,
    /// Wall gradient, 1/s.
    pub gradient: S,
    /// Fire of one port, or of the whole slot.
    pub heat: NetHeatRate<S>,
    /// Fire by the open area, W/m2.
    pub heat_per_area: S,
    /// Pressure the head takes as warm as it is.
    pub pressure: PressureDifference<S>,
    /// Pressure it takes of the same flow while it is as cold as the air.
    pub pressure_cold: PressureDifference<S>,
    /// What a flame withstands there; none outside the range of air ratios or for a gas whose flames are not measured.
    pub flame: Option<FlameGradients<S>>,
}

impl<S: Scalar> PortState<S> {
    /// Whether flashback is possible: the gradient is below the flashback gradient with its scatter, and the hole, of
    /// this narrowest width, m, is wider than what stops a flame cold. None where it is not known.
    #[must_use]
    pub fn may_run_back(&self, narrowest: S) -> Option<bool> {
        self.flame.map(|flame| {
            self.gradient < flame.flashback * S::c(FLASHBACK_SCATTER) && narrowest > flame.quenching_distance.meters()
        })
    }
}

impl<S: Scalar> Burner<S> {
    /// The state of the ports of a burner that runs.
    ///
    /// # Errors
    ///
    /// A temperature out of range; [`Error::MissingProperty`](crate::Error::MissingProperty).
    pub fn port_state(&self, conditions: &Conditions<S>, running: &Running<S>) -> Result<PortState<S>> {
        conditions.checked()?;
        conditions.gas.mixture().known_to_burn()?;
        check(Input::HeadCount, self.head_count)?;
        let air = self.air_of_one_head(running.air.kilograms_per_second());
        let flow = self.head_need(conditions, &conditions.air(), Feed::of(&running.jet), air).head;
        let cold = Conditions { mixture_temperature: conditions.site.air_temperature(), ..*conditions };
        let heat = running.jet.heat_net.watts();
        let flame = running
            .air_ratio
            .and_then(|ratio| FlameGradients::new(conditions, ratio, conditions.mixture_temperature).ok());
        Ok(PortState {
            speed: flow.speed,
            reynolds_number: flow.reynolds_number,
            gradient: self.head.wall_gradient(&flow),
            heat: NetHeatRate::from_watts(heat / self.head.ports().unwrap_or(S::one())),
            heat_per_area: heat / self.head.area().square_meters(),
            pressure: flow.pressure,
            pressure_cold: self.head_need(&cold, &cold.air(), Feed::of(&running.jet), air).head.pressure,
            flame,
        })
    }
}
