//! The first burner file by a few questions: what is asked, what an unknown costs, and the file that the answers make.
//!
//! Nothing here knows a terminal, so that a form on a page can ask the same.

mod answers;
mod compose;
mod marks;
mod questions;
mod trades;

pub use answers::{Answer, Answers, Refused};
pub(crate) use compose::example_answers;
pub use compose::{compose, growing};
pub use marks::marks;
pub use questions::{QUESTIONS, Question, question};
pub use trades::{Stage, TRADES, Trade, trade};
