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
    /// Air purged without gas since it was last lost, m3: to the last tick, and in the seconds since.
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
    has_second_air: bool,
    /// Whether the blower was asked for at the last tick, and for how long it has not been, by the controller's clock.
    blows: bool,
    off_for: f64,
    is_first: bool,
    /// By the plant: since gas was last asked for or was there, s, whatever the sensors say.
    gas_gone_for: f64,
    /// The valve leaked at some time since the last tick.
    leaked: bool,
    /// What read the gas has hidden some that was there.
    gas_is_deceived: bool,
}

/// Gas that is less cannot be told from none, W: what reads as shut, at the least of its tolerance.
const OFF: f64 = 0.05 * LOWEST / (1.0 - READING_TOLERANCE);

/// A rule and whether it was broken.
fn rule(broken: bool, text: &str) -> Result<(), String> {
    if broken { Err(text.into()) } else { Ok(()) }
}

impl Referee {
    pub fn new(burner: Burner, has_second_air: bool) -> Self {
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
            has_second_air,
            blows: false,
            off_for: 0.0,
            is_first: true,
            gas_gone_for: f64::INFINITY,
            leaked: false,
            gas_is_deceived: false,
        }
    }

    /// Air that was really blown before this lighting, as a share of what is needed; none where nobody could know.
    pub fn share_blown(&self) -> Option<f64> {
        (!self.was_deceived).then(|| self.blown / self.burner.air_needed())
    }

    /// While the plant moves under what was sent: the mixture with the gas open, and the air that purges.
    pub fn moved(&mut self, plant: &Plant, sent: (f64, f64), seconds: f64) -> Result<(), String> {
        let found = self.mixture.moved(plant, sent, seconds, self.state == State::Lighting);
        // The blower stands only where no gas is: what flows without it has just begun to leak, or was hidden.
        let gas = plant.gas();
        self.leaked |= plant.broken.leaks;
        let is_bare = !self.blows && !self.is_first && gas > OFF && !self.leaked && !self.gas_is_deceived;
        rule(is_bare, "gas without the blower between two ticks")?;
        self.gas_gone_for = if plant.open { 0.0 } else { self.gas_gone_for + seconds };
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
        // The first tick of a counter tells no time.
        let seconds = if late || self.is_first { 0.0 } else { f64::from(seen.counted) * 1e-3 };
        let (before, asked) = (self.state, self.state.asks_for_gas());
        let begins = asks && !asked;
        self.state = seen.state;
        let in_band = self.mixture.ticks(plant, (gas, air), seen.state == State::Lighting);
        let unlocked = before == State::Lockout && seen.state != State::Lockout;
        let is_new = self.last_command.is_some_and(|last| last != seen.command);
        let are_heats = seen.heats.0 > -OFF && seen.heats.1 > -OFF && (seen.heats.0 + seen.heats.1).is_finite();
        self.watch(seen, asked, unlocked, seconds);
        self.judges_blower(seen, plant, before, seconds)?;
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
        let is_unseen = self.gas_unasked > CLOSING_TIME * 1.001 && seen.state != State::Lockout;
        rule(is_unseen, "gas that reads unasked and goes unseen")?;
        rule(unlocked && self.has_second_air && seen.second_air.is_none(), "unlocked without the second air sensor")?;
        rule(unlocked && (seen.command != Command::Reset || !is_new), "unlocked by nobody")?;
        let starts = before == State::Off && seen.state == State::PrePurge;
        rule(starts && (seen.command != Command::Start || !is_new), "started by nobody")?;
        let is_well = seen.is_sound && are_heats && !late && gas < 0.05 * LOWEST;
        let is_reset = before == State::Lockout && seen.command == Command::Reset && is_new;
        rule(is_reset && is_well && !unlocked, "a lock that nobody can open")?;
        self.ready_for = if before == State::Ready { self.ready_for + seconds } else { 0.0 };
        rule(self.ready_for > READY_TIME * 1.001 && seen.state == State::Ready, "ready for too long")?;
        let is_out = before == State::PostPurge && seen.state == State::Off && seen.command != Command::Reset;
        let is_through = before == State::PrePurge && seen.state == State::Ready;
        let is_short = self.share_blown().is_some_and(|share| share < 0.9999);
        rule(is_through && is_short, "ready without the air changes")?;
        rule(is_out && is_short, "the gas is not purged")?;
        rule(seen.blows != (seen.state != State::Off), "the blower is off, or never")?;
        if !asks {
            return Ok(());
        }
        rule(late, "gas after a late tick")?;
        rule(!seen.permitted, "gas that the safeguard refuses")?;
        rule(seen.command == Command::Stop, "gas after stop")?;
        rule(!are_heats, "gas on a heat that is none")?;
        rule(!matches!(seen.state, State::Lighting | State::Firing), "gas in a state without")?;
        let least_air = seen.second_air.map_or(air, |second| second.min(air));
        rule(least_air / HEAT_PER_AIR < LEAST_AIR * 0.9999, "gas without air")?;
        rule(self.has_second_air && seen.second_air.is_none(), "gas without the second air sensor")?;
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
        rule(least_air * most * target < lowest * gas * least, "gas on readings too rich")?;
        let lean = air * least * target > highest * gas * most;
        rule(seen.state == State::Firing && lean, "gas on readings too lean")?;
        in_band
    }

    /// The air purged to this tick.
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
        if self.state == State::PrePurge && before != State::PrePurge {
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

    /// The chip has begun anew.
    pub fn reboots(&mut self) {
        self.state = State::Off;
        self.mixture.shuts();
        (self.last, self.last_command, self.same_for) = (None, None, [0.0; 3]);
        (self.apart_for, self.gas_unasked, self.off_for, self.blows, self.is_first) = (0.0, 0.0, 0.0, false, true);
    }

    /// The blower by what the plant really does: gas off before the air.
    fn judges_blower(&mut self, seen: &Seen, plant: &Plant, before: State, seconds: f64) -> Result<(), String> {
        let [read, _, air] = seen.readings;
        let gas = plant.gas();
        let is_honest = (read - gas).abs() <= 1.0001 * READING_TOLERANCE * gas;
        // Gas that comes and goes between two ticks is seen by nobody.
        if gas > OFF {
            (self.gas_gone_for, self.gas_is_deceived) = (0.0, !is_honest);
        } else if self.gas_gone_for > CLOSING_TIME {
            self.gas_is_deceived = false;
        }
        let goes_off = before != State::Off && seen.state == State::Off;
        rule(!seen.blows && gas > OFF && is_honest, "the blower is off and gas flows")?;
        rule(!seen.blows && read > 0.05 * LOWEST, "the blower is off and gas reads")?;
        rule(goes_off && plant.may_rise() && !plant.broken.leaks, "the blower stops while the valve shuts")?;
        let is_early = self.gas_gone_for < 0.999 * CLOSING_TIME && !self.gas_is_deceived;
        rule(goes_off && is_early, "the blower stops before the closing time is over")?;
        let blew = self.blows || seen.blows;
        self.off_for = if blew { 0.0 } else { self.off_for + seconds };
        let reads_air = air / HEAT_PER_AIR >= LEAST_AIR * 1.0001;
        rule(self.off_for > RUN_DOWN * 1.001 && reads_air, "air that reads without a blower is believed")?;
        (self.blows, self.is_first, self.leaked) = (seen.blows, false, false);
        Ok(())
    }

    /// Keeps the readings for the next tick.
    pub fn turns_the_page(&mut self, seen: &Seen) {
        self.last = Some(seen.readings);
        self.last_command = Some(seen.command);
    }
}
