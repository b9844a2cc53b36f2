//! Chemical equilibrium of the ten products at a temperature and a pressure.
//!
//! Two unknowns carry everything: s, the root of the oxygen's pressure, and q, the pressure a mole of atoms' worth
//! of products takes. Given both, each element's balance is linear or quadratic; Newton on the logarithms of the
//! oxygen balance and of the sum of pressures does the rest.

use super::thermochemistry::Product;
use crate::error::{Error, Result};
use crate::limits::Input;
use crate::scalar::Scalar;

/// Most Newton steps; the worst met over the accepted range is 24.
const NEWTON_CAP: usize = 60;
/// Longest step in a logarithm.
const LONGEST_STEP: f64 = 2.0;

/// Moles of atoms, and of argon, that go into a flame; oxygen by what there is over the others' need.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Elements<S> {
    pub carbon: S,
    pub hydrogen: S,
    pub nitrogen: S,
    pub argon: S,
    /// Oxygen atoms over what burns carbon and hydrogen to the end; below zero when short. Kept by itself, since
    /// the difference of the three would lose it near the just-enough mixture.
    pub excess_oxygen: S,
}

/// Where the search stands, to start the next temperature from.
#[derive(Clone, Copy, Debug)]
pub(super) struct Start<S> {
    pub log_s: S,
    pub log_q: S,
}

/// Products in equilibrium: moles of each, and Newton steps taken.
#[derive(Clone, Copy, Debug)]
pub(super) struct Balance<S> {
    pub moles: [S; Product::COUNT],
    pub start: Start<S>,
    pub iterations: usize,
}

/// Equilibrium constants in atmospheres at one temperature.
struct Constants<S> {
    /// CO s / CO2
    carbon_monoxide: S,
    /// H2 s / H2O
    hydrogen: S,
    /// O / s
    oxygen_atom: S,
    /// H / sqrt(H2)
    hydrogen_atom: S,
    /// OH / (sqrt(H2) s)
    hydroxyl: S,
    /// NO / (sqrt(N2) s)
    nitric_oxide: S,
}

impl<S: Scalar> Constants<S> {
    fn at(kelvin: S) -> Self {
        let log = kelvin.ln();
        let gibbs = |product: Product| product.fit().gibbs(kelvin, log);
        let half = S::c(0.5);
        let (oxygen, hydrogen) = (half * gibbs(Product::Oxygen), half * gibbs(Product::Hydrogen));
        let nitrogen = half * gibbs(Product::Nitrogen);
        Self {
            carbon_monoxide: (gibbs(Product::CarbonDioxide) - gibbs(Product::CarbonMonoxide) - oxygen).exp(),
            hydrogen: (gibbs(Product::Water) - S::c(2.0) * hydrogen - oxygen).exp(),
            oxygen_atom: (oxygen - gibbs(Product::OxygenAtom)).exp(),
            hydrogen_atom: (hydrogen - gibbs(Product::HydrogenAtom)).exp(),
            hydroxyl: (hydrogen + oxygen - gibbs(Product::Hydroxyl)).exp(),
            nitric_oxide: (nitrogen + oxygen - gibbs(Product::NitricOxide)).exp(),
        }
    }
}

/// A pressure with its derivatives by ln s and ln q.
#[derive(Clone, Copy)]
struct Partial<S> {
    value: S,
    by_s: S,
    by_q: S,
}

impl<S: Scalar> Partial<S> {
    /// A pressure whose logarithmic derivatives are known.
    fn of(value: S, log_by_s: S, log_by_q: S) -> Self {
        Self { value, by_s: value * log_by_s, by_q: value * log_by_q }
    }
}

impl<S: Scalar> Elements<S> {
    /// A first guess: what oxygen is over, or what is short of it shared between CO and H2.
    pub fn guess(&self, kelvin: S, atmospheres: S) -> Start<S> {
        let constants = Constants::at(kelvin);
        let moles = self.carbon + S::c(0.5) * (self.hydrogen + self.nitrogen) + self.argon;
        let excess = S::c(0.5) * self.excess_oxygen.larger(S::zero());
        let q = atmospheres / (moles + excess);
        let short = (-self.excess_oxygen / (self.carbon + S::c(0.5) * self.hydrogen)).clamped(S::c(1e-3), S::c(0.9));
        let poor = constants.carbon_monoxide.larger(constants.hydrogen) * (S::one() - short) / short;
        let rich = (excess * q).sqrt();
        Start { log_s: poor.smaller(S::c(0.3)).larger(rich).ln(), log_q: q.ln() }
    }

