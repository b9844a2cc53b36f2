//! The jet at work: bore, gas and pressures to flow, heat and thrust.

use super::bore::Bore;
use super::discharge::discharge;
use super::stream::Stream;
use crate::error::{Error, Result};
use crate::gas::Gas;
use crate::limits::{Input, check};
use crate::quantity::{
    AbsolutePressure, ActualVolumeFlow, Density, Force, GaugePressure, GrossHeatRate, Length, MassFlow, NetHeatRate,
    PressureDifference, ReferenceState, Speed, StandardVolumeFlow, Temperature,
};
use crate::scalar::Scalar;
use crate::words::{Words, words};

/// The gas before the jet, and the air it blows into.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Supply<S = f64> {
    /// Pressure of the air around.
    pub ambient: AbsolutePressure<S>,
    /// What the gauge before the jet reads.
    pub gauge: GaugePressure<S>,
    /// Static pressure of the air stream the jet stands in; zero in the open.
    pub back: GaugePressure<S>,
    /// Temperature of the gas before the jet.
    pub temperature: Temperature<S>,
}

words!(Supply { ambient, gauge, back, temperature });

/// Where the discharge coefficient comes from.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub enum Coefficient<S = f64> {
    /// The model of this room.
    #[default]
    Model,
    /// The model's times a factor that a measurement gave.
    Corrected {
        /// Gas passed over the model's.
        factor: S,
        /// Its spread at two standard deviations, as a share.
        uncertainty: S,
    },
    /// A measured value, the same at every pressure.
    Measured(S),
    /// A measured value at one gauge pressure; elsewhere it follows the model's dependence on pressure.
    MeasuredAt {
        /// The coefficient.
        value: S,
        /// The supply it was measured at.
        supply: Supply<S>,
    },
}

impl<S: Scalar> Words for Coefficient<S> {
    fn write(&self, put: &mut impl FnMut(f32)) {
        match self {
            Coefficient::Model => put(0.0),
            Coefficient::Measured(value) => {
                put(1.0);
                value.write(put);
            }
            Coefficient::MeasuredAt { value, supply } => {
                put(2.0);
                value.write(put);
                supply.write(put);
            }
            Coefficient::Corrected { factor, uncertainty } => {
                put(3.0);
                factor.write(put);
                uncertainty.write(put);
            }
        }
    }
    fn read(next: &mut impl FnMut() -> Option<f32>) -> Option<Self> {
        Some(match next()? as u32 {
            0 => Coefficient::Model,
            1 => Coefficient::Measured(Words::read(next)?),
            2 => Coefficient::MeasuredAt { value: Words::read(next)?, supply: Words::read(next)? },
            3 => Coefficient::Corrected { factor: Words::read(next)?, uncertainty: Words::read(next)? },
            _ => return None,
        })
    }
}

/// One jet, or several equal ones.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Jet<S = f64> {
    /// The bore of each.
    pub bore: Bore<S>,
    /// How many.
    pub count: S,
    /// Where the coefficient comes from.
    pub coefficient: Coefficient<S>,
}

words!(Jet { bore, count, coefficient });

/// What a jet passes: all jets together, unless said.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct JetFlow<S = f64> {
    /// Gas passed.
    pub mass_flow: MassFlow<S>,
    /// Gas passed, counted at 15 degC and 101.325 kPa.
    pub standard_volume_flow: StandardVolumeFlow<S>,
    /// Gas passed, at the state before the jet.
    pub actual_volume_flow: ActualVolumeFlow<S>,
    /// Its heat, gross.
    pub heat_gross: GrossHeatRate<S>,
    /// Its heat, net.
    pub heat_net: NetHeatRate<S>,
    /// Whether the gas reaches the speed of sound in a lossless nozzle of this supply. A square bore chokes a
    /// little later, and a sharp plate keeps gaining.
    pub choked: bool,
    /// Flow over the lossless flow.
    pub discharge_coefficient: S,
    /// Spread of the coefficient at two standard deviations, as a share of it.
    pub coefficient_uncertainty: S,
    /// Lossless flow over area, kg/(s m2).
    pub mass_flux: S,
    /// Speed at the end of the bore.
    pub exit_speed: Speed<S>,
    /// Momentum and pressure leaving with the jet.
    pub thrust: Force<S>,
    /// Reynolds number of each bore.
    pub reynolds_number: S,
    /// Density of the gas before the jet.
    pub supply_density: Density<S>,
}

impl<S: Scalar> Jet<S> {
    /// One jet with the model's coefficient.
    #[must_use]
    pub fn new(bore: Bore<S>) -> Self {
        Self { bore, count: S::one(), coefficient: Coefficient::Model }
    }

