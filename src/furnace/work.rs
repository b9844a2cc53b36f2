//! The heat a charge takes and the time a loaded crucible needs.

use super::body::Matter;
use super::substance::Substance;
use super::surface::black;
use crate::error::{Error, Result};
use crate::limits::{Input, check};
use crate::quantity::{Area, Duration, Length, Mass, Power, Temperature};
use crate::scalar::Scalar;
use crate::solve;

/// Steps in which the rise of temperature is cut.
const STEPS: usize = 200;

/// A crucible around a charge.
#[derive(Clone, Debug, PartialEq)]
pub struct Crucible<S = f64> {
    /// What it is made of.
    pub substance: Substance<S>,
    /// Its mass.
    pub mass: Mass<S>,
    /// Thickness of its wall.
    pub wall: Length<S>,
    /// Area that the fire sees.
    pub area: Area<S>,
}

/// A charge to be brought to a temperature.
#[derive(Clone, Debug, PartialEq)]
pub struct Charge<S = f64> {
    /// What it is made of.
    pub substance: Substance<S>,
    /// Its mass.
    pub mass: Mass<S>,
    /// What holds it, if anything does.
    pub crucible: Option<Crucible<S>>,
}

/// The passage of a loaded crucible through the fire.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Melt<S = f64> {
    /// Whole time.
    pub time: Duration<S>,
    /// When it begins to melt; none if it does not.
    pub melting_begins: Option<Duration<S>>,
    /// When all is melted; none if it is not.
    pub melted: Option<Duration<S>>,
    /// Heat that charge and crucible took, J.
    pub heat: S,
    /// Heat they take on the way, on average.
    pub mean: Power<S>,
    /// Heat they take just after they go in.
    pub most: Power<S>,
}

impl<S: Scalar> Charge<S> {
    /// Checks the masses and sizes.
    ///
    /// # Errors
    ///
    /// The one that is out of its range.
    pub fn checked(self) -> Result<Self> {
        check(Input::WorkMass, self.mass.kilograms())?;
        if let Some(crucible) = &self.crucible {
            check(Input::WorkMass, crucible.mass.kilograms())?;
            check(Input::LayerThickness, crucible.wall.meters())?;
            check(Input::WallArea, crucible.area.square_meters())?;
        }
        Ok(self)
    }

    /// Heat from one temperature to another, J: mass times heat of a kilogram, the crucible's added.
    ///
    /// # Errors
    ///
    /// A temperature out of range.
    ///
    /// # Examples
    ///
    /// ```
    /// use jetwright::furnace::{Substance, work::Charge};
    /// use jetwright::quantity::{Mass, Temperature};
    /// let charge: Charge = Charge {
    ///     substance: Substance::named("aluminum").unwrap(),
    ///     mass: Mass::from_kilograms(1.0),
    ///     crucible: None,
    /// };
    /// // Solid from 20 to 660 C some 670 kJ, melting 397 kJ, 40 K of melt 47 kJ.
    /// let heat = charge.heat(Temperature::from_celsius(20.0), Temperature::from_celsius(700.0)).unwrap();
    /// assert!((heat - 1.11e6).abs() < 0.02e6);
    /// ```
    pub fn heat(&self, from: Temperature<S>, to: Temperature<S>) -> Result<S> {
        let from = check(Input::WorkTemperature, from.kelvin())?;
        let to = check(Input::WorkTemperature, to.kelvin())?;
        let own = self.mass.kilograms() * self.substance.heat_between(from, to);
        let around = self
            .crucible
            .as_ref()
            .map_or(S::zero(), |crucible| crucible.mass.kilograms() * crucible.substance.heat_between(from, to));
        Ok(own + around)
    }

    /// Volume it fills when dense, m3; loose scrap fills several times as much.
    #[must_use]
    pub fn volume(&self) -> S {
        let of = |substance: &Substance<S>, mass: Mass<S>| mass.kilograms() / substance.density();
        of(&self.substance, self.mass)
            + self.crucible.as_ref().map_or(S::zero(), |crucible| of(&crucible.substance, crucible.mass))
    }

