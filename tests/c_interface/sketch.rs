//! The sketch of the library folder, built as a board builds it but for the board, and run on simulated readings.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use jetwright::control::{MadeFor, Setpoint, SetpointTable};
use jetwright::gas::{Gas, Species};
use jetwright::orifice::{BoreLength, BoreShape, Jet, Supply};
use jetwright::quantity::{AbsolutePressure, GaugePressure, Length, NetHeatRate, Temperature};

use super::host::numbers;
use super::{root, run, static_library};

/// What a cubic metre of air burns at the target air ratio of 1.05, and the air of the open damper, as the sketch and
/// its board have them.
const AIR_HEAT: f64 = 2.9e6;
const MOST_AIR: f64 = 9.2e-3;

/// Net heat of the sketch's jet at a gauge reading, W.
fn heat_at(pascals: f64) -> f64 {
    let shape = BoreShape::drilled(BoreLength::Fixed(Length::from_meters(10e-3)));
    let supply = Supply {
        ambient: AbsolutePressure::from_pascals(83_500.0),
        gauge: GaugePressure::from_pascals(pascals),
        back: GaugePressure::from_pascals(0.0),
        temperature: Temperature::from_kelvin(283.15),
    };
    let jet = Jet::new(shape.with_diameter(Length::from_meters(1.5e-3)).unwrap());
    jet.flow(&Gas::from(Species::Propane), &supply).unwrap().heat_net.watts()
}

/// The settings of the sketch's burner: the gauge that gives a heat, and the damper that gives its air.
fn table() -> Vec<u8> {
    let kilowatts = NetHeatRate::from_kilowatts;
    let table = SetpointTable::<17>::build(
        MadeFor { air_ratio: 1.05, burner: 0 },
        kilowatts(9.0),
        kilowatts(24.0),
        15,
        |heat| {
            let (mut low, mut high) = (0.0, 100e3);
            for _ in 0..60 {
                let middle = 0.5 * (low + high);
                if heat_at(middle) < heat.watts() { low = middle } else { high = middle }
            }
            Ok(Setpoint { gauge: GaugePressure::from_pascals(low), air: heat.watts() / AIR_HEAT / MOST_AIR })
        },
    );
    let mut image = vec![0; SetpointTable::<17, f32>::IMAGE_BYTES];
    table.unwrap().to_single().write_image(&mut image).unwrap();
    image
}

/// The sketch with a table beside it.
fn sketch(name: &str, table: &[u8]) -> PathBuf {
    let directory = Path::new(env!("CARGO_TARGET_TMPDIR")).join(name);
    fs::create_dir_all(&directory).unwrap();
    let library = static_library();
    fs::write(
        directory.join("table.h"),
        format!("static const uint8_t TABLE[{}] = {{{}}};\n", table.len(), text(table)),
    )
    .unwrap();
    let (here, program) = (root().join("tests/c_interface"), directory.join("sketch"));
    run(Command::new(std::env::var_os("CXX").unwrap_or("c++".into()))
        .args(["-Wall", "-Wextra", "-Werror", "-pedantic", "-include"])
        .arg(here.join("board.h"))
        .arg("-I")
        .arg(&directory)
        .arg("-I")
        .arg(root().join("examples/c/src"))
        .args(["-x", "c++"])
        .arg(root().join("examples/c/examples/FollowHeat/FollowHeat.ino"))
        .arg(here.join("board.cpp"))
        .args(["-x", "none"])
        .arg(&library)
        .args(["-lm", "-lpthread", "-ldl", "-o"])
        .arg(&program));
    program
}

fn text(bytes: &[u8]) -> String {
    bytes.iter().map(|byte| format!("{byte}, ")).collect()
}

/// One loop: what is driven, and what comes of it.
#[derive(Clone, Copy, Debug)]
struct Loop {
    seconds: f64,
    asks: bool,
    blows: bool,
    gas: f64,
    air: f64,
    gas_w: f64,
    air_w: f64,
}

/// An evening, with a fault or none: pin, what it reads, from when and until when.
fn evening(program: &Path, fault: Option<(i32, i32, f64, f64)>) -> Vec<Loop> {
    let mut command = Command::new(program);
    if let Some((pin, value, from, to)) = fault {
        command.args([pin.to_string(), value.to_string(), from.to_string(), to.to_string()]);
    }
    let printed = String::from_utf8(run(&mut command).stdout).unwrap();
    let lines = numbers(&printed);
    assert_eq!(lines.len(), 1200);
    let read = |line: &Vec<f64>| Loop {
        seconds: line[0],
        asks: line[1] == 1.0,
        blows: line[2] == 1.0,
        gas: line[3],
        air: line[4],
        gas_w: heat_at(line[5]),
        air_w: AIR_HEAT * line[6],
    };
    lines.iter().map(|(_, line)| read(line)).collect()
}

