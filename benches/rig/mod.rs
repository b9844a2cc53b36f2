//! An invented burner, the bell foundry's in the rooms' own types.

use jetwright::Site;
use jetwright::air::{AirPath, Blower, Damper, DamperKind, Duct};
use jetwright::burner::{Burner, Conditions, Exhaust, Head};
use jetwright::gas::{Gas, Species};
use jetwright::orifice::{BoreLength, BoreShape, Jet};
use jetwright::quantity::{ActualVolumeFlow, Area, Density, Length, PressureDifference, Temperature};

/// The burner and what it runs under.
pub fn demo() -> (Burner, Conditions) {
    build().expect("within limits")
}

fn build() -> jetwright::Result<(Burner, Conditions)> {
    let mm = Length::from_millimeters;
    let celsius = Temperature::from_celsius;
    let shape = BoreShape::drilled(BoreLength::Fixed(mm(10.0)));
    let blower = Blower::from_two_numbers(
        PressureDifference::from_inches_of_water(3.0),
        ActualVolumeFlow::from_cubic_feet_per_minute(50.0),
        Density::from_kilograms_per_cubic_meter(1.2),
    )?;
    let duct = Duct::new(mm(40.0), mm(1200.0), mm(0.1), 0.8)?;
    let burner = Burner {
        jet: Jet::new(shape.with_diameter(mm(1.511))?),
        head: Head::with_ports(42.0, mm(4.0), mm(25.0), 0.3)?,
        head_count: 1.0,
        blower,
        path: AirPath::new(&[duct], Some(Damper::new(DamperKind::BlastGate, mm(32.0))?))?,
        mixing_tube: Some(mm(40.0)),
        exhaust: Some(Exhaust::new(Area::from_square_centimeters(60.0), 1.5)?),
    };
    let conditions = Conditions {
        site: Site::at_altitude(Length::from_meters(1600.0), celsius(20.0), 0.35)?,
        gas: Gas::from(Species::Propane),
        gas_temperature: celsius(10.0),
        mixture_temperature: celsius(90.0),
        chamber_temperature: celsius(1200.0),
    };
    Ok((burner, conditions))
}
