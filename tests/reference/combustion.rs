//! The air a gas needs.

use super::row::Row;
use jetwright::combustion::AirNeed;
use jetwright::quantity::{Length, Temperature};
use jetwright::{Scalar, Site};

/// Our value for a row of this topic.
pub fn ours<S: Scalar>(row: &Row) -> Option<S> {
    let dry =
        Site::at_altitude(Length::from_meters(S::zero()), Temperature::from_celsius(S::c(15.0)), S::zero()).unwrap();
    let need = AirNeed::new(&row.gas(), &dry);
    Some(match row.quantity.as_str() {
        "stoichiometric_air_volume_ratio" => need.volume_ratio,
        "stoichiometric_air_mass_ratio" => need.mass_ratio,
        _ => return None,
    })
}
