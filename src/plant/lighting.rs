//! The lighting block of the sheet: what lights cold, what burns only in a glowing chamber, and unlit gas.

use std::prelude::rust_2024::*;
use std::vec;

use crate::Input;
use crate::burner::{
    AirSetting, Burner, Conditions, GLOW_CELSIUS, Glow, GoesOut, Lighting, LightingRange, Lights, PortState, Span,
    Unlit,
};
use crate::combustion::flames_measured;
use crate::error::{Error, Result as CheckedResult};
use crate::file::burner_file::BurnerFile;
use crate::file::error::FileError;
use crate::plant::evaluation::{Setting, conditions_of};
use crate::plant::furnace::FurnaceBlock;
use crate::plant::installation::Assembled;
use crate::plant::lighting_gauge::Known;
use crate::plant::spreads::dial;
use crate::quantity::{GaugePressure, GrossHeatRate, NetHeatRate, Power, Temperature, Volume};
use crate::solve;

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
    /// With the air turned down with the gas, the gauge below which the flame may run back.
    pub runs_back_below: Option<GaugePressure>,
    /// Whether that is known of this gas; where it is not, none of the above says nothing.
    pub runs_back_known: bool,
    /// The lowest and the highest fire so: what keeps a glow without running back, with the damper at its least at the
    /// least and the gauge to be read, and what the blower feeds.
    pub fires: Option<[(GaugePressure, GrossHeatRate, NetHeatRate); 2]>,
    /// What ends them below.
    pub fires_end: FiresEnd,
    /// Each setting, in the file's order.
    pub settings: Vec<SettingLighting>,
    /// Settings of the picture with the damper left alone, the gauge rising by a constant factor.
    pub drawn: Vec<(GaugePressure, Lighting)>,
    /// The head with other holes, at the largest setting with the damper left alone.
    pub heads: Vec<OtherHead>,
}

/// What the lowest fire with the air turned down with the gas is the lowest by.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FiresEnd {
    /// Below it the glow goes.
    Glow,
    /// The damper can close no further.
    Damper,
    /// Below it the flame may run back.
    RunsBack,
    /// No gauge can be read lower.
    Gauge,
}

/// One setting.
pub struct SettingLighting {
    /// What it does, its damper where the sheet sets it.
    pub lighting: Lighting,
    /// Whether its damper stands where it is left alone.
    pub is_left: bool,
    /// Unlit gas, with the time that its own damper takes to blow it out; none without the chamber's volume or when the
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
    file: &BurnerFile,
    rig: &Assembled,
    settings: &[Setting],
    largest: usize,
    furnace: Option<&FurnaceBlock>,
) -> Result<Option<LightingBlock>, FileError> {
    let Some(burner) = &rig.burner else { return Ok(None) };
    let main = &settings[largest];
    // The gas is as cold as at the largest setting, whatever the gauge.
    let conditions = Conditions { gas_temperature: main.gas_temperature, ..rig.conditions };
    let left = opening_of(main);
    let mut known = Known { head_constant: None, chamber: chamber(file, furnace) };
    let seen = file.entries.lighting.as_ref().and_then(|entry| entry.lights_at.map(|gauge| (gauge, entry.damper)));
    if let Some((gauge, damper)) = seen {
        let air = AirSetting::Opening(damper.unwrap_or(left));
        let constant = rig
            .lit_at_jet(&conditions, gauge, air)
            .and_then(|at_jet| burner.head_constant(&conditions, at_jet, air))
            .map_err(|error| {
                let reading = |at_jet| rig.lit_reading(&conditions.cold(), at_jet, air);
                file.refuse("lighting.lights_at", seen_words(&error, reading))
            })?;
        known.head_constant = Some(constant);
    }
    let air = AirSetting::Opening(left);
    // A gas whose limits are not known has no lighting to tell of.
    let Ok(range) = rig.lighting_range(&conditions, air, &known) else { return Ok(None) };
    let turned_air = AirSetting::Ratio(file.entries.air_ratio);
    let runs_back_known = flames_measured(&rig.gas).is_ok();
    let parts = || -> CheckedResult<LightingBlock> {
        let mut each = vec![];
        for setting in settings {
            each.push(setting_lighting(burner, rig, setting, left, &known)?);
        }
        // What the gas or the line does not allow, nothing burns at.
        let drawn =
            drawn(main.gauge).map(|gauge| (gauge, rig.lighting(&conditions, gauge, air, &known).unwrap_or(NO_FLOW)));
        let (mut turned, mut runs_back_below) = (NOTHING, None);
        if file.entries.damper.is_some() {
            turned = fed(
                rig.lighting_range(&conditions, turned_air, &known)?,
                burner,
                rig,
                &conditions,
                file.entries.air_ratio,
            );
            runs_back_below = known_or_none(burner.runs_back_below(&conditions, turned_air))?
                .map(|at_jet| rig.lit_reading(&conditions, at_jet, turned_air));
        }
        let at_main = Conditions { gas_temperature: main.gas_temperature, ..conditions_of(rig, &main.entry) };
        let least = least_fire(file, rig, &conditions, &turned, runs_back_below, least_read(file, settings));
        Ok(LightingBlock {
            left,
            gas_temperature: main.gas_temperature,
            known,
            range,
            fires: least
                .filter(|_| runs_back_known)
                .and_then(|(low, _)| fires(file, rig, &conditions, low, turned.glowing?.high)),
            fires_end: least.map_or(FiresEnd::Glow, |(_, why)| why),
            turned,
            runs_back_below,
            runs_back_known,
            settings: each,
            drawn: drawn.collect(),
            heads: heads(burner, &at_main, main.at_jet, left),
        })
    };
    parts().map(Some).map_err(|error| file.refuse("head", error))
}

