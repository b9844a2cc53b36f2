//! Laws of the limits of burning and of the burning velocity.

use crate::tolerance::{LIMIT_FLAME, SINGLE_PRECISION};
use jetwright::combustion::{
    BURNING_VELOCITY_BIAS, BurningRange, LimitStandard, Reactants, burning_range, burning_velocity,
    burning_velocity_bias_holds, explosive_range, leanest_air_ratio,
};
use jetwright::gas::{Gas, Mixture, NAMED, Species, parse};
use jetwright::quantity::{AbsolutePressure, Temperature};
use jetwright::{Error, Input, Scalar, Site};

fn site<S: Scalar>(humidity: f64) -> Site<S> {
    let pressure = AbsolutePressure::from_pascals(S::c(101_325.0));
    Site::at_station_pressure(pressure, Temperature::from_celsius(S::c(25.0)), S::c(humidity)).unwrap()
}

fn gas<S: Scalar>(text: &str) -> Gas<S> {
    let mixture = parse(text).unwrap();
    let parts: Vec<_> = mixture.parts().map(|(species, share)| (species, S::c(share))).collect();
    Gas::new(Mixture::new(&parts).unwrap())
}

fn range(text: &str, celsius: f64) -> BurningRange {
    let temperature = Temperature::from_celsius(celsius);
    burning_range(&gas(text), &site(0.0), temperature, LimitStandard::Nfpa497).unwrap()
}

fn speed<S: Scalar>(text: &str, ratio: f64, kelvin: f64, humidity: f64) -> S {
    let mixture = Temperature::from_kelvin(S::c(kelvin));
    burning_velocity(&gas::<S>(text), &site(humidity), S::c(ratio), mixture).unwrap().meters_per_second()
}

#[test]
fn a_blend_lies_between_its_parts_and_of_two_halves_alike_changes_nothing() {
    let (methane, propane) = (range("methane", 25.0), range("propane", 25.0));
    let mut before = propane;
    for share in [0.2, 0.5, 0.8, 1.0] {
        let blend = range(&format!("CH4={share},C3H8={}", 1.0 - share), 25.0);
        assert!(blend.lower_limit > before.lower_limit && blend.upper_limit > before.upper_limit, "{share}");
        before = blend;
    }
    assert!((before.lower_limit - methane.lower_limit).abs() < 1e-12);
    // Of the mixture at the lean limit the same share is fuel, whether half of the rest came with the gas.
    let thinned = range("C3H8=0.5,N2=0.5", 25.0);
    assert!((0.5 * thinned.lower_limit - propane.lower_limit).abs() < 1e-12);
    // At the rich limit the same oxygen for a fuel.
    assert!((thinned.richest_air_ratio - propane.richest_air_ratio).abs() < 1e-12);
}

#[test]
fn heat_widens_the_range_until_the_gas_lights_itself() {
    for named in NAMED {
        let mut before = range(named.name, -20.0);
        for celsius in [25.0, 100.0, 200.0, 280.0] {
            let here = range(named.name, celsius);
            assert!(here.leanest_air_ratio > before.leanest_air_ratio && !here.lights_itself, "{}", named.name);
            assert!(here.richest_air_ratio < before.richest_air_ratio, "{}", named.name);
            before = here;
        }
    }
    assert!(!range("propane", 449.0).burns(4.9) && range("propane", 451.0).burns(4.9));
    let (warm, hot) = (range("propane", 449.999), range("propane", 1200.0));
    assert!((warm.leanest_air_ratio - hot.leanest_air_ratio).abs() < 1e-4 && hot.lights_itself);
}

/// Burgess and Wheeler's own finding: whatever the temperature of the mixture, the flame at the lower limit is as hot.
#[test]
fn the_flame_at_the_lower_limit_is_as_hot_from_a_hot_mixture() {
    for name in ["propane", "methane", "natural-gas", "butane"] {
        let flame = |celsius: f64| {
            let temperature = Temperature::from_celsius(celsius);
            let ratio = range(name, celsius).leanest_air_ratio;
            let reactants = Reactants::new(&gas(name), &site(0.0), ratio, temperature).unwrap();
            reactants.flame().unwrap().temperature.kelvin()
        };
        let cold = flame(25.0);
        for celsius in [150.0, 250.0, 350.0] {
            let hot = flame(celsius);
            assert!((hot / cold - 1.0).abs() < LIMIT_FLAME, "{name} {celsius}: {hot} {cold}");
        }
        assert!((1400.0..1750.0).contains(&cold), "{name} {cold}");
    }
}

