//! Laws of the solved burner, on the invented one of the foundry and on others around it.

use super::rig::{BELL_FOUNDRY, Rig};
use crate::tolerance::{BALANCE, ROUND_TRIP};
use jetwright::burner::{AirSetting, Burner, Running};
use jetwright::orifice::Supply;
use jetwright::quantity::{GaugePressure, HeatRate};
use jetwright::{Error, Input, Result};

const COVER: usize = 250;

fn run(rig: &Rig) -> Result<Running> {
    rig.burner().run(&rig.conditions(), rig.gauge(), rig.opening)
}

fn near(found: f64, expected: f64, scale: f64) -> bool {
    (found - expected).abs() <= BALANCE * scale
}

#[test]
fn what_goes_in_is_what_comes_out() {
    let mut met = 0;
    for rig in Rig::cover(COVER) {
        let Ok(running) = run(&rig) else { continue };
        let scale = rig.blower_pressure.max(running.head_pressure.pascals()).max(running.push.pascals().abs());
        let back = running.back_pressure.pascals();
        let given = running.blower_pressure.pascals() - running.path_loss.pascals();
        assert!(near(back, given, scale), "{rig:?}");
        let needed = running.head_pressure.pascals() + running.chamber_pressure.pascals();
        assert!(near(back + running.push.pascals(), needed, scale), "{rig:?} {running:?}");
        let (gas, air) = (running.gas.kilograms_per_second(), running.air.kilograms_per_second());
        assert!(near(gas, rig.heads * running.jet.mass_flow.kilograms_per_second(), gas));
        let density = rig.conditions::<f64>().site.air_density();
        assert!(near(running.air_flow.at(density).kilograms_per_second(), air, air));
        let need = rig.conditions::<f64>().air_need().mass_ratio;
        let ratio = air / (gas * need);
        assert!(running.air_ratio.map_or(gas == 0.0, |found| near(found, ratio, ratio)), "{rig:?}");
        // Port speed by the mixture's ideal-gas volume: moles R T / p over the open area.
        let conditions = rig.conditions::<f64>();
        let moles = air / conditions.site.air_molar_mass() + gas / conditions.gas.mixture().molar_mass();
        let volume = moles * 8_314.462_618 * rig.mixture_kelvin / conditions.site.ambient_pressure().pascals();
        let area = rig.heads * rig.ports * core::f64::consts::FRAC_PI_4 * rig.port * rig.port;
        assert!(near(running.port_speed.meters_per_second(), volume / area, volume / area), "{rig:?}");
        met += 1;
    }
    assert!(met > COVER * 8 / 10, "{met}");
}

#[test]
fn the_foundrys_push_and_chamber_are_those_of_the_momentum_and_the_hole() {
    let (rig, running) = (BELL_FOUNDRY, run(&BELL_FOUNDRY).unwrap());
    let conditions = rig.conditions::<f64>();
    let (gas, air) = (running.gas.kilograms_per_second(), running.air.kilograms_per_second());
    let pressure = conditions.site.ambient_pressure().pascals();
    // Momentum: p A = jet + air^2/(rho A) - mixture^2/(rho A), the mixture as cold as the air.
    let area = core::f64::consts::FRAC_PI_4 * 0.05 * 0.05;
    let moles = air / conditions.site.air_molar_mass() + gas / conditions.gas.mixture().molar_mass();
    let mixed = (air + gas) * moles * 8_314.462_618 * rig.air_kelvin / pressure;
    let alone = air * air / conditions.site.air_density().kilograms_per_cubic_meter();
    let push = (running.jet.thrust.newtons() + (alone - mixed) / area) / area;
    assert!((running.push.pascals() / push - 1.0).abs() < 1e-6, "{} {push}", running.push.pascals());
    // Hole: 1.5 heads of gas of 28.3 kg/kmol at 1600 K through 40 cm2.
    let density = pressure * 28.3 / (8314.46 * 1600.0);
    let chamber = 1.5 * ((air + gas) / 40e-4) * ((air + gas) / 40e-4) / (2.0 * density);
    assert!((running.chamber_pressure.pascals() / chamber - 1.0).abs() < 1e-6);
}

