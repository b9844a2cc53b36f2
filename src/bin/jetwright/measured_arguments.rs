//! The arguments of `weigh` and `meter`.

use std::path::PathBuf;

use clap::Args;
use jetwright::Input;
use jetwright::quantity::{Duration, GaugePressure, Mass, Share, Temperature, Volume};

use crate::common::{AnswerArguments, within};

/// A jet that is weighed or metered, and what is done with the answer.
#[derive(Debug, Args)]
pub struct MeasuredArguments {
    /// The burner file.
    pub file: PathBuf,
    /// The setting the burner stood at: its gauge, and the air its jet blows into.
    #[arg(long)]
    pub setting: Option<String>,
    /// What the gauge read while gas flowed; once for all runs, or once a run.
    #[arg(long, allow_hyphen_values = true, value_parser = within::<GaugePressure>(Input::GaugePressure))]
    pub gauge: Vec<GaugePressure>,
    /// How long it took; once a run.
    #[arg(long, allow_hyphen_values = true, value_parser = within::<Duration>(Input::WeighingTime))]
    pub time: Vec<Duration>,
    /// How well the time is known.
    #[arg(long, default_value = "2 s", allow_hyphen_values = true, value_parser = within::<Duration>(Input::ClockError))]
    pub clock: Duration,
    /// Temperature of the gas before the jet; that of the file unless given.
    #[arg(long, allow_hyphen_values = true, value_parser = within::<Temperature>(Input::GasTemperature))]
    pub gas_temperature: Option<Temperature>,
    /// Gauge pressure the jet blew into; that of the setting unless given.
    #[arg(long, allow_hyphen_values = true, value_parser = within::<GaugePressure>(Input::BackPressure))]
    pub back_pressure: Option<GaugePressure>,
    /// An earlier measurement of the same jet to compare with.
    #[arg(long)]
    pub earlier: Option<PathBuf>,
    /// Where to write the measured jet, for a burner file to name.
    #[arg(long)]
    pub save: Option<PathBuf>,
    #[command(flatten)]
    pub answer: AnswerArguments,
}

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
