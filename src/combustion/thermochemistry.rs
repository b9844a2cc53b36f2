//! Thermochemistry of what burns and what is left: enthalpy and Gibbs energy of the ideal gases.

use crate::error::Result;
use crate::scalar::Scalar;
use crate::species::{Polynomial, Species, Thermochemistry, in_table};

/// Where one range of temperature ends and the other begins, K.
const MIDDLE: f64 = 1000.0;

/// One substance's fit, in both precisions.
#[derive(Clone, Copy)]
pub(super) struct Fit {
    double: &'static Polynomial,
    single: &'static Polynomial<f32>,
}

impl Fit {
    pub const fn of(found: &'static Thermochemistry) -> Self {
        Self { double: &found.double, single: &found.single }
    }

    fn range<S: Scalar>(self, kelvin: S) -> [S; 7] {
        let (double, single) = if kelvin < S::c(MIDDLE) {
            (&self.double.low, &self.single.low)
        } else {
            (&self.double.high, &self.single.high)
        };
        core::array::from_fn(|index| S::either(double[index], single[index]))
    }

    /// h / RT, formation included.
    pub fn enthalpy<S: Scalar>(self, kelvin: S) -> S {
        let [a1, a2, a3, a4, a5, a6, _] = self.range(kelvin);
        let t = kelvin;
        a1 + t * (a2 * S::c(0.5) + t * (a3 * S::c(1.0 / 3.0) + t * (a4 * S::c(0.25) + t * a5 * S::c(0.2)))) + a6 / t
    }

    /// g / RT at one atmosphere, given ln T.
    pub fn gibbs<S: Scalar>(self, kelvin: S, log: S) -> S {
        let [a1, a2, a3, a4, a5, a6, a7] = self.range(kelvin);
        let t = kelvin;
        // h/RT - s/R, term by term.
        a1 * (S::one() - log)
            - t * (a2 * S::c(0.5) + t * (a3 * S::c(1.0 / 6.0) + t * (a4 * S::c(1.0 / 12.0) + t * a5 * S::c(0.05))))
            + a6 / t
            - a7
    }
}

/// What a flame leaves, in the order of every array of products.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Product {
    /// CO2
    CarbonDioxide,
    /// CO
    CarbonMonoxide,
    /// H2O
    Water,
    /// H2
    Hydrogen,
    /// O2
    Oxygen,
    /// N2
    Nitrogen,
    /// OH
    Hydroxyl,
    /// O
    OxygenAtom,
    /// H
    HydrogenAtom,
    /// NO
    NitricOxide,
    /// Ar
    Argon,
}

impl Product {
    /// How many there are.
    pub const COUNT: usize = 11;
    /// Every one, in order.
    pub const ALL: [Product; Self::COUNT] = [
        Product::CarbonDioxide,
        Product::CarbonMonoxide,
        Product::Water,
        Product::Hydrogen,
        Product::Oxygen,
        Product::Nitrogen,
        Product::Hydroxyl,
        Product::OxygenAtom,
        Product::HydrogenAtom,
        Product::NitricOxide,
        Product::Argon,
    ];

    /// Its formula.
    #[must_use]
    pub const fn symbol(self) -> &'static str {
        match self {
            Product::CarbonDioxide => "CO2",
            Product::CarbonMonoxide => "CO",
            Product::Water => "H2O",
            Product::Hydrogen => "H2",
            Product::Oxygen => "O2",
            Product::Nitrogen => "N2",
            Product::Hydroxyl => "OH",
            Product::OxygenAtom => "O",
            Product::HydrogenAtom => "H",
            Product::NitricOxide => "NO",
            Product::Argon => "Ar",
        }
    }

    pub(super) const fn fit(self) -> Fit {
        Fit { double: &PRODUCTS[self as usize], single: &PRODUCTS_SINGLE[self as usize] }
    }
}

/// h / RT of a species of the gas or the air.
pub(super) fn reactant_enthalpy<S: Scalar>(species: Species, kelvin: S) -> Result<S> {
    Ok(Fit::of(species.thermochemistry()?).enthalpy(kelvin))
}

