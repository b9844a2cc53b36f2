//! One body as a chain of nodes from its hot face inward: a wall build, a bar, a loaded crucible.
//!
//! The heat of each element lies half at either of its nodes; the conductivity is that of their mean temperature.

use heapless::Vec;

use super::medium::Medium;
use crate::furnace::{Body, LAYER_CAP, Surroundings};
use crate::quantity::Temperature;
use crate::scalar::Scalar;

/// Most nodes of a chain.
pub const NODE_CAP: usize = 66;
/// Elements grow from the hot face inward in the measure in which heat spreads, depth over the root of diffusivity: the
/// first one, root of s, and each beside the one before. Layers share one grading, so that what lies behind a thin coat is
/// as fine as the coat.
const FIRST: f64 = 1.0;
const GROWTH: f64 = 1.06;
/// A wall has so many elements at least: the first is smaller for it.
const LEAST_ELEMENTS: f64 = 12.0;
/// Temperature of the diffusivity, K.
const GRADED_AT: f64 = 900.0;
/// Where the nodes do not suffice, the grading is so many times as coarse.
const COARSER: f64 = 1.25;
/// Elements of a bar's radius and of a crucible's wall.
const BAR_ELEMENTS: usize = 8;
const CRUCIBLE_ELEMENTS: usize = 4;
/// Nudge for the slope of the outside loss, K.
const NUDGE: f64 = 0.01;

/// Temperatures of a chain's nodes, the hot face first.
pub type Nodes<S> = Vec<S, NODE_CAP>;

/// What lies between two nodes.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Element<S> {
    /// Material: area over thickness (or its like of a cylinder), m, and which medium.
    Through(S, usize),
    /// A conductance, W/K.
    Link(S),
}

/// How the chain ends.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum End<S = f64> {
    /// Nothing passes.
    Adiabatic,
    /// A linear film to a temperature: area, m2, coefficient, W/(m2 K), K.
    Film(S, S, S),
    /// Free convection and radiation to a room, from an area, m2.
    Room(S, Surroundings<S>),
}

impl<S: Scalar> End<S> {
    /// Heat lost by a face, W, and its slope.
    fn loss(&self, kelvin: S) -> (S, S) {
        match self {
            End::Adiabatic => (S::zero(), S::zero()),
            End::Film(area, film, outside) => (*area * *film * (kelvin - *outside), *area * *film),
            End::Room(area, room) => {
                let flux = |kelvin| *area * room.heat_flux(Temperature::from_kelvin(kelvin));
                let here = flux(kelvin);
                (here, (flux(kelvin + S::c(NUDGE)) - here) / S::c(NUDGE))
            }
        }
    }
}

/// Root of what a material spreads heat by, m/sqrt(s).
fn root_of_diffusivity<S: Scalar>(medium: &Medium<S>) -> S {
    let at = S::c(GRADED_AT);
    (medium.conductivity(at) / (medium.density() * medium.heat(at).0)).sqrt()
}

/// How fine a wall's elements are: the first, and the logarithm by which each is larger than the one before.
#[derive(Clone, Copy, Debug)]
struct Grading<S> {
    first: S,
    growth: S,
}

impl<S: Scalar> Grading<S> {
    /// The finest whose elements have places for their nodes; so many times as coarse where less will do.
    fn new(layers: &[(Medium<S>, S)], coarser: S) -> Self {
        let whole = layers.iter().fold(S::zero(), |sum, (medium, thick)| sum + *thick / root_of_diffusivity(medium));
        let first = (S::c(FIRST) * coarser).smaller(whole / S::c(LEAST_ELEMENTS));
        let mut grading = Self { first, growth: S::c(GROWTH).ln() * coarser };
        // Each round takes a fifth away; the largest wall has some hundred elements.
        for _ in 0..NODE_CAP {
            let mut spread = S::zero();
            let mut many = 1;
            for (medium, thickness) in layers {
                let through = *thickness / root_of_diffusivity(medium);
                many += grading.elements(spread, spread + through);
                spread += through;
            }
            if many as usize <= NODE_CAP {
                break;
            }
            grading.first = grading.first * S::c(COARSER);
            grading.growth = grading.growth * S::c(COARSER);
        }
        grading
    }

