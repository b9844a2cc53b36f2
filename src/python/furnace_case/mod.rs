//! The coupled furnace for anyone with another solver: one plain mapping in, a row a stage out.

mod contents;
mod keyed;
mod stages;
mod walls;

use std::format;
use std::prelude::rust_2024::*;
use std::string::ToString;

use pyo3::exceptions::PyValueError;
use pyo3::prelude::*;
use serde_json::{Value, json};

use self::keyed::{Keyed, Read, refused};
use self::stages::{Act, Stage};
use crate::furnace::coupled::{
    Drive, Films, Firing, Furnace, LID_EXCHANGE, OPENING_DISCHARGE, Passed, Radiation, Stream, Until, ZONE_CAP,
};
use crate::gas::{self, Gas};
use crate::limits::Input;
use crate::quantity::{AbsolutePressure, Temperature};
use crate::site::Site;

/// Temperature of the room and of everything at the start, K.
pub const ROOM: f64 = 293.15;
/// Gas and air by net heat where a straight available heat leaves it open, kg/J: propane with 5 % of air too much. Air
/// that leaks in thins the gas by it.
const MASS_PER_HEAT: f64 = 3.789e-7;
/// Standard atmosphere, Pa.
const ATMOSPHERE: f64 = 101_325.0;
/// Largest film coefficient, W/(m2 K).
const LARGEST_FILM: f64 = 1e6;
const KEYS: &[&str] = &[
    "gas",
    "radiation",
    "gas_zones",
    "h_fired",
    "h_air",
    "h_off",
    "pressure",
    "volume",
    "walls",
    "openings",
    "leaks",
    "stages",
];

/// Room whose air has a mole fraction of water.
fn site(gas: &Keyed<'_>, pressure: f64) -> Read<Site> {
    let refuse = |error: crate::Error| PyValueError::new_err(format!("{}: {error}", gas.at("water_in_air")));
    let at = |humidity| {
        let (pressure, air) = (AbsolutePressure::from_pascals(pressure), Temperature::from_kelvin(ROOM));
        Site::at_station_pressure(pressure, air, humidity).map_err(refuse)
    };
    // The fraction goes with the humidity.
    let half = at(0.5)?.water_fraction();
    at(0.5 * gas.number("water_in_air", 0.0, 2.0 * half)? / half)
}

/// What the burner sends in.
fn stream(case: &Keyed<'_>, pressure: f64) -> Read<Stream> {
    let accepted = "a mapping whose kind is \"linear\" or a fuel";
    let given = case.needed("gas", accepted)?;
    let keys = ["kind", "flame_temperature", "air_cp", "air_ratio", "water_in_air"];
    let kind = Keyed::of(given, case.at("gas"), &keys)?.text("kind", "\"linear\" or a fuel")?;
    let gray = match case.get("radiation") {
        None => None,
        Some(Value::String(text)) if text == "smith" => None,
        Some(value @ Value::Object(_)) => {
            let radiation = Keyed::of(value, case.at("radiation"), &["gray_kappa"])?;
            Some(Radiation::gray(radiation.number("gray_kappa", 0.0, 1e3)?))
        }
        Some(value) => return Err(refused("radiation", &value.to_string(), "\"smith\" or {gray_kappa}")),
    };
    if kind == "linear" {
        let gas = Keyed::of(given, case.at("gas"), &["kind", "flame_temperature", "air_cp"])?;
        let flame = gas.number("flame_temperature", 400.0, 5000.0)?;
        let air = gas.number("air_cp", 1.0, 1e5)?;
        let Some(gray) = gray else {
            return Err(refused("radiation", "\"smith\"", "{gray_kappa} with a linear gas, which has no composition"));
        };
        return Ok(Stream::linear(ROOM, flame, air, MASS_PER_HEAT, gray));
    }
    let fuel = gas::parse(kind).map_err(|error| {
        let accepted = format!("\"linear\" or a fuel: {error}");
        refused(&format!("{}.kind", case.at("gas")), &format!("{kind:?}"), &accepted)
    })?;
    let gas = Keyed::of(given, case.at("gas"), &["kind", "air_ratio", "water_in_air"])?;
    let site = site(&gas, pressure)?;
    let range = Input::FlameAirRatio.range();
    let air_ratio = gas.number("air_ratio", range.min, range.max)?;
    let mut stream = Stream::new(&Gas::new(fuel), &site, air_ratio)
        .map_err(|error| PyValueError::new_err(format!("{}: {error}", gas.path)))?;
    if let Some(gray) = gray {
        stream.radiation = gray;
    }
    Ok(stream)
}

