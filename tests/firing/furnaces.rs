//! Furnaces of the project's own materials, with radiating products and draft.

use super::cases::{ROOM, closes, fire, keep, near};
use heapless::Vec;
use jetwright::Site;
use jetwright::furnace::coupled::{
    Build, Chain, Content, Drive, End, Films, Firing, Furnace, LID_EXCHANGE, Medium, OPENING_DISCHARGE, Opening, Place,
    Stream, Unsure, Until, Vent, bounded,
};
use jetwright::furnace::{Body, Material, Substance, Surroundings};
use jetwright::gas::{Gas, Species};
use jetwright::quantity::{AbsolutePressure, Area, Length, Temperature};

fn stream(fuel: Species, pressure: f64) -> Stream {
    let air = Temperature::from_kelvin(ROOM);
    // Water in the air as in the cases: a mole fraction of 0.0098.
    let site = |humidity| Site::at_station_pressure(AbsolutePressure::from_pascals(pressure), air, humidity).unwrap();
    let humidity = 0.5 * 0.0098 / site(0.5).water_fraction();
    Stream::new(&Gas::from(fuel), &site(humidity), 1.05).unwrap()
}

fn furnace(fuel: Species, pressure: f64, volume: f64) -> Furnace {
    Furnace {
        builds: Vec::new(),
        openings: Vec::new(),
        vents: Vec::new(),
        volume,
        stream: stream(fuel, pressure),
        zones: 2,
        films: Films { fired: 20.0, blown: 20.0, off: 8.0 },
        room: ROOM,
        pressure,
        discharge: OPENING_DISCHARGE,
        lid_exchange: LID_EXCHANGE,
    }
}

fn build(body: Body, layers: &[(&str, f64)], pressure: f64) -> Build {
    let made: std::vec::Vec<(Medium, f64)> =
        layers.iter().map(|&(name, mm)| (Medium::lining(&Material::named(name).unwrap()), 1e-3 * mm)).collect();
    let thickness = 1e-3 * layers.iter().map(|layer| layer.1).sum::<f64>();
    let (area, outer) = match body {
        Body::Flat { area } => (area.square_meters(), area.square_meters()),
        Body::Round { inner_radius, length } => {
            let around = 2.0 * std::f64::consts::PI * length.meters();
            (around * inner_radius.meters(), around * (inner_radius.meters() + thickness))
        }
    };
    let room = Surroundings::shell(
        Temperature::from_kelvin(ROOM),
        AbsolutePressure::from_pascals(pressure),
        Length::from_meters(0.5),
    );
    Build { chain: Chain::wall(&made, &body, End::Room(outer, room)), area, emissivity: 0.75 }
}

fn round(radius: f64, length: f64) -> Body {
    Body::Round { inner_radius: Length::from_meters(radius), length: Length::from_meters(length) }
}

fn flat(area: f64) -> Body {
    Body::Flat { area: Area::from_square_meters(area) }
}

fn open(furnace: &mut Furnace, area: f64, passage: f64, place: Place) {
    furnace.openings.push(Opening { area, passage }).unwrap();
    furnace.vents.push(Vent { area, place }).unwrap();
}

pub fn casting() -> Furnace {
    let mut made = furnace(Species::Propane, 83_528.0, 0.0283);
    let layers = [("insulating brick 26", 75.0), ("fiber blanket", 50.0), ("steel sheet", 1.5)];
    made.builds.push(build(round(0.15, 0.5437), &layers, 83_528.0)).unwrap();
    open(&mut made, 60e-4, 0.55, Place::Lid(0.4));
    made
}

fn bronze() -> Content {
    let wall = Medium::Substance(Substance::named("clay graphite").unwrap());
    let metal = Medium::Substance(Substance::named("bell bronze").unwrap());
    Content {
        chain: Chain::crucible(&wall, 5.0, 0.015, 0.13, 300.0, &metal, 12.0),
        area: 0.13,
        emissivity: 0.85,
        volume: 0.0045,
    }
}

const DRAFT: Drive = Drive::Off { draft: true };

