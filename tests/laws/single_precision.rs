//! Single precision against double, over what a shop uses.

use super::cases::{IN_USE, JetCase, named_gas, narrow, numbers, spread};
use super::rig::Rig;
use crate::tolerance::{BORDER, SINGLE_PRECISION};
use jetwright::air::{Blower, operating_point};
use jetwright::combustion::AirNeed;
use jetwright::gas::{CombustionReference, NAMED};
use jetwright::orifice::{Coefficient, bore_for_heat, pressure_for_heat};
use jetwright::quantity::{
    AbsolutePressure, ActualVolumeFlow, Density, HeatRate, Length, NetHeatRate, PressureDifference, ReferenceState,
    Temperature,
};
use jetwright::{Result, Scalar, Site};

/// Two rows of numbers agree, each relative to itself or, where it is a difference, to `scale`.
fn agree(double: &[(&str, f64)], single: &[(&str, f64)], scale: f64, of: &dyn std::fmt::Debug) {
    for (&(name, expected), &(_, found)) in double.iter().zip(single) {
        let met = (found - expected).abs() <= SINGLE_PRECISION * expected.abs().max(scale);
        assert!(met, "{name} is {found} in single, {expected} in double, of {of:?}");
    }
}

/// Both types answer or both refuse, unless `beside` finds the other decision within a step of the border.
fn same_kind<A, B>(double: Result<A>, single: Result<B>, beside: impl Fn(f64) -> bool) -> Option<(A, B)> {
    match (double, single) {
        (Ok(double), Ok(single)) => return Some((double, single)),
        (Err(_), Err(_)) => {}
        (double, _) => {
            let answered = double.is_ok();
            let border = [1.0 - BORDER, 1.0 + BORDER].into_iter().any(|step| beside(step) != answered);
            assert!(border, "the two types differ, double answers: {answered}");
        }
    }
    None
}

#[test]
fn a_jet_is_the_same() {
    for case in JetCase::cover(&IN_USE, 20_000) {
        let beside = |step: f64| JetCase { gauge: case.gauge * step, ..case }.flow::<f64>().is_ok();
        if let Some((double, single)) = same_kind(case.flow::<f64>(), case.flow::<f32>(), beside) {
            agree(&numbers(&double), &numbers(&single), 0.0, &case);
            let spreads = (double.coefficient_uncertainty, single.coefficient_uncertainty.to_f64());
            // It steps at Reynolds 5000 and at three length ratios.
            let on_a_step = (double.reynolds_number / 5000.0 - 1.0).abs() < BORDER
                || [0.3, 1.5, 7.0].iter().any(|at| (case.length / case.bore / at - 1.0).abs() < BORDER);
            assert!(on_a_step || (spreads.0 - spreads.1).abs() < SINGLE_PRECISION, "{case:?}");
        }
    }
}

fn site<S: Scalar>(unit: [f64; 4], barometer: bool) -> Site<S> {
    let at = |low: f64, high: f64, share: f64| S::c(narrow(low + (high - low) * share));
    let (temperature, humidity) = (Temperature::from_kelvin(at(243.15, 323.15, unit[1])), at(0.0, 1.0, unit[2]));
    let altitude = Length::from_meters(at(0.0, 3000.0, unit[0]));
    let forecast = AbsolutePressure::from_pascals(at(95e3, 105e3, unit[3]));
    if barometer {
        Site::at_forecast(forecast, altitude, temperature, humidity).unwrap()
    } else {
        Site::at_altitude(altitude, temperature, humidity).unwrap()
    }
}

fn site_numbers<S: Scalar>(site: &Site<S>) -> Vec<(&'static str, f64)> {
    let mut rows = vec![
        ("ambient pressure", site.ambient_pressure().pascals().to_f64()),
        ("air density", site.air_density().kilograms_per_cubic_meter().to_f64()),
        ("water fraction", site.water_fraction().to_f64()),
        ("oxygen fraction", site.oxygen_fraction().to_f64()),
        ("air molar mass", site.air_molar_mass().to_f64()),
    ];
    for index in 0..NAMED.len() {
        let need = AirNeed::new(&named_gas(index), site);
        rows.push(("air by volume", need.volume_ratio.to_f64()));
        rows.push(("air by mass", need.mass_ratio.to_f64()));
        rows.push(("dry air by mass", need.dry_mass_ratio.to_f64()));
    }
    rows
}

#[test]
fn a_site_and_the_air_needed_are_the_same() {
    for index in 0..2000 {
        let unit = spread(index);
        let barometer = index % 2 == 0;
        let (double, single) = (site::<f64>(unit, barometer), site::<f32>(unit, barometer));
        agree(&site_numbers(&double), &site_numbers(&single), 0.0, &unit);
    }
}