/// The furnace of a case.
fn furnace(case: &Keyed<'_>) -> Read<Furnace> {
    let pressure = case.optional("pressure", 1e4, 1e6)?.unwrap_or(ATMOSPHERE);
    let zones = case.optional("gas_zones", 1.0, ZONE_CAP as f64)?.unwrap_or(2.0);
    if zones.fract() != 0.0 {
        return Err(refused("gas_zones", &zones.to_string(), "a whole number, 1 to 3"));
    }
    let fired = case.optional("h_fired", 0.0, LARGEST_FILM)?.unwrap_or(15.0);
    let films = Films {
        fired,
        blown: case.optional("h_air", 0.0, LARGEST_FILM)?.unwrap_or(fired),
        off: case.optional("h_off", 0.0, LARGEST_FILM)?.unwrap_or(8.0),
    };
    let (builds, walls) = walls::builds(case, pressure)?;
    let (openings, vents) = walls::openings(case, walls)?;
    Ok(Furnace {
        builds,
        openings,
        vents,
        volume: case.number("volume", 1e-6, 1e4)?,
        stream: stream(case, pressure)?,
        zones: zones as usize,
        films,
        room: ROOM,
        pressure,
        discharge: OPENING_DISCHARGE,
        lid_exchange: LID_EXCHANGE,
    })
}

/// The row of a stage.
fn row(name: &str, passed: &Passed) -> Value {
    let ledger = &passed.ledger;
    json!({
        "do": name,
        "seconds": passed.time,
        "chamber": passed.chamber,
        "gas_exit": passed.gas,
        "faces": passed.faces.as_slice(),
        "fire_at_end": passed.fire,
        "chamber_highest": passed.highest,
        "chamber_lowest": passed.lowest,
        "core": passed.core,
        "fuel_heat": ledger.fuel,
        "flue_heat": ledger.flue,
        "openings_heat": ledger.openings,
        "shell_heat": ledger.shell,
        "stored": ledger.stored,
    })
}

/// Takes the furnace through one stage; its row, where time passes.
fn run(firing: &mut Firing<'_>, stage: &Stage) -> Read<Option<Value>> {
    match &stage.act {
        Act::Put(content) => {
            firing.put(content, ROOM).map_err(|error| {
                let accepted = "at most 3 contents at once, together smaller than the chamber";
                refused(&format!("{}.content", stage.path), &error.to_string(), accepted)
            })?;
            Ok(None)
        }
        Act::Take => {
            if firing.take() {
                return Ok(None);
            }
            Err(refused(&format!("{}.do", stage.path), "\"take\"", "\"take\" after a \"put\": nothing stands in it"))
        }
        Act::Run(name, drive, until) => {
            if matches!(until, Until::CoreRisesTo(_)) && firing.contents().is_empty() {
                let path = format!("{}.until_core_rises_to", stage.path);
                return Err(refused(&path, "a core", "a core while something stands in the chamber"));
            }
            let passed =
                firing.run(drive, *until).map_err(|error| PyValueError::new_err(format!("{}: {error}", stage.path)))?;
            if let Until::Time(asked) = until
                && passed.time < asked * (1.0 - 1e-9)
            {
                let text = format!("{}.for: not reached within the most steps, only {} s", stage.path, passed.time);
                return Err(PyValueError::new_err(text));
            }
            let fired = matches!(drive, Drive::Fire { .. } | Drive::Keep { .. });
            let mut row = row(name, &passed);
            if !fired {
                row["fire_at_end"] = json!(0.0);
            }
            Ok(Some(row))
        }
    }
}

/// The rows of a case, both as JSON.
#[pyfunction]
pub fn furnace_case(py: Python<'_>, text: &str) -> PyResult<String> {
    let value: Value = serde_json::from_str(text).map_err(|error| PyValueError::new_err(error.to_string()))?;
    let case = Keyed::of(&value, String::new(), KEYS)?;
    let furnace = furnace(&case)?;
    let stages = stages::stages(&case, furnace.volume)?;
    let mut firing = Firing::cold(&furnace);
    let mut rows = Vec::new();
    for stage in &stages {
        py.check_signals()?;
        rows.extend(py.detach(|| run(&mut firing, stage))?);
    }
    Ok(Value::Array(rows).to_string())
}
