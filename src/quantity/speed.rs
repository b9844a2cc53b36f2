//! Speed, turning speed and force.

use super::{quantity, readable};

quantity! {
    /// A speed.
    Speed, "a speed", from_meters_per_second, meters_per_second, "meters per second";
    from_feet_per_minute, feet_per_minute, 0.3048 / 60.0, "feet per minute";
}

quantity! {
    /// Turns in a time.
    RotationalSpeed, "a turning speed", from_turns_per_second, turns_per_second, "turns per second";
    from_rpm, rpm, 1.0 / 60.0, "turns per minute";
}
readable!(RotationalSpeed, "a turning speed", from_turns_per_second, ["rpm" = 1.0 / 60.0, "Hz" = 1.0]);

quantity! {
    /// A force.
    Force, "a force", from_newtons, newtons, "newtons";
}
