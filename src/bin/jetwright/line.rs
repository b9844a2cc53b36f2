//! `jetwright line`.

use clap::Args;
use jetwright::fuel::{low_pressure_pipe_diameter, low_pressure_pipe_flow, low_pressure_pipe_mass_flow};
use jetwright::gas::{Gas, parse};
use jetwright::plant::description::asked::PipeAsked;
use jetwright::plant::description::{GasSupplied, LineGiven};
use jetwright::plant::hazards::of_gas;
use jetwright::prose::advice;
use jetwright::quantity::{ActualVolumeFlow, Temperature};
use jetwright::report::answers::line::{Pipe, tree};
use jetwright::report::warnings::Warned;

use crate::command_error::CommandError;
use crate::common::AnswerArguments;
use crate::options::{Asked, needed, offer, part, there};
use crate::output;

part! {
    /// The gas, whatever its temperature.
    Fuel: GasSupplied, |description| description.gas.as_ref(), None, [offer("kind")]
}

part! {
    /// The pipe, what its fittings are worth in pipe counted in its length.
    PipeSize: LineGiven, |description| description.line.as_ref(), Some("The pipe, its fittings counted into its length"), [needed("diameter"), needed("length")]
}

part! {
    /// What it must pass.
    Passed: PipeAsked, |description| Some(&description.asked.pipe), None, [offer("drop"), offer("heat")]
}

#[derive(Debug, Args)]
pub struct LineArguments {
    #[command(flatten)]
    pub fuel: Asked<Fuel>,
    #[command(flatten)]
    pub pipe: Asked<PipeSize>,
    #[command(flatten)]
    pub passed: Asked<Passed>,
    #[command(flatten)]
    pub answer: AnswerArguments,
}

/// What a low-pressure gas pipe passes.
pub fn run(arguments: &LineArguments) -> Result<String, CommandError> {
    let refuse = |option: &'static str| move |error: jetwright::Error| CommandError::option(option, advice(&error));
    let mixture =
        parse(&there(arguments.fuel.given().kind, "gas")?).map_err(|error| CommandError::option("gas", error))?;
    let gas = Gas::new(mixture);
    let relative = gas.mixture().calorific_values(Default::default(), Default::default()).relative_density;
    let viscosity = gas.viscosity(Temperature::from_fahrenheit(60.0));
    let pipe = arguments.pipe.checked()?;
    let (diameter, length) = (there(pipe.diameter, "diameter")?, there(pipe.length, "length")?);
    let PipeAsked { drop, heat } = arguments.passed.given();
    let drop_written = there(drop, "drop")?;
    let drop = drop_written.quantity;
    if length.meters() <= 0.0 {
        return Err(CommandError::option("length", "accepted is more than 0 m").into());
    }
    let flow = low_pressure_pipe_flow(diameter, length, drop, relative, viscosity).map_err(refuse("diameter"))?;
    let mass = low_pressure_pipe_mass_flow(&gas, flow).map_err(refuse("gas"))?;
    let (gross, net) = (gas.gross_heating_value().of(mass), gas.net_heating_value().of(mass));
    let wanted = heat.map(|heat| gas.flow_for(heat.quantity)).transpose().map_err(refuse("heat"))?;
    let passes = wanted.map(|wanted| wanted <= mass);
    let least = wanted.and_then(|wanted| {
        let share = wanted.kilograms_per_second() / mass.kilograms_per_second();
        let flow = ActualVolumeFlow::from_cubic_meters_per_second(flow.cubic_meters_per_second() * share);
        low_pressure_pipe_diameter(flow, length, drop, relative, viscosity).ok()
    });
    let answer = Pipe { flow, mass, gross, net, passes, least };
    let shop = output::shop_of(&arguments.answer, heat.map_or(drop_written.unit, |heat| heat.unit));
    output::print_in(
        &tree(&answer, &shop).warned(&Warned::of(&of_gas(&gas)), &shop),
        "A low-pressure gas pipe",
        &shop,
        &arguments.answer,
    )
}
