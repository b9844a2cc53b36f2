//! Laws of the flue gas: its heat balance closes, its readings go back and forth, its water falls out where it should.

use crate::tolerance::{HEAT_CLOSES, ROUND_TRIP, SINGLE_PRECISION};
use jetwright::combustion::{
    Basis, Character, FlueReading, Product, Reactants, Scale, ScaleTendency, air_ratio_from_oxygen, expected_reading,
};
use jetwright::gas::{Gas, Mixture, NAMED, Species, parse};
use jetwright::quantity::{AbsolutePressure, Temperature};
use jetwright::{Error, Input, Scalar, Site};

fn site<S: Scalar>(pascals: f64, humidity: f64) -> Site<S> {
    let pressure = AbsolutePressure::from_pascals(S::c(pascals));
    Site::at_station_pressure(pressure, Temperature::from_celsius(S::c(25.0)), S::c(humidity)).unwrap()
}

fn gas<S: Scalar>(text: &str) -> Gas<S> {
    let mixture = parse(text).unwrap();
    let parts: Vec<_> = mixture.parts().map(|(species, share)| (species, S::c(share))).collect();
    Gas::new(Mixture::new(&parts).unwrap())
}

fn scale<S: Scalar>(reactants: &Reactants<S>, kelvin: f64) -> Scale<S> {
    let steel = Temperature::from_kelvin(S::c(kelvin));
    reactants.products_at(steel).unwrap().scale(steel).unwrap()
}

fn reactants<S: Scalar>(name: &str, ratio: f64, kelvin: f64, humidity: f64) -> Reactants<S> {
    let mixture = Temperature::from_kelvin(S::c(kelvin));
    Reactants::new(&gas(name), &site(83_500.0, humidity), S::c(ratio), mixture).unwrap()
}

#[test]
fn what_stays_and_what_leaves_add_to_the_heat_brought() {
    for named in NAMED {
        for ratio in [0.6, 0.8, 0.95, 1.0, 1.1, 2.0, 4.0] {
            for (mixture, chamber) in [(250.0, 700.0), (298.15, 1500.0), (600.0, 1900.0), (900.0, 2700.0)] {
                let reactants = reactants::<f64>(named.name, ratio, mixture, 0.5);
                let leaving = reactants.leaving(Temperature::from_kelvin(chamber)).unwrap();
                let loss = leaving.loss;
                let sum = leaving.available_heat + loss.sensible + loss.unburnt - loss.preheat;
                assert!((sum - 1.0).abs() < HEAT_CLOSES, "{} {ratio} {mixture} {chamber}: {sum}", named.name);
                assert!(loss.sensible > 0.0 && loss.unburnt > -1e-9, "{} {ratio}", named.name);
                let alone = reactants.available_heat(Temperature::from_kelvin(chamber)).unwrap();
                assert!((alone - leaving.available_heat).abs() < HEAT_CLOSES);
            }
        }
    }
}

#[test]
fn the_flue_loss_rises_with_temperature_and_air_and_a_rich_fire_leaves_heat_unburnt() {
    let loss = |ratio: f64, kelvin: f64| {
        reactants::<f64>("propane", ratio, 298.15, 0.0).leaving(Temperature::from_kelvin(kelvin)).unwrap().loss
    };
    for pair in [700.0, 1000.0, 1300.0, 1600.0].windows(2) {
        assert!(loss(1.1, pair[0]).sensible < loss(1.1, pair[1]).sensible);
    }
    for pair in [1.0, 1.2, 1.5, 2.5].windows(2) {
        assert!(loss(pair[0], 1300.0).sensible < loss(pair[1], 1300.0).sensible);
    }
    for pair in [0.65, 0.8, 0.9, 1.0].windows(2) {
        assert!(loss(pair[0], 1300.0).unburnt > loss(pair[1], 1300.0).unburnt);
    }
    // Short of a tenth of the oxygen, CO and H2 are short of it together; each mole of oxygen burns some 0.5 MJ of
    // either, and propane's 5 moles 2.04 MJ: so 1 mole of oxygen missing leaves 0.5 of 2.04.
    let unburnt = loss(0.8, 1300.0).unburnt;
    assert!((unburnt - 0.265).abs() < 0.02, "{unburnt}");
}

