//! Air of the site.

use super::row::Row;
use jetwright::quantity::{AbsolutePressure, Length, Temperature};
use jetwright::{Scalar, Site, site};

/// Our value for a row of this topic.
pub fn ours<S: Scalar>(row: &Row) -> Option<S> {
    let altitude = || Length::from_meters(row.get("altitude_m"));
    let weather = || {
        let station = AbsolutePressure::from_pascals(row.get("pressure_pa"));
        let air_temperature = Temperature::from_kelvin(row.get("air_temperature_k"));
        Site::<S>::at_station_pressure(station, air_temperature, row.get("humidity")).unwrap()
    };
    Some(match row.quantity.as_str() {
        "standard_pressure_pa" => site::standard_pressure(altitude()).unwrap().pascals(),
        "station_pressure_pa" => {
            let sea_level = AbsolutePressure::from_pascals(row.get("sea_level_pressure_pa"));
            site::station_pressure(sea_level, altitude()).unwrap().pascals()
        }
        "moist_air_density_kg_per_m3" => weather().air_density().kilograms_per_cubic_meter(),
        "air_oxygen_fraction" => weather().oxygen_fraction(),
        _ => return None,
    })
}
