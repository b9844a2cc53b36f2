//! `jetwright line`.

use jetwright::fuel::{low_pressure_pipe_diameter, low_pressure_pipe_flow, low_pressure_pipe_mass_flow};
use jetwright::gas::{Gas, parse};
use jetwright::plant::hazards::of_gas;
use jetwright::prose::advice;
use jetwright::quantity::{ActualVolumeFlow, Temperature};
use jetwright::report::Shop;
use jetwright::report::rows::csv_of;
use serde_json::{Map, Value, json};

use crate::arguments::{Format, Units};
use crate::command_error::CommandError;
use crate::output;
use crate::supply_arguments::LineArguments;
use crate::warned::Warned;

/// What a low-pressure gas pipe passes.
pub fn run(arguments: &LineArguments) -> Result<String, CommandError> {
    let refuse = |option: &'static str| move |error: jetwright::Error| CommandError::option(option, advice(&error));
    let mixture = parse(&arguments.gas).map_err(|error| CommandError::option("gas", error))?;
    let gas = Gas::new(mixture);
    let relative = gas.mixture().calorific_values(Default::default(), Default::default()).relative_density;
    let viscosity = gas.viscosity(Temperature::from_fahrenheit(60.0));
    let (length, drop) = (arguments.length, arguments.drop);
    if length.meters() <= 0.0 {
        return Err(CommandError::option("length", "accepted is more than 0 m").into());
    }
    let flow =
        low_pressure_pipe_flow(arguments.diameter, length, drop, relative, viscosity).map_err(refuse("diameter"))?;
    let mass = low_pressure_pipe_mass_flow(&gas, flow).map_err(refuse("gas"))?;
    let (gross, net) = (gas.gross_heating_value().of(mass), gas.net_heating_value().of(mass));
    let wanted = arguments.heat.map(|heat| gas.flow_for(heat)).transpose().map_err(refuse("heat"))?;
    let passes = wanted.map(|wanted| wanted <= mass);
    let least = wanted.and_then(|wanted| {
        let share = wanted.kilograms_per_second() / mass.kilograms_per_second();
        let flow = ActualVolumeFlow::from_cubic_meters_per_second(flow.cubic_meters_per_second() * share);
        low_pressure_pipe_diameter(flow, length, drop, relative, viscosity).ok()
    });
    let mut row = Map::new();
    for (key, value) in [
        ("code_flow_m3_per_s", json!(flow.cubic_meters_per_second())),
        ("mass_flow_kg_per_s", json!(mass.kilograms_per_second())),
        ("heat_gross_w", json!(gross.watts())),
        ("heat_net_w", json!(net.watts())),
        ("passes", json!(passes)),
        ("least_diameter_m", json!(least.map(|diameter| diameter.meters()))),
    ] {
        row.insert(key.into(), value);
    }
    let shop = Shop { inch: arguments.answer.units == Units::Inch };
    let warned = Warned::of(&of_gas(&gas));
    Ok(match arguments.answer.format {
        Format::Json => {
            row.insert("warnings".into(), warned.json());
            output::pretty(&Value::Object(row))
        }
        Format::Csv => {
            warned.beside(&shop);
            csv_of(&[row]).map_err(CommandError::table)?
        }
        Format::Text => {
            let mut text = format!(
                "It passes {} of gas, {} {}: a fire of {}.\n",
                shop.air(flow),
                shop.gas_number(mass),
                shop.gas_unit(),
                shop.heat(gross, net)
            );
            match (passes, least) {
                (Some(true), Some(least)) => {
                    text += &format!("That is enough; {} inside would do.\n", shop.length(least))
                }
                (Some(_), Some(least)) => {
                    text += &format!("NOT ENOUGH: the fire wants {} inside.\n", shop.length(least));
                }
                (Some(_), None) => text += "NOT ENOUGH, and no pipe in range would do.\n",
                _ => {}
            }
            text +=
                "By the low-pressure formula of the fuel-gas codes. Local codes and a licensed gas fitter decide.\n";
            text + &warned.text(&shop)
        }
    })
}