#[test]
fn a_casting_furnace() {
    let furnace = casting();
    let mut firing = Firing::cold(&furnace);
    let up = fire(&mut firing, 22.5e3, Until::ChamberRisesTo(1523.15));
    let (mut charged, mut later, mut kept) = (firing.clone(), firing.clone(), firing.clone());
    let held = keep(&mut firing, 1523.15, 22.5e3, Until::Time(2400.0));
    let mut cold = firing.clone();
    let off = firing.run(&DRAFT, Until::ChamberFallsTo(1033.15)).unwrap();
    println!("P10: {} {} {} {:?} {:?} {:?}", up.time, held.fire, off.time, up.steps, held.steps, off.steps);
    for passed in [&up, &held, &off] {
        closes(passed);
    }
    near(up.time, 1309.0, 0.01, "warm-up");
    near(held.fire, 11_723.0, 0.015, "keeping after 40 min");
    near(off.time, 1091.0, 0.01, "re-ignition");

    charged.put(&bronze(), ROOM).unwrap();
    let melted = keep(&mut charged, 1523.15, 22.5e3, Until::CoreRisesTo(1373.15));
    let off = charged.run(&DRAFT, Until::ChamberFallsTo(1033.15)).unwrap();
    println!("P11: {} {} {} {:?}", melted.time, melted.lowest, off.time, melted.steps);
    closes(&melted);
    closes(&off);
    near(melted.time, 2149.0, 0.01, "12 kg");
    assert!((melted.lowest - 1120.0).abs() < 5.0);
    near(off.time, 3280.0, 0.01, "re-ignition with the charge");

    cold.put(&bronze(), ROOM).unwrap();
    later.put(&bronze(), ROOM).unwrap();
    let off = cold.run(&DRAFT, Until::ChamberFallsTo(1033.15)).unwrap();
    println!("P17: {} {:?}", off.time, off.core);
    near(off.time, 86.9, 0.01, "re-ignition just after a cold charge");
    assert!((off.core.unwrap() - 347.0).abs() < 5.0);
    let held = keep(&mut later, 1523.15, 22.5e3, Until::Time(1200.0));
    let off = later.run(&DRAFT, Until::ChamberFallsTo(1033.15)).unwrap();
    println!("P18: {} {:?} {}", held.chamber, held.core, off.time);
    assert!((held.chamber - 1311.0).abs() < 5.0 && (held.core.unwrap() - 1106.0).abs() < 5.0);
    near(off.time, 704.0, 0.01, "re-ignition with a half-molten charge");

    let mut leaky = furnace.clone();
    leaky.vents.push(Vent { area: 5e-4, place: Place::Gap(0.0) }).unwrap();
    let mut firing = Firing::cold(&leaky);
    fire(&mut firing, 22.5e3, Until::ChamberRisesTo(1523.15));
    let held = keep(&mut firing, 1523.15, 22.5e3, Until::Time(14_400.0));
    let tight = keep(&mut kept, 1523.15, 22.5e3, Until::Time(14_400.0));
    println!("P16: {} {} {}", held.fire, tight.fire, held.ledger.entered / held.time);
    near(held.fire, 7_735.0, 0.02, "keeping with a leak");
    near(tight.fire, 5_953.0, 0.02, "keeping without");
}

#[test]
fn a_forge_of_brick_with_a_dense_floor() {
    for (open_front, times) in [(false, [1854.0, 4_249.0, 1695.0]), (true, [1906.0, 9_204.0, 199.5])] {
        let mut made = furnace(Species::Propane, 101_325.0, 0.00585);
        made.builds.push(build(flat(0.1545), &[("insulating brick 26", 114.0)], 101_325.0)).unwrap();
        let floor = [("dense castable", 25.0), ("insulating brick 26", 76.0)];
        made.builds.push(build(flat(0.045), &floor, 101_325.0)).unwrap();
        if open_front {
            open(&mut made, 0.0195, 0.6, Place::Upright(0.0, 0.13));
        } else {
            open(&mut made, 75e-4, 0.5, Place::Upright(0.0, 0.05));
        }
        let set = if open_front { 1273.15 } else { 1473.15 };
        let mut firing = Firing::cold(&made);
        let up = fire(&mut firing, 12e3, Until::ChamberRisesTo(set));
        let held = keep(&mut firing, set, 12e3, Until::Time(if open_front { 3600.0 } else { 7200.0 }));
        let off = firing.run(&DRAFT, Until::ChamberFallsTo(1033.15)).unwrap();
        println!(
            "P12/15: {} {} {} gas {} {:?} {:?} {:?}",
            up.time, held.fire, off.time, up.gas, up.steps, held.steps, off.steps
        );
        for passed in [&up, &held, &off] {
            closes(passed);
        }
        near(up.time, times[0], 0.02, "warm-up");
        near(held.fire, times[1], 0.02, "keeping");
        near(off.time, times[2], 0.02, "re-ignition");
    }
}

