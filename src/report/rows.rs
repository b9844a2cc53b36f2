//! Answers for programs: SI base units, the unit at the end of each key. `json_keys.md` documents every key.

use std::format;
use std::prelude::rust_2024::*;
use std::string::ToString;

use serde_json::{Map, Value, json};

use crate::combustion::AirNeed;
use crate::orifice::{Edge, JetFlow};
use crate::plant::entries::{AirAim, JetSize};
use crate::plant::sweep::Rung;
use crate::plant::{AirBlock, Setting, SettingSure, Sheet};
use crate::quantity::{GaugePressure, MassFlow};
use crate::report::warnings::{setting_name, warnings_json};

/// Version of the keys; it rises when a key goes or changes its meaning.
pub const KEYS_VERSION: u32 = 1;

/// Puts further keys behind those of an object.
fn extend(object: &mut Map<String, Value>, more: Value) {
    if let Value::Object(more) = more {
        object.extend(more);
    }
}

/// The keys of a jet's flow; gas and heat of `heads` heads.
#[must_use]
pub fn flow_row(
    gauge: GaugePressure,
    jet: &JetFlow,
    heads: f64,
    need: &AirNeed,
    saturation_ratio: f64,
) -> Map<String, Value> {
    let mut row = Map::new();
    let gas = jet.mass_flow * heads;
    extend(
        &mut row,
        json!({
            "gauge_pressure_pa": gauge.pascals(),
            "mass_flow_kg_per_s": gas.kilograms_per_second(),
            "standard_volume_flow_m3_per_s": jet.standard_volume_flow.cubic_meters_per_second() * heads,
            "actual_volume_flow_m3_per_s": jet.actual_volume_flow.cubic_meters_per_second() * heads,
            "heat_gross_w": jet.heat_gross.watts() * heads,
            "heat_net_w": jet.heat_net.watts() * heads,
            "discharge_coefficient": jet.discharge_coefficient,
            "discharge_coefficient_uncertainty": jet.coefficient_uncertainty,
            "choked": jet.choked,
            "mass_flux_kg_per_m2_s": jet.mass_flux,
            "exit_speed_m_per_s": jet.exit_speed.meters_per_second(),
            "thrust_n": jet.thrust.newtons(),
            "reynolds_number": jet.reynolds_number,
            "supply_density_kg_per_m3": jet.supply_density.kilograms_per_cubic_meter(),
            "saturation_ratio": saturation_ratio,
            "air_stoichiometric_kg_per_s": needed(need, gas),
        }),
    );
    row
}

fn needed(need: &AirNeed, gas: MassFlow) -> f64 {
    gas.kilograms_per_second() * need.mass_ratio
}

/// Rows as CSV: the first row's keys, then the values.
///
/// # Errors
///
/// None in practice: the text is written to memory.
pub fn csv_of(rows: &[Map<String, Value>]) -> Result<String, csv::Error> {
    let mut writer = csv::Writer::from_writer(std::vec![]);
    if let Some(first) = rows.first() {
        writer.write_record(first.keys())?;
    }
    for row in rows {
        writer.write_record(row.values().map(|value| match value {
            Value::String(text) => text.clone(),
            Value::Null => String::new(),
            other => other.to_string(),
        }))?;
    }
    let bytes = writer.into_inner().map_err(|error| csv::Error::from(error.into_error()))?;
    Ok(String::from_utf8_lossy(&bytes).into_owned())
}

/// The whole sheet as one object.
#[must_use]
pub fn sheet_json(sheet: &Sheet) -> Value {
    json!({
        "keys_version": KEYS_VERSION,
        "name": sheet.plant.entries.name.as_str(),
        "note": sheet.plant.entries.note.as_deref(),
        "site": site(sheet),
        "gas": gas(sheet),
        "jet": jet(sheet),
        "settings": setting_rows(sheet),
        "budgets": crate::report::certainty::budget_rows(sheet),
        "gauge_table": sheet.rungs.iter().map(|rung| self::rung(rung, sheet)).collect::<Vec<_>>(),
        "evening": evening(sheet),
        "air": sheet.air.as_ref().map(|air| self::air(sheet, air)),
        "furnace": crate::report::furnace_rows::furnace_json(sheet),
        "lighting": crate::report::lighting_rows::lighting_json(sheet),
        "cylinder": crate::report::supply_rows::cylinder_json(sheet),
        "warnings": warnings_json(&sheet.hazards, |hazard| setting_name(sheet, hazard)),
    })
}

