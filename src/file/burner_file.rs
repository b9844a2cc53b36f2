//! The burner file: one burner described for the shop sheet.

use std::path::Path;
use std::prelude::rust_2024::*;

use heapless::Vec;

use crate::air::{BlowerPoint, DUCT_CAP, POINT_CAP};
use crate::file::document::{self, Document, Field, Section};
use crate::file::error::{FileError, Places};
use crate::file::furnace::read_furnace;
use crate::file::keys::{BLOWER, CHAMBER, DAMPER, DUCT, FIRE, GAS, HEAD, JET, POINT, ROOT, SETTING, SITE, UNCERTAINTY};
use crate::file::lighting::read_lighting;
use crate::file::supply::read_supply;
use crate::file::uncertainty::read_uncertainty;
use crate::limits::{self, Input};
use crate::orifice::{BoreLength, BoreShape};
use crate::plant::entries::{
    AirAim, BORE_ROUGHNESS, BlowerCurve, BlowerEntry, ChamberEntry, DAMPER_WORDS, DUCT_ROUGHNESS, DamperEntry,
    DuctEntry, EdgeWord, Entries, GasAim, GasEntry, HeadEntry, JetEntry, JetSize, MOST_SETTINGS,
    NAME_CHARACTERS as NAME, NOTE_CHARACTERS as NOTE, PortsEntry, SettingEntry, SiteEntry, SitePressure, edge_of,
    shortened, usual_bore_length,
};
use crate::plant::refusal::Refusal;
use crate::prose::refusals::reason_words;
use crate::quantity::{ActualVolumeFlow, Density, Length, PressureDifference, Quantity, RotationalSpeed, Temperature};

/// A commented burner file to start from, which itself reads without an error.
pub const BLANK: &str = include_str!("blank.toml");

/// One burner as its file describes it, and where every field of the file stands.
#[derive(Clone, Debug, PartialEq)]
pub struct BurnerFile {
    /// What it describes, typed and in range.
    pub entries: Entries,
    /// Where every field stands.
    pub places: Places,
}

impl BurnerFile {
    /// The error of a field, such as `gas.kind` or `setting[2].gauge` (counted from 1).
    #[must_use]
    pub fn refuse(&self, field: &str, accepted: impl core::fmt::Display) -> FileError {
        self.places.refuse(field, accepted)
    }
}

/// Reads a burner file.
///
/// # Errors
///
/// [`FileError`] at the first thing that is wrong.
pub fn read(path: &Path) -> Result<BurnerFile, FileError> {
    parse(&document::load(path)?, &path.display().to_string())
}

