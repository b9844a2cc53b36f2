//! `jetwright air`.

use jetwright::combustion::AirNeed;
use jetwright::plant::hazards::of_flame;
use jetwright::report::answers::air::{Air, tree};
use jetwright::report::warnings::Warned;

use crate::arguments::AirArguments;
use crate::command_error::CommandError;
use crate::output;

/// The air a heat needs at an air ratio.
pub fn run(arguments: &AirArguments) -> Result<String, CommandError> {
    let shared = &arguments.shared;
    let (site, gas) = (shared.site()?, shared.gas()?);
    let gas_flow = gas.flow_for(arguments.heat).map_err(|error| CommandError::option("heat", error))?;
    let need = AirNeed::new(&gas, &site);
    let refuse = |error| CommandError::option("air-ratio", error);
    let air = need.air_for(gas_flow, arguments.air_ratio.0).map_err(refuse)?;
    let exact = need.air_for(gas_flow, 1.0).map_err(refuse)?;
    let flow = air.at(site.air_density());
    let answer = Air { site: &site, gas: &gas, need, air_ratio: arguments.air_ratio.0, gas_flow, exact, air, flow };
    let (shop, outside) = (output::shop(&shared.answer), site.air_temperature());
    let warned = Warned::of(&of_flame(&gas, &site, outside, outside, arguments.air_ratio.0));
    output::print(&tree(&answer, &shop).warned(&warned, &shop), "The air of a fire", &shared.answer)
}
