//! Laws of the coupled furnace over random furnaces: balances, limits, what never gets quicker, other number types.

use heapless::Vec;
use jetwright::furnace::Body;
use jetwright::furnace::coupled::{
    Build, Chain, Content, Drive, End, Films, Firing, Furnace, LID_EXCHANGE, Medium, OPENING_DISCHARGE, Opening,
    Passed, Place, Radiation, Stream, Until, Vent,
};
use jetwright::quantity::Area;
use jetwright::{Dual, Scalar};
use proptest::prelude::*;

use super::cases::{ROOM, closes};

/// What the grid and the steps leave between two runs whose answers are one, relative.
const SAME: f64 = 2e-3;
/// Single precision over hundreds of steps, relative.
const SINGLE: f64 = 1e-2;

/// An invented furnace: walls by area (m2), density, conductivity, thickness; fire (W), opening (m2), gray gas (1/m).
#[derive(Clone, Debug)]
struct Draw {
    walls: std::vec::Vec<[f64; 4]>,
    flux: f64,
    open: f64,
    gray: f64,
    zones: usize,
    front: bool,
}

impl Draw {
    fn area(&self) -> f64 {
        self.walls.iter().map(|wall| wall[0]).sum()
    }

    fn fire(&self) -> f64 {
        self.flux * self.area()
    }

    fn furnace<S: Scalar>(&self, by: S) -> Furnace<S> {
        let mut made = Furnace {
            builds: Vec::new(),
            openings: Vec::new(),
            vents: Vec::new(),
            volume: S::c((self.area() / 6.0).powf(1.5)),
            stream: Stream::linear(
                S::c(ROOM),
                S::c(2200.0),
                S::c(1100.0),
                S::c(3.789e-7),
                Radiation::gray(S::c(self.gray)),
            ),
            zones: self.zones,
            films: Films { fired: S::c(15.0), blown: S::c(15.0), off: S::c(8.0) },
            room: S::c(ROOM),
            pressure: S::c(95_000.0),
            discharge: S::c(OPENING_DISCHARGE),
            lid_exchange: S::c(LID_EXCHANGE),
        };
        for &[area, density, conductivity, thickness] in &self.walls {
            let body = Body::Flat { area: Area::from_square_meters(S::c(area)) };
            let layer = (Medium::Plain(S::c(density), by * S::c(conductivity), S::c(1000.0)), S::c(thickness));
            let end = End::Film(S::c(area), S::c(15.0), S::c(ROOM));
            let chain = Chain::wall(&[layer], &body, end);
            made.builds.push(Build { chain, area: S::c(area), emissivity: S::c(0.8) }).unwrap();
        }
        let area = S::c(self.open * self.area());
        let height = S::c(0.2);
        let place = if self.front { Place::Upright(S::zero(), height) } else { Place::Lid(height) };
        made.openings.push(Opening { area, passage: S::c(0.6) }).unwrap();
        made.vents.push(Vent { area, place }).unwrap();
        made
    }
}

fn draws() -> impl Strategy<Value = Draw> {
    let wall = (0.05..1.0_f64, 2.3..3.4_f64, -0.8..0.2_f64, 0.03..0.12_f64)
        .prop_map(|(area, density, conducts, thick)| [area, 10_f64.powf(density), 10_f64.powf(conducts), thick]);
    (proptest::collection::vec(wall, 1..4), 4e4..1.2e5_f64, 0.003..0.03_f64, 0.1..1.5_f64, 1..4_usize, any::<bool>())
        .prop_map(|(walls, flux, open, gray, zones, front)| Draw { walls, flux, open, gray, zones, front })
}

fn lump<S: Scalar>(mass: f64, area: f64) -> Content<S> {
    let chain = Chain::lump(&Medium::Plain(S::one(), S::one(), S::c(700.0)), S::c(mass));
    Content { chain, area: S::c(area), emissivity: S::c(0.8), volume: S::zero() }
}

fn heated(furnace: &Furnace, heat: f64, kelvin: f64) -> Passed {
    Firing::cold(furnace).run(&Drive::Fire { heat, leak: 0.0 }, Until::ChamberRisesTo(kelvin)).unwrap()
}

