//! Furnaces and contents of the cases.

use heapless::Vec;
use jetwright::furnace::Body;
use jetwright::furnace::coupled::{
    Build, Chain, Content, Drive, End, Films, Firing, Furnace, LID_EXCHANGE, Medium, Metal, OPENING_DISCHARGE, Opening,
    Passed, Radiation, Stream, Until,
};
use jetwright::quantity::Area;

/// Room of every case, K.
pub const ROOM: f64 = 293.15;

/// Room, films and gas of the simple cases, without walls.
pub fn simple(zones: usize) -> Furnace {
    Furnace {
        builds: Vec::new(),
        openings: Vec::new(),
        vents: Vec::new(),
        volume: 0.028,
        stream: Stream::linear(ROOM, 2200.0, 1100.0, 3.789e-7, Radiation::gray(0.5)),
        zones,
        films: Films { fired: 20.0, blown: 20.0, off: 8.0 },
        room: ROOM,
        pressure: 101_325.0,
        discharge: OPENING_DISCHARGE,
        lid_exchange: LID_EXCHANGE,
    }
}

/// A flat build of one plain material with a linear film outside.
pub fn flat(area: f64, plain: (f64, f64, f64), thickness: f64) -> Build {
    let (density, conductivity, heat) = plain;
    let body = Body::Flat { area: Area::from_square_meters(area) };
    let layer = (Medium::Plain(density, conductivity, heat), thickness);
    Build { chain: Chain::wall(&[layer], &body, End::Film(area, 15.0, ROOM)), area, emissivity: 0.8 }
}

/// The wall of the simple cases.
pub fn wall(area: f64) -> Build {
    flat(area, (800.0, 0.25, 1000.0), 0.1)
}

/// Their opening.
pub fn opening() -> Opening {
    Opening { area: 0.006, passage: 0.6 }
}

/// A crucible full of a simple metal.
pub fn crucible() -> Content {
    let metal = Medium::Metal(Metal { solid: 400.0, melting: (1270.0, 1280.0), latent: 200e3, liquid: 500.0 });
    let wall = Medium::Plain(1.0, 15.0, 1100.0);
    Content {
        chain: Chain::crucible(&wall, 4.0, 0.015, 0.12, 300.0, &metal, 10.0),
        area: 0.12,
        emissivity: 0.85,
        volume: 0.004,
    }
}

pub fn fire(firing: &mut Firing<'_>, heat: f64, until: Until) -> Passed {
    firing.run(&Drive::Fire { heat, leak: 0.0 }, until).unwrap()
}

pub fn keep(firing: &mut Firing<'_>, chamber: f64, most: f64, until: Until) -> Passed {
    firing.run(&Drive::Keep { chamber, fire: (0.0, most) }, until).unwrap()
}

/// Energy closes: what burns is what leaves and what stays.
pub fn closes(passed: &Passed) {
    let ledger = passed.ledger;
    let whole = ledger.fuel.max(ledger.stored.abs());
    let left = ledger.fuel - ledger.flue - ledger.openings - ledger.shell - ledger.stored;
    assert!(left.abs() < 1e-3 * whole, "{left} of {whole}: {ledger:?}");
}

pub fn near(ours: f64, theirs: f64, share: f64, what: &str) {
    assert!((ours / theirs - 1.0).abs() < share, "{what}: {ours} for {theirs}");
}
