//! What a cross-limiter is told once.

use super::position::Travel;
use crate::quantity::NetHeatRate;

/// The air ratios a fire may have while its gas is open.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AirRatioBand<S = f64> {
    /// Never richer than this.
    pub lowest: S,
    /// That of the setpoint table.
    pub target: S,
    /// Never leaner than this.
    pub highest: S,
}

/// What a `CrossLimit` is told once.
///
/// Gas and air are both counted as heat: the gas as what it makes, the air as what it would burn at the target.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CrossLimitSettings<S = f64> {
    /// The band of the mixture, each air ratio from 0.5 to 5. Tolerances of 3 % and 1 % need its ends under 0.904 and
    /// over 1.117 times the target; `ControlError::BandTooNarrow` says what others need.
    pub band: AirRatioBand<S>,
    /// The smallest fire, above zero: that of the table's first row or more.
    pub lowest: NetHeatRate<S>,
    /// The largest fire, above the smallest and finite: that of the table's last row or less.
    pub highest: NetHeatRate<S>,
    /// Speed of the gas regulator, by the clock that counts the steps.
    pub gas_travel: Travel<S>,
    /// Speed of the damper or blower, by the same.
    pub air_travel: Travel<S>,
    /// How far the flow of an actuator that has arrived can lie from its setpoint, as a share of it. From
    /// zero to under 0.3; 0.02 to 0.05 as seen at three fires (common practice, no source). Includes what a straight
    /// line between two rows of the setpoint table is off, which `jetwright setpoints` prints.
    pub actuator_tolerance: S,
    /// How far a reading can lie from the flow, as a share of it. From zero to under 0.3; 0.01 to 0.03 of a sensor's
    /// data sheet (common practice, no source).
    pub reading_tolerance: S,
}
