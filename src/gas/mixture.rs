//! A composition by mole fractions.

use crate::error::{Error, Result};
use crate::limits::{Input, check};
use crate::scalar::Scalar;
use crate::species::{Species, SpeciesRow};
use crate::words::words;

/// How far fractions may be from adding to one.
pub(crate) const SUM_TOLERANCE: f64 = 1e-4;

/// Mole fractions of the known species, adding to one.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Mixture<S = f64> {
    fractions: [S; Species::COUNT],
}

words!(Mixture { fractions });

impl<S: Scalar> Mixture<S> {
    /// One pure gas.
    #[must_use]
    pub fn pure(species: Species) -> Self {
        let mut fractions = [S::zero(); Species::COUNT];
        fractions[species as usize] = S::one();
        Self { fractions }
    }

    /// A composition. A species named twice is added up; the whole is scaled to add to exactly one.
    ///
    /// # Errors
    ///
    /// A fraction outside 0 to 1; [`Error::FractionsSum`] when they do not add to one within 1e-4.
    ///
    /// # Examples
    ///
    /// ```
    /// use jetwright::gas::{Mixture, Species};
    /// let gas = Mixture::new(&[(Species::Propane, 0.95_f64), (Species::Ethane, 0.05)]).unwrap();
    /// assert!((gas.molar_mass() - (0.95 * 44.09562 + 0.05 * 30.06904)).abs() < 1e-12);
    /// assert!(Mixture::new(&[(Species::Propane, 0.95_f64)]).is_err());
    /// ```
    pub fn new(parts: &[(Species, S)]) -> Result<Self> {
        let mut fractions = [S::zero(); Species::COUNT];
        for &(species, fraction) in parts {
            fractions[species as usize] += check(Input::Fraction, fraction)?;
        }
        let sum = fractions.iter().fold(S::zero(), |sum, &fraction| sum + fraction);
        if (sum - S::one()).abs() > S::c(SUM_TOLERANCE) {
            return Err(Error::FractionsSum { given: sum.to_f32() });
        }
        Ok(Self { fractions: fractions.map(|fraction| fraction / sum) })
    }

    /// Mole fraction of one species.
    #[must_use]
    pub fn fraction(&self, species: Species) -> S {
        self.fractions[species as usize]
    }

    /// The species present, with their fractions.
    pub fn parts(&self) -> impl Iterator<Item = (Species, S)> {
        Species::all().zip(self.fractions).filter(|&(_, fraction)| fraction > S::zero())
    }

    /// The same in another number type.
    #[must_use]
    pub fn cast<T: Scalar>(&self) -> Mixture<T> {
        Mixture { fractions: self.fractions.map(|fraction| T::c(fraction.to_f64())) }
    }

    /// Molar mass, kg/kmol: the mean of the species'.
    #[must_use]
    pub fn molar_mass(&self) -> S {
        self.mean(|data| data.molar_mass)
    }

    /// Mean of a constant of the species, by mole fraction.
    pub(super) fn mean(&self, of: impl Fn(&SpeciesRow) -> f64) -> S {
        self.parts().fold(S::zero(), |sum, (species, fraction)| sum + fraction * S::c(of(species.row())))
    }
}
