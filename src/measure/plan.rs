//! How long to weigh.

use super::weighing::Reading;
use crate::quantity::{Duration, Mass, MassFlow};
use crate::scalar::Scalar;

/// Where the scale and the clock leave this share of what the gauge, the temperature and the gas leave, longer is for
/// nothing.
const ENOUGH: f64 = 0.5;

/// A weighing planned.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Plan<S = f64> {
    /// Before this the scale says less than is known of the hole already.
    pub least: Duration<S>,
    /// After this a longer weighing is hardly surer.
    pub enough: Duration<S>,
    /// Gas the jet passes in that time.
    pub mass: Mass<S>,
    /// Standard uncertainty of the weighing then, as a share.
    pub weighed: S,
    /// Standard uncertainty joined with the model then, as a share.
    pub joined: S,
}

/// Plans a weighing of a flow read so well, where the gauge and the rest leave a standard uncertainty of `others` and
/// the hole is known to `known`, both as shares.
///
/// The scale and the clock leave A / t, A = sqrt((u_mass / flow)^2 + u_time^2); least = A / known, enough = A over half
/// of the others.
///
/// # Examples
///
/// ```
/// use jetwright::measure::{Reading, plan};
/// use jetwright::quantity::{Mass, MassFlow};
/// let reading = Reading::of_scale(Mass::from_grams(20.0_f64));
/// let plan = plan(MassFlow::from_grams_per_second(0.5), &reading, 0.015, 0.06);
/// // By hand: 20 g / sqrt 6 over 0.5 g/s are 16.3 s, and a second of the clock: 272 s to 6 %, 36 min to 0.75 %.
/// assert!((plan.least.seconds() - 272.7).abs() < 1.0 && (plan.enough.minutes() - 36.4).abs() < 0.1);
/// ```
#[must_use]
pub fn plan<S: Scalar>(flow: MassFlow<S>, reading: &Reading<S>, others: S, known: S) -> Plan<S> {
    let half = S::c(0.5);
    let by_mass = half * reading.mass.kilograms() / flow.kilograms_per_second();
    let by_time = half * reading.time.seconds();
    let seconds = (by_mass.squared() + by_time.squared()).sqrt();
    let own = S::c(ENOUGH) * others;
    let enough = seconds / own;
    let weighed = (own.squared() + others.squared()).sqrt();
    Plan {
        least: Duration::from_seconds(seconds / known),
        enough: Duration::from_seconds(enough),
        mass: Mass::from_kilograms(flow.kilograms_per_second() * enough),
        weighed,
        joined: weighed * known / (weighed.squared() + known.squared()).sqrt(),
    }
}
