//! The incompressible handbook formula, to reproduce a printed table.

use crate::quantity::{Area, PressureDifference};
use crate::scalar::Scalar;

/// Flow in cubic feet an hour by the handbook: Q = 1658.5 Cd A sqrt(h / s), A in square inches, h in inches
/// of water, s the relative density.
///
/// Incompressible, so for low pressures only; it embeds about 0.2 % of rounding. Use [`Jet`](super::Jet) for
/// everything but the reproduction of a table.
///
/// # Source
///
/// Gas-trade orifice capacity tables, among them Plumbing 3E (BCcampus open textbook), appendix 2.
///
/// # Examples
///
/// ```
/// use jetwright::orifice::handbook_flow;
/// use jetwright::quantity::{Area, PressureDifference};
/// // Drill 70 (0.0280 in), propane of 1.50, 11 inches of water, coefficient 0.90: the table prints 2.489.
/// let area = Area::from_square_inches(core::f64::consts::FRAC_PI_4 * 0.0280 * 0.0280);
/// let flow = handbook_flow(0.90, area, PressureDifference::from_inches_of_water(11.0), 1.50);
/// assert!((flow - 2.489).abs() < 0.002);
/// ```
#[must_use]
pub fn handbook_flow<S: Scalar>(
    discharge_coefficient: S,
    area: Area<S>,
    head: PressureDifference<S>,
    relative_density: S,
) -> S {
    S::c(1658.5) * discharge_coefficient * area.square_inches() * (head.inches_of_water() / relative_density).sqrt()
}
