//! One run: a person, a shop where things go wrong, a clock that is not quite right, and the controller.

use jetwright::Scalar;
use jetwright::control::{Command, Inputs, State};
use jetwright::quantity::{ActualVolumeFlow, NetHeatRate};

use crate::burner::*;
use crate::faults::{Faults, Sensors};
use crate::plant::Plant;
use crate::random::Random;
use crate::referee::*;
use crate::tally::Tally;

/// What a person does on seeing a state: mostly the sensible thing, sometimes anything.
fn command(state: State, patience: u64, idle: u64, random: &mut Random) -> Command {
    if random.one_in(60) {
        let any = [Command::Nothing, Command::Start, Command::Light, Command::Stop, Command::Reset];
        return any[random.next() as usize % any.len()];
    }
    match state {
        State::Off if random.one_in(idle) => Command::Start,
        State::Ready if random.one_in(patience) => Command::Light,
        State::Firing if random.one_in(150) => Command::Stop,
        State::Lockout if random.one_in(4) => Command::Reset,
        _ => Command::Nothing,
    }
}

/// What gas and air are told to be: mostly as they are read, now and then nothing that a burner has.
fn told_heats(read: (f64, f64), random: &mut Random) -> (f64, f64) {
    match random.next() % 8000 {
        0 => (f64::NAN, read.1),
        1 => (read.0, f64::NAN),
        2 => (-LOWEST, read.1),
        3 => (read.0, -LOWEST),
        4 => (f64::NEG_INFINITY, read.1),
        _ => read,
    }
}

/// A counter of milliseconds that runs fast or slow, jitters, and now and then stands, is missed or goes backward.
struct Clock {
    now: u32,
    error: f64,
}

impl Clock {
    fn drawn(random: &mut Random) -> Self {
        let now = if random.one_in(3) { u32::MAX - (random.next() % 30_000) as u32 } else { random.next() as u32 };
        Self { now, error: random.often_an_end(CLOCK_TOLERANCE) }
    }

    /// The time to the next tick as it is, s, and as it is counted, ms.
    fn ticks(&mut self, burner: &Burner, random: &mut Random) -> (f64, u32) {
        let (shortest, longer) = burner.ticks;
        let usual = shortest + (random.next() % u64::from(longer)) as u32;
        let (real, counted) = match random.next() % 1500 {
            0..15 => (0, 0),
            15..18 => (501 + usual * 20, 501 + usual * 20),
            18..20 => (usual, 1 + usual.wrapping_mul(11).wrapping_neg()),
            _ => (usual, usual),
        };
        self.now = self.now.wrapping_add(counted);
        let jitter = CLOCK_TOLERANCE - self.error.abs();
        let error = self.error + random.between(-jitter, jitter);
        (f64::from(real) * 1e-3 * (1.0 + error), counted)
    }
}

