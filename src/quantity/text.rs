//! Quantities read from text: a number and a unit, always both.

use core::fmt;

use super::heat::{GrossHeatRate, HEAT_UNITS, HeatRate, NetHeatRate};
use super::spelling;

/// A unit a quantity is read in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Unit {
    /// How it is written; empty where a bare number is accepted.
    pub symbol: &'static str,
    /// SI value of one.
    pub factor: f64,
    /// SI value of its zero; differs from zero for temperatures only.
    pub offset: f64,
}

/// A quantity that can be read from text.
pub trait Quantity: Sized {
    /// What it is called in messages.
    const WHAT: &'static str;
    /// The units it is read in.
    const UNITS: &'static [Unit];
    /// Words of which one must stand behind the unit; none for most quantities.
    const BEHIND: &'static [&'static str] = &[];
    /// From its SI value.
    fn from_si(value: f64) -> Self;
    /// Its SI value.
    fn si(&self) -> f64;
    /// Reads what stands behind the unit, for quantities that need more than a unit.
    ///
    /// # Errors
    ///
    /// [`TextError`] when something stands there that should not.
    fn from_parts(value: f64, rest: &str) -> Result<Self, TextError> {
        if rest.is_empty() { Ok(Self::from_si(value)) } else { Err(TextError::unit::<Self>()) }
    }
}

/// Why a text is not the quantity asked for.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TextError {
    what: &'static str,
    units: &'static [Unit],
    why: Why,
}

#[derive(Clone, Copy, Debug, PartialEq)]
enum Why {
    Number,
    Comma,
    UnitMissing,
    Unit,
    BasisMissing,
}

impl TextError {
    fn new<Q: Quantity>(why: Why) -> Self {
        Self { what: Q::WHAT, units: Q::UNITS, why }
    }
    fn unit<Q: Quantity>() -> Self {
        Self::new::<Q>(Why::Unit)
    }
}

/// What is said of a comma in a number, whichever of its two meanings it has.
const COMMA: &str = "a comma in a number; write 0.3, not 0,3, and 1000, not 1,000";

impl fmt::Display for TextError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.units[0].symbol.is_empty() {
            if self.why == Why::Comma {
                return f.write_str(COMMA);
            }
            return write!(f, "not {}; it is written like \"1.5\", without a unit", self.what);
        }
        match self.why {
            Why::Number => {
                write!(f, "not a number with a unit; {} is written like \"1.5 {}\"", self.what, self.units[0].symbol)?
            }
            Why::Comma => f.write_str(COMMA)?,
            Why::UnitMissing => write!(f, "a number without a unit; {} needs one", self.what)?,
            Why::Unit => write!(f, "not a unit of {}", self.what)?,
            Why::BasisMissing => write!(f, "{} must say gross or net", self.what)?,
        }
        f.write_str(" (accepted: ")?;
        for (index, unit) in self.units.iter().enumerate() {
            let symbol = if unit.symbol.is_empty() { "none" } else { unit.symbol };
            write!(f, "{}{symbol}", if index == 0 { "" } else { ", " })?;
        }
        f.write_str(if self.what == <HeatRate as Quantity>::WHAT { "; then gross or net)" } else { ")" })
    }
}

impl core::error::Error for TextError {}

/// Reads a quantity: a decimal number, a fraction or a whole number with a fraction, then a unit.
///
/// # Errors
///
/// [`TextError`] saying which part is missing or wrong and which units are accepted. The range is not
/// checked here.
///
/// # Examples
///
/// ```
/// use jetwright::quantity::{self, GaugePressure, HeatRate, Length};
/// assert_eq!(quantity::parse::<GaugePressure>("0.3 bar").unwrap().pascals(), 30_000.0);
/// assert!((quantity::parse::<Length>("1 1/2 in").unwrap().millimeters() - 38.1).abs() < 1e-12);
/// assert!(matches!(quantity::parse::<HeatRate>("26 kW net"), Ok(HeatRate::Net(_))));
/// assert!(quantity::parse::<HeatRate>("26 kW").is_err());
/// assert!(quantity::parse::<GaugePressure>("5").is_err());
/// ```
pub fn parse<Q: Quantity>(text: &str) -> Result<Q, TextError> {
    let (value, unit, rest) = split::<Q>(text)?;
    let value = value * unit.factor + unit.offset;
    if value.is_finite() { Q::from_parts(value, rest) } else { Err(TextError::new::<Q>(Why::Number)) }
}