    /// A loaded crucible in a chamber of steady temperature: radiation and convection to its outside, conduction
    /// through its wall, a charge of one temperature inside; the crucible's mean lies between the two.
    ///
    /// # Errors
    ///
    /// An input out of range, a start above the target or a target not below the chamber; no crucible, as a mass out
    /// of range.
    pub fn melt(
        &self,
        chamber: Temperature<S>,
        start: Temperature<S>,
        target: Temperature<S>,
        film_coefficient: S,
    ) -> Result<Melt<S>> {
        let Some(crucible) = &self.crucible else {
            return Err(Error::OutOfRange { input: Input::WallArea, given: 0.0 });
        };
        let hot = check(Input::ChamberTemperature, chamber.kelvin())?;
        let from = check(Input::WorkTemperature, start.kelvin())?;
        let to = check(Input::WorkTemperature, target.kelvin())?;
        check(Input::FilmCoefficient, film_coefficient)?;
        if from >= to {
            return Err(Error::InvertedPair { lesser: Input::AirTemperature, greater: Input::WorkTemperature });
        }
        if to >= hot {
            return Err(Error::InvertedPair { lesser: Input::WorkTemperature, greater: Input::ChamberTemperature });
        }
        let emissivity = crucible.substance.emissivity();
        let outside = |inside: S| -> Result<S> {
            let through = crucible.substance.conductivity(inside) / crucible.wall.meters();
            let short =
                |face: S| through * (face - inside) - film_coefficient * (hot - face) - emissivity * black(hot, face);
            Ok(solve::root(Input::WorkTemperature, inside, hot, short)?.x)
        };
        let area = crucible.area.square_meters();
        let taken =
            |face: S| area * (film_coefficient * (hot - face) + emissivity * black(hot, face)).larger(S::zero());
        let (solidus, liquidus) = (self.substance.solidus().kelvin(), self.substance.liquidus().kelvin());
        let (mut melting_begins, mut melted) = (None, None);
        let (mut seconds, mut heat) = (S::zero(), S::zero());
        let mut face = outside(from)?;
        let most = Power::from_watts(taken(face));
        // The crucible starts cold all through; its outside jumps when the fire reaches it.
        let mut mean_wall = from;
        let mut at = from;
        for index in 1..=STEPS {
            let even = from + (to - from) * S::c(index as f64 / STEPS as f64);
            // Steps end where melting begins and ends, so that both times are sharp.
            for next in [solidus, liquidus, even] {
                if next <= at || next > even {
                    continue;
                }
                let next_face = outside(next)?;
                let next_wall = S::c(0.5) * (next + next_face);
                let step = self.mass.kilograms() * self.substance.heat_between(at, next)
                    + crucible.mass.kilograms() * crucible.substance.heat_between(mean_wall, next_wall);
                let rate = taken(S::c(0.5) * (face + next_face));
                seconds += step / rate;
                heat += step;
                (at, face, mean_wall) = (next, next_face, next_wall);
                if at >= solidus && melting_begins.is_none() {
                    melting_begins = Some(Duration::from_seconds(seconds));
                }
                if at >= liquidus && melted.is_none() {
                    melted = Some(Duration::from_seconds(seconds));
                }
            }
        }
        let mean = Power::from_watts(heat / seconds);
        Ok(Melt { time: Duration::from_seconds(seconds), melting_begins, melted, heat, mean, most })
    }
}

/// The average fire of pieces an hour: heat of one times their number over 3600 s.
#[must_use]
pub fn average<S: Scalar>(heat_of_one: S, pieces_an_hour: S) -> Power<S> {
    Power::from_watts(heat_of_one * pieces_an_hour / S::c(3600.0))
}

#[cfg(test)]
mod tests {
    use super::{Charge, Crucible};
    use crate::furnace::Substance;
    use crate::quantity::{Area, Length, Mass, Temperature};

    fn bells() -> Charge {
        Charge {
            substance: Substance::named("bell bronze").unwrap(),
            mass: Mass::from_kilograms(12.0),
            crucible: Some(Crucible {
                substance: Substance::named("clay graphite").unwrap(),
                mass: Mass::from_kilograms(5.0),
                wall: Length::from_millimeters(15.0),
                area: Area::from_square_meters(0.13),
            }),
        }
    }

    #[test]
    fn the_plateau_shows_and_a_hotter_chamber_is_faster() {
        let celsius = Temperature::from_celsius;
        let melt = |chamber| bells().melt(celsius(chamber), celsius(20.0), celsius(1100.0), 30.0).unwrap();
        let slow = melt(1150.0);
        let plateau = slow.melted.unwrap().seconds() - slow.melting_begins.unwrap().seconds();
        // A fifth of the bronze's heat goes into melting over 92 K of 1080 K.
        assert!(plateau > 0.2 * slow.time.seconds(), "{plateau} of {:?}", slow.time);
        let mut before = slow.time.seconds();
        for chamber in [1200.0, 1250.0, 1300.0, 1400.0] {
            let time = melt(chamber).time.seconds();
            assert!(time < before);
            before = time;
        }
        // With a mean rate by hand: heat / (area * (30 * 400 + 0.85 sigma (1573^4 - 1173^4))) within a half.
        assert!(melt(1300.0).heat > bells().heat(celsius(20.0), celsius(1100.0)).unwrap());
    }
}
