//! `jetwright lining`.

use jetwright::file::burner_file;
use jetwright::plant::hazards::{Hazards, of_castable};
use jetwright::report::answers::lining::{LiningRow, tree};
use jetwright::report::warnings::Warned;

use crate::command_error::CommandError;
use crate::common::FileArguments;
use crate::output;

/// The panels of a burner file's chamber added up.
pub fn run(arguments: &FileArguments) -> Result<String, CommandError> {
    let inch = arguments.answer.is_inch();
    let (sheet, places) = burner_file::read(&arguments.file)?.evaluate(inch)?;
    let (Some(block), Some(entry)) = (&sheet.furnace, &sheet.plant.entries.furnace) else {
        return Err(places
            .refuse("layer", "the file has none, and this command needs each [[layer]] and [[panel]] of the chamber")
            .into());
    };
    let row = LiningRow { lining: &block.lining, entry, castable: block.castable.as_ref() };
    let cast = row.castable.into_iter();
    let found: Hazards = cast.flat_map(|cast| of_castable(cast.mix.water, cast.mix.dry)).collect();
    let shop = output::shop(&arguments.answer);
    output::print(&tree(&row, &shop).warned(&Warned::of(&found), &shop), "The lining", &arguments.answer)
}
