//! Lighting: why, as a table, and as a picture to read out.

use std::format;
use std::prelude::rust_2024::*;
use std::string::ToString;
use std::vec;

use crate::burner::{GLOW_CELSIUS, GoesOut, Span};
use crate::plant::lighting::{COLUMNS, FiresEnd, LightingBlock};
use crate::plant::{Sheet, Verdict};
use crate::quantity::Temperature;
use crate::report::lighting_fields::{BlockRow, LIT, UNLIT, at_rest, head_tried, lighting as lights, purge};
use crate::report::settings::SettingRow;
use crate::report::tree::{Node, Page, Row};
use crate::report::units::{Kind, Shop};

/// Width of the picture's labels.
const LABEL: usize = 18;

/// The lighting block; nothing without blower and head.
pub(crate) fn lighting(page: &mut Page, sheet: &Sheet, rows: &[SettingRow<'_>], shop: &Shop) {
    let Some(block) = &sheet.lighting else { return };
    page.heading("LIGHTING");
    page.push(BlockRow { sheet, block }.node());
    why(page, sheet, block, shop);
    page.push(Node::Drawn(format!("\n{}\n", picture(sheet, block, shop))));
    let cells = |row: &SettingRow<'_>| {
        Row::of([row.name(), row.flow().only(&["gauge_pressure_pa"]), at_rest(row), lights(row).only(&LIT)])
    };
    page.push(Node::view(rows.iter().map(cells).collect(), vec![]));
    unlit(page, sheet, block, rows, shop);
    ports(page, sheet, block, shop);
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

fn why(page: &mut Page, sheet: &Sheet, block: &LightingBlock, shop: &Shop) {
    let left = damper(sheet, block);
    let text = format!(
        "With {left} the blower gives nearly the same air at every gauge. Less gas in the same air is a leaner mixture: \
         turning down only the gas thins the fire until it goes out."
    );
    page.said("Why", &text);
    match (&block.range.within_limits, &block.range.cold, block.known.head_constant) {
        (None, ..) => page.said("Cold", "no gauge makes a mixture that burns cold with this damper"),
        (Some(limits), _, None) => {
            let text = format!(
                "with {left} the mixture is within the limits of burning {}: outside them it cannot light. Where in them your head \
                 lights is not known until you have seen it: write a gauge and damper that lit it cold into [lighting]. \
                 All below but those limits is indicative.",
                stretch(limits, shop)
            );
            page.said("Cold", &text);
        }
        (Some(limits), None, Some(_)) => {
            let text = format!(
                "with {left} the mixture is within the limits of burning {}, but the flames blow off the ports everywhere: close \
                 the damper to light",
                stretch(limits, shop)
            );
            page.said("Cold", &text);
        }
        (Some(limits), Some(cold), Some(_)) => {
            let mut text = format!("with {left} a cold chamber lights {}", stretch(cold, shop));
            if cold.low_ends && limits.low_ends && limits.low < cold.low {
                text += &format!(
                    ". Below that the flames burn too slowly for the speed in the ports and blow off, and below {} there is \
                     too little gas in the air to burn at all",
                    shop.gauge(limits.low)
                );
            }
            if cold.high_ends {
                text += ". Above it the mixture is too rich and burns slowly again, but that end is indicative";
            }
            page.said("Cold", &(text + "."));
        }
    }
    glowing(page, &left, block, shop);
    // Without a damper the air cannot be turned down.
    if sheet.plant.entries.damper.is_some() {
        turned(page, sheet, block, shop);
    }
}

fn glowing(page: &mut Page, left: &str, block: &LightingBlock, shop: &Shop) {
    let glow = shop.temperature(Temperature::from_celsius(GLOW_CELSIUS));
    let Some(span) = &block.range.glowing else {
        page.said("Hot", "no gauge keeps the chamber glowing with this damper");
        return;
    };
    let loss = match block.known.chamber.loss {
        Some(loss) => format!("it loses {} then", shop.text(Kind::Heat, loss.watts())),
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
    page.said("Hot", &text);
    if let Some(times) = block.cold_over_glowing() {
        let text = format!(
            "so a cold chamber wants {times:.1} times the pressure that keeps it hot: light high, go down when it glows"
        );
        page.said("", &text);
    }
}

fn turned(page: &mut Page, sheet: &Sheet, block: &LightingBlock, shop: &Shop) {
    let ratio = Shop::ratio(sheet.plant.entries.air_ratio);
    let turned = format!("with the damper moved along with the gauge, so that the air ratio stays {ratio},");
    let mut text = match (&block.turned.cold, block.known.head_constant) {
        (Some(cold), _) => format!("{turned} it lights cold {}", from_least(cold, shop)),
        (None, Some(_)) => format!("{turned} it does not light cold"),
        (None, None) => format!("{turned} the mixture is the same at every gauge"),
    };
    if !block.flashback_known {
        text +=
            "; WHERE FLASHBACK BEGINS IS NOT KNOWN of this gas, so how far the fire can be turned down is not either";
    }
    text += &match block.flashback_below {
        Some(gauge) => format!("; under {} flashback into the ports is possible", shop.gauge(gauge)),
        None => String::new(),
    };
    page.said("Damper", &(text + "."));
    if let Some([(low_at, low_gross, low_net), (high_at, high_gross, high_net)]) = block.fires {
        let end = match block.fires_end {
            FiresEnd::Glow => "below that the glow goes",
            FiresEnd::Damper => "the damper closes no further",
            FiresEnd::Flashback => "below that flashback is possible",
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
        page.said("", &text);
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

fn picture(sheet: &Sheet, block: &LightingBlock, shop: &Shop) -> String {
    let mut page = String::new();
    let page = &mut page;
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
        block.drawn.iter().map(|(_, lighting, _)| if lighting.walls.is_some() { '=' } else { '.' }).collect();
    drawn_line(page, "glowing chamber", &glowing);
    let cold: Vec<char> = block
        .drawn
        .iter()
        .map(|(_, _, verdict)| match verdict {
            Verdict::Lights => '#',
            Verdict::FirstTry => '?',
            Verdict::WillNotLight(GoesOut::BlowOff) => '-',
            Verdict::WillNotLight(_) => '.',
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
        "# LIGHTS, ? FIRST TRY, - within the limits but blow-off"
    } else {
        "? within the limits: FIRST TRY"
    };
    page.push_str(&format!("  {:LABEL$}= burns, {cold}, . goes out\n", ""));
    core::mem::take(page)
}

fn unlit(page: &mut Page, sheet: &Sheet, block: &LightingBlock, rows: &[SettingRow<'_>], shop: &Shop) {
    let (Some(volume), Some(changes)) = (
        block.known.chamber.volume,
        block.settings.iter().find_map(|found| found.unlit).map(|unlit| unlit.cold.changes),
    ) else {
        page.said(
            "Unlit",
            "how soon unlit gas makes an explosive mixture needs the chamber's volume: write it into [lighting]",
        );
        return;
    };
    let stands = if sheet.plant.entries.damper.is_some() { " and the damper where it stands" } else { "" };
    let size = shop.text(Kind::Volume, volume.cubic_meters());
    let text = format!(
        "unlit gas may make this chamber ({size}) explosive so soon, after a flame-out in a warm one sooner; {changes:.1} \
         changes of air purge it, the gas off{stands}:"
    );
    page.said("Unlit", &text);
    let rows = rows.iter().filter(|row| row.lighting.is_some_and(|found| found.unlit.is_some()));
    let cells = |row: &SettingRow<'_>| Row::of([row.name(), lights(row).only(&UNLIT), purge(row)]);
    page.push(Node::view(rows.map(cells).collect(), vec![]));
}

fn ports(page: &mut Page, sheet: &Sheet, block: &LightingBlock, shop: &Shop) {
    let Some(built) = block.heads.first() else { return };
    let setting = sheet.air.as_ref().map_or("", |air| sheet.settings[air.setting].entry.name.as_str());
    let place = if sheet.plant.burner.as_ref().is_some_and(|burner| burner.head.ports().is_some()) {
        format!("each hole carries {} of the fire, net", shop.text(Kind::Heat, built.ports.heat.watts()))
    } else {
        format!(
            "each {} of the slot carries {} of the fire, net",
            shop.small_area().0,
            shop.text(Kind::Heat, built.ports.heat_per_area * shop.small_area().1)
        )
    };
    let cold = shop.low_pressure(built.ports.pressure_cold.pascals());
    page.heading("PORTS");
    let text = format!(
        "at the gauge of \"{setting}\", {}: {place}; the head as hot as at work takes {}, cold {cold}",
        damper(sheet, block),
        shop.low_pressure(built.ports.pressure.pascals())
    );
    page.said("", &text);
    page.push(Node::view(block.heads.iter().map(|head| Row::of([head_tried(head)])).collect(), vec![]));
    page.said("", "Gradients are those of the speed at a hole's rim, 1/s. A flame flashes back where that is too flat, and has done so \
         at three times the gradient said; a hole of the last column stops it while the head is cold. Indicative.",
    );
    if let Some(constant) = block.known.head_constant {
        let text = format!(
            "By the lighting you saw, this head's flames bear {constant:.0} times the gradient of a plain port's before \
             they blow off."
        );
        page.said("", &text);
    }
}