    /// The place of a depth among the elements.
    fn place(&self, spread: S) -> S {
        (self.growth.exp_m1() * spread / self.first).ln_1p() / self.growth
    }

    /// Elements from one depth to another.
    fn elements(&self, from: S, to: S) -> u32 {
        (self.place(to) - self.place(from) + S::c(0.5)).whole().max(1)
    }

    /// How far from one depth to another a share of the elements between them reaches.
    fn share(&self, from: S, to: S, part: S) -> S {
        let log = self.growth * (self.place(to) - self.place(from));
        (log * part).exp_m1() / log.exp_m1()
    }
}

/// A chain.
#[derive(Clone, Debug, PartialEq)]
pub struct Chain<S = f64> {
    media: Vec<Medium<S>, LAYER_CAP>,
    elements: Vec<Element<S>, NODE_CAP>,
    /// Masses at each node: medium and kilograms, of the element before it and of the one after.
    masses: Vec<[(usize, S); 2], NODE_CAP>,
    end: End<S>,
}

/// What is left of a chain when it is eliminated from its cold end: `diagonal` times the hot face's temperature is
/// `right` plus the heat that enters there.
#[derive(Clone, Debug)]
pub struct Eliminated<S> {
    pub(super) diagonal: S,
    pub(super) right: S,
    offset: Nodes<S>,
    slope: Nodes<S>,
}

impl<S: Scalar> Chain<S> {
    fn empty(end: End<S>) -> Self {
        Self { media: Vec::new(), elements: Vec::new(), masses: Vec::new(), end }
    }

    /// Adds a material, and its place.
    fn medium(&mut self, medium: Medium<S>) -> usize {
        // The callers hold to the cap of layers.
        let _ = self.media.push(medium);
        self.media.len().saturating_sub(1)
    }

    /// Adds an element of a material: its conductance by conductivity, its mass at each end.
    fn add(&mut self, medium: usize, shape: S, inner: S, outer: S) {
        let none = (0, S::zero());
        if self.masses.is_empty() {
            let _ = self.masses.push([none, none]);
        }
        if let Some(last) = self.masses.last_mut() {
            last[1] = (medium, inner);
        }
        let _ = self.elements.push(Element::Through(shape, medium));
        let _ = self.masses.push([(medium, outer), none]);
    }

    /// A wall of layers, the hot one first, each with its thickness, m.
    #[must_use]
    pub fn wall(layers: &[(Medium<S>, S)], body: &Body<S>, end: End<S>) -> Self {
        Self::coarser_wall(layers, body, end, S::one())
    }

    /// The same with elements so many times as coarse, for what is only compared with its like.
    #[must_use]
    pub fn coarser_wall(layers: &[(Medium<S>, S)], body: &Body<S>, end: End<S>, coarser: S) -> Self {
        let mut chain = Self::empty(end);
        let layers = layers.get(..LAYER_CAP).unwrap_or(layers);
        let grading = Grading::new(layers, coarser);
        let (mut depth, mut spread) = (S::zero(), S::zero());
        for (medium, thickness) in layers {
            let place = chain.medium(medium.clone());
            let density = medium.density();
            let through = *thickness / root_of_diffusivity(medium);
            let begin = depth;
            let many = grading.elements(spread, spread + through);
            for index in 1..=many {
                let share = grading.share(spread, spread + through, S::count(index) / S::count(many));
                let beyond = begin + share * *thickness;
                let middle = S::c(0.5) * (depth + beyond);
                let (inner, outer) = (body.volume(depth, middle), body.volume(middle, beyond));
                chain.add(place, S::one() / body.resistance(depth, beyond), density * inner, density * outer);
                depth = beyond;
            }
            spread += through;
        }
        chain
    }

