//! Where a mixture of gas and air stops burning: too lean, too rich, too little oxygen; cold and hot.

use super::air_need::AirNeed;
use super::autoignition::autoignition;
use crate::error::{Error, Result};
use crate::gas::{Gas, Species};
use crate::limits::{Input, check};
use crate::quantity::Temperature;
use crate::scalar::Scalar;
use crate::site::{OXYGEN_IN_DRY_AIR, Site};
use crate::species::Limits;

/// Whose limits of burning: published ones differ by a fifth, since vessels and what counts as burning differ.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum LimitStandard {
    /// NFPA 497 (2008): the narrower, for what surely burns.
    #[default]
    Nfpa497,
    /// IEC 60079-20-1 (2010): the wider, for what may burn.
    Iec60079,
}

/// Share of its value at 25 degC by which a limit moves with each kelvin.
const PER_KELVIN: f64 = 0.000_721;
/// Share of its value at 25 degC by which a limit moves with each kelvin, where too wide is the safe side.
const PER_KELVIN_WIDE: f64 = 0.001_2;
/// Celsius the published limits hold at.
const ROOM: f64 = 25.0;
/// Celsius at which a wide limit stops: hotter walls light the gas as it comes. NFPA 86: 1400 degF, from memory.
const WIDE_UP_TO: f64 = 760.0;

/// The air ratios at which a mixture burns.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BurningRange<S = f64> {
    /// Most air: leaner does not burn.
    pub leanest_air_ratio: S,
    /// Least air: richer does not burn.
    pub richest_air_ratio: S,
    /// Share of the gas in the leanest mixture, by volume: the lower limit.
    pub lower_limit: S,
    /// Share of the gas in the richest mixture, by volume: the upper limit.
    pub upper_limit: S,
    /// Above the autoignition temperature any mixture reacts, within the limits or beyond; they then stand as they
    /// were at that temperature.
    pub lights_itself: bool,
}

impl<S: Scalar> BurningRange<S> {
    /// Whether a mixture of this air ratio burns.
    #[must_use]
    pub fn burns(&self, air_ratio: S) -> bool {
        self.lights_itself || (self.richest_air_ratio <= air_ratio && air_ratio <= self.leanest_air_ratio)
    }
}

/// The air ratios at which a gas burns with the site's air, where both have a temperature.
///
/// Lower limit: 1/L = sum x/L over the fuels; inert gas counts as air. Upper limit: each fuel wants the oxygen it has
/// at its own, sum x (1/U - 1) of dry air's, so inert gas and moist air take nothing from it; and the mixture as a
/// whole the least oxygen of its fuels, shared by what they need. Temperature: L falls and U rises by 0.0721 % of its
/// value at 25 degC a kelvin, until the gas lights by itself.
///
/// # Range
///
/// Temperature of [`Input::ChamberTemperature`]. Measured for hydrocarbons up to some 400 degC; hydrogen and carbon
/// carbon monoxide follow less closely, and limits by Le Chatelier less closely on the rich side. Limits of a tube: a draft
/// or a cold port narrows them.
///
/// # Errors
///
/// [`Error::CannotBurn`] for a gas of inerts, [`Error::TooDilute`] for one that no air makes burn, a temperature out
/// of range, [`Error::MissingProperty`] for a fuel without limits of burning or autoignition temperature.
///
/// # Source
///
/// Le Chatelier (1891); limits of the named standard; temperature by the modified Burgess-Wheeler law, Zabetakis,
/// "Flammability characteristics of combustible gases and vapors", US Bureau of Mines Bulletin 627 (1965), in the form
/// U = U25 (1 + 0.000721 (T - 25)) and L with a minus (from memory); least oxygen of NFPA 69 (from memory).
///
/// # Examples
///
/// ```
/// use jetwright::combustion::{LimitStandard, burning_range};
/// use jetwright::{Site, gas::{Gas, Species}};
/// use jetwright::quantity::{Length, Temperature};
/// let room = Temperature::from_celsius(25.0_f64);
/// let site = Site::at_altitude(Length::from_meters(0.0), room, 0.0).unwrap();
/// let range = burning_range(&Gas::from(Species::Propane), &site, room, LimitStandard::Nfpa497).unwrap();
/// // Propane: 97.9 volumes of air to 2.1 of gas, and 90.5 to 9.5, over the 23.87 it needs.
/// assert!((range.leanest_air_ratio - 97.9 / 2.1 / 23.87).abs() < 1e-3);
/// assert!((range.richest_air_ratio - 90.5 / 9.5 / 23.87).abs() < 1e-3);
/// ```
pub fn burning_range<S: Scalar>(
    gas: &Gas<S>,
    site: &Site<S>,
    temperature: Temperature<S>,
    standard: LimitStandard,
) -> Result<BurningRange<S>> {
    let shift = |lights_at: Temperature<S>| {
        S::c(PER_KELVIN) * (temperature.celsius().smaller(lights_at.celsius()) - S::c(ROOM))
    };
    range_by(gas, site, temperature, shift, |limits| of_standard(limits, standard))
}

