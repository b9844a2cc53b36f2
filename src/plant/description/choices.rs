//! Inputs that are one of a few words.

use super::value::Choice;
use crate::air::{BlowerKind, DamperKind};
use crate::furnace::room::{AirLimit, CARBON_MONOXIDE_LIMITS};
use crate::furnace::{STEELS, SUBSTANCES, SteelGrade};
use crate::measure::DialClass;
use crate::orifice::DrillList;
use crate::plant::entries::{DAMPER_WORDS, EdgeWord, Use};

impl Choice for EdgeWord {
    fn nth(place: usize) -> Option<(&'static str, Self)> {
        Self::WORDS.get(place).copied()
    }
}

impl Choice for Use {
    fn nth(place: usize) -> Option<(&'static str, Self)> {
        Self::WORDS.get(place).copied()
    }
}

impl Choice for DamperKind {
    fn nth(place: usize) -> Option<(&'static str, Self)> {
        DAMPER_WORDS.get(place).copied()
    }
}

impl Choice for DrillList {
    fn nth(place: usize) -> Option<(&'static str, Self)> {
        const WORDS: [&str; DrillList::ALL.len()] = ["number", "letter", "fractional", "metric", "tips"];
        Some((*WORDS.get(place)?, *Self::ALL.get(place)?))
    }
}

impl Choice for BlowerKind {
    fn nth(place: usize) -> Option<(&'static str, Self)> {
        Self::WORDS.get(place).copied()
    }
}

impl Choice for DialClass {
    fn nth(place: usize) -> Option<(&'static str, Self)> {
        Self::NAMED.get(place).copied()
    }
}

impl Choice for &'static SteelGrade {
    fn nth(place: usize) -> Option<(&'static str, Self)> {
        STEELS.get(place).map(|grade| (grade.key, grade))
    }
}

impl Choice for &'static AirLimit {
    fn nth(place: usize) -> Option<(&'static str, Self)> {
        CARBON_MONOXIDE_LIMITS.get(place).map(|limit| (limit.key, limit))
    }
}

/// A substance by its name.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SubstanceWord(
    /// The name as it was given.
    pub &'static str,
);

impl Choice for SubstanceWord {
    fn nth(place: usize) -> Option<(&'static str, Self)> {
        let other_spelling = (place == SUBSTANCES.len()).then_some("aluminium");
        SUBSTANCES.get(place).map(|data| data.key).or(other_spelling).map(|word| (word, Self(word)))
    }
}

/// What a panel is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PanelWord {
    /// A whole cylinder.
    Cylinder,
    /// Half a cylinder.
    HalfRound,
    /// A box open in front.
    Box,
    /// A flat panel.
    Flat,
    /// A flat panel that opens.
    Door,
    /// Loose brick in a doorway.
    Courses,
    /// An opening.
    Opening,
}

impl Choice for PanelWord {
    fn nth(place: usize) -> Option<(&'static str, Self)> {
        const WORDS: [(&str, PanelWord); 7] = [
            ("cylinder", PanelWord::Cylinder),
            ("half round", PanelWord::HalfRound),
            ("box", PanelWord::Box),
            ("flat", PanelWord::Flat),
            ("door", PanelWord::Door),
            ("courses", PanelWord::Courses),
            ("opening", PanelWord::Opening),
        ];
        WORDS.get(place).copied()
    }
}

/// Whether the gauge is the one that a weighing read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SameGauge {
    /// It is.
    Same,
    /// It is another one.
    Other,
}

impl Choice for SameGauge {
    fn nth(place: usize) -> Option<(&'static str, Self)> {
        [("same", Self::Same), ("other", Self::Other)].get(place).copied()
    }
}
