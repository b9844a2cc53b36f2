//! The air of the room: what keeps carbon monoxide low.

use crate::error::Result;
use crate::limits::{Input, check};
use crate::quantity::{ActualVolumeFlow, Duration};
use crate::scalar::Scalar;

/// A published limit of carbon monoxide in air.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MonoxideLimit {
    /// What a user writes.
    pub key: &'static str,
    /// Volume fraction.
    pub fraction: f64,
    /// Who says so, and for how long.
    pub source: &'static str,
}

/// Limits of carbon monoxide, the strictest first.
pub const MONOXIDE_LIMITS: &[MonoxideLimit] = &[
    MonoxideLimit { key: "outdoor 8 h", fraction: 9e-6, source: "U.S. ambient air standard, 8 h" },
    MonoxideLimit { key: "workplace 25 ppm", fraction: 25e-6, source: "ACGIH threshold limit value, 8 h" },
    MonoxideLimit { key: "workplace 35 ppm", fraction: 35e-6, source: "NIOSH criteria document 1972, 8 h" },
    MonoxideLimit { key: "workplace 50 ppm", fraction: 50e-6, source: "OSHA permissible exposure limit, 8 h" },
    MonoxideLimit { key: "ceiling 200 ppm", fraction: 200e-6, source: "NIOSH criteria document 1972, never above" },
];

/// Fresh air that keeps a leak of carbon monoxide at a limit, the room stirred: leak / (limit - outdoor).
///
/// # Errors
///
/// A fraction or a flow out of range, or a limit no higher than outdoors.
///
/// # Examples
///
/// ```
/// use jetwright::furnace::room::fresh_air;
/// use jetwright::quantity::ActualVolumeFlow;
/// let leak = ActualVolumeFlow::from_liters_per_second(0.01_f64);
/// // 10 mL/s over 25 ppm: 0.4 m3/s.
/// assert!((fresh_air(leak, 25e-6, 0.0).unwrap().cubic_meters_per_second() - 0.4).abs() < 1e-12);
/// ```
pub fn fresh_air<S: Scalar>(monoxide: ActualVolumeFlow<S>, limit: S, outdoor: S) -> Result<ActualVolumeFlow<S>> {
    check(Input::AirFlow, monoxide.cubic_meters_per_second())?;
    check(Input::RoomFraction, limit - outdoor)?;
    Ok(ActualVolumeFlow::from_cubic_meters_per_second(monoxide.cubic_meters_per_second() / (limit - outdoor)))
}

/// Carbon monoxide in a room after a time: c = (leak/flow) (1 - exp(-flow t / volume)), stirred, none at first.
///
/// # Errors
///
/// A volume, a flow or a time out of range.
pub fn monoxide_after<S: Scalar>(
    monoxide: ActualVolumeFlow<S>,
    fresh: ActualVolumeFlow<S>,
    room_volume: S,
    time: Duration<S>,
) -> Result<S> {
    check(Input::AirFlow, monoxide.cubic_meters_per_second())?;
    check(Input::AirFlow, fresh.cubic_meters_per_second())?;
    check(Input::ChamberVolume, room_volume)?;
    check(Input::Duration, time.seconds())?;
    let changes = fresh.cubic_meters_per_second() * time.seconds() / room_volume;
    let still = monoxide.cubic_meters_per_second() * time.seconds() / room_volume;
    // (1 - e^-x) / x, which is one where nothing is exchanged.
    let kept = if changes < S::c(1e-6) { S::one() } else { -(-changes).exp_m1() / changes };
    Ok(still * kept)
}

#[cfg(test)]
mod tests {
    use super::{fresh_air, monoxide_after};
    use crate::quantity::{ActualVolumeFlow, Duration};

    #[test]
    fn after_long_the_room_stands_at_the_limit() {
        let leak = ActualVolumeFlow::from_liters_per_second(0.02_f64);
        let fresh = fresh_air(leak, 35e-6, 0.0).unwrap();
        let after = |hours| monoxide_after(leak, fresh, 60.0, Duration::from_hours(hours)).unwrap();
        assert!((after(10.0) - 35e-6).abs() < 1e-9);
        // One change of air takes 105 s; after it 63.2 % of the way.
        assert!((after(60.0 / (0.02e-3 / 35e-6) / 3600.0) / 35e-6 - 0.632).abs() < 1e-3);
        assert!(after(0.01) < after(0.02));
        assert!(fresh_air(leak, 35e-6, 35e-6).is_err());
    }
}
