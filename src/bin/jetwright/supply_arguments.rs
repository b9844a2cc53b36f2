//! The arguments about cylinder and pipe.

use clap::Args;
use jetwright::Input;
use jetwright::quantity::{Duration, GaugePressure, HeatRate, Length, Mass, MassFlow, PressureDifference, parse_count};

use crate::common::{AnswerArguments, SharedArguments, within};

#[derive(Debug, Args)]
pub struct CylinderArguments {
    /// The fire it feeds, gross or net, such as "22 kW net" ...
    #[arg(long, allow_hyphen_values = true, value_parser = within::<HeatRate>(Input::HeatRate))]
    pub heat: Option<HeatRate>,
    /// ... or the gas drawn, such as "1.8 kg/h", one of the two.
    #[arg(long, allow_hyphen_values = true, value_parser = within::<MassFlow>(Input::GasDraw))]
    pub draw: Option<MassFlow>,
    /// Gas that one cylinder holds when full.
    #[arg(long, allow_hyphen_values = true, value_parser = within::<Mass>(Input::CylinderCharge))]
    pub holds: Mass,
    /// Outside diameter of a cylinder.
    #[arg(long, allow_hyphen_values = true, value_parser = within::<Length>(Input::CylinderDiameter))]
    pub diameter: Length,
    /// Gas left in each; full unless given.
    #[arg(long, allow_hyphen_values = true, value_parser = within::<Mass>(Input::CylinderCharge))]
    pub left: Option<Mass>,
    /// Empty mass of one; three quarters of what it holds unless given.
    #[arg(long, allow_hyphen_values = true, value_parser = within::<Mass>(Input::CylinderTare))]
    pub empty_mass: Option<Mass>,
    /// How many stand on one manifold, all open.
    #[arg(long, default_value = "1", allow_hyphen_values = true, value_parser = |text: &str| parse_count(text, Input::CylinderCount))]
    pub count: u32,
    /// Gauge pressure the regulator needs before it.
    #[arg(long, allow_hyphen_values = true, value_parser = within::<GaugePressure>(Input::InletPressure))]
    pub needs: GaugePressure,
    /// How long the gas is drawn.
    #[arg(long, default_value = "60 min", allow_hyphen_values = true, value_parser = within::<Duration>(Input::Duration))]
    pub minutes: Duration,
    #[command(flatten)]
    pub shared: SharedArguments,
}

#[derive(Debug, Args)]
pub struct LineArguments {
    /// A named gas, or mole fractions that add to one.
    #[arg(long)]
    pub gas: String,
    /// Inside diameter of the pipe.
    #[arg(long, allow_hyphen_values = true, value_parser = within::<Length>(Input::PipeDiameter))]
    pub diameter: Length,
    /// Length of the pipe, what its fittings are worth in pipe counted in.
    #[arg(long, allow_hyphen_values = true, value_parser = within::<Length>(Input::PipeLength))]
    pub length: Length,
    /// Pressure it may lose.
    #[arg(long, allow_hyphen_values = true, value_parser = within::<PressureDifference>(Input::PipeDrop))]
    pub drop: PressureDifference,
    /// The fire it must feed, gross or net.
    #[arg(long, allow_hyphen_values = true, value_parser = within::<HeatRate>(Input::HeatRate))]
    pub heat: Option<HeatRate>,
    #[command(flatten)]
    pub answer: AnswerArguments,
}
