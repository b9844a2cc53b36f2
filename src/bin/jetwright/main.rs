//! The command: the sheet of a burner file, and single questions that need no file.
//!
//! Process control only, never a flame safeguard.

mod air;
mod arguments;
mod begin;
mod blank;
mod chamber;
mod chip;
mod command_error;
mod common;
mod completions;
mod cylinder;
mod flame;
mod flow;
mod jet;
mod line;
mod lining;
mod measured;
mod meter;
mod options;
mod output;
mod setpoints;
mod sheet;
mod weigh;
mod work;

use std::ffi::OsString;
use std::process::ExitCode;

use clap::{CommandFactory, FromArgMatches};

use arguments::{Arguments, Command};
use command_error::CommandError;
use jetwright::file::shorten;

/// The exit code of any bad input.
const BAD_INPUT: u8 = 2;
/// Longest argument accepted, in bytes; a path is the longest there is use for.
const LONGEST: usize = 4096;

fn main() -> ExitCode {
    let answered = answer().and_then(|text| output::write(&text).map_err(CommandError::Output));
    match answered {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => error.report(),
    }
}

fn answer() -> Result<String, CommandError> {
    refuse_overlong(std::env::args_os())?;
    let matches = Arguments::command().try_get_matches().map_err(CommandError::Usage)?;
    let answered = match Arguments::from_arg_matches(&matches).map_err(CommandError::Usage)?.command {
        Command::Sheet(arguments) => sheet::run(&arguments),
        Command::Begin(arguments) => begin::run(&arguments),
        Command::Blank(arguments) => Ok(blank::run(&arguments)),
        Command::Schema => Ok(format!("{:#}\n", jetwright::file::schema::schema())),
        Command::Completions(arguments) => Ok(completions::run(&arguments)),
        Command::Man => completions::man(),
        Command::Flow(arguments) => flow::run(&arguments),
        Command::Jet(arguments) => jet::run(&arguments),
        Command::Air(arguments) => air::run(&arguments),
        Command::Flame(arguments) => flame::run(&arguments),
        Command::Work(arguments) => work::run(&arguments),
        Command::Lining(arguments) => lining::run(&arguments),
        Command::Weigh(arguments) => weigh::run(&arguments),
        Command::Meter(arguments) => meter::run(&arguments),
        Command::Chamber(arguments) => chamber::run(&arguments),
        Command::Chip(arguments) => chip::run(&arguments),
        Command::Setpoints(arguments) => setpoints::run(&arguments),
        Command::Cylinder(arguments) => cylinder::run(&arguments),
        Command::Line(arguments) => line::run(&arguments),
    };
    answered.map_err(|error| match matches.subcommand() {
        Some((_, options)) => error.with_given(options),
        None => error,
    })
}

/// Refuses an argument that no message could sensibly repeat.
fn refuse_overlong(arguments: impl Iterator<Item = OsString>) -> Result<(), CommandError> {
    for argument in arguments {
        if argument.len() > LONGEST {
            let shown = shorten(&argument.to_string_lossy(), 40);
            let message = format!("given {shown}, an argument has at most {LONGEST} bytes\n");
            return Err(CommandError::Usage(clap::Error::raw(clap::error::ErrorKind::ValueValidation, message)));
        }
    }
    Ok(())
}
