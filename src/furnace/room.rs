//! The air of the room: what keeps carbon monoxide and dioxide low.

use crate::error::Result;
use crate::limits::{Input, check};
use crate::quantity::{ActualVolumeFlow, Duration};
use crate::scalar::Scalar;

/// A published limit of a gas in air.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AirLimit {
    /// What a user writes.
    pub key: &'static str,
    /// Volume fraction.
    pub fraction: f64,
    /// Who says so, and for how long.
    pub source: &'static str,
}

/// Limits of carbon monoxide, the strictest first.
pub const CARBON_MONOXIDE_LIMITS: &[AirLimit] = &[
    AirLimit { key: "outdoor 8 h", fraction: 9e-6, source: "U.S. ambient air standard, 8 h" },
    AirLimit { key: "workplace 20 ppm", fraction: 20e-6, source: "Directive (EU) 2017/164, 8 h" },
    AirLimit { key: "workplace 25 ppm", fraction: 25e-6, source: "ACGIH threshold limit value, 8 h" },
    AirLimit { key: "workplace 35 ppm", fraction: 35e-6, source: "NIOSH criteria document 1972, 8 h" },
    AirLimit { key: "workplace 50 ppm", fraction: 50e-6, source: "OSHA permissible exposure limit, 8 h" },
    AirLimit { key: "ceiling 200 ppm", fraction: 200e-6, source: "NIOSH criteria document 1972, never above" },
];

/// Limits of carbon dioxide, the strictest first.
pub const DIOXIDE_LIMITS: &[AirLimit] = &[
    AirLimit { key: "workplace 5000 ppm", fraction: 5e-3, source: "Directive 2006/15/EC and OSHA, 8 h, from memory" },
    AirLimit { key: "ceiling 30000 ppm", fraction: 30e-3, source: "ACGIH and NIOSH, 15 min, from memory" },
];

/// Share of carbon dioxide outdoors: NOAA's global mean of 2022 to 2024, rounded, from memory.
pub const OUTDOOR_DIOXIDE: f64 = 420e-6;
/// Mixing factor of a room of which nothing is known: common practice, no source; books say 3 to 10, and 1 is stirred.
pub const USUAL_MIXING_FACTOR: f64 = 3.0;

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
pub fn fresh_air<S: Scalar>(carbon_monoxide: ActualVolumeFlow<S>, limit: S, outdoor: S) -> Result<ActualVolumeFlow<S>> {
    check(Input::AirFlow, carbon_monoxide.cubic_meters_per_second())?;
    check(Input::RoomFraction, limit - outdoor)?;
    Ok(ActualVolumeFlow::from_cubic_meters_per_second(carbon_monoxide.cubic_meters_per_second() / (limit - outdoor)))
}

/// Fresh air that keeps what a fire lets into a room at a limit: Q = K G / (C - outdoor), K the mixing factor.
///
/// For carbon monoxide, dioxide or any other gas; of two of them the larger flow rules. It is no combustion air: that
/// comes on top, and a hood that catches the flue gas takes the need away.
///
/// # Range
///
/// Mixing factor 1, a stirred room, to 10; [`USUAL_MIXING_FACTOR`] where unknown.
///
/// # Errors
///
/// A fraction, a flow or a factor out of range, or a limit no higher than outdoors.
///
/// # Source
///
/// Balance of a room with a safety factor for incomplete mixing: University of Toledo, industrial ventilation, dilution.
///
/// # Examples
///
/// ```
/// use jetwright::furnace::room::{USUAL_MIXING_FACTOR, dilution_flow};
/// use jetwright::quantity::ActualVolumeFlow;
/// let released = ActualVolumeFlow::from_liters_per_second(0.01_f64);
/// // 10 mL/s of carbon monoxide, 20 ppm, three times what a stirred room needs: 1.5 m3/s.
/// let fresh = dilution_flow(released, 20e-6, 0.0, USUAL_MIXING_FACTOR).unwrap();
/// assert!((fresh.cubic_meters_per_second() - 1.5).abs() < 1e-12);
/// ```
pub fn dilution_flow<S: Scalar>(
    released: ActualVolumeFlow<S>,
    limit: S,
    outdoor: S,
    mixing_factor: S,
) -> Result<ActualVolumeFlow<S>> {
    let factor = check(Input::MixingFactor, mixing_factor)?;
    Ok(fresh_air(released, limit, outdoor)? * factor)
}

