//! The lighting block in words, as a table and as a picture to read out.

use std::format;
use std::prelude::rust_2024::*;
use std::string::ToString;
use std::vec;

use crate::burner::{GLOW_CELSIUS, GoesOut, Lights, Span};
use crate::plant::evaluation::Sheet;
use crate::plant::lighting::{COLUMNS, FiresEnd, LightingBlock, SettingLighting};
use crate::quantity::{Duration, Temperature};
use crate::report::page::{Extent, heading, paragraph};
use crate::report::table::table;
use crate::report::units::Shop;

/// Width of the picture's labels.
const LABEL: usize = 18;

/// The lighting block; empty without blower and head.
#[must_use]
pub fn lighting_text(sheet: &Sheet, shop: &Shop, extent: Extent) -> String {
    let Some(block) = &sheet.lighting else { return String::new() };
    let mut page = String::new();
    heading(&mut page, "LIGHTING");
    if extent == Extent::Wall {
        picture(&mut page, sheet, block, shop);
        return page;
    }
    why(&mut page, sheet, block, shop);
    page.push('\n');
    picture(&mut page, sheet, block, shop);
    page.push('\n');
    settings(&mut page, sheet, block, shop);
    unlit(&mut page, sheet, block, shop);
    ports(&mut page, sheet, block, shop);
    page
}

fn damper(sheet: &Sheet, block: &LightingBlock) -> String {
    if sheet.plant.entries.damper.is_some() {
        format!("the damper left at {}", Shop::share(block.left))
    } else {
        "no damper".into()
    }
}

/// A stretch of gauge settings in words; an end that is only where looking stopped is not told as one.
fn stretch(span: &Span, shop: &Shop) -> String {
    match (span.low_ends, span.high_ends) {
        (true, true) => format!("from {} to {}", shop.gauge(span.low), shop.gauge(span.high)),
        (true, false) => format!("from {} up", shop.gauge(span.low)),
        (false, true) => format!("up to {}", shop.gauge(span.high)),
        (false, false) => "at every gauge".into(),
    }
}

/// The same where a lower end that is not known is where the gauges begin.
fn from_least(span: &Span, shop: &Shop) -> String {
    match (span.low_ends, span.high_ends) {
        (false, true) => format!("at every gauge up to {}", shop.gauge(span.high)),
        _ => stretch(span, shop),
    }
}

fn why(page: &mut String, sheet: &Sheet, block: &LightingBlock, shop: &Shop) {
    let left = damper(sheet, block);
    let text = format!(
        "With {left} the blower gives nearly the same air at every gauge. Less gas in the same air is a leaner mixture: \
         turning down only the gas thins the fire until it goes out."
    );
    paragraph(page, "  Why", &text);
    match (&block.range.within_limits, &block.range.cold, block.known.head_constant) {
        (None, ..) => paragraph(page, "  Cold", "no gauge makes a mixture that burns cold with this damper"),
        (Some(limits), _, None) => {
            let text = format!(
                "with {left} the mixture is within the limits of burning {}: outside them it cannot light. Where in them your head \
                 lights is not known until you have seen it: write the lowest gauge that lights it cold into [lighting]. \
                 All below but those limits is indicative.",
                stretch(limits, shop)
            );
            paragraph(page, "  Cold", &text);
        }
        (Some(limits), None, Some(_)) => {
            let text = format!(
                "with {left} the mixture is within the limits of burning {}, but the flames let go of the ports everywhere: close \
                 the damper to light",
                stretch(limits, shop)
            );
            paragraph(page, "  Cold", &text);
        }
        (Some(limits), Some(cold), Some(_)) => {
            let mut text = format!("with {left} a cold chamber lights {}", stretch(cold, shop));
            if cold.low_ends && limits.low_ends && limits.low < cold.low {
                text += &format!(
                    ". Below that the flames burn too slowly for the speed in the ports and let go, and below {} there is \
                     too little gas in the air to burn at all",
                    shop.gauge(limits.low)
                );
            }
            if cold.high_ends {
                text += ". Above it the mixture is too rich and burns slowly again, but that end is indicative";
            }
            paragraph(page, "  Cold", &(text + "."));
        }
    }
    glowing(page, &left, block, shop);
    // Without a damper the air cannot be turned down.
    if sheet.plant.entries.damper.is_some() {
        turned(page, sheet, block, shop);
    }
}

