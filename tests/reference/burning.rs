//! Limits of burning, autoignition and burning velocity.

use super::row::Row;
use jetwright::combustion::{LimitStandard, autoignition, burning_range, burning_velocity_band, explosive_range};
use jetwright::quantity::{AbsolutePressure, Temperature};
use jetwright::{Scalar, Site};

/// Our value for a row of this topic.
pub fn ours<S: Scalar>(row: &Row) -> Option<S> {
    let gas = row.gas::<S>();
    let site = |pascals: S| {
        let pressure = AbsolutePressure::from_pascals(pascals);
        Site::at_station_pressure(pressure, Temperature::from_celsius(S::c(15.0)), S::zero()).unwrap()
    };
    let limits = |standard| {
        let temperature = Temperature::from_celsius(row.get("celsius"));
        burning_range(&gas, &site(S::c(101_325.0)), temperature, standard).unwrap()
    };
    let explosive = || {
        let temperature = Temperature::from_celsius(row.get("celsius"));
        explosive_range(&gas, &site(S::c(101_325.0)), temperature).unwrap()
    };
    Some(match row.quantity.as_str() {
        "lower_limit_nfpa" => limits(LimitStandard::Nfpa497).lower_limit,
        "upper_limit_nfpa" => limits(LimitStandard::Nfpa497).upper_limit,
        "lower_limit_iec" => limits(LimitStandard::Iec60079).lower_limit,
        "upper_limit_iec" => limits(LimitStandard::Iec60079).upper_limit,
        "explosive_lower_limit" => explosive().lower_limit,
        "explosive_upper_limit" => explosive().upper_limit,
        "autoignition_celsius" => autoignition(gas.mixture()).unwrap()?.celsius(),
        "burning_velocity_m_per_s" | "fastest_burning_velocity_m_per_s" => {
            let mixture = Temperature::from_kelvin(row.get("mixture_temperature_k"));
            let site = site(row.get("pressure_pa"));
            let band = burning_velocity_band(&gas, &site, row.get("air_ratio"), mixture).unwrap();
            band[usize::from(row.quantity.starts_with("fastest"))].meters_per_second()
        }
        _ => return None,
    })
}
