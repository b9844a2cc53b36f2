//! The controller as C calls it: whatever a call's status, what it leaves behind asks for no gas. Every number is invented.

#![allow(unsafe_code, reason = "an image comes as a pointer and a length, and memory is written over")]

use jetwright::capi::*;
use jetwright::control::{InterpolationBound, MadeFor, Setpoint, SetpointTable};
use jetwright::quantity::{GaugePressure, NetHeatRate};

use JetwrightStatus::{Busy, Damaged, ImageDamaged, NotMade, NullPointer, Ok as Answered};

fn table() -> JetwrightTable {
    let rows = core::array::from_fn(|row| Setpoint {
        gauge: GaugePressure::from_pascals(1e4 + 1e3 * row as f32),
        air: 0.3 + 0.04 * row as f32,
    });
    let made_for = MadeFor { air_ratio: 1.05, burner: 0 };
    let table = SetpointTable::<17, f32>::stored(
        made_for,
        NetHeatRate::from_watts(1e4),
        1e3,
        rows,
        InterpolationBound::default(),
    );
    let mut image = [0; SetpointTable::<17, f32>::IMAGE_BYTES];
    table.write_image(&mut image).unwrap();
    let mut table = JetwrightTable::unmade();
    // SAFETY: the length is the image's.
    let read = |table: &mut _, image: &[u8]| unsafe { jetwright_table_read(Some(table), image.as_ptr(), image.len()) };
    assert_eq!(read(&mut table, &image), Answered);
    // A table that was made is none after an image that is refused.
    let mut spoilt = JetwrightTable::unmade();
    assert_eq!(read(&mut spoilt, &image), Answered);
    image[40] ^= 1;
    assert_eq!(read(&mut spoilt, &image), ImageDamaged);
    let mut set = JetwrightSetpoint { gauge_pa: 1.0, air: 1.0 };
    assert_eq!(jetwright_table_at(Some(&spoilt), 2e4, Some(&mut set)), NotMade);
    assert!(set.gauge_pa.is_nan() && set.air.is_nan());
    table
}

fn settings() -> JetwrightControllerSettings {
    let sensor = JetwrightSensorLimits { lowest: -10.0, highest: 60e3, fastest: 50e3, noise: 2e3, stuck_after_s: 0.0 };
    JetwrightControllerSettings {
        sensors: [sensor; 3],
        lighting_w: 1e4,
        lighting_time_s: 2.0,
        steady_time_s: 0.5,
        ready_time_s: 60.0,
        closing_time_s: 2.0,
        run_down_time_s: 8.0,
        longest_tick_ms: 500,
        clock_tolerance: 0.01,
        least_air_m3_per_s: 0.002,
        air_heat_j_per_m3: 3e6,
        has_second_air: 0,
        air_agreement: 0.1,
        air_agreement_time_s: 1.0,
    }
}

struct Desk {
    controller: JetwrightController,
    inputs: JetwrightInputs,
    outputs: JetwrightOutputs,
}

impl Desk {
    fn make(controller: &mut JetwrightController, settings: &JetwrightControllerSettings) -> JetwrightStatus {
        let travel = JetwrightTravel { slowest_w_per_s: 5e3, fastest_w_per_s: 20e3 };
        let band = JetwrightCrossLimitSettings {
            lowest_air_ratio: 0.92,
            target_air_ratio: 1.05,
            highest_air_ratio: 1.25,
            lowest_w: 1e4,
            highest_w: 2.6e4,
            gas_travel: travel,
            air_travel: travel,
            actuator_tolerance: 0.03,
            reading_tolerance: 0.01,
        };
        let (mut limit, mut changes) = (JetwrightCrossLimit::unmade(), JetwrightAirChanges::unmade());
        assert_eq!(jetwright_cross_limit_make(Some(&mut limit), Some(&band), None), Answered);
        assert_eq!(jetwright_air_changes_make(Some(&mut changes), 0.01, 4.0, 0.002, None), Answered);
        let table = table();
        jetwright_controller_make(Some(controller), Some(&table), Some(&limit), Some(&changes), Some(settings), None)
    }

    /// At the fire, with outputs that ask for gas.
    fn firing() -> Self {
        let mut controller = JetwrightController::unmade();
        assert_eq!(Self::make(&mut controller, &settings()), Answered);
        let inputs = JetwrightInputs {
            now_ms: 0,
            command: 0,
            wanted_w: 1e4,
            readings: [0.0; 3],
            gas_w: 0.0,
            air_w: 0.0,
            air_flow_m3_per_s: 0.0,
            second_air_flow_m3_per_s: -1.0,
            chamber_is_cold: 1,
            permitted: 1,
        };
        let outputs = JetwrightOutputs {
            state: JetwrightState::Off,
            asks_for_gas: true,
            blower_on: false,
            fault: false,
            cause: 0,
            first_cause: 0,
            first_cause_sensor: 0,
            gas_w: 1e4,
            air_w: 1e4,
            set: JetwrightSetpoint { gauge_pa: 1.0, air: 1.0 },
            air_changes: 0.0,
        };
        let mut desk = Self { controller, inputs, outputs };
        desk.tick(0);
        desk.tick(1);
        (0..400).for_each(|_| desk.tick(0));
        assert_eq!(desk.outputs.state, JetwrightState::Ready);
        desk.tick(2);
        (0..10).for_each(|_| desk.tick(0));
        assert_eq!(desk.outputs.state, JetwrightState::Firing);
        desk
    }

