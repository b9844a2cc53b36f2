//! Settings, tables and images that would turn a protection off are refused. Every number is invented.

use crate::shop::{Desk, limiter, limits, made, made_at, made_with, rules};
use jetwright::control::{
    AirChanges, AirRatioBand, ControlError, Controller, ControllerSettings, CrossLimit, CrossLimitSettings, ImageError,
    InterpolationBound, MadeFor, SensorLimits, Setpoint, SetpointTable, Totals,
};
use jetwright::quantity::{
    ActualVolumeFlow, Duration, GaugePressure, MassFlow, NetHeatPerMass, NetHeatRate, PressureDifference, PricePerMass,
};

fn refused(name: &str, made: Result<Desk<f64>, ControlError>) {
    assert!(matches!(made, Err(ControlError::Setting { name: found }) if found == name), "{name}: {made:?}");
}

fn kilowatts(value: f64) -> NetHeatRate {
    NetHeatRate::from_kilowatts(value)
}

#[test]
fn settings_that_would_watch_nothing_are_refused() {
    assert!(made::<f64>(limits(Some(5.0)), 500).is_ok());
    for stuck_after in [f64::NAN, 0.0, -1.0, f64::INFINITY] {
        assert!(made::<f64>(limits(Some(stuck_after)), 500).is_err(), "{stuck_after}");
    }
    for (lowest, highest, fastest, noise) in [
        (f64::NAN, 1.0, 1.0, 0.0),
        (0.0, f64::NAN, 1.0, 0.0),
        (1.0, 0.0, 1.0, 0.0),
        (0.0, 1.0, f64::NAN, 0.0),
        (0.0, 1.0, 1.0, f64::NAN),
        (0.0, 1.0, 1.0, -1.0),
    ] {
        let sensor = SensorLimits { lowest, highest, fastest, noise, stuck_after: None };
        assert!(made(sensor, 500).is_err(), "{sensor:?}");
    }
    // Two seconds are the longest that gas may go unseen.
    assert!(made::<f64>(limits(None), 2000).is_ok());
    assert!([0, 2001, u32::MAX / 2].into_iter().all(|longest| made::<f64>(limits(None), longest).is_err()));
    let flow = ActualVolumeFlow::from_cubic_meters_per_second;
    // 9 kW are the air of 0.003 m3/s, of which a tenth to all may be the least.
    for (least, is_usable) in [(0.00031, true), (0.0029, true), (0.00029, false), (0.0031, false)] {
        let made = made_with::<f64>(limits(None), |settings| settings.least_air = flow(least));
        if is_usable {
            assert!(made.is_ok(), "{least}");
        } else {
            refused("least air flow against the smallest heat input", made);
        }
    }
    refused("air ratio of the limiter and of the setpoint table", made_at(limits(None), 1.06, |_| ()));
    for watts in [8.9e3, 24.1e3, f64::NAN] {
        let lighting = NetHeatRate::from_watts(watts);
        refused("heat the fire is lit at", made_with(limits(None), |settings| settings.lighting = lighting));
    }
    // Air needed that is zero in the number type would be there before any was blown.
    let least = ActualVolumeFlow::from_cubic_meters_per_second(0.002_f32);
    assert!(AirChanges::new(1e-30_f32, 1e-30, least).is_err());
}

#[test]
fn air_too_much_for_the_number_type_is_no_air() {
    let flow = ActualVolumeFlow::from_cubic_meters_per_second;
    let mut changes = AirChanges::new(0.02_f32, 4.0, flow(0.002)).unwrap();
    for _ in 0..5 {
        changes.count(flow(3e38), Duration::from_seconds(1e3));
        assert!(!changes.are_enough() && changes.so_far() == 0.0);
    }
}

/// A table of nine rows, and its rows for changing.
const ROWS: usize = 9;

fn rows() -> [Setpoint<f32>; ROWS] {
    core::array::from_fn(|index| Setpoint {
        gauge: GaugePressure::from_pascals(9e3 + 1875.0 * index as f32),
        air: 0.375 + 0.078 * index as f32,
    })
}

/// Whether a controller takes a table; an image of it, whose checksum is right whatever it holds, is refused alike.
fn is_usable(ratio: f32, lowest: f32, step: f32, rows: [Setpoint<f32>; ROWS], bound: [f32; 2]) -> bool {
    let bound = InterpolationBound { gauge: PressureDifference::from_pascals(bound[0]), air: bound[1] };
    let made_for = MadeFor { air_ratio: ratio, burner: 0 };
    let table = SetpointTable::stored(made_for, NetHeatRate::from_watts(lowest), step, rows, bound);
    let mut image = [0; SetpointTable::<ROWS, f32>::IMAGE_BYTES];
    table.write_image(&mut image).unwrap();
    let read = SetpointTable::<ROWS, f32>::read_image(&image);
    assert!(matches!(read, Ok(_) | Err(ImageError::Content)));
    let changes = AirChanges::new(0.02, 4.0, rules().least_air).unwrap();
    let limit = CrossLimit::new(&limiter()).unwrap();
    let made = Controller::new(table, limit, changes, [limits::<f32>(None)], rules());
    let is_made = made.is_ok();
    assert!(is_made || made == Err(ControlError::Setting { name: "setpoint table" }));
    assert_eq!(is_made, read.is_ok());
    is_made
}

