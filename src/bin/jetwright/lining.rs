//! `jetwright lining`.

use jetwright::file::burner_file;
use jetwright::plant::hazards::{Hazards, of_castable};
use jetwright::report::rows::csv_of;
use jetwright::report::{Shop, lining_json, lining_text};

use crate::arguments::{Format, SheetArguments, Units};
use crate::command_error::CommandError;
use crate::output;
use crate::warned::Warned;

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
    let found: Hazards = castable.into_iter().flat_map(|cast| of_castable(cast.mix.water, cast.mix.dry)).collect();
    let (warned, shop) = (Warned::of(&found), Shop { inch });
    Ok(match arguments.answer.format {
        Format::Text => lining_text(&block.lining, entry, castable, &shop) + &warned.text(&shop),
        Format::Json => {
            let mut answer = lining_json(&block.lining, entry, castable);
            answer["warnings"] = warned.json();
            output::pretty(&answer)
        }
        Format::Csv => {
            warned.beside(&shop);
            let row = lining_json(&block.lining, entry, castable);
            csv_of(&[row.as_object().cloned().unwrap_or_default()]).map_err(CommandError::table)?
        }
    })
}
