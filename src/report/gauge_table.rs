//! What each gauge reading does, and what another drill in the cap would do.

use std::format;
use std::prelude::rust_2024::*;
use std::string::ToString;
use std::vec;

use crate::Input;
use crate::plant::Sheet;
use crate::plant::sweep::Rung;
use crate::report::field::{Cells, Value, columns};
use crate::report::settings::{SettingRow, other_drill};
use crate::report::tree::{Member, Node, Page, Row, Section, Table};
use crate::report::units::Shop;

/// A gauge reading of a sheet.
pub(crate) struct RungRow<'s> {
    sheet: &'s Sheet,
    rung: &'s Rung,
}

impl RungRow<'_> {
    fn damper(&self) -> Value {
        let opening = Value::from(self.rung.opening);
        if self.sheet.air.is_none() || self.sheet.plant.entries.damper.is_none() {
            return opening;
        }
        if self.rung.too_much_air {
            return opening.or_said(format!("under {}", Shop::share(Input::DamperOpening.range().min)));
        }
        opening.or_said("wide, too little")
    }
}

/// Heat and air over round gauge readings.
pub(crate) fn by_gauge(page: &mut Page, sheet: &Sheet) {
    let rows = || sheet.rungs.iter().map(|rung| Row::of([self::rung(&RungRow { sheet, rung })])).collect();
    if sheet.rungs.is_empty() {
        return page.push(Node::rows(&GAUGE_TABLE, rows()));
    }
    page.heading("EACH GAUGE READING");
    let left = sheet.air.as_ref().and_then(|air| sheet.settings[air.setting].air.as_ref()).and_then(|air| air.opening);
    let titles = vec![
        ("hourly", format!("{} an hour", sheet.plant.entries.gas.currency)),
        ("damper_opening", format!("damper for {}", Shop::ratio(sheet.plant.entries.air_ratio))),
        (
            "air_ratio_damper_left",
            left.map_or("air ratio".into(), |left| format!("air ratio at {}", Shop::share(left))),
        ),
    ];
    page.push(Node::Table(Table { section: Some(&GAUGE_TABLE), titles, rows: rows() }));
    if sheet.air.is_some() && sheet.plant.entries.damper.is_some() {
        page.said("", "The last column: the damper left there, only the gauge turned.");
    }
}

/// The sizes next to the drill: the gauge that gives the same fire.
pub(crate) fn other_drills(page: &mut Page, sheet: &Sheet, settings: &[SettingRow<'_>]) {
    let name = |side: usize| sheet.settings[0].other_drillss[side].as_ref().map(|wrong| wrong.drill);
    if name(0).is_none() && name(1).is_none() {
        return;
    }
    page.heading("OTHER DRILL, SAME HEAT");
    let title = |side: usize| {
        name(side).map_or("-".into(), |drill| format!("{drill} ({:.2} mm)", drill.diameter().millimeters()))
    };
    let own = sheet.plant.drill.map_or_else(|| "the measured bore".into(), |drill| drill.to_string());
    let titles = vec![
        ("drill_below_gauge_pressure_pa", title(0)),
        ("gauge_pressure_pa", own),
        ("drill_above_gauge_pressure_pa", title(1)),
    ];
    let cells = |row: &SettingRow<'_>| -> [Cells; 3] {
        [row.name(), row.flow().only(&["gauge_pressure_pa"]), other_drill(row)]
    };
    page.push(Node::view(settings.iter().map(|row| Row::of(cells(row))).collect(), titles));
}

/// Sheet: gauge_table, for programs.
pub(crate) const GAUGE_TABLE: Section = Section {
    key: "gauge_table",
    name: "sheet: gauge_table",
    words: "Heat and air over round gauge pressures, an array",
    about: "",
    is_many: true,
    members: &[Member::Columns(RUNG)],
};

columns! {
    /// Heat and air at a round gauge reading.
    pub(crate) RUNG, rung(row: &RungRow<'_>);
    gauge_pressure_pa, "gauge", Gauge, Page(10) => row.rung.gauge.pascals();
    mass_flow_kg_per_s, "gas", MassFlow, Page(30) => row.rung.gas.kilograms_per_second();
    heat_gross_w, "heat", HeatGross, Inch(20) => row.rung.heat_gross.watts();
    heat_net_w, "heat", HeatNet, Metric(20) => row.rung.heat_net.watts();
    hourly, "an hour", MoneyRate, Words(40) => row.sheet.plant.entries.gas.price.map(|price| price.per_kilogram() * row.rung.gas.kilograms_per_hour());
    air_stoichiometric_kg_per_s, "air stoichiometric", MassFlow, Programs => row.rung.gas.kilograms_per_second() * row.sheet.plant.air_need.mass_ratio;
    /// Air ratio with the damper left where the setting with the most gas has it; null without blower and head, or
    /// without gas.
    air_ratio_damper_left, "air ratio", Ratio, Page(60) => row.rung.air_ratio_damper_left;
    damper_opening, "damper", Share, Page(50) => row.damper();
    too_much_air, "too much air", Word, Programs => row.sheet.air.as_ref().map(|_| row.rung.too_much_air);
}
