//! Laws of the furnace: energy closes, more fire is hotter, more brick is cooler, and what shops see.

use jetwright::furnace::warming::{REIGNITES_ABOVE_CELSIUS, Warming};
use jetwright::furnace::work::{Charge, Crucible};
use jetwright::furnace::{Body, Chamber, Layer, MATERIALS, Material, Opening, Substance, Surroundings, Wall};
use jetwright::quantity::{
    AbsolutePressure, Area, Duration, Length, Mass, MassFlow, NetHeatRate, Power, Temperature, TemperatureDifference,
};
use jetwright::{Error, Input, Scalar};

use crate::tolerance::{ENERGY_CLOSES, SINGLE_PRECISION_TRANSIENT};

fn celsius<S: Scalar>(value: f64) -> Temperature<S> {
    Temperature::from_celsius(S::c(value))
}

/// A small crucible furnace (invented): 30 cm wide, 40 cm high with its ends, 75 mm of brick, 50 mm of fiber, steel.
fn chamber<S: Scalar>(brick_mm: f64) -> Chamber<S> {
    let layer = |key: &str, millimeters: f64| Layer {
        material: Material::named(key).unwrap(),
        thickness: Length::from_millimeters(S::c(millimeters)),
    };
    let layers = [layer("insulating brick 26", brick_mm), layer("fiber blanket", 50.0), layer("steel sheet", 1.5)];
    let body = Body::Round {
        inner_radius: Length::from_millimeters(S::c(150.0)),
        length: Length::from_millimeters(S::c(550.0)),
    };
    let pressure = AbsolutePressure::from_hectopascals(S::c(835.0));
    let room = Surroundings::shell(celsius(20.0), pressure, Length::from_millimeters(S::c(550.0)));
    let vent = Opening::new(Area::from_square_centimeters(S::c(60.0)), Length::from_millimeters(S::c(125.0))).unwrap();
    Chamber::new(&[(Wall::new(&layers, body).unwrap(), room)], &[vent], TemperatureDifference::from_kelvin(S::c(50.0)))
        .unwrap()
}

/// A round number for propane in air: nothing left at 2 200 K, all at 300 K.
fn available<S: Scalar>(flue: Temperature<S>) -> S {
    (S::c(2200.0) - flue.kelvin()) / S::c(1900.0)
}

fn fire<S: Scalar>(kilowatts: f64) -> NetHeatRate<S> {
    NetHeatRate::from_kilowatts(S::c(kilowatts))
}

fn nothing<S: Scalar>() -> Power<S> {
    Power::from_watts(S::zero())
}

#[test]
fn energy_closes_in_every_part_of_an_firing() {
    fn holds<S: Scalar>(closes: f64) {
        let chamber = chamber::<S>(75.0);
        let mut warming = Warming::cold(&chamber).unwrap();
        let minutes = |value: f64| Duration::from_minutes(S::c(value));
        let air = MassFlow::from_grams_per_second(S::c(5.0));
        let legs = [
            warming.warm_up(fire(26.0), celsius(1200.0), available).unwrap(),
            warming.hold(celsius(1200.0), minutes(90.0), Power::from_watts(S::c(2000.0)), available).unwrap(),
            warming.cool_to(celsius(760.0), MassFlow::from_grams_per_second(S::zero())).unwrap(),
            warming.cool_to(celsius(300.0), air).unwrap(),
        ];
        for (index, leg) in legs.iter().enumerate() {
            assert!(leg.closing_error().to_f64() < closes, "leg {index}: {leg:?}");
            assert!(leg.time.seconds() > S::one() && leg.shell >= S::zero(), "leg {index}: {leg:?}");
        }
        let stored: f64 = legs.iter().map(|leg| leg.stored.to_f64()).sum();
        assert!((stored / warming.stored().to_f64() - 1.0).abs() < 10.0 * closes);
    }
    holds::<f64>(ENERGY_CLOSES);
    holds::<f32>(10.0 * ENERGY_CLOSES);
}

