//! Heat flowing through layers while time passes: cells of fixed number, implicit in time.

use heapless::Vec;

use super::body::{Body, LAYER_CAP, Matter};
use crate::quantity::Duration;
use crate::scalar::Scalar;

/// Cells of a grid.
pub const CELLS: usize = 48;
/// Cells and the two faces.
const NODES: usize = CELLS + 2;
/// Most Newton steps of one stage.
const NEWTON_CAP: usize = 12;

/// Heat that crossed the two faces in a step, J.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Exchange<S = f64> {
    /// In through the hot face.
    pub entered: S,
    /// Out through the outside.
    pub left: S,
}

/// A body cut into cells from the hot face outward.
///
/// Finite volumes; two implicit stages a step (L-stable, second order), so that any step is stable and the heat that
/// enters less the heat that leaves is the heat stored, to the tolerance of the iteration.
///
/// # Source
///
/// Alexander, SIAM J. Numer. Anal. 14 (1977) 1006, the method with two stages of order 2.
#[derive(Clone, Debug)]
pub struct Grid<'m, S, M> {
    cells: Vec<Cell<'m, S, M>, CELLS>,
    /// Temperatures of the hot face, the cells and the outside, K.
    nodes: [S; NODES],
}

#[derive(Clone, Copy, Debug)]
struct Cell<'m, S, M> {
    matter: &'m M,
    /// Its middle behind the hot face, m.
    middle: S,
    mass: S,
    /// Resistance times conductivity from its inner face to its middle, and from there to its outer face, 1/m.
    inner: S,
    outer: S,
}

