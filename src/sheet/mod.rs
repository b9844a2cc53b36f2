//! The burner file of the command, read and checked.

pub mod burner_file;
pub mod document;
pub mod entries;
mod file_error;

pub use file_error::{FileError, Places, shorten};
