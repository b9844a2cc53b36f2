//! Gases by name, and compositions from text.

use core::fmt;

use super::fuel::Gas;
use super::mixture::{Mixture, SUM_TOLERANCE};
use super::named_words as words;
use crate::quantity::is_word;
use crate::species::Species;
use crate::words::Words;

/// A gas with a name of the trade.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NamedGas {
    /// What it is asked for by.
    pub name: &'static str,
    /// Where the composition comes from.
    pub source: &'static str,
    parts: &'static [(Species, f64)],
    words: &'static words::GasWords,
}

/// Every named gas.
pub const NAMED: &[NamedGas] = &[
    NamedGas { words: &words::PROPANE, name: "propane", source: "pure", parts: &[(Species::Propane, 1.0)] },
    NamedGas {
        words: &words::HD_5,
        name: "hd-5",
        source: "the limits of GPA 2140 for HD-5: at most 5 % propylene and 2.5 % butanes, the rest propane (from memory)",
        parts: &[(Species::Propane, 0.925), (Species::Propylene, 0.05), (Species::NormalButane, 0.025)],
    },
    NamedGas {
        words: &words::COMMERCIAL_PROPANE,
        name: "commercial-propane",
        source: "representative, common practice, no source; the trade's propane varies widely",
        parts: &[
            (Species::Propane, 0.82),
            (Species::Propylene, 0.10),
            (Species::Ethane, 0.03),
            (Species::NormalButane, 0.03),
            (Species::Isobutane, 0.02),
        ],
    },
    NamedGas {
        words: &words::BUTANE,
        name: "butane",
        source: "pure normal butane",
        parts: &[(Species::NormalButane, 1.0)],
    },
    NamedGas {
        words: &words::PROPANE_BUTANE,
        name: "propane-butane",
        source: "half and half by volume, representative, common practice, no source",
        parts: &[(Species::Propane, 0.5), (Species::NormalButane, 0.35), (Species::Isobutane, 0.15)],
    },
    NamedGas { words: &words::METHANE, name: "methane", source: "pure", parts: &[(Species::Methane, 1.0)] },
    NamedGas {
        words: &words::NATURAL_GAS,
        name: "natural-gas",
        source: "a pipeline gas: the composition of ISO 6976:2016, annex D, example 1",
        parts: &[
            (Species::Methane, 0.933_212),
            (Species::Ethane, 0.025_656),
            (Species::Propane, 0.015_368),
            (Species::Nitrogen, 0.010_350),
            (Species::CarbonDioxide, 0.015_414),
        ],
    },
    NamedGas { words: &words::HYDROGEN, name: "hydrogen", source: "pure", parts: &[(Species::Hydrogen, 1.0)] },
];

impl NamedGas {
    /// Its composition.
    #[must_use]
    pub fn mixture(&self) -> Mixture<f64> {
        Mixture::new(self.parts).unwrap_or(Mixture::pure(Species::Propane))
    }

    /// The gas in single precision, worked out in double and rounded once: a chip that asks for it links no table and
    /// no double precision. There is one of every name.
    ///
    /// # Examples
    ///
    /// ```
    /// use jetwright::gas::NAMED;
    /// let propane = NAMED[0].single().unwrap();
    /// // 50.37 MJ/kg gross in ISO 6976, 44.096 kg/kmol.
    /// assert!((propane.gross_heating_value().joules_per_kilogram() / 1e6 - 50.37).abs() < 0.01);
    /// assert!((propane.molar_mass() - 44.096).abs() < 1e-3);
    /// ```
    #[must_use]
    pub fn single(&self) -> Option<Gas<f32>> {
        let mut words = self.words.iter().copied();
        Gas::read(&mut || words.next())
    }
}

/// Why a text is no gas.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum GasTextError {
    /// Neither a name nor a list of fractions.
    Unknown,
    /// A symbol of the list is not of the table.
    Species,
    /// A fraction of the list is not a number from 0 to 1.
    Fraction,
    /// The fractions do not add to one.
    Sum(f64),
    /// The gas has nothing in it that burns.
    CannotBurn,
}

impl fmt::Display for GasTextError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            GasTextError::Unknown => f.write_str("not a gas")?,
            GasTextError::Species => f.write_str("a symbol is not of the table")?,
            GasTextError::Fraction => f.write_str("a fraction is not a number from 0 to 1")?,
            GasTextError::Sum(sum) => {
                write!(f, "the fractions add to {sum}, accepted is 1 within {SUM_TOLERANCE}")?;
            }
            GasTextError::CannotBurn => f.write_str("nothing in it burns")?,
        }
        f.write_str(" (accepted: ")?;
        for named in NAMED {
            write!(f, "{}, ", named.name)?;
        }
        f.write_str("or mole fractions like \"C3H8=0.95,C2H6=0.05\" of")?;
        for species in Species::all() {
            write!(f, " {}", species.symbol())?;
        }
        f.write_str(")")
    }
}

