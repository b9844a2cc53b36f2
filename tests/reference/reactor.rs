//! Carbon monoxide of a fire too cool for equilibrium.

use super::row::Row;
use jetwright::Scalar;
use jetwright::combustion::{ReactorFuel, carbon_monoxide_of_reactor};
use jetwright::quantity::{AbsolutePressure, Duration, Temperature};

/// Our value for a row of this topic.
pub fn ours<S: Scalar>(row: &Row) -> Option<S> {
    let fuel = if row.text("fuel") == "propane" { ReactorFuel::Propane } else { ReactorFuel::Methane };
    let found = carbon_monoxide_of_reactor::<S>(
        fuel,
        row.get("air_ratio"),
        Temperature::from_celsius(row.get("celsius")),
        Duration::from_seconds(row.get("residence_s")),
        AbsolutePressure::from_pascals(row.get("pressure_pa")),
    );
    let found = found.unwrap();
    Some(match row.quantity.as_str() {
        "reactor_carbon_monoxide_dry_ppm" => found.carbon_monoxide_dry * S::c(1e6),
        // One where the table says so.
        "reactor_blows_out" => S::c(if found.burns { 0.0 } else { 1.0 }),
        _ => return None,
    })
}
