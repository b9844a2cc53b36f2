//! `jetwright sheet`.

use jetwright::sheet::rows::{csv_of, setting_rows, sheet_json};
use jetwright::sheet::{Shop, burner_file, compose, sheet_text};

use crate::arguments::{Format, SheetArguments, Units};
use crate::command_error::CommandError;
use crate::output;

/// The whole sheet of one burner file.
pub fn run(arguments: &SheetArguments) -> Result<String, CommandError> {
    let inch = arguments.answer.units == Units::Inch;
    let sheet = compose(burner_file::read(&arguments.file)?, inch)?;
    Ok(match arguments.answer.format {
        Format::Text => sheet_text(&sheet, &Shop { inch }),
        Format::Json => output::pretty(&sheet_json(&sheet)),
        Format::Csv => csv_of(&setting_rows(&sheet)).map_err(CommandError::table)?,
    })
}