    /// A bar heated from its side, its ends counting for nothing.
    #[must_use]
    pub fn bar(medium: &Medium<S>, diameter: S, length: S) -> Self {
        let mut chain = Self::empty(End::Adiabatic);
        let place = chain.medium(medium.clone());
        let (radius, around) = (S::c(0.5) * diameter, S::c(core::f64::consts::PI) * length);
        let width = radius / S::c(BAR_ELEMENTS as f64);
        let ring = |from: S, to: S| around * medium.density() * (from.squared() - to.squared());
        for index in 0..BAR_ELEMENTS {
            let outer = radius - S::c(index as f64) * width;
            let (middle, inner) = (outer - S::c(0.5) * width, outer - width);
            // Between two radii, by the mean of them: the axis has no logarithm.
            let shape = S::c(2.0) * around * middle / width;
            chain.add(place, shape, ring(outer, middle), ring(middle, inner.larger(S::zero())));
        }
        chain
    }

    /// A crucible's wall of an area and a thickness, its mass spread evenly, around a charge of one temperature behind a
    /// film of `inside` W/(m2 K).
    #[must_use]
    pub fn crucible(
        wall: &Medium<S>,
        mass: S,
        thickness: S,
        area: S,
        inside: S,
        charge: &Medium<S>,
        filled: S,
    ) -> Self {
        let mut chain = Self::empty(End::Adiabatic);
        let place = chain.medium(wall.clone());
        let many = S::c(CRUCIBLE_ELEMENTS as f64);
        let half = S::c(0.5) * mass / many;
        for _ in 0..CRUCIBLE_ELEMENTS {
            chain.add(place, area * many / thickness, half, half);
        }
        let place = chain.medium(charge.clone());
        let _ = chain.elements.push(Element::Link(area * inside));
        let _ = chain.masses.push([(place, filled), (place, S::zero())]);
        chain
    }

    /// A lump of one temperature.
    #[must_use]
    pub fn lump(medium: &Medium<S>, mass: S) -> Self {
        let mut chain = Self::empty(End::Adiabatic);
        let place = chain.medium(medium.clone());
        let _ = chain.masses.push([(place, mass), (place, S::zero())]);
        chain
    }

    /// The same chain with its conductivity and its heat multiplied.
    #[must_use]
    pub fn scaled(&self, conductivity: S, heat: S) -> Self {
        let mut other = self.clone();
        for element in &mut other.elements {
            if let Element::Through(shape, _) = element {
                *shape = *shape * conductivity;
            }
        }
        for (_, mass) in other.masses.iter_mut().flatten() {
            *mass = *mass * heat;
        }
        other
    }

    /// The same chain with the conductance into its charge multiplied.
    #[must_use]
    pub fn with_links(&self, factor: S) -> Self {
        let mut other = self.clone();
        for element in &mut other.elements {
            if let Element::Link(conductance) = element {
                *conductance = *conductance * factor;
            }
        }
        other
    }

    /// The chain at one temperature throughout.
    #[must_use]
    pub fn uniform(&self, kelvin: S) -> Nodes<S> {
        self.masses.iter().map(|_| kelvin).collect()
    }

    /// Heat of a node above another temperature, J, and its slope.
    fn stored_at(&self, node: usize, kelvin: S, old: S) -> (S, S) {
        let (mut heat, mut slope) = (S::zero(), S::zero());
        for &(medium, mass) in self.masses.get(node).into_iter().flatten() {
            let Some(medium) = self.media.get(medium).filter(|_| mass > S::zero()) else { continue };
            let (capacity, enthalpy) = medium.heat(kelvin);
            heat += mass * (enthalpy - medium.heat(old).1);
            slope += mass * capacity;
        }
        (heat, slope)
    }

    /// Heat stored from one state to another, J.
    #[must_use]
    pub fn stored(&self, from: &Nodes<S>, to: &Nodes<S>) -> S {
        let pairs = from.iter().zip(to).enumerate();
        pairs.fold(S::zero(), |sum, (node, (old, new))| sum + self.stored_at(node, *new, *old).0)
    }

