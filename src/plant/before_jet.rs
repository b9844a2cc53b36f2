//! What lies before the jet: line, regulator and cylinder in the modules' own types.

use crate::fuel::{Cylinder, Hose, Line, Regulator};
use crate::gas::Gas;
use crate::plant::entries::Entries;
use crate::plant::refusal::{Place, Refusal};
use crate::quantity::{AbsolutePressure, Temperature};

/// What lies before the jet, in the modules' own types.
#[derive(Clone, Default)]
pub struct BeforeJet {
    /// The line from the gauge to the jet.
    pub line: Option<Line>,
    /// The same line in the air that warms the gas.
    pub hose: Option<Hose>,
    /// The regulator, if its droop is known.
    pub regulator: Option<Regulator>,
    /// The cylinders.
    pub cylinder: Option<Cylinder>,
    /// Vapor in the cylinder before anything is drawn; none when the file states the gas's temperature.
    pub vapor: Option<(AbsolutePressure, Temperature)>,
}

impl BeforeJet {
    pub(crate) fn of(entries: &Entries, gas: &Gas) -> Result<Self, Refusal> {
        let mut made = Self::default();
        if let Some(entry) = entries.supply.line {
            let line = Line::new(entry.diameter, entry.length, entry.roughness, entry.fitting_loss);
            let line = line.map_err(Place::key("line", "diameter").refusing())?;
            made.line = Some(match entry.valve_coefficient {
                Some(valve) => line.with_valve(valve).map_err(Place::key("line", "valve_coefficient").refusing())?,
                None => line,
            });
            made.hose = entry.outside_diameter.map(|outside| Hose::in_still_air(entry.length, outside));
        }
        if let Some(entry) = entries.supply.regulator.as_ref().filter(|entry| !entry.points.is_empty()) {
            let regulator = Regulator::new(&entry.points).map_err(Place::key("regulator", "points").refusing())?;
            made.regulator = Some(regulator);
        }
        if let Some(entry) = entries.supply.cylinder {
            let cylinder = Cylinder::new(entry.diameter, entry.capacity, entry.tare, f64::from(entry.count));
            made.cylinder = Some(cylinder.map_err(Place::key("cylinder", "capacity").refusing())?);
            let liquid = gas.mixture().saturated(entry.temperature);
            let liquid = liquid.map_err(Place::key("gas", "kind").refusing())?;
            made.vapor = (!entries.gas.temperature_is_given).then_some((liquid.pressure, entry.temperature));
        }
        Ok(made)
    }
}