#[test]
fn a_tube_narrower_than_the_duct_costs_the_speed_it_gives_and_a_wider_one_nothing() {
    let spent = |tube| {
        let rig = Rig { tube: Some(tube), duct_loss: 0.0, ..BELL_FOUNDRY };
        let (burner, running) = (rig.burner::<f64>(), run(&rig).unwrap());
        let air = rig.conditions::<f64>().site.air_density();
        let viscosity = jetwright::air::air_viscosity(rig.conditions::<f64>().site.air_temperature());
        let alone = burner.path.loss(running.air_flow, air, viscosity, rig.opening).unwrap();
        let speed =
            |across: f64| running.air_flow.cubic_meters_per_second() / (core::f64::consts::FRAC_PI_4 * across * across);
        let bernoulli = 0.5 * air.kilograms_per_cubic_meter() * (speed(tube).powi(2) - speed(76e-3).powi(2));
        (running.path_loss.pascals() - alone.pascals(), bernoulli)
    };
    for tube in [40e-3, 50e-3, 75e-3] {
        let (found, bernoulli) = spent(tube);
        assert!(bernoulli > 0.0 && (found / bernoulli - 1.0).abs() < 1e-9, "{tube} {found} {bernoulli}");
    }
    assert_eq!(spent(90e-3).0, 0.0);
    // No step where the tube becomes as wide as the duct.
    assert!(spent(76e-3 - 1e-9).0.abs() < 1e-3);
}

/// Makes a burner's air harder to come by.
type Tighter = fn(&Rig) -> Rig;

#[test]
fn whatever_resists_the_mixture_lowers_the_air() {
    let tighter: [(&str, Tighter); 7] = [
        ("fewer ports", |rig| Rig { ports: rig.ports * 0.8, ..*rig }),
        // Beyond the lengths at which a stream still settles, where a longer hole first loses less.
        ("longer ports", |rig| Rig { port_length: rig.port_length.max(3.0 * rig.port) + 0.02, ..*rig }),
        ("damper", |rig| Rig { opening: rig.opening * 0.8, ..*rig }),
        ("hotter mixture", |rig| Rig { mixture_kelvin: rig.mixture_kelvin * 1.2, ..*rig }),
        ("smaller exhaust", |rig| Rig { exhaust: rig.exhaust.map(|area| area * 0.7).or(Some(50e-4)), ..*rig }),
        ("hotter chamber", |rig| Rig { chamber_kelvin: rig.chamber_kelvin * 1.2, exhaust: Some(30e-4), ..*rig }),
        ("duct", |rig| Rig { duct_loss: rig.duct_loss + 1.0, ..*rig }),
    ];
    for (name, tighten) in tighter {
        let mut met = 0;
        for rig in Rig::cover(COVER) {
            let rig = match name {
                "longer ports" => Rig { port_length: rig.port_length.max(3.0 * rig.port), ..rig },
                "hotter chamber" => Rig { exhaust: Some(30e-4), ..rig },
                _ => Rig { opening: rig.opening.max(0.2), mixture_kelvin: rig.mixture_kelvin.min(700.0), ..rig },
            };
            let (Ok(before), Ok(after)) = (run(&rig), run(&tighten(&rig))) else { continue };
            assert!(after.air < before.air, "{name}: {rig:?}");
            met += 1;
        }
        assert!(met > COVER / 2, "{name} {met}");
    }
}

#[test]
fn more_pressure_where_the_jet_stands_lowers_the_gas() {
    let mut met = 0;
    for rig in Rig::cover(COVER) {
        let (Ok(open), Ok(shut)) = (run(&Rig { opening: 1.0, ..rig }), run(&Rig { opening: 0.3, ..rig })) else {
            continue;
        };
        assert!(shut.back_pressure < open.back_pressure, "{rig:?}");
        // A choked jet does not feel it.
        let same = open.jet.choked || shut.back_pressure.pascals() >= rig.gauge;
        assert!(shut.gas >= open.gas && (same || shut.gas > open.gas), "{rig:?}");
        met += 1;
    }
    assert!(met > COVER / 2, "{met}");
}

