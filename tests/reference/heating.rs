//! Heating values after ISO 6976.

use super::row::Row;
use jetwright::Scalar;
use jetwright::gas::CombustionReference;
use jetwright::quantity::ReferenceState;

/// J of an International Table Btu, and m3 of a cubic foot.
const BTU: f64 = 1_055.055_852_62;
const CUBIC_FOOT: f64 = 0.028_316_846_592;
/// R T / p of an ideal gas at 60 degF and one atmosphere, m3/mol.
const IDEAL_MOLAR_VOLUME: f64 = 8.314_462_1 * (288.15 + 1.0 / 1.8) / 101_325.0;

/// Our value for a row of this topic.
pub fn ours<S: Scalar>(row: &Row) -> Option<S> {
    let combustion = match row.optional("combustion_c") {
        Some("0") => CombustionReference::Celsius0,
        Some("15") => CombustionReference::Celsius15,
        Some("15.55") | None => CombustionReference::Fahrenheit60,
        Some("20") => CombustionReference::Celsius20,
        Some("25") => CombustionReference::Celsius25,
        _ => return None,
    };
    let metering = match row.optional("metering_c") {
        Some("0") => ReferenceState::Celsius0,
        Some("15") => ReferenceState::Celsius15,
        Some("15.55") | None => ReferenceState::Fahrenheit60,
        Some("20") => ReferenceState::Celsius20,
        _ => return None,
    };
    let values = row.mixture::<S>().calorific_values(combustion, metering);
    let mega = S::c(1e-6);
    Some(match row.quantity.as_str() {
        "molar_mass_kg_per_kmol" => values.molar_mass,
        "compression_factor" => values.compression_factor,
        "gross_molar_kj_per_mol" => values.gross_molar,
        "net_molar_kj_per_mol" => values.net_molar,
        "gross_mass_mj_per_kg" => values.gross_mass.joules_per_kilogram() * mega,
        "net_mass_mj_per_kg" => values.net_mass.joules_per_kilogram() * mega,
        "gross_volume_mj_per_m3" => values.gross_volume * mega,
        "net_volume_mj_per_m3" => values.net_volume * mega,
        "density_kg_per_m3" => values.density.kilograms_per_cubic_meter(),
        "relative_density" => values.relative_density,
        "wobbe_gross_mj_per_m3" => values.wobbe_gross * mega,
        "wobbe_net_mj_per_m3" => values.wobbe_net * mega,
        "gross_ideal_btu_per_ft3" => values.gross_molar * S::c(1e3 / IDEAL_MOLAR_VOLUME * CUBIC_FOOT / BTU),
        _ => return None,
    })
}
