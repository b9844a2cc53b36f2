//! The lighting range: at which gauge settings a burner lights in a cold chamber, at which only in a glowing one.
//!
//! A cold flame needs a mixture within the limits of burning, and ports it can stand on: their wall gradient must stay
//! below what the flame withstands in the chamber's fresh air. A plain port withstands far less than a real head, so the head has
//! a constant, from one lighting setting that was seen; without it only the limits are claimed. In a glowing chamber
//! the walls light whatever stays long enough, if the fire keeps them glowing.

use super::demand::AirSetting;
use super::glow::{Glow, lights_at, spare};
use super::gradient::{FLASHBACK_SCATTER, FlameGradients};
use super::rig::{Burner, Conditions, Feed, too_weak};
use crate::combustion::{BurningRange, LimitStandard, burning_range, flames_measured};
use crate::error::{Error, Result};
use crate::limits::{Input, check};
use crate::orifice::JetFlow;
use crate::quantity::{GaugePressure, MassFlow, NetHeatRate, Temperature};
use crate::scalar::Scalar;
use crate::solve;

/// Gauge readings that a range is first looked for at, a constant factor apart.
const STEPS: usize = 32;
/// The lowest of them, Pa.
const LOWEST: f64 = 200.0;

/// What a setting does.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Lights {
    /// It lights in a cold chamber, and burns in a glowing one.
    Cold,
    /// It goes out in a cold chamber and burns only in a glowing one.
    Glowing,
    /// It burns in neither.
    Never,
}

/// Why a setting does not light cold.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum GoesOut {
    /// Leaner than burns.
    TooLean,
    /// Richer than burns.
    TooRich,
    /// The mixture burns, but too slowly for its speed in the ports: the flame blows off.
    BlowOff,
    /// The mixture blows back into the blower, the blower is too weak for the air asked, or no gas flows.
    NoFlow,
}

/// A setting, cold and glowing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Lighting<S = f64> {
    /// What it does.
    pub lights: Lights,
    /// Why it does not light cold; none where it does.
    pub goes_out: Option<GoesOut>,
    /// Air ratio in a cold burner; none where no gas flows.
    pub air_ratio: Option<S>,
    /// Wall gradient of the ports of a cold burner over what the flame withstands in fresh air at a plain port; none outside
    /// the limits and for gases whose flames are not measured. Above the head's constant the flame blows off.
    pub pull: Option<S>,
    /// How hot the walls must be to light it; none where no wall does.
    pub walls: Option<Temperature<S>>,
}

/// The gauge settings at which a burner lights, its air set one way.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LightingRange<S = f64> {
    /// Lowest and highest gauge at which the mixture is within the limits of burning.
    pub within_limits: Option<Span<S>>,
    /// Lowest and highest gauge that lights a cold chamber; none without the head's constant.
    pub cold: Option<Span<S>>,
    /// Lowest and highest gauge that keeps a glowing chamber glowing.
    pub glowing: Option<Span<S>>,
}

/// A stretch of gauge settings.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Span<S = f64> {
    /// Its lower end.
    pub low: GaugePressure<S>,
    /// Whether it is an end, or the lowest setting looked at.
    pub low_ends: bool,
    /// Its upper end.
    pub high: GaugePressure<S>,
    /// Whether it is an end, or the highest setting looked at.
    pub high_ends: bool,
}

/// A burner at work, as far as lighting goes.
struct AtWork<S> {
    jet: JetFlow<S>,
    /// Gas and air of one head.
    gases: MassFlow<S>,
    fire: NetHeatRate<S>,
    air_ratio: S,
    gradient: S,
}

