//! Laws of lighting: a fixed flow of air whose numbers are known by hand, the invented burner, and others around it.

use super::rig::{BELL_FOUNDRY, Rig};
use crate::tolerance::SINGLE_PRECISION;
use jetwright::air::{AirPath, Blower, BlowerPoint};
use jetwright::burner::{AirSetting, Burner, Conditions, Glow, GoesOut, Head, Lighting, Lights};
use jetwright::gas::{Gas, Species};
use jetwright::orifice::{BoreLength, BoreShape, Jet};
use jetwright::quantity::{
    ActualVolumeFlow, Density, GaugePressure, Length, MassFlow, Power, PressureDifference, Temperature, Volume,
};
use jetwright::{Scalar, Site};

/// A burner at 1 600 m whose blower gives the air that 23.2 kW gross of propane at 6 psi just needs, whatever stands
/// against it: 7.30 g/s of dry air.
fn fixed_air() -> (Burner, Conditions) {
    let mm = Length::from_millimeters;
    let cold = Temperature::from_celsius(20.0);
    let site = Site::at_altitude(Length::from_meters(1600.0), cold, 0.0).unwrap();
    let gas = Gas::from(Species::Propane);
    let conditions =
        Conditions { site, gas, gas_temperature: cold, mixture_temperature: cold, chamber_temperature: cold };
    // 23.2 kW of 50.33 MJ/kg burn with 15.68 kg of air a kilogram.
    let air = MassFlow::from_kilograms_per_second(23.2e3 / 50.33e6 * 15.68).at(site.air_density());
    let point = |flow: f64, pascals: f64| BlowerPoint {
        flow: air * flow,
        static_pressure: PressureDifference::from_pascals(pascals),
        shaft_power: None,
    };
    let curve = [point(0.0, 6000.0), point(0.999, 5900.0), point(1.001, 10.0)];
    let shape = BoreShape::drilled(BoreLength::Fixed(mm(12.0)));
    let jet = |bore: f64| Jet::new(shape.with_diameter(mm(bore)).unwrap());
    let burner = |bore: f64| Burner {
        jet: jet(bore),
        head: Head::with_ports(200.0, mm(3.0), mm(10.0), 0.3).unwrap(),
        head_count: 1.0,
        blower: Blower::new(&curve, site.air_density()).unwrap(),
        path: AirPath::new(&[], None).unwrap(),
        mixing_tube: None,
        exhaust: None,
    };
    let _: Density = site.air_density();
    let _: ActualVolumeFlow = air;
    let gross = |bore: f64| {
        let running = burner(bore).run(&conditions, GaugePressure::from_psi(6.0), 1.0).unwrap();
        gas.gross_heating_value().of(running.gas).watts()
    };
    let (mut low, mut high) = (0.8, 3.0);
    for _ in 0..50 {
        let middle = 0.5 * (low + high);
        if gross(middle) < 23.2e3 { low = middle } else { high = middle }
    }
    (burner(low), conditions)
}

#[test]
fn explore() {
    let (burner, conditions) = fixed_air();
    for psi in [0.5, 1.0, 1.5, 2.0, 4.0, 6.0, 7.0, 9.0, 20.0] {
        let gauge = GaugePressure::from_psi(psi);
        let running = burner.run(&conditions, gauge, 1.0).unwrap();
        let state = burner.port_state(&conditions, &running).unwrap();
        let l = burner.lighting(&conditions, gauge, AirSetting::Opening(1.0), None, &Glow::default()).unwrap();
        println!("{psi} phi {} g {} {:?} {:?}", 1.0 / running.air_ratio.unwrap(), state.gradient, state.flame, l);
    }
    for (k, loss) in [(0.5, 1.4e3), (1.0, 2.7e3), (2.0, 4.7e3), (4.0, 0.0)] {
        let glow = Glow { volume: Some(Volume::from_liters(20.0)), loss: Some(Power::from_watts(loss)) };
        let range = burner.lighting_range(&conditions, AirSetting::Opening(1.0), Some(k), &glow).unwrap();
        println!("{k} {loss} {:?}", range.within_limits.map(|s| (s.low.psi(), s.high.psi(), s.high_ends)));
        println!("{:?}", range.cold.map(|s| (s.low.psi(), s.low_ends, s.high.psi(), s.high_ends)));
        println!("{:?}", range.glowing.map(|s| (s.low.psi(), s.low_ends, s.high.psi(), s.high_ends)));
    }
}
