//! `jetwright chamber`.

use jetwright::file::burner_file;
use jetwright::report::answers::chamber::{HoldingRow, tree};
use jetwright::report::warnings::Warned;

use crate::command_error::CommandError;
use crate::common::FileArguments;
use crate::output;

/// Setting against temperature, both ways.
pub fn run(arguments: &FileArguments) -> Result<String, CommandError> {
    let inch = arguments.answer.is_inch();
    let (sheet, places) = burner_file::read(&arguments.file)?.evaluate(inch)?;
    let answer = sheet.chamber().map_err(|refusal| places.told(&refusal))?;
    let (Some(held), Some(entry)) = (answer.found, &sheet.plant.entries.furnace) else {
        return Err(places
            .refuse("layer", "the file has none, and this command needs each [[layer]] and [[panel]] of the chamber")
            .into());
    };
    let gas = &sheet.plant.gas;
    let gross_over_net =
        gas.gross_heating_value().joules_per_kilogram() / gas.net_heating_value().joules_per_kilogram();
    let name = |index: usize| sheet.settings.get(index).map(|setting| setting.entry.name.as_str().into());
    let rows = held.iter().map(|&held| HoldingRow { name: held.setting.and_then(name), held, gross_over_net });
    let warned = Warned::of_sheet(&sheet);
    let shop = output::shop(&arguments.answer);
    let tree = tree(&rows.collect::<Vec<_>>(), entry.lining_spread()).warned(&warned, &shop);
    let must_fit = arguments.answer.units.is_some();
    let tree = tree.with_gauges(&sheet, &shop, must_fit, |setting| places.gauge_unit(setting));
    output::print(&tree, "Setting against temperature", &arguments.answer)
}
