//! The work of the furnace and its own fire: as a setting of gauge and damper, or out of reach.

use crate::furnace::Lining;
use crate::plant::course::ChargeCourse;
use crate::plant::entries::{AirAim, GasAim, SettingEntry, WorkEntry, shortened};
use crate::plant::installation::Plant;
use crate::plant::refusal::{Place, Reason, Refusal};
use crate::plant::setting::{Setting, set};
use crate::quantity::{HeatRate, NetHeatRate, Power, Temperature, Volume};

/// The work and the fire it needs.
pub struct WorkBlock {
    /// Heat of the charge and its crucible, J.
    pub heat: f64,
    /// That heat over the time it may take.
    pub power: Power,
    /// The charge in the furnace, straight after warming up; none without fire.
    pub course: Option<ChargeCourse>,
    /// The fire that heats it in the time it may take, as a setting of gauge and damper at the file's air ratio; none
    /// when no reading in range gives it.
    pub setting: Option<Setting>,
}

/// What the work's fire is called where settings are named.
pub const THE_WORK: &str = "the work";

/// Why the burner cannot make the work's fire.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OutOfReach {
    /// The chamber, kept at its temperature, cannot heat it in that time.
    Chamber,
    /// No gauge in range gives it.
    Jet,
    /// The blower cannot feed it.
    Blower,
}

impl WorkBlock {
    /// Why the burner cannot make the work's fire; none when it can.
    #[must_use]
    pub fn out_of_reach(&self) -> Option<OutOfReach> {
        if self.needed().is_none() {
            return Some(OutOfReach::Chamber);
        }
        let Some(setting) = &self.setting else { return Some(OutOfReach::Jet) };
        let air = setting.air.as_ref();
        air.is_some_and(|air| air.shortfall.is_some() || air.running.is_none()).then_some(OutOfReach::Blower)
    }

    /// The fire that heats it in the time it may take; none where the chamber cannot.
    #[must_use]
    pub fn needed(&self) -> Option<NetHeatRate> {
        let (fire, _) = self.course.as_ref()?.needed?;
        Some(NetHeatRate::from_watts(fire.value))
    }

    /// The work's fire as a setting; none when it is out of reach.
    #[must_use]
    pub fn fire(&self) -> Option<&Setting> {
        self.setting.as_ref().filter(|_| self.out_of_reach().is_none())
    }
}

/// Refuses work that is hotter than the chamber or larger.
pub(crate) fn check_work(
    plant: &Plant,
    work: &WorkEntry,
    lining: &Lining,
    temperature: Temperature,
) -> Result<(), Refusal> {
    let air = plant.site.air_temperature();
    if work.temperature >= temperature || work.temperature <= air {
        return Err(Place::key("work", "temperature").because(Reason::WorkTemperature { air, chamber: temperature }));
    }
    let room = lining.take_off().chamber_volume;
    if work.charge.volume() >= room {
        let from = Volume::from_cubic_meters;
        let reason = Reason::WorkTooLarge { work: from(work.charge.volume()), chamber: from(room) };
        return Err(Place::key("work", "mass").because(reason));
    }
    Ok(())
}

/// Works out the work by what the furnace does with it.
pub(crate) fn work_block(plant: &Plant, work: &WorkEntry, course: Option<ChargeCourse>) -> Result<WorkBlock, Refusal> {
    let air = plant.site.air_temperature();
    let heat = work.charge.heat(air, work.temperature).map_err(Place::key("work", "temperature").refusing())?;
    let power = Power::from_watts(heat / work.time.seconds());
    let setting = course.as_ref().and_then(|course| course.needed).and_then(|(fire, _)| {
        let entry = SettingEntry {
            name: shortened(THE_WORK),
            gas: GasAim::Heat(HeatRate::Net(NetHeatRate::from_watts(fire.value))),
            air: AirAim::AirRatio(plant.entries.air_ratio),
            chamber_temperature: None,
            minutes: Some(work.time),
            purpose: None,
            used_for: None,
        };
        set(plant, &entry).ok()
    });
    Ok(WorkBlock { heat, power, course, setting })
}
