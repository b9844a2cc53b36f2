//! Plain materials and a straight available heat.

use super::cases::{closes, crucible, fire, flat, keep, near, opening, simple, wall};
use jetwright::furnace::coupled::{Chain, Content, Drive, Firing, Medium, Until};

#[test]
fn a_box_warms_up_with_one_zone_and_with_two() {
    for (zones, first, second, flue) in [(1, 272.8, 744.1, 1602.0), (2, 213.4, 607.1, 1538.5)] {
        let mut furnace = simple(zones);
        furnace.builds.push(wall(0.5)).unwrap();
        let mut firing = Firing::cold(&furnace);
        let a = fire(&mut firing, 20e3, Until::ChamberRisesTo(1073.15));
        let b = fire(&mut firing, 20e3, Until::ChamberRisesTo(1473.15));
        println!("P{zones}: {} {} {} steps {:?} {:?}", a.time, b.time, b.gas, a.steps, b.steps);
        closes(&a);
        closes(&b);
        near(a.time, first, 0.01, "first");
        near(b.time, second, 0.01, "second");
        assert!((b.gas - flue).abs() < 5.0);
    }
}

fn with_opening() -> jetwright::furnace::coupled::Furnace {
    let mut furnace = simple(1);
    furnace.builds.push(wall(0.5)).unwrap();
    furnace.openings.push(opening()).unwrap();
    furnace
}

#[test]
fn a_temperature_is_kept() {
    let furnace = with_opening();
    let mut firing = Firing::cold(&furnace);
    let up = fire(&mut firing, 20e3, Until::ChamberRisesTo(1473.15));
    let first = keep(&mut firing, 1473.15, 20e3, Until::Time(600.0));
    let second = keep(&mut firing, 1473.15, 20e3, Until::Time(6600.0));
    println!("P3: {} {} {} {:?} {:?} {:?}", up.time, first.fire, second.fire, up.steps, first.steps, second.steps);
    for passed in [&up, &first, &second] {
        closes(passed);
    }
    near(up.time, 1300.9, 0.01, "warm-up");
    near(first.fire, 14_418.0, 0.015, "fire after 600 s");
    near(second.fire, 7_449.0, 0.015, "fire after 7200 s");
}

#[test]
fn two_builds_cool_each_its_own_way() {
    let mut furnace = simple(1);
    furnace.builds.push(wall(0.4)).unwrap();
    furnace.builds.push(flat(0.1, (2600.0, 1.7, 1050.0), 0.05)).unwrap();
    furnace.openings.push(opening()).unwrap();
    let mut firing = Firing::cold(&furnace);
    let up = fire(&mut firing, 20e3, Until::ChamberRisesTo(1473.15));
    let off = firing.run(&Drive::Off { draft: false }, Until::ChamberFallsTo(1033.15)).unwrap();
    println!("P4: {} {:?} {}", up.time, up.faces, off.time);
    closes(&up);
    closes(&off);
    near(up.time, 3490.0, 0.01, "warm-up");
    near(off.time, 1156.6, 0.01, "cooling");
    assert!((up.faces[0] - 1479.8).abs() < 5.0 && (up.faces[1] - 1445.7).abs() < 5.0);
}

#[test]
fn a_lump_and_a_crucible_are_heated() {
    let furnace = with_opening();
    let mut firing = Firing::cold(&furnace);
    fire(&mut firing, 20e3, Until::ChamberRisesTo(1473.15));
    let mut other = firing.clone();
    let lump =
        Content { chain: Chain::lump(&Medium::Plain(1.0, 1.0, 600.0), 10.0), area: 0.1, emissivity: 0.8, volume: 0.0 };
    firing.put(&lump, 293.15).unwrap();
    let heated = keep(&mut firing, 1473.15, 20e3, Until::CoreRisesTo(1373.15));
    println!("P5: {} lowest {} steps {:?}", heated.time, heated.lowest, heated.steps);
    closes(&heated);
    near(heated.time, 1219.6, 0.01, "lump");
    assert!((heated.lowest - 1102.0).abs() < 5.0);

    other.put(&crucible(), 293.15).unwrap();
    let solid = keep(&mut other, 1473.15, 20e3, Until::CoreRisesTo(1270.0));
    let melting = keep(&mut other, 1473.15, 20e3, Until::CoreRisesTo(1280.0));
    let liquid = keep(&mut other, 1473.15, 20e3, Until::CoreRisesTo(1373.15));
    let off = other.run(&Drive::Off { draft: false }, Until::ChamberFallsTo(1033.15)).unwrap();
    println!("P6: {} {} {} {} {:?}", solid.time, melting.time, liquid.time, off.time, off.core);
    for passed in [&solid, &melting, &liquid, &off] {
        closes(passed);
    }
    near(solid.time, 1450.6, 0.01, "to its solidus");
    near(melting.time, 829.8, 0.01, "melting");
    near(liquid.time, 254.5, 0.01, "to 1100 C");
    near(off.time, 3893.0, 0.01, "cooling");
    assert!((off.core.unwrap() - 1066.0).abs() < 5.0);
}

#[test]
fn air_cools_and_the_wall_climbs_back() {
    let furnace = with_opening();
    let mut firing = Firing::cold(&furnace);
    fire(&mut firing, 20e3, Until::ChamberRisesTo(1473.15));
    keep(&mut firing, 1473.15, 20e3, Until::Time(3600.0));
    let mut other = firing.clone();
    let mut gentle = furnace.clone();
    gentle.films.blown = 8.0;
    let mut firing = firing.into(&gentle);
    let cooled = firing.run(&Drive::Air { flow: 2e-3, draft: false }, Until::ChamberFallsTo(1033.15)).unwrap();
    println!("P7: {} {}", cooled.time, cooled.gas);
    closes(&cooled);
    near(cooled.time, 589.3, 0.01, "2 g/s");
    assert!((cooled.gas - 770.5).abs() < 5.0);
    let blown = other.run(&Drive::Air { flow: 8e-3, draft: false }, Until::Time(600.0)).unwrap();
    let rebound = other.run(&Drive::Off { draft: false }, Until::Time(7200.0)).unwrap();
    println!("P8: {} {} {}", blown.chamber, rebound.highest, rebound.chamber);
    closes(&blown);
    closes(&rebound);
    assert!((blown.chamber - 824.7).abs() < 5.0);
    assert!((rebound.highest - 932.4).abs() < 5.0);
    assert!((rebound.chamber - 678.8).abs() < 5.0);
}