#[test]
fn a_forge_of_castable_and_a_kiln() {
    let mut forge = furnace(Species::Propane, 101_325.0, 0.011);
    let layers = [("dense castable", 50.0), ("fiber blanket", 25.0), ("steel sheet", 2.0)];
    forge.builds.push(build(round(0.1, 0.35), &layers, 101_325.0)).unwrap();
    forge.builds.push(build(flat(0.0528), &layers, 101_325.0)).unwrap();
    open(&mut forge, 100e-4, 0.68, Place::Upright(0.03, 0.13));
    let mut firing = Firing::cold(&forge);
    let up = fire(&mut firing, 20e3, Until::ChamberRisesTo(1473.15));
    let held = keep(&mut firing, 1473.15, 20e3, Until::Time(7200.0));
    let off = firing.run(&DRAFT, Until::ChamberFallsTo(1033.15)).unwrap();
    println!("P13: {} {} {} {:?}", up.time, held.fire, off.time, up.steps);
    near(up.time, 7042.0, 0.02, "warm-up");
    near(off.time, 4711.0, 0.02, "re-ignition");
    near(held.fire, 10_246.0, 0.02, "keeping");

    let mut kiln = furnace(Species::Methane, 101_325.0, 0.3);
    let light = [("insulating brick 26", 114.0), ("fiber blanket", 50.0), ("steel sheet", 1.0)];
    kiln.builds.push(build(flat(2.27), &light, 101_325.0)).unwrap();
    let dense = [("dense fireclay brick", 64.0), ("insulating brick 26", 114.0)];
    kiln.builds.push(build(flat(0.4225), &dense, 101_325.0)).unwrap();
    open(&mut kiln, 144e-4, 0.52, Place::Lid(0.71));
    let mut firing = Firing::cold(&kiln);
    let up = fire(&mut firing, 60e3, Until::ChamberRisesTo(1513.15));
    let held = keep(&mut firing, 1513.15, 60e3, Until::Time(1800.0));
    let off = firing.run(&DRAFT, Until::ChamberFallsTo(1033.15)).unwrap();
    println!("P14: {} {} {} {:?}", up.time, held.fire, off.time, up.steps);
    near(up.time, 5078.0, 0.01, "warm-up");
    near(held.fire, 43_192.0, 0.015, "keeping");
    near(off.time, 3376.0, 0.01, "re-ignition");
}

/// The ends of the answers of a casting furnace: what varying each cause alone gave with an independent model
/// (one at a time, in quadrature): warm-up -36/+48 %, keeping 10 to 16 %, re-ignition -17/+23 %, air -23/+37 %.
#[test]
fn a_casting_furnace_is_known_so_well() {
    let plain = casting();
    let conductivity = 0.2;
    let unsure = Unsure { wall_conductivity: conductivity, streams: None };
    let answers = bounded(|change| {
        let furnace = plain.changed(change, &unsure);
        let mut firing = Firing::cold(&furnace);
        let up = firing.run(&Drive::Fire { heat: 22.5e3, leak: 0.0 }, Until::ChamberRisesTo(1523.15))?;
        let keep = Drive::Keep { chamber: 1523.15, fire: (0.0, 22.5e3) };
        let held = firing.run(&keep, Until::Time(2400.0))?;
        Ok([up.time, held.fire, firing.stays_above(1033.15, true)?, firing.air_on(8.06e-3, 813.15)?])
    })
    .unwrap();
    let theirs =
        [("warm-up", (-0.36, 0.48)), ("keep", (-0.13, 0.13)), ("re-ignition", (-0.17, 0.23)), ("air", (-0.23, 0.37))];
    for (answer, (name, ends)) in answers.iter().zip(theirs) {
        let (low, high) = (answer.low / answer.value - 1.0, answer.high / answer.value - 1.0);
        println!("{name}: {:.0} {:+.0} {:+.0} % {:?}", answer.value, 100.0 * low, 100.0 * high, answer.dominant);
        let (below, above) = ends;
        // The independent model took a quarter for the blanket's conductivity: its ends are some parts wider.
        assert!((low - below).abs() < 0.09 && (high - above).abs() < 0.09, "{name}: {low} {high}");
    }
}
