//! `jetwright cylinder`.

use clap::Args;
use jetwright::Input;
use jetwright::fuel::{Charge, Cylinder};
use jetwright::gas::Gas;
use jetwright::plant::Store;
use jetwright::plant::description::{CylinderGiven, RegulatorGiven};
use jetwright::plant::hazards::of_one_draw;
use jetwright::prose::advice;
use jetwright::quantity::{Duration, HeatRate, MassFlow, Written};
use jetwright::report::answers::cylinder::{CylinderAnswer, tree};
use jetwright::report::warnings::Warned;

use crate::command_error::CommandError;
use crate::common::{SharedArguments, within, written};
use crate::options::{Asked, needed, offer, part, there};
use crate::output;

part! {
    /// The cylinder; it stands in the air of the site.
    Tank: CylinderGiven, |description| description.cylinder.as_ref(), Some("The cylinder"),
        [offer("holds"), offer("diameter"), offer("left"), offer("empty_mass"), offer("count")]
}

part! {
    /// The regulator.
    Regulator: RegulatorGiven, |description| description.regulator.as_ref(), Some("The regulator"), [needed("needs")]
}

#[derive(Debug, Args)]
pub struct CylinderArguments {
    /// The fire it feeds, gross or net, such as "22 kW net" ...
    #[arg(long, allow_hyphen_values = true, value_parser = written::<HeatRate>(Input::HeatRate))]
    pub heat: Option<Written<HeatRate>>,
    /// ... or the gas drawn, such as "1.8 kg/h", one of the two.
    #[arg(long, allow_hyphen_values = true, value_parser = written::<MassFlow>(Input::GasDraw))]
    pub draw: Option<Written<MassFlow>>,
    #[command(flatten)]
    pub cylinder: Asked<Tank>,
    #[command(flatten)]
    pub regulator: Asked<Regulator>,
    /// How long the gas is drawn.
    #[arg(long, default_value = "60 min", allow_hyphen_values = true, value_parser = within::<Duration>(Input::Duration))]
    pub minutes: Duration,
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
    let flow = draw(arguments, &gas)?;
    let tank = arguments.cylinder.checked()?;
    let needs = there(arguments.regulator.given().needs, "needs")?;
    let (holds, diameter) = (there(tank.holds, "holds")?, there(tank.diameter, "diameter")?);
    let (left, count) = (tank.left.unwrap_or(holds), there(tank.count, "count")?);
    let each = f64::from(count);
    let cylinder = Cylinder::new(diameter, holds, tank.empty_mass, each)
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
        return Err(CommandError::option("needs", text).beside("air-temperature", 0).into());
    }
    let row = store.row(flow, needs, arguments.minutes);
    let row = row.map_err(|error| CommandError::option("air-temperature", advice(&error)))?;
    let warned = Warned::of(&of_one_draw(&gas, &row));
    let answer = CylinderAnswer { store, flow, pressure, row };
    let question = arguments.heat.map_or(arguments.draw.map(|draw| draw.unit), |heat| Some(heat.unit));
    let shop = question.map_or(output::shop(&shared.answer), |unit| output::shop_of(&shared.answer, unit));
    output::print_in(&tree(&answer, &shop).warned(&warned, &shop), "A cylinder under draw", &shop, &shared.answer)
}

fn draw(arguments: &CylinderArguments, gas: &Gas) -> Result<MassFlow, CommandError> {
    match (arguments.heat, arguments.draw) {
        (Some(heat), None) => Ok(gas.flow_for(heat.quantity).map_err(|error| CommandError::option("heat", error))?),
        (None, Some(flow)) => Ok(flow.quantity),
        _ => Err(CommandError::option("heat", "accepted is a heat or a draw, one of the two").into()),
    }
}
