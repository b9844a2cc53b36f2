//! What the flue gas tells of the air, and what the chamber keeps of the heat.

#![allow(unsafe_code, reason = "exported names count as unsafe")]

use super::physics::gas;
use super::status::{JetwrightStatus, given, status, unless_answered};
use crate::combustion::{Basis, FlueReading, Reactants, air_ratio_from_oxygen, expected_reading};
use crate::error::Result;
use crate::quantity::{AbsolutePressure, Temperature};
use crate::site::Site;

/// Whether a reading of the flue gas counts the water.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[repr(u32)]
pub enum JetwrightBasis {
    /// Of gas drawn off and cooled, its water condensed: most analyzers.
    Dry = 0,
    /// Of the gas as it is: a hot probe in the flue.
    Wet = 1,
}

/// The air around.
#[derive(Clone, Copy, Debug)]
#[repr(C)]
pub struct JetwrightSite {
    /// Its pressure as a barometer on the site reads it, Pa.
    pub ambient_pa: f32,
    /// Its temperature, K.
    pub air_temperature_k: f32,
    /// Its relative humidity, 0 to 1.
    pub humidity: f32,
}

/// What an analyzer reads in the flue gas, by volume, 0 to 1.
#[derive(Clone, Copy, Debug)]
#[repr(C)]
pub struct JetwrightFlueReading {
    /// Oxygen.
    pub oxygen: f32,
    /// Carbon monoxide, if it is read; else zero.
    pub carbon_monoxide: f32,
    /// A `JetwrightBasis`.
    pub basis: u32,
}

/// What an analyzer should read when all burns to the end, by volume, 0 to 1.
#[derive(Clone, Copy, Debug, Default)]
#[repr(C)]
pub struct JetwrightExpectedReading {
    /// Oxygen, water condensed.
    pub oxygen_dry: f32,
    /// Oxygen, water counted.
    pub oxygen_wet: f32,
    /// Carbon dioxide, water condensed.
    pub carbon_dioxide_dry: f32,
}

/// A flame, and the chamber it heats.
#[derive(Clone, Copy, Debug)]
#[repr(C)]
pub struct JetwrightFlame {
    /// A `JetwrightGas`.
    pub gas: u32,
    /// Air supplied over air needed, 0.6 to 4.
    pub air_ratio: f32,
    /// Temperature of gas and air before they burn, K.
    pub mixture_temperature_k: f32,
    /// Temperature at which the burnt gas leaves the chamber, 600 to 2900 K.
    pub chamber_temperature_k: f32,
}

impl JetwrightSite {
    pub(super) fn site(&self) -> Result<Site<f32>> {
        Site::at_station_pressure(
            AbsolutePressure::from_pascals(self.ambient_pa),
            Temperature::from_kelvin(self.air_temperature_k),
            self.humidity,
        )
    }
}

/// The air ratio that a reading of the flue gas of a `JetwrightGas` tells.
///
/// Zero oxygen tells 1 or less, and the answer is 1. Air drawn in before the probe reads as air ratio.
#[must_use]
#[unsafe(no_mangle)]
pub extern "C" fn jetwright_air_ratio_from_oxygen(
    gas_number: u32,
    site: Option<&JetwrightSite>,
    reading: Option<&JetwrightFlueReading>,
    air_ratio: Option<&mut f32>,
) -> JetwrightStatus {
    let air_ratio = unless_answered(air_ratio, f32::NAN);
    status(|| {
        let (site, reading, air_ratio) = (given(site)?, given(reading)?, given(air_ratio)?);
        let basis = match reading.basis {
            0 => Basis::Dry,
            1 => Basis::Wet,
            _ => return Err(JetwrightStatus::Unknown),
        };
        let JetwrightFlueReading { oxygen, carbon_monoxide, .. } = *reading;
        *air_ratio =
            air_ratio_from_oxygen(&gas(gas_number)?, &site.site()?, FlueReading { oxygen, carbon_monoxide, basis })?;
        Ok(())
    })
}

/// What an analyzer should read in the flue gas of a `JetwrightGas` at an air ratio from 1 on.
#[must_use]
#[unsafe(no_mangle)]
pub extern "C" fn jetwright_expected_reading(
    gas_number: u32,
    site: Option<&JetwrightSite>,
    air_ratio: f32,
    expected: Option<&mut JetwrightExpectedReading>,
) -> JetwrightStatus {
    let unknown = JetwrightExpectedReading { oxygen_dry: f32::NAN, oxygen_wet: f32::NAN, carbon_dioxide_dry: f32::NAN };
    let expected = unless_answered(expected, unknown);
    status(|| {
        let (site, expected) = (given(site)?, given(expected)?);
        let found = expected_reading(&gas(gas_number)?, &site.site()?, air_ratio)?;
        *expected = JetwrightExpectedReading {
            oxygen_dry: found.oxygen_dry,
            oxygen_wet: found.oxygen_wet,
            carbon_dioxide_dry: found.carbon_dioxide_dry,
        };
        Ok(())
    })
}

/// Share of a flame's net heat that is left for the chamber; below zero where the chamber is hotter than the flame.
#[must_use]
#[unsafe(no_mangle)]
pub extern "C" fn jetwright_available_heat(
    flame: Option<&JetwrightFlame>,
    site: Option<&JetwrightSite>,
    share: Option<&mut f32>,
) -> JetwrightStatus {
    let share = unless_answered(share, f32::NAN);
    status(|| {
        let (flame, site, share) = (given(flame)?, given(site)?, given(share)?);
        let kelvin = Temperature::from_kelvin;
        let mixture = kelvin(flame.mixture_temperature_k);
        let reactants = Reactants::new(&gas(flame.gas)?, &site.site()?, flame.air_ratio, mixture)?;
        *share = reactants.available_heat(kelvin(flame.chamber_temperature_k))?;
        Ok(())
    })
}
