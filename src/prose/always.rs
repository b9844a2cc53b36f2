//! What every page ends with.

use std::prelude::rust_2024::*;

use crate::report::page::{heading, paragraph};

/// The cautions that always hold.
pub(crate) fn always(page: &mut String) {
    heading(page, "ALWAYS");
    paragraph(
        page,
        "  !",
        "Air on and the chamber blown through before gas; gas off before air. Never leave gas on with the blower stopped. \
         Soapy water on every joint. Fresh air and a carbon monoxide alarm. Never heat a cylinder with flame. Dry moulds, \
         dry tools, dry lining.",
    );
    paragraph(
        page,
        "  !",
        "Estimates for setting a fire that someone watches; this is no flame safeguard. Local codes and a licensed gas \
         fitter decide.",
    );
}
