//! The chamber as the head feels it: the pressure its gases need to leave.

use crate::error::Result;
use crate::gas::GAS_CONSTANT;
use crate::limits::{Input, check};
use crate::quantity::{AbsolutePressure, Area, MassFlow, PressureDifference, Temperature};
use crate::scalar::Scalar;
use crate::words::words;

/// Gas constant of what leaves the fire, J/(kg K): 28.3 kg/kmol, from an air ratio of 0.95 up within 4 % for
/// the named hydrocarbons. Richer products are lighter (propane -2 % at 0.9, -10 % at 0.65; methane -4 and
/// -13 %), those of hydrogen always (-13 % at 1), and the pressure is as much too low (equilibrium at 1500 K).
pub(super) const PRODUCTS_GAS_CONSTANT: f64 = 1e3 * GAS_CONSTANT / 28.3;

/// The opening the chamber's gases leave by.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Exhaust<S = f64> {
    area: Area<S>,
    loss_coefficient: S,
}

words!(Exhaust { area, loss_coefficient });

impl<S: Scalar> Exhaust<S> {
    /// An opening and its loss coefficient; 1.5 is a plain hole, half a head in and one out.
    ///
    /// # Errors
    ///
    /// Area or coefficient out of range.
    pub fn new(area: Area<S>, loss_coefficient: S) -> Result<Self> {
        check(Input::ExhaustArea, area.square_meters())?;
        check(Input::ExhaustLoss, loss_coefficient)?;
        Ok(Self { area, loss_coefficient })
    }

    /// The part of it that one of several streams leaves by, the same loss coefficient on each.
    ///
    /// # Errors
    ///
    /// A part of 0 or less.
    pub fn part(&self, part: S) -> Result<Self> {
        check(Input::Fraction, part - S::c(1e-12))?;
        Ok(Self { area: self.area * part, ..*self })
    }

    /// The same in another number type.
    #[must_use]
    pub fn cast<T: Scalar>(&self) -> Exhaust<T> {
        Exhaust { area: self.area.cast(), loss_coefficient: T::c(self.loss_coefficient.to_f64()) }
    }

    /// Pressure in the chamber above the room: zeta rho v^2 / 2 of the hot gases in the opening.
    ///
    /// # Examples
    ///
    /// ```
    /// use jetwright::burner::Exhaust;
    /// use jetwright::quantity::{AbsolutePressure, Area, MassFlow, Temperature};
    /// let flue = Exhaust::new(Area::from_square_centimeters(20.0_f64), 1.5).unwrap();
    /// // 9.9 g/s at 1600 K and 835 hPa: 0.178 kg/m3, 27.9 m/s, 1.5 heads of 69 Pa.
    /// let pressure = flue.pressure(
    ///     MassFlow::from_grams_per_second(9.9),
    ///     AbsolutePressure::from_hectopascals(835.0),
    ///     Temperature::from_kelvin(1600.0),
    /// );
    /// assert!((pressure.pascals() - 104.0).abs() < 2.0);
    /// ```
    #[must_use]
    pub fn pressure(
        &self,
        gases: MassFlow<S>,
        ambient: AbsolutePressure<S>,
        temperature: Temperature<S>,
    ) -> PressureDifference<S> {
        let density = ambient.pascals() / (S::c(PRODUCTS_GAS_CONSTANT) * temperature.kelvin());
        let flux = gases.kilograms_per_second() / self.area.square_meters();
        PressureDifference::from_pascals(S::c(0.5) * self.loss_coefficient * flux.squared() / density)
    }
}
