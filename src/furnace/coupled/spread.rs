//! How sure an answer of the furnace is: each cause moved alone, up and down, by whole runs.

use super::chain::Chain;
use super::model::{Build, Content, Furnace};
use super::stream::Stream;
use crate::error::Result;
use crate::scalar::Scalar;

/// What is not sure about a furnace. Each has its spread at k = 2.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Cause {
    /// How the gas mixes: one zone to three.
    Zones,
    /// Film coefficient of the fired gas, and of the blower's air: half to twice.
    FilmFired,
    /// Film coefficient with everything off: by 1.6 either way.
    FilmOff,
    /// What the gas radiates: 15 %.
    GasEmissivity,
    /// Emissivity of the walls: 0.2.
    WallEmissivity,
    /// Conductivity of the walls, as the makers of one class differ.
    WallConductivity,
    /// Heat that the walls hold: 10 %.
    WallHeat,
    /// Share of what enters the openings that leaves: 15 %.
    Passage,
    /// Discharge coefficient of the openings: 0.2.
    Discharge,
    /// Exchange through a hole in the lid: by 1.5 either way.
    LidExchange,
    /// The air ratio of the fire.
    AirRatio,
    /// Heat from a crucible's wall into a solid charge: half to twice.
    InsideFilm,
    /// Area of a crucible: 10 %.
    ContentArea,
    /// Emissivity of what stands in the chamber: 0.1.
    ContentEmissivity,
}

impl Cause {
    /// Every cause.
    pub const ALL: [Cause; 14] = [
        Cause::Zones,
        Cause::FilmFired,
        Cause::FilmOff,
        Cause::GasEmissivity,
        Cause::WallEmissivity,
        Cause::WallConductivity,
        Cause::WallHeat,
        Cause::Passage,
        Cause::Discharge,
        Cause::LidExchange,
        Cause::AirRatio,
        Cause::InsideFilm,
        Cause::ContentArea,
        Cause::ContentEmissivity,
    ];

    /// The key it has for programs.
    #[must_use]
    pub fn key(self) -> &'static str {
        match self {
            Cause::Zones => "gas_mixing",
            Cause::FilmFired => "film_fired",
            Cause::FilmOff => "film_off",
            Cause::GasEmissivity => "gas_emissivity",
            Cause::WallEmissivity => "wall_emissivity",
            Cause::WallConductivity => "wall_conductivity",
            Cause::WallHeat => "wall_heat",
            Cause::Passage => "opening_passage",
            Cause::Discharge => "opening_discharge",
            Cause::LidExchange => "lid_exchange",
            Cause::AirRatio => "air_ratio",
            Cause::InsideFilm => "inside_film",
            Cause::ContentArea => "content_area",
            Cause::ContentEmissivity => "content_emissivity",
        }
    }
}

/// One change of a furnace and of what stands in it; none is the furnace itself.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Change(Option<(Cause, bool)>);

/// What the furnace cannot tell of itself: the spread of its walls' conductivity, and its fire a little leaner and
/// richer.
#[derive(Clone, Debug, PartialEq)]
pub struct Unsure<S = f64> {
    /// Spread of the conductivity of all walls, as a share.
    pub wall_conductivity: S,
    /// The stream at the high and the low end of the air ratio; none where nothing is known of it.
    pub streams: Option<[Stream<S>; 2]>,
}

/// An answer with its ends at k = 2, and the cause that moves it most.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bounded<S = f64> {
    /// The answer.
    pub value: S,
    /// Low end.
    pub low: S,
    /// High end.
    pub high: S,
    /// The cause with the largest part.
    pub dominant: Cause,
}

