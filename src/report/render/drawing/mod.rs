//! Technical drawings as SVG in millimeters: hatching in place of color, line weights as ISO 128, each with a sentence.

pub mod damper;
pub mod dial;
pub mod lines;
pub mod svg;
pub mod type_width;
