//! The card as HTML: exactly one page of A4 and of US Letter.

use std::format;
use std::prelude::rust_2024::*;

use maud::{Markup, html};

use super::content::{Block, CardRefused, Content, Warning};
use crate::report::render::drawing::damper::damper;
use crate::report::render::drawing::dial::{Scale, dial};
use crate::report::render::drawing::lines::POINT;
use crate::report::render::drawing::svg::{Anchor, Style, Svg, patterns};
use crate::report::render::drawing::type_width::{lines, width};
use crate::report::render::html::document;
use crate::report::units::Shop;

/// How the card looks.
const STYLE: &str = include_str!("card.css");

/// The box that both papers take, mm: 190 by 259.4 of Letter within margins of 10, and a little less.
const WIDE: f64 = 190.0;
const HIGH: f64 = 257.0;
/// How much wider than Arial flowing text may come out.
const WIDER: f64 = 1.15;
/// Inside width of one of three blocks.
const THIRD: f64 = 60.4;
/// Width of a column of steps without its number.
const COLUMN: f64 = 86.5;
/// Width of a warning beside its signal word.
const BESIDE_WORD: f64 = 161.0;
/// Sizes of the body, points, the largest that fits first.
const BODY: [f64; 3] = [14.0, 13.0, 12.0];
const LINE: f64 = 1.18;

/// The cards of these burners, a page each.
///
/// # Errors
///
/// [`CardRefused`] where what must stand on a card does not fit it.
pub fn render(cards: &[Content]) -> Result<String, CardRefused> {
    let pages = cards.iter().map(page).collect::<Result<Vec<_>, _>>()?;
    let title = cards.first().map_or("card", |card| &card.name);
    Ok(document(title, STYLE, &html! { (patterns()) @for page in &pages { (page) } }))
}

/// The body of a page that holds one card, without the page's style.
///
/// # Errors
///
/// As [`render`].
pub fn page(card: &Content) -> Result<Markup, CardRefused> {
    Ok(drawn(card, &Fit::of(card)?))
}

/// What of the card gives way until it fits, and how large its body is.
#[derive(Clone, Debug)]
struct Fit {
    points: f64,
    purposes: bool,
    numbers: bool,
    warnings: Vec<Warning>,
    name_lines: usize,
}

impl Fit {
    fn of(card: &Content) -> Result<Self, CardRefused> {
        let whole = Self {
            points: BODY[0],
            purposes: true,
            numbers: true,
            warnings: card.warnings.clone(),
            name_lines: lines(&card.name, 16.0 * POINT, true, WIDE, WIDER).min(2),
        };
        for points in BODY {
            let fit = Self { points, ..whole.clone() };
            if fit.high(card) <= HIGH {
                return Ok(fit);
            }
        }
        let mut fit = Self { points: BODY[2], purposes: false, ..whole };
        if fit.high(card) > HIGH {
            fit.numbers = false;
        }
        for severity in ["notice", "caution"] {
            while fit.high(card) > HIGH {
                let Some(last) = fit.warnings.iter().rposition(|warning| warning.severity == severity) else { break };
                fit.warnings.remove(last);
            }
        }
        if fit.high(card) > HIGH {
            fit.name_lines = 1;
        }
        for last in (0..fit.warnings.len()).rev() {
            if fit.high(card) > HIGH {
                fit.warnings[last].text = fit.warnings[last].brief.clone();
            }
        }
        if fit.high(card) > HIGH {
            let longest = fit.warnings.iter().map(|warning| &warning.text).max_by_key(|text| text.len());
            return Err(CardRefused(longest.unwrap_or(&card.void).clone()));
        }
        Ok(fit)
    }

    /// The height of everything, gaps counted.
    fn high(&self, card: &Content) -> f64 {
        let flowing = |text: &str, points: f64, room: f64| {
            lines(text, points * POINT, false, room, WIDER) as f64 * points * POINT * LINE
        };
        let steps = |steps: &[String]| steps.iter().map(|step| flowing(step, self.points, COLUMN)).sum::<f64>();
        let head = self.name_lines as f64 * 16.0 * POINT * 1.15 + flowing(&card.identity, 12.0, WIDE);
        let flame_out = 2.8 + 9.2 + 2.0 * 10.0 + flowing(&card.also, 12.0, 184.0) + 3.0;
        let blocks = card.blocks.iter().map(|block| self.block_high(block)).fold(0.0, f64::max);
        let both = 8.0 + steps(&card.light).max(steps(&card.stop));
        let warned = |warning: &Warning| flowing(&warning.text, self.points, BESIDE_WORD).max(5.6) + 0.6;
        let warnings: f64 = self.warnings.iter().map(warned).sum();
        let void = 1.5 + flowing(&card.void, 12.0, WIDE) * 1.05 + flowing(&card.origin, 9.0, WIDE);
        head + flame_out + blocks + 8.6 + both + warnings + void + 6.0 * 1.6
    }