#[test]
fn moist_air_and_inert_gas_narrow_the_range_to_nothing() {
    let thin = |share: f64| {
        let mixture = Mixture::new(&[(Species::Propane, share), (Species::Nitrogen, 1.0 - share)]).unwrap();
        burning_range(&Gas::new(mixture), &site(0.0), Temperature::from_celsius(25.0), LimitStandard::Nfpa497)
    };
    // By hand, a share x of propane: the lean end is 1.995 - 0.0419 / x, the rich one by oxygen 0.0510 / x, and they
    // meet at x = 4.66 %.
    assert!(matches!(thin(0.046), Err(Error::TooDilute { given }) if (given - 0.954).abs() < 1e-6));
    let nose = thin(0.0475).unwrap();
    assert!(nose.leanest_air_ratio / nose.richest_air_ratio < 1.1);
    assert!(thin(0.2).unwrap().burns(1.0));
    let inert = Gas::from(Species::Nitrogen);
    let cold = Temperature::from_celsius(25.0);
    assert_eq!(burning_range(&inert, &site(0.0), cold, LimitStandard::Iec60079), Err(Error::CannotBurn));
    // Moist air needs more of itself, so the same air ratio is a leaner mixture.
    let dry = burning_range(&gas("propane"), &site(0.0), cold, LimitStandard::Nfpa497).unwrap();
    let moist = burning_range(&gas("propane"), &site(1.0), cold, LimitStandard::Nfpa497).unwrap();
    assert!(moist.leanest_air_ratio < dry.leanest_air_ratio);
    assert!((leanest_air_ratio(&gas::<f64>("propane"), &site(1.0)).unwrap() - moist.leanest_air_ratio).abs() < 1e-12);
    // The wider standard burns whatever the narrower does.
    for named in NAMED {
        let by = |standard| burning_range(&gas(named.name), &site(0.0), cold, standard).unwrap();
        let (narrow, wide) = (by(LimitStandard::Nfpa497), by(LimitStandard::Iec60079));
        assert!(wide.leanest_air_ratio >= narrow.leanest_air_ratio, "{}", named.name);
        assert!(wide.richest_air_ratio <= narrow.richest_air_ratio, "{}", named.name);
    }
}

/// The temperatures from the coldest air to above every autoignition, in steps of 5 K.
fn celsius_upward() -> impl Iterator<Item = f64> {
    (0..240).map(|step| -34.0 + 5.0 * f64::from(step))
}

#[test]
fn what_may_be_explosive_holds_all_that_surely_burns_and_widens_without_a_step() {
    for named in NAMED {
        let mut before: Option<BurningRange> = None;
        for celsius in celsius_upward() {
            let temperature = Temperature::from_celsius(celsius);
            let wide = explosive_range(&gas(named.name), &site(0.0), temperature).unwrap();
            for standard in [LimitStandard::Nfpa497, LimitStandard::Iec60079] {
                let Ok(narrow) = burning_range(&gas(named.name), &site(0.0), temperature, standard) else { continue };
                assert!(wide.lower_limit <= narrow.lower_limit * (1.0 + 1e-12), "{} {celsius}", named.name);
                assert!(wide.upper_limit >= narrow.upper_limit * (1.0 - 1e-12), "{} {celsius}", named.name);
                assert!(wide.leanest_air_ratio >= narrow.leanest_air_ratio * (1.0 - 1e-12), "{}", named.name);
            }
            if let Some(before) = before {
                let fall = (before.lower_limit - wide.lower_limit) / before.lower_limit;
                // 5 K take .6 % of the value at 25 degC, which is 5.1 % of what is left of it at 760 degC.
                assert!((-1e-9..0.053).contains(&fall), "{} {celsius} {fall}", named.name);
                assert!(wide.upper_limit >= before.upper_limit * (1.0 - 1e-9), "{} {celsius}", named.name);
            }
            before = Some(wide);
        }
    }
}

#[test]
fn what_counts_as_too_lean_stays_below_what_was_measured_hot() {
    let hot =
        |text: &str| explosive_range(&gas(text), &site(0.0), Temperature::from_celsius(400.0)).unwrap().lower_limit;
    // Methane: 5 % at 25 degC drawn straight to the measured zero of upward flames at 900 degC (Combustion, Explosion,
    // and Shock Waves, abstract), and free flames as fast as that limit flame is cold; propane: such flames. Flames of
    // the San Diego mechanism of 2016, computed with Cantera 3.2.0.
    let drawn = 0.05 * (900.0 - 400.0) / (900.0 - 25.0);
    assert!((drawn - 0.0286_f64).abs() < 5e-5);
    for (found, measured) in [(hot("CH4=1"), drawn), (hot("CH4=1"), 0.0287), (hot("C3H8=1"), 0.0113)] {
        assert!(found < measured, "{found} {measured}");
        assert!(found > 0.8 * measured, "{found} {measured}");
    }
}

