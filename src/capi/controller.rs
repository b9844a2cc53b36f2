//! The whole controller.

#![allow(unsafe_code, reason = "exported names count as unsafe")]

use core::mem::MaybeUninit;

use super::kept::{MADE, keep, kept, kept_mut};
use super::limiting::{JetwrightAirChanges, JetwrightCrossLimit};
use super::record::{code, sensor};
use super::refused::{JetwrightRefused, cleared, told};
use super::status::{JetwrightStatus, given, status, unless_answered};
use super::table::{JETWRIGHT_ROWS, JetwrightSetpoint, JetwrightTable};
use crate::control::{Command, Controller, ControllerSettings, Inputs, SensorLimits, State};
use crate::quantity::{ActualVolumeFlow, Duration, NetHeatRate};

/// Words of a `JetwrightController`.
pub const JETWRIGHT_CONTROLLER_WORDS: usize = 230;

pub(super) type Desk = Controller<JETWRIGHT_ROWS, 3, f32>;

/// A controller, made by `jetwright_controller_make`. Its words are not for reading.
#[derive(Debug)]
#[repr(C)]
pub struct JetwrightController {
    /// Set when it has been made.
    made: u32,
    /// Set while a call works on it.
    busy: u32,
    /// Of all that decides about gas, as the last call left it.
    sum: u32,
    /// The controller.
    words: [MaybeUninit<u32>; JETWRIGHT_CONTROLLER_WORDS],
}

/// What a healthy sensor's readings look like, in the sensor's own unit. All are finite.
#[derive(Clone, Copy, Debug)]
#[repr(C)]
pub struct JetwrightSensorLimits {
    /// Smallest reading of a healthy sensor: under its zero by its offset, above what a broken wire reads.
    pub lowest: f32,
    /// Largest reading of a healthy sensor, above `lowest`.
    pub highest: f32,
    /// Fastest change of what is measured, per second; above zero.
    pub fastest: f32,
    /// Change between two readings that noise alone can make; zero or more.
    pub noise: f32,
    /// A live sensor never reads exactly the same for this long, s; zero where it may, and nothing below zero.
    pub stuck_after_s: f32,
}

/// What a controller is told once. Times are above zero and finite.
#[derive(Clone, Copy, Debug)]
#[repr(C)]
pub struct JetwrightControllerSettings {
    /// Three sensors: gauge pressure, gas temperature, air.
    pub sensors: [JetwrightSensorLimits; 3],
    /// Heat the fire is lit at, W; within the limiter's range.
    pub lighting_w: f32,
    /// Longest time from asking for gas until it reads what it was set to, s: as little more than its line takes to
    /// fill as the ticks allow, because so long the mixture may be too lean.
    pub lighting_time_s: f32,
    /// How long the gas must then read so; longer than its line takes to fill, s.
    pub steady_time_s: f32,
    /// Longest wait after purging, s.
    pub ready_time_s: f32,
    /// Longest time gas may read after it was last asked for, s.
    pub closing_time_s: f32,
    /// How long air may still read after the blower was switched off, s: until it has run down. Longer air from a cold
    /// chamber locks out.
    pub run_down_time_s: f32,
    /// Longest time between two ticks, ms: from 1 to 2000. A thousand ticks without one count as a clock that has stopped.
    pub longest_tick_ms: u32,
    /// How far the time counted between two ticks may lie from the time that passed, as a share of it: from zero to
    /// under 0.3; 0.01 to 0.03 for a crystal and ticks of 100 ms, of which one millisecond is 0.01 already.
    pub clock_tolerance: f32,
    /// Air under this is lost, m3/s: from a tenth to all of what the smallest heat input needs.
    pub least_air_m3_per_s: f32,
    /// Heat that a cubic meter of air burns at the target air ratio, J/m3: from 3e5 to 1e7; `jetwright air` prints it.
    pub air_heat_j_per_m3: f32,
    /// 1 where a second air sensor is fitted, 0 where none is.
    pub has_second_air: u32,
    /// How far two readings of the air may differ, as a share; above zero.
    pub air_agreement: f32,
    /// For how long they may differ by more, s.
    pub air_agreement_time_s: f32,
}

/// What a person asks for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[repr(u32)]
pub enum JetwrightCommand {
    /// Nothing new.
    Nothing = 0,
    /// Air on, and purge.
    Start = 1,
    /// Light, with the person at the burner.
    Light = 2,
    /// Gas off, then purge.
    Stop = 3,
    /// What was at fault has been looked at.
    Reset = 4,
}

/// Where the controller is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[repr(u32)]
pub enum JetwrightState {
    /// Nothing runs.
    Off = 0,
    /// Air on, counting its changes; no gas.
    PrePurge = 1,
    /// Purged; no gas, waiting for a person.
    Ready = 2,
    /// Gas asked for, and not there yet.
    Lighting = 3,
    /// Gas asked for, following the heat wanted.
    Firing = 4,
    /// Gas off, air still on.
    PostPurge = 5,
    /// Something was at fault: gas off, air on, until a person resets.
    Lockout = 6,
}

