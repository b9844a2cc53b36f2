//! The steps of the procedures in words: short, one thing each, to be read from where one stands.

use std::format;
use std::prelude::rust_2024::*;

use crate::plant::procedures::{Procedure, Procedures, Step};
use crate::quantity::Duration;

/// Seconds from which a person counts no more: the gas is off at once.
const COUNTED: f64 = 10.0;

/// A procedure's name.
#[must_use]
pub const fn name(of: Procedure) -> &'static str {
    match of {
        Procedure::FlameOut => "FLAME OUT",
        Procedure::Light => "LIGHT",
        Procedure::Run => "RUN",
        Procedure::Stop => "STOP",
        Procedure::BlowerStops => "BLOWER STOPS",
        Procedure::GasSmell => "GAS SMELL",
        Procedure::PowerBack => "POWER BACK",
    }
}

/// Within so many seconds, or at once.
fn within(time: Option<Duration>) -> String {
    match time.map(Duration::seconds) {
        Some(seconds) if (1.0..COUNTED).contains(&seconds) => format!("in {seconds:.0} s"),
        _ => "AT ONCE".into(),
    }
}

/// A long time in minutes, a short one in seconds.
fn lasting(time: Duration) -> String {
    let seconds = time.seconds();
    if seconds < 180.0 { format!("{seconds:.0} s") } else { format!("{:.0} min", seconds / 60.0) }
}

fn supply(numbers: &Procedures) -> &'static str {
    if numbers.from_cylinder { "cylinder" } else { "supply" }
}

/// A step in at most 19 characters, for what is read at two meters.
#[must_use]
pub fn at_a_glance(step: Step, numbers: &Procedures) -> String {
    match step {
        Step::GasOff => format!("GAS OFF {}", within(numbers.gas_off_within)),
        Step::AirStays => "Air stays on".into(),
        Step::Purge => format!("Purge {:.0} s", numbers.purge.seconds()),
        Step::TryOnce => "Try once: LIGHT 1".into(),
        Step::SupplyShut => format!("Shut the {}", supply(numbers)),
        other => words(other, numbers),
    }
}

/// A step in a sentence.
#[must_use]
pub fn words(step: Step, numbers: &Procedures) -> String {
    let purge = || format!("{:.0} s", numbers.purge.seconds());
    match step {
        Step::GasOff => format!("Gas off {}.", within(numbers.gas_off_within).to_lowercase()),
        Step::AirStays => "Air stays on.".into(),
        Step::Purge if numbers.purge_is_known => format!("Purge {}, air alone.", purge()),
        Step::Purge => format!("Purge {} or 4 changes of its air.", purge()),
        Step::TryOnce => "Then LIGHT from 1, once.".into(),
        Step::SupplyShut => format!("Shut the {}, if you can reach it safely.", supply(numbers)),
        Step::StandAside => "Lid open, gas shut, stand aside.".into(),
        Step::BlowerOn if numbers.has_damper && numbers.can_light => "Blower on, damper as in LIGHT.".into(),
        Step::BlowerOn => "Blower on.".into(),
        Step::FlameAtPorts => "A burning torch at the ports.".into(),
        Step::GasOn => "Gas on, to the gauge of LIGHT.".into(),
        Step::NotAlight => {
            let how = within(numbers.gas_off_within).to_lowercase();
            let once = if numbers.first_try { "ONE TRY. Not" } else { "Not" };
            format!("{once} alight {how}: gas off, purge {}, find the cause.", purge())
        }
        Step::Alight => "All ports burn: torch away. Stay.".into(),
        Step::MoreAirFirst if numbers.has_damper => "More: damper first, then gas.".into(),
        Step::MoreAirFirst => "More: gas slowly, and watch the flame.".into(),
        Step::LessGasFirst if numbers.has_damper => "Less: gas first, then damper.".into(),
        Step::LessGasFirst => "Less: gas slowly, and watch the flame.".into(),
        Step::Watch => "Someone who knows this card watches the flame.".into(),
        Step::BurnLineEmpty => format!("Shut the {}; line burns empty.", supply(numbers)),
        Step::ValveShut => "Gas valve at the burner shut.".into(),
        Step::AirStaysOn => match numbers.air_on {
            Some(time) => format!("Air stays on for {}.", lasting(time)),
            None => "Air stays on until nothing glows.".into(),
        },
        Step::BlowerOff if numbers.has_damper => "Blower off, damper shut: heat rises.".into(),
        Step::BlowerOff => "Blower off; hot gas rises through it.".into(),
        Step::StillIgnites => {
            let time = numbers.ignites_for.map_or(String::new(), lasting);
            format!("Nothing may leak: for {time} the chamber ignites gas.")
        }
        Step::DamperShut if numbers.has_damper => "Damper shut: hot gas rises into the blower.".into(),
        Step::DamperShut => "Hot gas rises into the blower: keep clear of it.".into(),
        Step::NoSwitch => "No switch, no flame.".into(),
        Step::AllOut => "Everyone out. Call for help from outside.".into(),
        Step::NotInPits => "The gas pools: nobody into pits or cellars.".into(),
        Step::SeeValvesShut => "Before the blower starts: see every gas valve shut.".into(),
    }
}

/// What else is done at FLAME OUT, in a line.
#[must_use]
pub fn also(numbers: &Procedures) -> String {
    let damper = if numbers.has_damper { ", damper shut" } else { "" };
    format!("Blower dead: gas off{damper}. Gas smell: shut the {}, no switch, all out.", supply(numbers))
}
