//! The burner of a sheet, and its settings, for a chip.

use heapless::Vec;

use crate::control::{ChipBurner, ChipSetting, NAME_CAP};
use crate::plant::evaluation::Sheet;

impl Sheet {
    /// What a chip needs of it; none without blower and head. Settings beyond the twelfth, and those whose air the
    /// blower cannot give, are left out.
    #[must_use]
    pub fn for_chip(&self) -> Option<ChipBurner> {
        let burner = self.plant.burner.clone()?;
        let mut settings = Vec::new();
        for setting in &self.settings {
            let Some(air) = setting.air.as_ref().filter(|air| air.running.is_some()) else { continue };
            let made = ChipSetting {
                name: setting.entry.name.bytes().take(NAME_CAP).collect(),
                gauge: setting.gauge,
                at_jet: setting.at_jet,
                gas_temperature: setting.gas_temperature,
                opening: air.opening.unwrap_or(1.0),
                chamber_temperature: setting
                    .entry
                    .chamber_temperature
                    .unwrap_or(self.plant.conditions.chamber_temperature),
            };
            if settings.push(made).is_err() {
                break;
            }
        }
        Some(ChipBurner { burner, conditions: self.plant.conditions, settings })
    }
}