impl core::error::Error for GasTextError {}

/// Reads a gas: a name, or symbols with their mole fractions.
///
/// # Errors
///
/// [`GasTextError`], which lists what is accepted.
///
/// # Examples
///
/// ```
/// use jetwright::gas::{self, Species};
/// let gas = gas::parse("C3H8=0.95, C2H6=0.05").unwrap();
/// assert_eq!(gas.fraction(Species::Ethane), 0.05);
/// assert!(gas::parse("natural gas").is_ok());
/// assert_eq!(gas::parse("Propane").unwrap().fraction(Species::Propane), 1.0);
/// assert!(gas::parse("C3H8=0.95").is_err());
/// assert!(gas::parse("N2=1").is_err());
/// ```
pub fn parse(text: &str) -> Result<Mixture<f64>, GasTextError> {
    let text = text.trim();
    if let Some(named) = NAMED.iter().find(|named| is_word(text, named.name)) {
        return Ok(named.mixture());
    }
    if !text.contains('=') {
        return Err(GasTextError::Unknown);
    }
    let mut fractions = [0.0; Species::COUNT];
    for part in text.split(',') {
        let (symbol, fraction) = part.split_once('=').ok_or(GasTextError::Fraction)?;
        let species = Species::find(symbol.trim()).ok_or(GasTextError::Species)?;
        let fraction: f64 = fraction.trim().parse().map_err(|_| GasTextError::Fraction)?;
        if !(0.0..=1.0).contains(&fraction) {
            return Err(GasTextError::Fraction);
        }
        fractions[species as usize] += fraction;
    }
    let sum = fractions.iter().sum();
    let mut parts = [(Species::Methane, 0.0); Species::COUNT];
    for ((part, species), fraction) in parts.iter_mut().zip(Species::all()).zip(fractions) {
        *part = (species, fraction);
    }
    let mixture = Mixture::new(&parts).map_err(|_| GasTextError::Sum(sum))?;
    if mixture.oxygen_to_burn() > 0.0 { Ok(mixture) } else { Err(GasTextError::CannotBurn) }
}

#[cfg(test)]
mod tests {
    extern crate std;

    use std::{format, string::String, string::ToString, vec::Vec};

    use super::{Gas, GasTextError, NAMED, Words, parse};

    const HEAD: &str = "//! The named gases as words, worked out in double precision and rounded once. Written by the test of `named.rs`.

pub(super) type GasWords = [f32; COUNT];
";

    #[test]
    fn the_gases_in_single_precision_are_those_of_double_rounded_once() {
        let (mut page, mut current, mut count) = (String::from(HEAD), true, 0);
        for named in NAMED {
            let mut made = Vec::new();
            Gas::<f64>::new(named.mixture()).write(&mut |word| made.push(word));
            let name = named.name.to_uppercase().replace('-', "_");
            page += &format!("\n#[rustfmt::skip]\npub(super) static {name}: GasWords = {made:?};\n");
            count = made.len();
            // Another platform's cube root may round a last digit the other way.
            let same = |(kept, made): (&f32, &f32)| (kept - made).abs() <= f32::EPSILON * made.abs();
            current &=
                named.words.len() == count && named.words.iter().zip(&made).all(same) && named.single().is_some();
        }
        page = page.replace("COUNT", &count.to_string());
        if std::env::var_os("JETWRIGHT_WRITE_PAGE").is_some() {
            std::fs::write(concat!(env!("CARGO_MANIFEST_DIR"), "/src/gas/named_words.rs"), page).unwrap();
        }
        assert!(current, "src/gas/named_words.rs is out of date: JETWRIGHT_WRITE_PAGE=1 cargo test --lib gas");
    }

    #[test]
    fn every_name_is_a_whole_mixture() {
        for named in NAMED {
            let sum: f64 = named.parts.iter().map(|part| part.1).sum();
            assert!((sum - 1.0).abs() < 1e-12, "{}", named.name);
            assert_eq!(parse(named.name), Ok(named.mixture()));
        }
    }

    #[test]
    fn bad_texts_are_told_apart() {
        assert_eq!(parse("town gas"), Err(GasTextError::Unknown));
        assert_eq!(parse("C3H8=0.9,XX=0.1"), Err(GasTextError::Species));
        assert_eq!(parse("C3H8=1.5"), Err(GasTextError::Fraction));
        assert_eq!(parse("C3H8=NaN"), Err(GasTextError::Fraction));
        assert_eq!(parse("C3H8=0.5"), Err(GasTextError::Sum(0.5)));
        assert_eq!(parse("CO2=1"), Err(GasTextError::CannotBurn));
    }
}
