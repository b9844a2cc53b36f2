//! What a case puts into the chamber.

use std::format;
use std::prelude::rust_2024::*;

use serde_json::Value;

use super::keyed::{Keyed, Read, refused};
use super::walls::plain;
use crate::furnace::coupled::{Chain, Content, Medium, Metal};
use crate::furnace::{SUBSTANCES, Substance};

const KINDS: &str = "\"bar\", \"crucible\" or \"lump\"";
const ALL: &[&str] = &[
    "kind",
    "diameter",
    "length",
    "emissivity",
    "substance",
    "rho_k_c",
    "crucible_mass",
    "wall",
    "k_wall",
    "c_wall",
    "area",
    "volume",
    "inner_h",
    "charge",
    "charge_mass",
    "mass",
    "c",
];
const BAR: &[&str] = &["kind", "diameter", "length", "emissivity", "substance", "rho_k_c"];
const CRUCIBLE: &[&str] = &[
    "kind",
    "crucible_mass",
    "wall",
    "k_wall",
    "c_wall",
    "area",
    "emissivity",
    "volume",
    "inner_h",
    "charge",
    "charge_mass",
];
const LUMP: &[&str] = &["kind", "mass", "c", "area", "emissivity", "volume"];
/// Name and numbers of the metal of a case without a substance: invented, in round numbers.
const SIMPLE_MELT: &str = "simple melt";
const SIMPLE: Metal = Metal { solid: 400.0, melting: (1270.0, 1280.0), latent: 200e3, liquid: 500.0 };
/// What a crucible is made of where the case does not say.
const CRUCIBLE_WALL: &str = "clay graphite";

fn substance(part: &Keyed<'_>, key: &str) -> Read<Medium> {
    let mut names: Vec<&str> = SUBSTANCES.iter().map(|data| data.key).collect();
    if key == "charge" {
        names.push(SIMPLE_MELT);
    }
    let accepted = names.join(", ");
    let name = part.text(key, &accepted)?;
    if key == "charge" && name == SIMPLE_MELT {
        return Ok(Medium::Metal(SIMPLE));
    }
    let unknown = || refused(&part.at(key), &format!("{name:?}"), &accepted);
    Substance::named(name).map(Medium::Substance).ok_or_else(unknown)
}

fn bar(bar: &Keyed<'_>) -> Read<Content> {
    let (diameter, length) = (bar.number("diameter", 1e-4, 10.0)?, bar.number("length", 1e-4, 100.0)?);
    let medium =
        if bar.one_of(&["substance", "rho_k_c"])? == "substance" { substance(bar, "substance")? } else { plain(bar)? };
    let around = core::f64::consts::PI * diameter * length;
    Ok(Content {
        chain: Chain::bar(&medium, diameter, length),
        area: around,
        emissivity: bar.number("emissivity", 0.01, 1.0)?,
        volume: 0.25 * around * diameter,
    })
}

fn crucible(crucible: &Keyed<'_>) -> Read<Content> {
    let (area, mass) = (crucible.number("area", 1e-6, 1e3)?, crucible.number("crucible_mass", 1e-6, 1e6)?);
    let thickness = crucible.number("wall", 1e-5, 1.0)?;
    let wall = if crucible.has("k_wall") || crucible.has("c_wall") {
        // The mass is given as such, so the density counts for nothing.
        Medium::Plain(1.0, crucible.number("k_wall", 1e-4, 1e5)?, crucible.number("c_wall", 1.0, 1e6)?)
    } else {
        let unknown = || refused(&crucible.path, "no k_wall", "k_wall and c_wall");
        Medium::Substance(Substance::named(CRUCIBLE_WALL).ok_or_else(unknown)?)
    };
    let charge = substance(crucible, "charge")?;
    let (inside, filled) = (crucible.number("inner_h", 1e-3, 1e7)?, crucible.number("charge_mass", 1e-6, 1e6)?);
    Ok(Content {
        chain: Chain::crucible(&wall, mass, thickness, area, inside, &charge, filled),
        area,
        emissivity: crucible.number("emissivity", 0.01, 1.0)?,
        volume: crucible.number("volume", 0.0, 1e4)?,
    })
}

fn lump(lump: &Keyed<'_>) -> Read<Content> {
    let (mass, heat) = (lump.number("mass", 1e-6, 1e6)?, lump.number("c", 1.0, 1e6)?);
    Ok(Content {
        chain: Chain::lump(&Medium::Plain(1.0, 1.0, heat), mass),
        area: lump.number("area", 1e-6, 1e3)?,
        emissivity: lump.number("emissivity", 0.01, 1.0)?,
        volume: lump.number("volume", 0.0, 1e4)?,
    })
}

/// The content of a stage.
pub fn content(value: &Value, path: String) -> Read<Content> {
    let kind = Keyed::of(value, path.clone(), ALL)?.text("kind", KINDS)?;
    match kind {
        "bar" => bar(&Keyed::of(value, path, BAR)?),
        "crucible" => crucible(&Keyed::of(value, path, CRUCIBLE)?),
        "lump" => lump(&Keyed::of(value, path, LUMP)?),
        _ => Err(refused(&format!("{path}.kind"), &format!("{kind:?}"), KINDS)),
    }
}
