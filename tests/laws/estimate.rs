//! The live estimate against the burner it reads.

use super::rig::Rig;
use crate::tolerance::{ESTIMATED_GAS, SINGLE_PRECISION};
use jetwright::burner::Conditions;
use jetwright::control::{Estimate, ReadingSpreads, Readings, air_without_gas};
use jetwright::quantity::{ActualVolumeFlow, GaugePressure, PressureDifference, Temperature};
use jetwright::{Error, Input, Result, Scalar};

const BURNERS: usize = 300;
const GAUGES: [f64; 5] = [1e3, 5e3, 20e3, 70e3, 250e3];
/// Kelvin that the gas is warmer than the burner was prepared for.
const WARMER: [f64; 3] = [-15.0, 0.0, 15.0];

fn readings<S: Scalar>(gauge: f64, kelvin: f64, pressure: f64) -> Readings<S> {
    Readings {
        gauge: GaugePressure::from_pascals(S::c(gauge)),
        gas_temperature: Temperature::from_kelvin(S::c(kelvin)),
        blower_pressure: PressureDifference::from_pascals(S::c(pressure)),
    }
}

#[test]
fn a_running_burner_is_read_back() {
    let (mut met, mut worst) = (0, [0.0_f64; 4]);
    for rig in Rig::cover(BURNERS) {
        let (burner, conditions) = (rig.burner::<f64>(), rig.conditions::<f64>());
        let prepared = burner.prepared(&conditions).unwrap();
        let single = (rig.burner::<f32>(), rig.conditions::<f32>());
        let prepared_single = single.0.prepared(&single.1).unwrap();
        for (index, gauge) in GAUGES.into_iter().enumerate() {
            let kelvin = conditions.gas_temperature.kelvin() + WARMER[index % 3];
            let kelvin = kelvin.clamp(Input::GasTemperature.range().min, Input::GasTemperature.range().max);
            let warmer = Conditions { gas_temperature: Temperature::from_kelvin(kelvin), ..conditions };
            let Ok(running) = burner.run(&warmer, GaugePressure::from_pascals(gauge), rig.opening) else { continue };
            // The jets must be driven by more than a breath, and the blower fall at all.
            let ratio = running.air_ratio.unwrap_or(0.0);
            if running.back_pressure.pascals() > 0.3 * gauge || !(0.5..=5.0).contains(&ratio) {
                continue;
            }
            let pressure = f64::from(running.blower_pressure.pascals() as f32);
            let found = readings::<f64>(gauge, kelvin, pressure).estimate(&prepared).unwrap();
            let off = |found: f64, real: f64| (found / real - 1.0).abs();
            let gas = off(found.gas.kilograms_per_second(), running.gas.kilograms_per_second());
            // The flow is that of the curve: near its highest point a pressure says little about the flow, so it is the
            // pressure that is compared, and the flow where the curve is steep.
            let highest = prepared.blower().peak().1.pascals();
            let pressure_of = |flow: f64| {
                let flow = ActualVolumeFlow::from_cubic_meters_per_second(flow);
                prepared.blower().static_pressure(flow).pascals()
            };
            let missed = |flow: f64| (pressure_of(flow) - pressure).abs() / highest;
            let air = missed(found.air_flow.cubic_meters_per_second());
            let steep = (pressure_of(found.air_flow.cubic_meters_per_second() * 0.99) - pressure) / highest > 1e-3;
            if steep {
                let air = off(found.air.kilograms_per_second(), running.air.kilograms_per_second());
                assert!(air < SINGLE_PRECISION, "{air:e} {rig:?}");
            }
            let narrow: Result<Estimate<f32>> = readings::<f32>(gauge, kelvin, pressure).estimate(&prepared_single);
            let narrow = narrow.unwrap();
            let single = off(f64::from(narrow.gas.kilograms_per_second()), found.gas.kilograms_per_second());
            let single_air = missed(f64::from(narrow.air_flow.cubic_meters_per_second()));
            met += 1;
            worst[0] = worst[0].max(gas);
            worst[1] = worst[1].max(air);
            worst[2] = worst[2].max(if steep { single } else { 0.0 });
            worst[3] = worst[3].max(single_air);
        }
    }
    assert!(met > 500, "{met}");
    assert!(worst[0] < ESTIMATED_GAS, "{worst:?}");
    assert!(worst[1] < 1e-9 && worst[2].max(worst[3]) < SINGLE_PRECISION, "{worst:?}");
}

