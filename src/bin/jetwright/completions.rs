//! `jetwright completions` and `jetwright man`.

use clap::{Args, CommandFactory};
use clap_complete::Shell;

use crate::arguments::Arguments;
use crate::command_error::CommandError;

/// Options of `jetwright completions`.
#[derive(Debug, Args)]
pub struct CompletionArguments {
    /// The shell.
    #[arg(value_enum)]
    pub shell: Shell,
}

/// What completes the command in a shell.
pub fn run(arguments: &CompletionArguments) -> String {
    let mut text = Vec::new();
    clap_complete::generate(arguments.shell, &mut Arguments::command(), "jetwright", &mut text);
    String::from_utf8_lossy(&text).into_owned()
}

/// The manual page.
pub fn man() -> Result<String, CommandError> {
    let mut text = Vec::new();
    clap_mangen::Man::new(Arguments::command()).render(&mut text).map_err(CommandError::Output)?;
    Ok(String::from_utf8_lossy(&text).into_owned())
}
