//! One implicit step of time: chains eliminated, the hot faces and a fire that is kept found together.

use heapless::Vec;

use super::chain::Eliminated;
use super::exchange::{Exchange, SURFACE_CAP};
use super::gas::{Balanced, Flow, ZONE_CAP, balance};
use super::linear::{UNKNOWN_CAP, solve_rows};
use super::model::{CHAIN_CAP, Content, Drive, Furnace, Ledger, State, hot};
use super::radiation::{Radiation, mean_beam_length};
use crate::error::{Error, Result};
use crate::limits::Input;
use crate::scalar::Scalar;

/// Most rounds of one implicit step.
const ROUNDS: usize = 40;
/// A step is met when no node moves more, K, and the fire no more than this share.
const MET: f64 = 1e-3;
const FIRE_MET: f64 = 1e-6;
/// The least fire that a search passes through, W.
const LEAST_FIRE: f64 = 1.0;

/// What a step is asked for.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Aim<S> {
    /// A fire, W.
    Fire(S),
    /// A temperature of the chamber at its end, K, with a first guess of the fire.
    Chamber(S, S),
}

impl<S: Scalar> Furnace<S> {
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
