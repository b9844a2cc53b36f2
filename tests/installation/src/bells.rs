// The invented night-school bell foundry as entries in code; the chip's program and the host's test include this.

use heapless::Vec;
use jetwright::air::{BlowerPoint, DamperKind};
use jetwright::orifice::{BoreLength, BoreShape, Edge};
use jetwright::plant::entries::*;
use jetwright::quantity::{
    ActualVolumeFlow, Area, Density, GaugePressure, Length, PressureDifference, RotationalSpeed, Temperature,
};

/// A crucible furnace with blower, damper and head: invented numbers.
pub fn bells() -> Entries {
    let mm = Length::from_millimeters;
    let point = |cfm: f64, inches: f64| BlowerPoint {
        flow: ActualVolumeFlow::from_cubic_feet_per_minute(cfm),
        static_pressure: PressureDifference::from_inches_of_water(inches),
        shaft_power: None,
    };
    let air_temperature = Temperature::from_celsius(20.0);
    let curve =
        [point(0.0, 2.9), point(10.0, 3.0), point(20.0, 2.8), point(30.0, 2.2), point(40.0, 1.3), point(50.0, 0.1)];
    let setting = |name: &str, gauge: f64, air: AirAim| SettingEntry {
        name: shortened(name),
        gas: GasAim::Gauge(GaugePressure::from_psi(gauge)),
        air,
        chamber_temperature: None,
        minutes: None,
        purpose: None,
        used_for: None,
    };
    let settings = [
        setting("melt", 6.0, AirAim::AirRatio(1.05)),
        setting("soft", 4.0, AirAim::AirRatio(0.9)),
        setting("low", 1.5, AirAim::Damper(0.38)),
    ];
    Entries {
        name: shortened("night-school bell foundry (invented)"),
        note: None,
        site: SiteEntry {
            pressure: SitePressure::Altitude(Length::from_meters(1600.0)),
            air_temperature,
            humidity: 0.35,
        },
        gas: GasEntry {
            kind: shortened("propane"),
            temperature: air_temperature,
            temperature_is_given: false,
            price: None,
            currency: shortened("$"),
        },
        jet: JetEntry {
            size: JetSize::Drill(shortened("number 53")),
            shape: BoreShape {
                length: BoreLength::Fixed(mm(10.0)),
                edge: Edge::Square,
                roughness: mm(0.005),
                approach: None,
            },
            count: 1,
            measured_coefficient: None,
            measured_gauge: None,
            measured: None,
        },
        blower: Some(BlowerEntry {
            nameplate_spread: None,
            curve: BlowerCurve::Points(Vec::from_iter(curve)),
            speed: Some(RotationalSpeed::from_turns_per_second(47.5)),
            speed_ratio: 1.0,
            density: Density::from_kilograms_per_cubic_meter(1.2),
            efficiency: Some(0.35),
        }),
        ducts: Vec::from_iter([DuctEntry {
            diameter: mm(40.0),
            length: Length::from_meters(1.2),
            roughness: mm(0.1),
            fitting_loss: 0.8,
        }]),
        damper: Some(DamperEntry {
            kind: DamperKind::BlastGate,
            diameter: mm(32.0),
            kind_is_known: true,
            gap: None,
            correction: 1.0,
        }),
        head: Some(HeadEntry {
            ports: PortsEntry::Round { count: 42, diameter: mm(4.0), open_fraction: 0.3 },
            port_length: mm(25.0),
            count: 1,
            mixture_temperature: Temperature::from_celsius(90.0),
            mixing_tube_diameter: Some(mm(40.0)),
        }),
        chamber: Some(ChamberEntry {
            exhaust_opening: Area::from_square_meters(60e-4),
            exhaust_loss: 1.5,
            temperature: Temperature::from_celsius(1200.0),
        }),
        air_ratio: 1.05,
        settings: Vec::from_iter(settings),
        lighting: None,
        furnace: None,
        uncertainty: UncertaintyEntry::default(),
        supply: SupplyEntry::default(),
    }
}