fn glowing(page: &mut String, left: &str, block: &LightingBlock, shop: &Shop) {
    let glow = shop.temperature(Temperature::from_celsius(GLOW_CELSIUS));
    let Some(span) = &block.range.glowing else {
        paragraph(page, "  Hot", "no gauge keeps the chamber glowing with this damper");
        return;
    };
    let loss = match block.known.chamber.loss {
        Some(loss) => format!("it loses {:.1} kW then", loss.watts() / 1e3),
        None => "what it loses is not known, so this is the least it can be".to_string(),
    };
    let text = format!(
        "once the walls glow, above {glow}, they light whatever gas comes: with {left} it burns {} ({loss}).{}",
        stretch(span, shop),
        if span.low_ends {
            " Lower than that the fire is too small or too thin to keep them glowing, and it goes out."
        } else {
            ""
        }
    );
    paragraph(page, "  Hot", &text);
    if let Some(times) = block.cold_over_glowing() {
        let text = format!(
            "so a cold chamber wants {times:.1} times the pressure that keeps it hot: light high, go down when it glows"
        );
        paragraph(page, "", &text);
    }
}

fn turned(page: &mut String, sheet: &Sheet, block: &LightingBlock, shop: &Shop) {
    let ratio = Shop::ratio(sheet.plant.entries.air_ratio);
    let turned = format!("with the damper moved along with the gauge, so that the air ratio stays {ratio},");
    let mut text = match (&block.turned.cold, block.known.head_constant) {
        (Some(cold), _) => format!("{turned} it lights cold {}", from_least(cold, shop)),
        (None, Some(_)) => format!("{turned} it does not light cold"),
        (None, None) => format!("{turned} the mixture is the same at every gauge"),
    };
    if !block.runs_back_known {
        text += "; WHERE THE FLAME RUNS BACK IS NOT KNOWN of this gas, so how far the fire can be turned down is not either";
    }
    text += &match block.runs_back_below {
        Some(gauge) => format!("; under {} the flame may run back into the ports", shop.gauge(gauge)),
        None => String::new(),
    };
    paragraph(page, "  Damper", &(text + "."));
    if let Some([(low_at, low_gross, low_net), (high_at, high_gross, high_net)]) = block.fires {
        let end = match block.fires_end {
            FiresEnd::Glow => "below that the glow goes",
            FiresEnd::Damper => "the damper closes no further",
            FiresEnd::RunsBack => "below that the flame may run back",
            FiresEnd::Gauge => "lower this gauge cannot be read",
        };
        let text = format!(
            "so turned, the fire goes from {} at {} ({end}) to {} at {}, the most this blower feeds: 1 to {:.1}. Indicative \
             at its lower end",
            shop.heat(low_gross, low_net),
            shop.gauge(low_at),
            shop.heat(high_gross, high_net),
            shop.gauge(high_at),
            high_net.watts() / low_net.watts()
        );
        paragraph(page, "", &text);
    }
}

/// Puts a text into a line from a column on, and says whether there was room.
fn put(line: &mut [char], column: usize, text: &str) -> bool {
    let end = column + text.chars().count();
    if end > COLUMNS || line[column.saturating_sub(1)..end].iter().any(|&kept| kept != ' ') {
        return false;
    }
    for (index, character) in text.chars().enumerate() {
        line[column + index] = character;
    }
    true
}

fn drawn_line(page: &mut String, label: &str, line: &[char]) {
    let line: String = line.iter().collect();
    page.push_str(format!("  {label:<LABEL$}{line}").trim_end());
    page.push('\n');
}

