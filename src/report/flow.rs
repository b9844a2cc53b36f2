//! The flow of a jet at a gauge pressure.

use std::prelude::rust_2024::*;

use crate::combustion::AirNeed;
use crate::gas::NEAR_CONDENSING;
use crate::orifice::JetFlow;
use crate::plant::SettingSure;
use crate::quantity::{GaugePressure, MassFlow};
use crate::report::field::{Mark, Value, columns};

/// A jet's flow; gas and heat of all heads.
pub struct FlowRow<'s> {
    /// What the gauge reads.
    pub gauge: GaugePressure,
    /// The jets of one head.
    pub jet: &'s JetFlow,
    /// How many heads.
    pub heads: f64,
    /// Air the gas needs.
    pub need: &'s AirNeed,
    /// Supply pressure over its dew-point pressure.
    pub saturation_ratio: f64,
    /// How sure it is.
    pub sure: Option<&'s SettingSure>,
}

impl FlowRow<'_> {
    fn gas(&self) -> MassFlow {
        self.jet.mass_flow * self.heads
    }

    /// A number that goes as the gas does, and how sure it is.
    fn as_gas(&self, si: f64) -> Value {
        let Some(gas) = self.sure.map(|sure| sure.gas) else { return si.into() };
        Value::from(si).within(Some(gas.relative() * si)).marked(star(gas.is_straight))
    }
}

/// A limit or a bend within the width leaves it the least it can be.
pub(crate) const fn star(is_straight: bool) -> Mark {
    if is_straight { Mark::Equal } else { Mark::AtLeast }
}

columns! {
    /// A jet's flow.
    pub FLOW, flow(row: &FlowRow<'_>);
    /// Gauge pressure before the jet.
    gauge_pressure_pa, "gauge", Gauge, Page(10) => row.gauge.pascals();
    /// Gas, of all jets (and of all heads in a sheet).
    mass_flow_kg_per_s, "gas", MassFlow[within], Page(50) => row.as_gas(row.gas().kilograms_per_second()).marked(Mark::Quiet);
    /// The same gas as it would measure dry at 15 degC and 101 325 Pa.
    standard_volume_flow_m3_per_s, "standard volume flow", Flow, Programs => row.jet.standard_volume_flow.cubic_meters_per_second() * row.heads;
    /// The same gas as it measures before the jet, at its pressure and temperature there.
    actual_volume_flow_m3_per_s, "actual volume flow", Flow, Programs => row.jet.actual_volume_flow.cubic_meters_per_second() * row.heads;
    /// Heat of that gas by its gross (higher) heating value.
    heat_gross_w, "heat", HeatGross[within], Inch(40) => row.as_gas(row.jet.heat_gross.watts() * row.heads);
    /// Heat of that gas by its net (lower) heating value.
    heat_net_w, "heat", HeatNet[within], Metric(40) => row.as_gas(row.jet.heat_net.watts() * row.heads);
    /// Flow over the flow of a lossless jet of the same area, `mass_flux_kg_per_m2_s` times the area; 0 when nothing
    /// flows.
    discharge_coefficient, "coefficient", Number[within], Page(60) => Value::from(row.jet.discharge_coefficient).within(row.sure.map(|sure| sure.coefficient.expanded));
    /// Expanded uncertainty (k = 2) of that coefficient, as a share of it.
    discharge_coefficient_uncertainty, "±", Share, Page(65) => row.jet.coefficient_uncertainty;
    /// Whether a lossless jet has reached the speed of sound: true or false.
    choked, "choked", Word, Page(70) => Value::from(row.jet.choked).said(if row.jet.choked { "reached" } else { "-" });
    /// Flow over area of a lossless jet, real gas.
    mass_flux_kg_per_m2_s, "mass flux kg per m2", MassFlux, Programs => row.jet.mass_flux;
    /// Speed of the gas as it leaves the jet.
    exit_speed_m_per_s, "exit speed", Speed, Programs => row.jet.exit_speed.meters_per_second();
    /// Push of the gas leaving the jets of one head.
    thrust_n, "thrust", Force, Programs => row.jet.thrust.newtons();
    /// Reynolds number of the gas in the bore.
    reynolds_number, "reynolds number", Number, Programs => row.jet.reynolds_number;
    /// Density of the gas before the jet.
    supply_density_kg_per_m3, "supply density", Density, Programs => row.jet.supply_density.kilograms_per_cubic_meter();
    /// Pressure before the jet over the dew-point pressure there; above 0.85 close to condensing, above 1 partly
    /// liquid.
    saturation_ratio, "saturation ratio", Number, Programs => row.saturation_ratio;
    /// Moist air of the site that just burns the gas: air ratio 1.
    air_stoichiometric_kg_per_s, "air needed", MassFlow, Page(55) => row.gas().kilograms_per_second() * row.need.mass_ratio;
    condition, "", Word, Words(90) => match row.saturation_ratio {
        ratio if ratio > 1.0 => "would be partly liquid",
        ratio if ratio > NEAR_CONDENSING => "close to condensing",
        _ => "",
    };
}
