//! The answers of the command beside the sheet, each as one tree.

pub mod air;
pub mod chamber;
pub mod cylinder;
pub mod flame;
pub mod flow;
pub mod jet;
pub mod line;
pub mod lining;
pub mod measured;
mod measured_answer;
mod measured_words;
pub mod setpoints;
pub mod work;

use crate::report::sheet::SHEET;
use crate::report::tree::Section;

/// Every answer, in the order they are documented in.
pub const ANSWERS: [&Section; 12] = [
    &flow::ANSWER,
    &jet::ANSWER,
    &air::ANSWER,
    &flame::ANSWER,
    &SHEET,
    &work::ANSWER,
    &lining::ANSWER,
    &chamber::ANSWER,
    &measured::ANSWER,
    &setpoints::ANSWER,
    &cylinder::ANSWER,
    &line::ANSWER,
];
