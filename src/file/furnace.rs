//! The sections of a burner file about the furnace: what surrounds the fire and what is put into it.

use std::prelude::rust_2024::*;
use std::string::ToString;
use std::vec;

use crate::file::burner_file::{optional, ranged};
use crate::file::document::Section;
use crate::file::error::FileError;
use crate::file::keys::{CASTABLE, LAYER, LAYER_POINT, PANEL, ROOM, STEEL, WORK};
use crate::furnace::room::{MONOXIDE_LIMITS, MonoxideLimit};
use crate::furnace::work::{Charge, Crucible};
use crate::furnace::{
    Castable, LAYER_CAP, LINE_CAP, Layer, MATERIALS, Material, PANEL_CAP, Panel, STEELS, SUBSTANCES, SteelGrade,
    Substance,
};
use crate::limits::Input;
use crate::plant::entries::{FurnaceEntry, NAME_CHARACTERS as NAME, Name, RoomEntry, WorkEntry};
use crate::quantity::{Area, Duration, Length, Mass, Temperature};

/// The furnace; none without a layer.
///
/// # Errors
///
/// [`FileError`] at the first field that is wrong.
pub fn read_furnace(root: &Section<'_>, has_chamber: bool) -> Result<Option<FurnaceEntry>, FileError> {
    let (mut layers, mut layer_names) = (heapless::Vec::new(), heapless::Vec::new());
    for section in root.sections("layer", LAYER_CAP, LAYER)? {
        let (layer, name) = read_layer(&section)?;
        let _ = (layers.push(layer), layer_names.push(name));
        section.finish()?;
    }
    let mut panels = heapless::Vec::new();
    for section in root.sections("panel", PANEL_CAP, PANEL)? {
        let _ = panels.push(read_panel(&section)?);
        section.finish()?;
    }
    let castable = root.section("castable", CASTABLE)?.map(read_castable).transpose()?;
    let steel = root.section("steel", STEEL)?.map(read_steel).transpose()?;
    let work = root.section("work", WORK)?.map(read_work).transpose()?;
    let room = root.section("room", ROOM)?.map(read_room).transpose()?;
    if layers.is_empty() {
        for (key, is_there) in [
            ("panel", !panels.is_empty()),
            ("castable", castable.is_some()),
            ("steel", steel.is_some()),
            ("work", work.is_some()),
            ("room", room.is_some()),
        ] {
            if is_there {
                return Err(root.refuse(key, "it needs the layers of the wall beside it, each begun with [[layer]]"));
            }
        }
        return Ok(None);
    }
    if panels.is_empty() {
        return Err(
            root.refuse("panel", "layers need the panels of the chamber beside them, each begun with [[panel]]")
        );
    }
    if !has_chamber {
        return Err(root.refuse("layer", "layers need a section [chamber] beside them"));
    }
    let (castable, anchor_spacing) = castable.map_or((None, None), |(castable, spacing)| (Some(castable), spacing));
    Ok(Some(FurnaceEntry { layers, layer_names, panels, castable, anchor_spacing, steel, work, room }))
}

fn read_layer(section: &Section<'_>) -> Result<(Layer, Name), FileError> {
    let thickness = section.required("thickness").ranged(Input::LayerThickness)?;
    let unknown = || {
        let known: Vec<&str> = MATERIALS.iter().map(|data| data.key).collect();
        let own = "; or a name of your own with density, conductivity, specific_heat and limit";
        section.refuse("material", "accepted are ".to_string() + &known.join(", ") + own)
    };
    let name: Name = section.required("material").held(NAME).map_err(|_| unknown())?;
    let density = ranged(section, "density", Input::MaterialDensity)?;
    let Some(density) = density else {
        let material = Material::named(&name).ok_or_else(unknown)?;
        return Ok((Layer { material, thickness }, name));
    };
    let conductivity = points(section, "conductivity", Input::Conductivity)?;
    let specific_heat = points(section, "specific_heat", Input::SpecificHeat)?;
    let limit = section.required("limit").ranged(Input::ChamberTemperature)?;
    let material = Material::by_points(density, &conductivity, &specific_heat, limit)
        .map_err(|error| section.refuse("conductivity", error))?;
    Ok((Layer { material, thickness }, name))
}

fn points(section: &Section<'_>, key: &'static str, input: Input) -> Result<Vec<(f64, f64)>, FileError> {
    let mut points: Vec<(f64, f64)> = vec![];
    for point in section.sections(key, LINE_CAP, LAYER_POINT)? {
        let temperature: Temperature = point.required("temperature").ranged(Input::ChamberTemperature)?;
        let value = point.required("value").number(input)?;
        if points.last().is_some_and(|last| last.0 >= temperature.kelvin()) {
            return Err(point.refuse("temperature", "the temperature must rise from point to point"));
        }
        points.push((temperature.kelvin(), value));
        point.finish()?;
    }
    if points.is_empty() {
        return Err(
            section.refuse(key, "accepted are 1 to 8 points, such as [{ temperature = \"400 C\", value = 0.3 }]")
        );
    }
    Ok(points)
}

