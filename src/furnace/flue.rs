//! What of a fire stays in a chamber, by the temperature its gases leave at.

use crate::combustion::Reactants;
use crate::error::Result;
use crate::interpolate::polyline::at_share;
use crate::quantity::Temperature;
use crate::scalar::Scalar;

/// Points of the table.
const POINTS: usize = 36;
/// The coolest of them, K, the end of the equilibrium's range, and the step to the next.
const COOLEST: f64 = 600.0;
const STEP: f64 = 50.0;

/// The available heat of a gas and its air over the temperature of the flue, as a table that a chamber's search can
/// ask thousands of times.
///
/// Straight between points 50 K apart, within 0.1 points of percent up to 2 000 K; straight on below 600 K, where
/// nothing comes apart.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AvailableHeat<S = f64> {
    shares: [S; POINTS],
}

impl<S: Scalar> AvailableHeat<S> {
    /// Of a gas with its air: the share of the net heat left, [`Reactants::available_heat`], at each point.
    ///
    /// # Errors
    ///
    /// None for reactants that were accepted.
    pub fn new(reactants: &Reactants<S>) -> Result<Self> {
        let mut shares = [S::zero(); POINTS];
        for (index, share) in shares.iter_mut().enumerate() {
            let kelvin = S::c(COOLEST + STEP * index as f64);
            *share = reactants.available_heat(Temperature::from_kelvin(kelvin))?;
        }
        Ok(Self { shares })
    }

    /// Share of the net heat that stays when the gases leave at a temperature; below zero when it takes more.
    ///
    /// # Examples
    ///
    /// ```
    /// use jetwright::combustion::Reactants;
    /// use jetwright::furnace::AvailableHeat;
    /// use jetwright::quantity::{Length, Temperature};
    /// use jetwright::{Site, gas::{Gas, Species}};
    /// let cold = Temperature::from_celsius(25.0_f64);
    /// let site = Site::at_altitude(Length::from_meters(0.0), cold, 0.0).unwrap();
    /// let reactants = Reactants::new(&Gas::from(Species::Propane), &site, 1.0, cold).unwrap();
    /// let available = AvailableHeat::new(&reactants).unwrap();
    /// // 16.68 kg of products carry 1.53 MJ/kg at 1 523 K, 55 % of 46.35 MJ.
    /// assert!((available.share(Temperature::from_kelvin(1523.0)) - 0.45).abs() < 0.005);
    /// ```
    #[must_use]
    pub fn share(&self, flue: Temperature<S>) -> S {
        self.share_and_slope(flue).0
    }

    /// The same and its slope, 1/K.
    #[must_use]
    pub fn share_and_slope(&self, flue: Temperature<S>) -> (S, S) {
        let place = (flue.kelvin() - S::c(COOLEST)) / S::c(STEP);
        let low = place.smaller(S::c((POINTS - 2) as f64)).whole().min(POINTS as u32 - 2);
        let (from, to) = (self.shares[low as usize], self.shares[low as usize + 1]);
        (at_share(from, to, place - S::count(low)), (to - from) / S::c(STEP))
    }
}
