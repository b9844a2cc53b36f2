//! Cross-limiting, air changes and totals.

#![allow(unsafe_code, reason = "exported names count as unsafe")]

use core::mem::MaybeUninit;

use super::kept::{MADE, keep, kept, kept_mut};
use super::refused::{JetwrightRefused, cleared, told};
use super::status::{JetwrightStatus, given, status, unless_answered};
use crate::control::{AirChanges, AirRatioBand, CrossLimit, CrossLimitSettings, Totals, Travel};
use crate::quantity::{ActualVolumeFlow, Duration, MassFlow, NetHeatPerMass, NetHeatRate, PricePerMass};

/// Words of a `JetwrightCrossLimit`.
pub const JETWRIGHT_CROSS_LIMIT_WORDS: usize = 22;
/// Words of a `JetwrightAirChanges`.
pub const JETWRIGHT_AIR_CHANGES_WORDS: usize = 6;
/// Words of a `JetwrightTotals`.
pub const JETWRIGHT_TOTALS_WORDS: usize = 6;

/// How fast an actuator moves toward its command, as heat of its flow in a second.
#[derive(Clone, Copy, Debug)]
#[repr(C)]
pub struct JetwrightTravel {
    /// Never slower than this while it is not there yet, W/s; above zero. Counted from the command and from a
    /// standing blower, dead time with it.
    pub slowest_w_per_s: f32,
    /// Never faster than this at any moment, W/s; `slowest_w_per_s` or more.
    pub fastest_w_per_s: f32,
}

/// What a cross-limiter is told once. Gas and air are both counted as net heat: the gas as what it makes, the air as
/// what it would burn at the target air ratio.
#[derive(Clone, Copy, Debug)]
#[repr(C)]
pub struct JetwrightCrossLimitSettings {
    /// Never richer than this; an air ratio from 0.5 to 5, as the next two.
    pub lowest_air_ratio: f32,
    /// The air ratio of the setpoint table.
    pub target_air_ratio: f32,
    /// Never leaner than this.
    pub highest_air_ratio: f32,
    /// The smallest fire, W; above zero, and not below that of the table.
    pub lowest_w: f32,
    /// The largest fire, W; above the smallest, and not above that of the table.
    pub highest_w: f32,
    /// Speed of the gas regulator.
    pub gas_travel: JetwrightTravel,
    /// Speed of the damper or blower.
    pub air_travel: JetwrightTravel,
    /// How far the flow of an actuator that has arrived can lie from its setpoint, as a share of it: from zero
    /// to under 0.3. Includes what a straight line between two rows of the setpoint table is off, which
    /// `jetwright setpoints` prints.
    pub actuator_tolerance: f32,
    /// How far a reading can lie from the flow, as a share of it: from zero to under 0.3.
    pub reading_tolerance: f32,
}

/// A cross-limiter, made by `jetwright_cross_limit_make`. Its words are not for reading.
#[derive(Debug)]
#[repr(C)]
pub struct JetwrightCrossLimit {
    /// Set when it has been made.
    made: u32,
    /// The limiter.
    words: [MaybeUninit<u32>; JETWRIGHT_CROSS_LIMIT_WORDS],
}

/// What to command now.
#[derive(Clone, Copy, Debug, Default)]
#[repr(C)]
pub struct JetwrightLimited {
    /// Heat the gas is set for, W: look its gauge pressure up.
    pub gas_w: f32,
    /// Heat the air is set for, W: look its air setting up.
    pub air_w: f32,
    /// Set where the gas must be off.
    pub gas_must_be_off: bool,
}

/// Counts air changes; made by `jetwright_air_changes_make`. Its words are not for reading.
#[derive(Debug)]
#[repr(C)]
pub struct JetwrightAirChanges {
    /// Set when it has been made.
    made: u32,
    /// The counter.
    words: [MaybeUninit<u32>; JETWRIGHT_AIR_CHANGES_WORDS],
}

/// Gas, heat and money so far; made by `jetwright_totals_make`. Its words are not for reading.
#[derive(Debug)]
#[repr(C)]
pub struct JetwrightTotals {
    /// Set when it has been made.
    made: u32,
    /// The sums.
    words: [MaybeUninit<u32>; JETWRIGHT_TOTALS_WORDS],
}

/// What a fire has used.
#[derive(Clone, Copy, Debug, Default)]
#[repr(C)]
pub struct JetwrightUsed {
    /// Gas, kg.
    pub gas_kg: f32,
    /// Net heat, J.
    pub heat_net_j: f32,
    /// Money, in the unit of the price.
    pub money: f32,
    /// Time without a reading, s.
    pub unknown_s: f32,
}

