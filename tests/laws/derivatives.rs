//! Derivatives carried by the number type are those of the answer: through expansion, bore, searches and branches.

use super::cases::{ACCEPTED, IN_USE, JetCase, Ranges};
use super::rig::Rig;
use crate::tolerance::DERIVATIVE;
use jetwright::measure::{Dial, Measurand, Source, Spreads, UncertainBurner};
use jetwright::orifice::{BoreLength, BoreShape, Coefficient, Jet, Supply, bore_for_heat, pressure_for_heat};
use jetwright::quantity::{AbsolutePressure, GaugePressure, HeatRate, Length, NetHeatRate, Temperature};
use jetwright::{Dual, Scalar, Site};

/// What is varied: bore, length, roughness, gauge, ambient, back pressure, temperature.
const INPUTS: usize = 7;

fn inputs(case: &JetCase) -> [f64; INPUTS] {
    [case.bore, case.length, case.roughness, case.gauge, case.ambient, case.back, case.kelvin]
}

fn shape<S: Scalar>(case: &JetCase, at: [S; INPUTS]) -> BoreShape<S> {
    BoreShape {
        length: BoreLength::Fixed(Length::from_meters(at[1])),
        roughness: Length::from_meters(at[2]),
        ..case.shape()
    }
}

fn supply<S: Scalar>(at: [S; INPUTS]) -> Supply<S> {
    Supply {
        gauge: GaugePressure::from_pascals(at[3]),
        ambient: AbsolutePressure::from_pascals(at[4]),
        back: GaugePressure::from_pascals(at[5]),
        temperature: Temperature::from_kelvin(at[6]),
    }
}

fn flow<S: Scalar>(case: &JetCase, at: [S; INPUTS]) -> Option<[S; 3]> {
    let jet = Jet::new(shape(case, at).with_diameter(Length::from_meters(at[0])).ok()?);
    let flow = jet.flow(&case.gas(), &supply(at)).ok()?;
    Some([flow.mass_flow.kilograms_per_second(), flow.discharge_coefficient, flow.heat_net.watts()])
}

/// The gauge and the bore that make a heat.
fn inverses<S: Scalar>(case: &JetCase, at: [S; INPUTS], watts: f64) -> Option<[S; 2]> {
    let (shape, supply, gas) = (shape(case, at), supply(at), case.gas());
    let heat = HeatRate::Net(NetHeatRate::from_watts(S::c(watts)));
    let jet = Jet::new(shape.with_diameter(Length::from_meters(at[0])).ok()?);
    let gauge = pressure_for_heat(&jet, &gas, &supply, heat).ok()?.pascals();
    let bore = bore_for_heat(&shape, S::one(), Coefficient::Model, &gas, &supply, heat).ok()?.meters();
    Some([gauge, bore])
}

