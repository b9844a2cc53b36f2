//! What the furnace comes to when nothing is changed for days.

use super::firing::{Firing, LONGEST, Until};
use super::model::Drive;
use crate::error::{Error, Result};
use crate::limits::Input;
use crate::scalar::Scalar;

/// Heats are told of the last so many seconds.
const LAST: f64 = 60.0;
/// A temperature that is kept no better than this, K, is out of reach.
const KEPT_WITHIN: f64 = 2.0;

/// A furnace that has settled.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Settled<S = f64> {
    /// Temperature of the chamber, K.
    pub chamber: S,
    /// The fire, W net.
    pub fire: S,
    /// Through the walls, W.
    pub walls: S,
    /// Out of the openings, W.
    pub openings: S,
    /// With the gas that leaves, W.
    pub flue: S,
    /// Temperature it leaves at, K.
    pub gas: S,
    /// Air that comes in by the openings, kg/s.
    pub entering: S,
}

impl<S: Scalar> Firing<'_, S> {
    /// Where a fire, or a temperature kept, ends when it is left so: after 111 hours.
    ///
    /// # Errors
    ///
    /// [`Error::NoSolution`] with the chamber's temperature where the fire does not keep the one asked; as of
    /// [`Firing::run`].
    pub fn settled(mut self, drive: &Drive<S>) -> Result<Settled<S>> {
        self.run(drive, Until::Time(S::c(LONGEST)))?;
        let last = self.run(drive, Until::Time(S::c(LAST)))?;
        if let Drive::Keep { chamber, .. } = *drive
            && (last.chamber - chamber).abs() > S::c(KEPT_WITHIN)
        {
            return Err(Error::NoSolution { input: Input::ChamberTemperature, nearest: last.chamber.to_f32() });
        }
        let rate = |heat: S| heat / S::c(LAST);
        Ok(Settled {
            chamber: last.chamber,
            fire: rate(last.ledger.fuel),
            walls: rate(last.ledger.shell),
            openings: rate(last.ledger.openings),
            flue: rate(last.ledger.flue),
            gas: last.gas,
            entering: rate(last.ledger.entered),
        })
    }
}
