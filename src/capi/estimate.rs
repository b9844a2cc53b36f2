//! What the fire does now, from three readings of a burner whose image the command has written.

#![allow(unsafe_code, reason = "exported names count as unsafe, and an image comes as a pointer and a length")]

use core::mem::MaybeUninit;

use super::flue::JetwrightSite;
use super::kept::{MADE, Plain, keep, kept};
use super::status::{JetwrightStatus, bytes, given, status, unless_answered};
use super::table::JetwrightTable;
use crate::burner::{Burner, Conditions, Prepared};
use crate::control::{ChipBurner, Estimate, ReadingSpreads, Readings, air_without_gas};
use crate::quantity::{GaugePressure, PressureDifference, Temperature};

/// Words of a `JetwrightBurner`.
pub const JETWRIGHT_BURNER_WORDS: usize = 240;

type Ready = Prepared<Burner<f32>, f32>;

// SAFETY: numbers, and lists of numbers in place.
unsafe impl Plain for Ready {}

/// A burner in its weather, made by `jetwright_burner_read`. Its words are not for reading.
#[derive(Debug)]
#[repr(C)]
pub struct JetwrightBurner {
    /// Set when it has been made.
    made: u32,
    /// Id of the image's burner; a table of the same file carries the same.
    burner_id: u32,
    /// The burner.
    words: [MaybeUninit<u64>; JETWRIGHT_BURNER_WORDS],
}

/// Three readings of a running burner.
#[derive(Clone, Copy, Debug)]
#[repr(C)]
pub struct JetwrightReadings {
    /// What the gauge before the jets reads while gas flows, Pa.
    pub gauge_pa: f32,
    /// Temperature of the gas there, K.
    pub gas_temperature_k: f32,
    /// Static pressure at the blower's outlet, before the damper, Pa.
    pub blower_pa: f32,
}

/// What the readings mean. Gas and air are those of all heads together.
#[derive(Clone, Copy, Debug, Default)]
#[repr(C)]
pub struct JetwrightEstimate {
    /// Gas, kg/s: count it with `jetwright_totals_add`.
    pub gas_kg_per_s: f32,
    /// Its heat with the flue's water as steam, W.
    pub heat_net_w: f32,
    /// Air at the blower's inlet, m3/s. While purging no gas flows and there is no estimate:
    /// `jetwright_burner_air_flow` is what air changes count.
    pub air_flow_m3_per_s: f32,
    /// Air, kg/s.
    pub air_kg_per_s: f32,
    /// Air supplied over air needed; zero where the air ahead of the jets holds the gas back.
    pub air_ratio: f32,
    /// Static pressure where the jets stand, Pa.
    pub back_pa: f32,
}

/// How far each reading and each model may be off, two standard deviations.
#[derive(Clone, Copy, Debug)]
#[repr(C)]
pub struct JetwrightReadingSpreads {
    /// Of the gauge, Pa.
    pub gauge_pa: f32,
    /// Of the gas temperature, K.
    pub gas_temperature_k: f32,
    /// Of the blower's pressure, Pa.
    pub blower_pa: f32,
    /// Of the jet's flow at a given pressure, as a share: the sheet tells it, a weighing narrows it.
    pub jet: f32,
    /// Of the blower's flow at a given pressure, as a share.
    pub blower_curve: f32,
}

/// How sure an estimate is: expanded uncertainties at two standard deviations, as shares of its numbers.
#[derive(Clone, Copy, Debug, Default)]
#[repr(C)]
pub struct JetwrightEstimateSpread {
    /// Of gas and heat.
    pub gas: f32,
    /// Of the air.
    pub air: f32,
    /// Of the air ratio.
    pub air_ratio: f32,
}

impl JetwrightEstimate {
    const UNKNOWN: Self = Self {
        gas_kg_per_s: f32::NAN,
        heat_net_w: f32::NAN,
        air_flow_m3_per_s: f32::NAN,
        air_kg_per_s: f32::NAN,
        air_ratio: f32::NAN,
        back_pa: f32::NAN,
    };
}

