//! Cylinder and line as text.

use std::format;
use std::prelude::rust_2024::*;
use std::vec;

use crate::fuel::GAUGE_LIES;
use crate::plant::cylinder::{CylinderBlock, CylinderEvening, CylinderRow};
use crate::plant::hazards::supply::line_share;
use crate::plant::{Setting, Sheet};
use crate::quantity::Duration;
use crate::report::page::{heading, paragraph};
use crate::report::table::table;
use crate::report::units::Shop;

/// The blocks of the sheet; empty without cylinder, line and regulator.
#[must_use]
pub(crate) fn supply_text(sheet: &Sheet, shop: &Shop) -> String {
    let mut page = String::new();
    if let Some(block) = &sheet.cylinder {
        cylinder(&mut page, sheet, block, shop);
    }
    before_jet(&mut page, sheet, shop);
    page
}

/// Hours, or minutes of a short time.
fn time(time: Duration) -> String {
    if time.hours() < 1.5 { format!("{:.0} min", time.minutes()) } else { format!("{:.1} h", time.hours()) }
}

fn cylinder(page: &mut String, sheet: &Sheet, block: &CylinderBlock, shop: &Shop) {
    heading(page, "CYLINDER");
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
    paragraph(page, "  Stands", &text);
    let titles = [
        "",
        &format!("needs {}", shop.gauge_unit()),
        &format!("gas {}", shop.gas_unit()),
        &format!("it holds {}", shop.gas_unit()),
        "gas for",
        "full for",
        "does it keep up?",
    ];
    let rows: Vec<Vec<String>> = sheet
        .settings
        .iter()
        .zip(&block.rows)
        .map(|(setting, row)| {
            std::vec![
                String::from(setting.entry.name.as_str()),
                shop.gauge_number(row.needs),
                shop.gas_number(setting.gas),
                shop.gas_number(row.steady),
                row.lasts.map_or("-".into(), time),
                row.full_lasts.map_or("-".into(), time),
                verdict(row),
            ]
        })
        .collect();
    page.push_str(&table(&titles, &[6], &rows));
    paragraph(
        page,
        "",
        "Needs: before the regulator. It holds so much steadily at today's level, and less as it empties.",
    );
    if let Some(evening) = &block.evening {
        paragraph(page, "  Lasts", &evening_words(evening, shop));
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

/// Whether the cylinder lasts the evening.
pub(crate) fn evening_words(evening: &CylinderEvening, shop: &Shop) -> String {
    let asked = shop.mass(evening.gas);
    match (evening.too_cold_after, evening.empty_after) {
        (None, None) => format!(
            "it lasts the evening: {} burnt, {} left, the liquid at {} in the end",
            asked,
            shop.mass(evening.left),
            shop.temperature(evening.liquid)
        ),
        (Some(after), _) => {
            format!("IT DOES NOT LAST: too cold for the regulator {} into the burning ({asked} asked)", time(after))
        }
        (None, Some(after)) => format!("IT DOES NOT LAST: empty {} into the burning ({asked} asked)", time(after)),
    }
}

fn before_jet(page: &mut String, sheet: &Sheet, shop: &Shop) {
    let before = &sheet.plant.before;
    if before.line.is_none() && before.regulator.is_none() && before.vapor.is_none() {
        return;
    }
    heading(page, "FROM THE GAUGE TO THE JET");
    let with_line = before.line.is_some();
    let gauge = format!("gauge {}", shop.gauge_unit());
    let mut titles = vec!["", gauge.as_str()];
    if with_line {
        titles.extend(["at the jet", "lost"]);
    }
    titles.push("gas at");
    if before.regulator.is_some() {
        titles.push("valve shut, it reads");
    }
    let row = |setting: &Setting| {
        let mut row = vec![String::from(setting.entry.name.as_str()), shop.gauge_number(setting.gauge)];
        if with_line {
            let share = line_share(setting);
            let lies = if share > GAUGE_LIES { ": THE GAUGE LIES" } else { "" };
            row.extend([shop.gauge_number(setting.at_jet), format!("{:.1} %{lies}", 100.0 * share)]);
        }
        row.push(shop.temperature(setting.gas_temperature));
        if let Some(regulator) = &before.regulator {
            row.push(shop.gauge_number(regulator.reading_without_flow(setting.gauge, setting.gas)));
        }
        row
    };
    page.push_str(&table(&titles, &[], &sheet.settings.iter().map(row).collect::<Vec<_>>()));
}