#[test]
fn a_reading_that_means_nothing_is_refused() {
    let rig = super::rig::BELL_FOUNDRY;
    let (burner, conditions) = (rig.burner::<f64>(), rig.conditions());
    let prepared = burner.prepared(&conditions).unwrap();
    let refused = |gauge, kelvin, pressure| readings::<f64>(gauge, kelvin, pressure).estimate(&prepared).unwrap_err();
    let nan = f64::NAN;
    assert_eq!(refused(nan, 290.0, 900.0), Error::NotFinite { input: Input::GaugePressure });
    assert_eq!(refused(30e3, nan, 900.0), Error::NotFinite { input: Input::GasTemperature });
    assert_eq!(refused(30e3, 290.0, nan), Error::NotFinite { input: Input::BlowerPressure });
    assert!(matches!(refused(-1.0, 290.0, 900.0), Error::OutOfRange { .. }));
    assert!(matches!(refused(30e3, 290.0, 2.0 * rig.blower_pressure), Error::NoSolution { .. }));
    assert!(matches!(refused(1.0, 290.0, 900.0), Error::NoSolution { .. }));
    // A blower that stands, whose curve would have it at its free delivery, and one that is far too slow.
    for pressure in [0.0, 5.0, 50.0] {
        let found = refused(30e3, 290.0, pressure);
        assert!(matches!(found, Error::NoSolution { input: Input::BlowerPressure, .. }), "{pressure}: {found}");
    }
}

/// Numbers of a bell curve by Box and Muller, from a spread of points without a pattern.
fn bell(index: usize) -> [f64; 4] {
    let [a, b, c, d] = super::cases::spread::<4>(index).map(|unit: f64| unit.clamp(1e-9, 1.0 - 1e-9));
    let pair = |radius: f64, angle: f64| {
        let radius = (-2.0 * radius.ln()).sqrt();
        let (sine, cosine) = (core::f64::consts::TAU * angle).sin_cos();
        (radius * sine, radius * cosine)
    };
    let ((first, second), (third, fourth)) = (pair(a, b), pair(c, d));
    [first, second, third, fourth]
}

#[test]
fn an_estimate_is_as_sure_as_draws_of_its_readings_make_it() {
    const DRAWS: usize = 20_000;
    let rig = super::rig::BELL_FOUNDRY;
    let (burner, conditions) = (rig.burner::<f64>(), rig.conditions::<f64>());
    let prepared = burner.prepared(&conditions).unwrap();
    let running = burner.run(&conditions, rig.gauge(), rig.opening).unwrap();
    let (gauge, kelvin) = (rig.gauge::<f64>().pascals(), conditions.gas_temperature.kelvin());
    let pressure = running.blower_pressure.pascals();
    let pascals = PressureDifference::from_pascals;
    // Invented: a fair gauge, thermometer and pressure sensor.
    let spreads = ReadingSpreads {
        gauge: pascals(0.03 * gauge),
        gas_temperature: 6.0,
        blower_pressure: pascals(0.02 * pressure),
        jet: 0.04,
        blower_curve: 0.03,
    };
    let (here, spread) = readings(gauge, kelvin, pressure).estimate_with_spread(&prepared, &spreads).unwrap();
    assert_eq!(here, readings(gauge, kelvin, pressure).estimate(&prepared).unwrap());
    // Two standard deviations of the draws; the models' own spreads are independent of the readings.
    let mut sums = [[0.0_f64; 2]; 3];
    for draw in 0..DRAWS {
        let [a, b, c, _] = bell(draw);
        let reading = readings(gauge * (1.0 + 0.015 * a), kelvin + 3.0 * b, pressure * (1.0 + 0.01 * c));
        let found: Estimate = reading.estimate(&prepared).unwrap();
        let gas = (found.gas.kilograms_per_second() / here.gas.kilograms_per_second()).ln();
        let air = (found.air.kilograms_per_second() / here.air.kilograms_per_second()).ln();
        for (sum, value) in sums.iter_mut().zip([gas, air, air - gas]) {
            sum[0] += value;
            sum[1] += value * value;
        }
    }
    let drawn = sums.map(|[sum, squares]| 2.0 * (squares / DRAWS as f64 - (sum / DRAWS as f64).powi(2)).sqrt());
    let models = [0.04, 0.03, 0.05];
    for ((drawn, model), ours) in drawn.into_iter().zip(models).zip([spread.gas, spread.air, spread.air_ratio]) {
        let expected = drawn.hypot(model);
        assert!((ours / expected - 1.0).abs() < 0.02, "{ours} {expected} {drawn}");
        // By the readings alone, so that the models cannot hide them.
        let alone = (ours * ours - model * model).sqrt();
        assert!((alone / drawn - 1.0).abs() < 0.03, "{alone} {drawn}");
    }
}

