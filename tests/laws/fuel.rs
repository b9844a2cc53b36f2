//! Laws of the cylinder, the regulator and the line.

use super::cases::{IN_USE, JetCase, spread};
use jetwright::fuel::{
    Charge, Cylinder, Hose, Line, Regulator, low_pressure_pipe_diameter, low_pressure_pipe_flow, throttled,
};
use jetwright::gas::{Gas, Mixture, Species};
use jetwright::quantity::{
    AbsolutePressure, ActualVolumeFlow, Duration, GaugePressure, Length, Mass, MassFlow, PressureDifference,
    Temperature,
};
use jetwright::{Dual, Error, Input, Scalar};

fn cylinder<S: Scalar>(count: f64) -> Cylinder<S> {
    let meters = Length::from_meters(S::c(0.37));
    Cylinder::new(meters, Mass::from_kilograms(S::c(45.0)), None, S::c(count)).unwrap()
}

fn propane<S: Scalar>() -> Gas<S> {
    Gas::from(Species::Propane)
}

fn celsius<S: Scalar>(value: f64) -> Temperature<S> {
    Temperature::from_celsius(S::c(value))
}

fn at_gauge(kilopascals: f64) -> AbsolutePressure<f64> {
    AbsolutePressure::from_pascals(83_500.0 + 1e3 * kilopascals)
}

fn after(cylinder: &Cylinder, start: Charge, air: f64, rate: f64, hours: f64) -> jetwright::fuel::Draw {
    let (flow, time) = (MassFlow::from_kilograms_per_hour(rate), Duration::from_hours(hours));
    cylinder.draw(&propane(), start, celsius(air), flow, time, at_gauge(140.0)).unwrap()
}

#[test]
fn the_heat_that_boils_the_gas_comes_from_the_liquid_the_steel_and_the_wall() {
    // Over a short time the wall gives 12.4 W/(m2 K) on the area of a plain cylinder, done here by hand.
    let start = Charge { mass: Mass::from_kilograms(30.0), temperature: celsius(5.0) };
    let (air, rate, seconds) = (20.0, 4.0, 120.0);
    let end = after(&cylinder(1.0), start, air, rate, seconds / 3600.0);
    // Reference equation at 5 degC: 367.6 kJ/kg, 521.7 kg/m3, 2.532 kJ/(kg K).
    let wetted = 0.25 * core::f64::consts::PI * 0.37 * 0.37
        + 30.0 / 521.7 / (0.25 * core::f64::consts::PI * 0.37 * 0.37) * core::f64::consts::PI * 0.37;
    let drawn = rate / 3600.0 * seconds;
    let balance = 12.4 * wetted * (air - 5.0) * seconds - drawn * 367_600.0;
    let fall = balance / ((30.0 - 0.5 * drawn) * 2532.0 + 450.0 * 0.75 * 45.0);
    assert!((end.temperature.celsius() - 5.0 - fall).abs() < 0.03 * fall.abs(), "{} {fall}", end.temperature.celsius());
    assert!((end.left.kilograms() - 30.0 + drawn).abs() < 1e-9);
}

#[test]
fn a_draw_held_long_tends_to_the_steady_one_and_no_draw_to_the_air() {
    let (big, air) = (cylinder::<f64>(1.0), 10.0);
    let charge = Mass::from_kilograms(30.0);
    let steady = big.steady_draw(&propane(), charge, celsius(air), at_gauge(140.0)).unwrap();
    let boiling = propane::<f64>().mixture().boiling_temperature(at_gauge(140.0)).unwrap();
    let start = Charge { mass: charge, temperature: boiling };
    // Started where the steady draw stands, an hour of it changes little: the wetted wall shrinks.
    let end = after(&big, start, air, steady.kilograms_per_hour(), 0.25);
    assert!((end.temperature.kelvin() - boiling.kelvin()).abs() < 0.15);
    let rest = after(&big, start, air, 0.0, 48.0);
    assert!((rest.temperature.celsius() - air).abs() < 0.1 && (rest.left.kilograms() - 30.0).abs() < 1e-12);
}

