//! What `extras/calls.c` does, in Rust.

use jetwright::burner::Conditions;
use jetwright::combustion::{Basis, FlueReading, Reactants, air_ratio_from_oxygen, expected_reading};
use jetwright::control::{
    AirChanges, AirRatioBand, ChipBurner, Command as Asked, Controller, ControllerSettings, CrossLimit,
    CrossLimitSettings, Inputs, ReadingSpreads, Readings, SensorLimits, Totals, Travel,
};
use jetwright::gas::{Gas, Species};
use jetwright::orifice::{BoreLength, BoreShape, Jet, Supply};
use jetwright::plant::hazards::{of_fire, of_gas};
use jetwright::quantity::{
    AbsolutePressure, ActualVolumeFlow, Duration, GaugePressure, Length, NetHeatPerMass, NetHeatRate,
    PressureDifference, PricePerMass, Temperature,
};
use jetwright::site::Site;

use super::invented::{burner_image, table, table_image};

fn travel() -> Travel<f32> {
    Travel { slowest: 5_000.0, fastest: 20_000.0 }
}

fn limiter() -> CrossLimit<f32> {
    CrossLimit::new(&CrossLimitSettings {
        band: AirRatioBand { lowest: 0.92, target: 1.05, highest: 1.25 },
        lowest: NetHeatRate::from_watts(9_000.0),
        highest: NetHeatRate::from_watts(24_000.0),
        gas_travel: travel(),
        air_travel: travel(),
        actuator_tolerance: 0.03,
        reading_tolerance: 0.01,
    })
    .unwrap()
}

fn moved(position: f32, command: f32) -> f32 {
    let step = 8_000.0 * 0.25;
    if command > position { (position + step).min(command) } else { (position - step).max(command) }
}

