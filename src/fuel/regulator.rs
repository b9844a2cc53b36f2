//! A regulator droops: the more gas flows, the lower the pressure it holds.

use crate::error::{Error, Result};
use crate::interpolate::{Curve, POINT_CAP};
use crate::limits::{Input, check};
use crate::quantity::{GaugePressure, MassFlow};
use crate::scalar::Scalar;
use crate::solve;

/// A regulator known by the pressure it holds at some flows, at one setting of its screw.
#[derive(Clone, Debug, PartialEq)]
pub struct Regulator<S = f64> {
    held: Curve<S>,
}

impl<S: Scalar> Regulator<S> {
    /// From points of flow and outlet gauge pressure, the flow rising from zero.
    ///
    /// # Range
    ///
    /// 2 to 16 points.
    ///
    /// # Errors
    ///
    /// A pressure out of range; [`Error::Points`] when the flow does not rise from zero or a pressure rises with it.
    pub fn new(points: &[(MassFlow<S>, GaugePressure<S>)]) -> Result<Self> {
        let refused = Error::Points { input: Input::GasDraw };
        let mut plain = heapless::Vec::<(S, S), POINT_CAP>::new();
        for (flow, gauge) in points {
            let flow = check(Input::GasDraw, flow.kilograms_per_second())?;
            let gauge = check(Input::GaugePressure, gauge.pascals())?;
            plain.push((flow, gauge)).map_err(|_| refused)?;
        }
        let falls = plain.windows(2).all(|pair| pair[1].1 <= pair[0].1);
        if !falls || plain.first().is_none_or(|first| first.0 > S::zero()) {
            return Err(refused);
        }
        Ok(Self { held: Curve::new(Input::GasDraw, &plain)? })
    }

    /// The lock-up pressure: what it holds without flow, the most it gives at this setting of its screw.
    #[must_use]
    pub fn lock_up(&self) -> GaugePressure<S> {
        GaugePressure::from_pascals(self.held.value(S::zero()))
    }

    /// How far the pressure falls from no flow to a flow, pascals; beyond the last point it falls on as it did there.
    #[must_use]
    pub fn droop(&self, flow: MassFlow<S>) -> S {
        self.held.value(S::zero()) - self.held.value(flow.kilograms_per_second())
    }

    /// What the gauge must read with the valve shut, so that it reads `gauge` at a flow.
    #[must_use]
    pub fn reading_without_flow(&self, gauge: GaugePressure<S>, flow: MassFlow<S>) -> GaugePressure<S> {
        GaugePressure::from_pascals(gauge.pascals() + self.droop(flow))
    }

    /// What the gauge falls to when gas flows, from what it was set to without flow; `flow_at` is the jet's flow at a
    /// gauge reading.
    ///
    /// # Errors
    ///
    /// Those of `flow_at` at the setting itself.
    ///
    /// # Examples
    ///
    /// A regulator that falls 1 psi a gram a second, and a jet that passes half a gram a second whatever it reads:
    ///
    /// ```
    /// use jetwright::fuel::Regulator;
    /// use jetwright::quantity::{GaugePressure, MassFlow};
    /// let points = [(0.0_f64, 10.0), (2.0, 8.0)];
    /// let points = points.map(|(flow, gauge)| (MassFlow::from_grams_per_second(flow), GaugePressure::from_psi(gauge)));
    /// let regulator = Regulator::new(&points).unwrap();
    /// let flowing = regulator.flowing(GaugePressure::from_psi(6.0), |_| Ok(MassFlow::from_grams_per_second(0.5)));
    /// assert!((flowing.unwrap().psi() - 5.5).abs() < 1e-9);
    /// ```
    pub fn flowing(
        &self,
        set: GaugePressure<S>,
        flow_at: impl Fn(GaugePressure<S>) -> Result<MassFlow<S>>,
    ) -> Result<GaugePressure<S>> {
        flow_at(set)?;
        let set = check(Input::GaugePressure, set.pascals())?;
        let excess =
            |gauge: S| flow_at(GaugePressure::from_pascals(gauge)).map_or(-set, |flow| gauge + self.droop(flow) - set);
        if excess(S::zero()) >= S::zero() {
            return Ok(GaugePressure::from_pascals(S::zero()));
        }
        let root = solve::root(Input::GaugePressure, S::zero(), set, excess)?;
        Ok(GaugePressure::from_pascals(root.x))
    }
}
