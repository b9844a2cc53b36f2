//! What an input is read as: a quantity, a whole number, a text, or one of a few words.

use core::fmt;

use crate::limits::Input;
use crate::quantity::is_word;
use crate::quantity::{
    AbsolutePressure, ActualVolumeFlow, Angle, Area, Density, Duration, GaugePressure, HeatRate, Length, Mass,
    MassFlow, Number, Power, PressureDifference, PricePerMass, Quantity, RotationalSpeed, Share, Temperature,
    TemperatureDifference, Unit, Volume, WithinError, Written, parse_count, parse_within, parse_written,
};

/// Most words listed in a message.
const LISTED: usize = 64;

/// What an input holds, for messages, documentation and a schema.
#[derive(Clone, Copy, Debug)]
pub enum Kind {
    /// A number and its unit.
    Quantity {
        /// What it is called, with its article.
        what: &'static str,
        /// The units it is read in.
        units: &'static [Unit],
        /// Words of which one must stand behind the unit.
        behind: &'static [&'static str],
        /// Its range.
        input: Input,
    },
    /// A whole number.
    Whole {
        /// Its range.
        input: Input,
    },
    /// A text of one line.
    Text {
        /// Longest, in characters.
        most: usize,
    },
    /// One of a few words.
    Word {
        /// The words, by their place.
        word: fn(usize) -> Option<&'static str>,
    },
}

impl Kind {
    /// The words accepted, if it is one of a few.
    pub fn words(&self) -> impl Iterator<Item = &'static str> {
        let word = if let Kind::Word { word } = *self { word } else { |_| None };
        (0..LISTED).map_while(word)
    }

    /// Whether a number is written without quotes.
    #[must_use]
    pub fn is_bare(&self) -> bool {
        match self {
            Kind::Quantity { units, .. } => units.len() == 1 && units[0].symbol.is_empty(),
            Kind::Whole { .. } => true,
            Kind::Text { .. } | Kind::Word { .. } => false,
        }
    }

    /// The range, if it has one.
    #[must_use]
    pub fn input(&self) -> Option<Input> {
        match *self {
            Kind::Quantity { input, .. } | Kind::Whole { input } => Some(input),
            Kind::Text { .. } | Kind::Word { .. } => None,
        }
    }
}

/// What was given for an input.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Given<'a> {
    /// A text.
    Text(&'a str),
    /// A number without quotes, as it was written.
    Bare(&'a str),
    /// Nothing, or what no input can be: a table, a truth value.
    Other,
}

impl<'a> Given<'a> {
    fn text(self) -> Option<&'a str> {
        if let Given::Text(text) = self { Some(text) } else { None }
    }

    fn number(self) -> &'a str {
        match self {
            Given::Text(text) | Given::Bare(text) => text,
            Given::Other => "",
        }
    }
}

/// Why what was given is not the input.
#[derive(Clone, Copy, Debug)]
pub struct Unread {
    kind: Kind,
    within: Option<WithinError>,
}

impl fmt::Display for Unread {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match (self.within, self.kind) {
            (Some(error), _) => error.fmt(f),
            (None, Kind::Text { most }) => {
                write!(f, "accepted is a text of one line in quotes, 1 to {most} characters")
            }
            (None, kind) => {
                f.write_str("accepted are ")?;
                for (index, word) in kind.words().enumerate() {
                    write!(f, "{}\"{word}\"", if index == 0 { "" } else { ", " })?;
                }
                Ok(())
            }
        }
    }
}

impl core::error::Error for Unread {}