    /// A tick of a burner whose air follows at 10 kW a second, and whose gas is there at once.
    fn tick(&mut self, command: u32) {
        let status = self.tick_as_it_is(command);
        assert_eq!(status, Answered);
    }

    fn tick_as_it_is(&mut self, command: u32) -> JetwrightStatus {
        let (air, inputs) = (self.inputs.air_w, &mut self.inputs);
        (inputs.now_ms, inputs.command) = (inputs.now_ms.wrapping_add(100), command);
        let wants = if self.outputs.blower_on { self.outputs.air_w } else { 0.0 };
        inputs.air_w = if wants > air { wants.min(air + 1e3) } else { wants.max(air - 1e3) };
        inputs.gas_w = if self.outputs.asks_for_gas && self.outputs.blower_on { 1e4 } else { 0.0 };
        inputs.air_flow_m3_per_s = inputs.air_w / 3e6;
        inputs.readings = [0.0, 0.0, inputs.air_w];
        jetwright_controller_tick(Some(&mut self.controller), Some(&self.inputs), Some(&mut self.outputs))
    }

    fn asks_for_nothing(&self) -> bool {
        let out = &self.outputs;
        !out.asks_for_gas && out.blower_on && out.gas_w == 0.0 && out.state == JetwrightState::Lockout && out.fault
    }
}

/// The words of a controller: whether it was made, whether a call is under way, the sum, and the rest.
fn words(controller: &mut JetwrightController) -> &mut [u32] {
    let count = size_of::<JetwrightController>() / size_of::<u32>();
    // SAFETY: the struct is made of words, and the fire has filled all that are looked at.
    unsafe { core::slice::from_raw_parts_mut((&raw mut *controller).cast(), count) }
}

#[test]
fn a_call_without_an_answer_leaves_no_permission_behind() {
    let mut desk = Desk::firing();
    assert_eq!(jetwright_controller_tick(None, Some(&desk.inputs), Some(&mut desk.outputs)), NullPointer);
    assert!(desk.asks_for_nothing());
    desk.outputs.asks_for_gas = true;
    assert_eq!(jetwright_controller_tick(Some(&mut desk.controller), None, Some(&mut desk.outputs)), NullPointer);
    assert!(desk.asks_for_nothing());
    assert_eq!(jetwright_controller_tick(Some(&mut desk.controller), Some(&desk.inputs), None), NullPointer);

    // One that is refused its settings is none any more.
    let mut desk = Desk::firing();
    let wrong = JetwrightControllerSettings { longest_tick_ms: 3000, ..settings() };
    assert_eq!(Desk::make(&mut desk.controller, &wrong), JetwrightStatus::Setting);
    assert_eq!(desk.tick_as_it_is(0), NotMade);
    assert!(desk.asks_for_nothing());
    let wrong = JetwrightControllerSettings { has_second_air: 2, ..settings() };
    assert_eq!(Desk::make(&mut desk.controller, &wrong), JetwrightStatus::Unknown);
}

#[test]
fn memory_that_was_written_over_ends_the_fire() {
    // Every word that the fire has filled, but the record and what it does not keep.
    let mut seen = 0;
    for place in 3..words(&mut JetwrightController::unmade()).len() {
        let mut desk = Desk::firing();
        words(&mut desk.controller)[place] ^= 1 << (place % 32);
        match desk.tick_as_it_is(0) {
            Damaged => {
                assert!(desk.asks_for_nothing());
                seen += 1;
            }
            status => assert_eq!(status, Answered),
        }
    }
    // 41 words of the table, 20 of the limiter, 5 of the air changes, some 17 of the settings, 7 a sensor.
    assert!(seen >= 100, "{seen}");
    // The sum itself.
    let mut desk = Desk::firing();
    words(&mut desk.controller)[2] ^= 1;
    assert_eq!(desk.tick_as_it_is(0), Damaged);
    assert!(desk.asks_for_nothing());
}

#[test]
fn a_call_that_interrupts_another_asks_for_no_gas() {
    let mut desk = Desk::firing();
    words(&mut desk.controller)[1] = 1;
    assert_eq!(desk.tick_as_it_is(0), Busy);
    assert!(desk.asks_for_nothing());
    words(&mut desk.controller)[1] = 0;
    // A call that ended leaves no mark behind, by whatever way.
    words(&mut desk.controller)[2] ^= 1;
    assert_eq!([desk.tick_as_it_is(0), desk.tick_as_it_is(0)], [Damaged; 2]);
}

#[test]
fn what_c_may_say_wrongly_turns_the_gas_off() {
    type Change = fn(&mut JetwrightInputs);
    let changes: [Change; 6] = [
        |inputs| inputs.permitted = 0,
        |inputs| inputs.permitted = 2,
        |inputs| inputs.permitted = u32::MAX,
        |inputs| inputs.second_air_flow_m3_per_s = f32::NAN,
        |inputs| inputs.second_air_flow_m3_per_s = 0.0,
        |inputs| inputs.gas_w = f32::NAN,
    ];
    for (place, change) in changes.into_iter().enumerate() {
        let mut desk = Desk::firing();
        desk.inputs.now_ms += 100;
        change(&mut desk.inputs);
        let status = jetwright_controller_tick(Some(&mut desk.controller), Some(&desk.inputs), Some(&mut desk.outputs));
        assert_eq!(status, Answered);
        assert!(!desk.outputs.asks_for_gas && desk.outputs.blower_on, "{place}");
    }
    for command in [3, 5, 99, u32::MAX] {
        let mut desk = Desk::firing();
        desk.tick(command);
        assert_eq!(desk.outputs.state, JetwrightState::PostPurge, "{command}");
    }
}
