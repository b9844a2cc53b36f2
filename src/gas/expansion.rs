//! Isentropic expansion of the real gas from rest, subsonic or choked.
//!
//! One fourth-order step in x = ln p carries temperature and enthalpy together, so nothing small is ever
//! the difference of two large numbers and single precision suffices.

use super::fuel::Gas;
use super::state::Local;
use crate::error::Result;
use crate::limits::{Input, check};
use crate::quantity::{AbsolutePressure, Density, PressureDifference, Speed, Temperature};
use crate::scalar::Scalar;

/// Above this pressure ratio no gas chokes: the ratio tends to exp(-1/2) as the exponent tends to one, and is a little
/// more where a gas beyond its dew point expands with less.
pub(crate) const NEVER_CHOKED_ABOVE: f64 = 0.63;

/// How far above the guess of the throat's pressure, relative, a stream is clear of choking.
const GUESS_WITHIN: f64 = 0.005;

/// A pressure over the supply's near the throat of every gas; the exponent there places the throat best.
const NEAR_THROAT: f64 = 0.54;
const LN_NEAR_THROAT: f64 = -0.616_186;

/// An expansion from rest without loss, down to the pressure ahead or to the throat where it chokes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Expansion<S = f64> {
    /// Mass flow over area where the flow is fastest, kg/(s m2).
    pub mass_flux: S,
    /// Speed there.
    pub speed: Speed<S>,
    /// Temperature there.
    pub temperature: Temperature<S>,
    /// Pressure there over the supply's; the throat's when choked.
    pub pressure_ratio: S,
    /// Density there over the supply's.
    pub density_ratio: S,
    /// Whether the pressure ahead is below the throat's.
    pub choked: bool,
    /// Isentropic exponent half way down.
    pub exponent: S,
    /// mass_flux^2 / (supply pressure * supply density): the square of the dimensionless flux.
    pub flux_squared: S,
    /// Density of the supply.
    pub supply_density: Density<S>,
}

/// The gas before it expands, per unit of R.
struct Rest<S> {
    pressure: S,
    temperature: S,
    local: Local<S>,
}

/// The state after one step, per unit of R.
struct Step<S> {
    temperature: S,
    /// Enthalpy given up, over R, K.
    drop: S,
    /// Isentropic exponent half way.
    exponent: S,
}

impl<S: Scalar> Gas<S> {
    /// Expands the gas from a supply at rest by a drop of pressure.
    ///
    /// flux = rho sqrt(2 (h0 - h)) along constant entropy; choked where that is largest.
    ///
    /// # Range
    ///
    /// Supply up to 6 bar absolute, 238 to 328 K; the drop from zero to the whole pressure.
    ///
    /// # Errors
    ///
    /// Temperature out of range; [`Error::Liquid`](crate::Error::Liquid) far into the liquid range.
    ///
    /// # Source
    ///
    /// First and second law with the equation of state of this room; within 0.1 % of the reference equations
    /// short of condensing (isobutane at its dew point 0.12 %).
    ///
    /// # Examples
    ///
    /// ```
    /// use jetwright::gas::{Gas, Species};
    /// use jetwright::quantity::{AbsolutePressure, PressureDifference, Temperature};
    /// let methane = Gas::<f64>::from(Species::Methane);
    /// let supply = AbsolutePressure::from_pascals(303_975.0);
    /// let flow = methane.expand(supply, PressureDifference::from_pascals(202_650.0), Temperature::from_kelvin(293.15)).unwrap();
    /// // Choked flux = C* p / sqrt(R T / M) with the published C* of 0.6717 at 3 bar and 293 K.
    /// let flux = 0.67168 * 303_975.0 / (518.28_f64 * 293.15).sqrt();
    /// assert!(flow.choked && (flow.mass_flux / flux - 1.0).abs() < 1e-3);
    /// ```
    pub fn expand(
        &self,
        supply: AbsolutePressure<S>,
        drop: PressureDifference<S>,
        temperature: Temperature<S>,
    ) -> Result<Expansion<S>> {
        let (p0, t0) = (supply.pascals(), check(Input::GasTemperature, temperature.kelvin())?);
        let rest = Rest { pressure: p0, temperature: t0, local: self.local(p0, t0) };
        self.must_be_gas(p0, t0, rest.local.beta)?;
        let fall = (drop.pascals() / p0).clamped(S::zero(), S::one());
        let ratio = S::one() - fall;
        if ratio >= S::c(NEVER_CHOKED_ABOVE) {
            return Ok(self.down_to(&rest, ratio, (-fall).ln_1p()));
        }
        let guess = self.throat_guess(&rest);
        let guess_ratio = guess.exp();
        if ratio >= guess_ratio * S::c(1.0 + GUESS_WITHIN) {
            return Ok(self.down_to(&rest, ratio, (-fall).ln_1p()));
        }
        Ok(self.near_throat(&rest, guess, guess_ratio, ratio))
    }

    /// The expansion to a pressure ratio whose logarithm is `x`.
    fn down_to(&self, rest: &Rest<S>, ratio: S, x: S) -> Expansion<S> {
        let step = self.step(rest, ratio, x);
        let volume = self.local(rest.pressure * ratio, step.temperature).volume;
        self.expansion(rest, ratio, &step, volume)
    }

