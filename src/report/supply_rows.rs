//! Cylinder and line for programs.

use std::prelude::rust_2024::*;

use serde_json::{Value, json};

use crate::plant::cylinder::CylinderEvening;
use crate::plant::hazards::supply::line_share;
use crate::plant::{Setting, Sheet};

/// The keys that what lies before the jet adds to a setting.
pub(crate) fn supply_keys(sheet: &Sheet, setting: &Setting) -> Value {
    let line = sheet.plant.before.line.as_ref();
    let regulator = sheet.plant.before.regulator.as_ref();
    json!({
        "gas_temperature_k": setting.gas_temperature.kelvin(),
        "jet_gauge_pressure_pa": line.map(|_| setting.at_jet.pascals()),
        "line_loss_share": line.map(|_| line_share(setting)),
        "still_gauge_pressure_pa": regulator
            .map(|regulator| regulator.reading_without_flow(setting.gauge, setting.gas).pascals()),
    })
}

/// The cylinder's block; null without a cylinder.
pub(crate) fn cylinder_json(sheet: &Sheet) -> Value {
    let Some(block) = &sheet.cylinder else { return Value::Null };
    json!({
        "cylinders": block.count,
        "capacity_kg": block.capacity.kilograms(),
        "left_kg": block.left.kilograms(),
        "cylinder_air_temperature_k": block.air.kelvin(),
        "cylinder_gauge_pressure_pa": block.pressure.pascals(),
        "cost_per_cylinder": block.cost,
        "draws": sheet
            .draws()
            .map(|(setting, row)| {
                json!({
                    "setting": setting.entry.name.as_str(),
                    "regulator_needs_pa": row.needs.pascals(),
                    "mass_flow_kg_per_s": setting.gas.kilograms_per_second(),
                    "steady_draw_kg_per_s": row.steady.kilograms_per_second(),
                    "keeps_up": row.keeps_up,
                    "too_cold_after_s": row.too_cold_after.map(|time| time.seconds()),
                    "gas_lasts_s": row.lasts.map(|time| time.seconds()),
                    "full_lasts_s": row.full_lasts.map(|time| time.seconds()),
                    "liquid_temperature_k": row.end.temperature.kelvin(),
                    "cylinders_needed": row.cylinders_needed,
                    "cost_per_hour": setting.cost_per_hour,
                })
            })
            .collect::<Vec<_>>(),
        "cylinder_evening": block.evening.as_ref().map(evening),
    })
}

fn evening(evening: &CylinderEvening) -> Value {
    json!({
        "by_plan": evening.by_plan,
        "gas_used_kg": evening.gas.kilograms(),
        "left_kg": evening.left.kilograms(),
        "liquid_temperature_k": evening.liquid.kelvin(),
        "lasts_evening": evening.lasts(),
        "too_cold_after_s": evening.too_cold_after.map(|time| time.seconds()),
        "empty_after_s": evening.empty_after.map(|time| time.seconds()),
    })
}
