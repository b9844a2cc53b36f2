//! Dampers: what a gate or a butterfly takes, against how far it stands open.

use super::damper_tables::{BALL_VALVE, BLAST_GATE, DISC_OPENINGS, GATE_VALVE, area_of, blade, free_area, jet_loss};
use super::resistance::Resistance;
use crate::error::{Error, Result};
use crate::interpolate::Curve;
use crate::limits::{Input, check};
use crate::quantity::{ActualVolumeFlow, Density, Length, PressureDifference};
use crate::scalar::Scalar;
use crate::solve;
use crate::words::{Words, words};

/// Expanded uncertainty (k = 2) of a loss, as a share of it, by kind. Gate: two measured gates lie within 15 % of each other. Disc:
/// four published tables lie within 17 % of the formula with the gap of each. Gate valve: three handbooks and a fit to
/// Miller, which has half their loss a quarter open. Ball valve: Weisbach's plug cock loses three times as much half open.
const SPREAD: [f64; 4] = [0.15, 0.17, 0.7, 0.5];
/// The same after one setting was seen, besides what that setting is known by: what two measured gates differ in shape.
const SHAPE: f64 = 0.1;
/// Gap round a shut disc, as a share of the duct, where nobody measured it: published tables have 0 to 4 %.
pub const USUAL_GAP: f64 = 0.02;
/// Expanded uncertainty of the gap where nobody measured it, and where it was.
pub const GAP_SPREAD: (f64, f64) = (0.02, 0.005);
/// Below this opening a disc's loss is not known until its gap is measured.
pub const DISC_KNOWN_FROM: f64 = 0.3;

/// What stands in the duct, and what its opening means.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum DamperKind {
    /// A flat gate slid across: the opening is the open height over the duct's diameter.
    BlastGate,
    /// A disc turned on its middle: the opening is one less the angle from open over 90 degrees.
    Butterfly,
    /// A plumber's ball valve: the opening is one less the angle from open over 90 degrees.
    BallValve,
    /// A plumber's threaded gate valve: the opening is the share of its stem's way. It loses twice a slide gate's.
    GateValve,
}

impl DamperKind {
    /// Whether it is made to shut a line, not to throttle it, so that its loss is known by no more than a factor.
    #[must_use]
    pub const fn is_valve(self) -> bool {
        matches!(self, DamperKind::BallValve | DamperKind::GateValve)
    }
}

impl Words for DamperKind {
    fn write(&self, put: &mut impl FnMut(f32)) {
        put(match self {
            DamperKind::BlastGate => 0.0,
            DamperKind::Butterfly => 1.0,
            DamperKind::BallValve => 2.0,
            DamperKind::GateValve => 3.0,
        });
    }
    fn read(next: &mut impl FnMut() -> Option<f32>) -> Option<Self> {
        Some(match next()? as u32 {
            0 => DamperKind::BlastGate,
            1 => DamperKind::Butterfly,
            2 => DamperKind::BallValve,
            3 => DamperKind::GateValve,
            _ => return None,
        })
    }
}

/// A damper in a round duct.
///
/// The logarithm of its loss is a [`Curve`] over the opening: a measured table for the gate and the valves, for the disc
/// K = (1 / (c a) - 1)^2 + blade, c = 0.63 + 0.37 a^3, a = 1 - sin(angle) + gap, the blade 0.2 to 0.4. A gap of zero
/// is Weisbach's disc, 0 to 1.3 % the table of SMACNA, 3 to 4 % that of ASHRAE, all within 17 %: what published discs
/// differ by is what they leave open. A disc loose by 4 % passes twice the air of a tight one at 18 % open.
///
/// # Source
///
/// Gate: US Army Waterways Experiment Station, chart 330-1. Disc: Weisbach's contraction, Borda and Carnot. Valves:
/// Miller, Internal Flow Systems (1978), and handbooks. Each at its table.
#[derive(Clone, Debug, PartialEq)]
pub struct Damper<S = f64> {
    kind: DamperKind,
    diameter: Length<S>,
    log_loss: Curve<S>,
}

words!(Damper { kind, diameter, log_loss });

