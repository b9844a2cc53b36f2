//! The C interface: its header is current, and a program in C gets the numbers of Rust.

#![cfg(feature = "capi")]

use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Output};

use jetwright::air::{AirPath, Blower, BlowerPoint, Damper, DamperKind, Duct};
use jetwright::burner::{Burner, Conditions, Exhaust, Head};
use jetwright::combustion::{Basis, FlueReading, Reactants, air_ratio_from_oxygen, expected_reading};
use jetwright::control::{
    AirChanges, AirRatioBand, ChipBurner, Command as Asked, Controller, ControllerSettings, CrossLimit,
    CrossLimitSettings, Inputs, Readings, SensorLimits, Setpoint, SetpointTable, Totals, Travel,
};
use jetwright::gas::{Gas, Species};
use jetwright::orifice::{BoreLength, BoreShape, Jet, Supply};
use jetwright::quantity::{
    AbsolutePressure, ActualVolumeFlow, Area, Density, Duration, GaugePressure, Length, NetHeatPerMass, NetHeatRate,
    PressureDifference, PricePerMass, Temperature,
};
use jetwright::site::Site;

const HEADER: &str = "examples/c/src/jetwright.h";
const FILES: [&str; 8] = ["mod", "status", "table", "limiting", "physics", "flue", "estimate", "controller"];

fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

#[test]
fn the_header_is_what_cbindgen_makes_of_the_source() {
    let config = cbindgen::Config {
        language: cbindgen::Language::C,
        cpp_compat: true,
        include_guard: Some("JETWRIGHT_H".into()),
        header: Some(
            "/* Gas and air of a forced-air burner. Process control, NEVER a flame safeguard: a listed one stays in\n \
             * charge of the gas valve. Made by cbindgen from src/capi/; change it there. Pointers are null or point at\n \
             * what their type says, and no two of one call at the same thing. */"
                .into(),
        ),
        documentation_style: cbindgen::DocumentationStyle::C,
        line_length: 110,
        enumeration: cbindgen::EnumConfig {
            rename_variants: cbindgen::RenameRule::QualifiedScreamingSnakeCase,
            ..Default::default()
        },
        // Numbers come from C, where any can stand in an enumeration: these are named in no signature.
        export: cbindgen::ExportConfig {
            include: ["JetwrightGas", "JetwrightEdge", "JetwrightBasis", "JetwrightCommand"].map(String::from).to_vec(),
            ..Default::default()
        },
        ..Default::default()
    };
    let builder = FILES.iter().fold(cbindgen::Builder::new().with_config(config), |builder, file| {
        builder.with_src(root().join(format!("src/capi/{file}.rs")))
    });
    let mut made = Vec::new();
    builder.generate().expect("cbindgen reads the source").write(&mut made);
    let made = String::from_utf8(made).unwrap();
    let path = root().join(HEADER);
    if std::env::var_os("JETWRIGHT_WRITE_PAGE").is_some() {
        fs::write(&path, &made).unwrap();
    }
    let kept = fs::read_to_string(&path).unwrap_or_default();
    assert!(
        kept == made,
        "{HEADER} is out of date: JETWRIGHT_WRITE_PAGE=1 cargo test --features capi --test c_interface"
    );
}

#[test]
fn the_library_folder_says_the_version_of_the_crate() {
    let properties = fs::read_to_string(root().join("examples/c/library.properties")).unwrap();
    let version = format!("version={}", env!("CARGO_PKG_VERSION"));
    assert!(properties.lines().any(|line| line == version), "{properties}");
}

/// A square law in heat for the gauge, a straight one for the air: invented.
fn table() -> SetpointTable<17, f32> {
    let kilowatts = NetHeatRate::from_kilowatts;
    let table = SetpointTable::<17>::build(kilowatts(9.0), kilowatts(24.0), 15, |heat| {
        let share = heat.kilowatts() / 24.0;
        Ok(Setpoint { gauge: GaugePressure::from_pascals(60e3 * share * share), air: 0.9 * share })
    });
    table.unwrap().to_single()
}

