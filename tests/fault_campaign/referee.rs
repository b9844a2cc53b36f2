//! What must never happen, judged by what is really there and by what the sensors really read.

use jetwright::control::{Command, State};

use crate::burner::*;
use crate::mixture::Mixture;
use crate::plant::Plant;

/// One tick as the referee sees it.
pub struct Seen {
    pub command: Command,
    pub readings: [f64; 3],
    /// Gas and air as the controller was told them, W.
    pub heats: (f64, f64),
    pub second_air: Option<f64>,
    pub permitted: bool,
    /// What the counter of milliseconds says has passed.
    pub counted: u32,
    /// Nothing is broken now.
    pub is_sound: bool,
    pub state: State,
    pub asks: bool,
    pub blows: bool,
}

pub struct Referee {
    burner: Burner,
    pub mixture: Mixture,
    /// Air blown through without gas since it was last lost, m3: to the last tick, and in the seconds since.
    blown: f64,
    blown_since: f64,
    since: f64,
    /// Flow at the end of the last step, m3/s; the same and the gas, W, at the last tick.
    air_was: f64,
    air_held: f64,
    gas_held: f64,
    /// Since the count last began again the air or a whiff of gas was once known to nobody.
    was_deceived: bool,
    state: State,
    ready_for: f64,
    last_command: Option<Command>,
    last: Option<[f64; 3]>,
    same_for: [f64; 3],
    apart_for: f64,
    gas_unasked: f64,
}

/// Gas that is less cannot be told from none, W: what reads as shut, at the least of its tolerance.
const OFF: f64 = 0.05 * LOWEST / (1.0 - READING_TOLERANCE);

/// A rule and whether it was broken.
fn rule(broken: bool, text: &str) -> Result<(), String> {
    if broken { Err(text.into()) } else { Ok(()) }
}

impl Referee {
    pub fn new(burner: Burner) -> Self {
        Self {
            mixture: Mixture::new(burner.band),
            burner,
            blown: 0.0,
            blown_since: 0.0,
            since: 0.0,
            air_was: 0.0,
            air_held: 0.0,
            gas_held: 0.0,
            was_deceived: false,
            state: State::Off,
            ready_for: 0.0,
            last_command: None,
            last: None,
            same_for: [0.0; 3],
            apart_for: 0.0,
            gas_unasked: 0.0,
        }
    }

    /// Air that was really blown before this lighting, as a share of what is needed; none where nobody could know.
    pub fn share_blown(&self) -> Option<f64> {
        (!self.was_deceived).then(|| self.blown / self.burner.air_needed())
    }

    /// While the plant moves under what was sent: the mixture with the gas open, and the air that blows through.
    pub fn moved(&mut self, plant: &Plant, sent: (f64, f64), seconds: f64) -> Result<(), String> {
        let found = self.mixture.moved(plant, sent, seconds, self.state == State::Lighting);
        // Never more than is there.
        let least = plant.air_flow().min(self.air_was);
        self.air_was = plant.air_flow();
        self.since += seconds;
        self.blown_since += least * seconds;
        let is_lost = least < 0.9999 * LEAST_AIR && !self.mixture.air.is_astray;
        if plant.open || is_lost {
            (self.blown, self.blown_since, self.since) = (0.0, 0.0, 0.0);
        }
        found
    }

