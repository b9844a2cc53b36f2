//! The questions in a terminal.

use inquire::validator::Validation;
use inquire::{InquireError, Select, Text};
use jetwright::file::begin::{Answer, Question};

use super::options::answer;

/// Width of a terminal that every line keeps to.
const WIDTH: usize = 78;
/// The choice that stands for an unknown answer.
const NOT_KNOWN: &str = "I don't know";

/// Asks one question.
pub fn ask(question: &'static Question, trade: &str, place: usize) -> Result<Answer, InquireError> {
    say("");
    say(&format!("{place}. {}", question.help));
    if question.choices.is_empty() {
        say(&format!("   Example: {}", question.example(trade)));
    }
    if let Some(cost) = question.unknown {
        let how = if question.choices.is_empty() { "Leave it empty if you don't know" } else { NOT_KNOWN };
        say(&format!("   {how}: {cost}."));
    }
    if !question.choices.is_empty() {
        let mut choices = question.choices.to_vec();
        choices.extend(question.unknown.map(|_| NOT_KNOWN));
        let chosen = Select::new(question.words, choices).without_help_message().prompt()?;
        return Ok(if chosen == NOT_KNOWN { Answer::Unknown } else { Answer::Said(chosen.into()) });
    }
    let check = move |text: &str| {
        Ok(match answer(question, text) {
            Ok(_) => Validation::Valid,
            Err(why) => Validation::Invalid(why.to_string().into()),
        })
    };
    let text = Text::new(question.words).with_validator(check).prompt()?;
    Ok(answer(question, &text).unwrap_or(Answer::Unknown))
}

/// Prints a text in lines that fit.
pub fn say(text: &str) {
    anstream::eprint!("{}", wrapped(text));
}

/// A text in lines that fit, each as far in as the first.
pub fn wrapped(text: &str) -> String {
    let indent = &text[..text.len() - text.trim_start().len()];
    let (mut lines, mut line) = (String::new(), String::from(indent));
    for word in text.split_whitespace() {
        if line.chars().count() + 1 + word.chars().count() > WIDTH {
            lines.push_str(&line);
            lines.push('\n');
            line = String::from(indent);
        }
        if !line.trim().is_empty() {
            line.push(' ');
        }
        line.push_str(word);
    }
    lines + &line + "\n"
}
