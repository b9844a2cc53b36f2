//! `jetwright chamber`.

use jetwright::file::burner_file;
use jetwright::plant::chamber::available;
use jetwright::plant::furnace::gauge_for;
use jetwright::quantity::{Power, Temperature};
use jetwright::report::answers::chamber::{HoldingRow, tree};
use jetwright::report::warnings::Warned;

use crate::command_error::CommandError;
use crate::common::FileArguments;
use crate::output;

/// Temperatures the fire is told for, Celsius.
const ROUND: [f64; 10] = [300.0, 500.0, 700.0, 800.0, 900.0, 1000.0, 1100.0, 1200.0, 1300.0, 1400.0];

/// Setting against temperature, both ways.
pub fn run(arguments: &FileArguments) -> Result<String, CommandError> {
    let inch = arguments.answer.is_inch();
    let (sheet, places) = burner_file::read(&arguments.file)?.evaluate(inch)?;
    let (Some(block), Some(entry)) = (&sheet.furnace, &sheet.plant.entries.furnace) else {
        return Err(places
            .refuse("layer", "the file has none, and this command needs each [[layer]] and [[panel]] of the chamber")
            .into());
    };
    let gas = &sheet.plant.gas;
    let gross_over_net =
        gas.gross_heating_value().joules_per_kilogram() / gas.net_heating_value().joules_per_kilogram();
    let nothing = Power::from_watts(0.0);
    let mut lines = Vec::new();
    for setting in &sheet.settings {
        let ratio = setting.air.as_ref().and_then(|air| air.air_ratio()).unwrap_or(sheet.plant.entries.air_ratio);
        let share = available(&sheet.plant, ratio).map_err(|error| places.refuse("gas.kind", error))?;
        if let Ok(balance) = block.chamber.temperature_for(setting.heat_net, nothing, share) {
            lines.push(HoldingRow {
                name: Some(setting.entry.name.as_str().into()),
                gauge: Some(setting.gauge),
                balance,
                gross_over_net,
            });
        }
    }
    let ratio = sheet.plant.entries.air_ratio;
    let share = available(&sheet.plant, ratio).map_err(|error| places.refuse("fire.air_ratio", error))?;
    for celsius in ROUND {
        if let Ok(balance) = block.chamber.fire_for(Temperature::from_celsius(celsius), nothing, &share) {
            let gauge = gauge_for(&sheet.plant, balance.fire);
            lines.push(HoldingRow { name: None, gauge, balance, gross_over_net });
        }
    }
    let tree = tree(&lines, entry.lining_spread()).warned(&Warned::of_sheet(&sheet), &output::shop(&arguments.answer));
    output::print(&tree, "Setting against temperature", &arguments.answer)
}
