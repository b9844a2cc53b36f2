//! The sheet as one tree, in the order of a run.

use std::prelude::rust_2024::*;
use std::{format, vec};

use crate::plant::Sheet;
use crate::prose::always::{CAUTIONS, IN_SHORT};
use crate::quantity::Unit;
use crate::report::blower::{AIR, blower};
use crate::report::budgets::{BUDGETS, budgets, footnote, largest_uncertainty};
use crate::report::built::{BUILT, built};
use crate::report::card::{CARD, card};
use crate::report::firing::{TIMED, timed_settings};
use crate::report::furnace::furnace;
use crate::report::furnace_fields::FURNACE;
use crate::report::gauge_table::{GAUGE_TABLE, by_gauge, other_drills};
use crate::report::head::{GAS, HEAD, JET, SITE, head};
use crate::report::lighting::lighting;
use crate::report::lighting_fields::LIGHTING_BLOCK;
use crate::report::settings::{SETTINGS, SettingRow, settings};
use crate::report::supply::{CYLINDER, supply};
use crate::report::tree::{Member, Node, Page, Section, Table, Tree};
use crate::report::units::Shop;
use crate::report::warnings::{WARNINGS, Warned, warnings};

/// Version of the keys; it rises when a key goes or changes its meaning.
pub const KEYS_VERSION: u32 = 2;

/// The sheet; its sentences in these units, its gauge's face in the unit that `gauge` names.
#[must_use]
pub fn sheet_tree(sheet: &Sheet, shop: &Shop, gauge: Option<&'static Unit>) -> Tree {
    let rows = settings(sheet);
    let mut page = Page::default();
    head(&mut page, sheet, shop);
    page.push(card(sheet, shop));
    built(&mut page, sheet, gauge);
    furnace(&mut page, sheet, shop);
    set(&mut page, sheet, &rows);
    timed_settings(&mut page, sheet, shop);
    by_gauge(&mut page, sheet);
    other_drills(&mut page, sheet, &rows);
    lighting(&mut page, sheet, &rows, shop);
    if let Some(air) = &sheet.air {
        blower(&mut page, sheet, air, shop);
    }
    supply(&mut page, sheet, &rows, shop);
    largest_uncertainty(&mut page, sheet);
    page.top(warnings(&Warned::of_sheet(sheet), shop));
    page.heading("ALWAYS");
    for text in IN_SHORT {
        page.said("", text);
    }
    for (about, text) in CAUTIONS {
        page.said(about, text);
    }
    Tree { section: &SHEET, csv: Some(&SETTINGS), nodes: page.done() }
}

fn set(page: &mut Page, sheet: &Sheet, rows: &[SettingRow<'_>]) {
    page.heading("SETTINGS");
    let titles = vec![("cost_per_hour", format!("{} an hour", sheet.plant.entries.gas.currency))];
    let rows = rows.iter().map(SettingRow::all).collect();
    page.push(Node::Table(Table { section: Some(&SETTINGS), titles, rows }));
    page.push(budgets(sheet));
    page.said("", footnote(sheet));
}

/// Jetwright sheet, for programs.
pub const SHEET: Section = Section {
    key: "",
    name: "jetwright sheet",
    words: "",
    about: "One object; its parts follow.",
    is_many: false,
    members: &[
        Member::Columns(HEAD),
        Member::Section(&CARD),
        Member::Section(&BUILT),
        Member::Section(&SITE),
        Member::Section(&GAS),
        Member::Section(&JET),
        Member::Section(&SETTINGS),
        Member::Section(&BUDGETS),
        Member::Section(&GAUGE_TABLE),
        Member::Section(&TIMED),
        Member::Section(&AIR),
        Member::Section(&FURNACE),
        Member::Section(&LIGHTING_BLOCK),
        Member::Section(&CYLINDER),
        Member::Section(&WARNINGS),
    ],
};
