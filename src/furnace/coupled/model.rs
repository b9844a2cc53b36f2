//! The furnace as one system: what it is, and the state it is in.

use heapless::Vec;

use super::chain::{Chain, Nodes};
use super::draft::{Draft, LEAST, Vent};
use super::exchange::{Part, SURFACE_CAP, Surface};
use super::gas::Flow;
use super::stream::Stream;
use crate::error::Result;
use crate::furnace::OPENING_CAP;
use crate::furnace::surface::AIR_GAS_CONSTANT;
use crate::scalar::Scalar;

/// Most wall builds.
pub const BUILD_CAP: usize = 4;
/// Most things that stand in the chamber at once.
pub const CONTENT_CAP: usize = 3;
/// Most openings and leaks.
pub const VENT_CAP: usize = OPENING_CAP + 2;
/// Walls and contents.
pub(super) const CHAIN_CAP: usize = BUILD_CAP + CONTENT_CAP;

/// One wall build.
#[derive(Clone, Debug, PartialEq)]
pub struct Build<S = f64> {
    /// The wall from the hot face to the shell.
    pub chain: Chain<S>,
    /// Area of the hot face, m2.
    pub area: S,
    /// Emissivity of the hot face.
    pub emissivity: S,
}

/// Something that stands in the chamber.
#[derive(Clone, Debug, PartialEq)]
pub struct Content<S = f64> {
    /// The body from its outside inward.
    pub chain: Chain<S>,
    /// Area of its outside, m2.
    pub area: S,
    /// Emissivity of its outside.
    pub emissivity: S,
    /// Volume it takes from the chamber, m3.
    pub volume: S,
}

/// An opening: a hole that radiates, and may let air pass.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Opening<S = f64> {
    /// Area, m2.
    pub area: S,
    /// Share of what enters it that leaves the furnace.
    pub passage: S,
}

/// Film coefficients of the chamber's gas on its surfaces, W/(m2 K).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Films<S = f64> {
    /// With a fire.
    pub fired: S,
    /// With the blower's air alone.
    pub blown: S,
    /// With everything off.
    pub off: S,
}

/// The furnace.
#[derive(Clone, Debug, PartialEq)]
pub struct Furnace<S = f64> {
    /// Wall builds.
    pub builds: Vec<Build<S>, BUILD_CAP>,
    /// Openings that radiate.
    pub openings: Vec<Opening<S>, OPENING_CAP>,
    /// The same and leaks, for air.
    pub vents: Vec<Vent<S>, VENT_CAP>,
    /// Empty volume, m3.
    pub volume: S,
    /// What the burner sends in.
    pub stream: Stream<S>,
    /// Stirred zones of the fired gas, 1 to 3.
    pub zones: usize,
    /// Film coefficients.
    pub films: Films<S>,
    /// Temperature of the room, K.
    pub room: S,
    /// Pressure of its air, Pa.
    pub pressure: S,
    /// Discharge coefficient of the openings.
    pub discharge: S,
    /// Constant of the lid's exchange.
    pub lid_exchange: S,
}

/// What is done to the furnace for a while.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Drive<S = f64> {
    /// A fire of net heat, W, with air mixed in beside it, kg/s.
    Fire {
        /// Net heat, W.
        heat: S,
        /// Air mixed in, kg/s.
        leak: S,
    },
    /// The fire that keeps the chamber at a temperature, K, within what the burner can do.
    Keep {
        /// Temperature of the chamber, K.
        chamber: S,
        /// Least and most fire, W.
        fire: (S, S),
    },
    /// Air from the blower, kg/s, without gas.
    Air {
        /// Mass flow, kg/s.
        flow: S,
        /// Whether the openings let air pass besides.
        draft: bool,
    },
    /// Everything off.
    Off {
        /// Whether the openings let air pass; not when all is shut.
        draft: bool,
    },
}

/// Where the furnace stands.
#[derive(Clone, Debug)]
pub struct State<S = f64> {
    /// Temperatures of the builds and then of the contents.
    pub nodes: Vec<Nodes<S>, CHAIN_CAP>,
    /// Temperature the gas leaves at, K.
    pub gas: S,
    /// The fire, W.
    pub fire: S,
}

/// Heat of a stretch of time, J.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Ledger<S = f64> {
    /// Net heat of the gas burnt.
    pub fuel: S,
    /// What left with the gas.
    pub flue: S,
    /// What radiated through the openings.
    pub openings: S,
    /// What the shell gave off.
    pub shell: S,
    /// What walls and contents took up.
    pub stored: S,
    /// Air that came in, kg.
    pub entered: S,
}

