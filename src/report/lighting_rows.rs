//! Lighting for programs.

use std::prelude::rust_2024::*;

use serde_json::{Value, json};

use crate::burner::{GoesOut, LightingRange, Span};
use crate::plant::evaluation::Sheet;
use crate::plant::lighting::{SettingLighting, lights_key};
use crate::quantity::Duration;

const fn goes_out_key(why: GoesOut) -> &'static str {
    match why {
        GoesOut::TooLean => "too_lean",
        GoesOut::TooRich => "too_rich",
        GoesOut::LetsGo => "lets_go",
        GoesOut::NoFlow => "no_flow",
    }
}

/// The lighting keys of a setting; all null without blower and head.
pub(crate) fn setting_keys(found: Option<&SettingLighting>) -> Value {
    let lighting = found.map(|found| &found.lighting);
    let ports = found.and_then(|found| found.ports.as_ref());
    let flame = ports.and_then(|ports| ports.flame.as_ref());
    let unlit = found.and_then(|found| found.unlit.as_ref());
    let seconds = |time: Option<Duration>| time.map(Duration::seconds);
    json!({
        "lights": lighting.map(|lighting| lights_key(lighting.lights)),
        "goes_out_cold": lighting.and_then(|lighting| lighting.goes_out).map(goes_out_key),
        "air_ratio_cold": lighting.and_then(|lighting| lighting.air_ratio),
        "pull": lighting.and_then(|lighting| lighting.pull),
        "glow_needed_k": lighting.and_then(|lighting| lighting.walls).map(|walls| walls.kelvin()),
        "unlit_gas_share": unlit.map(|unlit| unlit.gas_share),
        "unlit_burnable_s": seconds(unlit.and_then(|unlit| unlit.burnable_after)),
        "unlit_burnable_without_air_s": seconds(unlit.and_then(|unlit| unlit.burnable_without_air)),
        "air_changes": unlit.map(|unlit| unlit.changes),
        "air_changes_s": seconds(unlit.and_then(|unlit| unlit.blow_through)),
        "port_reynolds_number": ports.map(|ports| ports.reynolds_number),
        "port_heat_net_w": ports.map(|ports| ports.heat.watts()),
        "port_gradient_per_s": ports.map(|ports| ports.gradient),
        "head_pressure_cold_pa": ports.map(|ports| ports.pressure_cold.pascals()),
        "flash_back_gradient_per_s": flame.map(|flame| flame.flash_back),
        "blow_off_gradient_per_s": flame.map(|flame| flame.blow_off),
        "blow_off_in_air_gradient_per_s": flame.map(|flame| flame.blow_off_in_air),
        "quenching_distance_m": flame.filter(|flame| flame.flash_back > 0.0).map(|flame| flame.quenching_distance.meters()),
    })
}

fn low(span: Option<Span>) -> Option<f64> {
    span.filter(|span| span.low_ends).map(|span| span.low.pascals())
}

fn high(span: Option<Span>) -> Option<f64> {
    span.filter(|span| span.high_ends).map(|span| span.high.pascals())
}

fn range(range: &LightingRange) -> Value {
    json!({
        "within_limits_low_pa": low(range.within_limits),
        "within_limits_high_pa": high(range.within_limits),
        "cold_low_pa": low(range.cold),
        "cold_high_pa": high(range.cold),
        "glowing_low_pa": low(range.glowing),
        "glowing_high_pa": high(range.glowing),
    })
}

/// The lighting block; null without blower and head.
#[must_use]
pub fn lighting_json(sheet: &Sheet) -> Value {
    let Some(block) = &sheet.lighting else { return Value::Null };
    json!({
        "damper_left": sheet.plant.entries.damper.map(|_| block.left),
        "head_constant": block.known.head_constant,
        "lighting_volume_m3": block.known.chamber.volume.map(|volume| volume.cubic_meters()),
        "glow_loss_w": block.known.chamber.loss.map(|loss| loss.watts()),
        "damper_left_range": range(&block.range),
        "air_turned_down_range": range(&block.turned),
        "runs_back_below_pa": block.runs_back_below.map(|gauge| gauge.pascals()),
        "runs_back_known": block.runs_back_known,
        "lowest_heat_net_w": block.fires.map(|fires| fires[0].2.watts()),
        "highest_heat_net_w": block.fires.map(|fires| fires[1].2.watts()),
        "picture": block.drawn.iter().map(|(gauge, lighting)| json!({
            "gauge_pressure_pa": gauge.pascals(),
            "air_ratio_cold": lighting.air_ratio,
            "lights": lights_key(lighting.lights),
            "goes_out_cold": lighting.goes_out.map(goes_out_key),
            "glow_needed_k": lighting.walls.map(|walls| walls.kelvin()),
        })).collect::<Vec<_>>(),
        "heads_tried": block.heads.iter().map(|head| json!({
            "holes": head.what,
            "air_ratio": head.air_ratio,
            "head_pressure_pa": head.ports.pressure.pascals(),
            "port_speed_m_per_s": head.ports.speed.meters_per_second(),
            "port_gradient_per_s": head.ports.gradient,
        })).collect::<Vec<_>>(),
    })
}
