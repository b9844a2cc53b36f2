//! A prepared burner against the whole search.

use super::cases::named_gas;
use super::rig::Rig;
use crate::tolerance::SINGLE_PRECISION;
use jetwright::air::{AirPath, Blower, BlowerPoint, Damper, DamperKind, Duct};
use jetwright::burner::{Burner, Conditions, Head, Operating, Running};
use jetwright::orifice::{BoreLength, BoreShape, Edge, Jet};
use jetwright::quantity::{ActualVolumeFlow, Angle, Density, GaugePressure, Length, PressureDifference, Temperature};
use jetwright::{Input, Site};

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

/// Curves that some fans have, of shares of flow and pressure (invented): level with a steep end, and with a dip.
const LEVEL: [(f64, f64); 6] = [(0.0, 1.0), (0.2, 1.0), (0.4, 0.99), (0.6, 0.95), (0.8, 0.8), (1.0, 0.0)];
const DIPPED: [(f64, f64); 6] = [(0.0, 1.0), (0.2, 0.55), (0.4, 0.6), (0.6, 0.9), (0.8, 0.6), (1.0, 0.0)];
/// Where a curve bends sharply the last step is a little longer, and the gas near its verge follows.
const BENT: f64 = 5e-4;

fn with_curve(rig: &Rig, curve: &[(f64, f64)]) -> Burner {
    let burner = rig.burner::<f64>();
    let points: Vec<_> = curve
        .iter()
        .map(|(flow, pressure)| BlowerPoint {
            flow: ActualVolumeFlow::from_cubic_meters_per_second(flow * rig.blower_flow),
            static_pressure: PressureDifference::from_pascals(pressure * rig.blower_pressure),
            shaft_power: None,
        })
        .collect();
    Burner { blower: Blower::new(&points, burner.blower.density()).unwrap(), ..burner }
}

#[test]
fn on_a_curve_that_bends_the_answer_is_still_that_of_the_whole_search() {
    let (mut met, mut far, mut higher) = (0, 0, 0);
    for rig in Rig::cover(1500) {
        for curve in [LEVEL, DIPPED] {
            let (burner, conditions) = (with_curve(&rig, &curve), rig.conditions());
            let prepared = burner.prepared(&conditions).unwrap();
            for pascals in [23.0, 120.0, 700.0, 4.4e3, 25e3, 110e3] {
                let gauge = GaugePressure::from_pascals(pascals);
                let (whole, found) = (burner.run(&conditions, gauge, rig.opening), prepared.run(gauge, rig.opening));
                let (Ok(whole), Ok(found)) = (&whole, &found) else { continue };
                met += 1;
                let [a, b] = [whole_numbers(whole)[1], near_numbers(found)[1]];
                if (a - b).abs() > BENT * a {
                    // Two crossings within a step of the whole search are not seen by it.
                    if b > a { higher += 1 } else { far += 1 }
                }
            }
        }
    }
    assert!(met > 15_000 && far == 0 && higher * 1000 < met, "{met} {far} {higher}");
}

/// A state at which a near search once took a step of no length for an answer; drilled jets, no mixing tube. Drawn at
/// random.
struct Once {
    curve: [(f64, f64); 6],
    /// Of the blower, m3/s and Pa.
    blower: [f64; 2],
    /// Of the named gases.
    gas: usize,
    /// Bore and its length, mm.
    bore: [f64; 2],
    chamfer: Option<f64>,
    /// Ports, their diameter and length, mm, and the open fraction.
    ports: [f64; 4],
    /// Duct, mm, and its fittings' loss.
    duct: [f64; 2],
    altitude: f64,
    /// Air, gas, ports and chamber, K.
    kelvin: [f64; 4],
    gauge: f64,
    opening: f64,
}

const ONCE: [Once; 2] = [
    Once {
        curve: LEVEL,
        blower: [0.016_063_733, 3198.3054],
        gas: 1,
        bore: [1.14014, 24.901],
        chamfer: None,
        ports: [143.0, 5.15166, 31.2607, 0.017_693_9],
        duct: [58.17685, 5.47667],
        altitude: 2297.63,
        kelvin: [267.1857, 257.1137, 551.431, 986.49],
        gauge: 23.294_842,
        opening: 0.137_882_143,
    },
    Once {
        curve: DIPPED,
        blower: [0.022_023_01, 3168.2207],
        gas: 0,
        bore: [3.990_035, 23.71226],
        chamfer: Some(0.15),
        ports: [18.0, 3.642_621, 6.947_439, 0.22507],
        duct: [58.86924, 1.433_503],
        altitude: 847.449,
        kelvin: [302.2168, 267.5306, 599.126, 304.765],
        gauge: 4437.2764,
        opening: 0.608_938_52,
    },
];

impl Once {
    fn burner(&self) -> Burner {
        let mm = Length::from_millimeters;
        let edge = self.chamfer.map_or(Edge::Sharp, |share| Edge::Chamfered {
            depth: mm(share * self.bore[0]),
            angle: Angle::from_radians(1.0),
        });
        let shape = BoreShape { edge, ..BoreShape::drilled(BoreLength::Fixed(mm(self.bore[1]))) };
        let jet = Jet { count: 2.0, ..Jet::new(shape.with_diameter(mm(self.bore[0])).unwrap()) };
        let [count, diameter, length, open] = self.ports;
        let [duct, loss] = self.duct;
        let meters = Length::from_meters;
        let gate = Damper::new(DamperKind::BlastGate, mm(duct)).unwrap();
        let points = self.curve.map(|(flow, pressure)| BlowerPoint {
            flow: ActualVolumeFlow::from_cubic_meters_per_second(flow * self.blower[0]),
            static_pressure: PressureDifference::from_pascals(pressure * self.blower[1]),
            shaft_power: None,
        });
        Burner {
            jet,
            head: Head::with_ports(count, mm(diameter), mm(length), open).unwrap(),
            head_count: 2.0,
            blower: Blower::new(&points, Density::from_kilograms_per_cubic_meter(1.2)).unwrap(),
            path: AirPath::new(&[Duct::new(mm(duct), meters(1.5), meters(0.15e-3), loss).unwrap()], Some(gate))
                .unwrap(),
            mixing_tube: None,
            exhaust: None,
        }
    }

    fn conditions(&self) -> Conditions {
        let [air, gas, ports, chamber] = self.kelvin.map(Temperature::from_kelvin);
        Conditions {
            site: Site::at_altitude(Length::from_meters(self.altitude), air, 0.4).unwrap(),
            gas: named_gas(self.gas),
            gas_temperature: gas,
            mixture_temperature: ports,
            chamber_temperature: chamber,
        }
    }
}

#[test]
fn a_step_of_no_length_is_no_answer() {
    for once in ONCE {
        let (burner, conditions) = (once.burner(), once.conditions());
        let gauge = GaugePressure::from_pascals(once.gauge);
        let whole = burner.run(&conditions, gauge, once.opening).unwrap();
        let found = burner.prepared(&conditions).unwrap().run(gauge, once.opening).unwrap();
        for (a, b) in whole_numbers(&whole).into_iter().zip(near_numbers(&found)) {
            assert!((a - b).abs() <= BENT * a.abs(), "{whole:?} {found:?}");
        }
    }
}
