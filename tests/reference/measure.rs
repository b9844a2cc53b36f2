//! Worked examples of uncertainty, and the normal distribution.

use super::row::Row;
use jetwright::measure::{Budget, Measurand, budgets, odds_beyond};
use jetwright::{Float, Result, Scalar};

/// A gauge block against a standard: l = ls + d - ls (da t + as dt), in nanometers and kelvin.
struct EndGauge;

impl Measurand<6, 1> for EndGauge {
    fn results<S: Scalar>(&self, by: [S; 6]) -> Result<[S; 1]> {
        let [standard, difference, expansion, temperature, by_expansion, by_temperature] = by;
        // Beside the standard's nominal length, which would drown a nanometer in single precision.
        let length = S::c(50.000_623e6) + standard;
        let temperature = S::c(-0.1) + temperature;
        let warmth = by_expansion * temperature + (S::c(11.5e-6) + expansion) * by_temperature;
        Ok([standard + S::c(215.0) + difference - length * warmth])
    }
}

/// Standard uncertainties of its table: of the coefficients per kelvin, of the temperatures in kelvin.
const END_GAUGE: [f64; 6] = [25.0, 9.7, 1.2e-6, 0.41, 0.58e-6, 0.029];

/// A 100 g weight in air against a standard: mg, kg/m3.
struct MassStandard;

impl Measurand<5, 1> for MassStandard {
    fn results<S: Scalar>(&self, by: [S; 5]) -> Result<[S; 1]> {
        let (air, weight, reference) = (by[2], S::c(8e3) + by[3], S::c(8e3) + by[4]);
        let buoyancy = air * (S::one() / weight - S::one() / reference);
        let added = by[0] + S::c(1.234) + by[1];
        Ok([added + (S::c(100_000.0) + added) * buoyancy])
    }
}

/// Rectangular distributions of +-0.1, +-1000 and +-50 kg/m3.
const MASS_STANDARD: [f64; 5] = [0.050, 0.020, 0.057_735_03, 577.3503, 28.867_51];

struct Sum;

impl Measurand<4, 1> for Sum {
    fn results<S: Scalar>(&self, by: [S; 4]) -> Result<[S; 1]> {
        Ok([by[0] + by[1] + by[2] + by[3]])
    }
}

fn of<S: Float, const N: usize>(measurand: &impl Measurand<N, 1>, standard: [f64; N]) -> Budget<S, N> {
    let [budget] = budgets(measurand, standard.map(S::c)).unwrap();
    budget
}

/// Our value for a row of this topic.
pub fn ours<S: Float>(row: &Row) -> Option<S> {
    let end_gauge = || of::<S, 6>(&EndGauge, END_GAUGE);
    let mass_standard = || of::<S, 5>(&MassStandard, MASS_STANDARD);
    Some(match row.quantity.as_str() {
        "end_gauge_length_mm" => S::c(50.000_623) + end_gauge().value * S::c(1e-6),
        "end_gauge_standard_nm" => end_gauge().standard(),
        "end_gauge_part_nm" => end_gauge().contributions[row.number("input") as usize].abs(),
        "end_gauge_second_order_nm" => end_gauge().second_order,
        "mass_standard_first_order_mg" => mass_standard().standard(),
        "mass_standard_second_order_mg" => mass_standard().second_order,
        "mass_standard_deviation_mg" => mass_standard().value,
        "additive_standard" => of::<S, 4>(&Sum, [1.0; 4]).standard(),
        "normal_beyond" => odds_beyond(row.get("deviations")),
        _ => return None,
    })
}
