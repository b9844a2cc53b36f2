//! `jetwright meter`.

use clap::Args;
use jetwright::file::burner_file;
use jetwright::gas::Gas;
use jetwright::measure::{Reading, metered_mass};
use jetwright::plant::description::asked::MeteringAsked;
use jetwright::quantity::Volume;
use jetwright::report::answers::measured::MeasuredBy;

use crate::command_error::CommandError;
use crate::measured::{MeasuredArguments, Passed, answer};
use crate::options::{Asked, offer, part, there};

part! {
    /// The meter and what it read.
    Metered: MeteringAsked, |description| Some(&description.asked.metering), None, [
        offer("counted").many(),
        offer("meter_pressure"),
        offer("meter_temperature"),
        offer("meter_class"),
        offer("meter_step"),
    ]
}

#[derive(Debug, Args)]
pub struct MeterArguments {
    #[command(flatten)]
    pub metered: Asked<Metered>,
    #[command(flatten)]
    pub measured: MeasuredArguments,
}

/// What a gas meter's reading says of a jet.
pub fn run(arguments: &MeterArguments) -> Result<String, CommandError> {
    let (plant, _) = burner_file::read(&arguments.measured.file)?.plant()?;
    let asked = arguments.metered.given();
    let temperature = there(asked.meter_temperature, "meter-temperature")?;
    let pressure = there(asked.meter_pressure, "meter-pressure")?.to_absolute(plant.site.ambient_pressure());
    let mass = |gas: &Gas, volume: Volume| {
        metered_mass(gas, volume, pressure, temperature).map_err(|error| CommandError::option("meter-pressure", error))
    };
    let mut runs = Vec::new();
    for counted in arguments.metered.every("counted", |asked| asked.counted) {
        runs.push(Passed { mass: mass(&plant.gas, counted)?, held: None });
    }
    let step = mass(&plant.gas, there(asked.meter_step, "meter-step")?)?;
    let share = there(asked.meter_class, "meter-class")?.0;
    let reading = Reading { share, time: arguments.measured.clock()?, ..Reading::of_scale(step) };
    answer(MeasuredBy::Meter, &arguments.measured, &runs, &reading)
}
