//! A round in a terminal of its own.

use std::path::Path;
use std::process::Command;

use rexpect::session::{PtySession, spawn_command};

use super::{directory, sheet};
use jetwright::file::begin::{Answer, Answers, Question, TRADES};

/// Longest wait for a question, which only a round that hangs takes, ms.
const PATIENCE: u64 = 60_000;

fn round(directory: &Path, file: &str) -> PtySession {
    let mut command = Command::new(env!("CARGO_BIN_EXE_jetwright"));
    command.args(["begin", file]).current_dir(directory).env("TERM", "xterm").env("NO_COLOR", "1");
    spawn_command(command, Some(PATIENCE)).expect("a terminal")
}

/// Answers a question once it stands there.
fn say(session: &mut PtySession, question: &Question, text: &str) {
    let seen = session.exp_string(question.words).expect("the question is asked");
    assert!(!seen.contains("\u{1b}[31m") && !seen.contains("\u{1b}[38;5"), "colored in spite of NO_COLOR: {seen:?}");
    // The prompt is drawn before keys are read; a key that comes early waits in the terminal.
    session.send(text).unwrap();
    session.send("\r").unwrap();
    session.flush().unwrap();
}

#[test]
fn each_trade_is_answered_in_a_terminal_and_its_sheet_prints() {
    let directory = directory("terminal");
    for trade in TRADES {
        let file = format!("{}.toml", trade.key);
        let mut session = round(&directory, &file);
        let mut answers = Answers::default();
        while let Some(question) = answers.next() {
            let is_unknown = ["altitude", "damper", "thickness", "blower-pressure"].contains(&question.key);
            let text = question.example(trade.key);
            let typed = match (is_unknown, question.choices.is_empty()) {
                (false, _) => text,
                (true, true) => "",
                (true, false) => "I don't",
            };
            say(&mut session, question, typed);
            let answer = if is_unknown { Answer::Unknown } else { Answer::Said(text.into()) };
            answers.take(question, answer).unwrap();
        }
        session.exp_string("is written").expect("the round ends");
        session.exp_eof().expect("the command ends");
        assert!(sheet(&directory, &file).contains(trade.stages[0].name));
    }
}

#[test]
fn a_round_that_is_broken_off_goes_on_with_its_answers() {
    let directory = directory("broken-off");
    let mut session = round(&directory, "forge.toml");
    let mut answers = Answers::default();
    for text in ["forge", "300 m", "propane"] {
        let question = answers.next().unwrap();
        say(&mut session, question, text);
        answers.take(question, Answer::Said(text.into())).unwrap();
    }
    session.exp_string(answers.next().unwrap().words).unwrap();
    session.send("\u{3}").unwrap();
    session.flush().unwrap();
    session.exp_string("broken off").expect("it says so");
    session.exp_eof().unwrap();
    let kept = std::fs::read_to_string(directory.join("forge.toml.answers")).unwrap();
    assert_eq!(Answers::of_kept(&kept).unwrap(), answers);
    let mut session = round(&directory, "forge.toml");
    session.exp_string(answers.next().unwrap().words).expect("the next question comes first");
}

#[test]
fn an_answer_that_cannot_be_is_asked_again() {
    let directory = directory("again");
    let mut session = round(&directory, "forge.toml");
    let mut answers = Answers::default();
    say(&mut session, answers.next().unwrap(), "forge");
    answers.take(answers.next().unwrap(), Answer::Said("forge".into())).unwrap();
    say(&mut session, answers.next().unwrap(), "99999 m");
    session.exp_string("accepted from").expect("it says what is accepted");
}
