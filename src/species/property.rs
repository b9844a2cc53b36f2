//! The columns that a row of the table may lack.

use core::fmt;

/// A column of the table of species that a row may lack.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum Property {
    /// Enthalpy and entropy over temperature, formation included.
    Thermochemistry,
    /// Whether it is sold as a liquid, and that liquid's latent heat, density and heat capacity.
    Liquid,
    /// Lower and upper limit of burning and the least oxygen.
    BurningLimits,
    /// Temperature at which it lights by itself.
    Autoignition,
    /// The kind of its flame: which constants of burning velocity and delay hold for it.
    Flame,
}

impl Property {
    /// Every one, in the order of the columns.
    pub const ALL: [Property; 5] =
        [Property::Thermochemistry, Property::Liquid, Property::BurningLimits, Property::Autoignition, Property::Flame];
}

impl fmt::Display for Property {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Property::Thermochemistry => "enthalpy of formation and heat capacity up to flame temperature",
            Property::Liquid => "properties of the liquid",
            Property::BurningLimits => "limits of burning",
            Property::Autoignition => "autoignition temperature",
            Property::Flame => "kind of flame (burning velocity and ignition delay)",
        })
    }
}
