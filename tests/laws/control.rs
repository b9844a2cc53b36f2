//! Laws of the controller's parts; the whole of it stands trial in `tests/fault_campaign`.

use super::rig::BELL_FOUNDRY;
use jetwright::burner::AirSetting;
use jetwright::control::{
    AirChanges, AirRatioBand, ControlError, CrossLimit, CrossLimitSettings, HAZARD_CAP, ImageError, ImageHazard,
    MadeFor, MixtureFault, Setpoint, SetpointImage, SetpointTable, Travel,
};
use jetwright::quantity::{ActualVolumeFlow, Duration, GaugePressure, HeatRate, NetHeatRate};
use jetwright::{Error, Input, Scalar};
use proptest::prelude::*;

const ROWS: usize = 17;
const MADE_FOR: MadeFor = MadeFor { air_ratio: 1.05, burner: 0 };
type ChipTable = SetpointTable<ROWS, f32>;

fn kilowatts<S: Scalar>(value: f64) -> NetHeatRate<S> {
    NetHeatRate::from_kilowatts(S::c(value))
}

fn gauge(kilopascals: f64) -> GaugePressure {
    GaugePressure::from_kilopascals(kilopascals)
}

/// The foundry's wide damper shuts far enough for the fires of its whole gauge range from here up.
fn foundry<S: Scalar>(between: u16) -> SetpointTable<ROWS, S> {
    let (burner, conditions) = (BELL_FOUNDRY.burner::<S>(), BELL_FOUNDRY.conditions::<S>());
    let ratio = S::c(BELL_FOUNDRY.air_ratio);
    SetpointTable::for_burner(&burner, &conditions, ratio, kilowatts(45.0), kilowatts(58.0), between).unwrap()
}

#[test]
fn no_lookup_is_further_from_the_burner_than_its_bound() {
    let (burner, conditions) = (BELL_FOUNDRY.burner::<f64>(), BELL_FOUNDRY.conditions::<f64>());
    let exact = foundry::<f64>(31);
    let (chip, on_chip) = (exact.to_single(), foundry::<f32>(3));
    let mut worst = [(0.0_f64, 0.0_f64); 3];
    for step in 0..=500 {
        // Off the heats the table has asked.
        let heat = kilowatts(45.0 + 13.0 * f64::from(step) / 500.0);
        let gauge =
            burner.gauge_for_heat(&conditions, HeatRate::Net(heat), AirSetting::Ratio(BELL_FOUNDRY.air_ratio)).unwrap();
        let air = burner.opening_for(&conditions, gauge, BELL_FOUNDRY.air_ratio).unwrap();
        let single = NetHeatRate::from_watts(heat.watts() as f32);
        let wide = |set: Setpoint<f32>| (f64::from(set.gauge.pascals()), f64::from(set.air));
        let found = exact.at(heat);
        for (worst, found) in
            worst.iter_mut().zip([(found.gauge.pascals(), found.air), wide(chip.at(single)), wide(on_chip.at(single))])
        {
            worst.0 = worst.0.max((found.0 - gauge.pascals()).abs());
            worst.1 = worst.1.max((found.1 - air).abs());
        }
    }
    let bounds = [
        (exact.bound().gauge.pascals(), exact.bound().air),
        (f64::from(chip.bound().gauge.pascals()), f64::from(chip.bound().air)),
        (f64::from(on_chip.bound().gauge.pascals()), f64::from(on_chip.bound().air)),
    ];
    for (worst, bound) in worst.into_iter().zip(bounds) {
        assert!(worst.0 <= bound.0 && worst.1 <= bound.1, "{worst:?} {bound:?}");
    }
    // Not by being of no use, and sharper the more heats are asked.
    let last = exact.rows().last().unwrap();
    assert!(bounds[0].0 < 0.005 * last.gauge.pascals() && bounds[0].1 < 0.02 * last.air, "{bounds:?}");
    assert!(bounds[0].0 < 0.3 * bounds[2].0);
}