#[test]
fn no_gas_flows_into_a_pressure_above_its_gauge() {
    // A blower of 4 kPa on a head of few holes, and a gauge of 2 kPa.
    let rig = Rig { blower_pressure: 4000.0, ports: 6.0, tube: None, opening: 1.0, gauge: 2000.0, ..BELL_FOUNDRY };
    let running = run(&rig).unwrap();
    assert!(running.back_pressure.pascals() > 2000.0);
    assert_eq!((running.gas.kilograms_per_second(), running.air_ratio), (0.0, None));
    assert!(running.air.kilograms_per_second() > 0.0);
}

#[test]
fn the_damper_for_an_air_ratio_gives_it() {
    let mut met = 0;
    for rig in Rig::cover(4 * COVER) {
        let (burner, conditions) = (rig.burner::<f64>(), rig.conditions::<f64>());
        let Ok(opening) = burner.opening_for(&conditions, rig.gauge(), rig.air_ratio) else { continue };
        let running = burner.run(&conditions, rig.gauge(), opening).unwrap();
        let demand = burner.demand(&conditions, rig.gauge(), rig.air_ratio).unwrap();
        let ratio = running.air_ratio.unwrap();
        assert!((ratio / rig.air_ratio - 1.0).abs() < 1e-7, "{ratio} {rig:?}");
        let gas = running.gas.kilograms_per_second() / demand.gas.kilograms_per_second();
        assert!((gas - 1.0).abs() < 1e-7, "{gas} {rig:?}");
        assert!(burner.surplus(&conditions, &demand).unwrap() >= 0.0);
        met += 1;
    }
    assert!(met > 50, "{met}");
}

#[test]
fn a_damper_calibrated_by_one_setting_gives_that_setting() {
    let mut met = 0;
    for rig in Rig::cover(4 * COVER) {
        let (burner, conditions) = (rig.burner::<f64>(), rig.conditions::<f64>());
        let Ok(seen) = burner.damper_seen(&conditions, rig.gauge(), rig.opening, (rig.air_ratio, 0.1)) else {
            continue;
        };
        let ours = Burner { path: burner.path.with_damper(seen.damper), ..burner };
        let running = ours.run(&conditions, rig.gauge(), rig.opening).unwrap();
        let ratio = running.air_ratio.unwrap();
        assert!((ratio / rig.air_ratio - 1.0).abs() < 1e-6, "{ratio} {rig:?}");
        // An air ratio off by 0.1 is a loss off by more than that, on top of the shape of the table.
        assert!(seen.spread > (0.01 + (0.1 / rig.air_ratio).powi(2)).sqrt(), "{} {rig:?}", seen.spread);
        met += 1;
    }
    assert!(met > 20, "{met}");
}

#[test]
fn a_demands_gas_is_what_its_jets_pass_into_its_back_pressure() {
    let mut met = 0;
    let range = Input::BackPressure.range();
    for rig in Rig::cover(COVER) {
        // Heads of few fine ports ask for a back pressure near the gauge.
        let fine = |port: f64| Rig { ports: 4.0, port, gauge: 440e3, ..rig };
        for rig in [rig, fine(1.5e-3), fine(3e-3), fine(6e-3)] {
            let (burner, conditions) = (rig.burner::<f64>(), rig.conditions::<f64>());
            let demand = match burner.demand(&conditions, rig.gauge(), rig.air_ratio) {
                Ok(demand) => demand,
                Err(Error::Liquid { .. }) => continue,
                Err(error) => panic!("{error:?} {rig:?}"),
            };
            let back = demand.back_pressure;
            assert!(back.pascals() >= range.min && back.pascals() <= range.max, "{rig:?}");
            let supply = Supply {
                ambient: conditions.site.ambient_pressure(),
                gauge: rig.gauge(),
                back,
                temperature: conditions.gas_temperature,
            };
            let gas = burner.jet.flow(&conditions.gas, &supply).unwrap().mass_flow.kilograms_per_second();
            assert!(near(demand.gas.kilograms_per_second(), rig.heads * gas, gas), "{rig:?}");
            let need = conditions.air_need().mass_ratio * rig.air_ratio * demand.gas.kilograms_per_second();
            assert!(near(demand.air.kilograms_per_second(), need, need), "{rig:?}");
            met += 1;
        }
    }
    assert!(met > 3 * COVER, "{met}");
}

