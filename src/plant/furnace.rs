//! The furnace's block of the sheet: the fire needed first, then the firing around it.

use heapless::Vec;

use crate::burner::AirSetting;
use crate::combustion::autoignition;
use crate::furnace::coupled::{Settled, Stream};
use crate::furnace::room::fresh_air;
use crate::furnace::{
    Chamber, DryingStep, Lining, Mix, Sling, SteadyWall, anchors, draft_flow, draft_pressure, drying, drying_heat,
};
use crate::plant::answer::Number;
use crate::plant::certainty::sure_settings;
use crate::plant::chamber::{self, chamber, lining, thicker};
use crate::plant::coupled_furnace::{self, content, stream, unsure};
use crate::plant::course::{Course, Model, keeps};
use crate::plant::entries::{FurnaceEntry, MOST_SETTINGS};
use crate::plant::evaluation::Sheet;
use crate::plant::installation::Plant;
use crate::plant::refusal::{Place, Reason, Refusal};
use crate::plant::setting::Setting;
use crate::plant::spreads::least_read;
use crate::plant::work::{WorkBlock, check_work, work_block};
use crate::quantity::{
    ActualVolumeFlow, Duration, Force, GaugePressure, HeatRate, Length, MassFlow, NetHeatRate, PressureDifference,
    Temperature,
};

/// How much coarser a wall and a step are that only tell by what share an answer moves.
const ROUGH: f64 = 3.0;
/// Heat a fresh lining's water is driven off at, Celsius.
const STEAM: f64 = 110.0;
/// Where a gas whose autoignition is not known counts as lit by a wall, K.
const LIGHTS: f64 = crate::furnace::coupled::LIGHTS_ABOVE;

/// Everything the sheet says of a furnace.
pub struct FurnaceBlock {
    /// Temperature it works at.
    pub temperature: Temperature,
    /// The chamber.
    pub chamber: Chamber,
    /// Its lining.
    pub lining: Lining,
    /// Its wall when it has been steady state.
    pub wall: SteadyWall,
    /// Temperature of steel in the wall, and its limit.
    pub steel: Option<(Temperature, Temperature)>,
    /// The furnace from cold to its last glow.
    pub course: Course,
    /// The gauge that keeps it, straight after warming up and at steady state, at the file's air ratio.
    pub keep_gauges: [KeepGauge; 2],
    /// The fire that keeps it at steady state with the hot layer twice as thick, W net; none where that is no wall.
    pub kept_thicker: Option<f64>,
    /// The setting with the most gas.
    pub largest: usize,
    /// Where each setting ends when left on; none without fire.
    pub ends: Vec<Option<Settled>, MOST_SETTINGS>,
    /// The work.
    pub work: Option<WorkBlock>,
    /// Where the gas lights by itself.
    pub lights: Temperature,
    /// Draft of the hot chamber over its height.
    pub draft: PressureDifference,
    /// What that draft drives back through a stopped head; none without one.
    pub back_through_head: Option<MassFlow>,
    /// Air that the largest fire takes from the room, a setting's or the work's.
    pub fire_air: ActualVolumeFlow,
    /// Fresh air that keeps carbon monoxide at its limit; none unless a leak is stated.
    pub carbon_monoxide_air: Option<ActualVolumeFlow>,
    /// The castable.
    pub castable: Option<CastableBlock>,
}