#[test]
fn more_gas_warmer_air_and_a_second_cylinder_give_more_and_a_higher_pressure_less() {
    let draw = |count: f64, mass: f64, air: f64, gauge: f64| {
        let found =
            cylinder::<f64>(count).steady_draw(&propane(), Mass::from_kilograms(mass), celsius(air), at_gauge(gauge));
        found.unwrap().kilograms_per_second()
    };
    for unit in (0..60).map(spread::<3>) {
        let (mass, air, gauge) = (1.0 + 40.0 * unit[0], -5.0 + 40.0 * unit[1], 10.0 + 200.0 * unit[2]);
        let here = draw(1.0, mass, air, gauge);
        assert!(here >= 0.0 && draw(1.0, mass + 1.0, air, gauge) >= here);
        assert!(draw(1.0, mass, air + 1.0, gauge) >= here && draw(1.0, mass, air, gauge + 5.0) <= here);
        assert!((draw(2.0, 2.0 * mass, air, gauge) - 2.0 * here).abs() <= 1e-12);
    }
    // Colder than the boiling point at that pressure nothing boils.
    assert_eq!(draw(1.0, 20.0, -30.0, 200.0), 0.0);
}

#[test]
fn too_much_draw_is_told_with_its_time_and_an_empty_cylinder_too() {
    let start = Charge { mass: Mass::from_kilograms(10.0), temperature: celsius(10.0) };
    let end = after(&cylinder(1.0), start, 10.0, 8.0, 1.0);
    let fell = end.too_cold_after.unwrap().minutes();
    let short = after(&cylinder(1.0), start, 10.0, 8.0, fell / 60.0);
    // Let to run just so long, the pressure is just what is needed.
    assert!((short.pressure.pascals() / at_gauge(140.0).pascals() - 1.0).abs() < 2e-3);
    let empty = after(&cylinder(1.0), start, 10.0, 8.0, 2.0).empty_after.unwrap();
    assert!((empty.hours() - 10.0 / 8.0).abs() < 1e-9);
    let none = Charge { mass: Mass::from_kilograms(0.0), ..start };
    assert_eq!(after(&cylinder(1.0), none, 10.0, 1.0, 1.0).empty_after.unwrap().seconds(), 0.0);
}

#[test]
fn four_times_as_many_steps_change_a_draw_by_a_hundredth_of_a_degree() {
    let start = Charge { mass: Mass::from_kilograms(20.0), temperature: celsius(15.0) };
    let whole = after(&cylinder(1.0), start, 15.0, 3.0, 4.0);
    let mut charge = start;
    for _ in 0..4 {
        let part = after(&cylinder(1.0), charge, 15.0, 3.0, 1.0);
        charge = Charge { mass: part.left, temperature: part.temperature };
    }
    assert!((whole.temperature.kelvin() - charge.temperature.kelvin()).abs() < 0.01);
}

#[test]
fn a_small_cylinder_left_for_two_days_settles_without_swinging() {
    let small = Cylinder::<f64>::new(Length::from_meters(0.2), Mass::from_kilograms(5.0), None, 1.0).unwrap();
    let start = Charge { mass: Mass::from_kilograms(3.0), temperature: celsius(-20.0) };
    let mut last = -20.0;
    for hours in [1.0, 6.0, 24.0, 48.0] {
        let warmed = after(&small, start, 15.0, 0.0, hours).temperature.celsius();
        assert!(warmed >= last && warmed <= 15.0 + 1e-9, "{hours}: {warmed}");
        last = warmed;
    }
    assert!((last - 15.0).abs() < 0.01, "{last}");
}

#[test]
fn a_gas_that_is_never_sold_as_a_liquid_has_no_cylinder() {
    let methane = Mixture::<f64>::pure(Species::Methane);
    assert_eq!(methane.saturated(celsius(0.0)).unwrap_err(), Error::NotLiquefied { given: 1.0 });
    let refused = cylinder::<f64>(1.0).steady_draw(&propane(), Mass::from_kilograms(-1.0), celsius(0.0), at_gauge(0.0));
    assert_eq!(refused.unwrap_err(), Error::OutOfRange { input: Input::CylinderCharge, given: -1.0 });
}

fn hose<S: Scalar>(diameter: S, length: S, losses: f64) -> Line<S> {
    let smooth = Length::from_meters(S::zero());
    Line::new(Length::from_meters(diameter), Length::from_meters(length), smooth, S::c(losses)).unwrap()
}