#[test]
fn a_blower_too_weak_is_told_and_never_a_panic() {
    let mut met = 0;
    for rig in Rig::cover(COVER) {
        let (burner, conditions) = (rig.burner::<f64>(), rig.conditions::<f64>());
        let Ok(demand) = burner.demand(&conditions, rig.gauge(), rig.air_ratio) else { continue };
        let surplus = burner.surplus(&conditions, &demand).unwrap();
        if surplus >= 0.0 {
            continue;
        }
        let error = burner.opening_for(&conditions, rig.gauge(), rig.air_ratio).unwrap_err();
        assert_eq!(error, Error::NoSolution { input: Input::AirFlow, nearest: surplus as f32 });
        met += 1;
    }
    assert!(met > COVER / 4, "{met}");
    // Ports so few that the gas alone needs more than the blower has.
    let blocked = Rig { ports: 1.0, port: 1e-3, blower_pressure: 500.0, gauge: 400e3, tube: None, ..BELL_FOUNDRY };
    assert!(matches!(run(&blocked), Err(Error::NoSolution { input: Input::AirFlow, .. })), "{:?}", run(&blocked));
}

/// Surplus of a burner at the rig's setting, over the blower's highest pressure.
fn surplus(burner: &Burner, rig: &Rig, gauge: GaugePressure) -> f64 {
    let demand = burner.demand(&rig.conditions(), gauge, rig.air_ratio).unwrap();
    burner.surplus(&rig.conditions(), &demand).unwrap() / rig.blower_pressure
}

#[test]
fn the_highest_gauge_and_every_remedy_use_the_blower_up() {
    let mut met = [0; 4];
    let top = Input::GaugePressure.range().max;
    for rig in Rig::cover(COVER) {
        let (burner, conditions) = (rig.burner::<f64>(), rig.conditions::<f64>());
        let Ok(highest) = burner.highest_gauge(&conditions, rig.air_ratio) else {
            // It feeds no setting, not even one of ten pascals.
            let least = burner.demand(&conditions, GaugePressure::from_pascals(10.0), rig.air_ratio).unwrap();
            assert!(burner.surplus(&conditions, &least).unwrap() < 0.0, "{rig:?}");
            continue;
        };
        if 1.01 * highest.pascals() < top {
            assert!(surplus(&burner, &rig, highest).abs() < ROUND_TRIP, "{rig:?}");
            assert!(surplus(&burner, &rig, highest * 0.99) > 0.0 && surplus(&burner, &rig, highest * 1.01) < 0.0);
            met[0] += 1;
        }
        let Ok(demand) = burner.demand(&conditions, rig.gauge(), rig.air_ratio) else { continue };
        if burner.surplus(&conditions, &demand).unwrap() >= 0.0 {
            continue;
        }
        let remedies = burner.remedies(&conditions, &rig.shape(), rig.gauge(), rig.air_ratio).unwrap();
        assert_eq!(remedies.gauge, Some(highest));
        if let Some(bore) = remedies.bore {
            let jet = burner.jet.with_bore(&rig.shape(), bore).unwrap();
            assert!(bore < burner.jet.bore.diameter());
            assert!(surplus(&Burner { jet, ..burner.clone() }, &rig, rig.gauge()).abs() < ROUND_TRIP, "{rig:?}");
            met[1] += 1;
        }
        if let Some(factor) = remedies.head_area {
            let head = burner.head.widened(factor);
            assert!(surplus(&Burner { head, ..burner.clone() }, &rig, rig.gauge()).abs() < ROUND_TRIP, "{rig:?}");
            met[2] += 1;
        }
        if let Some(speed) = remedies.wheel_speed {
            let blower = burner.blower.scaled(burner.blower.density(), speed, 1.0).unwrap();
            assert!(speed > 1.0);
            assert!(
                surplus(&Burner { blower, ..burner.clone() }, &rig, rig.gauge()).abs() < 4.0 * ROUND_TRIP,
                "{rig:?}"
            );
            met[3] += 1;
        }
    }
    assert!(met.iter().all(|&count| count > 20), "{met:?}");
}

