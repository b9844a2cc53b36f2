//! The blower against the largest fire, and what would cure one too small.

use std::format;
use std::prelude::rust_2024::*;
use std::vec;

use crate::air::StandardAirDuty;
use crate::burner::Remedies;
use crate::orifice::DrillList;
use crate::plant::{AirBlock, Fired, Setting, Sheet};
use crate::report::field::columns;
use crate::report::tree::{Member, Node, Page, Section};
use crate::report::units::{Kind, Shop};

pub(crate) fn blower(page: &mut Page, sheet: &Sheet, air: &AirBlock, shop: &Shop) {
    page.heading("BLOWER");
    page.push(Node::block(&AIR, std::vec![Node::fields([self::air(&AirRow { sheet, air })])]));
    let verdict = if air.surplus.pascals() >= 0.0 {
        format!("WILL DO, with {} to spare", shop.low_pressure(air.surplus.pascals()))
    } else {
        format!("IS TOO SMALL, short by {}", shop.low_pressure(-air.surplus.pascals()))
    };
    let judged = sheet.judged(air);
    let (open, held) = match judged.air.as_ref().filter(|_| air.judged != Fired::Work) {
        _ if sheet.plant.entries.damper.is_some() => (", damper wide open", String::new()),
        // What is to spare goes through where nothing holds it back.
        Some(found) if air.surplus.pascals() > 0.0 => {
            let ratio = found.air_ratio().map_or(String::new(), |ratio| format!(" {} then", Shop::ratio(ratio)));
            ("", format!(" There is no damper to hold that back: the air ratio is{ratio}."))
        }
        _ => ("", String::new()),
    };
    let text = format!(
        "\"{}\" at {} and air ratio {} wants {} at {} here{open}. This blower {verdict}.{held}",
        judged.entry.name,
        shop.gauge(air.gauge),
        Shop::ratio(air.air_ratio),
        shop.air(air.demand.air_flow),
        shop.low_pressure(air.demand.blower_pressure.pascals()),
    );
    page.said("Here", &text);
    if let (Some(gauge), Some((gross, net))) = (air.highest_gauge, air.largest_fire) {
        page.said(
            "Most",
            format!("the largest fire it can feed here is {}, at {}", shop.heat(gross, net), shop.gauge(gauge)),
        );
    }
    for setting in &sheet.settings {
        if let Some(remedies) = setting.air.as_ref().and_then(|air| air.remedies) {
            page.said("Cures", cures(setting, &remedies, sheet, shop));
        }
    }
    let Some(standard) = air.duty.map(|duty| duty.as_standard_air) else {
        page.said("Buying", "no blower makes so much pressure: a wider head, more heads or a smaller jet");
        return;
    };
    let power = standard
        .shaft_power
        .map_or(String::new(), |power| format!(", {} at the shaft", shop.text(Kind::Power, power.watts())));
    page.said(
        "Buying",
        format!(
            "in a catalog for sea-level air (1.2 kg/m3) look for {} at {}{power}",
            shop.air(standard.flow),
            shop.low_pressure(standard.static_pressure.pascals())
        ),
    );
}

/// The cures of one setting, with their numbers.
fn cures(setting: &Setting, remedies: &Remedies, sheet: &Sheet, shop: &Shop) -> String {
    let list = sheet.plant.drill.map_or(DrillList::Number, crate::orifice::Drill::list);
    let mut cures: Vec<String> = vec![];
    if let Some(bore) = remedies.bore {
        let drill = list.neighbors(bore).0.map_or(String::new(), |drill| format!("{drill}, "));
        cures.push(format!("a smaller jet ({drill}at most {}) at the same gauge", shop.bore(bore)));
    }
    if let Some(gauge) = remedies.gauge {
        cures.push(format!("a lower setting ({} at most)", shop.gauge(gauge)));
    }
    if let Some(area) = remedies.head_area {
        cures.push(format!("a wider head ({area:.2} times the open area)"));
    }
    if let Some(speed) = remedies.wheel_speed {
        cures.push(format!(
            "a faster wheel ({speed:.2} times the speed, {:.1} times the power; ask its maker)",
            speed.powi(3)
        ));
    }
    if cures.is_empty() {
        return format!("for \"{}\" no single change is enough: another blower", setting.entry.name);
    }
    format!("for \"{}\", one of: {}", setting.entry.name, cures.join("; "))
}

fn standard(air: &AirBlock) -> Option<&StandardAirDuty> {
    air.duty.as_ref().map(|duty| &duty.as_standard_air)
}

/// Sheet: air, for programs.
pub(crate) const AIR: Section = Section {
    key: "air",
    name: "sheet: air",
    words: "The blower against the setting with the most gas, or the work's fire where that is larger; null without \
        blower and head",
    about: "Damper wide open.",
    is_many: false,
    members: &[Member::Columns(AIR_FIELDS)],
};

/// The blower of a sheet.
pub(crate) struct AirRow<'s> {
    sheet: &'s Sheet,
    air: &'s AirBlock,
}

columns! {
    /// The blower against the largest fire.
    pub(crate) AIR_FIELDS, air(row: &AirRow<'_>);
    setting, "setting", Word, Programs => row.sheet.judged(row.air).entry.name.as_str();
    air_ratio, "air ratio", Number, Programs => row.air.air_ratio;
    air_kg_per_s, "air", MassFlow, Programs => row.air.demand.air.kilograms_per_second();
    air_flow_m3_per_s, "air flow", Flow, Programs => row.air.demand.air_flow.cubic_meters_per_second();
    /// Static pressure this fire needs from the blower at that air flow.
    blower_pressure_needed_pa, "blower pressure needed", LowPressure, Programs => row.air.demand.blower_pressure.pascals();
    /// What the blower has over it; below 0 when it is too small.
    blower_pressure_surplus_pa, "blower pressure surplus", LowPressure, Programs => row.air.surplus.pascals();
    /// Power given to the air; null when no blower makes the pressure needed.
    air_power_w, "air power", Power, Programs => row.air.duty.as_ref().map(|duty| duty.air_power.watts());
    /// Power at the shaft on the site; null when neither the points nor an efficiency tell it.
    shaft_power_w, "shaft power", Power, Programs => row.air.duty.as_ref().and_then(|duty| duty.shaft_power).map(|power| power.watts());
    /// Flow to look for in a catalog for air of 1.2 kg/m3; null when no blower makes the pressure needed.
    standard_air_flow_m3_per_s, "standard air flow", Flow, Programs => standard(row.air).map(|duty| duty.flow.cubic_meters_per_second());
    /// Static pressure to look for there; null when no blower makes the pressure needed.
    standard_air_pressure_pa, "standard air pressure", LowPressure, Programs => standard(row.air).map(|duty| duty.static_pressure.pascals());
    /// Shaft power to look for there; null when neither the points nor an efficiency tell it.
    standard_air_shaft_power_w, "standard air shaft power", Heat, Programs => standard(row.air).and_then(|duty| duty.shaft_power).map(|power| power.watts());
    /// Highest gauge pressure the blower can feed at this air ratio; null when it feeds no fire at all.
    largest_gauge_pressure_pa, "largest gauge pressure", Gauge, Programs => row.air.highest_gauge.map(|gauge| gauge.pascals());
    /// Heat there, gross; null when it feeds no fire at all.
    largest_heat_gross_w, "largest heat gross", HeatGross, Programs => row.air.largest_fire.map(|fire| fire.0.watts());
    /// Heat there, net; null when it feeds no fire at all.
    largest_heat_net_w, "largest heat net", HeatNet, Programs => row.air.largest_fire.map(|fire| fire.1.watts());
}
