//! The whole controller: readings in, what to set and whether to ask for gas out, once a tick.

mod air;
mod doubt;
mod happening;

use crate::control::ControlError;
use crate::control::air_changes::AirChanges;
use crate::control::clock::{Clock, Timer};
use crate::control::controller_settings::ControllerSettings;
use crate::control::crosslimit::CrossLimit;
use crate::control::fingerprint::Fingerprint;
use crate::control::reason::Reason;
use crate::control::record::{EventRecord, Recorded};
use crate::control::sensors::{Agreement, Sensor, SensorLimits};
use crate::control::sequence::{Event, State};
use crate::control::setpoints::{Setpoint, SetpointTable};
use crate::control::tick::{Command, Inputs, Outputs};
use crate::quantity::{Duration, NetHeatRate};
use crate::scalar::Scalar;
use air::Air;

/// A burner's controller with a table of `N` settings and `K` sensors. Process control, **not a flame safeguard**.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Controller<const N: usize, const K: usize, S = f64> {
    table: SetpointTable<N, S>,
    limit: CrossLimit<S>,
    changes: AirChanges<S>,
    settings: ControllerSettings<S>,
    sensors: [Sensor<S>; K],
    agreement: Agreement<S>,
    clock: Clock,
    state: State,
    in_state: Timer,
    gas_unasked: Timer,
    /// How long the gas has read what it was set to, while it is lit.
    gas_steady: Option<Timer>,
    /// How long the gas has read shut, and was not asked for.
    gas_shut: Option<Timer>,
    first_cause: Option<Reason>,
    record: EventRecord<K, S>,
    last_command: Option<Command>,
}

impl<const N: usize, const K: usize, S: Scalar> Controller<N, K, S> {
    /// A controller that is off. [`tick`](Self::tick) has an example.
    ///
    /// # Errors
    ///
    /// [`ControlError::Setting`] or [`ControlError::Sensor`] naming what is not usable.
    pub fn new(
        table: SetpointTable<N, S>,
        limit: CrossLimit<S>,
        changes: AirChanges<S>,
        sensors: [SensorLimits<S>; K],
        settings: ControllerSettings<S>,
    ) -> Result<Self, ControlError> {
        settings.check(&table, &limit)?;
        for (place, sensor) in sensors.iter().enumerate() {
            if let Some(name) = sensor.refused() {
                return Err(ControlError::Sensor { place, name });
            }
        }
        Ok(Self {
            table,
            limit: limit.by_clock(settings.clock_tolerance),
            changes,
            settings,
            sensors: sensors.map(Sensor::new),
            agreement: Agreement::new(settings.air_agreement.0, S::zero(), settings.air_agreement.1),
            clock: Clock::default(),
            state: State::Off,
            in_state: Timer::default(),
            gas_unasked: Timer::default(),
            gas_steady: None,
            gas_shut: None,
            first_cause: None,
            record: EventRecord::default(),
            last_command: None,
        })
    }

