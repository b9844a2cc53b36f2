//! What a state warns of, in single precision: the judgements are those of every other surface.

#![allow(unsafe_code, reason = "exported names count as unsafe")]

use super::flue::{JetwrightFlame, JetwrightSite};
use super::physics::{JetwrightJet, JetwrightSupply, gas};
use super::status::{JetwrightStatus, given, status, unless_answered};
use crate::plant::hazards::{Hazard, of_fire, of_flow};
use crate::quantity::Temperature;

/// Most hazards of one state.
pub const JETWRIGHT_STATE_HAZARDS: usize = 8;

/// What each code of a hazard means, in a table's image and of a state. A code stays what it is once given.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[repr(u16)]
pub enum JetwrightHazardKind {
    /// The mixture would blow back into the blower.
    BlowsBack = 1,
    /// Leaner than a cold mixture burns; the number is the air ratio, the limit the leanest that burns cold.
    TooLean = 2,
    /// A chamber that does not glow blows the flames off the ports.
    GoesOut = 3,
    /// Carbon monoxide in the dry products, and the most that NIOSH lets anyone breathe.
    CarbonMonoxide = 4,
    /// Time after which unlit gas makes the chamber's air explosive, and the longest trial for ignition.
    UnlitGas = 5,
    /// The gauge is no higher than the pressure it blows into.
    NoGas = 6,
    /// Gradient at the ports over the flashback gradient, and where flashback is excluded.
    Flashback = 7,
    /// Nothing is known of where the flame of this gas flashes back.
    FlashbackUnknown = 8,
    /// Gas heavier than air: its relative density.
    HeavyGas = 9,
    /// The charge boils off zinc.
    ZincFume = 10,
    /// How long the chamber ignites gas by itself after a stop.
    ReIgnites = 11,
    /// Water of a fresh lining.
    WetLining = 12,
    /// Temperature of steel in the wall, and its maximum.
    SteelTooHot = 13,
    /// Supply pressure over the dew-point pressure.
    NearCondensing = 14,
    /// What an air ratio of 1 set at sea level becomes here.
    Altitude = 15,
    /// Mass of the lining, and what one person may lift.
    HeavyLining = 16,
    /// Temperature of the shell, and where touching it burns.
    HotShell = 17,
    /// The blower runs where it may surge.
    LeftOfPeak = 18,
    /// The blower cannot give the air asked: the air ratio it reaches, and the one asked.
    BlowerTooSmall = 19,
    /// The damper, or the lack of one, leaves more air than asked: the air ratio left, and the one asked.
    DamperTooWide = 20,
    /// Temperature that the largest setting reaches, and the chamber's.
    FireTooSmall = 21,
    /// Heat input that the charge needs, and what the blower feeds where that is less.
    WorkOutOfReach = 22,
    /// Time the charge takes, and the time it may take.
    WorkTooSlow = 23,
    /// Temperature that the largest setting reaches when left on, and the maximum of the hot layer.
    LiningOverheats = 24,
    /// Time after which the cylinder is too cold for its regulator, and the time of the setting.
    CannotKeepUp = 25,
    /// Time after which the cylinder gives no more.
    CylinderShort = 26,
    /// Share of the reading that the line takes, and where that matters.
    GaugeReadsHigh = 27,
    /// The coldest liquid in the cylinder, and where frost begins.
    Frost = 28,
    /// Share of the main gas of a liquid blend, and where it counts as one gas.
    BlendBoilsApart = 29,
    /// Back pressure over the gauge, and where that matters.
    BackPressure = 30,
    /// Opening of the damper, and where a small turn changes much.
    DamperNearlyShut = 31,
    /// Marked size of a contact tip.
    UnmeasuredTip = 32,
    /// Reynolds number of the jet, and where viscosity rules.
    SlowJet = 33,
    /// Length of the bore over its diameter, neither thin nor long, and where long begins.
    ShortBore = 34,
    /// Bore over the tube before it, and where that matters.
    NarrowApproach = 35,
    /// A chamber between autoignition and 760 degC: its temperature, and the 760 degC from which gas ignites as it comes.
    IgnitesLate = 36,
    /// The gauge over the regulator's lock-up pressure, and 1.
    BeyondRegulator = 37,
    /// Opening of a disc whose gap nobody measured, and from where its air is known.
    DiscGapUnknown = 60,
    /// The air is throttled by a valve made to shut a line.
    ThrottlingValve = 61,
}

