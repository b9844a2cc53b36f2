//! Walls and openings of a case.

use std::format;
use std::prelude::rust_2024::*;

use serde_json::Value;

use super::ROOM;
use super::keyed::{Keyed, Read, number_of, refused};
use crate::furnace::coupled::{BUILD_CAP, Build, Chain, End, Medium, Opening, Place, VENT_CAP, Vent};
use crate::furnace::{Body, LAYER_CAP, MATERIALS, Material, OPENING_CAP, Surroundings};
use crate::quantity::{AbsolutePressure, Area, Length, Temperature};

/// Height of a shell, m, for the film outside.
const SHELL_HEIGHT: f64 = 0.5;
const WALL: &[&str] = &["area", "radius", "length", "emissivity", "outer_h", "layers"];

/// Density, conductivity and specific heat in a list of three.
pub fn plain(part: &Keyed<'_>) -> Read<Medium> {
    let of = |entry: &(String, &Value), least, most| number_of(entry.1, &entry.0, least, most);
    let three = part.list("rho_k_c", 3, 3)?;
    Ok(Medium::Plain(of(&three[0], 1e-2, 1e5)?, of(&three[1], 1e-4, 1e5)?, of(&three[2], 1.0, 1e6)?))
}

fn layer(path: String, value: &Value) -> Read<(Medium, f64)> {
    let layer = Keyed::of(value, path, &["material", "rho_k_c", "thickness"])?;
    let medium = if layer.one_of(&["material", "rho_k_c"])? == "material" {
        let names: Vec<&str> = MATERIALS.iter().map(|data| data.key).collect();
        let accepted = names.join(", ");
        let name = layer.text("material", &accepted)?;
        let unknown = || refused(&layer.at("material"), &format!("{name:?}"), &accepted);
        Medium::lining(&Material::named(name).ok_or_else(unknown)?)
    } else {
        plain(&layer)?
    };
    Ok((medium, layer.number("thickness", 1e-5, 10.0)?))
}

fn build(path: String, value: &Value, pressure: f64) -> Read<Build> {
    let wall = Keyed::of(value, path, WALL)?;
    let mut layers = Vec::new();
    for (path, value) in wall.list("layers", 1, LAYER_CAP)? {
        layers.push(layer(path, value)?);
    }
    let thickness: f64 = layers.iter().map(|layer| layer.1).sum();
    let (body, area, outer) = if wall.one_of(&["area", "radius"])? == "area" {
        let area = wall.number("area", 1e-6, 1e4)?;
        if wall.has("length") {
            return Err(refused(&wall.at("length"), "a length", "no length with an area"));
        }
        (Body::Flat { area: Area::from_square_meters(area) }, area, area)
    } else {
        let (radius, length) = (wall.number("radius", 1e-3, 100.0)?, wall.number("length", 1e-3, 100.0)?);
        let around = 2.0 * core::f64::consts::PI * length;
        let body = Body::Round { inner_radius: Length::from_meters(radius), length: Length::from_meters(length) };
        (body, around * radius, around * (radius + thickness))
    };
    let end = match wall.optional("outer_h", 0.0, 1e6)? {
        Some(film) => End::Film(outer, film, ROOM),
        None => {
            let (air, pressure) = (Temperature::from_kelvin(ROOM), AbsolutePressure::from_pascals(pressure));
            End::Room(outer, Surroundings::shell(air, pressure, Length::from_meters(SHELL_HEIGHT)))
        }
    };
    let emissivity = wall.number("emissivity", 0.01, 1.0)?;
    Ok(Build { chain: Chain::wall(&layers, &body, end), area, emissivity })
}

/// The builds and the sum of their areas, m2.
pub fn builds(case: &Keyed<'_>, pressure: f64) -> Read<(heapless::Vec<Build, BUILD_CAP>, f64)> {
    let mut builds = heapless::Vec::new();
    for (path, value) in case.list("walls", 1, BUILD_CAP)? {
        // The list is no longer than the capacity.
        let _ = builds.push(build(path, value, pressure)?);
    }
    let area = builds.iter().map(|build: &Build| build.area).sum();
    Ok((builds, area))
}

fn place(opening: &Keyed<'_>) -> Read<Place> {
    let height = |key| opening.optional(key, -100.0, 100.0);
    match (height("z1")?, height("z2")?) {
        (None, None) => Ok(Place::Sealed),
        (None, Some(_)) => Err(refused(&opening.at("z2"), "z2 alone", "z1 too")),
        (Some(low), None) => Ok(Place::Lid(low)),
        (Some(low), Some(high)) if low == high => Ok(Place::Lid(low)),
        (Some(low), Some(high)) if low < high => Ok(Place::Upright(low, high)),
        (Some(low), Some(high)) => {
            Err(refused(&opening.at("z2"), &format!("{high}"), &format!("z1, {low}, or more: the upper edge")))
        }
    }
}

/// What a case's openings and leaks are: radiating holes, and ways for air.
type Openings = (heapless::Vec<Opening, OPENING_CAP>, heapless::Vec<Vent, VENT_CAP>);

/// Openings and leaks of a chamber with so much wall, m2.
pub fn openings(case: &Keyed<'_>, walls: f64) -> Read<Openings> {
    let mut made: Openings = (heapless::Vec::new(), heapless::Vec::new());
    let mut open = 0.0;
    let entries = if case.has("openings") { case.list("openings", 0, OPENING_CAP)? } else { Vec::new() };
    for (path, value) in entries {
        let opening = Keyed::of(value, path, &["area", "passage", "z1", "z2"])?;
        let area = opening.number("area", 0.0, 1e4)?;
        open += area;
        if open > walls {
            let accepted = format!("openings no larger together than the walls, {walls:.4} m2");
            return Err(refused(&opening.at("area"), &format!("{open} m2 of openings"), &accepted));
        }
        let (passage, place) = (opening.number("passage", 0.0, 1.0)?, place(&opening)?);
        // As many as the capacity.
        let _ = made.0.push(Opening { area, passage });
        let _ = made.1.push(Vent { area, place });
    }
    let left = VENT_CAP - made.1.len();
    let entries = if case.has("leaks") { case.list("leaks", 0, left)? } else { Vec::new() };
    for (path, value) in entries {
        let leak = Keyed::of(value, path, &["area", "z1"])?;
        let (area, height) = (leak.number("area", 0.0, 1e4)?, leak.number("z1", -100.0, 100.0)?);
        let _ = made.1.push(Vent { area, place: Place::Gap(height) });
    }
    Ok(made)
}
