//! A bore with a loss at its mouth and friction along its wall.

use super::bore_equations::{Equations, Head, Nozzle};
use super::stream::Stream;
use crate::error::{Error, Result};
use crate::friction::Friction;
use crate::limits::Input;
use crate::scalar::Scalar;

/// Most Newton steps of the subsonic solution; the worst met is 10.
const NEWTON_CAP: usize = 16;
/// Steps of the two choking limits; the peak of the flux, which gains the least a step, takes 6 in double precision.
const CHOKING_STEPS: usize = 8;
/// Newton squares the error: a step this small leaves 1e-10, or rounding, behind it.
const NEWTON_CLOSE: f64 = 1e-5;
/// A step of a choking limit this small is the last: the flux is flat at its peak, and Newton's step to the sonic
/// end leaves the square of it.
const CHOKING_CLOSE: f64 = 1e-6;
/// The share of the lossless flow that friction is first worked out at.
const GUESSED_SHARE: f64 = 0.72;

/// A step this small is the last: what Newton leaves of it, half of its square, is less than 4e-6 in single precision.
fn close_enough<S: Scalar>(least: f64) -> S {
    (S::c(8.0) * S::EPSILON.sqrt()).larger(S::c(least))
}

/// The flow of a bore against the lossless flow of the same gas.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BoreFlow<S = f64> {
    /// Flow over lossless flow.
    pub coefficient: S,
    /// Pressure at the end of the bore above the pressure ahead, over the supply's; zero unless choked.
    pub exit_excess: S,
    /// Speed at the end over sqrt(p0 / rho0).
    pub exit_speed: S,
    /// Whether the bore is choked, so that the pressure ahead no longer matters.
    pub choked: bool,
    /// Newton steps taken.
    pub iterations: usize,
}

/// Flow through a bore whose mouth loses `entry_loss` dynamic heads and whose wall has a friction
/// length f L/D.
///
/// 1 - v/w - c v ln(w/v) = v f L/D, c = (k+1)/2k (adiabatic friction), with
/// p0/p1 = (1 - a v)^(-1/2a) + K v / 2(1 - a v), a = (k-1)/2k (mouth), and the pressure ahead at the end;
/// choked where the end is sonic or where the loss of the mouth makes the flux peak, whichever comes first. In the
/// latter the end is taken where friction alone would bring it, which in a bore of hardly any friction is up to 15 %
/// faster than its head, and the thrust 2 % high; the flow is not touched.
///
/// # Arguments
///
/// `friction` gives f L/D and its slope d ln f / d ln flux for a flow over the lossless flow of the same gas.
///
/// # Errors
///
/// [`Error::NotConverged`] never for exponents 1.02 to 1.67, entry loss 0 to 1, f L/D 0 to 60.
///
/// # Source
///
/// NACA 1135 (1953) for the isentropic part, Shapiro, The Dynamics and Thermodynamics of Compressible Fluid
/// Flow (1953), chapter 6, for the adiabatic friction; form of our own that keeps single precision at low speed.
///
/// # Examples
///
/// ```
/// use jetwright::friction::Friction;
/// use jetwright::orifice::{Stream, frictional_bore};
/// // At low speed the coefficient is 1/sqrt(1 + K + f L/D).
/// let slow = Stream::perfect_gas(1.4_f64, 0.9999);
/// let flow = frictional_bore(0.5, &slow, |_| Friction { factor: 0.5, log_slope: 0.0 }).unwrap();
/// assert!((flow.coefficient - 1.0 / 2.0_f64.sqrt()).abs() < 1e-4);
/// ```
pub fn frictional_bore<S: Scalar>(
    entry_loss: S,
    stream: &Stream<S>,
    friction: impl Fn(S) -> Friction<S>,
) -> Result<BoreFlow<S>> {
    let bore = Equations::new(entry_loss, stream);
    let nozzle = bore.nozzle();
    let solution = bore.solution(&nozzle, &friction).ok_or(Error::NotConverged { input: Input::BoreLength })?;
    let exit_speed = solution.exit.sqrt();
    // A subsonic stream ends at the pressure ahead; the difference of the two would be rounding.
    let exit_excess = if solution.choked {
        let exit_pressure = solution.flux * (S::one() - bore.a * solution.exit) / exit_speed;
        (exit_pressure - (S::one() - bore.fall)).larger(S::zero())
    } else {
        S::zero()
    };
    Ok(BoreFlow {
        coefficient: solution.flux / nozzle.flux,
        exit_excess,
        exit_speed,
        choked: solution.choked,
        iterations: solution.iterations,
    })
}

struct Solution<S> {
    flux: S,
    exit: S,
    choked: bool,
    iterations: usize,
}