fn heating_numbers<S: Scalar>(index: usize, combustion: CombustionReference, state: ReferenceState) -> Vec<f64> {
    let values = named_gas::<S>(index).mixture().calorific_values(combustion, state);
    [
        values.molar_mass,
        values.compression_factor,
        values.gross_molar,
        values.net_molar,
        values.gross_mass.joules_per_kilogram(),
        values.net_mass.joules_per_kilogram(),
        values.gross_volume,
        values.net_volume,
        values.density.kilograms_per_cubic_meter(),
        values.relative_density,
        values.wobbe_gross,
        values.wobbe_net,
    ]
    .map(Scalar::to_f64)
    .to_vec()
}

#[test]
fn heating_values_are_the_same() {
    use CombustionReference as Burnt;
    use ReferenceState as Metered;
    for index in 0..NAMED.len() {
        for burnt in [Burnt::Celsius0, Burnt::Celsius15, Burnt::Fahrenheit60, Burnt::Celsius20, Burnt::Celsius25] {
            for metered in [Metered::Celsius0, Metered::Celsius15, Metered::Fahrenheit60, Metered::Celsius20] {
                let double = heating_numbers::<f64>(index, burnt, metered);
                let single = heating_numbers::<f32>(index, burnt, metered);
                for (double, single) in double.iter().zip(single) {
                    assert!((single / double - 1.0).abs() <= SINGLE_PRECISION, "{index} {burnt:?} {metered:?}");
                }
            }
        }
    }
}

/// A heat the jet makes somewhere in its range, and the gauge and bore asked for it.
fn inverses<S: Scalar>(case: &JetCase, watts: f64) -> (Result<f64>, Result<f64>) {
    let heat = HeatRate::Net(NetHeatRate::from_watts(S::c(watts)));
    let (gas, supply) = (case.gas::<S>(), case.supply::<S>());
    let gauge = case.jet().and_then(|jet| pressure_for_heat(&jet, &gas, &supply, heat));
    let bore = bore_for_heat(&case.shape(), S::one(), Coefficient::Model, &gas, &supply, heat);
    (gauge.map(|gauge| gauge.pascals().to_f64()), bore.map(|bore| bore.meters().to_f64()))
}

#[test]
fn the_pressure_and_the_bore_for_a_heat_are_the_same() {
    for (index, case) in JetCase::cover(&IN_USE, 1500).enumerate() {
        // Half the heats are what the jet makes, the others what may be out of its reach.
        let made = case.flow::<f64>().map_or(1e4, |flow| flow.heat_net.watts());
        let watts = narrow(if index % 2 == 0 { made } else { 100.0 * 1e4_f64.powf(spread::<1>(index)[0]) });
        let (double, single) = (inverses::<f64>(&case, watts), inverses::<f32>(&case, watts));
        if let Some((double, single)) =
            same_kind(double.0, single.0, |step| inverses::<f64>(&case, watts * step).0.is_ok())
        {
            // The drop is what makes the heat; the gauge is its sum with the back pressure.
            agree(&[("gauge", double)], &[("gauge", single)], case.back.abs(), &(case, watts));
        }
        if let Some((double, single)) =
            same_kind(double.1, single.1, |step| inverses::<f64>(&case, watts * step).1.is_ok())
        {
            agree(&[("bore", double)], &[("bore", single)], 0.0, &(case, watts));
        }
    }
}

fn blower_point<S: Scalar>(share: f64) -> [f64; 2] {
    let free = ActualVolumeFlow::from_cubic_meters_per_second(S::c(narrow(0.05)));
    let density = Density::from_kilograms_per_cubic_meter(S::c(1.2));
    let blower = Blower::from_two_numbers(PressureDifference::from_pascals(S::c(1000.0)), free, density).unwrap();
    let k = S::c(narrow(1e3 * 1e6_f64.powf(share)));
    let point = operating_point(&blower, |flow| k * flow.squared()).unwrap();
    [point.flow.cubic_meters_per_second().to_f64(), point.static_pressure.pascals().to_f64()]
}

#[test]
fn the_operating_point_is_the_same() {
    for step in 0..400 {
        let share = f64::from(step) / 400.0;
        let (double, single) = (blower_point::<f64>(share), blower_point::<f32>(share));
        agree(&[("flow", double[0])], &[("flow", single[0])], 0.0, &share);
        agree(&[("pressure", double[1])], &[("pressure", single[1])], 1000.0, &share);
    }
}

/// Flows and a speed, then pressures.
type Rows = (Vec<(&'static str, f64)>, Vec<(&'static str, f64)>);

