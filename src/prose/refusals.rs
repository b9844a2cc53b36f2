//! What a room's refusal means to whoever sets the burner.

use std::format;
use std::prelude::rust_2024::*;
use std::string::ToString;

use crate::error::Error;
use crate::limits::Input;
use crate::plant::refusal::Reason;
use crate::prose::breaches::breach_words;
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

/// Why an installation is refused, and what is accepted instead.
#[must_use]
pub fn reason_words(reason: &Reason) -> String {
    match *reason {
        Reason::Refused(ref error) => return advice(error),
        Reason::Rule(ref breach) => return breach_words(breach, &str::to_string),
        Reason::NoAirPressure => {
            "accepted is an altitude, a station pressure, or a sea-level pressure with an altitude"
        }
        Reason::SeaLevelWithoutAltitude => "a sea-level pressure needs the altitude beside it",
        Reason::StationNotAlone => "a station pressure stands alone, without an altitude or a sea-level pressure",
        Reason::DrillAndBore => "a drill and a bore exclude each other, accepted is one of the two",
        Reason::NeitherDrillNorBore => "accepted is a bore or a drill, one of the two",
        Reason::NoSuchDrill => {
            "not a drill; accepted are \"number 80\" to \"number 1\", \"letter A\" to \"letter Z\", \"1/64 in\" to \
             \"1/2 in\", metric sizes like \"1.8 mm\" (0.3 to 3 mm by 0.05, to 10 mm by 0.1) and tips like \"tip 0.9 mm\""
        }
        Reason::DepthWithoutChamfer => "a chamfer depth goes with the edge \"chamfered\" only",
        Reason::AngleWithoutChamfer => "a chamfer angle goes with the edge \"chamfered\" only",
        Reason::RadiusWithoutRounding => "an edge radius goes with the edge \"rounded\" only",
        Reason::ChamferWithoutDepth => "a chamfered edge needs its depth",
        Reason::ChamferWithoutAngle => "a chamfered edge needs its full cone angle",
        Reason::RoundingWithoutRadius => "a rounded edge needs its radius",
        Reason::JetsPerHead { jets, heads } => {
            return format!(
                "{jets} jets do not share out over {heads} heads, accepted is a multiple of {heads}: jets of the whole burner"
            );
        }
        Reason::MeasuredOtherBore { measured, bore } => {
            let (theirs, ours) = (measured.millimeters(), bore.millimeters());
            return format!("it was measured with a bore of {theirs:.3} mm, this jet has {ours:.3} mm: weigh it again");
        }
        Reason::LayerTooHot { limit, face, chamber } => {
            return format!(
                "this layer bears {:.0} C and would be {:.0} C hot at a chamber temperature of {:.0} C",
                limit.celsius(),
                face.celsius(),
                chamber.celsius()
            );
        }
        Reason::OutsideWall { thickness } => {
            return format!("accepted is up to the {:.0} mm of the wall", thickness.millimeters());
        }
        Reason::WorkTemperature { air, chamber } => {
            return format!(
                "accepted is between the air and the chamber, {:.0} C to {:.0} C",
                air.celsius(),
                chamber.celsius()
            );
        }
        Reason::WorkTooLarge { work, chamber } => {
            return format!(
                "the work fills {:.1} L even when it is dense, and the chamber has {:.1} L",
                work.liters(),
                chamber.liters()
            );
        }
        Reason::SeenOutsideLimits { air_ratio } => {
            return format!(
                "this burner has an air ratio of {air_ratio:.2} there, which does not burn cold: look at the jet, the \
                 damper and the blower again"
            );
        }
        Reason::SeenNotLowest { from } => {
            return format!(
                "not the lowest gauge that lights: the mixture is so rich there that a lower one lights more easily, by \
                 this from {:.3} bar ({:.2} psi) up; give the lowest that lights, or look at the jet, the damper and the \
                 blower again",
                from.bar(),
                from.psi()
            );
        }
        Reason::Needed => "this is needed for the question",
    }
    .into()
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
