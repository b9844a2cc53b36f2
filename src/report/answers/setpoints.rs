//! The gauge and the damper for an air ratio from the smallest to the largest fire.

use std::prelude::rust_2024::*;
use std::{format, vec};

use crate::control::Setpoint;
use crate::plant::setpoints::{BETWEEN, ChipTable, Off};
use crate::quantity::GaugePressure;
use crate::report::field::columns;
use crate::report::tree::{Member, Node, Row, Section, Table, Tree};
use crate::report::units::{Kind, Shop};
use crate::report::warnings::WARNINGS;

/// A controller's table, and how far off it is.
pub struct SetpointAnswer<'s> {
    /// The table.
    pub table: &'s ChipTable,
    /// Its air ratio.
    pub air_ratio: f64,
    /// The most that a burner set by it lies off.
    pub off: Off,
    /// Gross over net heat of the gas.
    pub gross_over_net: f64,
    /// The lowest reading of the gauge that says something, where the table begins lower.
    pub unread: Option<GaugePressure>,
}

/// The answer; its sentences in these units.
#[must_use]
pub fn tree(answer: &SetpointAnswer<'_>, shop: &Shop) -> Tree {
    let table = answer.table;
    let (lowest, step) = (f64::from(table.lowest().watts()), f64::from(table.step().watts()));
    let row = |(row, &set): (usize, &Setpoint<f32>)| {
        Row::of([setpoint(&SetpointRow { heat: lowest + step * row as f64, set, basis: answer.gross_over_net })])
    };
    let rows = table.rows().iter().enumerate().map(row).collect();
    let bound = table.bound();
    let said = format!(
        "Air ratio {}. A straight line between two rows is off by {} of gauge and {:.2} % of damper at most: {:.2} % of the \
         heat and {:.2} % of the air ratio, sampled at {} fires between each two rows. A controller's tolerance of its \
         actuators must include it. For a controller: process control, never a flame safeguard.",
        Shop::ratio(answer.air_ratio),
        shop.text(Kind::LowPressure, f64::from(bound.gauge.pascals())),
        100.0 * bound.air,
        100.0 * answer.off.heat,
        100.0 * answer.off.air_ratio,
        BETWEEN,
    );
    let mut nodes = vec![
        Node::Table(Table { section: Some(&ROWS), titles: vec![], rows }),
        Node::fields([setpoint_table(answer)]),
        Node::said(said),
    ];
    nodes.extend(answer.unread.map(|least| {
        let least = shop.gauge(least);
        Node::said(format!("CAUTION: this gauge cannot be read below {least}, and the table begins lower."))
    }));
    Tree { section: &ANSWER, csv: Some(&ROWS), nodes }
}

/// A row of the table.
pub(crate) struct SetpointRow {
    heat: f64,
    set: Setpoint<f32>,
    basis: f64,
}

columns! {
    /// A row of the table.
    pub(crate) SETPOINT, setpoint(row: &SetpointRow);
    heat_net_w, "heat", HeatNet, Metric(10) => row.heat;
    fire_gross, "heat", HeatGross, WordsInch(10) => row.heat * row.basis;
    gauge_pressure_pa, "gauge", Gauge, Page(20) => row.set.gauge.pascals();
    /// Opening of the damper that gives the air ratio.
    air_setting, "damper", FineShare, Page(30) => row.set.air;
}

columns! {
    /// The table as a whole.
    pub(crate) SETPOINT_TABLE, setpoint_table(answer: &SetpointAnswer<'_>);
    /// Most that a lookup's gauge pressure can be off, anywhere in the table.
    gauge_bound_pa, "gauge bound", LowPressure, Programs => answer.table.bound().gauge.pascals();
    /// The same of its air setting.
    air_setting_bound, "air setting bound", Number, Programs => answer.table.bound().air;
    air_ratio, "air ratio", Number, Programs => answer.air_ratio;
    /// Most that the heat of the burner, set by a lookup, lies off the heat asked, as a share; sampled at 63 fires
    /// between each two rows.
    heat_off_share, "heat off share", Number, Programs => answer.off.heat;
    /// The same of its air ratio. A controller's tolerance of its actuators must include both.
    air_ratio_off_share, "air ratio off share", Number, Programs => answer.off.air_ratio;
}

/// The answer for programs.
pub const ANSWER: Section = Section {
    key: "",
    name: "jetwright setpoints",
    words: "",
    about: "The rows, evenly spaced in heat, and how far a straight line between two of them can be off.",
    is_many: false,
    members: &[Member::Section(&ROWS), Member::Columns(SETPOINT_TABLE), Member::Section(&WARNINGS)],
};

/// Its rows, for programs.
pub(crate) const ROWS: Section = Section {
    key: "rows",
    name: "setpoints: rows",
    words: "The rows, an array of objects",
    about: "",
    is_many: true,
    members: &[Member::Columns(SETPOINT)],
};
