//! The times and heats a controller works by.

use super::clock::lasts;
use super::control_error::ControlError;
use super::crosslimit::CrossLimit;
use super::setpoints::SetpointTable;
use crate::quantity::{ActualVolumeFlow, Duration, NetHeatRate};
use crate::scalar::Scalar;

/// Times and heats of a [`Controller`](super::Controller), all finite.
///
/// Where a field names a value to start from, it is common practice without a source: watch your own burner.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ControllerSettings<S = f64> {
    /// Heat the fire is lit at, within the limiter's range: one that the sheet says lights a cold chamber.
    pub lighting: NetHeatRate<S>,
    /// Longest time from asking for gas until it reads what it was set to: as little more than its line takes to fill
    /// as the ticks allow, because so long the mixture may be too lean. Above nought; some seconds.
    pub lighting_time: Duration<S>,
    /// How long the gas must then read so, before the fire follows the heat wanted: longer than its line takes to fill.
    /// Above nought; half a second to two for a few metres of hose.
    pub steady_time: Duration<S>,
    /// Longest wait for the person after blowing through, before it is done again. Above nought; a minute.
    pub ready_time: Duration<S>,
    /// Longest time gas may still read after it was last asked for. Above nought; a second or two more than the gauge
    /// was seen to take to nought.
    pub closing_time: Duration<S>,
    /// Longest time between two ticks, milliseconds; less than half of what the counter holds, that a step back is told
    /// from one forward. A thousand ticks without a millisecond count as a clock that has stopped.
    pub longest_tick: u32,
    /// How far the time counted between two ticks may lie from the time that passed, as a share of it: the clock's
    /// own error, its milliseconds, and by how much the readings of a tick come before or after it.
    ///
    /// Air changes count the least time that can have passed, and actuators are reckoned for the whole range of it. The
    /// other times here, and what a sensor changes in a second, are by the controller's clock as it runs.
    ///
    /// From nought to under 0.3; 0.01 to 0.03 for a crystal and ticks of 100 ms: one millisecond of them is 0.01.
    pub clock_tolerance: S,
    /// Air under this is lost. Above nought; half of what the smallest fire has.
    pub least_air: ActualVolumeFlow<S>,
    /// How far two readings of the air flow may differ, as a share, and for how long. Both above nought; 0.1 and a
    /// second for two sensors of 3 %. Without a second reading they decide nothing.
    pub air_agreement: (S, Duration<S>),
}

impl<S: Scalar> ControllerSettings<S> {
    /// Refuses what is not usable, or does not go with the table and the limiter.
    pub(super) fn check<const N: usize>(
        &self,
        table: &SetpointTable<N, S>,
        limit: &CrossLimit<S>,
    ) -> Result<(), ControlError> {
        let share = self.air_agreement.0;
        // The limiter stays within the table, but for the rounding of its ends.
        let ((lowest, highest), wider) = (limit.range(), S::c(1.00001));
        for (usable, name) in [
            (lowest <= self.lighting && self.lighting <= highest, "heat the fire is lit at"),
            (table.lowest() <= lowest * wider && highest <= table.highest() * wider, "range of heat of the limiter"),
            (lasts(self.lighting_time), "lighting time"),
            (lasts(self.steady_time), "steady time"),
            (lasts(self.ready_time), "waiting time"),
            (lasts(self.closing_time), "closing time"),
            ((1..=u32::MAX / 2).contains(&self.longest_tick), "longest tick"),
            (CrossLimit::<S>::is_tolerable(self.clock_tolerance), "tolerance of the clock"),
            (self.least_air.cubic_meters_per_second() > S::zero(), "least air flow"),
            (share > S::zero() && share.is_finite() && lasts(self.air_agreement.1), "agreement of the air's readings"),
        ] {
            if !usable {
                return Err(ControlError::Setting { name });
            }
        }
        Ok(())
    }
}
