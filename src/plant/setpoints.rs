//! The gauge and the damper for an air ratio from the smallest to the largest fire, for a controller.

use crate::burner::{AirSetting, Burner};
use crate::control::{MadeFor, Setpoint, SetpointTable, USUAL_ROWS};
use crate::error::Result as CheckedResult;
use crate::limits::Input;
use crate::plant::installation::Plant;
use crate::plant::refusal::{Place, Reason, Refusal};
use crate::plant::setting::Setting;
use crate::plant::spreads::least_read;
use crate::quantity::{GaugePressure, HeatRate, NetHeatRate};
use crate::scalar::Scalar;

/// Heats asked between two rows for the bound.
pub const BETWEEN: u16 = 63;
/// From one fire that is tried to the next smaller one.
const SMALLER: f64 = 1.1;
/// Halvings of such a step.
const HALVINGS: usize = 24;
/// How far inside its ends the range of fires is taken, so that rounding does not leave it.
const INSIDE: f64 = 1e-4;
/// The largest fire that is taken unasked, over the largest there is.
const UNASKED: f64 = 0.95;
/// The most that a straight line between two rows may turn the air ratio, as a share. A band reaches about a tenth to
/// either side of its target, and the actuators take some three hundredths of it: the table may take no more than they
/// do (engineering judgement).
const AIR_RATIO_OFF: f64 = 0.03;

/// The table of a chip.
pub type ChipTable = SetpointTable<USUAL_ROWS, f32>;
/// Fires from the smallest to the largest.
pub type Fires = (NetHeatRate, NetHeatRate);

/// What is asked of a table.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Asked {
    /// Air ratio; that of the entries unless given.
    pub air_ratio: Option<f64>,
    /// Smallest fire; the smallest whose gauge can be read unless given.
    pub from: Option<HeatRate>,
    /// Largest fire; a little under the largest there is unless given.
    pub to: Option<HeatRate>,
}

/// A controller's table, and how well it fits.
#[derive(Clone, Debug)]
pub struct Setpoints {
    /// The table.
    pub table: ChipTable,
    /// The air ratio it holds.
    pub air_ratio: f64,
    /// How far off it is between its rows.
    pub off: Off,
    /// The least reading of the gauge that says something, where the table begins under it.
    pub unread: Option<GaugePressure>,
}

impl Plant {
    /// The table of a burner whose settings are worked out; `mark` is that of its image for a chip.
    ///
    /// # Errors
    ///
    /// [`Refusal`] of an option, whose place has no section, or of an entry.
    pub fn setpoints(&self, settings: &[Setting], mark: u32, asked: &Asked) -> Result<Setpoints, Refusal> {
        let Some(burner) = &self.burner else { return Err(Place::section("blower").because(Reason::NeedsAirSide)) };
        if self.entries.damper.is_none() {
            return Err(Place::section("damper").because(Reason::NeedsDamper));
        }
        let air_ratio = asked.air_ratio.unwrap_or(self.entries.air_ratio);
        let at_ratio = Place::key(if asked.air_ratio.is_some() { "" } else { "fire" }, "air_ratio");
        let setting = AirSetting::Ratio(air_ratio);
        // What the gauge reads, with the gas as cold as it comes and the line behind the gauge.
        let set = |heat| {
            let gauge = self.gauge_for_heat(&self.conditions, HeatRate::Net(heat), setting)?;
            let there = self.conditions_at(&self.conditions, gauge)?;
            let at_jet = burner.gauge_for_heat(&there, HeatRate::Net(heat), setting)?;
            Ok(Setpoint { gauge, air: burner.opening_for(&there, at_jet, air_ratio)? })
        };
        let least_read = least_read(&self.entries, settings);
        let reads = |heat| set(heat).is_ok_and(|set: Setpoint<f64>| set.gauge >= least_read);
        let reach = reachable(|heat| set(heat).is_ok()).ok_or(at_ratio.because(Reason::AirRatioAtNoFire))?;
        let readable = reachable(reads).map_or(reach.1, |(least, _)| least);
        let (lowest, highest) = self.range_of(asked, reach, readable)?;
        let made_for = MadeFor { air_ratio, burner: mark };
        let exact = SetpointTable::<USUAL_ROWS>::build(made_for, lowest, highest, BETWEEN, set)
            .map_err(|error| at_ratio.because(Reason::NoTable { lowest, highest, error }))?;
        let table = exact.to_single();
        let off = Off::of(&table, self, burner, air_ratio).map_err(at_ratio.refusing())?;
        if off.air_ratio > AIR_RATIO_OFF {
            let (off, accepted) = (off.air_ratio, AIR_RATIO_OFF);
            return Err(Place::key("", "from").because(Reason::TableTooCoarse { lowest, highest, off, accepted }));
        }
        // A row is rounded to single precision.
        let begins = f64::from(table.rows()[0].gauge.pascals());
        let unread = (begins <= 0.9999 * least_read.pascals()).then_some(least_read);
        Ok(Setpoints { table, air_ratio, off, unread })
    }

