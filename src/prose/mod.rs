//! The sentences.

pub mod always;
pub mod fire;
pub mod refusals;

pub use refusals::{advice, jet_key};