    /// After a tick: what was asked, against what could be known.
    pub fn judges(&mut self, seen: &Seen, plant: &Plant) -> Result<(), String> {
        let Seen { readings: [gas, _, air], asks, .. } = *seen;
        let late = seen.counted > LONGEST_TICK;
        let seconds = if late { 0.0 } else { f64::from(seen.counted) * 1e-3 };
        let (before, asked) = (self.state, self.state.asks_for_gas());
        let begins = asks && !asked;
        self.state = seen.state;
        let in_band = self.mixture.ticks(plant, (gas, air), seen.state == State::Lighting);
        let unlocked = before == State::Locked && seen.state != State::Locked;
        let is_new = self.last_command.is_some_and(|last| last != seen.command);
        let are_heats = seen.heats.0 > -OFF && seen.heats.1 > -OFF && (seen.heats.0 + seen.heats.1).is_finite();
        self.watch(seen, asked, unlocked, seconds);
        self.count_air(plant, before, gas < 0.05 * LOWEST);
        if begins {
            rule(self.share_blown().is_some_and(|share| share < 0.9999), "lit without the air changes")?;
            rule(gas > 0.05 * LOWEST, "lit with gas that reads unasked")?;
            rule(seen.command != Command::Light || !is_new, "gas that nobody asked for")?;
            rule(before != State::Ready, "lit before it was ready")?;
            let off = |flow: f64| (flow / self.burner.lighting - 1.0).abs() > 1.0001 * ACTUATOR_TOLERANCE;
            rule(!self.mixture.gas.is_astray && off(plant.gas_when_full()), "lit while the gas's actuator moves")?;
            rule(!self.mixture.air.is_astray && off(plant.air()), "lit while the air's actuator moves")?;
        }
        let is_unseen = self.gas_unasked > CLOSING_TIME * 1.001 && seen.state != State::Locked;
        rule(is_unseen, "gas that reads unasked and goes unseen")?;
        rule(unlocked && (seen.command != Command::Reset || !is_new), "unlocked by nobody")?;
        let starts = before == State::Off && seen.state == State::BlowingThrough;
        rule(starts && (seen.command != Command::Start || !is_new), "started by nobody")?;
        let is_well = seen.is_sound && are_heats && !late && gas < 0.05 * LOWEST;
        let is_reset = before == State::Locked && seen.command == Command::Reset && is_new;
        rule(is_reset && is_well && !unlocked, "a lock that nobody can open")?;
        self.ready_for = if before == State::Ready { self.ready_for + seconds } else { 0.0 };
        rule(self.ready_for > READY_TIME * 1.001 && seen.state == State::Ready, "ready for too long")?;
        let is_out = before == State::BlowingOut && seen.state == State::Off && seen.command != Command::Reset;
        let is_through = before == State::BlowingThrough && seen.state == State::Ready;
        let is_short = self.share_blown().is_some_and(|share| share < 0.9999);
        rule(is_through && is_short, "ready without the air changes")?;
        rule(is_out && is_short, "the gas is not blown out")?;
        rule(seen.blows != (seen.state != State::Off), "the blower is off, or never")?;
        if !asks {
            return Ok(());
        }
        rule(late, "gas after a late tick")?;
        rule(!seen.permitted, "gas that the safeguard refuses")?;
        rule(seen.command == Command::Stop, "gas after stop")?;
        rule(!are_heats, "gas on a heat that is none")?;
        rule(!matches!(seen.state, State::Lighting | State::Firing), "gas in a state without")?;
        let air_is_there = air / HEAT_PER_AIR >= LEAST_AIR * 0.9999;
        rule(!air_is_there, "gas without air")?;
        let limits = seen.readings.into_iter().zip(self.burner.sensors);
        for (place, (reading, [lowest, highest, fastest, noise])) in limits.enumerate() {
            rule(!(reading >= lowest && reading <= highest), "gas on a reading out of range")?;
            let step = self.last.map_or(0.0, |last| (reading - last[place]).abs());
            rule(step > (fastest * seconds + noise) * 1.001, "gas on a reading that jumped")?;
            rule(self.same_for[place] > STUCK_AFTER * 1.001, "gas on a sensor that is stuck")?;
        }
        rule(self.apart_for > AGREEMENT.1 * 1.001, "gas on sensors that contradict")?;
        let (least, most) = (1.0 - READING_TOLERANCE, 1.0 + READING_TOLERANCE);
        let (lowest, target, highest) = self.burner.band;
        rule(air * most * target < lowest * gas * least, "gas on readings too rich")?;
        let lean = air * least * target > highest * gas * most;
        rule(seen.state == State::Firing && lean, "gas on readings too lean")?;
        in_band
    }

    /// The air blown through to this tick.
    fn count_air(&mut self, plant: &Plant, before: State, reads_off: bool) {
        let flow = plant.air_flow();
        let least = flow.min(self.air_held);
        // Air that goes or gas that comes between two ticks, and no longer, is seen by nobody.
        let since = self.blown_since.max(least * self.since);
        let has_gas = plant.gas().max(self.gas_held) > OFF;
        self.blown = if has_gas || least < 0.9999 * LEAST_AIR { 0.0 } else { self.blown + since };
        self.gas_held = plant.gas();
        (self.blown_since, self.since, self.air_held) = (0.0, 0.0, flow);
        self.was_deceived |= self.mixture.air.is_unknown || plant.gas() > OFF && reads_off;
        if self.state == State::BlowingThrough && before != State::BlowingThrough {
            self.was_deceived = false;
        }
    }

    fn watch(&mut self, seen: &Seen, asked: bool, unlocked: bool, seconds: f64) {
        for place in 0..3 {
            let same = asked && self.last.is_some_and(|last| last[place] == seen.readings[place]);
            self.same_for[place] = if same { self.same_for[place] + seconds } else { 0.0 };
        }
        let [gas, _, air] = seen.readings;
        let apart = seen.second_air.is_some_and(|second| (second - air).abs() > AGREEMENT.0 * second.max(air) * 1.001);
        self.apart_for = if apart { self.apart_for + seconds } else { 0.0 };
        let is_fine = asked || gas < 0.05 * LOWEST || unlocked;
        self.gas_unasked = if is_fine { 0.0 } else { self.gas_unasked + seconds };
    }

    /// Keeps the readings for the next tick.
    pub fn turns_the_page(&mut self, seen: &Seen) {
        self.last = Some(seen.readings);
        self.last_command = Some(seen.command);
    }
}
