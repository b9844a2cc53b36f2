//! Laws of the flame: its elements and its energy balance, and it cools as it should.

use crate::tolerance::{FLAME_BALANCE, SINGLE_PRECISION};
use jetwright::combustion::{Product, Products, Reactants};
use jetwright::gas::{Gas, NAMED, parse};
use jetwright::quantity::{AbsolutePressure, Temperature};
use jetwright::{Error, Input, Scalar, Site};

fn site<S: Scalar>(pascals: f64, humidity: f64) -> Site<S> {
    let pressure = AbsolutePressure::from_pascals(S::c(pascals));
    Site::at_station_pressure(pressure, Temperature::from_celsius(S::c(25.0)), S::c(humidity)).unwrap()
}

fn gas<S: Scalar>(name: &str) -> Gas<S> {
    let mixture = parse(name).unwrap();
    let parts: Vec<_> = mixture.parts().map(|(species, share)| (species, S::c(share))).collect();
    Gas::new(jetwright::gas::Mixture::new(&parts).unwrap())
}

fn reactants<S: Scalar>(name: &str, ratio: f64, kelvin: f64, humidity: f64) -> Reactants<S> {
    let mixture = Temperature::from_kelvin(S::c(kelvin));
    Reactants::new(&gas(name), &site(83_500.0, humidity), S::c(ratio), mixture).unwrap()
}

/// Atoms of carbon, hydrogen, oxygen and nitrogen in the products, by the mole of gas.
fn atoms(products: &Products) -> [f64; 4] {
    let share = |product| products.wet(product) * products.moles();
    use Product::{
        CarbonDioxide, CarbonMonoxide, Hydrogen, HydrogenAtom, Hydroxyl, NitricOxide, Nitrogen, Oxygen, OxygenAtom,
        Water,
    };
    [
        share(CarbonDioxide) + share(CarbonMonoxide),
        2.0 * (share(Water) + share(Hydrogen)) + share(Hydroxyl) + share(HydrogenAtom),
        2.0 * (share(CarbonDioxide) + share(Oxygen))
            + share(CarbonMonoxide)
            + share(Water)
            + share(Hydroxyl)
            + share(OxygenAtom)
            + share(NitricOxide),
        2.0 * share(Nitrogen) + share(NitricOxide),
    ]
}

const RATIOS: [f64; 12] = [0.6, 0.7, 0.85, 0.95, 0.999, 1.0, 1.001, 1.05, 1.3, 2.0, 3.0, 4.0];

#[test]
fn elements_and_energy_balance() {
    for named in NAMED {
        let mixture = named.mixture();
        for ratio in RATIOS {
            for kelvin in [250.0, 298.15, 600.0] {
                let reactants = reactants::<f64>(named.name, ratio, kelvin, 0.0);
                let flame = reactants.flame().unwrap();
                // By hand: air = ratio * oxygen needed / 0.20946, with 0.036 % carbon dioxide in it.
                let air = ratio * mixture.oxygen_to_burn() / 0.209_46;
                let count = |of: fn(&str) -> f64| mixture.parts().map(|(s, share)| share * of(s.symbol())).sum::<f64>();
                let carbon = count(|symbol| match symbol {
                    "CH4" | "CO2" | "CO" => 1.0,
                    "C2H6" | "C2H4" => 2.0,
                    "C3H8" | "C3H6" => 3.0,
                    "nC4" | "iC4" => 4.0,
                    _ => 0.0,
                });
                let found = atoms(&flame.products);
                assert!(
                    (found[0] / (carbon + 0.000_36 * air + 1e-30) - 1.0).abs() < FLAME_BALANCE,
                    "{} {ratio}",
                    named.name
                );
                let nitrogen = 2.0 * 0.780_84 * air + 2.0 * count(|symbol| f64::from(u8::from(symbol == "N2")));
                assert!((found[3] / nitrogen - 1.0).abs() < FLAME_BALANCE, "{} {ratio}", named.name);
                // At the flame's own temperature nothing is left for a chamber.
                assert!(reactants.available_heat(flame.temperature).unwrap().abs() < 1e-9, "{} {ratio}", named.name);
                // The oxygen balance, from the excess that the model is built on.
                let over = found[2] - 2.0 * found[0] - 0.5 * found[1];
                let excess = 2.0 * mixture.oxygen_to_burn() * (ratio - 1.0);
                assert!((over - excess).abs() < FLAME_BALANCE * found[2], "{} {ratio}: {over} {excess}", named.name);
            }
        }
    }
}

