//! The cylinder's block of the sheet: can it keep up, and does it last the firing.

use heapless::Vec;

use crate::error::Result as CheckedResult;
use crate::fuel::{Charge, Cylinder, Draw};
use crate::gas::Gas;
use crate::limits::Input;
use crate::plant::entries::MOST_SETTINGS;
use crate::plant::firing::Firing;
use crate::plant::installation::Plant;
use crate::plant::refusal::{Place, Refusal};
use crate::plant::setting::Setting;
use crate::quantity::{AbsolutePressure, Duration, GaugePressure, Mass, MassFlow, Temperature};
use crate::scalar::rounded_up;

/// What a regulator needs over its reading unless the file says so, Pa: common practice, no source.
const OVER_READING: f64 = 50e3;
/// How long a setting without minutes is judged for.
const AN_HOUR: f64 = 3600.0;

/// Everything the sheet says of the cylinders.
pub struct CylinderBlock {
    /// Gas in all of them when full, and now.
    pub capacity: Mass,
    /// Gas left in all of them.
    pub left: Mass,
    /// How many there are.
    pub count: u32,
    /// Temperature of the air they stand in.
    pub air: Temperature,
    /// Pressure in them before anything is drawn.
    pub pressure: GaugePressure,
    /// A row a setting, each from the gas left.
    pub rows: Vec<CylinderRow, MOST_SETTINGS>,
    /// The same of the work's fire; none without work, or out of reach.
    pub work: Option<CylinderRow>,
    /// Money for a full one.
    pub cost: Option<f64>,
    /// The whole firing; none without a plan or timed settings.
    pub run: Option<CylinderRun>,
}

/// The cylinders at one setting.
pub struct CylinderRow {
    /// Gauge pressure the regulator needs before it.
    pub needs: GaugePressure,
    /// The draw they hold steadily with the gas that is left, at that pressure; less as they empty.
    pub steady: MassFlow,
    /// Whether the setting draws no more.
    pub keeps_up: bool,
    /// When the pressure falls under what the regulator needs, drawn without a rest; none when it never does.
    pub too_cold_after: Option<Duration>,
    /// When what is left is burnt; none when nothing is drawn.
    pub lasts: Option<Duration>,
    /// How long full ones last; none when nothing is drawn.
    pub full_lasts: Option<Duration>,
    /// How long the setting is used: its minutes, or an hour.
    pub used: Duration,
    /// The cylinders after that time.
    pub end: Draw,
    /// How many such cylinders would hold it at that level; none when no number would.
    pub cylinders_needed: Option<u32>,
}

/// The cylinders over a firing.
pub struct CylinderRun {
    /// Whether it is the furnace's plan; else the settings' own times.
    pub by_plan: bool,
    /// Gas it asks for.
    pub gas: Mass,
    /// Gas left in the end.
    pub left: Mass,
    /// The liquid in the end.
    pub liquid: Temperature,
    /// When the pressure falls under what the regulator needs; none when it holds.
    pub too_cold_after: Option<Duration>,
    /// When they are empty; none when they last.
    pub empty_after: Option<Duration>,
}

impl CylinderRun {
    /// Whether they last the firing and keep up with it.
    #[must_use]
    pub fn lasts(&self) -> bool {
        self.too_cold_after.is_none() && self.empty_after.is_none()
    }
}

/// Cylinders, the gas in them, and what they stand in.
#[derive(Clone, Copy)]
pub struct Store<'r> {
    /// The gas.
    pub gas: &'r Gas,
    /// Pressure of the air.
    pub ambient: AbsolutePressure,
    /// The cylinders.
    pub cylinder: &'r Cylinder,
    /// How many they are.
    pub count: u32,
    /// What is in them.
    pub charge: Charge,
    /// Temperature of the air they stand in.
    pub air: Temperature,
}

