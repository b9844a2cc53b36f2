//! The firing as one list of stages, from the blower's start to its stop.

use heapless::Vec;

use crate::burner::{GoesOut, Lights};
use crate::plant::entries::MOST_SETTINGS;
use crate::plant::furnace::FurnaceBlock;
use crate::plant::installation::Plant;
use crate::plant::lighting::LightingBlock;
use crate::plant::purge::Purge;
use crate::plant::setting::{Fired, Setting};
use crate::plant::verdict::Verdict;
use crate::plant::work::OutOfReach;
use crate::quantity::{Duration, Mass};

/// Most stages of a firing: every setting, the purge, air on and air off.
pub const STAGE_CAP: usize = MOST_SETTINGS + 3;

/// What is done in a stage.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum StageKind {
    /// Air alone, before gas.
    Purge,
    /// Lit, and the empty chamber brought to its temperature.
    WarmUp,
    /// The charge goes in and is heated.
    Work,
    /// A setting held for its own time.
    Hold,
    /// Gas off, air still on.
    AirOn,
    /// Air off.
    AirOff,
}

/// A stage of the firing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stage {
    /// What is done.
    pub kind: StageKind,
    /// When it begins; none where that hangs on what is seen.
    pub at: Option<Duration>,
    /// How long it takes; none where that hangs on what is seen, and of the last stage.
    pub duration: Option<Duration>,
    /// The fire it burns.
    pub setting: Option<Fired>,
    /// Gas it burns.
    pub gas: Mass,
}

/// Why a furnace has no stages of its own.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoPlan {
    /// The largest setting blows gas back into the blower.
    BlowsBack,
    /// The setting that the firing would begin with will not light in a cold chamber.
    WillNotLight(GoesOut),
    /// A stage needs a gauge pressure above the regulator's lock-up pressure.
    BeyondRegulator,
    /// A setting of a later stage burns in no chamber, cold or glowing: which, counted from 0.
    GoesOutLater(usize),
    /// The largest setting never reaches the chamber's temperature.
    TooSmall,
    /// The burner cannot give the heat input of the charge.
    Work(OutOfReach),
}

/// The firing.
#[derive(Clone, Debug, PartialEq)]
pub struct Firing {
    /// Its stages in order; none without a furnace that has a plan and without a setting that has a time.
    pub stages: Vec<Stage, STAGE_CAP>,
    /// Whether they follow from the furnace; else they are the settings' own times.
    pub by_furnace: bool,
    /// Why there is none.
    pub no_plan: Option<NoPlan>,
    /// Whether nobody has seen its first setting light here: one try, and only by the procedure of one.
    pub first_try: bool,
}

impl Firing {
    /// The stages that burn gas for a known time: which fire, how long, how much.
    pub fn fires(&self) -> impl Iterator<Item = (Fired, Duration, Mass)> {
        self.stages.iter().filter_map(|stage| Some((stage.setting?, stage.duration?, stage.gas)))
    }

    /// Gas of all stages.
    #[must_use]
    pub fn gas(&self) -> Mass {
        Mass::from_kilograms(self.stages.iter().map(|stage| stage.gas.kilograms()).sum())
    }
}

/// Why a furnace has no plan; none when it has one.
fn no_plan(block: &FurnaceBlock, settings: &[Setting], lighting: Option<&LightingBlock>) -> Option<NoPlan> {
    let largest = settings[block.largest].air.as_ref();
    if largest.is_some_and(|air| air.running.is_none()) {
        return Some(NoPlan::BlowsBack);
    }
    if let Some(Verdict::WillNotLight(why)) = verdict(lighting, block.largest) {
        return Some(NoPlan::WillNotLight(why));
    }
    if block.course.warm_up.is_none() {
        return Some(NoPlan::TooSmall);
    }
    block.work.as_ref().and_then(|work| work.out_of_reach()).map(NoPlan::Work)
}

/// Whether the regulator cannot give a setting's gauge pressure.
fn is_beyond(plant: &Plant, setting: &Setting) -> bool {
    plant.before.regulator.as_ref().is_some_and(|regulator| setting.gauge > regulator.lock_up())
}

/// How a setting lights a cold chamber; none where blower and head are not described.
fn verdict(lighting: Option<&LightingBlock>, index: usize) -> Option<Verdict> {
    Some(lighting?.settings.get(index)?.verdict)
}

