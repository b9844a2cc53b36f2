//! Every setting that C can give wrong is refused, and named.

use std::ffi::CStr;

use jetwright::capi::{
    JETWRIGHT_NAME_BYTES, JetwrightAirChanges, JetwrightController, JetwrightControllerSettings, JetwrightCrossLimit,
    JetwrightCrossLimitSettings, JetwrightRefused, JetwrightSensorLimits, JetwrightStatus, JetwrightTable,
    JetwrightTravel, jetwright_air_changes_make, jetwright_controller_make, jetwright_cross_limit_make,
    jetwright_table_read,
};
use jetwright::control::SetpointTable;

use super::invented::table;

const TRAVEL: JetwrightTravel = JetwrightTravel { slowest_w_per_s: 5_000.0, fastest_w_per_s: 20_000.0 };
const BAND: JetwrightCrossLimitSettings = JetwrightCrossLimitSettings {
    lowest_air_ratio: 0.92,
    target_air_ratio: 1.05,
    highest_air_ratio: 1.25,
    lowest_w: 9_000.0,
    highest_w: 24_000.0,
    gas_travel: TRAVEL,
    air_travel: TRAVEL,
    actuator_tolerance: 0.03,
    reading_tolerance: 0.01,
};
const SENSOR: JetwrightSensorLimits =
    JetwrightSensorLimits { lowest: -10.0, highest: 60e3, fastest: 90e3, noise: 900.0, stuck_after_s: 5.0 };
const RULES: JetwrightControllerSettings = JetwrightControllerSettings {
    sensors: [SENSOR; 3],
    lighting_w: 10_000.0,
    lighting_time_s: 4.0,
    steady_time_s: 0.5,
    ready_time_s: 60.0,
    closing_time_s: 2.0,
    run_down_time_s: 8.0,
    longest_tick_ms: 500,
    clock_tolerance: 0.01,
    least_air_m3_per_s: 0.002,
    air_heat_j_per_m3: 3e6,
    has_second_air: 0,
    air_agreement: 0.1,
    air_agreement_time_s: 1.0,
};

/// What an earlier call may have left.
fn stale() -> JetwrightRefused {
    JetwrightRefused { name: [b'x' as _; JETWRIGHT_NAME_BYTES], sensor: 7 }
}

fn words(refused: &JetwrightRefused) -> (String, i32) {
    let bytes = refused.name.map(|letter| letter as u8);
    (CStr::from_bytes_until_nul(&bytes).unwrap().to_str().unwrap().to_owned(), refused.sensor)
}

fn limit(settings: &JetwrightCrossLimitSettings) -> (JetwrightCrossLimit, JetwrightStatus, (String, i32)) {
    let mut limit = JetwrightCrossLimit::unmade();
    let mut refused = stale();
    let status = jetwright_cross_limit_make(Some(&mut limit), Some(settings), Some(&mut refused));
    (limit, status, words(&refused))
}

fn changes(volume: f32, needed: f32, least: f32) -> (JetwrightAirChanges, JetwrightStatus, (String, i32)) {
    let mut changes = JetwrightAirChanges::unmade();
    let mut refused = stale();
    let status = jetwright_air_changes_make(Some(&mut changes), volume, needed, least, Some(&mut refused));
    (changes, status, words(&refused))
}

#[allow(unsafe_code, reason = "an image comes as a pointer and a length")]
fn controller(settings: &JetwrightControllerSettings) -> (JetwrightStatus, (String, i32)) {
    let mut image = [0; SetpointTable::<17, f32>::IMAGE_BYTES];
    table().write_image(&mut image).unwrap();
    let mut table = JetwrightTable::unmade();
    // SAFETY: the length is the image's.
    assert_eq!(unsafe { jetwright_table_read(Some(&mut table), image.as_ptr(), image.len()) }, JetwrightStatus::Ok);
    let mut desk = JetwrightController::unmade();
    let mut refused = stale();
    let (limit, changes) = (limit(&BAND).0, changes(0.02, 4.0, 0.002).0);
    let status = jetwright_controller_make(
        Some(&mut desk),
        Some(&table),
        Some(&limit),
        Some(&changes),
        Some(settings),
        Some(&mut refused),
    );
    (status, words(&refused))
}