#[test]
fn a_table_with_one_wrong_row_is_refused_by_the_controller_and_as_an_image() {
    let usable = |rows| is_usable(1.05, 9e3, 1875.0, rows, [0.0; 2]);
    assert!(usable(rows()));
    for row in 0..ROWS {
        let beyond = if row == 0 { 1e6 } else { -1e6 };
        for wrong in [f32::NAN, f32::INFINITY, f32::NEG_INFINITY, beyond] {
            let (mut gauge, mut air) = (rows(), rows());
            gauge[row].gauge = GaugePressure::from_pascals(wrong);
            air[row].air = wrong;
            assert!(!usable(gauge) && !usable(air), "row {row}: {wrong}");
        }
    }
    let mut below = rows();
    below[0].gauge = GaugePressure::from_pascals(-5.0);
    assert!(!usable(below));
}

#[test]
fn a_table_with_a_wrong_head_is_refused_by_the_controller_and_as_an_image() {
    for step in [0.0, -1875.0, f32::NAN, f32::INFINITY, 1e-42] {
        assert!(!is_usable(1.05, 9e3, step, rows(), [0.0; 2]), "{step}");
    }
    for lowest in [0.0, -9e3, f32::NAN, f32::INFINITY] {
        assert!(!is_usable(1.05, lowest, 1875.0, rows(), [0.0; 2]), "{lowest}");
    }
    for ratio in [0.0, 6.0, f32::NAN] {
        assert!(!is_usable(ratio, 9e3, 1875.0, rows(), [0.0; 2]), "{ratio}");
    }
    for bound in [[-1.0, 0.0], [0.0, -1.0], [f32::NAN, 0.0], [0.0, f32::NAN]] {
        assert!(!is_usable(1.05, 9e3, 1875.0, rows(), bound), "{bound:?}");
    }
}

#[test]
fn each_setting_of_a_controller_that_would_switch_a_protection_off_is_refused_by_name() {
    type Change = fn(&mut ControllerSettings<f64>);
    let changes: [(Change, &str); 15] = [
        (|rules| rules.lighting_time = Duration::from_seconds(f64::NAN), "lighting time"),
        (|rules| rules.lighting_time = Duration::from_seconds(f64::INFINITY), "lighting time"),
        (|rules| rules.steady_time = Duration::from_seconds(0.0), "steady time"),
        (|rules| rules.ready_time = Duration::from_seconds(-1.0), "waiting time"),
        (|rules| rules.closing_time = Duration::from_seconds(0.0), "closing time"),
        (|rules| rules.run_down_time = Duration::from_seconds(f64::INFINITY), "run-down time of the blower"),
        (|rules| rules.clock_tolerance = 0.3, "tolerance of the clock"),
        (|rules| rules.clock_tolerance = -0.01, "tolerance of the clock"),
        (|rules| rules.air_heat = 2.9e5, "heat of a cubic meter of air"),
        (|rules| rules.air_heat = 1.1e7, "heat of a cubic meter of air"),
        (|rules| rules.air_heat = f64::NAN, "heat of a cubic meter of air"),
        (|rules| rules.air_agreement.0 = 0.0, "agreement of the air's readings"),
        (|rules| rules.air_agreement.0 = f64::INFINITY, "agreement of the air's readings"),
        (|rules| rules.air_agreement.1 = Duration::from_seconds(0.0), "agreement of the air's readings"),
        (|rules| rules.longest_tick = 0, "longest tick"),
    ];
    for (change, name) in changes {
        refused(name, made_with(limits(None), change));
    }
}

