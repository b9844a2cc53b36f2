//! The stages of a firing in words; numbers come written in the units of the page.

use std::format;
use std::prelude::rust_2024::*;

use crate::plant::{NoPlan, OutOfReach};
use crate::quantity::Duration;

fn minutes(time: Duration) -> String {
    format!("{:.0} min", time.minutes())
}

/// Air before gas; `is_known` tells whether the time is four changes of the chamber's air.
#[must_use]
pub fn purge(time: Duration, is_known: bool) -> String {
    let more = if is_known { "" } else { ", longer where that is not four changes of its air" };
    format!("blower on, gas shut: blow the chamber through for {:.0} s{more}", time.seconds())
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

/// Gas before air; how long the air stays on, where it is known.
#[must_use]
pub fn gas_off(air_on: Option<Duration>) -> String {
    let how_long =
        air_on.map_or("until nothing in the chamber glows".into(), |time| String::from("for ") + &minutes(time));
    format!("gas off at the cylinder first; keep the air on {how_long}")
}

/// The last stage.
pub const AIR_OFF: &str = "air off, the last valve closed: shut the damper, hot gas rises through a stopped burner";

/// Why a furnace has no plan.
#[must_use]
pub const fn no_plan(why: NoPlan) -> &'static str {
    match why {
        NoPlan::BlowsBack => "no plan: the largest setting blows gas back into the blower and must never be lit",
        NoPlan::TooSmall => "no plan: the largest setting never reaches the chamber's temperature",
        NoPlan::Work(OutOfReach::Jet) => "no plan: no gauge of this jet gives the fire that the work asks for",
        NoPlan::Work(OutOfReach::Blower) => "no plan: this blower cannot feed the fire that the work asks for",
    }
}
