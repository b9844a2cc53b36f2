//! Perfect-gas nozzles and bores of textbooks and standards.

use super::row::Row;
use jetwright::Scalar;
use jetwright::friction::Friction;
use jetwright::orifice::{Stream, frictional_bore};

/// Molar gas constant, J/(kmol K).
const GAS_CONSTANT: f64 = 8_314.462_618;

/// Our value for a row of this topic.
pub fn ours<S: Scalar>(row: &Row) -> Option<S> {
    let exponent = row.get("isentropic_exponent");
    let stream = |pressure_ratio: S| Stream::perfect_gas(exponent, pressure_ratio);
    Some(match row.quantity.as_str() {
        "critical_pressure_ratio" => stream(S::c(0.05)).pressure_ratio,
        "perfect_gas_critical_flow_function" => stream(S::c(0.05)).flux_squared.sqrt(),
        "nozzle_mass_flow_kg_per_s" => {
            let supply = row.get::<S>("absolute_pressure_pa");
            let specific = S::c(GAS_CONSTANT) / row.get("molar_mass_kg_per_kmol") * row.get("compression_factor");
            let flux = stream(row.get::<S>("back_pressure_pa") / supply).flux_squared.sqrt() * supply
                / (specific * row.get("temperature_k")).sqrt();
            flux * row.get("area_m2")
        }
        "choked_bore_over_nozzle" => {
            let friction = Friction { factor: row.get("friction_length"), log_slope: S::zero() };
            let flow = frictional_bore(S::zero(), &stream(S::c(0.05)), |_| friction).unwrap();
            assert!(flow.choked, "{row}");
            flow.coefficient
        }
        _ => return None,
    })
}
