//! The shape of a bore.

use super::edge::{Edge, SQUARE_ENTRY_LOSS};
use crate::error::Result;
use crate::friction::Wall;
use crate::limits::{Input, check};
use crate::quantity::{Area, Length};
use crate::scalar::Scalar;
use crate::words::words;

/// Roughness of a drilled wall when none is given, m (common practice, no source).
const DRILLED_ROUGHNESS: f64 = 5e-6;

/// Length over diameter from which a bore is fully reattached, and from which friction is counted.
pub(super) const REATTACHED: f64 = 1.5;
/// How the stream reattaches with length: the exponent of McGreehan and Schotsch, ASME 87-GT-162.
const REATTACHMENT: f64 = 1.606;
/// How the contraction of a thin plate softens with the loss of its mouth: (K/K square)^0.4 follows the
/// rounded edges of McGreehan and Schotsch within 0.03.
const SOFTENING: f64 = 0.4;

/// Length of a bore: known, or known in diameters while the diameter is still sought.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum BoreLength<S = f64> {
    /// A length.
    Fixed(Length<S>),
    /// A multiple of the diameter.
    Diameters(S),
}

/// Everything about a bore but its diameter.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BoreShape<S = f64> {
    /// Length of the straight bore, without a chamfer or rounding.
    pub length: BoreLength<S>,
    /// The mouth.
    pub edge: Edge<S>,
    /// Roughness of its wall.
    pub roughness: Length<S>,
    /// Inside diameter of the tube before it; none for a wide approach.
    pub approach: Option<Length<S>>,
}

impl<S: Scalar> Default for BoreShape<S> {
    /// A drilled hole of which nothing is known: square, three diameters long.
    fn default() -> Self {
        Self::drilled(BoreLength::Diameters(S::c(3.0)))
    }
}

impl<S: Scalar> BoreShape<S> {
    /// A drilled hole of a known length with a square shoulder.
    #[must_use]
    pub fn drilled(length: BoreLength<S>) -> Self {
        Self { length, edge: Edge::Square, roughness: Length::from_meters(S::c(DRILLED_ROUGHNESS)), approach: None }
    }

    /// A thin plate with a sharp edge.
    #[must_use]
    pub fn thin_plate() -> Self {
        Self { edge: Edge::Sharp, ..Self::drilled(BoreLength::Fixed(Length::from_meters(S::zero()))) }
    }

    /// The same in another number type.
    #[must_use]
    pub fn cast<T: Scalar>(&self) -> BoreShape<T> {
        BoreShape {
            length: match self.length {
                BoreLength::Fixed(length) => BoreLength::Fixed(length.cast()),
                BoreLength::Diameters(count) => BoreLength::Diameters(T::c(count.to_f64())),
            },
            edge: self.edge.cast(),
            roughness: self.roughness.cast(),
            approach: self.approach.map(Length::cast),
        }
    }

    /// The bore of this shape and diameter.
    ///
    /// # Errors
    ///
    /// The measure that is out of its range; an approach tube must be wider than the bore over 0.7.
    pub fn with_diameter(&self, diameter: Length<S>) -> Result<Bore<S>> {
        let d = check(Input::Bore, diameter.meters())?;
        let length = match self.length {
            BoreLength::Fixed(length) => length.meters(),
            BoreLength::Diameters(count) => count * d,
        };
        let length = check(Input::BoreLength, length)?;
        let roughness = check(Input::Roughness, self.roughness.meters())?;
        let approach_ratio = match self.approach {
            Some(approach) => check(Input::ApproachRatio, d / approach.meters())?,
            None => S::zero(),
        };
        let entry_loss = self.edge.entry_loss(diameter)?;
        Ok(Bore {
            diameter,
            area: Area::from_square_meters(S::c(core::f64::consts::FRAC_PI_4) * d.squared()),
            length_ratio: length / d,
            edge: self.edge,
            entry_loss,
            softening: softening(entry_loss),
            reattachment: reattachment(length / d),
            wall: Wall::new(roughness / d),
            approach_ratio,
            approach_factor: S::one() / (S::one() - approach_ratio.squared().squared()).sqrt(),
        })
    }
}

/// A bore, checked and with all that depends on its shape alone worked out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bore<S = f64> {
    pub(super) diameter: Length<S>,
    pub(super) area: Area<S>,
    pub(super) length_ratio: S,
    pub(super) edge: Edge<S>,
    pub(super) entry_loss: S,
    /// Share of a sharp edge's contraction that this mouth leaves in a thin plate.
    pub(super) softening: S,
    /// How far the stream has reattached, from 0 in a thin plate to 1 at 1.5 diameters.
    pub(super) reattachment: S,
    pub(super) wall: Wall<S>,
    pub(super) approach_ratio: S,
    /// Coefficient of approach.
    pub(super) approach_factor: S,
}

words!(Bore {
    diameter,
    area,
    length_ratio,
    edge,
    entry_loss,
    softening,
    reattachment,
    wall,
    approach_ratio,
    approach_factor
});

/// (K / K square)^0.4.
fn softening<S: Scalar>(entry_loss: S) -> S {
    (entry_loss / S::c(SQUARE_ENTRY_LOSS)).powf(S::c(SOFTENING))
}

/// (1 - exp(-1.606 x^2)) / (1 - exp(-3.614)).
fn reattachment<S: Scalar>(x: S) -> S {
    if x >= S::c(REATTACHED) {
        return S::one();
    }
    let whole = S::c(-REATTACHMENT * REATTACHED * REATTACHED).exp_m1();
    (S::c(-REATTACHMENT) * x.squared()).exp_m1() / whole
}

impl<S: Scalar> Bore<S> {
    /// The same bore with the loss of its mouth multiplied: an edge that a file has broken loses less than a square
    /// one, a burr loses more.
    #[must_use]
    pub fn with_mouth(&self, factor: S) -> Self {
        let entry_loss = self.entry_loss * factor;
        Self { entry_loss, softening: softening(entry_loss), ..*self }
    }
    /// Diameter.
    #[must_use]
    pub fn diameter(&self) -> Length<S> {
        self.diameter
    }
    /// Area of the hole.
    #[must_use]
    pub fn area(&self) -> Area<S> {
        self.area
    }
    /// Length over diameter.
    #[must_use]
    pub fn length_ratio(&self) -> S {
        self.length_ratio
    }
    /// Diameter over that of the tube before it; zero for a wide approach.
    #[must_use]
    pub fn approach_ratio(&self) -> S {
        self.approach_ratio
    }
}
