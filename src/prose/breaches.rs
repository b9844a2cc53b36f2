//! Which keys go together and which values go with each other, where they do not.

use std::format;
use std::prelude::rust_2024::*;
use std::vec::Vec;

use crate::furnace::MATERIALS;
use crate::plant::description::Breach;
use crate::prose::advice;

/// How a key is spelled to whoever gave it: as in a file, or as an option.
type Spell<'a> = &'a dyn Fn(&str) -> String;

/// What is accepted instead of a breach of the table's rules; `spell` says how a key is written where it was given.
///
/// # Examples
///
/// ```
/// use jetwright::plant::description::Breach;
/// use jetwright::prose::breaches::breach_words;
/// let breach = Breach::OneOf(&[&["bore"], &["drill"]]);
/// assert_eq!(breach_words(&breach, &|key| key.into()), "accepted is bore or drill, one of the two");
/// ```
#[must_use]
pub fn breach_words(breach: &Breach, spell: Spell<'_>) -> String {
    match *breach {
        Breach::Range(ref error) => advice(error),
        Breach::SectionNeeded => "this section is needed".into(),
        Breach::Needed { example } => format!("this is needed, such as \"{example}\""),
        Breach::TooFew { least, most } => format!("accepted are {least} to {most}"),
        Breach::OneOf(sets) => {
            let accepted: Vec<_> = sets.iter().map(|set| all(set, spell)).collect();
            format!(
                "accepted is {}, one of {}",
                joined(&accepted, "or"),
                if sets.len() == 2 { "the two" } else { "them" }
            )
        }
        Breach::Any(keys) => format!("accepted are {}, or several of them", listed(keys, "or", spell)),
        Breach::Together(keys) => format!("it is needed, since {} go together", listed(keys, "and", spell)),
        Breach::Wants(key) => format!("it needs {} beside it", spell(key)),
        Breach::Beside(key) => format!("not both, {} stands here already", spell(key)),
        Breach::WordNeeds { key, word } => format!("it is needed where {} is \"{word}\"", spell(key)),
        Breach::WordRefuses { key, words } => {
            let words: Vec<_> = words
                .iter()
                .map(|(word, keys)| match keys {
                    [] => format!("\"{word}\" alone"),
                    keys => format!("\"{word}\" with {}", listed(keys, "and", spell)),
                })
                .collect();
            format!("it does not go with this {}; accepted are {}", spell(key), joined(&words, "or"))
        }
        Breach::WantsSection(section) => format!("it needs a section [{section}] beside it"),
        Breach::BesideSection(section) => format!("not both, the section [{section}] tells it already"),
        Breach::MustRise => "it must rise from point to point".into(),
        Breach::MustNotRise => "the pressure must not rise with the flow".into(),
        Breach::FirstFlows => "the first point is without flow, accepted is 0 kg/h".into(),
        Breach::EveryPoint => "accepted is a power at every point or at none".into(),
        Breach::PointsTellIt => "the points give the power already, accepted is one of the two".into(),
        Breach::UseTwice => "another setting has this use already, accepted is one of each".into(),
        Breach::NameTwice => "another setting has this name already".into(),
        Breach::MoreThanHeld => "accepted is up to the capacity of the cylinder".into(),
        Breach::NotOutside => "accepted is more than the inside diameter".into(),
        Breach::NoSuchMaterial => {
            let known: Vec<_> = MATERIALS.iter().map(|data| data.key).collect();
            let own = "a name of your own with density, conductivity, specific_heat and limit";
            format!("accepted are {}; or {own}", known.join(", "))
        }
    }
}

fn all(keys: &[&str], spell: Spell<'_>) -> String {
    match keys {
        [key] => spell(key),
        keys => format!("{} together", listed(keys, "and", spell)),
    }
}

fn listed(keys: &[&str], last: &str, spell: Spell<'_>) -> String {
    joined(&keys.iter().map(|key| spell(key)).collect::<Vec<_>>(), last)
}

fn joined(parts: &[String], last: &str) -> String {
    match parts {
        [] => String::new(),
        [only] => only.clone(),
        [first @ .., end] => format!("{} {last} {end}", first.join(", ")),
    }
}
