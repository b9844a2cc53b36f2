//! One setting of the burner worked out: gas, heat and air at its gauge and damper.

use crate::Input;
use crate::burner::{AirSetting, Conditions, Remedies, Running};
use crate::error::{Error, Result as CheckedResult};
use crate::orifice::{BoreShape, Drill, DrillList, Jet, JetFlow, Supply, pressure_for_heat};
use crate::plant::carbon_monoxide::carbon_monoxide;
use crate::plant::entries::{AirAim, GasAim, SettingEntry};
use crate::plant::installation::Plant;
use crate::plant::refusal::{Place, Reason, Refusal};
use crate::quantity::{
    Duration, GaugePressure, GrossHeatRate, HeatRate, Mass, MassFlow, NetHeatRate, PressureDifference, Temperature,
};

/// One setting worked out. Gas, heat and air are those of all heads.
#[derive(Clone, Debug)]
pub struct Setting {
    /// The entry of the file.
    pub entry: SettingEntry,
    /// What to set the gauge to.
    pub gauge: GaugePressure,
    /// What the line leaves of it at the jet.
    pub at_jet: GaugePressure,
    /// How cold the gas comes.
    pub gas_temperature: Temperature,
    /// The jets of one head.
    pub jet: JetFlow,
    /// Gas.
    pub gas: MassFlow,
    /// Fire, gross.
    pub heat_gross: GrossHeatRate,
    /// Fire, net.
    pub heat_net: NetHeatRate,
    /// Supply pressure over its dew-point pressure.
    pub saturation_ratio: f64,
    /// Air that just burns it.
    pub air_needed: MassFlow,
    /// The air side; none without blower and head.
    pub air: Option<SettingAir>,
    /// The size below and the size above, with the gauge that gives this fire.
    pub other_drillss: [Option<WrongDrill>; 2],
    /// Carbon monoxide of its products, by volume, dry, at the hottest of its own chamber, the chamber at work and a
    /// glow; none without an air ratio that a flame is worked out for.
    pub carbon_monoxide: Option<f64>,
    /// Gas burnt in the setting's time.
    pub gas_used: Option<Mass>,
    /// Money for it.
    pub cost: Option<f64>,
    /// Money an hour.
    pub cost_per_hour: Option<f64>,
}

/// The air side of a setting.
#[derive(Clone, Debug)]
pub struct SettingAir {
    /// Where to set the damper; none without one.
    pub opening: Option<f64>,
    /// The burner at work there; none when the mixture would blow back into the blower.
    pub running: Option<Running>,
    /// Whether the damper at its narrowest, or the want of one, still gives more than the air ratio asked.
    pub too_much_air: bool,
    /// What the blower lacks for the air ratio asked, damper wide open.
    pub shortfall: Option<PressureDifference>,
    /// What would cure it.
    pub remedies: Option<Remedies>,
}

impl SettingAir {
    /// Air supplied over air needed.
    #[must_use]
    pub fn air_ratio(&self) -> Option<f64> {
        self.running.and_then(|running| running.air_ratio)
    }
}

/// A drill one size off, and the gauge that gives the same fire with it.
#[derive(Clone, Debug)]
pub struct WrongDrill {
    /// The drill.
    pub drill: Drill,
    /// The gauge; none when no reading in range gives the fire.
    pub gauge: Option<GaugePressure>,
}

impl WrongDrill {
    /// With what the gauge reads instead of the pressure at the jets.
    fn read(self, plant: &Plant, conditions: &Conditions, gas: MassFlow) -> Self {
        Self { gauge: self.gauge.and_then(|at_jet| plant.reading(conditions, at_jet, gas).ok()), ..self }
    }
}

/// Which fire.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fired {
    /// A setting, counted from 0.
    Setting(usize),
    /// The fire of the furnace's work.
    Work,
}

impl Fired {
    /// The fire itself.
    #[must_use]
    pub fn of<'s>(self, settings: &'s [Setting], work: Option<&'s Setting>) -> Option<&'s Setting> {
        match self {
            Fired::Setting(index) => settings.get(index),
            Fired::Work => work,
        }
    }
}

/// The setting with the most gas.
pub(crate) fn largest(settings: &[Setting]) -> usize {
    let mut largest = 0;
    for (index, setting) in settings.iter().enumerate() {
        if setting.gas > settings[largest].gas {
            largest = index;
        }
    }
    largest
}

