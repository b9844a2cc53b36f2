//! The sheet: every number of it, before any of it is printed.

use std::prelude::rust_2024::*;
use std::string::ToString;
use std::{format, vec};

use super::advice::advice;
use super::assembled::{Assembled, assemble};
use super::burner_file::BurnerFile;
use super::caution::{Caution, cautions};
use super::entries::{AirAim, GasAim, SettingEntry};
use super::file_error::FileError;
use super::furnace::{FurnaceBlock, furnace};
use super::furnace_caution::furnace_cautions;
use super::uncertainty::{SettingSure, sure_settings};
use crate::Input;
use crate::air::Duty;
use crate::burner::{AirSetting, Conditions, Demand, Remedies, Running};
use crate::combustion::AirNeed;
use crate::error::{Error, Result as CheckedResult};
use crate::orifice::{Drill, DrillList, Jet, JetFlow, Supply, pressure_for_heat};
use crate::quantity::{
    Duration, GaugePressure, GrossHeatRate, HeatRate, Mass, MassFlow, NetHeatRate, PressureDifference,
};

/// Most rows of the table by the gauge.
const MOST_RUNGS: usize = 9;

/// A whole shop sheet.
pub struct Sheet {
    /// The file it was made from.
    pub file: BurnerFile,
    /// The rooms' types of it.
    pub rig: Assembled,
    /// Air the gas needs here.
    pub air_need: AirNeed,
    /// The settings, in the file's order.
    pub settings: Vec<Setting>,
    /// Heat and air over round gauge readings.
    pub rungs: Vec<Rung>,
    /// The blower against the largest fire of the file; none without blower and head.
    pub air: Option<AirBlock>,
    /// The furnace; none without its layers.
    pub furnace: Option<FurnaceBlock>,
    /// How sure each setting is.
    pub sure: Vec<Option<SettingSure>>,
    /// What the numbers warn of.
    pub cautions: Vec<Caution>,
}

/// One setting worked out. Gas, heat and air are those of all heads.
pub struct Setting {
    /// The entry of the file.
    pub entry: SettingEntry,
    /// What to set the gauge to.
    pub gauge: GaugePressure,
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
    pub wrong_drills: [Option<WrongDrill>; 2],
    /// Gas burnt in the setting's time.
    pub gas_used: Option<Mass>,
    /// Money for it.
    pub cost: Option<f64>,
    /// Money an hour.
    pub cost_per_hour: Option<f64>,
}

/// The air side of a setting.
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
pub struct WrongDrill {
    /// The drill.
    pub drill: Drill,
    /// The gauge; none when no reading in range gives the fire.
    pub gauge: Option<GaugePressure>,
}

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

/// The blower against the largest fire of the file.
pub struct AirBlock {
    /// Which setting it is judged at.
    pub setting: usize,
    /// The air ratio it is judged at.
    pub air_ratio: f64,
    /// What that setting asks, damper wide open.
    pub demand: Demand,
    /// The same as a blower's duty; none when no blower makes so much pressure.
    pub duty: Option<Duty>,
    /// What the blower has over it, Pa; below zero when it is too small.
    pub surplus: PressureDifference,
    /// The highest gauge it can feed, damper wide open; none when it feeds no setting.
    pub highest_gauge: Option<GaugePressure>,
    /// The fire there.
    pub largest_fire: Option<(GrossHeatRate, NetHeatRate)>,
}

/// Works out the sheet of a burner file, with gauge readings that are round in bar or in psi.
///
/// # Errors
///
/// [`FileError`] naming the field that a room refuses.
pub fn compose(file: BurnerFile, round_in_psi: bool) -> Result<Sheet, FileError> {
    let rig = assemble(&file)?;
    let air_need = AirNeed::new(&rig.gas, &rig.site);
    let mut settings = vec![];
    for (index, entry) in file.settings.iter().enumerate() {
        let field = match entry.gas {
            GasAim::Gauge(_) => "gauge",
            GasAim::Heat(_) => "heat",
        };
        let place = format!("setting[{}].{field}", index + 1);
        let setting = setting(&file, &rig, &air_need, entry).map_err(|error| file.refuse(&place, advice(&error)))?;
        settings.push(setting);
    }
    let largest = largest(&settings);
    let air = air_block(&file, &rig, &settings, largest).map_err(|error| file.refuse("blower", error))?;
    let rungs = rungs(&file, &rig, &settings[largest], &settings, round_in_psi);
    let furnace = furnace(&file, &rig, &air_need, &settings, largest)?;
    let sure = sure_settings(&file, &rig, &settings);
    let of_furnace = furnace.as_ref().map_or(vec![], |block| furnace_cautions(&file, block));
    let cautions = cautions(&rig, &settings, air.as_ref(), of_furnace);
    Ok(Sheet { file, rig, air_need, settings, rungs, air, furnace, sure, cautions })
}

