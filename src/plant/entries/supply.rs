//! What lies before the jet: cylinder, regulator, line.

use heapless::Vec;

use crate::air::POINT_CAP;
use crate::quantity::{GaugePressure, Length, Mass, MassFlow, Temperature};

/// What lies before the jet, as far as it is described.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct SupplyEntry {
    /// The cylinders.
    pub cylinder: Option<CylinderEntry>,
    /// The regulator.
    pub regulator: Option<RegulatorEntry>,
    /// The line from the gauge to the jet.
    pub line: Option<LineEntry>,
}

/// Cylinders, several alike on one manifold.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CylinderEntry {
    /// Gas that one holds when full.
    pub capacity: Mass,
    /// Outside diameter.
    pub diameter: Length,
    /// Empty mass of one, if known.
    pub tare: Option<Mass>,
    /// How many are open at once.
    pub count: u32,
    /// Gas left in each; full unless given.
    pub contents: Mass,
    /// Temperature of the air they stand in, and of the liquid at first; that of the site unless given.
    pub temperature: Temperature,
}

/// The regulator before the gauge.
#[derive(Clone, Debug, PartialEq)]
pub struct RegulatorEntry {
    /// Gauge pressure it needs before it; half a bar over the reading unless given.
    pub minimum_inlet_pressure: Option<GaugePressure>,
    /// What it holds at some flows, at one setting of its screw; empty unless given.
    pub points: Vec<(MassFlow, GaugePressure), POINT_CAP>,
}

/// The line from the gauge to the jet.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LineEntry {
    /// Inside diameter.
    pub diameter: Length,
    /// Length.
    pub length: Length,
    /// Roughness of its wall.
    pub roughness: Length,
    /// Sum of the loss coefficients of its fittings.
    pub fitting_loss: f64,
    /// Flow coefficient Kv of a valve in it, m3/h.
    pub valve_coefficient: Option<f64>,
    /// Outside diameter; with it the air warms the gas on its way.
    pub outside_diameter: Option<Length>,
}
