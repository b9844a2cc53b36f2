//! The card: what it says, and its two forms.

mod content;
pub mod html;
mod text;

pub use content::{CardRefused, Content};
pub use text::render as text;