/// Where the flame runs back; none too for a gas whose flames are not measured.
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

/// A reading that is less than so many times what the gauge may err by says nothing of the fire (engineering judgement).
const READ: f64 = 2.0;

/// What is left of a range under the highest gauge that the blower still feeds when the head is as hot as at work: a
/// cold head lets more through, but warms.
fn fed(
    range: LightingRange,
    burner: &Burner,
    rig: &Assembled,
    conditions: &Conditions,
    air_ratio: f64,
) -> LightingRange {
    let Ok(at_jet) = burner.highest_gauge(conditions, air_ratio) else { return NOTHING };
    let most = rig.lit_reading(conditions, at_jet, AirSetting::Ratio(air_ratio));
    let cut = |span: Option<Span>| {
        let span = span.filter(|span| span.low < most)?;
        Some(if span.high > most { Span { high: most, high_ends: true, ..span } } else { span })
    };
    LightingRange { within_limits: cut(range.within_limits), cold: cut(range.cold), glowing: cut(range.glowing) }
}

/// The lowest reading that a fire can be set by.
pub(crate) fn least_read(file: &BurnerFile, settings: &[Setting]) -> GaugePressure {
    let highest = settings.iter().map(|setting| setting.gauge.pascals()).fold(0.0, f64::max);
    dial(&file.entries, GaugePressure::from_pascals(highest)).half_width(GaugePressure::from_pascals(0.0)) * READ
}

