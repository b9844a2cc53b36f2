//! What a case does with its furnace.

use std::format;
use std::prelude::rust_2024::*;

use serde_json::Value;

use super::contents::content;
use super::keyed::{Keyed, Read, refused};
use crate::furnace::coupled::{Content, Drive, LONGEST, Until};

/// Most stages of a case.
const STAGE_CAP: usize = 1000;
/// Coldest and hottest temperature that ends a stage or is kept, K.
const COLDEST: f64 = 200.0;
const HOTTEST: f64 = 4000.0;
/// Largest fire, W, and largest flow of air, kg/s.
const LARGEST_FIRE: f64 = 1e8;
const LARGEST_FLOW: f64 = 1e3;
const ENDS: [&str; 4] = ["for", "until_chamber_rises_to", "until_chamber_falls_to", "until_core_rises_to"];
const KINDS: &str = "\"fire\", \"hold\", \"air\", \"off\", \"put\" or \"take\"";

/// What is done.
pub enum Act {
    /// Something is put in.
    Put(Box<Content>),
    /// What was put in last is taken out.
    Take,
    /// Time passes: its name, what drives it, its end.
    Run(&'static str, Drive, Until),
}

/// One stage and where it stands.
pub struct Stage {
    pub path: String,
    pub act: Act,
}

fn until(stage: &Keyed<'_>) -> Read<Until> {
    let key = stage.one_of(&ENDS)?;
    let kelvin = || stage.number(key, COLDEST, HOTTEST);
    Ok(match key {
        "for" => Until::Time(stage.number(key, 0.0, LONGEST)?),
        "until_chamber_rises_to" => Until::ChamberRisesTo(kelvin()?),
        "until_chamber_falls_to" => Until::ChamberFallsTo(kelvin()?),
        _ => Until::CoreRisesTo(kelvin()?),
    })
}

fn stage(path: String, value: &Value, volume: f64) -> Read<Stage> {
    let named = |keys: &[&'static str]| -> Read<Keyed<'_>> {
        let all: Vec<&str> = ["do"].iter().chain(keys).copied().collect();
        Keyed::of(value, path.clone(), &all)
    };
    let lasting = |keys: &[&'static str]| {
        let all: Vec<&'static str> = keys.iter().chain(&ENDS).copied().collect();
        named(&all)
    };
    let everything = ["fire", "leak", "set", "most", "air", "draft", "content"];
    let kind = lasting(&everything)?.text("do", KINDS)?;
    let act = match kind {
        "fire" => {
            let stage = lasting(&["fire", "leak"])?;
            let heat = stage.number("fire", 0.0, LARGEST_FIRE)?;
            let leak = stage.optional("leak", 0.0, LARGEST_FLOW)?.unwrap_or(0.0);
            Act::Run("fire", Drive::Fire { heat, leak }, until(&stage)?)
        }
        "hold" => {
            let stage = lasting(&["set", "most"])?;
            let chamber = stage.number("set", COLDEST, HOTTEST)?;
            let most = stage.number("most", 0.0, LARGEST_FIRE)?;
            Act::Run("hold", Drive::Keep { chamber, fire: (0.0, most) }, until(&stage)?)
        }
        "air" => {
            let stage = lasting(&["air", "draft"])?;
            let flow = stage.number("air", 0.0, LARGEST_FLOW)?;
            Act::Run("air", Drive::Air { flow, draft: stage.flag("draft")? }, until(&stage)?)
        }
        "off" => {
            let stage = lasting(&["draft"])?;
            Act::Run("off", Drive::Off { draft: stage.flag("draft")? }, until(&stage)?)
        }
        "put" => {
            let stage = named(&["content"])?;
            let content = content(stage.needed("content", "a bar, a crucible or a lump")?, stage.at("content"))?;
            if content.volume >= volume {
                let given = format!("{:.4e} m3", content.volume);
                return Err(refused(&stage.at("content"), &given, &format!("less than the chamber, {volume} m3")));
            }
            Act::Put(Box::new(content))
        }
        "take" => {
            named(&[])?;
            Act::Take
        }
        _ => return Err(refused(&format!("{path}.do"), &format!("{kind:?}"), KINDS)),
    };
    Ok(Stage { path: path.clone(), act })
}

/// The stages of a case.
pub fn stages(case: &Keyed<'_>, volume: f64) -> Read<Vec<Stage>> {
    case.list("stages", 1, STAGE_CAP)?.into_iter().map(|(path, value)| stage(path, value, volume)).collect()
}
