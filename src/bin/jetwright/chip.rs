//! `jetwright chip`.

use std::path::PathBuf;

use clap::Args;
use jetwright::file::burner_file;
use jetwright::report::Shop;
use jetwright::report::render::text;
use jetwright::report::warnings::Warned;

use crate::command_error::CommandError;

#[derive(Debug, Args)]
pub struct ChipArguments {
    /// The burner file; `jetwright blank` prints one to start from.
    pub file: PathBuf,
    /// The file to write.
    #[arg(long)]
    pub image: PathBuf,
}

/// Writes the burner of a file as bytes for a chip.
pub fn run(arguments: &ChipArguments) -> Result<String, CommandError> {
    let (sheet, places) = burner_file::read(&arguments.file)?.evaluate(false)?;
    let Some(chip) = sheet.for_chip() else {
        return Err(places.refuse("blower", "a chip needs the blower and the head").into());
    };
    let mut image = vec![0; chip.image_bytes()];
    chip.write_image(&mut image).expect("the bytes are as many as the image says");
    std::fs::write(&arguments.image, &image).map_err(|error| CommandError::option("image", error))?;
    let written = format!("{} settings in {} bytes: {}\n", chip.settings.len(), image.len(), arguments.image.display());
    let shop = Shop::of(false);
    Ok(written + &text::nodes(&[Warned::of_sheet(&sheet).node(&shop)], &shop))
}
