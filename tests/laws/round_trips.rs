//! Answers put back into their questions, and the same thing found by another way.

use super::cases::{ACCEPTED, IN_USE, JetCase, named_gas};
use crate::tolerance::{ONE_STEP, ROUND_TRIP};
use jetwright::combustion::AirNeed;
use jetwright::gas::{CombustionReference, NAMED};
use jetwright::orifice::{BoreLength, Coefficient, Jet, Supply, bore_for_heat, discharge, pressure_for_heat};
use jetwright::quantity::{
    AbsolutePressure, GaugePressure, HeatRate, Length, NetHeatRate, PressureDifference, ReferenceState, Temperature,
};
use jetwright::site::{standard_pressure, station_pressure};
use jetwright::{Error, Input, Site};
use proptest::prelude::*;

fn near(found: f64, expected: f64, within: f64) -> bool {
    (found - expected).abs() <= within * expected.abs()
}

#[test]
fn the_pressure_and_the_bore_for_a_heat_make_that_heat() {
    let mut met = [0; 2];
    for (index, case) in JetCase::cover(&IN_USE, 1200).enumerate() {
        let (gas, supply) = (case.gas::<f64>(), case.supply::<f64>());
        let Some(flow) = case.flow::<f64>().ok().filter(|flow| flow.heat_gross.watts() * 3.0 < 2e6) else { continue };
        let heat = if index % 2 == 0 { HeatRate::Net(flow.heat_net) } else { HeatRate::Gross(flow.heat_gross) };
        let jet = Jet { count: 3.0, ..case.jet().unwrap() };
        let three = match heat {
            HeatRate::Net(heat) => HeatRate::Net(heat * 3.0),
            HeatRate::Gross(heat) => HeatRate::Gross(heat * 3.0),
        };
        let gauge = pressure_for_heat(&jet, &gas, &supply, three).unwrap();
        assert!(near(gauge.pascals(), case.gauge, ROUND_TRIP), "{case:?}");
        met[0] += 1;
        for length in [case.shape().length, BoreLength::Diameters(case.length / case.bore)] {
            let shape = jetwright::orifice::BoreShape { length, ..case.shape() };
            let bore = bore_for_heat(&shape, 3.0, Coefficient::Model, &gas, &supply, three).unwrap();
            assert!(near(bore.meters(), case.bore, ROUND_TRIP), "{case:?}");
            met[1] += 1;
        }
    }
    assert!(met[0] > 1000 && met[1] > 2000, "{met:?}");
}

#[test]
fn a_heat_out_of_reach_is_no_solution() {
    let all = HeatRate::Net(NetHeatRate::from_watts(2e6));
    for case in JetCase::cover(&IN_USE, 300).filter(|case| case.bore < 3e-3) {
        let (gas, supply) = (case.gas::<f64>(), case.supply::<f64>());
        let error = pressure_for_heat(&case.jet().unwrap(), &gas, &supply, all).unwrap_err();
        assert!(
            matches!(error, Error::NoSolution { input: Input::GaugePressure, nearest } if nearest < 0.0),
            "{error:?}"
        );
    }
}

#[test]
fn the_numbers_of_a_flow_belong_together() {
    let area = core::f64::consts::FRAC_PI_4;
    for (index, case) in JetCase::cover(&ACCEPTED, 3000).enumerate() {
        let gas = case.gas::<f64>();
        let count = 1.0 + (index % 5) as f64;
        let jet = case.jet::<f64>().unwrap();
        let Ok(one) = jet.flow(&gas, &case.supply()) else { continue };
        let all = Jet { count, ..jet }.flow(&gas, &case.supply()).unwrap();
        let mass = one.mass_flow.kilograms_per_second();
        assert!(near(all.mass_flow.kilograms_per_second(), count * mass, 1e-14));
        assert!(near(all.thrust.newtons(), count * one.thrust.newtons(), 1e-14));
        assert_eq!((all.reynolds_number, all.exit_speed), (one.reynolds_number, one.exit_speed));
        let by_hand = one.discharge_coefficient * area * case.bore * case.bore * one.mass_flux;
        assert!(near(mass, by_hand, ROUND_TRIP), "{case:?}");
        // Re = 4 m / (pi d mu).
        let viscosity = gas.viscosity(Temperature::from_kelvin(case.kelvin));
        let still = mass <= 1e-12;
        assert!(still || near(one.reynolds_number, mass / (area * case.bore * viscosity), ROUND_TRIP), "{case:?}");
        assert!(near(one.actual_volume_flow.at(one.supply_density).kilograms_per_second(), mass, ROUND_TRIP));
        let values = gas.mixture().calorific_values(CombustionReference::Celsius15, ReferenceState::Celsius15);
        let (gross, net) = (one.heat_gross.watts(), one.heat_net.watts());
        assert!(near(gross, mass * values.gross_mass.joules_per_kilogram(), ROUND_TRIP));
        assert!(near(net, mass * values.net_mass.joules_per_kilogram(), ROUND_TRIP));
        // The two gas constants differ by 7e-8, which is between 2010 and 2019.
        assert!(near(one.standard_volume_flow.cubic_meters_per_second(), gross / values.gross_volume, 1e-6));
        // What leaves carries its momentum, and more where it leaves above the pressure ahead.
        assert!(one.thrust.newtons() >= mass * one.exit_speed.meters_per_second() * (1.0 - 1e-12), "{case:?}");
    }
}

