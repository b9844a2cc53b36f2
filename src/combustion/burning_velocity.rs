//! How fast a flame eats into its mixture.

use super::air_need::AirNeed;
use super::burning_limits::{LimitStandard, burning_range};
use crate::error::{Error, Result};
use crate::gas::Gas;
use crate::interpolate::polyline::in_table;
use crate::limits::{Input, check};
use crate::quantity::{Speed, Temperature};
use crate::scalar::Scalar;
use crate::site::Site;
use crate::species::FlameKind;

/// Guelder's constants of one fuel: w r^eta exp(-xi (r - 1.075)^2) (T/300 K)^alpha (p/1 atm)^beta, r the equivalence
/// ratio. `rich` corrects it by the equivalence ratio; `fastest` is the power of temperature of the high end.
struct Constants {
    w: f64,
    eta: f64,
    xi: f64,
    alpha: f64,
    beta: f64,
    rich: [(f64, f64); 5],
    fastest: f64,
}

/// Methane's alpha is not Guelder's 2: flames of the San Diego mechanism at 450 and 600 K ask for 1.65 to 1.69. `rich` is
/// drawn through flames of that mechanism and of GRI-Mech 3.0 over the formula's own, as shares of the same at a ratio
/// of 1, where the formula lies 4 to 12 % above (methane) or 13 % below to 4 % above (propane) them.
const METHANE: Constants = Constants {
    w: 0.422,
    eta: 0.15,
    xi: 5.18,
    alpha: 1.67,
    beta: -0.5,
    rich: [(1.0, 1.0), (1.1, 0.97), (1.2, 0.86), (1.333, 0.68), (1.41, 0.58)],
    fastest: 2.0,
};
const PROPANE: Constants = Constants {
    w: 0.446,
    eta: 0.12,
    xi: 4.95,
    alpha: 1.77,
    beta: -0.2,
    rich: [(1.0, 1.0), (1.1, 0.97), (1.2, 0.93), (1.3, 0.84), (1.4, 0.74)],
    fastest: 1.77,
};

/// What the fastest of published lean flames have over the formula's, by the equivalence ratio: those of the San Diego
/// mechanism and of GRI-Mech 3.0, as shares of the same at a ratio of 1.
const LEAN: [(f64, f64); 4] = [(0.7, 1.25), (0.8, 1.16), (0.9, 1.07), (1.0, 1.0)];

/// Equivalence ratio of the fastest flame.
const FASTEST: f64 = 1.075;
/// What a share of inert gas in the mixture takes from the velocity.
const DILUTION: f64 = 2.3;
/// Temperature and pressure of the constants, K and Pa.
const REFERENCE: (f64, f64) = (300.0, 101_325.0);
/// Most of what burns that may be of a kind the formula was not measured for.
const UNMEASURED: f64 = 0.15;

/// How far published flames lie from the answer, as shares of it, lowest and highest: methane of the San Diego mechanism of
/// 2016 and of GRI-Mech 3.0 up to 15 % slower, propane of San Diego 13 % slower to 12 % faster (computed with Cantera).
///
/// It holds where [`burning_velocity_bias_holds`], cold and up to 600 K. Elsewhere 20 % of methane in nitrogen is 21 %
/// slower at an air ratio of 1 and 71 % at 0.77, and propane 20 % faster at 1.43. GRI-Mech, which was not made for
/// propane, has its flames 15 to 25 % faster throughout and 35 % at 1.5.
pub const BURNING_VELOCITY_BIAS: (f64, f64) = (-0.15, 0.15);
/// Air ratios that the bias was looked at for, lowest and highest.
pub const BURNING_VELOCITY_RANGE: (f64, f64) = (0.75, 1.2);
/// Most of a gas that may be inert for the bias to hold.
const THINNED: f64 = 0.1;

impl Constants {
    /// m/s, without dilution: the answer, and the fastest flames published.
    fn velocity<S: Scalar>(&self, richness: S, kelvin: S, pascals: S) -> [S; 2] {
        let off = richness - S::c(FASTEST);
        let warm = (kelvin / S::c(REFERENCE.0)).ln();
        let exponent = S::c(self.eta) * richness.ln() - S::c(self.xi) * off.squared()
            + S::c(self.beta) * (pascals / S::c(REFERENCE.1)).ln();
        let cold = S::c(self.w) * exponent.exp();
        let (least, most) = (S::c(self.alpha) * warm, S::c(self.fastest) * warm);
        let slowed = in_table(self.rich.len(), |row| self.rich[row], richness);
        let hastened = in_table(LEAN.len(), |row| LEAN[row], richness);
        [cold * least.exp() * slowed, cold * most.larger(least).exp() * hastened]
    }
}

/// What of a gas's volume burns, burns unlike what the formula was measured for, is methane, is inert.
struct Parts<S> {
    burns: S,
    unmeasured: S,
    methane: S,
    inert: S,
}

impl<S: Scalar> Parts<S> {
    fn of(gas: &Gas<S>) -> Result<Self> {
        let zero = S::zero();
        let mut parts = Self { burns: zero, unmeasured: zero, methane: zero, inert: zero };
        for (species, share) in gas.mixture().parts() {
            if species.atoms().is_inert() {
                parts.inert += share;
            }
            if !species.atoms().burns() {
                continue;
            }
            parts.burns += share;
            match species.flame()? {
                FlameKind::Methane => parts.methane += share,
                FlameKind::HeavierHydrocarbon => {}
                FlameKind::Unmeasured => parts.unmeasured += share,
            }
        }
        Ok(parts)
    }