/// Reads the text of a burner file; `name` is what messages call it.
///
/// # Errors
///
/// [`FileError`] at the first thing that is wrong.
///
/// # Examples
///
/// ```
/// use jetwright::file::burner_file::{BLANK, parse};
/// assert!(!parse(BLANK, "blank").unwrap().entries.settings.is_empty());
/// let error = parse("name = 'bells'\n[site]\naltitude = 1600", "bells.toml").unwrap_err();
/// assert_eq!((error.line, error.field.as_str(), error.given.as_str()), (Some(3), "site.altitude", "1600"));
/// ```
pub fn parse(text: &str, name: &str) -> Result<BurnerFile, FileError> {
    let document = Document::parse(text, name)?;
    let root = document.root(ROOT);
    let title = root.required("name").held(NAME)?;
    let note = optional(&root, "note", |field| field.held(NOTE))?;
    let site = read_site(needed(&root, "site", SITE)?)?;
    let gas = read_gas(needed(&root, "gas", GAS)?, site.air_temperature)?;
    let jet = read_jet(needed(&root, "jet", JET)?, Path::new(name))?;
    let blower = root.section("blower", BLOWER)?.map(read_blower).transpose()?;
    let ducts =
        root.sections("duct", DUCT_CAP, DUCT)?.into_iter().map(read_duct).collect::<Result<Vec<_, DUCT_CAP>, _>>()?;
    let damper = root.section("damper", DAMPER)?.map(read_damper).transpose()?;
    if blower.is_none() && damper.is_some() {
        return Err(root.refuse("damper", "a damper needs a section [blower] beside it"));
    }
    if blower.is_none() && !ducts.is_empty() {
        return Err(root.refuse("duct", "a duct needs a section [blower] beside it"));
    }
    let head = root.section("head", HEAD)?.map(|section| read_head(section, site.air_temperature)).transpose()?;
    let chamber = root.section("chamber", CHAMBER)?.map(read_chamber).transpose()?;
    let air_ratio = root.section("fire", FIRE)?.map(read_fire).transpose()?.unwrap_or(DEFAULT_AIR_RATIO);
    let settings = read_settings(&root, air_ratio, damper.is_some())?;
    let furnace = read_furnace(&root, chamber.is_some())?;
    let uncertainty = root.section("uncertainty", UNCERTAINTY)?.map(read_uncertainty).transpose()?.unwrap_or_default();
    let lighting = read_lighting(&root, blower.is_some() && head.is_some(), damper.is_some(), furnace.is_some())?;
    let supply = read_supply(&root, site.air_temperature)?;
    root.finish()?;
    let places = document.into_places();
    let entries = Entries {
        name: title,
        note,
        site,
        gas,
        jet,
        blower,
        ducts,
        damper,
        head,
        chamber,
        air_ratio,
        settings,
        lighting,
        furnace,
        uncertainty,
        supply,
    };
    Ok(BurnerFile { entries, places })
}

/// Air ratio aimed at unless given: a little more air than needed, common practice, no source.
const DEFAULT_AIR_RATIO: f64 = 1.05;

