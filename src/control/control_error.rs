//! Why a part of a controller cannot be made.

use core::fmt;

use crate::error::Error;
use crate::limits::Input;

/// Why a table or a limiter cannot be made of what was given.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum ControlError {
    /// What the rooms above answered to an input.
    Refused(Error),
    /// A column does not rise with the heat, so no error between the rows can be bounded.
    NotRising {
        /// Which column.
        column: Input,
        /// The heat it turns back at, watts, net.
        heat: f32,
    },
    /// A setting of the controller that is not finite, has the wrong sign or lies in the wrong order.
    Setting {
        /// What it is called.
        name: &'static str,
    },
    /// A limit of a sensor that is not finite, has the wrong sign or lies in the wrong order.
    Sensor {
        /// The sensor's place among the readings, from 0.
        place: usize,
        /// What the limit is called.
        name: &'static str,
    },
    /// The air-ratio band leaves no room beside the tolerances of readings and actuators.
    BandTooNarrow {
        /// Lowest over target the band's lower end must stay under, and highest over target its upper end must exceed.
        needed: (f32, f32),
    },
}

impl From<Error> for ControlError {
    fn from(error: Error) -> Self {
        ControlError::Refused(error)
    }
}

impl fmt::Display for ControlError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match *self {
            ControlError::Refused(error) => error.fmt(f),
            ControlError::NotRising { column, heat } => {
                write!(f, "{column} does not rise with the heat at {heat} W net")
            }
            ControlError::Setting { name } => write!(f, "{name} is not usable"),
            ControlError::Sensor { place, name } => write!(f, "{name} of sensor {place} is not usable"),
            ControlError::BandTooNarrow { needed: (low, high) } => {
                write!(f, "the air-ratio band must reach below {low:.3} and above {high:.3} times its target")
            }
        }
    }
}

impl core::error::Error for ControlError {}