impl<S: Scalar> Ledger<S> {
    /// Each entry of two ledgers through a function.
    pub(super) fn with(&self, other: &Self, join: impl Fn(S, S) -> S) -> Self {
        Self {
            fuel: join(self.fuel, other.fuel),
            flue: join(self.flue, other.flue),
            openings: join(self.openings, other.openings),
            shell: join(self.shell, other.shell),
            stored: join(self.stored, other.stored),
            entered: join(self.entered, other.entered),
        }
    }
}

impl<S: Scalar> Furnace<S> {
    /// The furnace cold, at the temperature of the room.
    #[must_use]
    pub fn cold(&self) -> State<S> {
        let nodes = self.builds.iter().map(|build| build.chain.uniform(self.room)).collect();
        State { nodes, gas: self.room, fire: S::zero() }
    }

    /// Temperature of the chamber: that of a black body that radiates as the walls do on average.
    #[must_use]
    pub fn chamber(&self, state: &State<S>) -> S {
        let (mut sum, mut area) = (S::zero(), S::zero());
        for (build, nodes) in self.builds.iter().zip(&state.nodes) {
            sum += build.area * hot(nodes).squared().squared();
            area += build.area;
        }
        (sum / area).sqrt().sqrt()
    }

    /// The coldest of the hot faces.
    #[must_use]
    pub fn coldest_face(&self, state: &State<S>) -> S {
        let faces = state.nodes.iter().take(self.builds.len()).map(hot);
        faces.fold(S::c(1e9), Scalar::smaller)
    }

    /// The hottest of them.
    #[must_use]
    pub fn hottest_face(&self, state: &State<S>) -> S {
        let faces = state.nodes.iter().take(self.builds.len()).map(hot);
        faces.fold(S::zero(), Scalar::larger)
    }

    pub(super) fn chains<'a>(&'a self, contents: &'a [Content<S>]) -> impl Iterator<Item = &'a Chain<S>> + 'a {
        self.builds.iter().map(|build| &build.chain).chain(contents.iter().map(|content| &content.chain))
    }

    /// Walls, contents, then openings, at their temperatures.
    pub(super) fn surfaces(&self, contents: &[Content<S>], faces: &[S]) -> Vec<Surface<S>, SURFACE_CAP> {
        let walls = self.builds.iter().map(|build| (build.area, build.emissivity, Part::Wall));
        let bodies = contents.iter().map(|content| (content.area, content.emissivity, Part::Content));
        let solid = walls.chain(bodies).zip(faces);
        let solid = solid.map(|((area, emissivity, part), &kelvin)| Surface { area, emissivity, kelvin, part });
        let room = self.room;
        let open = self.openings.iter().map(|opening| Surface {
            area: opening.area,
            emissivity: opening.passage,
            kelvin: room,
            part: Part::Opening,
        });
        solid.chain(open).collect()
    }

    /// Air that the openings let in, kg/s, with gas as hot as it last left and so much blown in.
    fn drawn(&self, gas: S, blown: S) -> Result<S> {
        let density = |kelvin: S| self.pressure / (S::c(AIR_GAS_CONSTANT) * kelvin);
        let inside = density(gas.larger(self.room + S::c(0.01)));
        let outside = density(self.room);
        let draft = Draft { outside, inside, blown, discharge: self.discharge, lid_exchange: self.lid_exchange };
        draft.entering(&self.vents)
    }

    /// What drives the gas at a fire, and whether its products radiate.
    pub(super) fn flow(&self, drive: &Drive<S>, fire: S, gas: S) -> Result<(Flow<S>, Option<S>)> {
        let zero = S::zero();
        match *drive {
            Drive::Fire { .. } | Drive::Keep { .. } => {
                let own = fire * self.stream.mass_per_heat;
                let beside = if let Drive::Fire { leak, .. } = *drive { leak } else { zero };
                let air = self.drawn(gas, own)? + beside;
                let thinned = if air > zero { own / (own + air) } else { S::one() };
                let leak = if own > zero { air / own } else { zero };
                Ok((Flow { heat: fire, air, leak }, Some(thinned)))
            }
            Drive::Air { flow, draft } => {
                let drawn = if draft { self.drawn(gas, flow)? } else { zero };
                Ok((Flow { heat: zero, air: (flow + drawn).larger(S::c(LEAST)), leak: zero }, None))
            }
            Drive::Off { draft } => {
                let drawn = if draft { self.drawn(gas, zero)? } else { zero };
                Ok((Flow { heat: zero, air: drawn.larger(S::c(LEAST)), leak: zero }, None))
            }
        }
    }
}

/// The first node.
pub(super) fn hot<S: Scalar>(nodes: &Nodes<S>) -> S {
    nodes.first().copied().unwrap_or_default()
}