#[test]
fn no_jet_outruns_the_lossless_expansion_into_its_pressure() {
    // Energy: u^2/2 <= h0 - h at the pressure ahead; momentum of the thrust is that of a nozzle at most, so below
    // the lossless flow times the speed of a full expansion.
    for case in JetCase::cover(&ACCEPTED, 3000).filter(|case| case.length == 0.0) {
        let Ok(flow) = case.flow::<f64>() else { continue };
        let (supply, gas) = (case.supply::<f64>(), case.gas::<f64>());
        let pressure = supply.gauge.to_absolute(supply.ambient);
        let drop = PressureDifference::from_pascals(case.gauge - case.back);
        let Ok(expansion) = gas.expand(pressure, drop, supply.temperature) else { continue };
        assert!(flow.exit_speed.meters_per_second() <= expansion.speed.meters_per_second() * 1.0001, "{case:?}");
    }
}

#[test]
fn bores_of_one_likeness_have_one_coefficient() {
    for case in JetCase::cover(&ACCEPTED, 2000) {
        let twice = JetCase {
            bore: case.bore * 2.0,
            length: case.length * 2.0,
            roughness: case.roughness * 2.0,
            approach: case.approach.map(|across| across * 2.0),
            ..case
        };
        let Some((stream, reynolds_number)) = case.stream::<f64>() else { continue };
        let Ok(twice) = twice.shape().with_diameter(Length::from_meters(twice.bore)) else { continue };
        let one = case.shape().with_diameter(Length::from_meters(case.bore)).unwrap();
        if !matches!(case.edge, jetwright::orifice::Edge::Square | jetwright::orifice::Edge::Sharp) {
            continue;
        }
        let (one, twice) =
            (discharge(&one, &stream, reynolds_number).unwrap(), discharge(&twice, &stream, reynolds_number).unwrap());
        assert!(near(twice.coefficient, one.coefficient, 1e-12), "{case:?}");
        assert!(near(twice.exit_speed, one.exit_speed, 1e-12), "{case:?}");
    }
}

#[test]
fn a_measured_coefficient_is_used_as_it_is() {
    for case in JetCase::cover(&IN_USE, 500) {
        let (gas, supply) = (case.gas::<f64>(), case.supply::<f64>());
        let model = case.jet::<f64>().unwrap();
        let Ok(modeled) = model.flow(&gas, &supply) else { continue };
        let with = |coefficient| Jet { coefficient, ..model }.flow(&gas, &supply).unwrap();
        let measured = with(Coefficient::Measured(0.7));
        assert_eq!(measured.discharge_coefficient, 0.7);
        let ratio = measured.mass_flow.kilograms_per_second() / modeled.mass_flow.kilograms_per_second();
        assert!(near(ratio, 0.7 / modeled.discharge_coefficient, 1e-12));
        // Measured somewhere else: there it is the value, here it follows the model.
        let elsewhere = Supply { gauge: GaugePressure::from_pascals(case.gauge.max(0.0) * 0.5), ..supply };
        if elsewhere.gauge < elsewhere.back {
            continue;
        }
        let moved = Coefficient::MeasuredAt { value: 0.7, supply: elsewhere };
        let there = Jet { coefficient: moved, ..model }.flow(&gas, &elsewhere).unwrap();
        assert!(near(there.discharge_coefficient, 0.7, 1e-12));
        let model_there = model.flow(&gas, &elsewhere).unwrap().discharge_coefficient;
        let expected = 0.7 * modeled.discharge_coefficient / model_there;
        assert!(near(with(moved).discharge_coefficient, expected, 1e-12));
    }
}

