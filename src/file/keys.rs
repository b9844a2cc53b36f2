//! Every key of a burner file, section by section, in the order a message lists them.

/// Before the first section, and the sections.
pub const ROOT: &[&str] = &[
    "name",
    "note",
    "site",
    "gas",
    "jet",
    "blower",
    "duct",
    "damper",
    "head",
    "chamber",
    "fire",
    "lighting",
    "setting",
    "layer",
    "panel",
    "castable",
    "steel",
    "work",
    "room",
    "cylinder",
    "regulator",
    "line",
    "uncertainty",
];
/// `[site]`
pub const SITE: &[&str] = &["altitude", "station_pressure", "sea_level_pressure", "air_temperature", "humidity"];
/// `[gas]`
pub const GAS: &[&str] = &["kind", "temperature", "price", "currency"];
/// `[jet]`
pub const JET: &[&str] = &[
    "drill",
    "bore",
    "bore_length",
    "edge",
    "chamfer_depth",
    "chamfer_angle",
    "edge_radius",
    "roughness",
    "count",
    "approach_diameter",
    "measured_coefficient",
    "measured_gauge",
    "measured",
];
/// `[blower]`
pub const BLOWER: &[&str] = &["points", "shut_off", "free_delivery", "speed", "now_speed", "density", "efficiency"];
/// A point of the blower's curve.
pub const POINT: &[&str] = &["flow", "pressure", "power"];
/// `[[duct]]`
pub const DUCT: &[&str] = &["diameter", "length", "roughness", "fitting_loss"];
/// `[damper]`
pub const DAMPER: &[&str] = &["kind", "diameter"];
/// `[head]`
pub const HEAD: &[&str] = &[
    "ports",
    "port_diameter",
    "open_fraction",
    "slot_width",
    "slot_length",
    "port_length",
    "count",
    "mixture_temperature",
    "mixing_tube_diameter",
];
/// `[chamber]`
pub const CHAMBER: &[&str] = &["exhaust_area", "exhaust_loss", "temperature"];
/// `[fire]`
pub const FIRE: &[&str] = &["air_ratio"];
/// `[lighting]`
pub const LIGHTING: &[&str] = &["lights_at", "damper", "chamber_volume", "glow_loss"];
/// `[[setting]]`
pub const SETTING: &[&str] =
    &["name", "gauge", "heat", "damper", "air_ratio", "chamber_temperature", "minutes", "purpose"];
/// `[cylinder]`
pub const CYLINDER: &[&str] = &["holds", "diameter", "empty_mass", "count", "left", "temperature"];
/// `[regulator]`
pub const REGULATOR: &[&str] = &["needs", "points"];
/// A point of the regulator's droop.
pub const DROOP_POINT: &[&str] = &["flow", "gauge"];
/// `[line]` from the gauge to the jet.
pub const LINE: &[&str] = &["diameter", "length", "roughness", "fitting_loss", "valve_coefficient", "outside_diameter"];
/// `[[layer]]`, the hot one first.
pub const LAYER: &[&str] = &["material", "thickness", "density", "conductivity", "specific_heat", "limit"];
/// A point of a layer's own material.
pub const LAYER_POINT: &[&str] = &["temperature", "value"];
/// `[[panel]]`
pub const PANEL: &[&str] =
    &["kind", "diameter", "length", "width", "height", "depth", "course", "count", "area", "thickness"];
/// `[castable]`, by its maker's sheet.
pub const CASTABLE: &[&str] = &["dry_density", "bag", "water", "margin", "anchor_spacing"];
/// `[steel]` inside the wall.
pub const STEEL: &[&str] = &["grade", "depth"];
/// `[work]`
pub const WORK: &[&str] =
    &["substance", "mass", "temperature", "minutes", "crucible_mass", "crucible_wall", "crucible_area"];
/// `[room]`
pub const ROOM: &[&str] = &["leak", "monoxide", "limit"];
/// `[uncertainty]`, half widths at k = 2.
pub const UNCERTAINTY: &[&str] = &[
    "bore",
    "edge_rounding",
    "coefficient",
    "gauge_span",
    "gauge_class",
    "gauge_error",
    "gauge_at_weighing",
    "gas_temperature",
    "composition",
    "air_pressure",
    "air_temperature",
    "damper",
    "blower",
    "head",
    "mixture_temperature",
    "walls",
];

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use crate::plant::description::Description;

    #[test]
    fn the_table_of_inputs_has_these_keys() {
        let sections: [(&str, &str, &[&str]); 25] = [
            ("site", "", super::SITE),
            ("gas", "", super::GAS),
            ("jet", "", super::JET),
            ("blower", "", super::BLOWER),
            ("blower", "points", super::POINT),
            ("duct", "", super::DUCT),
            ("damper", "", super::DAMPER),
            ("head", "", super::HEAD),
            ("chamber", "", super::CHAMBER),
            ("fire", "", super::FIRE),
            ("lighting", "", super::LIGHTING),
            ("setting", "", super::SETTING),
            ("cylinder", "", super::CYLINDER),
            ("regulator", "", super::REGULATOR),
            ("regulator", "points", super::DROOP_POINT),
            ("line", "", super::LINE),
            ("layer", "", super::LAYER),
            ("layer", "conductivity", super::LAYER_POINT),
            ("layer", "specific_heat", super::LAYER_POINT),
            ("panel", "", super::PANEL),
            ("castable", "", super::CASTABLE),
            ("steel", "", super::STEEL),
            ("work", "", super::WORK),
            ("room", "", super::ROOM),
            ("uncertainty", "", super::UNCERTAINTY),
        ];
        for (name, list, keys) in sections {
            let table: BTreeSet<_> = Description::list(name, list).unwrap().keys().collect();
            assert_eq!(table, keys.iter().copied().collect(), "{name}.{list}");
        }
    }
}