#[derive(Clone, Copy)]
enum PanelWord {
    Cylinder,
    HalfRound,
    Box,
    Flat,
    Door,
    Courses,
    Opening,
}

const PANEL_WORDS: &[(&str, PanelWord)] = &[
    ("cylinder", PanelWord::Cylinder),
    ("half round", PanelWord::HalfRound),
    ("box", PanelWord::Box),
    ("flat", PanelWord::Flat),
    ("door", PanelWord::Door),
    ("courses", PanelWord::Courses),
    ("opening", PanelWord::Opening),
];

fn read_panel(section: &Section<'_>) -> Result<Panel, FileError> {
    let size = |key: &'static str| section.required(key).ranged::<Length>(Input::PanelSize);
    let area = || section.required("area").ranged::<Area>(Input::WallArea);
    let thickness = || section.required("thickness").ranged::<Length>(Input::LayerThickness);
    Ok(match section.required("kind").choice(PANEL_WORDS)? {
        PanelWord::Cylinder => {
            Panel::Cylinder { diameter: size("diameter")?, length: size("length")?, thickness: thickness()? }
        }
        PanelWord::HalfRound => {
            Panel::HalfRound { diameter: size("diameter")?, length: size("length")?, thickness: thickness()? }
        }
        PanelWord::Box => Panel::Box {
            width: size("width")?,
            height: size("height")?,
            depth: size("depth")?,
            thickness: thickness()?,
        },
        PanelWord::Flat | PanelWord::Door => Panel::Flat { area: area()?, thickness: thickness()? },
        PanelWord::Courses => Panel::Courses {
            width: size("width")?,
            course: size("course")?,
            count: f64::from(section.required("count").count(Input::PortCount)?),
            thickness: thickness()?,
        },
        PanelWord::Opening => Panel::Opening { area: area()? },
    })
}

fn read_castable(section: Section<'_>) -> Result<(Castable, Option<Length>), FileError> {
    let castable = Castable {
        dry_density: section.required("dry_density").ranged(Input::MaterialDensity)?,
        bag: section.required("bag").ranged(Input::WorkMass)?,
        water: section.required("water").share(Input::Fraction)?,
        margin: optional(&section, "margin", |field| field.share(Input::Fraction))?.unwrap_or(0.1),
    };
    let spacing = ranged(&section, "anchor_spacing", Input::PanelSize)?;
    section.finish()?;
    Ok((castable, spacing))
}

fn read_steel(section: Section<'_>) -> Result<(&'static SteelGrade, Length), FileError> {
    let words: Vec<(&str, &'static SteelGrade)> = STEELS.iter().map(|grade| (grade.key, grade)).collect();
    let grade = section.required("grade").choice(&words)?;
    let depth = section.required("depth").ranged(Input::SteelDepth)?;
    section.finish()?;
    Ok((grade, depth))
}

fn read_room(section: Section<'_>) -> Result<RoomEntry, FileError> {
    let words: Vec<(&str, &'static MonoxideLimit)> = MONOXIDE_LIMITS.iter().map(|limit| (limit.key, limit)).collect();
    let leak = section.required("leak").ranged(Input::AirFlow)?;
    let monoxide = section.required("monoxide").share(Input::Fraction)?;
    let limit = section.required("limit").choice(&words)?;
    section.finish()?;
    Ok(RoomEntry { leak, monoxide, limit })
}

fn read_work(section: Section<'_>) -> Result<WorkEntry, FileError> {
    let known: Vec<&str> = SUBSTANCES.iter().map(|data| data.key).collect();
    let unknown = || section.refuse("substance", "accepted are ".to_string() + &known.join(", "));
    let name: Name = section.required("substance").held(NAME).map_err(|_| unknown())?;
    let substance = Substance::named(&name).ok_or_else(unknown)?;
    let mass: Mass = section.required("mass").ranged(Input::WorkMass)?;
    if mass.kilograms() <= 0.0 {
        return Err(section.refuse("mass", "accepted is more than 0 kg"));
    }
    let temperature = section.required("temperature").ranged(Input::WorkTemperature)?;
    let time: Duration = section.required("minutes").ranged(Input::Duration)?;
    if time.seconds() < 60.0 {
        return Err(section.refuse("minutes", "accepted is a minute or more"));
    }
    let crucible_mass: Option<Mass> = ranged(&section, "crucible_mass", Input::WorkMass)?;
    let wall: Option<Length> = ranged(&section, "crucible_wall", Input::LayerThickness)?;
    let area: Option<Area> = ranged(&section, "crucible_area", Input::WallArea)?;
    let crucible = match (crucible_mass, wall, area) {
        (None, None, None) => None,
        (Some(mass), Some(wall), Some(area)) => {
            Substance::named("clay graphite").map(|substance| Crucible { substance, mass, wall, area })
        }
        _ => {
            let accepted = "accepted are crucible_mass, crucible_wall and crucible_area together, or none of them";
            return Err(section.refuse("crucible_mass", accepted));
        }
    };
    section.finish()?;
    Ok(WorkEntry { name, charge: Charge { substance, mass, crucible }, temperature, time })
}
