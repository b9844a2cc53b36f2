//! Why the command cannot answer, as one message.

use std::fmt;
use std::io;
use std::process::ExitCode;

use jetwright::sheet::FileError;
use jetwright::sheet::entries::Refusal;

use crate::BAD_INPUT;

/// Why the command cannot answer.
#[derive(Debug)]
pub enum CommandError {
    /// The arguments do not parse; also the way `--help` and `--version` arrive.
    Usage(clap::Error),
    /// An option does not go with the others, or the physics refuses it.
    Option {
        /// The option, without its dashes.
        option: String,
        /// What is wrong and what is accepted.
        accepted: String,
    },
    /// The burner file is refused.
    File(FileError),
    /// Standard output cannot be written.
    Output(io::Error),
}

impl CommandError {
    /// Prints the one message, or the help that was asked for.
    pub fn report(&self) -> ExitCode {
        if let CommandError::Usage(error) = self {
            // Nobody is left to tell when the stream itself is closed.
            let _ = error.print();
            return if error.use_stderr() { BAD_INPUT.into() } else { ExitCode::SUCCESS };
        }
        let style = anstyle::AnsiColor::Red.on_default().bold();
        let message = format!("{style}error:{style:#} {self}\n");
        let _ = io::Write::write_all(&mut anstream::stderr().lock(), message.as_bytes());
        BAD_INPUT.into()
    }

    /// A table that cannot be written, which memory alone can cause.
    pub fn table(error: csv::Error) -> Self {
        CommandError::Output(io::Error::other(error))
    }

    /// The physics refuses what an option gave.
    pub fn option(option: &str, accepted: impl fmt::Display) -> Self {
        CommandError::Option { option: option.replace('_', "-"), accepted: accepted.to_string() }
    }
}

impl fmt::Display for CommandError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            CommandError::Usage(error) => error.fmt(f),
            CommandError::Option { option, accepted } => write!(f, "--{option}: {accepted}"),
            CommandError::File(error) => error.fmt(f),
            CommandError::Output(error) => write!(f, "standard output cannot be written: {error}"),
        }
    }
}

impl From<Refusal> for CommandError {
    fn from(refusal: Refusal) -> Self {
        CommandError::option(refusal.key, refusal.accepted)
    }
}

impl From<FileError> for CommandError {
    fn from(error: FileError) -> Self {
        CommandError::File(error)
    }
}