    fn block_high(&self, block: &Block) -> f64 {
        let flowing = |text: &str| lines(text, 12.0 * POINT, false, THIRD - 4.0, WIDER) as f64 * 12.0 * POINT * LINE;
        let name = lines(&block.name, 14.0 * POINT, true, THIRD - 4.0, WIDER) as f64 * 14.0 * POINT * 1.12;
        9.2 + name + 1.6 + 35.0 + 11.8 + flowing(&self.note(block)) + 3.0
    }

    fn note(&self, block: &Block) -> String {
        let first = block.first_try.then(|| String::from("FIRST TRY: never seen to light"));
        let numbers = self.numbers.then(|| block.numbers.join(" · ")).filter(|text| !text.is_empty());
        let purpose = block.purpose.clone().filter(|_| self.purposes);
        [first, numbers, purpose].into_iter().flatten().collect::<Vec<_>>().join(" · ")
    }
}

/// A black bar with a word in white, and a remark at its end.
fn bar(wide: f64, high: f64, word: &str, points: f64, remark: &str) -> Svg {
    let says = if remark.is_empty() { word.into() } else { format!("{word}: {remark}") };
    let mut svg = Svg::new(wide, high, says);
    // A little over its edge, under the frame around it.
    svg.rect((-0.3, -0.3), (wide + 0.6, high + 0.3), 0.0, "currentColor");
    let base = high / 2.0 + 0.358 * points * POINT;
    svg.text((2.0, base), word, Style::of(points * POINT, Anchor::Start).bold().on_black());
    if !remark.is_empty() {
        let size = 12.0 * POINT;
        svg.text((wide - 2.0, high / 2.0 + 0.358 * size), remark, Style::of(size, Anchor::End).on_black());
    }
    svg
}

/// A line of large type that is no wider than `room`.
fn large(text: &str, points: f64, room: f64) -> Svg {
    let size = points * POINT;
    let wide = width(text, size, true);
    let size = if wide > room { size * room / wide } else { size };
    let mut svg = Svg::new(width(text, size, true) + 0.2, points * POINT, text);
    svg.text((0.0, points * POINT * 0.8), text, Style::of(size, Anchor::Start).bold());
    svg
}

/// A number with its unit smaller.
fn number(text: &str, points: f64, unit: &str, unit_points: f64) -> Svg {
    let (size, small) = (points * POINT, unit_points * POINT);
    let wide = width(text, size, true);
    let mut svg = Svg::new(wide + 1.5 + width(unit, small, true) + 0.2, size, format!("{text} {unit}"));
    svg.text((0.0, 0.8 * size), text, Style::of(size, Anchor::Start).bold());
    svg.text((wide + 1.5, 0.8 * size), unit, Style::of(small, Anchor::Start).bold());
    svg
}

fn signal(severity: &str) -> Svg {
    let mut svg = Svg::new(26.0, 5.6, severity.to_uppercase());
    let size = 12.0 * POINT;
    let style = Style::of(size, Anchor::Middle);
    let (style, weight, fill) = match severity {
        "danger" => (style.bold().on_black(), 0.0, "currentColor"),
        "warning" => (style.bold(), 0.7, "none"),
        "caution" => (style, 0.25, "none"),
        _ => (style, 0.0, "none"),
    };
    svg.rect((0.35, 0.35), (25.3, 4.9), weight, fill);
    svg.text((13.0, 2.8 + 0.358 * size), &severity.to_uppercase(), style);
    svg
}

