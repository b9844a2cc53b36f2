//! A coupled firing of four hours and more, and a forge's twelve bars, in an invented furnace of the bell foundry.

use divan::Bencher;
use heapless::Vec;
use jetwright::furnace::coupled::{
    Build, Chain, Content, Drive, End, Films, Firing, Furnace, LID_EXCHANGE, Medium, OPENING_DISCHARGE, Opening, Place,
    Stream, Until, Vent,
};
use jetwright::furnace::{Body, Material, Substance, Surroundings};
use jetwright::gas::{Gas, Species};
use jetwright::quantity::{AbsolutePressure, Length, Temperature};
use jetwright::{Scalar, Site};

const ROOM: f64 = 293.15;
const SET: f64 = 1523.15;

fn furnace<S: jetwright::Float>() -> Furnace<S> {
    let pressure = AbsolutePressure::from_pascals(S::c(83_528.0));
    let room = Temperature::from_kelvin(S::c(ROOM));
    let site = Site::at_station_pressure(pressure, room, S::c(0.4)).expect("a site");
    let layer = |key, meters| (Medium::lining(&Material::named(key).expect("a material")), S::c(meters));
    let layers = [layer("insulating brick 26", 0.075), layer("fiber blanket", 0.05), layer("steel sheet", 0.0015)];
    let (radius, length) = (S::c(0.15), S::c(0.5437));
    let body = Body::Round { inner_radius: Length::from_meters(radius), length: Length::from_meters(length) };
    let around = S::c(2.0 * core::f64::consts::PI) * length;
    let shell = Surroundings::shell(room, pressure, Length::from_meters(S::c(0.5)));
    let chain = Chain::wall(&layers, &body, End::Room(around * (radius + S::c(0.1265)), shell));
    let (area, place) = (S::c(60e-4), Place::Lid(S::c(0.4)));
    Furnace {
        builds: [Build { chain, area: around * radius, emissivity: S::c(0.75) }].into_iter().collect(),
        openings: [Opening { area, passage: S::c(0.55) }].into_iter().collect(),
        vents: Vec::from_iter([Vent { area, place }]),
        volume: S::c(0.0283),
        stream: Stream::new(&Gas::from(Species::Propane), &site, S::c(1.05)).expect("burns"),
        zones: 2,
        films: Films { fired: S::c(20.0), blown: S::c(20.0), off: S::c(8.0) },
        room: S::c(ROOM),
        pressure: S::c(83_528.0),
        discharge: S::c(OPENING_DISCHARGE),
        lid_exchange: S::c(LID_EXCHANGE),
    }
}

fn fire<S: Scalar>() -> Drive<S> {
    Drive::Fire { heat: S::c(22.5e3), leak: S::zero() }
}

fn keep<S: Scalar>() -> Drive<S> {
    Drive::Keep { chamber: S::c(SET), fire: (S::zero(), S::c(22.5e3)) }
}

#[divan::bench(types = [f64, f32])]
fn four_hours<S: jetwright::Float>(bencher: Bencher) {
    let furnace = furnace::<S>();
    let run = || {
        let mut firing = Firing::cold(&furnace);
        firing.run(&fire(), Until::ChamberRisesTo(S::c(SET))).expect("warms up");
        let kept = firing.run(&keep(), Until::Time(S::c(14_400.0))).expect("keeps");
        firing.run(&Drive::Off { draft: true }, Until::ChamberFallsTo(S::c(1033.15))).expect("cools");
        kept.fire
    };
    // 5 953 W: an independent stiff solution of the same equations.
    assert!((run().to_f64() / 5953.0 - 1.0).abs() < 0.02, "{}", run().to_f64());
    bencher.bench(run);
}

#[divan::bench]
fn twelve_bars(bencher: Bencher) {
    let furnace = furnace::<f64>();
    let steel = Medium::Substance(Substance::named("steel").expect("a substance"));
    let (diameter, length) = (0.03, 0.3);
    let area = core::f64::consts::PI * diameter * length;
    let chain = Chain::bar(&steel, diameter, length);
    let bar = Content { chain, area, emissivity: 0.8, volume: 0.25 * area * diameter };
    let run = || {
        let mut firing = Firing::cold(&furnace);
        firing.run(&fire(), Until::ChamberRisesTo(SET)).expect("warms up");
        (0..12).fold(0.0, |sum, _| {
            firing.put(&bar, ROOM).expect("has room");
            let time = firing.run(&keep(), Until::CoreRisesTo(1400.0)).expect("heats").time;
            firing.take();
            sum + time
        })
    };
    assert!(run() > 12.0 * 60.0, "{}", run());
    bencher.bench(run);
}
