//! The sheet as one printed page, in the order of an evening.

use std::fmt::Write as _;
use std::format;
use std::prelude::rust_2024::*;
use std::string::ToString;
use std::vec;

use crate::Input;
use crate::burner::Remedies;
use crate::combustion::leanest_air_ratio;
use crate::orifice::{DrillList, Edge};
use crate::plant::carbon_monoxide::poisons;
use crate::plant::entries::SitePressure;
use crate::plant::{AirBlock, Fired, Setting, Sheet, WrongDrill};
use crate::quantity::Length;
use crate::report::certainty::{fire_cell, footnote, ratio_cell};
use crate::report::firing::tonight;
use crate::report::table::table;
use crate::report::units::{Shop, fire_words};
use crate::report::warnings::{MOST_ON_WALL, setting_name, warnings_text};

/// Columns of the page.
pub(crate) const WIDTH: usize = 96;

/// How much of the sheet is printed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Extent {
    /// What hangs on the wall: settings, the evening, when it lights, stopping, warnings.
    Wall,
    /// Everything.
    Whole,
}

/// The sheet as text.
#[must_use]
pub fn sheet_text(sheet: &Sheet, shop: &Shop, extent: Extent) -> String {
    let whole = extent == Extent::Whole;
    let mut page = String::new();
    head(&mut page, sheet, shop);
    page.push_str(&crate::report::furnace::furnace_text(sheet, shop, extent));
    set(&mut page, sheet, shop);
    tonight(&mut page, sheet, shop);
    if whole {
        by_gauge(&mut page, sheet, shop);
        wrong_drill(&mut page, sheet, shop);
    }
    page.push_str(&crate::report::lighting::lighting_text(sheet, shop, extent));
    if whole {
        if let Some(air) = &sheet.air {
            blower(&mut page, sheet, air, shop);
        }
        page.push_str(&crate::report::supply::supply_text(sheet, shop));
        crate::report::certainty::least_sure(&mut page, sheet);
    }
    let most = if whole { usize::MAX } else { MOST_ON_WALL };
    warnings_text(&mut page, &sheet.hazards, |hazard| setting_name(sheet, hazard), shop, most);
    crate::prose::always::always(&mut page);
    page
}

/// Adds a paragraph: the first line after a label, the others under it.
pub(crate) fn paragraph(page: &mut String, label: &str, text: &str) {
    const INDENT: usize = 9;
    let mut line = format!("{label:<INDENT$}");
    let mut used = line.len();
    // The inch of water ends in a point of its own.
    for word in text.replace("w.c..", "w.c.").split_whitespace() {
        if used > INDENT && used + 1 + word.chars().count() > WIDTH {
            page.push_str(line.trim_end());
            page.push('\n');
            line = " ".repeat(INDENT);
            used = INDENT;
        } else if used > INDENT {
            line.push(' ');
            used += 1;
        }
        line.push_str(word);
        used += word.chars().count();
    }
    page.push_str(line.trim_end());
    page.push('\n');
}

pub(crate) fn heading(page: &mut String, text: &str) {
    page.push('\n');
    page.push_str(text);
    page.push('\n');
}

fn head(page: &mut String, sheet: &Sheet, shop: &Shop) {
    let _ = writeln!(page, "{}", sheet.plant.entries.name);
    if let Some(note) = &sheet.plant.entries.note {
        paragraph(page, "", note);
    }
    let site = &sheet.plant.site;
    let place = match sheet.plant.entries.site.pressure {
        SitePressure::Altitude(altitude) | SitePressure::Forecast { altitude, .. } => shop.height(altitude) + ", ",
        SitePressure::Station(_) => String::new(),
    };
    let ambient = site.ambient_pressure();
    let pressure =
        if shop.inch { format!("{:.2} psia", ambient.psia()) } else { format!("{:.0} hPa", ambient.hectopascals()) };
    let oxygen = site.oxygen_fraction() * ambient.pascals() / site.air_temperature().kelvin();
    let at_sea_level = 0.209_46 * 101_325.0 / 288.15;
    paragraph(
        page,
        "Site",
        &format!(
            "{place}{}, {} humidity, air pressure {pressure}, {} of the oxygen at sea level",
            shop.temperature(site.air_temperature()),
            Shop::share(site.humidity()),
            Shop::share(oxygen / at_sea_level),
        ),
    );
    let heavy = &sheet.plant.entries.gas;
    let comes = match sheet.plant.before.vapor {
        Some((_, liquid)) => format!("from a cylinder at {}, colder before the jet", shop.temperature(liquid)),
        None => format!("at {} before the jet", shop.temperature(heavy.temperature)),
    };
    paragraph(page, "Gas", &format!("{} {comes}", heavy.kind));
    paragraph(page, "Jet", &jet_words(sheet, shop));
}

