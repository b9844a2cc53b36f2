//! `jetwright sheet`.

use jetwright::file::burner_file;
use jetwright::report::rows::{csv_of, setting_rows, sheet_json};
use jetwright::report::{Extent, Shop, sheet_text};

use crate::arguments::{Format, PageArguments, Units};
use crate::command_error::CommandError;
use crate::output;
use crate::warned::Warned;

/// The sheet of one burner file.
pub fn run(PageArguments { sheet: arguments, wall }: &PageArguments) -> Result<String, CommandError> {
    let extent = if *wall { Extent::Wall } else { Extent::Whole };
    if *wall && arguments.answer.format != Format::Text {
        return Err(CommandError::option("format", "with --wall text alone is accepted").into());
    }
    let inch = arguments.answer.units == Units::Inch;
    let (sheet, _) = burner_file::read(&arguments.file)?.evaluate(inch)?;
    Ok(match arguments.answer.format {
        Format::Text => sheet_text(&sheet, &Shop { inch }, extent),
        Format::Json => output::pretty(&sheet_json(&sheet)),
        Format::Csv => {
            Warned::of_sheet(&sheet).beside(&Shop { inch });
            csv_of(&setting_rows(&sheet)).map_err(CommandError::table)?
        }
    })
}
