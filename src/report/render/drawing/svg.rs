//! A drawing under way: shapes in millimeters, and the texts on them.

use std::fmt::Write as _;
use std::prelude::rust_2024::*;

use maud::{Markup, PreEscaped, Render, html};

use super::type_width::width;

/// Where a text stands by its point.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Anchor {
    /// It begins there.
    Start,
    /// Its middle is there.
    Middle,
    /// It ends there.
    End,
}

/// How a text looks.
#[derive(Clone, Copy, Debug)]
pub struct Style {
    /// Font size, mm.
    pub size: f64,
    /// Whether it is bold.
    pub bold: bool,
    /// Where it stands by its point.
    pub anchor: Anchor,
    /// Whether it stands on a black bar.
    pub on_black: bool,
    /// Whether paper shows round its letters, over lines.
    pub halo: bool,
}

impl Style {
    /// Plain text of a size.
    #[must_use]
    pub const fn of(size: f64, anchor: Anchor) -> Self {
        Self { size, bold: false, anchor, on_black: false, halo: false }
    }

    /// Bold.
    #[must_use]
    pub const fn bold(self) -> Self {
        Self { bold: true, ..self }
    }

    /// White on black.
    #[must_use]
    pub const fn on_black(self) -> Self {
        Self { on_black: true, ..self }
    }

    /// With paper round it.
    #[must_use]
    pub const fn halo(self) -> Self {
        Self { halo: true, ..self }
    }
}

/// A drawing.
#[derive(Clone, Debug)]
pub struct Svg {
    wide: f64,
    high: f64,
    says: String,
    body: String,
}

impl Svg {
    /// An empty drawing of this size that says this sentence to who cannot see it.
    #[must_use]
    pub fn new(wide: f64, high: f64, says: impl Into<String>) -> Self {
        Self { wide, high, says: says.into(), body: String::new() }
    }

    fn put(&mut self, shape: std::fmt::Arguments<'_>) {
        // A string takes whatever is written to it.
        let _ = self.body.write_fmt(shape);
    }

    /// A line of a weight; `class` names what a test measures.
    pub fn line(&mut self, from: (f64, f64), to: (f64, f64), weight: f64, class: &str) {
        let class = if class.is_empty() { String::new() } else { std::format!(" class=\"{class}\"") };
        self.put(format_args!(
            "<line{class} x1=\"{:.3}\" y1=\"{:.3}\" x2=\"{:.3}\" y2=\"{:.3}\" stroke-width=\"{weight}\"/>",
            from.0, from.1, to.0, to.1
        ));
    }

    /// A rectangle: outline of a weight, filled with `fill`.
    pub fn rect(&mut self, at: (f64, f64), size: (f64, f64), weight: f64, fill: &str) {
        self.put(format_args!(
            "<rect x=\"{:.3}\" y=\"{:.3}\" width=\"{:.3}\" height=\"{:.3}\" stroke-width=\"{weight}\" fill=\"{fill}\"/>",
            at.0, at.1, size.0, size.1
        ));
    }

    /// A circle.
    pub fn circle(&mut self, at: (f64, f64), radius: f64, weight: f64, fill: &str) {
        self.put(format_args!(
            "<circle cx=\"{:.3}\" cy=\"{:.3}\" r=\"{radius:.3}\" stroke-width=\"{weight}\" fill=\"{fill}\"/>",
            at.0, at.1
        ));
    }

    /// A path by its own commands.
    pub fn path(&mut self, commands: &str, weight: f64, fill: &str) {
        self.put(format_args!("<path d=\"{commands}\" stroke-width=\"{weight}\" fill=\"{fill}\"/>"));
    }

    /// A text on its base line, as wide as in Arial whatever the font.
    pub fn text(&mut self, at: (f64, f64), text: &str, style: Style) {
        let anchor = match style.anchor {
            Anchor::Start => "start",
            Anchor::Middle => "middle",
            Anchor::End => "end",
        };
        let class = match (style.on_black, style.halo) {
            (true, _) => Some("inv"),
            (_, true) => Some("halo"),
            _ => None,
        };
        let wide = std::format!("{:.2}", width(text, style.size, style.bold));
        let text = html! {
            text x=(std::format!("{:.3}", at.0)) y=(std::format!("{:.3}", at.1)) class=[class]
                font-size=(std::format!("{:.3}", style.size)) font-weight=[style.bold.then_some("700")]
                text-anchor=(anchor) textLength=(wide) lengthAdjust="spacingAndGlyphs" { (text) }
        };
        self.body.push_str(&text.into_string());
    }
}

impl Render for Svg {
    fn render(&self) -> Markup {
        let (wide, high) = (std::format!("{:.2}", self.wide), std::format!("{:.2}", self.high));
        html! {
            svg viewBox={ "0 0 " (wide) " " (high) } style={ "width:" (wide) "mm;height:" (high) "mm" } role="img"
                aria-label=(self.says) fill="none" stroke="currentColor" { (PreEscaped(&self.body)) }
        }
    }
}

/// The patterns that drawings of one page are hatched with; each line lies in the middle of its tile.
#[must_use]
pub fn patterns() -> Markup {
    html! {
        svg width="0" height="0" style="position:absolute" aria-hidden="true" {
            defs {
                (PreEscaped(concat!(
                    "<pattern id=\"hatch\" width=\"1.8\" height=\"1.8\" patternUnits=\"userSpaceOnUse\" ",
                    "patternTransform=\"rotate(45)\"><path d=\"M.9 0V1.8\" stroke=\"currentColor\" stroke-width=\".36\"/></pattern>",
                    "<pattern id=\"cross\" width=\"1.6\" height=\"1.6\" patternUnits=\"userSpaceOnUse\" ",
                    "patternTransform=\"rotate(45)\"><path d=\"M.8 0V1.6M0 .8H1.6\" stroke=\"currentColor\" stroke-width=\".26\"/></pattern>",
                    "<pattern id=\"wide\" width=\"3.2\" height=\"3.2\" patternUnits=\"userSpaceOnUse\" ",
                    "patternTransform=\"rotate(45)\"><path d=\"M1.6 0V3.2\" stroke=\"currentColor\" stroke-width=\".26\"/></pattern>",
                    "<pattern id=\"waves\" width=\"6\" height=\"3\" patternUnits=\"userSpaceOnUse\">",
                    "<path d=\"M0 1.5Q1.5 0 3 1.5T6 1.5\" fill=\"none\" stroke=\"currentColor\" stroke-width=\".2\"/></pattern>",
                    "<pattern id=\"dense\" width=\"1.2\" height=\"1.2\" patternUnits=\"userSpaceOnUse\" ",
                    "patternTransform=\"rotate(45)\"><path d=\"M.6 0V1.2\" stroke=\"currentColor\" stroke-width=\".3\"/></pattern>"
                )))
            }
        }
    }
}
