//! HTML: one page that needs nothing beside it.

pub mod page;

pub(super) use page::document;
pub use page::render;
