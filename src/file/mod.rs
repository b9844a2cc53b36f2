//! The burner file: its text becomes a description, with the place of every field.

pub mod burner_file;
pub mod document;
pub mod error;
pub mod furnace;
pub mod keys;
pub mod lighting;
pub mod measured;
pub mod supply;
pub mod uncertainty;

pub use error::{FileError, Places, shorten};
