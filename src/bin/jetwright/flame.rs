//! `jetwright flame`.

use jetwright::combustion::{Product, Products, Reactants};
use jetwright::quantity::Temperature;
use jetwright::sheet::rows::csv_of;
use jetwright::sheet::{Shop, table};
use serde_json::{Map, Value, json};

use crate::arguments::{FlameArguments, Format, Units};
use crate::command_error::CommandError;
use crate::output;

/// The flame of a gas at an air ratio, and what is left of it in the chamber.
pub fn run(arguments: &FlameArguments) -> Result<String, CommandError> {
    let shared = &arguments.shared;
    let (site, gas) = (shared.site()?, shared.gas()?);
    let ratio = arguments.air_ratio.0;
    let mixture = arguments.mixture_temperature.unwrap_or(site.air_temperature());
    let refuse = |error| CommandError::option("air-ratio", error);
    let reactants = Reactants::new(&gas, &site, ratio, mixture).map_err(refuse)?;
    let flame = reactants.flame().map_err(refuse)?;
    let chamber = |error| CommandError::option("chamber-temperature", error);
    let cooled = reactants.products_at(arguments.chamber_temperature).map_err(chamber)?;
    let available = reactants.available_heat(arguments.chamber_temperature).map_err(chamber)?;
    let mut row = Map::new();
    for (key, value) in [
        ("ambient_pressure_pa", site.ambient_pressure().pascals()),
        ("air_ratio", ratio),
        ("mixture_temperature_k", mixture.kelvin()),
        ("adiabatic_flame_temperature_k", flame.temperature.kelvin()),
        ("chamber_temperature_k", arguments.chamber_temperature.kelvin()),
        ("available_heat", available),
        ("chamber_carbon_monoxide_dry", cooled.dry(Product::CarbonMonoxide)),
        ("chamber_hydrogen_dry", cooled.dry(Product::Hydrogen)),
    ] {
        row.insert(key.into(), json!(value));
    }
    Ok(match shared.answer.format {
        Format::Csv => csv_of(&[row]).map_err(CommandError::table)?,
        Format::Json => {
            row.insert("products_wet".into(), shares(|product| flame.products.wet(product)));
            row.insert("products_dry".into(), shares(|product| flame.products.dry(product)));
            output::pretty(&Value::Object(row))
        }
        Format::Text => {
            let shop = Shop { inch: shared.answer.units == Units::Inch };
            text(ratio, flame.temperature, &flame.products, &cooled, available, arguments.chamber_temperature, shop)
        }
    })
}

fn shares(of: impl Fn(Product) -> f64) -> Value {
    Value::Object(Product::ALL.iter().map(|&product| (product.symbol().into(), json!(of(product)))).collect())
}

fn text(
    ratio: f64,
    hottest: Temperature,
    flame: &Products,
    cooled: &Products,
    available: f64,
    chamber: Temperature,
    shop: Shop,
) -> String {
    let percent = |share: f64| format!("{:.2}", 100.0 * share);
    let rows: Vec<Vec<String>> = [
        Product::CarbonDioxide,
        Product::CarbonMonoxide,
        Product::Water,
        Product::Hydrogen,
        Product::Oxygen,
        Product::Nitrogen,
        Product::NitricOxide,
    ]
    .into_iter()
    .map(|product| {
        vec![
            product.symbol().into(),
            percent(flame.wet(product)),
            percent(cooled.wet(product)),
            percent(cooled.dry(product)),
        ]
    })
    .collect();
    let in_chamber = format!("in the chamber at {}, %", shop.temperature(chamber));
    let titles = ["", "in the flame, %", &in_chamber, "the same dry, %"];
    format!(
        "At air ratio {ratio:.2} (1 = just enough) the flame reaches {} if nothing cools it.\n\
         Of the net heat {} stays in the chamber when the gases leave at {}.\n{}\
         Carbon monoxide as if all burnt to the end: real mixing leaves more. It kills; vent outdoors.\n",
        shop.temperature(hottest),
        Shop::share(available),
        shop.temperature(chamber),
        table(&titles, &[], &rows),
    )
}
