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

/// What a cubic meter of air burns at the target air ratio of 1.05, and the air of the open damper, as the sketch and
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
    fed: bool,
    lamp: bool,
}

/// Pins of the sketch, and what else of the board can be wrong.
const START: i32 = 2;
const LIGHT: i32 = 3;
const STOP: i32 = 4;
const PERMITTED: i32 = 5;
const RESET: i32 = 11;
const GAUGE: i32 = 14;
const AIR: i32 = 15;
const CLOCK: i32 = -1;
const STALLED: i32 = -2;
const MEMORY: i32 = -3;
/// A contact.
const OPEN: i32 = 0;
const CLOSED: i32 = 1;

/// An run, with faults and deeds: pin, what it reads, from when and until when.
fn firing(program: &Path, deeds: &[(i32, i32, f64, f64)]) -> Vec<Loop> {
    let mut command = Command::new(program);
    for &(pin, value, from, to) in deeds {
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
        fed: line[7] == 1.0,
        lamp: line[8] == 1.0,
    };
    lines.iter().map(|(_, line)| read(line)).collect()
}

/// The first loop from a time on of which something is so.
fn first(loops: &[Loop], from: f64, so: impl Fn(&Loop) -> bool) -> f64 {
    loops.iter().find(|each| each.seconds >= from && so(each)).map_or(f64::INFINITY, |each| each.seconds)
}

#[test]
fn the_sketch_brings_air_before_gas_and_follows_the_heat() {
    let loops = firing(&sketch("sketch_sound", &table()), &[]);
    let lit = first(&loops, 0.0, |each| each.asks);
    assert!((40.0..40.2).contains(&lit), "lit at {lit}");
    assert!(loops.iter().all(|each| each.fed && !each.lamp));
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
    for (seconds, wanted) in [(88.0, 733.0), (118.0, 67.0)] {
        // The knob's counts, over the table's heats.
        let wanted = 9_000.0 + 15_000.0 / 1_023.0 * wanted;
        let there = loops.iter().find(|each| each.seconds == seconds).unwrap();
        // The regulator is set in 255 steps.
        assert!((there.gas_w / wanted - 1.0).abs() < 0.03, "{there:?}");
    }
}

#[test]
fn the_sketch_turns_the_gas_off_on_whatever_reads_badly() {
    let program = sketch("sketch_faults", &table());
    // Pin, what it reads from 70 s on for 10 s, how long the gas may burn on, and whether it locks.
    for (pin, value, within, locks) in [
        (GAUGE, 1023, 0.0, true),
        (GAUGE, 0, 0.0, true),
        (AIR, 1023, 0.0, true),
        (AIR, 0, 0.0, true),
        // Broken wires.
        (PERMITTED, OPEN, 0.0, true),
        (STOP, OPEN, 0.0, false),
        (CLOCK, 700, 0.0, true),
        // A sensor stands still at what it read: longer than it may.
        (GAUGE, 321, 5.3, true),
        (AIR, 344, 5.3, true),
        // The air falls away by a third in a second.
        (STALLED, 0, 0.5, true),
    ] {
        let loops = firing(&program, &[(pin, value, 70.0, 80.0)]);
        let off = first(&loops, 60.0, |each| !each.asks);
        assert!((69.95..70.05 + within).contains(&off), "{pin} {value}: off at {off}");
        // Off it stays, though what read badly reads well again, and the air goes on.
        assert!(loops.iter().all(|each| each.seconds < off || !each.asks), "{pin} {value}");
        assert!(loops.iter().all(|each| each.seconds < 2.0 || each.seconds > off + 5.0 || each.blows));
        // The lamp tells a lock, and nothing but that.
        assert!(loops.iter().all(|each| each.lamp == (locks && each.seconds >= off)), "{pin} {value}");
    }
    // What reads badly when it should be lit.
    for (pin, value) in
        [(GAUGE, 60), (AIR, 0), (AIR, 1023), (PERMITTED, OPEN), (STOP, OPEN), (CLOCK, 700), (STALLED, 0)]
    {
        let loops = firing(&program, &[(pin, value, 35.0, 45.0)]);
        assert!(loops.iter().all(|each| !each.asks), "{pin} {value}");
    }
    // Buttons whose wires are broken, or chafed to ground all run or for a while in which they count most.
    for (pin, value, from, to) in [
        (START, OPEN, 0.0, 120.0),
        (LIGHT, OPEN, 0.0, 120.0),
        (START, CLOSED, 0.0, 120.0),
        (LIGHT, CLOSED, 0.0, 120.0),
        (LIGHT, CLOSED, 25.0, 120.0),
        (LIGHT, CLOSED, 25.0, 41.0),
    ] {
        let loops = firing(&program, &[(pin, value, from, to)]);
        assert!(loops.iter().all(|each| !each.asks), "{pin} {value}");
    }
}