/// Holds every derivative against differences to both sides; returns how many were held, and how many had a corner
/// between the two sides.
fn hold<const N: usize, const M: usize>(
    at: [f64; N],
    scale: [f64; N],
    exact: impl Fn([Dual<f64, N>; N]) -> Option<[Dual<f64, N>; M]>,
    plain: impl Fn([f64; N]) -> Option<[f64; M]>,
    step: f64,
) -> (usize, usize) {
    let Some(answer) = exact(Dual::variables(at)) else { return (0, 0) };
    let Some(middle) = plain(at) else { panic!("answered with derivatives and not without: {at:?}") };
    let (mut held, mut corners) = (0, 0);
    for input in 0..N {
        let moved = |by: f64| {
            let mut there = at;
            there[input] += by * scale[input];
            plain(there)
        };
        let sides = [-2.0, -1.0, 1.0, 2.0].map(|many| moved(many * step));
        let [Some(far_before), Some(before), Some(after), Some(far_after)] = sides else { continue };
        for output in 0..M {
            let (value, size) = (answer[output].value, middle[output].abs());
            assert!((value - middle[output]).abs() <= 1e-12 * size, "the value itself: {value} {}", middle[output]);
            let of = |low: f64, high: f64, many: f64| (high - low) / (many * step);
            let [left, right] = [of(before[output], middle[output], 1.0), of(middle[output], after[output], 1.0)];
            let near = of(before[output], after[output], 2.0);
            let far = of(far_before[output], far_after[output], 4.0);
            // The fourth-order difference; what it differs from the second-order one says how far to trust it.
            let difference = (4.0 * near - far) / 3.0;
            let carried = answer[output].partials[input] * scale[input];
            let rounding = 1e-12 * size / step;
            let doubt = (near - far).abs() + rounding;
            let whole = DERIVATIVE * (difference.abs() + 1e-3 * size);
            if (left - right).abs() > 30.0 * step * (size + difference.abs()) + 10.0 * rounding {
                // A corner, or a bend as good as one: the derivative is that of one side, or between them.
                let (low, high) = (left.min(right), left.max(right));
                let slack = 0.2 * (high - low) + whole;
                assert!(
                    carried > low - slack && carried < high + slack,
                    "corner {input} {output} {at:?}: {left} {carried} {right}"
                );
                corners += 1;
                continue;
            }
            assert!(
                (carried - difference).abs() <= whole + doubt,
                "input {input}, output {output} at {at:?}: carried {carried}, difference {difference}, of {size}"
            );
            held += 1;
        }
    }
    (held, corners)
}

fn scale(at: [f64; INPUTS]) -> [f64; INPUTS] {
    // A gauge moves by its own drop, so that it stays above what it blows into.
    let drop = at[3] - at[5];
    [at[0], at[1].max(0.05 * at[0]), at[2].max(1e-7), drop, at[4], drop, at[6]]
}

fn over(ranges: &Ranges, count: usize) {
    let (mut held, mut corners) = (0, 0);
    for case in JetCase::cover(ranges, count) {
        let at = inputs(&case);
        let found = hold(at, scale(at), |at| flow(&case, at), |at| flow(&case, at), 1e-5);
        held += found.0;
        corners += found.1;
    }
    assert!(held > 10 * count, "only {held} of {count} cases");
    assert!(corners < held / 50, "{corners} corners beside {held}");
}

#[test]
fn a_jets_derivatives_are_those_of_differences_over_the_whole_range() {
    over(&ACCEPTED, 1200);
    over(&IN_USE, 1200);
}

#[test]
fn the_inverses_carry_the_derivatives_of_the_implicit_function() {
    let mut held = 0;
    for case in JetCase::cover(&IN_USE, 200) {
        let at = inputs(&case);
        let Some([_, _, watts]) = flow(&case, at) else { continue };
        let found = hold(at, scale(at), |at| inverses(&case, at, watts), |at| inverses(&case, at, watts), 1e-4);
        held += found.0;
    }
    assert!(held > 1000, "{held}");
}

/// A thin plate at a small drop passes area sqrt(2 rho drop): the flow grows with the square of the bore, with the root
/// of the drop, and with the root of pressure over temperature.
#[test]
fn at_a_small_drop_the_exponents_are_those_of_bernoulli() {
    let at = Dual::variables([8e-3, 0.0, 0.0, 300.0, 101_325.0, 0.0, 293.15]);
    let case = JetCase::cover(&IN_USE, 1).next().unwrap();
    let case = JetCase { gas: 5, edge: jetwright::orifice::Edge::Sharp, approach: None, ..case };
    let [flow, ..] = flow(&case, at).unwrap();
    let exponent = |input: usize, value: f64| flow.partials[input] * value / flow.value;
    for (input, value, expected) in [(0, 8e-3, 2.0), (3, 300.0, 0.5), (4, 101_325.0, 0.5), (6, 293.15, -0.5)] {
        assert!((exponent(input, value) - expected).abs() < 0.02, "{input}: {}", exponent(input, value));
    }
}

/// What a burner is varied in: bore, gauge, opening, altitude, air, mixture and chamber temperature, air ratio.
const SETTINGS: usize = 8;

