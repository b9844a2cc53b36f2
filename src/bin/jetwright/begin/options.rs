//! Every question as an option.

use clap::builder::ValueParser;
use clap::{Arg, ArgMatches, Args, Command, FromArgMatches};
use jetwright::file::begin::{Answer, QUESTIONS, Question, Refused};

/// How an option says that something is not known.
pub const UNKNOWN: &str = "unknown";

/// What the options said.
#[derive(Clone, Debug, Default)]
pub struct Said(pub Vec<(&'static Question, Answer)>);

/// The answer that a text is.
pub fn answer(question: &Question, text: &str) -> Result<Answer, Refused> {
    let text = text.trim();
    match question.unknown {
        Some(_) if text == UNKNOWN || text.is_empty() => Ok(Answer::Unknown),
        _ => question.check(text).map(|()| Answer::Said(text.into())),
    }
}

fn reader(question: &'static Question) -> ValueParser {
    ValueParser::new(move |text: &str| match answer(question, text) {
        Ok(_) => Ok(text.to_owned()),
        Err(why) => Err(why.to_string()),
    })
}

impl Args for Said {
    fn augment_args(command: Command) -> Command {
        QUESTIONS.iter().fold(command, |command, question| {
            let cost = question.unknown.map_or(String::new(), |cost| format!(" Unknown: {cost}."));
            let choices = match question.choices {
                [] => String::new(),
                choices => format!(" One of {}.", choices.join(", ")),
            };
            let help = format!("{}{choices}{cost}", question.words);
            command.arg(
                Arg::new(question.key)
                    .long(question.key)
                    .value_name(question.key.to_uppercase().replace('-', "_"))
                    .help(help)
                    .allow_hyphen_values(true)
                    .value_parser(reader(question)),
            )
        })
    }

    fn augment_args_for_update(command: Command) -> Command {
        Self::augment_args(command)
    }
}

impl FromArgMatches for Said {
    fn from_arg_matches(matches: &ArgMatches) -> Result<Self, clap::Error> {
        let given = |question: &'static Question| {
            let text = matches.get_one::<String>(question.key)?;
            Some((question, answer(question, text).ok()?))
        };
        Ok(Self(QUESTIONS.iter().filter_map(given).collect()))
    }

    fn update_from_arg_matches(&mut self, matches: &ArgMatches) -> Result<(), clap::Error> {
        *self = Self::from_arg_matches(matches)?;
        Ok(())
    }
}
