//! The card as text: at most 60 lines of 80 columns.

use std::format;
use std::prelude::rust_2024::*;
use std::vec;

use super::content::{Block, Content};

/// Columns of a terminal.
const WIDE: usize = 80;
/// Columns of one of three blocks.
const THIRD: usize = 26;

/// The card.
#[must_use]
pub fn render(card: &Content) -> String {
    let mut lines: Vec<String> = vec![];
    lines.extend(wrapped(&card.name, WIDE).into_iter().take(2));
    lines.extend(wrapped(&card.identity, WIDE));
    let rule = "=".repeat(WIDE);
    lines.push(rule.clone());
    lines.push("FLAME OUT, BLOWER STOPS, POWER FAILS".into());
    let out: Vec<String> = card.flame_out.iter().zip(1..).map(|(text, number)| format!("{number} {text}")).collect();
    let half = out.len().div_ceil(2);
    for row in 0..half {
        let right = out.get(row + half).map_or("", String::as_str);
        lines.push(format!("  {:<36}  {right}", out[row]).trim_end().into());
    }
    lines.extend(wrapped(&card.also, WIDE));
    lines.push(rule);
    blocks(&mut lines, card);
    lines.push(String::new());
    lines.push(card.order.clone());
    steps(&mut lines, "LIGHT", &card.light);
    steps(&mut lines, "STOP", &card.stop);
    lines.push("WARNINGS".into());
    for warning in &card.warnings {
        let word = format!("{:<9}", warning.severity.to_uppercase());
        for (at, text) in wrapped(&warning.text, WIDE - 9).into_iter().enumerate() {
            lines.push(format!("{}{text}", if at == 0 { word.as_str() } else { "         " }));
        }
    }
    lines.extend(wrapped(&card.void, WIDE));
    lines.extend(wrapped(&card.origin, WIDE));
    lines.join("\n") + "\n"
}

fn blocks(lines: &mut Vec<String>, card: &Content) {
    let columns: Vec<Vec<String>> = card.blocks.iter().map(|block| column(block, &card.unit)).collect();
    let high = columns.iter().map(Vec::len).max().unwrap_or(0);
    for row in 0..high {
        let cell = |column: &Vec<String>| {
            let text = column.get(row).map_or("", String::as_str);
            format!("{text:<THIRD$} ")
        };
        lines.push(columns.iter().map(cell).collect::<String>().trim_end().into());
    }
}

fn column(block: &Block, unit: &str) -> Vec<String> {
    let mut lines = vec![block.word.clone()];
    if let Some(missing) = &block.missing {
        lines.push("/// NO SETTING ///".into());
        lines.extend(wrapped(missing, THIRD - 1));
        return lines;
    }
    lines.push(block.name.clone());
    if block.first_try {
        lines.push("FIRST TRY: once only".into());
    }
    lines.extend(block.gauge.as_ref().map(|(number, _)| format!("gauge   {number} {unit}")));
    lines.extend(block.damper.as_ref().map(|(number, _)| format!("damper  {number} %")));
    lines.extend(block.numbers.iter().cloned());
    lines
}

fn steps(lines: &mut Vec<String>, title: &str, steps: &[String]) {
    if steps.is_empty() {
        return;
    }
    lines.push(title.into());
    for (step, number) in steps.iter().zip(1..) {
        for (at, text) in wrapped(step, WIDE - 4).into_iter().enumerate() {
            lines.push(if at == 0 { format!(" {number}  {text}") } else { format!("    {text}") });
        }
    }
}

/// A text in lines of at most so many characters; a longer word is broken.
fn wrapped(text: &str, width: usize) -> Vec<String> {
    let mut lines: Vec<String> = vec![];
    let mut line = String::new();
    for word in text.split_whitespace() {
        let mut word: Vec<char> = word.chars().collect();
        loop {
            let used = line.chars().count();
            let room = width.saturating_sub(if used == 0 { 0 } else { used + 1 });
            if word.len() <= room {
                if used > 0 {
                    line.push(' ');
                }
                line.extend(word);
                break;
            }
            if used > 0 {
                lines.push(std::mem::take(&mut line));
            } else {
                let rest = word.split_off(width);
                lines.push(word.into_iter().collect());
                word = rest;
            }
        }
    }
    if !line.is_empty() {
        lines.push(line);
    }
    lines
}