/// How much a hazard can hurt: the signal words of ANSI Z535.6.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[repr(u8)]
pub enum JetwrightSeverity {
    /// Damage or waste, or a number less certain than it looks.
    Notice = 1,
    /// Could injure lightly.
    Caution = 2,
    /// Could kill or maim.
    Warning = 3,
    /// Will kill or maim if it is not avoided.
    Danger = 4,
}

/// Something that can hurt in a state.
#[derive(Clone, Copy, Debug, PartialEq)]
#[repr(C)]
pub struct JetwrightStateHazard {
    /// A `JetwrightHazardKind`.
    pub kind: u16,
    /// A `JetwrightSeverity`; the more, the worse.
    pub severity: u8,
    /// The number it stands on, in SI; `NAN` for a kind that has none.
    pub number: f32,
    /// Where that number becomes a hazard, in the same unit; `NAN` for a kind that has none.
    pub limit: f32,
}

/// What can hurt in a state.
#[derive(Clone, Copy, Debug, PartialEq)]
#[repr(C)]
pub struct JetwrightStateHazards {
    /// How many there are; -1 where the state cannot be, which is not the same as none.
    pub count: i32,
    /// The first `count` of these, the worst first.
    pub hazards: [JetwrightStateHazard; JETWRIGHT_STATE_HAZARDS],
}

impl JetwrightStateHazards {
    /// Nothing is known of the state.
    pub const UNKNOWN: Self = Self {
        count: -1,
        hazards: [JetwrightStateHazard { kind: 0, severity: 0, number: f32::NAN, limit: f32::NAN };
            JETWRIGHT_STATE_HAZARDS],
    };

    /// Puts each where the worse ones end; a state has fewer kinds than there is room for.
    fn list(&mut self, found: impl Iterator<Item = Hazard<f32>>) {
        self.count = 0;
        for hazard in found {
            let severity = hazard.severity().code();
            let said = JetwrightStateHazard {
                kind: hazard.kind as u16,
                severity,
                number: hazard.number.unwrap_or(f32::NAN),
                limit: hazard.limit.unwrap_or(f32::NAN),
            };
            let worse = self.hazards.iter().take_while(|known| known.severity >= severity).count();
            if let Some(rest) = self.hazards.get_mut(worse..) {
                rest.iter_mut().fold(said, |moved, place| core::mem::replace(place, moved));
                self.count += 1;
            }
        }
        self.count = self.count.min(JETWRIGHT_STATE_HAZARDS as i32);
    }
}

/// What the state of a jet warns of: its gas, its bore, and what flows.
#[must_use]
#[unsafe(no_mangle)]
pub extern "C" fn jetwright_jet_hazards(
    jet: Option<&JetwrightJet>,
    supply: Option<&JetwrightSupply>,
    hazards: Option<&mut JetwrightStateHazards>,
) -> JetwrightStatus {
    let hazards = unless_answered(hazards, JetwrightStateHazards::UNKNOWN);
    status(|| {
        let (jet, supply, hazards) = (given(jet)?, given(supply)?.supply(), given(hazards)?);
        let (made, gas) = (jet.made()?, gas(jet.gas)?);
        let flow = made.flow(&gas, &supply)?;
        let saturation = gas.mixture().saturation_ratio(supply.gauge.to_absolute(supply.ambient), supply.temperature);
        hazards.list(of_flow(&gas, &made.bore, &flow, saturation));
        Ok(())
    })
}