impl<S: Scalar> Damper<S> {
    /// A damper in a duct of this inside diameter, a disc with a gap of [`USUAL_GAP`].
    ///
    /// # Errors
    ///
    /// [`Error::NotFinite`] or [`Error::OutOfRange`].
    pub fn new(kind: DamperKind, diameter: Length<S>) -> Result<Self> {
        check(Input::DuctDiameter, diameter.meters())?;
        let log_loss = match kind {
            DamperKind::BlastGate => log_curve(&BLAST_GATE),
            DamperKind::BallValve => log_curve(&BALL_VALVE),
            DamperKind::GateValve => log_curve(&GATE_VALVE),
            DamperKind::Butterfly => return Self::disc(diameter, S::c(USUAL_GAP)),
        }?;
        Ok(Self { kind, diameter, log_loss })
    }

    /// A disc that leaves a gap open when it is shut, as a share of the duct's area.
    ///
    /// # Errors
    ///
    /// [`Error::NotFinite`] or [`Error::OutOfRange`].
    ///
    /// # Examples
    ///
    /// At 18 % open a tight disc takes 1519 dynamic heads, one that leaves 4 % open 358:
    ///
    /// ```
    /// use jetwright::air::Damper;
    /// use jetwright::quantity::Length;
    /// let loss = |gap: f64| Damper::disc(Length::from_millimeters(76.0), gap).unwrap().loss_coefficient(0.18).unwrap();
    /// assert!((loss(0.0) / 1519.0 - 1.0).abs() < 0.02);
    /// assert!((loss(0.04) / 358.0 - 1.0).abs() < 0.02);
    /// ```
    pub fn disc(diameter: Length<S>, gap: S) -> Result<Self> {
        check(Input::DuctDiameter, diameter.meters())?;
        let gap = check(Input::DiscGap, gap)?;
        let points = DISC_OPENINGS.map(|opening| {
            let opening = S::c(opening);
            (opening, (jet_loss(free_area(opening) + gap) + blade(opening)).ln())
        });
        Ok(Self { kind: DamperKind::Butterfly, diameter, log_loss: Curve::new(Input::DamperOpening, &points)? })
    }

    /// The same with its loss times a factor at every opening.
    ///
    /// # Errors
    ///
    /// [`Error::NotFinite`] or [`Error::OutOfRange`].
    pub fn corrected(&self, factor: S) -> Result<Self> {
        let by = check(Input::DamperCorrection, factor)?.ln();
        Ok(Self { log_loss: self.log_loss.raised(by), ..self.clone() })
    }

    /// The same through one loss coefficient seen at an opening: a disc less than 60 % open by its gap where one gives
    /// it, else, and every other kind, by a factor on the whole table.
    ///
    /// # Errors
    ///
    /// [`Error::NotFinite`] or [`Error::OutOfRange`], naming the correction where the loss seen is more than ten times
    /// the table's or less than a tenth.
    ///
    /// # Examples
    ///
    /// ```
    /// use jetwright::air::{Damper, DamperKind};
    /// use jetwright::quantity::Length;
    /// let gate = Damper::new(DamperKind::BlastGate, Length::from_millimeters(76.0_f64)).unwrap();
    /// let ours = gate.calibrated(0.25, 20.0).unwrap();
    /// assert!((ours.loss_coefficient(0.25).unwrap() - 20.0).abs() < 1e-9);
    /// assert!((ours.loss_coefficient(0.5).unwrap() - 2.1 * 20.0 / 16.0).abs() < 1e-9);
    /// ```
    pub fn calibrated(&self, opening: S, loss_coefficient: S) -> Result<Self> {
        let seen = check(Input::DamperLoss, loss_coefficient)?;
        let expected = self.loss_coefficient(opening)?;
        if self.kind == DamperKind::Butterfly && opening < S::c(0.6) {
            let gap = disc_gap(opening, seen)?;
            if check(Input::DiscGap, gap).is_ok() {
                let disc = Self::disc(self.diameter, gap)?;
                // What the curve leaves beside the formula between two of its points.
                return disc.corrected(seen / disc.loss_coefficient(opening)?);
            }
        }
        self.corrected(seen / expected)
    }

