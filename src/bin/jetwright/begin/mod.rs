//! `jetwright begin`.

mod options;
mod terminal;

use std::fs::{self, OpenOptions};
use std::io::{ErrorKind, IsTerminal, Write};
use std::path::{Path, PathBuf};

use clap::Args;
use jetwright::file::begin::{Answers, QUESTIONS, compose, growing, marks};
use jetwright::file::burner_file;

use crate::command_error::CommandError;
use options::Said;
use terminal::{ask, say, wrapped};

/// Options of `jetwright begin`.
#[derive(Debug, Args)]
pub struct BeginArguments {
    /// The burner file to write; it must not be there yet.
    #[arg(default_value = "burner.toml")]
    pub file: PathBuf,
    #[command(flatten)]
    pub said: Said,
}

/// Asks, and writes the file.
pub fn run(BeginArguments { file, said }: &BeginArguments) -> Result<String, CommandError> {
    if file.symlink_metadata().is_ok() {
        return refuse(file, "it is there already and nothing is overwritten: name a new file");
    }
    let kept = kept_beside(file);
    let mut answers = taken_up(&kept)?;
    for (question, answer) in &said.0 {
        answers
            .take(question, answer.clone())
            .map_err(|why| CommandError::Begin(format!("--{}: {why}", question.key)))?;
    }
    // A folder that cannot be written is found before anything is asked.
    keep(&kept, &answers)?;
    if std::io::stdin().is_terminal() && std::io::stderr().is_terminal() {
        ask_all(&mut answers, &kept)?;
    }
    let missing: Vec<_> = QUESTIONS
        .iter()
        .filter(|question| question.unknown.is_none() && answers.answer(question.key).is_none())
        .map(|question| format!("--{} (such as {})", question.key, question.example("")))
        .collect();
    if !missing.is_empty() {
        let _ = fs::remove_file(&kept);
        return Err(CommandError::Begin(format!("without a terminal give {}", missing.join(", "))));
    }
    let text = compose(&answers);
    let name = file.display().to_string();
    // The answers stay, so that one of them can be given anew.
    let (sheet, _) = burner_file::parse(&text, &name)?.evaluate(false)?;
    write_new(file, &text)?;
    let _ = fs::remove_file(&kept);
    let unknown: Vec<_> = QUESTIONS
        .iter()
        .filter(|question| (question.applies)(&answers) && question.is_asked && answers.text(question.key).is_none())
        .filter_map(|question| Some(wrapped(&format!("  {}: {}.", question.key, question.unknown?))))
        .collect();
    let mut told = format!("{name} is written.\n");
    if let Some(growing) = growing(&answers) {
        told.push_str(&wrapped(&format!("At full fire: {growing}.")));
    }
    if !unknown.is_empty() {
        told.push_str(&format!("Not known yet:\n{}", unknown.concat()));
    }
    if let Some(sure) = sheet.sure.iter().flatten().next() {
        let source = sure.gas.largest_uncertainty();
        told.push_str(&wrapped(&format!("Learn next, for the heat: {}: {}.", source.words(), source.remedy())));
        if let Some(source) = sure.air_ratio.map(|sure| sure.largest_uncertainty()) {
            told.push_str(&wrapped(&format!("Learn next, for the air: {}: {}.", source.words(), source.remedy())));
        }
    }
    told.push_str("Marks to make and things to have:\n");
    marks(&sheet).iter().for_each(|line| told.push_str(&wrapped(&format!("  {line}"))));
    told.push_str(&format!(
        "Now: jetwright sheet {name}\nFor an editor: jetwright schema > burner.schema.json, beside it.\n"
    ));
    Ok(told)
}

fn ask_all(answers: &mut Answers, kept: &Path) -> Result<(), CommandError> {
    say("A few questions about your burner. Leave empty what you don't know; Esc stops, and the answers are kept.");
    let mut place = 0;
    while let Some(question) = answers.next() {
        place += 1;
        let trade = answers.text("trade").unwrap_or("").to_owned();
        let answer = ask(question, &trade, place).map_err(|_| {
            let shown = kept.display();
            CommandError::Begin(format!(
                "broken off; the answers are kept in {shown}, and the same command goes on with them"
            ))
        })?;
        let taken = answers.take(question, answer);
        taken.map_err(|why| CommandError::Begin(format!("{}: {why}", question.key)))?;
        keep(kept, answers)?;
        if let Some(growing) = growing(answers) {
            say(&format!("   So far, {growing}."));
        }
    }
    Ok(())
}

fn refuse<T>(file: &Path, why: impl std::fmt::Display) -> Result<T, CommandError> {
    Err(CommandError::Begin(format!("{}: {why}", file.display())))
}

/// Where the answers of a round stand until it is done.
fn kept_beside(file: &Path) -> PathBuf {
    let mut name = file.as_os_str().to_owned();
    name.push(".answers");
    name.into()
}

fn taken_up(kept: &Path) -> Result<Answers, CommandError> {
    match fs::read_to_string(kept) {
        Ok(text) => match Answers::of_kept(&text) {
            Ok(answers) => Ok(answers),
            Err(why) => refuse(kept, format!("not the answers of a round, take it away: {why}")),
        },
        Err(error) if error.kind() == ErrorKind::NotFound => Ok(Answers::default()),
        Err(error) => refuse(kept, error),
    }
}

fn keep(kept: &Path, answers: &Answers) -> Result<(), CommandError> {
    fs::write(kept, answers.kept()).or_else(|error| refuse(kept, format!("it cannot be written: {error}")))
}

fn write_new(file: &Path, text: &str) -> Result<(), CommandError> {
    let written = OpenOptions::new().write(true).create_new(true).open(file);
    match written.and_then(|mut written| written.write_all(text.as_bytes())) {
        Ok(()) => Ok(()),
        Err(error) => refuse(file, format!("it cannot be written: {error}")),
    }
}
