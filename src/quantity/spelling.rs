//! The spellings of a unit: its symbol, what people write instead, and upper or lower case where no prefix changes.

use super::text::Unit;

/// What is written for a unit, and the symbol it stands for.
const SPELLINGS: &[(&str, &str)] = &[
    ("psi g", "psig"),
    ("psi gauge", "psig"),
    ("lb/in2", "psi"),
    ("inWC", "inH2O"),
    ("in WC", "inH2O"),
    ("in. WC", "inH2O"),
    ("in. w.c.", "inH2O"),
    ("in H2O", "inH2O"),
    ("in. H2O", "inH2O"),
    ("inches of water", "inH2O"),
    ("inches WC", "inH2O"),
    ("\"WC", "inH2O"),
    ("mm H2O", "mmH2O"),
    ("mmWC", "mmH2O"),
    ("in Hg", "inHg"),
    ("mm Hg", "mmHg"),
    ("osi", "oz/in2"),
    ("Btu/hr", "Btu/h"),
    ("Btu/hour", "Btu/h"),
    ("Btuh", "Btu/h"),
    ("kBtu/hr", "kBtu/h"),
    ("kBtuh", "kBtu/h"),
    ("MJ/hr", "MJ/h"),
    ("lbs", "lb"),
    ("kg/hr", "kg/h"),
    ("lb/hr", "lb/h"),
    ("lbs/hr", "lb/h"),
    ("lbs/h", "lb/h"),
    ("inches", "in"),
    ("in.", "in"),
    ("\"", "in"),
    ("feet", "ft"),
    ("ft.", "ft"),
    ("\u{b0}C", "C"),
    ("\u{b0} C", "C"),
    ("deg C", "C"),
    ("celsius", "C"),
    ("\u{b0}F", "F"),
    ("\u{b0} F", "F"),
    ("deg F", "F"),
    ("fahrenheit", "F"),
    ("degree", "degrees"),
    ("\u{b0}", "deg"),
    ("sq. in.", "in2"),
    ("sq cm", "cm2"),
    ("m\u{b3}/h", "m3/h"),
    ("m3/hr", "m3/h"),
    ("ft3/min", "cfm"),
    ("minute", "min"),
    ("mins", "min"),
    ("hr", "h"),
    ("hrs", "h"),
    ("hour", "h"),
    ("sec", "s"),
    ("seconds", "s"),
    ("liters", "L"),
    ("litres", "L"),
    ("liter", "L"),
    ("litre", "L"),
    ("$/kg", "per kg"),
    ("$/lb", "per lb"),
];

/// How a unit is written: its symbol and every other spelling of it.
pub(crate) fn spellings(unit: &Unit) -> impl Iterator<Item = &'static str> {
    let symbol = unit.symbol;
    let others = SPELLINGS.iter().filter(move |(_, of)| *of == symbol && !symbol.is_empty());
    core::iter::once(symbol).chain(others.map(|(spelling, _)| *spelling))
}

/// Whether the letters may be of either case: not where m for a thousandth could be read as M for a million.
pub(crate) fn ignores_case(spelling: &str) -> bool {
    !spelling.starts_with(['m', 'M'])
}

/// The unit that a text begins with and how many bytes its spelling takes: the longest, its own case before another.
pub(super) fn unit_of(text: &str, units: &'static [Unit]) -> Option<(&'static Unit, usize)> {
    let fits = |spelling: &str| {
        let start = text.get(..spelling.len())?;
        let is_exact = start == spelling;
        let is_alike = ignores_case(spelling) && start.eq_ignore_ascii_case(spelling);
        (is_exact || is_alike).then_some((spelling.len(), is_exact))
    };
    units
        .iter()
        .filter_map(|unit| Some((unit, spellings(unit).filter_map(fits).max()?)))
        .max_by_key(|(_, fit)| *fit)
        .map(|(unit, (length, _))| (unit, length))
}

/// Whether a text is a word, of either case, a space or an underscore as good as its hyphen.
pub(crate) fn is_word(text: &str, word: &str) -> bool {
    let plain = |byte: u8| if byte == b' ' || byte == b'_' { b'-' } else { byte.to_ascii_lowercase() };
    text.trim().bytes().map(plain).eq(word.bytes().map(plain))
}

#[cfg(test)]
mod tests {
    use super::super::{
        Area, Duration, GaugePressure, HeatRate, Length, Mass, MassFlow, Power, PressureDifference, Quantity,
        Temperature, parse,
    };
    use super::SPELLINGS;

    fn same<Q: Quantity>(written: &str, means: &str) {
        let [written_si, means_si] = [written, means].map(|text| parse::<Q>(text).map(|quantity| quantity.si()));
        assert_eq!(written_si, means_si, "{written}");
        assert!(means_si.is_ok(), "{means}");
    }

    #[test]
    fn what_everyone_types_is_understood() {
        same::<HeatRate>("80000 BTU/hr net", "80000 Btu/h net");
        same::<HeatRate>("80 kbtu/hr Gross", "80 kBtu/h gross");
        same::<HeatRate>("26 KW NET", "26 kW net");
        same::<GaugePressure>("11 inWC", "11 inH2O");
        same::<PressureDifference>("0.5 in. w.c.", "0.5 inH2O");
        same::<PressureDifference>("2 \"WC", "2 inH2O");
        same::<GaugePressure>("5 PSI", "5 psi");
        same::<GaugePressure>("0.3 Bar", "0.3 bar");
        same::<GaugePressure>("30 KPA", "30 kPa");
        same::<Length>("1/2 IN", "1/2 in");
        same::<Length>("1 1/2\"", "1 1/2 in");
        same::<Length>("4 feet", "4 ft");
        same::<Temperature>("1250 \u{b0}C", "1250 C");
        same::<Temperature>("70 deg f", "70 F");
        same::<Mass>("5 lbs", "5 lb");
        same::<MassFlow>("2 lb/hr", "2 lb/h");
        same::<Duration>("2 hr", "2 h");
        same::<Duration>("90 sec", "90 s");
        same::<Area>("4 sq in", "4 in2");
    }

    #[test]
    fn case_is_not_ignored_where_a_prefix_changes_with_it() {
        assert!(parse::<GaugePressure>("300 Mbar").is_err());
        assert!(parse::<HeatRate>("5 mW net").is_err());
        assert!(parse::<Length>("5 MM").is_err());
        // A shop has no megawatt of shaft power; the unit that begins with m or M is never guessed.
        assert!(parse::<Power>("5 mw").is_err());
    }

    #[test]
    fn no_spelling_stands_twice() {
        for (index, (spelling, symbol)) in SPELLINGS.iter().enumerate() {
            let twice =
                SPELLINGS[..index].iter().any(|(other, of)| other.eq_ignore_ascii_case(spelling) && of == symbol);
            assert!(!twice, "{spelling}");
            assert!(!symbol.is_empty() && spelling != symbol);
        }
    }
}
