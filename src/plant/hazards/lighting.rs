//! What the numbers of lighting warn of.

use std::format;
use std::prelude::rust_2024::*;
use std::vec;

use crate::burner::{GLOW_CELSIUS, GoesOut, Lights};
use crate::plant::evaluation::{Setting, conditions_of};
use crate::plant::installation::Assembled;
use crate::plant::lighting::LightingBlock;
use crate::quantity::Duration;

/// Sooner than this unlit gas is a bomb before anyone has found the match: the longest trial for ignition of NFPA 86
/// (from memory).
const SOON: f64 = 15.0;

/// A warning drawn from a number of lighting.
#[derive(Clone, Debug, PartialEq)]
pub enum LightingCaution {
    /// The flame may run back into the ports.
    FlashBack {
        /// Setting.
        setting: String,
        /// Gradient over the flash-back gradient.
        times: f64,
    },
    /// Nothing is known of where the flame of this gas runs back.
    FlashBackUnknown,
    /// Unlit gas fills the chamber with a burnable mixture at once.
    UnlitGas {
        /// Setting.
        setting: String,
        /// How soon.
        after: Duration,
    },
    /// A setting for a chamber that does not glow does not light in it.
    GoesOut {
        /// Setting.
        setting: String,
    },
}

/// Every caution that lighting calls for.
pub(crate) fn lighting_cautions(rig: &Assembled, settings: &[Setting], block: &LightingBlock) -> Vec<LightingCaution> {
    let mut found = vec![];
    if !block.runs_back_known {
        found.push(LightingCaution::FlashBackUnknown);
    }
    let narrowest = rig.burner.as_ref().map_or(0.0, |burner| burner.head.narrowest().meters());
    for (setting, lighting) in settings.iter().zip(&block.settings) {
        let name = || String::from(setting.entry.name.as_str());
        if let Some(ports) = lighting.ports.as_ref().filter(|ports| ports.may_run_back(narrowest) == Some(true)) {
            let times = ports.flame.map_or(0.0, |flame| ports.gradient / flame.flash_back);
            found.push(LightingCaution::FlashBack { setting: name(), times });
        }
        let after = lighting.unlit.and_then(|unlit| unlit.burnable_after);
        if let Some(after) = after.filter(|after| after.seconds() < SOON) {
            found.push(LightingCaution::UnlitGas { setting: name(), after });
        }
        let chamber = conditions_of(rig, &setting.entry).chamber_temperature;
        let goes_out = lighting.lighting.goes_out == Some(GoesOut::LetsGo) && lighting.lighting.lights != Lights::Cold;
        if goes_out && chamber.celsius() < GLOW_CELSIUS {
            found.push(LightingCaution::GoesOut { setting: name() });
        }
    }
    found
}

impl LightingCaution {
    /// The key it has for programs.
    #[must_use]
    pub fn key(&self) -> &'static str {
        match self {
            LightingCaution::FlashBack { .. } => "flash_back",
            LightingCaution::FlashBackUnknown => "flash_back_unknown",
            LightingCaution::UnlitGas { .. } => "unlit_gas",
            LightingCaution::GoesOut { .. } => "goes_out",
        }
    }

    /// The setting it stands at; none of what goes for all.
    #[must_use]
    pub fn setting(&self) -> Option<&str> {
        match self {
            LightingCaution::FlashBack { setting, .. }
            | LightingCaution::UnlitGas { setting, .. }
            | LightingCaution::GoesOut { setting } => Some(setting),
            LightingCaution::FlashBackUnknown => None,
        }
    }

    /// Danger to life first, as of the sheet's other cautions.
    #[must_use]
    pub fn rank(&self) -> u8 {
        match self {
            LightingCaution::FlashBack { .. } | LightingCaution::FlashBackUnknown | LightingCaution::GoesOut { .. } => {
                0
            }
            LightingCaution::UnlitGas { .. } => 1,
        }
    }

    /// The number it stands on.
    #[must_use]
    pub fn number(&self) -> Option<String> {
        match self {
            LightingCaution::FlashBack { times, .. } => Some(format!("{times:.1} times the flash-back gradient")),
            LightingCaution::UnlitGas { after, .. } => Some(format!("{:.1} s", after.seconds())),
            LightingCaution::FlashBackUnknown | LightingCaution::GoesOut { .. } => None,
        }
    }

    /// What it says, without its number.
    #[must_use]
    pub fn text(&self) -> String {
        match self {
            LightingCaution::FlashBack { .. } => {
                "the flame may RUN BACK INTO THE HEAD (sure only above three times): turn up, or take fewer or \
                 narrower holes; if the head roars or glows, gas off"
            }
            LightingCaution::FlashBackUnknown => {
                "where this gas RUNS BACK INTO THE HEAD is not known here: much hydrogen, carbon monoxide, ethylene or \
                 propylene runs back far more easily than other gases, at any gauge; use only a head made for it"
            }
            LightingCaution::UnlitGas { .. } => {
                "so soon UNLIT GAS MAKES THE CHAMBER A BOMB: a flame at the ports before the gas; if it does not light \
                 at once, gas off and blow through"
            }
            LightingCaution::GoesOut { .. } => {
                "THE FLAMES LET GO of the ports in a chamber that does not glow, and unburnt gas fills it: light higher \
                 or close the damper"
            }
        }
        .into()
    }
}
