//! The evening around the work, and the furnace's refusals in words.

use std::format;
use std::prelude::rust_2024::*;
use std::vec;

use super::advice::advice;
use super::assembled::Assembled;
use super::compose::Setting;
use super::furnace::FurnaceBlock;
use super::shop::Shop;
use crate::error::Error;
use crate::furnace::warming::Leg;
use crate::limits::Input;
use crate::quantity::{Duration, GaugePressure, Mass};

/// A step of the evening's plan.
pub struct PlanStep {
    /// When it begins.
    pub at: Duration,
    /// What is done.
    pub what: String,
    /// Gas it burns.
    pub gas: Mass,
}

impl FurnaceBlock {
    /// The evening from the blower's start to the last valve closed; empty when the largest fire is too small.
    #[must_use]
    pub fn plan(&self, rig: &Assembled, settings: &[Setting], shop: &Shop) -> Vec<PlanStep> {
        let Some(warm_up) = self.warm_up else { return vec![] };
        let largest = &settings[self.largest];
        let (none, mut at, mut plan) = (Mass::from_kilograms(0.0), Duration::from_seconds(0.0), vec![]);
        let burnt = |leg: &Leg| self::burnt(rig, leg);
        let minutes = |time: Duration| format!("{:.0} min", time.minutes());
        if let Some(blow) = self.blow_through {
            let what = format!("blower on, gas shut: blow the chamber through for {}", minutes(blow));
            plan.push(PlanStep { at, what, gas: none });
            at = at + blow;
        }
        let what = format!(
            "light, then \"{}\" at {}: the empty chamber is at {} after {}",
            largest.entry.name,
            shop.gauge(largest.gauge),
            shop.temperature(self.temperature),
            minutes(warm_up.time)
        );
        plan.push(PlanStep { at, what, gas: burnt(&warm_up) });
        at = at + warm_up.time;
        if let Some((leg, work)) = self.work.as_ref().and_then(|work| Some((work.leg?, work))) {
            let gauge = work.gauge.map_or("out of reach of this jet".into(), |gauge| shop.gauge(gauge));
            let fire = leg.mean_fire().kilowatts();
            let what = format!("work goes in: gauge {gauge} ({fire:.1} kW net on average) for {}", minutes(leg.time));
            plan.push(PlanStep { at, what, gas: burnt(&leg) });
            at = at + leg.time;
        }
        let air_on = self.air_on;
        let what = format!("gas off at the cylinder first; keep the air on for {}", minutes(air_on));
        plan.push(PlanStep { at, what, gas: none });
        at = at + air_on;
        let what = "air off, the last valve closed: shut the damper, hot gas rises through a stopped burner".into();
        plan.push(PlanStep { at, what, gas: none });
        plan
    }
}

/// Gas of a leg's fire.
fn burnt(rig: &Assembled, leg: &Leg) -> Mass {
    Mass::from_kilograms(leg.fire / rig.gas.net_heating_value().joules_per_kilogram())
}

impl FurnaceBlock {
    /// What the plan draws: how long, how much gas, at which gauge; none when the largest fire is too small.
    pub(super) fn draws(&self, rig: &Assembled, settings: &[Setting]) -> Option<Vec<(Duration, Mass, GaugePressure)>> {
        let warm_up = self.warm_up?;
        let largest = settings[self.largest].gauge;
        let work = self.work.as_ref().and_then(|work| Some((work.leg?, work.gauge.unwrap_or(largest))));
        let legs = core::iter::once((warm_up, largest)).chain(work);
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
