//! A mixture worked out into the numbers the later rooms need.

use super::heating::CombustionReference;
use super::mixture::Mixture;
use super::saturation::{DewPoint, SCALE};
use crate::error::Result;
use crate::limits::{Input, check};
use crate::quantity::{Density, GrossHeatPerMass, HeatRate, MassFlow, NetHeatPerMass, ReferenceState};
use crate::scalar::Scalar;
use crate::species::{Species, SpeciesRow};
use crate::words::words;

/// Molar gas constant, J/(mol K), exact since 2019.
pub(crate) const GAS_CONSTANT: f64 = 8.314_462_618;
/// Temperature the viscosities of the table stand at, K.
const VISCOSITY_TEMPERATURE: f64 = 293.15;

/// A fuel gas ready for flow: build it once, use it for every state.
///
/// # Examples
///
/// ```
/// use jetwright::gas::{Gas, Mixture, Species};
/// use jetwright::quantity::{AbsolutePressure, Temperature};
/// let propane = Gas::new(Mixture::<f64>::pure(Species::Propane));
/// let (pressure, room) = (AbsolutePressure::from_pascals(101_325.0), Temperature::from_celsius(15.56));
/// // 8.66 ft3/lb in the trade's property sheets is 1.850 kg/m3 for their commercial gas; pure propane is 1.895.
/// let density = propane.density(pressure, room).unwrap().kilograms_per_cubic_meter();
/// assert!((density - 1.895).abs() < 0.003);
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Gas<S = f64> {
    pub(super) mixture: Mixture<S>,
    /// kg/kmol.
    molar_mass: S,
    /// Molecules of oxygen a molecule takes.
    oxygen_to_burn: S,
    /// R / M, J/(kg K).
    pub(super) specific_gas_constant: S,
    /// cp/R as a polynomial in T / 300 K.
    pub(super) heat_capacity: [S; 5],
    /// B/R in K/Pa as b0 + b1 x + b2 x^2 + b3 x^3 + b8 x^8, x = 300 K / T.
    pub(super) virial: [S; 5],
    viscosity: S,
    viscosity_exponent: S,
    gross: GrossHeatPerMass<S>,
    net: NetHeatPerMass<S>,
    standard_density: Density<S>,
    pub(super) dew_point: DewPoint<S>,
}

words!(Gas {
    mixture,
    molar_mass,
    oxygen_to_burn,
    specific_gas_constant,
    heat_capacity,
    virial,
    viscosity,
    viscosity_exponent,
    gross,
    net,
    standard_density,
    dew_point
});

impl<S: Scalar> Gas<S> {
    /// Works out a mixture.
    ///
    /// Heating values count at 15 degC (ISO 6976); the second virial coefficient is collapsed into five
    /// coefficients; viscosity is sum(x mu sqrt M) / sum(x sqrt M).
    ///
    /// # Source
    ///
    /// Tsonopoulos, AIChE J. 20 (1974) 263, with the combining rules of Prausnitz; Herning and Zipperer (1936).
    #[must_use]
    pub fn new(mixture: Mixture<S>) -> Self {
        let values = mixture.calorific_values(CombustionReference::Celsius15, ReferenceState::Celsius15);
        let mut power = 1.0;
        let heat_capacity = core::array::from_fn(|index| {
            let scaled = S::c(power);
            power *= SCALE;
            scaled * mixture.mean(|data| data.heat_capacity[index])
        });
        let weight = mixture.mean(|data| root_of(data.molar_mass));
        Self {
            mixture,
            molar_mass: values.molar_mass,
            oxygen_to_burn: mixture.oxygen_to_burn(),
            specific_gas_constant: S::c(GAS_CONSTANT * 1e3) / values.molar_mass,
            heat_capacity,
            virial: virial(&mixture),
            viscosity: mixture.mean(|data| root_of(data.molar_mass) * data.viscosity) / weight,
            viscosity_exponent: mixture.mean(|data| data.viscosity_exponent),
            gross: values.gross_mass,
            net: values.net_mass,
            standard_density: values.density,
            dew_point: DewPoint::new(&mixture),
        }
    }

    /// The same in another number type.
    #[must_use]
    pub fn cast<T: Scalar>(&self) -> Gas<T> {
        let cast = |value: S| T::c(value.to_f64());
        Gas {
            mixture: self.mixture.cast(),
            molar_mass: cast(self.molar_mass),
            oxygen_to_burn: cast(self.oxygen_to_burn),
            specific_gas_constant: cast(self.specific_gas_constant),
            heat_capacity: self.heat_capacity.map(cast),
            virial: self.virial.map(cast),
            viscosity: cast(self.viscosity),
            viscosity_exponent: cast(self.viscosity_exponent),
            gross: self.gross.cast(),
            net: self.net.cast(),
            standard_density: self.standard_density.cast(),
            dew_point: DewPoint { log_pressure: self.dew_point.log_pressure.map(cast) },
        }
    }