fn jet_words(sheet: &Sheet, shop: &Shop) -> String {
    let bore = &sheet.plant.jet.bore;
    let edge = match sheet.plant.entries.jet.shape.edge {
        Edge::Sharp => "thin sharp edge",
        Edge::Square => "square edge",
        Edge::Chamfered { .. } => "chamfered edge",
        Edge::Rounded { .. } => "rounded edge",
    };
    let name = match sheet.plant.drill {
        Some(drill) if drill.list() == DrillList::Tips => drill.to_string(),
        Some(drill) => format!("DRILL {}", drill.to_string().to_uppercase()),
        None => "measured bore".into(),
    };
    let many = match (sheet.plant.entries.jet.count, sheet.plant.heads) {
        (1, 1.0) => String::new(),
        (count, heads) => format!("{count} to a head, {heads:.0} heads: "),
    };
    let length = Length::from_meters(bore.length_ratio() * bore.diameter().meters());
    let spread = sheet.settings.iter().map(|setting| setting.jet.coefficient_uncertainty).fold(0.0, f64::max);
    format!(
        "{many}{name} ({}), straight for {}, {edge}. Its coefficient is known within {:.0} %.",
        shop.bore(bore.diameter()),
        shop.length(length),
        100.0 * spread,
    )
}

fn set(page: &mut String, sheet: &Sheet, shop: &Shop) {
    let currency = &sheet.plant.entries.gas.currency;
    heading(page, "SET THE GAUGE AND THE DAMPER");
    let gauge = format!("gauge {}", shop.gauge_unit());
    let fire = format!("fire {}", shop.heat_unit());
    let gas = format!("gas {}", shop.gas_unit());
    let money = format!("{currency} an hour");
    let leanest = leanest_air_ratio(&sheet.plant.gas, &sheet.plant.site).unwrap_or(0.0);
    let titles = ["", &gauge, "damper", "air ratio", &fire, &gas, &money, "the fire is"];
    let rows: Vec<Vec<String>> = sheet
        .settings
        .iter()
        .zip(&sheet.sure)
        .map(|(setting, sure)| {
            let ratio = setting.air.as_ref().and_then(crate::plant::SettingAir::air_ratio);
            vec![
                String::from(setting.entry.name.as_str()),
                shop.gauge_number(setting.gauge),
                damper_words(setting),
                ratio.map_or("-".into(), |ratio| ratio_cell(ratio, sure.as_ref())),
                fire_cell(shop, setting, sure.as_ref()),
                shop.gas_number(setting.gas),
                setting.cost_per_hour.map_or("-".into(), |cost| format!("{cost:.2}")),
                match ratio {
                    _ if setting.gas.kilograms_per_second() <= 0.0 => "out: no gas flows".into(),
                    Some(ratio) => fire_words(ratio, leanest, poisons(ratio, setting.monoxide)).into(),
                    None if setting.air.is_some() => "never light: gas blows back".into(),
                    None => String::new(),
                },
            ]
        })
        .collect();
    page.push_str(&table(&titles, &[7], &rows));
    paragraph(page, "", &footnote(sheet));
}

pub(crate) fn damper_words(setting: &Setting) -> String {
    let Some(air) = &setting.air else { return "-".into() };
    match (air.opening, air.shortfall) {
        (_, Some(_)) => "wide, too little".into(),
        (Some(opening), None) if air.too_much_air && setting.gas.kilograms_per_second() > 0.0 => {
            format!("less than {}", Shop::share(opening))
        }
        (Some(opening), None) => Shop::share(opening),
        (None, None) => "none".into(),
    }
}