#[test]
fn the_bound_covers_a_step_that_no_heat_asked_falls_on() {
    // The worst a rising answer can do between two heats asked: all of its rise at one point.
    let table = SetpointTable::<5>::build(MADE_FOR, kilowatts(10.0), kilowatts(30.0), 3, |heat| {
        let gauge = GaugePressure::from_pascals(if heat.kilowatts() < 16.9 { 1e3 } else { 9e3 });
        Ok(Setpoint { gauge, air: 0.5 })
    })
    .unwrap();
    let worst = (0..=2000)
        .map(|step| {
            let heat: f64 = 10.0 + 0.01 * f64::from(step);
            let exact = if heat < 16.9 { 1e3 } else { 9e3 };
            (table.at(kilowatts(heat)).gauge.pascals() - exact).abs()
        })
        .fold(0.0, f64::max);
    assert!(worst > 2e3 && worst <= table.bound().gauge.pascals(), "{worst} {:?}", table.bound());
}

#[test]
fn a_column_that_falls_is_refused_and_so_is_what_the_burner_refuses() {
    let build = |answer: fn(f64) -> Setpoint| {
        SetpointTable::<3>::build(MADE_FOR, kilowatts(10.0), kilowatts(20.0), 7, |heat| Ok(answer(heat.kilowatts())))
    };
    let falls = build(|heat| Setpoint { gauge: gauge(20.0 - (heat - 14.0).powi(2)), air: 0.5 });
    assert!(matches!(falls, Err(ControlError::NotRising { column: Input::GaugePressure, heat }) if heat > 14e3));
    let air_falls = build(|heat| Setpoint { gauge: gauge(heat), air: 1.0 - 0.01 * heat });
    assert!(matches!(air_falls, Err(ControlError::NotRising { column: Input::DamperOpening, .. })));
    assert!(build(|heat| Setpoint { gauge: gauge(heat), air: if heat > 15.0 { f64::NAN } else { 0.5 } }).is_err());
    let refused = Error::NoSolution { input: Input::AirFlow, nearest: 1.0 };
    let table = SetpointTable::<3>::build(MADE_FOR, kilowatts(10.0), kilowatts(20.0), 7, |_| Err(refused));
    assert_eq!(table, Err(ControlError::Refused(refused)));
    for (low, high) in [(20.0, 10.0), (0.0, 10.0), (10.0, 10.0), (10.0, f64::INFINITY), (f64::NAN, 10.0)] {
        let made = SetpointTable::<3>::build(MADE_FOR, kilowatts(low), kilowatts(high), 7, |_| Ok(Setpoint::default()));
        assert!(matches!(made, Err(ControlError::Setting { .. })), "{low} {high}");
    }
}

#[test]
fn a_lookup_meets_the_rows_and_stays_between_them() {
    let table = foundry::<f32>(1);
    let rows = table.rows();
    for (index, row) in rows.iter().enumerate() {
        let set = table.at(NetHeatRate::from_watts(table.lowest().watts() + index as f32 * table.step().watts()));
        assert!((set.gauge.pascals() / row.gauge.pascals() - 1.0).abs() < 1e-5, "{index}");
        assert!((set.air / row.air - 1.0).abs() < 1e-5, "{index}");
    }
    let (first, last) = (rows[0], rows[ROWS - 1]);
    for (heat, row) in [(0.0, first), (-1e30, first), (f32::NAN, first), (1e30, last), (f32::INFINITY, last)] {
        assert_eq!(table.at(NetHeatRate::from_watts(heat)), row, "{heat}");
    }
    let mut before = first;
    for step in 0..2000 {
        let set = table.at(NetHeatRate::from_watts(44_000.0 + 11.0 * step as f32));
        assert!(set.gauge >= before.gauge && set.air >= before.air);
        before = set;
    }
}

#[test]
fn an_image_with_any_bit_changed_or_any_byte_gone_is_refused() {
    let table = foundry::<f64>(1).to_single();
    let mut image = [0; ChipTable::IMAGE_BYTES];
    table.write_image(&mut image).unwrap();
    assert_eq!(ChipTable::read_image(&image), Ok(table));
    let needed = ChipTable::IMAGE_BYTES;
    for length in 0..needed {
        // The header says how long the whole is.
        let needed = if length < 16 { 16 } else { needed };
        assert_eq!(ChipTable::read_image(&image[..length]), Err(ImageError::Length { needed }), "{length}");
    }
    let longer: Vec<u8> = image.iter().copied().chain([0]).collect();
    assert_eq!(ChipTable::read_image(&longer), Err(ImageError::Length { needed }));
    for bit in 0..8 * needed {
        let mut damaged = image;
        damaged[bit / 8] ^= 1 << (bit % 8);
        let error = ChipTable::read_image(&damaged).unwrap_err();
        let right = match bit / 8 {
            0..4 => error == ImageError::NotATable,
            4..6 => matches!(error, ImageError::Version { .. }),
            6..8 => matches!(error, ImageError::Length { .. }),
            _ => error == ImageError::Damaged,
        };
        assert!(right, "bit {bit}: {error:?}");
    }
    assert_eq!(SetpointTable::<9, f32>::read_image(&image), Err(ImageError::Rows { found: 17 }));
    assert_eq!(table.write_image(&mut [0; 7]), Err(ImageError::Length { needed }));
    // A whole image of numbers that are no table.
    let mut falling = *table.rows();
    falling.reverse();
    let wrong = ChipTable::stored(table.made_for(), table.lowest(), table.step().watts(), falling, table.bound());
    wrong.write_image(&mut image).unwrap();
    assert_eq!(ChipTable::read_image(&image), Err(ImageError::Content));
}

