//! A prepared burner against the whole search.

use super::rig::Rig;
use crate::tolerance::SINGLE_PRECISION;
use jetwright::Input;
use jetwright::burner::{Operating, Running};
use jetwright::quantity::GaugePressure;

/// Burners, each at every one of the settings below: more than 10 000 states.
const BURNERS: usize = 450;
/// From a breath to the end of the accepted range.
const GAUGES: [f64; 7] = [40.0, 150.0, 450.0, 3e3, 15e3, 60e3, 250e3];
const OPENINGS: [f64; 4] = [0.1, 0.3, 0.55, 1.0];

/// Most looks of the near search; the whole one takes more.
const LOOKS: usize = 8;

/// Gas, mixture, ratio, back pressure, blower pressure.
type Numbers = [f64; 5];

fn whole_numbers(running: &Running) -> Numbers {
    let (gas, air) = (running.gas.kilograms_per_second(), running.air.kilograms_per_second());
    let pressures = [running.back_pressure.pascals(), running.blower_pressure.pascals()];
    [gas, gas + air, running.air_ratio.unwrap_or(0.0), pressures[0], pressures[1]]
}

fn near_numbers(found: &Operating) -> Numbers {
    let (gas, air) = (found.gas.kilograms_per_second(), found.air.kilograms_per_second());
    let pressures = [found.back_pressure.pascals(), found.blower_pressure.pascals()];
    [gas, gas + air, found.air_ratio.unwrap_or(0.0), pressures[0], pressures[1]]
}

#[test]
fn a_prepared_burner_runs_as_the_whole_search_has_it() {
    let (mut met, mut near, mut worst) = (0, 0, [0.0_f64; 5]);
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
                near += usize::from(found.looks <= LOOKS);
                let [highest, head] = [burner.blower.peak().1.pascals(), whole.head_pressure.pascals()];
                let pressure = highest.max(head).max(whole.push.pascals());
                let scales = [0.0, 0.0, Input::AirRatio.range().min, pressure, pressure];
                for (index, (a, b)) in whole_numbers(whole).into_iter().zip(near_numbers(found)).enumerate() {
                    worst[index] = worst[index].max((a - b).abs() / a.abs().max(scales[index]));
                }
            }
        }
    }
    assert!(met > 10_000 && near > met * 98 / 100, "{met} {near}");
    assert!(worst.iter().all(|&off| off < SINGLE_PRECISION), "{worst:?}");
}
