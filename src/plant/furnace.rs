//! The furnace's block of the sheet: the fire needed first, then the evening around it.

use std::format;
use std::prelude::rust_2024::*;
use std::vec;

use crate::burner::AirSetting;
use crate::combustion::{AirNeed, Reactants, autoignition};
use crate::error::{Error, Result as CheckedResult};
use crate::file::burner_file::BurnerFile;
use crate::file::error::FileError;
use crate::furnace::room::fresh_air;
use crate::furnace::warming::{Leg, RELIGHTS_ABOVE_CELSIUS, Warming};
use crate::furnace::{
    AvailableHeat, Balance, Body, Chamber, DryingStep, Layer, Lining, Mix, Opening, Panel, Sling, SteadyWall,
    Surroundings, Wall, anchors, box_shape_factor, draught_flow, draught_pressure, drying, drying_heat,
};
use crate::limits::Input;
use crate::plant::entries::FurnaceEntry;
use crate::plant::evaluation::Setting;
use crate::plant::firing::furnace_advice;
use crate::plant::furnace_spread::holding_half_width;
use crate::plant::installation::Assembled;
use crate::plant::work::{WorkBlock, work_block};
use crate::quantity::{
    ActualVolumeFlow, Area, Duration, Force, GaugePressure, HeatRate, Length, MassFlow, NetHeatRate, Power,
    PressureDifference, Temperature, TemperatureDifference,
};

/// How far above the chamber its gases leave: common practice for a small furnace, no source.
const FLUE_EXCESS: f64 = 50.0;
/// Down to this the steel of a head does not scale, Celsius (from memory).
const HEAD_BEARS: f64 = 540.0;
/// Heat a fresh lining's water is driven off at, Celsius.
const STEAM: f64 = 110.0;

/// Everything the sheet says of a furnace.
pub struct FurnaceBlock {
    /// Temperature it works at.
    pub temperature: Temperature,
    /// The chamber.
    pub chamber: Chamber,
    /// Its lining.
    pub lining: Lining,
    /// Its wall when it has been hot for long.
    pub wall: SteadyWall,
    /// Temperature of steel in the wall, and what it bears.
    pub steel: Option<(Temperature, Temperature)>,
    /// The fire that holds it empty when it has been hot for long.
    pub holding: Balance,
    /// The same with the hot layer twice as thick.
    pub holding_thicker: Balance,
    /// The largest fire of the file, and the temperature it keeps.
    pub largest: usize,
    /// Half width (k = 2) of the fire that holds it, for what linings of the same name conduct.
    pub holding_half_width: NetHeatRate,
    /// The balance at that fire.
    pub reaches: Option<Balance>,
    /// From cold to the work's temperature with the largest fire; none when it does not get there.
    pub warm_up: Option<Leg>,
    /// The work.
    pub work: Option<WorkBlock>,
    /// Draught of the hot chamber over its height.
    pub draught: PressureDifference,
    /// How long the chamber relights gas by itself after a stop.
    pub relights: Duration,
    /// How long its walls may light gas: until the autoignition temperature.
    pub may_light: (Temperature, Duration),
    /// How long air must run after the gas is off.
    pub air_on: Duration,
    /// What that draught drives back through a stopped head; none without one.
    pub back_through_head: Option<MassFlow>,
    /// Air that the largest fire takes from the room, a setting's or the work's.
    pub fire_air: ActualVolumeFlow,
    /// Fresh air that keeps carbon monoxide at its limit; none unless a leak is stated.
    pub monoxide_air: Option<ActualVolumeFlow>,
    /// The castable.
    pub castable: Option<CastableBlock>,
}

/// A cast lining: what to buy, lift and dry.
pub struct CastableBlock {
    /// Bags and water.
    pub mix: Mix,
    /// Anchors.
    pub anchors: Option<u32>,
    /// Pull in each of two sling legs as long as their spread, for the whole lining.
    pub pull: Force,
    /// Steps of drying out.
    pub steps: Vec<DryingStep>,
    /// Heat of the water, J.
    pub heat: f64,
    /// How long the smallest fire of the file takes to bring that heat, were nothing else to take any.
    pub least: Duration,
}