    /// The flow: count * coefficient * area * lossless flux.
    ///
    /// # Range
    ///
    /// Gauge, back pressure and gas temperature of [`limits`](crate::limits); a gauge equal to the back
    /// pressure passes nothing.
    ///
    /// # Errors
    ///
    /// An input out of range; [`Error::InvertedPair`] when the back pressure is above the gauge;
    /// [`Error::Liquid`] far into the liquid range.
    ///
    /// # Source
    ///
    /// [`Gas::expand`] and [`discharge`].
    ///
    /// # Examples
    ///
    /// ```
    /// use jetwright::gas::{Gas, Species};
    /// use jetwright::orifice::{BoreLength, BoreShape, Jet, Supply};
    /// use jetwright::quantity::{AbsolutePressure, GaugePressure, Length, Temperature};
    /// let shape = BoreShape::drilled(BoreLength::Fixed(Length::from_millimeters(12.0_f64)));
    /// let jet = Jet::new(shape.with_diameter(Length::from_millimeters(1.8)).unwrap());
    /// let supply = Supply {
    ///     ambient: AbsolutePressure::from_pascals(101_325.0),
    ///     gauge: GaugePressure::from_psi(5.0),
    ///     back: GaugePressure::from_psi(0.0),
    ///     temperature: Temperature::from_celsius(15.0),
    /// };
    /// let flow = jet.flow(&Gas::from(Species::Propane), &supply).unwrap();
    /// // By hand: 0.80 * 2.545 mm2 * sqrt(2 * 34 474 Pa * 2.30 kg/m3) = 0.81 g/s without expansion, with the
    /// // density half way down; expansion to 0.75 of the pressure takes some 13 % of it.
    /// assert!((flow.mass_flow.grams_per_second() - 0.70).abs() < 0.02);
    /// assert!((flow.heat_net.kilowatts() - 46.34 * flow.mass_flow.grams_per_second()).abs() < 0.05);
    /// ```
    pub fn flow(&self, gas: &Gas<S>, supply: &Supply<S>) -> Result<JetFlow<S>> {
        check(Input::JetCount, self.count)?;
        let modeled = Modeled::new(&self.bore, gas, supply)?;
        let (coefficient, uncertainty) = match self.coefficient {
            Coefficient::Model => (modeled.discharge.coefficient, modeled.discharge.uncertainty),
            Coefficient::Corrected { factor, uncertainty } => {
                (modeled.discharge.coefficient * check(Input::CoefficientFactor, factor)?, uncertainty)
            }
            Coefficient::Measured(value) => (check(Input::DischargeCoefficient, value)?, S::c(0.02)),
            Coefficient::MeasuredAt { value, supply } => {
                let there = Modeled::new(&self.bore, gas, &supply)?.discharge.coefficient;
                let value = check(Input::DischargeCoefficient, value)?;
                (modeled.discharge.coefficient * value / there, S::c(0.02))
            }
        };
        Ok(modeled.with_coefficient(self, gas, supply, coefficient, uncertainty))
    }
}

/// The model's answer for one bore.
struct Modeled<S> {
    discharge: super::discharge::Discharge<S>,
    mass_flux: S,
    supply_density: S,
    choked: bool,
}

impl<S: Scalar> Modeled<S> {
    fn new(bore: &Bore<S>, gas: &Gas<S>, supply: &Supply<S>) -> Result<Self> {
        let gauge = check(Input::GaugePressure, supply.gauge.pascals())?;
        let back = check(Input::BackPressure, supply.back.pascals())?;
        let drop = gauge - back;
        if drop < S::zero() {
            return Err(Error::InvertedPair { lesser: Input::BackPressure, greater: Input::GaugePressure });
        }
        let pressure = supply.gauge.to_absolute(supply.ambient);
        let expansion = gas.expand(pressure, PressureDifference::from_pascals(drop), supply.temperature)?;
        let stream = Stream::new(&expansion, drop / pressure.pascals());
        let viscosity = gas.viscosity(supply.temperature);
        // A still gas has no Reynolds number; the least one stands for it.
        let reynolds = (expansion.mass_flux * bore.diameter().meters() / viscosity).larger(S::c(1e-3));
        Ok(Self {
            discharge: discharge(bore, &stream, reynolds)?,
            mass_flux: expansion.mass_flux,
            supply_density: expansion.supply_density.kilograms_per_cubic_meter(),
            choked: expansion.choked,
        })
    }

    fn with_coefficient(
        self,
        jet: &Jet<S>,
        gas: &Gas<S>,
        supply: &Supply<S>,
        coefficient: S,
        uncertainty: S,
    ) -> JetFlow<S> {
        let area = jet.count * jet.bore.area().square_meters();
        let flow = coefficient * area * self.mass_flux;
        let mass_flow = MassFlow::from_kilograms_per_second(flow);
        let pressure = supply.gauge.to_absolute(supply.ambient).pascals();
        let speed = self.discharge.exit_speed * (pressure / self.supply_density).sqrt();
        let thrust = flow * speed + area * self.discharge.exit_push * pressure;
        let standard_volume = mass_flow.at(gas.standard_density()).cubic_meters_per_second();
        let supply_density = Density::from_kilograms_per_cubic_meter(self.supply_density);
        JetFlow {
            mass_flow,
            standard_volume_flow: StandardVolumeFlow::from_cubic_meters_per_second(
                standard_volume,
                ReferenceState::default(),
            ),
            actual_volume_flow: mass_flow.at(supply_density),
            heat_gross: gas.gross_heating_value().of(mass_flow),
            heat_net: gas.net_heating_value().of(mass_flow),
            choked: self.choked,
            discharge_coefficient: coefficient,
            coefficient_uncertainty: uncertainty,
            mass_flux: self.mass_flux,
            exit_speed: Speed::from_meters_per_second(speed),
            thrust: Force::from_newtons(thrust),
            reynolds_number: self.discharge.reynolds_number,
            supply_density,
        }
    }
}

impl<S: Scalar> Jet<S> {
    /// The same jet with another bore diameter of the same shape.
    ///
    /// # Errors
    ///
    /// Bore out of range.
    pub fn with_bore(&self, shape: &super::bore::BoreShape<S>, diameter: Length<S>) -> Result<Self> {
        Ok(Self { bore: shape.with_diameter(diameter)?, ..*self })
    }
}
