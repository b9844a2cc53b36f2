//! The pure gases: every constant of each in one row of one table.

#[cfg(not(test))]
mod apart;
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
        #[cfg(not(test))]
        return apart::ATOMS[self as usize];
        #[cfg(test)]
        return self.row().atoms;
    }

    /// Enthalpy and entropy in a flame, where the table has them.
    pub(crate) fn thermochemistry_column(self) -> Option<&'static Thermochemistry> {
        #[cfg(not(test))]
        return apart::THERMOCHEMISTRY[self as usize].as_ref();
        #[cfg(test)]
        return self.row().thermochemistry.as_ref();
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

#[cfg(test)]
mod tests {
    use super::{Property, Species, Supply};

    #[test]
    fn every_fuel_has_every_column_a_fuel_needs() {
        for species in Species::all() {
            let (row, name) = (species.row(), species.name());
            // Whatever it is, it may be a part of a fire and of a cylinder.
            assert!(row.thermochemistry.is_some() && row.liquid.is_some(), "{name}");
            let of_a_fuel = [row.limits.is_some(), row.autoignition.is_some(), row.flame.is_some()];
            assert_eq!(of_a_fuel, [row.atoms.burns(); 3], "{name}");
            // Water's is that of its own condensing.
            let heat = row.gross_molar.iter().all(|&heat| heat > 0.0);
            assert_eq!(heat, row.atoms.burns() || species == Species::Water, "{name}");
        }
        assert_eq!(Property::ALL.len(), 5, "a new property is looked at above");
    }

    #[test]
    fn the_columns_hold_numbers_that_can_be() {
        for species in Species::all() {
            let (row, name) = (species.row(), species.name());
            let heat_capacity = |kelvin: f64| row.heat_capacity.iter().rev().fold(0.0, |sum, part| sum * kelvin + part);
            for (number, low, high) in [
                (row.molar_mass, 2.0, 200.0),
                (heat_capacity(250.0), 2.49, 40.0),
                (heat_capacity(330.0), 2.49, 40.0),
                (row.critical_temperature, 30.0, 700.0),
                (row.critical_pressure, 1e6, 3e7),
                (row.critical_volume, 5e-5, 1e-3),
                (row.acentric_factor, -0.3, 0.6),
                (row.viscosity, 5e-6, 3e-5),
                (row.viscosity_exponent, 0.6, 1.1),
                (row.vapor_pressure.reduced_by[0] / row.critical_temperature, 0.995, 1.005),
                (row.vapor_pressure.reduced_by[1] / row.critical_pressure, 0.97, 1.03),
            ] {
                assert!((low..=high).contains(&number), "{name}: {number}");
            }
            if let Some(limits) = row.limits {
                let [[low, high], [lowest, highest]] = [limits.nfpa, limits.iec];
                // What may burn is the wider.
                assert!(lowest <= low && low < high && high <= highest && highest < 1.0, "{name}");
                assert!((0.04..0.15).contains(&limits.least_oxygen), "{name}");
            }
            if let Some(Supply::Liquefied(liquid)) = row.liquid {
                assert!((250e3..500e3).contains(&liquid.latent_heat), "{name}");
                assert!((400.0..800.0).contains(&liquid.density), "{name}");
                assert!((1900.0..3500.0).contains(&liquid.heat_capacity), "{name}");
            }
        }
    }

    #[test]
    fn every_symbol_and_name_finds_its_own_species() {
        for species in Species::all() {
            assert_eq!(Species::find(species.symbol()), Some(species));
            assert_eq!(Species::find(species.name()), Some(species));
        }
    }

    #[test]
    fn the_molar_masses_are_those_of_the_atoms() {
        // IUPAC standard atomic weights 2011, as ISO 6976:2016 uses them.
        for species in Species::all() {
            let atoms = species.atoms();
            let counts = [atoms.carbon, atoms.hydrogen, atoms.oxygen, atoms.nitrogen, atoms.argon].map(f64::from);
            let weights = [12.0107, 1.00794, 15.9994, 14.0067, 39.948];
            let mass: f64 = counts.iter().zip(weights).map(|(count, weight)| count * weight).sum();
            assert!((mass - species.row().molar_mass).abs() < 1e-4, "{}: {mass}", species.name());
        }
    }
}
