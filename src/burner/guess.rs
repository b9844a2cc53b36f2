//! First guesses of a prepared burner: the jets between gauge pressures worked out beforehand, and the flow of air.

use super::rig::{Air, Burner, Conditions, Feed, tube_area};
use crate::air::Blower;
use crate::combustion::AirNeed;
use crate::quantity::{ActualVolumeFlow, GaugePressure};
use crate::scalar::Scalar;

/// How many gauge pressures the jet is worked out at to guess from.
const GUESSES: usize = 32;
/// The lowest of them, Pa, and the factor from one to the next; the highest is that of the accepted range.
const LOWEST: f64 = 1.56;
const FURTHER: f64 = 1.5;
/// How far the guesses are continued, over the root of the last gauge pressure that has one.
const CONTINUED: f64 = 1.2;
/// How much more flow the powers of the resistances are taken over.
const MORE: f64 = 0.1;
/// The least share of the gauge pressure that the first guess of the flow leaves to drive the gas.
const LEAST_SHARE: f64 = 0.02;
/// A gauge pressure that stands for none where it divides, Pa.
const NO_GAUGE: f64 = 1e-3;

/// The jet at one gauge pressure, into the open.
#[derive(Clone, Copy, Debug, Default)]
struct JetGuess<S> {
    /// Of the gauge pressure.
    root: S,
    /// Flow over the root of the drop.
    per_root: S,
    /// Thrust over the square of the flow.
    thrust: S,
}

/// The jets of one head at gauge pressures that rise evenly in their logarithm.
#[derive(Clone, Copy, Debug)]
pub(super) struct JetGuesses<S> {
    ambient: S,
    guesses: [JetGuess<S>; GUESSES],
    /// How many of them, from the lowest, there are before the gas would be a liquid.
    known: usize,
}

/// The jets of one head as the pressure ahead of them moves a little.
#[derive(Clone, Copy, Debug)]
pub(super) struct JetLine<S> {
    pub drop: S,
    pub back: S,
    pub feed: Feed<S>,
    /// The power of the drop that the flow follows when the pressure ahead alone changes.
    pub exponent: S,
}

impl<S: Scalar> JetLine<S> {
    /// Jets that the air stream keeps from flowing.
    pub fn still(gauge: S) -> Self {
        let feed = Feed { gas: S::zero(), thrust: S::zero() };
        Self { drop: S::one(), back: gauge, feed, exponent: S::zero() }
    }

    /// The share of the flow that passes at another back pressure: (drop / drop)^exponent to the second order.
    pub fn share(&self, back: S) -> S {
        let x = ((self.back - back) / self.drop).larger(-S::one());
        let n = self.exponent;
        (S::one() + n * x * (S::one() + S::c(0.5) * (n - S::one()) * x)).larger(S::zero())
    }

    pub fn feed(&self, share: S) -> Feed<S> {
        Feed { gas: self.feed.gas * share, thrust: self.feed.thrust * share.squared() }
    }
}

impl<S: Scalar> JetGuesses<S> {
    /// The jets of a burner under its conditions.
    pub fn new(burner: &Burner<S>, conditions: &Conditions<S>) -> Self {
        let mut guesses = [JetGuess::default(); GUESSES];
        let mut known = 0;
        let mut gauge = S::c(LOWEST);
        for guess in &mut guesses {
            // A gas that is a liquid at so high a pressure is refused later.
            let Ok(jet) = burner.jet_flow(conditions, GaugePressure::from_pascals(gauge), S::zero()) else { break };
            let (open, root) = (Feed::of(&jet), gauge.sqrt());
            *guess = JetGuess { root, per_root: open.gas / root, thrust: open.thrust / open.gas.squared() };
            known += 1;
            gauge = gauge * S::c(FURTHER);
        }
        Self { ambient: conditions.ambient().pascals(), guesses, known }
    }