/// The air ratios at which a mixture may be explosive, both at a temperature: what lies outside is too lean or too rich
/// to be dangerous.
///
/// Wider than [`burning_range`] at every temperature: of each fuel the lower of the two standards' lower limits and the
/// higher of their upper ones, L = L25 (1 - 0.0012 (T - 25)) and U with a plus, up to 760 degC, beyond the temperature
/// at which the gas lights by itself. Mixtures of fuels and oxygen are summed as there. Ask [`burning_range`] what
/// surely lights.
///
/// # Range
///
/// Temperature of [`Input::ChamberTemperature`]; below 25 degC and above 760 degC the limits stand. The fall is for the lower limit of
/// hydrocarbons; that the upper one rises as steeply is no measurement, but the safe side.
///
/// # Errors
///
/// Those of [`burning_range`].
///
/// # Source
///
/// The wider limits of NFPA 497 (2008) and IEC 60079-20-1 (2010). The fall, engineering judgement: below methane's 5 % at
/// 25 degC drawn straight to a measured zero at 900 degC (upward flames; Combustion, Explosion, and Shock Waves,
/// abstract), 2.86 % at 400 degC, and below the share that burns there as fast as 5 % does at 25 degC, 2.87 %; propane's
/// 2.1 % so gives 1.13 % (free flames of the San Diego mechanism of 2016, computed with Cantera 3.2.0).
///
/// # Examples
///
/// ```
/// use jetwright::combustion::explosive_range;
/// use jetwright::{Site, gas::{Gas, Species}};
/// use jetwright::quantity::{Length, Temperature};
/// let site = Site::at_altitude(Length::from_meters(0.0), Temperature::from_celsius(25.0_f64), 0.0).unwrap();
/// let hot = Temperature::from_celsius(400.0);
/// // Methane: 4.4 % (1 - 0.0012 375); propane: 1.7 % of the same.
/// let methane = explosive_range(&Gas::from(Species::Methane), &site, hot).unwrap();
/// assert!((methane.lower_limit - 0.0242).abs() < 1e-6);
/// let propane = explosive_range(&Gas::from(Species::Propane), &site, hot).unwrap();
/// assert!((propane.lower_limit - 0.00935).abs() < 1e-6);
/// ```
pub fn explosive_range<S: Scalar>(
    gas: &Gas<S>,
    site: &Site<S>,
    temperature: Temperature<S>,
) -> Result<BurningRange<S>> {
    let shift = |_| S::c(PER_KELVIN_WIDE) * (temperature.celsius().clamped(S::c(ROOM), S::c(WIDE_UP_TO)) - S::c(ROOM));
    range_by(gas, site, temperature, shift, widest)
}

/// The limits of one standard.
fn of_standard(limits: &Limits, standard: LimitStandard) -> [f64; 2] {
    match standard {
        LimitStandard::Nfpa497 => limits.nfpa,
        LimitStandard::Iec60079 => limits.iec,
    }
}

/// The wider of the two standards' limits at each end.
fn widest(limits: &Limits) -> [f64; 2] {
    let ([lower, upper], [other_lower, other_upper]) = (limits.nfpa, limits.iec);
    [if other_lower < lower { other_lower } else { lower }, if other_upper > upper { other_upper } else { upper }]
}