#[test]
fn a_flame_is_hottest_near_just_enough_air_and_moist_air_and_dissociation_cool_it() {
    let kelvin =
        |ratio, humidity| reactants::<f64>("propane", ratio, 298.15, humidity).flame().unwrap().temperature.kelvin();
    let hottest = kelvin(0.95, 0.0);
    assert!(hottest > kelvin(1.0, 0.0) && hottest > kelvin(0.9, 0.0));
    for pair in [1.0, 1.2, 1.6, 2.5, 4.0].windows(2) {
        assert!(kelvin(pair[0], 0.0) > kelvin(pair[1], 0.0));
    }
    assert!(kelvin(1.0, 0.8) < kelvin(1.0, 0.0) - 20.0);
    let warm = reactants::<f64>("propane", 1.0, 500.0, 0.0).flame().unwrap().temperature.kelvin();
    assert!(warm > hottest && warm < hottest + 200.0);
}

#[test]
fn carbon_monoxide_falls_with_air_and_available_heat_with_temperature() {
    let at = |ratio: f64, kelvin: f64| {
        reactants::<f64>("propane", ratio, 298.15, 0.0).products_at(Temperature::from_kelvin(kelvin)).unwrap()
    };
    for kelvin in [1100.0, 1500.0, 2000.0] {
        for pair in RATIOS.windows(2) {
            let (rich, lean) = (at(pair[0], kelvin), at(pair[1], kelvin));
            let carbon_monoxide = |products: &Products| products.dry(Product::CarbonMonoxide);
            assert!(carbon_monoxide(&rich) > carbon_monoxide(&lean), "{kelvin} {pair:?}");
        }
    }
    let reactants = reactants::<f64>("propane", 1.1, 298.15, 0.0);
    let mut before = 1.0;
    for step in 0..20 {
        let heat = reactants.available_heat(Temperature::from_kelvin(600.0 + 100.0 * f64::from(step))).unwrap();
        assert!(heat < before);
        before = heat;
    }
    // Hot flue gas at 1 600 K: 1.1 times 15.7 kg and a kilogram of propane carry off 58 % of 46.4 MJ at some 1.28 kJ/kgK.
    let left = reactants.available_heat(Temperature::from_kelvin(1600.0)).unwrap();
    let carried = (1.0 + 1.1 * 15.68) * 1.27e3 * (1600.0 - 298.15) / 46.36e6;
    assert!((left - (1.0 - carried)).abs() < 0.02, "{left} {carried}");
}

#[test]
fn single_precision_agrees_and_takes_few_steps() {
    let mut worst = [0; 2];
    for named in NAMED {
        for ratio in RATIOS {
            for kelvin in [250.0, 600.0, 900.0] {
                let double = reactants::<f64>(named.name, ratio, kelvin, 0.5).flame().unwrap();
                let single = reactants::<f32>(named.name, ratio, kelvin, 0.5).flame().unwrap();
                let off = f64::from(single.temperature.kelvin()) / double.temperature.kelvin() - 1.0;
                assert!(off.abs() < SINGLE_PRECISION, "{} {ratio} {kelvin}: {off}", named.name);
                worst[0] = worst[0].max(double.iterations).max(single.iterations);
                worst[1] = worst[1].max(double.products.iterations).max(single.products.iterations);
            }
        }
    }
    assert!(worst[0] <= 30 && worst[1] <= 30, "{worst:?}");
}

#[test]
fn what_cannot_burn_or_makes_soot_is_told() {
    let cold = Temperature::from_kelvin(298.15);
    let inert = Gas::from(jetwright::gas::Species::Nitrogen);
    assert_eq!(Reactants::new(&inert, &site(1e5, 0.0), 1.0, cold), Err(Error::CannotBurn));
    let rich = Reactants::new(&gas::<f64>("propane"), &site(1e5, 0.0), 0.4, cold);
    assert_eq!(rich, Err(Error::OutOfRange { input: Input::FlameAirRatio, given: 0.4 }));
}
