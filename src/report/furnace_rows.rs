//! The furnace for programs.

use std::prelude::rust_2024::*;

use serde_json::{Value, json};

use crate::furnace::Lining;
use crate::plant::entries::FurnaceEntry;
use crate::plant::evaluation::Sheet;
use crate::plant::furnace::CastableBlock;
use crate::quantity::Duration;
use crate::report::firing::stage_words;
use crate::report::units::Shop;

/// The furnace's block; null without a furnace.
#[must_use]
pub fn furnace_json(sheet: &Sheet) -> Value {
    let (Some(block), Some(entry)) = (&sheet.furnace, &sheet.plant.entries.furnace) else { return Value::Null };
    let work = block.work.as_ref();
    let leg = work.and_then(|work| work.leg);
    let fire = work.and_then(|work| work.fire());
    let air = fire.and_then(|fire| fire.air.as_ref());
    let shop = Shop { inch: false };
    let plan = if sheet.firing.by_furnace { &sheet.firing.stages[..] } else { &[] };
    let faces: Vec<f64> = block.wall.faces.iter().map(|face| face.kelvin()).collect();
    let sum = block.lining.take_off();
    json!({
        "chamber_temperature_k": block.temperature.kelvin(),
        "hot_area_m2": sum.hot_area.square_meters(),
        "chamber_volume_m3": sum.chamber_volume,
        "lining_volume_m3": sum.lining_volume,
        "work_heat_j": work.map(|work| work.heat),
        "work_power_w": work.map(|work| work.power.watts()),
        "work_fire_net_w": leg.map(|leg| leg.mean_fire().watts()),
        "work_gauge_pressure_pa": fire.map(|fire| fire.gauge.pascals()),
        "work_damper_opening": air.and_then(|air| air.opening),
        "work_air_ratio": air.and_then(crate::plant::SettingAir::air_ratio),
        "melt_time_s": work.and_then(|work| work.melt).map(|melt| melt.time.seconds()),
        "holding_fire_net_w": block.holding.fire.watts(),
        "holding_half_width_w": block.holding_half_width.watts(),
        "holding_walls_w": block.holding.walls.watts(),
        "holding_openings_w": block.holding.openings.watts(),
        "holding_flue_w": block.holding.flue.watts(),
        "available_heat": block.holding.available,
        "holding_thicker_net_w": block.holding_thicker.fire.watts(),
        "largest_reaches_k": block.reaches.map(|balance| balance.chamber.kelvin()),
        "warm_up_s": block.warm_up.map(|leg| leg.time.seconds()),
        "warm_up_fire_j": block.warm_up.map(|leg| leg.fire),
        "warm_up_stored_j": block.warm_up.map(|leg| leg.stored),
        "wall_faces_k": faces,
        "shell_temperature_k": block.wall.shell().kelvin(),
        "steel_temperature_k": block.steel.map(|(at, _)| at.kelvin()),
        "steel_limit_k": block.steel.map(|(_, bears)| bears.kelvin()),
        "draught_pa": block.draught.pascals(),
        "back_through_head_kg_per_s": block.back_through_head.map(|flow| flow.kilograms_per_second()),
        "fire_air_m3_per_s": block.fire_air.cubic_meters_per_second(),
        "monoxide_air_m3_per_s": block.monoxide_air.map(|flow| flow.cubic_meters_per_second()),
        "relights_s": block.relights.seconds(),
        "may_light_s": block.may_light.1.seconds(),
        "air_on_s": block.air_on.seconds(),
        "blow_through_s": sheet.air.as_ref().map(|_| sheet.blow_through.time.seconds()),
        "castable": block.castable.as_ref().map(castable),
        "plan": plan.iter().map(|stage| json!({
            "starts_s": stage.at.map(Duration::seconds),
            "what": stage_words(sheet, stage, &shop),
            "plan_gas_kg": stage.gas.kilograms(),
        })).collect::<Vec<_>>(),
        "layers": entry.layer_names.iter().map(|name| name.as_str()).collect::<Vec<_>>(),
    })
}

fn castable(block: &CastableBlock) -> Value {
    json!({
        "dry_mass_kg": block.mix.dry.kilograms(),
        "bags": block.mix.bags,
        "water_kg": block.mix.water.kilograms(),
        "anchors": block.anchors,
        "sling_pull_n": block.pull.newtons(),
        "drying_s": block.steps.iter().map(|step| step.time.seconds()).sum::<f64>(),
        "drying_heat_j": block.heat,
    })
}

/// The panels added up, and the castable.
#[must_use]
pub fn lining_json(lining: &Lining, entry: &FurnaceEntry, castable: Option<&CastableBlock>) -> Value {
    let sum = lining.take_off();
    json!({
        "hot_area_m2": sum.hot_area.square_meters(),
        "opening_area_m2": sum.opening_area.square_meters(),
        "chamber_volume_m3": sum.chamber_volume,
        "lining_volume_m3": sum.lining_volume,
        "lining_mass_kg": lining.mass(entry.layers[0].material.density()).kilograms(),
        "castable": castable.map(self::castable),
    })
}
