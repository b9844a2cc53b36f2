//! Unlit gas: how soon it makes the chamber an explosive mixture, and how long air must purge it again.

use super::rig::{Burner, Conditions};
use crate::combustion::{LimitStandard, burning_range, explosive_range};
use crate::error::Result;
use crate::gas::GAS_CONSTANT;
use crate::limits::{Input, check};
use crate::quantity::{ActualVolumeFlow, Duration, GaugePressure, Temperature, Volume};
use crate::scalar::Scalar;

/// Changes of the chamber's air before lighting that every standard asks: NFPA 86, four volumes (from memory, and a
/// process-heating article); it rules where it applies. BS 5990:2006, 15.5 asks for five with full air, and never less than
/// 30 s.
pub const LEAST_CHANGES: f64 = 4.0;
/// Share of the lower limit of burning that a chamber is blown down to: NFPA 86 (from memory).
pub const SAFE_SHARE: f64 = 0.25;

/// Seconds until a stirred chamber of fresh air holds a share of gas: t = -(V/Q) ln(1 - limit/c), c the share of gas in
/// what flows in and Q all that flows in; none when it never does.
///
/// # Errors
///
/// A volume, a flow or a share out of range.
///
/// # Examples
///
/// ```
/// use jetwright::burner::fills_after;
/// use jetwright::quantity::{ActualVolumeFlow, Volume};
/// let chamber = Volume::from_liters(20.0_f64);
/// // 0.3 L/s of gas alone, to 2.1 %: -(20/0.3) ln(0.979).
/// let alone = fills_after(chamber, ActualVolumeFlow::from_liters_per_second(0.3), 1.0, 0.021).unwrap();
/// assert!((alone.unwrap().seconds() - 1.415).abs() < 1e-3);
/// ```
pub fn fills_after<S: Scalar>(
    chamber: Volume<S>,
    inflow: ActualVolumeFlow<S>,
    gas_share: S,
    limit: S,
) -> Result<Option<Duration<S>>> {
    let volume = check(Input::ChamberVolume, chamber.cubic_meters())?;
    let flow = check(Input::AirFlow, inflow.cubic_meters_per_second())?;
    let (share, limit) = (check(Input::Fraction, gas_share)?, check(Input::Fraction, limit)?);
    if flow <= S::zero() || limit >= share {
        return Ok(None);
    }
    Ok(Some(Duration::from_seconds(-(volume / flow) * (-limit / share).ln_1p())))
}

/// Changes of air that thin a stirred chamber from one share of gas to another: n = ln(from/to), none below zero.
///
/// # Errors
///
/// A share out of range, or an end of zero, which no number of changes reaches.
///
/// # Examples
///
/// ```
/// use jetwright::burner::air_changes;
/// // From pure propane to a quarter of its lower limit.
/// assert!((air_changes(1.0_f64, 0.25 * 0.021).unwrap() - 5.25).abs() < 0.01);
/// ```
pub fn air_changes<S: Scalar>(from: S, to: S) -> Result<S> {
    check(Input::Fraction, from)?;
    check(Input::Fraction, to - S::c(1e-12))?;
    if from <= to {
        return Ok(S::zero());
    }
    Ok((from / to).ln())
}

/// A chamber that unlit gas flows into.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct UnlitChamber<S = f64> {
    /// Its volume.
    pub volume: Volume<S>,
    /// How many heads blow into it; no more count than hang on the blower.
    pub heads: S,
    /// How hot its walls and what is in it are: the air's before a first start, the chamber's after a flame-out.
    pub temperature: Temperature<S>,
    /// Share by which more gas may flow in than is calculated: the unsafe end of a ±, 0 for the calculated flow.
    pub more_gas: S,
}

/// How soon unlit gas makes a chamber explosive, and what makes it safe again, by the wide limits.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ExplosiveChamber<S = f64> {
    /// Share of gas in what leaves the ports, by volume.
    pub gas_share: S,
    /// Share of gas from which the chamber may be explosive at its temperature.
    pub limit: S,
    /// Until it may be explosive, air on; none when the setting is too lean to be dangerous.
    pub explosive_after: Option<Duration<S>>,
    /// Until it surely burns, air on, by NFPA 497 at its temperature; none when it never does.
    pub burnable_after: Option<Duration<S>>,
    /// Until it may be explosive with the blower stopped and the gas on; none when no gas flows.
    pub explosive_without_air: Option<Duration<S>>,
    /// Above the autoignition temperature: the gas may gather and then light all at once.
    pub lights_itself: bool,
    /// Changes of air that make it safe again, whatever it was filled with: at least [`LEAST_CHANGES`].
    pub changes: S,
    /// How long that takes with the gas off, the damper where it is and the air still cold; none when no air flows.
    pub purge: Option<Duration<S>>,
}

