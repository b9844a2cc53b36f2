//! Single orders of calls that the whole controller must bear; runs at random stand beside. Every number
//! is invented.

use jetwright::Scalar;
use jetwright::control::{
    AirChanges, AirRatioBand, Command, ControlError, Controller, ControllerSettings, CrossLimit, CrossLimitSettings,
    ImageError, Inputs, InterpolationBound, MadeFor, MixtureFault, Outputs, Reason, SensorFault, SensorLimits,
    Setpoint, SetpointTable, State, Travel,
};
use jetwright::quantity::{ActualVolumeFlow, Duration, GaugePressure, NetHeatRate};

/// Heat a cubic meter of air burns at the target, J/m3.
const HEAT_PER_AIR: f64 = 3.0e6;
const LIGHTING: f64 = 10e3;
const TICK: u32 = 100;

type Desk<S> = Controller<9, 1, S>;

fn limits<S: Scalar>(stuck_after: Option<f64>) -> SensorLimits<S> {
    let stuck_after = stuck_after.map(|longest| Duration::from_seconds(S::c(longest)));
    SensorLimits { lowest: S::c(-10.0), highest: S::c(60e3), fastest: S::c(25e3), noise: S::c(900.0), stuck_after }
}

fn fitted<S>(settings: &mut ControllerSettings<S>) {
    settings.has_second_air = true;
}

fn made<S: Scalar>(sensor: SensorLimits<S>, longest_tick: u32) -> Result<Desk<S>, ControlError> {
    made_with(sensor, |settings| settings.longest_tick = longest_tick)
}

fn made_with<S: Scalar>(
    sensor: SensorLimits<S>,
    change: impl Fn(&mut ControllerSettings<S>),
) -> Result<Desk<S>, ControlError> {
    made_at(sensor, 1.05, change)
}

/// With a table of another air ratio than the limiter's.
fn made_at<S: Scalar>(
    sensor: SensorLimits<S>,
    table_ratio: f64,
    change: impl Fn(&mut ControllerSettings<S>),
) -> Result<Desk<S>, ControlError> {
    let watts = |value: f64| NetHeatRate::from_watts(S::c(value));
    let seconds = |value: f64| Duration::from_seconds(S::c(value));
    let least_air = ActualVolumeFlow::from_cubic_meters_per_second(S::c(0.002));
    let travel = Travel { slowest: S::c(5e3), fastest: S::c(20e3) };
    let made_for = MadeFor { air_ratio: S::c(table_ratio), burner: 0 };
    let table = SetpointTable::build(made_for, watts(9e3), watts(24e3), 3, |heat| {
        Ok(Setpoint { gauge: GaugePressure::from_pascals(heat.watts()), air: heat.watts() / S::c(24e3) })
    });
    let limit = CrossLimit::new(&CrossLimitSettings {
        band: AirRatioBand { lowest: S::c(0.92), target: S::c(1.05), highest: S::c(1.25) },
        lowest: watts(9e3),
        highest: watts(24e3),
        gas_travel: travel,
        air_travel: travel,
        actuator_tolerance: S::c(0.03),
        reading_tolerance: S::c(0.01),
    });
    let mut settings = ControllerSettings {
        lighting: watts(LIGHTING),
        lighting_time: seconds(1.0),
        steady_time: seconds(0.5),
        ready_time: seconds(60.0),
        closing_time: seconds(2.0),
        run_down_time: seconds(8.0),
        longest_tick: 500,
        clock_tolerance: S::c(0.01),
        least_air,
        air_heat: S::c(HEAT_PER_AIR),
        has_second_air: false,
        air_agreement: (S::c(0.1), seconds(1.0)),
    };
    change(&mut settings);
    Controller::new(table?, limit?, AirChanges::new(S::c(0.02), S::c(4.0), least_air)?, [sensor], settings)
}

/// A burner without a fault: actuators that move at 8 kW a second, a line that fills at once, exact readings.
struct Shop<S> {
    desk: Desk<S>,
    inputs: Inputs<1, S>,
    gas: f64,
    air: f64,
    out: Option<Outputs<S>>,
}

impl<S: Scalar> Shop<S> {
    fn new() -> Self {
        Self::with(|_| ())
    }

