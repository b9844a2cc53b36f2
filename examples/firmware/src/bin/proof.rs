//! Answers the states of a file of the host, and counts what each answer costs: what the tests hold against double
//! precision.

#![no_std]
#![no_main]

use core::hint::black_box;

use cortex_m_rt::entry;
use jetwright::burner::Conditions;
use jetwright::control::{ChipBurner, Readings};
use jetwright::orifice::Supply;
use jetwright::quantity::{AbsolutePressure, GaugePressure, Temperature};
use jetwright::site::Site;
use jetwright_firmware::clock::{self, instructions};
use jetwright_firmware::host::{self, File};

/// Longest image read.
const IMAGE_CAP: usize = 2048;

#[entry]
fn main() -> ! {
    clock::start();
    let (Some(states), Some(answers)) = (File::open(c"states.bin", false), File::open(c"answers.bin", true)) else {
        host::text(c"no file of states\n");
        host::exit(false)
    };
    while let Some(bytes) = states.word() {
        if answer_burner(&states, &answers, u32::from_le_bytes(bytes) as usize).is_none() {
            host::text(c"the file of states is not whole\n");
            host::exit(false)
        }
    }
    host::exit(true)
}

/// One burner's image, then how many states, then the states.
fn answer_burner(states: &File, answers: &File, length: usize) -> Option<()> {
    let mut image = [0; IMAGE_CAP];
    let image = image.get_mut(..length)?;
    if !states.fill(image) {
        return None;
    }
    let chip = ChipBurner::<f32>::read_image(image).ok()?;
    for _ in 0..u32::from_le_bytes(states.word()?) {
        let mut state = [0.0; 8];
        for value in &mut state {
            *value = f32::from_le_bytes(states.word()?);
        }
        for word in answer(&chip, state) {
            answers.put(&word.to_le_bytes());
        }
    }
    Some(())
}

/// Jet, whole burner; each with its instructions; NaN where there is no answer.
fn answer(chip: &ChipBurner<f32>, state: [f32; 8]) -> [f32; 13] {
    let [ambient, air, humidity, gas, mixture, chamber, gauge, opening] = state;
    let mut answer = [f32::NAN; 13];
    let kelvin = Temperature::from_kelvin;
    let Ok(site) = Site::at_station_pressure(AbsolutePressure::from_pascals(ambient), kelvin(air), humidity) else {
        return answer;
    };
    let conditions = Conditions {
        site,
        gas_temperature: kelvin(gas),
        mixture_temperature: kelvin(mixture),
        chamber_temperature: kelvin(chamber),
        ..chip.conditions
    };
    let gauge = GaugePressure::from_pascals(gauge);
    let supply = Supply {
        ambient: site.ambient_pressure(),
        gauge,
        back: GaugePressure::from_pascals(0.0),
        temperature: conditions.gas_temperature,
    };
    let (jet, spent) = instructions(|| chip.burner.jet.flow(&conditions.gas, black_box(&supply)));
    if let Ok(jet) = jet {
        [answer[0], answer[1]] = [jet.mass_flow.kilograms_per_second(), jet.thrust.newtons()];
    }
    answer[2] = spent as f32;
    let Ok(prepared) = chip.burner.prepared(&conditions) else { return answer };
    let (running, spent) = instructions(|| black_box(&prepared).run(gauge, opening));
    if let Ok(running) = &running {
        [answer[3], answer[4], answer[5], answer[6], answer[7]] = [
            running.gas.kilograms_per_second(),
            running.air.kilograms_per_second(),
            running.air_ratio.unwrap_or(f32::NAN),
            running.back_pressure.pascals(),
            running.looks as f32,
        ];
    }
    answer[8] = spent as f32;
    let Ok(running) = running else { return answer };
    let blower_pressure = running.blower_pressure;
    let readings = Readings { gauge, gas_temperature: kelvin(gas + 5.0), blower_pressure };
    let (estimate, spent) = instructions(|| black_box(&readings).estimate(&prepared));
    if let Ok(estimate) = estimate {
        [answer[9], answer[10], answer[11]] = [
            estimate.gas.kilograms_per_second(),
            estimate.air.kilograms_per_second(),
            estimate.air_ratio.unwrap_or(f32::NAN),
        ];
    }
    answer[12] = spent as f32;
    answer
}
