//! The furnace as one system: what it is, the state it is in, and one implicit step of time.

use heapless::Vec;

use super::chain::{Chain, Eliminated, Nodes};
use super::draft::{Draft, LEAST, Vent};
use super::exchange::{Exchange, Part, SURFACE_CAP, Surface};
use super::gas::{Balanced, Flow, ZONE_CAP, balance};
use super::radiation::{Radiation, mean_beam_length};
use super::stream::Stream;
use crate::error::{Error, Result};
use crate::furnace::OPENING_CAP;
use crate::furnace::surface::AIR_GAS_CONSTANT;
use crate::limits::Input;
use crate::scalar::Scalar;

/// Most wall builds.
pub const BUILD_CAP: usize = 4;
/// Most things that stand in the chamber at once.
pub const CONTENT_CAP: usize = 3;
/// Most openings and leaks.
pub const VENT_CAP: usize = OPENING_CAP + 2;
/// Walls and contents.
const CHAIN_CAP: usize = BUILD_CAP + CONTENT_CAP;
/// Unknowns of a step: the faces, and the fire of a temperature that is kept.
const UNKNOWN_CAP: usize = CHAIN_CAP + 1;
/// Most rounds of one implicit step.
const ROUNDS: usize = 40;
/// A step is met when no node moves more, K, and the fire no more than this share.
const MET: f64 = 1e-3;
const FIRE_MET: f64 = 1e-6;
/// The least fire that a search passes through, W.
const LEAST_FIRE: f64 = 1.0;

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

    fn chains<'a>(&'a self, contents: &'a [Content<S>]) -> impl Iterator<Item = &'a Chain<S>> + 'a {
        self.builds.iter().map(|build| &build.chain).chain(contents.iter().map(|content| &content.chain))
    }

    /// Walls, contents, then openings, at their temperatures.
    fn surfaces(&self, contents: &[Content<S>], faces: &[S]) -> Vec<Surface<S>, SURFACE_CAP> {
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
    fn flow(&self, drive: &Drive<S>, fire: S, gas: S) -> Result<(Flow<S>, Option<S>)> {
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

    /// One implicit step, with its heats; the fire that is kept found along.
    ///
    /// # Errors
    ///
    /// [`Error::NotConverged`] when the rounds do not settle.
    pub(super) fn step(
        &self,
        contents: &[Content<S>],
        from: &State<S>,
        drive: &Drive<S>,
        dt: S,
    ) -> Result<(State<S>, Ledger<S>)> {
        let Drive::Keep { chamber, fire: (least, most) } = *drive else {
            let fire = if let Drive::Fire { heat, .. } = *drive { heat } else { S::zero() };
            return self.settled(contents, from, drive, dt, Aim::Fire(fire));
        };
        let near = from.fire > least && from.fire < most;
        if !near {
            let all = self.settled(contents, from, drive, dt, Aim::Fire(most))?;
            if self.chamber(&all.0) <= chamber {
                return Ok(all);
            }
        }
        let start = if near { from.fire } else { S::c(0.5) * (least + most) };
        if let Ok(kept) = self.settled(contents, from, drive, dt, Aim::Chamber(chamber, start)) {
            if kept.0.fire >= least && kept.0.fire <= most {
                return Ok(kept);
            }
        }
        let all = self.settled(contents, from, drive, dt, Aim::Fire(most))?;
        if self.chamber(&all.0) <= chamber {
            return Ok(all);
        }
        let little = self.settled(contents, from, drive, dt, Aim::Fire(least))?;
        if self.chamber(&little.0) >= chamber {
            return Ok(little);
        }
        self.bisected(contents, from, drive, dt, (chamber, least, most))
    }

    /// The fire between two that keeps the chamber, by halving: where the tangents do not lead to it.
    fn bisected(
        &self,
        contents: &[Content<S>],
        from: &State<S>,
        drive: &Drive<S>,
        dt: S,
        (chamber, mut low, mut high): (S, S, S),
    ) -> Result<(State<S>, Ledger<S>)> {
        let mut found = None;
        for _ in 0..ROUNDS {
            let middle = S::c(0.5) * (low + high);
            let there = self.settled(contents, from, drive, dt, Aim::Fire(middle))?;
            if self.chamber(&there.0) < chamber {
                low = middle
            } else {
                high = middle
            }
            found = Some(there);
            if high - low < S::c(FIRE_MET) * high {
                break;
            }
        }
        found.ok_or(Error::NotConverged { input: Input::HeatRate })
    }

    /// The step with a fire that is given or sought.
    fn settled(
        &self,
        contents: &[Content<S>],
        from: &State<S>,
        drive: &Drive<S>,
        dt: S,
        aim: Aim<S>,
    ) -> Result<(State<S>, Ledger<S>)> {
        let count = from.nodes.len();
        let is_fired = matches!(drive, Drive::Fire { .. } | Drive::Keep { .. });
        let zones = if is_fired { self.zones.clamp(1, ZONE_CAP) } else { 1 };
        let film = match drive {
            Drive::Air { .. } => self.films.blown,
            Drive::Off { .. } => self.films.off,
            _ => self.films.fired,
        };
        let mut films = [S::zero(); SURFACE_CAP];
        for film_of in films.iter_mut().take(count) {
            *film_of = film;
        }
        let mut to = from.clone();
        to.fire = match aim {
            Aim::Fire(fire) => fire,
            Aim::Chamber(_, start) => start,
        };
        let taken = contents.iter().fold(S::zero(), |sum, content| sum + content.volume);
        let mut guesses: Vec<S, ZONE_CAP> = (0..zones).map(|_| from.gas.larger(S::c(800.0))).collect();
        let clear = Radiation::clear();
        for _ in 0..ROUNDS {
            let (flow, thinned) = self.flow(drive, to.fire, from.gas)?;
            let mut faces: Vec<S, CHAIN_CAP> = to.nodes.iter().map(hot).collect();
            let mut surfaces = self.surfaces(contents, &faces);
            let surface = surfaces.iter().fold(S::zero(), |sum, surface| sum + surface.area);
            let path = mean_beam_length(self.volume - taken, surface);
            let radiation = thinned.map_or_else(|| clear.clone(), |share| self.stream.radiation.times(share));
            let exchange = Exchange::new(radiation, path, &surfaces);
            let made: Vec<Eliminated<S>, CHAIN_CAP> = self
                .chains(contents)
                .zip(from.nodes.iter().zip(&to.nodes))
                .map(|(chain, (old, at))| chain.eliminate(old, at, dt))
                .collect();
            let balanced = balance(&self.stream, &exchange, &surfaces, &films, &flow, &guesses);
            guesses = balanced.zones.clone();
            let moved = self.newton(&made, &balanced, &mut faces, aim, &mut to.fire)?;
            let mut most = S::zero();
            for ((chain, made), (nodes, face)) in self.chains(contents).zip(&made).zip(to.nodes.iter_mut().zip(&faces))
            {
                most = most.larger(chain.replace(made, *face, nodes));
            }
            if !most.is_finite() {
                break;
            }
            if most < S::c(MET) && moved <= S::c(FIRE_MET) * to.fire.larger(S::c(LEAST_FIRE)) {
                for (surface, nodes) in surfaces.iter_mut().zip(&to.nodes) {
                    surface.kelvin = hot(nodes);
                }
                let balanced = balance(&self.stream, &exchange, &surfaces, &films, &flow, &guesses);
                to.gas = balanced.zones.last().copied().unwrap_or(from.gas);
                let ledger = self.ledger(contents, from, &to, &balanced, &flow, dt);
                return Ok((to, ledger));
            }
        }
        Err(Error::NotConverged { input: Input::ChamberTemperature })
    }

    /// One Newton pass on the hot faces, and on the fire where it is sought; by how much the fire moved.
    fn newton(
        &self,
        made: &[Eliminated<S>],
        balanced: &Balanced<S>,
        faces: &mut [S],
        aim: Aim<S>,
        fire: &mut S,
    ) -> Result<S> {
        let (count, zero) = (faces.len(), S::zero());
        let mut rows = [[zero; UNKNOWN_CAP + 1]; UNKNOWN_CAP];
        for (i, (row, made)) in rows.iter_mut().zip(made).enumerate() {
            for (entry, slope) in row.iter_mut().zip(&balanced.slopes[i]).take(count) {
                *entry = -*slope;
            }
            row[i] += made.diagonal;
            row[UNKNOWN_CAP] = made.right + balanced.heats[i] - made.diagonal * faces[i];
        }
        let mut unknowns = count;
        if let Aim::Chamber(chamber, _) = aim {
            for (row, slopes) in rows.iter_mut().zip(&balanced.slopes).take(count) {
                row[count] = -slopes[SURFACE_CAP];
            }
            let (mut sum, mut area) = (zero, zero);
            for (build, face) in self.builds.iter().zip(faces.iter()) {
                sum += build.area * face.squared().squared();
                area += build.area;
            }
            let now = (sum / area).sqrt().sqrt();
            let row = &mut rows[count];
            for (entry, (build, face)) in row.iter_mut().zip(self.builds.iter().zip(faces.iter())) {
                *entry = build.area * *face * face.squared() / (area * now * now.squared());
            }
            row[UNKNOWN_CAP] = chamber - now;
            unknowns += 1;
        }
        solve_rows(&mut rows, unknowns)?;
        for (face, row) in faces.iter_mut().zip(&rows) {
            *face = (*face + row[UNKNOWN_CAP]).clamped(S::c(100.0), S::c(4000.0));
        }
        if let Aim::Chamber(..) = aim {
            // The faces belong to the fire as it was found; one below the least is no answer, and counts as moved.
            let moved = rows[count][UNKNOWN_CAP];
            *fire = (*fire + moved).larger(S::c(LEAST_FIRE));
            return Ok(moved.abs());
        }
        Ok(zero)
    }

    fn ledger(
        &self,
        contents: &[Content<S>],
        from: &State<S>,
        to: &State<S>,
        balanced: &Balanced<S>,
        flow: &Flow<S>,
        dt: S,
    ) -> Ledger<S> {
        let open = balanced.heats.iter().skip(to.nodes.len()).fold(S::zero(), |sum, heat| sum + *heat);
        let shell = self.builds.iter().zip(&to.nodes);
        let shell = shell.fold(S::zero(), |sum, (build, nodes)| sum + build.chain.lost(nodes));
        let pairs = self.chains(contents).zip(from.nodes.iter().zip(&to.nodes));
        let stored = pairs.fold(S::zero(), |sum, (chain, (old, new))| sum + chain.stored(old, new));
        Ledger {
            fuel: flow.heat * dt,
            flue: balanced.flue * dt,
            openings: open * dt,
            shell: shell * dt,
            stored,
            entered: flow.air * dt,
        }
    }

    /// Two half steps taken twice less the whole: second order in time.
    pub(super) fn extrapolated(&self, contents: &[Content<S>], half: &State<S>, full: &State<S>) -> State<S> {
        let mut made = half.clone();
        for ((chain, nodes), whole) in self.chains(contents).zip(made.nodes.iter_mut()).zip(&full.nodes) {
            chain.extrapolate(nodes, whole);
        }
        made
    }
}

/// What a step is asked for.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Aim<S> {
    /// A fire, W.
    Fire(S),
    /// A temperature of the chamber at its end, K, with a first guess of the fire.
    Chamber(S, S),
}