#[test]
fn each_setting_of_a_limiter_that_would_hold_no_band_is_refused() {
    type Change = fn(&mut CrossLimitSettings<f64>);
    let made = |change: Change| {
        let mut settings = limiter();
        change(&mut settings);
        CrossLimit::new(&settings)
    };
    assert!(made(|_| ()).is_ok());
    let changes: [Change; 16] = [
        |limiter| limiter.band.lowest = f64::NAN,
        |limiter| limiter.band.lowest = 1.0,
        |limiter| limiter.band.highest = 1.1,
        |limiter| limiter.band.target = 5.1,
        |limiter| limiter.lowest = NetHeatRate::from_watts(0.0),
        |limiter| limiter.lowest = NetHeatRate::from_watts(f64::NAN),
        |limiter| limiter.highest = limiter.lowest,
        |limiter| limiter.highest = NetHeatRate::from_watts(f64::INFINITY),
        |limiter| limiter.gas_travel.slowest = 0.0,
        |limiter| limiter.gas_travel.fastest = 4e3,
        |limiter| limiter.air_travel.slowest = f64::NAN,
        |limiter| limiter.air_travel.fastest = f64::INFINITY,
        |limiter| limiter.actuator_tolerance = -0.01,
        |limiter| limiter.actuator_tolerance = f64::NAN,
        |limiter| limiter.reading_tolerance = -0.01,
        |limiter| {
            (limiter.band, limiter.reading_tolerance) = (AirRatioBand { lowest: 0.5, target: 1.5, highest: 5.0 }, 0.31)
        },
    ];
    for (place, change) in changes.into_iter().enumerate() {
        assert!(made(change).is_err(), "{place}");
    }
    // The limiter may ask no more than the table has.
    let wider = |lowest: f64, highest: f64| {
        let (lowest, highest) = (NetHeatRate::from_watts(lowest), NetHeatRate::from_watts(highest));
        let limit = CrossLimit::new(&CrossLimitSettings { lowest, highest, ..limiter() }).unwrap();
        let table =
            SetpointTable::build(MadeFor { air_ratio: 1.05, burner: 0 }, kilowatts(9.0), kilowatts(24.0), 1, |heat| {
                Ok(Setpoint { gauge: GaugePressure::from_pascals(heat.watts()), air: 0.5 })
            });
        let changes = AirChanges::new(0.02, 4.0, rules().least_air).unwrap();
        Controller::<9, 1, f64>::new(table.unwrap(), limit, changes, [limits(None)], rules())
    };
    refused("range of heat of the limiter", wider(8.9e3, 24e3));
    refused("range of heat of the limiter", wider(9e3, 24.1e3));
}

#[test]
fn the_least_of_two_measurements_is_certain() {
    // Sent to 10 kW for long: the actuator gives 9.7 kW at least, and a reading is there to 99 %.
    let mut limit = CrossLimit::new(&limiter::<f64>()).unwrap();
    (0..20).for_each(|_| limit.hold(kilowatts(10.0), kilowatts(10.0), Duration::from_seconds(1.0)));
    assert!((limit.certain_share(kilowatts(9.75)) - 0.99).abs() < 1e-12);
    assert!((limit.certain_share(kilowatts(10.0)) - 0.97).abs() < 1e-12);
    for nothing in [0.0, -1.0, f64::NAN] {
        assert_eq!(limit.certain_share(kilowatts(nothing)), 0.0);
    }
}

#[test]
fn a_flow_without_end_changes_no_air() {
    let flow = ActualVolumeFlow::from_cubic_meters_per_second;
    for (flows, seconds) in
        [([f64::INFINITY; 2], 1.0), ([1.0; 2], f64::INFINITY), ([1.0; 2], -1.0), ([f64::NAN; 2], 1.0)]
    {
        let mut changes = AirChanges::new(0.02, 4.0, flow(0.002)).unwrap();
        flows.into_iter().for_each(|through| changes.count(flow(through), Duration::from_seconds(seconds)));
        assert!(!changes.are_enough() && changes.so_far() == 0.0, "{flows:?} {seconds}");
    }
}

#[test]
fn totals_count_what_is_known_and_keep_the_time_that_is_not() {
    let mut totals = Totals::new(NetHeatPerMass::from_joules_per_kilogram(46e6), PricePerMass::from_per_kilogram(2.0));
    let second = Duration::from_seconds(1.0);
    for grams in [2.0, f64::NAN, -1.0, f64::INFINITY] {
        totals.add(MassFlow::from_grams_per_second(grams), second);
    }
    for seconds in [f64::NAN, -1.0, f64::INFINITY] {
        totals.add(MassFlow::from_grams_per_second(2.0), Duration::from_seconds(seconds));
    }
    assert_eq!((totals.gas().kilograms(), totals.unknown().seconds()), (0.002, 3.0));
    assert_eq!((totals.heat_net_joules(), totals.money()), (92e3, 0.004));
}

#[test]
fn a_lookup_outside_the_table_stays_at_its_ends() {
    let table = SetpointTable::stored(
        MadeFor::default(),
        NetHeatRate::from_watts(9e3),
        1875.0,
        rows(),
        InterpolationBound::default(),
    );
    for (heat, row) in [(f32::NAN, 0), (-1e30, 0), (f32::NEG_INFINITY, 0), (1e30, ROWS - 1), (f32::INFINITY, ROWS - 1)]
    {
        assert_eq!(table.at(NetHeatRate::from_watts(heat)), rows()[row], "{heat}");
    }
}
