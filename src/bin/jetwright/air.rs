//! `jetwright air`.

use clap::Args;
use jetwright::combustion::AirNeed;
use jetwright::plant::description::asked::JetAsked;
use jetwright::plant::hazards::of_flame;
use jetwright::report::answers::air::{Air, tree};
use jetwright::report::warnings::Warned;

use crate::command_error::CommandError;
use crate::common::{Ratio, SharedArguments};
use crate::options::{Asked, needed, part, there};
use crate::output;

part! {
    /// The heat of the fire.
    Heat: JetAsked, |description| Some(&description.asked.jet), None, [needed("heat")]
}

#[derive(Debug, Args)]
pub struct AirArguments {
    #[command(flatten)]
    pub heat: Asked<Heat>,
    #[command(flatten)]
    pub ratio: Asked<Ratio>,
    #[command(flatten)]
    pub shared: SharedArguments,
}

/// The air a heat needs at an air ratio.
pub fn run(arguments: &AirArguments) -> Result<String, CommandError> {
    let shared = &arguments.shared;
    let (site, gas) = (shared.site()?, shared.gas()?);
    let heat = there(arguments.heat.given().heat, "heat")?;
    let gas_flow = gas.flow_for(heat.quantity).map_err(|error| CommandError::option("heat", error))?;
    let air_ratio = there(arguments.ratio.given().air_ratio, "air-ratio")?.0;
    let need = AirNeed::new(&gas, &site);
    let refuse = |error| CommandError::option("air-ratio", error);
    let air = need.air_for(gas_flow, air_ratio).map_err(refuse)?;
    let exact = need.air_for(gas_flow, 1.0).map_err(refuse)?;
    let flow = air.at(site.air_density());
    let answer = Air { site: &site, gas: &gas, need, air_ratio, gas_flow, exact, air, flow };
    let (shop, outside) = (output::shop_of(&shared.answer, heat.unit), site.air_temperature());
    let warned = Warned::of(&of_flame(&gas, &site, outside, outside, air_ratio));
    output::print_in(&tree(&answer, &shop).warned(&warned, &shop), "The air of a fire", &shop, &shared.answer)
}
