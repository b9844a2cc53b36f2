//! First guesses of a prepared burner: the jets between gauge pressures worked out beforehand, and the flow of air.

use super::rig::{Air, Burner, Conditions, Feed};
use crate::air::Blower;
use crate::combustion::AirNeed;
use crate::limits::Input;
use crate::quantity::{ActualVolumeFlow, GaugePressure};
use crate::scalar::Scalar;

/// How many gauge pressures the jet is worked out at to guess from.
const GUESSES: usize = 24;
/// From one of them to the next.
const FURTHER: f64 = 1.37;
/// Below this gauge pressure the air stream has as much to say as the gas: the whole search is made, Pa.
pub(super) const LEAST_GAUGE: f64 = 200.0;
/// The share of the gauge pressure that the pressure ahead of the jets is raised by to see how the flow follows it.
const LITTLE: f64 = 0.05;
/// How much more flow the powers of the resistances are taken over.
const MORE: f64 = 0.1;

/// The jet at one gauge pressure, into the open.
#[derive(Clone, Copy, Debug, Default)]
struct JetGuess<S> {
    /// Of the gauge pressure.
    root: S,
    /// Flow over the root of the drop.
    per_root: S,
    /// Thrust over the square of the flow.
    thrust: S,
    /// The power of the drop that the flow follows when the pressure ahead alone changes.
    exponent: S,
}

/// The jets of one head at gauge pressures that rise evenly in their logarithm.
#[derive(Clone, Copy, Debug)]
pub(super) struct JetGuesses<S>([JetGuess<S>; GUESSES]);

/// The jets of one head as the pressure ahead of them moves a little.
#[derive(Clone, Copy, Debug)]
pub(super) struct JetLine<S> {
    pub drop: S,
    pub back: S,
    pub feed: Feed<S>,
    pub exponent: S,
}

impl<S: Scalar> JetLine<S> {
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
        let mut gauge = S::c(Input::GaugePressure.range().max);
        let little = S::c(LITTLE);
        for guess in guesses.iter_mut().rev() {
            let at =
                |back| burner.jet_flow(conditions, GaugePressure::from_pascals(gauge), back).map(|jet| Feed::of(&jet));
            *guess = JetGuess { root: gauge.sqrt(), ..JetGuess::default() };
            // A gas that is a liquid at so high a pressure has no guess there and is refused later.
            if let (Ok(open), Ok(less)) = (at(S::zero()), at(little * gauge)) {
                if open.gas > S::zero() && less.gas > S::zero() {
                    guess.per_root = open.gas / guess.root;
                    guess.thrust = open.thrust / open.gas.squared();
                    guess.exponent = (less.gas / open.gas - S::one()).ln_1p() / (-little).ln_1p();
                }
            }
            gauge = gauge / S::c(FURTHER);
        }
        Self(guesses)
    }

    /// The jet of a gauge pressure into the open, from the parabola through three around it; none where nothing can
    /// be guessed.
    pub fn at(&self, gauge: S) -> Option<JetLine<S>> {
        if gauge < S::c(LEAST_GAUGE) {
            return None;
        }
        let root = gauge.sqrt();
        let known =
            |three: &&[JetGuess<S>]| matches!(three, [first, .., last] if first.per_root * last.per_root > S::zero());
        let mut threes = self.0.windows(3);
        let three = threes
            .find(|three| matches!(three, [_, middle, _] if root <= middle.root))
            .or(self.0.last_chunk::<3>().map(<[_; 3]>::as_slice));
        let &[a, b, c] = three.filter(known)? else { return None };
        let (from_a, from_b, from_c) = (root - a.root, root - b.root, root - c.root);
        let (ab, bc, ac) = (b.root - a.root, c.root - b.root, c.root - a.root);
        let weights = [from_b * from_c / (ab * ac), -from_a * from_c / (ab * bc), from_a * from_b / (ac * bc)];
        let along = |of: fn(&JetGuess<S>) -> S| weights[0] * of(&a) + weights[1] * of(&b) + weights[2] * of(&c);
        let gas = along(|jet| jet.per_root) * root;
        let feed = Feed { gas, thrust: along(|jet| jet.thrust) * gas.squared() };
        Some(JetLine { drop: gauge, back: S::zero(), feed, exponent: along(|jet| jet.exponent) })
    }
}

/// Resistances, each over the square of its flow.
#[derive(Clone, Copy, Debug)]
pub(super) struct SystemGuess<S> {
    path: S,
    /// Of a damper whose loss coefficient is one.
    pub damper: S,
    /// Of one head, on its mass flow.
    head: S,
    /// The powers of the flow that the first and the last really go with.
    pub powers: [S; 2],
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
        let head = |flow: ActualVolumeFlow<S>| {
            let one_head = burner.air_of_one_head(flow.at(air.density).kilograms_per_second());
            let gas = one_head.kilograms_per_second() / air_need.mass_ratio;
            let need = burner.head_need(conditions, air, Feed { gas, thrust: S::zero() }, one_head);
            (need.back_pressure(), one_head.kilograms_per_second() + gas)
        };
        let flow = blower.free_delivery() * S::c(0.5);
        let more = flow * S::c(1.0 + MORE);
        let squared = flow.cubic_meters_per_second().squared();
        let still = path(flow, S::zero());
        let (need, both) = head(flow);
        // (1 + more)^n = ratio, to the second order in the little that n is off two.
        let power = |ratio: S| S::c(2.0) + (ratio / S::c((1.0 + MORE) * (1.0 + MORE))).ln() / S::c(MORE).ln_1p();
        let powers = [
            if still > S::zero() { power(path(more, S::zero()) / still) } else { S::c(2.0) },
            if need > S::zero() { power(head(more).0 / need) } else { S::c(2.0) },
        ];
        Self {
            path: still / squared,
            damper: (path(flow, S::one()) - still) / squared,
            head: need / both.squared(),
            powers,
        }
    }

    /// The flow where a blower of the parabola through its peak and its free delivery meets the guessed system,
    /// bettered by Newton on the blower's own curve.
    ///
    /// `one_head` is the mass of air of one head to a volume of all, `driven` the jets' own part of the push, `gas` that
    /// of one head.
    pub fn flow(&self, blower: &Blower<S>, one_head: S, driven: S, gas: S, damper: S) -> S {
        let free = blower.free_delivery().cubic_meters_per_second();
        let two = S::c(2.0);
        let gate = damper * self.damper;
        let most = blower.peak().1.pascals() + driven;
        let whole = self.path + gate + self.head * one_head.squared();
        let mut flow = free * (most / (most + whole * free.squared())).sqrt();
        for _ in 0..2 {
            let (pressure, slope) = blower.pressure_and_slope(flow);
            let both = one_head * flow + gas;
            // ln of the flow over half of the free one, nearly: what the powers of the resistances leave beside two.
            let further = two * (two * flow - free) / (two * flow + free);
            let [path, head] = [(self.path, 0), (self.head, 1)]
                .map(|(resistance, index)| resistance * (S::one() + (self.powers[index] - two) * further));
            let surplus = pressure + driven - (path + gate) * flow.squared() - head * both.squared();
            let fall = slope - two * ((path + gate) * flow + head * both * one_head);
            if fall < S::zero() {
                flow = flow - (surplus / fall).clamped(-S::c(0.5) * flow, S::c(0.5) * flow);
            }
        }
        flow
    }
}
