//! Dampers: what a gate or a butterfly takes, against how far it stands open.

use super::resistance::Resistance;
use crate::error::{Error, Result};
use crate::interpolate::Curve;
use crate::limits::{Input, check};
use crate::quantity::{ActualVolumeFlow, Density, Length, PressureDifference};
use crate::scalar::Scalar;
use crate::solve;
use crate::words::{Words, words};

/// Opening and loss coefficient of a round slide gate, the opening being open height over diameter.
///
/// The last row is not published: the others continued, so that fully open is not quite nothing.
const BLAST_GATE: [(f64, f64); 8] =
    [(0.125, 97.8), (0.25, 17.0), (0.375, 5.52), (0.5, 2.06), (0.625, 0.81), (0.75, 0.26), (0.875, 0.07), (1.0, 0.02)];

/// Degrees from open and loss coefficient of a disc in a round pipe; the last row as above.
const BUTTERFLY: [(f64, f64); 15] = [
    (70.0, 751.0),
    (65.0, 256.0),
    (60.0, 118.0),
    (55.0, 58.8),
    (50.0, 32.6),
    (45.0, 18.7),
    (40.0, 10.8),
    (35.0, 6.22),
    (30.0, 3.91),
    (25.0, 2.51),
    (20.0, 1.54),
    (15.0, 0.90),
    (10.0, 0.52),
    (5.0, 0.24),
    (0.0, 0.10),
];

/// What stands in the duct, and what its opening means.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum DamperKind {
    /// A flat gate slid across: the opening is the open height over the duct's diameter.
    BlastGate,
    /// A disc turned on its middle: the opening is one less the angle from open over 90 degrees.
    Butterfly,
}

impl Words for DamperKind {
    fn write(&self, put: &mut impl FnMut(f32)) {
        put(match self {
            DamperKind::BlastGate => 0.0,
            DamperKind::Butterfly => 1.0,
        });
    }
    fn read(next: &mut impl FnMut() -> Option<f32>) -> Option<Self> {
        Some(if next()? == 0.0 { DamperKind::BlastGate } else { DamperKind::Butterfly })
    }
}

/// A damper in a round duct.
///
/// The logarithm of the published coefficients is joined by a [`Curve`] over the opening, and goes on
/// straight from the last published row (1/8 open, 70 degrees) down to a tenth open.
///
/// # Source
///
/// Weisbach's measurements as handbooks repeat them (from memory). The fits to Miller, Internal Flow
/// Systems (1978), lie within a third of them about half open, within a factor of 2.2 from 0.35 to 0.75
/// open and of 4 beyond: trim a damper by what the fire does.
#[derive(Clone, Debug, PartialEq)]
pub struct Damper<S = f64> {
    kind: DamperKind,
    diameter: Length<S>,
    log_loss: Curve<S>,
}

words!(Damper { kind, diameter, log_loss });

impl<S: Scalar> Damper<S> {
    /// A damper in a duct of this inside diameter.
    ///
    /// # Errors
    ///
    /// [`Error::NotFinite`] or [`Error::OutOfRange`].
    pub fn new(kind: DamperKind, diameter: Length<S>) -> Result<Self> {
        check(Input::DuctDiameter, diameter.meters())?;
        let log_loss = match kind {
            DamperKind::BlastGate => log_curve(BLAST_GATE),
            DamperKind::Butterfly => log_curve(BUTTERFLY.map(|(degrees, loss)| (1.0 - degrees / 90.0, loss))),
        }?;
        Ok(Self { kind, diameter, log_loss })
    }

    /// The same in another number type.
    #[must_use]
    pub fn cast<T: Scalar>(&self) -> Damper<T> {
        Damper { kind: self.kind, diameter: self.diameter.cast(), log_loss: self.log_loss.cast() }
    }

    /// The loss coefficient at an opening, on the velocity in the open duct.
    ///
    /// # Range
    ///
    /// Opening 0.1 to 1; below 0.125 of a gate and 0.222 of a disc no row is published.
    ///
    /// # Errors
    ///
    /// [`Error::NotFinite`] or [`Error::OutOfRange`].
    ///
    /// # Examples
    ///
    /// A gate half open takes 2.06 dynamic heads, a disc at 45 degrees 18.7:
    ///
    /// ```
    /// use jetwright::air::{Damper, DamperKind};
    /// use jetwright::quantity::Length;
    /// let diameter = Length::from_millimeters(76.0_f64);
    /// let gate = Damper::new(DamperKind::BlastGate, diameter).unwrap();
    /// assert!((gate.loss_coefficient(0.5).unwrap() - 2.06).abs() < 1e-9);
    /// let disc = Damper::new(DamperKind::Butterfly, diameter).unwrap();
    /// assert!((disc.loss_coefficient(0.5).unwrap() - 18.7).abs() < 1e-9);
    /// ```
    pub fn loss_coefficient(&self, opening: S) -> Result<S> {
        Ok(self.log_loss.value(check(Input::DamperOpening, opening)?).exp())
    }