    /// Its composition.
    #[must_use]
    pub fn mixture(&self) -> &Mixture<S> {
        &self.mixture
    }
    /// Molar mass, kg/kmol.
    #[must_use]
    pub fn molar_mass(&self) -> S {
        self.molar_mass
    }
    /// Oxygen molecules to burn one molecule of it.
    #[must_use]
    pub fn oxygen_to_burn(&self) -> S {
        self.oxygen_to_burn
    }
    /// R / M, J/(kg K).
    #[must_use]
    pub fn specific_gas_constant(&self) -> S {
        self.specific_gas_constant
    }
    /// Gross heating value at 15 degC.
    #[must_use]
    pub fn gross_heating_value(&self) -> GrossHeatPerMass<S> {
        self.gross
    }
    /// Net heating value at 15 degC.
    #[must_use]
    pub fn net_heating_value(&self) -> NetHeatPerMass<S> {
        self.net
    }
    /// The mass flow that makes a heat, gross or net.
    ///
    /// # Errors
    ///
    /// Heat out of its range.
    pub fn flow_for(&self, heat: HeatRate<S>) -> Result<MassFlow<S>> {
        match heat {
            HeatRate::Gross(heat) => check(Input::HeatRate, heat.watts()).map(|_| self.gross.flow_for(heat)),
            HeatRate::Net(heat) => check(Input::HeatRate, heat.watts()).map(|_| self.net.flow_for(heat)),
        }
    }
    /// Density at 15 degC and 101.325 kPa, from ISO 6976.
    #[must_use]
    pub fn standard_density(&self) -> Density<S> {
        self.standard_density
    }
    /// Dynamic viscosity at low pressure, Pa s: mu(293.15 K) (T / 293.15 K)^n.
    ///
    /// ```
    /// use jetwright::gas::{Gas, Mixture, Species};
    /// use jetwright::quantity::Temperature;
    /// let propane = Gas::new(Mixture::<f64>::pure(Species::Propane));
    /// assert!((propane.viscosity(Temperature::from_kelvin(293.1)) * 1e6 - 8.01).abs() < 0.08);
    /// ```
    #[must_use]
    pub fn viscosity(&self, temperature: crate::quantity::Temperature<S>) -> S {
        // The power by its series: the argument never leaves 0.8 to 1.2.
        let n = self.viscosity_exponent;
        let t = temperature.kelvin() / S::c(VISCOSITY_TEMPERATURE) - S::one();
        let series = S::one() + n * t * (S::one() + S::c(0.5) * (n - S::one()) * t);
        self.viscosity * series
    }
}

/// The square root of a constant of the table.
fn root_of(value: f64) -> f64 {
    Scalar::sqrt(value)
}

/// Second virial coefficient over R, collapsed by powers of 300 K / T.
fn virial<S: Scalar>(mixture: &Mixture<S>) -> [S; 5] {
    let mut sum = [S::zero(); 5];
    for (first, fraction) in mixture.parts() {
        for (second, other_fraction) in mixture.parts() {
            let pair = pair_virial(first.row(), second.row());
            for (total, part) in sum.iter_mut().zip(pair) {
                *total += fraction * other_fraction * S::c(part);
            }
        }
    }
    sum
}

/// The five coefficients of one pair: B pc / (R Tc) = f0 + omega f1 of Tsonopoulos.
fn pair_virial(first: &SpeciesRow, second: &SpeciesRow) -> [f64; 5] {
    let radius = [Scalar::cbrt(first.critical_volume), Scalar::cbrt(second.critical_volume)];
    let mean_volume = (radius[0] + radius[1]) * (radius[0] + radius[1]) * (radius[0] + radius[1]);
    let geometric_volume = root_of(first.critical_volume * second.critical_volume);
    let temperature =
        root_of(first.critical_temperature * second.critical_temperature) * 8.0 * geometric_volume / mean_volume;
    let factor = |data: &SpeciesRow| data.critical_pressure * data.critical_volume / data.critical_temperature;
    let pressure = 4.0 * temperature * (factor(first) + factor(second)) / mean_volume;
    let acentric = 0.5 * (first.acentric_factor + second.acentric_factor);
    let c = temperature / SCALE;
    let (c2, scale) = (c * c, temperature / pressure);
    let c8 = c2 * c2 * c2 * c2;
    [
        scale * (0.1445 + 0.0637 * acentric),
        scale * -0.330 * c,
        scale * (-0.1385 + 0.331 * acentric) * c2,
        scale * (-0.0121 - 0.423 * acentric) * c2 * c,
        scale * (-0.000_607 - 0.008 * acentric) * c8,
    ]
}

impl<S: Scalar> From<Species> for Gas<S> {
    fn from(species: Species) -> Self {
        Self::new(Mixture::pure(species))
    }
}
