//! What a jet passes, for an estimate from a gauge reading.

#![allow(unsafe_code, reason = "exported names count as unsafe")]

use super::gases::GASES;
use super::status::{JetwrightStatus, given, status};
use crate::gas::Gas;
use crate::orifice::{BoreLength, BoreShape, Coefficient, Edge, Jet, Supply};
use crate::quantity::{AbsolutePressure, GaugePressure, Length, Temperature};
use crate::site::Site;
use crate::words::Words;

/// A gas with a name of the trade.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[repr(u32)]
pub enum JetwrightGas {
    /// Pure propane.
    Propane = 0,
    /// Propane at the limits of HD-5.
    Hd5 = 1,
    /// A representative commercial propane.
    CommercialPropane = 2,
    /// Pure normal butane.
    Butane = 3,
    /// Half propane, half butanes.
    PropaneButane = 4,
    /// Pure methane.
    Methane = 5,
    /// A representative pipeline gas.
    NaturalGas = 6,
    /// Pure hydrogen.
    Hydrogen = 7,
}

/// The mouth of a bore.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[repr(u32)]
pub enum JetwrightEdge {
    /// A thin plate with a sharp edge.
    Sharp = 0,
    /// A drilled hole with a square edge.
    Square = 1,
}

/// One jet, or several equal ones.
#[derive(Clone, Copy, Debug)]
#[repr(C)]
pub struct JetwrightJet {
    /// A `JetwrightGas`.
    pub gas: u32,
    /// A `JetwrightEdge`.
    pub edge: u32,
    /// Diameter, m.
    pub bore_m: f32,
    /// Length of the straight bore, m.
    pub bore_length_m: f32,
    /// How many.
    pub count: f32,
    /// A measured discharge coefficient; nought for the model's.
    pub measured_coefficient: f32,
}

/// The gas before the jet, and what it blows into.
#[derive(Clone, Copy, Debug)]
#[repr(C)]
pub struct JetwrightSupply {
    /// Pressure of the air around, Pa.
    pub ambient_pa: f32,
    /// What the gauge before the jet reads, Pa.
    pub gauge_pa: f32,
    /// Gauge pressure the jet blows into, Pa.
    pub back_pa: f32,
    /// Temperature of the gas before the jet, K.
    pub temperature_k: f32,
}

/// What all jets pass.
#[derive(Clone, Copy, Debug, Default)]
#[repr(C)]
pub struct JetwrightFlow {
    /// Gas, kg/s.
    pub mass_flow_kg_per_s: f32,
    /// Heat with the flue's water condensed, W.
    pub heat_gross_w: f32,
    /// Heat with the flue's water as steam, W.
    pub heat_net_w: f32,
    /// Discharge coefficient.
    pub discharge_coefficient: f32,
    /// Whether the jet chokes.
    pub choked: bool,
}

pub(super) fn gas(number: u32) -> Result<Gas<f32>, JetwrightStatus> {
    let mut words = GASES.get(number as usize).ok_or(JetwrightStatus::Unknown)?.iter().copied();
    Gas::read(&mut || words.next()).ok_or(JetwrightStatus::Unknown)
}

/// What a jet passes, within 1e-5 of double precision. The gas is not worked out but read, rounded once.
#[unsafe(no_mangle)]
pub extern "C" fn jetwright_jet_flow(
    jet: Option<&JetwrightJet>,
    supply: Option<&JetwrightSupply>,
    flow: Option<&mut JetwrightFlow>,
) -> JetwrightStatus {
    status(|| {
        let (jet, supply, flow) = (given(jet)?, given(supply)?, given(flow)?);
        let edge = match jet.edge {
            0 => Edge::Sharp,
            1 => Edge::Square,
            _ => return Err(JetwrightStatus::Unknown),
        };
        let shape = BoreShape { edge, ..BoreShape::drilled(BoreLength::Fixed(Length::from_meters(jet.bore_length_m))) };
        let coefficient = match jet.measured_coefficient {
            0.0 => Coefficient::Model,
            measured => Coefficient::Measured(measured),
        };
        let made = Jet { bore: shape.with_diameter(Length::from_meters(jet.bore_m))?, count: jet.count, coefficient };
        let passed = made.flow(
            &gas(jet.gas)?,
            &Supply {
                ambient: AbsolutePressure::from_pascals(supply.ambient_pa),
                gauge: GaugePressure::from_pascals(supply.gauge_pa),
                back: GaugePressure::from_pascals(supply.back_pa),
                temperature: Temperature::from_kelvin(supply.temperature_k),
            },
        )?;
        *flow = JetwrightFlow {
            mass_flow_kg_per_s: passed.mass_flow.kilograms_per_second(),
            heat_gross_w: passed.heat_gross.watts(),
            heat_net_w: passed.heat_net.watts(),
            discharge_coefficient: passed.discharge_coefficient,
            choked: passed.choked,
        };
        Ok(())
    })
}

