//! The blower against the largest fire.

use crate::air::Duty;
use crate::burner::{Conditions, Demand};
use crate::error::Result as CheckedResult;
use crate::plant::entries::AirAim;
use crate::plant::installation::Plant;
use crate::plant::setting::{Fired, Setting, conditions_of};
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
    let conditions = plant.conditions_at(&conditions_of(plant, &setting.entry), setting.gauge)?;
    let air_ratio = match setting.entry.air {
        AirAim::AirRatio(ratio) => ratio,
        AirAim::Damper(_) => plant.entries.air_ratio,
    };
    let demand = burner.demand(&conditions, setting.at_jet, air_ratio)?;
    let surplus = PressureDifference::from_pascals(burner.surplus(&conditions, &demand)?);
    let duty = burner.duty(&conditions, &demand, blower.efficiency).ok();
    // The chamber as hot as the file says, whatever this setting finds: the fire that can be kept.
    let conditions = Conditions { chamber_temperature: plant.conditions.chamber_temperature, ..conditions };
    let (highest_gauge, largest_fire) = match burner.highest_gauge(&conditions, air_ratio) {
        Ok(at_jet) => {
            let gas = burner.demand(&conditions, at_jet, air_ratio)?.gas;
            let fire = (plant.gas.gross_heating_value().of(gas), plant.gas.net_heating_value().of(gas));
            (plant.reading(&conditions, at_jet, gas).ok(), Some(fire))
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
