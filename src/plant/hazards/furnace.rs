//! What the furnace's numbers warn of.

use std::format;
use std::prelude::rust_2024::*;
use std::string::ToString;
use std::vec;

use crate::file::burner_file::BurnerFile;
use crate::plant::furnace::FurnaceBlock;
use crate::plant::work::OutOfReach;
use crate::quantity::{Duration, Mass, NetHeatRate, Temperature};
use crate::report::units::Shop;

/// Above this a touched steel shell burns at once, Celsius: common practice, no source.
const BURNS: f64 = 60.0;
/// Above this one person should not lift, kg: NIOSH lifting equation, 1994 (from memory).
const HEAVY: f64 = 23.0;

/// A warning drawn from a number of the furnace.
#[derive(Clone, Debug, PartialEq)]
pub enum FurnaceCaution {
    /// The largest fire does not reach the temperature.
    FireTooSmall {
        /// What it reaches.
        reaches: Option<Temperature>,
    },
    /// The largest fire, left on, is more than the hot layer bears.
    LiningOverheats {
        /// What it reaches.
        reaches: Temperature,
        /// What the layer bears.
        bears: Temperature,
    },
    /// Steel in the wall is hotter than it bears.
    SteelTooHot {
        /// Its temperature.
        at: Temperature,
        /// What it bears.
        bears: Temperature,
    },
    /// The work asks for a fire that jet and blower do not give.
    WorkOutOfReach {
        /// The fire.
        fire: Option<NetHeatRate>,
        /// What the blower feeds; none when the jet does not give the fire, or nothing is fed.
        fed: Option<NetHeatRate>,
    },
    /// The crucible cannot take the heat in the time asked.
    WorkTooSlow {
        /// How long it takes.
        time: Duration,
    },
    /// The metal boils off zinc.
    ZincFume,
    /// The chamber relights gas by itself.
    Relights {
        /// How long.
        time: Duration,
    },
    /// A fresh lining is wet.
    WetLining {
        /// Its water.
        water: Mass,
    },
    /// A lining is heavy.
    HeavyLining {
        /// Its mass.
        mass: Mass,
    },
    /// The shell burns who touches it.
    HotShell {
        /// Its temperature.
        at: Temperature,
    },
}

/// Every caution the furnace's numbers call for.
pub(crate) fn furnace_cautions(
    file: &BurnerFile,
    block: &FurnaceBlock,
    fed: Option<NetHeatRate>,
) -> Vec<FurnaceCaution> {
    let mut found = vec![];
    if block.warm_up.is_none() {
        found.push(FurnaceCaution::FireTooSmall { reaches: block.reaches.map(|balance| balance.chamber) });
    }
    if let Some((work, why)) = block.work.as_ref().and_then(|work| Some((work, work.out_of_reach()?))) {
        let fire = work.leg.map(|leg| leg.mean_fire());
        found.push(FurnaceCaution::WorkOutOfReach { fire, fed: fed.filter(|_| why == OutOfReach::Blower) });
    }
    if let Some((at, bears)) = block.steel.filter(|(at, bears)| at > bears) {
        found.push(FurnaceCaution::SteelTooHot { at, bears });
    }
    let work = file.entries.furnace.as_ref().and_then(|furnace| furnace.work.as_ref());
    let melt = block.work.as_ref().and_then(|work| work.melt);
    if let (Some(melt), Some(work)) = (melt, work) {
        if melt.time > work.time {
            found.push(FurnaceCaution::WorkTooSlow { time: melt.time });
        }
    }
    if work.is_some_and(|work| work.name == "brass") {
        found.push(FurnaceCaution::ZincFume);
    }
    if block.relights.seconds() > 0.0 {
        found.push(FurnaceCaution::Relights { time: block.relights });
    }
    let bears =
        file.entries.furnace.as_ref().and_then(|furnace| furnace.layers.first()).map(|layer| layer.material.limit());
    if let (Some(reaches), Some(bears)) = (block.reaches, bears) {
        if reaches.chamber > bears {
            found.push(FurnaceCaution::LiningOverheats { reaches: reaches.chamber, bears });
        }
    }
    if let Some(castable) = &block.castable {
        found.push(FurnaceCaution::WetLining { water: castable.mix.water });
        if castable.mix.dry.kilograms() > HEAVY {
            found.push(FurnaceCaution::HeavyLining { mass: castable.mix.dry });
        }
    }
    if block.wall.shell().celsius() > BURNS {
        found.push(FurnaceCaution::HotShell { at: block.wall.shell() });
    }
    found
}

