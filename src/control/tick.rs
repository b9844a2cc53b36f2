//! What a controller is told each tick, and what it answers.

use super::reason::Reason;
use super::sequence::State;
use super::setpoints::Setpoint;
use crate::quantity::{ActualVolumeFlow, NetHeatRate};

/// What a person asks for.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Command {
    /// Nothing new.
    #[default]
    Nothing,
    /// Air on, and purge.
    Start,
    /// Light, with the person at the burner.
    Light,
    /// Gas off, then purge.
    Stop,
    /// What was at fault has been looked at.
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
    /// A zero may lie a twentieth of the smallest fire low; further below zero is a fault, as no number is.
    pub gas: NetHeatRate<S>,
    /// What the air, as it is read, would burn at the target air ratio; as for the gas.
    pub air: NetHeatRate<S>,
    /// The same air as a volume flow. Compute it of the same reading: only a second one is compared with it. A heat and a
    /// flow that disagree by more than a factor of two, by
    /// [`air_heat`](super::ControllerSettings::air_heat), are a fault.
    pub air_flow: ActualVolumeFlow<S>,
    /// A second reading of it, where [`has_second_air`](super::ControllerSettings::has_second_air) says that one is
    /// fitted; there it is a fault when it is missing, elsewhere when it is given. The lesser of the two counts for air
    /// that is lost, for the air changes and for a mixture that is too rich.
    pub second_air_flow: Option<ActualVolumeFlow<S>>,
    /// Whether the chamber is known to be cold, so that it draws no air of its own: then air that reads while the blower
    /// is off is a fault. False where nothing is known.
    pub chamber_is_cold: bool,
    /// Whether the listed safeguard permits gas.
    pub permitted: bool,
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
    /// Heat the air is set for; zero where the blower is off.
    pub air: NetHeatRate<S>,
    /// Gauge pressure and air setting of both.
    pub set: Setpoint<S>,
    /// What was at fault in this tick.
    pub reason: Option<Reason>,
    /// What the lockout began with, until it is reset.
    pub first_cause: Option<Reason>,
}
