//! The furnace, the fire needed first.

use std::fmt::Write as _;
use std::format;
use std::prelude::rust_2024::*;

use crate::furnace::Lining;
use crate::plant::Number;
use crate::plant::Sheet;
use crate::plant::entries::FurnaceEntry;
use crate::plant::furnace::{CastableBlock, FurnaceBlock, KeepGauge};
use crate::plant::work::OutOfReach;
use crate::prose::firing::no_plan;
use crate::quantity::{GaugePressure, Temperature};
use crate::report::firing::{stage_words, stand_words, tried_words};
use crate::report::furnace_fields::FurnaceRow;
use crate::report::tree::Page;
use crate::report::units::{Kind, Shop};

/// A fire told by its net heat, as these units tell fires.
pub(crate) fn fire(sheet: &Sheet, shop: &Shop, net: f64) -> String {
    shop.text(shop.fire_kind(), net * basis(sheet, shop))
}

/// What a net heat is to be multiplied by for the basis of these units.
fn basis(sheet: &Sheet, shop: &Shop) -> f64 {
    let gas = &sheet.plant.gas;
    let gross = gas.gross_heating_value().joules_per_kilogram() / gas.net_heating_value().joules_per_kilogram();
    if shop.inch { gross } else { 1.0 }
}

/// The furnace; nothing without one.
pub(crate) fn furnace(page: &mut Page, sheet: &Sheet, shop: &Shop) {
    let (Some(block), Some(entry)) = (&sheet.furnace, &sheet.plant.entries.furnace) else { return };
    page.heading("HEAT NEEDED");
    page.push(FurnaceRow { sheet, block, entry }.node());
    let heat = |watts: f64| shop.text(Kind::Heat, watts);
    let kelvin = |kelvin: f64| shop.temperature(Temperature::from_kelvin(kelvin));
    let net = |watts: f64| fire(sheet, shop, watts);
    if let (Some(work), Some(charge)) = (&block.work, &entry.work) {
        let mut text = format!(
            "{} of {} to {} in {:.0} min takes {}, {} on average",
            shop.mass(charge.charge.mass),
            charge.name,
            shop.temperature(charge.temperature),
            charge.time.minutes(),
            shop.text(Kind::Energy, work.heat),
            heat(work.power.watts()),
        );
        match (work.needed(), work.course.and_then(|course| course.needed)) {
            (Some(_), Some((needed, heated))) => {
                let stand = match work.out_of_reach() {
                    Some(OutOfReach::Blower) => "more than this blower feeds".into(),
                    Some(_) => "no gauge of this jet gives that".into(),
                    None => work.fire().map_or(String::new(), |fire| stand_words(fire, shop)),
                };
                let _ = write!(
                    text,
                    "; in this furnace a fire of {} does it, the chamber dipping to {}: {stand}.",
                    spread(&needed, net),
                    kelvin(heated.lowest)
                );
            }
            _ => text += "; this chamber cannot, however large the fire.",
        }
        if let (Some(fire), Some(price)) = (work.fire(), sheet.plant.entries.gas.price) {
            let hourly = price.per_kilogram() * fire.gas.kilograms_per_hour();
            let currency = &sheet.plant.entries.gas.currency;
            let whole = Shop::money(currency, hourly * charge.time.hours());
            let _ = write!(text, " {} an hour, {whole} for this charge.", Shop::money(currency, hourly));
        }
        page.said("Work", &text);
        if let Some(course) = &work.course {
            let setting = &sheet.settings[block.largest].entry.name;
            let gas = crate::quantity::Mass::from_kilograms(
                course.heated.fuel / sheet.plant.gas.net_heating_value().joules_per_kilogram(),
            );
            let money = sheet.plant.entries.gas.price.map_or(String::new(), |price| {
                let currency = &sheet.plant.entries.gas.currency;
                format!(", {}", Shop::money(currency, price.per_kilogram() * gas.kilograms()))
            });
            let text = match &course.time {
                Some(time) => format!(
                    "with \"{setting}\" it takes {} and {} of gas{money}, the chamber dipping to {}; {} at the least, \
                     however large the fire",
                    spread(time, minutes),
                    shop.mass(gas),
                    spread(&course.lowest, kelvin),
                    minutes(course.least)
                ),
                None => format!("with \"{setting}\" it never gets there"),
            };
            page.said("", &text);
        }
    }
    let course = &block.course;
    let gauge = |found: &KeepGauge| match &found.gauge {
        _ if found.is_too_low => "this jet is too large to keep it".into(),
        Some(gauge) => format!("gauge {}", spread(gauge, |pascals| shop.gauge(GaugePressure::from_pascals(pascals)))),
        None => "no gauge of this jet gives that".into(),
    };
    let text = format!(
        "{} keeps the empty chamber at {} 40 min after warming up: {}",
        spread(&course.kept, net),
        shop.temperature(block.temperature),
        gauge(&block.keep_gauges[0])
    );
    page.said("Keep", &text);
    let parts = &course.kept_parts;
    let text = format!(
        "{} once it is at steady state: {}; walls {}, openings {}, flue {} at {}",
        spread(&course.kept_long, net),
        gauge(&block.keep_gauges[1]),
        heat(parts.walls),
        heat(parts.openings),
        heat(parts.flue),
        kelvin(parts.gas)
    );
    page.said("", &text);
    if let Some(thicker) = block.kept_thicker {
        page.said("", format!("the hot layer twice as thick would make that {}", net(thicker)));
    }
    if let Some(ends) = &course.ends {
        let setting = &sheet.settings[block.largest].entry.name;
        let warm_up = course.warm_up.as_ref();
        let text = format!(
            "\"{setting}\", left on, would end at {}; from cold to {} it takes {}",
            spread(ends, kelvin),
            shop.temperature(block.temperature),
            warm_up.map_or("for ever: it never gets there".into(), |time| spread(time, minutes))
        );
        page.said("Most", &text);
    }
    let others = sheet.settings.iter().zip(&block.ends).enumerate().filter(|(index, _)| *index != block.largest);
    for (_, (setting, ends)) in others {
        if let Some(ends) = ends {
            let text = format!("\"{}\", left on, would end at {}", setting.entry.name, kelvin(ends.chamber));
            page.said("", &text);
        }
    }
    wall(page, block, entry, shop);
    plan(page, sheet, shop);
    stop(page, block, shop);
    room(page, block, entry, shop);
    if let Some(castable) = &block.castable {
        self::castable(page, castable, shop);
    }
}