#[test]
fn every_setting_of_a_controller_that_is_refused_is_named() {
    let setting = JetwrightStatus::Setting;
    assert_eq!(controller(&RULES), (JetwrightStatus::Ok, (String::new(), -1)));
    type Change = fn(&mut JetwrightControllerSettings);
    let rules: [(Change, &str); 19] = [
        (|rules| rules.lighting_w = 8_000.0, "heat the fire is lit at"),
        (|rules| rules.lighting_time_s = f32::NAN, "lighting time"),
        (|rules| rules.steady_time_s = 0.0, "steady time"),
        (|rules| rules.ready_time_s = -1.0, "waiting time"),
        (|rules| rules.closing_time_s = f32::INFINITY, "closing time"),
        (|rules| rules.longest_tick_ms = 0, "longest tick"),
        (|rules| rules.longest_tick_ms = 2001, "longest tick"),
        (|rules| rules.longest_tick_ms = u32::MAX / 2, "longest tick"),
        (|rules| rules.run_down_time_s = f32::NAN, "run-down time of the blower"),
        (|rules| rules.air_heat_j_per_m3 = 2e5, "heat of a cubic meter of air"),
        (|rules| rules.air_heat_j_per_m3 = f32::NAN, "heat of a cubic meter of air"),
        (|rules| rules.least_air_m3_per_s = 1e-6, "least air flow against the smallest heat input"),
        (|rules| rules.least_air_m3_per_s = 0.004, "least air flow against the smallest heat input"),
        (|rules| rules.lighting_w = 25_000.0, "heat the fire is lit at"),
        (|rules| rules.clock_tolerance = 0.3, "tolerance of the clock"),
        (|rules| rules.least_air_m3_per_s = f32::NAN, "least air flow"),
        (|rules| rules.air_agreement = 0.0, "agreement of the air's readings"),
        (|rules| rules.air_agreement_time_s = f32::NAN, "agreement of the air's readings"),
        (|rules| rules.lighting_w = f32::NAN, "heat the fire is lit at"),
    ];
    for (change, name) in rules {
        let mut wrong = RULES;
        change(&mut wrong);
        assert_eq!(controller(&wrong), (setting, (name.into(), -1)));
    }
    type SensorChange = fn(&mut JetwrightSensorLimits);
    let limits: [(SensorChange, &str); 14] = [
        (|limits| limits.lowest = f32::NAN, "lowest reading"),
        (|limits| limits.lowest = f32::NEG_INFINITY, "lowest reading"),
        (|limits| limits.lowest = 70e3, "highest reading"),
        (|limits| limits.highest = limits.lowest, "highest reading"),
        (|limits| limits.highest = f32::NAN, "highest reading"),
        (|limits| limits.highest = f32::INFINITY, "highest reading"),
        (|limits| limits.fastest = 0.0, "fastest change"),
        (|limits| limits.fastest = f32::NAN, "fastest change"),
        (|limits| limits.fastest = f32::INFINITY, "fastest change"),
        (|limits| limits.noise = -1.0, "noise"),
        (|limits| limits.noise = f32::NAN, "noise"),
        (|limits| limits.stuck_after_s = f32::NAN, "time after which it is stuck"),
        (|limits| limits.stuck_after_s = -5.0, "time after which it is stuck"),
        (|limits| limits.stuck_after_s = f32::INFINITY, "time after which it is stuck"),
    ];
    for place in 0..3 {
        for (change, name) in limits {
            let mut wrong = RULES;
            change(&mut wrong.sensors[place]);
            assert_eq!(controller(&wrong), (setting, (name.into(), place as i32)));
        }
        // A sensor that may stand still, and one without noise.
        let mut steady = RULES;
        (steady.sensors[place].stuck_after_s, steady.sensors[place].noise) = (0.0, 0.0);
        assert_eq!(controller(&steady).0, JetwrightStatus::Ok);
    }
}

#[test]
fn every_setting_of_a_limiter_and_a_counter_that_is_refused_is_named() {
    use JetwrightStatus::{BandTooNarrow, NotFinite, OutOfRange, Setting};
    type Change = fn(&mut JetwrightCrossLimitSettings);
    let cases: [(Change, JetwrightStatus, &str); 9] = [
        (|band| band.target_air_ratio = f32::NAN, NotFinite, "air ratio"),
        (|band| band.highest_air_ratio = 1e6, OutOfRange, "air ratio"),
        (|band| band.lowest_air_ratio = 1.0, BandTooNarrow, "air-ratio band"),
        (|band| band.lowest_w = 25_000.0, Setting, "range of heat"),
        (|band| band.highest_w = f32::NAN, Setting, "range of heat"),
        (|band| band.gas_travel.slowest_w_per_s = 30_000.0, Setting, "speed of the gas regulator"),
        (|band| band.air_travel.fastest_w_per_s = f32::NAN, Setting, "speed of the air's actuator"),
        (|band| band.actuator_tolerance = 0.3, Setting, "tolerance of the actuators"),
        (|band| band.reading_tolerance = -0.01, Setting, "tolerance of the readings"),
    ];
    for (change, status, name) in cases {
        let mut wrong = BAND;
        change(&mut wrong);
        let found = limit(&wrong);
        assert_eq!((found.1, found.2), (status, (name.to_owned(), -1)));
    }
    for ((volume, needed, least), name) in [
        ((0.0, 4.0, 0.002), "volume of the chamber"),
        ((0.02, f32::NAN, 0.002), "air changes needed"),
        ((0.02, 4.0, -0.002), "least air flow"),
    ] {
        let found = changes(volume, needed, least);
        assert_eq!((found.1, found.2), (Setting, (name.to_owned(), -1)));
    }
    // No room for a name is no error.
    let mut unmade = JetwrightCrossLimit::unmade();
    assert_eq!(jetwright_cross_limit_make(Some(&mut unmade), Some(&BAND), None), JetwrightStatus::Ok);
}
