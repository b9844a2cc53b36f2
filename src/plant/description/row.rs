//! What the table of inputs says of a section and of a key.

use super::Description;
use super::value::{Given, Held, Kind, Unread};
use crate::error::Error;

/// Entry of a section's list, then entry of a key's list within it, from 0; 0 where there is no list.
pub type At = [usize; 2];

/// How often a section stands in a description.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Presence {
    /// Always, whether it is written or not: the keys before the first section, and sections of defaults.
    Always,
    /// Once, and it is needed.
    Needed,
    /// Once or not at all.
    Optional,
    /// So many times.
    List {
        /// At least, where it is there at all.
        least: usize,
        /// At most.
        most: usize,
        /// Whether it may not be left out.
        is_needed: bool,
    },
}

/// What holds where a key is left out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Otherwise {
    /// It may not be.
    Needed,
    /// Nothing: the input is one of several ways, or what it tells stays unknown.
    Nothing,
    /// This value.
    This {
        /// As it is written.
        value: &'static str,
        /// Who says so.
        source: &'static str,
    },
    /// That of another key, given by its path.
    Of(&'static str),
    /// What a sentence says.
    Rule(&'static str),
}

/// What the blank file shows of a key.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Example {
    /// Values in use, one for each entry of a list; an empty one is left out.
    Used(&'static [&'static str]),
    /// A remark to be taken up.
    Offered(&'static str),
}

impl Example {
    /// One value.
    #[must_use]
    pub fn one(self) -> &'static str {
        match self {
            Example::Offered(value) => value,
            Example::Used(values) => values.iter().find(|value| !value.is_empty()).unwrap_or(&""),
        }
    }
}

/// What holds between the keys of a section.
#[derive(Clone, Copy, Debug)]
pub enum Rule {
    /// One of these sets of keys, whole, and no other key of them. Where two meet, the later one is refused.
    OneOf(&'static [&'static [&'static str]]),
    /// No key of the first with one of the second, which is refused.
    NotBoth(&'static [&'static str], &'static [&'static str]),
    /// At least one of these keys.
    Any(&'static [&'static str]),
    /// All of these keys or none.
    Together(&'static [&'static str]),
    /// A key wants another one beside it.
    Needs(&'static str, &'static str),
    /// Each word of a key wants these keys, and of all keys named here no other.
    ByWord(&'static str, &'static [(&'static str, &'static [&'static str])]),
    /// A key, or the whole section where it is empty, wants another section.
    NeedsSection(&'static str, &'static str),
    /// A key has no place beside another section.
    NotBeside(&'static str, &'static str),
    /// What compares values; names the key that is refused.
    Check(fn(&Description, At) -> Result<(), Broken>),
}

/// A key whose value does not go with the others, and why.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Broken {
    /// The key.
    pub key: &'static str,
    /// Why.
    pub breach: Breach,
}

/// Which rule a description breaks.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum Breach {
    /// A range is broken.
    Range(Error),
    /// The section is needed.
    SectionNeeded,
    /// The key is needed.
    Needed {
        /// As it might be written.
        example: &'static str,
    },
    /// There are fewer than so many.
    TooFew {
        /// The least.
        least: usize,
        /// The most.
        most: usize,
    },
    /// Nothing, or more than one, of these sets of keys is given.
    OneOf(&'static [&'static [&'static str]]),
    /// At least one of these keys is needed.
    Any(&'static [&'static str]),
    /// This key is missing, which goes with those given.
    Together(&'static [&'static str]),
    /// It wants another key beside it.
    Wants(&'static str),
    /// It has no place beside another key.
    Beside(&'static str),
    /// It is missing where a key is this word.
    WordNeeds {
        /// The key.
        key: &'static str,
        /// Its word.
        word: &'static str,
    },
    /// It does not go with the word of this key.
    WordRefuses {
        /// The key.
        key: &'static str,
        /// What each of its words wants.
        words: &'static [(&'static str, &'static [&'static str])],
    },
    /// It wants another section.
    WantsSection(&'static str),
    /// Another section tells it already.
    BesideSection(&'static str),
    /// It must rise from entry to entry.
    MustRise,
    /// It must not rise with the flow.
    MustNotRise,
    /// The first point is without flow.
    FirstFlows,
    /// It is at every point or at none.
    EveryPoint,
    /// The points tell it already.
    PointsTellIt,
    /// Another entry has this name.
    NameTwice,
    /// Another setting has this use.
    UseTwice,
    /// More gas is left than the cylinder holds.
    MoreThanHeld,
    /// The outside is not larger than the inside.
    NotOutside,
    /// No material of this name is known.
    NoSuchMaterial,
}

/// A key of a section.
#[derive(Debug)]
pub struct Row {
    /// The key.
    pub key: &'static str,
    /// The key as seen from its section: behind that of its list, if it is in one.
    pub place: &'static str,
    /// The command's option, without its dashes, where it is not the key.
    pub option: Option<&'static str>,
    /// What it holds.
    pub kind: fn() -> Kind,
    /// What holds where it is left out.
    pub otherwise: Otherwise,
    /// What the blank file shows.
    pub example: Example,
    /// What it is, in sentences; a line each.
    pub help: &'static [&'static str],
    /// Reads what was given into the field; nothing where the section is not there.
    pub put: fn(&mut Description, At, Given<'_>) -> Result<(), Unread>,
    /// The field; none where the section is not there.
    pub seen: fn(&Description, At) -> Option<&dyn Held>,
}

/// A section, or a list that a key of a section holds.
#[derive(Debug)]
pub struct Section {
    /// The section; empty before the first one.
    pub name: &'static str,
    /// The key whose list this is; empty for the section itself.
    pub list: &'static str,
    /// What it is, in sentences; a line each.
    pub help: &'static [&'static str],
    /// How often it stands there.
    pub presence: Presence,
    /// Its keys.
    pub rows: &'static [Row],
    /// Keys of it that hold lists.
    pub lists: &'static [&'static str],
    /// What holds between its keys.
    pub rules: &'static [Rule],
    /// How many there are; of a key's list, in the entry named first.
    pub count: fn(&Description, At) -> usize,
    /// Makes one at this place, which is the next one of a list; whether there was room.
    pub add: fn(&mut Description, At) -> bool,
}

