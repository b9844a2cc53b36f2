//! `jetwright flame`.

use clap::Args;
use jetwright::combustion::{
    Basis, FlueReading, LimitStandard, Reactants, air_ratio_from_oxygen, autoignition, burning_range, burning_velocity,
    burning_velocity_bias_holds,
};
use jetwright::plant::hazards::of_flame;
use jetwright::quantity::{Number, Share, Temperature};
use jetwright::report::answers::flame::{FlameAnswer, tree};
use jetwright::report::warnings::Warned;
use jetwright::{Error, Input};

use crate::command_error::CommandError;
use crate::common::{SharedArguments, within};
use crate::output;

#[derive(Debug, Args)]
pub struct FlameArguments {
    /// Air ratio: 1 = just enough air, more is lean, less is rich.
    #[arg(long, default_value = "1", allow_hyphen_values = true, value_parser = within::<Number>(Input::FlameAirRatio))]
    pub air_ratio: Number,
    /// Oxygen an analyser reads in the dry flue gas, such as "2.5 %", which tells the air ratio.
    #[arg(long, conflicts_with = "air_ratio", allow_hyphen_values = true, value_parser = within::<Share>(Input::OxygenReading))]
    pub oxygen: Option<Share>,
    /// Temperature of the mixture as it comes to the flame; that of the air unless given.
    #[arg(long, allow_hyphen_values = true, value_parser = within::<Temperature>(Input::MixtureTemperature))]
    pub mixture_temperature: Option<Temperature>,
    /// Temperature at which the products leave the chamber.
    #[arg(long, default_value = "1200 C", allow_hyphen_values = true, value_parser = within::<Temperature>(Input::ProductTemperature))]
    pub chamber_temperature: Temperature,
    #[command(flatten)]
    pub shared: SharedArguments,
}

/// The flame of a gas at an air ratio, and what is left of it in the chamber.
pub fn run(arguments: &FlameArguments) -> Result<String, CommandError> {
    let asked = &arguments.shared.answer;
    let (answer, warned) = answer(arguments)?;
    let shop = output::shop(asked);
    output::print(&tree(&answer, &shop).warned(&warned, &shop), "A flame", asked)
}

fn answer(arguments: &FlameArguments) -> Result<(FlameAnswer, Warned), CommandError> {
    let shared = &arguments.shared;
    let (site, gas) = (shared.site()?, shared.gas()?);
    let mixture = arguments.mixture_temperature.unwrap_or(site.air_temperature());
    let chamber = arguments.chamber_temperature;
    let ratio_from = if arguments.oxygen.is_some() { "oxygen" } else { "air-ratio" };
    let refuse = |error| CommandError::option(ratio_from, error);
    let ratio = match arguments.oxygen {
        Some(oxygen) => {
            let reading = FlueReading { oxygen: oxygen.0, carbon_monoxide: 0.0, basis: Basis::Dry };
            air_ratio_from_oxygen(&gas, &site, reading).map_err(refuse)?
        }
        None => arguments.air_ratio.0,
    };
    let range = burning_range(&gas, &site, mixture, LimitStandard::Nfpa497);
    let range = range.map_err(|error| CommandError::option("gas", error))?;
    let reactants = Reactants::new(&gas, &site, ratio, mixture).map_err(refuse)?;
    let leaving = reactants.leaving(chamber).map_err(|error| CommandError::option("chamber-temperature", error))?;
    let velocity = match burning_velocity(&gas, &site, ratio, mixture) {
        Err(Error::NotMeasured { .. }) => None,
        found => Some(found.map_err(refuse)?),
    };
    let warned = Warned::of(&of_flame(&gas, &site, mixture, chamber, ratio));
    let answer = FlameAnswer {
        ambient_pressure: site.ambient_pressure().pascals(),
        ratio,
        mixture,
        chamber,
        flame: reactants.flame().map_err(refuse)?,
        dew_point: leaving.products.dew_point(site.ambient_pressure()),
        range,
        autoignition: autoignition(gas.mixture()).map_err(refuse)?,
        velocity_is_near: burning_velocity_bias_holds(&gas, ratio),
        velocity,
        // Outside its range nothing is known of scale, and the rest of the answer stands.
        scale: leaving.products.scale(chamber).ok(),
        leaving,
    };
    Ok((answer, warned))
}
