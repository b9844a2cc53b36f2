//! What the numbers warn of, each where its number stands.

use std::format;
use std::prelude::rust_2024::*;
use std::string::ToString;
use std::vec;

use crate::combustion::{AirNeed, leanest_air_ratio};
use crate::gas::NEAR_CONDENSING;
use crate::orifice::{DrillList, Supply};
use crate::plant::carbon_monoxide::{parts, poisons};
use crate::plant::evaluation::{AirBlock, Setting};
use crate::plant::hazards::furnace::FurnaceCaution;
use crate::plant::hazards::lighting::LightingCaution;
use crate::plant::hazards::supply::SupplyCaution;
use crate::plant::installation::Assembled;
use crate::quantity::{AbsolutePressure, GaugePressure};
use crate::report::units::Shop;
use crate::site::Site;

/// Above this share of the tube the approach is no longer wide.
const NARROW_APPROACH: f64 = 0.35;
/// Above this share of the gauge, the air stream's own pressure makes the gauge misleading.
const MUCH_BACK_PRESSURE: f64 = 0.1;
/// Below this Reynolds number viscosity rules the coefficient.
const VISCOUS: f64 = 5000.0;
/// The standard atmosphere at sea level, Pa.
const SEA_LEVEL: f64 = 101_325.0;
/// Below this share of it, some 250 m up, settings copied from sea level mislead.
const HIGH: f64 = 0.97;
/// Below this opening a damper is touchy.
const NEARLY_SHUT: f64 = 0.2;

/// A warning drawn from a number.
#[derive(Clone, Debug, PartialEq)]
pub enum Caution {
    /// The supply is near its dew point, or beyond it.
    NearCondensing {
        /// Setting.
        setting: String,
        /// Supply pressure over dew-point pressure.
        ratio: f64,
    },
    /// The blower cannot give the air asked.
    BlowerTooSmall {
        /// Setting.
        setting: String,
        /// Air ratio it reaches.
        air_ratio: Option<f64>,
        /// What it lacks, Pa.
        shortfall_pa: f64,
    },
    /// The gauge is no higher than the air it blows into.
    NoGas {
        /// Setting.
        setting: String,
    },
    /// Even the narrowest damper, or none at all, gives more air than was asked.
    DamperTooWide {
        /// Setting.
        setting: String,
        /// Its opening; none without a damper.
        opening: Option<f64>,
        /// Air ratio it reaches.
        air_ratio: f64,
    },
    /// The mixture would blow back into the blower.
    BlowsBack {
        /// Setting.
        setting: String,
    },
    /// The blower runs where it may surge.
    LeftOfPeak {
        /// Setting.
        setting: String,
    },
    /// Less air than the gas needs.
    CarbonMonoxide {
        /// Setting.
        setting: String,
        /// Air ratio.
        air_ratio: f64,
        /// Its share of the burnt gases, if a flame is worked out so rich.
        monoxide: Option<f64>,
    },
    /// Leaner than a cold mixture burns.
    TooLean {
        /// Setting.
        setting: String,
        /// Air ratio.
        air_ratio: f64,
        /// The leanest that burns cold.
        leanest: f64,
    },
    /// The damper is nearly shut.
    DamperNearlyShut {
        /// Setting.
        setting: String,
        /// Opening.
        opening: f64,
    },
    /// The air stream's pressure is a good part of the gauge's.
    BackPressure {
        /// Setting.
        setting: String,
        /// Its share of the gauge.
        share: f64,
    },
    /// Small hole, slow gas.
    SlowJet {
        /// Setting.
        setting: String,
        /// Reynolds number.
        reynolds_number: f64,
    },
    /// A hole neither thin nor long.
    ShortBore {
        /// Length over diameter.
        length_ratio: f64,
    },
    /// The tube before the jet is narrow.
    NarrowApproach {
        /// Bore over tube.
        ratio: f64,
    },
    /// A contact tip by its marked size.
    UnmeasuredTip {
        /// Its name.
        tip: String,
    },
    /// Gas heavier than air.
    HeavyGas {
        /// Relative density.
        relative_density: f64,
    },
    /// What the furnace's numbers warn of.
    Furnace(FurnaceCaution),
    /// What the numbers of lighting warn of.
    Lighting(LightingCaution),
    /// What the cylinder's and the line's numbers warn of.
    Supply(SupplyCaution),
    /// Sea-level settings mislead here.
    Altitude {
        /// What an air ratio of 1 set at sea level becomes.
        air_ratio: f64,
    },
}