impl From<JetwrightTravel> for Travel<f32> {
    fn from(travel: JetwrightTravel) -> Self {
        Travel { slowest: travel.slowest_w_per_s, fastest: travel.fastest_w_per_s }
    }
}

impl JetwrightCrossLimit {
    pub(super) fn limit(&self) -> Result<&CrossLimit<f32>, JetwrightStatus> {
        kept(self.made, &self.words)
    }
    fn limit_mut(&mut self) -> Result<&mut CrossLimit<f32>, JetwrightStatus> {
        kept_mut(self.made, &mut self.words)
    }
}

impl JetwrightAirChanges {
    pub(super) fn changes(&self) -> Result<&AirChanges<f32>, JetwrightStatus> {
        kept(self.made, &self.words)
    }
}

/// Makes a cross-limiter whose actuators may stand anywhere; they settle under `jetwright_cross_limit_hold`.
///
/// `refused` may be null; else it tells which setting was refused.
#[must_use]
#[unsafe(no_mangle)]
pub extern "C" fn jetwright_cross_limit_make(
    limit: Option<&mut JetwrightCrossLimit>,
    settings: Option<&JetwrightCrossLimitSettings>,
    refused: Option<&mut JetwrightRefused>,
) -> JetwrightStatus {
    let refused = cleared(refused);
    status(|| {
        let (limit, settings) = (given(limit)?, given(settings)?);
        limit.made = 0;
        let made = CrossLimit::new(&CrossLimitSettings {
            band: AirRatioBand {
                lowest: settings.lowest_air_ratio,
                target: settings.target_air_ratio,
                highest: settings.highest_air_ratio,
            },
            lowest: NetHeatRate::from_watts(settings.lowest_w),
            highest: NetHeatRate::from_watts(settings.highest_w),
            gas_travel: settings.gas_travel.into(),
            air_travel: settings.air_travel.into(),
            actuator_tolerance: settings.actuator_tolerance,
            reading_tolerance: settings.reading_tolerance,
        })
        .map_err(|error| told(refused, error))?;
        keep(&mut limit.words, made);
        limit.made = MADE;
        Ok(())
    })
}

/// One step with the gas open: heat wanted, readings of now (W, all net), seconds since the last step.
///
/// Any status but `Ok`, and `gas_must_be_off`, mean that the gas must be off.
#[must_use]
#[unsafe(no_mangle)]
pub extern "C" fn jetwright_cross_limit_step(
    limit: Option<&mut JetwrightCrossLimit>,
    wanted_w: f32,
    gas_reading_w: f32,
    air_reading_w: f32,
    elapsed_s: f32,
    limited: Option<&mut JetwrightLimited>,
) -> JetwrightStatus {
    let off = JetwrightLimited { gas_w: 0.0, air_w: 0.0, gas_must_be_off: true };
    let limited = unless_answered(limited, off);
    status(|| {
        let (limit, limited) = (given(limit)?, given(limited)?);
        let watts = NetHeatRate::from_watts;
        let set = limit.limit_mut()?.step(
            watts(wanted_w),
            watts(gas_reading_w),
            watts(air_reading_w),
            Duration::from_seconds(elapsed_s),
        );
        *limited =
            JetwrightLimited { gas_w: set.gas.watts(), air_w: set.air.watts(), gas_must_be_off: set.fault.is_some() };
        Ok(())
    })
}

/// One step with the gas off: sends both actuators where they are wanted (W), and estimates on.
#[must_use]
#[unsafe(no_mangle)]
pub extern "C" fn jetwright_cross_limit_hold(
    limit: Option<&mut JetwrightCrossLimit>,
    gas_w: f32,
    air_w: f32,
    elapsed_s: f32,
) -> JetwrightStatus {
    status(|| {
        let limit = given(limit)?.limit_mut()?;
        limit.hold(NetHeatRate::from_watts(gas_w), NetHeatRate::from_watts(air_w), Duration::from_seconds(elapsed_s));
        Ok(())
    })
}

/// Makes a counter of air changes: volume of the chamber, how many changes are needed, flow under which air is lost.
///
/// `refused` may be null; else it tells which setting was refused.
#[must_use]
#[unsafe(no_mangle)]
pub extern "C" fn jetwright_air_changes_make(
    changes: Option<&mut JetwrightAirChanges>,
    volume_m3: f32,
    needed: f32,
    least_flow_m3_per_s: f32,
    refused: Option<&mut JetwrightRefused>,
) -> JetwrightStatus {
    let refused = cleared(refused);
    status(|| {
        let changes = given(changes)?;
        changes.made = 0;
        let least = ActualVolumeFlow::from_cubic_meters_per_second(least_flow_m3_per_s);
        let made = AirChanges::new(volume_m3, needed, least).map_err(|error| told(refused, error))?;
        keep(&mut changes.words, made);
        changes.made = MADE;
        Ok(())
    })
}

