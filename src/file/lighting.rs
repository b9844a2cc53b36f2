//! The section of a burner file about its lighting: what was seen of it, and the chamber it lights.

use crate::file::burner_file::{optional, ranged};
use crate::file::document::Section;
use crate::file::error::FileError;
use crate::file::keys::LIGHTING;
use crate::limits::Input;
use crate::plant::entries::LightingEntry;

/// The lighting; none without its section.
///
/// # Errors
///
/// [`FileError`] at the first field that is wrong.
pub fn read_lighting(
    root: &Section<'_>,
    has_air: bool,
    has_damper: bool,
    has_furnace: bool,
) -> Result<Option<LightingEntry>, FileError> {
    let Some(section) = root.section("lighting", LIGHTING)? else { return Ok(None) };
    if !has_air {
        return Err(root.refuse("lighting", "lighting needs the sections [blower] and [head] beside it"));
    }
    let entry = LightingEntry {
        lights_at: ranged(&section, "lights_at", Input::GaugePressure)?,
        damper: optional(&section, "damper", |field| field.share(Input::DamperOpening))?,
        chamber_volume: ranged(&section, "chamber_volume", Input::ChamberVolume)?,
        glow_loss: ranged(&section, "glow_loss", Input::GlowLoss)?,
    };
    if entry.damper.is_some() && !has_damper {
        return Err(section.refuse("damper", "a damper opening needs a section [damper]"));
    }
    if entry.damper.is_some() && entry.lights_at.is_none() {
        return Err(section.refuse("damper", "it needs the gauge that was seen beside it, lights_at"));
    }
    if has_furnace && (entry.chamber_volume.is_some() || entry.glow_loss.is_some()) {
        let key = if entry.chamber_volume.is_some() { "chamber_volume" } else { "glow_loss" };
        return Err(section.refuse(key, "the layers and panels tell it already, accepted is one of the two"));
    }
    section.finish()?;
    Ok(Some(entry))
}
