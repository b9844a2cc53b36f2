//! The stages of a firing in words; numbers come written in the units of the page.

use std::format;
use std::prelude::rust_2024::*;

use crate::burner::GoesOut;
use crate::plant::{NoPlan, OutOfReach};
use crate::quantity::Duration;

fn minutes(time: Duration) -> String {
    format!("{:.0} min", time.minutes())
}

/// Air before gas; `is_known` tells whether the time is four changes of the chamber's air.
#[must_use]
pub fn purge(time: Duration, is_known: bool) -> String {
    let more = if is_known { "" } else { ", longer where that is not four changes of its air" };
    format!("blower on, gas shut: purge the chamber for {:.0} s{more}", time.seconds())
}

/// The empty chamber brought to its temperature.
#[must_use]
pub fn warm_up(setting: &str, stand: &str, temperature: &str, time: Duration) -> String {
    format!("light, then \"{setting}\" at {stand}: the empty chamber is at {temperature} after {}", minutes(time))
}

/// The charge in the furnace; `mean` is its fire on average.
#[must_use]
pub fn work(stand: &str, mean: &str, time: Duration) -> String {
    format!("work goes in: {stand} ({mean} on average) for {}", minutes(time))
}

/// Gas before air, at the cylinder or, of piped gas, at its valve; how long the air stays on, where it is known.
#[must_use]
pub fn gas_off(air_on: Option<Duration>, from_cylinder: bool) -> String {
    let how_long =
        air_on.map_or("until nothing in the chamber glows".into(), |time| String::from("for ") + &minutes(time));
    let supply = if from_cylinder { "the cylinder" } else { "its valve" };
    format!("gas off at {supply} first; keep the air on {how_long}")
}

/// The last stage.
pub const AIR_OFF: &str = "air off: shut the damper, hot gas rises through a stopped burner";

/// How a setting that nobody has seen light is tried: once.
#[must_use]
pub fn first_try(purge: Duration) -> String {
    format!(
        "FIRST TRY: nobody has seen this head light so. A flame at the ports, then the gas; not alight at once: gas off, \
         purge for {:.0} s, and no second try before the cause is found. When it has lit, write gauge and damper \
         into [lighting]",
        purge.seconds()
    )
}

/// Why there is no plan, and what cures it.
#[must_use]
pub const fn no_plan(why: NoPlan) -> &'static str {
    match why {
        NoPlan::WillNotLight(GoesOut::TooLean) => {
            "no plan: the setting it would begin with WILL NOT LIGHT a cold chamber: too lean, at the lean end of its ± at \
             least. Close the damper, or light at a higher gauge"
        }
        NoPlan::WillNotLight(GoesOut::TooRich) => {
            "no plan: the setting it would begin with WILL NOT LIGHT a cold chamber: too rich, at the rich end of its ± at \
             least. Open the damper, or light at a lower gauge"
        }
        NoPlan::WillNotLight(GoesOut::BlowOff) => {
            "no plan: the setting it would begin with WILL NOT LIGHT a cold chamber: blow-off, it is faster in the ports \
             than what was seen to light. Close the damper, or light as was seen"
        }
        NoPlan::WillNotLight(GoesOut::NoFlow) => {
            "no plan: the setting it would begin with WILL NOT LIGHT: no gas flows, or the blower is too weak for it. \
             Light at a higher gauge, or take a stronger blower"
        }
        NoPlan::BeyondRegulator => {
            "no plan: a stage needs a gauge pressure above the regulator's lock-up pressure, which it cannot give: a lower \
             gauge with a larger jet, or a regulator made for it"
        }
        NoPlan::GoesOutLater(_) => {
            "no plan: a setting of a later stage goes out even in a glowing chamber: close its damper, or raise its gauge"
        }
        NoPlan::BlowsBack => "no plan: the largest setting blows gas back into the blower and must never be lit",
        NoPlan::TooSmall => "no plan: the largest setting never reaches the chamber's temperature",
        NoPlan::Work(OutOfReach::Chamber) => {
            "no plan: the chamber at its temperature cannot heat the work in the time asked, however large the fire"
        }
        NoPlan::Work(OutOfReach::Jet) => "no plan: no gauge of this jet gives the fire that the work asks for",
        NoPlan::Work(OutOfReach::Blower) => "no plan: this blower cannot feed the fire that the work asks for",
    }
}
