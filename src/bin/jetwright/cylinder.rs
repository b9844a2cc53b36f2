//! `jetwright cylinder`.

use clap::Args;
use jetwright::fuel::{Charge, Cylinder};
use jetwright::gas::Gas;
use jetwright::plant::Store;
use jetwright::plant::description::asked::DrawAsked;
use jetwright::plant::description::{CylinderGiven, RegulatorGiven};
use jetwright::plant::hazards::of_one_draw;
use jetwright::prose::advice;
use jetwright::quantity::MassFlow;
use jetwright::report::answers::cylinder::{CylinderAnswer, tree};
use jetwright::report::warnings::Warned;

use crate::command_error::CommandError;
use crate::common::SharedArguments;
use crate::options::{Asked, needed, offer, part, there};
use crate::output;

part! {
    /// The cylinder; it stands in the air of the site.
    Tank: CylinderGiven, |description| description.cylinder.as_ref(), Some("The cylinder"),
        [offer("capacity"), offer("diameter"), offer("contents"), offer("tare"), offer("count")]
}

part! {
    /// The regulator.
    Regulator: RegulatorGiven, |description| description.regulator.as_ref(), Some("The regulator"), [needed("minimum_inlet_pressure")]
}

part! {
    /// What is drawn, and for how long.
    Drawn: DrawAsked, |description| Some(&description.asked.draw), None, [offer("heat"), offer("draw"), offer("minutes")]
}

#[derive(Debug, Args)]
pub struct CylinderArguments {
    #[command(flatten)]
    pub drawn: Asked<Drawn>,
    #[command(flatten)]
    pub cylinder: Asked<Tank>,
    #[command(flatten)]
    pub regulator: Asked<Regulator>,
    #[command(flatten)]
    pub shared: SharedArguments,
}

/// A cylinder under draw.
pub fn run(arguments: &CylinderArguments) -> Result<String, CommandError> {
    let shared = &arguments.shared;
    let (gas, site) = (shared.gas()?, shared.site()?);
    if shared.fuel.given().temperature.is_some() {
        let text = "the gas in a cylinder begins at --air-temperature, accepted is no gas temperature";
        return Err(CommandError::option("gas-temperature", text).into());
    }
    let asked = arguments.drawn.checked()?;
    let flow = draw(&asked, &gas)?;
    let tank = arguments.cylinder.checked()?;
    let needs = there(arguments.regulator.given().minimum_inlet_pressure, "minimum_inlet_pressure")?;
    let (capacity, diameter) = (there(tank.capacity, "capacity")?, there(tank.diameter, "diameter")?);
    let (left, count) = (tank.contents.unwrap_or(capacity), there(tank.count, "count")?);
    let each = f64::from(count);
    let cylinder = Cylinder::new(diameter, capacity, tank.tare, each)
        .map_err(|error| CommandError::option("empty-mass", error))?;
    let store = Store {
        gas: &gas,
        ambient: site.ambient_pressure(),
        cylinder: &cylinder,
        count,
        charge: Charge { mass: left * each, temperature: shared.air_temperature() },
        air: shared.air_temperature(),
    };
    let pressure = store.pressure().map_err(|error| CommandError::option("gas", advice(&error)))?;
    if pressure < needs {
        let text = format!("the cylinder stands at {:.2} bar only, so cold: it gives nothing", pressure.bar());
        return Err(CommandError::option("minimum-inlet-pressure", text).beside("air-temperature", 0).into());
    }
    let row = store.row(flow, needs, there(asked.minutes, "minutes")?);
    let row = row.map_err(|error| CommandError::option("air-temperature", advice(&error)))?;
    let warned = Warned::of(&of_one_draw(&gas, &row));
    let answer = CylinderAnswer { store, flow, pressure, row };
    let question = asked.heat.map_or(asked.draw.map(|draw| draw.unit), |heat| Some(heat.unit));
    let shop = question.map_or(output::shop(&shared.answer), |unit| output::shop_of(&shared.answer, unit));
    output::print_in(&tree(&answer, &shop).warned(&warned, &shop), "A cylinder under draw", &shop, &shared.answer)
}

fn draw(asked: &DrawAsked, gas: &Gas) -> Result<MassFlow, CommandError> {
    if let Some(heat) = asked.heat {
        return Ok(gas.flow_for(heat.quantity).map_err(|error| CommandError::option("heat", error))?);
    }
    Ok(there(asked.draw, "draw")?.quantity)
}
