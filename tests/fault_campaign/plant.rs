//! The burner as it really is, which the controller sees through its sensors only.

use crate::random::Random;

/// Smallest and largest fire, W.
pub const LOWEST: f64 = 10_000.0;
pub const HIGHEST: f64 = 30_000.0;
pub const LIGHTING: f64 = 14_000.0;
/// Slowest and fastest actuator, W/s.
pub const SPEED: (f64, f64) = (5_000.0, 20_000.0);
pub const ACTUATOR_TOLERANCE: f64 = 0.03;
pub const READING_TOLERANCE: f64 = 0.01;
/// Heat a cubic metre of air burns at the target air ratio, J/m3.
pub const HEAT_PER_AIR: f64 = 3.0e6;

/// What is broken in the shop.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Broken {
    Nothing,
    BlowerDead,
    GasStuck,
    AirStuck,
}

/// Where everything stands, W.
pub struct Plant {
    pub gas_position: f64,
    pub air_position: f64,
    /// How the flow of an actuator differs from its setpoint.
    gas_error: f64,
    air_error: f64,
    /// Share of the gas line that is filled.
    pub filled: f64,
    pub open: bool,
    pub broken: Broken,
}

impl Plant {
    pub fn new(random: &mut Random) -> Self {
        let mut error = || random.between(-ACTUATOR_TOLERANCE, ACTUATOR_TOLERANCE);
        let (gas_error, air_error) = (error(), error());
        Self {
            gas_position: random.between(0.0, 2.0 * HIGHEST),
            air_position: 0.0,
            gas_error,
            air_error,
            filled: 0.0,
            open: false,
            broken: Broken::Nothing,
        }
    }

    /// Moves both actuators toward their commands at speeds of their own.
    pub fn passes(&mut self, seconds: f64, gas_command: f64, air_command: f64, random: &mut Random) {
        let mut moved = |position: f64, command: f64| {
            let step = random.between(SPEED.0, SPEED.1) * seconds;
            if command > position { (position + step).min(command) } else { (position - step).max(command) }
        };
        let (gas, air) = (moved(self.gas_position, gas_command), moved(self.air_position, air_command));
        if self.broken != Broken::GasStuck {
            self.gas_position = gas;
        }
        match self.broken {
            Broken::AirStuck => {}
            Broken::BlowerDead => self.air_position *= (-seconds / 0.7).exp(),
            _ => self.air_position = air,
        }
        self.filled = if self.open { (self.filled + seconds / 0.4).min(1.0) } else { (self.filled - seconds).max(0.0) };
    }

    /// Heat of the gas that reaches the fire, W.
    pub fn gas(&self) -> f64 {
        self.gas_position * (1.0 + self.gas_error) * self.filled
    }

    /// Heat the air would burn at the target, W.
    pub fn air(&self) -> f64 {
        self.air_position * (1.0 + self.air_error)
    }

    /// The air as it flows, m3/s.
    pub fn air_flow(&self) -> f64 {
        self.air() / HEAT_PER_AIR
    }
}