/// Fresh air that dilutes the flue gas of a fire let into the room.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Dilution<S = f64> {
    /// For its carbon monoxide.
    pub carbon_monoxide: ActualVolumeFlow<S>,
    /// For its carbon dioxide.
    pub dioxide: ActualVolumeFlow<S>,
}

impl<S: Scalar> Dilution<S> {
    /// By [`dilution_flow`] of a flow of flue gas, cooled to the room, and its mole fractions as it leaves; outdoor air
    /// without carbon monoxide.
    ///
    /// # Errors
    ///
    /// Those of [`dilution_flow`], a mole fraction out of range.
    ///
    /// # Examples
    ///
    /// ```
    /// use jetwright::furnace::room::{DIOXIDE_LIMITS, Dilution, CARBON_MONOXIDE_LIMITS};
    /// use jetwright::quantity::ActualVolumeFlow;
    /// let flue = ActualVolumeFlow::from_liters_per_second(10.0_f64);
    /// // 0.1 % of carbon monoxide: 10 mL/s, 1.5 m3/s for 20 ppm; 11.45 % of dioxide: 3 x 1.145 L/s over 4 580 ppm, 0.75 m3/s.
    /// let found = Dilution::of_flue(flue, 1e-3, 0.1145, &CARBON_MONOXIDE_LIMITS[1], &DIOXIDE_LIMITS[0], 3.0).unwrap();
    /// assert!((found.carbon_monoxide.cubic_meters_per_second() - 1.5).abs() < 1e-9);
    /// assert!((found.dioxide.cubic_meters_per_second() - 0.75).abs() < 1e-9);
    /// assert_eq!(found.needed(), found.carbon_monoxide);
    /// ```
    pub fn of_flue(
        flue: ActualVolumeFlow<S>,
        carbon_monoxide: S,
        dioxide: S,
        carbon_monoxide_limit: &AirLimit,
        dioxide_limit: &AirLimit,
        mixing_factor: S,
    ) -> Result<Self> {
        let (carbon_monoxide, dioxide) = (check(Input::Fraction, carbon_monoxide)?, check(Input::Fraction, dioxide)?);
        Ok(Self {
            carbon_monoxide: dilution_flow(
                flue * carbon_monoxide,
                S::c(carbon_monoxide_limit.fraction),
                S::zero(),
                mixing_factor,
            )?,
            dioxide: dilution_flow(flue * dioxide, S::c(dioxide_limit.fraction), S::c(OUTDOOR_DIOXIDE), mixing_factor)?,
        })
    }

    /// The larger of the two, which keeps both.
    #[must_use]
    pub fn needed(&self) -> ActualVolumeFlow<S> {
        if self.carbon_monoxide < self.dioxide { self.dioxide } else { self.carbon_monoxide }
    }
}

/// Carbon monoxide in a room after a time: c = (leak/flow) (1 - exp(-flow t / volume)), stirred, none at first.
///
/// # Errors
///
/// A volume, a flow or a time out of range.
pub fn carbon_monoxide_after<S: Scalar>(
    carbon_monoxide: ActualVolumeFlow<S>,
    fresh: ActualVolumeFlow<S>,
    room_volume: S,
    time: Duration<S>,
) -> Result<S> {
    check(Input::AirFlow, carbon_monoxide.cubic_meters_per_second())?;
    check(Input::AirFlow, fresh.cubic_meters_per_second())?;
    check(Input::ChamberVolume, room_volume)?;
    check(Input::Duration, time.seconds())?;
    let changes = fresh.cubic_meters_per_second() * time.seconds() / room_volume;
    let still = carbon_monoxide.cubic_meters_per_second() * time.seconds() / room_volume;
    // (1 - e^-x) / x, which is one where nothing is exchanged.
    let kept = if changes < S::c(1e-6) { S::one() } else { -(-changes).exp_m1() / changes };
    Ok(still * kept)
}

