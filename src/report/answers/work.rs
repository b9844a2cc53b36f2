//! Heat and time of work.

use std::prelude::rust_2024::*;
use std::{format, vec};

use crate::furnace::work::Melt;
use crate::furnace::{HeatingTime, Method, Substance};
use crate::quantity::{Mass, Power, Temperature};
use crate::report::field::columns;
use crate::report::tree::{Member, Node, Section, Tree};
use crate::report::units::{Kind, Shop};
use crate::report::warnings::WARNINGS;

/// A piece, a charge or a loaded crucible.
pub struct WorkAnswer {
    /// What it is made of.
    pub substance: Substance,
    /// What that was called.
    pub name: String,
    /// How much of it.
    pub mass: Mass,
    /// Where it begins.
    pub from: Temperature,
    /// What it is brought to.
    pub to: Temperature,
    /// Whether a crucible is heated with it.
    pub has_crucible: bool,
    /// Whether a chamber was given.
    pub has_chamber: bool,
    /// Heat, J.
    pub heat: f64,
    /// The same on average, for so many pieces an hour.
    pub mean: Option<Power>,
    /// How a crucible melts it.
    pub melt: Option<Melt>,
    /// How a piece warms.
    pub soak: Option<HeatingTime>,
}

/// The answer; its sentences in these units.
#[must_use]
pub fn tree(answer: &WorkAnswer, shop: &Shop) -> Tree {
    let mut nodes = vec![Node::fields([work(answer)])];
    nodes.extend(said(answer, shop).into_iter().map(Node::Line));
    Tree { section: &ANSWER, csv: None, nodes }
}

fn said(answer: &WorkAnswer, shop: &Shop) -> Vec<String> {
    let with = if answer.has_crucible { ", its crucible's heat counted" } else { "" };
    let mut said = vec![format!(
        "{} of {} from {} to {} takes {}{with}.",
        shop.mass(answer.mass),
        answer.name,
        shop.temperature(answer.from),
        shop.temperature(answer.to),
        shop.text(Kind::Energy, answer.heat)
    )];
    if let Some(mean) = answer.mean {
        said.push(format!("That many pieces an hour take {} on average.", shop.text(Kind::Heat, mean.watts())));
    }
    if let Some(melt) = &answer.melt {
        let mut text = format!("In its crucible it takes {:.0} min in such a chamber", melt.time.minutes());
        if let (Some(begins), Some(melted)) = (melt.melting_begins, melt.melted) {
            text += &format!(", melting from {:.0} to {:.0} min", begins.minutes(), melted.minutes());
        }
        said.push(text + &format!("; it asks {} when it goes in.", shop.text(Kind::Heat, melt.most.watts())));
    }
    if answer.has_chamber && answer.melt.is_none() && answer.soak.is_none() {
        said.push(
            "How long it takes goes by its shape: --plate, --bar, or a crucible's mass, wall and area tell it.".into(),
        );
    }
    if let Some(soak) = &answer.soak {
        let how = if soak.method == Method::Lumped { "warm all through at once" } else { "by conduction inside" };
        said.push(format!(
            "A piece takes {:.1} min until its middle is there, its skin then at {} ({how}, Biot number {:.2}).",
            soak.time.minutes(),
            shop.temperature(soak.surface),
            soak.biot
        ));
    }
    said
}

/// The answer for programs.
pub const ANSWER: Section = Section {
    key: "",
    name: "jetwright work",
    words: "",
    about: "One object.",
    is_many: false,
    members: &[Member::Columns(WORK), Member::Section(&WARNINGS)],
};

columns! {
    /// Heat and time of work.
    pub(crate) WORK, work(answer: &WorkAnswer);
    /// Heat of the charge and its crucible.
    heat_j, "heat", Energy, Programs => answer.heat;
    /// Heat of a kilogram of the charge.
    heat_per_mass_j_per_kg, "heat per mass", HeatPerMass, Programs => answer.substance.heat(answer.from, answer.to);
    /// Heat of one piece times pieces an hour; null without their number.
    average_heat_w, "average heat", Heat, Programs => answer.mean.map(|power| power.watts());
    /// Where it begins to melt.
    melting_begins_k, "melting begins", Temperature, Programs => answer.substance.solidus().kelvin();
    /// Where all is melted.
    all_melted_k, "all melted", Temperature, Programs => answer.substance.liquidus().kelvin();
    /// Time this crucible takes in a chamber kept at its temperature; null without a crucible or a chamber.
    melt_time_s, "melt time", Time, Programs => answer.melt.as_ref().map(|melt| melt.time.seconds());
    /// When a charge in a crucible begins to melt; null without a crucible or when it does not.
    melting_begins_s, "melting begins", Time, Programs => answer.melt.as_ref().and_then(|melt| melt.melting_begins).map(|time| time.seconds());
    /// When all of it is melted; null without a crucible or when it is not.
    all_melted_s, "all melted", Time, Programs => answer.melt.as_ref().and_then(|melt| melt.melted).map(|time| time.seconds());
    /// Time until the middle of a plate or bar is there; null without one.
    piece_time_s, "piece time", Time, Programs => answer.soak.as_ref().map(|soak| soak.time.seconds());
    /// Its skin then; null without a plate or bar.
    piece_surface_k, "piece surface", Temperature, Programs => answer.soak.as_ref().map(|soak| soak.surface.kelvin());
    /// Surface coefficient times volume over area, over conductivity; null without a plate or bar.
    biot_number, "biot number", Number, Programs => answer.soak.as_ref().map(|soak| soak.biot);
}
