//! One file a format: each renders the same tree.

pub mod card;
pub mod cells;
pub mod csv;
pub mod drawing;
pub mod facts;
pub mod html;
pub mod json;
pub mod keys;
pub mod layout;
pub mod table;
pub mod text;

#[cfg(test)]
mod tests;