    /// Expanded uncertainty (k = 2) of the loss coefficient as a logarithm, near enough a share of it: what published dampers of a
    /// kind differ by; for a disc also what its gap's expanded uncertainty does, which rules where it is nearly shut.
    ///
    /// # Errors
    ///
    /// [`Error::NotFinite`] or [`Error::OutOfRange`].
    ///
    /// # Examples
    ///
    /// ```
    /// use jetwright::air::{Damper, DamperKind, GAP_SPREAD};
    /// use jetwright::quantity::Length;
    /// let disc = Damper::new(DamperKind::Butterfly, Length::from_millimeters(76.0_f64)).unwrap();
    /// // 2 % open round it, known to 2 %: at 18 % open anything from 358 to 1519.
    /// assert!((disc.loss_spread(0.18, GAP_SPREAD.0).unwrap() - 0.74).abs() < 0.02);
    /// assert!(disc.loss_spread(0.6, GAP_SPREAD.0).unwrap() < 0.25);
    /// ```
    pub fn loss_spread(&self, opening: S, gap_spread: S) -> Result<S> {
        let own = S::c(SPREAD[self.kind as usize]);
        let loss = self.loss_coefficient(opening)?;
        if self.kind != DamperKind::Butterfly {
            return Ok(own);
        }
        let (tight, blade) = (free_area(opening), blade(opening));
        let area = area_of(loss - blade);
        let at = |area: S| (jet_loss(area.larger(tight)) + blade).ln();
        let by_gap = S::c(0.5) * (at(area - gap_spread) - at(area + gap_spread));
        Ok((own.squared() + by_gap.squared()).sqrt())
    }

    /// The same after it was [`calibrated`](Damper::calibrated) by a loss known to an expanded uncertainty, as a share.
    #[must_use]
    pub fn calibrated_spread(seen: S) -> S {
        (seen.squared() + S::c(SHAPE * SHAPE)).sqrt()
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
    /// Opening 0.1 to 1. Below 0.125 of a gate and 0.25 of a gate valve nothing is published. Below 0.3 of a disc its gap
    /// rules: measure it ([`disc_gap`]).
    ///
    /// # Errors
    ///
    /// [`Error::NotFinite`] or [`Error::OutOfRange`].
    ///
    /// # Examples
    ///
    /// A gate half open takes 2.1 dynamic heads, a tight disc at 45 degrees some 19:
    ///
    /// ```
    /// use jetwright::air::{Damper, DamperKind};
    /// use jetwright::quantity::Length;
    /// let diameter = Length::from_millimeters(76.0_f64);
    /// let gate = Damper::new(DamperKind::BlastGate, diameter).unwrap();
    /// assert!((gate.loss_coefficient(0.5).unwrap() - 2.1).abs() < 1e-9);
    /// let disc = Damper::disc(diameter, 0.0).unwrap();
    /// assert!((disc.loss_coefficient(0.5).unwrap() - 19.2).abs() < 0.3);
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
    /// assert!((gate.opening_for(2.1).unwrap() - 0.5).abs() < 1e-9);
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

fn log_curve<S: Scalar, const N: usize>(rows: &[(f64, f64); N]) -> Result<Curve<S>> {
    Curve::new(Input::DamperOpening, &rows.map(|(opening, loss)| (S::c(opening), S::c(loss).ln())))
}

/// The gap round a disc that has a loss coefficient at an opening, as a share of the duct's area; an opening of zero is
/// the disc shut.
///
/// # Errors
///
/// [`Error::NotFinite`] or [`Error::OutOfRange`], an opening above 0.6, where the gap no longer counts.
///
/// # Examples
///
/// A shut disc that leaves 3 % open: (1 / (0.63 * 0.03) - 1)^2 and the blade's 0.4.
///
/// ```
/// use jetwright::air::disc_gap;
/// let loss = (1.0_f64 / (0.63 * 0.03) - 1.0).powi(2) + 0.4;
/// assert!((disc_gap(0.0, loss).unwrap() - 0.03).abs() < 1e-4);
/// ```
pub fn disc_gap<S: Scalar>(opening: S, loss_coefficient: S) -> Result<S> {
    let loss = check(Input::DamperLoss, loss_coefficient)?;
    let opening = check(Input::Fraction, opening)?;
    if opening > S::c(0.6) {
        return Err(Error::OutOfRange { input: Input::DamperOpening, given: opening.to_f32() });
    }
    Ok(area_of(loss - blade(opening)) - free_area(opening))
}

#[cfg(test)]
#[path = "damper_tests.rs"]
mod tests;
