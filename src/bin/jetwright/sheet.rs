//! `jetwright sheet`.

use clap::Args;
use jetwright::file::burner_file;
use jetwright::report::{Extent, sheet_tree};

use crate::command_error::CommandError;
use crate::common::{FileArguments, Format, Units};
use crate::output;

/// Options of `jetwright sheet`.
#[derive(Debug, Args)]
pub struct PageArguments {
    #[command(flatten)]
    pub sheet: FileArguments,
    /// Print the page for the wall only: settings, the evening, when it lights, stopping, cautions
    #[arg(long)]
    pub wall: bool,
}

/// The sheet of one burner file.
pub fn run(PageArguments { sheet: arguments, wall }: &PageArguments) -> Result<String, CommandError> {
    let extent = if *wall { Extent::Wall } else { Extent::Whole };
    if *wall && !matches!(arguments.answer.format, Format::Text | Format::Html) {
        return Err(CommandError::option("format", "with --wall text and html are accepted").into());
    }
    let (sheet, _) = burner_file::read(&arguments.file)?.evaluate(arguments.answer.units == Units::Inch)?;
    let tree = sheet_tree(&sheet, &output::shop(&arguments.answer), extent);
    output::print(&tree, &sheet.plant.entries.name, &arguments.answer)
}
