//! The real gas against reference equations.

use super::row::Row;
use jetwright::Scalar;
use jetwright::quantity::{AbsolutePressure, PressureDifference};

/// Our value for a row of this topic.
pub fn ours<S: Scalar>(row: &Row) -> Option<S> {
    let (gas, temperature) = (row.gas::<S>(), row.gas_temperature());
    Some(match row.quantity.as_str() {
        "mass_density_kg_per_m3" => gas.density(row.supply(), temperature).unwrap().kilograms_per_cubic_meter(),
        "isentropic_mass_flux_kg_per_m2_s" => {
            let drop = PressureDifference::from_pascals(row.get("gauge_pressure_pa"));
            gas.expand(row.supply(), drop, temperature).unwrap().mass_flux
        }
        "critical_flow_function" => {
            let supply = row.supply::<S>();
            let choked = gas.expand(supply, PressureDifference::from_pascals(supply.pascals()), temperature).unwrap();
            assert!(choked.choked, "{row}");
            choked.mass_flux * (gas.specific_gas_constant() * temperature.kelvin()).sqrt() / supply.pascals()
        }
        "saturation_pressure_pa" => {
            let trial = AbsolutePressure::from_pascals(S::c(1e5));
            trial.pascals() / gas.mixture().saturation_ratio(trial, temperature)
        }
        "dynamic_viscosity_pa_s" => gas.viscosity(temperature),
        _ => return None,
    })
}
