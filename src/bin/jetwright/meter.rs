//! `jetwright meter`.

use clap::Args;
use jetwright::Input;
use jetwright::file::burner_file;
use jetwright::gas::Gas;
use jetwright::measure::{Reading, metered_mass};
use jetwright::quantity::{GaugePressure, Share, Temperature, Volume};
use jetwright::report::answers::measured::MeasuredBy;

use crate::command_error::CommandError;
use crate::common::within;
use crate::measured::{MeasuredArguments, Passed, answer};

#[derive(Debug, Args)]
pub struct MeterArguments {
    /// Gas the meter counted; once a run.
    #[arg(long, required = true, allow_hyphen_values = true, value_parser = within::<Volume>(Input::MeteredVolume))]
    pub counted: Vec<Volume>,
    /// Gauge pressure inside the meter.
    #[arg(long, allow_hyphen_values = true, value_parser = within::<GaugePressure>(Input::GaugePressure))]
    pub meter_pressure: GaugePressure,
    /// Temperature inside the meter.
    #[arg(long, allow_hyphen_values = true, value_parser = within::<Temperature>(Input::GasTemperature))]
    pub meter_temperature: Temperature,
    /// How well the meter counts, such as "1.5 %" (accuracy class 1.5).
    #[arg(long, default_value = "1.5 %", allow_hyphen_values = true, value_parser = within::<Share>(Input::UncertaintyShare))]
    pub meter_class: Share,
    /// Smallest step the meter shows.
    #[arg(long, default_value = "1 L", allow_hyphen_values = true, value_parser = within::<Volume>(Input::MeteredVolume))]
    pub meter_step: Volume,
    #[command(flatten)]
    pub measured: MeasuredArguments,
}

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
