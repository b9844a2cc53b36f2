//! The sentence of each hazard: what can happen, then what to do. Numbers come in already formatted.

use std::format;
use std::prelude::rust_2024::*;

use crate::plant::hazards::{Hazard, HazardKind, Measure, Severity};

/// Prints a number of a measure in the reader's units.
pub type Print<'p> = &'p dyn Fn(f64, Measure) -> String;

/// The signal word.
#[must_use]
pub const fn signal_word(severity: Severity) -> &'static str {
    match severity {
        Severity::Danger => "DANGER",
        Severity::Warning => "WARNING",
        Severity::Caution => "CAUTION",
        Severity::Notice => "NOTICE",
    }
}

/// The number it stands on, in a few words; none without one.
#[must_use]
pub fn number(hazard: &Hazard, print: Print<'_>) -> Option<String> {
    let measure = hazard.kind.measure();
    let number = print(hazard.number?, measure);
    let limit = hazard.limit.map(|limit| print(limit, measure));
    Some(match (hazard.kind, limit) {
        (HazardKind::BlowerTooSmall | HazardKind::DamperTooWide, Some(asked)) => {
            format!("air ratio {number} where {asked} is asked")
        }
        (HazardKind::TooLean | HazardKind::BlowerTooSmall | HazardKind::DamperTooWide, _) => {
            format!("air ratio {number}")
        }
        (HazardKind::CarbonMonoxide, _) => format!("{number} at least"),
        (HazardKind::NearCondensing, _) => format!("{number} times the dew-point pressure"),
        (HazardKind::BackPressure, _) => format!("{number} of the gauge"),
        (HazardKind::SlowJet, _) => format!("Reynolds number {number}"),
        (HazardKind::Flashback, _) => format!("{number} times the flashback gradient"),
        (HazardKind::FireTooSmall, _) => format!("ends at {number}"),
        (HazardKind::SteelTooHot | HazardKind::LiningOverheats, Some(most)) => {
            format!("{number} where the maximum is {most}")
        }
        (HazardKind::WorkOutOfReach, Some(fed)) => format!("{number} net where the blower feeds {fed}"),
        (HazardKind::WorkOutOfReach, None) => format!("{number} net"),
        (HazardKind::WetLining, _) => format!("{number} of water"),
        (HazardKind::CannotKeepUp | HazardKind::CylinderShort, _) => format!("after {number}"),
        (HazardKind::Frost, _) => format!("down to {number}"),
        (HazardKind::BlendBoilsApart, _) => format!("{number} of one gas"),
        (HazardKind::GaugeReadsHigh, _) => format!("{number} of the reading"),
        (HazardKind::ShortBore, _) => format!("{number} diameters long"),
        (HazardKind::NarrowApproach, _) => format!("{number} of the tube"),
        (HazardKind::HeavyGas, _) => format!("{number} times as heavy as air"),
        (HazardKind::Altitude, _) => format!("air ratio 1 becomes {number}"),
        (HazardKind::BeyondRegulator, _) => format!("{number} times the lock-up pressure"),
        (HazardKind::IgnitesLate, _) => format!("chamber at {number}"),
        (HazardKind::UnmeasuredTip, _) => format!("marked {number}"),
        _ => number,
    })
}

/// What it says, without its place and number.
#[must_use]
pub fn sentence(hazard: &Hazard, print: Print<'_>) -> String {
    let measure = hazard.kind.measure();
    let limit = || hazard.limit.map_or_else(String::new, |limit| print(limit, measure));
    match hazard.kind {
        HazardKind::NearCondensing if hazard.number.is_some_and(|ratio| ratio >= 1.0) => {
            "gas at this temperature is partly liquid at this gauge: warm it or turn down".into()
        }
        HazardKind::TooLean => format!(
            "TOO LEAN, WILL NOT LIGHT COLD (over air ratio {} or so): a chamber that does not glow fills with unburnt gas",
            limit()
        ),
        kind => fixed(kind).into(),
    }
}

