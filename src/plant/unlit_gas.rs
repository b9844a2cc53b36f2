//! Unlit gas in the chamber of a setting, by the wide limits and the unsafe end of its ±.

use crate::burner::{Burner, Conditions, ExplosiveChamber, Glow, UnlitChamber};
use crate::error::Result as CheckedResult;
use crate::plant::certainty::SettingSure;
use crate::plant::installation::Plant;
use crate::quantity::{GaugePressure, Power, Temperature, Volume};

/// A chamber after a flame-out, warm but too cool to ignite gas as it comes, in Celsius: the limit has fallen to half,
/// and the gas swells to twice its volume. Chosen here, no source.
pub const WARM_CELSIUS: f64 = 400.0;

/// What unlit gas does at a setting.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct UnlitGas {
    /// In a cold chamber, at the setting's own numbers.
    pub cold: ExplosiveChamber,
    /// In a cold chamber, with as much more gas as the ± of the setting allows: what is too lean here is too lean to be
    /// dangerous.
    pub soonest: ExplosiveChamber,
    /// The same in a chamber of [`WARM_CELSIUS`].
    pub warm: ExplosiveChamber,
}

/// What unlit gas does in a chamber of a volume, at the pressure before the jets and a damper's opening.
///
/// # Errors
///
/// As [`Burner::explosive`].
pub(crate) fn unlit_gas(
    plant: &Plant,
    burner: &Burner,
    conditions: &Conditions,
    (at_jet, opening): (GaugePressure, f64),
    volume: Volume,
    sure: Option<&SettingSure>,
) -> CheckedResult<UnlitGas> {
    let spread = sure.map_or(0.0, |sure| sure.air_ratio.as_ref().unwrap_or(&sure.gas).relative());
    let at = |temperature: Temperature, more_gas: f64| {
        let chamber = UnlitChamber { volume, heads: plant.heads_to_a_chamber(), temperature, more_gas };
        burner.explosive(conditions, at_jet, opening, &chamber)
    };
    let air = plant.site.air_temperature();
    let spread = spread.clamp(0.0, MOST_MORE_GAS);
    Ok(UnlitGas {
        cold: at(air, 0.0)?,
        soonest: at(air, spread)?,
        warm: at(Temperature::from_celsius(WARM_CELSIUS), spread)?,
    })
}

/// A wider ± says no more of the gas than that there may be twice as much.
const MOST_MORE_GAS: f64 = 1.0;

impl Plant {
    /// How many heads blow into each chamber.
    #[must_use]
    pub fn heads_to_a_chamber(&self) -> f64 {
        self.heads / self.chambers()
    }

    /// How many equal chambers the heads share.
    #[must_use]
    pub fn chambers(&self) -> f64 {
        self.entries.head.map_or(1.0, |head| f64::from(head.chambers))
    }

    /// The part of a chamber that one head fills and keeps hot.
    #[must_use]
    pub fn part_of_a_head(&self, chamber: &Glow) -> Glow {
        let heads = self.heads_to_a_chamber();
        Glow {
            volume: chamber.volume.map(|volume| Volume::from_cubic_meters(volume.cubic_meters() / heads)),
            loss: chamber.loss.map(|loss| Power::from_watts(loss.watts() / heads)),
        }
    }
}
