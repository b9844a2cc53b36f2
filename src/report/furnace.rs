//! The furnace as text, the fire needed first.

use std::fmt::Write as _;
use std::format;
use std::prelude::rust_2024::*;

use crate::furnace::Lining;
use crate::plant::entries::FurnaceEntry;
use crate::plant::evaluation::Sheet;
use crate::plant::furnace::{CastableBlock, FurnaceBlock};
use crate::plant::work::OutOfReach;
use crate::prose::firing::no_plan;
use crate::report::firing::{stage_words, stand_words};
use crate::report::page::{Extent, heading, paragraph};
use crate::report::units::Shop;

/// The block of the sheet; empty without a furnace.
#[must_use]
pub fn furnace_text(sheet: &Sheet, shop: &Shop, extent: Extent) -> String {
    let mut page = String::new();
    let (Some(block), Some(entry)) = (&sheet.furnace, &sheet.plant.entries.furnace) else { return page };
    heading(&mut page, "FIRE NEEDED");
    let kilowatts = |watts: f64| format!("{:.1} kW", watts / 1e3);
    let net = |watts: f64| kilowatts(watts) + " net";
    if let (Some(work), Some(charge)) = (&block.work, &entry.work) {
        let mut text = format!(
            "{} of {} to {} in {:.0} min takes {:.1} MJ, {} on average",
            shop.mass(charge.charge.mass),
            charge.name,
            shop.temperature(charge.temperature),
            charge.time.minutes(),
            work.heat / 1e6,
            kilowatts(work.power.watts()),
        );
        if let Some(leg) = &work.leg {
            let stand = match work.out_of_reach() {
                Some(OutOfReach::Jet) => "no gauge of this jet gives that".into(),
                Some(OutOfReach::Blower) => "more than this blower feeds".into(),
                None => work.fire().map_or(String::new(), |fire| stand_words(fire, shop)),
            };
            let _ =
                write!(text, "; with walls, openings and flue a fire of {}: {stand}.", net(leg.mean_fire().watts()));
        }
        if let (Some(fire), Some(price)) = (work.fire(), sheet.plant.entries.gas.price) {
            let hourly = price.per_kilogram() * fire.gas.kilograms_per_hour();
            let currency = &sheet.plant.entries.gas.currency;
            let whole = Shop::money(currency, hourly * charge.time.hours());
            let _ = write!(text, " {} an hour, {whole} for this charge.", Shop::money(currency, hourly));
        }
        paragraph(&mut page, "  Work", &text);
        if let Some(melt) = &work.melt {
            let melted =
                melt.melted.map_or(String::new(), |time| format!(", all melted after {:.0} min", time.minutes()));
            let text = format!(
                "this crucible can take it in {:.0} min in such a chamber{melted}; it asks {} when it goes in",
                melt.time.minutes(),
                kilowatts(melt.most.watts())
            );
            paragraph(&mut page, "", &text);
        }
    }
    let parts = &block.holding;
    let text = format!(
        "{:.1} ±{:.1} kW net keeps the empty chamber at {} once it is hot through: walls {}, openings {}, flue {}",
        parts.fire.watts() / 1e3,
        block.holding_half_width.watts() / 1e3,
        shop.temperature(block.temperature),
        kilowatts(parts.walls.watts()),
        kilowatts(parts.openings.watts()),
        kilowatts(parts.flue.watts())
    );
    paragraph(&mut page, "  Hold", &text);
    let text = format!("the hot layer twice as thick would make that {}", net(block.holding_thicker.fire.watts()));
    paragraph(&mut page, "", &text);
    if let Some(reaches) = &block.reaches {
        let setting = &sheet.settings[block.largest].entry.name;
        let text = format!(
            "\"{setting}\", left on, would end at {}; from cold it takes {}",
            shop.temperature(reaches.chamber),
            block
                .warm_up
                .map_or("for ever: it never gets there".into(), |leg| format!("{:.0} min", leg.time.minutes()))
        );
        paragraph(&mut page, "  Most", &text);
    }
    if extent == Extent::Whole {
        wall(&mut page, block, entry, shop);
    }
    plan(&mut page, sheet, shop);
    stop(&mut page, block, shop);
    if extent == Extent::Wall {
        return page;
    }
    room(&mut page, block, entry, shop);
    if let Some(castable) = &block.castable {
        self::castable(&mut page, castable, shop);
    }
    page
}

fn wall(page: &mut String, block: &FurnaceBlock, entry: &FurnaceEntry, shop: &Shop) {
    let mut text = format!("hot through, from inside {}", shop.temperature(block.wall.hot_face()));
    for (name, face) in entry.layer_names.iter().zip(block.wall.faces.iter().skip(1)) {
        let _ = write!(text, ", behind {name} {}", shop.temperature(*face));
    }
    let _ = write!(text, ". Makers' linings differ by {:.0} %.", 100.0 * entry.lining_spread());
    paragraph(page, "  Wall", &text);
    if let (Some((at, bears)), Some((grade, depth))) = (block.steel, entry.steel) {
        let verdict = if at > bears { "too hot, it scales away" } else { "it lasts" };
        let text = format!(
            "{} {} deep is at {} and bears {}: {verdict}",
            grade.key,
            shop.length(depth),
            shop.temperature(at),
            shop.temperature(bears)
        );
        paragraph(page, "  Steel", &text);
    }
}

