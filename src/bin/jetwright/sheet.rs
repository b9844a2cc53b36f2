//! `jetwright sheet`.

use std::path::PathBuf;

use clap::Args;
use jetwright::file::{Places, burner_file};
use jetwright::plant::Sheet;
use jetwright::quantity::Unit;
use jetwright::report::render::card::{self, Content};
use jetwright::report::{Shop, sheet_tree};

use crate::command_error::CommandError;
use crate::common::{AnswerArguments, Format};
use crate::output;

/// Options of `jetwright sheet`.
#[derive(Debug, Args)]
pub struct PageArguments {
    /// The burner file; `jetwright blank` prints one to start from. With --card several: one page a burner
    #[arg(required = true, value_name = "FILE")]
    pub files: Vec<PathBuf>,
    #[command(flatten)]
    pub answer: AnswerArguments,
    /// Print the card that hangs beside the furnace only: flame out, three settings, steps, warnings
    #[arg(long)]
    pub card: bool,
}

/// The sheet of one burner file, or the cards of several.
pub fn run(PageArguments { files, answer: asked, card }: &PageArguments) -> Result<String, CommandError> {
    if *card && !asked.is_page() {
        return Err(CommandError::option("format", "with --card text and html are accepted").into());
    }
    if *card {
        return cards(files, asked);
    }
    let [file] = &files[..] else {
        return Err(CommandError::option("card", "several files are accepted with --card alone").into());
    };
    let (sheet, places) = burner_file::read(file)?.evaluate(asked.is_inch())?;
    let shop = output::shop(asked);
    let tree = sheet_tree(&sheet, &shop, gauge_unit(&sheet, &places)).with_gauges(
        &sheet,
        &shop,
        asked.units.is_some(),
        |setting| places.gauge_unit(setting),
    );
    output::print(&tree, &sheet.plant.entries.name, asked)
}

/// The unit that the file writes its gauge in.
fn gauge_unit(sheet: &Sheet, places: &Places) -> Option<&'static Unit> {
    (0..sheet.settings.len()).find_map(|setting| places.gauge_unit(setting))
}

fn cards(files: &[PathBuf], asked: &AnswerArguments) -> Result<String, CommandError> {
    let mut cards = vec![];
    for file in files {
        let (sheet, places) = burner_file::read(file)?.evaluate(asked.is_inch())?;
        let unit = gauge_unit(&sheet, &places);
        let mut shop: Shop = output::shop(asked);
        if let Some(unit) = unit {
            shop = shop.with_gauge(unit, asked.units.is_some());
        }
        cards.push(Content::of(&sheet_tree(&sheet, &shop, unit), &shop));
    }
    Ok(match asked.format {
        Format::Html => card::html::render(&cards).map_err(|refused| {
            let message = format!("the card has no room for \"{}\"; text is accepted", refused.0);
            CommandError::from(CommandError::option("format", message))
        })?,
        _ => cards.iter().map(card::text).collect::<Vec<_>>().join("\u{c}"),
    })
}
