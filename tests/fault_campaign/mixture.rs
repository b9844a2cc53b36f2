//! The air ratio with the gas open, at every tick and on all of the way between two.
//!
//! A side of the mixture is known by its reading, or by its actuator standing where its commands can have brought it.
//! As long as one of the two is so for gas and for air, the band is owed. It is owed for the whole box of what gas and
//! air pass on a step of the way, whatever the timing of the two. Four things no controller can prevent, and they
//! alone are let pass:
//!
//! - **Within a tick**, what a part that is broken does by itself: it is judged as if it stood where it stood at the
//!   last tick. At the tick all is judged as it is, so that the gas is off in the tick that sees it. Meanwhile a dead
//!   blower's air falls by e^-(t/0.7 s), to 49 % in the longest tick; over a tick that is missed nothing but the listed
//!   safeguard and a watchdog shut the gas.
//! - **While the line fills**, for the time that its volume explains: the gas is judged as a full line brings it.
//! - **A regulator astray behind a shut valve** cannot be seen before its gas comes: too little of it may come for the
//!   lighting time, too much of it until the next tick.
//! - **A side whose sensor lies while its actuator is astray** is known to nobody. What its sensor reads is then
//!   judged, by the rules for readings.

use crate::burner::{
    ACTUATOR_TOLERANCE, AIR_SPEED, CLOCK_TOLERANCE, FILLING_TIME, GAS_SPEED, HIGHEST, LIGHTING_TIME, READING_TOLERANCE,
};
use crate::plant::Plant;

/// Where an actuator that is sound can stand; its flow is as far off as its tolerance.
struct Reach {
    low: f64,
    high: f64,
    /// Slowest and fastest, W/s.
    speed: (f64, f64),
}

impl Reach {
    fn passes(&mut self, command: f64, seconds: f64) {
        let (slow, fast) = (self.speed.0 * seconds, self.speed.1 * seconds);
        self.low = if self.low < command { command.min(self.low + slow) } else { command.max(self.low - fast) };
        self.high = if self.high > command { command.max(self.high - slow) } else { command.min(self.high + fast) };
    }

    fn has(&self, flow: f64) -> bool {
        let (least, most) = (self.low * (1.0 - ACTUATOR_TOLERANCE), self.high * (1.0 + ACTUATOR_TOLERANCE));
        (least - 1e-6..=most + 1e-6).contains(&flow)
    }
}

/// Gas or air.
pub struct Side {
    reach: Reach,
    /// Flow at the end of the last step, and at the last tick, W.
    was: f64,
    held: f64,
    /// Broken at some time since the last tick, this tick with it.
    broke: bool,
    /// Broken or out of reach at some time since the last tick.
    pub is_astray: bool,
    /// At the last tick neither its reading nor its commands told where it stood.
    pub is_unknown: bool,
}

impl Side {
    fn new(speed: (f64, f64)) -> Self {
        let reach = Reach { low: 0.0, high: 2.0 * HIGHEST, speed };
        Self { reach, was: 0.0, held: 0.0, broke: false, is_astray: false, is_unknown: false }
    }

    fn moved(&mut self, flow: f64, command: f64, seconds: f64, is_broken: bool) {
        self.reach.passes(command, seconds);
        self.broke |= is_broken;
        self.is_astray |= is_broken || !self.reach.has(flow);
    }

    /// The gas that flows is not all that its regulator lets pass, while its valve is shut or its line fills.
    fn ticks(&mut self, let_pass: f64, flow: f64, reading: f64, is_broken: bool) {
        self.broke = is_broken;
        let is_honest = (reading - flow).abs() <= 1.0001 * READING_TOLERANCE * flow;
        self.is_astray = !self.reach.has(let_pass);
        self.is_unknown = self.is_astray && !is_honest;
        self.held = flow;
    }

    /// The least and the most of a step, as far as it could be foreseen at the last tick.
    fn foreseen(&self, now: f64, unless: bool) -> (f64, f64) {
        let (low, high) = (self.was.min(now), self.was.max(now));
        if unless { (low.max(self.held), high.min(self.held)) } else { (low, high) }
    }
}

pub struct Mixture {
    band: (f64, f64, f64),
    pub gas: Side,
    pub air: Side,
    /// What the gas was on the way to be, with its line full.
    full_was: f64,
    open_for: Option<f64>,
}

impl Mixture {
    pub fn new(band: (f64, f64, f64)) -> Self {
        Self { band, gas: Side::new(GAS_SPEED), air: Side::new(AIR_SPEED), full_was: 0.0, open_for: None }
    }

    /// The valve was shut between two ticks.
    pub fn shuts(&mut self) {
        self.open_for = None;
    }

    /// Whether the band is owed now.
    pub fn is_known(&self) -> bool {
        !(self.gas.is_unknown || self.air.is_unknown)
    }

    /// After a step of the plant under the commands of the last tick.
    pub fn moved(&mut self, plant: &Plant, sent: (f64, f64), seconds: f64, lights: bool) -> Result<(), String> {
        let broken = plant.broken;
        let (gas, air, full) = (plant.gas(), plant.air(), plant.gas_when_full());
        self.gas.moved(full, sent.0, seconds, broken.is_gas());
        self.air.moved(air, sent.1, seconds, broken.is_air());
        let mut found = Ok(());
        if let (Some(open_for), true) = (self.open_for, self.is_known()) {
            let (least_gas, most_gas) = self.gas.foreseen(gas, self.gas.broke || lights && self.gas.is_astray);
            let (least_air, most_air) = self.air.foreseen(air, self.air.broke);
            let least_gas = match lights {
                true if self.gas.is_astray => f64::INFINITY,
                true if open_for < FILLING_TIME => full.min(self.full_was),
                _ => least_gas,
            };
            found = in_band(self.band, (least_gas, most_gas), (least_air, most_air))
                .map_err(|found| format!("{found} between two ticks, {open_for} s open, {broken:?}"));
        }
        self.open_for = self.open_for.map(|open_for| open_for + seconds);
        (self.gas.was, self.air.was, self.full_was) = (gas, air, full);
        found
    }

    /// After a tick that has read `(gas, air)`.
    pub fn ticks(&mut self, plant: &Plant, readings: (f64, f64), lights: bool) -> Result<(), String> {
        let (gas, air) = (plant.gas(), plant.air());
        self.gas.ticks(plant.gas_when_full(), gas, readings.0, plant.broken.is_gas());
        self.air.ticks(air, air, readings.1, plant.broken.is_air());
        self.open_for = plant.open.then(|| self.open_for.unwrap_or(0.0));
        let Some(open_for) = self.open_for else { return Ok(()) };
        if !self.is_known() {
            return Ok(());
        }
        let least_gas = match lights {
            true if self.gas.is_astray && open_for <= LIGHTING_TIME * (1.0 + CLOCK_TOLERANCE) * 1.0001 => f64::INFINITY,
            true if open_for < FILLING_TIME => plant.gas_when_full(),
            _ => gas,
        };
        in_band(self.band, (least_gas, gas), (air, air))
            .map_err(|found| format!("{found}, {open_for} s open, {:?}", plant.broken))
    }
}

/// Whether the least air is enough for the most gas, and the most air not too much for the least.
fn in_band(band: (f64, f64, f64), gas: (f64, f64), air: (f64, f64)) -> Result<(), String> {
    let (richest, leanest) = (band.1 * air.0 / gas.1, band.1 * air.1 / gas.0);
    // Zero over zero is no mixture.
    if richest < band.0 * 0.9999 || leanest > band.2 * 1.0001 {
        return Err(format!("air ratio {richest} to {leanest}"));
    }
    Ok(())
}
