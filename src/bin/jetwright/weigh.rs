//! `jetwright weigh`.

use clap::Args;
use jetwright::Input;
use jetwright::measure::Reading;
use jetwright::quantity::Mass;
use jetwright::report::answers::measured::MeasuredBy;

use crate::command_error::CommandError;
use crate::common::within;
use crate::measured::{MeasuredArguments, Passed, answer};

#[derive(Debug, Args)]
pub struct WeighArguments {
    /// Gas lost from the cylinder; once a run.
    #[arg(long, allow_hyphen_values = true, value_parser = within::<Mass>(Input::MassLost))]
    pub lost: Vec<Mass>,
    /// Smallest step the scale shows.
    #[arg(long, allow_hyphen_values = true, value_parser = within::<Mass>(Input::ScaleStep))]
    pub scale: Mass,
    /// Gas in the cylinder before the first run.
    #[arg(long, allow_hyphen_values = true, value_parser = within::<Mass>(Input::CylinderCharge))]
    pub held: Option<Mass>,
    #[command(flatten)]
    pub measured: MeasuredArguments,
}

/// What a weighing says of a jet, or how long to weigh.
pub fn run(arguments: &WeighArguments) -> Result<String, CommandError> {
    let reading = Reading { time: arguments.measured.clock, ..Reading::of_scale(arguments.scale) };
    let mut held = arguments.held;
    let runs = arguments.lost.iter().map(|&lost| {
        let passed = Passed { mass: lost, held };
        held = held.map(|held| Mass::from_kilograms((held.kilograms() - lost.kilograms()).max(0.0)));
        passed
    });
    answer(MeasuredBy::Weighing, &arguments.measured, &runs.collect::<Vec<_>>(), &reading)
}