/// The first node.
pub(super) fn hot<S: Scalar>(nodes: &Nodes<S>) -> S {
    nodes.first().copied().unwrap_or_default()
}

/// Solves rows whose last column is the right side, which becomes the answer: elimination with pivots.
fn solve_rows<S: Scalar>(rows: &mut [[S; UNKNOWN_CAP + 1]; UNKNOWN_CAP], count: usize) -> Result<()> {
    for column in 0..count {
        let mut pivot = column;
        for row in column + 1..count {
            if rows[row][column].abs() > rows[pivot][column].abs() {
                pivot = row;
            }
        }
        rows.swap(column, pivot);
        let lead = rows[column];
        if !(lead[column].abs() > S::zero()) {
            return Err(Error::NotConverged { input: Input::ChamberTemperature });
        }
        for (index, row) in rows.iter_mut().enumerate().take(count) {
            if index == column {
                continue;
            }
            let factor = row[column] / lead[column];
            if factor == S::zero() {
                continue;
            }
            for (entry, of_lead) in row.iter_mut().zip(&lead) {
                *entry -= factor * *of_lead;
            }
        }
    }
    for (index, row) in rows.iter_mut().enumerate().take(count) {
        row[UNKNOWN_CAP] = row[UNKNOWN_CAP] / row[index];
    }
    Ok(())
}
