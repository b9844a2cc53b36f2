//! The shape of a body that heat flows through, and what is asked of the matter in it.

use crate::quantity::{Area, Length};
use crate::scalar::Scalar;

/// Most layers of a wall.
pub const LAYER_CAP: usize = 6;

/// What a part of a body is made of. Temperatures in kelvin.
pub trait Matter<S> {
    /// Density, kg/m3.
    fn density(&self) -> S;
    /// Conductivity, W/(m K).
    fn conductivity(&self, kelvin: S) -> S;
    /// Specific heat, J/(kg K).
    fn specific_heat(&self, kelvin: S) -> S;
    /// Heat from one temperature to another, J/kg.
    fn heat_between(&self, from: S, to: S) -> S;
}

/// The shape of a wall.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Body<S = f64> {
    /// Flat, or so little curved that it counts as flat.
    Flat {
        /// Area of the hot face.
        area: Area<S>,
    },
    /// Round about the chamber.
    Round {
        /// Radius of the hot face.
        inner_radius: Length<S>,
        /// Length along the axis.
        length: Length<S>,
    },
}

impl<S: Scalar> Body<S> {
    /// Area at a depth behind the hot face, m2.
    pub(super) fn area_at(&self, depth: S) -> S {
        match *self {
            Body::Flat { area } => area.square_meters(),
            Body::Round { inner_radius, length } => {
                S::c(2.0 * core::f64::consts::PI) * (inner_radius.meters() + depth) * length.meters()
            }
        }
    }

    /// Resistance of a stretch times its conductivity, 1/m: thickness / A, or ln(r2/r1) / (2 pi L).
    pub(super) fn resistance(&self, from: S, to: S) -> S {
        match *self {
            Body::Flat { area } => (to - from) / area.square_meters(),
            Body::Round { inner_radius, length } => {
                let ratio = (to - from) / (inner_radius.meters() + from);
                ratio.ln_1p() / (S::c(2.0 * core::f64::consts::PI) * length.meters())
            }
        }
    }

    /// Volume of a stretch, m3.
    pub(super) fn volume(&self, from: S, to: S) -> S {
        S::c(0.5) * (self.area_at(from) + self.area_at(to)) * (to - from)
    }
}