impl<S: Scalar> Burner<S> {
    fn at_work(&self, conditions: &Conditions<S>, gauge: GaugePressure<S>, air: AirSetting<S>) -> Result<AtWork<S>> {
        let (jet, air_flow) = match air {
            AirSetting::Opening(opening) => {
                let running = self.run(conditions, gauge, opening)?;
                (running.jet, running.air)
            }
            AirSetting::Ratio(ratio) => {
                let demand = self.demand(conditions, gauge, ratio)?;
                let surplus = self.surplus(conditions, &demand)?;
                if surplus < S::zero() {
                    return Err(too_weak(surplus));
                }
                (demand.jet, demand.air)
            }
        };
        let air_flow = self.air_of_one_head(air_flow.kilograms_per_second());
        let ratio = conditions.air_need().air_ratio(air_flow, jet.mass_flow);
        let air_ratio = ratio.ok_or(Error::NoSolution { input: Input::AirRatio, nearest: 0.0 })?;
        let flow = self.head_need(conditions, &conditions.air(), Feed::of(&jet), air_flow).head;
        Ok(AtWork {
            gases: air_flow + jet.mass_flow,
            fire: jet.heat_net,
            gradient: self.head.wall_gradient(&flow),
            jet,
            air_ratio,
        })
    }

    /// Wall gradient of cold ports over what the flame withstands in fresh air; none where it does not burn.
    fn pull(cold: &Conditions<S>, work: &AtWork<S>) -> Option<S> {
        let temperature = cold.mixture_temperature;
        let limit = FlameGradients::new(cold, work.air_ratio, temperature).ok()?.blow_off_in_air;
        (limit > S::zero()).then(|| work.gradient / limit)
    }

    /// The constant of a head: how many times the gradient of a plain port its flames bear, from any setting at which
    /// the cold burner was seen to light and keep burning: they bear that much, or more.
    ///
    /// # Errors
    ///
    /// [`Error::NoSolution`] naming the air ratio, with the one found, when the mixture of that setting is outside the
    /// limits of burning, so that something else of the burner is not as described; the errors of [`Burner::run`];
    /// [`Error::MissingProperty`].
    pub fn head_constant(&self, conditions: &Conditions<S>, gauge: GaugePressure<S>, air: AirSetting<S>) -> Result<S> {
        conditions.gas.mixture().known_to_burn()?;
        let cold = conditions.cold();
        let work = self.at_work(&cold, gauge, air)?;
        let outside = Error::NoSolution { input: Input::AirRatio, nearest: work.air_ratio.to_f32() };
        // A gas whose flames are not measured says so itself.
        FlameGradients::new(&cold, work.air_ratio, cold.mixture_temperature)?;
        let pull = Self::pull(&cold, &work).ok_or(outside)?;
        check(Input::HeadConstant, pull).map_err(|_| outside)
    }

    /// How much more a cold flame withstands than the ports pull, as a share; below zero where it does not burn.
    fn stands(&self, cold: &Conditions<S>, gauge: GaugePressure<S>, air: AirSetting<S>, constant: Option<S>) -> S {
        let Ok((_, limits)) = cold_limits(cold) else { return -S::one() };
        match self.at_work(cold, gauge, air) {
            Ok(work) if limits.burns(work.air_ratio) => holds(constant, Self::pull(cold, &work)),
            _ => -S::one(),
        }
    }