/// The setting with the most gas.
fn largest(settings: &[Setting]) -> usize {
    let mut largest = 0;
    for (index, setting) in settings.iter().enumerate() {
        if setting.gas > settings[largest].gas {
            largest = index;
        }
    }
    largest
}

/// The conditions of one setting: its own chamber temperature if it has one.
pub(super) fn conditions_of(rig: &Assembled, entry: &SettingEntry) -> Conditions {
    let chamber_temperature = entry.chamber_temperature.unwrap_or(rig.conditions.chamber_temperature);
    Conditions { chamber_temperature, ..rig.conditions }
}

pub(super) fn supply(rig: &Assembled, gauge: GaugePressure, back: GaugePressure) -> Supply {
    let back = if back > gauge { gauge } else { back };
    Supply { ambient: rig.site.ambient_pressure(), gauge, back, temperature: rig.conditions.gas_temperature }
}

fn setting(file: &BurnerFile, rig: &Assembled, need: &AirNeed, entry: &SettingEntry) -> CheckedResult<Setting> {
    let conditions = conditions_of(rig, entry);
    let open_air = GaugePressure::from_pascals(0.0);
    let mut gauge = match entry.gas {
        GasAim::Gauge(gauge) => gauge,
        GasAim::Heat(heat) => match &rig.burner {
            Some(burner) => burner.gauge_for_heat(&conditions, heat, air_setting(entry))?,
            None => pressure_for_heat(&rig.jet, &rig.gas, &supply(rig, open_air, open_air), heat)?,
        },
    };
    let mut air = match &rig.burner {
        Some(_) => Some(setting_air(file, rig, &conditions, gauge, entry.air)?),
        None => None,
    };
    // A heat was sought at the air ratio asked; where that is out of reach, it is sought at the air there is.
    if let (GasAim::Heat(heat), Some(burner), Some(found)) = (entry.gas, &rig.burner, &air) {
        if found.too_much_air || found.shortfall.is_some() {
            let opening = AirSetting::Opening(found.opening.unwrap_or(1.0));
            if let Ok(there) = burner.gauge_for_heat(&conditions, heat, opening) {
                gauge = there;
                air = Some(setting_air(file, rig, &conditions, gauge, entry.air)?);
            }
        }
    }
    let running = air.as_ref().and_then(|air| air.running);
    let jet = match running {
        Some(running) => running.jet,
        None => rig.jet.flow(&rig.gas, &supply(rig, gauge, open_air))?,
    };
    let gas = jet.mass_flow * rig.heads;
    let heat_gross = rig.gas.gross_heating_value().of(gas);
    let heat_net = rig.gas.net_heating_value().of(gas);
    let back = running.map_or(open_air, |running| running.back_pressure);
    let used = |duration: Duration| Mass::from_kilograms(gas.kilograms_per_second() * duration.seconds());
    let price = |mass: Mass| file.gas.price.map(|price| price.per_kilogram() * mass.kilograms());
    let gas_used = entry.minutes.map(used);
    Ok(Setting {
        gauge,
        jet,
        gas,
        heat_gross,
        heat_net,
        saturation_ratio: rig
            .gas
            .mixture()
            .saturation_ratio(gauge.to_absolute(rig.site.ambient_pressure()), rig.conditions.gas_temperature),
        air_needed: need.air_for(gas, 1.0)?,
        air,
        wrong_drills: wrong_drills(rig, &supply(rig, gauge, back), &jet, &file.jet.shape),
        gas_used,
        cost: gas_used.and_then(price),
        cost_per_hour: price(used(Duration::from_hours(1.0))),
        entry: entry.clone(),
    })
}

fn air_setting(entry: &SettingEntry) -> AirSetting {
    match entry.air {
        AirAim::Damper(opening) => AirSetting::Opening(opening),
        AirAim::AirRatio(ratio) => AirSetting::Ratio(ratio),
    }
}

fn setting_air(
    file: &BurnerFile,
    rig: &Assembled,
    conditions: &Conditions,
    gauge: GaugePressure,
    aim: AirAim,
) -> CheckedResult<SettingAir> {
    let Some(burner) = &rig.burner else {
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
                (if file.damper.is_some() { narrowest } else { 1.0 }, true, None)
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
        (Some(_), AirAim::AirRatio(ratio)) => Some(burner.remedies(conditions, &file.jet.shape, gauge, ratio)?),
        _ => None,
    };
    Ok(SettingAir { opening: file.damper.map(|_| opening), running, too_much_air, shortfall, remedies })
}

/// The sizes either side of the jet, with the gauge that gives the same gas into the same air.
fn wrong_drills(
    rig: &Assembled,
    supply: &Supply,
    flow: &JetFlow,
    shape: &crate::orifice::BoreShape,
) -> [Option<WrongDrill>; 2] {
    let bore = rig.jet.bore.diameter();
    let list = rig.drill.map_or(DrillList::Number, Drill::list);
    let below = list.drills().take_while(|drill| drill.diameter().meters() < bore.meters() * (1.0 - 1e-6)).last();
    let (_, above) = list.neighbors(bore);
    [below, above].map(|drill| {
        let drill = drill?;
        let gauge = rig
            .jet
            .with_bore(shape, drill.diameter())
            .and_then(|jet: Jet| pressure_for_heat(&jet, &rig.gas, supply, HeatRate::Net(flow.heat_net)));
        Some(WrongDrill { drill, gauge: gauge.ok() })
    })
}

