//! One question at a time, each answered without the others.

use crate::error::Result as CheckedResult;
use crate::plant::answer::{Answer, Number};
use crate::plant::certainty::{SettingSure, sure_settings};
use crate::plant::entries::SettingEntry;
use crate::plant::hazards::{Hazards, at_setting, of_burner, of_line, of_setting};
use crate::plant::installation::Plant;
use crate::plant::refusal::{Place, Reason, Refusal};
use crate::plant::setting::{Setting, place_of, set};

/// A setting with how sure its numbers are.
#[derive(Clone, Debug)]
pub struct SettingAnswer {
    /// The setting.
    pub setting: Setting,
    /// Gas, kg/s.
    pub gas: Number,
    /// Fire, gross, W.
    pub heat_gross: Number,
    /// Fire, net, W.
    pub heat_net: Number,
    /// Discharge coefficient of the jets.
    pub discharge_coefficient: Number,
    /// Air supplied over air needed; none without the air side.
    pub air_ratio: Option<Number>,
}

impl SettingAnswer {
    fn new(setting: Setting, sure: Option<SettingSure>) -> Self {
        let gas = sure.map(|sure| sure.gas.relative());
        let coefficient = sure.map(|sure| sure.coefficient.relative());
        let ratio = sure.and_then(|sure| sure.air_ratio).map(|sure| sure.relative());
        Self {
            gas: Number::relative(setting.gas.kilograms_per_second(), gas),
            heat_gross: Number::relative(setting.heat_gross.watts(), gas),
            heat_net: Number::relative(setting.heat_net.watts(), gas),
            discharge_coefficient: Number::relative(setting.jet.discharge_coefficient, coefficient),
            air_ratio: setting.air.as_ref().and_then(|air| air.air_ratio()).map(|value| Number::relative(value, ratio)),
            setting,
        }
    }
}

impl Plant {
    /// A setting of the entries, counted from 0, and what it and the burner warn of.
    ///
    /// # Errors
    ///
    /// [`Refusal`] of a setting that is not there, or whose gauge or heat cannot be.
    pub fn setting(&self, index: usize) -> Result<Answer<SettingAnswer>, Refusal> {
        let missing = Place::section("setting").because(Reason::Needed);
        let entry = self.entries.settings.get(index).ok_or(missing)?;
        self.set(index, entry).map_err(|error| place_of(index, entry).refused(error))
    }

    /// A setting that is none of the entries, told of as if it stood there at `index`.
    ///
    /// # Errors
    ///
    /// An input out of its range, or a heat out of reach.
    pub fn set(&self, index: usize, entry: &SettingEntry) -> CheckedResult<Answer<SettingAnswer>> {
        let setting = set(self, entry)?;
        let mut hazards = Hazards::new();
        of_setting(self, &setting, at_setting(index), &mut hazards);
        of_burner(self, setting.air.as_ref().map(|_| setting.gauge), &mut hazards);
        if self.before.line.is_some() {
            hazards.extend(of_line(setting.gauge, setting.at_jet, at_setting(index)));
        }
        let sure = sure_settings(self, core::slice::from_ref(&setting)).first().copied().flatten();
        Ok(Answer { found: SettingAnswer::new(setting, sure), hazards })
    }
}