impl FurnaceCaution {
    /// The key it has for programs.
    #[must_use]
    pub fn key(&self) -> &'static str {
        match self {
            FurnaceCaution::FireTooSmall { .. } => "fire_too_small",
            FurnaceCaution::SteelTooHot { .. } => "steel_too_hot",
            FurnaceCaution::LiningOverheats { .. } => "lining_overheats",
            FurnaceCaution::WorkOutOfReach { .. } => "work_out_of_reach",
            FurnaceCaution::WorkTooSlow { .. } => "work_too_slow",
            FurnaceCaution::ZincFume => "zinc_fume",
            FurnaceCaution::Relights { .. } => "relights",
            FurnaceCaution::WetLining { .. } => "wet_lining",
            FurnaceCaution::HeavyLining { .. } => "heavy_lining",
            FurnaceCaution::HotShell { .. } => "hot_shell",
        }
    }

    /// Danger to life first, as of the sheet's other cautions.
    #[must_use]
    pub fn rank(&self) -> u8 {
        match self {
            FurnaceCaution::ZincFume | FurnaceCaution::Relights { .. } | FurnaceCaution::WetLining { .. } => 2,
            FurnaceCaution::FireTooSmall { .. }
            | FurnaceCaution::SteelTooHot { .. }
            | FurnaceCaution::WorkOutOfReach { .. }
            | FurnaceCaution::WorkTooSlow { .. }
            | FurnaceCaution::LiningOverheats { .. } => 3,
            FurnaceCaution::HeavyLining { .. } | FurnaceCaution::HotShell { .. } => 4,
        }
    }

    /// The number it stands on.
    #[must_use]
    pub fn number(&self, shop: &Shop) -> Option<String> {
        match self {
            FurnaceCaution::FireTooSmall { reaches } => {
                reaches.map(|reaches| "ends at ".to_string() + &shop.temperature(reaches))
            }
            FurnaceCaution::SteelTooHot { at, bears } => {
                Some(format!("{} where it bears {}", shop.temperature(*at), shop.temperature(*bears)))
            }
            FurnaceCaution::LiningOverheats { reaches, bears } => {
                Some(format!("{} where it bears {}", shop.temperature(*reaches), shop.temperature(*bears)))
            }
            FurnaceCaution::WorkOutOfReach { fire, fed } => {
                let asked = format!("{:.1} kW net", (*fire)?.kilowatts());
                Some(fed.map_or(asked.clone(), |fed| format!("{asked} where the blower feeds {:.1}", fed.kilowatts())))
            }
            FurnaceCaution::WorkTooSlow { time } | FurnaceCaution::Relights { time } => {
                Some(format!("{:.0} min", time.minutes()))
            }
            FurnaceCaution::WetLining { water } => Some(format!("{} of water", shop.mass(*water))),
            FurnaceCaution::HeavyLining { mass } => Some(shop.mass(*mass)),
            FurnaceCaution::HotShell { at } => Some(shop.temperature(*at)),
            FurnaceCaution::ZincFume => None,
        }
    }

    /// What it says, without its number.
    #[must_use]
    pub fn text(&self) -> String {
        match self {
            FurnaceCaution::FireTooSmall { .. } => {
                "THE FIRE IS TOO SMALL: the largest setting never reaches the chamber's temperature"
            }
            FurnaceCaution::SteelTooHot { .. } => {
                "STEEL IN THE WALL IS TOO HOT: it scales away and may drop its lining; place it further back"
            }
            FurnaceCaution::LiningOverheats { .. } => {
                "the largest setting, left on, MELTS THE LINING: turn down when the chamber is hot"
            }
            FurnaceCaution::WorkOutOfReach { .. } => {
                "THE WORK ASKS FOR MORE FIRE THAN THIS BURNER GIVES with air enough, so there is no plan of the evening: \
                 give it more time, or a larger jet and blower"
            }
            FurnaceCaution::WorkTooSlow { .. } => {
                "THE WORK TAKES LONGER THAN ASKED, so long in this chamber: give it time or a hotter chamber"
            }
            FurnaceCaution::ZincFume => {
                "brass gives off ZINC FUME, which makes you ill: melt it under a hood and no hotter than it must be"
            }
            FurnaceCaution::Relights { .. } => {
                "after a stop the chamber LIGHTS GAS BY ITSELF so long: close the cylinder, nothing may leak"
            }
            FurnaceCaution::WetLining { .. } => {
                "a fresh lining is wet: hurried, STEAM BURSTS IT; its dust harms the lungs, wear a mask"
            }
            FurnaceCaution::HeavyLining { .. } => "the lining is heavy: lift it with someone who knows how",
            FurnaceCaution::HotShell { .. } => "the shell burns who touches it",
        }
        .into()
    }
}
