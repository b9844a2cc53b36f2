//! The units of a question: an answer keeps to them where no others are asked for.

use std::prelude::rust_2024::*;

use crate::plant::Sheet;
use crate::quantity::Unit;
use crate::report::field::Datum;
use crate::report::tree::{Node, Row, Tree};
use crate::report::units::Shop;

/// Units of inch pages in which questions are written.
const INCH: [&str; 8] = ["psi", "psig", "inH2O", "in w.c.", "oz/in2", "Btu/h", "kBtu/h", "lb/h"];
/// Units of gauges that reach high; every other one is of a gauge that reads finer than psi or bar.
const COARSE: [&str; 3] = ["psi", "psig", "bar"];

/// Whether a unit is one of inch pages.
fn is_inch(unit: &Unit) -> bool {
    INCH.contains(&unit.symbol)
}

impl Shop {
    /// The set of units that the unit of a question is of.
    #[must_use]
    pub fn asked(unit: &'static Unit) -> Self {
        Self::of(is_inch(unit))
    }

    /// The same with gauges in the unit as written; `must_fit` leaves out a unit of the other set.
    #[must_use]
    pub fn with_gauge(self, unit: &'static Unit, must_fit: bool) -> Self {
        if must_fit && is_inch(unit) != self.inch { self } else { Self { gauge: Some(unit), ..self } }
    }
}

impl Shop {
    /// The same with gauges in the first unit of low pressure that settings are written in, where there is one.
    #[must_use]
    pub fn with_low_gauge(self, written: impl IntoIterator<Item = &'static Unit>, must_fit: bool) -> Self {
        let low = written.into_iter().find(|unit| !COARSE.contains(&unit.symbol));
        low.map_or(self, |unit| self.with_gauge(unit, must_fit))
    }
}

impl Tree {
    /// A tree with each setting whose gauge is written in a unit of low pressure in that unit.
    ///
    /// `written` tells the unit of a setting's gauge, by its place; `must_fit` leaves out units of the other set.
    #[must_use]
    pub fn with_gauges(
        mut self,
        sheet: &Sheet,
        shop: &Shop,
        must_fit: bool,
        written: impl Fn(usize) -> Option<&'static Unit>,
    ) -> Self {
        for (index, setting) in sheet.settings.iter().enumerate() {
            let low = written(index).filter(|unit| !COARSE.contains(&unit.symbol));
            if let Some(unit) = low {
                let asked = shop.with_gauge(unit, must_fit);
                self.nodes.iter_mut().for_each(|node| ask(node, &setting.entry.name, asked));
            }
        }
        self
    }
}

fn ask(node: &mut Node, name: &str, asked: Shop) {
    let is_of = |row: &Row| {
        row.iter().any(|(column, value, _)| {
            matches!(column.key, "name" | "setting_name")
                && matches!(&value.datum, Datum::Word(word) if word.as_str() == name)
        })
    };
    match node {
        Node::Block(block) => block.nodes.iter_mut().for_each(|node| ask(node, name, asked)),
        Node::Table(table) => {
            table.rows.iter_mut().filter(|row| is_of(row)).for_each(|row| row.asked = Some(asked));
        }
        _ => {}
    }
}

#[cfg(test)]
mod tests {
    use std::prelude::rust_2024::*;

    use super::Shop;
    use crate::Input;
    use crate::quantity::{GaugePressure, parse_written};

    fn printed(text: &str, must_fit: bool) -> String {
        let written = parse_written::<GaugePressure>(text, Input::GaugePressure).unwrap();
        Shop::of(true).with_gauge(written.unit, must_fit).gauge(written.quantity)
    }

    #[test]
    fn a_gauge_is_printed_as_it_was_written() {
        for text in ["0.500 inH2O", "11.0 in w.c.", "20.0 mbar", "125 Pa", "2.50 kPa", "5.0 psi", "0.300 bar"] {
            assert_eq!(printed(text, false), text);
        }
        assert_eq!(printed("0.0125 kPa", false), "0.0125 kPa");
    }

    #[test]
    fn units_asked_for_go_before_those_of_the_question() {
        assert_eq!(printed("0.300 bar", true), "4.4 psi");
        assert_eq!(printed("0.500 inH2O", true), "0.500 inH2O");
    }
}
