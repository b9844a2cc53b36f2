//! HTML: one page that needs nothing beside it.

pub mod page;

pub use page::render;
