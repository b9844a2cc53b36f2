//! What lies before the jet: cylinder, regulator, line.

use super::burner::plain;
use super::checks;
use super::macros::{inputs, names, option, reach, stated};
use super::row::Example::Used;
use super::row::Otherwise::{Needed, Nothing, Of, Rule as By};
use super::row::{Otherwise, Presence, Rule};
use crate::air::POINT_CAP;
use crate::limits::Input;
use crate::quantity::{GaugePressure, Length, Mass, MassFlow, Number, Temperature};

inputs! {
    /// The cylinder, if the gas comes from one.
    CylinderGiven: (one cylinder), "cylinder", Presence::Optional;
    lists {}
    rules [Rule::Check(checks::no_more_left_than_held)]
    {
        /// Gas that one cylinder holds when full.
        capacity: Mass[Input::CylinderHolds], Needed, Used(&["45 kg"]);
        /// Outside diameter of a cylinder.
        diameter: Length[Input::CylinderDiameter], Needed, Used(&["375 mm"]);
        /// Empty mass of one.
        tare: Mass[Input::CylinderTare], By("three quarters of its capacity"), Used(&["33 kg"]);
        /// How many stand on one manifold, all open.
        count: u32[Input::CylinderCount], plain("1"), Used(&["1"]);
        /// Gas left in each, by the scale.
        contents: Mass[Input::CylinderHolds], Of("cylinder.capacity"), Used(&["30 kg"]);
        /// Temperature of the air they stand in.
        temperature: Temperature[Input::AirTemperature], Of("site.air_temperature"), Used(&["12 C"]);
    }
}

inputs! {
    /// The regulator: what it needs before it, and what it was seen to hold at some flows.
    RegulatorGiven: (one regulator), "regulator", Presence::Optional;
    lists {
        /// What it holds at some flows.
        points: DroopPointGiven, POINT_CAP;
    }
    rules [Rule::Any(&["minimum_inlet_pressure", "points"])]
    {
        /// Gauge pressure it needs before it.
        minimum_inlet_pressure: GaugePressure[Input::InletPressure], By("half a bar over the gauge"), Used(&["1 bar"]);
    }
}

inputs! {
    /// What the regulator holds at a flow, the first with the valve shut; the pressure does not rise with the flow.
    DroopPointGiven: (of regulator points), ("regulator" "points"),
        Presence::List { least: 2, most: POINT_CAP, is_needed: false };
    lists {}
    rules [Rule::Check(checks::droop_point)]
    {
        /// Gas drawn.
        flow: MassFlow[Input::GasDraw], Needed, Used(&["0 kg/h", "2.5 kg/h"]);
        /// What the gauge reads there.
        gauge: GaugePressure[Input::GaugePressure], Needed, Used(&["6.6 psi", "5.8 psi"]);
    }
}

inputs! {
    /// Hose or pipe, fittings and valve between the gauge and the jet.
    LineGiven: (one line), "line", Presence::Optional;
    lists {}
    rules [Rule::Check(checks::outside_the_inside)]
    {
        /// Inside diameter.
        diameter: Length[Input::PipeDiameter], Needed, Used(&["8 mm"]);
        /// Length.
        length: Length[Input::PipeLength], Needed, Used(&["3 m"]);
        /// Roughness of the wall.
        roughness: Length[Input::Roughness],
            Otherwise::This { value: "0.002 mm", source: "rubber hose or drawn tube, common practice, no source" },
            Used(&["2 um"]);
        /// Sum of the loss coefficients of the fittings.
        fitting_loss: Number[Input::FittingLoss], plain("0"), Used(&["4"]);
        /// Flow coefficient Kv of the valve, cubic meters of water an hour at one bar.
        valve_coefficient: Number[Input::ValveCoefficient], Nothing, Used(&["1.5"]);
        /// Outside diameter; with it the air warms the gas on its way.
        outside_diameter: Length[Input::PipeDiameter], Nothing, Used(&["15 mm"]);
    }
}