fn air_block(
    file: &BurnerFile,
    rig: &Assembled,
    settings: &[Setting],
    largest: usize,
) -> CheckedResult<Option<AirBlock>> {
    let (Some(burner), Some(blower)) = (&rig.burner, &file.blower) else {
        return Ok(None);
    };
    let setting = &settings[largest];
    let conditions = conditions_of(rig, &setting.entry);
    let air_ratio = match setting.entry.air {
        AirAim::AirRatio(ratio) => ratio,
        AirAim::Damper(_) => file.air_ratio,
    };
    let demand = burner.demand(&conditions, setting.gauge, air_ratio)?;
    let surplus = PressureDifference::from_pascals(burner.surplus(&conditions, &demand)?);
    let highest_gauge = burner.highest_gauge(&conditions, air_ratio).ok();
    let largest_fire = match highest_gauge {
        Some(gauge) => {
            let gas = burner.demand(&conditions, gauge, air_ratio)?.gas;
            Some((rig.gas.gross_heating_value().of(gas), rig.gas.net_heating_value().of(gas)))
        }
        None => None,
    };
    let duty = burner.duty(&conditions, &demand, blower.efficiency).ok();
    Ok(Some(AirBlock { setting: largest, air_ratio, demand, duty, surplus, highest_gauge, largest_fire }))
}

/// Round gauge readings from under the lowest setting to over the highest.
fn rungs(file: &BurnerFile, rig: &Assembled, main: &Setting, settings: &[Setting], psi: bool) -> Vec<Rung> {
    const ROUND: [f64; 17] =
        [0.25, 0.5, 1.0, 1.5, 2.0, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0, 12.0, 15.0, 20.0, 30.0, 40.0, 60.0];
    let readings = ROUND
        .map(|round| if psi { GaugePressure::from_psi(round) } else { GaugePressure::from_kilopascals(5.0 * round) });
    let lowest = settings.iter().map(|setting| setting.gauge.pascals()).fold(f64::INFINITY, f64::min);
    let highest = main.gauge.pascals();
    let within = |gauge: &GaugePressure| gauge.pascals() > 0.4 * lowest && gauge.pascals() < 1.7 * highest;
    let mut chosen: Vec<_> = readings.into_iter().filter(within).collect();
    while chosen.len() > MOST_RUNGS {
        chosen.remove(0);
    }
    chosen.into_iter().filter_map(|gauge| rung(file, rig, main, gauge).ok()).collect()
}

fn rung(file: &BurnerFile, rig: &Assembled, main: &Setting, gauge: GaugePressure) -> CheckedResult<Rung> {
    let conditions = conditions_of(rig, &main.entry);
    let left = main.air.as_ref().and_then(|air| air.opening).unwrap_or(1.0);
    let (gas, air_ratio, opening) = match &rig.burner {
        Some(burner) => {
            let running = burner.run(&conditions, gauge, left)?;
            (running.gas, running.air_ratio, Some(burner.opening_for(&conditions, gauge, file.air_ratio)))
        }
        None => {
            let flow = rig.jet.flow(&rig.gas, &supply(rig, gauge, GaugePressure::from_pascals(0.0)))?;
            (flow.mass_flow * rig.heads, None, None)
        }
    };
    Ok(Rung {
        gauge,
        gas,
        heat_gross: rig.gas.gross_heating_value().of(gas),
        heat_net: rig.gas.net_heating_value().of(gas),
        air_ratio_damper_left: air_ratio,
        opening: opening.and_then(CheckedResult::ok),
        too_much_air: matches!(opening, Some(Err(Error::NoSolution { input: Input::DamperOpening, .. }))),
    })
}

impl Sheet {
    /// Gas and money of all settings that have a time; none when no setting has one.
    #[must_use]
    pub fn evening(&self) -> Option<(Duration, Mass, Option<f64>)> {
        let timed: Vec<_> = self.settings.iter().filter(|setting| setting.gas_used.is_some()).collect();
        if timed.is_empty() {
            return None;
        }
        let seconds = timed.iter().filter_map(|setting| setting.entry.minutes).map(Duration::seconds).sum();
        let mass = timed.iter().filter_map(|setting| setting.gas_used).map(Mass::kilograms).sum();
        let cost = timed.iter().map(|setting| setting.cost).sum::<Option<f64>>();
        Some((Duration::from_seconds(seconds), Mass::from_kilograms(mass), cost))
    }

    /// What made the jet, in words.
    #[must_use]
    pub fn jet_name(&self) -> String {
        self.rig.drill.map_or_else(|| "measured bore".into(), |drill| drill.to_string())
    }
}
