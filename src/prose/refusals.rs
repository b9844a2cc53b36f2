//! What a room's refusal means to whoever sets the burner.

use std::format;
use std::prelude::rust_2024::*;
use std::string::ToString;

use crate::error::Error;
use crate::limits::Input;
use crate::quantity::{GaugePressure, Length};

/// The refusal in words of the shop, with what to do about it.
///
/// # Examples
///
/// ```
/// use jetwright::{Error, prose::advice};
/// assert!(advice(&Error::Liquid { given: 18.2 }).ends_with("warm the gas or take a lower gauge pressure"));
/// ```
#[must_use]
pub fn advice(error: &Error) -> String {
    match *error {
        Error::Liquid { .. } => format!("{error}: warm the gas or take a lower gauge pressure"),
        Error::NoSolution { input: Input::GaugePressure, nearest } if nearest < 0.0 => {
            let most = GaugePressure::from_pascals(Input::GaugePressure.range().max);
            format!(
                "no gauge pressure up to {:.1} bar ({:.1} psi) reaches this heat with this jet: ask less, or take a larger \
                 jet or more jets",
                most.bar(),
                most.psi()
            )
        }
        Error::NoSolution { input: Input::GaugePressure, .. } => {
            "no gauge pressure is low enough for this heat with this jet: ask more, or take a smaller jet".into()
        }
        Error::NoSolution { input: Input::Bore, nearest } if nearest < 0.0 => format!(
            "no bore up to {} reaches this heat at this gauge pressure: ask less, or take a higher gauge or more jets",
            bore(Input::Bore.range().max)
        ),
        Error::NoSolution { input: Input::Bore, .. } => format!(
            "even a bore of {} gives more than this heat at this gauge pressure: ask more, or take a lower gauge or \
             fewer jets",
            bore(Input::Bore.range().min)
        ),
        Error::NoSolution { input: Input::PipeLength, .. } => {
            "the line cannot pass so much gas at any gauge of its range: a wider or a shorter one, or ask less".into()
        }
        Error::OutOfRange { input: Input::ApproachRatio, given } => format!(
            "the bore is {given:.2} times as wide as this tube, accepted is up to {} times",
            Input::ApproachRatio.range().max
        ),
        _ => error.to_string(),
    }
}

fn bore(meters: f64) -> String {
    let bore = Length::from_meters(meters);
    format!("{} mm ({:.4} in)", bore.millimeters(), bore.inches())
}

/// The key of the jet that a refusal of its bore is about.
#[must_use]
pub fn jet_key(error: &Error) -> &'static str {
    let (Error::OutOfRange { input, .. } | Error::NotFinite { input }) = error else { return "bore" };
    match input {
        Input::BoreLength => "bore_length",
        Input::ApproachRatio => "approach_diameter",
        Input::Roughness => "roughness",
        Input::EdgeRadius => "edge_radius",
        Input::ChamferDepth => "chamfer_depth",
        Input::ChamferAngle => "chamfer_angle",
        _ => "bore",
    }
}

#[cfg(test)]
mod tests {
    use super::jet_key;
    use crate::orifice::{BoreLength, BoreShape, Edge};
    use crate::quantity::{Angle, Length};

    #[test]
    fn each_measure_of_the_bore_is_refused_by_its_own_key() {
        let mm = Length::from_millimeters;
        let drilled = BoreShape::drilled(BoreLength::Fixed(mm(12.0)));
        let key = |shape: BoreShape, bore: f64| jet_key(&shape.with_diameter(mm(bore)).unwrap_err());
        let chamfer = |depth, degrees| Edge::Chamfered { depth: mm(depth), angle: Angle::from_degrees(degrees) };
        assert_eq!(key(drilled, 13.0), "bore");
        assert_eq!(key(BoreShape { length: BoreLength::Fixed(mm(66.0)), ..drilled }, 2.0), "bore_length");
        assert_eq!(key(BoreShape { approach: Some(mm(2.5)), ..drilled }, 2.0), "approach_diameter");
        assert_eq!(key(BoreShape { roughness: mm(0.6), ..drilled }, 2.0), "roughness");
        assert_eq!(key(BoreShape { edge: Edge::Rounded { radius: mm(21.0) }, ..drilled }, 2.0), "edge_radius");
        assert_eq!(key(BoreShape { edge: chamfer(21.0, 90.0), ..drilled }, 2.0), "chamfer_depth");
        assert_eq!(key(BoreShape { edge: chamfer(1.0, 181.0), ..drilled }, 2.0), "chamfer_angle");
    }
}