#[test]
fn hazards_travel_with_a_table_and_a_reader_may_pass_over_them() {
    let table = foundry::<f64>(1).to_single();
    let hazard = |place: usize| ImageHazard {
        kind: 40_000 + place as u16,
        severity: 255 - place as u8,
        row: if place == 0 { ImageHazard::EVERY_ROW } else { place as u8 },
        number: 0.5 - place as f32,
    };
    let written = |hazards: Option<Vec<ImageHazard>>| {
        let whole = SetpointImage { table, hazards: hazards.map(|hazards| hazards.into_iter().collect()) };
        let mut image = vec![0; whole.bytes()];
        whole.write(&mut image).map(|()| (whole, image))
    };
    let lists = [None, Some(vec![]), Some(vec![hazard(3)]), Some((0..HAZARD_CAP).map(hazard).collect())];
    for list in lists {
        let (whole, image) = written(list).unwrap();
        assert!(image.len() <= SetpointImage::<ROWS>::MOST_BYTES);
        assert_eq!(SetpointImage::read(&image), Ok(whole));
        assert_eq!(ChipTable::read_image(&image), Ok(table));
        for bit in 0..8 * image.len() {
            let mut damaged = image.clone();
            damaged[bit / 8] ^= 1 << (bit % 8);
            assert!(SetpointImage::<ROWS>::read(&damaged).is_err(), "bit {bit}");
        }
        assert_eq!(SetpointImage::<9>::read(&image), Err(ImageError::Rows { found: 17 }));
    }
    // A table written alone says nothing of hazards.
    let mut alone = [0; ChipTable::IMAGE_BYTES];
    table.write_image(&mut alone).unwrap();
    assert_eq!(SetpointImage::read(&alone), Ok(SetpointImage { table, hazards: None }));
    for wrong in [ImageHazard { row: 17, ..hazard(1) }, ImageHazard { number: f32::NAN, ..hazard(1) }] {
        assert_eq!(written(Some(vec![wrong])).unwrap_err(), ImageError::Content);
    }
}

fn settings<S: Scalar>(actuator: f64, reading: f64, low: f64, high: f64) -> CrossLimitSettings<S> {
    let travel = Travel { slowest: S::c(5e3), fastest: S::c(2e4) };
    CrossLimitSettings {
        band: AirRatioBand { lowest: S::c(low), target: S::one(), highest: S::c(high) },
        lowest: kilowatts(10.0),
        highest: kilowatts(30.0),
        gas_travel: travel,
        air_travel: travel,
        actuator_tolerance: S::c(actuator),
        reading_tolerance: S::c(reading),
    }
}

#[test]
fn a_band_must_be_wider_than_the_tolerances() {
    // Two flows 3 % off their setpoints either way are 1.03/0.97 apart; four readings 1 % off add (1.01/0.99)^2; a
    // hundredth is left to move in.
    let needed = 1.03 / 0.97 * (1.01_f64 / 0.99).powi(2);
    let new = |low, high| CrossLimit::new(&settings::<f64>(0.03, 0.01, low, high));
    assert!(new(1.0 / needed / 1.001, 1.01 * needed * 1.001).is_ok());
    for (low, high) in [(1.0 / needed * 1.001, 1.2), (0.8, 1.01 * needed / 1.001)] {
        let Err(ControlError::BandTooNarrow { needed: (below, above) }) = new(low, high) else {
            panic!("{low} {high}")
        };
        assert!(
            (f64::from(below) * needed - 1.0).abs() < 1e-3 && (f64::from(above) / 1.01 / needed - 1.0).abs() < 1e-3
        );
    }
    assert!(matches!(new(0.2, 1.3), Err(ControlError::Refused(_))));
    assert!(matches!(CrossLimit::new(&settings::<f64>(0.4, 0.01, 0.6, 2.0)), Err(ControlError::Setting { .. })));
}

