//! The burner as it really is, which the controller sees through its sensors only.

use crate::burner::{ACTUATOR_TOLERANCE, AIR_SPEED, FILLING_TIME, GAS_SPEED, HEAT_PER_AIR, HIGHEST};
use crate::random::Random;

/// Time constant of a dead blower's air, s: it falls to e^-(0.5/0.7) = 49 % in the longest tick.
const RUN_DOWN: f64 = 0.7;
/// The same of the gas from a cylinder that is empty, s.
const EMPTYING: f64 = 1.5;
/// How long what is left in the gas line burns on behind a shut valve, s.
const DRAINING: f64 = 1.0;

/// The slowest valve takes this long to shut, s: with the draining less than the closing time.
const CLOSING: f64 = 0.8;

/// What is broken in the shop at a moment.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Broken {
    pub blower_dead: bool,
    pub air_stuck: bool,
    pub cylinder_empty: bool,
    pub gas_stuck: bool,
    /// How much more flows than the actuator's position and tolerance say, as a share.
    pub gas_off: f64,
    pub air_off: f64,
    /// The valve does not shut.
    pub leaks: bool,
}

impl Broken {
    pub fn is_gas(&self) -> bool {
        self.cylinder_empty || self.gas_stuck || self.gas_off != 0.0
    }

    pub fn is_air(&self) -> bool {
        self.blower_dead || self.air_stuck || self.air_off != 0.0
    }
}

/// How fast an actuator moves, within what the controller was told.
#[derive(Clone, Copy)]
enum Pace {
    Slowest,
    Fastest,
    Any,
}

impl Pace {
    fn drawn(random: &mut Random) -> Self {
        [Pace::Slowest, Pace::Fastest, Pace::Any][random.next() as usize % 3]
    }

    fn speed(self, (slowest, fastest): (f64, f64), random: &mut Random) -> f64 {
        match self {
            Pace::Slowest => slowest,
            Pace::Fastest => fastest,
            Pace::Any => random.between(slowest, fastest),
        }
    }
}

fn moved(position: f64, command: f64, step: f64) -> f64 {
    if command > position { (position + step).min(command) } else { (position - step).max(command) }
}

/// Where everything stands, W.
pub struct Plant {
    pub gas_position: f64,
    pub air_position: f64,
    /// How the flow of an actuator differs from its setpoint.
    gas_error: f64,
    air_error: f64,
    gas_pace: Pace,
    air_pace: Pace,
    /// Share of the gas line that is filled.
    pub filled: f64,
    /// Whether the valve is asked to be open.
    pub open: bool,
    /// How long the valve takes to shut, s, and how long it will still be open.
    closes_after: f64,
    still_open: f64,
    pub broken: Broken,
}

impl Plant {
    pub fn new(random: &mut Random) -> Self {
        let (gas_error, air_error) = (random.often_an_end(ACTUATOR_TOLERANCE), random.often_an_end(ACTUATOR_TOLERANCE));
        Self {
            gas_position: random.between(0.0, 2.0 * HIGHEST),
            air_position: 0.0,
            gas_error,
            air_error,
            gas_pace: Pace::drawn(random),
            air_pace: Pace::drawn(random),
            filled: 0.0,
            open: false,
            closes_after: if random.one_in(2) { 0.0 } else { random.between(0.0, CLOSING) },
            still_open: 0.0,
            broken: Broken::default(),
        }
    }

    /// Moves both actuators toward their commands at speeds of their own.
    pub fn passes(&mut self, seconds: f64, gas_command: f64, air_command: f64, random: &mut Random) {
        let gas_step = self.gas_pace.speed(GAS_SPEED, random) * seconds;
        let air_step = self.air_pace.speed(AIR_SPEED, random) * seconds;
        if self.broken.cylinder_empty {
            self.gas_position *= (-seconds / EMPTYING).exp();
        } else if !self.broken.gas_stuck {
            self.gas_position = moved(self.gas_position, gas_command, gas_step);
        }
        if self.broken.blower_dead {
            self.air_position *= (-seconds / RUN_DOWN).exp();
        } else if !self.broken.air_stuck {
            self.air_position = moved(self.air_position, air_command, air_step);
        }
        self.still_open = if self.open { self.closes_after } else { (self.still_open - seconds).max(0.0) };
        self.filled = if self.open || self.still_open > 0.0 || self.broken.leaks {
            (self.filled + seconds / FILLING_TIME).min(1.0)
        } else {
            (self.filled - seconds / DRAINING).max(0.0)
        };
    }

    /// Whether gas can come that was not there: its valve is open, shuts, or leaks.
    pub fn may_rise(&self) -> bool {
        self.open || self.still_open > 0.0 || self.broken.leaks
    }

    /// Heat of the gas that a full line brings, W.
    pub fn gas_when_full(&self) -> f64 {
        self.gas_position * (1.0 + self.gas_error) * (1.0 + self.broken.gas_off)
    }

    /// Heat of the gas that reaches the fire, W.
    pub fn gas(&self) -> f64 {
        self.gas_when_full() * self.filled
    }

    /// Heat the air would burn at the target, W.
    pub fn air(&self) -> f64 {
        self.air_position * (1.0 + self.air_error) * (1.0 + self.broken.air_off)
    }

    /// The air as it flows, m3/s.
    pub fn air_flow(&self) -> f64 {
        self.air() / HEAT_PER_AIR
    }
}
