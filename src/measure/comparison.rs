//! Two measurements of one jet, some time apart.

use super::odds::odds_beyond;
use super::weighing::{Measured, Trend};
use crate::scalar::Scalar;

/// Standard deviations from which a difference is more than chance.
const REAL: f64 = 2.0;

/// What a later measurement says against an earlier one.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Finding {
    /// It passes more: the bore is worn, or was drilled out.
    Worn,
    /// It passes less, alike at every flow: dirt or a burr in the bore.
    Dirty,
    /// It passes less the more flows: something before the jet gives way, the regulator, the line or a filter.
    Drooping,
    /// The difference means nothing.
    NoDifference,
}

/// One measurement, as it is compared.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Compared<S = f64> {
    /// Gas passed over the model's.
    pub factor: S,
    /// Standard uncertainty without the gauge, as a share.
    pub standard: S,
    /// The same by the gauge.
    pub gauge: S,
    /// How the factor changes with the flow.
    pub trend: Option<Trend<S>>,
}

impl<S: Scalar> From<&Measured<S>> for Compared<S> {
    fn from(measured: &Measured<S>) -> Self {
        let (factor, gauge, trend) = (measured.factor, measured.gauge, measured.trend);
        Self { factor, standard: measured.without_gauge(), gauge, trend }
    }
}

/// Two measurements compared.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Comparison<S = f64> {
    /// What the jet passes more now, as a share; below zero when it passes less.
    pub change: S,
    /// Standard uncertainty of that.
    pub standard: S,
    /// How often chance alone makes so large a difference.
    pub odds: S,
    /// What it means.
    pub finding: Finding,
}

/// Compares a measurement with an earlier one of the same jet, both read from the same gauge or not.
///
/// z = ln(now / before) / sqrt(u_now^2 + u_before^2), the odds from the normal distribution; real from two standard
/// deviations. What the same gauge does to both drops out.
///
/// # Examples
///
/// ```
/// use jetwright::measure::{Compared, Finding, compare};
/// let before = Compared { factor: 1.00_f64, standard: 0.01, gauge: 0.0125, trend: None };
/// let worn = compare(&before, &Compared { factor: 1.06, ..before }, true);
/// // 5.8 % in the logarithm over 1.4 %: four standard deviations, once in 26 000.
/// assert!(worn.finding == Finding::Worn && (worn.change - 0.06).abs() < 1e-12 && worn.odds < 1e-4);
/// // Another gauge leaves 2.3 %.
/// assert!((compare(&before, &worn_by_two(), false).standard - 0.0226).abs() < 1e-4);
/// # fn worn_by_two() -> Compared { Compared { factor: 1.02, standard: 0.01, gauge: 0.0125, trend: None } }
/// assert_eq!(compare(&before, &Compared { factor: 1.01, ..before }, true).finding, Finding::NoDifference);
/// assert_eq!(compare(&before, &Compared { factor: 0.94, ..before }, true).finding, Finding::Dirty);
/// ```
#[must_use]
pub fn compare<S: Scalar>(before: &Compared<S>, now: &Compared<S>, is_same_gauge: bool) -> Comparison<S> {
    let ratio = now.factor / before.factor;
    let of_gauge = |earlier: S, later: S| {
        if is_same_gauge { (later - earlier).squared() } else { earlier.squared() + later.squared() }
    };
    let standard = (before.standard.squared() + now.standard.squared() + of_gauge(before.gauge, now.gauge)).sqrt();
    let deviations = ratio.ln() / standard;
    // A fall with the flow that was not there before; without an earlier trend the model's, which is none.
    let fall = now.trend.map(|now| {
        let none = Trend { slope: S::zero(), own: S::zero(), gauge: S::zero() };
        let earlier = before.trend.unwrap_or(none);
        let variance = now.own.squared() + earlier.own.squared() + of_gauge(earlier.gauge, now.gauge);
        (now.slope - earlier.slope) / variance.sqrt()
    });
    let finding = if fall.is_some_and(|fall| fall < -S::c(REAL)) {
        Finding::Drooping
    } else if deviations.abs() < S::c(REAL) {
        Finding::NoDifference
    } else if deviations > S::zero() {
        Finding::Worn
    } else {
        Finding::Dirty
    };
    let odds = odds_beyond(match fall {
        Some(fall) if finding == Finding::Drooping => fall,
        _ => deviations,
    });
    Comparison { change: ratio - S::one(), standard, odds, finding }
}
