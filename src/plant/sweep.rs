//! The table by the gauge.

use heapless::Vec;

use crate::Input;
use crate::error::{Error, Result as CheckedResult};
use crate::plant::installation::Plant;
use crate::plant::setting::{Setting, conditions_of};
use crate::quantity::{GaugePressure, GrossHeatRate, MassFlow, NetHeatRate};

/// Most rows of the table by the gauge.
pub const MOST_RUNGS: usize = 9;

/// One row of the table by the gauge.
pub struct Rung {
    /// Gauge reading.
    pub gauge: GaugePressure,
    /// Gas of all heads.
    pub gas: MassFlow,
    /// Fire, gross.
    pub heat_gross: GrossHeatRate,
    /// Fire, net.
    pub heat_net: NetHeatRate,
    /// Air ratio with the damper left where the largest setting has it.
    pub air_ratio_damper_left: Option<f64>,
    /// Damper for the file's air ratio; none when the blower or the damper cannot give it.
    pub opening: Option<f64>,
    /// Whether even the narrowest damper gives more than the file's air ratio.
    pub too_much_air: bool,
}

/// The rows of the table by the gauge.
pub type Rungs = Vec<Rung, MOST_RUNGS>;

/// Round gauge readings from under the lowest setting to over the highest.
pub(crate) fn rungs(plant: &Plant, main: &Setting, settings: &[Setting], psi: bool) -> Rungs {
    const ROUND: [f64; 17] =
        [0.25, 0.5, 1.0, 1.5, 2.0, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0, 12.0, 15.0, 20.0, 30.0, 40.0, 60.0];
    let readings = ROUND
        .map(|round| if psi { GaugePressure::from_psi(round) } else { GaugePressure::from_kilopascals(5.0 * round) });
    let lowest = settings.iter().map(|setting| setting.gauge.pascals()).fold(f64::INFINITY, f64::min);
    let highest = main.gauge.pascals();
    let within = |gauge: &GaugePressure| gauge.pascals() > 0.4 * lowest && gauge.pascals() < 1.7 * highest;
    let chosen = || readings.into_iter().filter(within);
    let too_many = chosen().count().saturating_sub(MOST_RUNGS);
    chosen().skip(too_many).filter_map(|gauge| rung(plant, main, gauge).ok()).collect()
}

fn rung(plant: &Plant, main: &Setting, gauge: GaugePressure) -> CheckedResult<Rung> {
    let conditions = plant.conditions_at(&conditions_of(plant, &main.entry), gauge)?;
    let left = main.air.as_ref().and_then(|air| air.opening).unwrap_or(1.0);
    let (gas, air_ratio, opening) = match &plant.burner {
        Some(burner) => {
            let (running, at_jet) = plant.run_at(&conditions, gauge, |at_jet| {
                let running = burner.run(&conditions, at_jet, left)?;
                Ok((running, running.back_pressure))
            })?;
            (running.gas, running.air_ratio, Some(burner.opening_for(&conditions, at_jet, plant.entries.air_ratio)))
        }
        None => {
            let open = GaugePressure::from_pascals(0.0);
            let (flow, _) = plant.run_at(&conditions, gauge, |at_jet| {
                Ok((plant.jet.flow(&plant.gas, &plant.supply(&conditions, at_jet, open))?, open))
            })?;
            (flow.mass_flow * plant.heads, None, None)
        }
    };
    Ok(Rung {
        gauge,
        gas,
        heat_gross: plant.gas.gross_heating_value().of(gas),
        heat_net: plant.gas.net_heating_value().of(gas),
        air_ratio_damper_left: air_ratio,
        opening: opening.and_then(CheckedResult::ok),
        too_much_air: matches!(opening, Some(Err(Error::NoSolution { input: Input::DamperOpening, .. }))),
    })
}
