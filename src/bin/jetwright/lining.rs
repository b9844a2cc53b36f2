//! `jetwright lining`.

use jetwright::file::burner_file;
use jetwright::report::rows::csv_of;
use jetwright::report::{Shop, lining_json, lining_text};

use crate::arguments::{Format, SheetArguments, Units};
use crate::command_error::CommandError;
use crate::output;

/// The panels of a burner file's chamber added up.
pub fn run(arguments: &SheetArguments) -> Result<String, CommandError> {
    let inch = arguments.answer.units == Units::Inch;
    let (sheet, places) = burner_file::read(&arguments.file)?.evaluate(inch)?;
    let (Some(block), Some(entry)) = (&sheet.furnace, &sheet.plant.entries.furnace) else {
        return Err(places
            .refuse("layer", "the file has none, and this command needs each [[layer]] and [[panel]] of the chamber")
            .into());
    };
    let castable = block.castable.as_ref();
    Ok(match arguments.answer.format {
        Format::Text => lining_text(&block.lining, entry, castable, &Shop { inch }),
        Format::Json => output::pretty(&lining_json(&block.lining, entry, castable)),
        Format::Csv => {
            let row = lining_json(&block.lining, entry, castable);
            csv_of(&[row.as_object().cloned().unwrap_or_default()]).map_err(CommandError::table)?
        }
    })
}
