//! What a flame withstands at the rim of a port: where it flashes back, where it blows off, what hole it does not pass.
//!
//! Published values are scattered, so all of this is indicative.

use super::rig::Conditions;
use crate::combustion::burning_velocity_band;
use crate::error::Result;
use crate::gas::GAS_CONSTANT;
use crate::limits::{Input, check};
use crate::quantity::{Length, Speed, Temperature};
use crate::scalar::Scalar;

/// g_B = 0.23 S^2 / diffusivity.
const BLOW_OFF: f64 = 0.23;
/// Power of the equivalence ratio by which fresh air around a flame thins or feeds its rim.
const FRESH_AIR: f64 = 6.4;
/// g_F = 0.055 S^2 / diffusivity, drawn through the highest published flashback gradients at a bar: methane 400 1/s,
/// propane 500 to 600 1/s (Lewis and von Elbe, from memory).
const FLASHBACK: f64 = 0.055;
/// Quenching distance of parallel plates, times S / diffusivity: through propane 2.0 mm and methane 2.5 mm at the ratio
/// that just burns (Lewis and von Elbe, NACA report 1300, from memory).
const QUENCHING: f64 = 44.0;

/// How many times their flashback gradient real ports have been seen to flash back at: a turbulent stream at about three
/// times that of a laminar one (from memory). Above it a flame is sure not to flash back.
pub const FLASHBACK_SCATTER: f64 = 3.0;
/// How far published blow-off gradients of plain ports lie apart, as a factor either way (methane 1500 to 2500 1/s,
/// propane 2000 to 3000 1/s, from memory).
pub const BLOW_OFF_SCATTER: f64 = 1.5;

/// The gradients a flame of a mixture limit at a plain port, 1/s, and the hole it does not pass.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FlameGradients<S = f64> {
    /// Below this wall gradient it flashes back into the port.
    pub flashback: S,
    /// Above this it blows off where the chamber is full of burnt gases.
    pub blow_off: S,
    /// Above this it blows off where the chamber is full of fresh air.
    pub blow_off_in_air: S,
    /// Width of a slot it does not pass cold; a round hole stops it up to some half wider. Endless where nothing burns.
    pub quenching_distance: Length<S>,
}

/// Thermal diffusivity of a mixture of gas and air, m2/s: k R T / (p cp), conductivity and molar heat of both, the
/// conductivities averaged by the cube root of the molar mass.
///
/// # Source
///
/// Air k = 2.646e-3 T^1.5 / (T + 245.4 * 10^(-12/T)) W/(m K), ISO 2533:1975 and U.S. Standard Atmosphere 1976, equation
/// 53 (from memory), and 29.1 J/(mol K); the gas by Eucken, k = mu (cp + 1.25 R) / M. Within 3 % of GRI-Mech 3.0.
///
/// # Errors
///
/// A mixture temperature or an air ratio out of range.
pub fn thermal_diffusivity<S: Scalar>(
    conditions: &Conditions<S>,
    air_ratio: S,
    temperature: Temperature<S>,
) -> Result<S> {
    let kelvin = check(Input::MixtureTemperature, temperature.kelvin())?;
    let ratio = check(Input::AirRatio, air_ratio)?;
    let bend = (S::c(-12.0 * core::f64::consts::LN_10) / kelvin).exp();
    let conductivity = S::c(2.646_38e-3) * kelvin * kelvin.sqrt() / (kelvin + S::c(245.4) * bend);
    let gas = S::one() / (S::one() + ratio * conditions.air_need().volume_ratio);
    let of_gas = conditions.gas.ideal_heat_capacity(kelvin) * S::c(GAS_CONSTANT);
    let molar_mass = conditions.gas.mixture().molar_mass();
    let eucken = conditions.gas.viscosity(temperature) * (of_gas + S::c(1.25 * GAS_CONSTANT)) / molar_mass * S::c(1e3);
    let (air_weight, gas_weight) = (S::one() - gas, gas * (molar_mass / conditions.site.air_molar_mass()).cbrt());
    let conductivity = (air_weight * conductivity + gas_weight * eucken) / (air_weight + gas_weight);
    let heat = S::c(29.1) + gas * (of_gas - S::c(29.1));
    Ok(conductivity * S::c(GAS_CONSTANT) * kelvin / (conditions.ambient().pascals() * heat))
}

impl<S: Scalar> FlameGradients<S> {
    /// Of a mixture by its air ratio, at the temperature it has in the ports.
    ///
    /// g_B = 0.23 S^2/a, in fresh air times r^6.4; g_F = 0.055 S^2/a; quenching distance 44 a/S: S burning velocity, a
    /// thermal diffusivity, r equivalence ratio. S is the low end of [`burning_velocity_band`] for blow-off, the high one
    /// for flashback and quenching.
    ///
    /// # Range
    ///
    /// As [`burning_velocity_band`]. The law of blow-off was drawn from laminar flames of plain ports at a bar; a real head
    /// holds its flames many times as well, by a constant of its own ([`Burner::head_constant`](super::Burner)).
    ///
    /// # Errors
    ///
    /// Those of [`burning_velocity_band`].
    ///
    /// # Source
    ///
    /// Reed, "Flame stretch: a connecting principle for blow-off data", Combustion and Flame 11 (1967) 177 (from
    /// memory); flashback and quenching anchored as said at their constants.
    ///
    /// # Examples
    ///
    /// ```
    /// use jetwright::burner::{Conditions, FlameGradients};
    /// use jetwright::{Site, gas::{Gas, Species}};
    /// use jetwright::quantity::{Length, Temperature};
    /// let cold = Temperature::from_kelvin(300.0_f64);
    /// let site = Site::at_altitude(Length::from_meters(0.0), cold, 0.0).unwrap();
    /// let gas = Gas::from(Species::Propane);
    /// let conditions = Conditions {
    ///     site, gas, gas_temperature: cold, mixture_temperature: cold, chamber_temperature: cold,
    /// };
    /// let flame = FlameGradients::new(&conditions, 1.0, cold).unwrap();
    /// // 0.434 m/s squared over 2.07e-5 m2/s is 9090 1/s; 44 times 2.07e-5 over 0.434.
    /// assert!((flame.blow_off - 0.23 * 9090.0).abs() < 30.0);
    /// assert!((flame.flashback - 0.055 * 9090.0).abs() < 8.0);
    /// assert!((flame.quenching_distance.millimeters() - 2.10).abs() < 0.03);
    /// ```
    pub fn new(conditions: &Conditions<S>, air_ratio: S, temperature: Temperature<S>) -> Result<Self> {
        let band = burning_velocity_band(&conditions.gas, &conditions.site, air_ratio, temperature)?;
        let [speed, fastest] = band.map(Speed::meters_per_second);
        let diffusivity = thermal_diffusivity(conditions, air_ratio, temperature)?;
        let burns = speed > S::zero();
        let blow_off = S::c(BLOW_OFF) * speed.squared() / diffusivity;
        let fed = if burns { (S::c(-FRESH_AIR) * air_ratio.ln()).exp() } else { S::zero() };
        let distance = if burns { S::c(QUENCHING) * diffusivity / fastest } else { S::c(1e3) };
        Ok(Self {
            flashback: S::c(FLASHBACK) * fastest.squared() / diffusivity,
            blow_off,
            blow_off_in_air: blow_off * fed,
            quenching_distance: Length::from_meters(distance),
        })
    }
}
