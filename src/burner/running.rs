//! A burner at a gauge setting and a damper opening: jet, air, head and chamber solved together.

use super::rig::{Burner, Conditions, Feed};
use crate::air::{OperatingPoint, operating_point};
use crate::error::Result;
use crate::orifice::JetFlow;
use crate::quantity::{ActualVolumeFlow, GaugePressure, MassFlow, PressureDifference, Speed};
use crate::scalar::Scalar;

/// What a burner does at one setting. Gas, heat and air are those of all heads together.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Running<S = f64> {
    /// The jets of one head.
    pub jet: JetFlow<S>,
    /// Gas of all heads.
    pub gas: MassFlow<S>,
    /// Air of all heads.
    pub air: MassFlow<S>,
    /// The same at the blower's inlet.
    pub air_flow: ActualVolumeFlow<S>,
    /// Air supplied over air needed; none where no gas flows.
    pub air_ratio: Option<S>,
    /// Static pressure of the blower.
    pub blower_pressure: PressureDifference<S>,
    /// Pressure lost in ducts and damper, and spent where the mixing tube is narrower than the last duct.
    pub path_loss: PressureDifference<S>,
    /// Static pressure where the jets stand.
    pub back_pressure: GaugePressure<S>,
    /// Pressure the heads take.
    pub head_pressure: PressureDifference<S>,
    /// Pressure in the chamber.
    pub chamber_pressure: PressureDifference<S>,
    /// Pressure the jets add.
    pub push: PressureDifference<S>,
    /// Speed of the mixture in the ports.
    pub port_speed: Speed<S>,
    /// Whether the blower runs left of its highest point, where it may surge.
    pub left_of_peak: bool,
    /// Evaluations the solution took.
    pub iterations: usize,
}

impl<S: Scalar> Burner<S> {
    /// Runs the burner at a gauge setting with the damper at an opening (0.1 to 1; without a damper it is
    /// not looked at).
    ///
    /// The blower's pressure, less ducts and damper, is the pressure the jets blow into; that pressure sets
    /// the gas; gas and air together need it at the head, less the jets' push, plus the chamber's.
    ///
    /// # Errors
    ///
    /// An input out of range; [`Error::NoSolution`](crate::Error::NoSolution) when the blower cannot hold the
    /// mixture against the head at any flow.
    pub fn run(&self, conditions: &Conditions<S>, gauge: GaugePressure<S>, opening: S) -> Result<Running<S>> {
        let damper = self.path.damper_loss_coefficient(opening)?;
        self.run_with_loss(conditions, gauge, damper)
    }

    pub(super) fn run_with_loss(
        &self,
        conditions: &Conditions<S>,
        gauge: GaugePressure<S>,
        damper_loss_coefficient: S,
    ) -> Result<Running<S>> {
        self.checked(conditions, gauge)?;
        let blower = self.blower_here(conditions)?;
        let here = conditions.air();
        let path_loss = |flow| self.path_loss(&here, flow, damper_loss_coefficient);
        let back_at = |flow| blower.static_pressure(flow).pascals() - path_loss(flow).pascals();
        let point: OperatingPoint<S> = operating_point(&blower, |flow| {
            let flow = ActualVolumeFlow::from_cubic_meters_per_second(flow);
            let air = self.air_of_one_head(flow.at(here.density).kilograms_per_second());
            match self.jet_flow(conditions, gauge, back_at(flow)) {
                Ok(jet) => {
                    let need = self.head_need(conditions, &here, Feed::of(&jet), air);
                    path_loss(flow).pascals() + need.back_pressure()
                }
                // Not met: every input was checked above. A number that is not finite ends the search.
                Err(_) => S::one() / S::zero(),
            }
        })?;
        let jet = self.jet_flow(conditions, gauge, back_at(point.flow))?;
        let air = point.flow.at(here.density);
        let one_head = self.air_of_one_head(air.kilograms_per_second());
        let need = self.head_need(conditions, &here, Feed::of(&jet), one_head);
        let gas = jet.mass_flow * self.head_count;
        Ok(Running {
            jet,
            gas,
            air,
            air_flow: point.flow,
            air_ratio: conditions.air_need().air_ratio(air, gas),
            blower_pressure: point.static_pressure,
            path_loss: path_loss(point.flow),
            back_pressure: GaugePressure::from_pascals(back_at(point.flow)),
            head_pressure: need.head.pressure,
            chamber_pressure: need.chamber_pressure,
            push: need.push,
            port_speed: need.head.speed,
            left_of_peak: point.left_of_peak,
            iterations: point.iterations,
        })
    }
}
