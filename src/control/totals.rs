//! Gas, heat and money so far.

use super::sum::Sum;
use crate::quantity::{Duration, Mass, MassFlow, NetHeatPerMass, PricePerMass};
use crate::scalar::Scalar;

/// What a fire has used since the count began.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Totals<S = f64> {
    heating_value: NetHeatPerMass<S>,
    price: PricePerMass<S>,
    gas: Sum<S>,
    unknown: Sum<S>,
}

impl<S: Scalar> Totals<S> {
    /// Nothing yet of a gas and at a price.
    ///
    /// # Examples
    ///
    /// ```
    /// use jetwright::control::Totals;
    /// use jetwright::quantity::{Duration, MassFlow, NetHeatPerMass, PricePerMass};
    /// let propane = NetHeatPerMass::from_joules_per_kilogram(46.3e6_f64);
    /// let mut totals = Totals::new(propane, PricePerMass::from_per_kilogram(2.0));
    /// for _ in 0..3600 {
    ///     totals.add(MassFlow::from_grams_per_second(0.5), Duration::from_seconds(1.0));
    /// }
    /// // 1.8 kg, 83.3 MJ, 3.60.
    /// assert!((totals.gas().kilograms() - 1.8).abs() < 1e-9);
    /// assert!((totals.heat_net_joules() / 83.34e6 - 1.0).abs() < 1e-9);
    /// assert!((totals.money() - 3.6).abs() < 1e-9);
    /// ```
    #[must_use]
    pub fn new(heating_value: NetHeatPerMass<S>, price: PricePerMass<S>) -> Self {
        Self { heating_value, price, gas: Sum::default(), unknown: Sum::default() }
    }

    /// Counts a flow over a time; one that is no number or below zero counts as unknown time.
    pub fn add(&mut self, gas: MassFlow<S>, elapsed: Duration<S>) {
        let (flow, seconds) = (gas.kilograms_per_second(), elapsed.seconds());
        if !(seconds >= S::zero() && seconds.is_finite()) {
            return;
        }
        if flow >= S::zero() && flow.is_finite() { self.gas.add(flow * seconds) } else { self.unknown.add(seconds) }
    }

    /// Gas used.
    #[must_use]
    pub fn gas(&self) -> Mass<S> {
        Mass::from_kilograms(self.gas.value())
    }

    /// Net heat made: gas times net heating value, J.
    #[must_use]
    pub fn heat_net_joules(&self) -> S {
        self.gas.value() * self.heating_value.joules_per_kilogram()
    }

    /// Money burnt: gas times price.
    #[must_use]
    pub fn money(&self) -> S {
        self.gas.value() * self.price.per_kilogram()
    }

    /// Time of which nothing is known, for want of a reading.
    #[must_use]
    pub fn unknown(&self) -> Duration<S> {
        Duration::from_seconds(self.unknown.value())
    }
}