    /// What a setting does in a cold chamber and in a glowing one.
    ///
    /// Cold: within the limits of burning at the air's temperature, and the ports' wall gradient at most the head's
    /// constant times that of [`FlameGradients::blow_off_in_air`]. Without a constant the limits alone decide, and
    /// "cold" means that it may light. Glowing: the walls at 760 degC or so much hotter that the gas lights within the
    /// time it stays, and the fire keeps them there.
    ///
    /// # Errors
    ///
    /// An input out of range; a gas that cannot burn; [`Error::MissingProperty`].
    ///
    /// # Source
    ///
    /// As of [`FlameGradients`], [`ignition_delay`](super::ignition_delay) and [`GLOW_CELSIUS`](super::GLOW_CELSIUS);
    /// all but the limits is indicative.
    pub fn lighting(
        &self,
        conditions: &Conditions<S>,
        gauge: GaugePressure<S>,
        air: AirSetting<S>,
        head_constant: Option<S>,
        chamber: &Glow<S>,
    ) -> Result<Lighting<S>> {
        self.checked(conditions, gauge)?;
        conditions.gas.mixture().known_to_burn()?;
        chamber.checked()?;
        let constant = head_constant.map(|constant| check(Input::HeadConstant, constant)).transpose()?;
        let (cold, limits) = cold_limits(conditions)?;
        let work = self.at_work(&cold, gauge, air).ok();
        let pull = work.as_ref().and_then(|work| Self::pull(&cold, work));
        let goes_out = match &work {
            None => Some(GoesOut::NoFlow),
            Some(work) if work.air_ratio > limits.leanest_air_ratio => Some(GoesOut::TooLean),
            Some(work) if work.air_ratio < limits.richest_air_ratio => Some(GoesOut::TooRich),
            Some(work) if holds(constant, pull) < S::zero() => Some(GoesOut::BlowOff),
            Some(_) => None,
        };
        let walls =
            self.kept(conditions, gauge, air, chamber).and_then(|(walls, spare)| (spare >= S::zero()).then_some(walls));
        let lights = match (goes_out, walls) {
            (None, _) => Lights::Cold,
            (Some(_), Some(_)) => Lights::Glowing,
            (Some(_), None) => Lights::Never,
        };
        Ok(Lighting { lights, goes_out, air_ratio: work.map(|work| work.air_ratio), pull, walls })
    }

    /// How hot walls must be, and the spare share of the fire that keeps them so; none where nothing flows or no wall
    /// lights it.
    fn kept(
        &self,
        conditions: &Conditions<S>,
        gauge: GaugePressure<S>,
        air: AirSetting<S>,
        chamber: &Glow<S>,
    ) -> Option<(Temperature<S>, S)> {
        let hot = Conditions { chamber_temperature: super::glow::glow(), ..*conditions };
        let work = self.at_work(&hot, gauge, air).ok()?;
        if work.jet.mass_flow.kilograms_per_second() <= S::zero() {
            return None;
        }
        let walls = lights_at(&hot, chamber, work.gases).ok()?;
        Some((walls, spare(&hot, chamber, work.fire, work.air_ratio, walls).ok()?))
    }

    /// The gauge settings that light a cold chamber, that burn in a glowing one, and that are within the limits of
    /// burning at all.
    ///
    /// Each stretch is the lowest there is; ends are found to the last figure between readings a fifth or so apart.
    ///
    /// # Range
    ///
    /// Readings from 200 Pa up to the highest that [`Input::GaugePressure`] and the gas's dew point allow.
    ///
    /// # Errors
    ///
    /// An input out of range; a gas that cannot burn; [`Error::MissingProperty`].
    pub fn lighting_range(
        &self,
        conditions: &Conditions<S>,
        air: AirSetting<S>,
        head_constant: Option<S>,
        chamber: &Glow<S>,
    ) -> Result<LightingRange<S>> {
        let low = S::c(LOWEST);
        self.lighting(conditions, GaugePressure::from_pascals(low), air, head_constant, chamber)?;
        let (cold, limits) = cold_limits(conditions)?;
        let high = highest(self, conditions)?;
        let out = -S::one();
        let limit = |gauge| match self.at_work(&cold, gauge, air) {
            Ok(work) => within(&limits, work.air_ratio),
            Err(_) => out,
        };
        let stands = |gauge| self.stands(&cold, gauge, air, head_constant);
        let keeps = |gauge| self.kept(conditions, gauge, air, chamber).map_or(out, |(_, spare)| spare);
        Ok(LightingRange {
            within_limits: span(low, high, limit)?,
            cold: if head_constant.is_some() { span(low, high, stands)? } else { None },
            glowing: span(low, high, keeps)?,
        })
    }
}

