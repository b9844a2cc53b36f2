//! A column: everything said of one number, once.

use std::format;
use std::prelude::rust_2024::*;

use crate::plant::Number;
use crate::report::units::Kind;

/// Where a column is printed; programs get all that have a key of their own.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shown {
    /// On the page, at this place from left to right.
    Page(u8),
    /// On the page in inch units.
    Inch(u8),
    /// On the page in metric units.
    Metric(u8),
    /// On the page alone: words that a program finds in other columns.
    Words(u8),
    /// The same on a page in inch units alone.
    WordsInch(u8),
    /// To programs alone.
    Programs,
}

impl Shown {
    /// The place on a page in such units; none where it is not printed.
    #[must_use]
    pub const fn place(self, inch: bool) -> Option<u8> {
        match self {
            Shown::Page(place) | Shown::Words(place) => Some(place),
            Shown::Inch(place) | Shown::WordsInch(place) if inch => Some(place),
            Shown::Metric(place) if !inch => Some(place),
            _ => None,
        }
    }
}

/// A column of a table, or a field of a block.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Column {
    /// Its key for programs, the unit at its end.
    pub key: &'static str,
    /// What it is called on a page, without the unit.
    pub label: &'static str,
    /// What its value is.
    pub kind: Kind,
    /// Where it is printed.
    pub shown: Shown,
    /// Whether its ends at k = 2 are told under keys of their own.
    pub within: bool,
    /// What it means; empty where a column of the same key before it has said so.
    pub words: &'static str,
}

impl Column {
    /// Whether programs get it.
    #[must_use]
    pub const fn is_for_programs(&self) -> bool {
        !matches!(self.shown, Shown::Words(_) | Shown::WordsInch(_))
    }

    /// The keys of both ends: `low` and `high` before the unit.
    #[must_use]
    pub fn ends(&self) -> [String; 2] {
        let (unit, _) = self.kind.si();
        let stem = self.key.strip_suffix(unit).unwrap_or(self.key);
        ["low", "high"].map(|end| format!("{stem}_{end}{unit}"))
    }
}

/// What a value is to a program.
#[derive(Clone, Debug, PartialEq, Default)]
pub enum Datum {
    /// It does not apply.
    #[default]
    Nothing,
    /// A number, SI.
    Number(f64),
    /// A whole number.
    Whole(u64),
    /// True or false.
    Truth(bool),
    /// A word.
    Word(String),
    /// Numbers, SI.
    Numbers(Vec<f64>),
    /// Words.
    Words(Vec<String>),
    /// Numbers by name.
    Named(Vec<(String, f64)>),
}

/// How a number is to be read on the page.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub enum Mark {
    /// As it stands.
    #[default]
    Equal,
    /// Half its width is at least what is printed: a limit or a bend lies within.
    AtLeast,
    /// Its ends are for programs alone: the page tells them of another number.
    Quiet,
}

/// A value of a column.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct Value {
    /// What programs get.
    pub datum: Datum,
    /// Half its width at k = 2, SI, where that is known.
    pub half: Option<f64>,
    /// Its ends at k = 2, SI, where they lie unevenly about it; an end that is not known is not finite.
    pub span: Option<(f64, f64)>,
    /// How it is to be read.
    pub mark: Mark,
    /// What the page says instead of it; `{}` in it stands for the number and its unit.
    pub said: Option<String>,
}

impl Value {
    /// A number that lies within half a width at k = 2, SI.
    #[must_use]
    pub fn within(mut self, half: Option<f64>) -> Self {
        self.half = half.filter(|_| self.si().is_some());
        self
    }

    /// Its ends at k = 2, SI; what is no less than 0 has no end below it.
    #[must_use]
    pub fn ends(&self) -> Option<(f64, f64)> {
        if self.span.is_some() {
            return self.span;
        }
        let (si, half) = (self.si()?, self.half?);
        let low = if si < 0.0 { si - half } else { (si - half).max(0.0) };
        Some((low, si + half))
    }

    /// Its mark.
    #[must_use]
    pub fn marked(self, mark: Mark) -> Self {
        Self { mark, ..self }
    }

    /// What the page says instead of it; `{}` stands for the number and its unit.
    #[must_use]
    pub fn said(self, words: impl Into<String>) -> Self {
        Self { said: Some(words.into()), ..self }
    }

    /// What the page says where there is no value.
    #[must_use]
    pub fn or_said(self, words: impl Into<String>) -> Self {
        if self.datum == Datum::Nothing && self.said.is_none() { self.said(words) } else { self }
    }

