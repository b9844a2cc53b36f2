//! What a hole measures that is known only by the drill that made it or by the mark on a contact tip.

use super::spreads::{Sizing, starting_bore};
use crate::error::Result;
use crate::limits::{Input, check};
use crate::quantity::Length;
use crate::scalar::Scalar;

/// How much wider a hand drill cuts than its nominal size, and the expanded uncertainty of that at k = 2, in meters: a careful hand
/// +0.05 to +0.15 mm, drilled usually +0.1 to +0.3 mm (workshop tables of drilled holes).
pub const DRILLED_BY_HAND: [f64; 2] = [0.10e-3, 0.05e-3];
/// How much wider a contact tip is bored than its mark, and the expanded uncertainty of that at k = 2, in meters: 0.1 to 0.25 mm
/// (common practice, no source).
pub const TIP_OVER_MARK: [f64; 2] = [0.17e-3, 0.08e-3];

/// A bore as it is expected to be.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BoreMade<S = f64> {
    /// The likeliest diameter.
    pub diameter: Length<S>,
    /// Expanded uncertainty of its uncertainty at k = 2.
    pub expanded: Length<S>,
}

/// The bore to expect of a nominal size: nominal + 0.10 +- 0.05 mm drilled by hand, mark + 0.17 +- 0.08 mm of a contact
/// tip, and the size itself where it was measured, +- 0.01 mm.
///
/// A reamed hole counts as measured, by the tolerance of its reamer where that is wider.
///
/// # Range
///
/// Nominal size of [`Input::Bore`]. The excess does not shrink with the drill here; below some 0.7 mm it does in
/// truth, so measure such a hole.
///
/// # Errors
///
/// A size out of range.
///
/// # Examples
///
/// ```
/// use jetwright::measure::{Sizing, bore_made};
/// use jetwright::quantity::Length;
/// // Number 53 is 1.511 mm; drilled by hand it passes 14 % more gas than its number says.
/// let made = bore_made(Length::from_inches(0.0595_f64), Sizing::Drilled).unwrap();
/// assert!((made.diameter.millimeters() - 1.6113).abs() < 1e-9);
/// assert!((made.expanded.millimeters() - 0.05).abs() < 1e-9);
/// ```
pub fn bore_made<S: Scalar>(nominal: Length<S>, sizing: Sizing) -> Result<BoreMade<S>> {
    check(Input::Bore, nominal.meters())?;
    let wider = |[excess, expanded]: [f64; 2]| BoreMade {
        diameter: nominal + Length::from_meters(S::c(excess)),
        expanded: Length::from_meters(S::c(expanded)),
    };
    Ok(match (sizing, starting_bore(nominal, sizing)) {
        (Sizing::Drilled, _) => wider(DRILLED_BY_HAND),
        (Sizing::Measured, Some(expanded)) => BoreMade { diameter: nominal, expanded },
        (Sizing::Measured | Sizing::MarkedTip, _) => wider(TIP_OVER_MARK),
    })
}

#[cfg(test)]
mod tests {
    use super::{Sizing, bore_made};
    use crate::orifice::Drill;
    use crate::quantity::Length;

    #[test]
    fn a_tip_and_a_drill_are_wider_than_they_say_and_a_pin_is_believed() {
        let of = |name: &str, sizing| bore_made(Drill::find(name).unwrap().diameter(), sizing).unwrap();
        for (made, diameter, expanded) in [
            (of("tip 0.9 mm", Sizing::MarkedTip), 1.07, 0.08),
            (of("1.5 mm", Sizing::Drilled), 1.60, 0.05),
            (of("1.5 mm", Sizing::Measured), 1.50, 0.01),
        ] {
            assert!((made.diameter.millimeters() - diameter).abs() < 1e-9, "{made:?}");
            assert!((made.expanded.millimeters() - expanded).abs() < 1e-9, "{made:?}");
        }
        let single = bore_made(Length::from_millimeters(0.9_f32), Sizing::MarkedTip).unwrap();
        assert!((single.diameter.millimeters() - 1.07).abs() < 1e-6);
    }

    #[test]
    fn the_published_spreads_lie_within_what_is_claimed() {
        // A careful hand's +0.05 to +0.15 mm, and a tip's +0.1 to +0.25 mm.
        let nominal = Length::from_millimeters(1.2);
        for (sizing, low, high) in [(Sizing::Drilled, 0.05, 0.15), (Sizing::MarkedTip, 0.10, 0.25)] {
            let made = bore_made(nominal, sizing).unwrap();
            let over = (made.diameter.meters() - nominal.meters()) * 1e3;
            let half = made.expanded.millimeters();
            assert!(over - half <= low + 1e-9 && over + half >= high - 1e-9, "{sizing:?}");
        }
        assert!(bore_made(Length::from_millimeters(0.1), Sizing::Drilled).is_err());
    }
}