    /// One tick. Call it at least every [`longest_tick`](ControllerSettings::longest_tick).
    ///
    /// # Examples
    ///
    /// ```
    /// use jetwright::control::{
    ///     AirChanges, AirRatioBand, Command, Controller, ControllerSettings, CrossLimit, CrossLimitSettings, Inputs,
    ///     MadeFor, Reason, SensorFault, SensorLimits, Setpoint, SetpointTable, State, Travel,
    /// };
    /// use jetwright::quantity::{ActualVolumeFlow, Duration, GaugePressure, NetHeatRate};
    /// let (kw, second) = (NetHeatRate::from_kilowatts, Duration::from_seconds(1.0));
    /// let flow = ActualVolumeFlow::from_liters_per_second;
    /// // Straight lines from 10 to 30 kW: a kilopascal and a thirtieth of the damper for each kilowatt.
    /// let made_for = MadeFor { air_ratio: 1.05, burner: 0 };
    /// let table = SetpointTable::<3>::build(made_for, kw(10.0), kw(30.0), 9, |heat| {
    ///     Ok(Setpoint { gauge: GaugePressure::from_kilopascals(heat.kilowatts()), air: heat.kilowatts() / 30.0 })
    /// }).unwrap();
    /// let travel = Travel { slowest: 10e3, fastest: 20e3 };
    /// let limit = CrossLimit::new(&CrossLimitSettings {
    ///     band: AirRatioBand { lowest: 0.9, target: 1.05, highest: 1.3 },
    ///     lowest: kw(10.0), highest: kw(30.0), gas_travel: travel, air_travel: travel,
    ///     actuator_tolerance: 0.03, reading_tolerance: 0.01,
    /// }).unwrap();
    /// // Four changes of 20 L.
    /// let changes = AirChanges::new(0.02, 4.0, flow(2.0)).unwrap();
    /// // One sensor: a gauge in kilopascals.
    /// let gauge = SensorLimits { lowest: -1.0, highest: 100.0, fastest: 50.0, noise: 0.5, stuck_after: None };
    /// let mut controller = Controller::new(table, limit, changes, [gauge], ControllerSettings {
    ///     lighting: kw(10.0), lighting_time: second, steady_time: second, ready_time: second * 60.0,
    ///     closing_time: second, run_down_time: second * 10.0, longest_tick: 1000, clock_tolerance: 0.01,
    ///     least_air: flow(2.0), air_heat: 3e6, has_second_air: false, air_agreement: (0.1, second),
    /// }).unwrap();
    ///
    /// // A tick a second, gas shut, the blower at its 10 L/s, which would burn 30 kW: 3 MJ to the cubic meter.
    /// let mut now = 0;
    /// let mut tick = |command, kilopascals| {
    ///     now += 1000;
    ///     controller.tick(&Inputs {
    ///         now, command, wanted: kw(20.0), readings: [kilopascals], gas: kw(0.0), air: kw(30.0),
    ///         air_flow: flow(10.0), second_air_flow: None, chamber_is_cold: true, permitted: true,
    ///     })
    /// };
    /// assert_eq!(tick(Command::Nothing, 0.0).state, State::Off);
    /// assert_eq!(tick(Command::Start, 0.0).state, State::PrePurge);
    /// // 10 L/s are sure to 97 %, the damper's tolerance, for 99 % of a second: 9.6 L. After 1, 2, 3 seconds the
    /// // damper is sure to be a third, two thirds, all of the way, and a second counts by its poorer end. That makes
    /// // 0 + 3.2 + 6.3 + 9.5 L and then 9.6 L a tick: 80 L with the eleventh.
    /// for _ in 0..10 { assert_eq!(tick(Command::Nothing, 0.0).state, State::PrePurge); }
    /// let out = tick(Command::Nothing, 0.0);
    /// assert_eq!(out.state, State::Ready);
    /// // No gas is asked for; the regulator stands at 10 kPa for lighting, the damper goes there.
    /// assert!(!out.asks_for_gas && out.blower_on);
    /// assert!((out.set.gauge.kilopascals() - 10.0).abs() < 1e-9 && (out.set.air - 1.0 / 3.0).abs() < 1e-9);
    /// // The gauge jumps by 60 kPa in a second: locked out, with the air on and fully open.
    /// let out = tick(Command::Nothing, 60.0);
    /// assert_eq!(out.state, State::Lockout);
    /// assert_eq!(out.reason, Some(Reason::Sensor(0, SensorFault::Jumped)));
    /// assert!(!out.asks_for_gas && out.blower_on && (out.set.air - 1.0).abs() < 1e-9);
    /// // The record tells it, the newest last.
    /// let last = controller.record().iter().last().unwrap();
    /// assert_eq!((last.from, last.to, last.readings), (State::Ready, State::Lockout, [60.0]));
    /// assert_eq!(last.cause, out.first_cause);
    /// ```
    pub fn tick(&mut self, inputs: &Inputs<K, S>) -> Outputs<S> {
        let elapsed = self.clock.elapsed(inputs.now, self.settings.longest_tick);
        self.in_state = self.in_state.after(elapsed.unwrap_or(0));
        let air = Air::of(inputs);
        let command = self.new_command(inputs.command);
        let limited = self.limit_now(inputs, &air, elapsed);
        // A jump is told from the last good reading, which would else hold the lockout for good.
        if self.state == State::Lockout && command == Command::Reset {
            self.sensors.iter_mut().for_each(Sensor::restart);
        }
        let reason = self.reason(inputs, &air, elapsed, limited.err());
        self.count_air(inputs, &air, elapsed);

        let (before, mut cause) = (self.state, None);
        for event in Event::ALL {
            if self.happens(event, before, inputs, &air, command, reason.is_some()) {
                let next = self.state.after(event);
                if next == State::Lockout && self.state != State::Lockout {
                    cause = Reason::of(event, reason);
                }
                self.state = next;
            }
        }
        match cause {
            Some(_) => self.first_cause = cause,
            None if self.state != State::Lockout => self.first_cause = None,
            None => {}
        }
        if self.state != before || cause.is_some() {
            let (from, to, first) = (before, self.state, self.first_cause);
            let Inputs { now, readings, gas, air, .. } = *inputs;
            self.record.add(Recorded { now, from, to, cause: first, readings, gas, air });
        }
        if self.state != before {
            self.enter(before);
        }
        self.answer(limited.ok(), reason)
    }

