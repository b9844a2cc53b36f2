//! Why the command cannot answer, as one message.

use std::fmt;
use std::io;
use std::process::ExitCode;

use clap::ArgMatches;
use jetwright::file::{FileError, shorten};
use jetwright::plant::Refusal;
use jetwright::prose::refusals::reason_words;

use crate::BAD_INPUT;

/// Why the command cannot answer.
#[derive(Debug)]
pub enum CommandError {
    /// The arguments do not parse; also the way `--help` and `--version` arrive.
    Usage(clap::Error),
    /// An option does not go with the others, or the physics refuses it.
    Option(OptionError),
    /// The burner file is refused.
    File(FileError),
    /// The first file cannot be written, or the questions were broken off.
    Begin(String),
    /// Standard output cannot be written.
    Output(io::Error),
}

/// An option that does not go with the others, or that the physics refuses.
#[derive(Debug)]
pub struct OptionError {
    /// The option, without its dashes.
    option: String,
    /// Which of its values, counted from 0, where it may be given several times.
    index: usize,
    /// Its value as it was written.
    given: Option<String>,
    /// What is wrong and what is accepted.
    accepted: String,
    /// The option that this one does not go with, and which of its values.
    beside: Option<(&'static str, usize)>,
}

impl OptionError {
    /// Says which of several values is meant.
    pub fn nth(self, index: usize) -> Self {
        Self { index, ..self }
    }

    /// Says which value of another option it does not go with.
    pub fn beside(self, option: &'static str, index: usize) -> Self {
        Self { beside: Some((option, index)), ..self }
    }
}

impl From<OptionError> for CommandError {
    fn from(error: OptionError) -> Self {
        CommandError::Option(error)
    }
}

impl CommandError {
    /// Puts in what was written on the command line.
    pub fn with_given(self, matches: &ArgMatches) -> Self {
        let CommandError::Option(mut error) = self else { return self };
        let raw = |option: &str, index: usize| {
            let value = matches.try_get_raw(&option.replace('-', "_")).ok()??.nth(index)?;
            Some(format!("\"{}\"", shorten(&value.to_string_lossy(), 60)))
        };
        error.given = raw(&error.option, error.index);
        if let Some((option, index)) = error.beside {
            let value = raw(option, index).unwrap_or_default();
            error.accepted.push_str(&format!("; --{option} is {value}"));
        }
        CommandError::Option(error)
    }

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
    pub fn option(option: &str, accepted: impl fmt::Display) -> OptionError {
        let (option, accepted) = (option.replace('_', "-"), accepted.to_string());
        OptionError { option, index: 0, given: None, accepted, beside: None }
    }
}

impl fmt::Display for CommandError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            CommandError::Usage(error) => error.fmt(f),
            CommandError::Option(error) => {
                let given = error.given.as_deref().unwrap_or("nothing");
                write!(f, "--{}: given {given}, {}", error.option, error.accepted)
            }
            CommandError::File(error) => error.fmt(f),
            CommandError::Begin(message) => f.write_str(message),
            CommandError::Output(error) => write!(f, "standard output cannot be written: {error}"),
        }
    }
}

impl From<Refusal> for CommandError {
    fn from(refusal: Refusal) -> Self {
        CommandError::option(refusal.place.key, reason_words(&refusal.reason)).into()
    }
}

impl From<FileError> for CommandError {
    fn from(error: FileError) -> Self {
        CommandError::File(error)
    }
}