fn drawn(card: &Content, fit: &Fit) -> Markup {
    let clamp = format!("-webkit-line-clamp:{}", fit.name_lines);
    html! {
        article.card style=(format!("--body:{}pt", fit.points)) {
            header {
                h1 dir="auto" style=(clamp) title=(card.name) { (card.name) }
                p.identity dir="auto" { (card.identity) }
            }
            section.out {
                (bar(187.2, 9.2, "FLAME OUT", 22.0, "also: blower stops, power fails"))
                div.four {
                    @for (line, at) in card.flame_out.iter().zip(1..) { div { (large(&format!("{at} {line}"), 26.0, 90.0)) } }
                }
                p.also { (card.also) }
            }
            section.blocks { @for block in &card.blocks { (block_drawn(card, block, fit)) } }
            p.order { (order(&card.order)) }
            section.columns {
                @if !card.light.is_empty() { (steps("LIGHT", &card.light)) }
                (steps("STOP", &card.stop))
            }
            @if !fit.warnings.is_empty() {
                ul.warnings { @for warning in &fit.warnings { li { (signal(&warning.severity)) span dir="auto" { (warning.text) } } } }
            }
            footer {
                p.void dir="auto" { (card.void) }
                p.origin { (card.origin) }
            }
        }
    }
}

fn order(text: &str) -> Svg {
    let mut svg = Svg::new(WIDE, 8.0, text);
    let size = 18.0 * POINT;
    let wide = width(text, size, true);
    let size = if wide > WIDE - 2.0 { size * (WIDE - 2.0) / wide } else { size };
    svg.text((WIDE / 2.0, 4.0 + 0.358 * size), text, Style::of(size, Anchor::Middle).bold());
    svg
}

fn steps(title: &str, steps: &[String]) -> Markup {
    html! {
        div {
            (bar(93.4, 7.5, title, 16.0, ""))
            ol { @for step in steps { li { span { (step) } } } }
        }
    }
}

fn block_drawn(card: &Content, block: &Block, fit: &Fit) -> Markup {
    let shop = &card.shop;
    let unit_points = if card.unit.len() >= 4 { 12.0 } else { 16.0 };
    let note = fit.note(block);
    html! {
        div.block {
            (bar(THIRD, 9.0, &block.word, 20.0, ""))
            @if let Some(missing) = &block.missing {
                div.none { (hatched()) p { (missing) } }
            } @else {
                p.name dir="auto" { (block.name) }
                div.pair {
                    div {
                        @if let Some((text, si)) = &block.gauge {
                            @if let Some(face) = face(card, shop, *si) { (face) }
                            (number(text, 30.0, &card.unit, unit_points))
                        }
                    }
                    div {
                        @match &block.damper {
                            Some((text, share)) => {
                                small { "damper" br; "open" }
                                (damper(17.0, card.facts.word("built.damper_kind").unwrap_or("blast gate"), *share))
                                @if text == "100" { (large("OPEN", 18.0, 20.0)) } @else { (number(text, 22.0, "%", 14.0)) }
                            }
                            None => small { "no" br; "damper" },
                        }
                    }
                }
                @if !note.is_empty() { p.note dir="auto" { (note) } }
            }
        }
    }
}

/// The gauge's face with its needle, in the gauge's own unit.
fn face(card: &Content, shop: &Shop, si: f64) -> Option<Svg> {
    let one = unit_pascals(shop);
    let span = card.facts.number("built.gauge_span_pa")? / one;
    // A span that nobody stated is a round one of its unit.
    let span = if card.facts.is("built.gauge_span_is_given") { span } else { rounded_up(span) };
    Some(dial(34.5, Scale::of(span), &card.unit, si / one))
}

/// Pascals in the gauge's unit.
fn unit_pascals(shop: &Shop) -> f64 {
    match shop.gauge {
        Some(unit) => unit.factor,
        None if shop.inch => crate::quantity::GaugePressure::from_psi(1.0).pascals(),
        None => 1e5,
    }
}

/// The next round full scale.
fn rounded_up(span: f64) -> f64 {
    let decade = 10_f64.powf(span.log10().floor());
    let rounds = [1.0, 1.5, 1.6, 2.0, 2.5, 3.0, 4.0, 6.0, 10.0];
    rounds.iter().map(|round| round * decade).find(|&round| round >= span * 0.999).unwrap_or(span)
}

fn hatched() -> Svg {
    let (wide, high) = (THIRD - 4.0, 34.0);
    let mut svg = Svg::new(wide, high, "NO SETTING");
    svg.rect((0.25, 0.25), (wide - 0.5, high - 0.5), 0.5, "url(#hatch)");
    svg.rect((4.0, 11.0), (wide - 8.0, 12.0), 0.5, "var(--paper)");
    let size = 18.0 * POINT;
    svg.text((wide / 2.0, 17.0 + 0.358 * size), "NO SETTING", Style::of(size, Anchor::Middle).bold());
    svg
}