/// Gas, air, air ratio and port speed where it runs; gauge and opening that reach an air ratio where it can.
fn at_work<S: Scalar>(rig: &Rig, at: [S; SETTINGS], watts: Option<f64>) -> Option<[S; 6]> {
    let [bore, gauge, opening, altitude, air, mixture, chamber, air_ratio] = at;
    let mut burner = rig.burner::<S>();
    burner.jet = burner.jet.with_bore(&rig.shape(), Length::from_meters(bore)).ok()?;
    let mut conditions = rig.conditions::<S>();
    let air = Temperature::from_kelvin(air);
    conditions.site = Site::at_altitude(Length::from_meters(altitude), air, S::c(0.4)).ok()?;
    conditions.gas_temperature = air;
    conditions.mixture_temperature = Temperature::from_kelvin(mixture);
    conditions.chamber_temperature = Temperature::from_kelvin(chamber);
    let gauge = GaugePressure::from_pascals(gauge);
    let running = burner.run(&conditions, gauge, opening).ok()?;
    let asked = burner.opening_for(&conditions, gauge, air_ratio).unwrap_or(S::one());
    let heat = watts.map(|watts| HeatRate::Net(NetHeatRate::from_watts(S::c(watts))));
    let wanted = heat.and_then(|heat| {
        burner.gauge_for_heat(&conditions, heat, jetwright::burner::AirSetting::Opening(opening)).ok()
    });
    Some([
        running.gas.kilograms_per_second(),
        running.air.kilograms_per_second(),
        running.air_ratio?,
        running.port_speed.meters_per_second(),
        asked,
        wanted.map_or(S::one(), |gauge| gauge.pascals()),
    ])
}

#[test]
fn a_burners_derivatives_go_through_its_operating_point_and_its_settings() {
    let (mut held, mut corners) = (0, 0);
    for rig in Rig::cover(40) {
        let at = [
            rig.bore,
            rig.gauge,
            rig.opening,
            rig.altitude,
            rig.air_kelvin,
            rig.mixture_kelvin,
            rig.chamber_kelvin,
            rig.air_ratio,
        ];
        let scale = [rig.bore, rig.gauge, 0.2, 1000.0, rig.air_kelvin, rig.mixture_kelvin, rig.chamber_kelvin, 1.0];
        let Some([gas, ..]) = at_work(&rig, at, None) else { continue };
        // Some tenth below what it burns, so that the gauge sought is another.
        let watts = Some(0.9 * gas * rig.conditions::<f64>().gas.net_heating_value().joules_per_kilogram());
        let found = hold(at, scale, |at| at_work(&rig, at, watts), |at| at_work(&rig, at, watts), 2e-5);
        held += found.0;
        corners += found.1;
    }
    assert!(held > 900 && corners < held / 30, "{held} {corners}");
}

/// Everything a burner may be unsure for: bore, mouth, coefficient, gauge, gas, weather, damper, the blower's curve, head
/// and mixture, through the operating point, the curve's interpolation and the damper's.
#[test]
fn a_burners_derivatives_by_every_source_of_its_uncertainty_hold() {
    let (mut held, mut corners) = (0, 0);
    for rig in Rig::cover(40) {
        let (bore, at) = (Length::from_meters(rig.bore), (rig.gauge(), rig.opening));
        let spreads = Spreads::starting(bore, bore * 0.01, Dial::Error(rig.gauge() * 0.02));
        let burner = UncertainBurner::new(&rig.burner(), &rig.shape(), &rig.conditions(), at, None, &spreads);
        let Ok(burner) = burner else { continue };
        let scale = burner.standard().map(|standard| if standard > 0.0 { standard } else { 0.01 });
        // A standard uncertainty is some hundredth of its input, and a step a hundredth of that.
        let exact = |by: [Dual<f64, { Source::COUNT }>; Source::COUNT]| burner.results(by).ok();
        let found = hold([0.0; Source::COUNT], scale, exact, |by| burner.results(by).ok(), 1e-2);
        held += found.0;
        corners += found.1;
    }
    assert!(held > 1200 && corners < held / 30, "{held} {corners}");
}