/// The conditions of one setting: its own chamber temperature if it has one.
pub(crate) fn conditions_of(plant: &Plant, entry: &SettingEntry) -> Conditions {
    let chamber_temperature = entry.chamber_temperature.unwrap_or(plant.conditions.chamber_temperature);
    Conditions { chamber_temperature, ..plant.conditions }
}

/// How cold the gas of the setting with the most gas comes, and its damper, without the rest of its numbers.
pub(crate) fn largest_fire(plant: &Plant) -> Result<(Temperature, Option<f64>), Refusal> {
    let mut largest: Option<Fire> = None;
    for (index, entry) in plant.entries.settings.iter().enumerate() {
        let (_, fire) = fire_of(plant, entry).map_err(|error| place_of(index, entry).refused(error))?;
        if largest.as_ref().is_none_or(|largest| fire.jet.mass_flow > largest.jet.mass_flow) {
            largest = Some(fire);
        }
    }
    let fire = largest.ok_or(Place::section("setting").because(Reason::Needed))?;
    Ok((fire.conditions.gas_temperature, fire.air.and_then(|air| air.opening)))
}

/// Where a setting says how much gas it burns.
pub(crate) const fn place_of(index: usize, entry: &SettingEntry) -> Place {
    match entry.gas {
        GasAim::Gauge(_) => Place::entry("setting", index, "gauge"),
        GasAim::Heat(_) => Place::entry("setting", index, "heat"),
    }
}

/// The gauge and the fire of an entry.
fn fire_of(plant: &Plant, entry: &SettingEntry) -> CheckedResult<(GaugePressure, Fire)> {
    let conditions = conditions_of(plant, entry);
    let mut gauge = match entry.gas {
        GasAim::Gauge(gauge) => gauge,
        GasAim::Heat(heat) => plant.gauge_for_heat(&conditions, heat, air_setting(entry))?,
    };
    let mut found = fire_at(plant, entry, gauge)?;
    // A heat was sought at the air ratio asked; where that is out of reach, it is sought at the air there is.
    if let (GasAim::Heat(heat), Some(air)) = (entry.gas, &found.air) {
        if air.too_much_air || air.shortfall.is_some() {
            let opening = AirSetting::Opening(air.opening.unwrap_or(1.0));
            if let Ok(there) = plant.gauge_for_heat(&conditions, heat, opening) {
                gauge = there;
                found = fire_at(plant, entry, gauge)?;
            }
        }
    }
    Ok((gauge, found))
}

/// Works out a setting.
pub(crate) fn set(plant: &Plant, entry: &SettingEntry) -> CheckedResult<Setting> {
    let open_air = GaugePressure::from_pascals(0.0);
    let (gauge, found) = fire_of(plant, entry)?;
    let Fire { conditions, at_jet, air, jet } = found;
    let running = air.as_ref().and_then(|air| air.running);
    let gas = jet.mass_flow * plant.heads;
    let heat_gross = plant.gas.gross_heating_value().of(gas);
    let heat_net = plant.gas.net_heating_value().of(gas);
    let back = running.map_or(open_air, |running| running.back_pressure);
    let used = |duration: Duration| Mass::from_kilograms(gas.kilograms_per_second() * duration.seconds());
    let price = |mass: Mass| plant.entries.gas.price.map(|price| price.per_kilogram() * mass.kilograms());
    let gas_used = entry.minutes.map(used);
    let other_drillss = other_drillss(plant, &plant.supply(&conditions, at_jet, back), &jet, &plant.entries.jet.shape);
    Ok(Setting {
        gauge,
        at_jet,
        gas_temperature: conditions.gas_temperature,
        jet,
        gas,
        heat_gross,
        heat_net,
        saturation_ratio: plant
            .gas
            .mixture()
            .saturation_ratio(gauge.to_absolute(plant.site.ambient_pressure()), conditions.gas_temperature),
        air_needed: plant.air_need.air_for(gas, 1.0)?,
        carbon_monoxide: running
            .and_then(|running| running.air_ratio)
            .and_then(|ratio| carbon_monoxide(plant, &conditions, ratio)),
        air,
        other_drillss: other_drillss.map(|wrong| wrong.map(|wrong| wrong.read(plant, &conditions, gas))),
        gas_used,
        cost: gas_used.and_then(price),
        cost_per_hour: price(used(Duration::from_hours(1.0))),
        entry: entry.clone(),
    })
}

