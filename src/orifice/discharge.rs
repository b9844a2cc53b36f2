//! One coefficient for every bore: thin plate, long bore, and the passage between them.

use super::bore::{Bore, REATTACHED};
use super::edge::Edge;
use super::long_bore::frictional_bore;
use super::stream::Stream;
use super::thin_plate::{Contraction, thin_plate};
use crate::error::Result;
use crate::friction::Friction;
use crate::scalar::Scalar;

/// A discharge coefficient with what goes with it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Discharge<S = f64> {
    /// Flow over the lossless flow of the same supply into the same pressure.
    pub coefficient: S,
    /// Reynolds number of the bore at that flow.
    pub reynolds_number: S,
    /// Speed at the end of the bore, or in the contracted stream of a thin plate, over sqrt(p0 / rho0).
    pub exit_speed: S,
    /// Push of the pressure there above the pressure ahead, over the supply's pressure on the area of the hole. A
    /// bore's stream fills it, a thin plate's only the coefficient's share of it.
    pub exit_push: S,
    /// Spread of the coefficient at two standard deviations, as a share of it.
    pub uncertainty: S,
}

/// Discharge coefficient of a bore for a stream whose Reynolds number would be `lossless_reynolds_number`
/// at the lossless flow.
///
/// With x = length over diameter: thin plate + w (short bore - thin plate),
/// w = (1 - exp(-1.606 x^2)) / (1 - exp(-3.614)), up to x = 1.5; beyond, a bore with friction over x - 1.5.
/// Beside it the coefficient of approach 1/sqrt(1 - beta^4) of a tube before the hole.
///
/// # Errors
///
/// [`Error::NotConverged`](crate::Error::NotConverged) never within the limits.
///
/// # Source
///
/// Thin plate: Jobson 1955 with ISO 5167-2. Bore: loss of 0.524 heads and adiabatic friction. Length of
/// passage: McGreehan and Schotsch 1988; within 7 % of Parker and Kercher 1991, in whose range the flow itself
/// has hysteresis. Uncertainty: engineering judgement on computed sensitivities.
pub fn discharge<S: Scalar>(bore: &Bore<S>, stream: &Stream<S>, lossless_reynolds_number: S) -> Result<Discharge<S>> {
    let one = S::one();
    let x = bore.length_ratio;
    let weight = bore.reattachment;
    let mut coefficient = S::zero();
    let mut exit_speed = (stream.flux_squared).sqrt() / stream.density_ratio;
    if weight < one {
        coefficient = thin(bore, stream, lossless_reynolds_number);
    }
    let mut exit_push = coefficient * (stream.pressure_ratio - (one - stream.fall)).larger(S::zero());
    if weight > S::zero() && stream.fall > S::zero() {
        let friction_length = x - S::c(REATTACHED);
        let flow = frictional_bore(bore.entry_loss, stream, |share| {
            if friction_length <= S::zero() {
                return Friction { factor: S::zero(), log_slope: S::zero() };
            }
            let wall = bore.wall.friction(lossless_reynolds_number * share);
            Friction { factor: wall.factor * friction_length, log_slope: wall.log_slope }
        })?;
        coefficient = coefficient + weight * (flow.coefficient - coefficient);
        exit_speed = exit_speed + weight * (flow.exit_speed - exit_speed);
        exit_push = exit_push + weight * (flow.exit_excess - exit_push);
    }
    coefficient = coefficient * bore.approach_factor;
    let reynolds_number = coefficient * lossless_reynolds_number;
    let uncertainty = uncertainty(bore, reynolds_number);
    Ok(Discharge { coefficient, reynolds_number, exit_speed, exit_push, uncertainty })
}

/// The thin plate's coefficient; its Reynolds number follows from the coefficient, in two passes.
fn thin<S: Scalar>(bore: &Bore<S>, stream: &Stream<S>, lossless_reynolds_number: S) -> S {
    let with = |sharp: S| thin_plate(S::one() - bore.softening * (S::one() - sharp), stream);
    let first = Contraction::at(S::c(0.65) * lossless_reynolds_number);
    let coefficient = with(first.coefficient());
    with(first.moved_to(coefficient * lossless_reynolds_number).coefficient())
}

/// Spread of the model at two standard deviations: by length and edge, wider where viscosity rules.
fn uncertainty<S: Scalar>(bore: &Bore<S>, reynolds_number: S) -> S {
    let x = bore.length_ratio;
    let shape = S::c(match bore.edge {
        // Five authors at a twentieth and a tenth of the bore.
        Edge::Rounded { .. } => 0.04,
        // Rennels has 5 to 8 % less than Idelchik.
        Edge::Chamfered { .. } => 0.09,
        Edge::Sharp | Edge::Square => {
            if x < S::c(0.3) {
                0.06
            } else if x < S::c(REATTACHED) {
                0.10
            } else if x < S::c(7.0) {
                0.05
            } else {
                0.06
            }
        }
    });
    if reynolds_number < S::c(5000.0) { (shape.squared() + S::c(0.08 * 0.08)).sqrt() } else { shape }
}
