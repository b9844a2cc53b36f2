//! The card's own words: what is missing, and each warning in so few words that it is read beside the fire.

use std::format;
use std::prelude::rust_2024::*;

use crate::burner::GoesOut;
use crate::plant::NoSetting;
use crate::plant::hazards::HazardKind;

/// Why a block shows no setting, and what to write for one.
#[must_use]
pub fn no_setting(why: NoSetting, of: &str) -> String {
    if why == NoSetting::NotSaid {
        return format!("None says so: write use = \"{of}\" into a [[setting]] of the file.");
    }
    refused(why).into()
}

const fn refused(why: NoSetting) -> &'static str {
    match why {
        NoSetting::NotSaid => "",
        NoSetting::NotJudged => "Not judged: write [blower] and [head] into the file.",
        NoSetting::WillNotLight(GoesOut::TooLean) => "WILL NOT LIGHT: too lean. Close the damper or raise the gauge.",
        NoSetting::WillNotLight(GoesOut::TooRich) => "WILL NOT LIGHT: too rich. Open the damper or lower the gauge.",
        NoSetting::WillNotLight(GoesOut::BlowOff) => "WILL NOT LIGHT: blow-off. Close the damper.",
        NoSetting::WillNotLight(GoesOut::NoFlow) => "WILL NOT LIGHT: no gas flows, or too little air.",
        NoSetting::GoesOut => "GOES OUT even in a glowing chamber. Close the damper or raise the gauge.",
        NoSetting::BlowsBack => "GAS WOULD BLOW BACK INTO THE BLOWER. Never light it.",
        NoSetting::BeyondRegulator => "The regulator cannot give this gauge: its lock-up pressure is lower.",
    }
}

/// A hazard in so few words.
#[must_use]
pub const fn short(kind: HazardKind) -> &'static str {
    match kind {
        HazardKind::BlowsBack => "GAS BLOWS BACK INTO THE BLOWER: never light it",
        HazardKind::TooLean => "TOO LEAN, WILL NOT LIGHT COLD: never before the chamber glows",
        HazardKind::GoesOut => "BLOW-OFF before the chamber glows: unburnt gas fills it",
        HazardKind::CarbonMonoxide => "CARBON MONOXIDE kills unseen: vent outdoors, wear an alarm",
        HazardKind::UnlitGas => "UNLIT GAS IS EXPLOSIVE so soon: torch first, then gas",
        HazardKind::NoGas => "NO GAS FLOWS, air may enter the gas line",
        HazardKind::Flashback => "FLASHBACK is possible: the head roars or glows, gas off",
        HazardKind::FlashbackUnknown => "FLASHBACK of this gas is not known: only a head made for it",
        HazardKind::HeavyGas => "The gas pools: no pit, cellar or drain nearby",
        HazardKind::IgnitesLate => "GAS MAY GATHER AND IGNITE ALL AT ONCE: watch the flame, else gas off and purge",
        HazardKind::BeyondRegulator => "THE REGULATOR CANNOT GIVE THIS GAUGE PRESSURE",
        HazardKind::ZincFume => "ZINC FUME makes you ill: hood on, no hotter than needed",
        HazardKind::ReIgnites => "After a stop the chamber IGNITES GAS BY ITSELF so long: nothing may leak",
        HazardKind::WetLining => "A fresh lining is wet: hurried, STEAM BURSTS IT",
        HazardKind::SteelTooHot => "STEEL IN THE WALL IS TOO HOT and may drop its lining",
        HazardKind::NearCondensing => "Gas close to condensing: the gauge may mislead",
        HazardKind::Altitude => "Settings copied from sea level are wrong here",
        HazardKind::HeavyLining => "The lining is heavy: lift it with someone who knows how",
        HazardKind::HotShell => "Hot shell: burns on contact",
        HazardKind::LeftOfPeak => "The blower may surge: open the damper or bleed air",
        HazardKind::BlowerTooSmall => "THE BLOWER IS TOO SMALL, damper wide open",
        HazardKind::DamperTooWide => "TOO MUCH AIR, damper at its narrowest",
        HazardKind::FireTooSmall => "THE HEAT INPUT IS TOO SMALL for the chamber",
        HazardKind::WorkOutOfReach => "THE CHARGE NEEDS MORE HEAT than this burner supplies",
        HazardKind::WorkTooSlow => "THE CHARGE TAKES LONGER than asked",
        HazardKind::LiningOverheats => "LINING TOO HOT with the largest setting left on: turn down",
        HazardKind::CannotKeepUp => "THE CYLINDER CANNOT KEEP UP; never heat it by any means",
        HazardKind::CylinderShort => "THE CYLINDER DOES NOT LAST: have a second one ready",
        HazardKind::GaugeReadsHigh => "THE GAUGE READS HIGH: the line takes so much of it",
        HazardKind::Frost => "FROST ON THE CYLINDER: less gas; never heat it by any means",
        HazardKind::BlendBoilsApart => "The blend boils apart: the cylinder may tire early",
        HazardKind::BackPressure => "Moving the damper changes the gas too",
        HazardKind::DamperNearlyShut => "The damper is nearly shut: a small turn changes much",
        HazardKind::UnmeasuredTip => "A tip's marked size is not a bore: measure it",
        HazardKind::SlowJet => "Slow gas in a small bore: heat may be further off",
        HazardKind::ShortBore => "The jet's flow can flip: expect 10 %",
        HazardKind::DiscGapUnknown => "AIR NOT KNOWN with the disc so far shut: use settings further open",
        HazardKind::ThrottlingValve => "A plumbing valve throttles the air: note the oxygen at its mark",
        HazardKind::NarrowApproach => "The jet is narrow in its tube",
    }
}