/// A small blower on a head of 42 holes at 1 600 m: invented.
fn burner_image() -> Vec<u8> {
    let (mm, kelvin) = (Length::from_millimeters, Temperature::from_kelvin);
    let points = [(0.0, 720.0), (5.0, 745.0), (9.5, 700.0), (14.0, 550.0), (19.0, 320.0), (23.5, 25.0)];
    let points = points.map(|(flow, pressure)| BlowerPoint {
        flow: ActualVolumeFlow::from_liters_per_second(flow),
        static_pressure: PressureDifference::from_pascals(pressure),
        shaft_power: None,
    });
    let duct = Duct::new(mm(40.0), Length::from_meters(1.2), mm(0.15), 0.8).unwrap();
    let gate = Damper::new(DamperKind::BlastGate, mm(32.0)).unwrap();
    let burner = Burner {
        jet: Jet::new(BoreShape::drilled(BoreLength::Fixed(mm(10.0))).with_diameter(mm(1.5)).unwrap()),
        head: Head::with_ports(42.0, mm(4.0), mm(25.0), 0.3).unwrap(),
        head_count: 1.0,
        blower: Blower::new(&points, Density::from_kilograms_per_cubic_meter(1.2)).unwrap(),
        path: AirPath::new(&[duct], Some(gate)).unwrap(),
        mixing_tube: Some(mm(40.0)),
        exhaust: Some(Exhaust::new(Area::from_square_meters(60e-4), 1.5).unwrap()),
    };
    let conditions = Conditions {
        site: Site::at_altitude(Length::from_meters(1600.0), kelvin(293.15), 0.35).unwrap(),
        gas: Gas::from(Species::Propane),
        gas_temperature: kelvin(285.15),
        mixture_temperature: kelvin(363.15),
        chamber_temperature: kelvin(1473.15),
    };
    let chip = ChipBurner { burner, conditions, settings: std::iter::empty().collect() };
    let mut image = vec![0; chip.image_bytes()];
    chip.write_image(&mut image).unwrap();
    image
}

fn run(command: &mut Command) -> Output {
    let output = command.output().unwrap_or_else(|error| panic!("{command:?}: {error}"));
    let text = String::from_utf8_lossy(&output.stderr);
    assert!(output.status.success(), "{command:?}: {text}");
    output
}

/// The static library, built as a user builds it, in a target directory of its own.
fn static_library(directory: &Path) -> PathBuf {
    let cargo = std::env::var_os("CARGO").unwrap_or("cargo".into());
    run(Command::new(cargo)
        .current_dir(root())
        .args(["rustc", "--quiet", "--lib", "--features", "capi", "--crate-type", "staticlib", "--target-dir"])
        .arg(directory));
    directory.join("debug/libjetwright.a")
}

/// Every number of the answer, a line a list.
fn numbers(text: &str) -> Vec<(String, Vec<f64>)> {
    text.lines()
        .map(|line| {
            let mut words = line.split_whitespace();
            let name = words.next().unwrap_or_default().to_owned();
            (name, words.map(|word| word.parse().unwrap()).collect())
        })
        .collect()
}

#[test]
fn a_program_in_c_gets_the_numbers_of_rust() {
    let directory = Path::new(env!("CARGO_TARGET_TMPDIR")).join("c_interface");
    fs::create_dir_all(&directory).unwrap();
    let library = static_library(&directory.join("target"));
    let program = directory.join("host");
    let compiler = std::env::var_os("CC").unwrap_or("cc".into());
    run(Command::new(&compiler)
        .args(["-std=c99", "-Wall", "-Wextra", "-Werror", "-pedantic", "-I"])
        .arg(root().join("examples/c/src"))
        .arg(root().join("examples/c/extras/host.c"))
        .arg(&library)
        .args(["-lm", "-lpthread", "-ldl", "-o"])
        .arg(&program));
    let mut image = [0; SetpointTable::<17, f32>::IMAGE_BYTES];
    table().write_image(&mut image).unwrap();
    fs::write(directory.join("table.jwt"), image).unwrap();
    fs::write(directory.join("burner.jwt"), burner_image()).unwrap();
    let answer = run(Command::new(&program).args(["table.jwt", "burner.jwt"].map(|name| directory.join(name))));
    let in_c = numbers(&String::from_utf8(answer.stdout).unwrap());
    let in_rust = expected();
    assert_eq!(in_c.len(), in_rust.len(), "{in_c:?}");
    for (c, rust) in in_c.iter().zip(&in_rust) {
        assert_eq!(c.0, rust.0);
        assert_eq!(c.1.len(), rust.1.len(), "{c:?} {rust:?}");
        for (ours, theirs) in rust.1.iter().zip(&c.1) {
            // The same source: two builds may round a last digit of a transcendental function differently.
            assert!((ours - theirs).abs() <= 1e-6 * ours.abs(), "{c:?} {rust:?}");
        }
    }
    // What the story must have been: blowing through, ready, the fire at its heat, locked on the lost sensor.
    let states: Vec<f64> = in_c.iter().filter(|line| line.0 == "tick").map(|line| line.1[0]).collect();
    assert_eq!(states.first(), Some(&1.0), "{states:?}");
    assert!(states.contains(&2.0) && states.contains(&4.0), "{states:?}");
    assert_eq!(states.last(), Some(&6.0), "{states:?}");
}

