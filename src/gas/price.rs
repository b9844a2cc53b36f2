//! What a gas costs by mass, whatever it is sold by.

use super::fuel::Gas;
use super::heating::CombustionReference;
use crate::error::Result;
use crate::limits::{Input, check};
use crate::quantity::{CUBIC_FOOT, Mass, PricePerMass, ReferenceState, THERM, Temperature};
use crate::scalar::Scalar;

/// Joules in a kilowatt-hour.
const KILOWATT_HOUR: f64 = 3.6e6;
/// Cubic meters in a U.S. gallon, 231 cubic inches.
const GALLON: f64 = 231.0 * 0.0254 * 0.0254 * 0.0254;
/// Celsius a liquid is sold at: ISO 5024 and the trade's meters that correct to it.
const LIQUID_SOLD_AT: f64 = 15.0;

/// A price of gas as the bill states it; the currency is the user's own.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum GasPrice<S = f64> {
    /// By mass.
    Mass(PricePerMass<S>),
    /// Money per cubic meter of liquid at 15 degC.
    Liquid(S),
    /// Money per joule of gross heat.
    GrossHeat(S),
    /// Money per joule of net heat.
    NetHeat(S),
    /// Money per cubic meter of gas, counted at a state.
    Volume(S, ReferenceState),
}

impl<S: Scalar> GasPrice<S> {
    /// Money per full cylinder that holds so much.
    #[must_use]
    pub fn per_cylinder(money: S, holds: Mass<S>) -> Self {
        Self::Mass(PricePerMass::from_per_kilogram(money / holds.kilograms()))
    }
    /// Money per U.S. gallon of liquid at 15 degC.
    #[must_use]
    pub fn per_gallon(money: S) -> Self {
        Self::Liquid(money / S::c(GALLON))
    }
    /// Money per liter of liquid at 15 degC.
    #[must_use]
    pub fn per_liter(money: S) -> Self {
        Self::Liquid(money * S::c(1e3))
    }
    /// Money per therm, 100 000 International Table Btu of gross heat.
    #[must_use]
    pub fn per_therm(money: S) -> Self {
        Self::GrossHeat(money / S::c(THERM))
    }
    /// Money per kilowatt-hour of gross heat.
    #[must_use]
    pub fn per_gross_kilowatt_hour(money: S) -> Self {
        Self::GrossHeat(money / S::c(KILOWATT_HOUR))
    }
    /// Money per kilowatt-hour of net heat.
    #[must_use]
    pub fn per_net_kilowatt_hour(money: S) -> Self {
        Self::NetHeat(money / S::c(KILOWATT_HOUR))
    }
    /// Money per cubic meter of gas, counted at a state.
    #[must_use]
    pub fn per_cubic_meter(money: S, counted_at: ReferenceState) -> Self {
        Self::Volume(money, counted_at)
    }
    /// Money per 100 ft3 of gas at 60 degF and 14.696 psia.
    #[must_use]
    pub fn per_hundred_cubic_feet(money: S) -> Self {
        Self::Volume(money / S::c(100.0 * CUBIC_FOOT), ReferenceState::Fahrenheit60)
    }

    /// The price by mass of a gas: by liquid over its density at 15 degC, by heat times its heating value at 15 degC, by
    /// volume over its density at the state it is counted at.
    ///
    /// # Errors
    ///
    /// A price out of the range of [`Input::Price`];
    /// [`Error::NotLiquefied`](crate::Error::NotLiquefied) for a price by liquid of a gas that is not sold as one;
    /// [`Error::MissingProperty`](crate::Error::MissingProperty).
    ///
    /// # Source
    ///
    /// Densities of [`Mixture::saturated`](super::Mixture::saturated) and ISO 6976, heating values of ISO 6976.
    ///
    /// # Examples
    ///
    /// ```
    /// use jetwright::gas::{Gas, GasPrice, Species};
    /// let propane = Gas::<f64>::from(Species::Propane);
    /// // 2.70 a gallon of 3.785 L and 0.5075 kg/L: 1.405 a kilogram.
    /// let price = GasPrice::per_gallon(2.70).per_mass(&propane).unwrap();
    /// assert!((price.per_kilogram() - 1.405).abs() < 0.007);
    /// // 0.10 a kilowatt-hour gross, 13.99 of them in a kilogram.
    /// let price = GasPrice::per_gross_kilowatt_hour(0.10).per_mass(&propane).unwrap();
    /// assert!((price.per_kilogram() - 1.399).abs() < 1e-3);
    /// ```
    pub fn per_mass(self, gas: &Gas<S>) -> Result<PricePerMass<S>> {
        let per_kilogram = match self {
            Self::Mass(price) => price.per_kilogram(),
            Self::Liquid(money) => {
                let sold_at = Temperature::from_celsius(S::c(LIQUID_SOLD_AT));
                money / gas.mixture().saturated(sold_at)?.density.kilograms_per_cubic_meter()
            }
            Self::GrossHeat(money) => money * gas.gross_heating_value().joules_per_kilogram(),
            Self::NetHeat(money) => money * gas.net_heating_value().joules_per_kilogram(),
            Self::Volume(money, counted_at) => {
                let values = gas.mixture().calorific_values(CombustionReference::Celsius15, counted_at);
                money / values.density.kilograms_per_cubic_meter()
            }
        };
        check(Input::Price, per_kilogram).map(PricePerMass::from_per_kilogram)
    }
}