/// The head's v that friction brings to the speed of sound at the end, and the flux there.
struct SonicEnd<S> {
    v: S,
    flux: S,
    /// d ln(flux) / dv.
    log_flux_slope: S,
}

/// The most that a bore passes.
enum Limit<S> {
    /// The pressure ahead is low enough for it.
    Reached(Solution<S>),
    /// v there, and one near that of the pressure ahead.
    Beyond { most: S, near: S },
}

impl<S: Scalar> Equations<S> {
    /// The flow, choked or not. Where the lossless nozzle chokes the bore may, which is decided first: Newton could
    /// find the supersonic branch otherwise.
    fn solution(&self, nozzle: &Nozzle<S>, friction: &impl Fn(S) -> Friction<S>) -> Option<Solution<S>> {
        let start = friction(S::c(GUESSED_SHARE));
        if nozzle.throat.is_none() {
            // Nearer to sonic than this the flux no longer changes by a spacing of f32.
            let most = S::c(0.9999) / self.c;
            return self.subsonic(nozzle, friction, self.low_speed(start).smaller(most), most);
        }
        match self.limit(nozzle, friction, start) {
            Limit::Reached(solution) => Some(solution),
            Limit::Beyond { most, near } => self.subsonic(nozzle, friction, near.smaller(most), most),
        }
    }

    /// The subsonic flow: Newton in ln v, from a start up to the most there is.
    fn subsonic(
        &self,
        nozzle: &Nozzle<S>,
        friction: &impl Fn(S) -> Friction<S>,
        start: S,
        most: S,
    ) -> Option<Solution<S>> {
        let one = S::one();
        let mut v = start;
        for iterations in 1..=NEWTON_CAP {
            let head = self.head(v);
            let trial = self.residual(v, &head, friction(head.flux / nozzle.flux));
            let step = (-trial.value / (v * trial.slope)).clamped(-one, one);
            let next = (v * (one + S::c(0.5) * step) / (one - S::c(0.5) * step)).smaller(most);
            if step.abs() <= close_enough::<S>(NEWTON_CLOSE) || (v >= most && next >= most) {
                let flux_slope = head.log_flux_slope(v, self.a);
                let flux = head.flux * (one + flux_slope * (next - v));
                let exit = trial.exit + trial.exit_slope * (next - v);
                return Some(Solution { flux, exit, choked: false, iterations });
            }
            v = next;
        }
        None
    }

    /// The speed from both equations to second order in v, y/(1-y) = S v/2 + Q v^2, S = 1 + K + f L/D, and nearly to
    /// the third: within a hundredth for most turbulent square bores up to 30 diameters.
    fn low_speed(&self, start: Friction<S>) -> S {
        let (a, c, mouth) = (self.a, self.c, self.entry_loss);
        // A laminar stream's friction grows as it slows: 64/Re at about 1/(1 + 0.7 f L/D) of the lossless flow.
        let slowed = S::c(0.7) * start.factor;
        let friction = if start.log_slope <= -S::one() { slowed * (S::one() + slowed) } else { start.factor };
        let half_sum = S::c(0.5) * (S::one() + mouth + friction);
        let second = friction * (S::c(0.375) * friction + S::c(0.5) * c + a + S::c(0.25) * (S::one() + mouth))
            + S::c(0.125) * (S::one() + S::c(2.0) * a)
            + S::c(0.5) * mouth * a;
        let drop = self.fall / (S::one() - self.fall);
        let v = S::c(2.0) * drop / (half_sum + (half_sum.squared() + S::c(4.0) * second * drop).sqrt());
        // The next order, fitted; in this form it keeps a sense far beyond where a series has any.
        let third = S::c(0.06) + friction * (S::c(1.64) - S::c(0.36) * mouth + S::c(0.63) * friction);
        v / (S::one() + third * v.squared())
    }

    /// The speed below that of a sonic end: 1 - b z^2 of it, z the pressure ahead from the sonic end's (0) to the
    /// supply's (1); b fitted by how steeply v falls at the other end, within two hundredths for turbulent square bores
    /// where gases choke.
    fn near_sonic(&self, sonic: S, pressure: S, friction: S) -> S {
        let one = S::one();
        let span = one - pressure;
        let z = (span - self.fall) / span;
        let steep = sonic * (one + self.entry_loss + friction) / span;
        let short = (steep - S::c(1.95)).larger(S::zero());
        let b = (S::c(1.6) * steep - S::c(0.9) + S::c(4.0) * short.squared()).clamped(S::c(1.05), S::c(5.0));
        sonic * (one - b * z.squared()).larger(S::c(0.2))
    }

