//! An invented burner of a bell foundry, and others drawn around it, one recipe for both number types.

use super::cases::{named_gas, narrow, spread};
use crate::sample::sample;
use jetwright::air::{AirPath, Blower, BlowerPoint, Damper, DamperKind, Duct};
use jetwright::burner::{Burner, Conditions, Exhaust, Head};
use jetwright::orifice::{BoreLength, BoreShape, Jet};
use jetwright::quantity::{ActualVolumeFlow, Area, Density, GaugePressure, Length, PressureDifference, Temperature};
use jetwright::{Scalar, Site};

/// Flow over the last and pressure over the highest, of an invented blower.
const CURVE: [(f64, f64); 6] = [(0.0, 1.0), (0.2, 0.99), (0.4, 0.93), (0.6, 0.77), (0.8, 0.45), (1.0, 0.05)];

/// A burner and what it runs under, SI.
#[derive(Clone, Copy, Debug)]
pub struct Rig {
    pub gas: usize,
    pub bore: f64,
    pub jets: f64,
    pub ports: f64,
    pub port: f64,
    pub port_length: f64,
    pub open_fraction: f64,
    pub heads: f64,
    pub blower_flow: f64,
    pub blower_pressure: f64,
    pub duct_loss: f64,
    pub damper: bool,
    pub tube: Option<f64>,
    pub exhaust: Option<f64>,
    pub altitude: f64,
    pub air_kelvin: f64,
    pub mixture_kelvin: f64,
    pub chamber_kelvin: f64,
    pub gauge: f64,
    pub opening: f64,
    pub air_ratio: f64,
}

/// The invented burner: 26 kW of propane at 1 600 m through 40 ports of 5 mm.
pub const BELL_FOUNDRY: Rig = Rig {
    gas: 0,
    bore: 1.8e-3,
    jets: 1.0,
    ports: 40.0,
    port: 5e-3,
    port_length: 10e-3,
    open_fraction: 0.2,
    heads: 1.0,
    blower_flow: 0.04,
    blower_pressure: 1500.0,
    duct_loss: 1.5,
    damper: true,
    tube: Some(50e-3),
    exhaust: Some(40e-4),
    altitude: 1600.0,
    air_kelvin: 293.15,
    mixture_kelvin: 350.0,
    chamber_kelvin: 1600.0,
    gauge: 30e3,
    opening: 0.5,
    air_ratio: 1.05,
};

impl Rig {
    /// Burners that cover what a shop may build: the jet, the head and the blower each from a third to three times
    /// the foundry's, in every gas, weather and warmth; more of them in `tests/long.sh`.
    pub fn cover(count: usize) -> impl Iterator<Item = Self> {
        sample(count).map(|index| {
            let unit: [f64; 19] = spread(index);
            let times = |value: f64, share: f64| narrow(value * 9.0_f64.powf(share - 0.5));
            let between = |low: f64, high: f64, share: f64| narrow(low + (high - low) * share);
            let base = BELL_FOUNDRY;
            Self {
                gas: (unit[0] * 8.0) as usize,
                bore: times(1.6e-3, unit[1]),
                jets: 1.0 + (unit[2] * 3.0).floor(),
                ports: (8.0 * 20.0_f64.powf(unit[3])).round(),
                port: times(base.port, unit[4]),
                port_length: between(0.0, 40e-3, unit[5]),
                open_fraction: between(0.0, 0.6, unit[6]),
                heads: 1.0 + (unit[7] * 3.0).floor(),
                blower_flow: times(base.blower_flow, unit[8]),
                blower_pressure: times(base.blower_pressure, unit[9]),
                duct_loss: between(0.0, 6.0, unit[10]),
                damper: true,
                tube: (unit[11] > 0.3).then(|| between(35e-3, 100e-3, unit[11])),
                exhaust: (unit[12] > 0.3).then(|| between(10e-4, 100e-4, unit[12])),
                altitude: between(0.0, 3000.0, unit[13]),
                air_kelvin: between(243.15, 318.15, unit[14]),
                mixture_kelvin: between(280.0, 700.0, unit[15]),
                chamber_kelvin: between(300.0, 1900.0, unit[16]),
                gauge: narrow(700.0 * 300.0_f64.powf(unit[17])),
                opening: between(0.15, 1.0, unit[18]),
                air_ratio: between(0.7, 1.6, (unit[18] * 7.0).fract()),
            }
        })
    }

    /// The shape of its jets: drilled, 8 mm long.
    pub fn shape<S: Scalar>(&self) -> BoreShape<S> {
        BoreShape::drilled(BoreLength::Fixed(Length::from_millimeters(S::c(8.0))))
    }

    /// The burner.
    pub fn burner<S: Scalar>(&self) -> Burner<S> {
        let meters = |value: f64| Length::from_meters(S::c(value));
        let points = CURVE.map(|(flow, pressure)| BlowerPoint {
            flow: ActualVolumeFlow::from_cubic_meters_per_second(S::c(narrow(flow * self.blower_flow))),
            static_pressure: PressureDifference::from_pascals(S::c(narrow(pressure * self.blower_pressure))),
            shaft_power: None,
        });
        let duct = Duct::new(meters(76e-3), meters(1.5), meters(0.15e-3), S::c(self.duct_loss)).unwrap();
        let gate = Damper::new(DamperKind::BlastGate, meters(76e-3)).unwrap();
        let (port, port_length) = (meters(self.port), meters(self.port_length));
        Burner {
            jet: Jet { count: S::c(self.jets), ..Jet::new(self.shape().with_diameter(meters(self.bore)).unwrap()) },
            head: Head::with_ports(S::c(self.ports), port, port_length, S::c(self.open_fraction)).unwrap(),
            head_count: S::c(self.heads),
            blower: Blower::new(&points, Density::from_kilograms_per_cubic_meter(S::c(1.2))).unwrap(),
            path: AirPath::new(&[duct], self.damper.then_some(gate)).unwrap(),
            mixing_tube: self.tube.map(meters),
            exhaust: self.exhaust.map(|area| Exhaust::new(Area::from_square_meters(S::c(area)), S::c(1.5)).unwrap()),
        }
    }

    /// What it runs under.
    pub fn conditions<S: Scalar>(&self) -> Conditions<S> {
        let kelvin = |value: f64| Temperature::from_kelvin(S::c(value));
        let altitude = Length::from_meters(S::c(self.altitude));
        Conditions {
            site: Site::at_altitude(altitude, kelvin(self.air_kelvin), S::c(0.4)).unwrap(),
            gas: named_gas(self.gas),
            gas_temperature: kelvin(self.air_kelvin),
            mixture_temperature: kelvin(self.mixture_kelvin),
            chamber_temperature: kelvin(self.chamber_kelvin),
        }
    }

    /// Its gauge setting.
    pub fn gauge<S: Scalar>(&self) -> GaugePressure<S> {
        GaugePressure::from_pascals(S::c(self.gauge))
    }
}
