//! The sheet: every number of it, before any of it is printed.

use std::prelude::rust_2024::*;
use std::string::ToString;
use std::{format, vec};

use crate::Input;
use crate::air::Duty;
use crate::burner::{AirSetting, Conditions, Demand, Remedies, Running};
use crate::combustion::AirNeed;
use crate::error::{Error, Result as CheckedResult};
use crate::file::burner_file::BurnerFile;
use crate::file::error::FileError;
use crate::orifice::{Drill, DrillList, Jet, JetFlow, Supply, pressure_for_heat};
use crate::plant::carbon_monoxide::monoxide;
use crate::plant::cylinder::{CylinderBlock, cylinder};
use crate::plant::entries::{AirAim, GasAim, SettingEntry};
use crate::plant::furnace::{FurnaceBlock, furnace};
use crate::plant::hazards::{Evaluated, Hazards, of_sheet};
use crate::plant::installation::{Assembled, assemble};
use crate::plant::lighting::{LightingBlock, least_read, lighting};
use crate::plant::purge::{BlowThrough, blow_through};
use crate::plant::sweep::{Rung, rungs};
use crate::prose::refusals::advice;
use crate::quantity::{
    Duration, GaugePressure, GrossHeatRate, HeatRate, Mass, MassFlow, NetHeatRate, PressureDifference, Temperature,
};
use crate::report::certainty::{SettingSure, sure_settings};

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
    /// What lights cold and what burns only in a glowing chamber; none without blower and head.
    pub lighting: Option<LightingBlock>,
    /// How long air blows through the chamber before gas.
    pub blow_through: BlowThrough,
    /// The cylinder; none unless described.
    pub cylinder: Option<CylinderBlock>,
    /// How sure each setting is.
    pub sure: Vec<Option<SettingSure>>,
    /// What the numbers warn of.
    pub hazards: Hazards,
}

impl Sheet {
    /// The lowest gauge reading that a fire can be set by: lower ones say nothing of it.
    #[must_use]
    pub fn least_read(&self) -> GaugePressure {
        least_read(&self.file, &self.settings)
    }
}

/// One setting worked out. Gas, heat and air are those of all heads.
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
    pub wrong_drills: [Option<WrongDrill>; 2],
    /// Carbon monoxide of its products, by volume, dry, at the hottest of its own chamber, the chamber at work and a
    /// glow; none without an air ratio that a flame is worked out for.
    pub monoxide: Option<f64>,
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

impl WrongDrill {
    /// With what the gauge reads instead of the pressure at the jets.
    fn read(self, rig: &Assembled, conditions: &Conditions, gas: MassFlow) -> Self {
        Self { gauge: self.gauge.and_then(|at_jet| rig.reading(conditions, at_jet, gas).ok()), ..self }
    }
}

/// A drill one size off, and the gauge that gives the same fire with it.
pub struct WrongDrill {
    /// The drill.
    pub drill: Drill,
    /// The gauge; none when no reading in range gives the fire.
    pub gauge: Option<GaugePressure>,
}

