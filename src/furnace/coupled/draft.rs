//! Air that goes in and out of a hot chamber's openings.

use crate::error::Result;
use crate::furnace::surface::GRAVITY;
use crate::limits::Input;
use crate::scalar::Scalar;
use crate::solve;

/// Discharge coefficient of an opening: 0.6 to 0.68 for doors and vents in fire engineering; common practice, no source.
pub const OPENING_DISCHARGE: f64 = 0.65;
/// Exchange through a horizontal opening: 0.055 sqrt(g D^5 (difference) / mean).
///
/// # Source
///
/// Epstein, J. Heat Transfer 110 (1988) 885, from memory, within half.
pub const LID_EXCHANGE: f64 = 0.055;
/// Air that a shut chamber still passes, kg/s, so that its gas has a temperature.
pub const LEAST: f64 = 1e-7;

/// How an opening lies.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Place<S = f64> {
    /// Nothing passes: it only radiates.
    Sealed,
    /// A hole that looks up, at a height, m: both ways at once.
    Lid(S),
    /// A gap at one height, m: one way only.
    Gap(S),
    /// An upright opening between two heights, m.
    Upright(S, S),
}

/// An opening for air.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Vent<S = f64> {
    /// Area, m2.
    pub area: S,
    /// Where it lies.
    pub place: Place<S>,
}

/// The gases either side and what the burner blows in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Draft<S = f64> {
    /// Density of the room's air, kg/m3.
    pub outside: S,
    /// Density of the chamber's gas, kg/m3.
    pub inside: S,
    /// What burner or blower brings in, kg/s.
    pub blown: S,
    /// Discharge coefficient.
    pub discharge: S,
    /// Constant of the lid's exchange.
    pub lid_exchange: S,
}

impl<S: Scalar> Draft<S> {
    fn lift(&self) -> S {
        S::c(GRAVITY) * (self.outside - self.inside)
    }

    /// What goes in and out of a vent at a gauge pressure at height zero, kg/s.
    fn flows(&self, vent: &Vent<S>, pressure: S) -> (S, S) {
        let zero = S::zero();
        let two = S::c(2.0);
        let (lift, whole) = (self.lift(), self.discharge * vent.area);
        match vent.place {
            Place::Sealed => (zero, zero),
            Place::Lid(z) | Place::Gap(z) => {
                let there = pressure + lift * z;
                if there < zero {
                    (whole * (two * self.outside * -there).sqrt(), zero)
                } else {
                    (zero, whole * (two * self.inside * there).sqrt())
                }
            }
            Place::Upright(low, high) => {
                let (bottom, top) = (pressure + lift * low, pressure + lift * high);
                let scale = two / S::c(3.0) * whole;
                let (inward, outward) = ((two * self.outside).sqrt(), (two * self.inside).sqrt());
                // Where one gas passes over the whole height, the difference of the powers is written without its small
                // divisor: a cold chamber has next to no lift.
                let between = |a: S, b: S| (a + (a * b).sqrt() + b) / (a.sqrt() + b.sqrt());
                if bottom >= zero && top > zero {
                    (zero, scale * outward * between(bottom, top))
                } else if top <= zero && bottom < zero {
                    (scale * inward * between(-bottom, -top), zero)
                } else {
                    let power = |p: S| p.larger(zero) * p.larger(zero).sqrt() / ((high - low) * lift);
                    (scale * inward * power(-bottom), scale * outward * power(top))
                }
            }
        }
    }

    /// Air that comes in through all openings, kg/s.
    ///
    /// The pressure is that at which what is blown in and what comes in goes out again; a hole in the lid exchanges
    /// besides.
    ///
    /// # Errors
    ///
    /// None in practice: the pressure lies between the bounds.
    pub fn entering(&self, vents: &[Vent<S>]) -> Result<S> {
        let zero = S::zero();
        let open = vents.iter().filter(|vent| vent.place != Place::Sealed);
        let area = open.clone().fold(zero, |sum, vent| sum + vent.area);
        if area <= zero || self.lift() <= zero {
            return Ok(zero);
        }
        let (mut lowest, mut highest) = (S::c(1e6), S::c(-1e6));
        for vent in open.clone() {
            let (low, high) = match vent.place {
                Place::Sealed => continue,
                Place::Lid(z) | Place::Gap(z) => (z, z),
                Place::Upright(low, high) => (low, high),
            };
            (lowest, highest) = (lowest.smaller(low), highest.larger(high));
        }
        let surplus = |pressure: S| {
            open.clone().fold(self.blown, |sum, vent| {
                let (into, out) = self.flows(vent, pressure);
                sum + into - out
            })
        };
        let lift = self.lift();
        let driven = (self.blown / (self.discharge * area)).squared() / (S::c(2.0) * self.inside);
        let slack = S::c(1e-6) * (lift * (S::one() + highest - lowest) + driven);
        let (low, high) = (-lift * highest - slack, driven - lift * lowest + slack);
        let pressure = solve::root(Input::DuctLength, low, high, surplus)?.x;
        let mut entering = zero;
        let mean = S::c(0.5) * (self.outside + self.inside);
        for vent in open {
            let (into, out) = self.flows(vent, pressure);
            entering += into;
            if let Place::Lid(_) = vent.place {
                let diameter = (S::c(4.0 / core::f64::consts::PI) * vent.area).sqrt();
                let fifth = diameter * diameter.squared().squared();
                let exchange = self.lid_exchange * self.outside * (lift * fifth / mean).sqrt();
                entering += (exchange - (into - out).abs()).larger(zero);
            }
        }
        Ok(entering)
    }
}

#[cfg(test)]
mod tests {
    use super::{Draft, LID_EXCHANGE, OPENING_DISCHARGE, Place, Vent};

    fn draft(inside: f64, pressure: f64, blown: f64) -> Draft {
        let density = |kelvin: f64| pressure / (287.05 * kelvin);
        Draft {
            outside: density(293.15),
            inside: density(inside),
            blown,
            discharge: OPENING_DISCHARGE,
            lid_exchange: LID_EXCHANGE,
        }
    }

    // Air into a vent of a fire: 0.5 A sqrt(H), Drysdale, An Introduction to Fire Dynamics (from memory).
    #[test]
    fn an_upright_opening_breathes_as_a_fires_vent() {
        let vent = [Vent { area: 0.01, place: Place::Upright(0.0, 0.1) }];
        let entering = draft(1100.0, 101_325.0, 0.0).entering(&vent).unwrap();
        assert!((entering / (0.5 * 0.01 * 0.1_f64.sqrt()) - 1.0).abs() < 0.05, "{entering}");
    }

    // The full height of an opening that all of much air leaves through is a hole in its middle.
    #[test]
    fn a_cold_chamber_lets_much_air_out() {
        let vents = [Vent { area: 0.0158, place: Place::Upright(0.264, 0.462) }];
        for blown in [1e-3, 0.03, 1.0, 30.0] {
            assert_eq!(draft(293.16, 83_329.0, blown).entering(&vents).unwrap(), 0.0, "{blown}");
        }
    }

    #[test]
    fn more_blown_in_leaves_less_to_come_in_and_no_pressure_is_lost() {
        let vents = [Vent { area: 0.0195, place: Place::Upright(0.0, 0.13) }];
        let mut before = f64::INFINITY;
        for step in 0..400 {
            let entering = draft(1500.0, 101_325.0, 1e-4 * f64::from(step)).entering(&vents).unwrap();
            assert!(entering <= before + 1e-15, "{step}: {entering} {before}");
            before = entering;
        }
        assert_eq!(before, 0.0);
    }
}
