//! `jetwright meter`.

use jetwright::file::burner_file;
use jetwright::gas::Gas;
use jetwright::measure::{Reading, metered_mass};
use jetwright::quantity::Volume;
use jetwright::report::answers::measured::MeasuredBy;

use crate::command_error::CommandError;
use crate::measured::{Passed, answer};
use crate::measured_arguments::MeterArguments;

/// What a gas meter's reading says of a jet.
pub fn run(arguments: &MeterArguments) -> Result<String, CommandError> {
    let (plant, _) = burner_file::read(&arguments.measured.file)?.plant()?;
    let pressure = arguments.meter_pressure.to_absolute(plant.site.ambient_pressure());
    let mass = |gas: &Gas, volume: Volume| {
        metered_mass(gas, volume, pressure, arguments.meter_temperature)
            .map_err(|error| CommandError::option("meter-pressure", error))
    };
    let mut runs = Vec::new();
    for &counted in &arguments.counted {
        runs.push(Passed { mass: mass(&plant.gas, counted)?, held: None });
    }
    let step = mass(&plant.gas, arguments.meter_step)?;
    let reading = Reading { share: arguments.meter_class.0, time: arguments.measured.clock, ..Reading::of_scale(step) };
    answer(MeasuredBy::Meter, &arguments.measured, &runs, &reading)
}