    /// The opening that has a loss coefficient: the inverse of [`Damper::loss_coefficient`].
    ///
    /// # Errors
    ///
    /// [`Error::NotFinite`] or [`Error::OutOfRange`]; [`Error::NoSolution`] naming the opening, with the
    /// nearest coefficient the damper reaches.
    ///
    /// # Examples
    ///
    /// ```
    /// use jetwright::air::{Damper, DamperKind};
    /// use jetwright::quantity::Length;
    /// let gate = Damper::new(DamperKind::BlastGate, Length::from_millimeters(76.0_f64)).unwrap();
    /// assert!((gate.opening_for(2.06).unwrap() - 0.5).abs() < 1e-9);
    /// ```
    pub fn opening_for(&self, loss_coefficient: S) -> Result<S> {
        let asked = check(Input::DamperLoss, loss_coefficient)?;
        let range = Input::DamperOpening.range();
        let (narrow, wide) = (S::c(range.min), S::c(range.max));
        let (most, least) = (self.log_loss.value(narrow).exp(), self.log_loss.value(wide).exp());
        if asked < least || asked > most {
            let nearest = asked.clamped(least, most).to_f32();
            return Err(Error::NoSolution { input: Input::DamperOpening, nearest });
        }
        let log_asked = asked.ln();
        let found = solve::root(Input::DamperOpening, narrow, wide, |opening| {
            // Rounding must not close the bracket at an end that was just found to hold the answer.
            let excess = self.log_loss.value(opening) - log_asked;
            if opening <= narrow {
                excess.larger(S::zero())
            } else if opening >= wide {
                excess.smaller(S::zero())
            } else {
                excess
            }
        })?;
        Ok(found.x)
    }

    /// The pressure a loss coefficient of this damper takes at a flow: zeta rho v^2 / 2.
    #[must_use]
    pub fn loss(&self, flow: ActualVolumeFlow<S>, density: Density<S>, loss_coefficient: S) -> PressureDifference<S> {
        Resistance::from_loss_coefficient(loss_coefficient, self.diameter, density).loss(flow)
    }

    /// What it is.
    #[must_use]
    pub const fn kind(&self) -> DamperKind {
        self.kind
    }
}

fn log_curve<S: Scalar, const N: usize>(rows: [(f64, f64); N]) -> Result<Curve<S>> {
    Curve::new(Input::DamperOpening, &rows.map(|(opening, loss)| (S::c(opening), S::c(loss).ln())))
}

#[cfg(test)]
mod tests {
    use super::super::fixture::{density, flow};
    use super::{BLAST_GATE, BUTTERFLY, Damper, DamperKind};
    use crate::quantity::Length;
    use crate::{Error, Input, Scalar};
    use proptest::prelude::*;

    const KINDS: [DamperKind; 2] = [DamperKind::BlastGate, DamperKind::Butterfly];

    fn damper<S: Scalar>(kind: DamperKind) -> Damper<S> {
        Damper::new(kind, Length::from_millimeters(S::c(76.0))).unwrap()
    }

    #[test]
    fn in_the_mid_range_it_stands_beside_the_second_source() {
        // Fits to Miller, Internal Flow Systems (1978), as coded in the public Modelica.Fluid.Dissipation
        // library, over the fractional opening.
        let gate = |opening: f64| 51.45 * (-6.046 * opening).exp();
        let disc = |opening: f64| 619.81 * (-7.3211 * opening).exp();
        for (kind, fit, low, high) in
            [(DamperKind::BlastGate, gate as fn(f64) -> f64, 0.34, 0.55), (DamperKind::Butterfly, disc, 0.45, 0.68)]
        {
            let damper = damper::<f64>(kind);
            for step in 0..=20 {
                let opening = low + (high - low) * f64::from(step) / 20.0;
                let ratio = damper.loss_coefficient(opening).unwrap() / fit(opening);
                assert!((0.74..1.34).contains(&ratio), "{kind:?} {opening}: {ratio}");
            }
            // Beyond, the two sources themselves part: an order of magnitude. The rows are held within 9 % below.
            for step in 0..=10 {
                let opening = 0.35 + 0.04 * f64::from(step);
                let ratio = damper.loss_coefficient(opening).unwrap() / fit(opening);
                assert!((0.45..2.2).contains(&ratio), "{kind:?} {opening}: {ratio}");
            }
        }
    }

