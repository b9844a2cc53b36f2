//! Purging: how often the air of the chamber has been changed.

use super::control_error::ControlError;
use super::fingerprint::Fingerprint;
use super::sum::Sum;
use crate::quantity::{ActualVolumeFlow, Duration};
use crate::scalar::Scalar;

/// Counts air changes of a chamber from the live air flow, and begins again whenever the air is lost.
///
/// How many are enough is decided by the code that applies: NFPA 86 asks for 4 before lighting, EN 746-2 for 5 (both
/// from memory; verify in the edition in force).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AirChanges<S = f64> {
    volume: S,
    needed: S,
    least_flow: S,
    last_flow: S,
    moved: Sum<S>,
}

impl<S: Scalar> AirChanges<S> {
    /// Nothing counted yet, for a chamber of a volume (m3) with everything the air passes behind it.
    ///
    /// Air under `least_flow` counts as lost.
    ///
    /// # Errors
    ///
    /// [`ControlError::Setting`] naming what is not a number above zero.
    ///
    /// # Examples
    ///
    /// ```
    /// use jetwright::control::AirChanges;
    /// use jetwright::quantity::{ActualVolumeFlow, Duration};
    /// let (flow, second) = (ActualVolumeFlow::from_liters_per_second, Duration::from_seconds(1.0));
    /// let mut changes = AirChanges::new(0.024, 4.0, flow(5.0)).unwrap();
    /// // 96 L at 10 L/s: ten seconds, of which each counts only with air at both of its ends.
    /// for _ in 0..10 { changes.count(flow(10.0), second); }
    /// assert!(!changes.are_enough());
    /// changes.count(flow(10.0), second);
    /// assert!(changes.are_enough());
    /// changes.count(flow(4.0), second);
    /// assert!(!changes.are_enough() && changes.so_far() == 0.0);
    /// ```
    pub fn new(volume: S, needed: S, least_flow: ActualVolumeFlow<S>) -> Result<Self, ControlError> {
        let least_flow = least_flow.cubic_meters_per_second();
        for (value, name) in
            [(volume, "volume of the chamber"), (needed, "air changes needed"), (least_flow, "least air flow")]
        {
            if !(value > S::zero() && value.is_finite()) {
                return Err(ControlError::Setting { name });
            }
        }
        // Two small numbers can have zero for their product.
        let is_any = volume * needed > S::zero();
        if !is_any {
            return Err(ControlError::Setting { name: "air needed" });
        }
        Ok(Self { volume, needed, least_flow, last_flow: S::zero(), moved: Sum::default() })
    }

    /// Counts the time since the last call, at the lesser of the flows at its two ends.
    ///
    /// It believes its clock: give it the least time that can have passed, as a
    /// [`Controller`](super::Controller) does.
    ///
    /// A flow or time that is no number, or too large for the sum, loses the air.
    pub fn count(&mut self, flow: ActualVolumeFlow<S>, elapsed: Duration<S>) {
        let (flow, seconds) = (flow.cubic_meters_per_second(), elapsed.seconds());
        let moved = flow.smaller(self.last_flow) * seconds;
        // A flow without end is refused twice: the sum below would not be finite either.
        let usable = flow >= self.least_flow && flow.is_finite() && seconds >= S::zero() && seconds.is_finite();
        if !(usable && ((self.moved.value() + moved) / self.volume).is_finite()) {
            self.restart();
            return;
        }
        self.moved.add(moved);
        self.last_flow = flow;
    }

    pub(super) fn fingerprint(&self, to: &mut Fingerprint) {
        to.numbers([self.volume, self.needed, self.least_flow, self.last_flow]);
        to.numbers(self.moved.parts());
    }

    /// Begins again.
    pub fn restart(&mut self) {
        self.moved = Sum::default();
        self.last_flow = S::zero();
    }

    /// Whether the air has been changed as often as needed since it was last lost.
    #[must_use]
    pub fn are_enough(&self) -> bool {
        // A little for the rounding of the sum.
        self.moved.value() >= self.needed * self.volume * (S::one() + S::c(4.0) * S::EPSILON)
    }

    /// Air changes counted.
    #[must_use]
    pub fn so_far(&self) -> S {
        self.moved.value() / self.volume
    }
}
