//! The furnace's block of the sheet: the fire needed first, then the evening around it.

use heapless::Vec;

use crate::burner::AirSetting;
use crate::combustion::autoignition;
use crate::furnace::room::fresh_air;
use crate::furnace::warming::{Leg, RELIGHTS_ABOVE_CELSIUS, Warming};
use crate::furnace::{
    Balance, Chamber, DryingStep, Lining, Mix, Sling, SteadyWall, anchors, draught_flow, draught_pressure, drying,
    drying_heat,
};
use crate::plant::chamber::{self, chamber, lining, thicker};
use crate::plant::entries::FurnaceEntry;
use crate::plant::furnace_spread::holding_half_width;
use crate::plant::installation::Plant;
use crate::plant::refusal::{Place, Reason, Refusal};
use crate::plant::setting::Setting;
use crate::plant::work::{WorkBlock, work_block};
use crate::quantity::{
    ActualVolumeFlow, Duration, Force, GaugePressure, HeatRate, Length, MassFlow, NetHeatRate, Power,
    PressureDifference, Temperature,
};

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
    pub steps: Vec<DryingStep, 8>,
    /// Heat of the water, J.
    pub heat: f64,
    /// How long the smallest fire of the file takes to bring that heat, were nothing else to take any.
    pub least: Duration,
}

/// Works out the furnace of a burner file.
pub(crate) fn furnace(plant: &Plant, settings: &[Setting], largest: usize) -> Result<Option<FurnaceBlock>, Refusal> {
    let (Some(entry), Some(place)) = (&plant.entries.furnace, plant.entries.chamber) else { return Ok(None) };
    let lining = lining(entry)?;
    let chamber = chamber(plant, entry, &lining)?;
    let temperature = place.temperature;
    let (wall, room) = (&chamber.walls()[0].0, chamber.walls()[0].1);
    let steady = wall.steady(temperature, &room).map_err(Place::key("chamber", "temperature").refusing())?;
    if let Some(layer) = steady.too_hot {
        let (limit, face) = (entry.layers[layer].material.limit(), steady.faces[layer]);
        let reason = Reason::LayerTooHot { limit, face, chamber: temperature };
        return Err(Place::entry("layer", layer, "material").because(reason));
    }
    let steel = match entry.steel {
        Some((grade, depth)) => {
            let reason = Reason::OutsideWall { thickness: wall.thickness() };
            let outside = |_| Place::key("steel", "depth").because(reason);
            let at = wall.temperature_at(&steady, depth).map_err(outside)?;
            Some((at, Temperature::from_celsius(grade.limit_celsius)))
        }
        None => None,
    };
    let fire = &settings[largest];
    let ratio =
        fire.air.as_ref().and_then(crate::plant::setting::SettingAir::air_ratio).unwrap_or(plant.entries.air_ratio);
    // What is asked for burns at the file's air ratio; what stands there, at its own.
    let available =
        chamber::available(plant, plant.entries.air_ratio).map_err(Place::key("fire", "air_ratio").refusing())?;
    let available_there = chamber::available(plant, ratio).map_err(Place::key("gas", "kind").refusing())?;
    let nothing = Power::from_watts(0.0);
    let holding =
        chamber.fire_for(temperature, nothing, &available).map_err(Place::key("chamber", "temperature").refusing())?;
    let holding_thicker = thicker(&chamber)
        .and_then(|chamber| chamber.fire_for(temperature, nothing, &available))
        .map_err(Place::section("layer").refusing())?;
    let reaches = chamber.temperature_for(fire.heat_net, nothing, &available_there).ok();
    let mut warming = Warming::cold(&chamber).map_err(Place::section("layer").refusing())?;
    let warm_up = warming.warm_up(fire.heat_net, temperature, &available_there).ok();
    if warm_up.is_none() {
        // The rest of the evening is told for a chamber that has come to its temperature some other way.
        let hour = Duration::from_hours(1.0);
        warming
            .hold(temperature, hour, nothing, &available)
            .map_err(Place::key("chamber", "temperature").refusing())?;
    }
    let work = match &entry.work {
        Some(work) => Some(work_block(plant, work, &lining, &mut warming, temperature, &available)?),
        None => None,
    };
    let still = MassFlow::from_kilograms_per_second(0.0);
    let cool = |celsius: f64, air: MassFlow| {
        let leg = warming.clone().cool_to(Temperature::from_celsius(celsius), air);
        // What is not down after two days is as good as never.
        leg.map_or(Duration::from_hours(48.0), |leg| leg.time)
    };
    let air = fire.air.as_ref().and_then(|air| air.running);
    let lights = autoignition(plant.gas.mixture()).map_err(Place::key("gas", "kind").refusing())?;
    let lights = lights.unwrap_or(Temperature::from_celsius(RELIGHTS_ABOVE_CELSIUS));
    let ambient = plant.site.ambient_pressure();
    let draught = draught_pressure(ambient, chamber.room(), temperature, room.height)
        .map_err(Place::section("panel").refusing())?;
    let back_through_head = plant
        .burner
        .as_ref()
        .and_then(|burner| draught_flow(draught, burner.head.area() * burner.head_count, ambient, temperature).ok());
    let air_of = |fire: &Setting| {
        let ratio =
            fire.air.as_ref().and_then(crate::plant::setting::SettingAir::air_ratio).unwrap_or(plant.entries.air_ratio);
        plant.air_need.mass_ratio * ratio * fire.gas.kilograms_per_second()
    };
    let work_fire = work.as_ref().and_then(WorkBlock::fire);
    let most_air = settings.iter().chain(work_fire).map(air_of).fold(0.0, f64::max);
    let fire_air = MassFlow::from_kilograms_per_second(most_air);
    let monoxide_air = match entry.room {
        Some(room) => {
            let fresh = fresh_air(room.leak * room.monoxide, room.limit.fraction, 0.0);
            Some(fresh.map_err(Place::key("room", "leak").refusing())?)
        }
        None => None,
    };
    Ok(Some(FurnaceBlock {
        temperature,
        steel,
        holding_half_width: holding_half_width(plant, entry, &chamber, temperature, &available)
            .map_err(Place::section("layer").refusing())?,
        holding,
        holding_thicker,
        largest,
        reaches,
        warm_up,
        work,
        draught,
        back_through_head,
        fire_air: fire_air.at(plant.site.air_density()),
        monoxide_air,
        relights: cool(RELIGHTS_ABOVE_CELSIUS, still),
        may_light: (lights, cool(lights.celsius(), still)),
        air_on: cool(HEAD_BEARS, air.map_or(still, |running| running.air)),
        castable: castable(plant, entry, &lining, settings, &available)?,
        wall: steady,
        lining,
        chamber: chamber.clone(),
    }))
}