/// A limiter settled at a heat, with exact readings.
fn settled<S: Scalar>(heat: f64) -> CrossLimit<S> {
    let mut limit = CrossLimit::new(&settings::<S>(0.02, 0.01, 0.85, 1.25)).unwrap();
    for _ in 0..30 {
        limit.hold(kilowatts(heat), kilowatts(heat), Duration::from_seconds(S::one()));
    }
    assert!(limit.is_settled_at(kilowatts(heat)));
    limit
}

#[test]
fn each_doubt_is_raised_by_what_it_is_of_and_by_nothing_else() {
    let step = |gas: f64, air: f64, seconds: f64| {
        let set =
            settled::<f64>(20.0).step(kilowatts(20.0), kilowatts(gas), kilowatts(air), Duration::from_seconds(seconds));
        assert!(set.fault.is_none() || set.gas == kilowatts(10.0));
        set.fault
    };
    assert_eq!(step(20.0, 20.0, 0.1), None);
    assert_eq!(step(20.0 * 1.02 * 1.01, 20.0 * 0.98 * 0.99, 0.1), None, "all tolerances used up");
    assert_eq!(step(20.0, 20.0, -0.1), Some(MixtureFault::Time));
    assert_eq!(step(20.0, 20.0, f64::NAN), Some(MixtureFault::Time));
    assert_eq!(step(f64::NAN, 20.0, 0.1), Some(MixtureFault::Reading));
    assert_eq!(step(20.0, -1.0, 0.1), Some(MixtureFault::Reading));
    assert_eq!(step(22.0, 20.0, 0.1), Some(MixtureFault::GasContradicts));
    assert_eq!(step(20.0, 18.0, 0.1), Some(MixtureFault::AirContradicts));
}

#[test]
fn no_reading_is_believed_of_actuators_that_were_held_anywhere() {
    let step = |held: f32, seconds: f32, read: f32| {
        let mut limit = settled::<f32>(20.0);
        let watts = NetHeatRate::from_watts;
        limit.hold(watts(held), watts(held), Duration::from_seconds(0.1));
        limit.step(kilowatts(20.0), watts(read), watts(read), Duration::from_seconds(seconds))
    };
    assert_eq!(step(f32::INFINITY, f32::INFINITY, f32::INFINITY).fault, Some(MixtureFault::Reading));
    assert_eq!(step(f32::NAN, f32::INFINITY, f32::INFINITY).fault, Some(MixtureFault::Reading));
    // Held at 50 kW, the air has room for more gas than the largest fire's 30 kW; it is not asked for.
    let set = step(50e3, 60.0, 50e3);
    assert_eq!((set.fault, set.gas), (Some(MixtureFault::OutsideBand), kilowatts(10.0)));
}

#[test]
fn a_mixture_is_judged_by_either_witness_of_gas_with_either_of_air() {
    // Settled at 20 kW. Gas that reads 23 kW is at most 1.01 x 23 = 23.2 kW; the air is at least 0.98 x 20 = 19.6 kW by
    // estimate, whatever it reads: 0.844 of the gas, and 0.85 is needed.
    let limit = settled::<f64>(20.0);
    let enough = |gas: f64, air: f64| limit.has_air_for(kilowatts(gas), kilowatts(air));
    assert!(enough(20.0, 20.0) && enough(0.0, 20.0) && enough(22.5, 20.0));
    assert!(!enough(23.0, 23.0) && !enough(23.0, 30.0), "the estimated air is not enough");
    assert!(!enough(20.0, 17.5), "the read air is not enough for the estimated gas");
    assert!(!enough(f64::NAN, 20.0) && !enough(20.0, f64::NAN));
    // At most 1.25: the air is at most 20.4 kW by estimate, gas that reads 16 kW is at least 15.8 kW.
    let in_band = |gas: f64, air: f64| limit.is_in_band(kilowatts(gas), kilowatts(air));
    assert!(in_band(20.0, 20.0) && in_band(17.0, 20.0) && in_band(20.0, 23.5));
    assert!(!in_band(16.0, 16.0) && !in_band(16.0, 14.5), "the estimated air is too much");
    assert!(!in_band(24.5, 24.5), "the read air is too much for the estimated gas");
}

