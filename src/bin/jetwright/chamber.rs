//! `jetwright chamber`.

use jetwright::file::burner_file;
use jetwright::furnace::Balance;
use jetwright::plant::furnace::{available, gauge_for};
use jetwright::quantity::{GaugePressure, Power, Temperature};
use jetwright::report::rows::csv_of;
use jetwright::report::{Shop, table};
use serde_json::{Map, Value, json};

use crate::arguments::{Format, SheetArguments, Units};
use crate::command_error::CommandError;
use crate::output;
use crate::warned::Warned;

/// Temperatures the fire is told for, Celsius.
const ROUND: [f64; 10] = [300.0, 500.0, 700.0, 800.0, 900.0, 1000.0, 1100.0, 1200.0, 1300.0, 1400.0];

/// A setting or a round temperature, empty chamber, hot through.
struct Line {
    name: Option<String>,
    gauge: Option<GaugePressure>,
    balance: Balance,
}

/// Setting against temperature, both ways.
pub fn run(arguments: &SheetArguments) -> Result<String, CommandError> {
    let inch = arguments.answer.units == Units::Inch;
    let (sheet, places) = burner_file::read(&arguments.file)?.evaluate(inch)?;
    let (Some(block), Some(entry)) = (&sheet.furnace, &sheet.plant.entries.furnace) else {
        return Err(places
            .refuse("layer", "the file has none, and this command needs each [[layer]] and [[panel]] of the chamber")
            .into());
    };
    let nothing = Power::from_watts(0.0);
    let mut lines = Vec::new();
    for setting in &sheet.settings {
        let ratio = setting.air.as_ref().and_then(|air| air.air_ratio()).unwrap_or(sheet.plant.entries.air_ratio);
        let share = available(&sheet.plant, ratio).map_err(|error| places.refuse("gas.kind", error))?;
        if let Ok(balance) = block.chamber.temperature_for(setting.heat_net, nothing, share) {
            lines.push(Line {
                name: Some(String::from(setting.entry.name.as_str())),
                gauge: Some(setting.gauge),
                balance,
            });
        }
    }
    let ratio = sheet.plant.entries.air_ratio;
    let share = available(&sheet.plant, ratio).map_err(|error| places.refuse("fire.air_ratio", error))?;
    for celsius in ROUND {
        if let Ok(balance) = block.chamber.fire_for(Temperature::from_celsius(celsius), nothing, &share) {
            let gauge = gauge_for(&sheet.plant, balance.fire);
            lines.push(Line { name: None, gauge, balance });
        }
    }
    let rows: Vec<_> = lines.iter().map(row).collect();
    let (warned, shop) = (Warned::of_sheet(&sheet), Shop { inch });
    Ok(match arguments.answer.format {
        Format::Json => output::pretty(&json!({
            "rows": rows.into_iter().map(Value::Object).collect::<Vec<_>>(),
            "warnings": warned.json(),
        })),
        Format::Csv => {
            warned.beside(&shop);
            csv_of(&rows).map_err(CommandError::table)?
        }
        Format::Text => text(&lines, entry.lining_spread(), shop) + &warned.text(&shop),
    })
}

fn row(line: &Line) -> Map<String, Value> {
    let mut row = Map::new();
    for (key, value) in [
        ("setting_name", json!(line.name)),
        ("holding_gauge_pressure_pa", json!(line.gauge.map(|gauge| gauge.pascals()))),
        ("chamber_temperature_k", json!(line.balance.chamber.kelvin())),
        ("heat_net_w", json!(line.balance.fire.watts())),
        ("holding_walls_w", json!(line.balance.walls.watts())),
        ("holding_openings_w", json!(line.balance.openings.watts())),
        ("holding_flue_w", json!(line.balance.flue.watts())),
        ("available_heat", json!(line.balance.available)),
    ] {
        row.insert(key.into(), value);
    }
    row
}

fn text(lines: &[Line], spread: f64, shop: Shop) -> String {
    let gauge = format!("gauge {}", shop.gauge_unit());
    let titles = ["", &gauge, "chamber", "fire kW net", "walls kW", "openings kW", "flue kW"];
    let kilowatts = |watts: f64| format!("{:.2}", watts / 1e3);
    let rows: Vec<Vec<String>> = lines
        .iter()
        .map(|line| {
            vec![
                line.name.clone().unwrap_or_default(),
                line.gauge.map_or("-".into(), |gauge| shop.gauge_number(gauge)),
                shop.temperature(line.balance.chamber),
                kilowatts(line.balance.fire.watts()),
                kilowatts(line.balance.walls.watts()),
                kilowatts(line.balance.openings.watts()),
                kilowatts(line.balance.flue.watts()),
            ]
        })
        .collect();
    table(&titles, &[], &rows)
        + &format!(
            "  Empty chamber, hot through; a setting that is left on ends there. Makers' linings differ by {:.0} %.\n",
            100.0 * spread
        )
}