#[test]
fn a_spread_without_sense_is_refused_and_sure_readings_leave_the_models() {
    let rig = super::rig::BELL_FOUNDRY;
    let (burner, conditions) = (rig.burner::<f64>(), rig.conditions::<f64>());
    let prepared = burner.prepared(&conditions).unwrap();
    let running = burner.run(&conditions, rig.gauge(), rig.opening).unwrap();
    let reading =
        readings(rig.gauge::<f64>().pascals(), conditions.gas_temperature.kelvin(), running.blower_pressure.pascals());
    let none = PressureDifference::from_pascals(0.0);
    let sure =
        ReadingSpreads { gauge: none, gas_temperature: 0.0, blower_pressure: none, jet: 0.04, blower_curve: 0.03 };
    let (_, spread) = reading.estimate_with_spread(&prepared, &sure).unwrap();
    assert!((spread.gas - 0.04).abs() < 1e-12 && (spread.air - 0.03).abs() < 1e-12);
    assert!((spread.air_ratio - 0.05).abs() < 1e-12);
    for wrong in [-0.01, f64::NAN, 2.0] {
        assert!(reading.estimate_with_spread(&prepared, &ReadingSpreads { jet: wrong, ..sure }).is_err());
    }
    let wild = ReadingSpreads { gas_temperature: 150.0, ..sure };
    assert!(reading.estimate_with_spread(&prepared, &wild).is_err());
}

#[test]
fn the_air_of_a_burner_without_gas_is_read_back() {
    let (mut met, mut refused) = (0, 0);
    let pascals = PressureDifference::from_pascals;
    for rig in Rig::cover(BURNERS) {
        let (burner, conditions) = (rig.burner::<f64>(), rig.conditions::<f64>());
        let prepared = burner.prepared(&conditions).unwrap();
        let none = GaugePressure::from_pascals(0.0);
        // Purged warm and cold, whatever the burner was prepared for.
        for there in [conditions, conditions.cold()] {
            let Ok(open) = burner.run(&there, none, 1.0) else { continue };
            let least = pascals(0.9 * open.blower_pressure.pascals());
            for opening in [1.0, 0.5, 0.3] {
                let Ok(running) = burner.run(&there, none, opening) else { continue };
                let Ok(found) = air_without_gas(&prepared, running.blower_pressure, least) else {
                    let highest = prepared.blower().peak().1.pascals();
                    assert!(running.blower_pressure.pascals() > 0.9 * highest, "{running:?} of {highest}: {rig:?}");
                    refused += 1;
                    continue;
                };
                let off = found.cubic_meters_per_second() / running.air_flow.cubic_meters_per_second() - 1.0;
                assert!(off.abs() < 1e-9, "{off:e} {rig:?}");
                met += 1;
            }
            // A blower that stands or turns slowly.
            for read in [0.0, 0.5 * open.blower_pressure.pascals()] {
                let found = air_without_gas(&prepared, pascals(read), least);
                assert!(matches!(found, Err(Error::NoSolution { input: Input::BlowerPressure, .. })), "{read} {rig:?}");
            }
        }
        // A closed path, and readings that are none.
        let closed = prepared.blower().static_pressure(ActualVolumeFlow::from_cubic_meters_per_second(0.0)).pascals();
        let few = 0.01 * closed;
        for (read, least) in [
            (closed, few),
            (0.97 * closed, few),
            (2.0 * closed, few),
            (f64::NAN, few),
            (-few, few),
            (0.5 * closed, f64::NAN),
            (0.5 * closed, 0.0),
            (0.5 * closed, -few),
        ] {
            assert!(air_without_gas(&prepared, pascals(read), pascals(least)).is_err(), "{read} {least} {rig:?}");
        }
        assert!(air_without_gas(&prepared, pascals(0.5 * closed), pascals(few)).is_ok());
    }
    assert!(met > 500 && refused < met, "{met} {refused}");
}
