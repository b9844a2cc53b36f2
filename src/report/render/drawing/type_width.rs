//! How wide a text is: the advance widths of Arial, in thousandths of its size, so that nothing depends on which font of
//! the same measures a printer has. Adobe's published metrics of Helvetica, which Arial keeps (from memory).

/// Characters from the space on.
const PLAIN: [u16; 95] = [
    278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556, 556, 556, 556, 556,
    556, 556, 556, 278, 278, 584, 584, 584, 556, 1015, 667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667, 556, 833,
    722, 778, 667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469, 556, 333, 556, 556, 500, 556,
    556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556, 556, 556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334,
    260, 334, 584,
];
/// The same in bold.
const BOLD: [u16; 95] = [
    278, 333, 474, 556, 556, 889, 722, 238, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556, 556, 556, 556, 556,
    556, 556, 556, 333, 333, 584, 584, 584, 611, 975, 722, 722, 722, 722, 667, 611, 778, 722, 278, 556, 722, 611, 833,
    722, 778, 667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 333, 278, 333, 584, 556, 333, 556, 611, 556, 611,
    556, 333, 611, 611, 278, 278, 556, 278, 889, 611, 611, 611, 611, 389, 556, 333, 611, 556, 778, 556, 556, 500, 389,
    280, 389, 584,
];
/// A letter of another script, in thousandths.
const OTHER_LETTER: u16 = 700;
/// A wide sign, such as an ideograph or an emoji.
const WIDE_SIGN: u16 = 1300;

fn advance(character: char, is_bold: bool) -> u16 {
    let table = if is_bold { &BOLD } else { &PLAIN };
    match (character as usize).checked_sub(32).and_then(|at| table.get(at)) {
        Some(&wide) => wide,
        None => match character {
            '·' => 278,
            '°' => 400,
            '±' => 584,
            '²' | '³' => 333,
            '…' => 1000,
            '\u{300}'..='\u{36f}' | '\u{200b}'..='\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}' => 0,
            '\u{a0}'..='\u{10ff}' => OTHER_LETTER,
            _ => WIDE_SIGN,
        },
    }
}

/// The width of a text in the unit of its size.
#[must_use]
pub fn width(text: &str, size: f64, is_bold: bool) -> f64 {
    text.chars().map(|character| f64::from(advance(character, is_bold))).sum::<f64>() * size / 1e3
}

/// How many lines a flowing text takes, by `factor` wider than the table: other fonts are wider.
#[must_use]
pub fn lines(text: &str, size: f64, is_bold: bool, room: f64, factor: f64) -> usize {
    let space = factor * width(" ", size, is_bold);
    let (mut lines, mut used) = (1, 0.0);
    for word in text.split_whitespace() {
        let wide = factor * width(word, size, is_bold);
        let with = if used > 0.0 { used + space + wide } else { wide };
        if with <= room {
            used = with;
            continue;
        }
        lines += usize::from(used > 0.0);
        // A word longer than a line is broken.
        let more = (wide / room).floor() as usize;
        lines += more;
        used = wide - room * more as f64;
    }
    lines
}

#[cfg(test)]
mod tests {
    use super::{lines, width};

    #[test]
    fn a_text_is_as_wide_as_its_letters() {
        // H 722, i 222 and the space 278 thousandths of 10 mm.
        assert!((width("Hi ", 10.0, false) - 12.22).abs() < 1e-9);
        assert!(width("Hi", 10.0, true) > width("Hi", 10.0, false));
        // Eight words of 5 digits at 0.556: 2.78 each, 0.278 between; three fit in 9.
        assert_eq!(lines("12345 12345 12345 12345 12345 12345 12345 12345", 1.0, false, 9.0, 1.0), 3);
        assert_eq!(lines(&"1".repeat(40), 1.0, false, 9.0, 1.0), 3);
        assert_eq!(lines("", 1.0, false, 9.0, 1.0), 1);
    }
}