/// The number, its unit and what stands behind the unit.
pub(super) fn split<Q: Quantity>(text: &str) -> Result<(f64, &'static Unit, &str), TextError> {
    let text = text.trim();
    let (value, rest) = number(text).ok_or(TextError::new::<Q>(Why::Number))?;
    let rest = rest.trim_start();
    if rest.starts_with(',') {
        return Err(TextError::new::<Q>(Why::Comma));
    }
    let (unit, length) = spelling::unit_of(rest, Q::UNITS).ok_or(TextError::new::<Q>(if rest.is_empty() {
        Why::UnitMissing
    } else {
        Why::Unit
    }))?;
    Ok((value, unit, rest[length..].trim_start()))
}

/// The leading number and what follows it.
fn number(text: &str) -> Option<(f64, &str)> {
    let (whole, rest) = decimal(text)?;
    if let Some((bottom, rest)) = rest.strip_prefix('/').and_then(plain) {
        return (bottom > 0.0).then(|| (whole / bottom, rest));
    }
    let fraction = rest.strip_prefix(' ').and_then(plain).and_then(|(top, rest)| {
        let (bottom, rest) = rest.strip_prefix('/').and_then(plain)?;
        (bottom > 0.0).then(|| (top / bottom, rest))
    });
    match fraction {
        Some((fraction, rest)) => Some((if whole < 0.0 { whole - fraction } else { whole + fraction }, rest)),
        None => Some((whole, rest)),
    }
}

/// A leading run of digits, without sign, point or exponent.
fn plain(text: &str) -> Option<(f64, &str)> {
    let end = text.find(|c: char| !c.is_ascii_digit()).unwrap_or(text.len());
    let value: f64 = text[..end].parse().ok()?;
    value.is_finite().then_some((value, &text[end..]))
}

/// A leading decimal number; an `e` counts only when digits follow it.
fn decimal(text: &str) -> Option<(f64, &str)> {
    let bytes = text.as_bytes();
    let digits = |mut at: usize| {
        while bytes.get(at).is_some_and(u8::is_ascii_digit) {
            at += 1;
        }
        at
    };
    let mut end = usize::from(matches!(bytes.first(), Some(b'+' | b'-')));
    end = digits(end);
    if bytes.get(end) == Some(&b'.') {
        end = digits(end + 1);
    }
    if matches!(bytes.get(end), Some(b'e' | b'E')) {
        let sign = usize::from(matches!(bytes.get(end + 1), Some(b'+' | b'-')));
        let exponent = digits(end + 1 + sign);
        if exponent > end + 1 + sign {
            end = exponent;
        }
    }
    let value: f64 = text[..end].parse().ok()?;
    value.is_finite().then_some((value, &text[end..]))
}

impl Quantity for HeatRate<f64> {
    const WHAT: &'static str = "a heat rate";
    const UNITS: &'static [Unit] = HEAT_UNITS;
    const BEHIND: &'static [&'static str] = &["gross", "net"];
    fn from_si(value: f64) -> Self {
        HeatRate::Net(NetHeatRate::from_watts(value))
    }
    fn si(&self) -> f64 {
        match self {
            HeatRate::Gross(heat) => heat.watts(),
            HeatRate::Net(heat) => heat.watts(),
        }
    }
    fn from_parts(value: f64, rest: &str) -> Result<Self, TextError> {
        let is = |word: &str| rest.eq_ignore_ascii_case(word);
        match rest {
            "" => Err(TextError::new::<Self>(Why::BasisMissing)),
            _ if is("gross") => Ok(HeatRate::Gross(GrossHeatRate::from_watts(value))),
            _ if is("net") => Ok(HeatRate::Net(NetHeatRate::from_watts(value))),
            _ => Err(TextError::unit::<Self>()),
        }
    }
}

