//! The lighting block of the sheet: what lights cold, what burns only in a glowing chamber, and unlit gas.

use heapless::Vec;

use crate::Input;
use crate::burner::{AirSetting, Burner, Conditions, GoesOut, Lighting, LightingRange, Lights, PortState, Span, Unlit};
use crate::combustion::{BurningRange, LimitStandard, burning_range, flames_measured};
use crate::error::{Error, Result as CheckedResult};
use crate::plant::certainty::SettingSure;
use crate::plant::entries::MOST_SETTINGS;
use crate::plant::furnace::FurnaceBlock;
use crate::plant::installation::Plant;
use crate::plant::lighting_gauge::Known;
use crate::plant::lit::{Lit, glow};
use crate::plant::refusal::{Place, Refusal};
use crate::plant::setting::{Setting, conditions_of};
use crate::plant::spreads::least_read;
use crate::plant::verdict::Verdict;
use crate::quantity::{GaugePressure, GrossHeatRate, NetHeatRate, Temperature};
use crate::{Scalar, solve};

/// Columns of the picture.
pub const COLUMNS: usize = 72;
/// The lowest gauge of the picture, Pa; the highest is four times the largest setting's or so.
const LOWEST_DRAWN: f64 = 800.0;

/// Everything the sheet says of lighting.
pub struct LightingBlock {
    /// The opening the damper is left at; 1 without a damper.
    pub left: f64,
    /// How cold the gas of the largest setting comes; the ranges are worked out with it.
    pub gas_temperature: Temperature,
    /// The head's constant, none until a lighting setting was seen, and the chamber.
    pub known: Known,
    /// The range with the damper left alone.
    pub range: LightingRange,
    /// The range with the air turned down with the gas, at the file's air ratio, up to what the blower feeds a hot head;
    /// empty without a damper.
    pub turned: LightingRange,
    /// With the air turned down with the gas, the gauge below which flashback is possible.
    pub flashback_below: Option<GaugePressure>,
    /// Whether that is known of this gas; where it is not, none of the above says nothing.
    pub flashback_known: bool,
    /// The lowest and the highest fire so: what keeps a glow without running back, with the damper at its least at the
    /// least and the gauge to be read, and what the blower feeds.
    pub fires: Option<[(GaugePressure, GrossHeatRate, NetHeatRate); 2]>,
    /// What ends them below.
    pub fires_end: FiresEnd,
    /// Each setting, in the file's order.
    pub settings: Vec<SettingLighting, MOST_SETTINGS>,
    /// Settings of the picture with the damper left alone, the gauge rising by a constant factor.
    pub drawn: Vec<(GaugePressure, Lighting, Verdict), COLUMNS>,
    /// The head with other holes, at the largest setting with the damper left alone.
    pub heads: Vec<OtherHead, { HEADS.len() }>,
}

/// What the lowest fire with the air turned down with the gas is the lowest by.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FiresEnd {
    /// Below it the glow goes.
    Glow,
    /// The damper can close no further.
    Damper,
    /// Below it flashback is possible.
    Flashback,
    /// No gauge can be read lower.
    Gauge,
}

/// One setting.
pub struct SettingLighting {
    /// What it does, its damper where the sheet sets it.
    pub lighting: Lighting,
    /// What it does in a cold chamber, on the safe side.
    pub verdict: Verdict,
    /// The leanest air ratio that lights cold.
    pub leanest: f64,
    /// Whether its damper stands where it is left alone.
    pub is_left: bool,
    /// Unlit gas, with the time that its own damper takes to purge it; none without the chamber's volume or when the
    /// gas blows back.
    pub unlit: Option<Unlit>,
    /// Its ports; none when the gas blows back.
    pub ports: Option<PortState>,
}

/// The head with other holes.
pub struct OtherHead {
    /// What is other about it.
    pub what: &'static str,
    /// Air ratio it gives.
    pub air_ratio: Option<f64>,
    /// Its ports.
    pub ports: PortState,
}

/// What is tried of the head: width of a hole and number of holes, each over what it is.
const HEADS: [(&str, f64, f64); 5] = [
    ("as built", 1.0, 1.0),
    ("holes a tenth wider", 1.1, 1.0),
    ("holes a tenth narrower", 0.9, 1.0),
    ("a fifth more holes", 1.0, 1.2),
    ("a fifth fewer holes", 1.0, 0.8),
];