impl<S: Scalar> Burner<S> {
    /// How soon unlit gas makes a chamber explosive, at a gauge setting and a damper opening, whether the chamber is
    /// cold, warm or glowing and however many heads share it.
    ///
    /// t = -(V/Q) ln(1 - limit/c) of [`fills_after`], Q what all its heads blow in once it has taken the chamber's
    /// temperature, the limit that of [`explosive_range`] at that temperature. A chamber at 400 degC so counts 2.3 times
    /// the flow and half the limit of a cold one: where a cold one takes 1.5 s, it takes 0.3 s. By the narrow limit,
    /// `burnable_after`, it would be 0.5 s; what is dangerous is judged by the wide one.
    ///
    /// # Errors
    ///
    /// An input out of range; a mixture that blows back ([`Burner::run`]); a gas that cannot burn.
    ///
    /// # Source
    ///
    /// Balance of a stirred volume of fresh air. A chamber that is not stirred has explosive corners sooner, and keeps
    /// them longer.
    pub fn explosive(
        &self,
        conditions: &Conditions<S>,
        gauge: GaugePressure<S>,
        opening: S,
        chamber: &UnlitChamber<S>,
    ) -> Result<ExplosiveChamber<S>> {
        let share = check(Input::HeadCount, chamber.heads)?.smaller(self.head_count) / self.head_count;
        let cold = conditions.cold();
        let (air_temperature, hot) = (cold.site.air_temperature(), chamber.temperature);
        let wide = explosive_range(&cold.gas, &cold.site, hot)?;
        let narrow = burning_range(&cold.gas, &cold.site, hot, LimitStandard::Nfpa497)?.lower_limit;
        let running = self.run(&Conditions { chamber_temperature: hot, ..cold }, gauge, opening)?;
        let volume = |kilograms: S, molar_mass: S, temperature: Temperature<S>| {
            let moles = kilograms / molar_mass * S::c(1e3);
            moles * S::c(GAS_CONSTANT) * temperature.kelvin() / cold.ambient().pascals() * share
        };
        let (gas_mass, air_mass) = (cold.gas.mixture().molar_mass(), cold.site.air_molar_mass());
        let more = S::one() + check(Input::Fraction, chamber.more_gas)?;
        let gas = volume(running.gas.kilograms_per_second(), gas_mass, hot) * more;
        let both = gas + volume(running.air.kilograms_per_second(), air_mass, hot);
        let gas_share = if both > S::zero() { gas / both } else { S::zero() };
        // A blower that stands holds nothing against the jets, and they give more than while it runs.
        let still = self.jet_flow(&cold, gauge, S::zero())?.mass_flow.kilograms_per_second() * self.head_count;
        let alone = self.run(&cold, GaugePressure::from_pascals(S::zero()), opening)?.air.kilograms_per_second();
        let through = volume(alone, air_mass, air_temperature);
        let changes = air_changes(S::one(), wide.lower_limit * S::c(SAFE_SHARE))?.larger(S::c(LEAST_CHANGES));
        let flow = ActualVolumeFlow::from_cubic_meters_per_second;
        let after = |limit: S| fills_after(chamber.volume, flow(both), gas_share, limit);
        Ok(ExplosiveChamber {
            gas_share,
            limit: wide.lower_limit,
            explosive_after: after(wide.lower_limit)?,
            burnable_after: after(narrow)?,
            explosive_without_air: fills_after(
                chamber.volume,
                flow(volume(still, gas_mass, hot) * more),
                S::one(),
                wide.lower_limit,
            )?,
            lights_itself: wide.lights_itself,
            changes,
            purge: (through > S::zero())
                .then(|| Duration::from_seconds(changes * chamber.volume.cubic_meters() / through))
                .filter(|time| time.seconds().is_finite()),
        })
    }
}
