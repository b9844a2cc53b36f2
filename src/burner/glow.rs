//! A glowing chamber: how hot its walls must be to light what the ports give, and whether the fire keeps them so.

use super::chamber::PRODUCTS_GAS_CONSTANT;
use super::rig::Conditions;
use crate::combustion::Reactants;
use crate::error::Result;
use crate::gas::Mixture;
use crate::limits::{Input, check};
use crate::quantity::{AbsolutePressure, Duration, MassFlow, NetHeatRate, Power, Temperature, Volume};
use crate::scalar::Scalar;
use crate::solve;
use crate::species::FlameKind;

/// Walls at this temperature light the named gases by themselves, Celsius: 1400 degF of the furnace codes, NFPA 86
/// (from memory).
pub const GLOW_CELSIUS: f64 = 760.0;

/// Hottest a chamber is asked to be before it lights a mixture, K.
const HOTTEST: f64 = 2000.0;

/// Delay at 1033 K, s, and activation temperature, K, of methane and of the heavier hydrocarbons.
const METHANE: (f64, f64) = (1.147, 18_500.0);
const HEAVIER: (f64, f64) = (0.0823, 17_100.0);
const DELAY_AT: f64 = 1033.0;

/// What is known of the chamber.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Glow<S = f64> {
    /// Its volume; without it a mixture is taken to stay long enough.
    pub volume: Option<Volume<S>>,
    /// What walls and openings lose while they just glow; without it nothing, so that the answer is the least fire.
    pub loss: Option<Power<S>>,
}

impl<S: Scalar> Glow<S> {
    pub(super) fn checked(&self) -> Result<()> {
        if let Some(volume) = self.volume {
            check(Input::ChamberVolume, volume.cubic_meters())?;
        }
        if let Some(loss) = self.loss {
            check(Input::GlowLoss, loss.watts())?;
        }
        Ok(())
    }
}

/// The temperature where walls glow.
pub(super) fn glow<S: Scalar>() -> Temperature<S> {
    Temperature::from_celsius(S::c(GLOW_CELSIUS))
}

/// How long a gas mixed with air waits before it lights by itself: t = t0 exp(E (1/T - 1/1033 K)), indicative.
///
/// Methane and the heavier hydrocarbons by their own constants, a blend between them by its logarithm.
///
/// # Range
///
/// Pure methane, ethane and propane. A blend of them lights sooner, natural gas with 10 % ethane and propane four times at
/// 1033 K, and hydrogen hundreds of times: the answer is too long, and walls are asked to be hotter than they need be. It
/// is the slowest that mechanisms have, so it is no time to get away in.
///
/// # Errors
///
/// A temperature out of range; [`Error::MissingProperty`](crate::Error::MissingProperty) for a fuel whose kind of flame is
/// not known.
///
/// # Source
///
/// Drawn through 1033 and 1200 K of a stoichiometric mixture at 83.5 kPa by AramcoMech 1.3, which was made for methane,
/// ethane and propane, constant pressure (computed with Cantera). Within 45 % of it from 923 to 1200 K. Other mechanisms
/// are quicker: at 1033 K methane 0.47 s (USC II) and 0.15 s (San Diego), propane 0.04 s by both.
///
/// # Examples
///
/// ```
/// use jetwright::burner::ignition_delay;
/// use jetwright::gas::{Mixture, Species};
/// use jetwright::quantity::Temperature;
/// let propane = Mixture::<f64>::pure(Species::Propane);
/// assert!((ignition_delay(&propane, Temperature::from_kelvin(1033.0)).unwrap().seconds() - 0.0823).abs() < 1e-6);
/// ```
pub fn ignition_delay<S: Scalar>(gas: &Mixture<S>, temperature: Temperature<S>) -> Result<Duration<S>> {
    let kelvin = check(Input::ChamberTemperature, temperature.kelvin())?;
    let mut share = S::zero();
    for (species, fraction) in gas.parts().filter(|(species, _)| species.atoms().burns()) {
        if species.flame()? == FlameKind::Methane {
            share += fraction;
        }
    }
    let log = |(at, activation): (f64, f64)| {
        S::c(at).ln() + S::c(activation) * (S::one() / kelvin - S::one() / S::c(DELAY_AT))
    };
    let exponent = share * log(METHANE) + (S::one() - share) * log(HEAVIER);
    // Far below any glow the exponent would leave single precision.
    Ok(Duration::from_seconds(exponent.smaller(S::c(60.0)).exp()))
}

