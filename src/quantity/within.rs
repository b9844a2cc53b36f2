//! Quantities read from text and held to the range of an input.

use core::fmt;

use super::text::{Number, Quantity, TextError, Unit, split};
use crate::limits::{self, Input};

/// Why a text is not an accepted value of an input.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WithinError {
    input: Input,
    why: Why,
}

#[derive(Clone, Copy, Debug, PartialEq)]
enum Why {
    Text(TextError),
    Range(&'static Unit),
    Whole,
}

impl fmt::Display for WithinError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.why {
            Why::Text(error) => error.fmt(f),
            Why::Whole => {
                let range = self.input.range();
                write!(f, "not a whole number; {} is accepted from {} to {}", self.input, range.min, range.max)
            }
            Why::Range(unit) => {
                let range = self.input.range();
                let [low, high] = [range.min, range.max].map(|bound| (bound - unit.offset) / unit.factor);
                let space = if unit.symbol.is_empty() { "" } else { " " };
                let (from, to) = if range.is_open { ("above", "up to") } else { ("from", "to") };
                write!(f, "out of range; {} is accepted {from} {}", self.input, Rounded { value: low, up: true })?;
                write!(f, "{space}{} {to} {}{space}{}", unit.symbol, Rounded { value: high, up: false }, unit.symbol)?;
                self.input.reason().map_or(Ok(()), |reason| write!(f, "; {reason}"))
            }
        }
    }
}

impl core::error::Error for WithinError {}

/// Reads a quantity with [`parse`](super::parse) and checks it against the range of `input`.
///
/// A value that misses a bound by no more than the rounding of its unit's conversion is that bound.
///
/// # Errors
///
/// [`WithinError`]; its message states the range in the unit the text was written in.
///
/// # Examples
///
/// ```
/// use jetwright::Input;
/// use jetwright::quantity::{Length, parse_within};
/// assert_eq!(parse_within::<Length>("1.8 mm", Input::Bore).unwrap().millimeters(), 1.8);
/// assert_eq!(
///     parse_within::<Length>("18 mm", Input::Bore).unwrap_err().to_string(),
///     "out of range; bore is accepted from 0.25 mm to 12.7 mm"
/// );
/// ```
pub fn parse_within<Q: Quantity>(text: &str, input: Input) -> Result<Q, WithinError> {
    parse_written(text, input).map(|written| written.quantity)
}

/// A quantity and the unit it was written in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Written<Q> {
    /// The quantity.
    pub quantity: Q,
    /// Its unit.
    pub unit: &'static Unit,
}

/// As [`parse_within`], the unit kept beside the quantity.
///
/// # Errors
///
/// [`WithinError`], as of [`parse_within`].
///
/// # Examples
///
/// ```
/// use jetwright::Input;
/// use jetwright::quantity::{GaugePressure, parse_written};
/// assert_eq!(parse_written::<GaugePressure>("11 inH2O", Input::GaugePressure).unwrap().unit.symbol, "inH2O");
/// ```
pub fn parse_written<Q: Quantity>(text: &str, input: Input) -> Result<Written<Q>, WithinError> {
    let text_error = |error| WithinError { input, why: Why::Text(error) };
    let (number, unit, rest) = split::<Q>(text).map_err(text_error)?;
    let range = input.range();
    let given = number * unit.factor + unit.offset;
    let value =
        [range.min, range.max].into_iter().find(|bound| (given - bound).abs() <= 1e-12 * bound.abs()).unwrap_or(given);
    let quantity = Q::from_parts(value, rest).map_err(text_error)?;
    limits::check(input, value).map_err(|_| WithinError { input, why: Why::Range(unit) })?;
    Ok(Written { quantity, unit })
}

/// Reads a whole number and checks it against the range of `input`.
///
/// # Errors
///
/// [`WithinError`]
///
/// # Examples
///
/// ```
/// use jetwright::{Input, quantity::parse_count};
/// assert_eq!(parse_count("3", Input::JetCount), Ok(3));
/// assert!(parse_count("2.5", Input::JetCount).is_err());
/// ```
pub fn parse_count(text: &str, input: Input) -> Result<u32, WithinError> {
    let number = parse_within::<Number>(text, input)?.0;
    let whole = number as u32;
    if f64::from(whole) == number { Ok(whole) } else { Err(WithinError { input, why: Why::Whole }) }
}

/// A bound to four figures or whole numbers, rounded so that it is itself accepted.
struct Rounded {
    value: f64,
    up: bool,
}

impl fmt::Display for Rounded {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let size = self.value.abs();
        // Steps a unit: a power of ten, exact, and 1e12 is enough for every range in every unit.
        let mut scale = 1.0;
        for _ in 0..12 {
            if size == 0.0 || size * scale >= 1000.0 {
                break;
            }
            scale *= 10.0;
        }
        let steps = self.value * scale;
        let near = if steps < 0.0 { (steps - 0.5) as i64 } else { (steps + 0.5) as i64 };
        let off = steps - near as f64;
        let rounding = 1e-9 * (1.0 + steps.abs());
        let whole = near + i64::from(self.up && off > rounding) - i64::from(!self.up && off < -rounding);
        write!(f, "{}", whole as f64 / scale)
    }
}

#[cfg(test)]
mod tests {
    use std::format;
    use std::string::ToString;