    /// The fires asked for, and what can be read and reached where nothing is asked, but for the last of it, where the
    /// damper goes from half to wide open and changes next to nothing.
    fn range_of(&self, asked: &Asked, reach: Fires, readable: NetHeatRate) -> Result<Fires, Refusal> {
        let end = |option: &'static str, heat: Option<HeatRate>, unless_asked: NetHeatRate| {
            let net = match heat {
                None => return Ok(unless_asked),
                Some(HeatRate::Net(heat)) => heat,
                Some(gross) => {
                    let flow = self.gas.flow_for(gross).map_err(Place::key("", option).refusing())?;
                    self.gas.net_heating_value().of(flow)
                }
            };
            let (lowest, highest) = reach;
            let is_reached = net >= lowest && net <= highest;
            let refused = Place::key("", option).because(Reason::FireOutOfReach { lowest, highest });
            if is_reached { Ok(net) } else { Err(refused) }
        };
        let (lowest, highest) = (end("from", asked.from, readable)?, end("to", asked.to, reach.1 * UNASKED)?);
        if highest <= lowest {
            let option = if asked.to.is_some() { "to" } else { "from" };
            return Err(Place::key("", option).because(Reason::FiresInverted));
        }
        Ok((lowest, highest))
    }
}

/// The most that a burner set by the table lies off what the table was asked for, as shares.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Off {
    /// Of the heat.
    pub heat: f64,
    /// Of the air ratio.
    pub air_ratio: f64,
}

impl Off {
    /// Sampled: the burner is run at the settings of the table itself, at many heats from row to row.
    fn of(table: &ChipTable, plant: &Plant, burner: &Burner, ratio: f64) -> CheckedResult<Self> {
        let mut off = Self { heat: 0.0, air_ratio: 0.0 };
        let parts = u32::from(BETWEEN) + 1;
        for part in 0..=parts * (USUAL_ROWS as u32 - 1) {
            let heat =
                NetHeatRate::from_watts(table.lowest().watts() + table.step().watts() * (part as f32 / parts as f32));
            let set = table.at(heat);
            let gauge = GaugePressure::from_pascals(f64::from(set.gauge.pascals()));
            let there = plant.conditions_at(&plant.conditions, gauge)?;
            let (found, _) = plant.run_at(&there, gauge, |at_jet| {
                let found = burner.run(&there, at_jet, f64::from(set.air))?;
                Ok((found, found.back_pressure))
            })?;
            // No air ratio is as far off as can be.
            let found_ratio = found.air_ratio.unwrap_or(f64::INFINITY);
            let found_heat = plant.gas.net_heating_value().of(found.gas);
            off.heat = off.heat.max(Scalar::abs(found_heat.watts() / f64::from(heat.watts()) - 1.0));
            off.air_ratio = off.air_ratio.max(Scalar::abs(found_ratio / ratio - 1.0));
        }
        Ok(off)
    }
}

/// The fires that have an answer, each end a ten-thousandth inside; none when none has. A damper at its least shuts out
/// the small ones, the blower or the jet the large ones.
fn reachable(answers: impl Fn(NetHeatRate) -> bool) -> Option<Fires> {
    let range = Input::HeatRate.range();
    let answers = |watts: f64| answers(NetHeatRate::from_watts(watts));
    let mut found: Option<Fires> = None;
    let mut watts = range.max;
    let mut refused = watts;
    while watts > range.min {
        match (answers(watts), found) {
            (true, None) => {
                let most = NetHeatRate::from_watts(border(watts, refused, answers) * (1.0 - INSIDE));
                found = Some((most, most));
            }
            (false, Some((_, most))) => {
                let least = NetHeatRate::from_watts(border(refused, watts, answers) * (1.0 + INSIDE));
                return Some((least, most)).filter(|(least, most)| least < most);
            }
            _ => {}
        }
        refused = watts;
        watts /= SMALLER;
    }
    found.map(|(_, most)| (NetHeatRate::from_watts(range.min), most))
}

/// The last that has an answer on the way from one that has to one that has not.
fn border(mut answered: f64, mut refused: f64, answers: impl Fn(f64) -> bool) -> f64 {
    for _ in 0..HALVINGS {
        let middle = 0.5 * (answered + refused);
        if answers(middle) { answered = middle } else { refused = middle }
    }
    answered
}
