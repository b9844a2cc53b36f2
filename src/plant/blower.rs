//! The blower against the largest fire.

use crate::air::Duty;
use crate::burner::Demand;
use crate::error::Result as CheckedResult;
use crate::plant::entries::AirAim;
use crate::plant::gauge_to_jet::Fed;
use crate::plant::installation::Plant;
use crate::plant::setting::{Fired, Setting};
use crate::quantity::{GaugePressure, GrossHeatRate, NetHeatRate, PressureDifference};

/// The blower against the largest fire of the file.
pub struct AirBlock {
    /// The setting with the most gas.
    pub setting: usize,
    /// What it is judged at.
    pub judged: Fired,
    /// The gauge there.
    pub gauge: GaugePressure,
    /// The air ratio it is judged at.
    pub air_ratio: f64,
    /// What that setting asks, damper wide open.
    pub demand: Demand,
    /// The same as a blower's duty; none when no blower makes so much pressure.
    pub duty: Option<Duty>,
    /// What the blower has over it, Pa; below zero when it is too small.
    pub surplus: PressureDifference,
    /// The highest gauge it can feed, damper wide open; none when it feeds no setting.
    pub highest_gauge: Option<GaugePressure>,
    /// The fire there.
    pub largest_fire: Option<(GrossHeatRate, NetHeatRate)>,
}

/// Works out the blower for a setting; `largest` is that with the most gas.
pub(crate) fn air_block(
    plant: &Plant,
    (judged, setting): (Fired, &Setting),
    largest: usize,
) -> CheckedResult<Option<AirBlock>> {
    let (Some(burner), Some(blower)) = (&plant.burner, &plant.entries.blower) else {
        return Ok(None);
    };
    // The chamber as hot as at work, which holds back more than a cold one: what is fed here can be kept.
    let conditions = plant.conditions_at(&plant.conditions, setting.gauge)?;
    let air_ratio = match setting.entry.air {
        AirAim::AirRatio(ratio) => ratio,
        AirAim::Damper(_) => plant.entries.air_ratio,
    };
    let demand = burner.demand(&conditions, setting.at_jet, air_ratio)?;
    let surplus = PressureDifference::from_pascals(burner.surplus(&conditions, &demand)?);
    let duty = burner.duty(&conditions, &demand, blower.efficiency).ok();
    // The chamber as hot as at work: the fire that can be kept.
    let (highest_gauge, largest_fire) = match plant.highest_fed(&plant.conditions, air_ratio) {
        Ok(Fed { gauge, gas, .. }) => {
            let fire = (plant.gas.gross_heating_value().of(gas), plant.gas.net_heating_value().of(gas));
            (gauge, Some(fire))
        }
        Err(_) => (None, None),
    };
    let gauge = setting.gauge;
    Ok(Some(AirBlock {
        setting: largest,
        judged,
        gauge,
        air_ratio,
        demand,
        duty,
        surplus,
        highest_gauge,
        largest_fire,
    }))
}