#[test]
fn an_firing_in_single_precision_is_that_in_double() {
    fn run<S: Scalar>() -> [f64; 5] {
        let chamber = chamber::<S>(75.0);
        let mut warming = Warming::cold(&chamber).unwrap();
        let up = warming.warm_up(fire(26.0), celsius(1200.0), available).unwrap();
        let hold = warming
            .hold(celsius(1200.0), Duration::from_minutes(S::c(60.0)), Power::from_watts(S::c(2000.0)), available)
            .unwrap();
        let down = warming.cool_to(celsius(760.0), MassFlow::from_grams_per_second(S::zero())).unwrap();
        [up.time.seconds(), up.stored, hold.mean_fire().watts(), down.time.seconds(), down.outside.kelvin()]
            .map(Scalar::to_f64)
    }
    for (double, single) in run::<f64>().into_iter().zip(run::<f32>()) {
        assert!((single / double - 1.0).abs() < SINGLE_PRECISION_TRANSIENT, "{single} {double}");
    }
}

#[test]
fn a_lined_furnace_holds_with_several_times_less_than_it_warms_up_with_and_reignites_for_minutes() {
    // Common practice, no source: orders of magnitude. Numbers are held by the rows of `reference/heating.csv` and by
    // the balance of what enters and what is stored.
    let chamber = chamber::<f64>(75.0);
    let holding = chamber.fire_for(celsius(1200.0), nothing(), available).unwrap();
    let mut warming = Warming::cold(&chamber).unwrap();
    let up = warming.warm_up(fire(26.0), celsius(1200.0), available).unwrap();
    assert!(26e3 / holding.fire.watts() > 2.5, "{holding:?}");
    assert!((5.0..60.0).contains(&up.time.minutes()), "{up:?}");
    warming.hold(celsius(1200.0), Duration::from_minutes(60.0), nothing(), available).unwrap();
    let reignition = celsius(REIGNITES_ABOVE_CELSIUS);
    let down = warming.cool_to(reignition, MassFlow::from_grams_per_second(0.0)).unwrap();
    assert!((2.0..120.0).contains(&down.time.minutes()), "{down:?}");
    println!("hold {holding:?}\nup {up:?}\ndown {down:?}");
}

#[test]
fn more_fire_is_hotter_and_the_balance_is_its_own_inverse() {
    let chamber = chamber::<f64>(75.0);
    let mut before = 0.0;
    for kilowatts in [1.0, 2.0, 4.0, 8.0, 12.0, 18.0, 26.0] {
        let reached = chamber.temperature_for(fire(kilowatts), nothing(), available).unwrap();
        assert!(reached.chamber.kelvin() > before);
        before = reached.chamber.kelvin();
        let used = reached.walls.watts() + reached.openings.watts() + reached.flue.watts();
        assert!((used / reached.fire.watts() - 1.0).abs() < 1e-9, "{reached:?}");
        let back = chamber.fire_for(reached.chamber, nothing(), available).unwrap();
        assert!((back.fire.kilowatts() / kilowatts - 1.0).abs() < 1e-9, "{back:?}");
        let single = self::chamber::<f32>(75.0).temperature_for(fire(kilowatts), nothing(), available).unwrap();
        assert!((single.chamber.kelvin().to_f64() / before - 1.0).abs() < 1e-4);
    }
    assert!(chamber.fire_for(celsius(1850.0), nothing(), available).is_ok());
    // Hotter than the flame: nothing is left.
    let refused = chamber.fire_for(celsius(1950.0), nothing(), available);
    assert!(matches!(refused, Err(Error::NoSolution { input: Input::AvailableHeat, .. })), "{refused:?}");
    // A fire too small says what it reaches.
    let mut warming = Warming::cold(&chamber).unwrap();
    let Err(Error::NoSolution { input: Input::ChamberTemperature, nearest }) =
        warming.warm_up(fire(2.0), celsius(1200.0), available)
    else {
        panic!("2 kW do not reach 1200 C")
    };
    let steady = chamber.temperature_for(fire(2.0), nothing(), available).unwrap().chamber.kelvin();
    assert!((f64::from(nearest) / steady - 1.0).abs() < 0.02, "{nearest} {steady}");
}