impl From<JetwrightReadings> for Readings<f32> {
    fn from(readings: JetwrightReadings) -> Self {
        Readings {
            gauge: GaugePressure::from_pascals(readings.gauge_pa),
            gas_temperature: Temperature::from_kelvin(readings.gas_temperature_k),
            blower_pressure: PressureDifference::from_pascals(readings.blower_pa),
        }
    }
}

impl From<Estimate<f32>> for JetwrightEstimate {
    fn from(found: Estimate<f32>) -> Self {
        JetwrightEstimate {
            gas_kg_per_s: found.gas.kilograms_per_second(),
            heat_net_w: found.heat_net.watts(),
            air_flow_m3_per_s: found.air_flow.cubic_meters_per_second(),
            air_kg_per_s: found.air.kilograms_per_second(),
            air_ratio: found.air_ratio.unwrap_or(0.0),
            back_pa: found.back_pressure.pascals(),
        }
    }
}

/// Reads a burner from the bytes that `jetwright chip FILE --image OUT` has written, in the weather of its file.
///
/// A damaged, wrong-version or cut-off image is refused, each with a status of its own.
///
/// # Safety
///
/// `image` is null or points at `length` bytes.
#[must_use]
#[unsafe(no_mangle)]
pub unsafe extern "C" fn jetwright_burner_read(
    burner: Option<&mut JetwrightBurner>,
    image: *const u8,
    length: usize,
) -> JetwrightStatus {
    status(|| {
        let burner = given(burner)?;
        burner.made = 0;
        // SAFETY: the caller answers for the length.
        let read = ChipBurner::<f32>::read_image(unsafe { bytes(image, length) }?)?;
        let id = read.burner_id();
        keep(&mut burner.words, read.burner.into_prepared(&read.conditions)?);
        (burner.made, burner.burner_id) = (MADE, id);
        Ok(())
    })
}

/// Whether a table is of the same burner file: `ImageOtherBurner` where it is not.
#[must_use]
#[unsafe(no_mangle)]
pub extern "C" fn jetwright_burner_check_table(
    burner: Option<&JetwrightBurner>,
    table: Option<&JetwrightTable>,
) -> JetwrightStatus {
    status(|| {
        let (burner, table) = (given(burner)?, given(table)?.table()?);
        let _: &Ready = kept(burner.made, &burner.words)?;
        Ok(table.made_for().check_burner(burner.burner_id)?)
    })
}

/// Puts a burner into another weather, over a chamber of a temperature in K. Call it when they have changed, not each
/// tick.
#[must_use]
#[unsafe(no_mangle)]
pub extern "C" fn jetwright_burner_at(
    burner: Option<&mut JetwrightBurner>,
    site: Option<&JetwrightSite>,
    chamber_temperature_k: f32,
) -> JetwrightStatus {
    status(|| {
        let (burner, site) = (given(burner)?, given(site)?);
        let before: &Ready = kept(burner.made, &burner.words)?;
        let conditions = Conditions {
            site: site.site()?,
            chamber_temperature: Temperature::from_kelvin(chamber_temperature_k),
            ..*before.conditions()
        };
        let ready = before.burner().clone().into_prepared(&conditions)?;
        keep(&mut burner.words, ready);
        Ok(())
    })
}

/// Heat and air ratio of a burner from three readings. No damper mark is trusted.
///
/// Any status but `Ok` means that nothing is known: count it as gas off. Left of the highest point of the blower's
/// curve its pressure does not tell the air, and near it only roughly. A gauge under 200 Pa is refused: with the gas
/// shut, ask `jetwright_burner_air_flow`. So is a blower's pressure under half of what its air would need ahead of the
/// jets, as of a blower that stands; one a little slow reads as more air.
#[must_use]
#[unsafe(no_mangle)]
pub extern "C" fn jetwright_burner_estimate(
    burner: Option<&JetwrightBurner>,
    readings: Option<&JetwrightReadings>,
    estimate: Option<&mut JetwrightEstimate>,
) -> JetwrightStatus {
    let estimate = unless_answered(estimate, JetwrightEstimate::UNKNOWN);
    status(|| {
        let (burner, readings, estimate) = (given(burner)?, given(readings)?, given(estimate)?);
        let ready: &Ready = kept(burner.made, &burner.words)?;
        *estimate = Readings::from(*readings).estimate(ready)?.into();
        Ok(())
    })
}

