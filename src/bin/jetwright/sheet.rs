//! `jetwright sheet`.

use jetwright::sheet::burner_file;

use crate::arguments::SheetArguments;
use crate::command_error::CommandError;

/// The whole sheet of a burner file.
pub fn run(arguments: &SheetArguments) -> Result<String, CommandError> {
    let _burner = burner_file::read(&arguments.file)?;
    let _look = (arguments.answer.units, arguments.answer.format);
    Ok(String::new())
}
