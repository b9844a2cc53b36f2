//! The whole controller: readings in, what to set and whether to ask for gas out, once a tick.

use super::air_changes::AirChanges;
use super::clock::Clock;
use super::controller_settings::ControllerSettings;
use super::crosslimit::{CrossLimit, Doubt};
use super::sensors::{Agreement, Sensor, SensorFault, SensorLimits};
use super::sequence::{Event, State};
use super::setpoints::{Setpoint, SetpointTable};
use super::tick::{Command, Inputs, Outputs, Reason};
use crate::control::ControlError;
use crate::quantity::{ActualVolumeFlow, Duration, NetHeatRate};
use crate::scalar::Scalar;

/// A burner's controller with a table of `N` settings and `K` sensors. Process control, **not a flame safeguard**.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Controller<const N: usize, const K: usize, S = f64> {
    table: SetpointTable<N, S>,
    limit: CrossLimit<S>,
    changes: AirChanges<S>,
    settings: ControllerSettings<S>,
    sensors: [Sensor<S>; K],
    agreement: Agreement<S>,
    has_second_air: bool,
    clock: Clock,
    state: State,
    in_state: S,
    gas_unasked: S,
    gas_steady: Option<S>,
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
            has_second_air: false,
            clock: Clock::default(),
            state: State::Off,
            in_state: S::zero(),
            gas_unasked: S::zero(),
            gas_steady: None,
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
    ///     closing_time: second, longest_tick: 1000, clock_tolerance: 0.01, least_air: flow(2.0),
    ///     air_agreement: (0.1, second),
    /// }).unwrap();
    ///
    /// // A tick a second, gas shut, the blower at its 10 L/s, which would burn 30 kW.
    /// let mut now = 0;
    /// let mut tick = |command, kilopascals| {
    ///     now += 1000;
    ///     controller.tick(&Inputs {
    ///         now, command, wanted: kw(20.0), readings: [kilopascals], gas: kw(0.0), air: kw(30.0),
    ///         air_flow: flow(10.0), second_air_flow: None, permitted: true,
    ///     })
    /// };
    /// assert_eq!(tick(Command::Nothing, 0.0).state, State::Off);
    /// assert_eq!(tick(Command::Start, 0.0).state, State::BlowingThrough);
    /// // 10 L/s are sure to 97 %, the damper's tolerance, for 99 % of a second: 9.6 L. After 1, 2, 3 seconds the
    /// // damper is sure to be a third, two thirds, all of the way, and a second counts by its poorer end. That makes
    /// // 0 + 3.2 + 6.3 + 9.5 L and then 9.6 L a tick: 80 L with the eleventh.
    /// for _ in 0..10 { assert_eq!(tick(Command::Nothing, 0.0).state, State::BlowingThrough); }
    /// let out = tick(Command::Nothing, 0.0);
    /// assert_eq!(out.state, State::Ready);
    /// // No gas is asked for; the regulator stands at 10 kPa for lighting, the damper goes there.
    /// assert!(!out.asks_for_gas && out.blower_on);
    /// assert!((out.set.gauge.kilopascals() - 10.0).abs() < 1e-9 && (out.set.air - 1.0 / 3.0).abs() < 1e-9);
    /// // The gauge jumps by 60 kPa in a second: locked, with the air on and fully open.
    /// let out = tick(Command::Nothing, 60.0);
    /// assert_eq!(out.state, State::Locked);
    /// assert_eq!(out.reason, Some(Reason::Sensor(0, SensorFault::Jumped)));
    /// assert!(!out.asks_for_gas && out.blower_on && (out.set.air - 1.0).abs() < 1e-9);
    /// ```
    pub fn tick(&mut self, inputs: &Inputs<K, S>) -> Outputs<S> {
        let elapsed = self.clock.elapsed(inputs.now, self.settings.longest_tick);
        let time = elapsed.unwrap_or(Duration::from_seconds(S::zero()));
        self.in_state += time.seconds();
        let commands = (self.limit_now(inputs, elapsed), self.new_command(inputs.command));
        // A jump is told from the last good reading, which would else hold the lock for good.
        if self.state == State::Locked && commands.1 == Command::Reset {
            self.sensors.iter_mut().for_each(Sensor::restart);
            self.has_second_air = false;
        }
        let reason = self.reason(inputs, elapsed.is_none(), time, commands.0.err());
        self.count_air(inputs, elapsed);

        let before = self.state;
        for event in Event::ALL {
            if self.happens(event, before, inputs, commands.1, reason.is_some()) {
                self.state = self.state.after(event);
            }
        }
        if self.state != before {
            self.enter(before);
        }
        self.answer(commands.0.ok(), reason)
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

    /// Reckons the actuators to now, and limits gas and air against each other where there is a fire.
    fn limit_now(
        &mut self,
        inputs: &Inputs<K, S>,
        elapsed: Option<Duration<S>>,
    ) -> Result<(NetHeatRate<S>, NetHeatRate<S>), Doubt> {
        let time = elapsed.unwrap_or(Duration::from_seconds(-S::one()));
        if self.state == State::Firing {
            let limited = self.limit.step(inputs.wanted, inputs.gas, inputs.air, time);
            return limited.doubt.map_or(Ok((limited.gas, limited.air)), Err);
        }
        self.limit.reckon(time);
        let lighting = self.settings.lighting;
        match self.state {
            State::BlowingThrough | State::Ready | State::Lighting if !self.limit.believes_air(inputs.air) => {
                Err(Doubt::AirContradicts)
            }
            State::Lighting if !self.limit.has_air_for(inputs.gas, inputs.air) => Err(Doubt::OutsideBand),
            _ => Ok((lighting, lighting)),
        }
    }

    /// The first thing that is in doubt.
    fn reason(
        &mut self,
        inputs: &Inputs<K, S>,
        late: bool,
        time: Duration<S>,
        mixture: Option<Doubt>,
    ) -> Option<Reason> {
        let live = self.state.asks_for_gas();
        let mut reason = late.then_some(Reason::Late);
        for (place, (sensor, &reading)) in self.sensors.iter_mut().zip(&inputs.readings).enumerate() {
            if let Err(fault) = sensor.check(reading, time, live) {
                reason = reason.or(Some(Reason::Sensor(place, fault)));
            }
        }
        let flow = inputs.air_flow.cubic_meters_per_second();
        let second = inputs.second_air_flow.map(ActualVolumeFlow::cubic_meters_per_second);
        if let Err(fault) = self.agreement.check(flow, second.unwrap_or(flow), time) {
            reason = reason.or(Some(Reason::Air(fault)));
        }
        if self.has_second_air && second.is_none() {
            reason = reason.or(Some(Reason::Air(SensorFault::NotANumber)));
        }
        self.has_second_air |= second.is_some();
        let gas = inputs.gas.watts();
        self.gas_unasked = if live || gas < self.shut() { S::zero() } else { self.gas_unasked + time.seconds() };
        let reads_right = self.limit.believes_gas(inputs.gas) && self.limit.is_in_band(inputs.gas, inputs.air);
        let lights_steadily = self.state == State::Lighting && reads_right;
        let so_far = self.gas_steady.map_or(S::zero(), |so_far| so_far + time.seconds());
        self.gas_steady = lights_steadily.then_some(so_far);
        let is_told = |heat: S| heat.is_finite() && heat > -self.shut();
        if !is_told(gas) || !is_told(inputs.air.watts()) {
            reason = reason.or(Some(Reason::Mixture(Doubt::Reading)));
        }
        if self.gas_unasked > self.settings.closing_time.seconds() {
            reason = reason.or(Some(Reason::GasUnasked));
        }
        reason.or(mixture.map(Reason::Mixture))
    }

    /// Gas that reads less than this is off, W.
    fn shut(&self) -> S {
        S::c(0.05) * self.limit.range().0.watts()
    }

    /// Counts the air that is there by reading and by reckoning both, for the least time that can have passed. Gas that
    /// still reads, or again, begins the count anew.
    fn count_air(&mut self, inputs: &Inputs<K, S>, elapsed: Option<Duration<S>>) {
        let least_share = S::one() - self.settings.clock_tolerance;
        let flow = inputs.air_flow.cubic_meters_per_second();
        let flow = inputs.second_air_flow.map_or(flow, |second| second.cubic_meters_per_second().smaller(flow));
        let certain = flow * self.limit.certain_share(inputs.air);
        match elapsed {
            Some(time) if inputs.gas.watts() < self.shut() => {
                self.changes.count(ActualVolumeFlow::from_cubic_meters_per_second(certain), time * least_share);
            }
            _ => self.changes.restart(),
        }
    }

    /// A command that was not there in the tick before; one that a switch held since the start is none.
    fn new_command(&mut self, command: Command) -> Command {
        let is_new = self.last_command.is_some_and(|last| last != command);
        self.last_command = Some(command);
        if is_new || command == Command::Stop { command } else { Command::Nothing }
    }

    fn happens(&self, event: Event, before: State, inputs: &Inputs<K, S>, command: Command, doubt: bool) -> bool {
        let settings = &self.settings;
        // Air that was lost and is back has not blown the chamber through.
        let air_is_there =
            inputs.air_flow >= settings.least_air && (before != State::Ready || self.changes.are_enough());
        match event {
            Event::Blown => matches!(before, State::BlowingThrough | State::BlowingOut) && self.changes.are_enough(),
            Event::Lit => self.gas_steady.is_some_and(|so_far| so_far >= settings.steady_time.seconds()),
            Event::TooLong => match before {
                State::Lighting => self.gas_steady.is_none() && self.in_state > settings.lighting_time.seconds(),
                State::Ready => self.in_state > settings.ready_time.seconds(),
                _ => false,
            },
            Event::Start => command == Command::Start,
            Event::Light => {
                let may = inputs.permitted
                    && air_is_there
                    && inputs.gas.watts() < self.shut()
                    && self.limit.is_settled_at(settings.lighting);
                command == Command::Light && before == State::Ready && may
            }
            Event::Reset => command == Command::Reset,
            Event::Stop => command == Command::Stop,
            Event::Refused => !inputs.permitted,
            Event::AirLost => !air_is_there,
            Event::Doubt => doubt,
        }
    }

    fn enter(&mut self, before: State) {
        self.in_state = S::zero();
        if matches!(self.state, State::BlowingThrough | State::BlowingOut) {
            self.changes.restart();
        }
        if before == State::Locked {
            self.agreement.restart();
            self.gas_unasked = S::zero();
        }
    }

    fn answer(&mut self, limited: Option<(NetHeatRate<S>, NetHeatRate<S>)>, reason: Option<Reason>) -> Outputs<S> {
        let (lighting, highest) = (self.settings.lighting, self.limit.range().1);
        let (gas, air) = match self.state {
            State::Firing | State::Lighting => limited.unwrap_or((lighting, lighting)),
            State::Ready => (lighting, lighting),
            State::BlowingThrough | State::BlowingOut | State::Locked => (lighting, highest),
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
        }
    }
}
