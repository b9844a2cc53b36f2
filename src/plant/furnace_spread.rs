//! How sure the fire is that holds a chamber.

use crate::Scalar;
use crate::error::Result as CheckedResult;
use crate::furnace::{Chamber, Layer};
use crate::plant::chamber::with_layer;
use crate::plant::entries::FurnaceEntry;
use crate::plant::installation::Plant;
use crate::quantity::{NetHeatRate, Power, Temperature};

/// What the spread of each layer's conductivity does to the fire that holds a temperature, added up as independent:
/// half the difference of the fires at both ends of the spread.
pub(crate) fn holding_half_width(
    plant: &Plant,
    entry: &FurnaceEntry,
    chamber: &Chamber,
    temperature: Temperature,
    available: &impl Fn(Temperature) -> f64,
) -> CheckedResult<NetHeatRate> {
    let mut squares = 0.0;
    for (index, layer) in entry.layers.iter().enumerate() {
        let spread = plant.entries.uncertainty.walls.unwrap_or(layer.material.spread());
        let fire = |factor: f64| -> CheckedResult<f64> {
            let material = layer.material.with_conductivity_factor(factor)?;
            let other = with_layer(chamber, index, Layer { material, ..layer.clone() })?;
            Ok(other.fire_for(temperature, Power::from_watts(0.0), available)?.fire.watts())
        };
        squares += (0.5 * (fire(1.0 + spread)? - fire(1.0 - spread)?)).squared();
    }
    Ok(NetHeatRate::from_watts(Scalar::sqrt(squares)))
}