#[test]
fn the_blown_time_is_the_volume_over_the_flow() {
    // 4 changes of 30 L at 6 L/s are 20 s, whatever the ticks; the first tick has no air at its beginning.
    for tick in [0.01, 0.1, 0.5] {
        let flow = ActualVolumeFlow::from_liters_per_second(6.0_f32);
        let mut changes = AirChanges::new(0.03, 4.0, flow * 0.5).unwrap();
        let mut count = 0;
        while !changes.are_enough() {
            changes.count(flow, Duration::from_seconds(tick));
            count += 1;
        }
        let seconds = (count - 1) as f32 * tick;
        assert!((20.0..20.02 + 1.01 * tick).contains(&(seconds * 1.000_01)), "{seconds} at {tick}");
        for lost in [ActualVolumeFlow::from_liters_per_second(2.9), ActualVolumeFlow::from_liters_per_second(f32::NAN)]
        {
            let mut again = changes;
            again.count(lost, Duration::from_seconds(tick));
            assert!(!again.are_enough() && again.so_far() == 0.0);
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(300))]

    /// With actuators that do as they are told, the nominal mixture is never richer than the target, the fire comes to
    /// the heat wanted, and air never waits for gas on the way up nor gas for air on the way down.
    #[test]
    fn air_leads_going_up_and_gas_leads_going_down(
        from in 10.0..30.0_f64, to in 10.0..30.0_f64, tick in 0.02..0.6_f64, gas_speed in 5e3..2e4_f64,
        air_speed in 5e3..2e4_f64,
    ) {
        let mut limit = settled::<f64>(from);
        let (mut gas, mut air) = (1e3 * from, 1e3 * from);
        let moved = |position: f64, command: f64, step: f64| {
            if command > position { (position + step).min(command) } else { (position - step).max(command) }
        };
        for _ in 0..(60.0 / tick) as usize {
            let watts = NetHeatRate::from_watts;
            let set = limit.step(kilowatts(to), watts(gas), watts(air), Duration::from_seconds(tick));
            prop_assert_eq!(set.fault, None);
            let (gas_command, air_command) = (set.gas.watts(), set.air.watts());
            prop_assert!(gas_command <= air * (1.0 + 1e-9), "gas before its air");
            prop_assert!(air_command >= gas * (1.0 - 1e-9), "air gone before its gas");
            let (gas_next, air_next) = (moved(gas, gas_command, gas_speed * tick), moved(air, air_command, air_speed * tick));
            if to > from {
                prop_assert!(air_next >= air * (1.0 - 1e-9) && air_next >= gas_next * (1.0 - 1e-9));
            } else {
                prop_assert!(gas_next <= gas * (1.0 + 1e-9) && air_next >= gas_next * (1.0 - 1e-9));
            }
            prop_assert!(air_next <= 1.25 * gas_next);
            (gas, air) = (gas_next, air_next);
        }
        prop_assert!((gas / 1e3 - to).abs() < 1e-9 && (air / 1e3 - to).abs() < 1e-9);
    }

    /// Single precision commands what double does.
    #[test]
    fn both_number_types_command_the_same(
        from in 10.0..30.0_f64, to in 10.0..30.0_f64, noise in prop::array::uniform8(-0.01..0.01_f64),
    ) {
        let (mut double, mut single) = (settled::<f64>(from), settled::<f32>(from));
        let (mut gas, mut air) = (1e3 * from, 1e3 * from);
        for pair in noise.chunks(2) {
            let tick = 0.125;
            let (gas_reading, air_reading) = (gas * (1.0 + pair[0]), air * (1.0 + pair[1]));
            let watts = NetHeatRate::from_watts;
            let wide = double.step(kilowatts(to), watts(gas_reading), watts(air_reading), Duration::from_seconds(tick));
            let watts = |value: f64| NetHeatRate::from_watts(value as f32);
            let narrow =
                single.step(kilowatts(to), watts(gas_reading), watts(air_reading), Duration::from_seconds(tick as f32));
            prop_assert_eq!(wide.fault, narrow.fault);
            for (wide, narrow) in [(wide.gas, narrow.gas), (wide.air, narrow.air)] {
                prop_assert!((f64::from(narrow.watts()) / wide.watts() - 1.0).abs() < 1e-6);
            }
            let step = 1e4 * tick;
            gas += (wide.gas.watts() - gas).clamp(-step, step);
            air += (wide.air.watts() - air).clamp(-step, step);
        }
    }
}