/// How long burnt gases stay in a chamber: its volume over the flow at its temperature.
///
/// # Errors
///
/// A volume or a temperature out of range.
///
/// # Examples
///
/// ```
/// use jetwright::burner::residence;
/// use jetwright::quantity::{AbsolutePressure, MassFlow, Temperature, Volume};
/// // 8.7 g/s at 1033 K and 835 hPa: 0.275 kg/m3, 31.6 L/s through 20 L.
/// let time = residence(
///     Volume::from_liters(20.0_f64),
///     MassFlow::from_grams_per_second(8.7),
///     AbsolutePressure::from_hectopascals(835.0),
///     Temperature::from_kelvin(1033.0),
/// );
/// assert!((time.unwrap().seconds() - 0.632).abs() < 2e-3);
/// ```
pub fn residence<S: Scalar>(
    chamber: Volume<S>,
    gases: MassFlow<S>,
    ambient: AbsolutePressure<S>,
    temperature: Temperature<S>,
) -> Result<Duration<S>> {
    let volume = check(Input::ChamberVolume, chamber.cubic_meters())?;
    let kelvin = check(Input::ChamberTemperature, temperature.kelvin())?;
    let density = ambient.pascals() / (S::c(PRODUCTS_GAS_CONSTANT) * kelvin);
    Ok(Duration::from_seconds(volume * density / gases.kilograms_per_second().larger(S::c(1e-12))))
}

/// The least temperature at which walls light what flows past them: at least a glow, and hotter where the chamber is so
/// small that the gas is gone before it lights.
pub(super) fn lights_at<S: Scalar>(
    conditions: &Conditions<S>,
    chamber: &Glow<S>,
    gases: MassFlow<S>,
) -> Result<Temperature<S>> {
    let glow = glow::<S>();
    let Some(volume) = chamber.volume else { return Ok(glow) };
    let wait = |kelvin: S| -> Result<S> {
        let temperature = Temperature::from_kelvin(kelvin);
        let delay = ignition_delay(conditions.gas.mixture(), temperature)?.seconds();
        Ok((delay / residence(volume, gases, conditions.ambient(), temperature)?.seconds()).ln())
    };
    if wait(glow.kelvin())? <= S::zero() {
        return Ok(glow);
    }
    let root = solve::root(Input::ChamberTemperature, glow.kelvin(), S::c(HOTTEST), |kelvin| {
        wait(kelvin).unwrap_or_else(|_| -S::one())
    })?;
    Ok(Temperature::from_kelvin(root.x))
}

/// What is left of a fire, as a share of it, after its gases leave as hot as the walls and those lose their heat; below
/// zero the chamber goes dark.
///
/// Between the air and the glow and beyond it the loss goes with the difference to the air. Richer or leaner than a
/// flame is worked out for, the nearest that is stands in: leaner none keeps a glow.
pub(super) fn spare<S: Scalar>(
    conditions: &Conditions<S>,
    chamber: &Glow<S>,
    fire: NetHeatRate<S>,
    air_ratio: S,
    walls: Temperature<S>,
) -> Result<S> {
    let range = Input::FlameAirRatio.range();
    let ratio = air_ratio.clamped(S::c(range.min), S::c(range.max));
    let air = conditions.site.air_temperature();
    let available = Reactants::new(&conditions.gas, &conditions.site, ratio, air)?.available_heat(walls)?;
    let loss = chamber.loss.map_or(S::zero(), |loss| {
        let rise = (walls.kelvin() - air.kelvin()) / (glow::<S>().kelvin() - air.kelvin());
        loss.watts() * rise / fire.watts().larger(S::c(1e-6))
    });
    Ok(available - loss)
}
