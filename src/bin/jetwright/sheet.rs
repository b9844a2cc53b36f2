//! `jetwright sheet`.

use clap::Args;
use jetwright::file::burner_file;
use jetwright::report::{Extent, sheet_tree};

use crate::command_error::CommandError;
use crate::common::FileArguments;
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
    let asked = &arguments.answer;
    if *wall && !asked.is_page() {
        return Err(CommandError::option("format", "with --wall text and html are accepted").into());
    }
    let (sheet, places) = burner_file::read(&arguments.file)?.evaluate(asked.is_inch())?;
    let shop = output::shop(asked);
    let tree = sheet_tree(&sheet, &shop, extent)
        .with_gauges(&sheet, &shop, asked.units.is_some(), |setting| places.gauge_unit(setting));
    output::print(&tree, &sheet.plant.entries.name, asked)
}
