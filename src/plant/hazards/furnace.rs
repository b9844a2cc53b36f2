//! Hazards of the furnace.

use super::list::{Hazard, Hazards};
use super::table::HazardKind;
use crate::plant::entries::FurnaceEntry;
use crate::plant::furnace::FurnaceBlock;
use crate::plant::refusal::Place;
use crate::plant::work::{OutOfReach, WorkBlock};
use crate::quantity::{Mass, NetHeatRate, Temperature};

/// Above this a touched steel shell burns at once, Celsius: common practice, no source.
const BURNS: f64 = 60.0;
/// Above this one person should not lift, kg: NIOSH lifting equation, 1994 (from memory).
const HEAVY: f64 = 23.0;

/// Everything the furnace warns of, with the fire that the blower feeds.
pub fn of_furnace(entry: &FurnaceEntry, block: &FurnaceBlock, fed: Option<NetHeatRate>, found: &mut Hazards) {
    let reaches = block.course.ends;
    if block.course.warm_up.is_none() {
        let reaches = reaches.map(|reaches| reaches.value);
        found.push(
            Hazard::new(HazardKind::FireTooSmall, Place::section("chamber")).with(reaches, block.temperature.kelvin()),
        );
    }
    found.extend(block.work.as_ref().and_then(|work| of_reach(work, fed)));
    found.extend(of_steel(block.steel));
    if let Some(work) = &entry.work {
        let least = block.work.as_ref().and_then(|block| block.course).map(|course| course.least);
        if let Some(least) = least.filter(|least| *least > work.time.seconds()) {
            let slow = Hazard::new(HazardKind::WorkTooSlow, Place::key("work", "minutes"));
            found.push(slow.with(least, work.time.seconds()));
        }
        found.extend(of_charge(&work.name));
    }
    // Gas that leaks may light for as long as it can at the most.
    let [lights, _] = block.course.may_light;
    if lights.value > 0.0 {
        found.push(Hazard::new(HazardKind::ReIgnites, Place::section("chamber")).with(lights.high, None));
    }
    let hot_layer = entry.layers.first().map(|layer| layer.material.limit());
    found.extend(of_lining(reaches.and_then(|reaches| reaches.high).map(Temperature::from_kelvin), hot_layer));
    if let Some(castable) = &block.castable {
        found.extend(of_castable(castable.mix.water, castable.mix.dry));
    }
    found.extend(of_shell(block.wall.shell()));
}

/// A charge that needs more heat than jet and blower give.
#[must_use]
pub fn of_reach(work: &WorkBlock, fed: Option<NetHeatRate>) -> Option<Hazard> {
    let why = work.out_of_reach()?;
    let needed = work.needed().map(|needed| needed.watts());
    let fed = fed.filter(|_| why == OutOfReach::Blower).map(|fed| fed.watts());
    Some(Hazard::new(HazardKind::WorkOutOfReach, Place::key("work", "minutes")).with(needed, fed))
}

/// A charge of this material.
#[must_use]
pub fn of_charge(material: &str) -> Option<Hazard> {
    (material == "brass").then(|| Hazard::new(HazardKind::ZincFume, Place::key("work", "substance")))
}

/// Steel in the wall, by its temperature and its maximum.
#[must_use]
pub fn of_steel(steel: Option<(Temperature, Temperature)>) -> Option<Hazard> {
    let (at, most) = steel.filter(|(at, most)| at > most)?;
    Some(Hazard::new(HazardKind::SteelTooHot, Place::section("steel")).with(at.kelvin(), most.kelvin()))
}

/// A hot layer, by the temperature that the largest setting reaches and its maximum.
#[must_use]
pub fn of_lining(reaches: Option<Temperature>, most: Option<Temperature>) -> Option<Hazard> {
    let (reaches, most) = (reaches?, most?);
    let hot = Hazard::new(HazardKind::LiningOverheats, Place::section("layer"));
    (reaches > most).then(|| hot.with(reaches.kelvin(), most.kelvin()))
}

/// A cast lining, by its water and its dry mass.
pub fn of_castable(water: Mass, dry: Mass) -> impl Iterator<Item = Hazard> {
    let here = |kind| Hazard::new(kind, Place::section("castable"));
    let heavy = (dry.kilograms() > HEAVY).then(|| here(HazardKind::HeavyLining).with(dry.kilograms(), HEAVY));
    [Some(here(HazardKind::WetLining).with(water.kilograms(), None)), heavy].into_iter().flatten()
}

/// A shell that burns on contact.
#[must_use]
pub fn of_shell(shell: Temperature) -> Option<Hazard> {
    let limit = Temperature::from_celsius(BURNS);
    (shell > limit)
        .then(|| Hazard::new(HazardKind::HotShell, Place::section("layer")).with(shell.kelvin(), limit.kelvin()))
}