/// Works out the furnace of a burner file.
pub(crate) fn furnace(
    file: &BurnerFile,
    rig: &Assembled,
    need: &AirNeed,
    settings: &[Setting],
    largest: usize,
) -> Result<Option<FurnaceBlock>, FileError> {
    let (Some(entry), Some(place)) = (&file.entries.furnace, file.entries.chamber) else { return Ok(None) };
    let lining = lining(file, entry)?;
    let chamber = chamber(file, rig, entry, &lining)?;
    let temperature = place.temperature;
    let refuse = |field: &'static str| move |error: Error| file.refuse(field, furnace_advice(&error));
    let (wall, room) = (&chamber.walls()[0].0, chamber.walls()[0].1);
    let steady = wall.steady(temperature, &room).map_err(refuse("chamber.temperature"))?;
    if let Some(layer) = steady.too_hot {
        let (bears, is) = (entry.layers[layer].material.limit(), steady.faces[layer]);
        let text = format!(
            "this layer bears {:.0} C and would be {:.0} C hot at a chamber temperature of {:.0} C",
            bears.celsius(),
            is.celsius(),
            temperature.celsius()
        );
        return Err(file.refuse(&format!("layer[{}].material", layer + 1), text));
    }
    let steel = match entry.steel {
        Some((grade, depth)) => {
            let thick = wall.thickness().millimeters();
            let outside = |_| file.refuse("steel.depth", format!("accepted is up to the {thick:.0} mm of the wall"));
            let at = wall.temperature_at(&steady, depth).map_err(outside)?;
            Some((at, Temperature::from_celsius(grade.limit_celsius)))
        }
        None => None,
    };
    let fire = &settings[largest];
    let ratio =
        fire.air.as_ref().and_then(crate::plant::evaluation::SettingAir::air_ratio).unwrap_or(file.entries.air_ratio);
    // What is asked for burns at the file's air ratio; what stands there, at its own.
    let available = available(rig, file.entries.air_ratio).map_err(refuse("fire.air_ratio"))?;
    let available_there = self::available(rig, ratio).map_err(refuse("gas.kind"))?;
    let nothing = Power::from_watts(0.0);
    let holding = chamber.fire_for(temperature, nothing, &available).map_err(refuse("chamber.temperature"))?;
    let holding_thicker = thicker(&chamber)
        .and_then(|chamber| chamber.fire_for(temperature, nothing, &available))
        .map_err(refuse("layer"))?;
    let reaches = chamber.temperature_for(fire.heat_net, nothing, &available_there).ok();
    let mut warming = Warming::cold(&chamber).map_err(refuse("layer"))?;
    let warm_up = warming.warm_up(fire.heat_net, temperature, &available_there).ok();
    if warm_up.is_none() {
        // The rest of the evening is told for a chamber that has come to its temperature some other way.
        let hour = Duration::from_hours(1.0);
        warming.hold(temperature, hour, nothing, &available).map_err(refuse("chamber.temperature"))?;
    }
    let work = match &entry.work {
        Some(work) => Some(work_block(file, rig, work, &lining, &mut warming, temperature, &available)?),
        None => None,
    };
    let still = MassFlow::from_kilograms_per_second(0.0);
    let cool = |celsius: f64, air: MassFlow| {
        let leg = warming.clone().cool_to(Temperature::from_celsius(celsius), air);
        // What is not down after two days is as good as never.
        leg.map_or(Duration::from_hours(48.0), |leg| leg.time)
    };
    let air = fire.air.as_ref().and_then(|air| air.running);
    let lights = autoignition(rig.gas.mixture()).map_err(refuse("gas.kind"))?;
    let lights = lights.unwrap_or(Temperature::from_celsius(RELIGHTS_ABOVE_CELSIUS));
    let ambient = rig.site.ambient_pressure();
    let draught = draught_pressure(ambient, chamber.room(), temperature, room.height).map_err(refuse("panel"))?;
    let back_through_head = rig
        .burner
        .as_ref()
        .and_then(|burner| draught_flow(draught, burner.head.area() * burner.head_count, ambient, temperature).ok());
    let air_of = |fire: &Setting| {
        let ratio = fire
            .air
            .as_ref()
            .and_then(crate::plant::evaluation::SettingAir::air_ratio)
            .unwrap_or(file.entries.air_ratio);
        need.mass_ratio * ratio * fire.gas.kilograms_per_second()
    };
    let work_fire = work.as_ref().and_then(WorkBlock::fire);
    let most_air = settings.iter().chain(work_fire).map(air_of).fold(0.0, f64::max);
    let fire_air = MassFlow::from_kilograms_per_second(most_air);
    let monoxide_air = match entry.room {
        Some(room) => {
            let fresh = fresh_air(room.leak * room.monoxide, room.limit.fraction, 0.0);
            Some(fresh.map_err(refuse("room.leak"))?)
        }
        None => None,
    };
    Ok(Some(FurnaceBlock {
        temperature,
        steel,
        holding_half_width: holding_half_width(file, entry, &chamber, temperature, &available)
            .map_err(refuse("layer"))?,
        holding,
        holding_thicker,
        largest,
        reaches,
        warm_up,
        work,
        draught,
        back_through_head,
        fire_air: fire_air.at(rig.site.air_density()),
        monoxide_air,
        relights: cool(RELIGHTS_ABOVE_CELSIUS, still),
        may_light: (lights, cool(lights.celsius(), still)),
        air_on: cool(HEAD_BEARS, air.map_or(still, |running| running.air)),
        castable: castable(file, rig, entry, &lining, settings, &available)?,
        wall: steady,
        lining,
        chamber: chamber.clone(),
    }))
}

