//! What every page ends with.

/// The cautions that always hold.
pub const ALWAYS: [&str; 2] = [
    "Air on and the chamber blown through before gas; gas off before air. Never leave gas on with the blower stopped. \
         Soapy water on every joint. Fresh air and a carbon monoxide alarm. Never heat a cylinder with flame. Dry moulds, \
         dry tools, dry lining.",
    "Estimates for setting a fire that someone watches; this is no flame safeguard. Local codes and a licensed gas \
         fitter decide.",
];
