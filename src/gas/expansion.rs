//! Isentropic expansion of the real gas from rest, subsonic or choked.
//!
//! One fourth-order step in x = ln p carries temperature and enthalpy together, so nothing small is ever
//! the difference of two large numbers and single precision suffices.

use super::fuel::Gas;
use crate::error::Result;
use crate::limits::{Input, check};
use crate::quantity::{AbsolutePressure, PressureDifference, Speed, Temperature};
use crate::scalar::Scalar;

/// Above this pressure ratio no gas chokes: the ratio tends to exp(-1/2) as the exponent tends to one.
const NEVER_CHOKED_ABOVE: f64 = 0.615;

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
}

/// The state after one step, per unit of R.
struct Step<S> {
    temperature: S,
    /// Enthalpy given up, over R, K.
    drop: S,
    half_temperature: S,
}

impl<S: Scalar> Gas<S> {
    /// Expands the gas from a supply at rest by a drop of pressure.
    ///
    /// flux = rho sqrt(2 (h0 - h)) along constant entropy; choked where that is largest.
    ///
    /// # Range
    ///
    /// Supply up to 6 bar absolute, 238 to 328 K; the drop from nought to the whole pressure.
    ///
    /// # Errors
    ///
    /// Temperature out of range; [`Error::Liquid`](crate::Error::Liquid) far into the liquid range.
    ///
    /// # Source
    ///
    /// First and second law with the equation of state of this room; within 0.1 % of the reference equations
    /// short of condensing.
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
        self.must_be_gas(p0, t0)?;
        let fall = (drop.pascals() / p0).clamped(S::zero(), S::one());
        let ratio = S::one() - fall;
        if ratio < S::c(NEVER_CHOKED_ABOVE) {
            let throat = self.throat(p0, t0);
            if ratio <= throat.pressure_ratio {
                return Ok(throat);
            }
            let mut subsonic = self.down_to(p0, t0, ratio, (-fall).ln_1p());
            // The throat is the peak by definition; rounding must not let a subsonic state pass it.
            subsonic.flux_squared = subsonic.flux_squared.smaller(throat.flux_squared);
            subsonic.mass_flux = subsonic.mass_flux.smaller(throat.mass_flux);
            return Ok(subsonic);
        }
        Ok(self.down_to(p0, t0, ratio, (-fall).ln_1p()))
    }

    /// The expansion to a pressure ratio whose logarithm is `x`.
    fn down_to(&self, p0: S, t0: S, ratio: S, x: S) -> Expansion<S> {
        let step = self.step(p0, t0, x);
        let here = self.local(p0 * ratio, step.temperature);
        let supply_volume = self.local(p0, t0).volume;
        let density_ratio = ratio * supply_volume / here.volume;
        let speed = (S::c(2.0) * self.specific_gas_constant * step.drop).sqrt();
        let exponent = self.local(p0 * ratio.sqrt(), step.half_temperature).exponent();
        Expansion {
            mass_flux: p0 * ratio / (self.specific_gas_constant * here.volume) * speed,
            speed: Speed::from_meters_per_second(speed),
            temperature: Temperature::from_kelvin(step.temperature),
            pressure_ratio: ratio,
            density_ratio,
            choked: false,
            exponent,
            flux_squared: S::c(2.0) * step.drop / supply_volume * density_ratio.squared(),
        }
    }

    /// The expansion to the throat: where u^2 = k p v, one Newton step from a guess in ln p, taken twice.
    fn throat(&self, p0: S, t0: S) -> Expansion<S> {
        let over = self.local(p0, t0).exponent() - S::one();
        // ln of (2/(k+1))^(k/(k-1)) as a series about k = 1.
        let mut x = -S::c(0.5) - over * (S::c(0.375) - S::c(0.0775) * over);
        for _ in 0..2 {
            let step = self.step(p0, t0, x);
            let here = self.local(p0 * x.exp(), step.temperature);
            let exponent = here.exponent();
            x += (S::c(2.0) * step.drop / here.volume - exponent) / (exponent + S::one());
        }
        let mut throat = self.down_to(p0, t0, x.exp(), x);
        throat.choked = true;
        throat
    }

    /// One step of the classical fourth-order rule along constant entropy, from ln p0 by `x`.
    fn step(&self, p0: S, t0: S, x: S) -> Step<S> {
        let half = x * S::c(0.5);
        let p_half = p0 * half.exp();
        let first = self.local(p0, t0);
        let second = self.local(p_half, t0 + half * first.cooling);
        let third = self.local(p_half, t0 + half * second.cooling);
        let fourth = self.local(p0 * x.exp(), t0 + x * third.cooling);
        let sixth = x / S::c(6.0);
        let weighted = |of: fn(&super::state::Local<S>) -> S| {
            sixth * (of(&first) + S::c(2.0) * (of(&second) + of(&third)) + of(&fourth))
        };
        Step {
            temperature: t0 + weighted(|local| local.cooling),
            drop: -weighted(|local| local.volume),
            half_temperature: t0 + half * second.cooling,
        }
    }
}