/// What a controller is told each tick.
#[derive(Clone, Copy, Debug)]
#[repr(C)]
pub struct JetwrightInputs {
    /// A counter of milliseconds; it may wrap.
    pub now_ms: u32,
    /// A `JetwrightCommand`; anything else stops.
    pub command: u32,
    /// Net heat wanted, W.
    pub wanted_w: f32,
    /// The sensors' readings in their own units, in the order of their limits.
    pub readings: [f32; 3],
    /// Net heat of the gas as it is read between its valve and the jet, W; `NAN` where the readings mean nothing.
    pub gas_w: f32,
    /// What the air as it is read would burn at the target air ratio, W; as for the gas.
    pub air_w: f32,
    /// The same air, m3/s.
    pub air_flow_m3_per_s: f32,
    /// A second reading of it, m3/s; -1 or less where there is none. Locks out where the settings say otherwise.
    pub second_air_flow_m3_per_s: f32,
    /// 1 where the chamber is known to be cold: then air that reads while the blower is off locks out.
    pub chamber_is_cold: u32,
    /// 1 where the listed safeguard permits gas; anything else refuses.
    pub permitted: u32,
}

/// What a controller answers each tick.
#[derive(Clone, Copy, Debug)]
#[repr(C)]
pub struct JetwrightOutputs {
    /// Where it is.
    pub state: JetwrightState,
    /// A request to the listed safeguard, never a command to a valve.
    pub asks_for_gas: bool,
    /// Whether the blower is to run.
    pub blower_on: bool,
    /// Whether something was at fault in this tick.
    pub fault: bool,
    /// What was, in this tick: zero for nothing, else a number that `jetwright_cause_text` puts into words.
    pub cause: u32,
    /// What the lockout began with, until it is reset: the same numbers.
    pub first_cause: u32,
    /// The sensor of the first cause, by its place among the readings; -1 for none of them.
    pub first_cause_sensor: i32,
    /// Heat the gas is set for, W.
    pub gas_w: f32,
    /// Heat the air is set for, W.
    pub air_w: f32,
    /// Gauge pressure and air setting of both.
    pub set: JetwrightSetpoint,
    /// Air changes counted.
    pub air_changes: f32,
}

impl JetwrightOutputs {
    /// Where there is no answer: no gas, blower on.
    const OFF: Self = Self {
        state: JetwrightState::Lockout,
        asks_for_gas: false,
        blower_on: true,
        fault: true,
        cause: 0,
        first_cause: 0,
        first_cause_sensor: -1,
        gas_w: 0.0,
        air_w: 0.0,
        set: JetwrightSetpoint { gauge_pa: 0.0, air: 0.0 },
        air_changes: 0.0,
    };
}

impl From<JetwrightSensorLimits> for SensorLimits<f32> {
    fn from(limits: JetwrightSensorLimits) -> Self {
        let JetwrightSensorLimits { lowest, highest, fastest, noise, stuck_after_s } = limits;
        // Only zero turns the check off: what is no number or below zero is refused.
        let stuck_after = (stuck_after_s != 0.0).then(|| Duration::from_seconds(stuck_after_s));
        SensorLimits { lowest, highest, fastest, noise, stuck_after }
    }
}

impl From<State> for JetwrightState {
    fn from(state: State) -> Self {
        match state {
            State::Off => JetwrightState::Off,
            State::PrePurge => JetwrightState::PrePurge,
            State::Ready => JetwrightState::Ready,
            State::Lighting => JetwrightState::Lighting,
            State::Firing => JetwrightState::Firing,
            State::PostPurge => JetwrightState::PostPurge,
            State::Lockout => JetwrightState::Lockout,
        }
    }
}

/// An enumerator of C, where any number can stand: what is none of them stops.
fn command(number: u32) -> Command {
    match number {
        0 => Command::Nothing,
        1 => Command::Start,
        2 => Command::Light,
        4 => Command::Reset,
        _ => Command::Stop,
    }
}

