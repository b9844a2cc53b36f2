//! The pure gases: every constant of each in one row of one table.

mod atoms;
mod columns;
mod property;
#[cfg(test)]
pub(crate) mod stand_in;
mod table;

pub(crate) use atoms::Atoms;
pub(crate) use columns::{FlameKind, Limits, Polynomial, SpeciesRow, Supply, Thermochemistry};
pub use property::Property;
pub use table::Species;

use table::{ALL, TABLE};

impl Species {
    /// How many species there are.
    pub const COUNT: usize = ALL.len();

    /// Every species, in the order of the table.
    pub fn all() -> impl Iterator<Item = Species> {
        ALL.iter().copied()
    }

    /// The symbol it is written with in a composition, such as `C3H8` or `nC4`.
    #[must_use]
    pub fn symbol(self) -> &'static str {
        self.row().symbol
    }

    /// Its name in words.
    #[must_use]
    pub fn name(self) -> &'static str {
        self.row().name
    }

    /// The species with this symbol or name, without regard to case.
    ///
    /// ```
    /// use jetwright::gas::Species;
    /// assert_eq!(Species::find("c3h8"), Some(Species::Propane));
    /// assert_eq!(Species::find("n-butane"), Some(Species::NormalButane));
    /// assert_eq!(Species::find("unobtainium"), None);
    /// ```
    #[must_use]
    pub fn find(text: &str) -> Option<Species> {
        Species::all()
            .find(|species| species.symbol().eq_ignore_ascii_case(text) || species.name().eq_ignore_ascii_case(text))
    }

    /// Atoms in its molecule.
    pub(crate) fn atoms(self) -> Atoms {
        self.row().atoms
    }

    /// Everything the table has of it.
    pub(crate) fn row(self) -> &'static SpeciesRow {
        #[cfg(test)]
        if let Some(row) = stand_in::row_of(self) {
            return row;
        }
        in_table(self)
    }
}

/// A species' own row.
pub(crate) const fn in_table(species: Species) -> &'static SpeciesRow {
    &TABLE[species as usize]
}
