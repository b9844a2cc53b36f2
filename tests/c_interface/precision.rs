//! What C is answered, against double precision, which the published values hold. Jets and settings are invented.

use jetwright::capi::{
    JetwrightExpectedReading, JetwrightFlame, JetwrightFlow, JetwrightFlueReading, JetwrightJet, JetwrightSite,
    JetwrightStateHazards, JetwrightStatus, JetwrightSupply, jetwright_air_ratio_from_oxygen, jetwright_available_heat,
    jetwright_expected_reading, jetwright_flame_hazards, jetwright_jet_flow, jetwright_jet_hazards,
};
use jetwright::combustion::{Basis, FlueReading, Reactants, air_ratio_from_oxygen, expected_reading};
use jetwright::gas::{Gas, NAMED};
use jetwright::orifice::{BoreLength, BoreShape, Edge, Jet, Supply};
use jetwright::plant::HazardKind;
use jetwright::plant::hazards::of_flame;
use jetwright::quantity::{AbsolutePressure, GaugePressure, Length, Temperature};
use jetwright::site::Site;

/// What the README of the library folder says.
const WITHIN: f64 = 1e-5;

fn gases() -> impl Iterator<Item = (u32, Gas)> {
    (0..).zip(NAMED.iter().map(|named| Gas::new(named.mixture())))
}

/// The site of both.
const SITE: JetwrightSite = JetwrightSite { ambient_pa: 83_500.0, air_temperature_k: 303.15, humidity: 0.5 };

fn site() -> Site {
    let JetwrightSite { ambient_pa, air_temperature_k, humidity } = SITE;
    let pressure = AbsolutePressure::from_pascals(f64::from(ambient_pa));
    Site::at_station_pressure(pressure, Temperature::from_kelvin(f64::from(air_temperature_k)), f64::from(humidity))
        .unwrap()
}

fn listed(hazards: &JetwrightStateHazards) -> Vec<(u16, u8)> {
    hazards.hazards[..usize::try_from(hazards.count).unwrap()]
        .iter()
        .map(|hazard| (hazard.kind, hazard.severity))
        .collect()
}

#[test]
fn a_fire_and_a_jet_warn_of_what_they_warn_of_in_double_precision() {
    let mut met = std::collections::BTreeSet::new();
    for (gas, reference) in gases() {
        for air_ratio in [0.7_f32, 0.9, 1.05, 1.3, 2.5] {
            let flame =
                JetwrightFlame { gas, air_ratio, mixture_temperature_k: 303.15, chamber_temperature_k: 1473.15 };
            let mut hazards = JetwrightStateHazards::UNKNOWN;
            let status = jetwright_flame_hazards(Some(&flame), Some(&SITE), Some(&mut hazards));
            assert_eq!(status, JetwrightStatus::Ok);
            let kelvin = Temperature::from_kelvin;
            let expected = of_flame(&reference, &site(), kelvin(303.15), kelvin(1473.15), f64::from(air_ratio));
            // In single precision no table of autoignition is read.
            let expected: Vec<_> = expected.iter().filter(|hazard| hazard.kind != HazardKind::IgnitesLate).collect();
            let kinds: Vec<_> = expected.iter().map(|hazard| (hazard.kind as u16, hazard.severity().code())).collect();
            assert_eq!(listed(&hazards), kinds, "gas {gas} at {air_ratio}");
            for (ours, theirs) in hazards.hazards.iter().zip(expected) {
                let close = |ours: f32, theirs: Option<f64>| {
                    theirs.map_or(ours.is_nan(), |theirs| (f64::from(ours) / theirs - 1.0).abs() < 1e-3)
                };
                assert!(close(ours.number, theirs.number) && close(ours.limit, theirs.limit), "{ours:?} {theirs:?}");
            }
            met.extend(kinds);
        }
    }
    assert!(met.len() >= 4, "{met:?}");
    let jet =
        JetwrightJet { gas: 0, edge: 1, bore_m: 1.8e-3, bore_length_m: 2e-3, count: 1.0, measured_coefficient: 0.0 };
    let supply = JetwrightSupply { ambient_pa: 83_500.0, gauge_pa: 100.0, back_pa: 100.0, temperature_k: 288.15 };
    let mut hazards = JetwrightStateHazards::UNKNOWN;
    assert_eq!(jetwright_jet_hazards(Some(&jet), Some(&supply), Some(&mut hazards)), JetwrightStatus::Ok);
    let kinds: Vec<_> =
        listed(&hazards).into_iter().map(|(kind, _)| HazardKind::of_code(kind).unwrap().key()).collect();
    assert!(
        ["heavy_gas", "no_gas", "short_bore"].iter().all(|key| kinds.contains(key)) && kinds.len() == 3,
        "{kinds:?}"
    );
    let liquid = JetwrightSupply { gauge_pa: 2e6, ..supply };
    assert_eq!(jetwright_jet_hazards(Some(&jet), Some(&liquid), Some(&mut hazards)), JetwrightStatus::OutOfRange);
    assert_eq!(hazards.count, -1);
}

