//! The columns of the table of species: what each is, its unit, and its source.
//!
//! A plain column is needed of every species, so that the compiler refuses a row without it. An optional one is not
//! needed of every species; what needs it and finds none answers with an error that names species and property.

use super::atoms::Atoms;

/// One row of the table, SI unless said.
#[derive(Clone, Copy, Debug)]
pub(crate) struct SpeciesRow {
    /// What it is written with in a composition.
    pub symbol: &'static str,
    /// In words.
    pub name: &'static str,
    pub atoms: Atoms,
    /// kg/kmol. ISO 6976:2016, table A.1.
    pub molar_mass: f64,
    /// Gross molar heating value, kJ/mol, burnt at 0, 15, 15.55, 20 and 25 degC; zero for what does not burn. ISO
    /// 6976:2016, table 3.
    pub gross_molar: [f64; 5],
    /// Summation factor at 0, 15, 15.55 and 20 degC. ISO 6976:2016, table 2.
    pub summation: [f64; 4],
    /// cp/R of the ideal gas as a polynomial in T, from 200 to 1 000 K. NASA seven-coefficient fits as in the data file
    /// `nasa_gas.yaml` of Cantera 3.2.0.
    pub heat_capacity: [f64; 5],
    /// That of the reference equation, as in chemicals 1.5.2; so the next three.
    pub critical_temperature: f64,
    pub critical_pressure: f64,
    /// m3/mol.
    pub critical_volume: f64,
    pub acentric_factor: f64,
    /// At 293.15 K and low pressure. Reference correlations at zero density as in CoolProp 8.0.0; so the next.
    pub viscosity: f64,
    /// d ln(viscosity) / d ln(T) between 250 and 330 K.
    pub viscosity_exponent: f64,
    pub vapor_pressure: VaporPressure,
    /// Needed of whatever goes into a flame or comes out of it.
    pub thermochemistry: Option<Thermochemistry>,
    /// Needed of whatever is in a cylinder.
    pub liquid: Option<Supply>,
    /// Needed of every fuel; what does not burn has none.
    pub limits: Option<Limits>,
    /// Temperature of a wall above which it lights by itself, Celsius. Needed of every fuel; what does not burn has none.
    /// The lowest published: NFPA 497 (2008) or IEC 60079-20-1:2010, as kept in the library chemicals 1.5.2.
    pub autoignition: Option<f64>,
    /// Needed of every fuel; what does not burn has none.
    pub flame: Option<FlameKind>,
}

/// Vapor pressure: ln(p/pc) = (a x + b x^1.5 + c x^3 + d x^6) / (1 - x), x = 1 - T/Tc.
///
/// McGarry, Ind. Eng. Chem. Process Des. Dev. 22 (1983) 313, as in chemicals 1.5.2.
#[derive(Clone, Copy, Debug)]
pub(crate) struct VaporPressure {
    pub wagner: [f64; 4],
    /// Tc in K and pc in Pa of the fit, which differ a little from the critical point's.
    pub reduced_by: [f64; 2],
}

/// Enthalpy and entropy of the ideal gas, formation included, in both precisions.
///
/// GRI-Mech 3.0 where it has the species, as in the data file `gri30.yaml` of Cantera 3.2.0, else NASA's fit as in its
/// `nasa_gas.yaml`; reference pressure 101 325 Pa.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Thermochemistry {
    pub double: Polynomial,
    pub single: Polynomial<f32>,
}

impl Thermochemistry {
    /// Both ranges of a fit. Rounded when this compiles: the formulas of a chip hold no double.
    pub const fn new(low: [f64; 7], high: [f64; 7]) -> Self {
        let mut single = Polynomial { low: [0.0; 7], high: [0.0; 7] };
        let mut index = 0;
        while index < 7 {
            single.low[index] = low[index] as f32;
            single.high[index] = high[index] as f32;
            index += 1;
        }
        Self { double: Polynomial { low, high }, single }
    }
}

/// Seven coefficients below 1 000 K and seven above: cp/R as a polynomial in T, then those of enthalpy and entropy.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Polynomial<F = f64> {
    pub low: [F; 7],
    pub high: [F; 7],
}

/// How a gas is sold.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Supply {
    /// As a liquid that boils in its cylinder.
    Liquefied(Liquid),
    /// Compressed or through a pipe, or no part of a liquefied fuel: no cylinder of it boils.
    Gaseous,
}

/// What a species is as a liquid at 250 K. The reference equations as in CoolProp 8.0.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Liquid {
    /// J/kg.
    pub latent_heat: f64,
    /// kg/m3.
    pub density: f64,
    /// J/(kg K).
    pub heat_capacity: f64,
}

/// Limits of burning in dry air at room temperature, by volume, as kept in the library chemicals 1.5.2.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Limits {
    /// Lower and upper, NFPA 497 (2008).
    pub nfpa: [f64; 2],
    /// Lower and upper, IEC 60079-20-1 (2010).
    pub iec: [f64; 2],
    /// Oxygen in the mixture below which none burns, with nitrogen as the inert: NFPA 69 (from memory).
    pub least_oxygen: f64,
}

/// What a fuel's flame and its delay before it lights by itself are like; the constants of each kind stand with the
/// formulas.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum FlameKind {
    /// Methane's own.
    Methane,
    /// Propane's, which hold for every heavier saturated hydrocarbon.
    HeavierHydrocarbon,
    /// Faster than the formulas were measured for.
    Unmeasured,
}