/// The settings of a sheet as CSV rows.
#[must_use]
pub fn setting_rows(sheet: &Sheet) -> Vec<Map<String, Value>> {
    let rows = sheet.settings.iter().enumerate().map(|(index, setting)| {
        let mut row = setting_row(sheet, setting, sheet.sure[index].as_ref());
        let lighting = sheet.lighting.as_ref().map(|block| &block.settings[index]);
        extend(&mut row, crate::report::lighting_rows::setting_keys(lighting));
        row
    });
    rows.collect()
}

fn site(sheet: &Sheet) -> Value {
    let site = &sheet.plant.site;
    json!({
        "ambient_pressure_pa": site.ambient_pressure().pascals(),
        "air_temperature_k": site.air_temperature().kelvin(),
        "humidity": site.humidity(),
        "air_density_kg_per_m3": site.air_density().kilograms_per_cubic_meter(),
        "oxygen_fraction": site.oxygen_fraction(),
    })
}

fn gas(sheet: &Sheet) -> Value {
    let values = sheet.plant.gas.mixture().calorific_values(Default::default(), Default::default());
    let composition: Map<String, Value> =
        sheet.plant.gas.mixture().parts().map(|(species, share)| (species.symbol().into(), json!(share))).collect();
    json!({
        "kind": sheet.plant.entries.gas.kind.as_str(),
        "composition": composition,
        "gas_temperature_k": coldest(sheet),
        "heating_value_gross_j_per_kg": values.gross_mass.joules_per_kilogram(),
        "heating_value_net_j_per_kg": values.net_mass.joules_per_kilogram(),
        "relative_density": values.relative_density,
        "wobbe_gross_j_per_m3": values.wobbe_gross,
        "air_stoichiometric_kg_per_kg": sheet.plant.air_need.mass_ratio,
        "price_per_kg": sheet.plant.entries.gas.price.map(|price| price.per_kilogram()),
        "currency": sheet.plant.entries.gas.currency.as_str(),
    })
}

/// The gas before the jet; with several temperatures the coldest.
fn coldest(sheet: &Sheet) -> f64 {
    let temperatures = sheet.settings.iter().map(|setting| setting.gas_temperature.kelvin());
    temperatures.fold(f64::INFINITY, f64::min)
}

fn jet(sheet: &Sheet) -> Value {
    let bore = &sheet.plant.jet.bore;
    json!({
        "name": match &sheet.plant.entries.jet.size { JetSize::Drill(name) => name.as_str(), JetSize::Bore(_) => "bore" },
        "bore_m": bore.diameter().meters(),
        "bore_length_m": bore.length_ratio() * bore.diameter().meters(),
        "edge": match sheet.plant.entries.jet.shape.edge {
            Edge::Sharp => "sharp",
            Edge::Square => "square",
            Edge::Chamfered { .. } => "chamfered",
            Edge::Rounded { .. } => "rounded",
        },
        "jets": sheet.plant.entries.jet.count,
        "heads": sheet.plant.heads,
    })
}

