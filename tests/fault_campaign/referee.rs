//! What must never happen, judged by what is really there and by what the sensors really read.

use jetwright::control::{Command, State};

use crate::plant::{ACTUATOR_TOLERANCE, Broken, HEAT_PER_AIR, LOWEST, Plant, READING_TOLERANCE};

pub const BAND: (f64, f64, f64) = (0.92, 1.05, 1.25);
/// Chamber, m3, and its air changes.
pub const VOLUME: f64 = 0.01;
pub const CHANGES: f64 = 4.0;
/// Air under this is lost, m3/s.
pub const LEAST_AIR: f64 = 0.002;
/// Longest tick, ms.
pub const LONGEST_TICK: u32 = 500;
pub const CLOSING_TIME: f64 = 2.0;
pub const STUCK_AFTER: f64 = 2.5;
/// How far two readings of the air may differ, and how long, s.
pub const AGREEMENT: (f64, f64) = (0.1, 1.0);
/// What healthy sensors read: lowest, highest, fastest a second, noise. Gauge and air in the heat they stand for, W;
/// gas temperature, K.
pub const SENSORS: [[f64; 4]; 3] = [[-1.0, 40e3, 60e3, 700.0], [240.0, 330.0, 2.0, 0.5], [-1.0, 40e3, 25e3, 700.0]];

/// One tick as the referee sees it.
pub struct Seen {
    pub command: Command,
    pub readings: [f64; 3],
    pub second_air: Option<f64>,
    pub permitted: bool,
    /// What the counter of milliseconds says has passed.
    pub counted: u32,
    pub state: State,
    pub asks: bool,
}

#[derive(Default)]
pub struct Referee {
    /// Air blown through without gas since it was last lost, m3.
    blown: f64,
    asked: bool,
    last: Option<[f64; 3]>,
    same_for: [f64; 3],
    apart_for: f64,
    gas_unasked: f64,
}

/// A rule and whether it was broken.
fn rule(broken: bool, text: &str) -> Result<(), String> {
    if broken { Err(text.into()) } else { Ok(()) }
}

impl Referee {
    /// While the plant moves: the mixture with the gas open, and the air that blows through.
    pub fn moved(&mut self, plant: &Plant, state: State, seconds: f64) -> Result<(), String> {
        let gas_off = !plant.open && plant.filled == 0.0;
        let lost = plant.air_flow() < 0.98 * LEAST_AIR;
        self.blown = if gas_off && !lost { self.blown + plant.air_flow() * seconds } else { 0.0 };
        // No controller holds a mixture whose blower dies between two ticks, or knows before the gas comes that its
        // regulator stands elsewhere: these are judged at the next tick.
        let unforeseen = match plant.broken {
            Broken::BlowerDead => true,
            Broken::GasStuck => state == State::Lighting,
            _ => false,
        };
        if unforeseen { Ok(()) } else { mixture(plant, state) }
    }

    /// After a tick: what was asked, against what could be known.
    pub fn judges(&mut self, seen: &Seen, plant: &Plant) -> Result<(), String> {
        let Seen { readings: [gas, _, air], asks, .. } = *seen;
        let late = seen.counted > LONGEST_TICK;
        let seconds = if late { 0.0 } else { f64::from(seen.counted) * 1e-3 };
        self.watch(seen, seconds);
        let begins = asks && !self.asked;
        rule(begins && self.blown < CHANGES * VOLUME * 0.9999, "lit without the air changes")?;
        rule(begins && self.gas_unasked > CLOSING_TIME + 0.5, "lit with gas that reads unasked")?;
        rule(begins && seen.command != Command::Light, "gas that nobody asked for")?;
        self.asked = asks;
        if !asks {
            return Ok(());
        }
        rule(late, "gas after a late tick")?;
        rule(!seen.permitted, "gas that the safeguard refuses")?;
        rule(seen.command == Command::Stop, "gas after stop")?;
        rule(!matches!(seen.state, State::Lighting | State::Firing), "gas in a state without")?;
        let air_is_there = air / HEAT_PER_AIR >= LEAST_AIR * 0.9999;
        rule(!air_is_there, "gas without air")?;
        for (place, (reading, [lowest, highest, fastest, noise])) in seen.readings.into_iter().zip(SENSORS).enumerate()
        {
            rule(!(reading >= lowest && reading <= highest), "gas on a reading out of range")?;
            let step = self.last.map_or(0.0, |last| (reading - last[place]).abs());
            rule(step > (fastest * seconds + noise) * 1.001, "gas on a reading that jumped")?;
            rule(self.same_for[place] > STUCK_AFTER * 1.001, "gas on a sensor that is stuck")?;
        }
        rule(self.apart_for > AGREEMENT.1 * 1.001, "gas on sensors that contradict")?;
        let (least, most) = (1.0 - READING_TOLERANCE, 1.0 + READING_TOLERANCE);
        rule(air * most * BAND.1 < BAND.0 * gas * least, "gas on readings too rich")?;
        let lean = air * least * BAND.1 > BAND.2 * gas * most;
        rule(seen.state == State::Firing && lean, "gas on readings too lean")?;
        mixture(plant, seen.state)
    }

    fn watch(&mut self, seen: &Seen, seconds: f64) {
        for place in 0..3 {
            let same = self.asked && self.last.is_some_and(|last| last[place] == seen.readings[place]);
            self.same_for[place] = if same { self.same_for[place] + seconds } else { 0.0 };
        }
        let [gas, _, air] = seen.readings;
        let apart = seen.second_air.is_some_and(|second| (second - air).abs() > AGREEMENT.0 * second.max(air) * 1.001);
        self.apart_for = if apart { self.apart_for + seconds } else { 0.0 };
        self.gas_unasked = if self.asked || gas < 0.05 * LOWEST { 0.0 } else { self.gas_unasked + seconds };
    }

    /// Keeps the readings for the next tick.
    pub fn turns_the_page(&mut self, seen: &Seen) {
        self.last = Some(seen.readings);
    }
}

/// The air ratio with the gas open. Gas that has only begun to come is lean whatever anybody does.
fn mixture(plant: &Plant, state: State) -> Result<(), String> {
    if !plant.open || !matches!(state, State::Lighting | State::Firing) {
        return Ok(());
    }
    let ratio = BAND.1 * plant.air() / plant.gas();
    let coming = state == State::Lighting || plant.filled < 1.0 - ACTUATOR_TOLERANCE;
    let within = ratio >= BAND.0 * 0.9999 && (coming || ratio <= BAND.2 * 1.0001);
    if within { Ok(()) } else { Err(format!("air ratio {ratio} in {state:?}, broken: {:?}", plant.broken)) }
}
