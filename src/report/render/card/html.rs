//! The card as HTML.
