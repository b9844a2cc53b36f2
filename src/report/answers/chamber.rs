//! Setting against temperature of the chamber, both ways.

use std::prelude::rust_2024::*;
use std::{format, vec};

use crate::plant::Holding;
use crate::report::field::{Value, columns};
use crate::report::tree::{Member, Node, Row, Section, Table, Tree};
use crate::report::warnings::WARNINGS;

/// A setting or a round temperature, the chamber empty and at steady state.
pub struct HoldingRow {
    /// Name of the setting.
    pub name: Option<String>,
    /// What it holds.
    pub held: Holding,
    /// Gross over net heat of the gas.
    pub gross_over_net: f64,
}

/// A row a setting and a temperature; how far linings differ, as a share.
#[must_use]
pub fn tree(rows: &[HoldingRow], spread: f64) -> Tree {
    let rows = rows.iter().map(|row| Row::of([holding(row)])).collect();
    let note = format!(
        "Empty chamber, at steady state; a setting that is left on ends there. Makers' linings differ by {:.0} %.",
        100.0 * spread
    );
    let nodes = vec![Node::Table(Table { section: Some(&ROWS), titles: vec![], rows }), Node::said(note)];
    Tree { section: &ANSWER, csv: Some(&ROWS), nodes }
}

columns! {
    /// A setting or a round temperature, the chamber empty and at steady state.
    pub(crate) HOLDING, holding(row: &HoldingRow);
    /// Name of the setting; null in the rows of round temperatures.
    setting_name, "", Word, Page(0) => row.name.as_ref();
    /// Gauge for that fire; null when no reading in range gives it.
    holding_gauge_pressure_pa, "gauge", Gauge, Page(10) => row.held.gauge.map(|gauge| gauge.pascals());
    chamber_temperature_k, "chamber", Temperature[within], Page(20) => row.held.chamber;
    heat_net_w, "heat", HeatNet[within], Metric(30) => row.held.fire;
    fire_gross, "heat", HeatGross, WordsInch(30) => Value::from(row.held.fire.value * row.gross_over_net).within(row.held.fire.expanded().map(|half| half * row.gross_over_net));
    holding_walls_w, "walls", Heat, Page(40) => row.held.settled.walls;
    holding_openings_w, "openings", Heat, Page(50) => row.held.settled.openings;
    holding_flue_w, "flue", Heat, Page(60) => row.held.settled.flue;
    /// Temperature the gas leaves at.
    flue_temperature_k, "flue temperature", Temperature, Programs => row.held.settled.gas;
}

/// The answer for programs.
pub const ANSWER: Section = Section {
    key: "",
    name: "jetwright chamber",
    words: "",
    about: "The rows: each setting, then round temperatures with the fire that holds them.",
    is_many: false,
    members: &[Member::Section(&ROWS), Member::Section(&WARNINGS)],
};

/// Its rows, for programs.
pub(crate) const ROWS: Section = Section {
    key: "rows",
    name: "chamber: rows",
    words: "The rows, an array of objects",
    about: "",
    is_many: true,
    members: &[Member::Columns(HOLDING)],
};