fn plan(page: &mut String, sheet: &Sheet, shop: &Shop) {
    heading(page, "THE EVENING");
    if let Some(why) = sheet.firing.no_plan {
        paragraph(page, "", no_plan(why));
        return;
    }
    let mut sum = 0.0;
    for stage in &sheet.firing.stages {
        let gas =
            if stage.gas.kilograms() > 0.0 { format!(", {} of gas", shop.mass(stage.gas)) } else { String::new() };
        let label = stage.at.map_or(String::new(), |at| format!("  {}", Shop::clock(at)));
        paragraph(page, &label, &(stage_words(sheet, stage, shop) + &gas));
        sum += stage.gas.kilograms();
    }
    let money = sheet.plant.entries.gas.price.map_or(String::new(), |price| {
        format!(", {}", Shop::money(&sheet.plant.entries.gas.currency, price.per_kilogram() * sum))
    });
    paragraph(page, "", &format!("It burns {} of gas{money}.", shop.mass(crate::quantity::Mass::from_kilograms(sum))));
    if let Some(evening) = sheet.cylinder.as_ref().and_then(|block| block.evening.as_ref()) {
        paragraph(page, "", &format!("Cylinder: {}.", crate::report::supply::evening_words(evening, shop)));
    }
    if let Some((time, mass, cost)) = sheet.evening() {
        let money =
            cost.map_or(String::new(), |cost| format!(", {}", Shop::money(&sheet.plant.entries.gas.currency, cost)));
        let text = format!(
            "Reckoned from the furnace, not from the settings' own minutes: those add up to {} of fire, {} of gas{money}.",
            Shop::clock(time),
            shop.mass(mass)
        );
        paragraph(page, "", &text);
    }
}

fn stop(page: &mut String, block: &FurnaceBlock, shop: &Shop) {
    heading(page, "STOPPING");
    let minutes = block.relights.minutes();
    let text = format!("the chamber relights gas by itself for about {minutes:.0} min: nothing may leak");
    paragraph(page, "  Still", &text);
    let (at, time) = block.may_light;
    let text = format!(
        "its wall is above {}, where this gas can light, for {:.1} h; from the one time to the other gas may light late, all that has gathered at once",
        shop.temperature(at),
        time.hours()
    );
    paragraph(page, "", &text);
    let back = block
        .back_through_head
        .map_or(String::new(), |flow| format!(" ({} {} of it)", shop.gas_number(flow), shop.gas_unit()));
    let draught = shop.low_pressure(block.draught.pascals());
    paragraph(page, "", &format!("a draught of {draught} pushes hot gas back through a stopped burner{back}"));
}

fn room(page: &mut String, block: &FurnaceBlock, entry: &FurnaceEntry, shop: &Shop) {
    heading(page, "ROOM");
    let text = format!("the largest fire takes {} of fresh air: let that much in", shop.air(block.fire_air));
    paragraph(page, "  Fire", &text);
    if let (Some(air), Some(room)) = (block.monoxide_air, entry.room) {
        let text = format!(
            "{} of leaking gases with {:.1} % of carbon monoxide want {} of fresh air to stay under {:.0} ppm ({})",
            shop.air(room.leak),
            100.0 * room.monoxide,
            shop.air(air),
            1e6 * room.limit.fraction,
            room.limit.source
        );
        paragraph(page, "  Leak", &text);
    }
}

/// One of a thing, or so many.
fn counted(count: u32, what: &str) -> String {
    format!("{count} {what}{}", if count == 1 { "" } else { "s" })
}

fn castable(page: &mut String, block: &CastableBlock, shop: &Shop) {
    heading(page, "LINING TO POUR");
    let anchors = block.anchors.map_or(String::new(), |count| format!(", {}", counted(count, "anchor")));
    let text = format!(
        "{} ({} dry without the margin), {} of water{anchors}; lifted whole, each of two sling legs at 60 degrees \
         pulls {:.0} N: ask a rigger",
        counted(block.mix.bags, "bag"),
        shop.mass(block.mix.dry),
        shop.mass(block.mix.water),
        block.pull.newtons()
    );
    paragraph(page, "  Buy", &text);
    let mut text = String::new();
    for step in &block.steps {
        let how = if step.rate_per_hour > 0.0 {
            format!("to {} at {:.0} K an hour", shop.temperature(step.to), step.rate_per_hour)
        } else {
            format!("keep it {:.1} h", step.time.hours())
        };
        let _ = write!(text, "{}{how}", if text.is_empty() { "" } else { ", " });
    }
    let _ = write!(
        text,
        ". The water takes {:.1} MJ, {:.0} min of the smallest fire at the least. The maker's sheet overrides.",
        block.heat / 1e6,
        block.least.minutes()
    );
    paragraph(page, "  Dry", &text);
}

/// The panels added up.
#[must_use]
pub fn lining_text(lining: &Lining, entry: &FurnaceEntry, castable: Option<&CastableBlock>, shop: &Shop) -> String {
    let sum = lining.take_off();
    let mut page = format!(
        "{} panels close a chamber of {:.1} L: {:.4} m2 of hot face, {:.4} m2 of openings, {:.1} L of lining.\n",
        entry.panels.len(),
        1e3 * sum.chamber_volume,
        sum.hot_area.square_meters(),
        sum.opening_area.square_meters(),
        1e3 * sum.lining_volume,
    );
    let mass = lining.mass(entry.layers[0].material.density());
    let _ = writeln!(page, "In {} that is {}.", entry.layer_names[0], shop.mass(mass));
    if let Some(block) = castable {
        self::castable(&mut page, block, shop);
    }
    page
}