    /// The jet of a gauge pressure into a back pressure; none where nothing can be guessed.
    ///
    /// Streams of one pressure ratio are alike, their flow and their thrust go with the pressure, but for the little
    /// that the Reynolds number and the real gas make: flow(gauge, back) = s flow(drop / s, 0), s = 1 + back / ambient.
    /// The flow into the open is that of the parabola through the three gauge pressures around it.
    pub fn at(&self, gauge: S, back: S) -> Option<JetLine<S>> {
        let drop = gauge - back;
        if drop <= S::zero() {
            return None;
        }
        let stretch = S::one() + back / self.ambient;
        let root = (drop / stretch).sqrt();
        let known = self.guesses.get(..self.known)?;
        let above = known.partition_point(|guess| guess.root < root).max(1).min(known.len().checked_sub(2)?);
        let &[a, b, c] = known.get(above.checked_sub(1)?..)?.first_chunk::<3>()?;
        if root > S::c(CONTINUED) * c.root {
            return None;
        }
        let (from_a, from_b, from_c) = (root - a.root, root - b.root, root - c.root);
        let (ab, bc, ac) = (b.root - a.root, c.root - b.root, c.root - a.root);
        let (over_a, over_b, over_c) = (S::one() / (ab * ac), -S::one() / (ab * bc), S::one() / (ac * bc));
        let weights = [from_b * from_c * over_a, from_a * from_c * over_b, from_a * from_b * over_c];
        let slopes = [(from_b + from_c) * over_a, (from_a + from_c) * over_b, (from_a + from_b) * over_c];
        let along = |by: [S; 3], of: fn(&JetGuess<S>) -> S| by[0] * of(&a) + by[1] * of(&b) + by[2] * of(&c);
        let per_root = along(weights, |jet| jet.per_root).larger(S::zero());
        let open = per_root * root;
        // d ln(flow) / d ln(root), and how the root and the stretch follow the back pressure.
        let power = S::one() + along(slopes, |jet| jet.per_root) / per_root * root;
        let by_back = (S::one() - S::c(0.5) * power * (self.ambient + gauge) / drop) / (self.ambient + back);
        let feed = Feed { gas: stretch * open, thrust: stretch * along(weights, |jet| jet.thrust) * open.squared() };
        Some(JetLine { drop, back, feed, exponent: -by_back * drop })
    }
}

/// Resistances, each over the square of its flow.
#[derive(Clone, Copy, Debug)]
pub(super) struct SystemGuess<S> {
    path: S,
    /// Of a damper whose loss coefficient is one.
    pub damper: S,
    /// Of one head, on its mass flow: a parabola in the share of gas, since the density of a mixture goes with it and
    /// the momentum that the air brings with its square.
    head: [S; 3],
    /// The powers of the flow that the first and the last really go with.
    pub powers: [S; 2],
    /// Mass of air of one head to a volume of all.
    one_head: S,
    /// The blower's free delivery.
    pub free: S,
    /// Flow and pressure of the blower's highest point.
    pub peak: [S; 2],
}

