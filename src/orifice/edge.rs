//! The mouth of a bore and what it loses.

use crate::error::Result;
use crate::interpolate::polyline::{at_share, in_table, place};
use crate::limits::{Input, check};
use crate::quantity::{Angle, Length};
use crate::scalar::Scalar;
use crate::words::Words;

/// Loss of a square mouth on the dynamic head in the bore: 1/0.81^2 - 1, from the 0.81 of short tubes at
/// low speed (Lichtarowicz, Duggins and Markland, J. Mech. Eng. Sci. 7 (1965) 210, 1.5 to 2 diameters).
///
/// It holds the friction of the first 1.5 diameters.
pub const SQUARE_ENTRY_LOSS: f64 = 1.0 / (0.81 * 0.81) - 1.0;

/// Loss of a flush sharp pipe entry in the tables below, which are scaled to the value above.
const TABLE_SQUARE_LOSS: f64 = 0.5;

/// Radius over diameter of a rounded mouth, and its loss: Idelchik, Handbook of Hydraulic Resistance, diagram 3-4.
const ROUNDED: [(f64, f64); 11] = [
    (0.0, 0.50),
    (0.01, 0.44),
    (0.02, 0.37),
    (0.03, 0.31),
    (0.04, 0.26),
    (0.05, 0.22),
    (0.06, 0.20),
    (0.08, 0.15),
    (0.12, 0.09),
    (0.16, 0.06),
    (0.20, 0.03),
];

/// Full cone angles of the table below, degrees.
const CONE_ANGLES: [f64; 9] = [0.0, 10.0, 20.0, 30.0, 40.0, 60.0, 100.0, 140.0, 180.0];
/// Depth over diameter of a conical mouth, and its loss at each angle: Idelchik, diagram 3-7.
const CONICAL: [(f64, [f64; 9]); 6] = [
    (0.0, [0.50; 9]),
    (0.025, [0.50, 0.47, 0.45, 0.43, 0.41, 0.40, 0.42, 0.45, 0.50]),
    (0.05, [0.50, 0.45, 0.41, 0.36, 0.33, 0.30, 0.35, 0.42, 0.50]),
    (0.10, [0.50, 0.39, 0.32, 0.25, 0.22, 0.18, 0.27, 0.38, 0.50]),
    (0.15, [0.50, 0.37, 0.27, 0.20, 0.16, 0.15, 0.25, 0.37, 0.50]),
    (0.60, [0.50, 0.27, 0.18, 0.13, 0.11, 0.12, 0.23, 0.36, 0.50]),
];

/// The mouth of a bore, where the gas enters.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Edge<S = f64> {
    /// A thin plate with a sharp edge; a length, if there is one, counts as a square bore's.
    Sharp,
    /// A square shoulder, as drilled.
    Square,
    /// A cone cut into the shoulder.
    Chamfered {
        /// Depth along the bore.
        depth: Length<S>,
        /// Full angle of the cone; a common countersink has 90 degrees.
        angle: Angle<S>,
    },
    /// A rounded shoulder.
    Rounded {
        /// Radius of the rounding.
        radius: Length<S>,
    },
}

impl<S: Scalar> Words for Edge<S> {
    fn write(&self, put: &mut impl FnMut(f32)) {
        let zero = S::zero();
        let (kind, first, second) = match *self {
            Edge::Sharp => (0.0, zero, zero),
            Edge::Square => (1.0, zero, zero),
            Edge::Chamfered { depth, angle } => (2.0, depth.meters(), angle.radians()),
            Edge::Rounded { radius } => (3.0, radius.meters(), zero),
        };
        put(kind);
        [first, second].write(put);
    }
    fn read(next: &mut impl FnMut() -> Option<f32>) -> Option<Self> {
        let kind = next()?;
        let [first, second] = Words::read(next)?;
        Some(match kind as u32 {
            0 => Edge::Sharp,
            1 => Edge::Square,
            2 => Edge::Chamfered { depth: Length::from_meters(first), angle: Angle::from_radians(second) },
            3 => Edge::Rounded { radius: Length::from_meters(first) },
            _ => return None,
        })
    }
}

