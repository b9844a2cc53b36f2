//! Why gas is off: what a lockout began with, in a code and in words.

use core::ffi::CStr;
use core::fmt;

use super::crosslimit::MixtureFault;
use super::sensors::SensorFault;
use super::sequence::Event;

/// Why a controller does not ask for gas.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum Reason {
    /// A tick came too late, or the clock went backward or stands still.
    Late,
    /// A sensor, by its place among the readings.
    Sensor(u8, SensorFault),
    /// The air's two readings: they contradict, one is no number, the second is gone, or none is fitted.
    Air(SensorFault),
    /// The air's heat and its volume flow disagree by more than a factor of two.
    AirHeat,
    /// Air reads although the blower is off and has run down: a sensor that is stuck, or a blower that is not off.
    AirWithoutBlower,
    /// Gas and air while they are limited.
    Mixture(MixtureFault),
    /// Gas reads although none is asked for.
    GasUnasked,
    /// The gas did not read what it was set to within the lighting time.
    NotFlowing,
    /// The listed safeguard withdrew its permission at the fire.
    PermissiveLost,
    /// The air fell under its least at the fire.
    AirLost,
}

impl Reason {
    /// What locked out: the event, or where that is a fault, what was at fault.
    pub(super) fn of(event: Event, fault: Option<Reason>) -> Option<Self> {
        match event {
            Event::TooLong => Some(Reason::NotFlowing),
            Event::PermissiveLost => Some(Reason::PermissiveLost),
            Event::AirLost => Some(Reason::AirLost),
            _ => fault,
        }
    }

    /// A number of its own, never given to another: 1 and up. A sensor's place is not in it.
    ///
    /// # Examples
    ///
    /// ```
    /// use jetwright::control::{Reason, SensorFault};
    /// assert_eq!(Reason::Late.code(), 1);
    /// assert_eq!(Reason::Sensor(2, SensorFault::Stuck).code(), 14);
    /// assert_eq!(Reason::AirLost.text(), c"the air fell under its least at the fire");
    /// ```
    #[must_use]
    pub fn code(self) -> u8 {
        match self {
            Reason::Late => 1,
            Reason::AirHeat => 2,
            Reason::AirWithoutBlower => 3,
            Reason::GasUnasked => 4,
            Reason::NotFlowing => 5,
            Reason::PermissiveLost => 6,
            Reason::AirLost => 7,
            Reason::Sensor(_, fault) => 11 + fault as u8,
            Reason::Air(fault) => 21 + fault as u8,
            Reason::Mixture(fault) => 31 + fault as u8,
        }
    }

    /// In words; a sensor's place is not in them.
    #[must_use]
    pub fn text(self) -> &'static CStr {
        match self {
            Reason::Late => c"a tick came too late, or the clock stands still or went backward",
            Reason::Sensor(_, fault) => match fault {
                SensorFault::NotANumber => c"a sensor gives no number",
                SensorFault::OutOfRange => c"a sensor reads outside its range",
                SensorFault::Jumped => c"a sensor changed faster than it can",
                SensorFault::Stuck => c"a sensor is stuck",
                SensorFault::Contradicts | SensorFault::NotFitted => c"a sensor contradicts another",
            },
            Reason::Air(fault) => match fault {
                SensorFault::Contradicts => c"the two air sensors contradict each other",
                SensorFault::NotFitted => c"a second air sensor reads that is not among the settings",
                _ => c"an air sensor gives no number, or the second one is gone",
            },
            Reason::AirHeat => c"the air's heat and its flow disagree by more than a factor of two",
            Reason::AirWithoutBlower => c"air reads although the blower is off: sensor stuck, or blower not off",
            Reason::Mixture(fault) => match fault {
                MixtureFault::Time => c"a time step is no number, or negative",
                MixtureFault::Reading => c"gas or air reads no number, or far below zero",
                MixtureFault::GasContradicts => c"the gas reads what its regulator cannot give",
                MixtureFault::AirContradicts => c"the air reads what its actuator cannot give",
                MixtureFault::OutsideBand => c"the mixture may be outside its band",
            },
            Reason::GasUnasked => c"gas reads although none is asked for: shut its valve by hand",
            Reason::NotFlowing => c"the gas did not read right within the lighting time",
            Reason::PermissiveLost => c"the safeguard withdrew its permission at the fire",
            Reason::AirLost => c"the air fell under its least at the fire",
        }
    }

    /// Which sensor, by its place among the readings; none where it is none of them.
    #[must_use]
    pub fn sensor(self) -> Option<u8> {
        match self {
            Reason::Sensor(place, _) => Some(place),
            _ => None,
        }
    }
}

impl fmt::Display for Reason {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.text().to_str().unwrap_or_default())?;
        self.sensor().map_or(Ok(()), |place| write!(f, " (sensor {place})"))
    }
}

#[cfg(any(test, feature = "capi"))]
/// Every reason, for those that list them: a sensor's at place 0.
pub(crate) const ALL: [Reason; 24] = {
    use SensorFault::{Contradicts, Jumped, NotANumber, NotFitted, OutOfRange, Stuck};
    [
        Reason::Late,
        Reason::AirHeat,
        Reason::AirWithoutBlower,
        Reason::GasUnasked,
        Reason::NotFlowing,
        Reason::PermissiveLost,
        Reason::AirLost,
        Reason::Sensor(0, NotANumber),
        Reason::Sensor(0, OutOfRange),
        Reason::Sensor(0, Jumped),
        Reason::Sensor(0, Stuck),
        Reason::Sensor(0, Contradicts),
        Reason::Sensor(0, NotFitted),
        Reason::Air(NotANumber),
        Reason::Air(OutOfRange),
        Reason::Air(Jumped),
        Reason::Air(Stuck),
        Reason::Air(Contradicts),
        Reason::Air(NotFitted),
        Reason::Mixture(MixtureFault::Time),
        Reason::Mixture(MixtureFault::Reading),
        Reason::Mixture(MixtureFault::GasContradicts),
        Reason::Mixture(MixtureFault::AirContradicts),
        Reason::Mixture(MixtureFault::OutsideBand),
    ]
};

#[cfg(test)]
mod tests {
    use super::ALL;
    use std::collections::BTreeMap;
    use std::string::ToString;

    #[test]
    fn each_reason_has_a_number_of_its_own_and_words() {
        let codes: BTreeMap<u8, _> = ALL.iter().map(|reason| (reason.code(), *reason)).collect();
        assert_eq!(codes.len(), ALL.len());
        assert!(codes.keys().all(|&code| code > 0));
        assert!(ALL.iter().all(|reason| !reason.to_string().is_empty() && reason.text().count_bytes() < 80));
    }
}
