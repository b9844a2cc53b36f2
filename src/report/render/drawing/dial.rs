//! The gauge's face with its needle where a setting wants it: it must look like the gauge on the wall.

use std::format;

use super::lines::{BOLD, THIN};
use super::svg::{Anchor, Style, Svg};
use crate::report::units::figures;

/// Degrees from zero, lower left, clockwise to full scale.
const SWEEP: f64 = 270.0;
const ZERO: f64 = 135.0;

/// A gauge's scale: full scale and steps in its own unit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Scale {
    /// Full scale.
    pub span: f64,
    /// From numeral to numeral.
    pub step: f64,
    /// Small divisions in a step.
    pub divisions: u32,
}

impl Scale {
    /// A scale with four to eight numerals beside zero.
    #[must_use]
    pub fn of(span: f64) -> Self {
        let decade = 10_f64.powf(span.log10().floor());
        let steps = [(0.1, 5), (0.2, 4), (0.5, 5), (1.0, 5), (2.0, 4), (0.3, 6), (0.25, 5), (0.4, 4), (3.0, 6)];
        let fits = |&&(step, _): &&(f64, u32)| {
            let many = span / (step * decade);
            (3.999..=8.001).contains(&many) && (many - many.round()).abs() < 1e-6
        };
        let near = |&&(step, _): &&(f64, u32)| (4.0..=9.0).contains(&(span / (step * decade)));
        let found = steps.iter().find(fits).or_else(|| steps.iter().find(near)).copied().unwrap_or((0.2, 4));
        Self { span, step: found.0 * decade, divisions: found.1 }
    }
}

/// The angle of a reading, degrees clockwise from the right.
#[must_use]
pub fn angle(reading: f64, span: f64) -> f64 {
    ZERO + SWEEP * (reading / span).clamp(0.0, 1.0)
}

fn at(center: f64, radius: f64, degrees: f64) -> (f64, f64) {
    let (sine, cosine) = degrees.to_radians().sin_cos();
    (center + radius * cosine, center + radius * sine)
}

/// A face this wide, mm, its needle at a reading in the unit of its scale.
#[must_use]
pub fn dial(wide: f64, scale: Scale, unit: &str, reading: f64) -> Svg {
    let (center, radius) = (wide / 2.0, wide / 2.0 - BOLD / 2.0);
    let says = format!("Gauge from 0 to {} {unit}, its needle at {} {unit}.", scale.span, figures(reading, 3));
    let mut svg = Svg::new(wide, wide, says);
    svg.circle((center, center), radius, BOLD, "none");
    let small = scale.step / f64::from(scale.divisions);
    let ticks = (scale.span / small + 1e-6).floor() as u32;
    for tick in 0..=ticks {
        let long = tick % scale.divisions == 0;
        let degrees = angle(f64::from(tick) * small, scale.span);
        let (inner, weight) = if long { (radius - 3.4, 0.5) } else { (radius - 2.0, THIN) };
        svg.line(at(center, radius - 0.6, degrees), at(center, inner, degrees), weight, "");
    }
    let degrees = angle(reading, scale.span);
    svg.line(at(center, -4.0, degrees), at(center, radius - 3.8, degrees), 1.0, "needle");
    svg.circle((center, center), 1.5, 0.0, "currentColor");
    // After the needle: it would hide the very numeral that it stands at.
    let size = 4.2;
    for numeral in 0..=(scale.span / scale.step + 1e-6).floor() as u32 {
        let value = f64::from(numeral) * scale.step;
        let (x, y) = at(center, radius - 6.4, angle(value, scale.span));
        let decimals = if scale.step >= 0.999 && scale.step.fract() < 1e-6 {
            0
        } else {
            (1.0 - scale.step.log10()).floor().max(1.0) as usize
        };
        let text = format!("{value:.decimals$}");
        let text = if decimals > 0 && numeral > 0 {
            text.trim_end_matches('0').trim_end_matches('.')
        } else if numeral == 0 {
            "0"
        } else {
            &text
        };
        svg.text((x, y + 0.358 * size), text, Style::of(size, Anchor::Middle).bold().halo());
    }
    svg.text((center, wide - 3.2), unit, Style::of(4.2, Anchor::Middle));
    svg
}

#[cfg(test)]
mod tests {
    use super::{Scale, angle};

    #[test]
    fn a_scale_has_round_steps_and_its_zero_lower_left() {
        for (span, step) in [(15.0, 3.0), (30.0, 5.0), (60.0, 10.0), (100.0, 20.0), (1.0, 0.2), (1.6, 0.2), (4.0, 0.5)]
        {
            let scale = Scale::of(span);
            assert!((scale.step - step).abs() < 1e-9, "{span}: {}", scale.step);
        }
        assert_eq!((angle(0.0, 15.0), angle(7.5, 15.0), angle(15.0, 15.0)), (135.0, 270.0, 405.0));
    }
}