#[test]
fn readings_go_back_and_forth() {
    for named in NAMED {
        for humidity in [0.0, 0.8] {
            let site = site(83_500.0, humidity);
            let gas = gas::<f64>(named.name);
            let mut before = -1.0;
            for ratio in [1.0, 1.05, 1.3, 2.0, 5.0, 40.0] {
                let reading = expected_reading(&gas, &site, ratio).unwrap();
                assert!(reading.oxygen_dry > before && reading.oxygen_wet <= reading.oxygen_dry);
                before = reading.oxygen_dry;
                for (oxygen, basis) in [(reading.oxygen_dry, Basis::Dry), (reading.oxygen_wet, Basis::Wet)] {
                    let back = air_ratio_from_oxygen(&gas, &site, FlueReading { oxygen, carbon_monoxide: 0.0, basis });
                    assert!((back.unwrap() / ratio - 1.0).abs() < 10.0 * ROUND_TRIP, "{} {ratio}", named.name);
                }
            }
            // Equilibrium at 1 000 K leaves next to nothing unburnt, and so must say the same.
            let mixture = Temperature::from_kelvin(298.15);
            let flue = Reactants::new(&gas, &site, 1.4, mixture).unwrap();
            let flue = flue.products_at(Temperature::from_kelvin(1000.0)).unwrap();
            let told = expected_reading(&gas, &site, 1.4).unwrap();
            for (a, b) in [
                (told.oxygen_dry, flue.dry(Product::Oxygen)),
                (told.oxygen_wet, flue.wet(Product::Oxygen)),
                (told.carbon_dioxide_dry, flue.dry(Product::CarbonDioxide)),
            ] {
                assert!((a - b).abs() < 1e-4, "{}: {a} {b}", named.name);
            }
        }
    }
}

#[test]
fn carbon_monoxide_and_impossible_readings() {
    let (propane, here) = (gas::<f64>("propane"), site(101_325.0, 0.0));
    let ratio = |oxygen, carbon_monoxide| {
        air_ratio_from_oxygen(&propane, &here, FlueReading { oxygen, carbon_monoxide, basis: Basis::Dry })
    };
    assert!((ratio(0.0, 0.0).unwrap() - 1.0).abs() < 1e-12);
    // Two carbon monoxides for one oxygen is a fire with just enough air, badly mixed.
    assert!((ratio(0.01, 0.02).unwrap() - 1.0).abs() < 1e-12);
    assert!(ratio(0.0, 0.02).unwrap() < 1.0 && ratio(0.03, 0.01).unwrap() < ratio(0.03, 0.0).unwrap());
    assert_eq!(ratio(0.3, 0.0), Err(Error::OutOfRange { input: Input::OxygenReading, given: 0.3 }));
    assert!(matches!(ratio(0.05, f64::NAN), Err(Error::NotFinite { .. })));
    // A tropical air has less oxygen than the reading.
    let moist =
        Site::at_station_pressure(AbsolutePressure::from_pascals(101_325.0), Temperature::from_celsius(40.0), 1.0)
            .unwrap();
    let wet = FlueReading { oxygen: 0.2, carbon_monoxide: 0.0, basis: Basis::Wet };
    assert!(matches!(air_ratio_from_oxygen(&propane, &moist, wet), Err(Error::NoSolution { .. })));
    let inert = Gas::from(Species::Nitrogen);
    assert_eq!(expected_reading(&inert, &here, 1.2), Err(Error::CannotBurn));
    assert!(matches!(expected_reading(&propane, &here, 0.9), Err(Error::OutOfRange { .. })));
}

#[test]
fn at_the_dew_point_water_just_saturates() {
    for named in NAMED {
        for (pascals, humidity) in [(101_325.0, 0.0), (70_000.0, 0.9)] {
            let mixture = Temperature::from_kelvin(298.15);
            let site = site::<f64>(pascals, humidity);
            let mut before = f64::MAX;
            for ratio in [1.0, 1.3, 2.0, 4.0] {
                let flue = Reactants::new(&gas(named.name), &site, ratio, mixture).unwrap();
                let flue = flue.products_at(Temperature::from_kelvin(800.0)).unwrap();
                let dew = flue.dew_point(site.ambient_pressure()).unwrap();
                assert!(dew.celsius() < before && dew.celsius() < 75.0);
                before = dew.celsius();
                // Air saturated at the dew point holds the same water, but for its enhancement of up to 0.5 %.
                if dew.celsius() < 54.0 {
                    let foggy = Site::at_station_pressure(site.ambient_pressure(), dew, 1.0).unwrap();
                    let share = foggy.water_fraction() / flue.wet(Product::Water);
                    assert!((share - 1.0).abs() < 6e-3, "{} {ratio}: {share}", named.name);
                }
            }
        }
    }
    let carbon_monoxide = Gas::from(Species::CarbonMonoxide);
    let dry = Reactants::new(&carbon_monoxide, &site(101_325.0, 0.0), 1.2, Temperature::from_kelvin(298.15)).unwrap();
    let flue = dry.products_at(Temperature::from_kelvin(800.0)).unwrap();
    assert_eq!(flue.dew_point(AbsolutePressure::from_pascals(101_325.0)), None);
}

