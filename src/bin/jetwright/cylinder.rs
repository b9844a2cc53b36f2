//! `jetwright cylinder`.

use jetwright::fuel::{Charge, Cylinder};
use jetwright::gas::Gas;
use jetwright::plant::hazards::of_one_draw;
use jetwright::plant::{CylinderRow, Store};
use jetwright::prose::advice;
use jetwright::quantity::{GaugePressure, MassFlow};
use jetwright::report::Shop;
use jetwright::report::rows::csv_of;
use serde_json::{Map, Value, json};

use crate::arguments::{Format, Units};
use crate::command_error::CommandError;
use crate::output;
use crate::supply_arguments::CylinderArguments;
use crate::warned::Warned;

/// A cylinder under draw.
pub fn run(arguments: &CylinderArguments) -> Result<String, CommandError> {
    let shared = &arguments.shared;
    let (gas, site) = (shared.gas()?, shared.site()?);
    if shared.gas_temperature.is_some() {
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
        charge: Charge { mass: left * count, temperature: shared.air_temperature },
        air: shared.air_temperature,
    };
    let pressure = store.pressure().map_err(|error| CommandError::option("gas", advice(&error)))?;
    if pressure < arguments.needs {
        let text = format!("the cylinder stands at {:.2} bar only, so cold: it gives nothing", pressure.bar());
        return Err(CommandError::option("needs", text).beside("air-temperature", 0).into());
    }
    let row = store.row(flow, arguments.needs, arguments.minutes);
    let row = row.map_err(|error| CommandError::option("air-temperature", advice(&error)))?;
    let warned = Warned::of(&of_one_draw(&gas, &row));
    let shop = Shop { inch: shared.answer.units == Units::Inch };
    Ok(match shared.answer.format {
        Format::Json => {
            let mut keys = keys(&store, flow, pressure, &row);
            keys.insert("warnings".into(), warned.json());
            output::pretty(&Value::Object(keys))
        }
        Format::Csv => {
            warned.beside(&shop);
            csv_of(&[keys(&store, flow, pressure, &row)]).map_err(CommandError::table)?
        }
        Format::Text => text(&store, flow, pressure, &row, shop) + &warned.text(&shop),
    })
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

fn keys(store: &Store<'_>, flow: MassFlow, pressure: GaugePressure, row: &CylinderRow) -> Map<String, Value> {
    let (gross, net) = (store.gas.gross_heating_value(), store.gas.net_heating_value());
    let mut keys = Map::new();
    for (key, value) in [
        ("ambient_pressure_pa", json!(store.ambient.pascals())),
        ("cylinders", json!(store.count)),
        ("capacity_kg", json!(store.cylinder.capacity().kilograms())),
        ("left_kg", json!(store.charge.mass.kilograms())),
        ("cylinder_gauge_pressure_pa", json!(pressure.pascals())),
        ("regulator_needs_pa", json!(row.needs.pascals())),
        ("mass_flow_kg_per_s", json!(flow.kilograms_per_second())),
        ("heat_gross_w", json!(gross.of(flow).watts())),
        ("heat_net_w", json!(net.of(flow).watts())),
        ("steady_draw_kg_per_s", json!(row.steady.kilograms_per_second())),
        ("steady_heat_net_w", json!(net.of(row.steady).watts())),
        ("keeps_up", json!(row.keeps_up)),
        ("cylinders_needed", json!(row.cylinders_needed)),
        ("too_cold_after_s", json!(row.too_cold_after.map(|time| time.seconds()))),
        ("gas_lasts_s", json!(row.lasts.map(|time| time.seconds()))),
        ("full_lasts_s", json!(row.full_lasts.map(|time| time.seconds()))),
        ("empty_after_s", json!(row.end.empty_after.map(|time| time.seconds()))),
        ("duration_s", json!(row.used.seconds())),
        ("end_left_kg", json!(row.end.left.kilograms())),
        ("liquid_temperature_k", json!(row.end.temperature.kelvin())),
        ("end_gauge_pressure_pa", json!(row.end.pressure.to_gauge(store.ambient).pascals())),
    ] {
        keys.insert(key.into(), value);
    }
    keys
}

fn text(store: &Store<'_>, flow: MassFlow, pressure: GaugePressure, row: &CylinderRow, shop: Shop) -> String {
    let heat =
        |flow: MassFlow| shop.heat(store.gas.gross_heating_value().of(flow), store.gas.net_heating_value().of(flow));
    let amount = |flow: MassFlow| format!("{} {}", shop.gas_number(flow), shop.gas_unit());
    let minutes = row.used.minutes();
    let many = if store.count == 1 { "The cylinder".into() } else { format!("The {} cylinders", store.count) };
    let mut text = format!(
        "{many}: {} left of {}, {} in it at {}. The regulator needs {}.\n",
        shop.mass(store.charge.mass),
        shop.mass(store.cylinder.capacity()),
        shop.gauge(pressure),
        shop.temperature(store.air),
        shop.gauge(row.needs)
    );
    text += &format!("Drawn: {} ({}).\n", amount(flow), heat(flow));
    let steady = format!("{} ({})", amount(row.steady), heat(row.steady));
    text += &match row.too_cold_after {
        None => format!("IT KEEPS UP till it is empty; at today's level it would hold {steady}, less as it empties.\n"),
        Some(after) if after < row.used => format!(
            "IT DOES NOT KEEP UP: too cold for the regulator after {:.0} min; at today's level it holds {steady}, less \
             as it empties{}.\n",
            after.minutes(),
            row.cylinders_needed.map_or(String::new(), |count| format!(", {count} such cylinders would hold this"))
        ),
        Some(after) => format!(
            "It keeps up for {:.1} h, then it is too cold for the regulator; at today's level it holds {steady}, less \
             as it empties.\n",
            after.hours()
        ),
    };
    match row.end.empty_after {
        Some(empty) => text += &format!("EMPTY after {:.0} of the {minutes:.0} min.\n", empty.minutes()),
        None => {
            text += &format!(
                "After {minutes:.0} min: {} left, the liquid at {}, {} in it.\n",
                shop.mass(row.end.left),
                shop.temperature(row.end.temperature),
                shop.gauge(row.end.pressure.to_gauge(store.ambient))
            );
        }
    }
    if let (Some(lasts), Some(full)) = (row.lasts, row.full_lasts) {
        text += &format!("Gas for {:.1} h, for {:.1} h when full.\n", lasts.hours(), full.hours());
    }
    text + "An estimate within a tenth for a bare upright steel cylinder in still air. Never heat a cylinder with flame.\n"
}
