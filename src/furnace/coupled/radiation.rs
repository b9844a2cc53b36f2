//! Radiation of burnt gas as a sum of gray gases.

use heapless::Vec;

use crate::scalar::Scalar;

/// Gray gases beside the clear one.
pub const GRAY_GASES: usize = 3;

/// Absorption coefficients, 1/(atm m), and weights b0 to b3 in powers of kelvin, for as much water as carbon dioxide.
///
/// # Source
///
/// Smith, Shen and Friedman, J. Heat Transfer 104 (1982) 602, 600 to 2400 K, 0.001 to 10 atm m.
const EQUAL: [(f64, [f64; 4]); GRAY_GASES] = [
    (0.4303, [5.150e-1, -2.303e-4, 0.9779e-7, -1.494e-11]),
    (7.055, [0.7749e-1, 3.399e-4, -2.297e-7, 3.770e-11]),
    (178.1, [1.907e-1, -1.824e-4, 0.5608e-7, -0.5122e-11]),
];
/// The same for twice as much water.
const TWICE: [(f64, [f64; 4]); GRAY_GASES] = [
    (0.4201, [6.508e-1, -5.551e-4, 3.029e-7, -5.353e-11]),
    (6.516, [-0.2504e-1, 6.112e-4, -3.882e-7, 6.528e-11]),
    (131.9, [2.718e-1, -3.118e-4, 1.221e-7, -1.612e-11]),
];
/// Where the weights are no longer meant, K.
const HOTTEST: f64 = 2500.0;

/// One gray gas: absorption, 1/m, and its weights.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Gray<S> {
    pub(super) absorption: S,
    weights: [S; 4],
}

impl<S: Scalar> Gray<S> {
    /// Weight at a temperature, and its slope.
    pub(super) fn weight(&self, kelvin: S) -> (S, S) {
        let [b0, b1, b2, b3] = self.weights;
        let t = kelvin.smaller(S::c(HOTTEST));
        let value = b0 + t * (b1 + t * (b2 + t * b3));
        (value, b1 + t * (S::c(2.0) * b2 + S::c(3.0) * t * b3))
    }
}

/// A gas that radiates.
#[derive(Clone, Debug, PartialEq)]
pub struct Radiation<S = f64> {
    gray: Vec<Gray<S>, GRAY_GASES>,
    /// Whether the rest of the weights is a clear gas.
    has_clear: bool,
}

impl<S: Scalar> Radiation<S> {
    /// Products with mole fractions of carbon dioxide and water, at a pressure in atmospheres.
    #[must_use]
    pub fn of_products(carbon_dioxide: S, water: S, atmospheres: S) -> Self {
        let sum = carbon_dioxide + water;
        let share = (water / carbon_dioxide - S::one()).clamped(S::zero(), S::one());
        let mut gray = Vec::new();
        for (equal, twice) in EQUAL.iter().zip(&TWICE) {
            let between = |a: f64, b: f64| S::c(a) + share * (S::c(b) - S::c(a));
            let weights = core::array::from_fn(|index| between(equal.1[index], twice.1[index]));
            let absorption = between(equal.0, twice.0) * atmospheres * sum;
            // Three gases and three places.
            let _ = gray.push(Gray { absorption, weights });
        }
        Self { gray, has_clear: true }
    }

    /// One gray gas of an absorption, 1/m.
    #[must_use]
    pub fn gray(absorption: S) -> Self {
        let zero = S::zero();
        let mut gray = Vec::new();
        let _ = gray.push(Gray { absorption, weights: [S::one(), zero, zero, zero] });
        Self { gray, has_clear: false }
    }

    /// A gas that neither radiates nor takes up.
    #[must_use]
    pub fn clear() -> Self {
        Self { gray: Vec::new(), has_clear: true }
    }

    /// The same with its absorption multiplied: thinned by air, or of another emissivity.
    #[must_use]
    pub fn times(&self, factor: S) -> Self {
        let mut other = self.clone();
        for gray in &mut other.gray {
            gray.absorption = gray.absorption * factor;
        }
        other
    }

    /// The same with the weights of its gray gases multiplied: more or less emissive, by the same share anywhere.
    #[must_use]
    pub fn weighted(&self, factor: S) -> Self {
        let mut other = self.clone();
        if self.has_clear {
            for gray in &mut other.gray {
                gray.weights = gray.weights.map(|weight| weight * factor);
            }
        }
        other
    }

    pub(super) fn gases(&self) -> &[Gray<S>] {
        &self.gray
    }

    pub(super) fn has_clear(&self) -> bool {
        self.has_clear
    }

    /// Emissivity over a path: sum of a(T) (1 - exp(-absorption path)).
    ///
    /// # Examples
    ///
    /// ```
    /// use jetwright::furnace::coupled::Radiation;
    /// let gas: Radiation = Radiation::of_products(0.11, 0.155, 1.0);
    /// assert!((gas.emissivity(0.2, 1600.0) - 0.0898).abs() < 2e-4);
    /// ```
    #[must_use]
    pub fn emissivity(&self, path: S, kelvin: S) -> S {
        self.gray.iter().fold(S::zero(), |sum, gray| sum + gray.weight(kelvin).0 * -(-gray.absorption * path).exp_m1())
    }
}

/// Mean beam length, m: 3.6 volume over surface.
#[must_use]
pub fn mean_beam_length<S: Scalar>(volume: S, surface: S) -> S {
    S::c(3.6) * volume / surface
}
