//! What can go wrong, by cause. No strings, no panics, no NaN: a [`Copy`] value that says which
//! input broke which range.

use core::fmt;

use crate::limits::Input;
use crate::species::{Property, Species};

/// The result of every checked function of this crate.
pub type Result<T> = core::result::Result<T, Error>;

/// Why an answer cannot be given.
///
/// # Examples
///
/// ```
/// use jetwright::{Error, Input, limits};
/// let error = limits::check(Input::Bore, 0.0_f64).unwrap_err();
/// assert_eq!(error, Error::OutOfRange { input: Input::Bore, given: 0.0 });
/// assert_eq!(error.to_string(), "bore is 0 m, accepted is 0.00025 to 0.0127 m");
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum Error {
    /// The input is infinite or not a number.
    NotFinite {
        /// Which input.
        input: Input,
    },
    /// The input lies outside its row of [`limits`](crate::limits).
    OutOfRange {
        /// Which input.
        input: Input,
        /// What was given, in the unit of its row.
        given: f32,
    },
    /// The first input must be less than the second, and is not.
    InvertedPair {
        /// The input that must be the lesser.
        lesser: Input,
        /// The input that must be the greater.
        greater: Input,
    },
    /// The fractions of a mixture must add to one within 1e-4.
    FractionsSum {
        /// What they add to.
        given: f32,
    },
    /// Nothing in the gas burns.
    CannotBurn,
    /// Something in the gas burns, but so much of it is inert that no share of air makes it burn.
    TooDilute {
        /// Mole fraction of what does not burn.
        given: f32,
    },
    /// Too much of what burns in the gas is of a kind the formula was never measured for.
    NotMeasured {
        /// Its share of what burns.
        given: f32,
    },
    /// Points of a curve must rise in their first column and number 2 to 16.
    Points {
        /// Which curve.
        input: Input,
    },
    /// At this pressure and temperature the gas is a liquid, or so near it that the equation of state fails.
    Liquid {
        /// How many times the pressure stands above the dew point's, or the equation's reduced density.
        given: f32,
    },
    /// A gas of the mixture is not sold as a liquid, so there is no cylinder of it that boils.
    NotLiquefied {
        /// Its mole fraction.
        given: f32,
    },
    /// The table of species has no such property of a gas, and the answer needs it.
    MissingProperty {
        /// Which gas.
        species: Species,
        /// What is not known of it.
        property: Property,
    },
    /// No value of the sought input within its range answers the question.
    NoSolution {
        /// What was sought.
        input: Input,
        /// The nearest that the range allows, in the unit of the quantity asked for.
        nearest: f32,
    },
    /// A solver used up its iterations; this is a defect, please report the inputs.
    NotConverged {
        /// What was sought.
        input: Input,
    },
}

impl fmt::Display for Error {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match *self {
            Error::NotFinite { input } => write!(f, "{input} is not a finite number, {}", input.range()),
            Error::OutOfRange { input, given } => {
                let unit = input.range().unit;
                let space = if unit.is_empty() { "" } else { " " };
                write!(f, "{input} is {given}{space}{unit}, {}", input.range())?;
                input.reason().map_or(Ok(()), |reason| write!(f, "; {reason}"))
            }
            Error::InvertedPair { lesser, greater } => write!(f, "{lesser} must be less than {greater}"),
            Error::FractionsSum { given } => write!(f, "the fractions add to {given}, accepted is 1 within 0.0001"),
            Error::CannotBurn => f.write_str("nothing in the gas burns"),
            Error::TooDilute { given } => {
                write!(f, "{:.1} % of the gas does not burn, too much for any share of air to light", 100.0 * given)
            }
            Error::NotMeasured { given } => {
                write!(f, "{:.1} % of what burns is of a kind that the formula was not measured for", 100.0 * given)
            }
            Error::Points { input } => write!(f, "{input} wants 2 to 16 points, the first column rising, all finite"),
            Error::Liquid { given } => {
                write!(
                    f,
                    "the gas is a liquid at this pressure and temperature ({given:.2} times its dew-point pressure)"
                )
            }
            Error::NotLiquefied { given } => {
                write!(f, "{:.1} % of the gas cannot be sold as a liquid, so no cylinder of it boils", 100.0 * given)
            }
            Error::MissingProperty { species, property } => {
                write!(f, "{} has no {property} in the table of species, and the answer needs it", species.name())
            }
            Error::NoSolution { input, nearest } => {
                write!(f, "no {input} answers this, {}; the nearest it reaches is {nearest}", input.range())
            }
            Error::NotConverged { input } => write!(f, "the search for {input} did not converge"),
        }
    }
}

impl core::error::Error for Error {}