    /// Where the controller is.
    #[must_use]
    pub fn state(&self) -> State {
        self.state
    }

    /// Air changes counted since the air was last lost or gas last read.
    #[must_use]
    pub fn air_changes(&self) -> S {
        self.changes.so_far()
    }

    /// What the lockout began with, until it is reset.
    #[must_use]
    pub fn first_cause(&self) -> Option<Reason> {
        self.first_cause
    }

    /// The last changes of state, each with what was read then.
    #[must_use]
    pub fn record(&self) -> &EventRecord<K, S> {
        &self.record
    }

    /// A number of all that decides about gas: settings, table, and what is remembered from tick to tick. The record and
    /// the first cause decide nothing.
    #[must_use]
    #[cfg_attr(
        not(feature = "capi"),
        allow(dead_code, reason = "for what keeps a controller in memory others can write")
    )]
    pub(crate) fn fingerprint(&self) -> u32 {
        let mut sum = Fingerprint::new();
        self.table.fingerprint(&mut sum);
        self.limit.fingerprint(&mut sum);
        self.changes.fingerprint(&mut sum);
        self.settings.fingerprint(&mut sum);
        self.sensors.iter().for_each(|sensor| sensor.fingerprint(&mut sum));
        self.agreement.fingerprint(&mut sum);
        self.clock.fingerprint(&mut sum);
        let timers = [Some(self.in_state), Some(self.gas_unasked), self.gas_steady, self.gas_shut];
        for timer in timers {
            sum.word(u32::from(timer.is_some()));
            sum.word(timer.map_or(0, Timer::word));
        }
        sum.word(self.state as u32);
        sum.word(self.last_command.map_or(99, |command| command as u32));
        sum.value()
    }

    /// Gas that reads less than this is off, W.
    fn shut(&self) -> S {
        S::c(0.05) * self.limit.range().0.watts()
    }

    fn least_air(&self) -> S {
        self.settings.least_air.cubic_meters_per_second()
    }

    fn enter(&mut self, before: State) {
        self.in_state = Timer::default();
        if matches!(self.state, State::PrePurge | State::PostPurge) {
            self.changes.restart();
        }
        if before == State::Lockout {
            self.agreement.restart();
            self.gas_unasked = Timer::default();
        }
    }

    fn answer(&mut self, limited: Option<(NetHeatRate<S>, NetHeatRate<S>)>, reason: Option<Reason>) -> Outputs<S> {
        let (lighting, highest) = (self.settings.lighting, self.limit.range().1);
        let (gas, air) = match self.state {
            State::Firing | State::Lighting => limited.unwrap_or((lighting, lighting)),
            State::Ready => (lighting, lighting),
            State::PrePurge | State::PostPurge | State::Lockout => (lighting, highest),
            State::Off => (lighting, NetHeatRate::from_watts(S::zero())),
        };
        self.limit.send(gas, air);
        let set = Setpoint { gauge: self.table.at(gas).gauge, air: self.table.at(air).air };
        Outputs {
            state: self.state,
            asks_for_gas: self.state.asks_for_gas(),
            blower_on: self.state.wants_air(),
            gas,
            air,
            set,
            reason,
            first_cause: self.first_cause,
        }
    }
}

fn duration<S: Scalar>(milliseconds: u32) -> Duration<S> {
    Duration::from_seconds(S::count(milliseconds) * S::c(1e-3))
}

fn seconds<S: Scalar>(time: Duration<S>) -> S {
    time.seconds()
}