impl<S: Scalar> Furnace<S> {
    /// The furnace with one thing changed.
    #[must_use]
    pub fn changed(&self, change: Change, unsure: &Unsure<S>) -> Self {
        let mut other = self.clone();
        let Some((cause, up)) = change.0 else { return other };
        let way = |factor: f64| if up { S::c(factor) } else { S::one() / S::c(factor) };
        let share = |share: S| if up { S::one() + share } else { S::one() - share };
        let step = |step: f64| if up { S::c(step) } else { -S::c(step) };
        match cause {
            Cause::Zones => other.zones = if up { (self.zones + 1).min(3) } else { (self.zones - 1).max(1) },
            Cause::FilmFired => {
                other.films.fired = self.films.fired * way(2.0);
                other.films.blown = self.films.blown * way(2.0);
            }
            Cause::FilmOff => other.films.off = self.films.off * way(1.6),
            Cause::GasEmissivity => other.stream.radiation = self.stream.radiation.weighted(share(S::c(0.15))),
            Cause::WallEmissivity => {
                for build in &mut other.builds {
                    build.emissivity = (build.emissivity + step(0.2)).clamped(S::c(0.05), S::c(0.98));
                }
            }
            Cause::WallConductivity => other.walls(|chain| chain.scaled(share(unsure.wall_conductivity), S::one())),
            Cause::WallHeat => other.walls(|chain| chain.scaled(S::one(), share(S::c(0.1)))),
            Cause::Passage => {
                for opening in &mut other.openings {
                    opening.passage = (opening.passage * share(S::c(0.15))).smaller(S::one());
                }
            }
            Cause::Discharge => other.discharge = self.discharge + step(0.2),
            Cause::LidExchange => other.lid_exchange = self.lid_exchange * way(1.5),
            Cause::AirRatio => {
                if let Some([high, low]) = &unsure.streams {
                    other.stream = if up { high.clone() } else { low.clone() };
                }
            }
            Cause::InsideFilm | Cause::ContentArea | Cause::ContentEmissivity => {}
        }
        other
    }

    fn walls(&mut self, change: impl Fn(&Chain<S>) -> Chain<S>) {
        for Build { chain, .. } in &mut self.builds {
            *chain = change(chain);
        }
    }
}

impl<S: Scalar> Content<S> {
    /// The content with one thing changed.
    #[must_use]
    pub fn changed(&self, change: Change) -> Self {
        let mut other = self.clone();
        let Some((cause, up)) = change.0 else { return other };
        match cause {
            Cause::InsideFilm => other.chain = self.chain.with_links(if up { S::c(2.0) } else { S::c(0.5) }),
            Cause::ContentArea => {
                let factor = if up { S::c(1.1) } else { S::c(0.9) };
                other.area = self.area * factor;
                other.chain = self.chain.scaled(factor, S::one()).with_links(factor);
            }
            Cause::ContentEmissivity => {
                let step = if up { S::c(0.1) } else { -S::c(0.1) };
                other.emissivity = (self.emissivity + step).clamped(S::c(0.05), S::c(0.98));
            }
            _ => {}
        }
        other
    }
}

/// Answers with their ends: each cause moved up and down alone, in the logarithm, combined side by side in quadrature.
///
/// What a run refuses at one end of a cause leaves that end out. Answers of zero or below stay as they are.
///
/// # Errors
///
/// What the run refuses with nothing changed.
pub fn bounded<S: Scalar, const N: usize>(run: impl Fn(Change) -> Result<[S; N]>) -> Result<[Bounded<S>; N]> {
    bounded_by(&Cause::ALL, run)
}

/// The same by some causes only, where the others move nothing.
///
/// # Errors
///
/// As of [`bounded`].
pub fn bounded_by<S: Scalar, const N: usize>(
    causes: &[Cause],
    run: impl Fn(Change) -> Result<[S; N]>,
) -> Result<[Bounded<S>; N]> {
    let zero = S::zero();
    let plain = run(Change::default())?;
    let (mut below, mut above, mut most) = ([zero; N], [zero; N], [(zero, Cause::Zones); N]);
    for &cause in causes {
        let (mut down, mut up) = ([zero; N], [zero; N]);
        for way in [true, false] {
            let Ok(moved) = run(Change(Some((cause, way)))) else { continue };
            for index in 0..N {
                if plain[index] > zero && moved[index] > zero {
                    let part = (moved[index] / plain[index]).ln();
                    down[index] = down[index].smaller(part);
                    up[index] = up[index].larger(part);
                }
            }
        }
        for index in 0..N {
            below[index] += down[index].squared();
            above[index] += up[index].squared();
            let part = (up[index] - down[index]).abs();
            if part > most[index].0 {
                most[index] = (part, cause);
            }
        }
    }
    Ok(core::array::from_fn(|index| Bounded {
        value: plain[index],
        low: plain[index] * (-below[index].sqrt()).exp(),
        high: plain[index] * above[index].sqrt().exp(),
        dominant: most[index].1,
    }))
}
