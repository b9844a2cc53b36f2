//! Words of the trade for a fire.

use crate::combustion::{Character, ScaleTendency};

/// What a fire is called by its air ratio.
#[must_use]
pub const fn character_words(character: Character) -> &'static str {
    match character {
        Character::Reducing => "reducing",
        Character::SlightlyReducing => "slightly reducing",
        Character::Neutral => "neutral",
        Character::SlightlyOxidizing => "slightly oxidising",
        Character::Oxidizing => "oxidising",
    }
}

/// How fast steel scales, in one word.
#[must_use]
pub const fn scale_word(tendency: ScaleTendency) -> &'static str {
    match tendency {
        ScaleTendency::Bright => "none",
        ScaleTendency::Slow => "slow",
        ScaleTendency::Fast => "fast",
    }
}

/// What that looks like.
#[must_use]
pub const fn scale_words(tendency: ScaleTendency) -> &'static str {
    match tendency {
        ScaleTendency::Bright => "stays bright: the gas takes oxygen from iron",
        ScaleTendency::Slow => "scales slowly, by carbon dioxide and steam: there is no free oxygen",
        ScaleTendency::Fast => "scales fast: there is free oxygen",
    }
}
