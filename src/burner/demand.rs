//! The other way round: what a blower must do for a gauge setting and an air ratio, and the damper for it.

use super::rig::{Burner, Conditions, Feed, too_weak};
use crate::air::{Damper, Duty};
use crate::error::Result;
use crate::limits::{Input, check};
use crate::orifice::JetFlow;
use crate::quantity::{ActualVolumeFlow, GaugePressure, HeatRate, MassFlow, PressureDifference};
use crate::scalar::Scalar;
use crate::solve;

/// How the air of a setting is set.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum AirSetting<S = f64> {
    /// The damper stands at an opening.
    Opening(S),
    /// The damper is moved until the air ratio is this.
    Ratio(S),
}

/// What a setting asks of the air.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Demand<S = f64> {
    /// The jets of one head.
    pub jet: JetFlow<S>,
    /// Gas of all heads.
    pub gas: MassFlow<S>,
    /// Air of all heads.
    pub air: MassFlow<S>,
    /// The same at the blower's inlet.
    pub air_flow: ActualVolumeFlow<S>,
    /// Static pressure where the jets stand.
    pub back_pressure: GaugePressure<S>,
    /// What the blower must give with the damper wide open.
    pub blower_pressure: PressureDifference<S>,
    /// Evaluations the solution took.
    pub iterations: usize,
}

/// A damper calibrated by one setting seen.
#[derive(Clone, Debug, PartialEq)]
pub struct DamperSeen<S = f64> {
    /// The damper through that setting.
    pub damper: Damper<S>,
    /// Its loss coefficient there.
    pub loss: S,
    /// Expanded uncertainty (k = 2) of the loss at any mark, as a share.
    pub spread: S,
}

impl<S: Scalar> Burner<S> {
    /// The air an air ratio needs at a gauge setting, and the pressure it needs, whatever blower gives it.
    ///
    /// # Errors
    ///
    /// An input out of range; [`Error::NoSolution`](crate::Error::NoSolution) naming the back pressure when the
    /// head needs one beyond the accepted range, with what it still lacks in Pa.
    pub fn demand(&self, conditions: &Conditions<S>, gauge: GaugePressure<S>, air_ratio: S) -> Result<Demand<S>> {
        self.checked(conditions, gauge)?;
        check(Input::AirRatio, air_ratio)?;
        let need = conditions.air_need();
        let here = conditions.air();
        let head_air = |jet: &JetFlow<S>| jet.mass_flow * (need.mass_ratio * air_ratio);
        let range = Input::BackPressure.range();
        let high = gauge.pascals().smaller(S::c(range.max));
        let root = solve::root(Input::BackPressure, S::c(range.min), high, |back| {
            self.jet_flow(conditions, gauge, back).map_or(-back, |jet| {
                self.head_need(conditions, &here, Feed::of(&jet), head_air(&jet)).back_pressure() - back
            })
        })?;
        let jet = self.jet_flow(conditions, gauge, root.x)?;
        let air = head_air(&jet) * self.head_count;
        let air_flow = air.at(here.density);
        let open = self.path.damper_loss_coefficient(S::one())?;
        let path = self.path_loss(&here, air_flow, open);
        Ok(Demand {
            jet,
            gas: jet.mass_flow * self.head_count,
            air,
            air_flow,
            back_pressure: GaugePressure::from_pascals(root.x),
            blower_pressure: PressureDifference::from_pascals(root.x + path.pascals()),
            iterations: root.iterations,
        })
    }

    /// The damper opening that gives an air ratio at a gauge setting.
    ///
    /// # Errors
    ///
    /// [`Error::NoSolution`](crate::Error::NoSolution) naming the air flow when the blower is too weak with the
    /// damper wide open, with what it lacks in Pa; naming the damper opening when there is no damper or it would
    /// have to close further than a tenth; an input out of range.
    pub fn opening_for(&self, conditions: &Conditions<S>, gauge: GaugePressure<S>, air_ratio: S) -> Result<S> {
        let asked = self.damper_loss_for(conditions, gauge, air_ratio)?;
        let no_damper = crate::Error::NoSolution { input: Input::DamperOpening, nearest: 1.0 };
        self.path.damper().ok_or(no_damper)?.opening_for(asked)
    }