/// What a fire of this air ratio warns of: carbon monoxide, a mixture too lean to burn cold, a heavy gas, a flame of
/// which flashback is not known. Carbon monoxide is that of the hottest of the chamber and a glow.
#[must_use]
#[unsafe(no_mangle)]
pub extern "C" fn jetwright_flame_hazards(
    flame: Option<&JetwrightFlame>,
    site: Option<&JetwrightSite>,
    hazards: Option<&mut JetwrightStateHazards>,
) -> JetwrightStatus {
    let hazards = unless_answered(hazards, JetwrightStateHazards::UNKNOWN);
    status(|| {
        let (flame, site, hazards) = (given(flame)?, given(site)?.site()?, given(hazards)?);
        let kelvin = Temperature::from_kelvin;
        crate::limits::check(crate::Input::FlameAirRatio, flame.air_ratio)?;
        let temperatures = (kelvin(flame.mixture_temperature_k), kelvin(flame.chamber_temperature_k));
        hazards.list(of_fire(&gas(flame.gas)?, &site, temperatures, flame.air_ratio));
        Ok(())
    })
}

#[cfg(test)]
mod tests {
    use std::{format, vec::Vec};

    use super::{JetwrightHazardKind, JetwrightSeverity};
    use crate::plant::hazards::{HazardKind, Severity};

    #[test]
    fn every_code_and_name_is_that_of_the_table_of_hazards() {
        let here = [
            JetwrightHazardKind::BlowsBack,
            JetwrightHazardKind::TooLean,
            JetwrightHazardKind::GoesOut,
            JetwrightHazardKind::CarbonMonoxide,
            JetwrightHazardKind::UnlitGas,
            JetwrightHazardKind::NoGas,
            JetwrightHazardKind::Flashback,
            JetwrightHazardKind::FlashbackUnknown,
            JetwrightHazardKind::HeavyGas,
            JetwrightHazardKind::ZincFume,
            JetwrightHazardKind::ReIgnites,
            JetwrightHazardKind::WetLining,
            JetwrightHazardKind::SteelTooHot,
            JetwrightHazardKind::NearCondensing,
            JetwrightHazardKind::Altitude,
            JetwrightHazardKind::HeavyLining,
            JetwrightHazardKind::HotShell,
            JetwrightHazardKind::LeftOfPeak,
            JetwrightHazardKind::BlowerTooSmall,
            JetwrightHazardKind::DamperTooWide,
            JetwrightHazardKind::FireTooSmall,
            JetwrightHazardKind::WorkOutOfReach,
            JetwrightHazardKind::WorkTooSlow,
            JetwrightHazardKind::LiningOverheats,
            JetwrightHazardKind::CannotKeepUp,
            JetwrightHazardKind::CylinderShort,
            JetwrightHazardKind::GaugeReadsHigh,
            JetwrightHazardKind::Frost,
            JetwrightHazardKind::BlendBoilsApart,
            JetwrightHazardKind::BackPressure,
            JetwrightHazardKind::DamperNearlyShut,
            JetwrightHazardKind::UnmeasuredTip,
            JetwrightHazardKind::SlowJet,
            JetwrightHazardKind::ShortBore,
            JetwrightHazardKind::NarrowApproach,
            JetwrightHazardKind::IgnitesLate,
            JetwrightHazardKind::BeyondRegulator,
            JetwrightHazardKind::DiscGapUnknown,
            JetwrightHazardKind::ThrottlingValve,
        ];
        let said: Vec<_> = here.iter().map(|kind| (*kind as u16, format!("{kind:?}"))).collect();
        let table: Vec<_> = HazardKind::ALL.iter().map(|kind| (*kind as u16, format!("{kind:?}"))).collect();
        assert_eq!(said, table);
        let severities = [
            (JetwrightSeverity::Danger, Severity::Danger),
            (JetwrightSeverity::Warning, Severity::Warning),
            (JetwrightSeverity::Caution, Severity::Caution),
            (JetwrightSeverity::Notice, Severity::Notice),
        ];
        assert!(severities.iter().all(|(here, table)| *here as u8 == table.code()));
    }
}
