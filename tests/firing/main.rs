//! The coupled furnace held against an independent stiff solver's answers.

mod cases;
mod furnaces;
mod laws;
mod simple;
