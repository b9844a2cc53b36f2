//! Drills and contact tips a shop has, and the ones next to a wanted bore.

use core::fmt;

use crate::quantity::Length;

/// Number drills 1 to 80, inches: ASME B94.11M.
const NUMBER: [f64; 80] = [
    0.2280, 0.2210, 0.2130, 0.2090, 0.2055, 0.2040, 0.2010, 0.1990, 0.1960, 0.1935, 0.1910, 0.1890, 0.1850, 0.1820,
    0.1800, 0.1770, 0.1730, 0.1695, 0.1660, 0.1610, 0.1590, 0.1570, 0.1540, 0.1520, 0.1495, 0.1470, 0.1440, 0.1405,
    0.1360, 0.1285, 0.1200, 0.1160, 0.1130, 0.1110, 0.1100, 0.1065, 0.1040, 0.1015, 0.0995, 0.0980, 0.0960, 0.0935,
    0.0890, 0.0860, 0.0820, 0.0810, 0.0785, 0.0760, 0.0730, 0.0700, 0.0670, 0.0635, 0.0595, 0.0550, 0.0520, 0.0465,
    0.0430, 0.0420, 0.0410, 0.0400, 0.0390, 0.0380, 0.0370, 0.0360, 0.0350, 0.0330, 0.0320, 0.0310, 0.0292, 0.0280,
    0.0260, 0.0250, 0.0240, 0.0225, 0.0210, 0.0200, 0.0180, 0.0160, 0.0145, 0.0135,
];

/// Letter drills A to Z, inches: ASME B94.11M.
const LETTER: [f64; 26] = [
    0.234, 0.238, 0.242, 0.246, 0.250, 0.257, 0.261, 0.266, 0.272, 0.277, 0.281, 0.290, 0.295, 0.302, 0.316, 0.323,
    0.332, 0.339, 0.348, 0.358, 0.368, 0.377, 0.386, 0.397, 0.404, 0.413,
];

/// Sixty-fourths of an inch up to one half.
const FRACTIONS: usize = 32;

/// Metric drills in hundredths of a millimeter: 0.05 mm steps to 3 mm, 0.1 mm steps to 10 mm (preferred sizes of
/// ISO 235, from memory).
const METRIC_FINE: usize = 55;
const METRIC_COARSE: usize = 70;

/// Contact tips by the wire they are sold for, millimeters; inches in brackets as marked (common practice, no source).
/// A new tip is bored some 0.1 to 0.25 mm wider, and wears.
const TIPS: [(f64, &str); 8] = [
    (0.6, "0.6 mm (.023 in)"),
    (0.8, "0.8 mm (.030 in)"),
    (0.9, "0.9 mm (.035 in)"),
    (1.0, "1.0 mm (.040 in)"),
    (1.2, "1.2 mm (.045 in)"),
    (1.4, "1.4 mm (.052 in)"),
    (1.6, "1.6 mm (1/16 in)"),
    (2.0, "2.0 mm (5/64 in)"),
];

/// A list of sizes, each rising in diameter.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DrillList {
    /// Number drills 80 to 1.
    Number,
    /// Letter drills A to Z.
    Letter,
    /// Sixty-fourths of an inch.
    Fractional,
    /// Metric drills.
    Metric,
    /// Contact tips by their marked size: nominal bores, which wear; measure with pins before you trust one.
    Tips,
}

/// One size of a list.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Drill {
    list: DrillList,
    index: usize,
}

impl DrillList {
    /// Every list.
    pub const ALL: [DrillList; 5] =
        [DrillList::Number, DrillList::Letter, DrillList::Fractional, DrillList::Metric, DrillList::Tips];

    /// Its sizes, rising in diameter.
    pub fn drills(self) -> impl Iterator<Item = Drill> {
        let count = match self {
            DrillList::Number => NUMBER.len(),
            DrillList::Letter => LETTER.len(),
            DrillList::Fractional => FRACTIONS,
            DrillList::Metric => METRIC_FINE + METRIC_COARSE,
            DrillList::Tips => TIPS.len(),
        };
        (0..count).map(move |index| Drill { list: self, index })
    }