#[test]
fn more_brick_is_cooler_outside_and_hotter_within_and_a_long_hold_is_the_steady_wall() {
    let mut before = (f64::INFINITY, 0.0, f64::INFINITY);
    for brick in [30.0, 60.0, 90.0, 150.0, 250.0] {
        let chamber = chamber::<f64>(brick);
        let (wall, room) = &chamber.walls()[0];
        let steady = wall.steady(celsius(1200.0), room).unwrap();
        let middle = wall.temperature_at(&steady, Length::from_millimeters(20.0)).unwrap();
        let now = (steady.heat.watts(), middle.kelvin(), steady.shell().kelvin());
        assert!(now.0 < before.0 && now.1 > before.1 && now.2 < before.2, "{brick}: {now:?} {before:?}");
        before = now;
        // What enters leaves, and each face is cooler than the one before it.
        let lost = wall.outer_area().square_meters() * room.heat_flux(steady.shell());
        assert!((lost / steady.heat.watts() - 1.0).abs() < 1e-9);
        assert!(steady.faces.windows(2).all(|pair| pair[1].kelvin() < pair[0].kelvin()));
    }
    let chamber = chamber::<f64>(75.0);
    let (wall, room) = &chamber.walls()[0];
    let steady = wall.steady(celsius(1200.0), room).unwrap();
    let mut warming = Warming::cold(&chamber).unwrap();
    warming.hold(celsius(1200.0), Duration::from_hours(12.0), nothing(), available).unwrap();
    let leg = warming.hold(celsius(1200.0), Duration::from_hours(12.0), nothing(), available).unwrap();
    let through = leg.shell / leg.time.seconds();
    assert!((through / steady.heat.watts() - 1.0).abs() < 5e-3, "{through} {steady:?}");
    assert!((leg.outside.kelvin() - steady.shell().kelvin()).abs() < 0.5);
}

#[test]
fn a_layer_too_hot_for_its_material_is_named() {
    let layer = |key: &str, millimeters| Layer {
        material: Material::named(key).unwrap(),
        thickness: Length::from_millimeters(millimeters),
    };
    let room = chamber::<f64>(75.0).walls()[0].1;
    let steady = |brick: f64, hot| {
        let body = Body::Flat { area: Area::from_square_meters(1.0) };
        let layers = [layer("insulating brick 26", brick), layer("calcium silicate board", 50.0)];
        Wall::new(&layers, body).unwrap().steady(celsius(hot), &room).unwrap()
    };
    assert_eq!(steady(150.0, 1200.0).too_hot, None);
    assert_eq!(steady(150.0, 1450.0).too_hot, Some(0));
    assert_eq!(steady(20.0, 1300.0).too_hot, Some(1));
    let limits: Vec<f64> = MATERIALS.iter().map(|data| data.limit_celsius).collect();
    assert!(limits.iter().all(|limit| *limit >= 500.0));
}

#[test]
fn a_crucible_takes_the_heat_of_metal_and_crucible_and_longer_with_a_thicker_wall() {
    let charge = |wall: f64| Charge {
        substance: Substance::named("bell bronze").unwrap(),
        mass: Mass::from_kilograms(12.0),
        crucible: Some(Crucible {
            substance: Substance::named("clay graphite").unwrap(),
            mass: Mass::from_kilograms(5.0),
            wall: Length::from_millimeters(wall),
            area: Area::from_square_meters(0.13),
        }),
    };
    let melt = |wall| charge(wall).melt(celsius(1300.0), celsius(20.0), celsius(1100.0), 30.0).unwrap();
    let own = charge(15.0).heat(celsius(20.0), celsius(1100.0)).unwrap();
    // By hand: 12 kg (0.395 * 778 + 179 + 0.46 * 302 kJ/kg) = 7.5 MJ, crucible 5 kg * 1.17 * 1080 = 6.3 MJ.
    assert!((own / 13.8e6 - 1.0).abs() < 0.05, "{own}");
    let thin = melt(5.0);
    assert!(thin.heat > own && thin.heat < 1.1 * own, "{thin:?}");
    assert!(melt(15.0).time.seconds() > thin.time.seconds());
    assert!(melt(30.0).time.seconds() > melt(15.0).time.seconds());
    println!("{:?}", melt(15.0));
}

/// Numbers that cover the unit cube evenly: the additive recurrence of the golden ratio's relatives.
fn cover(count: u32) -> impl Iterator<Item = [f64; 8]> {
    (1..=count).map(|index| {
        let step = |power: i32| (f64::from(index) / 1.085_070_245_491_451_f64.powi(power)).fract();
        [1, 2, 3, 4, 5, 6, 7, 8].map(step)
    })
}