pub fn run<S: Scalar>(seed: u64, tally: &mut Tally) -> Result<(), String> {
    let mut random = Random::new(seed);
    let burner = Burner::drawn(&mut random);
    let sensors = Sensors::drawn(&mut random);
    let mut desk = burner.desk::<S>(sensors.has_second_air);
    let mut plant = Plant::new(&mut random);
    let mut faults = Faults::drawn(&burner, &mut random);
    let mut clock = Clock::drawn(&mut random);
    let (ticks, mut sent) = (burner.ticks_in_all, (burner.lighting, 0.0));
    // Who is called away lets the time to light go by.
    let patience = if burner.is_prompt { 1 } else { [2, 500][usize::from(random.one_in(40))] };
    // And who comes late lets it stand.
    let idle = if random.one_in(12) { 60 } else { 2 };
    let mut referee = Referee::new(burner.clone(), sensors.has_second_air);
    let mut wanted = random.between(LOWEST, HIGHEST);
    let (mut state, mut time) = (State::Off, 0.0);
    let (mut has_fire, mut has_followed, mut has_overlap) = (false, false, false);
    for tick in 0..ticks {
        // The chip may lose its power for a moment, at the fire too: its valve shuts.
        if random.one_in(1500) {
            desk = burner.desk::<S>(sensors.has_second_air);
            (state, plant.open) = (State::Off, false);
            referee.reboots();
            tally.reboots += 1;
        }
        // The counter's first value tells no time.
        let (seconds, counted) = if tick == 0 { (0.0, 0) } else { clock.ticks(&burner, &mut random) };
        // Faults come and go at any time between two ticks.
        let cut = random.share();
        for (from, to) in [(0.0, cut), (cut, 1.0)] {
            plant.broken = faults.broken_at(time + from * seconds);
            let step = (to - from) * seconds;
            plant.passes(step, sent.0, sent.1, &mut random);
            referee.moved(&plant, sent, step).map_err(|found| format!("tick {tick}: {found}, {faults:?}"))?;
        }
        if state == State::Firing {
            faults.begun(time, time + seconds).for_each(|kind| tally.fault(kind.name()));
            has_overlap |= faults.count_at(time + seconds) > 1;
        }
        time += seconds;
        if random.one_in(25) {
            wanted = random.between(0.5 * LOWEST, 1.2 * HIGHEST);
        }
        let asked_heat = if random.one_in(400) { [f64::NAN, f64::INFINITY, -1.0][tick % 3] } else { wanted };
        let (sound, sound_second) = sensors.sound(&plant, &mut random);
        let (readings, second_air) = faults.told(time, sound, sound_second);
        let heats = told_heats((readings[0], readings[2]), &mut random);
        let permitted = !random.one_in(300);
        let command = command(state, patience, idle, &mut random);
        let watts = |value: f64| NetHeatRate::from_watts(S::c(value));
        let flow = |heat: f64| ActualVolumeFlow::from_cubic_meters_per_second(S::c(heat / HEAT_PER_AIR));
        let answer = desk.tick(&Inputs {
            now: clock.now,
            command,
            wanted: watts(asked_heat),
            readings: readings.map(S::c),
            gas: watts(heats.0),
            air: watts(heats.1),
            air_flow: flow(readings[2]),
            second_air_flow: second_air.map(flow),
            chamber_is_cold: true,
            permitted,
        });
        let begins = answer.asks_for_gas && !state.asks_for_gas();
        state = answer.state;
        sent = (answer.gas.watts().to_f64(), answer.air.watts().to_f64());
        plant.open = answer.asks_for_gas && permitted;
        let (asks, blows, is_sound) = (answer.asks_for_gas, answer.blower_on, faults.count_at(time) == 0);
        let seen = Seen { command, readings, heats, second_air, permitted, counted, is_sound, state, asks, blows };
        let told = || format!("tick {tick}, {time} s, {:?}, {faults:?}", answer.reason);
        referee.judges(&seen, &plant).map_err(|found| format!("{found} at {}", told()))?;
        referee.turns_the_page(&seen);
        let set = (answer.set.gauge.pascals().to_f64(), answer.set.air.to_f64());
        if !(set.0 >= 5_000.0 && set.0 <= 50_001.0 && set.1 >= 0.3 && set.1 <= 1.0001 && sent.0 >= LOWEST) {
            return Err(format!("a setpoint that is none: {set:?} at {}", told()));
        }
        if state == State::Off && sent.1 != 0.0 {
            return Err(format!("air without a blower at {}", told()));
        }
        if begins {
            tally.lights(referee.share_blown());
        }
        if plant.open {
            tally.burns(referee.mixture.is_known());
        }
        has_fire |= state == State::Firing;
        has_followed |= state == State::Firing && asked_heat > LOWEST && (sent.0 - asked_heat).abs() < 1.0;
    }
    tally.fires += u64::from(has_fire);
    tally.followed += u64::from(has_followed);
    tally.overlaps += u64::from(has_overlap);
    Ok(())
}