#[test]
fn a_jet_of_every_gas_passes_what_it_passes_in_double_precision() {
    let (mut met, mut choked, mut worst) = (0, 0, 0.0_f64);
    for (gas, reference) in gases() {
        for (edge, bore_m, bore_length_m) in [(0, 0.8e-3_f32, 0.0_f32), (1, 1.5e-3, 10e-3), (1, 2.2e-3, 1e-3)] {
            for (gauge_pa, temperature_k) in [(300.0_f32, 283.15_f32), (3e3, 300.0), (34_474.0, 268.15), (110e3, 313.0)]
            {
                let jet = JetwrightJet { gas, edge, bore_m, bore_length_m, count: 2.0, measured_coefficient: 0.0 };
                let supply = JetwrightSupply { ambient_pa: SITE.ambient_pa, gauge_pa, back_pa: 40.0, temperature_k };
                let mut flow = JetwrightFlow::default();
                let status = jetwright_jet_flow(Some(&jet), Some(&supply), Some(&mut flow));
                let shape = BoreShape {
                    edge: if edge == 0 { Edge::Sharp } else { Edge::Square },
                    ..BoreShape::drilled(BoreLength::Fixed(Length::from_meters(f64::from(bore_length_m))))
                };
                let jet = Jet {
                    count: 2.0,
                    ..Jet::new(shape.with_diameter(Length::from_meters(f64::from(bore_m))).unwrap())
                };
                let passed = jet.flow(
                    &reference,
                    &Supply {
                        ambient: AbsolutePressure::from_pascals(f64::from(SITE.ambient_pa)),
                        gauge: GaugePressure::from_pascals(f64::from(gauge_pa)),
                        back: GaugePressure::from_pascals(40.0),
                        temperature: Temperature::from_kelvin(f64::from(temperature_k)),
                    },
                );
                let Ok(passed) = passed else {
                    assert_eq!(status, JetwrightStatus::Liquid, "{gas} {supply:?}");
                    continue;
                };
                assert_eq!(status, JetwrightStatus::Ok, "{gas} {supply:?}");
                met += 1;
                choked += usize::from(flow.choked);
                assert_eq!(flow.choked, passed.choked);
                for (single, double) in [
                    (flow.mass_flow_kg_per_s, passed.mass_flow.kilograms_per_second()),
                    (flow.heat_gross_w, passed.heat_gross.watts()),
                    (flow.heat_net_w, passed.heat_net.watts()),
                    (flow.discharge_coefficient, passed.discharge_coefficient),
                ] {
                    worst = worst.max((f64::from(single) / double - 1.0).abs());
                }
            }
        }
    }
    assert!(met > 80 && choked > 10 && worst < WITHIN, "{met} states, {choked} choked, off by {worst}");
}

#[test]
fn the_flue_and_the_heat_left_of_every_gas_are_those_of_double_precision() {
    let mut worst = 0.0_f64;
    let mut grow = |single: f32, double: f64, floor: f64| {
        worst = worst.max((f64::from(single) - double).abs() / double.abs().max(floor));
    };
    for (gas, reference) in gases() {
        for (oxygen, carbon_monoxide, wet) in [(0.005_f32, 0.0_f32, false), (0.03, 0.002, true), (0.11, 0.0005, false)]
        {
            let reading = JetwrightFlueReading { oxygen, carbon_monoxide, basis: u32::from(wet) };
            let mut ratio = 0.0;
            let status = jetwright_air_ratio_from_oxygen(gas, Some(&SITE), Some(&reading), Some(&mut ratio));
            assert_eq!(status, JetwrightStatus::Ok);
            let basis = if wet { Basis::Wet } else { Basis::Dry };
            let (oxygen, carbon_monoxide) = (f64::from(oxygen), f64::from(carbon_monoxide));
            let reading = FlueReading { oxygen, carbon_monoxide, basis };
            grow(ratio, air_ratio_from_oxygen(&reference, &site(), reading).unwrap(), 0.0);
        }
        for air_ratio in [0.7_f32, 0.95, 1.02, 1.3, 2.5] {
            let flame = JetwrightFlame { gas, air_ratio, mixture_temperature_k: 330.0, chamber_temperature_k: 1523.0 };
            let mut share = 0.0;
            assert_eq!(jetwright_available_heat(Some(&flame), Some(&SITE), Some(&mut share)), JetwrightStatus::Ok);
            let mixture = Temperature::from_kelvin(330.0);
            let reactants = Reactants::new(&reference, &site(), f64::from(air_ratio), mixture).unwrap();
            let left = reactants.available_heat(Temperature::from_kelvin(1523.0)).unwrap();
            // A share of the whole heat: near zero it is the difference of two that are not.
            grow(share, left, 1.0);
            if air_ratio > 1.0 {
                let mut expected = JetwrightExpectedReading::default();
                let status = jetwright_expected_reading(gas, Some(&SITE), air_ratio, Some(&mut expected));
                assert_eq!(status, JetwrightStatus::Ok);
                let found = expected_reading(&reference, &site(), f64::from(air_ratio)).unwrap();
                grow(expected.oxygen_dry, found.oxygen_dry, 0.0);
                grow(expected.oxygen_wet, found.oxygen_wet, 0.0);
                grow(expected.carbon_dioxide_dry, found.carbon_dioxide_dry, 1e-3);
            }
        }
    }
    assert!(worst < WITHIN, "off by {worst}");
}