/// Air at the blower's inlet (m3/s) while no gas flows, from the blower's pressure (Pa) alone: for
/// `jetwright_air_changes_count` while purging. It tells nothing of the gas: that none is there must be known
/// otherwise.
///
/// `least_pa` is a little less than what was seen with the damper fully open, above zero: a blower that stands or
/// turns slowly reads less, which by its curve would be more air. Any status but `Ok` means that the air is not known:
/// count zero, which begins the air changes anew. Refused under `least_pa`, and where a closed path would read as
/// much.
#[must_use]
#[unsafe(no_mangle)]
pub extern "C" fn jetwright_burner_air_flow(
    burner: Option<&JetwrightBurner>,
    blower_pa: f32,
    least_pa: f32,
    air_flow_m3_per_s: Option<&mut f32>,
) -> JetwrightStatus {
    let air_flow_m3_per_s = unless_answered(air_flow_m3_per_s, f32::NAN);
    status(|| {
        let (burner, air_flow) = (given(burner)?, given(air_flow_m3_per_s)?);
        let ready: &Ready = kept(burner.made, &burner.words)?;
        let pascals = PressureDifference::from_pascals;
        let found = air_without_gas(ready, pascals(blower_pa), pascals(least_pa))?;
        *air_flow = found.cubic_meters_per_second();
        Ok(())
    })
}

/// The estimate with its ±. Costs seven estimates: ask it now and then, not each tick.
///
/// Refused as the estimate is, and where a reading means nothing at both ends of its spread; a spread that is no
/// number or out of range is refused too.
#[must_use]
#[unsafe(no_mangle)]
pub extern "C" fn jetwright_burner_estimate_with_spread(
    burner: Option<&JetwrightBurner>,
    readings: Option<&JetwrightReadings>,
    spreads: Option<&JetwrightReadingSpreads>,
    estimate: Option<&mut JetwrightEstimate>,
    spread: Option<&mut JetwrightEstimateSpread>,
) -> JetwrightStatus {
    let estimate = unless_answered(estimate, JetwrightEstimate::UNKNOWN);
    let unknown = JetwrightEstimateSpread { gas: f32::NAN, air: f32::NAN, air_ratio: f32::NAN };
    let spread = unless_answered(spread, unknown);
    status(|| {
        let (burner, readings, spreads) = (given(burner)?, given(readings)?, given(spreads)?);
        let (estimate, spread) = (given(estimate)?, given(spread)?);
        let ready: &Ready = kept(burner.made, &burner.words)?;
        let (found, sure) = Readings::from(*readings).estimate_with_spread(
            ready,
            &ReadingSpreads {
                gauge: PressureDifference::from_pascals(spreads.gauge_pa),
                gas_temperature: spreads.gas_temperature_k,
                blower_pressure: PressureDifference::from_pascals(spreads.blower_pa),
                jet: spreads.jet,
                blower_curve: spreads.blower_curve,
            },
        )?;
        *estimate = found.into();
        *spread = JetwrightEstimateSpread { gas: sure.gas, air: sure.air, air_ratio: sure.air_ratio };
        Ok(())
    })
}

impl JetwrightBurner {
    /// One that is not made yet.
    #[must_use]
    pub const fn unmade() -> Self {
        Self { made: 0, burner_id: 0, words: [MaybeUninit::uninit(); JETWRIGHT_BURNER_WORDS] }
    }
}
