//! The equations of a bore with a loss at its mouth and friction along its wall.
//!
//! Written per supply pressure and per R T0: v is the square of the speed at the head of the bore over R T0,
//! w the same at its end. The perfect gas of the stream's exponent is enough, since only the ratio to its own
//! lossless flow is used.

use super::stream::Stream;
use crate::friction::Friction;
use crate::gas::NEVER_CHOKED_ABOVE;
use crate::scalar::Scalar;

/// A gas about to condense expands with an exponent of one and below, where the perfect gas has no energy
/// equation; the ratio to its own lossless flow hardly changes there.
const LEAST_EXPONENT: f64 = 1.02;

/// The lossless flow of the same perfect gas.
pub(super) struct Nozzle<S> {
    pub flux: S,
    /// The pressure ratio of its throat, if it is choked.
    pub throat: Option<S>,
}

/// The state at the head of the bore for a trial speed.
pub(super) struct Head<S> {
    /// 1 - a v.
    pub tau: S,
    /// One over it.
    pub tau_inverse: S,
    /// p1/p0.
    pub ratio: S,
    /// p0/p1 - 1.
    pub loss: S,
    /// Its derivative by v.
    pub loss_slope: S,
    pub flux: S,
}

impl<S: Scalar> Head<S> {
    /// d ln(flux) / dv.
    pub fn log_flux_slope(&self, v: S, a: S) -> S {
        S::c(0.5) / v + a * self.tau_inverse - self.loss_slope * self.ratio
    }
}

/// How far a trial speed is from the answer.
pub(super) struct Residual<S> {
    pub value: S,
    /// d value / dv.
    pub slope: S,
    /// w at the end.
    pub exit: S,
    /// dw / dv.
    pub exit_slope: S,
}

pub(super) struct Equations<S> {
    /// (k-1)/2k
    pub a: S,
    /// (k+1)/2k; one over it is the square of the speed of sound's flow.
    pub c: S,
    pub entry_loss: S,
    /// 1 - pressure ahead over the supply's.
    pub fall: S,
    /// The supply's pressure over the pressure ahead.
    pub ahead_inverse: S,
}

impl<S: Scalar> Equations<S> {
    pub fn new(entry_loss: S, stream: &Stream<S>) -> Self {
        let half_inverse = S::c(0.5) / stream.exponent.larger(S::c(LEAST_EXPONENT));
        Self {
            a: S::c(0.5) - half_inverse,
            c: S::c(0.5) + half_inverse,
            entry_loss,
            fall: stream.fall,
            ahead_inverse: S::one() / (S::one() - stream.fall),
        }
    }

    pub fn nozzle(&self) -> Nozzle<S> {
        let (one, two_a) = (S::one(), S::c(2.0) * self.a);
        let sonic = one / self.c;
        let sonic_tau = one - self.a * sonic;
        let ratio = one - self.fall;
        if ratio < S::c(NEVER_CHOKED_ABOVE) {
            let throat = (sonic_tau.ln() / two_a).exp();
            if ratio <= throat {
                return Nozzle { flux: throat * sonic.sqrt() / sonic_tau, throat: Some(throat) };
            }
        }
        let cooling = (two_a * (-self.fall).ln_1p()).exp_m1();
        let flux = ratio * (-cooling / self.a).sqrt() / (one + cooling);
        Nozzle { flux, throat: None }
    }

    pub fn head(&self, v: S) -> Head<S> {
        let one = S::one();
        let tau = one - self.a * v;
        let isentropic = self.isentropic(v, tau);
        let tau_inverse = one / tau;
        let mouth = self.entry_loss * tau_inverse;
        let loss = isentropic + S::c(0.5) * mouth * v;
        let ratio = one / (one + loss);
        let loss_slope = S::c(0.5) * ((one + isentropic) + mouth) * tau_inverse;
        Head { tau, tau_inverse, ratio, loss, loss_slope, flux: v.sqrt() * tau_inverse * ratio }
    }

    /// (1 - a v)^(-1/2a) - 1: its binomial series while v is small, where the logarithm would lose digits.
    fn isentropic(&self, v: S, tau: S) -> S {
        let is_single = S::EPSILON > S::c(1e-9);
        if v > S::c(if is_single { 0.7 } else { 0.3 }) {
            return (tau.ln() * (-S::c(0.5) / self.a)).exp() - S::one();
        }
        // Each coefficient over the one before is (1 + 2 k a) / 2(k + 1), that is 1/2(k + 1) and a k/(k + 1); single
        // precision ends with the ninth.
        let term = |half: S, whole: S, rest: S| S::one() + (half + self.a * whole) * v * rest;
        let mut rest = S::one();
        if !is_single {
            rest = term(S::c(1.0 / 24.0), S::c(11.0 / 12.0), rest);
            rest = term(S::c(1.0 / 22.0), S::c(10.0 / 11.0), rest);
            rest = term(S::c(1.0 / 20.0), S::c(9.0 / 10.0), rest);
        }
        rest = term(S::c(1.0 / 18.0), S::c(8.0 / 9.0), rest);
        rest = term(S::c(1.0 / 16.0), S::c(7.0 / 8.0), rest);
        rest = term(S::c(1.0 / 14.0), S::c(6.0 / 7.0), rest);
        rest = term(S::c(1.0 / 12.0), S::c(5.0 / 6.0), rest);
        rest = term(S::c(1.0 / 10.0), S::c(4.0 / 5.0), rest);
        rest = term(S::c(1.0 / 8.0), S::c(3.0 / 4.0), rest);
        rest = term(S::c(1.0 / 6.0), S::c(2.0 / 3.0), rest);
        rest = term(S::c(1.0 / 4.0), S::c(1.0 / 2.0), rest);
        S::c(0.5) * v * rest
    }

    /// The friction equation at a trial speed.
    pub fn residual(&self, v: S, head: &Head<S>, friction: Friction<S>) -> Residual<S> {
        let (one, two) = (S::one(), S::c(2.0));
        let (a, c) = (self.a, self.c);
        // p1/p2 - 1 without the difference of nearly equal pressures.
        let excess = (self.fall - head.loss * head.ratio) * self.ahead_inverse;
        let ratio = one + excess;
        let ratio_slope = -head.ratio.squared() * head.loss_slope * self.ahead_inverse;
        let quadratic = ratio * a * v;
        let linear = head.tau + two * quadratic;
        let constant = excess * head.tau;
        let gain = two * constant / (linear + (linear.squared() + S::c(4.0) * quadratic * constant).sqrt());
        let product_slope = a * (ratio + ratio_slope * v);
        let by_v = (product_slope * gain + two * product_slope - a) * gain - ratio_slope * head.tau + excess * a;
        let gain_slope = -by_v / (two * quadratic * gain + linear);
        // w/v - 1.
        let delta = gain * (two + gain);
        let delta_slope = two * (one + gain) * gain_slope;
        let stretch = one + delta;
        let shrink = one / stretch;
        let log_stretch = delta.ln_1p();
        let value = delta * shrink - c * v * log_stretch - v * friction.factor;
        let slope = delta_slope * shrink.squared()
            - c * (log_stretch + v * delta_slope * shrink)
            - friction.factor * (one + v * friction.log_slope * head.log_flux_slope(v, a));
        Residual { value, slope, exit: v * stretch, exit_slope: stretch + v * delta_slope }
    }
}
