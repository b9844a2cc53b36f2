//! The sentences.

pub mod always;
pub mod breaches;
pub mod fire;
pub mod hazards;
pub mod firing;
pub mod refusals;

pub use refusals::advice;