/// Why the settings' own times are no plan: the first of them must light cold, the others burn in a glowing chamber.
fn not_in_order(timed: impl Iterator<Item = usize>, lighting: Option<&LightingBlock>) -> Option<NoPlan> {
    let block = lighting?;
    timed.enumerate().find_map(|(order, index)| {
        let found = block.settings.get(index)?;
        match found.verdict {
            Verdict::WillNotLight(why) if order == 0 => Some(NoPlan::WillNotLight(why)),
            Verdict::WillNotLight(_) if found.lighting.lights == Lights::Never => Some(NoPlan::GoesOutLater(index)),
            _ => None,
        }
    })
}

/// A list of stages that grows from the blower's start on.
struct Clock {
    stages: Vec<Stage, STAGE_CAP>,
    at: Option<Duration>,
}

impl Clock {
    fn push(&mut self, kind: StageKind, duration: Option<Duration>, setting: Option<Fired>, gas: Mass) {
        // There are never more than settings, purge, air on and air off.
        let _ = self.stages.push(Stage { kind, at: self.at, duration, setting, gas });
        self.at = self.at.zip(duration).map(|(at, duration)| at + duration);
    }
}

/// The firing by the furnace's plan, else by the settings' own times.
pub(crate) fn firing(
    plant: &Plant,
    settings: &[Setting],
    furnace: Option<&FurnaceBlock>,
    lighting: Option<&LightingBlock>,
    purge: Purge,
) -> Firing {
    let no_plan = furnace.and_then(|block| {
        let work = block.work.as_ref().and_then(|work| work.fire());
        let beyond = is_beyond(plant, &settings[block.largest]) || work.is_some_and(|work| is_beyond(plant, work));
        no_plan(block, settings, lighting).or(beyond.then_some(NoPlan::BeyondRegulator))
    });
    let none = Mass::from_kilograms(0.0);
    let mut clock = Clock { stages: Vec::new(), at: Some(Duration::from_seconds(0.0)) };
    clock.push(StageKind::Purge, Some(purge.time), None, none);
    let by_furnace = furnace.filter(|_| no_plan.is_none()).and_then(|block| Some((block, block.course.warm_up?)));
    match by_furnace {
        Some((block, warm_up)) => {
            let gas = burnt(plant, block.course.warm_up_heats[0]);
            clock.push(
                StageKind::WarmUp,
                Some(Duration::from_seconds(warm_up.value)),
                Some(Fired::Setting(block.largest)),
                gas,
            );
            let work = block.work.as_ref().filter(|work| work.fire().is_some());
            if let Some((_, heated)) = work.and_then(|work| work.course?.needed) {
                let time = Duration::from_seconds(heated.time);
                clock.push(StageKind::Work, Some(time), Some(Fired::Work), burnt(plant, heated.fuel));
            }
        }
        None => {
            let timed = || settings.iter().enumerate().filter(|(_, setting)| setting.gas_used.is_some());
            let why = not_in_order(timed().map(|(index, _)| index), lighting);
            if why.is_some() {
                return Firing { stages: Vec::new(), by_furnace: false, no_plan: no_plan.or(why), first_try: false };
            }
            if timed().any(|(_, setting)| is_beyond(plant, setting)) {
                let why = no_plan.or(Some(NoPlan::BeyondRegulator));
                return Firing { stages: Vec::new(), by_furnace: false, no_plan: why, first_try: false };
            }
            for (index, setting) in timed() {
                let (Some(time), Some(gas)) = (setting.entry.minutes, setting.gas_used) else { continue };
                clock.push(StageKind::Hold, Some(time), Some(Fired::Setting(index)), gas);
            }
            if clock.stages.len() == 1 {
                return Firing { stages: Vec::new(), by_furnace: false, no_plan, first_try: false };
            }
        }
    }
    // As long as it must be at the most.
    let air_on = furnace.and_then(|block| block.course.air_on?.high).map(Duration::from_seconds);
    clock.push(StageKind::AirOn, air_on, None, none);
    clock.push(StageKind::AirOff, None, None, none);
    let first = clock.stages.iter().find_map(|stage| stage.setting);
    let first_try = match first {
        Some(Fired::Setting(index)) => verdict(lighting, index) != Some(Verdict::Lights),
        _ => true,
    };
    Firing { stages: clock.stages, by_furnace: by_furnace.is_some(), no_plan, first_try }
}

/// Gas of a net heat, J.
fn burnt(plant: &Plant, heat: f64) -> Mass {
    Mass::from_kilograms(heat / plant.gas.net_heating_value().joules_per_kilogram())
}
