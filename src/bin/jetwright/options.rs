//! Options that are rows of the table of inputs: their names, their help, their ranges and what goes together.

use std::marker::PhantomData;

use clap::builder::{PossibleValuesParser, ValueParser};
use clap::{Arg, ArgAction, ArgMatches, Args, Command, FromArgMatches};
use jetwright::plant::Reason;
use jetwright::plant::description::value::{Given, Kind};
use jetwright::plant::description::{Breach, Description, Otherwise, Row, Section};
use jetwright::prose::breaches::breach_words;

use crate::command_error::CommandError;

/// A key that a command offers as an option.
#[derive(Clone, Copy, Debug)]
pub struct Offer {
    key: &'static str,
    without: Without,
    is_many: bool,
}

impl Offer {
    /// It may be given several times.
    pub const fn many(self) -> Self {
        Self { is_many: true, ..self }
    }
}

/// What a command does without an option.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Without {
    /// What the table says.
    Table,
    /// It takes this value.
    Value(&'static str),
    /// It does what these words say.
    Words(&'static str),
    /// Nothing.
    Refuse,
}

/// A key that may be left out as the table says.
pub const fn offer(key: &'static str) -> Offer {
    Offer { key, without: Without::Table, is_many: false }
}

/// A key for which the command takes a value of its own.
pub const fn usually(key: &'static str, value: &'static str) -> Offer {
    Offer { key, without: Without::Value(value), is_many: false }
}

/// A key without which the command does something of its own.
pub const fn unless(key: &'static str, words: &'static str) -> Offer {
    Offer { key, without: Without::Words(words), is_many: false }
}

/// A key that the command needs, whatever the table says.
pub const fn needed(key: &'static str) -> Offer {
    Offer { key, without: Without::Refuse, is_many: false }
}

/// Keys of one section that a command offers.
pub trait Part: Send + Sync + 'static {
    /// The section's struct.
    type Given: Default + Clone;
    /// The section.
    const SECTION: Section;
    /// Heading of the options in help.
    const HEADING: Option<&'static str>;
    /// The keys.
    const OFFERED: &'static [Offer];
    /// The section of a description.
    fn of(description: &Description) -> Option<&Self::Given>;
}

/// What the options of a part said.
#[derive(Clone, Debug)]
pub struct Asked<P> {
    /// Of an option given several times, the first.
    said: Box<Description>,
    /// Each value of an option that may be given several times.
    each: Vec<(&'static str, Vec<String>)>,
    part: PhantomData<P>,
}

impl<P: Part> Asked<P> {
    /// What was said, the command's own defaults included, once it goes together.
    pub fn checked(&self) -> Result<P::Given, CommandError> {
        let offered: Vec<_> = P::OFFERED.iter().map(|offer| offer.key).collect();
        P::SECTION.check_keys(&self.said, &offered).map_err(|refusal| {
            let Reason::Rule(breach) = refusal.reason else { return CommandError::from(refusal) };
            let option = |key: &str| P::SECTION.row(key).map_or(key.into(), name);
            let told = CommandError::option(&option(refusal.place.key), breach_words(&breach, &|key| option(key)));
            match breach {
                Breach::MoreThanHeld => told.beside("capacity", 0).into(),
                _ => told.into(),
            }
        })?;
        Ok(self.given())
    }

    /// What was said, each by itself in range.
    pub fn given(&self) -> P::Given {
        P::of(&self.said).cloned().unwrap_or_default()
    }

