//! What the flue gas carries off and what an analyzer reads in it.

use super::row::Row;
use jetwright::combustion::{Basis, FlueReading, Reactants, air_ratio_from_oxygen, expected_reading};
use jetwright::gas::{Gas, Species};
use jetwright::quantity::{AbsolutePressure, Temperature};
use jetwright::{Scalar, Site};

/// Our value for a row of this topic.
pub fn ours<S: Scalar>(row: &Row) -> Option<S> {
    let number = |name: &str, usual: f64| row.optional(name).map_or(S::c(usual), |_| row.get(name));
    let pressure = AbsolutePressure::from_pascals(number("pressure_pa", 101_325.0));
    let cold = Temperature::from_kelvin(S::c(298.15));
    let site = Site::at_station_pressure(pressure, cold, S::zero()).unwrap();
    let gas = || row.gas::<S>();
    let reactants = || Reactants::new(&gas(), &site, row.get("air_ratio"), cold).unwrap();
    let leaving = || reactants().leaving(Temperature::from_kelvin(row.get("temperature_k"))).unwrap();
    let iron = || {
        let any = Reactants::new(&Gas::from(Species::Propane), &site, S::one(), cold).unwrap();
        let steel = Temperature::from_kelvin(row.get("temperature_k"));
        any.products_at(steel).unwrap().scale(steel).unwrap()
    };
    Some(match row.quantity.as_str() {
        "carbon_dioxide_dry" => expected_reading(&gas(), &site, row.get("air_ratio")).unwrap().carbon_dioxide_dry,
        "oxygen_dry" => expected_reading(&gas(), &site, row.get("air_ratio")).unwrap().oxygen_dry,
        "air_ratio_from_oxygen_dry" => {
            let carbon_monoxide = number("carbon_monoxide", 0.0);
            let reading = FlueReading { oxygen: row.get("oxygen"), carbon_monoxide, basis: Basis::Dry };
            air_ratio_from_oxygen(&gas(), &site, reading).unwrap()
        }
        "dew_point_celsius" => {
            let flue = reactants().products_at(Temperature::from_kelvin(S::c(800.0))).unwrap();
            flue.dew_point(pressure).unwrap().celsius()
        }
        "flue_loss_sensible" => leaving().loss.sensible,
        "flue_loss_unburnt" => leaving().loss.unburnt,
        "available_heat" => leaving().available_heat,
        "iron_dioxide_ratio" => iron().dioxide_ratio,
        "iron_water_ratio" => iron().water_ratio,
        _ => return None,
    })
}
