//! The work of the furnace and its own fire: as a setting of gauge and damper, or out of reach.

use crate::furnace::Lining;
use crate::furnace::warming::{Leg, Warming};
use crate::furnace::work::Melt;
use crate::plant::entries::{AirAim, GasAim, SettingEntry, WorkEntry, shortened};
use crate::plant::installation::Plant;
use crate::plant::refusal::{Place, Reason, Refusal};
use crate::plant::setting::{Setting, set};
use crate::quantity::{HeatRate, Power, Temperature, Volume};

/// Convection of the fire's gases on work, W/(m2 K): common practice, no source.
const FILM: f64 = 30.0;

/// The work and the fire it needs.
pub struct WorkBlock {
    /// Heat of the charge and its crucible, J.
    pub heat: f64,
    /// That heat over the time it may take.
    pub power: Power,
    /// How fast the crucible can take it in this chamber; none without a crucible.
    pub melt: Option<Melt>,
    /// The average fire while it works, straight after warming up; none when no heat is left.
    pub leg: Option<Leg>,
    /// That fire as a setting of gauge and damper, at the file's air ratio; none when no reading in range gives it.
    pub setting: Option<Setting>,
}

/// What the work's fire is called where settings are named.
pub const THE_WORK: &str = "the work";

/// Why the burner cannot make the work's fire.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OutOfReach {
    /// No gauge in range gives it, or no heat is left of it.
    Jet,
    /// The blower cannot feed it.
    Blower,
}

impl WorkBlock {
    /// Why the burner cannot make the work's fire; none when it can.
    #[must_use]
    pub fn out_of_reach(&self) -> Option<OutOfReach> {
        let Some(setting) = &self.setting else { return Some(OutOfReach::Jet) };
        let air = setting.air.as_ref();
        air.is_some_and(|air| air.shortfall.is_some() || air.running.is_none()).then_some(OutOfReach::Blower)
    }

    /// The work's fire as a setting; none when it is out of reach.
    #[must_use]
    pub fn fire(&self) -> Option<&Setting> {
        self.setting.as_ref().filter(|_| self.out_of_reach().is_none())
    }
}

/// Works out the work, straight after warming up.
pub(crate) fn work_block(
    plant: &Plant,
    work: &WorkEntry,
    lining: &Lining,
    warming: &mut Warming<'_>,
    temperature: Temperature,
    available: &impl Fn(Temperature) -> f64,
) -> Result<WorkBlock, Refusal> {
    let air = plant.site.air_temperature();
    if work.temperature >= temperature || work.temperature <= air {
        return Err(Place::key("work", "temperature").because(Reason::WorkTemperature { air, chamber: temperature }));
    }
    let room = lining.take_off().chamber_volume;
    if work.charge.volume() > room {
        let from = Volume::from_cubic_meters;
        let reason = Reason::WorkTooLarge { work: from(work.charge.volume()), chamber: from(room) };
        return Err(Place::key("work", "mass").because(reason));
    }
    let heat = work.charge.heat(air, work.temperature).map_err(Place::key("work", "temperature").refusing())?;
    let power = Power::from_watts(heat / work.time.seconds());
    let melt = work.charge.melt(temperature, air, work.temperature, FILM).ok();
    let leg = warming.hold(temperature, work.time, power, available).ok();
    let setting = leg.and_then(|leg| {
        let entry = SettingEntry {
            name: shortened(THE_WORK),
            gas: GasAim::Heat(HeatRate::Net(leg.mean_fire())),
            air: AirAim::AirRatio(plant.entries.air_ratio),
            chamber_temperature: None,
            minutes: Some(work.time),
            purpose: None,
        };
        set(plant, &entry).ok()
    });
    Ok(WorkBlock { heat, power, melt, leg, setting })
}
