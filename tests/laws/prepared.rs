//! A prepared burner against the whole search.

use super::rig::Rig;
use crate::tolerance::SINGLE_PRECISION;
use jetwright::burner::Running;
use jetwright::quantity::GaugePressure;
use jetwright::{Input, Scalar};

/// Burners, each at every one of the settings below: more than 10 000 states.
const BURNERS: usize = 450;
/// Shares of 450 kPa and the ends of what is near enough to guess.
const GAUGES: [f64; 6] = [150.0, 450.0, 3e3, 15e3, 60e3, 250e3];
const OPENINGS: [f64; 4] = [0.1, 0.3, 0.55, 1.0];

/// Most looks of the near search; the whole one takes more.
const LOOKS: usize = 8;

/// Gas, mixture, ratio, back pressure, head pressure, port speed.
fn numbers<S: Scalar>(running: &Running<S>) -> [f64; 6] {
    [
        running.gas.kilograms_per_second().to_f64(),
        (running.gas.kilograms_per_second() + running.air.kilograms_per_second()).to_f64(),
        running.air_ratio.map_or(0.0, Scalar::to_f64),
        running.back_pressure.pascals().to_f64(),
        running.head_pressure.pascals().to_f64(),
        running.port_speed.meters_per_second().to_f64(),
    ]
}

#[test]
fn a_prepared_burner_runs_as_the_whole_search_has_it() {
    let (mut met, mut near, mut worst) = (0, 0, [0.0_f64; 6]);
    for rig in Rig::cover(BURNERS) {
        let (burner, conditions) = (rig.burner::<f64>(), rig.conditions());
        let prepared = burner.prepared(&conditions).unwrap();
        for gauge in GAUGES {
            for opening in OPENINGS {
                let gauge = GaugePressure::from_pascals(gauge);
                let (whole, found) = (burner.run(&conditions, gauge, opening), prepared.run(gauge, opening));
                let (Ok(whole), Ok(found)) = (&whole, &found) else {
                    assert_eq!(whole.is_err(), found.is_err(), "{rig:?} {gauge:?} {opening}");
                    continue;
                };
                met += 1;
                near += usize::from(found.iterations <= LOOKS);
                let [highest, head] = [burner.blower.peak().1.pascals(), whole.head_pressure.pascals()];
                let pressure = highest.max(head).max(whole.push.pascals());
                let scales = [0.0, 0.0, Input::AirRatio.range().min, pressure, 0.0, 0.0];
                for (index, (a, b)) in numbers(whole).into_iter().zip(numbers(found)).enumerate() {
                    worst[index] = worst[index].max((a - b).abs() / a.abs().max(scales[index]));
                }
            }
        }
    }
    assert!(met > 10_000 && near > met * 7 / 10, "{met} {near}");
    assert!(worst.iter().all(|&off| off < SINGLE_PRECISION), "{worst:?}");
}