#[test]
fn the_sketch_unlocks_only_on_a_reset_that_was_meant() {
    let program = sketch("sketch_reset", &table());
    let lock = (PERMITTED, OPEN, 70.0, 71.0);
    let (start, light) = ((START, CLOSED, 77.0, 77.5), (LIGHT, CLOSED, 110.0, 110.5));
    let loops = firing(&program, &[lock, (RESET, CLOSED, 74.0, 75.5), start, light]);
    let unlocked = first(&loops, 71.0, |each| !each.lamp);
    assert!((75.45..75.65).contains(&unlocked), "{unlocked}");
    // Purged anew before a person lights it again.
    let lit = first(&loops, 71.0, |each| each.asks);
    assert!((110.4..110.7).contains(&lit), "{lit}");
    assert!(loops.iter().filter(|each| each.seconds > 77.6 && each.seconds < lit).all(|each| each.blows));
    // Touched, and held by a wire: for a while, to the end, since the beginning, since before the lock.
    for reset in [(74.0, 74.4), (74.0, 81.0), (74.0, 120.0), (0.0, 120.0), (65.0, 74.0)] {
        let loops = firing(&program, &[lock, (RESET, CLOSED, reset.0, reset.1), start, light]);
        assert!(loops.iter().all(|each| each.seconds < 70.0 || (each.lamp && !each.asks)), "{reset:?}");
    }
    // What was in doubt still is.
    let loops = firing(&program, &[(GAUGE, 2, 70.0, 120.0), (RESET, CLOSED, 74.0, 75.5), start, light]);
    assert!(loops.iter().all(|each| each.seconds < 70.1 || !each.asks));
    // A reset pressed by mistake while it burns puts the fire out.
    let loops = firing(&program, &[(RESET, CLOSED, 70.0, 71.5)]);
    assert!((71.4..71.7).contains(&first(&loops, 60.0, |each| !each.asks)));
}

#[test]
fn the_sketch_drops_the_gas_and_the_watchdog_after_a_tick_that_failed() {
    let loops = firing(&sketch("sketch_memory", &table()), &[(MEMORY, 0, 70.0, 70.1)]);
    for each in &loops {
        let failed = each.seconds >= 69.95;
        assert_eq!(each.fed, !failed, "{each:?}");
        if failed {
            assert!(!each.asks && each.blows && each.gas == 0.0 && each.air == 255.0, "{each:?}");
        }
    }
    assert!(loops[690].asks && loops[690].gas > 0.0);
    assert!(loops.iter().any(|each| each.seconds > 71.0 && each.lamp));
    assert!(loops.iter().any(|each| each.seconds > 71.0 && !each.lamp));
}

#[test]
fn the_sketch_with_a_damaged_table_asks_for_no_gas() {
    let mut table = table();
    table[60] ^= 1;
    let loops = firing(&sketch("sketch_damaged", &table), &[]);
    assert!(loops.iter().all(|each| !each.asks && each.blows && !each.fed && each.gas == 0.0));
}