/// The gauge that keeps a temperature.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct KeepGauge {
    /// The gauge, Pa; none when no reading in range gives the fire.
    pub gauge: Option<Number>,
    /// Whether it is too low to be read: this jet is too large to keep it.
    pub is_too_low: bool,
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
    if let Some(work) = &entry.work {
        check_work(plant, work, &lining, temperature)?;
    }
    // What is asked for burns at the file's air ratio; what stands there, at its own.
    let available =
        chamber::available(plant, plant.entries.air_ratio).map_err(Place::key("fire", "air_ratio").refusing())?;
    let lights = autoignition(plant.gas.mixture()).map_err(Place::key("gas", "kind").refusing())?;
    let lights = lights.unwrap_or(Temperature::from_kelvin(LIGHTS));
    let [model, rough] =
        models(plant, entry, settings, largest, (&chamber, &lining), (temperature, lights, room.height))?;
    let course = model.course(&rough).map_err(Place::key("chamber", "temperature").refusing())?;
    let lowest_read = least_read(&plant.entries, settings);
    let keep_gauges = [course.kept, course.kept_long].map(|fire| keep_gauge(plant, fire, lowest_read));
    let kept_thicker = thicker(&chamber)
        .and_then(|chamber| coupled_furnace::furnace(plant, &chamber, &lining, plant.entries.air_ratio))
        .and_then(|furnace| keeps(&furnace, temperature.kelvin(), 1.0));
    let mut ends = Vec::new();
    for setting in settings {
        let found = stream(plant, ratio_of(plant, setting))
            .and_then(|stream| model.ends_with(stream, setting.heat_net.watts()));
        let _ = ends.push(found.ok());
    }
    let work = match &entry.work {
        Some(work) => Some(work_block(plant, work, course.charge)?),
        None => None,
    };
    let ambient = plant.site.ambient_pressure();
    let draft = draft_pressure(ambient, chamber.room(), temperature, room.height)
        .map_err(Place::section("panel").refusing())?;
    let back_through_head = plant
        .burner
        .as_ref()
        .and_then(|burner| draft_flow(draft, burner.head.area() * burner.head_count, ambient, temperature).ok());
    let air_of = |fire: &Setting| plant.air_need.mass_ratio * ratio_of(plant, fire) * fire.gas.kilograms_per_second();
    let work_fire = work.as_ref().and_then(WorkBlock::fire);
    let most_air = settings.iter().chain(work_fire).map(air_of).fold(0.0, f64::max);
    let fire_air = MassFlow::from_kilograms_per_second(most_air);
    let carbon_monoxide_air = match entry.room {
        Some(room) => {
            let fresh = fresh_air(room.leak * room.carbon_monoxide, room.limit.fraction, 0.0);
            Some(fresh.map_err(Place::key("room", "leak").refusing())?)
        }
        None => None,
    };
    Ok(Some(FurnaceBlock {
        temperature,
        steel,
        course,
        keep_gauges,
        kept_thicker: kept_thicker.ok().map(|settled| settled.fire),
        largest,
        ends,
        work,
        lights,
        draft,
        back_through_head,
        fire_air: fire_air.at(plant.site.air_density()),
        carbon_monoxide_air,
        castable: castable(plant, entry, &lining, settings, &available)?,
        wall: steady,
        lining,
        chamber: chamber.clone(),
    }))
}

/// The coupled furnaces that a sheet's block was found with.
pub(crate) fn models_of(sheet: &Sheet, block: &FurnaceBlock) -> Result<[Model; 2], Refusal> {
    let missing = Place::section("layer").because(Reason::Needed);
    let entry = sheet.plant.entries.furnace.as_ref().ok_or(missing)?;
    let height = block.chamber.walls()[0].1.height;
    let with = (block.temperature, block.lights, height);
    models(&sheet.plant, entry, &sheet.settings, block.largest, (&block.chamber, &block.lining), with)
}

/// Air supplied over air needed of a setting, or the file's.
fn ratio_of(plant: &Plant, fire: &Setting) -> f64 {
    fire.air.as_ref().and_then(crate::plant::setting::SettingAir::air_ratio).unwrap_or(plant.entries.air_ratio)
}

/// The coupled furnace with the largest setting and the work, as it is and coarser.
fn models(
    plant: &Plant,
    entry: &FurnaceEntry,
    settings: &[Setting],
    largest: usize,
    (chamber, lining): (&Chamber, &Lining),
    (temperature, lights, height): (Temperature, Temperature, Length),
) -> Result<[Model; 2], Refusal> {
    let fire = &settings[largest];
    let (ratio, asked) = (ratio_of(plant, fire), plant.entries.air_ratio);
    let known = sure_settings(plant, core::slice::from_ref(fire)).first().copied().flatten();
    let known = known.and_then(|sure| sure.air_ratio).map(|sure| sure.expanded);
    let stream = |ratio, place: Place| coupled_furnace::stream(plant, ratio).map_err(place.refusing());
    let streams = [stream(ratio, Place::key("gas", "kind"))?, stream(asked, Place::key("fire", "air_ratio"))?];
    let unsure = [ratio, asked].map(|ratio| unsure(plant, entry, ratio, known));
    let made = |coarser: f64| {
        let build = |stream: &Stream| coupled_furnace::with_stream(plant, chamber, lining, stream.clone(), coarser);
        Model {
            largest: build(&streams[0]),
            asked: build(&streams[1]),
            unsure: unsure.clone(),
            heat: fire.heat_net.watts(),
            air: fire.air.as_ref().and_then(|air| air.running).map(|running| running.air.kilograms_per_second()),
            chamber: temperature.kelvin(),
            charge: entry
                .work
                .as_ref()
                .map(|work| (content(&work.charge), work.temperature.kelvin(), work.time.seconds())),
            lights: lights.kelvin(),
            height: height.meters(),
            allowed: coarser,
        }
    };
    Ok([made(1.0), made(ROUGH)])
}

/// The gauge of a fire that keeps, with its ends.
fn keep_gauge(plant: &Plant, fire: Number, lowest_read: GaugePressure) -> KeepGauge {
    let gauge = |watts: f64| gauge_for(plant, NetHeatRate::from_watts(watts)).map(GaugePressure::pascals);
    let found =
        gauge(fire.value).map(|value| Number { value, low: fire.low.and_then(gauge), high: fire.high.and_then(gauge) });
    KeepGauge { gauge: found, is_too_low: found.is_none_or(|gauge| gauge.value < lowest_read.pascals()) }
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