fn setting_row(sheet: &Sheet, setting: &Setting, sure: Option<&SettingSure>) -> Map<String, Value> {
    let mut row = Map::new();
    row.insert("name".into(), json!(setting.entry.name.as_str()));
    row.extend(flow_row(
        setting.gauge,
        &setting.jet,
        sheet.plant.heads,
        &sheet.plant.air_need,
        setting.saturation_ratio,
    ));
    let air = setting.air.as_ref();
    let running = air.and_then(|air| air.running);
    extend(
        &mut row,
        json!({
            "air_ratio": air.and_then(crate::plant::SettingAir::air_ratio),
            "air_ratio_asked": match setting.entry.air { AirAim::AirRatio(ratio) => Some(ratio), AirAim::Damper(_) => None },
            "damper_opening": air.and_then(|air| air.opening),
            "too_much_air": air.map(|air| air.too_much_air),
            "air_kg_per_s": running.map(|running| running.air.kilograms_per_second()),
            "air_flow_m3_per_s": running.map(|running| running.air_flow.cubic_meters_per_second()),
            "blower_pressure_pa": running.map(|running| running.blower_pressure.pascals()),
            "path_loss_pa": running.map(|running| running.path_loss.pascals()),
            "back_pressure_pa": running.map(|running| running.back_pressure.pascals()),
            "head_pressure_pa": running.map(|running| running.head_pressure.pascals()),
            "chamber_pressure_pa": running.map(|running| running.chamber_pressure.pascals()),
            "push_pa": running.map(|running| running.push.pascals()),
            "port_speed_m_per_s": running.map(|running| running.port_speed.meters_per_second()),
            "left_of_peak": running.map(|running| running.left_of_peak),
            "air_shortfall_pa": air.and_then(|air| air.shortfall).map(|shortfall| shortfall.pascals()),
            "cure_bore_m": air.and_then(|air| air.remedies).and_then(|cures| cures.bore).map(|bore| bore.meters()),
            "cure_gauge_pressure_pa": air.and_then(|air| air.remedies).and_then(|cures| cures.gauge).map(|gauge| gauge.pascals()),
            "cure_head_area_ratio": air.and_then(|air| air.remedies).and_then(|cures| cures.head_area),
            "cure_wheel_speed_ratio": air.and_then(|air| air.remedies).and_then(|cures| cures.wheel_speed),
            "carbon_monoxide_dry": setting.monoxide,
            "duration_s": setting.entry.minutes.map(|time| time.seconds()),
            "gas_used_kg": setting.gas_used.map(|mass| mass.kilograms()),
            "cost": setting.cost,
            "cost_per_hour": setting.cost_per_hour,
        }),
    );
    extend(&mut row, crate::report::certainty::setting_keys(setting, sure));
    extend(&mut row, crate::report::supply_rows::supply_keys(sheet, setting));
    for (index, place) in ["drill_below", "drill_above"].iter().enumerate() {
        let wrong = setting.wrong_drills[index].as_ref();
        row.insert((*place).into(), json!(wrong.map(|wrong| wrong.drill.to_string())));
        row.insert(
            format!("{place}_gauge_pressure_pa"),
            json!(wrong.and_then(|wrong| wrong.gauge).map(|gauge| gauge.pascals())),
        );
    }
    row
}

fn rung(rung: &Rung, sheet: &Sheet) -> Value {
    json!({
        "gauge_pressure_pa": rung.gauge.pascals(),
        "mass_flow_kg_per_s": rung.gas.kilograms_per_second(),
        "heat_gross_w": rung.heat_gross.watts(),
        "heat_net_w": rung.heat_net.watts(),
        "air_stoichiometric_kg_per_s": needed(&sheet.plant.air_need, rung.gas),
        "air_ratio_damper_left": rung.air_ratio_damper_left,
        "damper_opening": rung.opening,
        "too_much_air": sheet.air.as_ref().map(|_| rung.too_much_air),
    })
}

fn evening(sheet: &Sheet) -> Value {
    match sheet.evening() {
        Some((time, mass, cost)) => json!({
            "duration_s": time.seconds(),
            "gas_used_kg": mass.kilograms(),
            "cost": cost,
        }),
        None => Value::Null,
    }
}

fn air(sheet: &Sheet, air: &AirBlock) -> Value {
    let duty = air.duty.as_ref();
    let standard = duty.map(|duty| &duty.as_standard_air);
    json!({
        "setting": sheet.judged(air).entry.name.as_str(),
        "air_ratio": air.air_ratio,
        "air_kg_per_s": air.demand.air.kilograms_per_second(),
        "air_flow_m3_per_s": air.demand.air_flow.cubic_meters_per_second(),
        "blower_pressure_needed_pa": air.demand.blower_pressure.pascals(),
        "blower_pressure_surplus_pa": air.surplus.pascals(),
        "air_power_w": duty.map(|duty| duty.air_power.watts()),
        "shaft_power_w": duty.and_then(|duty| duty.shaft_power).map(|power| power.watts()),
        "standard_air_flow_m3_per_s": standard.map(|duty| duty.flow.cubic_meters_per_second()),
        "standard_air_pressure_pa": standard.map(|duty| duty.static_pressure.pascals()),
        "standard_air_shaft_power_w": standard.and_then(|duty| duty.shaft_power).map(|power| power.watts()),
        "largest_gauge_pressure_pa": air.highest_gauge.map(|gauge| gauge.pascals()),
        "largest_heat_gross_w": air.largest_fire.map(|fire| fire.0.watts()),
        "largest_heat_net_w": air.largest_fire.map(|fire| fire.1.watts()),
    })
}