/// A setting's fire at a reading.
struct Fire {
    conditions: Conditions,
    at_jet: GaugePressure,
    air: Option<SettingAir>,
    jet: JetFlow,
}

fn fire_at(plant: &Plant, entry: &SettingEntry, gauge: GaugePressure) -> CheckedResult<Fire> {
    let conditions = plant.conditions_at(&conditions_of(plant, entry), gauge)?;
    let open_air = GaugePressure::from_pascals(0.0);
    let ((air, jet), at_jet) = plant.run_at(&conditions, gauge, |at_jet| {
        let air = match &plant.burner {
            Some(_) => Some(setting_air(plant, &conditions, at_jet, entry.air)?),
            None => None,
        };
        Ok(match air.as_ref().and_then(|air| air.running) {
            Some(running) => ((air, running.jet), running.back_pressure),
            None => ((air, plant.jet.flow(&plant.gas, &plant.supply(&conditions, at_jet, open_air))?), open_air),
        })
    })?;
    Ok(Fire { conditions, at_jet, air, jet })
}

fn air_setting(entry: &SettingEntry) -> AirSetting {
    match entry.air {
        AirAim::Damper(opening) => AirSetting::Opening(opening),
        AirAim::AirRatio(ratio) => AirSetting::Ratio(ratio),
    }
}

fn setting_air(plant: &Plant, conditions: &Conditions, gauge: GaugePressure, aim: AirAim) -> CheckedResult<SettingAir> {
    let Some(burner) = &plant.burner else {
        return Err(Error::NoSolution { input: Input::AirFlow, nearest: 0.0 });
    };
    let (opening, too_much_air, shortfall) = match aim {
        AirAim::Damper(opening) => (opening, false, None),
        AirAim::AirRatio(ratio) => match burner.opening_for(conditions, gauge, ratio) {
            Ok(opening) => (opening, false, None),
            Err(Error::NoSolution { input: Input::AirFlow, nearest }) => {
                (1.0, false, Some(PressureDifference::from_pascals(-f64::from(nearest))))
            }
            Err(Error::NoSolution { input: Input::DamperOpening, .. }) => {
                let narrowest = Input::DamperOpening.range().min;
                (if plant.entries.damper.is_some() { narrowest } else { 1.0 }, true, None)
            }
            Err(error) => return Err(error),
        },
    };
    let running = match burner.run(conditions, gauge, opening) {
        Ok(running) => Some(running),
        Err(Error::NoSolution { input: Input::AirFlow, .. }) => None,
        Err(error) => return Err(error),
    };
    let remedies = match (shortfall, aim) {
        (Some(_), AirAim::AirRatio(ratio)) => {
            let mut remedies = burner.remedies(conditions, &plant.entries.jet.shape, gauge, ratio)?;
            remedies.gauge = remedies.gauge.and_then(|at_jet| plant.reading_of(conditions, at_jet).ok());
            Some(remedies)
        }
        _ => None,
    };
    Ok(SettingAir { opening: plant.entries.damper.map(|_| opening), running, too_much_air, shortfall, remedies })
}

/// The sizes either side of the jet, with the gauge that gives the same gas into the same air.
fn other_drillss(plant: &Plant, supply: &Supply, flow: &JetFlow, shape: &BoreShape) -> [Option<WrongDrill>; 2] {
    let bore = plant.jet.bore.diameter();
    let list = plant.drill.map_or(DrillList::Number, Drill::list);
    let below = list.drills().take_while(|drill| drill.diameter().meters() < bore.meters() * (1.0 - 1e-6)).last();
    let (_, above) = list.neighbors(bore);
    [below, above].map(|drill| {
        let drill = drill?;
        let gauge = plant
            .jet
            .with_bore(shape, drill.diameter())
            .and_then(|jet: Jet| pressure_for_heat(&jet, &plant.gas, supply, HeatRate::Net(flow.heat_net)));
        Some(WrongDrill { drill, gauge: gauge.ok() })
    })
}
