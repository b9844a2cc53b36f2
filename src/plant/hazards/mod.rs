//! What can hurt, as data: kind, where, number and limit. One small function a topic judges; no sentence is here.

mod air;
mod furnace;
mod gas;
mod jet;
mod lighting;
mod list;
mod state;
pub mod supply;
mod table;
mod table_rows;

pub use air::{Supplied, of_air, of_air_ratio};
pub use furnace::{of_castable, of_charge, of_furnace};
pub use gas::{of_altitude, of_gas, of_late_ignition, of_saturation};
pub use jet::{of_bore, of_jet, of_stream};
pub use lighting::{of_flashback_known, of_lighting, of_ports, of_setting_lighting, of_unlit_gas};
pub use list::{AT_WORK, HAZARD_CAP, Hazard, Hazards, at_setting};
pub use state::{Flowing, of_fire, of_flame, of_flow, of_gauges, of_jets, of_one_draw};
pub use supply::{of_cylinder, of_line, of_lock_up, of_mixture};
pub use table::{HazardKind, Measure, Severity};
pub use table_rows::{for_image, of_rows};

use crate::combustion::leanest_air_ratio;
use crate::plant::blower::AirBlock;
use crate::plant::cylinder::CylinderBlock;
use crate::plant::entries::AirAim;
use crate::plant::entries::FurnaceEntry;
use crate::plant::furnace::FurnaceBlock;
use crate::plant::installation::Plant;
use crate::plant::lighting::LightingBlock;
use crate::plant::refusal::Place;
use crate::plant::setting::{Setting, conditions_of};
use crate::quantity::GaugePressure;

/// What a setting warns of by itself: its gas, its jet and its air.
pub fn of_setting(plant: &Plant, setting: &Setting, place: Place, found: &mut Hazards) {
    found.extend(of_saturation(setting.saturation_ratio, place));
    found.extend(of_stream(setting.gas, setting.jet.reynolds_number, place));
    let chamber = conditions_of(plant, &setting.entry).chamber_temperature;
    found.extend(of_late_ignition(&plant.gas, chamber, place));
    found.extend(plant.before.regulator.as_ref().and_then(|regulator| of_lock_up(regulator, setting.gauge, place)));
    let Some(air) = &setting.air else { return };
    let supplied = Supplied {
        asked: match setting.entry.air {
            AirAim::AirRatio(ratio) => Some(ratio),
            AirAim::Damper(_) => None,
        },
        opening: air.opening,
        damper: plant.entries.damper,
        running: air.running,
        short: air.shortfall.is_some(),
        too_much: air.too_much_air,
        gas_flows: setting.gas.kilograms_per_second() > 0.0,
        gauge: setting.gauge,
        leanest: leanest_air_ratio(&plant.gas, &plant.site).ok(),
        carbon_monoxide: setting.carbon_monoxide,
    };
    of_air(&supplied, place, found);
}

/// What the burner warns of at any setting; with an air side at the gauge of its largest.
pub fn of_burner(plant: &Plant, gauge: Option<GaugePressure>, found: &mut Hazards) {
    found.extend(of_jet(&plant.jet.bore, plant.drill));
    found.extend(of_gas(&plant.gas));
    let temperature = plant.conditions.gas_temperature;
    found.extend(gauge.and_then(|gauge| of_altitude(&plant.site, &plant.gas, &plant.jet, gauge, temperature)));
}

/// Everything an evaluated installation warns of; the heat input of the charge is judged as a setting.
pub(crate) fn of_sheet(sheet: &Evaluated<'_>) -> Hazards {
    let mut found = Hazards::new();
    let Evaluated { plant, settings, furnace, .. } = *sheet;
    for (index, setting) in settings.iter().enumerate() {
        of_setting(plant, setting, at_setting(index), &mut found);
    }
    let work = furnace.and_then(|(_, block)| block.work.as_ref()?.fire());
    if let Some(work) = work {
        of_setting(plant, work, AT_WORK, &mut found);
    }
    of_burner(plant, sheet.air.map(|air| settings[air.setting].gauge), &mut found);
    if let Some((entry, block)) = furnace {
        let fed = sheet.air.and_then(|air| air.largest_fire).map(|(_, net)| net);
        of_furnace(entry, block, fed, &mut found);
    }
    if plant.before.line.is_some() {
        found.extend((0..).zip(settings).filter_map(|(index, it)| of_line(it.gauge, it.at_jet, at_setting(index))));
    }
    if let Some(block) = sheet.cylinder {
        of_cylinder(block, plant.gas.mixture(), &mut found);
    }
    if let Some(block) = sheet.lighting {
        of_lighting(plant, settings, block, &mut found);
    }
    found
}

/// What [`of_sheet`] judges.
#[derive(Clone, Copy)]
pub(crate) struct Evaluated<'s> {
    pub plant: &'s Plant,
    pub settings: &'s [Setting],
    pub air: Option<&'s AirBlock>,
    pub furnace: Option<(&'s FurnaceEntry, &'s FurnaceBlock)>,
    pub cylinder: Option<&'s CylinderBlock>,
    pub lighting: Option<&'s LightingBlock>,
}