    /// The loss coefficient the damper has where a gauge setting burns at an air ratio.
    ///
    /// # Errors
    ///
    /// As [`Burner::opening_for`].
    pub fn damper_loss_for(&self, conditions: &Conditions<S>, gauge: GaugePressure<S>, air_ratio: S) -> Result<S> {
        let demand = self.demand(conditions, gauge, air_ratio)?;
        let surplus = self.surplus(conditions, &demand)?;
        if surplus < S::zero() {
            return Err(too_weak(surplus));
        }
        let wide = self.path.damper_loss_coefficient(S::one())?;
        let no_damper = crate::Error::NoSolution { input: Input::DamperOpening, nearest: 1.0 };
        let damper = self.path.damper().ok_or(no_damper)?;
        let density = conditions.site.air_density();
        // The loss of a coefficient of one: the dynamic head in the damper's duct.
        let dynamic_head = damper.loss(demand.air_flow, density, S::one()).pascals();
        // Next to no flow asks for more than any damper takes; no flow at all for infinitely much.
        let most = S::c(Input::DamperLoss.range().max);
        Ok(if surplus >= (most - wide) * dynamic_head { most } else { wide + surplus / dynamic_head })
    }

    /// The damper calibrated by one setting seen: at this gauge and this mark the fire had an air ratio, known to an
    /// expanded uncertainty (k = 2). A neutral flame is 1; an oxygen reading gives it by
    /// [`air_ratio_from_oxygen`](crate::combustion::air_ratio_from_oxygen); a flow of air over the air needed is one too.
    ///
    /// The blower's curve, the ducts and the head are taken as they are said: what they are off by goes into the damper,
    /// and comes out again at the settings near the one seen.
    ///
    /// # Errors
    ///
    /// As [`Burner::opening_for`] and [`Damper::calibrated`].
    pub fn damper_seen(
        &self,
        conditions: &Conditions<S>,
        gauge: GaugePressure<S>,
        opening: S,
        (air_ratio, expanded): (S, S),
    ) -> Result<DamperSeen<S>> {
        let loss = self.damper_loss_for(conditions, gauge, air_ratio)?;
        let damper =
            self.path.damper().ok_or(crate::Error::NoSolution { input: Input::DamperOpening, nearest: 1.0 })?;
        let damper = damper.calibrated(opening, loss)?;
        let leaner = self.damper_loss_for(conditions, gauge, air_ratio + expanded).unwrap_or(S::zero());
        let richer = self.damper_loss_for(conditions, gauge, (air_ratio - expanded).larger(S::c(0.05)))?;
        let floor = S::c(1e-3);
        let seen = S::c(0.5) * (richer.larger(floor) / leaner.larger(floor)).ln();
        Ok(DamperSeen { damper, loss, spread: Damper::calibrated_spread(seen.smaller(S::one())) })
    }

    /// What the blower has over what a demand asks, damper wide open, Pa; below zero when it is too weak.
    ///
    /// # Errors
    ///
    /// Air density out of range.
    pub fn surplus(&self, conditions: &Conditions<S>, demand: &Demand<S>) -> Result<S> {
        let blower = self.blower_here(conditions)?;
        Ok(blower.static_pressure(demand.air_flow).pascals() - demand.blower_pressure.pascals())
    }

    /// The gauge setting at which all heads together make a heat, with the air set one way or the other.
    ///
    /// # Errors
    ///
    /// [`Error::NoSolution`](crate::Error::NoSolution) when no setting in range makes it; an input out of range.
    pub fn gauge_for_heat(
        &self,
        conditions: &Conditions<S>,
        heat: HeatRate<S>,
        air: AirSetting<S>,
    ) -> Result<GaugePressure<S>> {
        let wanted = conditions.gas.flow_for(heat)?.kilograms_per_second();
        let range = Input::GaugePressure.range();
        let flow = |gauge: S| -> Result<S> {
            let gauge = GaugePressure::from_pascals(gauge);
            let gas = match air {
                AirSetting::Opening(opening) => self.run(conditions, gauge, opening)?.gas,
                AirSetting::Ratio(ratio) => self.demand(conditions, gauge, ratio)?.gas,
            };
            Ok(gas.kilograms_per_second())
        };
        let low = S::c(range.min);
        let high = solve::highest_answered(low, S::c(range.max), flow)?;
        let root =
            solve::root(Input::GaugePressure, low, high, |gauge| flow(gauge).map_or(-wanted, |flow| flow - wanted))?;
        Ok(GaugePressure::from_pascals(root.x))
    }

    /// A demand as a blower's duty: powers at an efficiency, and what to read in a sea-level catalog.
    ///
    /// # Errors
    ///
    /// An input out of range.
    pub fn duty(&self, conditions: &Conditions<S>, demand: &Demand<S>, efficiency: Option<S>) -> Result<Duty<S>> {
        let pressure = PressureDifference::from_pascals(demand.blower_pressure.pascals().larger(S::zero()));
        Duty::new(demand.air_flow, pressure, conditions.site.air_density(), efficiency)
    }
}
