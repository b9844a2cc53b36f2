//! What the burner sends through the chamber: the heat it leaves there, its mass and its radiation.

use super::radiation::Radiation;
use crate::combustion::{AirNeed, Product, Reactants, dry_air_enthalpy};
use crate::error::Result;
use crate::furnace::AvailableHeat;
use crate::gas::Gas;
use crate::quantity::Temperature;
use crate::scalar::Scalar;
use crate::site::Site;

/// Temperature at which the products' composition is taken for their radiation, K.
const COMPOSED_AT: f64 = 1600.0;
/// Tables of a fire short of air, from its own air ratio to that of a fire with much: what leaks in burns the rest.
const RICH_TABLES: usize = 5;
/// Air ratio of the last of them.
const RICH_END: f64 = 1.6;
/// Standard atmosphere, Pa.
const ATMOSPHERE: f64 = 101_325.0;

/// A burner's stream by one joule of net heat.
#[derive(Clone, Debug, PartialEq)]
pub struct Stream<S = f64> {
    heat: Heat<S>,
    /// Gas and air by net heat, kg/J.
    pub mass_per_heat: S,
    /// Radiation of the undiluted products.
    pub radiation: Radiation<S>,
}

/// Available heat and the enthalpy of air.
#[derive(Clone, Debug, PartialEq)]
#[allow(clippy::large_enum_variant)]
enum Heat<S> {
    /// Straight from one at the room to zero at the flame's temperature; specific heat of air.
    Linear { room: S, flame: S, air: S },
    /// By equilibrium.
    Products { tables: [AvailableHeat<S>; RICH_TABLES], air_ratio: S, air_share: S, room_enthalpy: S },
}

impl<S: Scalar> Stream<S> {
    /// A gas burnt with air of a site at an air ratio.
    ///
    /// # Errors
    ///
    /// An air ratio beyond the flame's range; a gas that does not burn.
    pub fn new(gas: &Gas<S>, site: &Site<S>, air_ratio: S) -> Result<Self> {
        let mixture = site.air_temperature();
        let reactants = Reactants::new(gas, site, air_ratio, mixture)?;
        let first = AvailableHeat::new(&reactants)?;
        let mut tables = [first; RICH_TABLES];
        if air_ratio < S::one() {
            for (index, table) in tables.iter_mut().enumerate().skip(1) {
                *table = AvailableHeat::new(&Reactants::new(gas, site, rich_ratio(air_ratio, index), mixture)?)?;
            }
        }
        let need = AirNeed::new(gas, site).mass_ratio;
        let air = air_ratio * need;
        let burnt = reactants.products_at(Temperature::from_kelvin(S::c(COMPOSED_AT)))?;
        let atmospheres = site.ambient_pressure().pascals() / S::c(ATMOSPHERE);
        Ok(Self {
            heat: Heat::Products {
                tables,
                air_ratio,
                air_share: air / (S::one() + air),
                room_enthalpy: dry_air_enthalpy(site.air_temperature()),
            },
            mass_per_heat: (S::one() + air) / gas.net_heating_value().joules_per_kilogram(),
            radiation: Radiation::of_products(
                burnt.wet(Product::CarbonDioxide),
                burnt.wet(Product::Water),
                atmospheres,
            ),
        })
    }

    /// A fire whose available heat runs straight from one at the room's temperature to zero at its flame's, with one
    /// specific heat of air; for checks.
    #[must_use]
    pub fn linear(room: S, flame: S, air: S, mass_per_heat: S, radiation: Radiation<S>) -> Self {
        Self { heat: Heat::Linear { room, flame, air }, mass_per_heat, radiation }
    }

    /// Share of the net heat that is left in the chamber by gases that leave at a temperature, and its slope; of a fire
    /// short of air with what leaks in, in units of its own flow, burnt along.
    pub(super) fn available(&self, kelvin: S, leak: S) -> (S, S) {
        match &self.heat {
            Heat::Linear { room, flame, .. } => {
                let slope = -S::one() / (*flame - *room);
                (S::one() + slope * (kelvin - *room), slope)
            }
            Heat::Products { tables, air_ratio, air_share, .. } => {
                if !self.is_rich() || leak <= S::zero() {
                    return tables[0].share_and_slope(Temperature::from_kelvin(kelvin));
                }
                let ratio = (*air_ratio * (S::one() + leak / *air_share)).smaller(S::c(RICH_END));
                let mut index = 0;
                while index + 2 < RICH_TABLES && ratio > rich_ratio(*air_ratio, index + 1) {
                    index += 1;
                }
                let (from, to) = (rich_ratio(*air_ratio, index), rich_ratio(*air_ratio, index + 1));
                let part = (ratio - from) / (to - from);
                let low = tables[index].share_and_slope(Temperature::from_kelvin(kelvin));
                let high = tables[index + 1].share_and_slope(Temperature::from_kelvin(kelvin));
                (low.0 + part * (high.0 - low.0), low.1 + part * (high.1 - low.1))
            }
        }
    }

    /// Whether the fire is short of air, so that air that leaks in burns what is left.
    pub(super) fn is_rich(&self) -> bool {
        matches!(&self.heat, Heat::Products { air_ratio, .. } if *air_ratio < S::one())
    }

    /// Enthalpy of air above the room's, J/kg, and its slope.
    pub(super) fn air_enthalpy(&self, kelvin: S) -> (S, S) {
        match &self.heat {
            Heat::Linear { room, air, .. } => (*air * (kelvin - *room), *air),
            Heat::Products { room_enthalpy, .. } => {
                let step = S::c(0.5);
                let here = dry_air_enthalpy(Temperature::from_kelvin(kelvin));
                let there = dry_air_enthalpy(Temperature::from_kelvin(kelvin + step));
                (here - *room_enthalpy, (there - here) / step)
            }
        }
    }
}

/// Air ratio of a table of a rich fire: closer where it is short of air, the third at just enough.
fn rich_ratio<S: Scalar>(own: S, index: usize) -> S {
    let (one, half) = (S::one(), S::c(0.5));
    match index {
        0 => own,
        1 => half * (own + one),
        2 => one,
        3 => S::c(1.2),
        _ => S::c(RICH_END),
    }
}