    /// The largest size not above a bore and the smallest size above it.
    ///
    /// ```
    /// use jetwright::orifice::DrillList;
    /// use jetwright::quantity::Length;
    /// let (below, above) = DrillList::Number.neighbors(Length::from_inches(0.0710));
    /// assert_eq!(below.unwrap().to_string(), "number 50");
    /// assert_eq!(above.unwrap().to_string(), "number 49");
    /// ```
    #[must_use]
    pub fn neighbors(self, bore: Length) -> (Option<Drill>, Option<Drill>) {
        // A hair of tolerance, so that a drill's own diameter after a change of units finds that drill.
        let limit = bore.meters() * (1.0 + 1e-9);
        let below = self.drills().take_while(|drill| drill.diameter().meters() <= limit).last();
        (below, self.drills().find(|drill| drill.diameter().meters() > limit))
    }
}

impl Drill {
    /// The list it stands in.
    #[must_use]
    pub fn list(self) -> DrillList {
        self.list
    }

    /// Its nominal diameter.
    #[must_use]
    pub fn diameter(self) -> Length {
        match self.list {
            DrillList::Number => Length::from_inches(NUMBER[NUMBER.len() - 1 - self.index]),
            DrillList::Letter => Length::from_inches(LETTER[self.index]),
            DrillList::Fractional => Length::from_inches((self.index + 1) as f64 / 64.0),
            DrillList::Metric => Length::from_millimeters(self.metric_hundredths() as f64 / 100.0),
            DrillList::Tips => Length::from_millimeters(TIPS[self.index].0),
        }
    }

    fn metric_hundredths(self) -> usize {
        if self.index < METRIC_FINE { 30 + 5 * self.index } else { 310 + 10 * (self.index - METRIC_FINE) }
    }

    /// The drill of this name: `number 50`, `#50`, `No. 50`, `letter F`, `5/64 in`, `5/64`, `1.8 mm`, `tip 0.9 mm`,
    /// `tip .035`.
    ///
    /// ```
    /// use jetwright::orifice::Drill;
    /// assert_eq!(Drill::find("number 50").unwrap().diameter().inches(), 0.0700);
    /// assert_eq!(Drill::find("#50"), Drill::find("number 50"));
    /// assert!(Drill::find("number 81").is_none());
    /// ```
    #[must_use]
    pub fn find(name: &str) -> Option<Drill> {
        let name = name.trim();
        let number =
            name.strip_prefix('#').or_else(|| ["number", "no.", "no"].iter().find_map(|word| strip_word(name, word)));
        if let Some(number) = number {
            let number: usize = number.trim().parse().ok()?;
            return (1..=NUMBER.len())
                .contains(&number)
                .then(|| Drill { list: DrillList::Number, index: NUMBER.len() - number });
        }
        if let Some(letter) = strip_word(name, "letter").or((name.len() == 1).then_some(name)) {
            let index = usize::from(letter.bytes().next()?.to_ascii_uppercase().checked_sub(b'A')?);
            return (letter.len() == 1 && index < LETTER.len()).then_some(Drill { list: DrillList::Letter, index });
        }
        if let Some(tip) = strip_word(name, "tip") {
            return tip_of(tip);
        }
        let list = if name.ends_with("mm") { DrillList::Metric } else { DrillList::Fractional };
        of_diameter(list, length(name)?)
    }
}

/// A length whose unit, where it is left off a fraction, is the inch.
fn length(text: &str) -> Option<Length> {
    let read = crate::quantity::parse::<Length>(text).ok();
    read.or_else(|| {
        let (top, bottom) = text.split_once('/')?;
        let (top, bottom): (u8, u8) = (top.trim().parse().ok()?, bottom.trim().parse().ok()?);
        (bottom > 0).then(|| Length::from_inches(f64::from(top) / f64::from(bottom)))
    })
}

