//! The furnace of an installation as the coupled model takes it: builds, openings, what the burner sends in, and what
//! is heated.

use heapless::Vec;

use crate::Scalar;
use crate::error::Result as CheckedResult;
use crate::furnace::coupled::{
    BUILD_CAP, Build, Chain, Content, End, Films, Furnace, LID_EXCHANGE, Medium, OPENING_DISCHARGE, Opening, Place,
    Stream, Unsure, VENT_CAP, Vent,
};
use crate::furnace::work::Charge;
use crate::furnace::{Chamber, LAYER_CAP, Lining, OPENING_CAP};
use crate::limits::Input;
use crate::plant::entries::FurnaceEntry;
use crate::plant::installation::Plant;

/// Emissivity of a hot face: common practice for refractories at work, no source.
const WALL_EMISSIVITY: f64 = 0.75;
/// Film coefficient of the gas on what it meets, W/(m2 K): fired heaters use 8.5 and 11.4, a jet mixed into a small
/// chamber gives 9 to 24 by flat plates (engineering judgement).
const FILM_FIRED: f64 = 15.0;
/// With everything off, by free convection: common practice, no source.
const FILM_OFF: f64 = 8.0;
/// Film from a crucible's wall into a charge, W/(m2 K): common practice, no source; poor while it is solid pieces.
const FILM_INSIDE: f64 = 300.0;
/// Stirred zones of the gas.
const ZONES: usize = 2;
/// What an air ratio is known by where the burner's own spread is not, k = 2.
const AIR_RATIO_KNOWN: f64 = 0.05;

/// What the burner sends through the chamber at an air ratio.
///
/// Beyond the air ratios a flame is worked out for, the nearest of them stands in.
pub(crate) fn stream(plant: &Plant, air_ratio: f64) -> CheckedResult<Stream> {
    let range = Input::FlameAirRatio.range();
    Stream::new(&plant.gas, &plant.site, air_ratio.clamp(range.min, range.max))
}

/// What is not sure of the furnace with a fire of an air ratio, known within so much.
pub(crate) fn unsure(plant: &Plant, entry: &FurnaceEntry, air_ratio: f64, known: Option<f64>) -> Unsure {
    let known = known.unwrap_or(AIR_RATIO_KNOWN);
    let ends = stream(plant, air_ratio + known).and_then(|lean| Ok([lean, stream(plant, air_ratio - known)?]));
    Unsure { wall_conductivity: plant.entries.uncertainty.walls.unwrap_or(entry.lining_spread()), streams: ends.ok() }
}

/// The furnace with a fire of an air ratio.
pub(crate) fn furnace(plant: &Plant, chamber: &Chamber, lining: &Lining, air_ratio: f64) -> CheckedResult<Furnace> {
    let stream = stream(plant, air_ratio)?;
    Ok(with_stream(plant, chamber, lining, stream, 1.0))
}

/// The same of a stream, its walls' elements so many times as coarse.
pub(crate) fn with_stream(plant: &Plant, chamber: &Chamber, lining: &Lining, stream: Stream, coarser: f64) -> Furnace {
    let mut builds: Vec<Build, BUILD_CAP> = Vec::new();
    for (wall, room) in chamber.walls() {
        let layers: Vec<(Medium, f64), LAYER_CAP> =
            wall.layers().iter().map(|layer| (Medium::lining(&layer.material), layer.thickness.meters())).collect();
        let end = End::Room(wall.outer_area().square_meters(), *room);
        let chain = Chain::coarser_wall(&layers, &wall.body(), end, coarser);
        // The chamber has no more walls than the capacity.
        let _ = builds.push(Build { chain, area: wall.hot_area().square_meters(), emissivity: WALL_EMISSIVITY });
    }
    let (mut openings, mut vents) = (Vec::<Opening, OPENING_CAP>::new(), Vec::<Vent, VENT_CAP>::new());
    for opening in chamber.openings() {
        let area = opening.area().square_meters();
        let _ = openings.push(Opening { area, passage: opening.passage() });
        let _ = vents.push(Vent { area, place: Place::Sealed });
    }
    Furnace {
        builds,
        openings,
        vents,
        volume: lining.take_off().chamber_volume,
        stream,
        zones: ZONES,
        films: Films { fired: FILM_FIRED, blown: FILM_FIRED, off: FILM_OFF },
        room: chamber.room().kelvin(),
        pressure: plant.site.ambient_pressure().pascals(),
        discharge: OPENING_DISCHARGE,
        lid_exchange: LID_EXCHANGE,
    }
}

/// The same with what no height was given of drawing air as a hole in the lid, so high above the floor, m.
pub(crate) fn drawing(furnace: &Furnace, height: f64) -> Furnace {
    let mut other = furnace.clone();
    for vent in &mut other.vents {
        if vent.place == Place::Sealed {
            vent.place = Place::Lid(height);
        }
    }
    other
}

/// A charge in its crucible, or one lump as long as it is thick.
pub(crate) fn content(charge: &Charge) -> Content {
    let volume = charge.volume();
    let metal = Medium::Substance(charge.substance.clone());
    let mass = charge.mass.kilograms();
    match &charge.crucible {
        Some(crucible) => {
            let (area, wall) = (crucible.area.square_meters(), Medium::Substance(crucible.substance.clone()));
            let (own, thickness) = (crucible.mass.kilograms(), crucible.wall.meters());
            let chain = Chain::crucible(&wall, own, thickness, area, FILM_INSIDE, &metal, mass);
            Content { chain, area, emissivity: crucible.substance.emissivity(), volume }
        }
        None => {
            // A cylinder as long as it is thick: d = (4 V / pi)^(1/3), area 3/2 pi d2.
            let pi = core::f64::consts::PI;
            let thick = Scalar::cbrt(4.0 * volume / pi);
            let area = 1.5 * pi * thick * thick;
            Content { chain: Chain::lump(&metal, mass), area, emissivity: charge.substance.emissivity(), volume }
        }
    }
}