/// The lowest gauge with the air turned down with the gas, and why it is.
fn least_fire(
    file: &BurnerFile,
    rig: &Assembled,
    conditions: &Conditions,
    turned: &LightingRange,
    runs_back_below: Option<GaugePressure>,
    least_read: GaugePressure,
) -> Option<(GaugePressure, FiresEnd)> {
    let (span, burner) = (turned.glowing?, rig.burner.as_ref()?);
    let damper = |gauge: f64| {
        let gauge = GaugePressure::from_pascals(gauge);
        let at_jet = rig.lit_at_jet(conditions, gauge, AirSetting::Ratio(file.entries.air_ratio))?;
        match burner.opening_for(conditions, at_jet, file.entries.air_ratio) {
            Err(error @ Error::NoSolution { input: Input::DamperOpening, .. }) => Err(error),
            _ => Ok(()),
        }
    };
    // Down from the highest gauge, to where the damper can close no further.
    let least = solve::highest_answered(-span.high.pascals(), -span.low.pascals(), |down: f64| damper(-down)).ok()?;
    let others = [
        (Some(GaugePressure::from_pascals(-least)), FiresEnd::Damper),
        (runs_back_below, FiresEnd::RunsBack),
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
    file: &BurnerFile,
    rig: &Assembled,
    conditions: &Conditions,
    low: GaugePressure,
    high: GaugePressure,
) -> Option<[(GaugePressure, GrossHeatRate, NetHeatRate); 2]> {
    let burner = rig.burner.as_ref()?;
    let fire = |gauge: GaugePressure| {
        let at_jet = rig.lit_at_jet(conditions, gauge, AirSetting::Ratio(file.entries.air_ratio)).ok()?;
        let gas = burner.demand(conditions, at_jet, file.entries.air_ratio).ok()?.gas;
        Some((gauge, rig.gas.gross_heating_value().of(gas), rig.gas.net_heating_value().of(gas)))
    };
    (low < high).then_some([fire(low)?, fire(high)?])
}

/// Why a setting that was seen to light cannot be believed.
fn seen_words(error: &Error, reading: impl Fn(GaugePressure) -> GaugePressure) -> String {
    match error {
        Error::NoSolution { input: Input::AirRatio, nearest: ratio }
        | Error::OutOfRange { input: Input::AirRatio, given: ratio } => std::format!(
            "this burner has an air ratio of {ratio:.2} there, which does not burn cold: look at the jet, the damper and \
             the blower again"
        ),
        Error::NoSolution { input: Input::GaugePressure, nearest } => {
            let low = reading(GaugePressure::from_pascals(f64::from(*nearest)));
            std::format!(
                "not the lowest gauge that lights: the mixture is so rich there that a lower one lights more easily, by this \
                 from {:.3} bar ({:.2} psi) up; give the lowest that lights, or look at the jet, the damper and the blower \
                 again",
                low.bar(),
                low.psi()
            )
        }
        other => crate::prose::refusals::advice(other),
    }
}

/// The opening a setting's damper stands at; 1 without a damper.
fn opening_of(setting: &Setting) -> f64 {
    setting.air.as_ref().and_then(|air| air.opening).unwrap_or(1.0)
}

/// The chamber: its panels and layers where it has them, else what the lighting's section says.
fn chamber(file: &BurnerFile, furnace: Option<&FurnaceBlock>) -> Glow {
    let entry = file.entries.lighting.as_ref();
    let Some(block) = furnace else {
        return Glow {
            volume: entry.and_then(|entry| entry.chamber_volume),
            loss: entry.and_then(|entry| entry.glow_loss),
        };
    };
    // Walls and openings hot through, with nothing going up the flue.
    let balance = block.chamber.fire_for(Temperature::from_celsius(GLOW_CELSIUS), Power::from_watts(0.0), |_| 1.0);
    Glow {
        volume: Some(Volume::from_cubic_meters(block.lining.take_off().chamber_volume)),
        loss: balance.ok().map(|balance| Power::from_watts(balance.walls.watts() + balance.openings.watts())),
    }
}

fn setting_lighting(
    burner: &Burner,
    rig: &Assembled,
    setting: &Setting,
    left: f64,
    known: &Known,
) -> CheckedResult<SettingLighting> {
    let opening = opening_of(setting);
    let conditions = Conditions { gas_temperature: setting.gas_temperature, ..conditions_of(rig, &setting.entry) };
    let air = AirSetting::Opening(opening);
    let running = setting.air.as_ref().and_then(|air| air.running);
    let volume = known.chamber.volume;
    let unlit = volume.and_then(|volume| burner.unlit(&conditions, setting.at_jet, opening, volume).ok());
    Ok(SettingLighting {
        lighting: burner.lighting(&conditions, setting.at_jet, air, known.head_constant, &known.chamber)?,
        is_left: (opening - left).abs() < 0.01,
        unlit,
        ports: running.and_then(|running| burner.port_state(&conditions, &running).ok()),
    })
}

/// The gauge readings of the picture.
fn drawn(largest: GaugePressure) -> impl Iterator<Item = GaugePressure> {
    let high = (3.0 * largest.pascals()).clamp(40.0 * LOWEST_DRAWN, Input::GaugePressure.range().max);
    let step = (high / LOWEST_DRAWN).ln() / (COLUMNS - 1) as f64;
    (0..COLUMNS).map(move |column| GaugePressure::from_pascals(LOWEST_DRAWN * (step * column as f64).exp()))
}

fn heads(burner: &Burner, conditions: &Conditions, gauge: GaugePressure, left: f64) -> Vec<OtherHead> {
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

/// What a setting does, as programs read it.
#[must_use]
pub const fn lights_key(lights: Lights) -> &'static str {
    match lights {
        Lights::Cold => "cold",
        Lights::Glowing => "glowing",
        Lights::Never => "never",
    }
}