#[test]
fn the_dry_air_needed_does_not_know_the_weather() {
    for index in 0..NAMED.len() {
        let need = |humidity: f64| {
            let warm = Temperature::from_celsius(30.0);
            let site = Site::at_altitude(Length::from_meters(1600.0), warm, humidity).unwrap();
            (AirNeed::new(&named_gas(index), &site), site)
        };
        let ((dry, _), (moist, site)) = (need(0.0), need(0.8));
        assert!(near(dry.dry_mass_ratio, dry.mass_ratio, 1e-12));
        assert!(near(moist.dry_mass_ratio, dry.dry_mass_ratio, 1e-12));
        // Moist air is the same dry air with its water, 18.015 28 kg/kmol, beside it.
        let water = site.water_fraction();
        let wet = 1.0 + water / (1.0 - water) * 18.015_28 / 28.965_46;
        assert!(near(moist.mass_ratio, dry.mass_ratio * wet, 1e-6));
    }
}

#[test]
fn the_atmosphere_carries_its_own_weight() {
    // dp = -rho g dz with ISO 2533's g0 = 9.80665 falling as (r/(r+z))^2, R = 287.05287, and 6.5 K a kilometer.
    for meters in (-400..3900).step_by(100).map(f64::from) {
        let pressure = |z: f64| standard_pressure(Length::from_meters(z)).unwrap().pascals();
        let slope = (pressure(meters + 1.0) - pressure(meters - 1.0)) / 2.0;
        let share = 6_356_766.0 / (6_356_766.0 + meters);
        let kelvin = 288.15 - 0.0065 * share * meters;
        let weight = pressure(meters) / (287.052_87 * kelvin) * 9.806_65 * share * share;
        assert!(near(-slope, weight, 1e-5), "{meters}: {slope} {weight}");
    }
}

