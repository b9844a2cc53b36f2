//! `jetwright cylinder`.

use jetwright::fuel::{Charge, Cylinder};
use jetwright::gas::Gas;
use jetwright::plant::Store;
use jetwright::plant::hazards::of_one_draw;
use jetwright::prose::advice;
use jetwright::quantity::MassFlow;
use jetwright::report::answers::cylinder::{CylinderAnswer, tree};
use jetwright::report::warnings::Warned;

use crate::command_error::CommandError;
use crate::output;
use crate::supply_arguments::CylinderArguments;

/// A cylinder under draw.
pub fn run(arguments: &CylinderArguments) -> Result<String, CommandError> {
    let shared = &arguments.shared;
    let (gas, site) = (shared.gas()?, shared.site()?);
    if shared.fuel.given().temperature.is_some() {
        let text = "the gas in a cylinder begins at --air-temperature, accepted is no gas temperature";
        return Err(CommandError::option("gas-temperature", text).into());
    }
    let flow = draw(arguments, &gas)?;
    let left = left(arguments)?;
    let count = f64::from(arguments.count);
    let cylinder = Cylinder::new(arguments.diameter, arguments.holds, arguments.empty_mass, count)
        .map_err(|error| CommandError::option("empty-mass", error))?;
    let store = Store {
        gas: &gas,
        ambient: site.ambient_pressure(),
        cylinder: &cylinder,
        count: arguments.count,
        charge: Charge { mass: left * count, temperature: shared.air_temperature() },
        air: shared.air_temperature(),
    };
    let pressure = store.pressure().map_err(|error| CommandError::option("gas", advice(&error)))?;
    if pressure < arguments.needs {
        let text = format!("the cylinder stands at {:.2} bar only, so cold: it gives nothing", pressure.bar());
        return Err(CommandError::option("needs", text).beside("air-temperature", 0).into());
    }
    let row = store.row(flow, arguments.needs, arguments.minutes);
    let row = row.map_err(|error| CommandError::option("air-temperature", advice(&error)))?;
    let warned = Warned::of(&of_one_draw(&gas, &row));
    let answer = CylinderAnswer { store, flow, pressure, row };
    let shop = output::shop(&shared.answer);
    output::print(&tree(&answer, &shop).warned(&warned, &shop), "A cylinder under draw", &shared.answer)
}

fn draw(arguments: &CylinderArguments, gas: &Gas) -> Result<MassFlow, CommandError> {
    match (arguments.heat, arguments.draw) {
        (Some(heat), None) => Ok(gas.flow_for(heat).map_err(|error| CommandError::option("heat", error))?),
        (None, Some(flow)) => Ok(flow),
        _ => Err(CommandError::option("heat", "accepted is a heat or a draw, one of the two").into()),
    }
}

fn left(arguments: &CylinderArguments) -> Result<jetwright::quantity::Mass, CommandError> {
    let option = if arguments.left.is_some() { "left" } else { "holds" };
    let left = arguments.left.unwrap_or(arguments.holds);
    if left.kilograms() <= 0.0 {
        return Err(CommandError::option(option, "an empty cylinder gives no gas, accepted is more than 0 kg").into());
    }
    if left > arguments.holds {
        let text = "accepted is up to what the cylinder holds";
        return Err(CommandError::option(option, text).beside("holds", 0).into());
    }
    Ok(left)
}