#[test]
fn a_faint_blower_feeds_a_faint_fire() {
    let rig = Rig { blower_pressure: 8.0, bore: 2.5e-3, ports: 20.0, exhaust: None, tube: None, ..BELL_FOUNDRY };
    let highest = rig.burner::<f64>().highest_gauge(&rig.conditions(), rig.air_ratio).unwrap();
    assert!(highest.pascals() < 400.0, "{highest:?}");
    assert!(surplus(&rig.burner(), &rig, highest).abs() < ROUND_TRIP);
}

#[test]
fn equal_heads_with_as_many_blowers_behave_as_one() {
    for rig in Rig::cover(COVER) {
        // A path without friction or gate takes the square of the flow, so N heads see what one does.
        let one = Rig { heads: 1.0, duct_loss: 0.0, damper: false, ..rig };
        let mut single = one.burner::<f64>();
        let mut many = Rig { heads: 3.0, ..one }.burner::<f64>();
        // Wider by the root of three and slower by as much: three times the flow at the same pressure.
        many.blower = many.blower.scaled(many.blower.density(), 1.0 / 3.0_f64.sqrt(), 3.0_f64.sqrt()).unwrap();
        let path = jetwright::air::AirPath::new(&[], None).unwrap();
        (single.path, many.path) = (path.clone(), path);
        let run = |burner: &Burner| burner.run(&rig.conditions(), rig.gauge(), 1.0);
        let (Ok(single), Ok(many)) = (run(&single), run(&many)) else { continue };
        let (air, gas) = (single.air.kilograms_per_second(), single.gas.kilograms_per_second());
        assert!(near(many.air.kilograms_per_second(), 3.0 * air, air), "{rig:?}");
        assert!(near(many.gas.kilograms_per_second(), 3.0 * gas, gas.max(1e-3 * air)), "{rig:?}");
        assert!(near(many.back_pressure.pascals(), single.back_pressure.pascals(), rig.blower_pressure), "{rig:?}");
    }
}

#[test]
fn the_gauge_for_a_heat_makes_it() {
    let mut met = [0; 2];
    for rig in Rig::cover(COVER) {
        let (burner, conditions) = (rig.burner::<f64>(), rig.conditions::<f64>());
        let heat = |gas: jetwright::quantity::MassFlow| HeatRate::Net(conditions.gas.net_heating_value().of(gas));
        let settings = [
            (burner.run(&conditions, rig.gauge(), rig.opening).map(|it| it.gas), AirSetting::Opening(rig.opening)),
            (burner.demand(&conditions, rig.gauge(), rig.air_ratio).map(|it| it.gas), AirSetting::Ratio(rig.air_ratio)),
        ];
        for (index, (gas, setting)) in settings.into_iter().enumerate() {
            let Some(gas) = gas.ok().filter(|gas| gas.kilograms_per_second() > 1e-5) else { continue };
            let Ok(gauge) = burner.gauge_for_heat(&conditions, heat(gas), setting) else { continue };
            assert!((gauge.pascals() / rig.gauge - 1.0).abs() < 1e-7, "{} {rig:?}", gauge.pascals());
            met[index] += 1;
        }
    }
    assert!(met.iter().all(|&count| count > COVER / 3), "{met:?}");
}