fn wall(page: &mut Page, block: &FurnaceBlock, entry: &FurnaceEntry, shop: &Shop) {
    let mut text = format!("at steady state, from inside {}", shop.temperature(block.wall.hot_face()));
    for (name, face) in entry.layer_names.iter().zip(block.wall.faces.iter().skip(1)) {
        let _ = write!(text, ", behind {name} {}", shop.temperature(*face));
    }
    let _ = write!(text, ". Makers' linings differ by {:.0} %.", 100.0 * entry.lining_spread());
    page.said("Wall", &text);
    if let (Some((at, limit)), Some((grade, depth))) = (block.steel, entry.steel) {
        let verdict = if at > limit { "too hot, it scales away" } else { "it lasts" };
        let text = format!(
            "{} {} deep is at {} and is rated for {}: {verdict}",
            grade.key,
            shop.length(depth),
            shop.temperature(at),
            shop.temperature(limit)
        );
        page.said("Steel", &text);
    }
}

fn plan(page: &mut Page, sheet: &Sheet, shop: &Shop) {
    page.heading("RUN PLAN");
    if let Some(why) = sheet.firing.no_plan {
        page.said("", no_plan(why));
        return;
    }
    let mut sum = 0.0;
    for stage in &sheet.firing.stages {
        let gas =
            if stage.gas.kilograms() > 0.0 { format!(", {} of gas", shop.mass(stage.gas)) } else { String::new() };
        let label = stage.at.map_or(String::new(), Shop::clock);
        page.said(label, stage_words(sheet, stage, shop) + &gas + &tried_words(sheet, stage));
        sum += stage.gas.kilograms();
    }
    let money = sheet.plant.entries.gas.price.map_or(String::new(), |price| {
        format!(", {}", Shop::money(&sheet.plant.entries.gas.currency, price.per_kilogram() * sum))
    });
    page.said("", format!("It burns {} of gas{money}.", shop.mass(crate::quantity::Mass::from_kilograms(sum))));
    if let Some(run) = sheet.cylinder.as_ref().and_then(|block| block.run.as_ref()) {
        page.said("", format!("Cylinder: {}.", crate::report::supply::run_words(run, shop)));
    }
    if let Some((time, mass, cost)) = sheet.run() {
        let money =
            cost.map_or(String::new(), |cost| format!(", {}", Shop::money(&sheet.plant.entries.gas.currency, cost)));
        let text = format!(
            "Worked out from the furnace, not from the settings' own minutes: those add up to {} of fire, {} of gas{money}.",
            Shop::clock(time),
            shop.mass(mass)
        );
        page.said("", &text);
    }
}

/// A number with its ends.
fn spread(number: &Number, show: impl Fn(f64) -> String) -> String {
    let value = show(number.value);
    match (number.low, number.high) {
        (Some(low), Some(high)) => format!("{value} ({} to {})", show(low), show(high)),
        (Some(low), None) => format!("{value} ({} at the least, perhaps never)", show(low)),
        _ => value,
    }
}

