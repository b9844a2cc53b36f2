//! What the burner and its wall are built of, for programs: what the drawings are drawn to scale from.

use std::prelude::rust_2024::*;
use std::vec;

use crate::air::Blower;
use crate::measure::Dial;
use crate::plant::Sheet;
use crate::plant::entries::{DAMPER_WORDS, DuctEntry, HeadEntry, PortsEntry};
use crate::plant::furnace::FurnaceBlock;
use crate::plant::spreads::dial;
use crate::quantity::{GaugePressure, Length, Unit};
use crate::report::field::columns;
use crate::report::tree::{Member, Node, Page, Row, Section};

/// Points of a curve through one layer of a wall, or of a blower's curve.
const POINTS: usize = 16;

/// The sizes of a sheet, for programs; its gauge's face in the unit that `gauge` names.
pub(crate) fn built(page: &mut Page, sheet: &Sheet, gauge: Option<&'static Unit>) {
    let rows = |found: Vec<Row>, section| Node::rows(section, found);
    let ducts = sheet.plant.entries.ducts.iter().map(|duct| Row::of([duct_fields(duct)])).collect();
    page.push(Node::block(
        &BUILT,
        vec![
            Node::fields([built_fields(&BuiltRow { sheet, gauge })]),
            rows(ducts, &DUCTS),
            rows(blower_points(sheet), &BLOWER_POINTS),
            rows(layers(sheet), &WALL_LAYERS),
            rows(through_wall(sheet), &WALL_POINTS),
        ],
    ));
}

/// The sizes that there are once.
pub(crate) struct BuiltRow<'s> {
    sheet: &'s Sheet,
    gauge: Option<&'static Unit>,
}

impl BuiltRow<'_> {
    fn span(&self) -> Option<f64> {
        let highest = self.sheet.settings.iter().chain(self.sheet.work()).map(|setting| setting.gauge.pascals());
        let highest = GaugePressure::from_pascals(highest.fold(0.0, f64::max));
        match dial(&self.sheet.plant.entries, highest) {
            Dial::Class { span, .. } => Some(span.pascals()),
            Dial::Error(_) => match Dial::usual(highest) {
                Dial::Class { span, .. } => Some(span.pascals()),
                Dial::Error(_) => None,
            },
        }
    }

    fn head(&self) -> Option<&HeadEntry> {
        self.sheet.plant.entries.head.as_ref()
    }

    fn round(&self) -> Option<(u32, Length, f64)> {
        match self.head()?.ports {
            PortsEntry::Round { count, diameter, open_fraction } => Some((count, diameter, open_fraction)),
            PortsEntry::Slot { .. } => None,
        }
    }

    fn slot(&self) -> Option<(Length, Length)> {
        match self.head()?.ports {
            PortsEntry::Slot { width, length } => Some((width, length)),
            PortsEntry::Round { .. } => None,
        }
    }

    fn damper(&self) -> Option<&'static str> {
        let kind = self.sheet.plant.entries.damper?.kind;
        DAMPER_WORDS.iter().find(|(_, one)| *one == kind).map(|(word, _)| *word)
    }
}

fn blower_here(sheet: &Sheet) -> Option<Blower> {
    sheet.plant.burner.as_ref()?.blower.scaled(sheet.plant.site.air_density(), 1.0, 1.0).ok()
}

fn blower_points(sheet: &Sheet) -> Vec<Row> {
    let Some(blower) = blower_here(sheet) else { return vec![] };
    let free = blower.free_delivery();
    let point = |at: usize| {
        let flow = free * (at as f64 / (2 * POINTS) as f64);
        (flow.cubic_meters_per_second(), blower.static_pressure(flow).pascals())
    };
    (0..=2 * POINTS).map(|at| Row::of([blower_point(&point(at))])).collect()
}

fn layers(sheet: &Sheet) -> Vec<Row> {
    let Some(entry) = &sheet.plant.entries.furnace else { return vec![] };
    let named = entry.layers.iter().zip(&entry.layer_names);
    let row = |(layer, name): (&crate::furnace::Layer, &crate::plant::entries::Name)| LayerRow {
        name: name.as_str().into(),
        thickness: layer.thickness.meters(),
        limit: layer.material.limit().kelvin(),
    };
    named.map(|found| Row::of([wall_layer(&row(found))])).collect()
}

fn through_wall(sheet: &Sheet) -> Vec<Row> {
    let (Some(entry), Some(block)) = (&sheet.plant.entries.furnace, &sheet.furnace) else { return vec![] };
    let mut from = 0.0;
    let mut rows = vec![];
    for layer in &entry.layers {
        let thickness = layer.thickness.meters();
        rows.extend((0..POINTS).filter_map(|at| at_depth(block, from + thickness * at as f64 / POINTS as f64)));
        from += thickness;
    }
    rows.push((from, block.wall.shell().kelvin()));
    rows.iter().map(|point| Row::of([wall_point(point)])).collect()
}

fn at_depth(block: &FurnaceBlock, depth: f64) -> Option<(f64, f64)> {
    let wall = &block.chamber.walls().first()?.0;
    let found = wall.temperature_at(&block.wall, Length::from_meters(depth)).ok()?;
    Some((depth, found.kelvin()))
}

/// Sheet: built, for programs.
pub(crate) const BUILT: Section = Section {
    key: "built",
    name: "sheet: built",
    words: "What burner and wall are built of",
    about: "Null or empty where the file does not describe it.",
    is_many: false,
    members: &[
        Member::Columns(BUILT_FIELDS),
        Member::Section(&DUCTS),
        Member::Section(&BLOWER_POINTS),
        Member::Section(&WALL_LAYERS),
        Member::Section(&WALL_POINTS),
    ],
};

