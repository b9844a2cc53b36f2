//! `jetwright flame`.

use clap::Args;
use jetwright::Error;
use jetwright::combustion::{
    Basis, FlueReading, LimitStandard, Reactants, air_ratio_from_oxygen, autoignition, burning_range, burning_velocity,
    burning_velocity_bias_holds,
};
use jetwright::plant::description::asked::FlameAsked;
use jetwright::plant::hazards::of_flame;
use jetwright::report::answers::flame::{FlameAnswer, tree};
use jetwright::report::warnings::Warned;

use crate::command_error::CommandError;
use crate::common::SharedArguments;
use crate::options::{Asked, offer, part, there};
use crate::output;

part! {
    /// The flame.
    Flame: FlameAsked, |description| Some(&description.asked.flame), None,
        [offer("air_ratio"), offer("oxygen"), offer("mixture_temperature"), offer("chamber_temperature")]
}

#[derive(Debug, Args)]
pub struct FlameArguments {
    #[command(flatten)]
    pub flame: Asked<Flame>,
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
    let asked = arguments.flame.checked()?;
    let mixture = asked.mixture_temperature.unwrap_or(site.air_temperature());
    let chamber = there(asked.chamber_temperature, "chamber-temperature")?;
    let ratio_from = if asked.oxygen.is_some() { "oxygen" } else { "air-ratio" };
    let refuse = |error| CommandError::option(ratio_from, error);
    let ratio = match asked.oxygen {
        Some(oxygen) => {
            let reading = FlueReading { oxygen: oxygen.0, carbon_monoxide: 0.0, basis: Basis::Dry };
            air_ratio_from_oxygen(&gas, &site, reading).map_err(refuse)?
        }
        None => asked.air_ratio.map_or(1.0, |ratio| ratio.0),
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