fn of_diameter(list: DrillList, diameter: Length) -> Option<Drill> {
    list.drills().find(|drill| (drill.diameter().millimeters() - diameter.millimeters()).abs() < 1e-6)
}

/// A contact tip by either of its marks; a mark without a unit is of inches below a tenth, else of millimeters.
fn tip_of(mark: &str) -> Option<Drill> {
    let index = TIPS.iter().position(|(_, label)| {
        let (_, inches) = label.split_once('(').unwrap_or_default();
        let inches = inches.trim_end_matches(" in)");
        let mark = mark.strip_suffix("in").unwrap_or(mark).trim().trim_start_matches('0');
        mark == inches
    });
    let at = |index| Drill { list: DrillList::Tips, index };
    index.map(at).or_else(|| {
        let bare = mark.parse::<f64>().ok().filter(|mark| *mark >= 0.1).map(Length::from_millimeters);
        of_diameter(DrillList::Tips, bare.or_else(|| length(mark))?)
    })
}

/// What follows a leading word and at least one space.
fn strip_word<'a>(text: &'a str, word: &str) -> Option<&'a str> {
    let (first, rest) = text.split_once(' ')?;
    first.eq_ignore_ascii_case(word).then(|| rest.trim())
}

impl fmt::Display for Drill {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.list {
            DrillList::Number => write!(f, "number {}", NUMBER.len() - self.index),
            DrillList::Letter => write!(f, "letter {}", char::from(b'A' + self.index as u8)),
            DrillList::Fractional => {
                let top = self.index + 1;
                let shift = top.trailing_zeros().min(6);
                write!(f, "{}/{} in", top >> shift, 64 >> shift)
            }
            DrillList::Metric => {
                let hundredths = self.metric_hundredths();
                write!(f, "{}.{:02} mm", hundredths / 100, hundredths % 100)
            }
            DrillList::Tips => write!(f, "tip {}", TIPS[self.index].1),
        }
    }
}

#[cfg(test)]
mod tests {
    use std::string::ToString;

    use super::{Drill, DrillList};

    #[test]
    fn what_people_write_for_a_drill_is_understood() {
        for (written, name) in [
            ("#50", "number 50"),
            ("# 50", "number 50"),
            ("No. 50", "number 50"),
            ("no 50", "number 50"),
            ("1/16", "1/16 in"),
            ("4/64", "1/16 in"),
            ("F", "letter F"),
            ("f", "letter F"),
            ("tip .035", "tip 0.9 mm"),
            ("tip 0.035 in", "tip 0.9 mm"),
            ("Tip 0.9", "tip 0.9 mm"),
            ("tip 1/16", "tip 1.6 mm"),
        ] {
            let drill = Drill::find(written);
            assert!(drill.is_some() && drill == Drill::find(name), "{written}");
        }
        for text in ["#", "#81", "50", "1/0", "tip", "tip .5", "AA", "\u{df}", ""] {
            assert_eq!(Drill::find(text), None, "{text}");
        }
    }

    #[test]
    fn every_list_rises_and_every_drill_is_found_by_its_name() {
        for list in DrillList::ALL {
            let mut before = 0.0;
            for drill in list.drills() {
                let diameter = drill.diameter().meters();
                assert!(diameter > before, "{drill}");
                before = diameter;
                let name = drill.to_string();
                let name = name.split(" (").next().unwrap();
                assert_eq!(Drill::find(name), Some(drill), "{name}");
                let (below, _) = list.neighbors(drill.diameter());
                assert_eq!(below, Some(drill));
            }
        }
    }

    #[test]
    fn fractions_are_in_lowest_terms() {
        assert_eq!(Drill::find("4/64 in").unwrap().to_string(), "1/16 in");
        assert_eq!(Drill::find("32/64 in").unwrap().to_string(), "1/2 in");
        assert!(Drill::find("33/64 in").is_none());
    }
}
