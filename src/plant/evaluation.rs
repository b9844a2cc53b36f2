//! An installation evaluated: every question about it answered at once.

use heapless::Vec;

use crate::plant::blower::{AirBlock, air_block};
use crate::plant::certainty::{SettingSure, sure_settings};
use crate::plant::cylinder::{CylinderBlock, cylinder};
use crate::plant::entries::MOST_SETTINGS;
use crate::plant::firing::{Firing, firing};
use crate::plant::furnace::{FurnaceBlock, furnace};
use crate::plant::hazards::{Evaluated, Hazards, of_sheet};
use crate::plant::installation::Plant;
use crate::plant::lighting::{LightingBlock, lighting};
use crate::plant::purge::{Purge, purge};
use crate::plant::refusal::{Place, Refusal};
use crate::plant::setting::{Fired, Setting, largest, place_of, set};
use crate::plant::spreads::least_read;
use crate::plant::sweep::{Rungs, rungs};
use crate::quantity::GaugePressure;

/// The settings of an installation, in the order of its entries.
pub type Settings = Vec<Setting, MOST_SETTINGS>;

/// An installation with every question about it answered.
pub struct Sheet {
    /// The installation.
    pub plant: Plant,
    /// The settings, in the order of the entries.
    pub settings: Settings,
    /// Heat and air over round gauge readings.
    pub rungs: Rungs,
    /// The blower against the largest fire; none without blower and head.
    pub air: Option<AirBlock>,
    /// The furnace; none without its layers.
    pub furnace: Option<FurnaceBlock>,
    /// What lights cold and what burns only in a glowing chamber; none without blower and head.
    pub lighting: Option<LightingBlock>,
    /// How long air purges the chamber before gas.
    pub purge: Purge,
    /// What is done from the blower's start to its stop.
    pub firing: Firing,
    /// The cylinder; none unless described.
    pub cylinder: Option<CylinderBlock>,
    /// How sure each setting is.
    pub sure: Vec<Option<SettingSure>, MOST_SETTINGS>,
    /// What the numbers warn of.
    pub hazards: Hazards,
}

impl Sheet {
    /// The lowest gauge reading that a fire can be set by: lower ones say nothing of it.
    #[must_use]
    pub fn least_read(&self) -> GaugePressure {
        least_read(&self.plant.entries, &self.settings)
    }

    /// One of its fires; none where the work's is out of reach.
    #[must_use]
    pub fn fire(&self, fired: Fired) -> Option<&Setting> {
        fired.of(&self.settings, self.work())
    }

    /// The fire of the furnace's work; none without work, or out of reach.
    #[must_use]
    pub fn work(&self) -> Option<&Setting> {
        self.furnace.as_ref()?.work.as_ref()?.fire()
    }

    /// The fire that the blower is judged at, whether or not the blower feeds it.
    #[must_use]
    pub fn judged(&self, air: &AirBlock) -> &Setting {
        let work = self.furnace.as_ref().and_then(|block| block.work.as_ref()?.setting.as_ref());
        air.judged.of(&self.settings, work).unwrap_or(&self.settings[air.setting])
    }

    /// The same with the table's gauge readings round in psi, or in bar: nothing else differs by it.
    #[must_use]
    pub fn rounded(mut self, in_psi: bool) -> Self {
        self.rungs = rungs(&self.plant, &self.settings[largest(&self.settings)], &self.settings, in_psi);
        self
    }
}

impl Plant {
    /// The settings of the entries, worked out.
    ///
    /// # Errors
    ///
    /// A gauge or a heat that cannot be.
    pub fn settings(&self) -> Result<Settings, Refusal> {
        let mut settings = Vec::new();
        for (index, entry) in self.entries.settings.iter().enumerate() {
            let found = set(self, entry).map_err(|error| place_of(index, entry).refused(error))?;
            let _ = settings.push(found);
        }
        Ok(settings)
    }

    /// Answers every question at once, with gauge readings that are round in bar or in psi.
    ///
    /// # Errors
    ///
    /// [`Refusal`] of the input that cannot be.
    pub fn evaluate(self, round_in_psi: bool) -> Result<Sheet, Refusal> {
        let plant = self;
        let settings = plant.settings()?;
        let largest = largest(&settings);
        let rungs = rungs(&plant, &settings[largest], &settings, round_in_psi);
        let furnace = furnace(&plant, &settings, largest)?;
        let asked = furnace.as_ref().and_then(|block| block.work.as_ref()).and_then(|work| work.setting.as_ref());
        let judged = match asked.filter(|work| work.gas > settings[largest].gas) {
            Some(work) => (Fired::Work, work),
            None => (Fired::Setting(largest), &settings[largest]),
        };
        let air = air_block(&plant, judged, largest).map_err(Place::section("blower").refusing())?;
        let sure = sure_settings(&plant, &settings);
        let lighting = lighting(&plant, &settings, &sure, largest, furnace.as_ref())?;
        let purge = purge(&settings, furnace.as_ref(), lighting.as_ref());
        let firing = firing(&plant, &settings, furnace.as_ref(), lighting.as_ref(), purge);
        let work = furnace.as_ref().and_then(|block| block.work.as_ref()).and_then(|work| work.fire());
        let cylinder = cylinder(&plant, &settings, work, &firing)?;
        let hazards = of_sheet(&Evaluated {
            plant: &plant,
            settings: &settings,
            air: air.as_ref(),
            furnace: plant.entries.furnace.as_ref().zip(furnace.as_ref()),
            cylinder: cylinder.as_ref(),
            lighting: lighting.as_ref(),
        });
        Ok(Sheet { plant, settings, rungs, air, furnace, cylinder, lighting, purge, firing, sure, hazards })
    }
}