#[test]
fn a_flame_is_fastest_a_little_rich_and_stands_still_outside_the_limits() {
    for name in ["propane", "natural-gas", "propane-butane", "hd-5"] {
        let fastest: f64 = speed(name, 1.0 / 1.08, 298.15, 0.0);
        for ratio in [0.6, 0.8, 0.9, 1.0, 1.2, 1.5] {
            let slower: f64 = speed(name, ratio, 298.15, 0.0);
            assert!(slower < fastest && slower >= 0.0, "{name} {ratio}");
        }
        let limits = range(name, 25.0);
        for outside in [limits.leanest_air_ratio * 1.01, (limits.richest_air_ratio * 0.99).max(0.5)] {
            if !limits.burns(outside) {
                assert_eq!(speed::<f64>(name, outside, 298.15, 0.0), 0.0, "{name} {outside}");
            }
        }
        assert!(speed::<f64>(name, limits.leanest_air_ratio * 0.99, 298.15, 0.0) > 0.0, "{name}");
        assert!(speed::<f64>(name, 1.0, 500.0, 0.0) > 1.8 * speed::<f64>(name, 1.0, 300.0, 0.0), "{name}");
        assert!(speed::<f64>(name, 1.0, 300.0, 1.0) < 0.95 * speed::<f64>(name, 1.0, 300.0, 0.0), "{name}");
    }
    let hydrogen = burning_velocity(&gas::<f64>("hydrogen"), &site(0.0), 1.0, Temperature::from_celsius(25.0));
    assert_eq!(hydrogen, Err(Error::NotMeasured { given: 1.0 }));
    let rich = burning_velocity(&gas::<f64>("propane"), &site(0.0), 0.2, Temperature::from_celsius(25.0));
    assert_eq!(rich, Err(Error::OutOfRange { input: Input::AirRatio, given: 0.2 }));
}

/// Methane flames of GRI-Mech 3.0 at 25 degC and an atmosphere, m/s (computed with Cantera 3.2.0): the bias holds where
/// it is said to, and is not said to hold where it does not.
#[test]
fn the_bias_is_claimed_only_where_it_holds() {
    for (text, ratio, found, holds) in [
        ("CH4=1", 0.75, 0.197, true),
        ("CH4=1", 0.8, 0.290, true),
        ("CH4=1", 0.85, 0.350, true),
        ("CH4=1", 0.9, 0.378, true),
        ("CH4=1", 1.0, 0.379, true),
        ("CH4=1", 1.2, 0.296, true),
        ("CH4=0.95,N2=0.05", 0.9, 0.373, true),
        ("CH4=0.95,N2=0.05", 1.2, 0.292, true),
        ("CH4=0.9,N2=0.1", 0.9, 0.366, true),
        ("CH4=0.9,N2=0.1", 1.0, 0.367, true),
        ("CH4=0.2,N2=0.8", 1.0, 0.118, false),
        ("CH4=0.2,N2=0.8", 0.77, 0.025, false),
    ] {
        let bias = found / speed::<f64>(text, ratio, 298.15, 0.0) - 1.0;
        let lies_within = (BURNING_VELOCITY_BIAS.0..=BURNING_VELOCITY_BIAS.1).contains(&bias);
        assert_eq!(burning_velocity_bias_holds(&gas::<f64>(text), ratio), holds, "{text} {ratio}");
        assert_eq!(lies_within, holds, "{text} {ratio}: {bias}");
    }
    assert!(!burning_velocity_bias_holds(&gas::<f64>("hydrogen"), 1.0));
    assert!(!burning_velocity_bias_holds(&gas::<f64>("propane"), 1.3));
}

#[test]
fn single_precision_agrees() {
    for named in NAMED {
        for celsius in [-30.0, 25.0, 400.0, 900.0] {
            let double = range(named.name, celsius);
            let temperature = Temperature::from_celsius(celsius as f32);
            let single =
                burning_range(&gas::<f32>(named.name), &site(0.0), temperature, LimitStandard::Nfpa497).unwrap();
            let wide = explosive_range(&gas(named.name), &site(0.0), Temperature::from_celsius(celsius)).unwrap();
            let wide_single = explosive_range(&gas::<f32>(named.name), &site(0.0), temperature).unwrap();
            for (a, b) in [
                (single.leanest_air_ratio, double.leanest_air_ratio),
                (single.richest_air_ratio, double.richest_air_ratio),
                (single.lower_limit, double.lower_limit),
                (single.upper_limit, double.upper_limit),
                (wide_single.leanest_air_ratio, wide.leanest_air_ratio),
                (wide_single.lower_limit, wide.lower_limit),
                (wide_single.upper_limit, wide.upper_limit),
            ] {
                assert!((f64::from(a) - b).abs() <= SINGLE_PRECISION * b.max(0.1), "{} {celsius}: {a} {b}", named.name);
            }
        }
        if named.name == "hydrogen" {
            continue;
        }
        for kelvin in [250.0, 300.0, 600.0] {
            for ratio in [0.7, 1.0, 1.6] {
                let single = f64::from(speed::<f32>(named.name, ratio, kelvin, 0.5));
                let double: f64 = speed(named.name, ratio, kelvin, 0.5);
                assert!((single - double).abs() <= SINGLE_PRECISION * double, "{} {ratio}", named.name);
            }
        }
    }
}