/// What a board's core library declares, as far as the sketch uses it.
const BOARD: &str = "#include <stdint.h>\nenum { A0, A1, A2, INPUT, OUTPUT, LOW = 0, HIGH = 1 };\n\
    void pinMode(int, int); void digitalWrite(int, int); int digitalRead(int); int analogRead(int);\n\
    void analogWrite(int, int); unsigned long millis();\n";

#[test]
fn the_sketch_of_the_library_folder_compiles() {
    let directory = Path::new(env!("CARGO_TARGET_TMPDIR")).join("sketch");
    fs::create_dir_all(&directory).unwrap();
    fs::write(directory.join("board.h"), BOARD).unwrap();
    fs::write(directory.join("table.h"), "static const uint8_t TABLE[164] = {0};\n").unwrap();
    run(Command::new(std::env::var_os("CXX").unwrap_or("c++".into()))
        .args(["-x", "c++", "-fsyntax-only", "-Wall", "-Wextra", "-Werror", "-pedantic", "-include"])
        .arg(directory.join("board.h"))
        .arg("-I")
        .arg(&directory)
        .arg("-I")
        .arg(root().join("examples/c/src"))
        .arg(root().join("examples/c/examples/FollowHeat/FollowHeat.ino")));
}

fn travel() -> Travel<f32> {
    Travel { slowest: 5_000.0, fastest: 20_000.0 }
}

fn limiter() -> CrossLimit<f32> {
    CrossLimit::new(&CrossLimitSettings {
        band: AirRatioBand { lowest: 0.92, target: 1.05, highest: 1.25 },
        lowest: NetHeatRate::from_watts(9_000.0),
        highest: NetHeatRate::from_watts(24_000.0),
        gas_travel: travel(),
        air_travel: travel(),
        actuator_tolerance: 0.03,
        reading_tolerance: 0.01,
    })
    .unwrap()
}

fn moved(position: f32, command: f32) -> f32 {
    let step = 8_000.0 * 0.25;
    if command > position { (position + step).min(command) } else { (position - step).max(command) }
}