impl Store<'_> {
    /// The end of a draw, no colder than where the regulator starves and lets no more through than the wall boils.
    fn draw(&self, gas: MassFlow, time: Duration, needs: GaugePressure) -> CheckedResult<Draw> {
        let needed = needs.to_absolute(self.ambient);
        let mut end = self.cylinder.draw(self.gas, self.charge, self.air, gas, time, needed)?;
        if end.too_cold_after.is_some() {
            let starves = self.gas.mixture().boiling_temperature(needed)?;
            let coldest = if starves < self.charge.temperature { starves } else { self.charge.temperature };
            if end.temperature < coldest {
                end.temperature = coldest;
                end.pressure = self.gas.mixture().saturated(coldest)?.pressure;
            }
        }
        Ok(end)
    }

    /// Gauge pressure in them before anything is drawn.
    pub fn pressure(&self) -> CheckedResult<GaugePressure> {
        Ok(self.gas.mixture().saturated(self.charge.temperature)?.pressure.to_gauge(self.ambient))
    }

    /// What they make of a draw, for a time and steadily.
    pub fn row(&self, gas: MassFlow, needs: GaugePressure, used: Duration) -> CheckedResult<CylinderRow> {
        let there = needs.to_absolute(self.ambient);
        let steady = self.cylinder.steady_draw(self.gas, self.charge.mass, self.air, there)?;
        let flow = gas.kilograms_per_second();
        let lasts = |mass: Mass| (flow > 0.0).then(|| Duration::from_seconds(mass.kilograms() / flow));
        let most = Duration::from_seconds(Input::Duration.range().max);
        let till_empty = lasts(self.charge.mass).filter(|time| *time < most).unwrap_or(most);
        let number = f64::from(self.count) * flow / steady.kilograms_per_second();
        let range = Input::CylinderCount.range();
        Ok(CylinderRow {
            needs,
            steady,
            keeps_up: gas <= steady,
            too_cold_after: self.draw(gas, till_empty, needs)?.too_cold_after,
            lasts: lasts(self.charge.mass),
            full_lasts: lasts(self.cylinder.capacity()),
            used,
            end: self.draw(gas, used, needs)?,
            cylinders_needed: (number <= range.max).then(|| rounded_up(number).max(range.min) as u32),
        })
    }
}

/// Works out the cylinders of a burner file.
pub(crate) fn cylinder(
    plant: &Plant,
    settings: &[Setting],
    work: Option<&Setting>,
    firing: &Firing,
) -> Result<Option<CylinderBlock>, Refusal> {
    let (Some(entry), Some(cylinder)) = (plant.entries.supply.cylinder, &plant.before.cylinder) else {
        return Ok(None);
    };
    let refuse = |error: crate::Error| Place::section("cylinder").refused(error);
    let left = entry.contents * f64::from(entry.count);
    let charge = Charge { mass: left, temperature: entry.temperature };
    let (ambient, air) = (plant.site.ambient_pressure(), entry.temperature);
    let store = Store { gas: &plant.gas, ambient, cylinder, count: entry.count, charge, air };
    let mut rows = Vec::new();
    for (index, setting) in settings.iter().enumerate() {
        let used = setting.entry.minutes.unwrap_or(Duration::from_seconds(AN_HOUR));
        let row = store.row(setting.gas, needs(plant, setting.gauge), used);
        let _ = rows.push(row.map_err(Place::entry("setting", index, "gauge").refusing())?);
    }
    let work_row = match work {
        Some(fire) => {
            let used = fire.entry.minutes.unwrap_or(Duration::from_seconds(AN_HOUR));
            let row = store.row(fire.gas, needs(plant, fire.gauge), used);
            Some(row.map_err(Place::section("work").refusing())?)
        }
        None => None,
    };
    Ok(Some(CylinderBlock {
        capacity: cylinder.capacity(),
        left,
        count: entry.count,
        air: entry.temperature,
        pressure: store.pressure().map_err(refuse)?,
        rows,
        work: work_row,
        cost: plant.entries.gas.price.map(|price| price.per_kilogram() * entry.capacity.kilograms()),
        run: run(plant, store, settings, work, firing).map_err(refuse)?,
    }))
}

/// What the regulator needs before it for a reading; no less than the reading itself.
fn needs(plant: &Plant, gauge: GaugePressure) -> GaugePressure {
    match plant.entries.supply.regulator.as_ref().and_then(|regulator| regulator.minimum_inlet_pressure) {
        Some(needs) if needs > gauge => needs,
        Some(_) => gauge,
        None => GaugePressure::from_pascals(gauge.pascals() + OVER_READING),
    }
}

fn run(
    plant: &Plant,
    mut store: Store<'_>,
    settings: &[Setting],
    work: Option<&Setting>,
    firing: &Firing,
) -> CheckedResult<Option<CylinderRun>> {
    if firing.stages.is_empty() {
        return Ok(None);
    }
    let (mut at, mut gas) = (Duration::from_seconds(0.0), Mass::from_kilograms(0.0));
    let (mut too_cold_after, mut empty_after) = (None, None);
    for (fired, time, mass) in firing.fires().filter(|(_, time, _)| time.seconds() > 0.0) {
        let Some(fire) = fired.of(settings, work) else { continue };
        gas = gas + mass;
        if empty_after.is_none() {
            let rate = MassFlow::from_kilograms_per_second(mass.kilograms() / time.seconds());
            let end = store.draw(rate, time, needs(plant, fire.gauge))?;
            too_cold_after = too_cold_after.or(end.too_cold_after.map(|after| at + after));
            empty_after = end.empty_after.map(|after| at + after);
            store.charge = Charge { mass: end.left, temperature: end.temperature };
        }
        at = at + time;
    }
    let Charge { mass: left, temperature: liquid } = store.charge;
    Ok(Some(CylinderRun { by_plan: firing.by_furnace, gas, left, liquid, too_cold_after, empty_after }))
}