#[test]
fn a_line_takes_more_the_longer_and_narrower_it_is_and_none_takes_nothing() {
    let mut told = 0;
    for case in JetCase::cover(&IN_USE, 300) {
        let (Ok(jet), gas, supply) = (case.jet::<f64>(), case.gas::<f64>(), case.supply::<f64>()) else { continue };
        if jet.flow(&gas, &supply).is_err() || case.back < 0.0 {
            continue;
        }
        let direct = jet.flow(&gas, &supply).unwrap().mass_flow.kilograms_per_second();
        let fed = |diameter: f64, length: f64| {
            let found = hose(diameter, length, 2.0).feed(&jet, &gas, &supply).unwrap();
            assert!(found.loss.pascals() >= 0.0 && found.at_jet.pascals() >= supply.back.pascals());
            assert_eq!(found.gauge_reads_high, found.share > jetwright::fuel::GAUGE_READS_HIGH);
            told += usize::from(found.gauge_reads_high);
            found.jet.mass_flow.kilograms_per_second()
        };
        let mut fed = fed;
        let flow = fed(8e-3, 3.0);
        assert!(flow <= direct * (1.0 + 1e-9) && fed(8e-3, 9.0) <= flow * (1.0 + 1e-9), "{case:?}");
        assert!(fed(12e-3, 3.0) >= flow * (1.0 - 1e-9), "{case:?}");
        let none = hose(0.1, 0.0, 0.0).feed(&jet, &gas, &supply).unwrap();
        assert!((none.jet.mass_flow.kilograms_per_second() / direct - 1.0).abs() < 1e-6);
        // The pressures close: what the line needs before it is the reading.
        let found = hose(8e-3, 3.0, 2.0).feed(&jet, &gas, &supply).unwrap();
        let outlet = found.at_jet.to_absolute(supply.ambient);
        let inlet = hose(8e-3, 3.0, 2.0).inlet(&gas, outlet, supply.temperature, found.jet.mass_flow);
        if let Ok(inlet) = inlet {
            let reading = supply.gauge.to_absolute(supply.ambient).pascals();
            assert!((inlet.pascals() / reading - 1.0).abs() < 1e-6, "{case:?} {} {reading}", inlet.pascals());
        }
    }
    assert!(told > 50, "{told}");
}

#[test]
fn single_precision_follows_lines_and_cylinders() {
    for case in JetCase::cover(&IN_USE, 200) {
        let feed = |wide: bool| {
            let share = if wide {
                let found = hose(8e-3_f64, 2.0, 4.0).feed(&case.jet().ok()?, &case.gas(), &case.supply()).ok()?;
                found.jet.mass_flow.kilograms_per_second()
            } else {
                let found = hose(8e-3_f32, 2.0, 4.0).feed(&case.jet().ok()?, &case.gas(), &case.supply()).ok()?;
                f64::from(found.jet.mass_flow.kilograms_per_second())
            };
            Some(share)
        };
        if let (Some(double), Some(single)) = (feed(true), feed(false)) {
            assert!((single / double - 1.0).abs() < 3e-4, "{case:?}: {single} {double}");
        }
    }
    fn end<S: Scalar>() -> [f64; 2] {
        let start = Charge { mass: Mass::from_kilograms(S::c(20.0)), temperature: celsius(15.0) };
        let flow = MassFlow::from_kilograms_per_hour(S::c(2.0));
        let needed = AbsolutePressure::from_pascals(S::c(2e5));
        let time = Duration::from_hours(S::c(2.0));
        let end = cylinder(1.0).draw(&propane(), start, celsius(15.0), flow, time, needed).unwrap();
        [end.temperature.kelvin().to_f64(), end.left.kilograms().to_f64()]
    }
    for (single, double) in end::<f32>().into_iter().zip(end::<f64>()) {
        assert!((single / double - 1.0).abs() < 1e-4);
    }
}