/// Works out the lighting of a burner file; none without blower and head, or for a gas without limits of burning.
pub(crate) fn lighting(
    plant: &Plant,
    settings: &[Setting],
    sure: &[Option<SettingSure>],
    largest: usize,
    furnace: Option<&FurnaceBlock>,
) -> Result<Option<LightingBlock>, Refusal> {
    let Some(burner) = &plant.burner else { return Ok(None) };
    let main = &settings[largest];
    let lining = furnace.map(|block| (&block.lining, &block.chamber));
    let Some(lit) = plant.lit_with(main.gas_temperature, opening_of(main), glow(&plant.entries, lining))? else {
        return Ok(None);
    };
    let Lit { conditions, left, known } = lit;
    let air = AirSetting::Opening(left);
    // A gas whose limits are not known has no lighting to tell of.
    let Ok(range) = plant.lighting_range(&conditions, air, &known) else { return Ok(None) };
    let turned_air = AirSetting::Ratio(plant.entries.air_ratio);
    let flashback_known = flames_measured(&plant.gas).is_ok();
    let parts = || -> CheckedResult<LightingBlock> {
        let mut each = Vec::new();
        for (setting, sure) in settings.iter().zip(sure) {
            let _ = each.push(setting_lighting(burner, plant, setting, sure.as_ref(), left, &known)?);
        }
        // What the gas or the line does not allow, nothing burns at.
        let limits = cold_range(plant)?;
        let drawn = drawn(main.gauge).map(|gauge| {
            let found = plant.lighting(&conditions, gauge, air, &known).unwrap_or(NO_FLOW);
            (gauge, found, Verdict::of(&found, 0.0, &limits, &known))
        });
        let (mut turned, mut flashback_below) = (NOTHING, None);
        if plant.entries.damper.is_some() {
            turned = fed(plant.lighting_range(&conditions, turned_air, &known)?, plant, plant.entries.air_ratio);
            flashback_below = known_or_none(burner.flashback_below(&conditions, turned_air))?
                .map(|at_jet| plant.lit_reading(&conditions, at_jet, turned_air));
        }
        let at_main = Conditions { gas_temperature: main.gas_temperature, ..conditions_of(plant, &main.entry) };
        let least = least_fire(plant, &conditions, &turned, flashback_below, least_read(&plant.entries, settings));
        Ok(LightingBlock {
            left,
            gas_temperature: main.gas_temperature,
            known,
            range,
            fires: least.filter(|_| flashback_known).and_then(|(low, _)| fires(plant, low, turned.glowing?.high)),
            fires_end: least.map_or(FiresEnd::Glow, |(_, why)| why),
            turned,
            flashback_below,
            flashback_known,
            settings: each,
            drawn: drawn.collect(),
            heads: heads(burner, &at_main, main.at_jet, left),
        })
    };
    parts().map(Some).map_err(Place::section("head").refusing())
}

/// Where the flame flashes back; none too for a gas whose flames are not measured.
fn known_or_none(found: CheckedResult<Option<GaugePressure>>) -> CheckedResult<Option<GaugePressure>> {
    match found {
        Err(Error::NotMeasured { .. }) => Ok(None),
        found => found,
    }
}

/// A gauge that the gas does not allow.
const NO_FLOW: Lighting =
    Lighting { lights: Lights::Never, goes_out: Some(GoesOut::NoFlow), air_ratio: None, pull: None, walls: None };

/// No gauge.
const NOTHING: LightingRange = LightingRange { within_limits: None, cold: None, glowing: None };

/// What is left of a range under the highest gauge that the blower still feeds when the head is as hot as at work: a
/// cold head lets more through, but warms.
fn fed(range: LightingRange, plant: &Plant, air_ratio: f64) -> LightingRange {
    let Ok(fed) = plant.highest_fed(&plant.conditions, air_ratio) else { return NOTHING };
    let most = fed.gauge.unwrap_or(fed.at_jet);
    let cut = |span: Option<Span>| {
        let span = span.filter(|span| span.low < most)?;
        Some(if span.high > most { Span { high: most, high_ends: true, ..span } } else { span })
    };
    LightingRange { within_limits: cut(range.within_limits), cold: cut(range.cold), glowing: cut(range.glowing) }
}

/// The lowest gauge with the air turned down with the gas, and why it is.
fn least_fire(
    plant: &Plant,
    conditions: &Conditions,
    turned: &LightingRange,
    flashback_below: Option<GaugePressure>,
    least_read: GaugePressure,
) -> Option<(GaugePressure, FiresEnd)> {
    let (span, burner) = (turned.glowing?, plant.burner.as_ref()?);
    let damper = |gauge: f64| {
        let gauge = GaugePressure::from_pascals(gauge);
        let at_jet = plant.lit_at_jet(conditions, gauge, AirSetting::Ratio(plant.entries.air_ratio))?;
        match burner.opening_for(conditions, at_jet, plant.entries.air_ratio) {
            Err(error @ Error::NoSolution { input: Input::DamperOpening, .. }) => Err(error),
            _ => Ok(()),
        }
    };
    // Down from the highest gauge, to where the damper can close no further.
    let least = solve::highest_answered(-span.high.pascals(), -span.low.pascals(), |down: f64| damper(-down)).ok()?;
    let others = [
        (Some(GaugePressure::from_pascals(-least)), FiresEnd::Damper),
        (flashback_below, FiresEnd::Flashback),
        (Some(least_read), FiresEnd::Gauge),
    ];
    let higher = |low: (GaugePressure, FiresEnd), (gauge, why): (Option<GaugePressure>, FiresEnd)| match gauge {
        Some(gauge) if gauge > low.0 => (gauge, why),
        _ => low,
    };
    Some(others.into_iter().fold((span.low, FiresEnd::Glow), higher))
}

