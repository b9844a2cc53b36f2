//! A measurement beside the model.

use super::odds::odds_beyond;
use super::settings::{Tie, UncertainJet};
use super::source::Source;
use super::weighing::Measured;
use crate::error::Result;
use crate::scalar::Float;

/// Standard deviations from which a measurement and the model cannot both be right: once in 16 000 by chance.
pub const BEYOND_BELIEF: f64 = 4.0;
/// Standard deviations from which the two are not averaged.
const DOUBTFUL: f64 = 2.0;

/// How a measurement and the model stand to each other.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Trust {
    /// They agree, and are joined.
    Agrees,
    /// They differ more than they should: the measurement stands alone.
    Doubtful,
    /// They contradict each other, and one of them must be found wrong first.
    BeyondBelief,
}

/// A measurement joined with the model.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Joined<S = f64> {
    /// Gas passed over the model's.
    pub factor: S,
    /// Weight of the measurement, 0 to 1; the model has the rest.
    pub weight: S,
    /// Standard uncertainty, as a share.
    pub standard: S,
    /// The same without the gauge.
    pub without_gauge: S,
    /// How many standard deviations lie between the two.
    pub deviations: S,
    /// How often chance alone makes so much.
    pub odds: S,
    /// What follows.
    pub trust: Trust,
}

/// The standard uncertainty of the model's flow for what is not known of the hole: bore, edge and coefficient.
///
/// # Errors
///
/// What [`Jet::flow`](crate::orifice::Jet::flow) refuses.
pub fn of_hole<F: Float>(jet: &UncertainJet<F>) -> Result<F> {
    let flow = jet.answers()?.gas;
    let part = |source: Source| (flow.contributions[source as usize] / flow.value).squared();
    Ok((part(Source::Bore) + part(Source::Edge) + part(Source::Hole)).sqrt())
}

/// Joins a measurement with a model of so much standard uncertainty, by inverse variance of the logarithms.
///
/// ln F = w ln F_measured, w = u_model^2 / (u_model^2 + u_measured^2), 1/u^2 = 1/u_model^2 + 1/u_measured^2. Where the
/// two lie more than two standard deviations apart the measurement stands alone.
///
/// # Source
///
/// Inverse-variance weighting, for instance Cox, Metrologia 39 (2002) 589 (from memory).
///
/// # Examples
///
/// ```
/// # use jetwright::measure::{Measured, Trust, join};
/// # use jetwright::orifice::Supply;
/// # use jetwright::quantity::{AbsolutePressure, GaugePressure, Length, Temperature};
/// # let supply = Supply { ambient: AbsolutePressure::from_pascals(83_500.0), gauge: GaugePressure::from_psi(6.0),
/// #     back: GaugePressure::from_psi(0.0), temperature: Temperature::from_celsius(15.0) };
/// let weighed = Measured { factor: 1.04_f64, coefficient: 0.82, effective_bore: Length::from_millimeters(1.53), own: 0.01,
///     gauge: 0.0, shared: 0.0, supply, trend: None };
/// let joined = join(&weighed, 0.03);
/// // By hand: the weights are as 9 to 1, the spread 0.03 / sqrt 10.
/// assert!((joined.weight - 0.9).abs() < 1e-12 && (joined.standard - 0.03 / 10.0_f64.sqrt()).abs() < 1e-12);
/// assert!((joined.factor.ln() - 0.9 * 1.04_f64.ln()).abs() < 1e-12 && joined.trust == Trust::Agrees);
/// ```
#[must_use]
pub fn join<F: Float>(measured: &Measured<F>, model_standard: F) -> Joined<F> {
    let (model, found) = (model_standard.squared(), measured.standard().squared());
    let log = measured.factor.ln();
    let deviations = (log / (model + found).sqrt()).abs();
    let trust = if deviations > F::c(BEYOND_BELIEF) {
        Trust::BeyondBelief
    } else if deviations > F::c(DOUBTFUL) {
        Trust::Doubtful
    } else {
        Trust::Agrees
    };
    let weight = if trust == Trust::Agrees { model / (model + found) } else { F::one() };
    let rest = ((F::one() - weight) * model_standard).squared();
    let spread = |standard: F| (rest + (weight * standard).squared()).sqrt();
    Joined {
        factor: (weight * log).exp(),
        weight,
        standard: spread(measured.standard()),
        without_gauge: spread(measured.without_gauge()),
        deviations,
        odds: odds_beyond(deviations),
        trust,
    }
}

impl<F: Float> Joined<F> {
    /// How later results hang on it, read from the same gauge or another.
    #[must_use]
    pub fn tie(&self, measured: &Measured<F>, is_same_gauge: bool) -> Tie<F> {
        let (gauge_weight, standard) =
            if is_same_gauge { (self.weight, self.without_gauge) } else { (F::zero(), self.standard) };
        Tie { supply: measured.supply, gauge_weight, expanded: F::c(2.0) * standard }
    }
}
