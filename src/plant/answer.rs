//! The one shape of an answer: numbers with how sure they are, and what can hurt.

use crate::plant::hazards::Hazards;

/// A number, SI, with its ends at k = 2 where they are known.
///
/// # Examples
///
/// ```
/// use jetwright::plant::Number;
/// let fire = Number::within(26_000.0, 1_300.0);
/// assert_eq!((fire.value, fire.low, fire.high), (26_000.0, Some(24_700.0), Some(27_300.0)));
/// assert_eq!(Number::alone(26_000.0).low, None);
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Number {
    /// The number.
    pub value: f64,
    /// The lower end.
    pub low: Option<f64>,
    /// The upper end.
    pub high: Option<f64>,
}

impl Number {
    /// A number of which nothing more is known.
    #[must_use]
    pub const fn alone(value: f64) -> Self {
        Self { value, low: None, high: None }
    }

    /// A number with an expanded uncertainty at k = 2.
    #[must_use]
    pub const fn within(value: f64, expanded: f64) -> Self {
        Self { value, low: Some(value - expanded), high: Some(value + expanded) }
    }

    /// Half the distance of its ends, where both are known.
    #[must_use]
    pub fn expanded(&self) -> Option<f64> {
        Some(0.5 * (self.high? - self.low?))
    }

    /// A number with an expanded uncertainty given as a share of it, where one is known.
    #[must_use]
    pub fn relative(value: f64, share: Option<f64>) -> Self {
        share.map_or(Self::alone(value), |share| Self::within(value, share * value))
    }
}

/// What a question finds, and what it warns of.
#[derive(Clone, Debug)]
pub struct Answer<T> {
    /// What was asked.
    pub found: T,
    /// What can hurt in that state.
    pub hazards: Hazards,
}