    fn measured(&self) -> Result<()> {
        if self.unmeasured > S::c(UNMEASURED) * self.burns {
            return Err(Error::NotMeasured { given: (self.unmeasured / self.burns).to_f32() });
        }
        Ok(())
    }
}

/// Whether the flames of a gas are of the kind that [`burning_velocity`] was measured for.
///
/// # Errors
///
/// [`Error::NotMeasured`] when more than 15 % of what burns is ethylene, propylene, hydrogen or carbon monoxide. Such
/// flames are faster, hydrogen's by far, and flashback the more easily. [`Error::MissingProperty`] for a fuel whose kind of
/// flame is not known.
pub fn flames_measured<S: Scalar>(gas: &Gas<S>) -> Result<()> {
    Parts::of(gas)?.measured()
}

/// Whether [`BURNING_VELOCITY_BIAS`] holds: an air ratio of [`BURNING_VELOCITY_RANGE`], and at most 10 % of the gas
/// inert.
#[must_use]
pub fn burning_velocity_bias_holds<S: Scalar>(gas: &Gas<S>, air_ratio: S) -> bool {
    let Ok(parts) = Parts::of(gas) else { return false };
    let (low, high) = BURNING_VELOCITY_RANGE;
    let is_near = S::c(low) <= air_ratio && air_ratio <= S::c(high);
    is_near && parts.measured().is_ok() && parts.inert <= S::c(THINNED)
}

/// Laminar burning velocity of a gas in the site's air; zero outside the limits of burning.
///
/// S = w r^eta exp(-xi (r - 1.075)^2) (T/300 K)^alpha (p/1 atm)^beta (1 - 2.3 f) c(r), r the equivalence ratio 1 / air
/// ratio, c what rich flames are slower by (0.86 of methane and 0.93 of propane at 1.2), f the share of the mixture that is inert: carbon dioxide, nitrogen and water of the gas, water of the air.
/// Methane by its own constants, every heavier hydrocarbon by propane's; a blend as 1/S = sum x/S over what burns.
///
/// # Range
///
/// Air ratio of [`Input::AirRatio`], mixture 238 to 900 K (the exponent of temperature was measured up to some 700 K),
/// the site's pressure. Of what burns, at most 15 % may be ethylene, propylene, hydrogen or carbon monoxide, which
/// burn faster: then the answer is low. Bias: [`BURNING_VELOCITY_BIAS`], near the fastest flame only. Limits of
/// burning are NFPA 497's at the mixture's temperature.
///
/// # Errors
///
/// An input out of range, those of [`flames_measured`], and those of [`burning_range`].
///
/// # Source
///
/// Guelder, "Correlations of laminar combustion data for alternative S.I. engine fuels", SAE 841000 (1984), methane and
/// propane, less what two modern mechanisms take from hot methane and from rich flames; blends by Le Chatelier's rule, Di Sarli, Di Benedetto, International Journal of Hydrogen Energy 32 (2007)
/// 637 (from memory).
///
/// # Examples
///
/// ```
/// use jetwright::combustion::burning_velocity;
/// use jetwright::{Site, gas::{Gas, Species}};
/// use jetwright::quantity::{Length, Temperature};
/// let cold = Temperature::from_kelvin(300.0_f64);
/// let site = Site::at_altitude(Length::from_meters(0.0), cold, 0.0).unwrap();
/// let speed = burning_velocity(&Gas::from(Species::Propane), &site, 1.0, cold).unwrap();
/// // 0.446 exp(-4.95 * 0.075^2)
/// assert!((speed.meters_per_second() - 0.4337).abs() < 1e-4);
/// ```
pub fn burning_velocity<S: Scalar>(
    gas: &Gas<S>,
    site: &Site<S>,
    air_ratio: S,
    mixture: Temperature<S>,
) -> Result<Speed<S>> {
    burning_velocity_band(gas, site, air_ratio, mixture).map(|[speed, _]| speed)
}

/// [`burning_velocity`], and the fastest flame of the same mixture that anyone publishes: Guelder's own rich and hot
/// methane, and up to a quarter more on the lean side.
///
/// The first is for what a flame holds to, the second for what it flashes back through.
///
/// # Errors
///
/// As [`burning_velocity`].
pub fn burning_velocity_band<S: Scalar>(
    gas: &Gas<S>,
    site: &Site<S>,
    air_ratio: S,
    mixture: Temperature<S>,
) -> Result<[Speed<S>; 2]> {
    let ratio = check(Input::AirRatio, air_ratio)?;
    let kelvin = check(Input::MixtureTemperature, mixture.kelvin())?;
    let range = burning_range(gas, site, mixture, LimitStandard::Nfpa497)?;
    let (zero, one) = (S::zero(), S::one());
    let parts = Parts::of(gas)?;
    parts.measured()?;
    // What lights by itself is no flame that creeps, but within the limits it still has a speed.
    if !(range.richest_air_ratio <= ratio && ratio <= range.leanest_air_ratio) {
        return Ok([Speed::from_meters_per_second(zero); 2]);
    }
    let air = ratio * AirNeed::new(gas, site).volume_ratio;
    let dilution = (parts.inert + air * site.water_fraction()) / (one + air);
    let slowed = (one - S::c(DILUTION) * dilution).larger(zero);
    let pascals = site.ambient_pressure().pascals();
    let of = |constants: &Constants| constants.velocity(one / ratio, kelvin, pascals);
    let share = parts.methane / parts.burns;
    let (methane, heavier) = (of(&METHANE), of(&PROPANE));
    let blend = |end: usize| one / (share / methane[end] + (one - share) / heavier[end]);
    Ok([blend(0), blend(1)].map(|speed| Speed::from_meters_per_second(speed * slowed)))
}