fn by_gauge(page: &mut String, sheet: &Sheet, shop: &Shop) {
    if sheet.rungs.is_empty() {
        return;
    }
    heading(page, "WHAT EACH GAUGE READING DOES");
    let has_air = sheet.air.is_some();
    let mut columns: Vec<Vec<String>> = vec![
        vec![format!("gauge {}", shop.gauge_unit())],
        vec![format!("fire {}", shop.heat_unit())],
        vec![format!("gas {}", shop.gas_unit())],
    ];
    if sheet.plant.entries.gas.price.is_some() {
        columns.push(vec![format!("{} an hour", sheet.plant.entries.gas.currency)]);
    }
    let has_damper = has_air && sheet.plant.entries.damper.is_some();
    if has_damper {
        columns.push(vec![format!("damper for {}", Shop::ratio(sheet.plant.entries.air_ratio))]);
    }
    if has_air {
        let left =
            sheet.air.as_ref().and_then(|air| sheet.settings[air.setting].air.as_ref()).and_then(|air| air.opening);
        columns.push(vec![left.map_or("air ratio".into(), |left| format!("air ratio at {}", Shop::share(left)))]);
    }
    for rung in &sheet.rungs {
        let mut cells = vec![
            shop.gauge_number(rung.gauge),
            shop.heat_number(rung.heat_gross, rung.heat_net),
            shop.gas_number(rung.gas),
        ];
        if let Some(price) = sheet.plant.entries.gas.price {
            cells.push(format!("{:.2}", price.per_kilogram() * rung.gas.kilograms_per_hour()));
        }
        if has_damper {
            cells.push(match rung.opening {
                Some(opening) => Shop::share(opening),
                None if rung.too_much_air => {
                    format!("under {}", Shop::share(Input::DamperOpening.range().min))
                }
                None => "wide, too little".into(),
            });
        }
        if has_air {
            cells.push(rung.air_ratio_damper_left.map_or("-".into(), Shop::ratio));
        }
        for (column, cell) in columns.iter_mut().zip(cells) {
            column.push(cell);
        }
    }
    let titles: Vec<&str> = columns.iter().map(|column| column[0].as_str()).collect();
    let rows: Vec<Vec<String>> =
        (1..=sheet.rungs.len()).map(|row| columns.iter().map(|column| column[row].clone()).collect()).collect();
    page.push_str(&table(&titles, &[], &rows));
    if has_damper {
        paragraph(page, "", "The last column: the damper left there, only the gauge turned.");
    }
}

fn wrong_drill(page: &mut String, sheet: &Sheet, shop: &Shop) {
    let name = |index: usize| sheet.settings[0].wrong_drills[index].as_ref().map(|wrong| wrong.drill);
    if name(0).is_none() && name(1).is_none() {
        return;
    }
    heading(page, "WRONG DRILL IN THE CAP? SAME FIRE AT");
    let gauge = |wrong: &Option<WrongDrill>| {
        wrong.as_ref().and_then(|wrong| wrong.gauge).map_or("out of reach".into(), |gauge| shop.gauge(gauge))
    };
    let title = |index: usize| {
        name(index).map_or("-".into(), |drill| format!("{drill} ({:.2} mm)", drill.diameter().millimeters()))
    };
    let (below, above) = (title(0), title(1));
    let own = sheet.plant.drill.map_or_else(|| "the measured bore".into(), |drill| drill.to_string());
    let rows: Vec<Vec<String>> = sheet
        .settings
        .iter()
        .map(|setting| {
            vec![
                String::from(setting.entry.name.as_str()),
                gauge(&setting.wrong_drills[0]),
                shop.gauge(setting.gauge),
                gauge(&setting.wrong_drills[1]),
            ]
        })
        .collect();
    page.push_str(&table(&["", &below, &own, &above], &[], &rows));
}

fn blower(page: &mut String, sheet: &Sheet, air: &AirBlock, shop: &Shop) {
    heading(page, "BLOWER");
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
    paragraph(page, "  Here", &text);
    if let (Some(gauge), Some((gross, net))) = (air.highest_gauge, air.largest_fire) {
        paragraph(
            page,
            "  Most",
            &format!("the largest fire it can feed here is {}, at {}", shop.heat(gross, net), shop.gauge(gauge)),
        );
    }
    for setting in &sheet.settings {
        if let Some(remedies) = setting.air.as_ref().and_then(|air| air.remedies) {
            paragraph(page, "  Cures", &cures(setting, &remedies, sheet, shop));
        }
    }
    let Some(standard) = air.duty.map(|duty| duty.as_standard_air) else {
        paragraph(page, "  Buying", "no blower makes so much pressure: a wider head, more heads or a smaller jet");
        return;
    };
    let power = standard.shaft_power.map_or(String::new(), |power| format!(", {} at the shaft", shop.power(power)));
    paragraph(
        page,
        "  Buying",
        &format!(
            "in a catalogue for sea-level air (1.2 kg/m3) look for {} at {}{power}",
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