impl<S: Scalar> SystemGuess<S> {
    /// Resistances at half of the free flow and an air ratio of one.
    pub fn new(
        burner: &Burner<S>,
        conditions: &Conditions<S>,
        air: &Air<S>,
        air_need: &AirNeed<S>,
        blower: &Blower<S>,
    ) -> Self {
        let path = |flow, damper| burner.path_loss(air, flow, damper).pascals();
        // What the head asks over the square of the mixture it passes, with so much gas to the air.
        let head = |flow: ActualVolumeFlow<S>, gas_to_air: S| {
            let one_head = burner.air_of_one_head(flow.at(air.density).kilograms_per_second());
            let gas = one_head.kilograms_per_second() * gas_to_air;
            let need = burner.head_need(conditions, air, Feed { gas, thrust: S::zero() }, one_head);
            need.back_pressure() / (one_head.kilograms_per_second() + gas).squared()
        };
        let flow = blower.free_delivery() * S::c(0.5);
        let more = flow * S::c(1.0 + MORE);
        let squared = flow.cubic_meters_per_second().squared();
        let still = path(flow, S::zero());
        let (gas_to_air, none) = (S::one() / air_need.mass_ratio, S::zero());
        let (pure, mixed) = (head(flow, none), head(flow, gas_to_air));
        let share = gas_to_air / (S::one() + gas_to_air);
        let by_square = burner
            .mixing_tube
            .map_or(none, |tube| -S::one() / (air.density.kilograms_per_cubic_meter() * tube_area(tube).squared()));
        // (1 + more)^(n - 2) = what is asked over the squares of the two flows; two where nothing is asked.
        let power = |over_square: S, less: S| {
            let beside_two = (over_square / less).ln() / S::c(MORE).ln_1p();
            if less > S::zero() && beside_two.is_finite() { S::c(2.0) + beside_two } else { S::c(2.0) }
        };
        let path_of_more = path(more, S::zero()) / S::c((1.0 + MORE) * (1.0 + MORE));
        let powers = [power(path_of_more, still), power(head(more, gas_to_air), mixed)];
        let (peak_flow, peak_pressure) = blower.peak();
        Self {
            path: still / squared,
            damper: (path(flow, S::one()) - still) / squared,
            head: [pure, (mixed - pure) / share - by_square * share, by_square],
            powers,
            one_head: air.density.kilograms_per_cubic_meter() / burner.head_count,
            free: blower.free_delivery().cubic_meters_per_second(),
            peak: [peak_flow.cubic_meters_per_second(), peak_pressure.pascals()],
        }
    }

    /// How what the head asks grows, in its own logarithm, with that of a share of gas.
    pub fn by_gas(&self, share: S) -> S {
        let [pure, linear, square] = self.head;
        let (linear, square) = (linear * share, square * share.squared());
        (linear + S::c(2.0) * square) / (pure + linear + square)
    }

    /// Flow and back pressure where a blower of the parabola through its peak and its free delivery meets the guessed
    /// system, bettered by one step of Newton on the blower's own curve, while the jets follow the root of their drop.
    ///
    /// `driven` is the jets' own part of the push into the open, `gas` that of one head.
    pub fn flow(&self, blower: &Blower<S>, driven: S, gas: S, gauge: S, damper: S) -> (S, S) {
        let (one, two) = (S::one(), S::c(2.0));
        let Self { one_head, free, .. } = *self;
        let gate = damper * self.damper;
        let most = self.peak[1] + driven;
        let whole = self.path + gate + self.head[0] * one_head.squared();
        let flow = free * (most / (most + whole * free.squared())).sqrt();
        let gauge = gauge.larger(S::c(NO_GAUGE));
        let (pressure, slope) = blower.pressure_and_slope(flow);
        // ln of the flow over half of the free one, nearly: what the powers of the resistances leave beside two.
        let further = two * (two * flow - free) / (two * flow + free);
        let [path_power, head_power] = self.powers;
        let path = gate + self.path * (one + (path_power - two) * further);
        let back = pressure - path * flow.squared();
        let back_slope = slope - two * path * flow;
        let share = (one - back / gauge).larger(S::c(LEAST_SHARE));
        let gas = gas * share.sqrt();
        let gas_slope = -S::c(0.5) * gas / (share * gauge) * back_slope;
        let both = one_head * flow + gas;
        let [pure, linear, square] = self.head;
        let of_gas = gas / both;
        let head = (pure + of_gas * (linear + of_gas * square)) * (one + (head_power - two) * further);
        let surplus = back + driven * share - head * both.squared();
        let fall = back_slope * (one - driven / gauge) - two * head * both * (one_head + gas_slope);
        if fall < S::zero() {
            let step = -(surplus / fall).clamped(-S::c(0.5) * flow, S::c(0.5) * flow);
            return (flow + step, back + back_slope * step);
        }
        (flow, back)
    }
}