/// The gauge that gives a fire.
pub fn gauge_for(plant: &Plant, fire: NetHeatRate) -> Option<GaugePressure> {
    plant.gauge_for_heat(&plant.conditions, HeatRate::Net(fire), AirSetting::Ratio(plant.entries.air_ratio)).ok()
}

fn castable(
    plant: &Plant,
    entry: &FurnaceEntry,
    lining: &Lining,
    settings: &[Setting],
    available: &impl Fn(Temperature) -> f64,
) -> Result<Option<CastableBlock>, Refusal> {
    let Some(castable) = entry.castable else { return Ok(None) };
    let mix = castable.mix(lining.take_off().lining_volume).map_err(Place::key("castable", "bag").refusing())?;
    let anchors = match entry.anchor_spacing {
        Some(spacing) => Some(
            anchors(lining.take_off().hot_area, spacing)
                .map_err(Place::key("castable", "anchor_spacing").refusing())?,
        ),
        None => None,
    };
    let meter = Length::from_meters(1.0);
    let pull =
        Sling { leg: meter, spread: meter }.pull(mix.dry).map_err(Place::key("castable", "dry_density").refusing())?;
    let room = plant.site.air_temperature();
    let work = plant.entries.chamber.map_or(room, |chamber| chamber.temperature);
    let steps = drying(entry.layers[0].thickness, room, work).map_err(Place::section("layer").refusing())?;
    let heat = drying_heat(mix.water);
    let lowest = settings.iter().map(|setting| setting.heat_net.watts()).fold(f64::INFINITY, f64::min).max(1.0);
    let kept = lowest * available(Temperature::from_celsius(STEAM));
    let least = Duration::from_seconds(heat / kept);
    Ok(Some(CastableBlock { mix, anchors, pull, steps, heat, least }))
}
