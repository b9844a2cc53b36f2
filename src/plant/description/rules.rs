//! The rules of the table held against a description.

use super::Description;
use super::row::{At, Breach, Broken, Otherwise, Presence, Row, Rule, Section};
use crate::limits;
use crate::plant::refusal::{Place, Reason, Refusal};

type Checked = core::result::Result<(), Broken>;

/// A value that the rules of the table have found to be there.
pub(super) fn there<V: Clone>(value: &Option<V>, section: &'static str, key: &'static str) -> Result<V, Refusal> {
    let missing = Place::key(section, key).because(Reason::Rule(Breach::Needed { example: "" }));
    value.clone().ok_or(missing)
}

impl Section {
    /// Calls a function for the place of every one of them that a description has.
    ///
    /// # Errors
    ///
    /// The first that the function returns.
    pub fn each<E>(&self, description: &Description, mut call: impl FnMut(At) -> Result<(), E>) -> Result<(), E> {
        if self.list.is_empty() {
            return (0..(self.count)(description, [0, 0])).try_for_each(|entry| call([entry, 0]));
        }
        let outer = Description::section(self.name).map_or(0, |outer| (outer.count)(description, [0, 0]));
        for entry in 0..outer {
            (0..(self.count)(description, [entry, 0])).try_for_each(|inner| call([entry, inner]))?;
        }
        Ok(())
    }

    /// Where one of them stands, or a key of it as seen from the section.
    #[must_use]
    pub fn place(&self, at: At, key: &'static str) -> Place {
        // No list has more entries than a byte counts.
        let entry = |is_list: bool, index: usize| is_list.then_some(index as u8);
        let is_outer_list = match self.list {
            "" => self.is_list(),
            _ => Description::section(self.name).is_some_and(Section::is_list),
        };
        Place { section: self.name, at: [entry(is_outer_list, at[0]), entry(!self.list.is_empty(), at[1])], key }
    }

    /// Whether a key of it was said, or its list has entries.
    fn says(&self, description: &Description, at: At, key: &str) -> bool {
        match self.row(key) {
            Some(row) => row.is_said(description, at),
            None => Description::list(self.name, key).is_some_and(|list| (list.count)(description, at) > 0),
        }
    }

    fn check(&self, description: &Description, at: At) -> Checked {
        for row in self.rows {
            row.check(description, at)?;
        }
        self.rules.iter().try_for_each(|rule| self.keeps(rule, description, at))
    }

    /// Whether some of its keys go together, where no others can be said.
    ///
    /// # Errors
    ///
    /// [`Refusal`] at the first rule, of those that name no other key, that is broken.
    pub fn check_keys(&self, description: &Description, keys: &[&str]) -> Result<(), Refusal> {
        let is_asked = |rule: &&Rule| match **rule {
            Rule::OneOf(sets) => sets.iter().all(|set| set.iter().all(|key| keys.contains(key))),
            Rule::NotBoth(first, second) => first.iter().chain(second).all(|key| keys.contains(key)),
            Rule::Any(of) | Rule::Together(of) => of.iter().all(|key| keys.contains(key)),
            Rule::Needs(key, other) => keys.contains(&key) && keys.contains(&other),
            Rule::ByWord(key, _) => keys.contains(&key),
            Rule::NeedsSection(..) | Rule::NotBeside(..) => false,
            Rule::Check(_) => true,
        };
        let mut asked = self.rules.iter().filter(is_asked);
        asked
            .try_for_each(|rule| self.keeps(rule, description, [0, 0]))
            .map_err(|Broken { key, breach }| Place::key(self.name, key).because(Reason::Rule(breach)))
    }

    fn keeps(&self, rule: &Rule, description: &Description, at: At) -> Checked {
        let says = |key: &&'static str| self.says(description, at, key);
        let refuse = |key: &'static str, breach: Breach| Err(Broken { key, breach });
        match *rule {
            Rule::OneOf(sets) => self.one_of(sets, description, at),
            Rule::NotBoth(first, second) => {
                match (first.iter().find(|key| says(key)), second.iter().find(|key| says(key))) {
                    (Some(first), Some(second)) => refuse(second, Breach::Beside(first)),
                    _ => Ok(()),
                }
            }
            Rule::Any(keys) if !keys.iter().any(says) => refuse(keys[0], Breach::Any(keys)),
            Rule::Together(keys) => match (keys.iter().any(says), keys.iter().find(|key| !says(key))) {
                (true, Some(missing)) => refuse(missing, Breach::Together(keys)),
                _ => Ok(()),
            },
            Rule::Needs(key, other) if says(&key) && !says(&other) => refuse(key, Breach::Wants(other)),
            Rule::ByWord(key, words) => self.by_word(key, words, description, at),
            Rule::NeedsSection(key, section) => {
                let is_said = key.is_empty() || says(&key);
                let is_there =
                    Description::section(section).is_some_and(|other| (other.count)(description, [0, 0]) > 0);
                if is_said && !is_there { refuse(key, Breach::WantsSection(section)) } else { Ok(()) }
            }
            Rule::NotBeside(key, section) => {
                let is_there =
                    Description::section(section).is_some_and(|other| (other.count)(description, [0, 0]) > 0);
                if is_there && says(&key) { refuse(key, Breach::BesideSection(section)) } else { Ok(()) }
            }
            Rule::Check(check) => check(description, at),
            Rule::Any(_) | Rule::Needs(..) => Ok(()),
        }
    }

