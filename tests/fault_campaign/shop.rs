//! A burner without a fault, and the controller that is made for it: what single orders of calls begin with. Every number
//! is invented.

use jetwright::Scalar;
use jetwright::control::{
    AirChanges, AirRatioBand, Command, ControlError, Controller, ControllerSettings, CrossLimit, CrossLimitSettings,
    Inputs, MadeFor, Outputs, SensorLimits, Setpoint, SetpointTable, State, Travel,
};
use jetwright::quantity::{ActualVolumeFlow, Duration, GaugePressure, NetHeatRate};

/// Heat a cubic meter of air burns at the target, J/m3.
pub const HEAT_PER_AIR: f64 = 3.0e6;
pub const LIGHTING: f64 = 10e3;
pub const TICK: u32 = 100;

pub type Desk<S> = Controller<9, 1, S>;

pub fn limits<S: Scalar>(stuck_after: Option<f64>) -> SensorLimits<S> {
    let stuck_after = stuck_after.map(|longest| Duration::from_seconds(S::c(longest)));
    SensorLimits { lowest: S::c(-10.0), highest: S::c(60e3), fastest: S::c(25e3), noise: S::c(900.0), stuck_after }
}

pub fn fitted<S>(settings: &mut ControllerSettings<S>) {
    settings.has_second_air = true;
}

pub fn made<S: Scalar>(sensor: SensorLimits<S>, longest_tick: u32) -> Result<Desk<S>, ControlError> {
    made_with(sensor, |settings| settings.longest_tick = longest_tick)
}

pub fn made_with<S: Scalar>(
    sensor: SensorLimits<S>,
    change: impl Fn(&mut ControllerSettings<S>),
) -> Result<Desk<S>, ControlError> {
    made_at(sensor, 1.05, change)
}

/// With a table of another air ratio than the limiter's.
pub fn made_at<S: Scalar>(
    sensor: SensorLimits<S>,
    table_ratio: f64,
    change: impl Fn(&mut ControllerSettings<S>),
) -> Result<Desk<S>, ControlError> {
    let watts = |value: f64| NetHeatRate::from_watts(S::c(value));
    let made_for = MadeFor { air_ratio: S::c(table_ratio), burner: 0 };
    let table = SetpointTable::build(made_for, watts(9e3), watts(24e3), 3, |heat| {
        Ok(Setpoint { gauge: GaugePressure::from_pascals(heat.watts()), air: heat.watts() / S::c(24e3) })
    });
    let mut settings = rules();
    change(&mut settings);
    let changes = AirChanges::new(S::c(0.02), S::c(4.0), rules().least_air)?;
    Controller::new(table?, CrossLimit::new(&limiter())?, changes, [sensor], settings)
}

pub fn limiter<S: Scalar>() -> CrossLimitSettings<S> {
    let travel = Travel { slowest: S::c(5e3), fastest: S::c(20e3) };
    CrossLimitSettings {
        band: AirRatioBand { lowest: S::c(0.92), target: S::c(1.05), highest: S::c(1.25) },
        lowest: NetHeatRate::from_watts(S::c(9e3)),
        highest: NetHeatRate::from_watts(S::c(24e3)),
        gas_travel: travel,
        air_travel: travel,
        actuator_tolerance: S::c(0.03),
        reading_tolerance: S::c(0.01),
    }
}

pub fn rules<S: Scalar>() -> ControllerSettings<S> {
    let seconds = |value: f64| Duration::from_seconds(S::c(value));
    ControllerSettings {
        lighting: NetHeatRate::from_watts(S::c(LIGHTING)),
        lighting_time: seconds(1.0),
        steady_time: seconds(0.5),
        ready_time: seconds(60.0),
        closing_time: seconds(2.0),
        run_down_time: seconds(8.0),
        longest_tick: 500,
        clock_tolerance: S::c(0.01),
        least_air: ActualVolumeFlow::from_cubic_meters_per_second(S::c(0.002)),
        air_heat: S::c(HEAT_PER_AIR),
        has_second_air: false,
        air_agreement: (S::c(0.1), seconds(1.0)),
    }
}

