//! The ducts after the blower, one behind the other, and the damper among them.

use heapless::Vec;

use super::damper::Damper;
use super::duct::Duct;
use crate::error::{Error, Result};
use crate::limits::Input;
use crate::quantity::{ActualVolumeFlow, Density, PressureDifference};
use crate::scalar::Scalar;
use crate::words::words;

/// Most ducts an [`AirPath`] takes.
pub const DUCT_CAP: usize = Input::DuctCount.range().max as usize;

/// Up to four ducts in series and one damper or none.
///
/// # Examples
///
/// A gate half open in a duct that is all fittings takes the sum of the two coefficients:
///
/// ```
/// use jetwright::air::{AirPath, Damper, DamperKind, Duct};
/// use jetwright::quantity::{ActualVolumeFlow, Density, Length};
/// let (diameter, none) = (Length::from_millimeters(100.0_f64), Length::from_meters(0.0));
/// let duct = Duct::new(diameter, none, none, 0.94).unwrap();
/// let gate = Damper::new(DamperKind::BlastGate, diameter).unwrap();
/// let path = AirPath::new(&[duct], Some(gate)).unwrap();
/// let flow = ActualVolumeFlow::from_cubic_meters_per_second(0.0785398); // 10 m/s, 60 Pa a head
/// let loss = path.loss(flow, Density::from_kilograms_per_cubic_meter(1.2), 18e-6, 0.5).unwrap();
/// assert!((loss.pascals() - (0.94 + 2.1) * 60.0).abs() < 1e-3);
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct AirPath<S = f64> {
    ducts: Vec<Duct<S>, DUCT_CAP>,
    damper: Option<Damper<S>>,
}

words!(AirPath { ducts, damper });

impl<S: Scalar> AirPath<S> {
    /// A path of these ducts and this damper.
    ///
    /// # Errors
    ///
    /// [`Error::OutOfRange`] with more than four ducts.
    pub fn new(ducts: &[Duct<S>], damper: Option<Damper<S>>) -> Result<Self> {
        let too_many = Error::OutOfRange { input: Input::DuctCount, given: ducts.len() as f32 };
        let ducts = Vec::from_slice(ducts).map_err(|_| too_many)?;
        Ok(Self { ducts, damper })
    }

    /// The same in another number type.
    #[must_use]
    pub fn cast<T: Scalar>(&self) -> AirPath<T> {
        AirPath { ducts: self.ducts.iter().map(Duct::cast).collect(), damper: self.damper.as_ref().map(Damper::cast) }
    }

    /// The pressure lost at a damper opening: the sum over ducts and damper, each on its own velocity.
    ///
    /// # Units
    ///
    /// `viscosity` in Pa s; `opening` as [`DamperKind`](super::DamperKind) says, not used without a damper.
    ///
    /// # Errors
    ///
    /// [`Error::NotFinite`] or [`Error::OutOfRange`] for the opening.
    pub fn loss(
        &self,
        flow: ActualVolumeFlow<S>,
        density: Density<S>,
        viscosity: S,
        opening: S,
    ) -> Result<PressureDifference<S>> {
        Ok(self.loss_with(flow, density, viscosity, self.damper_loss_coefficient(opening)?))
    }

    /// The pressure lost with the damper's loss coefficient already known, for use inside a search.
    #[must_use]
    pub fn loss_with(
        &self,
        flow: ActualVolumeFlow<S>,
        density: Density<S>,
        viscosity: S,
        damper_loss_coefficient: S,
    ) -> PressureDifference<S> {
        let none = PressureDifference::from_pascals(S::zero());
        let damper = self.damper.as_ref().map_or(none, |damper| damper.loss(flow, density, damper_loss_coefficient));
        self.ducts.iter().fold(damper, |sum, duct| sum + duct.loss(flow, density, viscosity))
    }

    /// The damper's loss coefficient at an opening; zero without a damper.
    ///
    /// # Errors
    ///
    /// [`Error::NotFinite`] or [`Error::OutOfRange`] for the opening.
    pub fn damper_loss_coefficient(&self, opening: S) -> Result<S> {
        self.damper.as_ref().map_or(Ok(S::zero()), |damper| damper.loss_coefficient(opening))
    }

    /// The duct the air leaves by, if there is one.
    #[must_use]
    pub fn last_duct(&self) -> Option<&Duct<S>> {
        self.ducts.last()
    }

    /// The same with another damper in the old one's place.
    #[must_use]
    pub fn with_damper(&self, damper: Damper<S>) -> Self {
        Self { damper: Some(damper), ..self.clone() }
    }

    /// The same with the damper's loss times a factor.
    ///
    /// # Errors
    ///
    /// A factor out of range.
    pub fn with_damper_loss(&self, factor: S) -> Result<Self> {
        let damper = self.damper.as_ref().map(|damper| damper.corrected(factor)).transpose()?;
        Ok(Self { damper, ..self.clone() })
    }

    /// The damper, if there is one.
    #[must_use]
    pub const fn damper(&self) -> Option<&Damper<S>> {
        self.damper.as_ref()
    }
}

#[cfg(test)]
mod tests {
    use super::super::fixture::{density, flow};
    use super::{AirPath, Duct};
    use crate::air::{Damper, DamperKind};
    use crate::quantity::Length;
    use crate::{Error, Input};

    fn duct(millimeters: f64) -> Duct {
        let meters = Length::from_meters;
        Duct::new(Length::from_millimeters(millimeters), meters(1.5), meters(5e-5), 0.7).unwrap()
    }

    #[test]
    fn losses_in_series_add_each_on_its_own_velocity() {
        let gate = Damper::new(DamperKind::BlastGate, Length::from_millimeters(60.0)).unwrap();
        let path = AirPath::new(&[duct(100.0), duct(60.0)], Some(gate.clone())).unwrap();
        let (at, air, viscosity) = (flow(0.03), density(1.1), 18e-6);
        // A quarter open is 16 heads (chart 330-1) on 0.03 m3/s over the area of 60 mm.
        let velocity = 0.03 / (core::f64::consts::FRAC_PI_4 * 0.06 * 0.06);
        let expected = duct(100.0).loss(at, air, viscosity).pascals()
            + duct(60.0).loss(at, air, viscosity).pascals()
            + 16.0 * 0.5 * 1.1 * velocity * velocity;
        let loss = path.loss(at, air, viscosity, 0.25).unwrap().pascals();
        assert!((loss / expected - 1.0).abs() < 1e-9, "{loss} {expected}");
        assert!(path.loss(at, air, viscosity, 0.05).is_err());
    }

    #[test]
    fn a_path_of_nothing_loses_nothing_and_five_ducts_are_too_many() {
        let none = AirPath::new(&[], None).unwrap();
        assert_eq!(none.loss(flow(0.03), density(1.2), 18e-6, 0.5).unwrap().pascals(), 0.0);
        assert!(AirPath::new(&[duct(60.0); 4], None).is_ok());
        let error = AirPath::new(&[duct(60.0); 5], None).unwrap_err();
        assert_eq!(error, Error::OutOfRange { input: Input::DuctCount, given: 5.0 });
    }
}
