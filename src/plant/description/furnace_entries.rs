//! The furnace of a description, typed and complete.

use heapless::Vec;

use super::choices::PanelWord;
use super::row::Breach;
use super::rules::there;
use super::{CastableGiven, Description, LayerGiven, PanelGiven, WorkGiven};
use crate::furnace::work::{Charge, Crucible};
use crate::furnace::{Castable, LINE_CAP, Layer, Material, Panel, Substance};
use crate::plant::entries::{FurnaceEntry, RoomEntry, WorkEntry, shortened};
use crate::plant::refusal::{Place, Reason, Refusal};
use crate::quantity::{Number, Temperature};

/// What is around the fire and in it; nothing without a layer.
pub(super) fn furnace(description: &Description) -> Result<Option<FurnaceEntry>, Refusal> {
    if description.layer.is_empty() {
        return Ok(None);
    }
    let (mut layers, mut layer_names, mut panels) = (Vec::new(), Vec::new(), Vec::new());
    for (index, given) in description.layer.iter().enumerate() {
        let _ = layers.push(layer(given, index)?);
        let _ = layer_names.push(there(&given.material, "layer", "material")?);
    }
    for given in &description.panel {
        let _ = panels.push(panel(given)?);
    }
    let steel = match &description.steel {
        Some(given) => Some((there(&given.grade, "steel", "grade")?, there(&given.depth, "steel", "depth")?)),
        None => None,
    };
    let room = match &description.room {
        Some(given) => Some(RoomEntry {
            leak: there(&given.leak, "room", "leak")?,
            carbon_monoxide: there(&given.carbon_monoxide, "room", "carbon_monoxide")?.0,
            limit: there(&given.limit, "room", "limit")?,
        }),
        None => None,
    };
    Ok(Some(FurnaceEntry {
        layers,
        layer_names,
        panels,
        castable: description.castable.as_ref().map(castable).transpose()?,
        anchor_spacing: description.castable.as_ref().and_then(|given| given.anchor_spacing),
        steel,
        work: description.work.as_ref().map(work).transpose()?,
        room,
    }))
}

fn layer(given: &LayerGiven, index: usize) -> Result<Layer, Refusal> {
    let thickness = there(&given.thickness, "layer", "thickness")?;
    let name = there(&given.material, "layer", "material")?;
    let place = |key| Place::entry("layer", index, key);
    let Some(density) = given.density else {
        let unknown = place("material").because(Reason::Rule(Breach::NoSuchMaterial));
        return Ok(Layer { material: Material::named(&name).ok_or(unknown)?, thickness });
    };
    let conductivity = line(given.conductivity.iter().map(|point| (point.temperature, point.value)))?;
    let specific_heat = line(given.specific_heat.iter().map(|point| (point.temperature, point.value)))?;
    let limit = there(&given.limit, "layer", "limit")?;
    let material = Material::by_points(density, &conductivity, &specific_heat, limit)
        .map_err(|error| place("conductivity").refused(error))?;
    Ok(Layer { material, thickness })
}

fn line(
    given: impl Iterator<Item = (Option<Temperature>, Option<Number>)>,
) -> Result<Vec<(f64, f64), LINE_CAP>, Refusal> {
    let mut points = Vec::new();
    for (temperature, value) in given {
        let temperature = there(&temperature, "layer", "conductivity.temperature")?.kelvin();
        let _ = points.push((temperature, there(&value, "layer", "conductivity.value")?.0));
    }
    Ok(points)
}

fn panel(given: &PanelGiven) -> Result<Panel, Refusal> {
    let size = |value, key| there(value, "panel", key);
    let area = || there(&given.area, "panel", "area");
    let thickness = || there(&given.thickness, "panel", "thickness");
    Ok(match there(&given.kind, "panel", "kind")? {
        PanelWord::Cylinder => Panel::Cylinder {
            diameter: size(&given.diameter, "diameter")?,
            length: size(&given.length, "length")?,
            thickness: thickness()?,
        },
        PanelWord::HalfRound => Panel::HalfRound {
            diameter: size(&given.diameter, "diameter")?,
            length: size(&given.length, "length")?,
            thickness: thickness()?,
        },
        PanelWord::Box => Panel::Box {
            width: size(&given.width, "width")?,
            height: size(&given.height, "height")?,
            depth: size(&given.depth, "depth")?,
            thickness: thickness()?,
        },
        PanelWord::Flat | PanelWord::Door => Panel::Flat { area: area()?, thickness: thickness()? },
        PanelWord::Courses => Panel::Courses {
            width: size(&given.width, "width")?,
            course: size(&given.course, "course")?,
            count: f64::from(there(&given.count, "panel", "count")?),
            thickness: thickness()?,
        },
        PanelWord::Opening => Panel::Opening { area: area()? },
    })
}

fn castable(given: &CastableGiven) -> Result<Castable, Refusal> {
    Ok(Castable {
        dry_density: there(&given.dry_density, "castable", "dry_density")?,
        bag: there(&given.bag, "castable", "bag")?,
        water: there(&given.water, "castable", "water")?.0,
        margin: there(&given.margin, "castable", "margin")?.0,
    })
}

fn work(given: &WorkGiven) -> Result<WorkEntry, Refusal> {
    let name = there(&given.material, "work", "material")?.0;
    let missing = Place::key("work", "material").because(Reason::Rule(Breach::Needed { example: "steel" }));
    let substance = Substance::named(name).ok_or(missing)?;
    let crucible = match (given.crucible_mass, given.crucible_wall, given.crucible_area) {
        (Some(mass), Some(wall), Some(area)) => {
            Substance::named("clay graphite").map(|substance| Crucible { substance, mass, wall, area })
        }
        _ => None,
    };
    Ok(WorkEntry {
        name: shortened(name),
        charge: Charge { substance, mass: there(&given.mass, "work", "mass")?, crucible },
        temperature: there(&given.temperature, "work", "temperature")?,
        time: there(&given.minutes, "work", "minutes")?,
    })
}