/// What the products' species have in their table; the four that are no gas of a mixture, here.
const FITS: [Thermochemistry; Product::COUNT] = [
    thermochemistry_of(Species::CarbonDioxide),
    thermochemistry_of(Species::CarbonMonoxide),
    thermochemistry_of(Species::Water),
    thermochemistry_of(Species::Hydrogen),
    thermochemistry_of(Species::Oxygen),
    thermochemistry_of(Species::Nitrogen),
    // GRI-Mech 3.0, as in the data file `gri30.yaml` of Cantera 3.2.0.
    // OH
    Thermochemistry::new(
        [3.99201543, -0.00240131752, 4.61793841e-06, -3.88113333e-09, 1.3641147e-12, 3615.08056, -0.103925458],
        [3.09288767, 0.000548429716, 1.26505228e-07, -8.79461556e-11, 1.17412376e-14, 3858.657, 4.4766961],
    ),
    // O
    Thermochemistry::new(
        [3.1682671, -0.00327931884, 6.64306396e-06, -6.12806624e-09, 2.11265971e-12, 29122.2592, 2.05193346],
        [2.56942078, -8.59741137e-05, 4.19484589e-08, -1.00177799e-11, 1.22833691e-15, 29217.5791, 4.78433864],
    ),
    // H
    Thermochemistry::new(
        [2.5, 7.05332819e-13, -1.99591964e-15, 2.30081632e-18, -9.27732332e-22, 25473.6599, -0.446682853],
        [2.50000001, -2.30842973e-11, 1.61561948e-14, -4.73515235e-18, 4.98197357e-22, 25473.6599, -0.446682914],
    ),
    // NO
    Thermochemistry::new(
        [4.2184763, -0.004638976, 1.1041022e-05, -9.3361354e-09, 2.803577e-12, 9844.623, 2.2808464],
        [3.2606056, 0.0011911043, -4.2917048e-07, 6.9457669e-11, -4.0336099e-15, 9920.9746, 6.3693027],
    ),
    thermochemistry_of(Species::Argon),
];

/// Runs when this compiles: without a product's numbers nothing is built.
const fn thermochemistry_of(species: Species) -> Thermochemistry {
    match in_table(species).thermochemistry {
        Some(found) => found,
        None => panic!("a product of combustion has no thermochemistry in the table of species"),
    }
}

// Apart, so that a chip links those of its own precision only.
static PRODUCTS: [Polynomial; Product::COUNT] = {
    let mut double = [FITS[0].double; Product::COUNT];
    let mut index = 0;
    while index < Product::COUNT {
        double[index] = FITS[index].double;
        index += 1;
    }
    double
};

static PRODUCTS_SINGLE: [Polynomial<f32>; Product::COUNT] = {
    let mut single = [FITS[0].single; Product::COUNT];
    let mut index = 0;
    while index < Product::COUNT {
        single[index] = FITS[index].single;
        index += 1;
    }
    single
};

#[cfg(test)]
mod tests {
    use super::{MIDDLE, Species, reactant_enthalpy};
    use crate::gas::{CombustionReference, GAS_CONSTANT, Mixture};
    use crate::quantity::ReferenceState;

    /// kJ/mol.
    fn enthalpy(species: Species, kelvin: f64) -> f64 {
        1e-3 * GAS_CONSTANT * kelvin * reactant_enthalpy(species, kelvin).unwrap()
    }

    #[test]
    fn the_heat_of_every_fuel_is_that_of_its_enthalpy_of_formation() {
        // Net heating values of ISO 6976:2016 at 25 degC against GRI-Mech 3.0 and NASA. Propane of GRI-Mech differs by
        // 0.04 %, propylene by 0.014 %, the others by 0.003 %.
        let at = |species| enthalpy(species, 298.15);
        for species in Species::all().filter(|species| species.atoms().burns()) {
            let atoms = species.atoms();
            let (carbon, hydrogen) = (f64::from(atoms.carbon), f64::from(atoms.hydrogen));
            let burnt = carbon * at(Species::CarbonDioxide) + 0.5 * hydrogen * at(Species::Water);
            let found = at(species) + atoms.oxygen_to_burn() * at(Species::Oxygen) - burnt;
            let values = Mixture::<f64>::pure(species)
                .calorific_values(CombustionReference::Celsius25, ReferenceState::Celsius15);
            assert!((found / values.net_molar - 1.0).abs() < 5e-4, "{}: {found} kJ/mol", species.name());
        }
    }

    #[test]
    fn both_ranges_of_a_fit_meet_where_one_ends() {
        for species in Species::all() {
            let (below, above) = (enthalpy(species, MIDDLE * (1.0 - 1e-12)), enthalpy(species, MIDDLE));
            assert!((below - above).abs() < 0.02, "{}: {below} and {above} kJ/mol", species.name());
        }
    }
}
