//! The sentences.

pub mod always;
pub mod breaches;
pub mod card;
pub mod fire;
pub mod hazards;
pub mod firing;
pub mod procedures;
pub mod refusals;

pub use refusals::advice;
