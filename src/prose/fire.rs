//! Words of the trade for a fire.

use crate::combustion::{Character, ScaleTendency};

/// What a fire is called by its air ratio.
#[must_use]
pub const fn character_words(character: Character) -> &'static str {
    match character {
        Character::Reducing => "reducing",
        Character::SlightlyReducing => "slightly reducing",
        Character::Neutral => "near neutral",
        Character::SlightlyOxidizing => "slightly oxidizing",
        Character::Oxidizing => "oxidizing",
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

/// The atmosphere of an air ratio in words, given the leanest that burns cold and whether its carbon monoxide is cautioned
/// of. They follow the ratio as it is printed.
///
/// Common practice, no source.
#[must_use]
pub fn fire_words(air_ratio: f64, leanest: f64, poisons: bool) -> &'static str {
    if air_ratio > leanest {
        return "too lean: WILL NOT LIGHT COLD";
    }
    match (Character::of((100.0 * air_ratio).round() / 100.0), poisons) {
        (Character::Reducing, true) => "reducing, makes carbon monoxide",
        (Character::SlightlyReducing, true) => "slightly reducing, makes carbon monoxide",
        (Character::Neutral, true) => "near neutral, makes carbon monoxide",
        (Character::SlightlyOxidizing, true) => "slightly oxidizing, makes carbon monoxide",
        (Character::Oxidizing, true) => "oxidizing, makes carbon monoxide",
        (character, false) => character_words(character),
    }
}

#[cfg(test)]
mod tests {
    use super::fire_words;

    #[test]
    fn a_fire_makes_carbon_monoxide_in_words_where_it_is_cautioned_of() {
        for hundredths in 90..140 {
            for poisons in [false, true] {
                let words = fire_words(f64::from(hundredths) / 100.0, 1.6, poisons);
                assert_eq!(words.contains("carbon monoxide"), poisons, "{hundredths}: {words}");
                assert_eq!(words.contains("reducing"), hundredths < 97, "{hundredths}: {words}");
                assert!(!words.contains("clean"), "{hundredths}: {words}");
            }
        }
    }
}
