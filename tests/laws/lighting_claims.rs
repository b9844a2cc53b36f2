//! What lighting may claim: what is not known is told as such, and what stands still holds nothing back.

use super::lighting::{WIDE_OPEN, fixed_air, losing, psi, range};
use jetwright::burner::{AirSetting, Burner, Head, ignition_delay};
use jetwright::gas::{Gas, Mixture, Species, parse};
use jetwright::quantity::{GaugePressure, Length, Temperature, Volume};

#[test]
fn a_stopped_blower_holds_nothing_against_the_gas() {
    // Shut off 5.9 kPa, and a gauge below that: it runs without gas, and stopped it fills the chamber.
    let (burner, conditions) = fixed_air();
    let gauge = GaugePressure::from_pascals(3000.0);
    let (volume, constant) = (Volume::from_liters(20.0), 8.314_463);
    let stopped = |burner: &Burner| burner.unlit(&conditions, gauge, 1.0, volume).unwrap();
    let throttled = Burner {
        head: Head::with_ports(8.0, Length::from_millimeters(3.0), Length::from_millimeters(10.0), 0.3).unwrap(),
        ..burner.clone()
    };
    // A head that holds the blower's pressure against the jets, and one that does not: the same gas once it stops.
    let (free, held) = (stopped(&burner), stopped(&throttled));
    assert!(held.gas_share < 0.5 * free.gas_share, "{held:?} {free:?}");
    assert_eq!(held.burnable_without_air, free.burnable_without_air);
    // -V/Q ln(1 - 2.1 %), Q of a bore into the open, its coefficient some 0.8 (common practice, no source).
    let bore = burner.jet.bore.diameter().meters();
    let area = std::f64::consts::FRAC_PI_4 * bore * bore;
    let here: f64 = 83_524.0;
    let density = (here + 0.5 * 3000.0) * 44.096e-3 / (constant * 293.15);
    let gas = 0.8 * area * f64::sqrt(2.0 * 3000.0 * density) / (here * 44.096e-3 / (constant * 293.15));
    let expected = -20e-3 / gas * (1.0_f64 - 0.021).ln();
    let found = held.burnable_without_air.unwrap().seconds();
    assert!((found / expected - 1.0).abs() < 0.15, "{found} {expected}");
}

#[test]
fn what_is_not_known_of_running_back_is_never_a_no() {
    let (burner, mut conditions) = fixed_air();
    let share = |hydrogen: f64| {
        Gas::new(Mixture::new(&[(Species::Hydrogen, hydrogen), (Species::Methane, 1.0 - hydrogen)]).unwrap())
    };
    for (gas, known) in [
        (Gas::from(Species::Hydrogen), false),
        (Gas::from(Species::CarbonMonoxide), false),
        (Gas::from(Species::Propylene), false),
        (share(0.16), false),
        (share(0.14), true),
        (Gas::from(Species::Propane), true),
    ] {
        conditions.gas = gas;
        let below = burner.flashback_below(&conditions, AirSetting::Ratio(1.0));
        assert_eq!(below.is_ok(), known, "{below:?}");
        let running = burner.run(&conditions, psi(1.0), 1.0).unwrap();
        let ports = burner.port_state(&conditions, &running).unwrap();
        assert_eq!(ports.may_run_back(burner.head.narrowest().meters()).is_some(), known, "{ports:?}");
    }
}

/// Any setting that lit tells of the head, on either side of the best mixture: it lights by the constant it gives, a
/// leaner and faster one no longer.
#[test]
fn a_setting_that_was_seen_lights_by_the_constant_it_gives() {
    let (burner, conditions) = fixed_air();
    let air = WIDE_OPEN;
    let (mut lowest, mut highest) = (0, 0);
    for tenths in 20..200 {
        let gauge = psi(0.1 * f64::from(tenths));
        let Ok(constant) = burner.head_constant(&conditions, gauge, air) else { continue };
        let pull = burner.lighting(&conditions, gauge, air, None, &losing(0.0)).unwrap().pull.unwrap();
        assert!((constant / pull - 1.0).abs() < 1e-12, "{gauge:?}: it stands just what pulled there");
        // Beside the best setting the stretch that lights is narrower than the steps it is looked for in.
        let Some(cold) = range(&burner, &conditions, air, constant, &losing(0.0)).cold else { continue };
        let at_end = |end: GaugePressure| (end.psi() / gauge.psi() - 1.0).abs() < 1e-3;
        assert!(at_end(cold.low) || at_end(cold.high), "{gauge:?} {cold:?}");
        lowest += usize::from(at_end(cold.low));
        highest += usize::from(at_end(cold.high));
    }
    assert!(lowest > 30 && highest > 20, "{lowest} {highest}");
    // Gas and air turned together only slow down, and what lit tells of the head all the same.
    assert!(burner.head_constant(&conditions, psi(3.0), AirSetting::Ratio(1.0)).unwrap() > 0.0);
}

/// Mixtures at 83.5 kPa and constant pressure, until 400 K warmer (computed with Cantera 3.2.0).
#[test]
fn a_delay_is_never_shorter_than_what_any_mechanism_has() {
    let (methane, propane, ethane) = ("CH4=1", "C3H8=1", "C2H6=1");
    let ours = |gas: &str, kelvin: f64| {
        ignition_delay(&parse(gas).unwrap(), Temperature::from_kelvin(kelvin)).unwrap().seconds()
    };
    for (gas, kelvin, delays) in [
        // GRI-Mech 3.0 at air ratios of 0.65, 1 and 2.5.
        (methane, 973.0, [2.778, 2.195, 1.394]),
        (methane, 1033.0, [0.9542, 0.7551, 0.4710]),
        (methane, 1200.0, [0.0680, 0.0537, 0.0331]),
        // AramcoMech 1.3, San Diego 2016 and USC II at an air ratio of 1.
        (methane, 1033.0, [1.147, 0.152, 0.465]),
        (propane, 1033.0, [0.082, 0.042, 0.038]),
        (propane, 1200.0, [0.0082, 0.0046, 0.0039]),
        (ethane, 1033.0, [0.059, 0.048, 0.022]),
    ] {
        let here = ours(gas, kelvin);
        for delay in delays {
            assert!(here > 0.99 * delay, "{gas} {kelvin}: {here} {delay}");
        }
    }
    for (gas, kelvin, delay, times) in [
        ("CH4=0.9,C2H6=0.07,C3H8=0.03", 973.0, 0.2498, 5.0),
        ("CH4=0.9,C2H6=0.07,C3H8=0.03", 1033.0, 0.0890, 7.0),
        // AramcoMech 1.3.
        ("CH4=0.9,C2H6=0.07,C3H8=0.03", 1033.0, 0.24, 3.0),
        ("CH4=0.9,C2H6=0.07,C3H8=0.03", 1200.0, 0.00777, 5.0),
        ("H2=1", 1033.0, 0.000_19, 400.0),
        ("H2=1", 1200.0, 0.000_06, 100.0),
    ] {
        assert!(ours(gas, kelvin) > times * delay, "{gas} {kelvin}: {}", ours(gas, kelvin));
    }
}