impl<'m, S: Scalar, M: Matter<S>> Grid<'m, S, M> {
    /// A body of layers, each a matter and a thickness in m, at one temperature in K.
    ///
    /// Every layer gets at least four cells, the rest by thickness. At most six layers are taken. In the first layer
    /// each cell is `growth` times as wide as the one before: 1 for a piece, 1.08 for a wall under a sudden fire.
    #[must_use]
    pub fn new(layers: impl Iterator<Item = (&'m M, S)> + Clone, body: &Body<S>, kelvin: S, growth: S) -> Self {
        let layers = layers.take(LAYER_CAP);
        let count = layers.clone().count().max(1);
        let whole = layers.clone().fold(S::zero(), |sum, layer| sum + layer.1);
        let spare = CELLS - 4 * count;
        let (mut cells, mut depth, mut given) = (Vec::new(), S::zero(), 0);
        for (index, (matter, thickness)) in layers.enumerate() {
            let share = (thickness / whole).to_f64() * spare as f64;
            let more = if index + 1 == count { spare - given } else { (share as usize).min(spare - given) };
            given += more;
            let many = 4 + more;
            let growth = if index == 0 { growth } else { S::one() };
            let (mut parts, mut part) = (S::zero(), S::one());
            for _ in 0..many {
                parts += part;
                part = part * growth;
            }
            let mut width = thickness / parts;
            for _ in 0..many {
                let (start, middle, end) = (depth, depth + S::c(0.5) * width, depth + width);
                let cell = Cell {
                    matter,
                    middle,
                    mass: matter.density() * body.volume(start, end),
                    inner: body.resistance(start, middle),
                    outer: body.resistance(middle, end),
                };
                // The cells of all layers add to the capacity.
                let _ = cells.push(cell);
                depth = end;
                width = width * growth;
            }
        }
        // On the axis of a solid cylinder the way to the middle is endless; nothing flows there.
        if let Some(first) = cells.first_mut() {
            if !first.inner.is_finite() {
                first.inner = first.outer;
            }
        }
        Self { cells, nodes: [kelvin; NODES] }
    }

    /// The hot face, K.
    #[must_use]
    pub fn hot_face(&self) -> S {
        self.nodes[0]
    }
    /// The outside, K.
    #[must_use]
    pub fn outside(&self) -> S {
        self.nodes[self.cells.len() + 1]
    }
    /// Depth behind the hot face, m, and temperature, K, of every cell.
    pub fn profile(&self) -> impl Iterator<Item = (S, S)> + '_ {
        self.cells.iter().zip(&self.nodes[1..]).map(|(cell, kelvin)| (cell.middle, *kelvin))
    }
    /// Heat stored above a temperature, J.
    #[must_use]
    pub fn stored_above(&self, kelvin: S) -> S {
        let heat = |(cell, at): (&Cell<'m, S, M>, &S)| cell.mass * cell.matter.heat_between(kelvin, *at);
        self.cells.iter().zip(&self.nodes[1..]).map(heat).fold(S::zero(), |sum, heat| sum + heat)
    }

    /// One step in time. `hot` gives the heat that enters at a temperature of the hot face, `cold` the heat that
    /// leaves at a temperature of the outside, both in W and K.
    pub fn step(&mut self, time: Duration<S>, hot: impl Fn(S) -> S, cold: impl Fn(S) -> S) -> Exchange<S> {
        let dt = time.seconds();
        // 1 - 1/sqrt(2)
        let gamma = S::c(0.292_893_218_813_452_5);
        let rest = S::one() - gamma;
        let old = self.nodes;
        let nothing = [S::zero(); NODES];
        self.stage(&old, &nothing, gamma * dt, &hot, &cold);
        let mut first = [S::zero(); NODES];
        let mut into = self.flow(0).1;
        for (index, kept) in first.iter_mut().enumerate().skip(1).take(self.cells.len()) {
            let out = self.flow(index).1;
            *kept = rest * dt * (into - out);
            into = out;
        }
        let start = Exchange { entered: hot(self.nodes[0]), left: cold(self.outside()) };
        self.stage(&old, &first, gamma * dt, &hot, &cold);
        Exchange {
            entered: dt * (rest * start.entered + gamma * hot(self.nodes[0])),
            left: dt * (rest * start.left + gamma * cold(self.outside())),
        }
    }

    /// Conductance and heat flow between node `index` and the next.
    fn flow(&self, index: usize) -> (S, S) {
        let of = |cell: usize| {
            let cell = &self.cells[cell];
            (cell, cell.matter)
        };
        let last = self.cells.len();
        let mut resistance = S::zero();
        if index > 0 {
            let (cell, matter) = of(index - 1);
            resistance += cell.outer / matter.conductivity(self.nodes[index]);
        }
        if index < last {
            let (cell, matter) = of(index);
            resistance += cell.inner / matter.conductivity(self.nodes[index + 1]);
        }
        let conductance = S::one() / resistance;
        (conductance, conductance * (self.nodes[index] - self.nodes[index + 1]))
    }

    /// Solves heat stored since `old` = `before` + `dt` (in - out) for every node, from where the nodes are.
    fn stage(&mut self, old: &[S; NODES], before: &[S; NODES], dt: S, hot: &impl Fn(S) -> S, cold: &impl Fn(S) -> S) {
        let last = self.cells.len();
        let nudge = S::c(0.25);
        for _ in 0..NEWTON_CAP {
            // Elimination downward: each node is `offset` + `slope` times the next one's change.
            let (mut slope, mut offset) = ([S::zero(); NODES], [S::zero(); NODES]);
            let (mut lower, mut arriving) = (S::zero(), S::zero());
            for index in 0..=last + 1 {
                let (upper, leaving) = if index <= last { self.flow(index) } else { (S::zero(), S::zero()) };
                let kelvin = self.nodes[index];
                // Rate form: `held` is what the node keeps, W and W/K.
                let (held, held_slope, into, into_slope) = if index == 0 {
                    let heat = hot(kelvin);
                    (S::zero(), S::zero(), heat, (hot(kelvin + nudge) - heat) / nudge)
                } else if index == last + 1 {
                    let heat = cold(kelvin);
                    (S::zero(), S::zero(), -heat, -(cold(kelvin + nudge) - heat) / nudge)
                } else {
                    let cell = &self.cells[index - 1];
                    let stored = cell.mass * cell.matter.heat_between(old[index], kelvin);
                    let capacity = cell.mass * cell.matter.specific_heat(kelvin);
                    ((stored - before[index]) / dt, capacity / dt, S::zero(), S::zero())
                };
                let residual = held - into - arriving + leaving;
                let diagonal = held_slope - into_slope + lower + upper - lower * prior(&slope, index);
                let carried = lower * prior(&offset, index);
                slope[index] = upper / diagonal;
                offset[index] = (carried - residual) / diagonal;
                lower = upper;
                arriving = leaving;
            }
            let (mut change, mut most) = (S::zero(), S::zero());
            for index in (0..=last + 1).rev() {
                change = offset[index] + slope[index] * change;
                self.nodes[index] = (self.nodes[index] + change).clamped(S::c(100.0), S::c(6000.0));
                most = most.larger(change.abs());
            }
            if most < S::c(1e-9) || most < S::c(64.0) * S::EPSILON * self.nodes[0] {
                break;
            }
        }
    }
}

fn prior<S: Scalar>(row: &[S; NODES], index: usize) -> S {
    if index == 0 { S::zero() } else { row[index - 1] }
}