/// What `extras/host.c` does, in Rust.
fn expected() -> Vec<(String, Vec<f64>)> {
    let mut lines: Vec<(String, Vec<f64>)> = vec![("refused".into(), vec![2.0, 13.0, 14.0, 11.0, 1.0])];
    let mut line = |name: &str, numbers: &[f32]| {
        lines.push((name.into(), numbers.iter().map(|&number| f64::from(number)).collect()));
    };
    let (watts, seconds) = (NetHeatRate::from_watts, Duration::from_seconds);
    let flow = ActualVolumeFlow::from_cubic_meters_per_second;
    let table = table();
    for kilowatts in [8.0, 12.0, 16.0, 20.0, 24.0] {
        let set = table.at(watts(1_000.0 * kilowatts));
        line("set", &[set.gauge.pascals(), set.air]);
    }
    let site = Site::at_altitude(Length::from_meters(1600.0_f32), Temperature::from_kelvin(293.15), 0.0).unwrap();
    let shape = BoreShape::drilled(BoreLength::Fixed(Length::from_meters(10e-3_f32)));
    let passed = Jet::new(shape.with_diameter(Length::from_meters(1.5e-3)).unwrap())
        .flow(
            &Gas::from(Species::Propane),
            &Supply {
                ambient: site.ambient_pressure(),
                gauge: GaugePressure::from_pascals(34_474.0),
                back: GaugePressure::from_pascals(0.0),
                temperature: Temperature::from_kelvin(283.15),
            },
        )
        .unwrap();
    let mass_flow = passed.mass_flow.kilograms_per_second();
    let choked = f32::from(u8::from(passed.choked));
    line("flow", &[mass_flow, passed.heat_net.watts(), passed.discharge_coefficient, choked]);

    line("refused", &[5.0, 5.0, 4.0, 3.0, 7.0, 4.0, 1.0]);
    let damp = Site::at_station_pressure(site.ambient_pressure(), Temperature::from_kelvin(293.15), 0.5).unwrap();
    for (oxygen, carbon_monoxide, basis) in [(0.03, 0.0, Basis::Dry), (0.03, 0.002, Basis::Wet)] {
        let reading = FlueReading { oxygen, carbon_monoxide, basis };
        let ratio = air_ratio_from_oxygen(&Gas::from(Species::Propane), &damp, reading).unwrap();
        let expected = expected_reading(&Gas::from(Species::Propane), &damp, ratio).unwrap();
        line("flue", &[ratio, expected.oxygen_dry, expected.oxygen_wet, expected.carbon_dioxide_dry]);
    }
    for air_ratio in [0.8, 1.05, 1.5] {
        let cold = Temperature::from_kelvin(293.15);
        let reactants = Reactants::new(&Gas::from(Species::Propane), &damp, air_ratio, cold).unwrap();
        line("available", &[reactants.available_heat(Temperature::from_kelvin(1500.0)).unwrap()]);
    }

    line("refused", &[2.0, 2.0, 16.0, 13.0, 14.0, 11.0, 1.0, 4.0, 7.0, 3.0]);
    let chip = ChipBurner::<f32>::read_image(&burner_image()).unwrap();
    let sultry = AbsolutePressure::from_pascals(82_000.0);
    let sultry = Conditions {
        site: Site::at_station_pressure(sultry, Temperature::from_kelvin(308.15), 0.8).unwrap(),
        chamber_temperature: Temperature::from_kelvin(1500.0),
        ..chip.conditions
    };
    for (conditions, kelvin, pascals) in [(chip.conditions, 289.15, 570.0), (sultry, 301.15, 535.0)] {
        let readings = Readings {
            gauge: GaugePressure::from_pascals(41_369.0),
            gas_temperature: Temperature::from_kelvin(kelvin),
            blower_pressure: PressureDifference::from_pascals(pascals),
        };
        let found = readings.estimate(&chip.burner.prepared(&conditions).unwrap()).unwrap();
        let (gas, air) = (found.gas.kilograms_per_second(), found.air.kilograms_per_second());
        let (heat, air_flow) = (found.heat_net.watts(), found.air_flow.cubic_meters_per_second());
        line("estimate", &[gas, heat, air_flow, air, found.air_ratio.unwrap(), found.back_pressure.pascals()]);
    }

    let mut limit = limiter();
    for _ in 0..20 {
        limit.hold(watts(10_000.0), watts(10_000.0), seconds(1.0));
    }
    let (mut gas, mut air) = (10_000.0, 10_000.0);
    for _ in 0..20 {
        let set = limit.step(watts(20_000.0), watts(gas), watts(air), seconds(0.25));
        line("limited", &[set.gas.watts(), set.air.watts(), f32::from(u8::from(set.doubt.is_some()))]);
        (gas, air) = (moved(gas, set.gas.watts()), moved(air, set.air.watts()));
    }
    assert_eq!((gas, air), (20_000.0, 20_000.0), "the fire has come to the heat wanted");

    // 78 L at 8 L/s: eleven calls a second apart, of which the first has air at one end only; 80 L by then.
    line("blown", &[11.0, 80.0 / 19.5]);
    let mut totals =
        Totals::new(NetHeatPerMass::from_joules_per_kilogram(46.3e6), PricePerMass::from_per_kilogram(2.4));
    for _ in 0..3600 {
        totals.add(passed.mass_flow, seconds(1.0));
    }
    line("used", &[totals.gas().kilograms(), totals.heat_net_joules(), totals.money()]);

    let changes = AirChanges::new(0.02, 4.0, flow(0.002)).unwrap();
    let heat = SensorLimits {
        lowest: -10.0,
        highest: 60_000.0,
        fastest: 90_000.0,
        noise: 900.0,
        stuck_after: Some(seconds(5.0)),
    };
    let temperature = SensorLimits { lowest: 240.0, highest: 330.0, fastest: 2.0, noise: 0.5, stuck_after: None };
    let settings = ControllerSettings {
        lighting: watts(10_000.0),
        lighting_time: seconds(4.0),
        steady_time: seconds(0.5),
        ready_time: seconds(60.0),
        closing_time: seconds(2.0),
        longest_tick: 500,
        clock_tolerance: 0.01,
        least_air: flow(0.002),
        air_agreement: (0.1, seconds(1.0)),
    };
    let mut desk = Controller::new(table, limiter(), changes, [heat, temperature, heat], settings).unwrap();
    let (mut gas, mut air, mut asks) = (10_000.0, 0.0, false);
    for tick in 0..200_u32 {
        let odd = (tick % 2) as f32;
        let gas_reading = if asks { gas } else { 0.0 } + odd;
        let air_reading = if tick < 180 { air + odd } else { -500.0 };
        let out = desk.tick(&Inputs {
            now: 4_294_960_000_u32.wrapping_add(250 * tick),
            command: match tick {
                2 => Asked::Start,
                100 => Asked::Light,
                _ => Asked::Nothing,
            },
            wanted: watts(20_000.0),
            readings: [gas_reading, 283.15, air_reading],
            gas: watts(gas_reading),
            air: watts(air_reading),
            air_flow: flow(air_reading / 3.0e6),
            second_air_flow: None,
            permitted: true,
        });
        if tick % 20 == 19 {
            let asked = f32::from(u8::from(out.asks_for_gas));
            line("tick", &[out.state as u8 as f32, asked, out.gas.watts(), out.air.watts(), out.set.gauge.pascals()]);
        }
        asks = out.asks_for_gas;
        (gas, air) = (moved(gas, out.gas.watts()), moved(air, out.air.watts()));
    }
    lines
}
