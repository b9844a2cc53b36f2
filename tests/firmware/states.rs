//! Single precision on the chip against double precision on the host, state by state.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

use jetwright::burner::{Burner, Conditions, Prepared};
use jetwright::control::{ChipBurner, Readings};
use jetwright::file::burner_file;
use jetwright::orifice::{BoreLength, BoreShape, Jet};
use jetwright::quantity::{AbsolutePressure, GaugePressure, Length, PressureDifference, Temperature};
use jetwright::{Input, Site};

use super::burners::{Draw, demo, drawn};
use super::costs::{hold, quantile};
use super::emulator::{build, built, directory, run};

/// Ambient pressure, air temperature, humidity, gas, mixture and chamber temperature, gauge pressure, opening.
pub type State = [f32; 8];
const INPUTS: [Input; 8] = [
    Input::StationPressure,
    Input::AirTemperature,
    Input::Humidity,
    Input::GasTemperature,
    Input::MixtureTemperature,
    Input::ChamberTemperature,
    Input::GaugePressure,
    Input::DamperOpening,
];
/// Most looks of a near guess; the whole search takes more.
const NEAR_LOOKS: f32 = 8.0;
/// Kelvin that the estimate's gas is warmer than the conditions', as the program has it.
const WARMER: f64 = 5.0;

/// What the program answers of a state.
#[derive(Clone, Copy, Debug)]
pub struct Answer {
    pub jet: [f32; 2],
    pub jet_instructions: f32,
    /// Gas, air, air ratio, back pressure, looks.
    pub burner: [f32; 5],
    pub burner_instructions: f32,
    /// Gas, air, air ratio.
    pub estimate: [f32; 3],
    pub estimate_instructions: f32,
    pub prepared_instructions: f32,
    pub blower_pressure: f32,
}

fn answers(bytes: &[u8]) -> Vec<Answer> {
    let words: Vec<f32> = bytes.chunks_exact(4).map(|word| f32::from_le_bytes(word.try_into().unwrap())).collect();
    let read = |word: &[f32]| Answer {
        jet: [word[0], word[1]],
        jet_instructions: word[2],
        burner: [word[3], word[4], word[5], word[6], word[7]],
        burner_instructions: word[8],
        estimate: [word[9], word[10], word[11]],
        estimate_instructions: word[12],
        prepared_instructions: word[13],
        blower_pressure: word[14],
    };
    words.chunks_exact(15).map(read).collect()
}

pub fn of_text(text: &str) -> ChipBurner {
    let file = burner_file::parse(text, "drawn").unwrap_or_else(|error| panic!("{error}\n{text}"));
    file.evaluate(false).expect("a sheet").0.for_chip().expect("a burner")
}

pub fn of_file(path: &Path) -> ChipBurner {
    of_text(&std::fs::read_to_string(path).expect("the file is there"))
}

/// Answers of the chip to states of burners, and what it printed.
pub fn ask(program: &Path, directory: &Path, asked: &[(ChipBurner, Vec<State>)]) -> (Vec<Answer>, String) {
    let mut bytes = Vec::new();
    for (chip, states) in asked {
        let mut image = vec![0; chip.image_bytes()];
        chip.write_image(&mut image).expect("as many bytes as it says");
        bytes.extend((image.len() as u32).to_le_bytes());
        bytes.extend(image);
        bytes.extend((states.len() as u32).to_le_bytes());
        bytes.extend(states.iter().flatten().flat_map(|value| value.to_le_bytes()));
    }
    std::fs::write(directory.join("states.bin"), bytes).expect("the directory can be written");
    let printed = run(program, directory);
    (answers(&std::fs::read(directory.join("answers.bin")).expect("the program wrote its answers")), printed)
}