/// The fires at two gauges with the air turned down with the gas.
fn fires(
    plant: &Plant,
    low: GaugePressure,
    high: GaugePressure,
) -> Option<[(GaugePressure, GrossHeatRate, NetHeatRate); 2]> {
    let burner = plant.burner.as_ref()?;
    // The gas as cold as it comes at each reading, the chamber as hot as at work.
    let fire = |gauge: GaugePressure| {
        let there = plant.conditions_at(&plant.conditions, gauge).ok()?;
        let run = |at_jet| {
            let demand = burner.demand(&there, at_jet, plant.entries.air_ratio)?;
            Ok((demand.gas, demand.back_pressure))
        };
        let (gas, _) = plant.run_at(&there, gauge, run).ok()?;
        Some((gauge, plant.gas.gross_heating_value().of(gas), plant.gas.net_heating_value().of(gas)))
    };
    (low < high).then_some([fire(low)?, fire(high)?])
}

/// The opening a setting's damper stands at; 1 without a damper.
fn opening_of(setting: &Setting) -> f64 {
    setting.air.as_ref().and_then(|air| air.opening).unwrap_or(1.0)
}

/// Lighting of one setting; `left` is where the damper is left alone.
pub(crate) fn setting_lighting(
    burner: &Burner,
    plant: &Plant,
    setting: &Setting,
    sure: Option<&SettingSure>,
    left: f64,
    known: &Known,
) -> CheckedResult<SettingLighting> {
    let opening = opening_of(setting);
    let conditions = Conditions { gas_temperature: setting.gas_temperature, ..conditions_of(plant, &setting.entry) };
    let air = AirSetting::Opening(opening);
    let running = setting.air.as_ref().and_then(|air| air.running);
    let volume = known.chamber.volume;
    let unlit = volume.and_then(|volume| burner.unlit(&conditions, setting.at_jet, opening, volume).ok());
    let lighting = burner.lighting(&conditions, setting.at_jet, air, known.head_constant, &known.chamber)?;
    let spread = sure.and_then(|sure| sure.air_ratio).map_or(0.0, |ratio| ratio.relative());
    let limits = cold_range(plant)?;
    Ok(SettingLighting {
        verdict: Verdict::of(&lighting, spread, &limits, known),
        leanest: limits.leanest_air_ratio,
        lighting,
        is_left: (opening - left).abs() < 0.01,
        unlit,
        ports: running.and_then(|running| burner.port_state(&conditions, &running).ok()),
    })
}

/// What burns cold, by the narrow limits.
fn cold_range(plant: &Plant) -> CheckedResult<BurningRange> {
    burning_range(&plant.gas, &plant.site, plant.conditions.cold().mixture_temperature, LimitStandard::Nfpa497)
}

/// The gauge readings of the picture.
fn drawn(largest: GaugePressure) -> impl Iterator<Item = GaugePressure> {
    let high = (3.0 * largest.pascals()).clamp(40.0 * LOWEST_DRAWN, Input::GaugePressure.range().max);
    let step = Scalar::ln(high / LOWEST_DRAWN) / (COLUMNS - 1) as f64;
    (0..COLUMNS).map(move |column| GaugePressure::from_pascals(LOWEST_DRAWN * Scalar::exp(step * column as f64)))
}

fn heads(burner: &Burner, conditions: &Conditions, gauge: GaugePressure, left: f64) -> Vec<OtherHead, { HEADS.len() }> {
    let other = |&(what, width, count): &(&'static str, f64, f64)| {
        let head = burner.head.resized(width, count).ok()?;
        let burner = Burner { head, ..burner.clone() };
        let running = burner.run(conditions, gauge, left).ok()?;
        let ports = burner.port_state(conditions, &running).ok()?;
        Some(OtherHead { what, air_ratio: running.air_ratio, ports })
    };
    let has_ports = burner.head.ports().is_some();
    HEADS.iter().filter(|(_, _, count)| has_ports || *count == 1.0).filter_map(other).collect()
}

impl LightingBlock {
    /// How many times the pressure that holds it glowing a cold chamber wants; none until both are known.
    #[must_use]
    pub fn cold_over_glowing(&self) -> Option<f64> {
        Some(self.range.cold?.low.pascals() / self.range.glowing?.low.pascals())
    }
}

/// What a setting does, as programs read it: "cold" only of what lights by all that was seen.
#[must_use]
pub const fn lights_key(lighting: &Lighting, verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Lights => "cold",
        Verdict::FirstTry => "first_try",
        Verdict::WillNotLight(_) if lighting.walls.is_some() => "glowing",
        Verdict::WillNotLight(_) => "never",
    }
}
