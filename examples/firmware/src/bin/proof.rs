//! Answers the states of a file of the host, and counts what each answer costs: what the tests hold against double
//! precision.

#![no_std]
#![no_main]

use core::hint::black_box;

use cortex_m_rt::entry;
use jetwright::burner::Conditions;
use jetwright::control::{ChipBurner, Command, Inputs, Readings, State};
use jetwright::orifice::Supply;
use jetwright::quantity::{AbsolutePressure, ActualVolumeFlow, Duration, GaugePressure, NetHeatRate, Temperature};
use jetwright::site::Site;
use jetwright_firmware::burner::{AIR_HEAT, TICK, TICK_MS, Table, controller, limiter, moved};
use jetwright_firmware::clock::{self, instructions};
use jetwright_firmware::host::{self, File};
use jetwright_firmware::stack::depth;

/// Written by `jetwright setpoints BURNER.toml --image FILE`.
static TABLE: &[u8] = include_bytes!(env!("TABLE_IMAGE", "set TABLE_IMAGE to the full path of the image of a table"));

/// Longest image read.
const IMAGE_CAP: usize = 2048;

/// Numbers of a state and of an answer.
const STATE: usize = 8;
const ANSWER: usize = 15;

#[entry]
fn main() -> ! {
    clock::start();
    if small_costs().is_none() {
        host::text(c"the table of the image is not usable\n");
        host::exit(false)
    }
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

/// A line of text: what, and how much of it.
fn line(what: &core::ffi::CStr, amount: u32) {
    host::text(what);
    host::byte(b' ');
    host::number(amount);
    host::byte(b'\n');
}

/// What a lookup, a step of the limiter and a tick of the controller cost, in instructions and stack; the loop's own are taken off.
fn small_costs() -> Option<()> {
    const TIMES: u32 = 1000;
    let table = Table::read_image(black_box(TABLE)).ok()?;
    let mut limit = limiter(&table)?;
    let (lowest, highest) = (table.lowest().watts(), table.highest().watts());
    let heat = |index: u32| lowest + (highest - lowest) * (index as f32 / TIMES as f32);
    let each = |spent: u32, empty: u32| (spent - empty) / TIMES;
    let ((), empty) = instructions(|| (0..TIMES).for_each(|index| _ = black_box(black_box(heat(index)))));
    let ((), spent) = instructions(|| {
        (0..TIMES).for_each(|index| _ = black_box(table.at(NetHeatRate::from_watts(black_box(heat(index))))));
    });
    line(c"lookup", each(spent, empty));
    let elapsed = Duration::from_seconds(TICK);
    while !limit.is_settled_at(table.lowest()) {
        limit.hold(table.lowest(), table.lowest(), Duration::from_seconds(10.0));
    }
    let mut stands = (table.lowest(), table.lowest());
    // Up and down, with simulated actuators.
    let mut step = |index: u32| {
        let wanted = if index % 100 < 50 { highest } else { lowest };
        let set = limit.step(NetHeatRate::from_watts(black_box(wanted)), stands.0, stands.1, elapsed);
        stands = (moved(stands.0, set.gas), moved(stands.1, set.air));
        u32::from(set.fault.is_some())
    };
    let (_, stack) = depth(|| black_box(step(0)));
    let (doubts, spent) = instructions(|| (0..TIMES).map(|index| black_box(step(index))).sum::<u32>());
    line(c"limit", each(spent, empty));
    line(c"limit_doubts", doubts);
    line(c"limit_stack", stack);
    ticks(&table, each(empty, 0))
}

/// The whole controller at the fire, which follows the heat up and down.
fn ticks(table: &Table, empty: u32) -> Option<()> {
    const TIMES: u32 = 1000;
    let mut desk = controller(table)?;
    let (lowest, highest) = (table.lowest(), table.highest());
    let zero = NetHeatRate::from_watts(0.0);
    let (mut gas, mut air, mut is_open) = (zero, zero, false);
    let mut now = 0;
    let mut tick = |index: u32| {
        now += TICK_MS;
        let command = match desk.state() {
            State::Off => [Command::Nothing, Command::Start][(index % 2) as usize],
            State::Ready => [Command::Nothing, Command::Light][(index % 2) as usize],
            _ => Command::Nothing,
        };
        let read = if is_open { gas } else { zero };
        let out = desk.tick(black_box(&Inputs {
            now,
            command,
            wanted: if index % 100 < 50 { highest } else { lowest },
            readings: [read.watts(), 288.0, air.watts()],
            gas: read,
            air,
            air_flow: ActualVolumeFlow::from_cubic_meters_per_second(air.watts() / AIR_HEAT),
            second_air_flow: None,
            chamber_is_cold: true,
            permitted: true,
        }));
        (gas, air, is_open) = (moved(gas, out.gas), moved(air, out.air), out.asks_for_gas);
        u32::from(out.state == State::Firing)
    };
    (0..TIMES).for_each(|index| _ = tick(index));
    let (_, stack) = depth(|| black_box(tick(0)));
    let (fires, spent) = instructions(|| (0..TIMES).map(|index| black_box(tick(index))).sum::<u32>());
    line(c"tick", spent / TIMES - empty);
    line(c"tick_fires", fires);
    line(c"tick_stack", stack);
    Some(())
}

/// One burner's image, then how many states, then the states.
fn answer_burner(states: &File, answers: &File, length: usize) -> Option<()> {
    let mut image = [0; IMAGE_CAP];
    let image = image.get_mut(..length)?;
    if !states.fill(image) {
        return None;
    }
    let (chip, stack) = depth(|| ChipBurner::<f32>::read_image(image).ok());
    line(c"read_stack", stack);
    let chip = chip?;
    let mut deepest = 0;
    for _ in 0..u32::from_le_bytes(states.word()?) {
        let mut state = [0.0; STATE];
        for value in &mut state {
            *value = f32::from_le_bytes(states.word()?);
        }
        let (words, stack) = depth(|| answer(&chip, state));
        deepest = deepest.max(stack);
        for word in words {
            answers.put(&word.to_le_bytes());
        }
    }
    line(c"answer_stack", deepest);
    Some(())
}

/// Jet, conditions applied, whole burner, estimate, each with its instructions; NaN where there is no answer.
#[inline(never)]
fn answer(chip: &ChipBurner<f32>, state: [f32; STATE]) -> [f32; ANSWER] {
    let [ambient, air, humidity, gas, mixture, chamber, gauge, opening] = state;
    let mut answer = [f32::NAN; ANSWER];
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
    let (prepared, spent) = instructions(|| chip.burner.prepared(black_box(&conditions)));
    answer[13] = spent as f32;
    let Ok(prepared) = prepared else { return answer };
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
    answer[14] = blower_pressure.pascals();
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