fn needed<'d>(root: &Section<'d>, key: &'static str, known: &'static [&'static str]) -> Result<Section<'d>, FileError> {
    root.section(key, known)?.ok_or_else(|| root.refuse(key, "this section is needed"))
}

pub(crate) fn optional<'d, T>(
    section: &Section<'d>,
    key: &'static str,
    read: impl FnOnce(&Field<'d>) -> Result<T, FileError>,
) -> Result<Option<T>, FileError> {
    section.optional(key).map(|field| read(&field)).transpose()
}

pub(crate) fn ranged<Q: Quantity>(
    section: &Section<'_>,
    key: &'static str,
    input: Input,
) -> Result<Option<Q>, FileError> {
    optional(section, key, |field| field.ranged(input))
}

fn at(section: &Section<'_>) -> impl Fn(Refusal) -> FileError {
    |refusal| section.refuse(refusal.place.key, reason_words(&refusal.reason))
}

fn read_site(site: Section<'_>) -> Result<SiteEntry, FileError> {
    let altitude = ranged(&site, "altitude", Input::Altitude)?;
    let station = ranged(&site, "station_pressure", Input::StationPressure)?;
    let sea_level = ranged(&site, "sea_level_pressure", Input::SeaLevelPressure)?;
    let pressure = SitePressure::of(altitude, station, sea_level).map_err(at(&site))?;
    let air_temperature = site.required("air_temperature").ranged(Input::AirTemperature)?;
    let humidity = optional(&site, "humidity", |field| field.share(Input::Humidity))?.unwrap_or(0.0);
    site.finish()?;
    Ok(SiteEntry { pressure, air_temperature, humidity })
}

fn read_gas(gas: Section<'_>, air_temperature: Temperature) -> Result<GasEntry, FileError> {
    let kind = gas.required("kind").held(200)?;
    let given: Option<Temperature> = ranged(&gas, "temperature", Input::GasTemperature)?;
    let temperature = given.unwrap_or(air_temperature);
    let price = ranged(&gas, "price", Input::Price)?;
    let currency = optional(&gas, "currency", |field| field.held(8))?.unwrap_or(shortened("$"));
    gas.finish()?;
    Ok(GasEntry { kind, temperature, temperature_is_given: given.is_some(), price, currency })
}

fn read_jet(jet: Section<'_>, file: &Path) -> Result<JetEntry, FileError> {
    let drill = optional(&jet, "drill", |field| field.held(NAME))?;
    let bore: Option<Length> = ranged(&jet, "bore", Input::Bore)?;
    let size = JetSize::of(drill, bore).map_err(at(&jet))?;
    let word = jet.required("edge").choice(EdgeWord::WORDS)?;
    let bore_length = ranged(&jet, "bore_length", Input::BoreLength)?.unwrap_or(usual_bore_length(word));
    let depth = ranged(&jet, "chamfer_depth", Input::ChamferDepth)?;
    let angle = ranged(&jet, "chamfer_angle", Input::ChamferAngle)?;
    let radius = ranged(&jet, "edge_radius", Input::EdgeRadius)?;
    let edge = edge_of(word, depth, angle, radius).map_err(at(&jet))?;
    let roughness = ranged(&jet, "roughness", Input::Roughness)?.unwrap_or(BORE_ROUGHNESS);
    let count = optional(&jet, "count", |field| field.count(Input::JetCount))?.unwrap_or(1);
    let approach_diameter: Option<Length> = ranged(&jet, "approach_diameter", Input::DuctDiameter)?;
    if let (Some(bore), Some(approach)) = (bore, approach_diameter) {
        let ratio = bore.meters() / approach.meters();
        limits::check(Input::ApproachRatio, ratio).map_err(|error| jet.refuse("approach_diameter", error))?;
    }
    let measured_coefficient =
        optional(&jet, "measured_coefficient", |field| field.number(Input::DischargeCoefficient))?;
    let measured_gauge = ranged(&jet, "measured_gauge", Input::GaugePressure)?;
    if measured_gauge.is_some() && measured_coefficient.is_none() {
        return Err(jet.refuse("measured_gauge", "it goes with a measured_coefficient only"));
    }
    let measured = optional(&jet, "measured", |field| crate::file::measured::named(field, file))?;
    if measured.is_some() && measured_coefficient.is_some() {
        return Err(jet.refuse("measured", "a measured coefficient stands here already, accepted is one of the two"));
    }
    jet.finish()?;
    let shape = BoreShape { length: BoreLength::Fixed(bore_length), edge, roughness, approach: approach_diameter };
    Ok(JetEntry { size, shape, count, measured_coefficient, measured_gauge, measured })
}

fn read_blower(blower: Section<'_>) -> Result<BlowerEntry, FileError> {
    let points = read_points(&blower)?;
    let shut_off: Option<PressureDifference> = ranged(&blower, "shut_off", Input::BlowerPressure)?;
    let free_delivery: Option<ActualVolumeFlow> = ranged(&blower, "free_delivery", Input::AirFlow)?;
    let has_power = points.iter().any(|point| point.shaft_power.is_some());
    let curve = match (points.is_empty(), shut_off, free_delivery) {
        (false, None, None) => BlowerCurve::Points(points),
        (true, Some(shut_off), Some(free_delivery)) => {
            let ends = [("shut_off", shut_off.pascals()), ("free_delivery", free_delivery.cubic_meters_per_second())];
            if let Some((key, _)) = ends.into_iter().find(|(_, size)| *size <= 0.0) {
                return Err(blower.refuse(key, "accepted is more than nought: a blower gives both"));
            }
            BlowerCurve::Ends { shut_off, free_delivery }
        }
        (false, ..) => {
            return Err(blower.refuse("points", "points stand alone, without shut_off and free_delivery"));
        }
        (true, None, Some(_)) => return Err(blower.refuse("shut_off", "free_delivery needs shut_off beside it")),
        (true, Some(_), None) => return Err(blower.refuse("free_delivery", "shut_off needs free_delivery beside it")),
        (true, None, None) => {
            return Err(blower.refuse("points", "accepted are points, or shut_off and free_delivery"));
        }
    };
    let speed: Option<RotationalSpeed> = ranged(&blower, "speed", Input::WheelSpeed)?;
    let now_speed: Option<RotationalSpeed> = ranged(&blower, "now_speed", Input::WheelSpeed)?;
    let speed_ratio = match (speed, now_speed) {
        (_, None) => 1.0,
        (None, Some(_)) => return Err(blower.refuse("now_speed", "it needs the speed of the curve beside it")),
        (Some(speed), Some(now)) => limits::check(Input::SpeedRatio, now.turns_per_second() / speed.turns_per_second())
            .map_err(|error| blower.refuse("now_speed", error))?,
    };
    let density =
        ranged(&blower, "density", Input::AirDensity)?.unwrap_or(Density::from_kilograms_per_cubic_meter(1.2));
    let efficiency = optional(&blower, "efficiency", |field| field.share(Input::BlowerEfficiency))?;
    if efficiency.is_some() && has_power {
        return Err(blower.refuse("efficiency", "the points give the power already, accepted is one of the two"));
    }
    blower.finish()?;
    Ok(BlowerEntry { curve, speed, speed_ratio, density, efficiency })
}

fn read_points(blower: &Section<'_>) -> Result<Vec<BlowerPoint, POINT_CAP>, FileError> {
    let mut points: Vec<BlowerPoint, POINT_CAP> = Vec::new();
    for section in blower.sections("points", POINT_CAP, POINT)? {
        let point = BlowerPoint {
            flow: section.required("flow").ranged(Input::AirFlow)?,
            static_pressure: section.required("pressure").ranged(Input::BlowerPressure)?,
            shaft_power: ranged(&section, "power", Input::ShaftPower)?,
        };
        if let Some(last) = points.last() {
            if point.flow <= last.flow {
                return Err(section.refuse("flow", "the flow must rise from point to point"));
            }
            if point.shaft_power.is_some() != last.shaft_power.is_some() {
                return Err(section.refuse("power", "accepted is a power at every point or at none"));
            }
        }
        section.finish()?;
        let _ = points.push(point);
    }
    if points.len() == 1 {
        return Err(blower.refuse("points", "a curve wants 2 to 16 points"));
    }
    Ok(points)
}

fn read_duct(duct: Section<'_>) -> Result<DuctEntry, FileError> {
    let entry = DuctEntry {
        diameter: duct.required("diameter").ranged(Input::DuctDiameter)?,
        length: duct.required("length").ranged(Input::DuctLength)?,
        roughness: ranged(&duct, "roughness", Input::Roughness)?.unwrap_or(DUCT_ROUGHNESS),
        fitting_loss: optional(&duct, "fitting_loss", |field| field.number(Input::FittingLoss))?.unwrap_or(0.0),
    };
    duct.finish()?;
    Ok(entry)
}

fn read_damper(damper: Section<'_>) -> Result<DamperEntry, FileError> {
    let entry = DamperEntry {
        kind: damper.required("kind").choice(DAMPER_WORDS)?,
        diameter: damper.required("diameter").ranged(Input::DuctDiameter)?,
    };
    damper.finish()?;
    Ok(entry)
}

fn read_head(head: Section<'_>, air_temperature: Temperature) -> Result<HeadEntry, FileError> {
    let count = optional(&head, "ports", |field| field.count(Input::PortCount))?;
    let diameter = ranged(&head, "port_diameter", Input::PortDiameter)?;
    let open_fraction = optional(&head, "open_fraction", |field| field.share(Input::OpenFraction))?;
    let width = ranged(&head, "slot_width", Input::PortDiameter)?;
    let length = ranged(&head, "slot_length", Input::SlotLength)?;
    let ports = match (count, diameter, open_fraction, width, length) {
        (Some(count), Some(diameter), Some(open_fraction), None, None) => {
            PortsEntry::Round { count, diameter, open_fraction }
        }
        (None, None, None, Some(width), Some(length)) => PortsEntry::Slot { width, length },
        _ => {
            let key = if width.is_some() || length.is_some() { "slot_width" } else { "ports" };
            let accepted =
                "accepted are ports, port_diameter and open_fraction together, or slot_width and slot_length";
            return Err(head.refuse(key, accepted));
        }
    };
    let entry = HeadEntry {
        ports,
        port_length: head.required("port_length").ranged(Input::PortLength)?,
        count: optional(&head, "count", |field| field.count(Input::HeadCount))?.unwrap_or(1),
        mixture_temperature: ranged(&head, "mixture_temperature", Input::MixtureTemperature)?
            .unwrap_or(air_temperature),
        mixing_tube_diameter: ranged(&head, "mixing_tube_diameter", Input::DuctDiameter)?,
    };
    head.finish()?;
    Ok(entry)
}

fn read_chamber(chamber: Section<'_>) -> Result<ChamberEntry, FileError> {
    let entry = ChamberEntry {
        exhaust_area: chamber.required("exhaust_area").ranged(Input::ExhaustArea)?,
        exhaust_loss: optional(&chamber, "exhaust_loss", |field| field.number(Input::ExhaustLoss))?.unwrap_or(1.5),
        temperature: chamber.required("temperature").ranged(Input::ChamberTemperature)?,
    };
    chamber.finish()?;
    Ok(entry)
}

fn read_fire(fire: Section<'_>) -> Result<f64, FileError> {
    let ratio = optional(&fire, "air_ratio", |field| field.number(Input::AirRatio))?.unwrap_or(DEFAULT_AIR_RATIO);
    fire.finish()?;
    Ok(ratio)
}

fn read_settings(
    root: &Section<'_>,
    air_ratio: f64,
    has_damper: bool,
) -> Result<Vec<SettingEntry, MOST_SETTINGS>, FileError> {
    let mut settings: Vec<SettingEntry, MOST_SETTINGS> = Vec::new();
    for section in root.sections("setting", MOST_SETTINGS, SETTING)? {
        let setting = read_setting(&section, air_ratio, has_damper)?;
        if settings.iter().any(|other| other.name == setting.name) {
            return Err(section.refuse("name", "another setting has this name already"));
        }
        section.finish()?;
        let _ = settings.push(setting);
    }
    if settings.is_empty() {
        return Err(root.refuse("setting", "accepted are 1 to 12 settings, each begun with [[setting]]"));
    }
    Ok(settings)
}

fn read_setting(setting: &Section<'_>, air_ratio: f64, has_damper: bool) -> Result<SettingEntry, FileError> {
    let name = setting.required("name").held(NAME)?;
    let gauge = ranged(setting, "gauge", Input::GaugePressure)?;
    let heat = ranged(setting, "heat", Input::HeatRate)?;
    let gas = match (gauge, heat) {
        (Some(gauge), None) => GasAim::Gauge(gauge),
        (None, Some(heat)) => GasAim::Heat(heat),
        _ => return Err(setting.refuse("gauge", "accepted is a gauge pressure or a heat, one of the two")),
    };
    let damper = optional(setting, "damper", |field| field.share(Input::DamperOpening))?;
    let wanted = optional(setting, "air_ratio", |field| field.number(Input::AirRatio))?;
    let air = match (damper, wanted) {
        (Some(_), Some(_)) => {
            return Err(setting.refuse("damper", "accepted is a damper opening or an air ratio, not both"));
        }
        (Some(_), None) if !has_damper => {
            return Err(setting.refuse("damper", "a damper opening needs a section [damper]"));
        }
        (Some(damper), None) => AirAim::Damper(damper),
        (None, Some(ratio)) => AirAim::AirRatio(ratio),
        (None, None) => AirAim::AirRatio(air_ratio),
    };
    let chamber_temperature = ranged(setting, "chamber_temperature", Input::ChamberTemperature)?;
    let minutes = ranged(setting, "minutes", Input::Duration)?;
    let purpose = optional(setting, "purpose", |field| field.held(NOTE))?;
    Ok(SettingEntry { name, gas, air, chamber_temperature, minutes, purpose })
}
