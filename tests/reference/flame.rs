//! Flames and what they leave.

use super::row::Row;
use jetwright::combustion::{Product, Reactants};
use jetwright::quantity::{AbsolutePressure, Temperature};
use jetwright::{Scalar, Site};

/// Our value for a row of this topic.
pub fn ours<S: Scalar>(row: &Row) -> Option<S> {
    let pressure = AbsolutePressure::from_pascals(row.get("pressure_pa"));
    let site = Site::at_station_pressure(pressure, Temperature::from_celsius(S::c(15.0)), S::zero()).unwrap();
    let kelvin = Temperature::from_kelvin(row.get("mixture_temperature_k"));
    let reactants = Reactants::new(&row.gas(), &site, row.get("air_ratio"), kelvin).unwrap();
    if row.quantity == "dry_CO_at_1600_k" {
        let cooled = reactants.products_at(Temperature::from_kelvin(S::c(1600.0))).unwrap();
        return Some(cooled.dry(Product::CarbonMonoxide));
    }
    let flame = reactants.flame().unwrap();
    if row.quantity == "adiabatic_flame_temperature_k" {
        return Some(flame.temperature.kelvin());
    }
    let (basis, symbol) = row.quantity.split_once('_')?;
    let product = Product::ALL.into_iter().find(|product| product.symbol() == symbol)?;
    match basis {
        "wet" => Some(flame.products.wet(product)),
        "dry" => Some(flame.products.dry(product)),
        _ => None,
    }
}
