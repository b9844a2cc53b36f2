//! A setting, and what was seen of the burner's lighting.

use crate::plant::entries::{Name, Note};
use crate::quantity::{Duration, GaugePressure, HeatRate, Power, Temperature, Volume};

/// What a setting is set by on the gas side.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum GasAim {
    /// The gauge.
    Gauge(GaugePressure),
    /// The heat wanted.
    Heat(HeatRate),
}

/// What a setting is set by on the air side.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum AirAim {
    /// How far the damper stands open, 0 to 1.
    Damper(f64),
    /// The air ratio wanted.
    AirRatio(f64),
}

/// What a setting is for on the card: the three that are read at arm's length.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Use {
    /// Lights the cold chamber.
    Light,
    /// Heats the charge.
    Work,
    /// Keeps the chamber hot.
    Keep,
}

impl Use {
    /// Every use by its word.
    pub const WORDS: [(&'static str, Self); 3] = [("light", Self::Light), ("work", Self::Work), ("keep", Self::Keep)];
}

/// One setting of the burner.
#[derive(Clone, Debug, PartialEq)]
pub struct SettingEntry {
    /// Its name.
    pub name: Name,
    /// Gas side.
    pub gas: GasAim,
    /// Air side; the air ratio of the whole fire unless given.
    pub air: AirAim,
    /// Temperature of the chamber, if not that of the chamber's section.
    pub chamber_temperature: Option<Temperature>,
    /// How long it is used in a firing.
    pub minutes: Option<Duration>,
    /// What it is for.
    pub purpose: Option<Note>,
    /// Which block of the card it fills, if it says so.
    pub used_for: Option<Use>,
}

/// What was seen of a burner's lighting.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LightingEntry {
    /// A gauge at which the cold burner was seen to light and keep burning.
    pub lights_at: Option<GaugePressure>,
    /// The damper it stood at; that of the largest setting unless given.
    pub damper: Option<f64>,
    /// Volume of the chamber, where no panels tell it.
    pub chamber_volume: Option<Volume>,
    /// What the chamber loses while it just glows, where no layers tell it.
    pub glow_loss: Option<Power>,
}