impl<S: Scalar> Edge<S> {
    /// The same in another number type.
    #[must_use]
    pub fn cast<T: Scalar>(&self) -> Edge<T> {
        match *self {
            Edge::Sharp => Edge::Sharp,
            Edge::Square => Edge::Square,
            Edge::Chamfered { depth, angle } => Edge::Chamfered { depth: depth.cast(), angle: angle.cast() },
            Edge::Rounded { radius } => Edge::Rounded { radius: radius.cast() },
        }
    }

    /// Loss of the mouth on the dynamic head in a bore of this diameter.
    ///
    /// # Errors
    ///
    /// Chamfer depth, chamfer angle or edge radius out of range.
    ///
    /// # Source
    ///
    /// Idelchik, diagrams 3-4 and 3-7, scaled by 0.524/0.50 so that every mouth tends to the square one.
    ///
    /// # Examples
    ///
    /// ```
    /// use jetwright::orifice::Edge;
    /// use jetwright::quantity::Length;
    /// let loss = Edge::Rounded { radius: Length::from_millimeters(0.12_f64) }.entry_loss(Length::from_millimeters(1.0));
    /// assert!((loss.unwrap() - 0.09 * 1.04832).abs() < 1e-4);
    /// ```
    pub fn entry_loss(&self, diameter: Length<S>) -> Result<S> {
        let scale = S::c(SQUARE_ENTRY_LOSS / TABLE_SQUARE_LOSS);
        Ok(match *self {
            Edge::Sharp | Edge::Square => S::c(SQUARE_ENTRY_LOSS),
            Edge::Rounded { radius } => {
                let radius = check(Input::EdgeRadius, radius.meters())?;
                scale * in_table(ROUNDED.len(), |index| ROUNDED[index], radius / diameter.meters())
            }
            Edge::Chamfered { depth, angle } => {
                let depth = check(Input::ChamferDepth, depth.meters())? / diameter.meters();
                let degrees = Angle::from_radians(check(Input::ChamferAngle, angle.radians())?).degrees();
                let (row, share) = place(CONICAL.len(), |index| CONICAL[index].0, depth);
                let at = |row: usize| {
                    in_table(CONE_ANGLES.len(), |index| (CONE_ANGLES[index], CONICAL[row].1[index]), degrees)
                };
                scale * at_share(at(row), at(row + 1), share)
            }
        })
    }
}

#[cfg(test)]
mod tests {
    use super::{CONE_ANGLES, CONICAL, Edge, ROUNDED, SQUARE_ENTRY_LOSS};
    use crate::quantity::{Angle, Length};

    fn loss(edge: Edge) -> f64 {
        edge.entry_loss(Length::from_millimeters(2.0)).unwrap() * 0.5 / SQUARE_ENTRY_LOSS
    }

    #[test]
    fn the_tables_are_met_at_their_points() {
        for (ratio, published) in ROUNDED {
            let radius = Length::from_millimeters(2.0 * ratio);
            assert!((loss(Edge::Rounded { radius }) - published).abs() < 1e-12);
        }
        for (depth, row) in CONICAL {
            for (degrees, published) in CONE_ANGLES.into_iter().zip(row) {
                let edge = Edge::Chamfered {
                    depth: Length::from_millimeters(2.0 * depth),
                    angle: Angle::from_degrees(degrees),
                };
                assert!((loss(edge) - published).abs() < 1e-9, "{depth} {degrees}");
            }
        }
    }

    #[test]
    fn miller_and_crane_agree_about_a_rounded_mouth() {
        // Miller, Internal Flow Systems, and Crane TP-410, as in fluids 1.3.1; books differ by up to 0.04.
        for (ratio, published) in [(0.02, 0.357), (0.05, 0.209), (0.10, 0.082), (0.06, 0.15), (0.15, 0.04)] {
            let radius = Length::from_millimeters(2.0 * ratio);
            assert!((loss(Edge::Rounded { radius }) - published).abs() < 0.055, "{ratio}");
        }
    }

    #[test]
    fn no_rounding_and_no_chamfer_are_the_square_mouth() {
        let none = Length::from_meters(0.0);
        assert_eq!(loss(Edge::Rounded { radius: none }), 0.5);
        assert_eq!(loss(Edge::Chamfered { depth: none, angle: Angle::from_degrees(90.0) }), 0.5);
        assert_eq!(loss(Edge::Square), 0.5);
    }
}
