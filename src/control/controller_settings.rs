//! The times and heats a controller works by.

use super::clock::lasts;
use super::control_error::ControlError;
use super::crosslimit::CrossLimit;
use super::fingerprint::Fingerprint;
use super::setpoints::SetpointTable;
use crate::quantity::{ActualVolumeFlow, Duration, NetHeatRate};
use crate::scalar::Scalar;

/// Longest tick that is accepted, milliseconds: what gas may do unseen. Common practice, no source.
pub const LONGEST_TICK: u32 = 2000;

/// Times and heats of a [`Controller`](super::Controller), all finite.
///
/// Where a field names a value to start from, it is common practice without a source: watch your own burner.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ControllerSettings<S = f64> {
    /// Heat the fire is lit at, within the limiter's range: one that the sheet says lights a cold chamber.
    pub lighting: NetHeatRate<S>,
    /// Longest time from asking for gas until it reads what it was set to: as little more than its line takes to fill
    /// as the ticks allow, because so long the mixture may be too lean. Above zero; some seconds.
    pub lighting_time: Duration<S>,
    /// How long the gas must then read so, before the fire follows the heat wanted: longer than its line takes to fill.
    /// Above zero; half a second to two for a few meters of hose.
    pub steady_time: Duration<S>,
    /// Longest wait for the person after purging, before it is done again. Above zero; a minute.
    pub ready_time: Duration<S>,
    /// Longest time gas may still read after it was last asked for. Above zero; a second or two more than the gauge
    /// was seen to take to zero.
    pub closing_time: Duration<S>,
    /// How long air may still read after the blower was switched off: until it has run down and the damper has shut, by
    /// the controller's clock. Above zero; twice what was seen. Longer air from a cold chamber is a fault.
    pub run_down_time: Duration<S>,
    /// Longest time between two ticks, milliseconds, from 1 to [`LONGEST_TICK`]. A thousand ticks without a millisecond
    /// count as a clock that has stopped.
    pub longest_tick: u32,
    /// How far the time counted between two ticks may lie from the time that passed, as a share of it: the clock's
    /// own error, its milliseconds, and by how much the readings of a tick come before or after it.
    ///
    /// Air changes count the least time that can have passed, and actuators are estimated for the whole range of it. The
    /// other times here, and what a sensor changes in a second, are by the controller's clock as it runs.
    ///
    /// From zero to under 0.3; 0.01 to 0.03 for a crystal and ticks of 100 ms: one millisecond of them is 0.01.
    pub clock_tolerance: S,
    /// Air under this is lost. From a tenth to all of what the smallest heat input needs; half of it.
    pub least_air: ActualVolumeFlow<S>,
    /// Heat that a cubic meter of the air burns at the target air ratio, J/m3, from 3e5 to 1e7: what joins the two
    /// readings of the air. Some 3e6 for hydrocarbons at sea level (`jetwright air` prints it).
    pub air_heat: S,
    /// Whether a second air sensor is fitted. Its loss is a fault then, whenever it comes.
    pub has_second_air: bool,
    /// How far two readings of the air flow may differ, as a share, and for how long. Both above zero; 0.1 and a
    /// second for two sensors of 3 %. Without a second reading they decide nothing.
    pub air_agreement: (S, Duration<S>),
}

impl<S: Scalar> ControllerSettings<S> {
    pub(super) fn fingerprint(&self, to: &mut Fingerprint) {
        let (share, patience) = self.air_agreement;
        let times =
            [self.lighting_time, self.steady_time, self.ready_time, self.closing_time, self.run_down_time, patience];
        to.numbers(times.map(Duration::seconds));
        to.numbers([self.lighting.watts(), self.clock_tolerance, self.least_air.cubic_meters_per_second()]);
        to.numbers([self.air_heat, share]);
        to.word(self.longest_tick << 1 | u32::from(self.has_second_air));
    }

    /// Refuses what is not usable, or does not go with the table and the limiter.
    pub(super) fn check<const N: usize>(
        &self,
        table: &SetpointTable<N, S>,
        limit: &CrossLimit<S>,
    ) -> Result<(), ControlError> {
        let share = self.air_agreement.0;
        // The limiter stays within the table, but for the rounding of its ends.
        let ((lowest, highest), wider) = (limit.range(), S::c(1.00001));
        let (ratio, target) = (table.made_for().air_ratio, limit.target());
        let least_heat = self.least_air.cubic_meters_per_second() * self.air_heat;
        for (usable, name) in [
            (table.is_usable(), "setpoint table"),
            ((ratio - target).abs() <= S::c(1e-3) * target, "air ratio of the limiter and of the setpoint table"),
            (lowest <= self.lighting && self.lighting <= highest, "heat the fire is lit at"),
            (table.lowest() <= lowest * wider && highest <= table.highest() * wider, "range of heat of the limiter"),
            (lasts(self.lighting_time), "lighting time"),
            (lasts(self.steady_time), "steady time"),
            (lasts(self.ready_time), "waiting time"),
            (lasts(self.closing_time), "closing time"),
            (lasts(self.run_down_time), "run-down time of the blower"),
            ((1..=LONGEST_TICK).contains(&self.longest_tick), "longest tick"),
            (CrossLimit::<S>::is_tolerable(self.clock_tolerance), "tolerance of the clock"),
            (self.least_air.cubic_meters_per_second() > S::zero(), "least air flow"),
            (self.air_heat >= S::c(3e5) && self.air_heat <= S::c(1e7), "heat of a cubic meter of air"),
            (
                least_heat >= S::c(0.1) * lowest.watts() && least_heat <= lowest.watts(),
                "least air flow against the smallest heat input",
            ),
            (share > S::zero() && share.is_finite() && lasts(self.air_agreement.1), "agreement of the air's readings"),
        ] {
            if !usable {
                return Err(ControlError::Setting { name });
            }
        }
        Ok(())
    }
}
