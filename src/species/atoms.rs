//! The atoms of a molecule, and what follows from counting them.

/// Atoms in a molecule.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Atoms {
    pub carbon: u32,
    pub hydrogen: u32,
    pub oxygen: u32,
    pub nitrogen: u32,
    pub argon: u32,
}

/// No atoms: a row names those its molecule has.
pub(super) const NONE: Atoms = Atoms { carbon: 0, hydrogen: 0, oxygen: 0, nitrogen: 0, argon: 0 };

impl Atoms {
    /// Oxygen molecules to burn the molecule: carbon + hydrogen/4 - oxygen/2. Positive for a fuel, zero for what is
    /// inert, negative for what brings oxygen.
    pub const fn oxygen_to_burn(self) -> f64 {
        self.carbon as f64 + 0.25 * self.hydrogen as f64 - 0.5 * self.oxygen as f64
    }

    /// Whether any of it burns: twice the oxygen atoms a molecule takes, in whole numbers.
    pub const fn burns(self) -> bool {
        4 * self.carbon + self.hydrogen > 2 * self.oxygen
    }

    /// Whether it neither burns nor brings oxygen.
    pub const fn is_inert(self) -> bool {
        4 * self.carbon + self.hydrogen == 2 * self.oxygen
    }

    /// Whether nothing in it takes part in burning: nitrogen and argon.
    pub const fn stands_aside(self) -> bool {
        self.carbon + self.hydrogen + self.oxygen == 0
    }
}