fn running<S: Scalar>(rig: &Rig) -> Result<Rows> {
    let running = rig.burner::<S>().run(&rig.conditions(), rig.gauge(), S::c(rig.opening))?;
    let flows = [
        ("gas", running.gas.kilograms_per_second()),
        ("air", running.air.kilograms_per_second()),
        ("air flow", running.air_flow.cubic_meters_per_second()),
        ("air ratio", running.air_ratio.unwrap_or(S::zero())),
        ("port speed", running.port_speed.meters_per_second()),
        ("head pressure", running.head_pressure.pascals()),
        ("chamber pressure", running.chamber_pressure.pascals()),
    ];
    let pressures = [
        ("blower pressure", running.blower_pressure.pascals()),
        ("path loss", running.path_loss.pascals()),
        ("back pressure", running.back_pressure.pascals()),
        ("push", running.push.pascals()),
    ];
    let double = |(name, value): (&'static str, S)| (name, value.to_f64());
    Ok((flows.map(double).to_vec(), pressures.map(double).to_vec()))
}

fn demanded<S: Scalar>(rig: &Rig) -> Result<Rows> {
    let demand = rig.burner::<S>().demand(&rig.conditions(), rig.gauge(), S::c(rig.air_ratio))?;
    let flows = vec![
        ("gas", demand.gas.kilograms_per_second().to_f64()),
        ("air", demand.air.kilograms_per_second().to_f64()),
        ("air flow", demand.air_flow.cubic_meters_per_second().to_f64()),
    ];
    let pressures = vec![
        ("back pressure", demand.back_pressure.pascals().to_f64()),
        ("blower pressure", demand.blower_pressure.pascals().to_f64()),
    ];
    Ok((flows, pressures))
}

/// The opening, and the surplus it takes.
fn opening<S: Scalar>(rig: &Rig) -> Result<[f64; 2]> {
    let (burner, conditions, ratio) = (rig.burner::<S>(), rig.conditions::<S>(), S::c(rig.air_ratio));
    let demand = burner.demand(&conditions, rig.gauge(), ratio)?;
    let surplus = burner.surplus(&conditions, &demand)?;
    Ok([burner.opening_for(&conditions, rig.gauge(), ratio)?, surplus].map(Scalar::to_f64))
}

fn highest<S: Scalar>(rig: &Rig) -> Result<f64> {
    Ok(rig.burner::<S>().highest_gauge(&rig.conditions(), S::c(rig.air_ratio))?.pascals().to_f64())
}

#[test]
fn a_burner_is_the_same() {
    for rig in Rig::cover(500) {
        let beside = |step: f64| Rig { gauge: rig.gauge * step, ..rig };
        let scale = rig.blower_pressure;
        // A back pressure that leaves next to nothing of the gauge is at the border of no gas at all, and air that
        // hardly flows at that of a blower too weak.
        let stifled = |rows: &Rows| {
            let of = |name: &str| rows.0.iter().chain(&rows.1).find(|row| row.0 == name).map_or(0.0, |row| row.1);
            of("back pressure") > rig.gauge * (1.0 - BORDER) || of("air flow") < rig.blower_flow * BORDER
        };
        if let Some((double, single)) =
            same_kind(running::<f64>(&rig), running::<f32>(&rig), |step| running::<f64>(&beside(step)).is_ok())
        {
            if !stifled(&double) {
                agree(&double.0, &single.0, 0.0, &rig);
            }
            agree(&double.1, &single.1, scale, &rig);
        }
        if let Some((double, single)) =
            same_kind(demanded::<f64>(&rig), demanded::<f32>(&rig), |step| demanded::<f64>(&beside(step)).is_ok())
        {
            if !stifled(&double) {
                agree(&double.0, &single.0, 0.0, &rig);
            }
            agree(&double.1, &single.1, scale, &rig);
        }
        if let Some((double, single)) =
            same_kind(opening::<f64>(&rig), opening::<f32>(&rig), |step| opening::<f64>(&beside(step)).is_ok())
        {
            agree(&[("surplus", double[1])], &[("surplus", single[1])], scale, &rig);
            // A damper all but open hardly acts, and no surplus is the border of a blower too weak.
            if double[1] > scale * BORDER {
                agree(&[("opening", double[0])], &[("opening", single[0])], 0.0, &rig);
            }
        }
        if let Some((double, single)) =
            same_kind(highest::<f64>(&rig), highest::<f32>(&rig), |step| highest::<f64>(&beside(step)).is_ok())
        {
            agree(&[("highest gauge", double)], &[("highest gauge", single)], 0.0, &rig);
        }
    }
}