#[cfg(test)]
mod tests {
    use super::{
        CARBON_MONOXIDE_LIMITS, DIOXIDE_LIMITS, Dilution, USUAL_MIXING_FACTOR, carbon_monoxide_after, dilution_flow,
        fresh_air,
    };
    use crate::error::Error;
    use crate::limits::Input;
    use crate::quantity::{ActualVolumeFlow, Duration};

    #[test]
    fn after_long_the_room_stands_at_the_limit() {
        let leak = ActualVolumeFlow::from_liters_per_second(0.02_f64);
        let fresh = fresh_air(leak, 35e-6, 0.0).unwrap();
        let after = |hours| carbon_monoxide_after(leak, fresh, 60.0, Duration::from_hours(hours)).unwrap();
        assert!((after(10.0) - 35e-6).abs() < 1e-9);
        // One change of air takes 105 s; after it 63.2 % of the way.
        assert!((after(60.0 / (0.02e-3 / 35e-6) / 3600.0) / 35e-6 - 0.632).abs() < 1e-3);
        assert!(after(0.01) < after(0.02));
        assert!(fresh_air(leak, 35e-6, 35e-6).is_err());
    }

    #[test]
    fn the_lists_rise_and_hold_the_european_limit() {
        for list in [CARBON_MONOXIDE_LIMITS, DIOXIDE_LIMITS] {
            assert!(list.windows(2).all(|pair| pair[0].fraction < pair[1].fraction));
        }
        // Directive (EU) 2017/164: 20 ppm, which is 23 mg/m3 of 28.01 g/mol at 24.06 L/mol.
        let european = CARBON_MONOXIDE_LIMITS.iter().find(|limit| limit.source.contains("2017/164")).unwrap();
        assert!((european.fraction * 28.01 / 24.06e-6 / 1e3 / 23e-3 - 1.0).abs() < 0.02);
    }

    #[test]
    fn a_room_that_mixes_badly_wants_so_many_times_the_air() {
        let released = ActualVolumeFlow::from_liters_per_second(0.02_f64);
        let stirred = dilution_flow(released, 20e-6, 0.0, 1.0).unwrap().cubic_meters_per_second();
        assert!((stirred - 1.0).abs() < 1e-12);
        let usual = dilution_flow(released, 20e-6, 0.0, USUAL_MIXING_FACTOR).unwrap().cubic_meters_per_second();
        assert!((usual - 3.0).abs() < 1e-12);
        let refused = dilution_flow(released, 20e-6, 0.0, 0.9).unwrap_err();
        assert_eq!(refused, Error::OutOfRange { input: Input::MixingFactor, given: 0.9 });
    }

    #[test]
    fn a_clean_fire_is_ruled_by_its_dioxide() {
        let flue = ActualVolumeFlow::from_liters_per_second(12.0_f32);
        let by = |carbon_monoxide| {
            Dilution::of_flue(flue, carbon_monoxide, 0.11, &CARBON_MONOXIDE_LIMITS[1], &DIOXIDE_LIMITS[0], 3.0)
        };
        let (clean, rich) = (by(10e-6).unwrap(), by(0.02).unwrap());
        // 3 x 1.32 L/s over 4 580 ppm.
        assert!((clean.needed().cubic_meters_per_second() - 0.8646).abs() < 1e-3);
        assert_eq!(rich.needed(), rich.carbon_monoxide);
        assert_eq!(clean.dioxide, rich.dioxide);
    }
}