columns! {
    /// Sizes that there are once.
    pub(crate) BUILT_FIELDS, built_fields(row: &BuiltRow<'_>);
    /// Unit that the file writes its gauge in; bar where no setting gives a gauge.
    gauge_unit, "gauge unit", Word, Programs => row.gauge.map_or("bar", |unit| unit.symbol);
    /// Full scale of the gauge: that of the file, else of the gauge a shop would have for its highest reading.
    gauge_span_pa, "gauge span", Gauge, Programs => row.span();
    /// Whether the file says it.
    gauge_span_is_given, "gauge span is given", Word, Programs => row.sheet.plant.entries.uncertainty.gauge_span.is_some();
    /// `blast gate` or `butterfly`; null without a damper.
    damper_kind, "damper kind", Word, Programs => row.damper();
    /// Inside diameter of the duct it stands in; null without a damper.
    damper_diameter_m, "damper diameter", Length, Programs => row.sheet.plant.entries.damper.map(|damper| damper.diameter.meters());
    /// Round ports of one head, a whole number; null of a slot, and without a head.
    ports, "ports", Count, Programs => row.round().map(|(count, ..)| count);
    /// Diameter of one; null of a slot, and without a head.
    port_diameter_m, "port diameter", Length, Programs => row.round().map(|(_, diameter, _)| diameter.meters());
    /// Share of the face that is open; null of a slot, and without a head.
    open_fraction, "open fraction", Share, Programs => row.round().map(|(.., open)| open);
    /// Gap of a slot; null without one.
    slot_width_m, "slot width", Length, Programs => row.slot().map(|(width, _)| width.meters());
    /// Its length along the head; null without one.
    slot_length_m, "slot length", Length, Programs => row.slot().map(|(_, length)| length.meters());
    /// Length of ports or slot through the head, where there is one.
    port_length_m, "port length", Length, Programs => row.head().map(|head| head.port_length.meters());
    /// Inside diameter of the mixing tube; null without one.
    mixing_tube_diameter_m, "mixing tube diameter", Length, Programs => row.head().and_then(|head| head.mixing_tube_diameter).map(|diameter| diameter.meters());
    /// Inside diameter of the line between gauge and jet; null without one.
    line_diameter_m, "line diameter", Length, Programs => row.sheet.plant.entries.supply.line.as_ref().map(|line| line.diameter.meters());
    /// How deep the steel stands in the wall, from the hot face; null without steel.
    steel_depth_m, "steel depth", Length, Programs => row.sheet.plant.entries.furnace.as_ref().and_then(|entry| entry.steel).map(|(_, depth)| depth.meters());
    /// Its grade; null without steel.
    steel_grade, "steel grade", Word, Programs => row.sheet.plant.entries.furnace.as_ref().and_then(|entry| entry.steel).map(|(grade, _)| grade.key);
    /// Flow at the blower's highest pressure, in the air of the site; null without blower and head.
    blower_peak_m3_per_s, "blower peak", Flow, Programs => blower_here(row.sheet).map(|blower| blower.peak().0.cubic_meters_per_second());
}

/// Sheet: ducts, for programs.
pub(crate) const DUCTS: Section = Section {
    key: "ducts",
    name: "sheet: ducts",
    words: "Ducts between blower and head, an array",
    about: "",
    is_many: true,
    members: &[Member::Columns(DUCT)],
};

columns! {
    /// A duct.
    pub(crate) DUCT, duct_fields(row: &DuctEntry);
    /// Inside diameter of a duct.
    duct_diameter_m, "diameter", Length, Programs => row.diameter.meters();
    /// Its length.
    duct_length_m, "length", Length, Programs => row.length.meters();
}

/// Sheet: the blower's curve, for programs.
pub(crate) const BLOWER_POINTS: Section = Section {
    key: "blower_curve",
    name: "sheet: blower curve",
    words: "The blower's curve in the air of the site, from no flow to free delivery, an array",
    about: "",
    is_many: true,
    members: &[Member::Columns(BLOWER_POINT)],
};

columns! {
    /// A point of the blower's curve.
    pub(crate) BLOWER_POINT, blower_point(row: &(f64, f64));
    air_flow_m3_per_s, "air flow", Flow, Programs => row.0;
    static_pressure_pa, "static pressure", LowPressure, Programs => row.1;
}

/// A layer of the wall.
pub(crate) struct LayerRow {
    name: String,
    thickness: f64,
    limit: f64,
}

/// Sheet: layers of the wall, for programs.
pub(crate) const WALL_LAYERS: Section = Section {
    key: "wall_layers",
    name: "sheet: wall layers",
    words: "Layers of the wall, the hot one first, an array",
    about: "",
    is_many: true,
    members: &[Member::Columns(WALL_LAYER)],
};

columns! {
    /// A layer of the wall.
    pub(crate) WALL_LAYER, wall_layer(row: &LayerRow);
    material, "material", Word, Programs => row.name.as_str();
    /// Thickness of a layer.
    layer_thickness_m, "thickness", Length, Programs => row.thickness;
    /// Maximum service temperature of its class.
    limit_k, "limit", Temperature, Programs => row.limit;
}

/// Sheet: temperature through the wall, for programs.
pub(crate) const WALL_POINTS: Section = Section {
    key: "wall_curve",
    name: "sheet: wall curve",
    words: "Temperature through the wall that has been steady state, from the hot face out, an array",
    about: "",
    is_many: true,
    members: &[Member::Columns(WALL_POINT)],
};

columns! {
    /// A point within the wall.
    pub(crate) WALL_POINT, wall_point(row: &(f64, f64));
    /// Depth from the hot face.
    wall_depth_m, "depth", Length, Programs => row.0;
    temperature_k, "temperature", Temperature, Programs => row.1;
}
