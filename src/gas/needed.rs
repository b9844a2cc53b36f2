//! What not every species has, asked of one that must have it: the value, or the error that names species and property.

use super::mixture::Mixture;
use crate::error::{Error, Result};
use crate::scalar::Scalar;
use crate::species::{FlameKind, Limits, Property, Species, Supply, Thermochemistry};

impl Species {
    /// Enthalpy and entropy in a flame.
    pub(crate) fn thermochemistry(self) -> Result<&'static Thermochemistry> {
        self.needed(Property::Thermochemistry, self.thermochemistry_column())
    }

    /// How it is sold.
    pub(crate) fn supply(self) -> Result<&'static Supply> {
        self.needed(Property::Liquid, self.row().liquid.as_ref())
    }

    /// A fuel's limits of burning.
    pub(crate) fn limits(self) -> Result<&'static Limits> {
        self.needed(Property::BurningLimits, self.row().limits.as_ref())
    }

    /// A fuel's autoignition temperature, Celsius.
    pub(crate) fn autoignition(self) -> Result<f64> {
        self.needed(Property::Autoignition, self.row().autoignition)
    }

    /// What a fuel's flame is like.
    pub(crate) fn flame(self) -> Result<FlameKind> {
        self.needed(Property::Flame, self.row().flame)
    }

    fn needed<T>(self, property: Property, found: Option<T>) -> Result<T> {
        found.ok_or(Error::MissingProperty { species: self, property })
    }
}

impl<S: Scalar> Mixture<S> {
    /// Refuses a gas of which something is not known that a flame, its limits or its lighting need. What asks many
    /// questions, and takes an error of one for "does not burn", asks this first.
    pub(crate) fn known_to_burn(&self) -> Result<()> {
        for (species, _) in self.parts() {
            species.thermochemistry()?;
            if species.atoms().burns() {
                species.limits()?;
                species.autoignition()?;
                species.flame()?;
            }
        }
        Ok(())
    }
}