    /// The number, SI.
    #[must_use]
    pub const fn si(&self) -> Option<f64> {
        match self.datum {
            Datum::Number(si) => Some(si),
            _ => None,
        }
    }
}

macro_rules! values {
    ($($kind:ty: |$value:ident| $datum:expr;)*) => {$(
        impl From<$kind> for Value {
            fn from($value: $kind) -> Self {
                Self { datum: $datum, ..Self::default() }
            }
        }
    )*};
}

values! {
    f64: |value| Datum::Number(value);
    f32: |value| Datum::Number(value.into());
    u32: |value| Datum::Whole(value.into());
    usize: |value| Datum::Whole(value as u64);
    bool: |value| Datum::Truth(value);
    &str: |value| Datum::Word(value.into());
    &String: |value| Datum::Word(value.clone());
    String: |value| Datum::Word(value);
    Vec<f64>: |value| Datum::Numbers(value);
    Vec<String>: |value| Datum::Words(value);
    Vec<(String, f64)>: |value| Datum::Named(value);
}

impl From<Number> for Value {
    fn from(number: Number) -> Self {
        let end = |end: Option<f64>| end.unwrap_or(f64::INFINITY);
        Self { span: Some((end(number.low), end(number.high))), half: number.expanded(), ..Self::from(number.value) }
    }
}

impl<const N: usize> From<&heapless::String<N>> for Value {
    fn from(value: &heapless::String<N>) -> Self {
        value.as_str().into()
    }
}

impl<T: Into<Value>> From<Option<T>> for Value {
    fn from(value: Option<T>) -> Self {
        value.map_or_else(Self::default, Into::into)
    }
}

/// Values beside their columns, as the macro `columns!` makes the lists.
#[derive(Clone, Debug, PartialEq)]
pub struct Cells {
    /// The columns.
    pub columns: &'static [Column],
    /// A value a column.
    pub values: Vec<Value>,
    /// Which of them this place of the page prints.
    pub printed: Printed,
}

/// Which columns a place of the page prints.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Printed {
    /// All that are meant for a page.
    All,
    /// Those of these keys.
    Only(&'static [&'static str]),
}

impl Cells {
    /// The same for programs alone.
    #[must_use]
    pub fn for_programs(self) -> Self {
        self.only(&[])
    }

    /// The same with these printed here.
    #[must_use]
    pub fn only(self, keys: &'static [&'static str]) -> Self {
        Self { printed: Printed::Only(keys), ..self }
    }

    /// Whether this place prints a column.
    #[must_use]
    pub fn prints(&self, column: &Column) -> bool {
        match self.printed {
            Printed::All => true,
            Printed::Only(keys) => keys.contains(&column.key),
        }
    }

    /// Columns and values, side by side.
    pub fn iter(&self) -> impl Iterator<Item = (&'static Column, &Value)> {
        self.columns.iter().zip(&self.values)
    }
}

/// A list of columns and the function that fills it from a row:
///
/// ```text
/// columns! {
///     /// The jet's flow.
///     pub FLOW, flow(row: &FlowRow<'_>);
///     /// Gauge pressure before the jet.
///     gauge_pressure_pa, "gauge", Gauge, Page(10) => row.gauge.pascals();
/// }
/// ```
///
/// `[within]` after the kind adds the keys of both ends.
macro_rules! columns {
    (
        $(#[$list:meta])*
        $sight:vis $name:ident, $fill:ident($row:ident: $type:ty);
        $(
            $(#[doc = $words:literal])*
            $key:ident, $label:literal, $kind:ident $([$within:ident])?, $shown:expr => $value:expr;
        )*
    ) => {
        $(#[$list])*
        $sight const $name: &[$crate::report::field::Column] = &{
            #[allow(unused_imports)]
            use $crate::report::field::{Column, Shown::*};
            [$(Column {
                key: stringify!($key),
                label: $label,
                kind: $crate::report::units::Kind::$kind,
                shown: $shown,
                within: $crate::report::field::is_within!($($within)?),
                words: concat!($($words, "\n"),*),
            }),*]
        };

        $(#[$list])*
        $sight fn $fill($row: $type) -> $crate::report::field::Cells {
            let values = std::vec![$($crate::report::field::Value::from($value)),*];
            $crate::report::field::Cells { columns: $name, values, printed: $crate::report::field::Printed::All }
        }
    };
}
macro_rules! is_within {
    () => {
        false
    };
    (within) => {
        true
    };
}
pub(crate) use {columns, is_within};