/// Pressure of the air at an altitude (m) in the standard atmosphere, Pa.
#[unsafe(no_mangle)]
pub extern "C" fn jetwright_ambient_pressure(
    altitude_m: f32,
    air_temperature_k: f32,
    pressure_pa: Option<&mut f32>,
) -> JetwrightStatus {
    status(|| {
        let pressure = given(pressure_pa)?;
        let site =
            Site::at_altitude(Length::from_meters(altitude_m), Temperature::from_kelvin(air_temperature_k), 0.0)?;
        *pressure = site.ambient_pressure().pascals();
        Ok(())
    })
}

#[cfg(test)]
mod tests {
    extern crate std;

    use std::{format, string::String, string::ToString, vec::Vec};

    use super::{GASES, Gas, JetwrightGas, Words};
    use crate::gas::NAMED;

    #[test]
    fn the_enumerators_stand_in_the_order_of_the_names() {
        let names = [
            (JetwrightGas::Propane, "propane"),
            (JetwrightGas::Hd5, "hd-5"),
            (JetwrightGas::CommercialPropane, "commercial-propane"),
            (JetwrightGas::Butane, "butane"),
            (JetwrightGas::PropaneButane, "propane-butane"),
            (JetwrightGas::Methane, "methane"),
            (JetwrightGas::NaturalGas, "natural-gas"),
            (JetwrightGas::Hydrogen, "hydrogen"),
        ];
        assert_eq!(names.len(), NAMED.len());
        for (gas, name) in names {
            assert_eq!(NAMED[gas as usize].name, name);
        }
    }

    #[test]
    fn the_gases_are_those_of_double_precision_rounded_once() {
        let mut page = String::from(HEAD);
        let mut made = Vec::new();
        for named in NAMED {
            let mut words = Vec::new();
            Gas::<f64>::new(named.mixture()).write(&mut |word| words.push(word));
            page += &format!("    // {}\n    {words:?},\n", named.name);
            made.push(words);
        }
        page = page.replace("COUNT", &made[0].len().to_string()).replace("NAMES", &made.len().to_string()) + "];\n";
        if std::env::var_os("JETWRIGHT_WRITE_PAGE").is_some() {
            std::fs::write(concat!(env!("CARGO_MANIFEST_DIR"), "/src/capi/gases.rs"), page).unwrap();
        }
        // Another platform's cube root may round a last digit the other way.
        let same = |(kept, made): (&f32, &f32)| (kept - made).abs() <= f32::EPSILON * made.abs();
        assert!(
            GASES.len() == made.len()
                && GASES.iter().flatten().count() == made.iter().flatten().count()
                && GASES.iter().flatten().zip(made.iter().flatten()).all(same),
            "src/capi/gases.rs is out of date: JETWRIGHT_WRITE_PAGE=1 cargo test --features capi --lib capi"
        );
    }

    const HEAD: &str = "//! The named gases as words, worked out in double precision and rounded once: a chip need not work them out. Written\n\
        //! by the test of `physics.rs`, which keeps them current.\n\n\
        #[rustfmt::skip]\n\
        pub(super) static GASES: [[f32; COUNT]; NAMES] = [\n";
}
