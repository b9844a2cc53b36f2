//! What a jet passes, for an estimate from a gauge reading.

#![allow(unsafe_code, reason = "exported names count as unsafe")]

use super::status::{JetwrightStatus, given, status, unless_answered};
use crate::gas::{Gas, NAMED};
use crate::orifice::{BoreLength, BoreShape, Coefficient, Edge, Jet, Supply};
use crate::quantity::{AbsolutePressure, GaugePressure, Length, Temperature};
use crate::site::Site;

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
    /// A measured discharge coefficient; zero for the model's.
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

impl JetwrightFlow {
    const UNKNOWN: Self = Self {
        mass_flow_kg_per_s: f32::NAN,
        heat_gross_w: f32::NAN,
        heat_net_w: f32::NAN,
        discharge_coefficient: f32::NAN,
        choked: false,
    };
}

pub(super) fn gas(number: u32) -> Result<Gas<f32>, JetwrightStatus> {
    NAMED.get(number as usize).and_then(|named| named.single()).ok_or(JetwrightStatus::Unknown)
}

impl JetwrightJet {
    pub(super) fn made(&self) -> Result<Jet<f32>, JetwrightStatus> {
        let edge = match self.edge {
            0 => Edge::Sharp,
            1 => Edge::Square,
            _ => return Err(JetwrightStatus::Unknown),
        };
        let shape =
            BoreShape { edge, ..BoreShape::drilled(BoreLength::Fixed(Length::from_meters(self.bore_length_m))) };
        let coefficient = match self.measured_coefficient {
            0.0 => Coefficient::Model,
            measured => Coefficient::Measured(measured),
        };
        Ok(Jet { bore: shape.with_diameter(Length::from_meters(self.bore_m))?, count: self.count, coefficient })
    }
}

impl JetwrightSupply {
    pub(super) fn supply(&self) -> Supply<f32> {
        Supply {
            ambient: AbsolutePressure::from_pascals(self.ambient_pa),
            gauge: GaugePressure::from_pascals(self.gauge_pa),
            back: GaugePressure::from_pascals(self.back_pa),
            temperature: Temperature::from_kelvin(self.temperature_k),
        }
    }
}

/// What a jet passes, within 1e-5 of double precision. The gas is not worked out but read, rounded once.
#[must_use]
#[unsafe(no_mangle)]
pub extern "C" fn jetwright_jet_flow(
    jet: Option<&JetwrightJet>,
    supply: Option<&JetwrightSupply>,
    flow: Option<&mut JetwrightFlow>,
) -> JetwrightStatus {
    let flow = unless_answered(flow, JetwrightFlow::UNKNOWN);
    status(|| {
        let (jet, supply, flow) = (given(jet)?, given(supply)?, given(flow)?);
        let passed = jet.made()?.flow(&gas(jet.gas)?, &supply.supply())?;
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
#[must_use]
#[unsafe(no_mangle)]
pub extern "C" fn jetwright_ambient_pressure(
    altitude_m: f32,
    air_temperature_k: f32,
    pressure_pa: Option<&mut f32>,
) -> JetwrightStatus {
    let pressure_pa = unless_answered(pressure_pa, f32::NAN);
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
    use super::{JetwrightGas, NAMED};

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
}
