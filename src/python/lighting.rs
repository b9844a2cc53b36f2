//! Lighting of the burner of a file, over arrays of settings.

use std::prelude::rust_2024::*;
use std::string::ToString;

use pyo3::exceptions::PyValueError;
use pyo3::prelude::*;

use super::operands::{Answer, Operand, map, refuse};
use super::sheet::Burner;
use crate::burner::{AirSetting, Conditions, Glow, GoesOut, Lights, Span};
use crate::plant::Known;
use crate::quantity::{GaugePressure, Power, Temperature, Volume};

/// What is known of a burner's lighting: the head's constant, the chamber's volume and its loss at a glow, and how cold
/// the gas of the largest setting comes.
pub(super) type Facts = (Option<f64>, Option<f64>, Option<f64>, f64);

pub(super) fn aimed(by_air_ratio: bool, aim: f64) -> AirSetting {
    if by_air_ratio { AirSetting::Ratio(aim) } else { AirSetting::Opening(aim) }
}

pub(super) fn known((head_constant, volume, loss, _): Facts) -> Known {
    let chamber = Glow { volume: volume.map(Volume::from_cubic_meters), loss: loss.map(Power::from_watts) };
    Known { head_constant, seen_air_ratio: None, chamber }
}

fn ends(span: Option<Span>) -> [f64; 2] {
    let told = |ends: bool, gauge: GaugePressure, open: f64| if ends { gauge.pascals() } else { open };
    span.map_or([f64::NAN; 2], |span| {
        [told(span.low_ends, span.low, 0.0), told(span.high_ends, span.high, f64::INFINITY)]
    })
}

/// What the file tells of the lighting.
#[pyfunction]
pub fn lighting_known(burner: &Bound<'_, Burner>) -> PyResult<Facts> {
    let burner = burner.get();
    let lit = match burner.lit.get() {
        Some(lit) => *lit,
        None => {
            let told = |refusal| PyValueError::new_err(burner.places.told(&refusal).to_string());
            let lit = burner.plant.lit().map_err(told)?;
            *burner.lit.get_or_init(|| lit)
        }
    };
    let Some(lit) = lit else {
        return Err(PyValueError::new_err("a gas without limits of burning has no lighting"));
    };
    let chamber = lit.known.chamber;
    let (volume, loss) = (chamber.volume.map(Volume::cubic_meters), chamber.loss.map(Power::watts));
    Ok((lit.known.head_constant, volume, loss, lit.conditions.gas_temperature.kelvin()))
}

/// Lights (0 cold, 1 glowing, 2 never), goes out cold (0 lights, 1 lean, 2 rich, 3 blows off, 4 no flow), air ratio,
/// pull and temperature of the walls of (gauge pressure, damper opening or air ratio).
#[pyfunction]
pub fn lighting<'py>(
    burner: &Bound<'py, Burner>,
    py: Python<'py>,
    by_air_ratio: bool,
    facts: Facts,
    operands: Vec<Operand<'py>>,
    shape: Vec<usize>,
) -> Answer<'py> {
    let plant = &burner.get().plant;
    let Some(burner) = &plant.burner else { return Err(PyValueError::new_err("no burner")) };
    map::<2, 5, (), _>(py, &operands, &shape, |&[gauge, aim], _| {
        let gauge = GaugePressure::from_pascals(gauge);
        let air = aimed(by_air_ratio, aim);
        // The damper is looked at first, so that a bad one is told as such.
        if let AirSetting::Opening(opening) = air {
            burner.path.damper_loss_coefficient(opening)?;
        }
        let conditions = plant.conditions_at(&plant.conditions, gauge)?;
        let found = plant.lighting(&conditions, gauge, air, &known(facts))?;
        let lights = match found.lights {
            Lights::Cold => 0.0,
            Lights::Glowing => 1.0,
            Lights::Never => 2.0,
        };
        let goes_out = match found.goes_out {
            None => 0.0,
            Some(GoesOut::TooLean) => 1.0,
            Some(GoesOut::TooRich) => 2.0,
            Some(GoesOut::BlowOff) => 3.0,
            Some(GoesOut::NoFlow) => 4.0,
        };
        let walls = found.walls.map_or(f64::NAN, |walls| walls.kelvin());
        Ok([lights, goes_out, found.air_ratio.unwrap_or(f64::NAN), found.pull.unwrap_or(f64::NAN), walls])
    })
}

/// Ends, low and high, of the gauge pressures within the limits of burning, that light cold, that keep a glow, of
/// (damper opening or air ratio): 0 and infinity where there is no end, NaN where there is no such gauge.
#[pyfunction]
pub fn lighting_range(burner: &Bound<'_, Burner>, by_air_ratio: bool, facts: Facts, aim: f64) -> PyResult<[f64; 6]> {
    let plant = &burner.get().plant;
    let Some(burner) = &plant.burner else { return Err(PyValueError::new_err("no burner")) };
    let air = aimed(by_air_ratio, aim);
    if let AirSetting::Opening(opening) = air {
        burner.path.damper_loss_coefficient(opening).map_err(refuse)?;
    }
    let gas_temperature = Temperature::from_kelvin(facts.3);
    let conditions = Conditions { gas_temperature, ..plant.conditions };
    let range = plant.lighting_range(&conditions, air, &known(facts)).map_err(refuse)?;
    let [a, b] = ends(range.within_limits);
    let [c, d] = ends(range.cold);
    let [e, f] = ends(range.glowing);
    Ok([a, b, c, d, e, f])
}