/// A burner without a fault: actuators that move at 8 kW a second, a line that fills at once, exact readings.
pub struct Shop<S> {
    pub desk: Desk<S>,
    inputs: Inputs<1, S>,
    gas: f64,
    pub air: f64,
    pub out: Option<Outputs<S>>,
}

impl<S: Scalar> Shop<S> {
    pub fn new() -> Self {
        Self::with(|_| ())
    }

    pub fn with(change: impl Fn(&mut ControllerSettings<S>)) -> Self {
        let zero = NetHeatRate::from_watts(S::zero());
        let inputs = Inputs {
            now: 4_294_960_000,
            command: Command::Nothing,
            wanted: NetHeatRate::from_watts(S::c(20e3)),
            readings: [S::zero()],
            gas: zero,
            air: zero,
            air_flow: ActualVolumeFlow::from_cubic_meters_per_second(S::zero()),
            second_air_flow: None,
            chamber_is_cold: true,
            permitted: true,
        };
        Self { desk: made_with(limits(None), change).unwrap(), inputs, gas: LIGHTING, air: 0.0, out: None }
    }

    /// A tick with what a person asks for; `told` changes what the controller is told.
    pub fn tick(&mut self, command: Command, told: impl Fn(&mut Inputs<1, S>)) -> Outputs<S> {
        if let Some(out) = self.out {
            let step = 8e3 * 1e-3 * f64::from(TICK);
            let moved = |from: f64, to: f64| if to > from { to.min(from + step) } else { to.max(from - step) };
            (self.gas, self.air) =
                (moved(self.gas, out.gas.watts().to_f64()), moved(self.air, out.air.watts().to_f64()));
        }
        let gas = if self.out.is_some_and(|out| out.asks_for_gas) { self.gas } else { 0.0 };
        let inputs = &mut self.inputs;
        (inputs.now, inputs.command) = (inputs.now.wrapping_add(TICK), command);
        (inputs.gas, inputs.air) = (NetHeatRate::from_watts(S::c(gas)), NetHeatRate::from_watts(S::c(self.air)));
        inputs.air_flow = ActualVolumeFlow::from_cubic_meters_per_second(S::c(self.air / HEAT_PER_AIR));
        inputs.readings = [S::c(self.air)];
        let mut now = *inputs;
        told(&mut now);
        self.inputs.now = now.now;
        let out = self.desk.tick(&now);
        self.out = Some(out);
        out
    }

    /// Ticks until a state is there, and says after how many.
    pub fn until(&mut self, state: State, told: impl Fn(&mut Inputs<1, S>)) -> usize {
        (0..1000)
            .find(|_| self.tick(Command::Nothing, &told).state == state)
            .unwrap_or_else(|| panic!("{state:?} never came: {:?}", self.out))
    }

    pub fn ready(told: impl Fn(&mut Inputs<1, S>)) -> Self {
        Self::ready_with(|_| (), told)
    }

    pub fn ready_with(change: impl Fn(&mut ControllerSettings<S>), told: impl Fn(&mut Inputs<1, S>)) -> Self {
        let mut shop = Self::with(change);
        shop.tick(Command::Nothing, &told);
        shop.tick(Command::Start, &told);
        shop.until(State::Ready, &told);
        // The damper comes down from the largest fire.
        (0..40).for_each(|_| _ = shop.tick(Command::Nothing, &told));
        shop
    }

    pub fn firing(told: impl Fn(&mut Inputs<1, S>)) -> Self {
        Self::firing_with(|_| (), told)
    }

    pub fn firing_with(change: impl Fn(&mut ControllerSettings<S>), told: impl Fn(&mut Inputs<1, S>)) -> Self {
        let mut shop = Self::ready_with(change, &told);
        assert_eq!(shop.tick(Command::Light, &told).state, State::Lighting);
        shop.until(State::Firing, &told);
        shop
    }
}
