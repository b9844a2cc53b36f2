//! The run by the settings' own minutes, and what draws on the cylinders in it.

use std::format;
use std::prelude::rust_2024::*;

use crate::plant::cylinder::CylinderRow;
use crate::plant::hazards::HazardKind;
use crate::plant::{Setting, Sheet, Stage, StageKind};
use crate::prose::firing as prose;
use crate::quantity::{Duration, Mass};
use crate::report::field::columns;
use crate::report::furnace::fire as fire_words;
use crate::report::tree::{Member, Node, Page, Section};
use crate::report::units::Shop;

impl Sheet {
    /// What draws on the cylinders: each setting, then the work's fire.
    pub fn draws(&self) -> impl Iterator<Item = (&Setting, &CylinderRow)> {
        let block = self.cylinder.as_ref();
        let work = self.furnace.as_ref().and_then(|block| block.work.as_ref()).and_then(|work| work.fire());
        let rows = block.map_or(&[][..], |block| &block.rows[..]).iter();
        self.settings.iter().zip(rows).chain(work.zip(block.and_then(|block| block.work.as_ref())))
    }

    /// Gas and money of all settings that have a time; none when no setting has one.
    #[must_use]
    pub fn run(&self) -> Option<(Duration, Mass, Option<f64>)> {
        let timed: Vec<_> = self.settings.iter().filter(|setting| setting.gas_used.is_some()).collect();
        if timed.is_empty() {
            return None;
        }
        let seconds = timed.iter().filter_map(|setting| setting.entry.minutes).map(Duration::seconds).sum();
        let mass = timed.iter().filter_map(|setting| setting.gas_used).map(Mass::kilograms).sum();
        let cost = timed.iter().map(|setting| setting.cost).sum::<Option<f64>>();
        Some((Duration::from_seconds(seconds), Mass::from_kilograms(mass), cost))
    }
}

/// What to set for a fire: gauge, damper and what they give.
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

/// A stage in words; empty of a hold, which is told with its setting.
pub(crate) fn stage_words(sheet: &Sheet, stage: &Stage, shop: &Shop) -> String {
    let time = stage.duration.unwrap_or_default();
    let fire = stage.setting.and_then(|fired| sheet.fire(fired));
    let stand = fire.map_or(String::new(), |fire| stand_words(fire, shop));
    match stage.kind {
        StageKind::Purge => prose::purge(time, sheet.purge.is_known),
        StageKind::WarmUp => {
            let (name, temperature) = (
                fire.map_or("", |fire| &fire.entry.name),
                sheet.furnace.as_ref().map_or(String::new(), |block| shop.temperature(block.temperature)),
            );
            prose::warm_up(name, &stand, &temperature, time)
        }
        StageKind::Work => {
            let work = sheet.furnace.as_ref().and_then(|block| block.work.as_ref());
            let needed = work.and_then(|work| work.course?.needed);
            let mean = needed.map_or(String::new(), |(_, heated)| fire_words(sheet, shop, heated.mean()));
            prose::work(&stand, &mean, time)
        }
        StageKind::Hold => hold(sheet, fire, stage, shop),
        StageKind::AirOn => prose::gas_off(stage.duration, from_cylinder(sheet)),
        StageKind::AirOff => prose::AIR_OFF.into(),
    }
}

/// How its setting is tried once, after its words; empty where it was seen to light.
pub(crate) fn tried_words(sheet: &Sheet, stage: &Stage) -> String {
    if is_tried(sheet, stage) { String::from(". ") + &prose::first_try(sheet.purge.time) } else { String::new() }
}

/// Whether a stage is the first that burns gas, at a setting that nobody has seen light.
pub(crate) fn is_tried(sheet: &Sheet, stage: &Stage) -> bool {
    let first = sheet.firing.stages.iter().find(|stage| stage.setting.is_some());
    sheet.firing.first_try && first == Some(stage)
}

/// Whether the gas comes from a cylinder: one is described, or the gas is heavier than air and piped nowhere.
fn from_cylinder(sheet: &Sheet) -> bool {
    sheet.cylinder.is_some() || sheet.hazards.has(HazardKind::HeavyGas)
}

/// A setting held for its own time.
fn hold(sheet: &Sheet, fire: Option<&Setting>, stage: &Stage, shop: &Shop) -> String {
    let Some(setting) = fire else { return String::new() };
    let currency = &sheet.plant.entries.gas.currency;
    let purpose = setting.entry.purpose.as_ref().map_or(String::new(), |purpose| format!(", {purpose}"));
    let money = setting.cost.map_or(String::new(), |cost| format!(", {}", Shop::money(currency, cost)));
    format!(
        "{}{purpose}: {} for {:.0} min, {} of gas{money}",
        setting.entry.name,
        stand_words(setting, shop),
        stage.duration.unwrap_or_default().minutes(),
        shop.mass(stage.gas),
    )
}

/// Where to set the damper.
fn damper_words(setting: &Setting) -> String {
    let Some(air) = &setting.air else { return "-".into() };
    match (air.opening, air.shortfall) {
        (_, Some(_)) => "wide, too little".into(),
        (Some(opening), None) if air.too_much_air && setting.gas.kilograms_per_second() > 0.0 => {
            format!("less than {}", Shop::share(opening))
        }
        (Some(opening), None) => Shop::share(opening),
        (None, None) => "none".into(),
    }
}

/// The firing; nothing where the furnace has a plan, or no setting a time.
pub(crate) fn timed_settings(page: &mut Page, sheet: &Sheet, shop: &Shop) {
    let Some((time, mass, cost)) = sheet.run() else { return };
    page.push(Node::block(&TIMED, std::vec![Node::fields([timed(&(time, mass, cost))])]));
    // One firing a sheet: the furnace's plan where there is one.
    if sheet.firing.by_furnace {
        return;
    }
    page.heading("RUN PLAN");
    if let Some(why) = sheet.firing.no_plan.filter(|_| sheet.firing.stages.is_empty()) {
        page.said("", prose::no_plan(why));
        return;
    }
    for stage in &sheet.firing.stages {
        let label = stage.at.map_or("then".into(), Shop::clock);
        page.said(label, stage_words(sheet, stage, shop) + &tried_words(sheet, stage));
    }
    let currency = &sheet.plant.entries.gas.currency;
    let money = cost.map_or(String::new(), |cost| format!(", {}", Shop::money(currency, cost)));
    page.said("", format!("It burns {} of gas{money}.", shop.mass(mass)));
}

/// Sheet: firing, for programs.
pub(crate) const TIMED: Section = Section {
    key: "run",
    name: "sheet: run",
    words: "All settings that have a time, by those times; null when none has. The furnace's `plan` is another \
        firing, and the one printed where there is one",
    about: "",
    is_many: false,
    members: &[Member::Columns(TIMED_FIELDS)],
};

columns! {
    /// All settings that have a time.
    pub(crate) TIMED_FIELDS, timed(row: &(Duration, Mass, Option<f64>));
    duration_s, "duration", Time, Programs => row.0.seconds();
    gas_used_kg, "gas used", Mass, Programs => row.1.kilograms();
    cost, "cost", Money, Programs => row.2;
}