/// Every caution the numbers call for, the dangerous first; the work's own fire is judged as a setting.
pub fn cautions(
    rig: &Assembled,
    settings: &[Setting],
    work: Option<&Setting>,
    air: Option<&AirBlock>,
    others: Vec<Caution>,
) -> Vec<Caution> {
    let mut found = vec![];
    let leanest = leanest_air_ratio(&rig.gas, &rig.site);
    for setting in settings.iter().chain(work) {
        of_setting(setting, leanest, &mut found);
    }
    of_burner(rig, air.map(|air| settings[air.setting].gauge), &mut found);
    found.extend(others);
    found.sort_by_key(Caution::rank);
    found
}

fn of_setting(setting: &Setting, leanest: f64, found: &mut Vec<Caution>) {
    let name = || String::from(setting.entry.name.as_str());
    if setting.saturation_ratio > NEAR_CONDENSING {
        found.push(Caution::NearCondensing { setting: name(), ratio: setting.saturation_ratio });
    }
    let gas_flows = setting.gas.kilograms_per_second() > 0.0;
    if !gas_flows {
        found.push(Caution::NoGas { setting: name() });
    }
    if gas_flows && setting.jet.reynolds_number < VISCOUS {
        let reynolds_number = setting.jet.reynolds_number;
        found.push(Caution::SlowJet { setting: name(), reynolds_number });
    }
    let Some(air) = &setting.air else { return };
    let air_ratio = air.air_ratio();
    if let Some(shortfall) = air.shortfall {
        found.push(Caution::BlowerTooSmall { setting: name(), air_ratio, shortfall_pa: shortfall.pascals() });
    }
    let Some(running) = air.running else {
        found.push(Caution::BlowsBack { setting: name() });
        return;
    };
    if running.left_of_peak {
        found.push(Caution::LeftOfPeak { setting: name() });
    }
    match air_ratio {
        Some(air_ratio) if air_ratio > leanest => found.push(Caution::TooLean { setting: name(), air_ratio, leanest }),
        Some(air_ratio) if poisons(air_ratio, setting.monoxide) => {
            found.push(Caution::CarbonMonoxide { setting: name(), air_ratio, monoxide: setting.monoxide });
        }
        _ => {}
    }
    match (air_ratio, air.opening) {
        (Some(air_ratio), opening) if air.too_much_air => {
            found.push(Caution::DamperTooWide { setting: name(), opening, air_ratio });
        }
        (_, Some(opening)) if opening < NEARLY_SHUT && !air.too_much_air => {
            found.push(Caution::DamperNearlyShut { setting: name(), opening });
        }
        _ => {}
    }
    let share = running.back_pressure.pascals() / setting.gauge.pascals();
    if gas_flows && share > MUCH_BACK_PRESSURE {
        found.push(Caution::BackPressure { setting: name(), share });
    }
}

fn of_burner(rig: &Assembled, gauge: Option<GaugePressure>, found: &mut Vec<Caution>) {
    let bore = &rig.jet.bore;
    if (0.3..1.5).contains(&bore.length_ratio()) {
        found.push(Caution::ShortBore { length_ratio: bore.length_ratio() });
    }
    if bore.approach_ratio() > NARROW_APPROACH {
        found.push(Caution::NarrowApproach { ratio: bore.approach_ratio() });
    }
    if let Some(drill) = rig.drill.filter(|drill| drill.list() == DrillList::Tips) {
        found.push(Caution::UnmeasuredTip { tip: drill.to_string() });
    }
    let values = rig.gas.mixture().calorific_values(Default::default(), Default::default());
    if values.relative_density > 1.0 {
        found.push(Caution::HeavyGas { relative_density: values.relative_density });
    }
    if rig.site.ambient_pressure().pascals() < HIGH * SEA_LEVEL {
        if let Some(air_ratio) = gauge.and_then(|gauge| sea_level_settings(rig, gauge)) {
            found.push(Caution::Altitude { air_ratio });
        }
    }
}