#[test]
fn derivatives_go_through_cylinder_throttle_hose_and_line() {
    fn answers<S: Scalar>(at: [S; 5]) -> [S; 5] {
        let [mass, air, flow, gauge, bore] = at;
        let air = Temperature::from_kelvin(air);
        let needed = AbsolutePressure::from_pascals(S::c(83_500.0) + gauge);
        let steady = cylinder(1.0).steady_draw(&propane(), Mass::from_kilograms(mass), air, needed).unwrap();
        let start = Charge { mass: Mass::from_kilograms(mass), temperature: air };
        let rate = MassFlow::from_kilograms_per_second(flow);
        let end = cylinder(1.0).draw(&propane(), start, air, rate, Duration::from_hours(S::c(1.5)), needed).unwrap();
        let cold = throttled(&propane(), end.pressure, end.temperature, needed).unwrap();
        let meters = |value: f64| Length::from_meters(S::c(value));
        let warmed =
            Hose::in_still_air(meters(3.0), meters(0.016)).warmed(&propane(), needed, cold, air, rate).unwrap();
        let jet = jetwright::orifice::Jet::new(
            jetwright::orifice::BoreShape::default().with_diameter(Length::from_meters(bore)).unwrap(),
        );
        let supply = jetwright::orifice::Supply {
            ambient: AbsolutePressure::from_pascals(S::c(83_500.0)),
            gauge: GaugePressure::from_pascals(gauge),
            back: GaugePressure::from_pascals(S::zero()),
            temperature: warmed,
        };
        let fed = hose(S::c(6e-3), S::c(3.0), 4.0).feed(&jet, &propane(), &supply).unwrap();
        [
            steady.kilograms_per_second(),
            end.temperature.kelvin(),
            warmed.kelvin(),
            fed.jet.mass_flow.kilograms_per_second(),
            fed.loss.pascals(),
        ]
    }
    let at = [25.0, 288.15, 0.9e-3, 60e3, 1.6e-3];
    let exact = answers(Dual::variables(at));
    for input in 0..5 {
        let moved = |by: f64| {
            let mut there = at;
            there[input] *= 1.0 + by;
            answers(there)
        };
        let (low, high) = (moved(-1e-5), moved(1e-5));
        for output in 0..5 {
            let difference = (high[output] - low[output]) / (2e-5 * at[input]);
            let carried = exact[output].partials[input];
            let size = exact[output].value / at[input];
            assert!(
                (carried - difference).abs() < 1e-4 * difference.abs() + 1e-6 * size.abs(),
                "{input} {output}: {carried} {difference}"
            );
        }
    }
}

#[test]
fn the_code_pipe_for_a_flow_passes_that_flow_and_a_wider_one_more() {
    for unit in (0..60).map(spread::<4>) {
        let diameter = Length::from_inches(0.3 + 2.0 * unit[0]);
        let (length, drop) = (Length::from_feet(5.0 + 200.0 * unit[1]), 0.2 + 5.0 * unit[2]);
        let drop = PressureDifference::from_inches_of_water(drop);
        let relative = 0.5 + 1.5 * unit[3];
        let flow = low_pressure_pipe_flow(diameter, length, drop, relative, 9e-6).unwrap();
        let back = low_pressure_pipe_diameter(flow, length, drop, relative, 9e-6).unwrap();
        assert!((back.meters() / diameter.meters() - 1.0).abs() < 1e-9);
        let wider = low_pressure_pipe_flow(diameter * 1.1, length, drop, relative, 9e-6).unwrap();
        // The flow goes with the diameter to the 1 / 0.381: 28.4 % more for a tenth.
        assert!((wider.cubic_meters_per_second() / flow.cubic_meters_per_second() - 1.2842).abs() < 1e-3);
    }
    let (none, length) = (PressureDifference::from_pascals(0.0_f64), Length::from_feet(10.0));
    let still = low_pressure_pipe_flow(Length::from_inches(1.0), length, none, 1.5, 8e-6).unwrap();
    assert_eq!(still.cubic_meters_per_second(), 0.0);
    let flow = ActualVolumeFlow::from_cubic_meters_per_hour(3.0);
    assert!(low_pressure_pipe_diameter(flow, length, none, 1.5, 8e-6).is_err());
}

#[test]
fn a_regulator_read_without_flow_falls_to_the_reading_wanted() {
    let point = |grams: f64, psi: f64| (MassFlow::from_grams_per_second(grams), GaugePressure::from_psi(psi));
    let regulator = Regulator::new(&[point(0.0, 10.0), point(0.5, 9.2), point(1.5, 8.0)]).unwrap();
    let jet = |gauge: GaugePressure<f64>| Ok(MassFlow::from_grams_per_second(0.25 * gauge.psi().sqrt()));
    for psi in [1.0, 3.0, 6.0, 9.0] {
        let wanted = GaugePressure::from_psi(psi);
        let set = regulator.reading_without_flow(wanted, jet(wanted).unwrap());
        assert!(set.pascals() > wanted.pascals());
        assert!((regulator.flowing(set, jet).unwrap().psi() / psi - 1.0).abs() < 1e-9);
    }
    let refused = Err(Error::Points { input: Input::GasDraw });
    assert_eq!(Regulator::new(&[point(0.1, 9.0), point(1.0, 8.0)]).map(|_| ()), refused);
    assert_eq!(Regulator::new(&[point(0.0, 8.0), point(1.0, 9.0)]).map(|_| ()), refused);
}