    use super::{Rounded, parse_within};
    use crate::Input;
    use crate::quantity::{
        AbsolutePressure, ActualVolumeFlow, Angle, Duration, GaugePressure, HeatRate, Length, Number,
        PressureDifference, PricePerMass, Quantity, RotationalSpeed, Share, Temperature,
    };

    #[test]
    fn a_bound_written_in_any_unit_is_accepted_and_a_step_beyond_is_not() {
        // 12.7 mm is half an inch, exact since 1959; -35 degC is -31 degF.
        for text in ["12.7 mm", "0.5 in", "1.27 cm", "500 thou"] {
            assert_eq!(parse_within::<Length>(text, Input::Bore).unwrap().meters(), 0.0127, "{text}");
        }
        for text in ["-35 C", "-31 F", "238.15 K"] {
            assert_eq!(parse_within::<Temperature>(text, Input::AirTemperature).unwrap().kelvin(), 238.15, "{text}");
        }
        assert!(parse_within::<Length>("12.700001 mm", Input::Bore).is_err());
        assert!(parse_within::<Temperature>("-35.0001 C", Input::AirTemperature).is_err());
    }

    fn comes_back_in_every_unit<Q: Quantity>(input: Input) {
        let range = input.range();
        let basis = if Q::WHAT == HeatRate::WHAT { " net" } else { "" };
        for unit in Q::UNITS {
            for part in 0..=10 {
                let value = range.min + (range.max - range.min) * f64::from(part) / 10.0;
                let text = format!("{} {}{basis}", (value - unit.offset) / unit.factor, unit.symbol);
                let read = parse_within::<Q>(&text, input).unwrap_or_else(|error| panic!("{text}: {error}")).si();
                assert!((read - value).abs() <= 1e-12 * (range.min.abs() + range.max.abs()), "{text}: {read}");
            }
            for beyond in [range.min - 1e-6 * (1.0 + range.min.abs()), range.max + 1e-6 * (1.0 + range.max.abs())] {
                let text = format!("{} {}{basis}", (beyond - unit.offset) / unit.factor, unit.symbol);
                assert!(parse_within::<Q>(&text, input).is_err(), "{text}");
            }
        }
    }

    #[test]
    fn the_whole_range_comes_back_and_nothing_beyond_it() {
        comes_back_in_every_unit::<AbsolutePressure>(Input::StationPressure);
        comes_back_in_every_unit::<ActualVolumeFlow>(Input::AirFlow);
        comes_back_in_every_unit::<Angle>(Input::ChamferAngle);
        comes_back_in_every_unit::<Duration>(Input::Duration);
        comes_back_in_every_unit::<GaugePressure>(Input::BackPressure);
        comes_back_in_every_unit::<HeatRate>(Input::HeatRate);
        comes_back_in_every_unit::<Length>(Input::Altitude);
        comes_back_in_every_unit::<Number>(Input::AirRatio);
        comes_back_in_every_unit::<PressureDifference>(Input::BlowerPressure);
        comes_back_in_every_unit::<PricePerMass>(Input::Price);
        comes_back_in_every_unit::<RotationalSpeed>(Input::WheelSpeed);
        comes_back_in_every_unit::<Share>(Input::OpenFraction);
        comes_back_in_every_unit::<Temperature>(Input::ChamberTemperature);
    }

    #[test]
    fn a_pressure_difference_has_the_units_of_the_tables() {
        // NIST SP 811 (2008), appendix B.8: psi 6.894757e3 Pa, inH2O conventional 2.490889e2, mmH2O conventional 9.80665.
        for (text, pascals) in
            [("1 psi", 6.894_757e3), ("1 inH2O", 2.490_889e2), ("1 in w.c.", 2.490_889e2), ("1 mmH2O", 9.806_65)]
        {
            let read = parse_within::<PressureDifference>(text, Input::BlowerPressure).unwrap().pascals();
            assert!((read / pascals - 1.0).abs() < 1e-6, "{text}: {read}");
        }
    }

    #[test]
    fn the_range_is_told_in_the_unit_written() {
        let message = |error: super::WithinError| error.to_string();
        let wide = |text| message(parse_within::<Length>(text, Input::Bore).unwrap_err());
        assert!(wide("1 in").ends_with("from 0.009843 in to 0.5 in"), "{}", wide("1 in"));
        let hot = |text| message(parse_within::<Temperature>(text, Input::AirTemperature).unwrap_err());
        assert!(hot("200 F").ends_with("from -31 F to 131 F"), "{}", hot("200 F"));
        let share = message(parse_within::<Share>("40", Input::Humidity).unwrap_err());
        assert!(share.ends_with("from 0 to 1"), "{share}");
        let heat = message(parse_within::<HeatRate>("300 MW net", Input::HeatRate).unwrap_err());
        assert!(heat.ends_with("from 0.000001 MW to 200 MW"), "{heat}");
    }

    #[test]
    fn rounding_never_leaves_the_range() {
        for (value, up, text) in [
            (2.0 / 3.0, true, "0.6667"),
            (2.0 / 3.0, false, "0.6666"),
            (-2.0 / 3.0, true, "-0.6666"),
            (-2.0 / 3.0, false, "-0.6667"),
            (0.25, true, "0.25"),
            (450_000.0, false, "450000"),
            (0.0, false, "0"),
        ] {
            assert_eq!(Rounded { value, up }.to_string(), text);
        }
    }
}
