//! Cylinder and line.

use std::format;
use std::prelude::rust_2024::*;
use std::vec;

use crate::plant::cylinder::{CylinderBlock, CylinderRow, CylinderRun};
use crate::plant::{Setting, Sheet};
use crate::quantity::Duration;
use crate::report::field::columns;
use crate::report::settings::{SettingRow, before_jet as before_jet_cells};
use crate::report::tree::{Member, Node, Page, Row, Section, Table};
use crate::report::units::{Kind, Shop};

/// A draw on the cylinders.
pub(crate) struct DrawRow<'s> {
    setting: &'s Setting,
    row: &'s CylinderRow,
}

/// Cylinder and line; nothing without cylinder, line and regulator.
pub(crate) fn supply(page: &mut Page, sheet: &Sheet, settings: &[SettingRow<'_>], shop: &Shop) {
    if let Some(block) = &sheet.cylinder {
        cylinder(page, sheet, block, shop);
    }
    before_jet(page, sheet, settings);
}

/// Hours, or minutes of a short time.
fn time(time: Duration) -> String {
    Shop::of(false).number(Kind::Lasting, time.seconds())
}

fn cylinder(page: &mut Page, sheet: &Sheet, block: &CylinderBlock, shop: &Shop) {
    page.heading("CYLINDER");
    let each = block.capacity * (1.0 / f64::from(block.count));
    let many = if block.count == 1 { "one".into() } else { format!("{} on one manifold", block.count) };
    let money = block
        .cost
        .map_or(String::new(), |cost| format!(", {} full", Shop::money(&sheet.plant.entries.gas.currency, cost)));
    let text = format!(
        "{many} of {}{money}; {} left, {} in it at {} before anything is drawn",
        shop.mass(each),
        shop.mass(block.left),
        shop.gauge(block.pressure),
        shop.temperature(block.air)
    );
    page.said("Stands", &text);
    let draws = sheet.draws().map(|(setting, row)| Row::of([draw(&DrawRow { setting, row })])).collect();
    let mut nodes = vec![
        Node::fields([cylinder_fields(block)]),
        Node::Table(Table { section: Some(&DRAWS), titles: vec![], rows: draws }),
    ];
    nodes.extend(block.run.as_ref().map(|run| Node::block(&CYLINDER_RUN, vec![Node::fields([cylinder_run(run)])])));
    page.push(Node::block(&CYLINDER, nodes));
    page.said("", "Needs: before the regulator. It holds so much steadily at today's level, and less as it empties.");
    if let Some(run) = &block.run {
        page.said("Lasts", run_words(run, shop));
    }
}

fn verdict(row: &CylinderRow) -> String {
    let more = row.cylinders_needed.map_or(String::new(), |count| format!("; {count} such would"));
    match row.too_cold_after {
        None => "till it is empty".into(),
        Some(after) if after.seconds() <= 0.0 => "NEVER: too cold here".into(),
        Some(after) if after < row.used => format!("NO, {} only{more}", time(after)),
        Some(after) => format!("for {}", time(after)),
    }
}

/// Whether the cylinder lasts the firing.
pub(crate) fn run_words(run: &CylinderRun, shop: &Shop) -> String {
    let asked = shop.mass(run.gas);
    match (run.too_cold_after, run.empty_after) {
        (None, None) => format!(
            "it lasts the firing: {} burnt, {} left, the liquid at {} in the end",
            asked,
            shop.mass(run.left),
            shop.temperature(run.liquid)
        ),
        (Some(after), _) => {
            format!("IT DOES NOT LAST: too cold for the regulator {} into the burning ({asked} asked)", time(after))
        }
        (None, Some(after)) => format!("IT DOES NOT LAST: empty {} into the burning ({asked} asked)", time(after)),
    }
}

fn before_jet(page: &mut Page, sheet: &Sheet, settings: &[SettingRow<'_>]) {
    let before = &sheet.plant.before;
    if before.line.is_none() && before.regulator.is_none() && before.vapor.is_none() {
        return;
    }
    page.heading("PRESSURE AT THE JET");
    let rows = settings.iter();
    let rows = rows.map(|row| Row::of([row.name(), row.flow().only(&["gauge_pressure_pa"]), before_jet_cells(row)]));
    page.push(Node::view(rows.collect(), vec![]));
}

/// Sheet: cylinder, for programs.
pub(crate) const CYLINDER: Section = Section {
    key: "cylinder",
    name: "sheet: cylinder",
    words: "The cylinders; null unless described",
    about: "Cylinders, several alike on one manifold, from the gas that is left.",
    is_many: false,
    members: &[Member::Columns(CYLINDER_FIELDS), Member::Section(&DRAWS), Member::Section(&CYLINDER_RUN)],
};

columns! {
    /// The cylinders.
    pub(crate) CYLINDER_FIELDS, cylinder_fields(block: &CylinderBlock);
    /// How many there are, a whole number.
    cylinders, "cylinders", Number, Programs => block.count;
    /// Gas in all of them when full.
    capacity_kg, "capacity", Mass, Programs => block.capacity.kilograms();
    /// Gas left in all of them; in a firing, at its end.
    left_kg, "left", Mass, Programs => block.left.kilograms();
    /// Temperature of the air they stand in, and of the liquid before anything is drawn.
    cylinder_air_temperature_k, "cylinder air temperature", Temperature, Programs => block.air.kelvin();
    /// Gauge pressure in them before anything is drawn.
    cylinder_gauge_pressure_pa, "cylinder gauge pressure", Gauge, Programs => block.pressure.pascals();
    /// Money for a full one; null without a price.
    cost_per_cylinder, "cost per cylinder", Money, Programs => block.cost;
}

/// Sheet: draws, for programs.
pub(crate) const DRAWS: Section = Section {
    key: "draws",
    name: "sheet: draws",
    words: "A row a setting and one for the work's fire, an array",
    about: "",
    is_many: true,
    members: &[Member::Columns(DRAW)],
};

columns! {
    /// The cylinders at a draw.
    pub(crate) DRAW, draw(draw: &DrawRow<'_>);
    setting, "", Word, Page(0) => &draw.setting.entry.name;
    /// Gauge pressure that the regulator needs before it; half a bar over the reading unless given, and never less than
    /// the reading.
    regulator_needs_pa, "needs", Gauge, Page(10) => draw.row.needs.pascals();
    mass_flow_kg_per_s, "gas", MassFlow, Page(20) => draw.setting.gas.kilograms_per_second();
    /// Draw that the cylinders hold steadily at that pressure at the level they are at; less as they empty.
    steady_draw_kg_per_s, "sustained", MassFlow, Page(30) => draw.row.steady.kilograms_per_second();
    /// Whether the draw is no more than that: true or false.
    keeps_up, "keeps up", Word, Programs => draw.row.keeps_up;
    /// When the pressure in them falls under what the regulator needs, drawn without a rest; null when it does not.
    too_cold_after_s, "too cold after", Time, Programs => draw.row.too_cold_after.map(|time| time.seconds());
    /// When what is left is burnt; null when nothing is drawn.
    gas_lasts_s, "gas for", Lasting, Page(40) => draw.row.lasts.map(|time| time.seconds());
    /// How long full cylinders last; null when nothing is drawn.
    full_lasts_s, "full for", Lasting, Page(50) => draw.row.full_lasts.map(|time| time.seconds());
    /// The liquid after the setting's time, an hour unless given; in a firing, at its end. It is no colder than where
    /// the regulator starves.
    liquid_temperature_k, "liquid temperature", Temperature, Programs => draw.row.end.temperature.kelvin();
    /// How many such cylinders would hold the draw at that level, a whole number; null when 16 would not.
    cylinders_needed, "cylinders needed", Number, Programs => draw.row.cylinders_needed;
    keeps_up_words, "does it keep up?", Word, Words(60) => verdict(draw.row);
    cost_per_hour, "cost per hour", MoneyRate, Programs => draw.setting.cost_per_hour;
}

/// Sheet: cylinder_run, for programs.
pub(crate) const CYLINDER_RUN: Section = Section {
    key: "cylinder_run",
    name: "sheet: cylinder_run",
    words: "The plan of the furnace, or else the settings that have a time, one after the other; null without either",
    about: "",
    is_many: false,
    members: &[Member::Columns(CYLINDER_RUN_FIELDS)],
};

columns! {
    /// The cylinders over the whole run.
    pub(crate) CYLINDER_RUN_FIELDS, cylinder_run(run: &CylinderRun);
    /// Whether it follows the furnace's `plan`: true, or false for the settings' own times, as `firing`.
    by_plan, "by plan", Word, Programs => run.by_plan;
    gas_used_kg, "gas used", Mass, Programs => run.gas.kilograms();
    left_kg, "left", Mass, Programs => run.left.kilograms();
    liquid_temperature_k, "liquid temperature", Temperature, Programs => run.liquid.kelvin();
    /// Whether the cylinders keep up and are not empty: true or false.
    lasts_run, "lasts firing", Word, Programs => run.lasts();
    too_cold_after_s, "too cold after", Time, Programs => run.too_cold_after.map(|time| time.seconds());
    /// When they are empty; null when they last.
    empty_after_s, "empty after", Time, Programs => run.empty_after.map(|time| time.seconds());
}