    /// All values of an option that may be given several times, in their order.
    pub fn every<V>(&self, key: &str, held: impl Fn(&P::Given) -> Option<V>) -> Vec<V> {
        let Some(row) = P::SECTION.row(key) else { return vec![] };
        let texts = self.each.iter().filter(|(known, _)| *known == key).flat_map(|(_, texts)| texts);
        let read = |text: &String| {
            let mut said = self.said.clone();
            (row.put)(&mut said, [0, 0], Given::Text(text)).ok()?;
            held(P::of(&said)?)
        };
        texts.filter_map(read).collect()
    }
}

/// A value that the parser has seen to: a needed one, or one with a default.
pub fn there<V>(value: Option<V>, option: &str) -> Result<V, CommandError> {
    value.ok_or_else(|| CommandError::option(option, "it is needed").into())
}

/// The option of a row, without its dashes.
fn name(row: &Row) -> String {
    row.option.unwrap_or(row.key).replace('_', "-")
}

fn id(row: &Row) -> String {
    name(row).replace('-', "_")
}

fn rows<P: Part>() -> impl Iterator<Item = (&'static Row, Offer)> {
    P::OFFERED.iter().filter_map(|offer| Some((P::SECTION.row(offer.key)?, *offer)))
}

fn reader(section: &'static Section, row: &'static Row) -> ValueParser {
    let kind = (row.kind)();
    if let Kind::Word { .. } = kind {
        return PossibleValuesParser::new(kind.words()).into();
    }
    ValueParser::new(move |text: &str| {
        let mut scratch = Description::default();
        (section.add)(&mut scratch, [0, 0]);
        (row.put)(&mut scratch, [0, 0], Given::Text(text)).map(|()| text.to_owned())
    })
}

fn help(row: &Row, offer: Offer) -> String {
    let help = row.help.iter().map(|line| line.trim()).collect::<Vec<_>>().join(" ");
    let without = match (offer.without, row.otherwise) {
        (Without::Words(words), _) | (Without::Table, Otherwise::Rule(words)) => words.into(),
        (Without::Table, Otherwise::Of(key)) => format!("that of {key}"),
        _ => return help.strip_suffix("...").map_or(help.trim_end_matches('.'), |_| &help).into(),
    };
    format!("{help} Without it: {without}")
}

impl<P: Part> Args for Asked<P> {
    fn augment_args(command: Command) -> Command {
        let section: &'static Section = const { &P::SECTION };
        rows::<P>().fold(command, |command, (row, offer)| {
            let default = match (offer.without, row.otherwise) {
                (Without::Value(value), _) | (Without::Table, Otherwise::This { value, .. }) => Some(value),
                _ => None,
            };
            let is_needed = match offer.without {
                Without::Refuse => true,
                Without::Table => row.otherwise == Otherwise::Needed,
                Without::Value(_) | Without::Words(_) => false,
            };
            let mut arg = Arg::new(id(row))
                .long(name(row))
                .value_name(id(row).to_uppercase())
                .help(help(row, offer))
                .allow_hyphen_values(true)
                .value_parser(reader(section, row))
                .ignore_case(true)
                .action(if offer.is_many { ArgAction::Append } else { ArgAction::Set })
                .required(is_needed);
            if let Some(heading) = P::HEADING {
                arg = arg.help_heading(heading);
            }
            command.arg(match default {
                Some(value) => arg.default_value(value),
                None => arg,
            })
        })
    }

    fn augment_args_for_update(command: Command) -> Command {
        Self::augment_args(command)
    }
}

impl<P: Part> FromArgMatches for Asked<P> {
    fn from_arg_matches(matches: &ArgMatches) -> Result<Self, clap::Error> {
        let mut said = Description::default();
        (P::SECTION.add)(&mut said, [0, 0]);
        let mut each = vec![];
        for (row, offer) in rows::<P>() {
            if offer.is_many {
                let texts = matches.get_many::<String>(&id(row)).unwrap_or_default();
                each.push((row.key, texts.cloned().collect()));
            }
            if let Some(text) = matches.get_one::<String>(&id(row)) {
                (row.put)(&mut said, [0, 0], Given::Text(text))
                    .map_err(|error| clap::Error::raw(clap::error::ErrorKind::ValueValidation, error))?;
            }
        }
        Ok(Self { said: Box::new(said), each, part: PhantomData })
    }

    fn update_from_arg_matches(&mut self, matches: &ArgMatches) -> Result<(), clap::Error> {
        *self = Self::from_arg_matches(matches)?;
        Ok(())
    }
}

/// Declares a part: a name, the section's struct and field, a heading, and the keys offered.
macro_rules! part {
    ($(#[doc = $doc:literal])+ $part:ident: $given:ty, |$description:ident| $field:expr, $heading:expr, [$($offer:expr),+ $(,)?]) => {
        $(#[doc = $doc])+
        #[derive(Clone, Debug)]
        pub struct $part;

        impl $crate::options::Part for $part {
            type Given = $given;
            const SECTION: jetwright::plant::description::Section = <$given>::SECTION;
            const HEADING: Option<&'static str> = $heading;
            const OFFERED: &'static [$crate::options::Offer] = &[$($offer),+];
            fn of($description: &jetwright::plant::description::Description) -> Option<&Self::Given> {
                $field
            }
        }
    };
}

pub(crate) use part;