    fn one_of(&self, sets: &'static [&'static [&'static str]], description: &Description, at: At) -> Checked {
        let says = |key: &&'static str| self.says(description, at, key);
        let said = || sets.iter().flat_map(|set| set.iter()).filter(|key| says(key));
        // The set that holds all that was said.
        let Some(set) = sets.iter().find(|set| said().all(|key| set.contains(key))) else {
            let last = sets.iter().rev().flat_map(|set| set.iter()).find(|key| says(key));
            return last.map_or(Ok(()), |key| Err(Broken { key, breach: Breach::OneOf(sets) }));
        };
        match (said().next(), set.iter().find(|key| !says(key))) {
            (None, _) => Err(Broken { key: sets[0][0], breach: Breach::OneOf(sets) }),
            (Some(_), Some(missing)) => Err(Broken { key: missing, breach: Breach::Together(set) }),
            (Some(_), None) => Ok(()),
        }
    }

    fn by_word(
        &self,
        key: &'static str,
        words: &'static [(&'static str, &'static [&'static str])],
        description: &Description,
        at: At,
    ) -> Checked {
        let says = |key: &&'static str| self.says(description, at, key);
        let word = self.row(key).and_then(|row| (row.seen)(description, at)).and_then(|held| held.word());
        let Some((word, keys)) = words.iter().find(|(known, _)| Some(*known) == word) else { return Ok(()) };
        let all = words.iter().flat_map(|(_, keys)| keys.iter());
        if let Some(refused) = all.filter(|other| !keys.contains(other)).find(|other| says(other)) {
            return Err(Broken { key: refused, breach: Breach::WordRefuses { key, words } });
        }
        match keys.iter().find(|needed| !says(needed)) {
            Some(missing) => Err(Broken { key: missing, breach: Breach::WordNeeds { key, word } }),
            None => Ok(()),
        }
    }

    /// Whether there are as many as there may be, in the entry named first for a key's list.
    fn check_number(&self, description: &Description, at: At) -> Result<(), Breach> {
        let count = (self.count)(description, at);
        match self.presence {
            Presence::Needed if count == 0 => Err(Breach::SectionNeeded),
            Presence::List { least, most, is_needed } if count < least && (is_needed || count > 0) => {
                Err(Breach::TooFew { least, most })
            }
            _ => Ok(()),
        }
    }
}

impl Row {
    /// Whether it was said.
    #[must_use]
    pub fn is_said(&self, description: &Description, at: At) -> bool {
        (self.seen)(description, at).is_some_and(|held| held.is_said())
    }

    fn check(&self, description: &Description, at: At) -> Checked {
        let refuse = |breach| Err(Broken { key: self.key, breach });
        let Some(held) = (self.seen)(description, at) else { return Ok(()) };
        if self.otherwise == Otherwise::Needed && !held.is_said() {
            return refuse(Breach::Needed { example: self.example.one() });
        }
        if let (Some(number), Some(input)) = (held.number(), (self.kind)().input()) {
            return limits::check(input, number).map_or_else(|error| refuse(Breach::Range(error)), |_| Ok(()));
        }
        Ok(())
    }
}

impl Description {
    /// Whether all that the table asks for is there, in range and goes together.
    ///
    /// # Errors
    ///
    /// [`Refusal`] at the first section and key that is not.
    pub fn check(&self) -> Result<(), Refusal> {
        for section in Self::SECTIONS {
            if section.list.is_empty() {
                let number = section.check_number(self, [0, 0]);
                number.map_err(|breach| Place::section(section.name).because(Reason::Rule(breach)))?;
            }
            section.each(self, |at| {
                for list in section.lists.iter().filter_map(|list| Self::list(section.name, list)) {
                    let number = list.check_number(self, at);
                    number.map_err(|breach| section.place(at, list.list).because(Reason::Rule(breach)))?;
                }
                section.check(self, at).map_err(|Broken { key, breach }| {
                    let place = section.row(key).map_or(key, |row| row.place);
                    section.place(at, place).because(Reason::Rule(breach))
                })
            })?;
        }
        Ok(())
    }

    /// Says what the table takes for what was not said.
    pub fn take_defaults(&mut self) {
        for section in Self::SECTIONS {
            let of = self.clone();
            let taken: Result<(), super::value::Unread> = section.each(&of, |at| {
                section.rows.iter().try_for_each(|row| match row.otherwise {
                    Otherwise::This { value, .. } if !row.is_said(self, at) => {
                        (row.put)(self, at, super::value::Given::Text(value))
                    }
                    _ => Ok(()),
                })
            });
            debug_assert!(taken.is_ok(), "a default of {} does not read", section.name);
        }
    }
}