/// Every line it tells.
pub fn expected() -> Vec<(String, Vec<f64>)> {
    let mut lines: Vec<(String, Vec<f64>)> = Vec::new();
    let mut line = |name: &str, numbers: &[f32]| {
        lines.push((name.into(), numbers.iter().map(|&number| f64::from(number)).collect()));
    };
    [2.0, 13.0, 14.0, 11.0, 1.0, 2.0].iter().for_each(|&status| line("refused-on-purpose", &[status]));
    let (watts, seconds) = (NetHeatRate::from_watts, Duration::from_seconds);
    let flow = ActualVolumeFlow::from_cubic_meters_per_second;
    let table = table();
    line("target", &[table.made_for().air_ratio]);
    line("refused-on-purpose", &[13.0]);
    let hazards = table_image().hazards.unwrap();
    line("hazards", &[hazards.len() as f32]);
    for hazard in hazards {
        line("hazard", &[f32::from(hazard.kind), f32::from(hazard.severity), f32::from(hazard.row), hazard.number]);
    }
    line("range", &[9_000.0, 24_000.0]);
    for kilowatts in [8.0, 12.0, 16.0, 20.0, 24.0] {
        let set = table.at(watts(1_000.0 * kilowatts));
        line("set", &[set.gauge.pascals(), set.air]);
    }
    let site = Site::at_altitude(Length::from_meters(1600.0_f32), Temperature::from_kelvin(293.15), 0.0).unwrap();
    // Worked out in double precision and rounded once, as the library keeps it.
    let propane = Gas::<f64>::from(Species::Propane).cast::<f32>();
    let shape = BoreShape::drilled(BoreLength::Fixed(Length::from_meters(10e-3_f32)));
    let passed = Jet::new(shape.with_diameter(Length::from_meters(1.5e-3)).unwrap())
        .flow(
            &propane,
            &Supply {
                ambient: site.ambient_pressure(),
                gauge: GaugePressure::from_pascals(34_474.0),
                back: GaugePressure::from_pascals(0.0),
                temperature: Temperature::from_kelvin(283.15),
            },
        )
        .unwrap();
    let mass_flow = passed.mass_flow.kilograms_per_second();
    let choked = f32::from(u8::from(passed.choked));
    line("flow", &[mass_flow, passed.heat_net.watts(), passed.discharge_coefficient, choked]);
    line("refused-on-purpose", &[1.0]);
    // One hazard, that the gas is heavy.
    let heavy = of_gas(&propane).unwrap();
    line("state", &[1.0, f32::from(heavy.kind as u16), heavy.number.unwrap(), 1.0]);

    [5.0, 5.0, 4.0, 3.0, 7.0, 4.0, 1.0].iter().for_each(|&status| line("refused-on-purpose", &[status]));
    let damp = Site::at_station_pressure(site.ambient_pressure(), Temperature::from_kelvin(293.15), 0.5).unwrap();
    for (oxygen, carbon_monoxide, basis) in [(0.03, 0.0, Basis::Dry), (0.03, 0.002, Basis::Wet)] {
        let reading = FlueReading { oxygen, carbon_monoxide, basis };
        let ratio = air_ratio_from_oxygen(&propane, &damp, reading).unwrap();
        let expected = expected_reading(&propane, &damp, ratio).unwrap();
        line("flue", &[ratio, expected.oxygen_dry, expected.oxygen_wet, expected.carbon_dioxide_dry]);
    }
    for air_ratio in [0.8, 1.05, 1.5] {
        let cold = Temperature::from_kelvin(293.15);
        let reactants = Reactants::new(&propane, &damp, air_ratio, cold).unwrap();
        line("available", &[reactants.available_heat(Temperature::from_kelvin(1500.0)).unwrap()]);
        let found: Vec<_> = of_fire(&propane, &damp, (cold, Temperature::from_kelvin(1500.0)), air_ratio).collect();
        let worst =
            found.iter().fold(&found[0], |worst, next| if next.severity() < worst.severity() { next } else { worst });
        let severity = f32::from(worst.severity().code());
        line("fire", &[found.len() as f32, f32::from(worst.kind as u16), severity]);
    }

    let statuses = [2.0, 2.0, 16.0, 13.0, 14.0, 11.0, 1.0, 2.0, 17.0, 4.0, 7.0, 3.0, 4.0, 1.0, 7.0, 7.0, 7.0, 3.0];
    statuses.iter().for_each(|&status| line("refused-on-purpose", &[status]));
    let chip = ChipBurner::<f32>::read_image(&burner_image()).unwrap();
    let sultry = AbsolutePressure::from_pascals(82_000.0);
    let sultry = Conditions {
        site: Site::at_station_pressure(sultry, Temperature::from_kelvin(308.15), 0.8).unwrap(),
        chamber_temperature: Temperature::from_kelvin(1500.0),
        ..chip.conditions
    };
    for (conditions, kelvin, pascals, blowing) in
        [(chip.conditions, 289.15, 570.0, 450.0), (sultry, 301.15, 535.0, 420.0)]
    {
        let readings = Readings {
            gauge: GaugePressure::from_pascals(22_063.2),
            gas_temperature: Temperature::from_kelvin(kelvin),
            blower_pressure: PressureDifference::from_pascals(pascals),
        };
        let ready = chip.burner.prepared(&conditions).unwrap();
        let found = readings.estimate(&ready).unwrap();
        let (gas, air) = (found.gas.kilograms_per_second(), found.air.kilograms_per_second());
        let (heat, air_flow) = (found.heat_net.watts(), found.air_flow.cubic_meters_per_second());
        line("estimate", &[gas, heat, air_flow, air, found.air_ratio.unwrap(), found.back_pressure.pascals()]);
        let spreads = ReadingSpreads {
            gauge: PressureDifference::from_pascals(500.0),
            gas_temperature: 2.0,
            blower_pressure: PressureDifference::from_pascals(5.0),
            jet: 0.03,
            blower_curve: 0.04,
        };
        // The curve's air, with the damper open.
        let open = PressureDifference::from_pascals(blowing);
        line("blowing", &[ready.blower().flow_at(open).unwrap().cubic_meters_per_second()]);
        let (found, spread) = readings.estimate_with_spread(&ready, &spreads).unwrap();
        line("spread", &[found.heat_net.watts(), spread.gas, spread.air, spread.air_ratio]);
    }

    let mut limit = limiter();
    for _ in 0..20 {
        limit.hold(watts(10_000.0), watts(10_000.0), seconds(1.0));
    }
    let (mut gas, mut air) = (10_000.0, 10_000.0);
    for _ in 0..20 {
        let set = limit.step(watts(20_000.0), watts(gas), watts(air), seconds(0.25));
        line("limited", &[set.gas.watts(), set.air.watts(), f32::from(u8::from(set.fault.is_some()))]);
        (gas, air) = (moved(gas, set.gas.watts()), moved(air, set.air.watts()));
    }
    assert_eq!((gas, air), (20_000.0, 20_000.0), "the fire has come to the heat wanted");

    // 78 L at 8 L/s: eleven calls a second apart, of which the first has air at one end only; 80 L by then.
    line("blown", &[11.0, 80.0 / 19.5]);
    let mut totals =
        Totals::new(NetHeatPerMass::from_joules_per_kilogram(46.3e6), PricePerMass::from_per_kilogram(2.4));
    for _ in 0..3600 {
        totals.add(passed.mass_flow, seconds(1.0));
    }
    line("used", &[totals.gas().kilograms(), totals.heat_net_joules(), totals.money()]);

    let changes = AirChanges::new(0.02, 4.0, flow(0.002)).unwrap();
    let heat = SensorLimits {
        lowest: -10.0,
        highest: 60_000.0,
        fastest: 90_000.0,
        noise: 900.0,
        stuck_after: Some(seconds(5.0)),
    };
    let temperature = SensorLimits { lowest: 240.0, highest: 330.0, fastest: 2.0, noise: 0.5, stuck_after: None };
    let settings = ControllerSettings {
        lighting: watts(10_000.0),
        lighting_time: seconds(1.0),
        steady_time: seconds(0.5),
        ready_time: seconds(60.0),
        closing_time: seconds(2.0),
        run_down_time: seconds(8.0),
        longest_tick: 500,
        clock_tolerance: 0.01,
        least_air: flow(0.002),
        air_heat: 3e6,
        has_second_air: false,
        air_agreement: (0.1, seconds(1.0)),
    };
    line("refused-on-purpose", &[8.0]);
    line("named", &[2.0, f32::from(b'f'), f32::from(b'a')]);
    line("named", &[-1.0, 0.0]);
    let mut desk = Controller::new(table, limiter(), changes, [heat, temperature, heat], settings).unwrap();
    let (mut gas, mut air, mut asks) = (10_000.0, 0.0, false);
    for tick in 0..200_u32 {
        let odd = (tick % 2) as f32;
        let gas_reading = if asks { gas } else { 0.0 } + odd;
        let air_reading = if tick < 180 { air + odd } else { -500.0 };
        let out = desk.tick(&Inputs {
            now: 4_294_960_000_u32.wrapping_add(250 * tick),
            command: match tick {
                2 => Asked::Start,
                100 => Asked::Light,
                _ => Asked::Nothing,
            },
            wanted: watts(20_000.0),
            readings: [gas_reading, 283.15, air_reading],
            gas: watts(gas_reading),
            air: watts(air_reading),
            air_flow: flow(air_reading / 3.0e6),
            second_air_flow: None,
            chamber_is_cold: true,
            permitted: true,
        });
        if tick % 20 == 19 {
            let asked = f32::from(u8::from(out.asks_for_gas));
            line("tick", &[out.state as u8 as f32, asked, out.gas.watts(), out.air.watts(), out.set.gauge.pascals()]);
        }
        asks = out.asks_for_gas;
        (gas, air) = (moved(gas, out.gas.watts()), moved(air, out.air.watts()));
    }
    lines
}
