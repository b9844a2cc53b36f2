//! What the blower can feed, and the cures when that is not enough.

use super::rig::{Burner, Conditions};
use crate::error::Result;
use crate::limits::{Input, check};
use crate::orifice::BoreShape;
use crate::quantity::{GaugePressure, Length};
use crate::scalar::Scalar;
use crate::solve;

/// Most times the open area of a head is asked to grow.
const WIDEST: f64 = 20.0;

/// The four cures of a blower that is too small for a setting, each by itself; none where it alone cannot.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Remedies<S = f64> {
    /// A smaller jet at the same gauge.
    pub bore: Option<Length<S>>,
    /// A lower gauge setting with the same jet.
    pub gauge: Option<GaugePressure<S>>,
    /// More open area of the head, as a multiple.
    pub head_area: Option<S>,
    /// A faster wheel, as a multiple of its speed now; its power grows with the cube.
    pub wheel_speed: Option<S>,
}

impl<S: Scalar> Burner<S> {
    /// The highest gauge setting at which the blower, damper wide open, still gives an air ratio: the largest
    /// fire it can feed. The top of the accepted range when it feeds everything.
    ///
    /// # Errors
    ///
    /// An input out of range; [`Error::NoSolution`](crate::Error::NoSolution) when it feeds no setting.
    pub fn highest_gauge(&self, conditions: &Conditions<S>, air_ratio: S) -> Result<GaugePressure<S>> {
        check(Input::AirRatio, air_ratio)?;
        let range = Input::GaugePressure.range();
        let surplus = |gauge: S| -> Result<S> {
            let gauge = GaugePressure::from_pascals(gauge);
            self.surplus(conditions, &self.demand(conditions, gauge, air_ratio)?)
        };
        let top = S::c(range.max);
        if surplus(top).is_ok_and(|surplus| surplus >= S::zero()) {
            return Ok(GaugePressure::from_pascals(top));
        }
        // A gauge of a few pascals passes next to no gas and asks next to no air.
        let root = solve::root(Input::GaugePressure, S::c(5.0), top, |gauge| {
            // A gas that is a liquid at so high a pressure is beyond what the blower must feed.
            surplus(gauge).unwrap_or(-S::c(range.max))
        })?;
        Ok(GaugePressure::from_pascals(root.x))
    }

    /// What would let the blower feed a gauge setting at an air ratio, one change at a time.
    ///
    /// # Errors
    ///
    /// An input out of range.
    pub fn remedies(
        &self,
        conditions: &Conditions<S>,
        shape: &BoreShape<S>,
        gauge: GaugePressure<S>,
        air_ratio: S,
    ) -> Result<Remedies<S>> {
        let demand = self.demand(conditions, gauge, air_ratio)?;
        let surplus_of = |burner: &Self| -> S {
            let surplus =
                burner.demand(conditions, gauge, air_ratio).and_then(|need| burner.surplus(conditions, &need));
            surplus.unwrap_or(-S::c(Input::GaugePressure.range().max))
        };
        let smallest = S::c(Input::Bore.range().min);
        let bore = solve::root(Input::Bore, smallest, self.jet.bore.diameter().meters(), |diameter| {
            let jet = self.jet.with_bore(shape, Length::from_meters(diameter));
            jet.map_or(S::zero(), |jet| surplus_of(&Self { jet, ..self.clone() }))
        });
        let head_area = solve::root(Input::PortCount, S::one(), S::c(WIDEST), |factor| {
            surplus_of(&Self { head: self.head.widened(factor), ..self.clone() })
        });
        let blower = self.blower_here(conditions)?;
        let fastest = S::c(Input::SpeedRatio.range().max);
        let wheel_speed = solve::root(Input::SpeedRatio, S::one(), fastest, |speed| {
            blower
                .scaled(blower.density(), speed, S::one())
                .map_or(S::zero(), |faster| faster.static_pressure(demand.air_flow).pascals())
                - demand.blower_pressure.pascals()
        });
        Ok(Remedies {
            bore: bore.ok().map(|root| Length::from_meters(root.x)),
            gauge: self.highest_gauge(conditions, air_ratio).ok(),
            head_area: head_area.ok().map(|root| root.x),
            wheel_speed: wheel_speed.ok().map(|root| root.x),
        })
    }
}