fn picture(page: &mut String, sheet: &Sheet, block: &LightingBlock, shop: &Shop) {
    const ROUND: [f64; 9] = [0.125, 0.25, 0.5, 1.0, 2.0, 4.0, 8.0, 16.0, 32.0];
    let column_of = |pascals: f64| {
        let (low, high) = (block.drawn[0].0.pascals(), block.drawn[COLUMNS - 1].0.pascals());
        let place = (pascals / low).ln() / (high / low).ln() * (COLUMNS - 1) as f64;
        (-0.5..COLUMNS as f64 - 0.5).contains(&place).then(|| place.round() as usize)
    };
    let blank = || vec![' '; COLUMNS];
    let (mut gauges, mut ratios) = (blank(), blank());
    for round in ROUND {
        let gauge = if shop.inch {
            crate::quantity::GaugePressure::from_psi(round)
        } else {
            crate::quantity::GaugePressure::from_kilopascals(8.0 * round)
        };
        let Some(column) = column_of(gauge.pascals()) else { continue };
        let text = if shop.inch { format!("{round}") } else { format!("{}", 0.08 * round) };
        if put(&mut gauges, column, &text) {
            let ratio = block.drawn[column].1.air_ratio;
            put(&mut ratios, column, &ratio.map_or("-".into(), Shop::ratio));
        }
    }
    let left = if sheet.plant.entries.damper.is_some() {
        format!("  The gauge from left to right, the damper left at {}:\n", Shop::share(block.left))
    } else {
        "  The gauge from left to right:\n".into()
    };
    page.push_str(&left);
    drawn_line(page, &format!("gauge {}", shop.gauge_unit()), &gauges);
    drawn_line(page, "air ratio cold", &ratios);
    let glowing: Vec<char> =
        block.drawn.iter().map(|(_, lighting)| if lighting.walls.is_some() { '=' } else { '.' }).collect();
    drawn_line(page, "glowing chamber", &glowing);
    let lit = if block.known.head_constant.is_some() { '#' } else { '?' };
    let cold: Vec<char> = block
        .drawn
        .iter()
        .map(|(_, lighting)| match lighting.goes_out {
            None => lit,
            Some(GoesOut::LetsGo) => '-',
            Some(_) => '.',
        })
        .collect();
    drawn_line(page, "cold chamber", &cold);
    let mut marks: Vec<Vec<char>> = vec![];
    for (setting, found) in sheet.settings.iter().zip(&block.settings) {
        let Some(column) = column_of(setting.gauge.pascals()).filter(|_| found.is_left) else { continue };
        let text = format!("^ {}", setting.entry.name);
        if !marks.iter_mut().any(|line| put(line, column, &text)) {
            let mut line = blank();
            if put(&mut line, column, &text) {
                marks.push(line);
            }
        }
    }
    for line in &marks {
        drawn_line(page, "", line);
    }
    let cold = if block.known.head_constant.is_some() {
        "# lights, - within the limits but the flames let go"
    } else {
        "? within the limits: it may light"
    };
    page.push_str(&format!("  {:LABEL$}= burns, {cold}, . goes out\n", ""));
}

fn settings(page: &mut String, sheet: &Sheet, block: &LightingBlock, shop: &Shop) {
    let gauge = format!("gauge {}", shop.gauge_unit());
    let titles = ["", &gauge, "damper", "air ratio cold", "a cold chamber", "a glowing chamber"];
    let rows: Vec<Vec<String>> = sheet
        .settings
        .iter()
        .zip(&block.settings)
        .map(|(setting, found)| {
            let opening = setting.air.as_ref().and_then(|air| air.opening);
            let left = if found.is_left && sheet.plant.entries.damper.is_some() { " (left)" } else { "" };
            vec![
                String::from(setting.entry.name.as_str()),
                shop.gauge_number(setting.gauge),
                opening.map_or("-".into(), |opening| Shop::share(opening) + left),
                found.lighting.air_ratio.map_or("-".into(), Shop::ratio),
                cold_words(block, found),
                glowing_words(found, shop),
            ]
        })
        .collect();
    page.push_str(&table(&titles, &[4, 5], &rows));
}

fn cold_words(block: &LightingBlock, found: &SettingLighting) -> String {
    match found.lighting.goes_out {
        None if block.known.head_constant.is_some() => "lights",
        None => "may light",
        Some(GoesOut::TooLean) => "goes out: too lean",
        Some(GoesOut::TooRich) => "goes out: too rich",
        Some(GoesOut::LetsGo) => "goes out: lets go",
        Some(GoesOut::NoFlow) => "never light",
    }
    .into()
}

fn glowing_words(found: &SettingLighting, shop: &Shop) -> String {
    match (found.lighting.walls, found.lighting.lights) {
        (Some(walls), _) if walls.celsius() > GLOW_CELSIUS + 1.0 => {
            format!("burns above {}", shop.temperature(walls))
        }
        (Some(_), _) => "burns".into(),
        (None, Lights::Cold) => "burns, the glow fades".into(),
        (None, _) => "goes out".into(),
    }
}

