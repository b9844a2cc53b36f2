//! `jetwright air`.

use jetwright::combustion::AirNeed;
use jetwright::plant::hazards::of_flame;
use jetwright::report::Shop;
use jetwright::report::rows::csv_of;
use serde_json::{Map, Value, json};

use crate::arguments::{AirArguments, Format, Units};
use crate::command_error::CommandError;
use crate::output;
use crate::warned::Warned;

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
    let mut row = Map::new();
    for (key, value) in [
        ("ambient_pressure_pa", site.ambient_pressure().pascals()),
        ("air_density_kg_per_m3", site.air_density().kilograms_per_cubic_meter()),
        ("air_ratio", arguments.air_ratio.0),
        ("mass_flow_kg_per_s", gas_flow.kilograms_per_second()),
        ("heat_gross_w", gas.gross_heating_value().of(gas_flow).watts()),
        ("heat_net_w", gas.net_heating_value().of(gas_flow).watts()),
        ("air_stoichiometric_kg_per_s", exact.kilograms_per_second()),
        ("air_kg_per_s", air.kilograms_per_second()),
        ("air_flow_m3_per_s", flow.cubic_meters_per_second()),
        ("air_stoichiometric_m3_per_m3", need.volume_ratio),
        ("air_stoichiometric_kg_per_kg", need.mass_ratio),
    ] {
        row.insert(key.into(), json!(value));
    }
    let shop = Shop { inch: shared.answer.units == Units::Inch };
    let outside = site.air_temperature();
    let warned = Warned::of(&of_flame(&gas, &site, outside, outside, arguments.air_ratio.0));
    Ok(match shared.answer.format {
        Format::Json => {
            row.insert("warnings".into(), warned.json());
            output::pretty(&Value::Object(row))
        }
        Format::Csv => {
            warned.beside(&shop);
            csv_of(&[row]).map_err(CommandError::table)?
        }
        Format::Text => {
            format!(
                "{} at air ratio {} (1 = just enough) needs {} {} of air: {} as the blower takes it in here.\n\
                 That burns {} {} of gas; one volume of gas takes {:.1} volumes of air to just burn.\n",
                shop.heat(gas.gross_heating_value().of(gas_flow), gas.net_heating_value().of(gas_flow)),
                Shop::ratio(arguments.air_ratio.0),
                shop.gas_number(air),
                shop.gas_unit(),
                shop.air(flow),
                shop.gas_number(gas_flow),
                shop.gas_unit(),
                need.volume_ratio,
            ) + &warned.text(&shop)
        }
    })
}