/// Makes a controller that is off, of a table, a cross-limiter and a counter of air changes, which it copies.
///
/// `refused` may be null; else it tells which setting was refused.
#[must_use]
#[unsafe(no_mangle)]
pub extern "C" fn jetwright_controller_make(
    controller: Option<&mut JetwrightController>,
    table: Option<&JetwrightTable>,
    limit: Option<&JetwrightCrossLimit>,
    changes: Option<&JetwrightAirChanges>,
    settings: Option<&JetwrightControllerSettings>,
    refused: Option<&mut JetwrightRefused>,
) -> JetwrightStatus {
    let refused = cleared(refused);
    status(|| {
        let (controller, settings) = (given(controller)?, given(settings)?);
        controller.made = 0;
        let has_second_air = match settings.has_second_air {
            0 => false,
            1 => true,
            _ => return Err(JetwrightStatus::Unknown),
        };
        let (table, limit, changes) = (given(table)?.table()?, given(limit)?.limit()?, given(changes)?.changes()?);
        let seconds = Duration::from_seconds;
        let made = Desk::new(
            *table,
            *limit,
            *changes,
            settings.sensors.map(SensorLimits::from),
            ControllerSettings {
                lighting: NetHeatRate::from_watts(settings.lighting_w),
                lighting_time: seconds(settings.lighting_time_s),
                steady_time: seconds(settings.steady_time_s),
                ready_time: seconds(settings.ready_time_s),
                closing_time: seconds(settings.closing_time_s),
                run_down_time: seconds(settings.run_down_time_s),
                longest_tick: settings.longest_tick_ms,
                clock_tolerance: settings.clock_tolerance,
                least_air: ActualVolumeFlow::from_cubic_meters_per_second(settings.least_air_m3_per_s),
                air_heat: settings.air_heat_j_per_m3,
                has_second_air,
                air_agreement: (settings.air_agreement, seconds(settings.air_agreement_time_s)),
            },
        )
        .map_err(|error| told(refused, error))?;
        controller.sum = made.fingerprint();
        keep(&mut controller.words, made);
        (controller.made, controller.busy) = (MADE, 0);
        Ok(())
    })
}

/// One tick. Any status but `Ok` means that the gas must be off, and `outputs` says so: no gas, blower on, no heat; open
/// the air's actuator wide. So does a call that interrupts another on the same controller, and one that finds its memory
/// written over.
#[must_use]
#[unsafe(no_mangle)]
pub extern "C" fn jetwright_controller_tick(
    controller: Option<&mut JetwrightController>,
    inputs: Option<&JetwrightInputs>,
    outputs: Option<&mut JetwrightOutputs>,
) -> JetwrightStatus {
    let outputs = unless_answered(outputs, JetwrightOutputs::OFF);
    status(|| {
        let (controller, inputs, outputs) = (given(controller)?, given(inputs)?, given(outputs)?);
        // Another call may be under way that this one interrupted: what it sees must be looked at as it stands.
        // SAFETY: a word of a struct that is borrowed.
        if unsafe { (&raw const controller.busy).read_volatile() } != 0 {
            return Err(JetwrightStatus::Busy);
        }
        // SAFETY: as above.
        unsafe { (&raw mut controller.busy).write_volatile(1) };
        let found = ticked(controller, inputs);
        // SAFETY: as above.
        unsafe { (&raw mut controller.busy).write_volatile(0) };
        *outputs = found?;
        Ok(())
    })
}

fn ticked(controller: &mut JetwrightController, inputs: &JetwrightInputs) -> Result<JetwrightOutputs, JetwrightStatus> {
    let desk: &mut Desk = kept_mut(controller.made, &mut controller.words)?;
    if desk.fingerprint() != controller.sum {
        return Err(JetwrightStatus::Damaged);
    }
    let (watts, flow) = (NetHeatRate::from_watts, ActualVolumeFlow::from_cubic_meters_per_second);
    let second = inputs.second_air_flow_m3_per_s;
    let answer = desk.tick(&Inputs {
        now: inputs.now_ms,
        command: command(inputs.command),
        wanted: watts(inputs.wanted_w),
        readings: inputs.readings,
        gas: watts(inputs.gas_w),
        air: watts(inputs.air_w),
        air_flow: flow(inputs.air_flow_m3_per_s),
        // A second reading that is no number is one, and a fault.
        second_air_flow: if second <= -1.0 { None } else { Some(flow(second)) },
        chamber_is_cold: inputs.chamber_is_cold == 1,
        permitted: inputs.permitted == 1,
    });
    controller.sum = desk.fingerprint();
    Ok(JetwrightOutputs {
        state: answer.state.into(),
        asks_for_gas: answer.asks_for_gas,
        blower_on: answer.blower_on,
        fault: answer.reason.is_some(),
        cause: code(answer.reason),
        first_cause: code(answer.first_cause),
        first_cause_sensor: sensor(answer.first_cause),
        gas_w: answer.gas.watts(),
        air_w: answer.air.watts(),
        set: answer.set.into(),
        air_changes: desk.air_changes(),
    })
}

impl JetwrightController {
    /// To be read, where no call works on it.
    pub(super) fn idle(&self) -> Result<&Desk, JetwrightStatus> {
        // Another call may be under way that this one interrupted: what it sees must be looked at as it stands.
        // SAFETY: a word of a struct that is borrowed.
        if unsafe { (&raw const self.busy).read_volatile() } != 0 {
            return Err(JetwrightStatus::Busy);
        }
        kept(self.made, &self.words)
    }

    /// One that is not made yet.
    #[must_use]
    pub const fn unmade() -> Self {
        Self { made: 0, busy: 0, sum: 0, words: [MaybeUninit::uninit(); JETWRIGHT_CONTROLLER_WORDS] }
    }
}