    /// Heat lost at the cold end, W.
    #[must_use]
    pub fn lost(&self, nodes: &Nodes<S>) -> S {
        nodes.last().map_or(S::zero(), |last| self.end.loss(*last).0)
    }

    fn conductance(&self, element: usize, nodes: &Nodes<S>) -> S {
        match self.elements.get(element) {
            Some(&Element::Link(conductance)) => conductance,
            Some(&Element::Through(shape, medium)) => {
                let mean = S::c(0.5) * (nodes[element] + nodes[element + 1]);
                self.media.get(medium).map_or(S::zero(), |medium| shape * medium.conductivity(mean))
            }
            None => S::zero(),
        }
    }

    /// One implicit step of `dt` seconds from `old`, linear about `at`, eliminated from the cold end.
    pub(super) fn eliminate(&self, old: &Nodes<S>, at: &Nodes<S>, dt: S) -> Eliminated<S> {
        let last = at.len() - 1;
        let mut made = Eliminated {
            diagonal: S::zero(),
            right: S::zero(),
            offset: self.uniform(S::zero()),
            slope: self.uniform(S::zero()),
        };
        let (out, out_slope) = self.end.loss(at[last]);
        let (mut diagonal, mut right) = (out_slope, out_slope * at[last] - out);
        let mut beyond = S::zero();
        for node in (0..=last).rev() {
            let (heat, slope) = self.stored_at(node, at[node], old[node]);
            let rate = slope / dt;
            diagonal += rate;
            right += rate * at[node] - heat / dt;
            if node < last {
                // What lies behind hangs on this node: T = offset + slope T(node).
                diagonal += beyond * (S::one() - made.slope[node + 1]);
                right += beyond * made.offset[node + 1];
            }
            if node == 0 {
                break;
            }
            let before = self.conductance(node - 1, at);
            made.slope[node] = before / (diagonal + before);
            made.offset[node] = right / (diagonal + before);
            beyond = before;
            (diagonal, right) = (S::zero(), S::zero());
        }
        made.diagonal = diagonal;
        made.right = right;
        made
    }

    /// Moves the nodes to the hot face's new temperature; what a node changed by at most.
    pub(super) fn replace(&self, made: &Eliminated<S>, hot: S, nodes: &mut Nodes<S>) -> S {
        let (mut most, mut wanted) = (S::zero(), hot);
        for node in 0..nodes.len() {
            if node > 0 {
                wanted = made.offset[node] + made.slope[node] * wanted;
            }
            let was = nodes[node];
            let moved = self.moved(node, was, wanted);
            most = most.larger((moved - was).abs());
            nodes[node] = moved;
        }
        most
    }

    /// Where a node comes to whose linear answer is `wanted`: by heat, where the specific heat jumps.
    fn moved(&self, node: usize, was: S, wanted: S) -> S {
        let held = self.masses.get(node).into_iter().flatten().find(|(_, mass)| *mass > S::zero());
        match held.and_then(|(medium, _)| self.media.get(*medium)) {
            Some(medium) if medium.jumps() => medium.after(was, medium.heat(was).0 * (wanted - was)),
            _ => wanted.clamped(S::c(100.0), S::c(4000.0)),
        }
    }

    /// Twice the nodes' own change less that of another state's, by heat where the specific heat jumps.
    pub(super) fn extrapolate(&self, nodes: &mut Nodes<S>, full: &Nodes<S>) {
        for (node, (half, full)) in nodes.iter_mut().zip(full).enumerate() {
            let held = self.masses.get(node).into_iter().flatten().find(|(_, mass)| *mass > S::zero());
            *half = match held.and_then(|(medium, _)| self.media.get(*medium)) {
                Some(medium) if medium.jumps() => medium.after(*half, medium.heat(*half).1 - medium.heat(*full).1),
                _ => *half + (*half - *full),
            };
        }
    }
}