fn seconds(time: Option<Duration>, never: &str) -> String {
    time.map_or(never.into(), |time| format!("{:.1} s", time.seconds()))
}

fn unlit(page: &mut String, sheet: &Sheet, block: &LightingBlock, shop: &Shop) {
    let (Some(volume), Some(changes)) =
        (block.known.chamber.volume, block.settings.iter().find_map(|found| found.unlit).map(|unlit| unlit.changes))
    else {
        paragraph(page, "  Unlit", "how soon unlit gas is a bomb needs the chamber's volume: write it into [lighting]");
        return;
    };
    let stands = if sheet.plant.entries.damper.is_some() { " and the damper where it stands" } else { "" };
    let size = if shop.inch { format!("{:.2} ft3", volume.cubic_feet()) } else { format!("{:.0} L", volume.liters()) };
    let text = format!(
        "unlit gas makes this chamber ({size}) a bomb so soon; {changes:.1} changes of air blow it out, the gas off{stands}:"
    );
    paragraph(page, "  Unlit", &text);
    let titles = ["", "a bomb after", "blower stopped", "blow through for"];
    let blow_through = format!("{:.0} s", sheet.blow_through.time.seconds());
    let rows: Vec<Vec<String>> = sheet
        .settings
        .iter()
        .zip(&block.settings)
        .filter_map(|(setting, found)| {
            let unlit = found.unlit?;
            Some(vec![
                String::from(setting.entry.name.as_str()),
                seconds(unlit.burnable_after, "too lean"),
                seconds(unlit.burnable_without_air, "no gas"),
                unlit.blow_through.map_or("open the damper".into(), |_| blow_through.clone()),
            ])
        })
        .collect();
    page.push_str(&table(&titles, &[], &rows));
}

fn ports(page: &mut String, sheet: &Sheet, block: &LightingBlock, shop: &Shop) {
    let Some(built) = block.heads.first() else { return };
    let setting = sheet.air.as_ref().map_or("", |air| sheet.settings[air.setting].entry.name.as_str());
    let place = if sheet.plant.burner.as_ref().is_some_and(|burner| burner.head.ports().is_some()) {
        format!("each hole carries {:.0} W of the fire, net", built.ports.heat.watts())
    } else {
        format!("each square millimeter of the slot carries {:.0} W of the fire, net", built.ports.heat_per_area / 1e6)
    };
    let cold = shop.low_pressure(built.ports.pressure_cold.pascals());
    heading(page, "THE HEAD AND OTHER HOLES");
    let text = format!(
        "at the gauge of \"{setting}\", {}: {place}; the head as hot as at work takes {}, cold {cold}",
        damper(sheet, block),
        shop.low_pressure(built.ports.pressure.pascals())
    );
    paragraph(page, "", &text);
    let pressure = if shop.inch { "in w.c." } else { "Pa" };
    let titles = ["", pressure, "air ratio", "m/s", "Reynolds", "gradient", "runs back at", "stops at"];
    let rows: Vec<Vec<String>> = block
        .heads
        .iter()
        .map(|head| {
            let flame = head.ports.flame.filter(|flame| flame.flash_back > 0.0);
            let pressure = shop.low_pressure(head.ports.pressure.pascals());
            vec![
                head.what.into(),
                pressure.split(' ').next().unwrap_or_default().into(),
                head.air_ratio.map_or("-".into(), Shop::ratio),
                format!("{:.1}", head.ports.speed.meters_per_second()),
                format!("{:.0}", head.ports.reynolds_number),
                format!("{:.0}", head.ports.gradient),
                flame.map_or("-".into(), |flame| format!("{:.0}", flame.flash_back)),
                flame.map_or("-".into(), |flame| shop.length(flame.quenching_distance)),
            ]
        })
        .collect();
    page.push_str(&table(&titles, &[], &rows));
    paragraph(
        page,
        "",
        "Gradients are those of the speed at a hole's rim, 1/s. A flame runs back where that is too flat, and has done so \
         at three times the gradient said; a hole of the last column stops it while the head is cold. Indicative.",
    );
    if let Some(constant) = block.known.head_constant {
        let text = format!(
            "By the lighting you saw, this head's flames bear {constant:.0} times the gradient of a plain port's before \
             they let go."
        );
        paragraph(page, "", &text);
    }
}
