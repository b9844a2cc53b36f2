//! The panels of a chamber added up, and the castable to pour.

use std::prelude::rust_2024::*;

use crate::furnace::{Lining, TakeOff};
use crate::plant::entries::FurnaceEntry;
use crate::plant::furnace::CastableBlock;
use crate::quantity::Mass;
use crate::report::field::columns;
use crate::report::furnace::{castable, lining_words};
use crate::report::furnace_fields::{CASTABLE, castable_node};
use crate::report::tree::{Member, Node, Page, Section, Tree};
use crate::report::units::Shop;
use crate::report::warnings::WARNINGS;

/// A lining as it was described.
pub struct LiningRow<'s> {
    /// The lining.
    pub lining: &'s Lining,
    /// What was said of it.
    pub entry: &'s FurnaceEntry,
    /// The castable to pour.
    pub castable: Option<&'s CastableBlock>,
}

impl LiningRow<'_> {
    fn sum(&self) -> &TakeOff {
        self.lining.take_off()
    }

    fn mass(&self) -> Mass {
        self.lining.mass(self.entry.layers[0].material.density())
    }
}

/// The answer; its sentences in these units.
#[must_use]
pub fn tree(answer: &LiningRow<'_>, shop: &Shop) -> Tree {
    let mut page = Page::default();
    page.push(Node::fields([panels(answer)]));
    for line in lining_words(answer.lining, answer.entry, shop) {
        page.push(Node::Line(line));
    }
    if let Some(block) = answer.castable {
        castable(&mut page, block, shop);
        page.push(castable_node(block));
    }
    Tree { section: &ANSWER, csv: None, nodes: page.done() }
}

/// The answer for programs.
pub const ANSWER: Section = Section {
    key: "",
    name: "jetwright lining",
    words: "",
    about: "One object; CSV has no castable.",
    is_many: false,
    members: &[Member::Columns(PANELS), Member::Section(&CASTABLE), Member::Section(&WARNINGS)],
};

columns! {
    /// The panels added up.
    pub(crate) PANELS, panels(answer: &LiningRow<'_>);
    hot_area_m2, "hot area", Area, Programs => answer.sum().hot_area.square_meters();
    /// Area of all openings.
    opening_area_m2, "opening area", Area, Programs => answer.sum().opening_area.square_meters();
    chamber_volume_m3, "chamber volume", Volume, Programs => answer.sum().chamber_volume;
    lining_volume_m3, "lining volume", Volume, Programs => answer.sum().lining_volume;
    /// All panels made of the hot layer's material.
    lining_mass_kg, "lining mass", Mass, Programs => answer.mass().kilograms();
}