    /// The equilibrium at a temperature and a pressure.
    pub fn equilibrium(&self, kelvin: S, atmospheres: S, start: Start<S>) -> Result<Balance<S>> {
        let constants = Constants::at(kelvin);
        let Start { mut log_s, mut log_q } = start;
        for iterations in 1..=NEWTON_CAP {
            let (s, q) = (log_s.exp(), log_q.exp());
            let pressures = self.pressures(&constants, s, q);
            let sum = |weights: [f32; Product::COUNT]| {
                let mut total = Partial { value: S::zero(), by_s: S::zero(), by_q: S::zero() };
                for (pressure, weight) in pressures.iter().zip(weights) {
                    if weight != 0.0 {
                        let weight = S::from_f32(weight);
                        total.value += weight * pressure.value;
                        total.by_s += weight * pressure.by_s;
                        total.by_q += weight * pressure.by_q;
                    }
                }
                total
            };
            let all = sum([1.0; Product::COUNT]);
            // The oxygen balance less those of carbon and hydrogen: what is free against what is short of it.
            let mut free = sum([0.0, 0.0, 0.0, 0.0, 2.0, 0.0, 0.5, 1.0, 0.0, 1.0, 0.0]);
            let mut short = sum([0.0, 1.0, 0.0, 1.0, 0.0, 0.0, 0.0, 0.0, 0.5, 0.0, 0.0]);
            let given = self.excess_oxygen * q;
            let side = if given > S::zero() { &mut short } else { &mut free };
            side.value += given.abs();
            side.by_q += given.abs();
            let (first, second) = ((free.value / short.value).ln(), (all.value / atmospheres).ln());
            let a = free.by_s / free.value - short.by_s / short.value;
            let b = free.by_q / free.value - short.by_q / short.value;
            let (c, d) = (all.by_s / all.value, all.by_q / all.value);
            let determinant = a * d - b * c;
            let longest = S::c(LONGEST_STEP);
            let step_s = ((b * second - d * first) / determinant).clamped(-longest, longest);
            let step_q = ((c * first - a * second) / determinant).clamped(-longest, longest);
            log_s += step_s;
            log_q += step_q;
            if !(log_s.is_finite() && log_q.is_finite()) {
                break;
            }
            if step_s.abs().larger(step_q.abs()) <= (S::c(200.0) * S::EPSILON).larger(S::c(1e-12)) {
                let moles = pressures.map(|pressure| pressure.value / q);
                return Ok(Balance { moles, start: Start { log_s, log_q }, iterations });
            }
        }
        Err(Error::NotConverged { input: Input::FlameAirRatio })
    }

    /// The pressure of every product for trial s and q.
    fn pressures(&self, constants: &Constants<S>, s: S, q: S) -> [Partial<S>; Product::COUNT] {
        let (zero, half, one, two) = (S::zero(), S::c(0.5), S::one(), S::c(2.0));
        let to_monoxide = constants.carbon_monoxide / s;
        let share = to_monoxide / (one + to_monoxide);
        let dioxide = self.carbon * q / (one + to_monoxide);
        // Hydrogen: A w^2 + B w = atoms, w the root of the water's pressure.
        let to_hydrogen = constants.hydrogen / s;
        let root = to_hydrogen.sqrt();
        let (hydroxyl, atom) = (constants.hydroxyl * root * s, constants.hydrogen_atom * root);
        let (a, b, atoms) = (two * (one + to_hydrogen), hydroxyl + atom, self.hydrogen * q);
        let w = two * atoms / (b + (b.squared() + S::c(4.0) * a * atoms).sqrt());
        // Derivatives of ln w, free of w as a divisor: there may be no hydrogen at all.
        let slope = two * a * w + b;
        let w_by_s = (two * w * to_hydrogen - half * (hydroxyl - atom)) / slope;
        let w_by_q = (a * w + b) / slope;
        // Nitrogen: 2 y^2 + K s y = atoms, y the root of the nitrogen's pressure.
        let oxide = constants.nitric_oxide * s;
        let nitrogen = self.nitrogen * q;
        let y = two * nitrogen / (oxide + (oxide.squared() + S::c(8.0) * nitrogen).sqrt());
        let slope = S::c(4.0) * y + oxide;
        let (y_by_s, y_by_q) = (-oxide / slope, (two * y + oxide) / slope);
        let water = w.squared();
        [
            Partial::of(dioxide, share, one),
            Partial::of(dioxide * to_monoxide, share - one, one),
            Partial::of(water, two * w_by_s, two * w_by_q),
            Partial::of(water * to_hydrogen, two * w_by_s - one, two * w_by_q),
            Partial::of(s.squared(), two, zero),
            Partial::of(y.squared(), two * y_by_s, two * y_by_q),
            Partial::of(hydroxyl * w, w_by_s + half, w_by_q),
            Partial::of(constants.oxygen_atom * s, one, zero),
            Partial::of(atom * w, w_by_s - half, w_by_q),
            Partial::of(oxide * y, y_by_s + one, y_by_q),
            Partial::of(self.argon * q, zero, one),
        ]
    }
}
