//! What a room's refusal means to whoever sets the burner.

use std::format;
use std::prelude::rust_2024::*;
use std::string::ToString;

use crate::control::USUAL_ROWS;
use crate::error::Error;
use crate::limits::Input;
use crate::plant::refusal::Reason;
use crate::prose::breaches::breach_words;
use crate::quantity::{GaugePressure, Length, NetHeatRate};

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
        Error::NoSolution { input: Input::PanelArea, nearest } if nearest > 0.0 => format!(
            "the panels do not close the chamber: {nearest:.4} m2 are open still; add flat panels, courses, a door or \
             openings"
        ),
        Error::NoSolution { input: Input::PanelArea, nearest } => {
            format!("the panels do not close the chamber: flat panels and openings are {:.4} m2 too large", -nearest)
        }
        Error::NoSolution { input: Input::AvailableHeat, nearest } => format!(
            "no heat of this gas and air is left at this temperature ({:.0} % of the fire): ask less, or less air",
            100.0 * nearest
        ),
        Error::Points { input: Input::WallArea } => "accepted are at most 6 openings".into(),
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
        Reason::Gas(ref error) => return error.to_string(),
        Reason::NoSuchDrill => {
            "not a drill; accepted are \"number 80\" to \"number 1\", \"letter A\" to \"letter Z\", \"1/64 in\" to \
             \"1/2 in\", metric sizes like \"1.8 mm\" (0.3 to 3 mm by 0.05, to 10 mm by 0.1) and tips like \"tip 0.9 mm\""
        }
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
                "this layer is rated for {:.0} C and would be {:.0} C hot at a chamber temperature of {:.0} C",
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
        Reason::Needed => "this is needed for the question",
        Reason::NeedsAirSide => "this command needs blower, damper and head",
        Reason::NeedsDamper => "this command needs the damper that a table sets",
        Reason::AirRatioAtNoFire => "blower and damper give this air ratio at no fire: accepted is another one",
        Reason::FireOutOfReach { lowest, highest } => {
            return format!("accepted is {}: damper and blower give this air ratio there", fires(lowest, highest));
        }
        Reason::FiresInverted => "the largest fire must be larger than the smallest",
        Reason::NoTable { lowest, highest, ref error } => {
            return format!("no table {}: {error}; --from and --to narrow it", fires(lowest, highest));
        }
        Reason::TableTooCoarse { lowest, highest, off, accepted } => {
            return format!(
                "straight lines between {USUAL_ROWS} rows {} are off by {:.1} % of the air ratio, accepted is up to \
                 {:.0} %: a larger smallest fire, or a smaller largest one",
                fires(lowest, highest),
                1e2 * off,
                1e2 * accepted
            );
        }
    }
    .into()
}

/// Rounded inward, so that what is read off can be asked.
fn fires(lowest: NetHeatRate, highest: NetHeatRate) -> String {
    let (low, high) = ((1e2 * lowest.kilowatts()).ceil() / 1e2, (1e2 * highest.kilowatts()).floor() / 1e2);
    let thousand_btu = NetHeatRate::from_watts(1e3).btu_per_hour() / 1e3;
    let (inch_low, inch_high) =
        ((10.0 * low * thousand_btu).ceil() / 10.0, (10.0 * high * thousand_btu).floor() / 10.0);
    format!("from {low:.2} to {high:.2} kW net ({inch_low:.1} to {inch_high:.1} kBtu/h net)")
}

fn bore(meters: f64) -> String {
    let bore = Length::from_meters(meters);
    format!("{} mm ({:.4} in)", bore.millimeters(), bore.inches())
}
