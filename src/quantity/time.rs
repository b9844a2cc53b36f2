//! Time.

use super::{additive, quantity, readable};

quantity! {
    /// A span of time.
    Duration, "a time", from_seconds, seconds, "seconds";
    from_minutes, minutes, 60.0, "minutes";
    from_hours, hours, 3600.0, "hours";
}
additive!(Duration);
readable!(
    Duration,
    "a time",
    from_seconds,
    ["min" = 60.0, "minutes" = 60.0, "h" = 3600.0, "hours" = 3600.0, "s" = 1.0]
);