/// Share of a fire's net heat that stays in the chamber, by the temperature its gases leave at.
///
/// Beyond the air ratios a flame is worked out for, the nearest of them stands in.
pub fn available(rig: &Assembled, air_ratio: f64) -> CheckedResult<impl Fn(Temperature) -> f64 + use<>> {
    let range = Input::FlameAirRatio.range();
    let ratio = air_ratio.clamp(range.min, range.max);
    let reactants = Reactants::new(&rig.gas, &rig.site, ratio, rig.site.air_temperature())?;
    let table = AvailableHeat::new(&reactants)?;
    Ok(move |flue| table.share(flue))
}

/// The panels added up.
pub fn lining(file: &BurnerFile, entry: &FurnaceEntry) -> Result<Lining, FileError> {
    Lining::new(&entry.panels).map_err(|error| file.refuse("panel", furnace_advice(&error)))
}

/// The chamber of a file.
pub fn chamber(
    file: &BurnerFile,
    rig: &Assembled,
    entry: &FurnaceEntry,
    lining: &Lining,
) -> Result<Chamber, FileError> {
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
            (Body::Flat { area }, Length::from_meters((area.square_meters() / 6.0).sqrt()))
        }
    };
    let wall = Wall::new(&entry.layers, body).map_err(|error| file.refuse("layer", error))?;
    let room = Surroundings::shell(rig.site.air_temperature(), rig.site.ambient_pressure(), height);
    let mut openings = vec![];
    for panel in &entry.panels {
        if let Panel::Opening { area } = *panel {
            openings.push(Opening::new(area, wall.thickness()).map_err(|error| file.refuse("panel", error))?);
        }
    }
    Chamber::new(&[(wall, room)], &openings, TemperatureDifference::from_kelvin(FLUE_EXCESS))
        .map_err(|error| file.refuse("panel", furnace_advice(&error)))
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
fn thicker(chamber: &Chamber) -> CheckedResult<Chamber> {
    let mut hot = chamber.walls()[0].0.layers()[0].clone();
    let most = Length::from_meters(Input::LayerThickness.range().max);
    let doubled = hot.thickness * 2.0;
    hot.thickness = if doubled > most { most } else { doubled };
    with_layer(chamber, 0, hot)
}

/// The same chamber with another layer.
pub(crate) fn with_layer(chamber: &Chamber, index: usize, layer: Layer) -> CheckedResult<Chamber> {
    let (wall, room) = &chamber.walls()[0];
    let mut layers: Vec<Layer> = wall.layers().to_vec();
    layers[index] = layer;
    let wall = Wall::new(&layers, wall.body())?;
    Chamber::new(&[(wall, *room)], chamber.openings(), TemperatureDifference::from_kelvin(FLUE_EXCESS))
}

/// The gauge that gives a fire.
pub fn gauge_for(file: &BurnerFile, rig: &Assembled, fire: NetHeatRate) -> Option<GaugePressure> {
    rig.gauge_for_heat(&rig.conditions, HeatRate::Net(fire), AirSetting::Ratio(file.entries.air_ratio)).ok()
}

fn castable(
    file: &BurnerFile,
    rig: &Assembled,
    entry: &FurnaceEntry,
    lining: &Lining,
    settings: &[Setting],
    available: &impl Fn(Temperature) -> f64,
) -> Result<Option<CastableBlock>, FileError> {
    let Some(castable) = entry.castable else { return Ok(None) };
    let refuse = |field: &'static str| move |error: Error| file.refuse(field, error);
    let mix = castable.mix(lining.take_off().lining_volume).map_err(refuse("castable.bag"))?;
    let anchors = match entry.anchor_spacing {
        Some(spacing) => Some(anchors(lining.take_off().hot_area, spacing).map_err(refuse("castable.anchor_spacing"))?),
        None => None,
    };
    let meter = Length::from_meters(1.0);
    let pull = Sling { leg: meter, spread: meter }.pull(mix.dry).map_err(refuse("castable.dry_density"))?;
    let room = rig.site.air_temperature();
    let work = file.entries.chamber.map_or(room, |chamber| chamber.temperature);
    let steps = drying(entry.layers[0].thickness, room, work).map_err(refuse("layer"))?;
    let heat = drying_heat(mix.water);
    let lowest = settings.iter().map(|setting| setting.heat_net.watts()).fold(f64::INFINITY, f64::min).max(1.0);
    let kept = lowest * available(Temperature::from_celsius(STEAM));
    let least = Duration::from_seconds(heat / kept);
    Ok(Some(CastableBlock { mix, anchors, pull, steps: steps.to_vec(), heat, least }))
}