/// A share, read as a plain number or as a percentage; the one kind that needs no unit.
///
/// # Examples
///
/// ```
/// use jetwright::quantity::{Share, parse};
/// assert_eq!(parse::<Share>("40 %").unwrap().0, 0.4);
/// assert_eq!(parse::<Share>("0.4").unwrap().0, 0.4);
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Share(
    /// The share, 1 being the whole.
    pub f64,
);

impl Quantity for Share {
    const WHAT: &'static str = "a share";
    const UNITS: &'static [Unit] = &[
        Unit { symbol: "%", factor: 0.01, offset: 0.0 },
        Unit { symbol: "percent", factor: 0.01, offset: 0.0 },
        Unit { symbol: "", factor: 1.0, offset: 0.0 },
    ];
    fn from_si(value: f64) -> Self {
        Share(value)
    }
    fn si(&self) -> f64 {
        self.0
    }
}

/// A plain number: a ratio or a coefficient.
///
/// # Examples
///
/// ```
/// use jetwright::quantity::{Number, parse};
/// assert_eq!(parse::<Number>("1.05").unwrap().0, 1.05);
/// assert!(parse::<Number>("1.05 %").is_err());
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Number(
    /// The number.
    pub f64,
);

impl Quantity for Number {
    const WHAT: &'static str = "a plain number";
    const UNITS: &'static [Unit] = &[Unit { symbol: "", factor: 1.0, offset: 0.0 }];
    fn from_si(value: f64) -> Self {
        Number(value)
    }
    fn si(&self) -> f64 {
        self.0
    }
}

#[cfg(test)]
mod tests {
    use std::format;
    use std::string::ToString;

    use super::super::{GaugePressure, Length, Temperature, parse};
    use super::number;

    #[test]
    fn numbers_of_every_shape_are_read_and_nothing_else() {
        for (text, value) in [
            ("5", 5.0),
            ("-5.25", -5.25),
            (".5", 0.5),
            ("1e3", 1000.0),
            ("1E-3", 0.001),
            ("3/16", 0.1875),
            ("1 1/2", 1.5),
            ("-1 1/2", -1.5),
        ] {
            assert_eq!(number(text), Some((value, "")), "{text}");
        }
        for text in ["", "-", ".", "nan psi", "inf psi", "1e999", "1/0", "psi"] {
            assert_eq!(number(text), None, "{text}");
        }
        let endless = "9".repeat(400);
        for text in [endless.clone(), format!("1/{endless}"), format!("1 {endless}/{endless}")] {
            assert!(parse::<Length>(&format!("{text} mm")).is_err(), "{text}");
        }
        assert!(parse::<GaugePressure>("1e305 bar").is_err());
        assert!(parse::<GaugePressure>("1,5 psi").is_err());
    }

    #[test]
    fn a_decimal_comma_is_refused_with_what_to_write() {
        let said = parse::<GaugePressure>("0,3 bar").unwrap_err().to_string();
        assert!(said.contains("write 0.3, not 0,3"), "{said}");
    }

    #[test]
    fn the_longest_unit_wins_and_leftovers_are_refused() {
        assert_eq!(parse::<Length>("12mm").unwrap().millimeters(), 12.0);
        assert!(parse::<Length>("12 mmm").is_err());
        assert!(parse::<GaugePressure>("5 psia").is_err());
        assert!((parse::<Temperature>("-30 degC").unwrap().kelvin() - 243.15).abs() < 1e-12);
        assert_eq!(
            parse::<GaugePressure>("5").unwrap_err().to_string().split(';').next(),
            Some("a number without a unit")
        );
    }
}