/// The sentence of a kind, where no number stands within it.
const fn fixed(kind: HazardKind) -> &'static str {
    match kind {
        HazardKind::BlowsBack => "GAS WOULD BLOW BACK INTO THE BLOWER: never light this setting",
        HazardKind::TooLean => "TOO LEAN, WILL NOT LIGHT COLD: a chamber that does not glow fills with unburnt gas",
        HazardKind::GoesOut => {
            "BLOW-OFF: the flames leave the ports in a chamber that does not glow, and unburnt gas fills it: light at a \
             higher gauge or close the damper"
        }
        HazardKind::CarbonMonoxide => {
            "too little air makes CARBON MONOXIDE, which kills unseen: workplaces allow 25 ppm (ACGIH) to 50 ppm (OSHA) \
             over 8 h and never above 200 ppm (NIOSH), and 1200 ppm is immediately dangerous to life (NIOSH). Vent \
             outdoors, wear an alarm"
        }
        HazardKind::UnlitGas => {
            "so soon UNLIT GAS FILLS THE CHAMBER WITH AN EXPLOSIVE MIXTURE: a flame at the ports before the gas; if it \
             does not light at once, gas off and purge with air"
        }
        HazardKind::NoGas => {
            "NO GAS FLOWS: the gauge is no higher than the pressure it blows into, and air may enter the gas line"
        }
        HazardKind::Flashback => {
            "FLASHBACK into the head is possible (excluded only above three times): turn up, or take fewer or \
             narrower ports; if the head roars or glows, gas off"
        }
        HazardKind::FlashbackUnknown => {
            "FLASHBACK of this gas is not known here: with much hydrogen, carbon monoxide, ethylene or propylene it comes \
             far more easily than with other gases, at any gauge; use only a head made for it"
        }
        HazardKind::HeavyGas => "the gas pools in low places: no pit, no cellar, no drain nearby",
        HazardKind::IgnitesLate => {
            "between autoignition and 760 °C of the coldest wall GAS MAY GATHER AND IGNITE ALL AT ONCE: keep a flame at the \
             ports and watch it, else gas off and purge (EN 746-2 names 750 °C, and an hour at it)"
        }
        HazardKind::BeyondRegulator => {
            "THE REGULATOR CANNOT GIVE THIS GAUGE PRESSURE, it is above its lock-up pressure: set a lower gauge, or take \
             a regulator made for it"
        }
        HazardKind::ZincFume => {
            "brass gives off ZINC FUME, which makes you ill: melt it under a hood and no hotter than it must be"
        }
        HazardKind::ReIgnites => {
            "after a stop the chamber may IGNITE GAS BY ITSELF for so long: shut the gas at its supply, nothing may leak"
        }
        HazardKind::WetLining => {
            "a fresh lining is wet: hurried, STEAM BURSTS IT; its dust harms the lungs, wear a mask"
        }
        HazardKind::SteelTooHot => {
            "STEEL IN THE WALL IS TOO HOT: it scales away and may drop its lining; place it further back"
        }
        HazardKind::NearCondensing => "gas close to condensing: the gauge may mislead",
        HazardKind::Altitude => "settings copied from sea level are wrong here",
        HazardKind::HeavyLining => "the lining is heavy: lift it with someone who knows how",
        HazardKind::HotShell => "hot shell: burns on contact",
        HazardKind::LeftOfPeak => {
            "the blower gets less air than where its pressure is highest and may surge, a pulsing air: open the damper or \
             bleed air"
        }
        HazardKind::BlowerTooSmall => "THE BLOWER IS TOO SMALL, even with the damper wide open",
        HazardKind::DamperTooWide => {
            "TOO MUCH AIR with the damper at its narrowest, or with none: shut it further and judge by the fire, fit one, \
             or slow the blower"
        }
        HazardKind::FireTooSmall => {
            "THE HEAT INPUT IS TOO SMALL: the largest setting never reaches the chamber's temperature"
        }
        HazardKind::WorkOutOfReach => {
            "THE CHARGE NEEDS MORE HEAT THAN THIS BURNER SUPPLIES with enough air, so there is no run plan: allow more \
             time, or take a larger jet and blower"
        }
        HazardKind::WorkTooSlow => {
            "THE CHARGE TAKES LONGER THAN REQUESTED, so long in this chamber: allow the time, or a hotter chamber"
        }
        HazardKind::LiningOverheats => {
            "the largest setting, left on, EXCEEDS THE LINING'S MAXIMUM SERVICE TEMPERATURE: turn down when the chamber is hot"
        }
        HazardKind::CannotKeepUp => {
            "THE CYLINDER CANNOT KEEP UP: it gets too cold for its regulator and the fire dies down; a second one on \
             a manifold, or a fuller one; never heat it by any means"
        }
        HazardKind::CylinderShort => {
            "THE CYLINDER DOES NOT LAST THE FIRING: have a fuller or a second one ready before you light"
        }
        HazardKind::GaugeReadsHigh => {
            "THE GAUGE READS HIGH: the line takes so much of it before the jet; a wider line or valve, or a gauge at the jet"
        }
        HazardKind::Frost => {
            "FROST ON THE CYLINDER keeps heat from it, and it supplies less than stated here; never heat it by any means"
        }
        HazardKind::BlendBoilsApart => {
            "the lighter gas of a blend boils off first: the cylinder may stop keeping up a third sooner than stated here"
        }
        HazardKind::BackPressure => "the air stream pushes back on the jet: moving the damper changes the gas too",
        HazardKind::DamperNearlyShut => {
            "the damper is nearly shut: a small turn changes much; a slower blower wheel (impeller) is steadier"
        }
        HazardKind::UnmeasuredTip => {
            "a tip's marked size is not a bore: new tips are bored wider and wear. Measure with pins, then give bore"
        }
        HazardKind::SlowJet => "slow gas in a small bore: the heat input may be 8 % further off",
        HazardKind::ShortBore => "between a thin and a long jet the flow can flip: expect 10 %, drill deeper",
        HazardKind::DiscGapUnknown => {
            "AIR NOT KNOWN this far shut: what a disc leaves open round its rim rules, and the air may be half or twice what \
             is stated. Shut the disc with the blower on, measure what passes and give the gap, or use settings further open"
        }
        HazardKind::ThrottlingValve => {
            "a plumbing valve is made to shut, and its loss is known by a factor only: note the oxygen at one mark and give \
             the correction, or fit a slide gate"
        }
        HazardKind::NarrowApproach => "the jet is narrow in its tube: what is in the tube before it matters too",
    }
}