fn minutes(seconds: f64) -> String {
    format!("{:.0} min", seconds / 60.0)
}

/// The high end of a time, in hours where it is long.
fn longest(number: &Number) -> String {
    let seconds = number.high.unwrap_or(f64::INFINITY);
    if seconds < 7200.0 {
        format!("up to {:.0} min", (seconds / 60.0).ceil())
    } else if seconds < 48.0 * 3600.0 {
        format!("up to {:.0} h", (seconds / 3600.0).ceil())
    } else {
        "two days or more".into()
    }
}

fn stop(page: &mut Page, block: &FurnaceBlock, shop: &Shop) {
    page.heading("STOPPING");
    let course = &block.course;
    let promised = course.least_lights.low.unwrap_or(0.0);
    let text = if promised < 60.0 {
        format!(
            "do not count on hot walls to light gas: at the worst moment of the firing they do for {promised:.0} s. Purge, \
             and light as from cold, every time"
        )
    } else {
        format!(
            "the walls light gas again for {:.0} min at the most, from the worst moment of the firing; later, purge and light \
             as from cold",
            (promised / 60.0).floor()
        )
    };
    page.said("Still", &text);
    let [lights, may_light] = &course.may_light;
    let text = format!(
        "gas that leaks may ignite for {}, and above {} for {}: keep everything shut",
        longest(lights),
        shop.temperature(block.lights),
        longest(may_light)
    );
    page.said("", &text);
    let back = block.back_through_head.map_or(String::new(), |flow| format!(" ({} of it)", shop.gas(flow)));
    let draft = shop.low_pressure(block.draft.pascals());
    page.said("", format!("a draft of {draft} pushes hot gas back through a stopped burner{back}"));
}

fn room(page: &mut Page, block: &FurnaceBlock, entry: &FurnaceEntry, shop: &Shop) {
    page.heading("ROOM");
    let text = format!("the largest fire takes {} of fresh air: let that much in", shop.air(block.fire_air));
    page.said("Fire", &text);
    if let (Some(air), Some(room)) = (block.carbon_monoxide_air, entry.room) {
        let text = format!(
            "{} of leaking gases with {:.1} % of carbon monoxide want {} of fresh air to stay under {:.0} ppm ({})",
            shop.air(room.leak),
            100.0 * room.carbon_monoxide,
            shop.air(air),
            1e6 * room.limit.fraction,
            room.limit.source
        );
        page.said("Leak", &text);
    }
}

/// One of a thing, or so many.
fn counted(count: u32, what: &str) -> String {
    format!("{count} {what}{}", if count == 1 { "" } else { "s" })
}

pub(crate) fn castable(page: &mut Page, block: &CastableBlock, shop: &Shop) {
    page.heading("LINING TO POUR");
    let anchors = block.anchors.map_or(String::new(), |count| format!(", {}", counted(count, "anchor")));
    let text = format!(
        "{} ({} dry without the margin), {} of water{anchors}; lifted whole, each of two sling legs at 60 degrees \
         pulls {}: ask a rigger",
        counted(block.mix.bags, "bag"),
        shop.mass(block.mix.dry),
        shop.mass(block.mix.water),
        shop.text(Kind::Force, block.pull.newtons())
    );
    page.said("Buy", &text);
    let mut text = String::new();
    for step in &block.steps {
        let how = if step.rate_per_hour > 0.0 {
            format!("to {} at {} an hour", shop.temperature(step.to), shop.degrees(step.rate_per_hour))
        } else {
            format!("keep it {:.1} h", step.time.hours())
        };
        let _ = write!(text, "{}{how}", if text.is_empty() { "" } else { ", " });
    }
    let _ = write!(
        text,
        ". The water takes {}, {:.0} min of the smallest fire at the least. The maker's sheet overrides.",
        shop.text(Kind::Energy, block.heat),
        block.least.minutes()
    );
    page.said("Dry", &text);
}

/// The panels added up.
pub(crate) fn lining_words(lining: &Lining, entry: &FurnaceEntry, shop: &Shop) -> [String; 2] {
    let sum = lining.take_off();
    let panels = format!(
        "{} panels close a chamber of {}: {} of hot face, {} of openings, {} of lining.",
        entry.panels.len(),
        shop.text(Kind::Volume, sum.chamber_volume),
        shop.text(Kind::Area, sum.hot_area.square_meters()),
        shop.text(Kind::Area, sum.opening_area.square_meters()),
        shop.text(Kind::Volume, sum.lining_volume),
    );
    let mass = lining.mass(entry.layers[0].material.density());
    [panels, format!("In {} that is {}.", entry.layer_names[0], shop.mass(mass))]
}
