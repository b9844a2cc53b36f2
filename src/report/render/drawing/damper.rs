//! The damper as it stands: what is open is black, what is shut is hatched.

use std::format;

use super::lines::{BOLD, THIN};
use super::svg::Svg;

/// The damper of a setting, `wide` mm across, its opening a share.
#[must_use]
pub fn damper(wide: f64, kind: &str, opening: f64) -> Svg {
    let mut svg = Svg::new(wide, wide, format!("The {kind}, {:.0} % open.", 1e2 * opening));
    let (center, radius) = (wide / 2.0, wide / 2.0 - BOLD);
    if kind == "blast gate" {
        // The plate covers the duct from above.
        let edge = center - radius + 2.0 * radius * (1.0 - opening);
        let half = (radius * radius - (edge - center).powi(2)).max(0.0).sqrt();
        svg.circle((center, center), radius, BOLD, "currentColor");
        if half > 0.0 {
            let large = i32::from(edge > center);
            let (left, right) = (center - half, center + half);
            let plate = format!("M{left:.3} {edge:.3}A{radius:.3} {radius:.3} 0 {large} 1 {right:.3} {edge:.3}Z");
            svg.path(&plate, 0.0, "var(--paper)");
            svg.path(&plate, 0.0, "url(#hatch)");
        }
        svg.circle((center, center), radius, BOLD, "none");
        svg.line((0.2, edge), (wide - 0.2, edge), BOLD, "edge");
    } else {
        // A disc or a plug from the side: along the duct it is open.
        let (sine, cosine) = (90.0 * (1.0 - opening)).to_radians().sin_cos();
        let (top, bottom) = (center - 0.7 * radius, center + 0.7 * radius);
        svg.rect((0.0, top), (wide, bottom - top), 0.0, "url(#wide)");
        svg.line((0.0, top), (wide, top), BOLD, "");
        svg.line((0.0, bottom), (wide, bottom), BOLD, "");
        let reach = 0.66 * radius;
        svg.line(
            (center - reach * cosine, center + reach * sine),
            (center + reach * cosine, center - reach * sine),
            1.4,
            "edge",
        );
        svg.circle((center, center), 1.2, THIN, "var(--paper)");
    }
    svg
}
