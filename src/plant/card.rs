//! The card beside the furnace: which setting fills each of its three blocks, and how soon unlit gas must be off.

use crate::burner::{GoesOut, Lights};
use crate::plant::entries::Use;
use crate::plant::evaluation::Sheet;
use crate::plant::firing::StageKind;
use crate::plant::hazards::HazardKind;
use crate::plant::lighting::{SettingLighting, setting_lighting};
use crate::plant::setting::{Fired, Setting};
use crate::plant::verdict::Verdict;
use crate::quantity::Duration;

/// Why a block has no setting.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum NoSetting {
    /// No setting has this use, and there is no plan that tells it.
    NotSaid,
    /// Whether it lights is not known: blower and head are not described, or the gas has no known limits of burning.
    NotJudged,
    /// It will not light a cold chamber.
    WillNotLight(GoesOut),
    /// It goes out even in a glowing chamber.
    GoesOut,
    /// The mixture would blow back into the blower.
    BlowsBack,
    /// The regulator cannot give its gauge pressure.
    BeyondRegulator,
}

/// One of the three blocks.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CardBlock {
    /// Which of the three.
    pub of: Use,
    /// Its fire, safe or not; none where nothing tells it.
    pub fired: Option<Fired>,
    /// Why it is not printed.
    pub refused: Option<NoSetting>,
    /// Whether nobody has seen it light: one try.
    pub first_try: bool,
}

/// The card's own answers.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Card {
    /// The blocks for lighting, working and keeping.
    pub blocks: [CardBlock; 3],
    /// The shortest time of all settings, blower on or stopped, after which unlit gas makes the chamber's air explosive,
    /// with the gas at the high end of its ±; none without the chamber's volume.
    pub charge_after: Option<Duration>,
}

impl Card {
    /// The block for lighting, where it is printed.
    #[must_use]
    pub fn lights(&self) -> Option<&CardBlock> {
        self.blocks.iter().find(|block| block.of == Use::Light && block.refused.is_none())
    }
}

impl Sheet {
    /// The card's own answers.
    #[must_use]
    pub fn card(&self) -> Card {
        Card { blocks: Use::WORDS.map(|(_, of)| self.block(of)), charge_after: self.charge_after() }
    }

    fn block(&self, of: Use) -> CardBlock {
        let fired = self.said(of).or_else(|| self.planned(of));
        let verdict = fired.and_then(|fired| self.verdict(fired));
        CardBlock {
            of,
            fired,
            refused: fired.map_or(Some(NoSetting::NotSaid), |fired| self.refused(of, fired)),
            first_try: of == Use::Light && verdict == Some(Verdict::FirstTry),
        }
    }

    /// The setting whose entry has this use.
    fn said(&self, of: Use) -> Option<Fired> {
        self.settings.iter().position(|setting| setting.entry.used_for == Some(of)).map(Fired::Setting)
    }

    /// The fire that the run plan, else the settings' times, give this use.
    fn planned(&self, of: Use) -> Option<Fired> {
        let burning = || self.firing.stages.iter().filter(|stage| stage.setting.is_some());
        let first = burning().next()?.setting;
        match of {
            Use::Light => first,
            Use::Work if self.firing.by_furnace => {
                burning().find(|stage| stage.kind == StageKind::Work).and_then(|stage| stage.setting)
            }
            // Of the others by the settings' times, the one that burns the most is the work's.
            Use::Work => {
                burning().skip(1).max_by(|one, other| one.gas.kilograms().total_cmp(&other.gas.kilograms()))?.setting
            }
            Use::Keep if self.firing.by_furnace => None,
            Use::Keep => burning()
                .next_back()?
                .setting
                .filter(|&last| Some(last) != first && Some(last) != self.planned(Use::Work)),
        }
    }

    fn verdict(&self, fired: Fired) -> Option<Verdict> {
        match fired {
            Fired::Setting(index) => Some(self.lighting.as_ref()?.settings.get(index)?.verdict),
            Fired::Work => Some(self.work_lighting()?.verdict),
        }
    }

    fn burns_hot(&self, fired: Fired) -> Option<bool> {
        let never = |found: &SettingLighting| found.lighting.lights == Lights::Never;
        match fired {
            Fired::Setting(index) => Some(!never(self.lighting.as_ref()?.settings.get(index)?)),
            Fired::Work => Some(!never(&self.work_lighting()?)),
        }
    }

    fn work_lighting(&self) -> Option<SettingLighting> {
        let (burner, block) = (self.plant.burner.as_ref()?, self.lighting.as_ref()?);
        setting_lighting(burner, &self.plant, self.work()?, None, block.left, &block.known).ok()
    }

    /// Why a block must not show a fire; none where it may.
    fn refused(&self, of: Use, fired: Fired) -> Option<NoSetting> {
        let Some(setting) = self.fire(fired) else { return Some(NoSetting::NotSaid) };
        if is_blown_back(setting) {
            return Some(NoSetting::BlowsBack);
        }
        let regulator = self.plant.before.regulator.as_ref();
        if regulator.is_some_and(|regulator| setting.gauge > regulator.lock_up()) {
            return Some(NoSetting::BeyondRegulator);
        }
        match (of, self.verdict(fired), self.burns_hot(fired)) {
            (Use::Light, Some(Verdict::WillNotLight(why)), _) => Some(NoSetting::WillNotLight(why)),
            (Use::Light, Some(_), _) | (_, Some(_), Some(true)) => None,
            (_, Some(_), _) => Some(NoSetting::GoesOut),
            (_, None, _) => Some(NoSetting::NotJudged),
        }
    }

    fn charge_after(&self) -> Option<Duration> {
        let block = self.lighting.as_ref()?;
        let each = block.settings.iter().map(|found| (found.unlit, 0.0));
        // The fire of the work has no ± of its own: the widest of the settings'.
        let most = self.sure.iter().flatten().map(|sure| sure.gas.relative()).fold(0.0, f64::max);
        let work = self.work_lighting().map(|found| (found.unlit, most));
        let soonest = each.chain(work).flat_map(|(unlit, spread)| {
            let times = unlit.map(|unlit| [unlit.soonest.explosive_after, unlit.soonest.explosive_without_air]);
            // More gas, the sooner, and in proportion to it at most.
            times.unwrap_or_default().map(|time| time.map(|time| time.seconds() / (1.0 + spread)))
        });
        soonest.flatten().filter(|seconds| seconds.is_finite()).reduce(f64::min).map(Duration::from_seconds)
    }

    /// Whether the gas is heavier than air and pools.
    #[must_use]
    pub fn gas_pools(&self) -> bool {
        self.hazards.has(HazardKind::HeavyGas)
    }
}

fn is_blown_back(setting: &Setting) -> bool {
    setting.air.as_ref().is_some_and(|air| air.running.is_none())
}