#[test]
fn every_accepted_wall_has_an_answer_in_both_number_types() {
    fn steady<S: Scalar>(at: &[f64; 8], keys: [&str; 2]) -> [f64; 3] {
        // From the thinnest to the thickest, by ratio.
        let thickness = |share: f64| Length::from_meters(S::c(0.2e-3 * 5000.0_f64.powf(share)));
        let layer = |key, share| Layer { material: Material::named(key).unwrap(), thickness: thickness(share) };
        let body = if at[2] < 0.5 {
            Body::Flat { area: Area::from_square_meters(S::c(1e-3 * 1e5_f64.powf(at[3]))) }
        } else {
            let inner_radius = Length::from_meters(S::c(0.006 * 800.0_f64.powf(at[3])));
            Body::Round { inner_radius, length: Length::from_meters(S::c(0.02 + 9.0 * at[4])) }
        };
        let pressure = AbsolutePressure::from_pascals(S::c(60_000.0 + 50_000.0 * at[5]));
        let mut room =
            Surroundings::shell(celsius(-30.0 + 80.0 * at[6]), pressure, Length::from_meters(S::c(0.01 + 9.0 * at[4])));
        room.emissivity = S::c(at[5]);
        let wall = Wall::new(&[layer(keys[0], at[0]), layer(keys[1], at[1])], body).unwrap();
        let hot = Temperature::from_kelvin(S::c(room.air.kelvin().to_f64() + 1.0 + (2290.0 - 330.0) * at[7]));
        let steady = wall.steady(hot, &room).unwrap();
        [steady.heat.watts(), steady.faces[1].kelvin(), steady.shell().kelvin()].map(Scalar::to_f64)
    }
    for (index, at) in cover(4000).enumerate() {
        let keys = [index, index / MATERIALS.len()].map(|index| MATERIALS[index % MATERIALS.len()].key);
        let (double, single) = (steady::<f64>(&at, keys), steady::<f32>(&at, keys));
        assert!(double.iter().all(|value| value.is_finite() && *value > 0.0), "{at:?} {keys:?} {double:?}");
        assert!(double[1] >= double[2] - 1e-9, "{double:?}");
        for (name, (double, single)) in ["heat", "face", "shell"].iter().zip(double.into_iter().zip(single)) {
            // A wall a kelvin warmer than its room loses what rounding leaves of that kelvin.
            let tolerance = if *name == "heat" { 1e-3 } else { 1e-4 };
            assert!((single / double - 1.0).abs() < tolerance, "{name} {single} {double} {at:?} {keys:?}");
        }
    }
}

#[test]
fn every_accepted_charge_has_its_heat_and_its_time() {
    use jetwright::furnace::{Piece, SUBSTANCES, Shape, Soak, heating_time};
    for (index, at) in cover(150).enumerate() {
        let data = &SUBSTANCES[index % SUBSTANCES.len()];
        let substance: Substance = Substance::named(data.key).unwrap();
        let start: Temperature = celsius(-30.0 + 80.0 * at[0]);
        let target: Temperature = celsius(100.0 + (data.melting.0 - 101.0) * at[1]);
        let chamber = Temperature::from_kelvin((target.kelvin() + 2.0 + 900.0 * at[2]).min(2300.0));
        let size = Length::from_meters(1e-3 * 500.0_f64.powf(at[3]));
        let shape = if at[4] < 0.5 { Shape::Slab { thickness: size } } else { Shape::Round { diameter: size } };
        let soak = Soak { chamber, start, target, film_coefficient: 5.0 + 200.0 * at[5], emissivity: at[6] };
        let found = heating_time(&Piece { substance: substance.clone(), shape }, &soak).unwrap();
        assert!(found.time.seconds() > 0.0 && found.time.seconds().is_finite(), "{soak:?} {shape:?}");
        // The middle is there, so the whole holds at least what brings a kilogram there.
        let least = substance.heat(start, target);
        assert!(found.heat > 0.995 * least, "{found:?} {least} {soak:?} {shape:?} {}", data.key);
        assert!(found.surface.kelvin() >= target.kelvin() - 0.5 && found.surface.kelvin() <= chamber.kelvin());
    }
}
