//! The chamber of an installation: its lining added up, its wall, and what a fire leaves in it.

use heapless::Vec;

use crate::Scalar;
use crate::combustion::Reactants;
use crate::error::Result as CheckedResult;
use crate::furnace::{
    AvailableHeat, Body, Chamber, LAYER_CAP, Layer, Lining, Opening, PANEL_CAP, Panel, Surroundings, Wall,
    box_shape_factor,
};
use crate::limits::Input;
use crate::plant::entries::FurnaceEntry;
use crate::plant::installation::Plant;
use crate::plant::refusal::{Place, Refusal};
use crate::quantity::{Area, Length, Temperature, TemperatureDifference};

/// How far above the chamber its gases leave: common practice for a small furnace, no source.
const FLUE_EXCESS: f64 = 50.0;

/// Share of a fire's net heat that stays in the chamber, by the temperature its gases leave at.
///
/// Beyond the air ratios a flame is worked out for, the nearest of them stands in.
pub fn available(plant: &Plant, air_ratio: f64) -> CheckedResult<impl Fn(Temperature) -> f64 + use<>> {
    let range = Input::FlameAirRatio.range();
    let ratio = air_ratio.clamp(range.min, range.max);
    let reactants = Reactants::new(&plant.gas, &plant.site, ratio, plant.site.air_temperature())?;
    let table = AvailableHeat::new(&reactants)?;
    Ok(move |flue| table.share(flue))
}

/// The panels added up.
pub fn lining(entry: &FurnaceEntry) -> Result<Lining, Refusal> {
    Lining::new(&entry.panels).map_err(Place::section("panel").refusing())
}

/// The chamber of a file.
pub fn chamber(plant: &Plant, entry: &FurnaceEntry, lining: &Lining) -> Result<Chamber, Refusal> {
    let area = lining.take_off().hot_area;
    let round = entry.panels.iter().find_map(|panel| match *panel {
        Panel::Cylinder { diameter, length, .. } | Panel::HalfRound { diameter, length, .. } => {
            Some((diameter, length))
        }
        _ => None,
    });
    let (body, height) = match round {
        Some((diameter, length)) => {
            let around = Length::from_meters(area.square_meters() / (core::f64::consts::PI * diameter.meters()));
            (Body::Round { inner_radius: diameter * 0.5, length: around }, length)
        }
        None => {
            let area = Area::from_square_meters(area.square_meters() + corners(entry));
            (Body::Flat { area }, Length::from_meters(Scalar::sqrt(area.square_meters() / 6.0)))
        }
    };
    let wall = Wall::new(&entry.layers, body).map_err(Place::section("layer").refusing())?;
    let room = Surroundings::shell(plant.site.air_temperature(), plant.site.ambient_pressure(), height);
    let mut openings = Vec::<Opening, PANEL_CAP>::new();
    for panel in &entry.panels {
        if let Panel::Opening { area } = *panel {
            let opening = Opening::new(area, wall.thickness());
            let _ = openings.push(opening.map_err(Place::section("panel").refusing())?);
        }
    }
    Chamber::new(&[(wall, room)], &openings, TemperatureDifference::from_kelvin(FLUE_EXCESS))
        .map_err(Place::section("panel").refusing())
}

/// What the edges and corners of a box add to its hot area, m2.
fn corners(entry: &FurnaceEntry) -> f64 {
    let sides = entry.panels.iter().find_map(|panel| match *panel {
        Panel::Box { width, height, depth, .. } => Some([width, height, depth]),
        _ => None,
    });
    let thickness = Length::from_meters(entry.layers.iter().map(|layer| layer.thickness.meters()).sum());
    let factor = sides.and_then(|sides| box_shape_factor(sides, thickness).ok());
    let (Some([a, b, c]), Some(factor)) = (sides.map(|sides| sides.map(Length::meters)), factor) else { return 0.0 };
    factor * thickness.meters() - 2.0 * (a * b + b * c + c * a)
}

/// The same chamber with its hot layer twice as thick.
pub(crate) fn thicker(chamber: &Chamber) -> CheckedResult<Chamber> {
    let mut hot = chamber.walls()[0].0.layers()[0].clone();
    let most = Length::from_meters(Input::LayerThickness.range().max);
    let doubled = hot.thickness * 2.0;
    hot.thickness = if doubled > most { most } else { doubled };
    with_layer(chamber, 0, hot)
}

/// The same chamber with another layer.
pub(crate) fn with_layer(chamber: &Chamber, index: usize, layer: Layer) -> CheckedResult<Chamber> {
    let (wall, room) = &chamber.walls()[0];
    let mut layers: Vec<Layer, LAYER_CAP> = wall.layers().iter().cloned().collect();
    layers[index] = layer;
    let wall = Wall::new(&layers, wall.body())?;
    Chamber::new(&[(wall, *room)], chamber.openings(), TemperatureDifference::from_kelvin(FLUE_EXCESS))
}