impl<S: Scalar> Burner<S> {
    /// The gauge below which flashback into the ports is possible, the head at the conditions' mixture temperature:
    /// where the wall gradient falls under the flashback gradient with its scatter, or under which nothing can be run.
    ///
    /// None when it never may: every gradient is steeper, or the holes are narrower than a flame passes.
    ///
    /// # Errors
    ///
    /// An input out of range; [`Error::NotMeasured`] for a gas whose flames are not measured: then nothing is known of
    /// it, and such gases flash back far more easily.
    pub fn flashback_below(&self, conditions: &Conditions<S>, air: AirSetting<S>) -> Result<Option<GaugePressure<S>>> {
        let low = S::c(LOWEST);
        self.checked(conditions, GaugePressure::from_pascals(low))?;
        flames_measured(&conditions.gas)?;
        let high = highest(self, conditions)?;
        let margin = |gauge| {
            let Ok(work) = self.at_work(conditions, gauge, air) else { return -S::one() };
            let Ok(flame) = FlameGradients::new(conditions, work.air_ratio, conditions.mixture_temperature) else {
                // So rich or so lean that it does not burn.
                return S::one();
            };
            if flame.flashback <= S::zero() || self.head.narrowest() <= flame.quenching_distance {
                return S::one();
            }
            S::one() - flame.flashback * S::c(FLASHBACK_SCATTER) / work.gradient
        };
        Ok(span(low, high, margin)?.filter(|span| span.low_ends).map(|span| span.low))
    }
}

/// The highest gauge looked at.
fn highest<S: Scalar>(burner: &Burner<S>, conditions: &Conditions<S>) -> Result<S> {
    solve::highest_answered(S::c(LOWEST), S::c(Input::GaugePressure.range().max), |gauge| {
        burner.checked(conditions, GaugePressure::from_pascals(gauge))
    })
}

/// The burner cold, and the limits of burning of its mixture.
fn cold_limits<S: Scalar>(conditions: &Conditions<S>) -> Result<(Conditions<S>, BurningRange<S>)> {
    let cold = conditions.cold();
    let limits = burning_range(&cold.gas, &cold.site, cold.mixture_temperature, LimitStandard::Nfpa497)?;
    Ok((cold, limits))
}

/// How far inside the limits an air ratio lies, as a share of the nearer; below zero outside.
fn within<S: Scalar>(limits: &BurningRange<S>, air_ratio: S) -> S {
    let lean = S::one() - air_ratio / limits.leanest_air_ratio;
    let rich = S::one() - limits.richest_air_ratio / air_ratio;
    lean.smaller(rich)
}

/// How much more the flame withstands than the ports pull, as a share; without a constant of the head or a measured flame it
/// is taken to hold where the limits let it.
fn holds<S: Scalar>(constant: Option<S>, pull: Option<S>) -> S {
    match (constant, pull) {
        (None, _) => S::one(),
        (Some(constant), Some(pull)) => S::one() - pull / constant,
        // Richer than a velocity is worked out for, yet within the limits: far too slow a flame.
        (Some(_), None) => -S::one(),
    }
}

/// The lowest stretch of gauge settings in which a function is not below zero.
fn span<S: Scalar>(low: S, high: S, mut function: impl FnMut(GaugePressure<S>) -> S) -> Result<Option<Span<S>>> {
    let mut function = |pascals: S| function(GaugePressure::from_pascals(pascals));
    let factor = ((high / low).ln() / S::c((STEPS - 1) as f64)).exp();
    let at = GaugePressure::from_pascals;
    let mut begin: Option<(S, bool)> = None;
    let mut before = low;
    let mut gauge = low;
    for step in 0..STEPS {
        let here = if step + 1 == STEPS { high } else { gauge };
        let is_out = function(here) < S::zero();
        match begin {
            None if !is_out && step == 0 => begin = Some((here, false)),
            None if !is_out => {
                begin = Some((solve::root(Input::GaugePressure, before, here, &mut function)?.x, true));
            }
            Some((from, from_ends)) if is_out => {
                let end = solve::root(Input::GaugePressure, before, here, &mut function)?.x;
                return Ok(Some(Span { low: at(from), low_ends: from_ends, high: at(end), high_ends: true }));
            }
            _ => {}
        }
        before = here;
        gauge = gauge * factor;
    }
    Ok(begin.map(|(from, low_ends)| Span { low: at(from), low_ends, high: at(high), high_ends: false }))
}