#[cfg(test)]
mod tests {
    use super::GasPrice;
    use crate::error::Error;
    use crate::gas::{Gas, Species};
    use crate::quantity::{Mass, PricePerMass, ReferenceState};

    fn found(price: GasPrice, species: Species) -> f64 {
        price.per_mass(&Gas::from(species)).unwrap().per_kilogram()
    }

    #[test]
    fn every_way_to_sell_a_gas_is_as_worked_by_hand() {
        let (propane, methane) = (Species::Propane, Species::Methane);
        for (price, species, by_hand, share) in [
            (GasPrice::Mass(PricePerMass::from_per_pound(1.0)), propane, 1.0 / 0.453_592_37, 1e-9),
            (GasPrice::per_cylinder(27.0, Mass::from_kilograms(9.0)), propane, 3.0, 1e-9),
            // Liquid propane at 15 degC, the reference equation: 507.5 kg/m3; n-butane 584.1.
            (GasPrice::per_gallon(2.70), propane, 2.70 / (3.785_411_784 * 0.5075), 0.005),
            (GasPrice::per_liter(0.80), propane, 0.80 / 0.5075, 0.005),
            (GasPrice::per_liter(0.80), Species::NormalButane, 0.80 / 0.5841, 0.005),
            // ISO 6976 at 15 degC: propane 50.37 MJ/kg gross, 46.33 net; methane 55.57 gross, 50.03 net.
            (GasPrice::per_therm(1.50), methane, 1.50 * 55.57 / 105.505_585, 2e-3),
            (GasPrice::per_gross_kilowatt_hour(0.10), propane, 0.10 * 50.37 / 3.6, 1e-3),
            (GasPrice::per_net_kilowatt_hour(0.10), propane, 0.10 * 46.33 / 3.6, 1e-3),
            (GasPrice::per_net_kilowatt_hour(0.10), methane, 0.10 * 50.03 / 3.6, 1e-3),
            // Methane: 0.6797 kg/m3 at 15 degC, 0.7175 at 0 degC, 0.04235 lb/ft3 at 60 degF.
            (GasPrice::per_cubic_meter(0.90, ReferenceState::Celsius15), methane, 0.90 / 0.6797, 1e-3),
            (GasPrice::per_cubic_meter(0.90, ReferenceState::Celsius0), methane, 0.90 / 0.7175, 1e-3),
            (GasPrice::per_hundred_cubic_feet(1.20), methane, 1.20 / (4.235 * 0.453_592_37), 2e-3),
        ] {
            let found = found(price, species);
            assert!((found / by_hand - 1.0).abs() < share, "{price:?}: {found} {by_hand}");
        }
    }

    #[test]
    fn natural_gas_has_no_gallon_and_a_price_a_range() {
        let gallon = GasPrice::per_gallon(2.7).per_mass(&Gas::from(Species::Methane));
        assert!(matches!(gallon, Err(Error::NotLiquefied { .. })));
        assert!(GasPrice::per_therm(-1.0).per_mass(&Gas::from(Species::Methane)).is_err());
        assert!(GasPrice::per_cylinder(1.0, Mass::from_kilograms(0.0)).per_mass(&Gas::from(Species::Propane)).is_err());
        let single = GasPrice::per_liter(0.8_f32).per_mass(&Gas::from(Species::Propane)).unwrap();
        assert!(
            (f64::from(single.per_kilogram()) / found(GasPrice::per_liter(0.8), Species::Propane) - 1.0).abs() < 1e-5
        );
    }
}
