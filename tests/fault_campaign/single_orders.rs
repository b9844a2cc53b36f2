//! Single orders of calls that the whole controller must stand; runs at random stand beside.

use crate::shop::{Shop, TICK, fitted};
use jetwright::control::{Command, Inputs, MixtureFault, Reason, SensorFault, State};
use jetwright::quantity::{ActualVolumeFlow, NetHeatRate};

#[test]
fn a_gas_reading_far_below_zero_is_none() {
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

#[test]
fn light_without_permission_or_air_waits_and_asks_for_nothing() {
    let mut shop = Shop::<f64>::ready(|_| ());
    let out = shop.tick(Command::Light, |inputs| inputs.permitted = false);
    assert_eq!((out.state, out.reason), (State::Ready, None));
    shop.tick(Command::Nothing, |_| ());
    let less = |inputs: &mut Inputs<1>| inputs.air_flow = ActualVolumeFlow::from_cubic_meters_per_second(0.0019);
    let out = shop.tick(Command::Light, less);
    assert_eq!((out.state, out.reason), (State::PrePurge, None));
    // Light in every other state is swallowed.
    let mut shop = Shop::<f64>::new();
    for _ in 0..3 {
        shop.tick(Command::Nothing, |_| ());
        assert_eq!(shop.tick(Command::Light, |_| ()).state, State::Off);
    }
}

#[test]
fn a_lockout_ends_by_a_new_reset_alone() {
    for command in [Command::Nothing, Command::Start, Command::Light, Command::Stop] {
        let mut shop = Shop::<f64>::ready(|_| ());
        shop.tick(Command::Nothing, |inputs| inputs.readings = [f64::NAN]);
        for _ in 0..200 {
            shop.tick(Command::Nothing, |_| ());
            assert_eq!(shop.tick(command, |_| ()).state, State::Lockout, "{command:?}");
        }
    }
}

#[test]
fn two_air_sensors_that_part_twice_for_a_moment_agree() {
    let second = |share: f64| move |inputs: &mut Inputs<1>| inputs.second_air_flow = Some(inputs.air_flow * share);
    let mut shop = Shop::firing_with(fitted, second(1.0));
    (0..80).for_each(|_| _ = shop.tick(Command::Nothing, second(1.0)));
    // Seven ticks of the second that they may be apart, three times.
    for _ in 0..3 {
        for _ in 0..7 {
            assert!(shop.tick(Command::Nothing, second(1.2)).asks_for_gas);
        }
        assert!(shop.tick(Command::Nothing, second(1.0)).asks_for_gas);
    }
    let apart = (1..20).find(|_| !shop.tick(Command::Nothing, second(1.2)).asks_for_gas);
    // Ten tenths, summed, may be a little less than one.
    assert!(matches!(apart, Some(10 | 11)), "{apart:?}");
    assert_eq!(shop.out.unwrap().reason, Some(Reason::Air(SensorFault::Contradicts)));
}

#[test]
fn what_was_apart_or_came_unasked_before_a_reset_is_forgotten() {
    let second = |share: f64| move |inputs: &mut Inputs<1>| inputs.second_air_flow = Some(inputs.air_flow * share);
    let mut shop = Shop::ready_with(fitted, second(1.0));
    (0..7).for_each(|_| _ = shop.tick(Command::Nothing, second(1.2)));
    shop.tick(Command::Nothing, |inputs| {
        second(1.2)(inputs);
        inputs.readings = [f64::NAN];
    });
    let out = shop.tick(Command::Reset, second(1.2));
    assert_ne!(out.state, State::Lockout);
    // A second more, from the reset on.
    let locks = (1..20).find(|_| shop.tick(Command::Nothing, second(1.2)).state == State::Lockout);
    assert!(matches!(locks, Some(10 | 11)), "{locks:?}");

    let gas = |inputs: &mut Inputs<1>| inputs.gas = NetHeatRate::from_watts(1e3);
    let mut shop = Shop::<f64>::ready(|_| ());
    let locks = (1..40).find(|_| shop.tick(Command::Nothing, gas).state == State::Lockout);
    assert_eq!((locks, shop.out.unwrap().first_cause), (Some(21), Some(Reason::GasUnasked)));
    (0..5).for_each(|_| _ = shop.tick(Command::Nothing, |_| ()));
    assert_ne!(shop.tick(Command::Reset, gas).state, State::Lockout);
}

#[test]
fn gas_that_never_comes_locks_out_with_its_cause() {
    let none = |inputs: &mut Inputs<1>| inputs.gas = NetHeatRate::from_watts(0.0);
    let mut shop = Shop::<f64>::ready(|_| ());
    shop.tick(Command::Light, |_| ());
    let ends = (1..30).find(|_| !shop.tick(Command::Nothing, none).asks_for_gas);
    assert_eq!((ends, shop.out.unwrap().first_cause), (Some(11), Some(Reason::NotFlowing)));
}

#[test]
fn gas_that_reads_right_with_breaks_is_no_fire() {
    let mut shop = Shop::<f64>::ready(|_| ());
    shop.tick(Command::Light, |_| ());
    // Half a second without a break makes a fire; four tenths and one tick of too little gas never do.
    let little = |inputs: &mut Inputs<1>| inputs.gas = NetHeatRate::from_watts(2e3);
    for tick in 0..9 {
        let out = if tick % 5 == 4 { shop.tick(Command::Nothing, little) } else { shop.tick(Command::Nothing, |_| ()) };
        assert_eq!(out.state, State::Lighting, "{tick}");
    }
}

#[test]
fn the_record_keeps_the_last_events_in_their_order() {
    let mut shop = Shop::<f64>::firing(|_| ());
    shop.tick(Command::Stop, |_| ());
    shop.until(State::Off, |_| ());
    for _ in 0..4 {
        shop.tick(Command::Start, |_| ());
        shop.tick(Command::Stop, |_| ());
    }
    let told: Vec<_> = shop.desk.record().iter().map(|event| (event.from, event.to)).collect();
    let (start, stop) = ((State::Off, State::PrePurge), (State::PrePurge, State::Off));
    assert_eq!(told, [start, stop, start, stop, start, stop, start, stop]);
    let times: Vec<u32> = shop.desk.record().iter().map(|event| event.now).collect();
    assert!(times.windows(2).all(|pair| pair[1].wrapping_sub(pair[0]) == TICK));
}

#[test]
fn after_a_jump_the_reading_before_it_counts() {
    let mut shop = Shop::<f64>::firing(|_| ());
    for _ in 0..3 {
        let out = shop.tick(Command::Nothing, |inputs| inputs.readings = [50e3]);
        assert_eq!(out.reason, Some(Reason::Sensor(0, SensorFault::Jumped)));
    }
}

#[test]
fn air_that_its_actuator_cannot_give_locks_out_before_the_fire() {
    let more = |inputs: &mut Inputs<1>| {
        (inputs.air, inputs.air_flow) = (inputs.air * 1.2, inputs.air_flow * 1.2);
    };
    let contradicts = Some(Reason::Mixture(MixtureFault::AirContradicts));
    let mut shop = Shop::<f64>::ready(|_| ());
    let out = shop.tick(Command::Nothing, more);
    assert_eq!((out.state, out.first_cause), (State::Lockout, contradicts));
    let mut shop = Shop::<f64>::new();
    shop.tick(Command::Nothing, |_| ());
    shop.tick(Command::Start, |_| ());
    (0..40).for_each(|_| _ = shop.tick(Command::Nothing, |_| ()));
    let out = shop.tick(Command::Nothing, more);
    assert_eq!((out.state, out.first_cause), (State::Lockout, contradicts));
}
