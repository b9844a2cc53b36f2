//! Hazards of lighting.

use super::list::{Hazard, Hazards, at_setting};
use super::table::HazardKind;
use crate::Scalar;
use crate::burner::{FLASHBACK_SCATTER, GLOW_CELSIUS, GoesOut, Lighting, Lights, PortState, Unlit};
use crate::plant::installation::Plant;
use crate::plant::lighting::{LightingBlock, SettingLighting};
use crate::plant::refusal::Place;
use crate::plant::setting::{Setting, conditions_of};
use crate::plant::verdict::Verdict;
use crate::quantity::{Length, Temperature};

/// Sooner than this unlit gas is explosive before anyone has found the match: the longest trial for ignition of NFPA 86
/// (from memory), s.
const SOON: f64 = 15.0;

/// Everything lighting warns of.
pub fn of_lighting(plant: &Plant, settings: &[Setting], block: &LightingBlock, found: &mut Hazards) {
    found.extend(of_flashback_known(block.flashback_known));
    for (index, (setting, lighting)) in (0..).zip(settings.iter().zip(&block.settings)) {
        of_setting_lighting(plant, setting, lighting, at_setting(index), found);
    }
}

/// What the lighting of one setting warns of.
pub fn of_setting_lighting(
    plant: &Plant,
    setting: &Setting,
    lighting: &SettingLighting,
    place: Place,
    found: &mut Hazards,
) {
    let narrowest = plant.burner.as_ref().map_or(Length::from_meters(0.0), |burner| burner.head.narrowest());
    found.extend(lighting.ports.as_ref().and_then(|ports| of_ports(ports, narrowest, place)));
    found.extend(lighting.unlit.as_ref().and_then(|unlit| of_unlit_gas(unlit, place)));
    let flows = setting.gas.kilograms_per_second() > 0.0;
    if flows && !found.iter().any(|hazard| hazard.kind == HazardKind::TooLean && hazard.place == place) {
        found.extend(of_lean_cold(lighting, place));
    }
    let chamber = conditions_of(plant, &setting.entry).chamber_temperature;
    found.extend(of_blow_off(&lighting.lighting, chamber, place));
}

/// A mixture too lean while head and chamber are cold, or at the lean end of its ±: a hot head passes less air.
#[must_use]
pub fn of_lean_cold(found: &SettingLighting, place: Place) -> Option<Hazard> {
    let lean = found.verdict == Verdict::WillNotLight(GoesOut::TooLean);
    lean.then(|| Hazard::new(HazardKind::TooLean, place).with(found.lighting.air_ratio, found.leanest))
}

/// A gas whose flames are not measured.
#[must_use]
pub fn of_flashback_known<S: Scalar>(known: bool) -> Option<Hazard<S>> {
    (!known).then(|| Hazard::new(HazardKind::FlashbackUnknown, Place::section("gas")))
}

/// Ports of this narrowest width that the flame may flashback through.
#[must_use]
pub fn of_ports(ports: &PortState, narrowest: Length, place: Place) -> Option<Hazard> {
    let flame = ports.flame.filter(|_| ports.may_run_back(narrowest.meters()) == Some(true))?;
    Some(Hazard::new(HazardKind::Flashback, place).with(ports.gradient / flame.flashback, FLASHBACK_SCATTER))
}

/// Unlit gas that makes the chamber's air explosive at once.
#[must_use]
pub fn of_unlit_gas(unlit: &Unlit, place: Place) -> Option<Hazard> {
    let after = unlit.burnable_after.map(|after| after.seconds()).filter(|after| *after < SOON)?;
    Some(Hazard::new(HazardKind::UnlitGas, place).with(after, SOON))
}

/// Flames that a chamber which does not glow blows off the ports.
#[must_use]
pub fn of_blow_off(lighting: &Lighting, chamber: Temperature, place: Place) -> Option<Hazard> {
    let goes_out = lighting.goes_out == Some(GoesOut::BlowOff) && lighting.lights != Lights::Cold;
    (goes_out && chamber.celsius() < GLOW_CELSIUS).then(|| Hazard::new(HazardKind::GoesOut, place))
}