/// Time a content takes to 1000 K, put in cold at 1100 K.
fn soaked(draw: &Draw, furnace: &Furnace, content: Option<&Content>, seconds: f64) -> (f64, Passed) {
    let mut firing = Firing::cold(furnace);
    firing.run(&Drive::Fire { heat: draw.fire(), leak: 0.0 }, Until::ChamberRisesTo(1100.0)).unwrap();
    if let Some(content) = content {
        firing.put(content, ROOM).unwrap();
    }
    let keep = Drive::Keep { chamber: 1100.0, fire: (0.0, draw.fire()) };
    let passed = firing.run(&keep, Until::Time(seconds)).unwrap();
    (firing.chamber(), passed)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn energy_closes(draw in draws(), mass in 1.0..40.0_f64) {
        let furnace = draw.furnace(1.0);
        let mut firing = Firing::cold(&furnace);
        let fire = draw.fire();
        firing.put(&lump(mass * draw.area(), 0.2 * draw.area()), ROOM).unwrap();
        for (drive, seconds) in [
            (Drive::Fire { heat: fire, leak: 0.0 }, 900.0),
            (Drive::Keep { chamber: firing.chamber().max(1100.0), fire: (0.0, fire) }, 2400.0),
            (Drive::Air { flow: 4e-7 * fire, draft: true }, 300.0),
            (Drive::Fire { heat: 0.5 * fire, leak: 1e-7 * fire }, 600.0),
            (Drive::Off { draft: true }, 1800.0),
            (Drive::Off { draft: false }, 1800.0),
        ] {
            closes(&firing.run(&drive, Until::Time(seconds)).unwrap());
        }
    }

    #[test]
    fn a_gram_changes_nothing(draw in draws()) {
        let furnace = draw.furnace(1.0);
        let (empty, without) = soaked(&draw, &furnace, None, 1200.0);
        let (full, with) = soaked(&draw, &furnace, Some(&lump(1e-3, 1e-6)), 1200.0);
        prop_assert!((full / empty - 1.0).abs() < SAME, "{full} {empty}");
        prop_assert!((with.ledger.fuel / without.ledger.fuel - 1.0).abs() < SAME);
    }

    #[test]
    fn more_fire_is_never_slower(draw in draws(), more in 1.05..2.0_f64) {
        let furnace = draw.furnace(1.0);
        let (little, much) = (heated(&furnace, draw.fire(), 1100.0), heated(&furnace, more * draw.fire(), 1100.0));
        prop_assert!(much.time < little.time, "{} {}", much.time, little.time);
    }

    #[test]
    fn more_contents_are_never_sooner_hot(draw in draws(), mass in 2.0..30.0_f64) {
        let furnace = draw.furnace(1.0);
        let time = |mass: f64| {
            let mut firing = Firing::cold(&furnace);
            let fire = Drive::Fire { heat: draw.fire(), leak: 0.0 };
            firing.run(&fire, Until::ChamberRisesTo(1100.0)).unwrap();
            firing.put(&lump(mass * draw.area(), 0.2 * draw.area()), ROOM).unwrap();
            firing.run(&fire, Until::CoreRisesTo(1000.0)).unwrap().time
        };
        prop_assert!(time(1.3 * mass) > time(mass));
    }

    #[test]
    fn a_wider_opening_never_keeps_the_walls_hot_longer(draw in draws(), wider in 1.1..3.0_f64) {
        let time = |open: f64| {
            let furnace = Draw { open, ..draw.clone() }.furnace(1.0);
            // Both begin alike: heated with no opening.
            let shut = Draw { open: 0.0, ..draw.clone() }.furnace(1.0);
            let mut firing = Firing::cold(&shut);
            firing.run(&Drive::Fire { heat: draw.fire(), leak: 0.0 }, Until::ChamberRisesTo(1300.0)).unwrap();
            firing.into(&furnace).run(&Drive::Off { draft: true }, Until::ColdestFaceFallsTo(1033.15)).unwrap().time
        };
        prop_assert!(time(wider * draw.open) <= time(draw.open) * (1.0 + 1e-6));
    }

    #[test]
    fn two_equal_builds_are_one_of_the_sum(draw in draws()) {
        let [area, density, conducts, thick] = draw.walls[0];
        let one = Draw { walls: vec![[2.0 * area, density, conducts, thick]], ..draw.clone() };
        let two = Draw { walls: vec![[area, density, conducts, thick]; 2], ..draw.clone() };
        let heat = one.fire();
        let (a, b) = (heated(&one.furnace(1.0), heat, 1200.0), heated(&two.furnace(1.0), heat, 1200.0));
        prop_assert!((a.time / b.time - 1.0).abs() < 1e-6, "{} {}", a.time, b.time);
    }

    #[test]
    fn what_a_long_hold_burns_goes_out_through_walls_and_openings(draw in draws()) {
        let furnace = draw.furnace(1.0);
        let mut firing = Firing::cold(&furnace);
        firing.run(&Drive::Fire { heat: draw.fire(), leak: 0.0 }, Until::ChamberRisesTo(1100.0)).unwrap();
        let keep = Drive::Keep { chamber: 1100.0, fire: (0.0, draw.fire()) };
        firing.run(&keep, Until::Time(3e5)).unwrap();
        let heat = firing.run(&keep, Until::Time(3600.0)).unwrap().ledger;
        prop_assert!(heat.stored.abs() < 2e-3 * heat.fuel, "{heat:?}");
        prop_assert!((heat.fuel - heat.flue - heat.openings - heat.shell).abs() < 4e-3 * heat.fuel, "{heat:?}");
    }

    #[test]
    fn by_convection_alone_each_zone_comes_nearer_by_one_share(
        (film, zones, heat, kelvin) in (1.0..100.0_f64, 1..4_usize, 5e3..5e4_f64, 300.0..1500.0_f64)
    ) {
        let layer = (Medium::Plain(1e4, 1.0, 1e12), 1.0);
        let body = Body::Flat { area: Area::from_square_meters(0.5) };
        let mut furnace = super::cases::simple(zones);
        furnace.stream = Stream::linear(ROOM, 2200.0, 1100.0, 3.789e-7, Radiation::clear());
        let chain = Chain::wall(&[layer], &body, End::Adiabatic);
        furnace.builds.push(Build { chain, area: 0.5, emissivity: 1.0 }).unwrap();
        furnace.films.fired = film;
        furnace.room = kelvin;
        let passed = Firing::cold(&furnace).run(&Drive::Fire { heat, leak: 0.0 }, Until::Time(1.0)).unwrap();
        let units = film * 0.5 * (2200.0 - ROOM) / heat / zones as f64;
        let leaves = kelvin + (2200.0 - kelvin) / (1.0 + units).powi(i32::try_from(zones).unwrap());
        prop_assert!((passed.gas - leaves).abs() < 1e-3, "{} {leaves}", passed.gas);
    }

    #[test]
    fn single_precision_is_double(draw in draws()) {
        fn firing<S: Scalar>(draw: &Draw) -> [f64; 3] {
            let furnace = draw.furnace(S::one());
            let mut firing = Firing::cold(&furnace);
            let heat = S::c(draw.fire());
            let up = firing.run(&Drive::Fire { heat, leak: S::zero() }, Until::ChamberRisesTo(S::c(1100.0))).unwrap();
            let keep = Drive::Keep { chamber: S::c(1100.0), fire: (S::zero(), heat) };
            let kept = firing.run(&keep, Until::Time(S::c(1800.0))).unwrap();
            let off = firing.run(&Drive::Off { draft: true }, Until::Time(S::c(600.0))).unwrap();
            [up.time.to_f64(), kept.fire.to_f64(), off.chamber.to_f64()]
        }
        for (single, double) in firing::<f32>(&draw).into_iter().zip(firing::<f64>(&draw)) {
            prop_assert!((single / double - 1.0).abs() < SINGLE, "{single} {double}");
        }
    }

    #[test]
    fn derivatives_are_those_of_the_answers(draw in draws()) {
        fn chamber<S: Scalar>(draw: &Draw, by: S) -> S {
            let furnace = draw.furnace(S::one());
            let mut firing = Firing::cold(&furnace);
            let heat = S::c(draw.fire()) * by;
            firing.run(&Drive::Fire { heat, leak: S::zero() }, Until::Time(S::c(900.0))).unwrap().chamber
        }
        let [by] = Dual::<f64, 1>::variables([1.0]);
        let exact = chamber(&draw, by).partials[0];
        let step = 0.02;
        let about = (chamber(&draw, 1.0 + step) - chamber(&draw, 1.0 - step)) / (2.0 * step);
        // The steps of time fall differently either side, each with its own error of up to a kelvin: over some 300 K.
        prop_assert!((exact - about).abs() < 0.02 * exact.abs(), "{exact} {about}");
    }
}