/// The air ratio that a burner set to 1 at sea level has here: air by density, gas by the jet at the same gauge.
fn sea_level_settings(rig: &Assembled, gauge: GaugePressure) -> Option<f64> {
    let pressure = AbsolutePressure::from_pascals(SEA_LEVEL);
    let sea_level = Site::at_station_pressure(pressure, rig.site.air_temperature(), rig.site.humidity()).ok()?;
    let gas_at = |site: &Site| {
        let back = GaugePressure::from_pascals(0.0);
        let ambient = site.ambient_pressure();
        let supply = Supply { ambient, gauge, back, temperature: rig.conditions.gas_temperature };
        Some(rig.jet.flow(&rig.gas, &supply).ok()?.mass_flow.kilograms_per_second())
    };
    let air = rig.site.air_density().kilograms_per_cubic_meter() / sea_level.air_density().kilograms_per_cubic_meter();
    let need = AirNeed::new(&rig.gas, &sea_level).mass_ratio / AirNeed::new(&rig.gas, &rig.site).mass_ratio;
    let (gas_there, gas_here) = (gas_at(&sea_level)?, gas_at(&rig.site)?);
    (gas_here > 0.0).then(|| air * need * gas_there / gas_here)
}

impl Caution {
    /// The key it has for programs.
    #[must_use]
    pub fn key(&self) -> &'static str {
        match self {
            Caution::NearCondensing { .. } => "near_condensing",
            Caution::BlowerTooSmall { .. } => "blower_too_small",
            Caution::NoGas { .. } => "no_gas",
            Caution::DamperTooWide { .. } => "damper_too_wide",
            Caution::TooLean { .. } => "too_lean",
            Caution::BlowsBack { .. } => "blows_back",
            Caution::LeftOfPeak { .. } => "left_of_peak",
            Caution::CarbonMonoxide { .. } => "carbon_monoxide",
            Caution::DamperNearlyShut { .. } => "damper_nearly_shut",
            Caution::BackPressure { .. } => "back_pressure",
            Caution::SlowJet { .. } => "slow_jet",
            Caution::ShortBore { .. } => "short_bore",
            Caution::NarrowApproach { .. } => "narrow_approach",
            Caution::UnmeasuredTip { .. } => "unmeasured_tip",
            Caution::HeavyGas { .. } => "heavy_gas",
            Caution::Altitude { .. } => "altitude",
            Caution::Furnace(caution) => caution.key(),
            Caution::Lighting(caution) => caution.key(),
            Caution::Supply(caution) => caution.key(),
        }
    }

    /// The setting it stands at, if one.
    #[must_use]
    pub fn setting(&self) -> Option<&str> {
        match self {
            Caution::NearCondensing { setting, .. }
            | Caution::BlowerTooSmall { setting, .. }
            | Caution::NoGas { setting }
            | Caution::DamperTooWide { setting, .. }
            | Caution::TooLean { setting, .. }
            | Caution::BlowsBack { setting }
            | Caution::LeftOfPeak { setting }
            | Caution::CarbonMonoxide { setting, .. }
            | Caution::DamperNearlyShut { setting, .. }
            | Caution::BackPressure { setting, .. }
            | Caution::SlowJet { setting, .. } => Some(setting),
            Caution::Lighting(caution) => caution.setting(),
            Caution::Supply(caution) => caution.setting(),
            _ => None,
        }
    }

    /// Danger to life first, then what spoils the work, then what blurs the numbers.
    fn rank(&self) -> u8 {
        match self {
            Caution::BlowsBack { .. } | Caution::NoGas { .. } | Caution::TooLean { .. } => 0,
            Caution::CarbonMonoxide { .. } => 1,
            Caution::HeavyGas { .. } => 2,
            Caution::BlowerTooSmall { .. } | Caution::DamperTooWide { .. } => 3,
            Caution::NearCondensing { .. } => 4,
            Caution::LeftOfPeak { .. } => 5,
            Caution::Altitude { .. } => 6,
            Caution::Furnace(caution) => caution.rank(),
            Caution::Lighting(caution) => caution.rank(),
            Caution::Supply(caution) => caution.rank(),
            Caution::BackPressure { .. } | Caution::DamperNearlyShut { .. } => 7,
            Caution::UnmeasuredTip { .. } => 8,
            Caution::SlowJet { .. } | Caution::ShortBore { .. } | Caution::NarrowApproach { .. } => 9,
        }
    }

    /// The number it stands on, where settings differ in nothing else.
    #[must_use]
    pub fn number(&self, shop: &Shop) -> Option<String> {
        match self {
            Caution::BlowerTooSmall { air_ratio, shortfall_pa, .. } => {
                let short = format!("short by {}", shop.low_pressure(*shortfall_pa));
                Some(air_ratio.map_or(short.clone(), |ratio| format!("air ratio {}, {short}", Shop::ratio(ratio))))
            }
            Caution::TooLean { air_ratio, .. } => Some(format!("air ratio {}", Shop::ratio(*air_ratio))),
            Caution::CarbonMonoxide { air_ratio, monoxide, .. } => {
                let ratio = format!("air ratio {}", Shop::ratio(*air_ratio));
                Some(monoxide.map_or(ratio.clone(), |share| format!("{ratio}, {:.0} ppm at least", parts(share))))
            }
            Caution::BackPressure { share, .. } => Some(format!("{} of the gauge", Shop::share(*share))),
            Caution::SlowJet { reynolds_number, .. } => Some(format!("Reynolds number {reynolds_number:.0}")),
            Caution::Furnace(caution) => caution.number(shop),
            Caution::Lighting(caution) => caution.number(),
            Caution::Supply(caution) => caution.number(shop),
            _ => None,
        }
    }

    /// What it says, without the setting's name and its number.
    #[must_use]
    pub fn text(&self) -> String {
        match self {
            Caution::NearCondensing { ratio, .. } if *ratio >= 1.0 => format!(
                "gas at this temperature is partly liquid at this gauge ({ratio:.2} times its dew-point pressure): warm it or turn down"
            ),
            Caution::NearCondensing { ratio, .. } => {
                format!("gas close to condensing ({:.0} % of its dew-point pressure): the gauge may lie", 100.0 * ratio)
            }
            Caution::BlowerTooSmall { .. } => "THE BLOWER IS TOO SMALL, even with the damper wide open".into(),
            Caution::NoGas { .. } => {
                "NO GAS FLOWS: the gauge is no higher than the pressure it blows into, and air may enter the gas line"
                    .into()
            }
            Caution::TooLean { leanest, .. } => format!(
                "TOO LEAN TO BURN COLD (over air ratio {} or so): a chamber that is not glowing fills with unburnt gas",
                Shop::ratio(*leanest)
            ),
            Caution::DamperTooWide { opening: Some(opening), air_ratio, .. } => format!(
                "TOO MUCH AIR: with the damper at {} the air ratio is still {}. Shut it further and judge by the fire, or \
                 slow the blower",
                Shop::share(*opening),
                Shop::ratio(*air_ratio)
            ),
            Caution::DamperTooWide { opening: None, air_ratio, .. } => format!(
                "TOO MUCH AIR: without a damper the air ratio is {}. Fit a damper or slow the blower",
                Shop::ratio(*air_ratio)
            ),
            Caution::BlowsBack { .. } => "GAS WOULD BLOW BACK INTO THE BLOWER: never light this setting".into(),
            Caution::LeftOfPeak { .. } => {
                "the blower gets less air than where its pressure is highest and may surge, a pulsing air: open the damper or \
                 bleed air"
                    .into()
            }
            Caution::CarbonMonoxide { .. } => {
                "too little air makes CARBON MONOXIDE, which kills unseen: workplaces allow 25 \
                 ppm (ACGIH) to 50 ppm (OSHA) over 8 h and never above 200 ppm (NIOSH), and 1200 ppm is immediately dangerous to life \
                 (NIOSH). Vent outdoors, wear an alarm"
                    .into()
            }
            Caution::DamperNearlyShut { .. } => {
                "the damper is nearly shut: a hair's turn changes the fire; a slower wheel is steadier".into()
            }
            Caution::BackPressure { .. } => {
                "the air stream pushes back on the jet: moving the damper changes the gas too".into()
            }
            Caution::SlowJet { .. } => "slow gas in a small hole: the fire may be 8 % further off".into(),
            Caution::ShortBore { length_ratio } => format!(
                "the jet is {length_ratio:.1} diameters long: between thin and long the flow can flip; expect 10 %, drill deeper"
            ),
            Caution::NarrowApproach { ratio } => {
                format!("the jet is {:.0} % of its tube: what is in the tube before it matters too", 100.0 * ratio)
            }
            Caution::UnmeasuredTip { tip } => format!(
                "{tip} is a marked size, not a bore: new tips are bored wider and wear. Measure with pins, then give bore"
            ),
            Caution::HeavyGas { relative_density } => format!(
                "the gas is {relative_density:.1} times as heavy as air and pools in low places: no pit, no cellar, no drain nearby"
            ),
            Caution::Furnace(caution) => caution.text(),
            Caution::Lighting(caution) => caution.text(),
            Caution::Supply(caution) => caution.text(),
            Caution::Altitude { air_ratio } => {
                format!("settings copied from sea level go wrong here: air ratio 1 becomes {air_ratio:.2}")
            }
        }
    }
}