    /// Loss of the jet that a free area makes, contracted by Weisbach's 0.63 + 0.37 a^3, as it spreads to
    /// the duct again (Borda and Carnot); both from memory.
    fn jet_loss(area: f64) -> f64 {
        (1.0 / (area * (0.63 + 0.37 * area.powi(3))) - 1.0).powi(2)
    }

    #[test]
    fn the_rows_are_the_loss_of_the_jet_through_the_free_area() {
        // A thin disc shuts sin(angle) of the duct; near open its own drag adds, so only 30 to 65 degrees.
        for (degrees, loss) in BUTTERFLY.into_iter().filter(|row| (30.0..=65.0).contains(&row.0)) {
            let expected = jet_loss(1.0 - f64::sin(degrees.to_radians()));
            assert!((loss / expected - 1.0).abs() < 0.09, "{degrees}: {loss} {expected}");
        }
        // A round gate lowered leaves a crescent: the circle less the lens two circles have in common.
        for (open, loss) in BLAST_GATE.into_iter().filter(|row| row.0 < 0.6) {
            let lens = (2.0 * f64::acos(open) - 2.0 * open * (1.0 - open * open).sqrt()) / core::f64::consts::PI;
            let ratio = loss / jet_loss(1.0 - lens);
            assert!((1.0..1.25).contains(&ratio), "{open}: {ratio}");
        }
    }

    #[test]
    fn near_open_it_goes_through_the_published_rows() {
        // Weisbach as handbooks repeat him (from memory): gate 3/4 and 7/8 open, disc at 20 and 10 degrees.
        for (kind, opening, loss) in [
            (DamperKind::BlastGate, 0.75, 0.26),
            (DamperKind::BlastGate, 0.875, 0.07),
            (DamperKind::Butterfly, 7.0 / 9.0, 1.54),
            (DamperKind::Butterfly, 8.0 / 9.0, 0.52),
        ] {
            assert!((damper::<f64>(kind).loss_coefficient(opening).unwrap() / loss - 1.0).abs() < 1e-9, "{opening}");
        }
    }

    #[test]
    fn fully_open_is_next_to_nothing_and_outside_is_refused() {
        assert!(damper::<f64>(DamperKind::BlastGate).loss_coefficient(1.0).unwrap() < 0.05);
        assert!(damper::<f64>(DamperKind::Butterfly).loss_coefficient(1.0).unwrap() < 0.15);
        for kind in KINDS {
            for opening in [0.0, 0.0999, 1.001, f64::NAN] {
                assert!(damper::<f64>(kind).loss_coefficient(opening).is_err());
            }
        }
        let error = damper::<f64>(DamperKind::Butterfly).opening_for(0.05).unwrap_err();
        assert_eq!(error, Error::NoSolution { input: Input::DamperOpening, nearest: 0.1 });
        assert!(damper::<f64>(DamperKind::BlastGate).opening_for(999.0).is_err());
    }

    #[test]
    fn its_pressure_is_so_many_dynamic_heads() {
        // 2.06 heads at 20 m/s in air of 1.2 kg/m3: 2.06 x 240 Pa.
        let gate = damper::<f64>(DamperKind::BlastGate);
        let at = flow(20.0 * core::f64::consts::FRAC_PI_4 * 0.076 * 0.076);
        assert!((gate.loss(at, density(1.2), gate.loss_coefficient(0.5).unwrap()).pascals() - 494.4).abs() < 1e-6);
    }

    proptest! {
        #[test]
        fn it_falls_with_opening_and_the_inverse_comes_back(
            opening in Input::DamperOpening.range().min..Input::DamperOpening.range().max - 1e-3,
        ) {
            for kind in KINDS {
                let (double, single) = (damper::<f64>(kind), damper::<f32>(kind));
                let loss = double.loss_coefficient(opening).unwrap();
                prop_assert!(double.loss_coefficient(opening + 1e-3).unwrap() < loss);
                let narrow = single.loss_coefficient((opening as f32).larger(0.1)).unwrap();
                prop_assert!((narrow.to_f64() / loss - 1.0).abs() < 1e-4);
                if loss < Input::DamperLoss.range().max {
                    prop_assert!((double.opening_for(loss).unwrap() - opening).abs() < 1e-9);
                    prop_assert!((single.opening_for(loss as f32).unwrap().to_f64() - opening).abs() < 1e-4);
                }
            }
        }
    }
}