/// The first loop from a time on of which something is so.
fn first(loops: &[Loop], from: f64, so: impl Fn(&Loop) -> bool) -> f64 {
    loops.iter().find(|each| each.seconds >= from && so(each)).map_or(f64::INFINITY, |each| each.seconds)
}

#[test]
fn the_sketch_brings_air_before_gas_and_follows_the_heat() {
    let loops = evening(&sketch("sketch_sound", &table()), None);
    let lit = first(&loops, 0.0, |each| each.asks);
    assert!((40.0..40.2).contains(&lit), "lit at {lit}");
    // Four changes of the 20 L of the chamber have gone through it, and air comes with all gas.
    let before = loops.iter().filter(|each| each.seconds < lit);
    assert!(before.map(|each| each.air_w / AIR_HEAT * 0.1).sum::<f64>() > 0.08);
    assert!(loops.iter().all(|each| each.blows || !each.asks));
    // At 60 s the heat is turned up, at 90 s down.
    let held = loops.iter().find(|each| each.seconds == 59.0).unwrap();
    assert!(first(&loops, 60.0, |each| each.air > held.air) < first(&loops, 60.0, |each| each.gas > held.gas));
    let held = loops.iter().find(|each| each.seconds == 89.0).unwrap();
    assert!(first(&loops, 90.0, |each| each.gas < held.gas) < first(&loops, 90.0, |each| each.air < held.air));
    // The band of the sketch, from the first gas and from the fire on.
    for each in loops.iter().filter(|each| each.gas_w > 0.0) {
        let air_ratio = 1.05 * each.air_w / each.gas_w;
        assert!(air_ratio >= 0.92 && (air_ratio <= 1.25 || each.seconds < 41.0), "{air_ratio}: {each:?}");
    }
    for (seconds, wanted) in [(88.0, 19_995.0), (118.0, 10_005.0)] {
        let there = loops.iter().find(|each| each.seconds == seconds).unwrap();
        // The regulator is set in 255 steps.
        assert!((there.gas_w / wanted - 1.0).abs() < 0.03, "{there:?}");
    }
}

#[test]
fn the_sketch_turns_the_gas_off_on_whatever_reads_badly() {
    let (gauge, air, stop, permitted, clock, stalled) = (14, 15, 4, 5, -1, -2);
    let program = sketch("sketch_faults", &table());
    // Pin, what it reads from 70 s on for 10 s, and how long the gas may burn on.
    for (pin, value, within) in [
        (gauge, 1023, 0.0),
        (gauge, 0, 0.0),
        (air, 1023, 0.0),
        (air, 0, 0.0),
        (permitted, 0, 0.0),
        (stop, 1, 0.0),
        (clock, 700, 0.0),
        // A sensor stands still at what it read: longer than it may.
        (gauge, 321, 5.3),
        (air, 344, 5.3),
        // The air falls away by a third in a second.
        (stalled, 0, 0.5),
    ] {
        let loops = evening(&program, Some((pin, value, 70.0, 80.0)));
        let off = first(&loops, 60.0, |each| !each.asks);
        assert!((69.95..70.05 + within).contains(&off), "{pin} {value}: off at {off}");
        // Off it stays, though what read badly reads well again, and the air goes on.
        assert!(loops.iter().all(|each| each.seconds < off || !each.asks), "{pin} {value}");
        assert!(loops.iter().all(|each| each.seconds < 2.0 || each.seconds > off + 5.0 || each.blows));
    }
    // What reads badly when it should be lit.
    for (pin, value) in [(gauge, 60), (air, 0), (air, 1023), (permitted, 0), (clock, 700), (stalled, 0)] {
        let loops = evening(&program, Some((pin, value, 35.0, 45.0)));
        assert!(loops.iter().all(|each| !each.asks), "{pin} {value}");
    }
}

#[test]
fn the_sketch_with_a_damaged_table_asks_for_no_gas() {
    let mut table = table();
    table[60] ^= 1;
    let loops = evening(&sketch("sketch_damaged", &table), None);
    assert!(loops.iter().all(|each| !each.asks && each.blows));
}