/// Every corner of the accepted range, and states within it.
fn everywhere(seed: u64, within: usize) -> Vec<State> {
    let mut draw = Draw::new(seed);
    let end = |corner: usize, index: usize| {
        let range = INPUTS[index].range();
        // A little inward, since a bound may not be a number of single precision.
        let (low, high) = ((range.min * (1.0 + 2e-7)) as f32, (range.max * (1.0 - 2e-7)) as f32);
        let (low, high) = (if range.min == 0.0 { 0.0 } else { low }, if range.max == 1.0 { 1.0 } else { high });
        if corner >> index & 1 == 0 { low } else { high }
    };
    let corners = (0..256).map(|corner| core::array::from_fn(|index| end(corner, index)));
    let inner = (0..within).map(|_| {
        let mut state: State = core::array::from_fn(|index| {
            let range = INPUTS[index].range();
            draw.between(range.min, range.max) as f32
        });
        // As many low gauges as high ones.
        state[6] = (100.0 * 4500.0_f64.powf(draw.share())) as f32;
        state
    });
    corners.chain(inner).collect()
}

fn burners() -> Vec<ChipBurner> {
    let example = |name: &str| of_file(&PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("examples").join(name));
    let mut all = vec![of_file(&demo()), example("natural-gas.toml"), example("blower-too-small.toml")];
    all.extend((100..112).map(|seed| of_text(&drawn(seed))));
    // The demonstration with the extremes of jets.
    let millimeters = Length::from_millimeters;
    for (bore, length) in [(0.3, 0.0), (0.3, 60.0), (1.5, 0.5), (3.0, 60.0), (3.0, 4.0)] {
        let shape = if length == 0.0 {
            BoreShape::thin_plate()
        } else {
            BoreShape::drilled(BoreLength::Fixed(millimeters(length)))
        };
        let mut chip = all[0].clone();
        chip.burner.jet = Jet::new(shape.with_diameter(millimeters(bore)).expect("a bore"));
        all.push(chip);
    }
    all
}

/// What the forward chain costs anywhere in the accepted range, by the near guess and by the whole search.
fn hold_costs(costs: &[Vec<f32>; 2]) {
    let [near, whole] = costs;
    // The verge where gas only just flows.
    assert!(whole.len() * 200 < near.len(), "{} by the whole search, {} near", whole.len(), near.len());
    let measured = BTreeMap::from([
        ("forward chain anywhere in the accepted range, 98 of 100", quantile(near.clone(), 0.98)),
        ("the same, at most", quantile(near.clone(), 1.0)),
        ("forward chain by the whole search, at most", quantile(whole.clone(), 1.0)),
    ]);
    hold(&measured);
    assert!(measured["forward chain anywhere in the accepted range, 98 of 100"] <= 5000.0);
}

/// The worst difference met, over what it may be.
#[derive(Debug, Default)]
struct Worst {
    jet: f64,
    thrust: f64,
    gas: f64,
    mixture: f64,
    ratio: f64,
    back: f64,
    estimated_gas: f64,
    estimated_pressure: f64,
}

fn relative(found: f32, expected: f64, floor: f64) -> f64 {
    (f64::from(found) - expected).abs() / expected.abs().max(floor)
}

fn conditions(chip: &ChipBurner, state: &State) -> Conditions {
    let [ambient, air, humidity, gas, mixture, chamber, ..] = state.map(f64::from);
    let kelvin = Temperature::from_kelvin;
    Conditions {
        site: Site::at_station_pressure(AbsolutePressure::from_pascals(ambient), kelvin(air), humidity).unwrap(),
        gas_temperature: kelvin(gas),
        mixture_temperature: kelvin(mixture),
        chamber_temperature: kelvin(chamber),
        ..chip.conditions
    }
}

fn compare_estimate(worst: &mut Worst, prepared: &Prepared<&Burner>, state: &State, answer: &Answer) {
    let pascals = f64::from(answer.blower_pressure);
    let readings = Readings {
        gauge: GaugePressure::from_pascals(f64::from(state[6])),
        gas_temperature: Temperature::from_kelvin(f64::from(state[3]) + WARMER),
        blower_pressure: PressureDifference::from_pascals(pascals),
    };
    let Ok(estimate) = readings.estimate(prepared) else { return };
    let blower = prepared.blower();
    let highest = blower.peak().1.pascals();
    // The flow is where the curve has the pressure; how sure it is depends on how steep the curve is there.
    let density = prepared.conditions().site.air_density().kilograms_per_cubic_meter();
    let there =
        jetwright::quantity::ActualVolumeFlow::from_cubic_meters_per_second(f64::from(answer.estimate[1]) / density);
    let missed = (blower.static_pressure(there).pascals() - pascals).abs() / highest;
    worst.estimated_pressure = worst.estimated_pressure.max(missed);
    let drop = blower.static_pressure(estimate.air_flow * 0.99).pascals() - pascals;
    if drop > 1e-3 * highest && estimate.back_pressure.pascals() < 0.3 * f64::from(state[6]) {
        let gas = relative(answer.estimate[0], estimate.gas.kilograms_per_second(), 0.0);
        worst.estimated_gas = worst.estimated_gas.max(gas);
    }
}

