//! Gas flow and heat at gauge pressures.

use std::prelude::rust_2024::*;
use std::vec;

use crate::quantity::AbsolutePressure;
use crate::report::field::columns;
use crate::report::flow::{FLOW, FlowRow, flow};
use crate::report::tree::{Member, Node, Row, Section, Table, Tree};
use crate::report::units::Shop;
use crate::report::warnings::WARNINGS;

columns! {
    /// The air of the site.
    pub(crate) AMBIENT, ambient(pressure: AbsolutePressure);
    /// Absolute pressure of the air on the site.
    ambient_pressure_pa, "ambient pressure", Ambient, Programs => pressure.pascals();
}

/// A row a gauge pressure, each in the units it was asked in.
#[must_use]
pub fn tree(pressure: AbsolutePressure, rows: &[FlowRow<'_>], asked: &[Shop]) -> Tree {
    let rows = rows.iter().zip(asked);
    let rows = rows.map(|(row, &asked)| Row { asked: Some(asked), ..Row::of([flow(row)]) }).collect();
    let nodes =
        vec![Node::fields([ambient(pressure)]), Node::Table(Table { section: Some(&ROWS), titles: vec![], rows })];
    Tree { section: &ANSWER, csv: Some(&ROWS), nodes }
}

/// The answer for programs.
pub const ANSWER: Section = Section {
    key: "",
    name: "jetwright flow",
    words: "",
    about: "An object with the site's pressure and the rows, a row a gauge pressure in the order asked.",
    is_many: false,
    members: &[Member::Columns(AMBIENT), Member::Section(&ROWS), Member::Section(&WARNINGS)],
};

/// Its rows, for programs.
pub(crate) const ROWS: Section = Section {
    key: "rows",
    name: "flow: rows",
    words: "The rows, an array of objects",
    about: "",
    is_many: true,
    members: &[Member::Columns(FLOW)],
};
