//! A table and a burner, invented.

use jetwright::air::{AirPath, Blower, BlowerPoint, Damper, DamperKind, Duct};
use jetwright::burner::{Burner, Conditions, Exhaust, Head};
use jetwright::control::{ChipBurner, ImageHazard, MadeFor, Setpoint, SetpointImage, SetpointTable};
use jetwright::gas::{Gas, Species};
use jetwright::orifice::{BoreLength, BoreShape, Jet};
use jetwright::quantity::{
    ActualVolumeFlow, Area, Density, GaugePressure, Length, NetHeatRate, PressureDifference, Temperature,
};
use jetwright::site::Site;

/// A square law in heat for the gauge, a straight one for the air: invented.
pub fn table() -> SetpointTable<17, f32> {
    let kilowatts = NetHeatRate::from_kilowatts;
    let made_for = MadeFor { air_ratio: 1.05, burner: burner().burner_id() };
    let table = SetpointTable::<17>::build(made_for, kilowatts(9.0), kilowatts(24.0), 15, |heat| {
        let share = heat.kilowatts() / 24.0;
        Ok(Setpoint { gauge: GaugePressure::from_pascals(60e3 * share * share), air: 0.9 * share })
    });
    table.unwrap().to_single()
}

/// That one with two hazards; kinds and numbers invented.
pub fn table_image() -> SetpointImage<17> {
    let hazards = [
        ImageHazard { kind: 300, severity: 3, row: ImageHazard::EVERY_ROW, number: 0.12 },
        ImageHazard { kind: 7, severity: 1, row: 16, number: -2.5 },
    ];
    SetpointImage { table: table(), hazards: Some(hazards.into_iter().collect()) }
}

/// A small blower on a head of 42 holes at 1 600 m: invented.
fn burner() -> ChipBurner {
    let (mm, kelvin) = (Length::from_millimeters, Temperature::from_kelvin);
    let points = [(0.0, 720.0), (5.0, 745.0), (9.5, 700.0), (14.0, 550.0), (19.0, 320.0), (23.5, 25.0)];
    let points = points.map(|(flow, pressure)| BlowerPoint {
        flow: ActualVolumeFlow::from_liters_per_second(flow),
        static_pressure: PressureDifference::from_pascals(pressure),
        shaft_power: None,
    });
    let duct = Duct::new(mm(40.0), Length::from_meters(1.2), mm(0.15), 0.8).unwrap();
    let gate = Damper::new(DamperKind::BlastGate, mm(32.0)).unwrap();
    let burner = Burner {
        jet: Jet::new(BoreShape::drilled(BoreLength::Fixed(mm(10.0))).with_diameter(mm(1.5)).unwrap()),
        head: Head::with_ports(42.0, mm(4.0), mm(25.0), 0.3).unwrap(),
        head_count: 1.0,
        blower: Blower::new(&points, Density::from_kilograms_per_cubic_meter(1.2)).unwrap(),
        path: AirPath::new(&[duct], Some(gate)).unwrap(),
        mixing_tube: Some(mm(40.0)),
        exhaust: Some(Exhaust::new(Area::from_square_meters(60e-4), 1.5).unwrap()),
    };
    let conditions = Conditions {
        site: Site::at_altitude(Length::from_meters(1600.0), kelvin(293.15), 0.35).unwrap(),
        gas: Gas::from(Species::Propane),
        gas_temperature: kelvin(285.15),
        mixture_temperature: kelvin(363.15),
        chamber_temperature: kelvin(1473.15),
    };
    ChipBurner { burner, conditions, settings: std::iter::empty().collect() }
}

/// That one as bytes.
pub fn burner_image() -> Vec<u8> {
    let chip = burner();
    let mut image = vec![0; chip.image_bytes()];
    chip.write_image(&mut image).unwrap();
    image
}