/// A type that an input can have.
pub trait Value: Sized {
    /// What the table states about it: a range, or the longest text.
    type Stated: Copy;
    /// What it is.
    fn kind(stated: Self::Stated) -> Kind;
    /// Reads it.
    ///
    /// # Errors
    ///
    /// [`Unread`] saying what is accepted.
    fn read(given: Given<'_>, stated: Self::Stated) -> Result<Self, Unread>;
    /// Its word, for a choice or a text.
    fn word(&self) -> Option<&str> {
        None
    }
    /// Its SI value, for a number.
    fn number(&self) -> Option<f64> {
        None
    }
}

/// A choice of a few words.
pub trait Choice: Clone + PartialEq + 'static {
    /// A choice and its word, by its place.
    fn nth(place: usize) -> Option<(&'static str, Self)>;
}

impl<C: Choice> Value for C {
    type Stated = ();
    fn kind((): ()) -> Kind {
        Kind::Word { word: |place| C::nth(place).map(|(word, _)| word) }
    }
    fn read(given: Given<'_>, (): ()) -> Result<Self, Unread> {
        let mut choices = (0..LISTED).map_while(C::nth);
        let found = given.text().and_then(|text| choices.find(|(word, _)| is_word(text, word)));
        found.map(|(_, choice)| choice).ok_or(Unread { kind: C::kind(()), within: None })
    }
    fn word(&self) -> Option<&str> {
        (0..LISTED).map_while(C::nth).find(|(_, choice)| choice == self).map(|(word, _)| word)
    }
}

macro_rules! quantities {
    ($($quantity:ty),+ $(,)?) => {$(
        impl Value for $quantity {
            type Stated = Input;
            fn kind(input: Input) -> Kind {
                let (what, units, behind) = (Self::WHAT, Self::UNITS, Self::BEHIND);
                Kind::Quantity { what, units, behind, input }
            }
            fn read(given: Given<'_>, input: Input) -> Result<Self, Unread> {
                let unread = |error| Unread { kind: Self::kind(input), within: Some(error) };
                parse_within(given.number(), input).map_err(unread)
            }
            fn number(&self) -> Option<f64> {
                Some(self.si())
            }
        }
    )+};
}

quantities!(
    AbsolutePressure,
    ActualVolumeFlow,
    Angle,
    Area,
    Density,
    Duration,
    GaugePressure,
    HeatRate,
    Length,
    Mass,
    MassFlow,
    Number,
    Power,
    PressureDifference,
    PricePerMass,
    RotationalSpeed,
    Share,
    Temperature,
    TemperatureDifference,
    Volume,
);

/// A quantity that is remembered in the unit it was written in.
impl<Q: Quantity> Value for Written<Q> {
    type Stated = Input;
    fn kind(input: Input) -> Kind {
        Kind::Quantity { what: Q::WHAT, units: Q::UNITS, behind: Q::BEHIND, input }
    }
    fn read(given: Given<'_>, input: Input) -> Result<Self, Unread> {
        parse_written(given.number(), input).map_err(|error| Unread { kind: Self::kind(input), within: Some(error) })
    }
    fn number(&self) -> Option<f64> {
        Some(self.quantity.si())
    }
}

impl Value for u32 {
    type Stated = Input;
    fn kind(input: Input) -> Kind {
        Kind::Whole { input }
    }
    fn read(given: Given<'_>, input: Input) -> Result<Self, Unread> {
        let unread = |error| Unread { kind: Self::kind(input), within: Some(error) };
        parse_count(given.number(), input).map_err(unread)
    }
    fn number(&self) -> Option<f64> {
        Some(f64::from(*self))
    }
}

/// A text of one line, of as many characters as stated; fewer where many of them take more than a byte.
impl<const BYTES: usize> Value for heapless::String<BYTES> {
    type Stated = usize;
    fn kind(most: usize) -> Kind {
        Kind::Text { most }
    }
    fn read(given: Given<'_>, most: usize) -> Result<Self, Unread> {
        let text = given.text().map(str::trim).filter(|text| !text.is_empty() && !text.chars().any(char::is_control));
        text.filter(|text| text.chars().count() <= most)
            .and_then(|text| Self::try_from(text).ok())
            .ok_or(Unread { kind: Self::kind(most), within: None })
    }
    fn word(&self) -> Option<&str> {
        Some(self)
    }
}

/// A field of a description, whatever its type.
pub trait Held {
    /// Whether it was said.
    fn is_said(&self) -> bool;
    /// Its word or text, if it is one and was said.
    fn word(&self) -> Option<&str>;
    /// Its SI value, if it is a number and was said.
    fn number(&self) -> Option<f64>;
}

impl<V: Value> Held for Option<V> {
    fn is_said(&self) -> bool {
        self.is_some()
    }
    fn word(&self) -> Option<&str> {
        self.as_ref().and_then(Value::word)
    }
    fn number(&self) -> Option<f64> {
        self.as_ref().and_then(Value::number)
    }
}

/// Reads what was given into a field.
///
/// # Errors
///
/// [`Unread`] as of [`Value::read`].
pub fn put<V: Value>(field: &mut Option<V>, given: Given<'_>, stated: V::Stated) -> Result<(), Unread> {
    *field = Some(V::read(given, stated)?);
    Ok(())
}
