//! What every question of lighting stands on: how cold the gas comes, the damper left alone, the head and the chamber.

use crate::Input;
use crate::burner::{AirSetting, Conditions, GLOW_CELSIUS, Glow};
use crate::combustion::{LimitStandard, burning_range};
use crate::error::Error;
use crate::furnace::{Chamber, Lining};
use crate::plant::chamber::{chamber, lining};
use crate::plant::entries::Entries;
use crate::plant::installation::Plant;
use crate::plant::lighting_gauge::Known;
use crate::plant::refusal::{Place, Reason, Refusal};
use crate::plant::setting::largest_fire;
use crate::quantity::{Power, Temperature, Volume};

/// What lighting is worked out with.
#[derive(Clone, Copy, Debug)]
pub struct Lit {
    /// The chamber at work, the gas as cold as at the largest setting, whatever the gauge.
    pub conditions: Conditions,
    /// The opening the damper is left at; 1 without a damper.
    pub left: f64,
    /// The head's constant, none until a lighting setting was seen, and the chamber.
    pub known: Known,
}

impl Plant {
    /// What lighting is worked out with; none without blower and head, or for a gas without limits of burning.
    ///
    /// # Errors
    ///
    /// [`Refusal`] of a setting, a panel or what was seen of the lighting.
    pub fn lit(&self) -> Result<Option<Lit>, Refusal> {
        let cold = self.conditions.cold();
        let burns = burning_range(&self.gas, &self.site, cold.mixture_temperature, LimitStandard::Nfpa497);
        if self.burner.is_none() || burns.is_err() {
            return Ok(None);
        }
        let (gas_temperature, opening) = largest_fire(self)?;
        let glow = match &self.entries.furnace {
            Some(entry) => {
                let lining = lining(entry)?;
                let chamber = chamber(self, entry, &lining)?;
                glow(&self.entries, Some((&lining, &chamber)))
            }
            None => glow(&self.entries, None),
        };
        self.lit_with(gas_temperature, opening.unwrap_or(1.0), glow)
    }

    /// The same where the largest setting and the chamber are known.
    pub(crate) fn lit_with(
        &self,
        gas_temperature: Temperature,
        left: f64,
        chamber: Glow,
    ) -> Result<Option<Lit>, Refusal> {
        let Some(burner) = &self.burner else { return Ok(None) };
        let conditions = Conditions { gas_temperature, ..self.conditions };
        let mut known = Known { head_constant: None, seen_air_ratio: None, chamber };
        let seen = self.entries.lighting.as_ref().and_then(|entry| entry.lights_at.map(|gauge| (gauge, entry.damper)));
        if let Some((gauge, damper)) = seen {
            let air = AirSetting::Opening(damper.unwrap_or(left));
            let constant = self
                .lit_at_jet(&conditions, gauge, air)
                .and_then(|at_jet| burner.head_constant(&conditions, at_jet, air))
                .map_err(|error| Place::key("lighting", "lights_at").because(not_believed(error)))?;
            known.head_constant = Some(constant);
            known.seen_air_ratio = self.lighting(&conditions, gauge, air, &known).ok().and_then(|seen| seen.air_ratio);
        }
        Ok(Some(Lit { conditions, left, known }))
    }
}

/// Why a setting that was seen to light cannot be believed.
fn not_believed(error: Error) -> Reason {
    match error {
        Error::NoSolution { input: Input::AirRatio, nearest: ratio }
        | Error::OutOfRange { input: Input::AirRatio, given: ratio } => {
            Reason::SeenOutsideLimits { air_ratio: f64::from(ratio) }
        }
        other => Reason::Refused(other),
    }
}

/// The chamber: its panels and layers where it has them, else what the lighting's section says.
pub(crate) fn glow(entries: &Entries, furnace: Option<(&Lining, &Chamber)>) -> Glow {
    let entry = entries.lighting.as_ref();
    let Some((lining, chamber)) = furnace else {
        return Glow {
            volume: entry.and_then(|entry| entry.chamber_volume),
            loss: entry.and_then(|entry| entry.glow_loss),
        };
    };
    // Walls and openings at steady state, with nothing going up the flue.
    let balance = chamber.fire_for(Temperature::from_celsius(GLOW_CELSIUS), Power::from_watts(0.0), |_| 1.0);
    Glow {
        volume: Some(Volume::from_cubic_meters(lining.take_off().chamber_volume)),
        loss: balance.ok().map(|balance| Power::from_watts(balance.walls.watts() + balance.openings.watts())),
    }
}