#[test]
fn character_and_scale_follow_the_air() {
    let ratios = [0.6, 0.84, 0.86, 0.96, 0.98, 1.02, 1.04, 1.14, 1.16, 4.0];
    assert!(ratios.windows(2).all(|pair| Character::of(pair[0]) <= Character::of(pair[1])));
    assert_eq!((Character::of(0.7), Character::of(1.5)), (Character::Reducing, Character::Oxidizing));
    for kelvin in [900.0, 1200.0, 1600.0] {
        let mut before = 0.0;
        for ratio in ratios {
            let reactants = reactants::<f64>("propane", ratio, 298.15, 0.0);
            let scale = scale(&reactants, kelvin);
            assert!(scale.drive > before, "{kelvin} {ratio}");
            before = scale.drive;
            // The water gas: what carbon dioxide says, water says.
            let flue = reactants.products_at(Temperature::from_kelvin(kelvin)).unwrap();
            let by_water = flue.wet(Product::Water) / flue.wet(Product::Hydrogen) / scale.water_ratio;
            assert!((by_water / scale.drive - 1.0).abs() < 1e-6, "{kelvin} {ratio}: {by_water}");
        }
    }
    let at = |name, ratio, kelvin| scale(&reactants::<f64>(name, ratio, 298.15, 0.0), kelvin);
    assert_eq!(at("methane", 1.2, 1423.0).tendency, ScaleTendency::Fast);
    assert_eq!(at("methane", 0.8, 1423.0).tendency, ScaleTendency::Slow);
    // Hydrogen in dry air holds next to no carbon and is told by its water.
    let hydrogen = at("hydrogen", 0.7, 1273.0);
    // Seven in ten burn, three are left: water over hydrogen, but for what the air's trace of carbon dioxide takes.
    assert!((hydrogen.drive * hydrogen.water_ratio / (0.7 / 0.3) - 1.0).abs() < 0.01, "{hydrogen:?}");
    let cold = Temperature::from_celsius(400.0);
    let flue = reactants::<f64>("propane", 0.9, 298.15, 0.0).products_at(cold).unwrap();
    assert!(matches!(flue.scale(cold), Err(Error::OutOfRange { input: Input::ScaleTemperature, .. })));
}

#[test]
fn single_precision_agrees() {
    for named in NAMED {
        for ratio in [0.7, 1.0, 1.4] {
            let double = reactants::<f64>(named.name, ratio, 298.15, 0.5);
            let single = reactants::<f32>(named.name, ratio, 298.15, 0.5);
            let (a, b) = (
                single.leaving(Temperature::from_kelvin(1400.0)).unwrap(),
                double.leaving(Temperature::from_kelvin(1400.0)).unwrap(),
            );
            for (a, b) in [
                (a.loss.sensible, b.loss.sensible),
                (a.loss.unburnt, b.loss.unburnt),
                (a.available_heat, b.available_heat),
            ] {
                assert!((f64::from(a) - b).abs() < SINGLE_PRECISION, "{} {ratio}: {a} {b}", named.name);
            }
            let a = a.products.dew_point(AbsolutePressure::from_pascals(83_500.0)).unwrap().kelvin();
            let b = b.products.dew_point(AbsolutePressure::from_pascals(83_500.0)).unwrap().kelvin();
            assert!((f64::from(a) / b - 1.0).abs() < SINGLE_PRECISION, "{} {ratio}", named.name);
            let (a, b) = (scale(&single, 1400.0).drive, scale(&double, 1400.0).drive);
            assert!((f64::from(a) / b - 1.0).abs() < 10.0 * SINGLE_PRECISION, "{} {ratio}: {a} {b}", named.name);
        }
    }
}
