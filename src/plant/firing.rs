//! The evening around the work, and the furnace's refusals in words.

use std::format;
use std::prelude::rust_2024::*;
use std::vec;

use crate::error::Error;
use crate::furnace::warming::Leg;
use crate::limits::Input;
use crate::plant::evaluation::{Setting, Sheet};
use crate::plant::furnace::FurnaceBlock;
use crate::plant::installation::Assembled;
use crate::plant::purge::BlowThrough;
use crate::plant::work::{OutOfReach, WorkBlock};
use crate::prose::refusals::advice;
use crate::quantity::{Duration, GaugePressure, Mass};
use crate::report::page::damper_words;
use crate::report::units::Shop;

/// A step of the evening's plan.
pub struct PlanStep {
    /// When it begins.
    pub at: Duration,
    /// What is done.
    pub what: String,
    /// Gas it burns.
    pub gas: Mass,
}

/// Air before gas, in words.
pub(crate) fn blow_words(blow: &BlowThrough) -> String {
    let more = if blow.is_known { "" } else { ", longer where that is not four changes of its air" };
    format!("blower on, gas shut: blow the chamber through for {:.0} s{more}", blow.time.seconds())
}

/// Gas before air, in words; how long the air stays on, where it is known.
pub(crate) fn gas_off_words(air_on: Option<Duration>) -> String {
    let how_long =
        air_on.map_or("until nothing in the chamber glows".into(), |time| "for ".to_owned() + &minutes(time));
    format!("gas off at the cylinder first; keep the air on {how_long}")
}

/// The last step.
pub(crate) const AIR_OFF: &str =
    "air off, the last valve closed: shut the damper, hot gas rises through a stopped burner";

/// What to set for a fire, in words: gauge, damper and what they give.
pub(crate) fn stand_words(setting: &Setting, shop: &Shop) -> String {
    let mut text = format!("gauge {}", shop.gauge(setting.gauge));
    let Some(air) = &setting.air else { return text };
    if air.opening.is_some() {
        text += ", damper ";
        text += &damper_words(setting);
    }
    if let Some(ratio) = air.air_ratio() {
        text += ", air ratio ";
        text += &Shop::ratio(ratio);
    }
    text
}

fn minutes(time: Duration) -> String {
    format!("{:.0} min", time.minutes())
}

impl FurnaceBlock {
    /// Why there is no plan of the evening; none when there is one.
    #[must_use]
    pub fn no_plan(&self, settings: &[Setting]) -> Option<&'static str> {
        let largest = &settings[self.largest];
        if largest.air.as_ref().is_some_and(|air| air.running.is_none()) {
            return Some("no plan: the largest setting blows gas back into the blower and must never be lit");
        }
        if self.warm_up.is_none() {
            return Some("no plan: the largest setting never reaches the chamber's temperature");
        }
        match self.work.as_ref().and_then(WorkBlock::out_of_reach) {
            Some(OutOfReach::Jet) => Some("no plan: no gauge of this jet gives the fire that the work asks for"),
            Some(OutOfReach::Blower) => Some("no plan: this blower cannot feed the fire that the work asks for"),
            None => None,
        }
    }

    /// The evening from the blower's start to the last valve closed; empty when there is no plan.
    #[must_use]
    pub fn plan(&self, sheet: &Sheet, shop: &Shop) -> Vec<PlanStep> {
        let (rig, settings) = (&sheet.rig, &sheet.settings);
        let Some(warm_up) = self.warm_up.filter(|_| self.no_plan(settings).is_none()) else { return vec![] };
        let largest = &settings[self.largest];
        let (none, mut at, mut plan) = (Mass::from_kilograms(0.0), Duration::from_seconds(0.0), vec![]);
        let burnt = |leg: &Leg| self::burnt(rig, leg);
        plan.push(PlanStep { at, what: blow_words(&sheet.blow_through), gas: none });
        at = at + sheet.blow_through.time;
        let what = format!(
            "light, then \"{}\" at {}: the empty chamber is at {} after {}",
            largest.entry.name,
            stand_words(largest, shop),
            shop.temperature(self.temperature),
            minutes(warm_up.time)
        );
        plan.push(PlanStep { at, what, gas: burnt(&warm_up) });
        at = at + warm_up.time;
        if let Some((leg, fire)) = self.work.as_ref().and_then(|work| Some((work.leg?, work.fire()?))) {
            let watts = leg.mean_fire().kilowatts();
            let what = format!(
                "work goes in: {} ({watts:.1} kW net on average) for {}",
                stand_words(fire, shop),
                minutes(leg.time)
            );
            plan.push(PlanStep { at, what, gas: burnt(&leg) });
            at = at + leg.time;
        }
        plan.push(PlanStep { at, what: gas_off_words(Some(self.air_on)), gas: none });
        at = at + self.air_on;
        plan.push(PlanStep { at, what: AIR_OFF.into(), gas: none });
        plan
    }
}

/// Gas of a leg's fire.
fn burnt(rig: &Assembled, leg: &Leg) -> Mass {
    Mass::from_kilograms(leg.fire / rig.gas.net_heating_value().joules_per_kilogram())
}

impl FurnaceBlock {
    /// What the plan draws: how long, how much gas, at which gauge; none when there is no plan.
    pub(crate) fn draws(&self, rig: &Assembled, settings: &[Setting]) -> Option<Vec<(Duration, Mass, GaugePressure)>> {
        let warm_up = self.warm_up.filter(|_| self.no_plan(settings).is_none())?;
        let work = self.work.as_ref().and_then(|work| Some((work.leg?, work.fire()?.gauge)));
        let legs = core::iter::once((warm_up, settings[self.largest].gauge)).chain(work);
        Some(legs.map(|(leg, gauge)| (leg.time, burnt(rig, &leg), gauge)).collect())
    }
}

/// A refusal of the furnace in words of the shop.
#[must_use]
pub fn furnace_advice(error: &Error) -> String {
    match *error {
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
        _ => advice(error),
    }
}