#[test]
fn ten_thousand_states_and_every_corner_are_those_of_double_precision() {
    let Some(built) = built() else { return };
    let directory = directory("firmware-states");
    let program = build(&built, &demo(), &directory, "proof");
    let asked: Vec<_> = burners().into_iter().zip(1..).map(|(chip, seed)| (chip, everywhere(seed, 380))).collect();
    let (answers, _) = ask(&program, &directory, &asked);
    let states: Vec<_> =
        asked.iter().flat_map(|(chip, states)| states.iter().map(move |state| (chip, state))).collect();
    assert!(answers.len() == states.len() && answers.len() > 10_000, "{}", answers.len());

    let (mut worst, mut met, mut refused, mut otherwise) = (Worst::default(), 0, 0, 0);
    let mut costs = [Vec::new(), Vec::new()];
    for ((chip, state), answer) in states.into_iter().zip(answers) {
        let conditions = conditions(chip, state);
        let gauge = GaugePressure::from_pascals(f64::from(state[6]));
        let prepared = chip.burner.prepared(&conditions);
        let found = chip.burner.run(&conditions, gauge, f64::from(state[7]));
        let (Ok(prepared), Ok(found)) = (prepared, found) else {
            refused += 1;
            otherwise += usize::from(!answer.burner[0].is_nan());
            continue;
        };
        if answer.burner[0].is_nan() {
            otherwise += 1;
            continue;
        }
        met += 1;
        costs[usize::from(answer.burner[4] > NEAR_LOOKS)].push(answer.burner_instructions);
        let (gas, air) = (found.gas.kilograms_per_second(), found.air.kilograms_per_second());
        let pressure =
            prepared.blower().peak().1.pascals().max(found.head_pressure.pascals()).max(found.push.pascals());
        let [chip_gas, chip_air, ratio, back, _] = answer.burner;
        let grow = |worst: &mut f64, by: f64| *worst = worst.max(by);
        let open = jetwright::orifice::Supply {
            ambient: conditions.site.ambient_pressure(),
            gauge,
            back: GaugePressure::from_pascals(0.0),
            temperature: conditions.gas_temperature,
        };
        let jet = chip.burner.jet.flow(&conditions.gas, &open).expect("a burner that runs has a jet");
        grow(&mut worst.jet, relative(answer.jet[0], jet.mass_flow.kilograms_per_second(), 1e-9));
        grow(&mut worst.thrust, relative(answer.jet[1], jet.thrust.newtons(), 1e-9));
        // Gas that the air stream all but stops is compared with what would flow without it.
        let free = jet.mass_flow.kilograms_per_second() * chip.burner.head_count;
        grow(&mut worst.gas, relative(chip_gas, gas, 0.2 * free + 1e-9));
        grow(&mut worst.mixture, relative(chip_gas + chip_air, gas + air, 0.0));
        if let Some(expected) = found.air_ratio.filter(|ratio| (0.5..=5.0).contains(ratio)) {
            grow(&mut worst.ratio, relative(ratio, expected, 0.0));
        }
        grow(&mut worst.back, relative(back, found.back_pressure.pascals(), pressure));
        if answer.estimate[0].is_finite() {
            compare_estimate(&mut worst, &prepared, state, &answer);
        }
    }
    assert!(met > 10_000 && otherwise == 0, "{met} answered, {refused} refused, {otherwise} otherwise on the chip");
    hold_costs(&costs);
    let Worst { jet, thrust, gas, mixture, ratio, back, estimated_gas, estimated_pressure } = worst;
    for off in [jet, thrust, gas, mixture, ratio, back, estimated_gas, estimated_pressure] {
        assert!(off < 1e-4, "{worst:?}");
    }
}
