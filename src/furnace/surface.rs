//! What a warm outside face gives to a quiet room: free convection and radiation.

use crate::air::air_viscosity;
use crate::error::Result;
use crate::limits::{Input, check};
use crate::quantity::{AbsolutePressure, Length, Temperature};
use crate::scalar::Scalar;

/// Stefan-Boltzmann constant, W/(m2 K4): CODATA 2018.
pub(super) const STEFAN_BOLTZMANN: f64 = 5.670_374_419e-8;
/// Standard gravity, m/s2.
pub(super) const GRAVITY: f64 = 9.806_65;
/// Gas constant of dry air, J/(kg K).
pub(super) const AIR_GAS_CONSTANT: f64 = 287.05;

/// Which way a hot face looks.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Facing {
    /// A wall.
    #[default]
    Side,
    /// A lid.
    Up,
    /// A floor over open air.
    Down,
}

/// The room a wall stands in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Surroundings<S = f64> {
    /// Temperature of its air and of its walls.
    pub air: Temperature<S>,
    /// Pressure of its air.
    pub pressure: AbsolutePressure<S>,
    /// Height of a wall; of a lid or a floor its area over its rim.
    pub height: Length<S>,
    /// Emissivity of the face: 0.9 painted or rusty steel, 0.3 new aluminum paint.
    pub emissivity: S,
    /// Which way the face looks.
    pub facing: Facing,
}

/// Net heat radiated between two temperatures by black faces, W/m2: sigma (a^4 - b^4), written so that a small
/// difference survives single precision.
pub(super) fn black<S: Scalar>(a: S, b: S) -> S {
    S::c(STEFAN_BOLTZMANN) * (a.squared() + b.squared()) * (a + b) * (a - b)
}

/// Conductivity of air, W/(m K): 2.64638e-3 T^1.5 / (T + 245.4 * 10^(-12/T)).
///
/// # Source
///
/// U.S. Standard Atmosphere 1976, equation 53.
pub(super) fn air_conductivity<S: Scalar>(kelvin: S) -> S {
    let tenth = (-S::c(12.0 * core::f64::consts::LN_10) / kelvin).exp();
    S::c(2.646_38e-3) * kelvin * kelvin.sqrt() / (kelvin + S::c(245.4) * tenth)
}

/// Specific heat of air, J/(kg K): 1002.5 + 275e-6 (T - 200)^2, within 1 % from 250 to 800 K (from memory).
pub(super) fn air_specific_heat<S: Scalar>(kelvin: S) -> S {
    S::c(1002.5) + S::c(275e-6) * (kelvin.smaller(S::c(900.0)) - S::c(200.0)).squared()
}

impl<S: Scalar> Surroundings<S> {
    /// A steel shell one meter high: rusty or painted, emissivity 0.9.
    #[must_use]
    pub fn shell(air: Temperature<S>, pressure: AbsolutePressure<S>, height: Length<S>) -> Self {
        Self { air, pressure, height, emissivity: S::c(0.9), facing: Facing::Side }
    }

    /// The same, with every input held to its range.
    ///
    /// # Errors
    ///
    /// The input that is out of its range.
    pub fn checked(self) -> Result<Self> {
        check(Input::AirTemperature, self.air.kelvin())?;
        check(Input::StationPressure, self.pressure.pascals())?;
        check(Input::PanelSize, self.height.meters())?;
        check(Input::Emissivity, self.emissivity)?;
        Ok(self)
    }

    /// Coefficient of free convection, W/(m2 K), properties of air at the film's temperature.
    ///
    /// Side: Nu = (0.825 + 0.387 Ra^(1/6) / (1 + (0.492/Pr)^(9/16))^(8/27))^2. Up: the larger of 0.54 Ra^(1/4) and
    /// 0.15 Ra^(1/3). Down: 0.27 Ra^(1/4).
    ///
    /// # Source
    ///
    /// Churchill and Chu, Int. J. Heat Mass Transfer 18 (1975) 1323, equation 9 (side); McAdams as in Incropera et
    /// al., Fundamentals of Heat and Mass Transfer, 6th ed., equations 9.30 to 9.32 (up, down).
    ///
    /// # Examples
    ///
    /// ```
    /// use jetwright::furnace::Surroundings;
    /// use jetwright::quantity::{AbsolutePressure, Length, Temperature};
    /// let room = Surroundings::shell(
    ///     Temperature::from_celsius(20.0_f64),
    ///     AbsolutePressure::from_pascals(101_325.0),
    ///     Length::from_meters(1.0),
    /// );
    /// // A reference table of air and the same correlation give 5.68 at 100 C.
    /// assert!((room.convection(Temperature::from_celsius(100.0)) - 5.68).abs() < 0.06);
    /// ```
    #[must_use]
    pub fn convection(&self, face: Temperature<S>) -> S {
        let one = S::one();
        let film = S::c(0.5) * (face.kelvin() + self.air.kelvin());
        let conductivity = air_conductivity(film);
        let viscosity = air_viscosity(Temperature::from_kelvin(film));
        let heat = air_specific_heat(film);
        let prandtl = heat * viscosity / conductivity;
        let density = self.pressure.pascals() / (S::c(AIR_GAS_CONSTANT) * film);
        let length = self.height.meters();
        let rise = (face.kelvin() - self.air.kelvin()).abs();
        let reach = length * (density / viscosity);
        let rayleigh = S::c(GRAVITY) * (rise / film) * length * reach.squared() * prandtl;
        let root = rayleigh.cbrt();
        let nusselt = match self.facing {
            Facing::Side => {
                let shape = (one + (S::c(0.492) / prandtl).powf(S::c(9.0 / 16.0))).powf(S::c(8.0 / 27.0));
                (S::c(0.825) + S::c(0.387) * root.sqrt() / shape).squared()
            }
            Facing::Up => (S::c(0.54) * rayleigh.sqrt().sqrt()).larger(S::c(0.15) * root),
            Facing::Down => S::c(0.27) * rayleigh.sqrt().sqrt(),
        };
        nusselt * conductivity / length
    }

    /// Heat an area of the face loses, W/m2: h (T - T_air) + emissivity sigma (T^4 - T_air^4).
    #[must_use]
    pub fn heat_flux(&self, face: Temperature<S>) -> S {
        let (hot, cold) = (face.kelvin(), self.air.kelvin());
        self.convection(face) * (hot - cold) + self.emissivity * black(hot, cold)
    }
}

#[cfg(test)]
mod tests {
    use super::{Facing, Surroundings};
    use crate::quantity::{AbsolutePressure, Length, Temperature};

    #[test]
    fn the_loss_rises_with_the_face_and_is_zero_at_the_room() {
        for facing in [Facing::Side, Facing::Up, Facing::Down] {
            let mut room = Surroundings::shell(
                Temperature::from_celsius(20.0_f64),
                AbsolutePressure::from_hectopascals(835.0),
                Length::from_meters(0.5),
            );
            room.facing = facing;
            assert!(room.heat_flux(room.air).abs() < 1e-9);
            let mut before = 0.0;
            for celsius in 21..600 {
                let flux = room.heat_flux(Temperature::from_celsius(f64::from(celsius)));
                assert!(flux > before, "{facing:?} {celsius}");
                before = flux;
            }
        }
    }
}