impl Section {
    /// Its key of this name.
    #[must_use]
    pub fn row(&self, key: &str) -> Option<&'static Row> {
        self.rows.iter().find(|row| row.key == key)
    }

    /// Whether it is a list.
    #[must_use]
    pub fn is_list(&self) -> bool {
        matches!(self.presence, Presence::List { .. })
    }

    /// Most of them.
    #[must_use]
    pub fn most(&self) -> usize {
        if let Presence::List { most, .. } = self.presence { most } else { 1 }
    }

    /// Every key in it.
    pub fn keys(&self) -> impl Iterator<Item = &'static str> {
        self.lists.iter().copied().chain(self.rows.iter().map(|row| row.key))
    }
}

/// Whether every key that a rule names is a key of its section; checked as the table is compiled.
pub(super) const fn names_keys(rows: &[Row], lists: &[&str], rules: &[Rule]) -> bool {
    let mut at = 0;
    while at < rules.len() {
        let is_known = match rules[at] {
            Rule::OneOf(sets) => all_sets(rows, lists, sets),
            Rule::NotBoth(first, second) => all(rows, lists, first) && all(rows, lists, second),
            Rule::Any(keys) | Rule::Together(keys) => all(rows, lists, keys),
            Rule::Needs(key, other) => all(rows, lists, &[key, other]),
            Rule::ByWord(key, words) => {
                let mut is_known = all(rows, lists, &[key]);
                let mut word = 0;
                while word < words.len() {
                    is_known = is_known && all(rows, lists, words[word].1);
                    word += 1;
                }
                is_known
            }
            Rule::NeedsSection(key, _) => key.is_empty() || all(rows, lists, &[key]),
            Rule::NotBeside(key, _) => all(rows, lists, &[key]),
            Rule::Check(_) => true,
        };
        if !is_known {
            return false;
        }
        at += 1;
    }
    true
}

const fn all_sets(rows: &[Row], lists: &[&str], sets: &[&[&str]]) -> bool {
    let mut at = 0;
    while at < sets.len() {
        if !all(rows, lists, sets[at]) {
            return false;
        }
        at += 1;
    }
    true
}

const fn all(rows: &[Row], lists: &[&str], keys: &[&str]) -> bool {
    let mut at = 0;
    while at < keys.len() {
        let mut is_known = false;
        let mut row = 0;
        while row < rows.len() {
            is_known = is_known || same(rows[row].key, keys[at]);
            row += 1;
        }
        let mut list = 0;
        while list < lists.len() {
            is_known = is_known || same(lists[list], keys[at]);
            list += 1;
        }
        if !is_known {
            return false;
        }
        at += 1;
    }
    true
}

/// A key without the mark that a word of the language needs.
pub(super) const fn plain(key: &'static str) -> &'static str {
    let [b'r', b'#', rest @ ..] = key.as_bytes() else { return key };
    match core::str::from_utf8(rest) {
        Ok(key) => key,
        Err(_) => key,
    }
}

const fn same(one: &str, other: &str) -> bool {
    let (one, other) = (one.as_bytes(), other.as_bytes());
    if one.len() != other.len() {
        return false;
    }
    let mut at = 0;
    while at < one.len() {
        if one[at] != other[at] {
            return false;
        }
        at += 1;
    }
    true
}