    /// The most that the bore passes: its end is sonic, or the loss of its mouth makes the flux peak.
    fn limit(&self, nozzle: &Nozzle<S>, friction: &impl Fn(S) -> Friction<S>, start: Friction<S>) -> Limit<S> {
        let sonic = S::one() / self.c;
        let end = self.sonic_end(nozzle, friction, start);
        let choked = |flux, exit, steps| Solution { flux, exit, choked: true, iterations: steps * CHOKING_STEPS };
        if end.log_flux_slope >= S::zero() {
            let pressure = end.flux * (S::one() - self.a * sonic) / sonic.sqrt();
            if S::one() - self.fall <= pressure {
                return Limit::Reached(choked(end.flux, sonic, 1));
            }
            return Limit::Beyond { most: end.v, near: self.near_sonic(end.v, pressure, start.factor) };
        }
        let most = self.flux_peak();
        let head = self.head(most);
        let here = friction(head.flux / nozzle.flux);
        let trial = self.residual(most, &head, here);
        if trial.exit >= sonic || trial.value >= S::zero() {
            return Limit::Reached(choked(head.flux, trial.exit.smaller(sonic), 2));
        }
        Limit::Beyond { most, near: self.near_peak(most, &head, here.factor) }
    }

    /// The speed below that of the flux's peak, by a step of Newton on p0/p2 = (1 + loss)(1 + f v / 2): the bore is short
    /// there, and its friction little.
    fn near_peak(&self, peak: S, head: &Head<S>, friction: S) -> S {
        let (one, half) = (S::one(), S::c(0.5) * friction);
        let (mouth, wall) = (one + head.loss, one + half * peak);
        peak - (mouth * wall - self.ahead_inverse) / (head.loss_slope * wall + mouth * half)
    }

    /// The head's v that friction brings to the speed of sound at the end: t - ln(1 + t) = f L / (c D), v = 1/c(1+t).
    fn sonic_end(&self, nozzle: &Nozzle<S>, friction: &impl Fn(S) -> Friction<S>, start: Friction<S>) -> SonicEnd<S> {
        let one = S::one();
        let at = |v: S| {
            let head = self.head(v);
            SonicEnd { v, flux: head.flux, log_flux_slope: head.log_flux_slope(v, self.a) }
        };
        if start.factor <= S::zero() {
            return at(one / self.c);
        }
        // Losses leave about 1/sqrt(1 + 0.65 (K + f L/D)) of the lossless flow, and friction follows the flow.
        let share = one / (one + S::c(0.65) * (self.entry_loss + start.factor)).sqrt();
        let further = share * S::c(1.0 / GUESSED_SHARE) - one;
        let guess = start.factor * (one + start.log_slope * further).larger(S::c(0.2)) / self.c;
        // The series of t in s = sqrt(2 guess): s + s^2/3 + s^3/36 - s^4/270 + s^5/4320.
        let s = (S::c(2.0) * guess).sqrt();
        let third = S::c(1.0 / 36.0) - s * (S::c(1.0 / 270.0) - s * S::c(1.0 / 4320.0));
        let mut t = s * (one + s * (S::c(1.0 / 3.0) + s * third));
        let mut end = at(one / (self.c * (one + t)));
        for _ in 0..CHOKING_STEPS {
            let here = friction(end.flux / nozzle.flux);
            let length = here.factor / self.c;
            // A rough bore's friction rises faster than the flow as it becomes turbulent, and must be in the slope.
            let slope = t + length * here.log_slope * end.v * end.log_flux_slope;
            let step = (t - t.ln_1p() - length) * (one + t) / slope.larger(S::c(0.25) * t);
            t -= step;
            let v = one / (self.c * (one + t));
            if step.abs() <= close_enough::<S>(CHOKING_CLOSE) * t {
                let flux = end.flux * (one + end.log_flux_slope * (v - end.v));
                return SonicEnd { v, flux, ..end };
            }
            end = at(v);
        }
        end
    }

    /// The v at which the loss of the mouth makes the flux peak.
    fn flux_peak(&self) -> S {
        let (one, mouth) = (S::one(), self.entry_loss);
        // Fitted within a thousandth for entry losses 0 to 1 and exponents 1.02 to 1.67.
        let guess = one + mouth * (S::c(0.3088) + mouth * (S::c(0.0371) + S::c(0.1708) * self.a));
        let mut v = one / (self.c * guess);
        for _ in 0..CHOKING_STEPS {
            let head = self.head(v);
            // The slope's zero written as v = x/(1 - a x); the step is lengthened since that map shrinks by a sixth.
            let x = S::c(0.5) * (one + head.loss) / (head.loss_slope * head.tau);
            let step = (x / (one - self.a * x) - v) * S::c(1.2);
            v += step;
            if step.abs() <= close_enough::<S>(CHOKING_CLOSE) * v {
                break;
            }
        }
        v
    }
}