/// The range by limits chosen of each fuel, and a share by which they move, given the temperature at which the gas
/// lights by itself.
fn range_by<S: Scalar>(
    gas: &Gas<S>,
    site: &Site<S>,
    temperature: Temperature<S>,
    shift: impl Fn(Temperature<S>) -> S,
    chosen: impl Fn(&Limits) -> [f64; 2],
) -> Result<BurningRange<S>> {
    check(Input::ChamberTemperature, temperature.kelvin())?;
    let needed = gas.mixture().oxygen_to_burn();
    if needed <= S::zero() {
        return Err(Error::CannotBurn);
    }
    let too_dilute = Error::TooDilute { given: inert_share(gas).to_f32() };
    let lights_at = autoignition(gas.mixture())?.ok_or(too_dilute)?;
    let lights_itself = temperature.kelvin() >= lights_at.kelvin();
    let Sums { inverse_lower, air_at_upper, least_oxygen } = Sums::of(gas, chosen, shift(lights_at))?;
    let volume_ratio = AirNeed::new(gas, site).volume_ratio;
    let leanest_air_ratio = ((inverse_lower - S::one()) / volume_ratio).larger(S::zero());
    let own = gas.mixture().fraction(Species::Oxygen);
    // The oxygen share (own + ratio * needed) / (1 + ratio * volume_ratio) rises with the air; the least of it gives a
    // ratio.
    let spare = needed - least_oxygen * volume_ratio;
    let by_oxygen = if spare > S::zero() { (least_oxygen - own) / spare } else { leanest_air_ratio };
    let by_upper = (air_at_upper * S::c(OXYGEN_IN_DRY_AIR) - own) / needed;
    let mut richest_air_ratio = by_upper.larger(by_oxygen).larger(S::zero());
    if richest_air_ratio >= leanest_air_ratio {
        if !lights_itself {
            return Err(too_dilute);
        }
        richest_air_ratio = leanest_air_ratio;
    }
    let share = |ratio: S| S::one() / (S::one() + ratio * volume_ratio);
    Ok(BurningRange {
        leanest_air_ratio,
        richest_air_ratio,
        lower_limit: share(leanest_air_ratio),
        upper_limit: share(richest_air_ratio),
        lights_itself,
    })
}

/// The leanest mixture with cold air that burns, as an air ratio, by NFPA 497 at 25 degC: the lean end of
/// [`burning_range`], without its other errors.
///
/// # Errors
///
/// [`Error::MissingProperty`] for a fuel without limits of burning.
///
/// # Examples
///
/// ```
/// use jetwright::combustion::leanest_air_ratio;
/// use jetwright::{Site, gas::{Gas, Species}};
/// use jetwright::quantity::{Length, Temperature};
/// let site = Site::at_altitude(Length::from_meters(0.0_f64), Temperature::from_celsius(20.0), 0.0).unwrap();
/// // Propane: 97.9 volumes of air to 2.1 of gas, over the 23.87 it needs.
/// assert!((leanest_air_ratio(&Gas::from(Species::Propane), &site).unwrap() - 97.9 / 2.1 / 23.87).abs() < 0.01);
/// ```
pub fn leanest_air_ratio<S: Scalar>(gas: &Gas<S>, site: &Site<S>) -> Result<S> {
    let sums = Sums::of(gas, |limits| limits.nfpa, S::zero())?;
    Ok((sums.inverse_lower - S::one()) / AirNeed::new(gas, site).volume_ratio)
}

/// What the fuels of a gas add up to, by the mole of gas.
struct Sums<S> {
    /// Moles of the leanest mixture.
    inverse_lower: S,
    /// Moles of dry air in the richest.
    air_at_upper: S,
    /// Oxygen share below which nothing burns.
    least_oxygen: S,
}

impl<S: Scalar> Sums<S> {
    /// With each lower limit lowered and each upper one raised by a share `shift` of itself.
    fn of(gas: &Gas<S>, chosen: impl Fn(&Limits) -> [f64; 2], shift: S) -> Result<Self> {
        let (zero, one, dry) = (S::zero(), S::one(), S::c(OXYGEN_IN_DRY_AIR));
        let (mut inverse_lower, mut air_at_upper, mut oxygen, mut at_least) = (zero, zero, zero, zero);
        for (species, share) in gas.mixture().parts() {
            if !species.atoms().burns() {
                continue;
            }
            let limits = species.limits()?;
            let [lower, upper] = chosen(limits);
            let (lower, upper) = (S::c(lower) * (one - shift), (S::c(upper) * (one + shift)).smaller(S::c(0.99)));
            inverse_lower += share / lower;
            air_at_upper += share * (one / upper - one);
            let needed = share * S::c(species.atoms().oxygen_to_burn());
            // A fuel that burns at its own upper limit has oxygen enough there.
            let least = (S::c(limits.least_oxygen) * (one - shift)).smaller((one - upper) * dry);
            oxygen += needed;
            at_least += needed / least;
        }
        Ok(Self { inverse_lower, air_at_upper, least_oxygen: oxygen / at_least })
    }
}

/// Mole fraction of what does not burn.
fn inert_share<S: Scalar>(gas: &Gas<S>) -> S {
    let fuels = gas.mixture().parts().filter(|(species, _)| species.atoms().burns());
    fuels.fold(S::one(), |rest, (_, share)| rest - share)
}