/// The blower against the largest fire of the file.
pub struct AirBlock {
    /// The setting with the most gas.
    pub setting: usize,
    /// What it is judged at: that setting, or the work's fire where that is larger.
    pub judged: String,
    /// The gauge there.
    pub gauge: GaugePressure,
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
    for (index, entry) in file.entries.settings.iter().enumerate() {
        let field = match entry.gas {
            GasAim::Gauge(_) => "gauge",
            GasAim::Heat(_) => "heat",
        };
        let place = format!("setting[{}].{field}", index + 1);
        let setting = setting(&file, &rig, &air_need, entry).map_err(|error| file.refuse(&place, advice(&error)))?;
        settings.push(setting);
    }
    let largest = largest(&settings);
    let rungs = rungs(&file, &rig, &settings[largest], &settings, round_in_psi);
    let furnace = furnace(&file, &rig, &air_need, &settings, largest)?;
    let asked = furnace.as_ref().and_then(|block| block.work.as_ref()).and_then(|work| work.setting.as_ref());
    let judged = asked.filter(|work| work.gas > settings[largest].gas).unwrap_or(&settings[largest]);
    let air = air_block(&file, &rig, judged, largest).map_err(|error| file.refuse("blower", error))?;
    let sure = sure_settings(&file, &rig, &settings);
    let cylinder = cylinder(&file, &rig, &settings, furnace.as_ref())?;
    let lighting = lighting(&file, &rig, &settings, largest, furnace.as_ref())?;
    let blow_through = blow_through(&settings, furnace.as_ref(), lighting.as_ref());
    let hazards = of_sheet(&Evaluated {
        rig: &rig,
        settings: &settings,
        air: air.as_ref(),
        furnace: file.entries.furnace.as_ref().zip(furnace.as_ref()),
        cylinder: cylinder.as_ref(),
        lighting: lighting.as_ref(),
    });
    Ok(Sheet { file, rig, air_need, settings, rungs, air, furnace, cylinder, lighting, blow_through, sure, hazards })
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
pub(crate) fn conditions_of(rig: &Assembled, entry: &SettingEntry) -> Conditions {
    let chamber_temperature = entry.chamber_temperature.unwrap_or(rig.conditions.chamber_temperature);
    Conditions { chamber_temperature, ..rig.conditions }
}

/// Works out a setting.
pub(crate) fn setting(
    file: &BurnerFile,
    rig: &Assembled,
    need: &AirNeed,
    entry: &SettingEntry,
) -> CheckedResult<Setting> {
    let conditions = conditions_of(rig, entry);
    let open_air = GaugePressure::from_pascals(0.0);
    let mut gauge = match entry.gas {
        GasAim::Gauge(gauge) => gauge,
        GasAim::Heat(heat) => rig.gauge_for_heat(&conditions, heat, air_setting(entry))?,
    };
    let mut found = fire_at(file, rig, entry, gauge)?;
    // A heat was sought at the air ratio asked; where that is out of reach, it is sought at the air there is.
    if let (GasAim::Heat(heat), Some(air)) = (entry.gas, &found.air) {
        if air.too_much_air || air.shortfall.is_some() {
            let opening = AirSetting::Opening(air.opening.unwrap_or(1.0));
            if let Ok(there) = rig.gauge_for_heat(&conditions, heat, opening) {
                gauge = there;
                found = fire_at(file, rig, entry, gauge)?;
            }
        }
    }
    let Fire { conditions, at_jet, air, jet } = found;
    let running = air.as_ref().and_then(|air| air.running);
    let gas = jet.mass_flow * rig.heads;
    let heat_gross = rig.gas.gross_heating_value().of(gas);
    let heat_net = rig.gas.net_heating_value().of(gas);
    let back = running.map_or(open_air, |running| running.back_pressure);
    let used = |duration: Duration| Mass::from_kilograms(gas.kilograms_per_second() * duration.seconds());
    let price = |mass: Mass| file.entries.gas.price.map(|price| price.per_kilogram() * mass.kilograms());
    let gas_used = entry.minutes.map(used);
    let wrong_drills = wrong_drills(rig, &rig.supply(&conditions, at_jet, back), &jet, &file.entries.jet.shape);
    Ok(Setting {
        gauge,
        at_jet,
        gas_temperature: conditions.gas_temperature,
        jet,
        gas,
        heat_gross,
        heat_net,
        saturation_ratio: rig
            .gas
            .mixture()
            .saturation_ratio(gauge.to_absolute(rig.site.ambient_pressure()), conditions.gas_temperature),
        air_needed: need.air_for(gas, 1.0)?,
        monoxide: running.and_then(|running| running.air_ratio).and_then(|ratio| monoxide(rig, &conditions, ratio)),
        air,
        wrong_drills: wrong_drills.map(|wrong| wrong.map(|wrong| wrong.read(rig, &conditions, gas))),
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

fn fire_at(file: &BurnerFile, rig: &Assembled, entry: &SettingEntry, gauge: GaugePressure) -> CheckedResult<Fire> {
    let conditions = rig.conditions_at(&conditions_of(rig, entry), gauge)?;
    let open_air = GaugePressure::from_pascals(0.0);
    let ((air, jet), at_jet) = rig.run_at(&conditions, gauge, |at_jet| {
        let air = match &rig.burner {
            Some(_) => Some(setting_air(file, rig, &conditions, at_jet, entry.air)?),
            None => None,
        };
        Ok(match air.as_ref().and_then(|air| air.running) {
            Some(running) => ((air, running.jet), running.back_pressure),
            None => ((air, rig.jet.flow(&rig.gas, &rig.supply(&conditions, at_jet, open_air))?), open_air),
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
                (if file.entries.damper.is_some() { narrowest } else { 1.0 }, true, None)
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
            let mut remedies = burner.remedies(conditions, &file.entries.jet.shape, gauge, ratio)?;
            remedies.gauge = remedies.gauge.and_then(|at_jet| rig.reading_of(conditions, at_jet).ok());
            Some(remedies)
        }
        _ => None,
    };
    Ok(SettingAir { opening: file.entries.damper.map(|_| opening), running, too_much_air, shortfall, remedies })
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

fn air_block(file: &BurnerFile, rig: &Assembled, setting: &Setting, largest: usize) -> CheckedResult<Option<AirBlock>> {
    let (Some(burner), Some(blower)) = (&rig.burner, &file.entries.blower) else {
        return Ok(None);
    };
    let conditions = rig.conditions_at(&conditions_of(rig, &setting.entry), setting.gauge)?;
    let air_ratio = match setting.entry.air {
        AirAim::AirRatio(ratio) => ratio,
        AirAim::Damper(_) => file.entries.air_ratio,
    };
    let demand = burner.demand(&conditions, setting.at_jet, air_ratio)?;
    let surplus = PressureDifference::from_pascals(burner.surplus(&conditions, &demand)?);
    let duty = burner.duty(&conditions, &demand, blower.efficiency).ok();
    // The chamber as hot as the file says, whatever this setting finds: the fire that can be kept.
    let conditions = Conditions { chamber_temperature: rig.conditions.chamber_temperature, ..conditions };
    let (highest_gauge, largest_fire) = match burner.highest_gauge(&conditions, air_ratio) {
        Ok(at_jet) => {
            let gas = burner.demand(&conditions, at_jet, air_ratio)?.gas;
            let fire = (rig.gas.gross_heating_value().of(gas), rig.gas.net_heating_value().of(gas));
            (rig.reading(&conditions, at_jet, gas).ok(), Some(fire))
        }
        Err(_) => (None, None),
    };
    let (judged, gauge) = (setting.entry.name.as_str().into(), setting.gauge);
    Ok(Some(AirBlock {
        setting: largest,
        judged,
        gauge,
        air_ratio,
        demand,
        duty,
        surplus,
        highest_gauge,
        largest_fire,
    }))
}

impl Sheet {
    /// What made the jet, in words.
    #[must_use]
    pub fn jet_name(&self) -> String {
        self.rig.drill.map_or_else(|| "measured bore".into(), |drill| drill.to_string())
    }
}
