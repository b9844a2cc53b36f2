//! What a controller is told each tick, and what it answers.

use super::crosslimit::Doubt;
use super::sensors::SensorFault;
use super::sequence::State;
use super::setpoints::Setpoint;
use crate::quantity::{ActualVolumeFlow, NetHeatRate};

/// What a person asks for.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Command {
    /// Nothing new.
    #[default]
    Nothing,
    /// Air on, and blow through.
    Start,
    /// Light, with the person at the burner.
    Light,
    /// Gas off, then blow out.
    Stop,
    /// What was in doubt has been looked at.
    Reset,
}

/// What a controller is told each tick.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Inputs<const K: usize, S = f64> {
    /// A counter of milliseconds; it may wrap.
    pub now: u32,
    /// What the person asks for. One that stays the same acts once, except to stop.
    pub command: Command,
    /// Heat wanted.
    pub wanted: NetHeatRate<S>,
    /// The sensors' readings in their own units, in the order of their limits.
    pub readings: [S; K],
    /// Heat of the gas as it is read between its valve and the jet; no number where the readings mean nothing.
    ///
    /// A zero may lie a twentieth of the smallest fire low; further below nought is in doubt, as no number is.
    pub gas: NetHeatRate<S>,
    /// What the air, as it is read, would burn at the target air ratio; as for the gas.
    pub air: NetHeatRate<S>,
    /// The same air as a volume flow. Work it out of the same reading: only a second one is compared with it.
    pub air_flow: ActualVolumeFlow<S>,
    /// A second reading of it, where there is one: one that was there and is gone is in doubt. The lesser of the two
    /// counts for the air changes.
    pub second_air_flow: Option<ActualVolumeFlow<S>>,
    /// Whether the listed safeguard permits gas.
    pub permitted: bool,
}

/// Why gas was last refused on doubt.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum Reason {
    /// A tick came too late, or the clock went backward or stands still.
    Late,
    /// A sensor, by its place among the readings.
    Sensor(usize, SensorFault),
    /// The air's two readings: they contradict, one is no number, or the second is gone.
    Air(SensorFault),
    /// Gas and air while they are limited.
    Mixture(Doubt),
    /// Gas reads although none is asked for.
    GasUnasked,
}

/// What a controller answers each tick.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Outputs<S = f64> {
    /// Where it is.
    pub state: State,
    /// Whether gas is asked for: a request to the safeguard, never a command to a valve.
    pub asks_for_gas: bool,
    /// Whether the blower is to run.
    pub blower_on: bool,
    /// Heat the gas is set for.
    pub gas: NetHeatRate<S>,
    /// Heat the air is set for; nought where the blower is off.
    pub air: NetHeatRate<S>,
    /// Gauge pressure and air setting of both.
    pub set: Setpoint<S>,
    /// What was in doubt in this tick.
    pub reason: Option<Reason>,
}
