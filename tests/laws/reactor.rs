//! Laws of the stirred reactor's carbon monoxide.

use crate::tolerance::SINGLE_PRECISION;
use jetwright::combustion::{Reactor, ReactorFuel, carbon_monoxide_of_reactor};
use jetwright::gas::{NAMED, parse};
use jetwright::quantity::{AbsolutePressure, Duration, Temperature};
use jetwright::{Error, Input, Result, Scalar};
use proptest::prelude::*;

const FUELS: [ReactorFuel; 2] = [ReactorFuel::Propane, ReactorFuel::Methane];

fn of<S: Scalar>(fuel: ReactorFuel, [ratio, celsius, seconds, pascals]: [f64; 4]) -> Result<Reactor<S>> {
    carbon_monoxide_of_reactor(
        fuel,
        S::c(ratio),
        Temperature::from_celsius(S::c(celsius)),
        Duration::from_seconds(S::c(seconds)),
        AbsolutePressure::from_pascals(S::c(pascals)),
    )
}

/// Any accepted point.
fn points() -> impl Strategy<Value = [f64; 4]> {
    [0.8..=3.0, 700.0..=999.99, 0.1..=3.0, 58e3..=110e3]
}

proptest! {
    #[test]
    fn an_answer_is_a_fraction_and_the_same_in_single_precision(place in points(), which in 0..2_usize) {
        let double = of::<f64>(FUELS[which], place).unwrap().carbon_monoxide_dry;
        let single = of::<f32>(FUELS[which], place).unwrap().carbon_monoxide_dry;
        // From the cleanest fire of the table to the richest.
        prop_assert!((1e-6..0.11).contains(&double), "{double}");
        // Every decade of the logarithm costs single precision a digit's share of it.
        prop_assert!((f64::from(single) / double - 1.0).abs() < 10.0 * SINGLE_PRECISION, "{double} {single}");
    }

    #[test]
    fn a_small_step_makes_a_small_difference(place in points(), which in 0..2_usize, side in 0..4_usize) {
        let mut moved = place;
        moved[side] *= 1.0 - 1e-6;
        prop_assume!(moved[0] >= 0.8 && moved[1] >= 700.0 && moved[2] >= 0.1 && moved[3] >= 58e3);
        let [here, there] = [place, moved].map(|place| of::<f64>(FUELS[which], place).unwrap().carbon_monoxide_dry);
        prop_assert!((there / here - 1.0).abs() < 1e-3, "{here} {there}");
    }

    #[test]
    fn a_lean_fire_that_burns_is_cleaner_the_longer_it_burns(
        ratio in 1.25..3.0_f64, celsius in 760.0..999.0_f64, seconds in 0.3..1.5_f64, pascals in 70e3..101e3_f64,
        which in 0..2_usize,
    ) {
        let at = |celsius, seconds| of::<f64>(FUELS[which], [ratio, celsius, seconds, pascals]).unwrap();
        let (short, long) = (at(celsius, seconds), at(celsius, 2.0 * seconds));
        prop_assume!(short.burns && long.burns);
        prop_assert!(long.carbon_monoxide_dry < 0.85 * short.carbon_monoxide_dry);
    }
}

#[test]
fn just_enough_air_at_a_chamber_no_redder_than_cherry_is_far_from_clean() {
    // Wet and dry of the solver by itself, propane, 760 degC, .63 s, 835 hPa: 7 800 ppm with 6.3 % of water, 24 300 with
    // 13.9 %.
    for (ratio, wet, water) in [(2.5, 7.8e-3, 0.0632), (1.05, 24.3e-3, 0.1386)] {
        let found = of::<f64>(ReactorFuel::Propane, [ratio, 760.0, 0.63, 83_500.0]).unwrap();
        let off = found.carbon_monoxide_dry * (1.0 - water) / wet - 1.0;
        assert!(found.burns && off.abs() < 0.2, "{ratio} {off}");
    }
}

#[test]
fn what_is_too_cool_and_too_quick_blows_out_and_what_stays_long_does_not() {
    for fuel in FUELS {
        assert!(!of::<f64>(fuel, [1.1, 705.0, 0.12, 101_325.0]).unwrap().burns);
        assert!(of::<f64>(fuel, [1.1, 705.0, 2.9, 101_325.0]).unwrap().burns);
        assert!(of::<f64>(fuel, [2.0, 950.0, 0.12, 101_325.0]).unwrap().burns);
    }
}

#[test]
fn outside_the_table_is_an_error_that_names_the_side() {
    for (place, input) in [
        ([0.79, 800.0, 1.0, 1e5], Input::ReactorAirRatio),
        ([1.0, 699.0, 1.0, 1e5], Input::ReactorTemperature),
        ([1.0, 800.0, 3.1, 1e5], Input::ReactorResidence),
        ([1.0, 800.0, 1.0, 5e4], Input::StationPressure),
    ] {
        assert!(matches!(of::<f64>(FUELS[0], place), Err(Error::OutOfRange { input: found, .. }) if found == input));
    }
}

#[test]
fn every_named_gas_has_a_fuel_of_the_table_or_says_that_it_has_none() {
    for named in NAMED {
        let fuel = ReactorFuel::of(&parse(named.name).unwrap());
        let expected = match named.name {
            "hydrogen" => None,
            name if name.contains("natural") || name.contains("methane") => Some(ReactorFuel::Methane),
            _ => Some(ReactorFuel::Propane),
        };
        assert_eq!(fuel.ok(), expected, "{}", named.name);
    }
}
