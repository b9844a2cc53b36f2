//! `jetwright weigh`.

use jetwright::measure::Reading;
use jetwright::quantity::Mass;
use jetwright::report::answers::measured::MeasuredBy;

use crate::command_error::CommandError;
use crate::measured::{Passed, answer};
use crate::measured_arguments::WeighArguments;

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
