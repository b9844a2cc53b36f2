//! What the firmware costs, and that the README says so.