    /// ln of the throat's pressure ratio (2/(k+1))^(k/(k-1)), as a series about k = 1, from the exponent the gas has
    /// near the throat.
    fn throat_guess(&self, rest: &Rest<S>) -> S {
        let cooling = S::c(LN_NEAR_THROAT) * rest.local.cooling;
        let kelvin = rest.temperature + cooling + S::c(0.5) * cooling.squared() / rest.temperature;
        let over = self.local(S::c(NEAR_THROAT) * rest.pressure, kelvin).exponent() - S::one();
        -S::c(0.5) - over * (S::c(0.375) - over * (S::c(0.0829) - over * S::c(0.0214)))
    }

    /// The expansion to the throat, where u^2 = k p v, or to the pressure ahead if that is a little above: by series in
    /// ln p from a guess of the throat that is within 0.004 (0.001 for propane and what is lighter).
    ///
    /// The flux has its peak there, so that it follows to the seventh digit (the sixth where the gas is about to
    /// condense) without a second expansion.
    fn near_throat(&self, rest: &Rest<S>, guess: S, guess_ratio: S, ahead: S) -> Expansion<S> {
        let step = self.step(rest, guess_ratio, guess);
        let here = self.local(rest.pressure * guess_ratio, step.temperature);
        let near = self.expansion(rest, guess_ratio, &step, here.volume);
        let (one, half, two) = (S::one(), S::c(0.5), S::c(2.0));
        let (exponent, squared_speed) = (here.exponent(), two * step.drop / here.volume);
        // The exponent at rest, half way and here: its slopes here and half way.
        let (all, last) = (exponent - rest.local.exponent(), exponent - step.exponent);
        let (slope, half_way_slope) = ((S::c(4.0) * last - all) / guess, all / guess);
        let off = squared_speed - exponent;
        let fall = two + squared_speed * (one - one / exponent) + slope;
        let product = exponent * squared_speed;
        // d ln(flux) = s dx with s = 1/k - p v/u^2, and two derivatives of s; the last needs only its leading term.
        let first = off / product;
        let second = first * (one + one / exponent) - fall / product;
        let third = -(exponent + one) * (exponent + S::c(3.0)) / (exponent * exponent.squared());
        let above = ahead / guess_ratio - one;
        let (to_throat, to_ahead) = (off / fall, above * (one - above * (half - S::c(1.0 / 3.0) * above)));
        let x = to_throat.larger(to_ahead);
        let rise = x * (first + x * (half * second + x * third * S::c(1.0 / 6.0)));
        // d ln(density) = dx / k, d ln(temperature) = cooling dx, both to the second order.
        let density = x / exponent * (one - half * slope * x / exponent);
        let density = one + density + half * density.squared();
        let warmer = x * here.cooling / step.temperature;
        Expansion {
            mass_flux: near.mass_flux * (one + rise),
            speed: Speed::from_meters_per_second(near.speed.meters_per_second() * (one + rise) / density),
            temperature: Temperature::from_kelvin(step.temperature * (one + warmer + half * warmer.squared())),
            pressure_ratio: guess_ratio * (one + x * (one + x * (half + x * S::c(1.0 / 6.0)))),
            density_ratio: near.density_ratio * density,
            choked: to_ahead <= to_throat,
            exponent: step.exponent + half * x * half_way_slope,
            flux_squared: near.flux_squared * (one + rise).squared(),
            ..near
        }
    }

    /// What follows from a step and the volume at its end.
    fn expansion(&self, rest: &Rest<S>, ratio: S, step: &Step<S>, volume: S) -> Expansion<S> {
        let density_ratio = ratio * rest.local.volume / volume;
        let speed = (S::c(2.0) * self.specific_gas_constant * step.drop).sqrt();
        let supply_density = rest.pressure / (self.specific_gas_constant * rest.local.volume);
        Expansion {
            mass_flux: supply_density * density_ratio * speed,
            speed: Speed::from_meters_per_second(speed),
            temperature: Temperature::from_kelvin(step.temperature),
            pressure_ratio: ratio,
            density_ratio,
            choked: false,
            exponent: step.exponent,
            flux_squared: S::c(2.0) * step.drop / rest.local.volume * density_ratio.squared(),
            supply_density: Density::from_kilograms_per_cubic_meter(supply_density),
        }
    }

    /// One step of the classical fourth-order rule along constant entropy, from ln p0 by `x = ln(ratio)`.
    fn step(&self, rest: &Rest<S>, ratio: S, x: S) -> Step<S> {
        let half = x * S::c(0.5);
        let (t0, p_half) = (rest.temperature, rest.pressure * ratio.sqrt());
        let first = &rest.local;
        let second = self.local(p_half, t0 + half * first.cooling);
        let third = self.local(p_half, t0 + half * second.cooling);
        let fourth = self.local(rest.pressure * ratio, t0 + x * third.cooling);
        let sixth = x / S::c(6.0);
        let two = S::c(2.0);
        Step {
            temperature: t0 + sixth * (first.cooling + two * (second.cooling + third.cooling) + fourth.cooling),
            drop: -sixth * (first.volume + two * (second.volume + third.volume) + fourth.volume),
            exponent: third.exponent(),
        }
    }
}
