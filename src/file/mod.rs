//! The burner file: its text becomes a description, with the place of every field.

pub mod blank;
pub mod burner_file;
pub mod document;
pub mod error;
pub mod measured;
pub mod node;
pub mod page;
pub mod schema;
pub mod typed;

pub use error::{FileError, Places, shorten};