/// Counts the time since the last call at the lesser flow of its two ends; lost air begins again. Give it the least
/// time that can have passed. Says how many changes are counted, and whether they are enough.
#[must_use]
#[unsafe(no_mangle)]
pub extern "C" fn jetwright_air_changes_count(
    changes: Option<&mut JetwrightAirChanges>,
    flow_m3_per_s: f32,
    elapsed_s: f32,
    so_far: Option<&mut f32>,
    enough: Option<&mut bool>,
) -> JetwrightStatus {
    let (so_far, enough) = (unless_answered(so_far, 0.0), unless_answered(enough, false));
    status(|| {
        let (changes, so_far, enough) = (given(changes)?, given(so_far)?, given(enough)?);
        let counter: &mut AirChanges<f32> = kept_mut(changes.made, &mut changes.words)?;
        let flow = ActualVolumeFlow::from_cubic_meters_per_second(flow_m3_per_s);
        counter.count(flow, Duration::from_seconds(elapsed_s));
        (*so_far, *enough) = (counter.so_far(), counter.are_enough());
        Ok(())
    })
}

/// Makes the totals of a gas: net heating value in J/kg, price of a kilogram.
#[must_use]
#[unsafe(no_mangle)]
pub extern "C" fn jetwright_totals_make(
    totals: Option<&mut JetwrightTotals>,
    net_heating_value_j_per_kg: f32,
    price_per_kg: f32,
) -> JetwrightStatus {
    status(|| {
        let totals = given(totals)?;
        let heating_value = NetHeatPerMass::from_joules_per_kilogram(net_heating_value_j_per_kg);
        keep(&mut totals.words, Totals::<f32>::new(heating_value, PricePerMass::from_per_kilogram(price_per_kg)));
        totals.made = MADE;
        Ok(())
    })
}

/// Counts a gas flow over a time; one that is no number counts as unknown time.
#[must_use]
#[unsafe(no_mangle)]
pub extern "C" fn jetwright_totals_add(
    totals: Option<&mut JetwrightTotals>,
    gas_kg_per_s: f32,
    elapsed_s: f32,
) -> JetwrightStatus {
    status(|| {
        let totals = given(totals)?;
        let sums: &mut Totals<f32> = kept_mut(totals.made, &mut totals.words)?;
        sums.add(MassFlow::from_kilograms_per_second(gas_kg_per_s), Duration::from_seconds(elapsed_s));
        Ok(())
    })
}

/// What has been used since the totals were made.
#[must_use]
#[unsafe(no_mangle)]
pub extern "C" fn jetwright_totals_read(
    totals: Option<&JetwrightTotals>,
    used: Option<&mut JetwrightUsed>,
) -> JetwrightStatus {
    let unknown = JetwrightUsed { gas_kg: f32::NAN, heat_net_j: f32::NAN, money: f32::NAN, unknown_s: f32::NAN };
    let used = unless_answered(used, unknown);
    status(|| {
        let (totals, used) = (given(totals)?, given(used)?);
        let sums: &Totals<f32> = kept(totals.made, &totals.words)?;
        *used = JetwrightUsed {
            gas_kg: sums.gas().kilograms(),
            heat_net_j: sums.heat_net_joules(),
            money: sums.money(),
            unknown_s: sums.unknown().seconds(),
        };
        Ok(())
    })
}

impl JetwrightCrossLimit {
    /// One that is not made yet.
    #[must_use]
    pub const fn unmade() -> Self {
        Self { made: 0, words: [MaybeUninit::uninit(); JETWRIGHT_CROSS_LIMIT_WORDS] }
    }
}

impl JetwrightAirChanges {
    /// One that is not made yet.
    #[must_use]
    pub const fn unmade() -> Self {
        Self { made: 0, words: [MaybeUninit::uninit(); JETWRIGHT_AIR_CHANGES_WORDS] }
    }
}

impl JetwrightTotals {
    /// One that is not made yet.
    #[must_use]
    pub const fn unmade() -> Self {
        Self { made: 0, words: [MaybeUninit::uninit(); JETWRIGHT_TOTALS_WORDS] }
    }
}
