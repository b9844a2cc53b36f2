//! What is around the fire and in it.

use heapless::Vec;

use crate::furnace::room::AirLimit;
use crate::furnace::work::Charge;
use crate::furnace::{Castable, LAYER_CAP, Layer, PANEL_CAP, Panel, SteelGrade};
use crate::plant::entries::Name;
use crate::quantity::{ActualVolumeFlow, Duration, Length, Temperature};

/// What is around the fire and in it.
#[derive(Clone, Debug, PartialEq)]
pub struct FurnaceEntry {
    /// Layers of the wall, the hot one first.
    pub layers: Vec<Layer, LAYER_CAP>,
    /// What each layer is called.
    pub layer_names: Vec<Name, LAYER_CAP>,
    /// The panels.
    pub panels: Vec<Panel, PANEL_CAP>,
    /// The castable, by its maker's sheet.
    pub castable: Option<Castable>,
    /// Distance of the anchors, if there are any.
    pub anchor_spacing: Option<Length>,
    /// Steel inside the wall.
    pub steel: Option<(&'static SteelGrade, Length)>,
    /// What is heated.
    pub work: Option<WorkEntry>,
    /// The room's air.
    pub room: Option<RoomEntry>,
}

impl FurnaceEntry {
    /// How far makers' linings of its layers differ, as a share.
    #[must_use]
    pub fn lining_spread(&self) -> f64 {
        self.layers.iter().map(|layer| layer.material.spread()).fold(0.0, f64::max)
    }
}

/// What leaks into the room.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RoomEntry {
    /// Gases of the furnace that leak into it.
    pub leak: ActualVolumeFlow,
    /// Share of carbon monoxide in them.
    pub carbon_monoxide: f64,
    /// What it is kept under.
    pub limit: &'static AirLimit,
}

/// What is heated.
#[derive(Clone, Debug, PartialEq)]
pub struct WorkEntry {
    /// What it is called.
    pub name: Name,
    /// The charge and its crucible.
    pub charge: Charge,
    /// What it is brought to.
    pub temperature: Temperature,
    /// How long that may take.
    pub time: Duration,
}