proptest! {
    #[test]
    fn gauge_and_absolute_are_one_another_back(gauge in 0.0..450e3_f64, ambient in 58e3..110e3_f64) {
        let ambient = AbsolutePressure::from_pascals(ambient);
        let back = GaugePressure::from_pascals(gauge).to_absolute(ambient).to_gauge(ambient).pascals();
        prop_assert!((back - gauge).abs() <= 1e-9 * ambient.pascals());
    }

    #[test]
    fn a_forecast_of_the_standard_is_the_standard_and_climbing_lowers_it(
        altitude in -400.0..3900.0_f64, forecast in 90_000.0..108_400.0_f64,
    ) {
        let at = |altitude: f64, forecast: f64| {
            station_pressure(AbsolutePressure::from_pascals(forecast), Length::from_meters(altitude)).unwrap().pascals()
        };
        let standard = standard_pressure(Length::from_meters(altitude)).unwrap().pascals();
        prop_assert!(near(at(altitude, 101_325.0), standard, ROUND_TRIP));
        prop_assert!(near(at(0.0, forecast), forecast, ROUND_TRIP));
        prop_assert!(at(altitude + 10.0, forecast) < at(altitude, forecast));
        prop_assert!(at(altitude, forecast * 1.0001) > at(altitude, forecast));
    }

    #[test]
    fn moist_air_is_lighter_than_dry_and_near_the_ideal_gas(
        pressure in 60_000.0..108_000.0_f64, kelvin in 240.0..325.0_f64, humidity in 0.0..0.9_f64,
    ) {
        let pressure = AbsolutePressure::from_pascals(pressure);
        let site = |humidity: f64| {
            Site::at_station_pressure(pressure, Temperature::from_kelvin(kelvin), humidity).unwrap()
        };
        let (moist, moister) = (site(humidity), site(humidity + 0.1));
        prop_assert!(moister.air_density() < moist.air_density());
        prop_assert!(moister.oxygen_fraction() < moist.oxygen_fraction());
        // Real air within 0.15 % of p M / (R T), R = 8.314 462 618 (CODATA 2018).
        let ideal = pressure.pascals() * moist.air_molar_mass() * 1e-3 / (8.314_462_618 * kelvin);
        prop_assert!(near(moist.air_density().kilograms_per_cubic_meter(), ideal, 1.5e-3));
    }

    #[test]
    fn an_expansion_keeps_its_entropy_and_pays_for_its_speed(
        index in 0..8_usize, pressure in 60e3..550e3_f64, kelvin in 240.0..325.0_f64, fall in 1e-3..0.9_f64,
    ) {
        let gas = named_gas::<f64>(index);
        let warm = Temperature::from_kelvin(kelvin);
        // Short of condensing: beyond it the equation of state is asked more than it can give.
        let ratio = gas.mixture().saturation_ratio(AbsolutePressure::from_pascals(pressure), warm);
        let pressure = pressure * (0.9 / ratio).min(1.0);
        let supply = AbsolutePressure::from_pascals(pressure);
        let flow = gas.expand(supply, PressureDifference::from_pascals(pressure * fall), warm).unwrap();
        let end = AbsolutePressure::from_pascals(pressure * flow.pressure_ratio);
        let gas_constant = gas.specific_gas_constant();
        let change = gas.entropy(end, flow.temperature).unwrap() - gas.entropy(supply, warm).unwrap();
        prop_assert!(change.abs() < ONE_STEP * gas_constant, "{} {}", NAMED[index].name, change / gas_constant);
        let paid = gas.enthalpy(supply, warm).unwrap() - gas.enthalpy(end, flow.temperature).unwrap();
        let speed = flow.speed.meters_per_second();
        prop_assert!(near(0.5 * speed * speed, paid, 10.0 * ONE_STEP), "{} {} {}", NAMED[index].name, speed, paid);
        // The same by many small steps: the integral of v dp where entropy is what it was.
        let (steps, entropy) = (200, gas.entropy(supply, warm).unwrap());
        let volume_at = |pascals: f64| {
            let pressure = AbsolutePressure::from_pascals(pascals);
            let (mut low, mut high) = (0.5 * kelvin, kelvin + 1.0);
            for _ in 0..60 {
                let middle = 0.5 * (low + high);
                let here = gas.entropy(pressure, Temperature::from_kelvin(middle)).unwrap_or(f64::NEG_INFINITY);
                if here < entropy { low = middle } else { high = middle }
            }
            1.0 / gas.density(pressure, Temperature::from_kelvin(high)).unwrap().kilograms_per_cubic_meter()
        };
        let at = |step: i32| pressure * flow.pressure_ratio.powf(f64::from(step) / f64::from(steps));
        let integral: f64 = (0..steps)
            .map(|step| 0.5 * (volume_at(at(step)) + volume_at(at(step + 1))) * (at(step) - at(step + 1)))
            .sum();
        prop_assert!(near(0.5 * speed * speed, integral, ONE_STEP), "{} {} {}", NAMED[index].name, speed, integral);
        prop_assert!(near(flow.mass_flux, speed / volume_at(end.pascals()), ONE_STEP));
        // Nothing passes more than the throat.
        let choked = gas.expand(supply, PressureDifference::from_pascals(pressure), warm).unwrap();
        prop_assert!(choked.choked && flow.mass_flux <= choked.mass_flux);
    }

    #[test]
    fn a_small_drop_compresses_nothing(
        index in 0..8_usize, gauge in 0.0..400e3_f64, kelvin in 240.0..325.0_f64, fall in 1e-9..1e-4_f64,
    ) {
        // Bernoulli: flux = sqrt(2 rho dp), less some dp/p.
        let gas = named_gas::<f64>(index);
        let (supply, warm) = (AbsolutePressure::from_pascals(80e3 + gauge), Temperature::from_kelvin(kelvin));
        let drop = supply.pascals() * fall;
        let Ok(flow) = gas.expand(supply, PressureDifference::from_pascals(drop), warm) else { return Ok(()) };
        let density = gas.density(supply, warm).unwrap().kilograms_per_cubic_meter();
        prop_assert!(near(flow.mass_flux, (2.0 * density * drop).sqrt(), fall + 1e-9));
        prop_assert!(!flow.choked);
    }
}
