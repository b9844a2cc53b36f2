//! Questions of the settings and of the sweep over the gauge, each answered without the rest of the installation.

use heapless::Vec;

use crate::error::Result as CheckedResult;
use crate::plant::answer::{Answer, Number};
use crate::plant::certainty::{SettingSure, sure_settings};
use crate::plant::entries::{AirAim, GasAim, SettingEntry};
use crate::plant::hazards::{Hazards, at_setting, of_burner, of_line, of_setting, of_setting_lighting};
use crate::plant::installation::Plant;
use crate::plant::lighting::{SettingLighting, setting_lighting};
use crate::plant::refusal::{Place, Reason, Refusal};
use crate::plant::setting::{Setting, largest, place_of, set};
use crate::plant::sweep::{MOST_RUNGS, Rung, rungs};

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

/// A gauge reading of the sweep with how sure its numbers are.
pub struct RungAnswer {
    /// The reading.
    pub rung: Rung,
    /// Gas, kg/s.
    pub gas: Number,
    /// Fire, gross, W.
    pub heat_gross: Number,
    /// Fire, net, W.
    pub heat_net: Number,
    /// Air ratio with the damper left where the largest setting has it; none without the air side.
    pub air_ratio: Option<Number>,
}

impl Plant {
    /// A setting of the entries, counted from 0, and what it and the burner warn of.
    ///
    /// # Errors
    ///
    /// [`Refusal`] of a setting that is not there, or whose gauge or heat cannot be.
    pub fn setting(&self, index: usize) -> Result<Answer<SettingAnswer>, Refusal> {
        let entry = self.entry(index)?;
        self.set(index, entry).map_err(|error| place_of(index, entry).refused(error))
    }

    /// A setting that is none of the entries, told of as if it stood there at `index`.
    ///
    /// # Errors
    ///
    /// An input out of its range, or a heat out of reach.
    pub fn set(&self, index: usize, entry: &SettingEntry) -> CheckedResult<Answer<SettingAnswer>> {
        let mut hazards = Hazards::new();
        let found = self.judged(index, entry, &mut hazards)?;
        of_burner(self, found.setting.air.as_ref().map(|_| found.setting.gauge), &mut hazards);
        Ok(Answer { found, hazards })
    }

    /// How sure the numbers of a setting are, and what its uncertainty comes from; none where no gas flows, or where
    /// nothing is known of the bore.
    ///
    /// # Errors
    ///
    /// As [`Plant::setting`].
    pub fn certainty(&self, index: usize) -> Result<Answer<Option<SettingSure>>, Refusal> {
        let Answer { found, hazards } = self.setting(index)?;
        Ok(Answer { found: self.sure(&found.setting), hazards })
    }

    /// What a setting does in a cold chamber and in a glowing one; none without blower and head, or for a gas without
    /// limits of burning. Its ends are not known: the scatter of flames is larger than every input's.
    ///
    /// # Errors
    ///
    /// As [`Plant::setting`], and of what was seen of the lighting.
    pub fn setting_lighting(&self, index: usize) -> Result<Answer<Option<SettingLighting>>, Refusal> {
        let Answer { found, mut hazards } = self.setting(index)?;
        let (Some(burner), Some(lit)) = (&self.burner, self.lit()?) else { return Ok(Answer { found: None, hazards }) };
        let sure = self.sure(&found.setting);
        let lighting = setting_lighting(burner, self, &found.setting, sure.as_ref(), lit.left, &lit.known)
            .map_err(Place::section("head").refusing())?;
        of_setting_lighting(self, &found.setting, &lighting, at_setting(index), &mut hazards);
        Ok(Answer { found: Some(lighting), hazards })
    }

    /// Heat and air over gauge readings that are round in psi or in kPa, the damper left where the largest setting has
    /// it. The readings are the settings of the hazards, counted from 0.
    ///
    /// # Errors
    ///
    /// [`Refusal`] of a setting whose gauge or heat cannot be.
    pub fn sweep(&self, round_in_psi: bool) -> Result<Answer<Vec<RungAnswer, MOST_RUNGS>>, Refusal> {
        let settings = self.settings()?;
        let Some(main) = settings.get(largest(&settings)) else {
            return Err(Place::section("setting").because(Reason::Needed));
        };
        let left = main.air.as_ref().and_then(|air| air.opening).unwrap_or(1.0);
        let mut hazards = Hazards::new();
        of_burner(self, main.air.as_ref().map(|_| main.gauge), &mut hazards);
        let mut found = Vec::new();
        for (index, rung) in rungs(self, main, &settings, round_in_psi).into_iter().enumerate() {
            let (gas, air) = (GasAim::Gauge(rung.gauge), AirAim::Damper(left));
            let entry = SettingEntry { gas, air, minutes: None, ..main.entry.clone() };
            let there = self.judged(index, &entry, &mut hazards);
            let SettingAnswer { gas, heat_gross, heat_net, air_ratio, .. } =
                there.map_err(Place::section("setting").refusing())?;
            // There is room for as many as the sweep has.
            let _ = found.push(RungAnswer { rung, gas, heat_gross, heat_net, air_ratio });
        }
        Ok(Answer { found, hazards })
    }

    fn entry(&self, index: usize) -> Result<&SettingEntry, Refusal> {
        self.entries.settings.get(index).ok_or(Place::section("setting").because(Reason::Needed))
    }

    fn sure(&self, setting: &Setting) -> Option<SettingSure> {
        sure_settings(self, core::slice::from_ref(setting)).first().copied().flatten()
    }

    /// A setting and what it warns of by itself.
    fn judged(&self, index: usize, entry: &SettingEntry, hazards: &mut Hazards) -> CheckedResult<SettingAnswer> {
        let (setting, place) = (set(self, entry)?, at_setting(index));
        of_setting(self, &setting, place, hazards);
        if self.before.line.is_some() {
            hazards.extend(of_line(setting.gauge, setting.at_jet, place));
        }
        let sure = self.sure(&setting);
        Ok(SettingAnswer::new(setting, sure))
    }
}
