//! The work of the furnace and its own fire: as a setting of gauge and damper, or out of reach.

use std::format;
use std::prelude::rust_2024::*;

use crate::combustion::AirNeed;
use crate::file::burner_file::BurnerFile;
use crate::file::error::FileError;
use crate::furnace::Lining;
use crate::furnace::warming::{Leg, Warming};
use crate::furnace::work::Melt;
use crate::plant::entries::WorkEntry;
use crate::plant::entries::{AirAim, GasAim, SettingEntry};
use crate::plant::evaluation::{Setting, setting};
use crate::plant::installation::Assembled;
use crate::quantity::{HeatRate, Power, Temperature};

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
    file: &BurnerFile,
    rig: &Assembled,
    work: &WorkEntry,
    lining: &Lining,
    warming: &mut Warming<'_>,
    temperature: Temperature,
    available: &impl Fn(Temperature) -> f64,
) -> Result<WorkBlock, FileError> {
    let air = rig.site.air_temperature();
    if work.temperature >= temperature || work.temperature <= air {
        let accepted = format!(
            "accepted is between the air and the chamber, {:.0} C to {:.0} C",
            air.celsius(),
            temperature.celsius()
        );
        return Err(file.refuse("work.temperature", accepted));
    }
    let room = lining.take_off().chamber_volume;
    if work.charge.volume() > room {
        let text = format!(
            "the work fills {:.1} L even when it is dense, and the chamber has {:.1} L",
            1e3 * work.charge.volume(),
            1e3 * room
        );
        return Err(file.refuse("work.mass", text));
    }
    let heat = work.charge.heat(air, work.temperature).map_err(|error| file.refuse("work.temperature", error))?;
    let power = Power::from_watts(heat / work.time.seconds());
    let melt = work.charge.melt(temperature, air, work.temperature, FILM).ok();
    let leg = warming.hold(temperature, work.time, power, available).ok();
    let setting = leg.and_then(|leg| {
        let entry = SettingEntry {
            name: crate::plant::entries::shortened(THE_WORK),
            gas: GasAim::Heat(HeatRate::Net(leg.mean_fire())),
            air: AirAim::AirRatio(file.entries.air_ratio),
            chamber_temperature: None,
            minutes: Some(work.time),
            purpose: None,
        };
        let need = AirNeed::new(&rig.gas, &rig.site);
        setting(file, rig, &need, &entry).ok()
    });
    Ok(WorkBlock { heat, power, melt, leg, setting })
}