    fn with(change: impl Fn(&mut ControllerSettings<S>)) -> Self {
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
    fn tick(&mut self, command: Command, told: impl Fn(&mut Inputs<1, S>)) -> Outputs<S> {
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
    fn until(&mut self, state: State, told: impl Fn(&mut Inputs<1, S>)) -> usize {
        (0..1000)
            .find(|_| self.tick(Command::Nothing, &told).state == state)
            .unwrap_or_else(|| panic!("{state:?} never came: {:?}", self.out))
    }

    fn ready(told: impl Fn(&mut Inputs<1, S>)) -> Self {
        Self::ready_with(|_| (), told)
    }

    fn ready_with(change: impl Fn(&mut ControllerSettings<S>), told: impl Fn(&mut Inputs<1, S>)) -> Self {
        let mut shop = Self::with(change);
        shop.tick(Command::Nothing, &told);
        shop.tick(Command::Start, &told);
        shop.until(State::Ready, &told);
        // The damper comes down from the largest fire.
        (0..40).for_each(|_| _ = shop.tick(Command::Nothing, &told));
        shop
    }

    fn firing(told: impl Fn(&mut Inputs<1, S>)) -> Self {
        Self::firing_with(|_| (), told)
    }

    fn firing_with(change: impl Fn(&mut ControllerSettings<S>), told: impl Fn(&mut Inputs<1, S>)) -> Self {
        let mut shop = Self::ready_with(change, &told);
        assert_eq!(shop.tick(Command::Light, &told).state, State::Lighting);
        shop.until(State::Firing, &told);
        shop
    }
}

#[test]
fn a_gas_reading_far_below_nought_is_none() {
    let below = |watts: f64| move |inputs: &mut Inputs<1>| inputs.gas = NetHeatRate::from_watts(watts);
    // A twentieth of 9 kW is 450 W.
    for (watts, lights) in [(-440.0, true), (-460.0, false), (-1e30, false), (f64::NAN, false)] {
        let mut shop = Shop::ready(|_| ());
        let out = shop.tick(Command::Light, below(watts));
        assert_eq!(out.asks_for_gas, lights, "{watts}");
        assert_eq!(out.state == State::Lockout, !lights, "{watts}");
    }
    let mut shop = Shop::ready(|_| ());
    assert!(shop.tick(Command::Light, |_| ()).asks_for_gas);
    assert!(!shop.tick(Command::Nothing, below(-460.0)).asks_for_gas, "while it is lit");
}

#[test]
fn a_lock_by_a_jump_opens_when_a_person_has_looked() {
    let mut shop = Shop::<f32>::firing(|_| ());
    // The tick is late, and the air falls meanwhile by more than a tick explains.
    shop.air *= 0.2;
    let out = shop.tick(Command::Nothing, |inputs| inputs.now = inputs.now.wrapping_add(3000));
    assert_eq!((out.state, out.reason), (State::Lockout, Some(Reason::Late)));
    let out = shop.tick(Command::Nothing, |_| ());
    assert_eq!(out.reason, Some(Reason::Sensor(0, SensorFault::Jumped)), "told from the last good reading");
    assert_eq!(shop.tick(Command::Reset, |_| ()).state, State::PostPurge);
    // What is still in doubt keeps the lock.
    let mut shop = Shop::<f32>::firing(|_| ());
    let bad = |inputs: &mut Inputs<1, f32>| inputs.readings = [70e3];
    assert_eq!(shop.tick(Command::Nothing, bad).state, State::Lockout);
    for command in [Command::Reset, Command::Nothing, Command::Reset] {
        assert_eq!(shop.tick(command, bad).state, State::Lockout);
    }
    shop.tick(Command::Nothing, |_| ());
    assert_eq!(shop.tick(Command::Reset, |_| ()).state, State::PostPurge);
}

#[test]
fn the_loss_of_a_second_air_sensor_survives_a_reset() {
    let second = |share: f64| move |inputs: &mut Inputs<1>| inputs.second_air_flow = Some(inputs.air_flow * share);
    let mut shop = Shop::firing_with(fitted, second(1.0));
    assert!(shop.tick(Command::Nothing, second(1.0)).asks_for_gas);
    let out = shop.tick(Command::Nothing, |_| ());
    let gone = Some(Reason::Air(SensorFault::NotANumber));
    assert_eq!((out.state, out.reason), (State::Lockout, gone));
    for command in [Command::Reset, Command::Nothing, Command::Reset] {
        let out = shop.tick(command, |_| ());
        assert_eq!((out.state, out.first_cause), (State::Lockout, gone));
    }
    assert_eq!(shop.tick(Command::Nothing, second(f64::NAN)).reason, gone);
    shop.tick(Command::Nothing, second(1.0));
    assert_ne!(shop.tick(Command::Reset, second(1.0)).state, State::Lockout);
    // One that nobody spoke of is a fault as well.
    let mut shop = Shop::<f64>::new();
    assert_eq!(shop.tick(Command::Nothing, second(1.0)).reason, Some(Reason::Air(SensorFault::NotFitted)));
}

#[test]
fn the_lesser_of_two_air_sensors_counts_for_lost_air_and_a_rich_mixture() {
    let second = |share: f64| move |inputs: &mut Inputs<1>| inputs.second_air_flow = Some(inputs.air_flow * share);
    // 0.002 m3/s burn 6 kW. At the fire's 20 kW a fifth of the air is less, well before the patience is over.
    let mut shop = Shop::firing_with(fitted, second(1.0));
    (0..80).for_each(|_| _ = shop.tick(Command::Nothing, second(1.0)));
    let out = shop.tick(Command::Nothing, second(0.2));
    assert_eq!((out.state, out.first_cause.is_some()), (State::Lockout, true));
    // 0.8 of the air makes 0.84 of a band from 0.92 on.
    let mut shop = Shop::firing_with(fitted, second(1.0));
    (0..80).for_each(|_| _ = shop.tick(Command::Nothing, second(1.0)));
    let out = shop.tick(Command::Nothing, second(0.8));
    assert_eq!((out.state, out.reason), (State::Lockout, Some(Reason::Mixture(MixtureFault::OutsideBand))));
}

#[test]
fn the_blower_never_stops_while_gas_reads() {
    let gas = |watts: f64| move |inputs: &mut Inputs<1>| inputs.gas = NetHeatRate::from_watts(watts);
    // A first tick that reads gas, as after a restart at the fire.
    let mut shop = Shop::<f64>::new();
    assert_eq!(shop.tick(Command::Nothing, gas(9e3)).state, State::PostPurge);
    // Stop in a pre-purge into which gas comes, and reset out of a post-purge and a lockout: air on for the closing time.
    for way in 0..3 {
        let mut shop = Shop::<f64>::new();
        shop.tick(Command::Nothing, |_| ());
        shop.tick(Command::Start, |_| ());
        shop.tick(Command::Nothing, gas(1e3));
        if way == 2 {
            shop.tick(Command::Nothing, gas(f64::NAN));
        }
        let command = if way == 0 { Command::Stop } else { Command::Reset };
        let told = if way == 2 { gas(0.0) } else { gas(1e3) };
        assert!(shop.tick(command, told).blower_on, "{way}");
        if way == 1 {
            shop.tick(Command::Stop, gas(1e3));
        }
        for tick in 0..25 {
            let out = shop.tick(if tick % 2 == 0 { Command::Nothing } else { Command::Reset }, |_| ());
            // Shut from the first of these ticks on: 2 s at the least that a clock 1 % off can count.
            assert_eq!(out.blower_on, tick < 21, "{way} {tick} {out:?}");
        }
    }
    // A reading that cannot be believed is gas.
    let mut shop = Shop::<f64>::new();
    for command in [Command::Nothing, Command::Reset, Command::Nothing, Command::Stop, Command::Reset] {
        assert!(shop.tick(command, gas(f64::NAN)).blower_on);
    }
}

#[test]
fn air_that_reads_without_a_blower_locks_out_where_the_chamber_is_cold() {
    let stuck = |cold: bool, second: bool| {
        move |inputs: &mut Inputs<1>| {
            let flow = ActualVolumeFlow::from_cubic_meters_per_second(0.003);
            inputs.chamber_is_cold = cold;
            if second {
                inputs.second_air_flow = Some(flow);
            } else {
                (inputs.air_flow, inputs.air) = (flow, NetHeatRate::from_watts(9e3));
            }
        }
    };
    for (cold, second) in [(true, false), (false, false)] {
        let mut shop = Shop::<f64>::new();
        // 8 s to run down.
        let last =
            (0..90).map(|_| shop.tick(Command::Nothing, stuck(cold, second))).position(|out| out.reason.is_some());
        assert_eq!(last, cold.then_some(81), "{cold}");
        if cold {
            assert_eq!(shop.out.unwrap().first_cause, Some(Reason::AirWithoutBlower));
        }
    }
}

#[test]
fn a_flow_and_a_heat_that_are_not_of_one_air_lock_out() {
    let times = |share: f64| move |inputs: &mut Inputs<1>| inputs.air_flow = inputs.air_flow * share;
    for (share, holds) in [(0.55, true), (1.9, true), (0.45, false), (2.1, false), (f64::INFINITY, false)] {
        let mut shop = Shop::firing(|_| ());
        // At the 20 kW that are wanted half of the air is more than the least.
        (0..80).for_each(|_| _ = shop.tick(Command::Nothing, |_| ()));
        let out = shop.tick(Command::Nothing, times(share));
        assert_eq!(out.asks_for_gas, holds, "{share} {:?}", out.reason);
    }
}

#[test]
fn air_changes_count_from_a_closing_time_after_the_gas() {
    let mut shop = Shop::<f64>::firing(|_| ());
    shop.tick(Command::Stop, |_| ());
    // Asked for last in the tick before; shut from the next one on for 2 s, of which a clock 1 % off counts 2.03.
    let first = (0..40).find(|_| {
        shop.tick(Command::Nothing, |_| ());
        shop.desk.air_changes() > 0.0
    });
    assert_eq!(first, Some(22));
    // Gas that reads in between begins it again, and so does air that its actuator cannot give.
    shop.tick(Command::Nothing, |inputs| inputs.air = inputs.air * 1.5);
    assert_eq!(shop.desk.air_changes(), 0.0);
}

#[test]
fn the_first_cause_stays_until_reset_and_the_record_has_it() {
    let mut shop = Shop::<f64>::firing(|_| ());
    let out = shop.tick(Command::Nothing, |inputs| inputs.permitted = false);
    assert_eq!((out.state, out.reason, out.first_cause), (State::Lockout, None, Some(Reason::PermissiveLost)));
    let out = shop.tick(Command::Nothing, |inputs| inputs.readings = [f64::NAN]);
    assert_eq!(out.reason, Some(Reason::Sensor(0, SensorFault::NotANumber)));
    assert_eq!(out.first_cause, Some(Reason::PermissiveLost));
    let last = *shop.desk.record().iter().last().unwrap();
    assert_eq!((last.from, last.to, last.cause), (State::Firing, State::Lockout, Some(Reason::PermissiveLost)));
    assert_eq!(shop.tick(Command::Reset, |_| ()).first_cause, None);
    let mut shop = Shop::<f64>::firing(|_| ());
    let lost = |inputs: &mut Inputs<1>| inputs.air_flow = ActualVolumeFlow::from_cubic_meters_per_second(0.0019);
    assert_eq!(shop.tick(Command::Nothing, lost).first_cause, Some(Reason::AirLost));
}

#[test]
fn the_lesser_reading_of_the_air_counts_for_its_changes() {
    let blown = |share: f64| {
        let mut shop = Shop::with(fitted);
        let told = |inputs: &mut Inputs<1>| inputs.second_air_flow = Some(inputs.air_flow * share);
        shop.tick(Command::Nothing, told);
        shop.tick(Command::Start, told);
        // The damper is open after three seconds; four more are looked at.
        let so_far = [40, 40].map(|ticks| {
            (0..ticks).for_each(|_| _ = shop.tick(Command::Nothing, told));
            shop.desk.air_changes()
        });
        so_far[1] - so_far[0]
    };
    assert!((blown(0.92) / blown(1.0) - 0.92).abs() < 1e-9);
    assert!((blown(1.08) / blown(1.0) - 1.0).abs() < 1e-9);
}

#[test]
fn a_clock_that_has_stopped_ends_the_fire() {
    let mut shop = Shop::firing(|_| ());
    (0..50).for_each(|_| _ = shop.tick(Command::Nothing, |_| ()));
    let stands = |inputs: &mut Inputs<1>| inputs.now = inputs.now.wrapping_sub(TICK);
    let lasts = (0..2000).find(|_| !shop.tick(Command::Nothing, stands).asks_for_gas).unwrap();
    assert_eq!(lasts, 999);
    assert_eq!(shop.out.unwrap().reason, Some(Reason::Late));
}

#[test]
fn a_command_that_a_switch_holds_acts_once() {
    let mut shop = Shop::<f64>::new();
    for _ in 0..20 {
        assert_eq!(shop.tick(Command::Start, |_| ()).state, State::Off, "held since the start");
    }
    shop.tick(Command::Nothing, |_| ());
    shop.tick(Command::Start, |_| ());
    for _ in 0..400 {
        assert!(!shop.tick(Command::Light, |_| ()).asks_for_gas, "held since before it was ready");
    }
    assert_eq!(shop.out.unwrap().state, State::Ready);
    shop.tick(Command::Nothing, |_| ());
    assert!(shop.tick(Command::Light, |_| ()).asks_for_gas);
}

#[test]
fn settings_that_would_watch_nothing_are_refused() {
    assert!(made::<f64>(limits(Some(5.0)), 500).is_ok());
    for stuck_after in [f64::NAN, 0.0, -1.0, f64::INFINITY] {
        assert!(made::<f64>(limits(Some(stuck_after)), 500).is_err(), "{stuck_after}");
    }
    for (lowest, highest, fastest, noise) in [
        (f64::NAN, 1.0, 1.0, 0.0),
        (0.0, f64::NAN, 1.0, 0.0),
        (1.0, 0.0, 1.0, 0.0),
        (0.0, 1.0, f64::NAN, 0.0),
        (0.0, 1.0, 1.0, f64::NAN),
        (0.0, 1.0, 1.0, -1.0),
    ] {
        let sensor = SensorLimits { lowest, highest, fastest, noise, stuck_after: None };
        assert!(made(sensor, 500).is_err(), "{sensor:?}");
    }
    // Two seconds are the longest that gas may go unseen.
    assert!(made::<f64>(limits(None), 2000).is_ok());
    assert!([0, 2001, u32::MAX / 2].into_iter().all(|longest| made::<f64>(limits(None), longest).is_err()));
    let refused = |name: &str, made: Result<Desk<f64>, ControlError>| {
        assert!(matches!(made, Err(ControlError::Setting { name: found }) if found == name), "{name}: {made:?}");
    };
    let flow = ActualVolumeFlow::from_cubic_meters_per_second;
    // 9 kW are the air of 0.003 m3/s, of which a tenth to all may be the least.
    for (least, is_usable) in [(0.00031, true), (0.0029, true), (0.00029, false), (0.0031, false)] {
        let made = made_with::<f64>(limits(None), |settings| settings.least_air = flow(least));
        if is_usable {
            assert!(made.is_ok(), "{least}");
        } else {
            refused("least air flow against the smallest heat input", made);
        }
    }
    refused("air ratio of the limiter and of the setpoint table", made_at(limits(None), 1.06, |_| ()));
    for watts in [8.9e3, 24.1e3, f64::NAN] {
        let lighting = NetHeatRate::from_watts(watts);
        refused("heat the fire is lit at", made_with(limits(None), |settings| settings.lighting = lighting));
    }
    // Air needed that is zero in the number type would be there before any was blown.
    let least = ActualVolumeFlow::from_cubic_meters_per_second(0.002_f32);
    assert!(AirChanges::new(1e-30_f32, 1e-30, least).is_err());
}

#[test]
fn air_too_much_for_the_number_type_is_no_air() {
    let flow = ActualVolumeFlow::from_cubic_meters_per_second;
    let mut changes = AirChanges::new(0.02_f32, 4.0, flow(0.002)).unwrap();
    for _ in 0..5 {
        changes.count(flow(3e38), Duration::from_seconds(1e3));
        assert!(!changes.are_enough() && changes.so_far() == 0.0);
    }
}

#[test]
fn a_table_with_one_wrong_row_is_refused_by_the_controller_and_as_an_image() {
    let watts = NetHeatRate::from_watts;
    let made_for = MadeFor { air_ratio: 1.05, burner: 0 };
    let rows: [Setpoint<f32>; 9] = core::array::from_fn(|index| Setpoint {
        gauge: GaugePressure::from_pascals(9e3 + 1875.0 * index as f32),
        air: 0.375 + 0.078 * index as f32,
    });
    let travel = Travel { slowest: 5e3, fastest: 20e3 };
    let band = AirRatioBand { lowest: 0.92, target: 1.05, highest: 1.25 };
    let (lowest, highest) = (watts(9e3), watts(24e3));
    let limit = CrossLimit::new(&CrossLimitSettings {
        band,
        lowest,
        highest,
        gas_travel: travel,
        air_travel: travel,
        actuator_tolerance: 0.03,
        reading_tolerance: 0.01,
    })
    .unwrap();
    let second = Duration::from_seconds(1.0);
    let least_air = ActualVolumeFlow::from_cubic_meters_per_second(0.002);
    let settings = ControllerSettings {
        lighting: watts(10e3),
        lighting_time: second,
        steady_time: second,
        ready_time: second,
        closing_time: second,
        run_down_time: second,
        longest_tick: 500,
        clock_tolerance: 0.01,
        least_air,
        air_heat: 3e6,
        has_second_air: false,
        air_agreement: (0.1, second),
    };
    let usable = |rows: [Setpoint<f32>; 9], step: f32| {
        let table = SetpointTable::stored(made_for, lowest, step, rows, InterpolationBound::default());
        // The checksum of the image is right whatever its rows are.
        let mut image = [0; SetpointTable::<9, f32>::IMAGE_BYTES];
        table.write_image(&mut image).unwrap();
        let read = SetpointTable::<9, f32>::read_image(&image);
        assert!(matches!(read, Ok(_) | Err(ImageError::Content)));
        let changes = AirChanges::new(0.02, 4.0, least_air).unwrap();
        let made = Controller::new(table, limit, changes, [limits::<f32>(None)], settings);
        let is_made = made.is_ok();
        assert!(is_made || made == Err(ControlError::Setting { name: "setpoint table" }));
        assert_eq!(is_made, read.is_ok());
        is_made
    };
    assert!(usable(rows, 1875.0));
    for step in [0.0, -1875.0, f32::NAN, f32::INFINITY] {
        assert!(!usable(rows, step), "{step}");
    }
    for row in 0..rows.len() {
        let beyond = if row == 0 { 1e6 } else { -1e6 };
        for wrong in [f32::NAN, f32::INFINITY, f32::NEG_INFINITY, beyond] {
            let (mut gauge, mut air) = (rows, rows);
            gauge[row].gauge = GaugePressure::from_pascals(wrong);
            air[row].air = wrong;
            assert!(!usable(gauge, 1875.0) && !usable(air, 1875.0), "row {row}: {wrong}");
        }
    }
}

#[test]
fn after_a_reading_that_cannot_be_believed_the_blower_runs_for_the_closing_time() {
    let far_below = |inputs: &mut Inputs<1>| inputs.gas = NetHeatRate::from_watts(-1e3);
    let no_sensor = |inputs: &mut Inputs<1>| inputs.readings = [f64::NAN];
    let doubts: [fn(&mut Inputs<1>); 2] = [far_below, no_sensor];
    for doubtful in doubts {
        let mut shop = Shop::<f64>::ready(|_| ());
        assert_eq!(shop.tick(Command::Nothing, doubtful).state, State::Lockout);
        assert_eq!(shop.tick(Command::Reset, |_| ()).state, State::PostPurge);
    }
    // The gas was shut all the time where something else was at fault.
    let mut shop = Shop::<f64>::ready(|_| ());
    shop.tick(Command::Nothing, |inputs| inputs.now = inputs.now.wrapping_add(3000));
    assert_eq!(shop.tick(Command::Reset, |_| ()).state, State::Off);
}
