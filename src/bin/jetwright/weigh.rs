//! `jetwright weigh`.

use clap::Args;
use jetwright::measure::Reading;
use jetwright::plant::description::asked::WeighingAsked;
use jetwright::quantity::Mass;
use jetwright::report::answers::measured::MeasuredBy;

use crate::command_error::CommandError;
use crate::measured::{MeasuredArguments, Passed, answer};
use crate::options::{Asked, offer, part, there};

part! {
    /// The scale and what it read.
    Weighed: WeighingAsked, |description| Some(&description.asked.weighing), None,
        [offer("lost").many(), offer("scale"), offer("held")]
}

#[derive(Debug, Args)]
pub struct WeighArguments {
    #[command(flatten)]
    pub weighed: Asked<Weighed>,
    #[command(flatten)]
    pub measured: MeasuredArguments,
}

/// What a weighing says of a jet, or how long to weigh.
pub fn run(arguments: &WeighArguments) -> Result<String, CommandError> {
    let asked = arguments.weighed.given();
    let reading = Reading { time: arguments.measured.clock()?, ..Reading::of_scale(there(asked.scale, "scale")?) };
    let mut held = asked.held;
    let runs = arguments.weighed.every("lost", |asked| asked.lost).into_iter().map(|lost| {
        let passed = Passed { mass: lost, held };
        held = held.map(|held| Mass::from_kilograms((held.kilograms() - lost.kilograms()).max(0.0)));
        passed
    });
    answer(MeasuredBy::Weighing, &arguments.measured, &runs.collect::<Vec<_>>(), &reading)
}
