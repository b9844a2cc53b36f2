//! A burner under conditions that hold for a while, for a controller that asks it again and again.
//!
//! All that depends on the weather is worked out once. A setting is then found from a near guess in a few steps with
//! one evaluation of the jet, where [`Burner::run`] searches the whole curve of the blower with dozens.

use super::rig::{Air, Burner, Conditions, Feed, HeadNeed, tube_area};
use super::running::Running;
use crate::air::{Blower, OperatingPoint};
use crate::combustion::AirNeed;
use crate::error::Result;
use crate::limits::Input;
use crate::orifice::JetFlow;
use crate::quantity::{ActualVolumeFlow, GaugePressure, PressureDifference};
use crate::scalar::Scalar;

/// How many gauge pressures the jet is worked out at to guess from.
const GUESSES: usize = 10;
/// From one of them to the next.
const FURTHER: f64 = 2.25;
/// Below this gauge pressure the air stream has as much to say as the gas: the whole search is made, Pa.
const LEAST_GAUGE: f64 = 200.0;
/// Looks at the whole burner before the search is left to [`Burner::run`].
const LOOKS: usize = 8;
/// A step this small, relative, is the last.
const CLOSE: f64 = 2e-5;
/// The same where the slope is only estimated.
const CLOSE_UNSEEN: f64 = 2e-6;
/// Below this share of the gauge pressure left to drive the gas, the whole search is made.
const LEAST_DROP: f64 = 0.25;
/// How far the pressure ahead of the jet may move, over its drop, before the jet is worked out again.
const MOVED: f64 = 2e-3;
/// The same over the highest pressure of the blower, for the jets' thrust, which moves otherwise than the flow.
const MOVED_OF_BLOWER: f64 = 0.01;

/// A burner with its conditions applied once.
#[derive(Clone, Debug)]
pub struct Prepared<'b, S = f64> {
    burner: &'b Burner<S>,
    conditions: Conditions<S>,
    air: Air<S>,
    air_need: AirNeed<S>,
    blower: Blower<S>,
    jets: [JetGuess<S>; GUESSES],
    system: SystemGuess<S>,
}

/// The jet at one gauge pressure, into the open.
#[derive(Clone, Copy, Debug, Default)]
struct JetGuess<S> {
    gauge: S,
    /// Flow over the root of the drop.
    per_root: S,
    /// Thrust over the square of the flow.
    thrust: S,
    /// The power of the drop that the flow follows when the pressure ahead alone changes.
    exponent: S,
}

/// Resistances, each over the square of its flow.
#[derive(Clone, Copy, Debug)]
struct SystemGuess<S> {
    path: S,
    /// Of a damper whose loss coefficient is one.
    damper: S,
    /// Of one head, on its mass flow.
    head: S,
}

/// The jets of one head as the pressure ahead of them moves a little.
#[derive(Clone, Copy, Debug)]
struct JetLine<S> {
    drop: S,
    back: S,
    feed: Feed<S>,
    exponent: S,
}

impl<S: Scalar> JetLine<S> {
    /// The share of the flow that passes at another back pressure: (drop / drop)^exponent to the second order.
    fn share(&self, back: S) -> S {
        let x = ((self.back - back) / self.drop).larger(-S::one());
        let n = self.exponent;
        (S::one() + n * x * (S::one() + S::c(0.5) * (n - S::one()) * x)).larger(S::zero())
    }

    fn feed(&self, share: S) -> Feed<S> {
        Feed { gas: self.feed.gas * share, thrust: self.feed.thrust * share.squared() }
    }
}

/// The burner at a trial flow of air.
struct Look<S> {
    pressure: S,
    path: S,
    need: HeadNeed<S>,
    /// What the blower has over what the system asks, Pa.
    surplus: S,
    /// How that changes with the flow, nearly.
    slope: S,
    /// How the back pressure does.
    back_slope: S,
    share: S,
}

impl<S: Scalar> Look<S> {
    fn back(&self) -> S {
        self.pressure - self.path
    }
}

impl<S: Scalar> Burner<S> {
    /// Applies conditions once, for many settings under them.
    ///
    /// # Errors
    ///
    /// An input out of range.
    pub fn prepared(&self, conditions: &Conditions<S>) -> Result<Prepared<'_, S>> {
        let lowest = GaugePressure::from_pascals(S::c(Input::GaugePressure.range().max / 2_000.0));
        self.checked(conditions, lowest)?;
        let (air, air_need) = (conditions.air(), conditions.air_need());
        let blower = self.blower_here(conditions)?;
        let jets = self.jet_guesses(conditions);
        let system = self.system_guess(conditions, &air, &air_need, &blower);
        Ok(Prepared { burner: self, conditions: *conditions, air, air_need, blower, jets, system })
    }

    fn jet_guesses(&self, conditions: &Conditions<S>) -> [JetGuess<S>; GUESSES] {
        let mut guesses = [JetGuess::default(); GUESSES];
        let mut gauge = S::c(Input::GaugePressure.range().max);
        let little = S::c(0.01);
        for guess in guesses.iter_mut().rev() {
            let at =
                |back| self.jet_flow(conditions, GaugePressure::from_pascals(gauge), back).map(|jet| Feed::of(&jet));
            *guess = JetGuess { gauge, ..JetGuess::default() };
            // A gas that is a liquid at so high a pressure has no guess there and is refused later.
            if let (Ok(open), Ok(less)) = (at(S::zero()), at(little * gauge)) {
                if open.gas > S::zero() && less.gas > S::zero() {
                    guess.per_root = open.gas / gauge.sqrt();
                    guess.thrust = open.thrust / open.gas.squared();
                    guess.exponent = (less.gas / open.gas - S::one()).ln_1p() / (-little).ln_1p();
                }
            }
            gauge = gauge / S::c(FURTHER);
        }
        guesses
    }

    /// Resistances at half of the free flow and an air ratio of one.
    fn system_guess(
        &self,
        conditions: &Conditions<S>,
        air: &Air<S>,
        air_need: &AirNeed<S>,
        blower: &Blower<S>,
    ) -> SystemGuess<S> {
        let flow = blower.free_delivery() * S::c(0.5);
        let path = |damper| self.path_loss(air, flow, damper).pascals();
        let squared = flow.cubic_meters_per_second().squared();
        let one_head = self.air_of_one_head(flow.at(air.density).kilograms_per_second());
        let feed = Feed { gas: one_head.kilograms_per_second() / air_need.mass_ratio, thrust: S::zero() };
        let need = self.head_need(conditions, air, feed, one_head).back_pressure();
        let still = path(S::zero());
        SystemGuess {
            path: still / squared,
            damper: (path(S::one()) - still) / squared,
            head: need / (one_head.kilograms_per_second() + feed.gas).squared(),
        }
    }
}

impl<S: Scalar> Prepared<'_, S> {
    /// What it runs under.
    #[must_use]
    pub fn conditions(&self) -> &Conditions<S> {
        &self.conditions
    }

    /// The air the gas needs here.
    #[must_use]
    pub fn air_need(&self) -> &AirNeed<S> {
        &self.air_need
    }

    /// The blower in this air.
    #[must_use]
    pub fn blower(&self) -> &Blower<S> {
        &self.blower
    }

    /// As [`Burner::run`], within 1e-4 of it.
    ///
    /// Where the near guess does not lead to an answer that is sure to be the same (at gauges of a few pascals, left
    /// of a blower's peak, beyond what the blower holds), the whole search is made.
    ///
    /// # Errors
    ///
    /// Those of [`Burner::run`].
    pub fn run(&self, gauge: GaugePressure<S>, opening: S) -> Result<Running<S>> {
        let damper = self.burner.path.damper_loss_coefficient(opening)?;
        crate::limits::check(Input::GaugePressure, gauge.pascals())?;
        match self.near(gauge, damper)? {
            Some(running) => Ok(running),
            None => self.burner.run_with_loss(&self.conditions, gauge, damper),
        }
    }

    /// The setting from a near guess; none where that does not settle.
    fn near(&self, gauge: GaugePressure<S>, damper: S) -> Result<Option<Running<S>>> {
        let Some(mut line) = self.guessed_jet(gauge.pascals()) else { return Ok(None) };
        let mut flow = self.guessed_flow(&line, damper);
        let mut jet: Option<JetFlow<S>> = None;
        let mut before: Option<(S, S)> = None;
        let highest = self.blower.peak().1.pascals();
        for iterations in 1..=LOOKS {
            let look = self.look(flow, damper, &line);
            let (slope, close) = match before {
                Some((other, surplus)) if other != flow => ((look.surplus - surplus) / (flow - other), S::c(CLOSE)),
                _ => (look.slope, S::c(CLOSE_UNSEEN)),
            };
            // Where the surplus does not fall there may be a higher crossing.
            if !(slope < S::zero() && flow > S::zero()) {
                return Ok(None);
            }
            let step = -look.surplus / slope;
            let back = look.back() + look.back_slope * step;
            let most = (S::c(MOVED) * line.drop).smaller(S::c(MOVED_OF_BLOWER) * highest);
            let moved = (back - line.back).abs() > most;
            if let (Some(jet), false, true) = (&jet, moved, step.abs() <= close * flow) {
                if !self.is_highest(flow, look.pressure) {
                    return Ok(None);
                }
                let flow = ActualVolumeFlow::from_cubic_meters_per_second(flow);
                let point = OperatingPoint {
                    flow,
                    static_pressure: PressureDifference::from_pascals(look.pressure),
                    left_of_peak: self.blower.is_left_of_peak(flow),
                    iterations,
                };
                let path = PressureDifference::from_pascals(look.path);
                let jet = jet.shared(look.share);
                return Ok(Some(self.burner.settled(self.air.density, &self.air_need, &point, path, jet, &look.need)));
            }
            if jet.is_none() || moved {
                let fresh = self.burner.jet_flow(&self.conditions, gauge, back)?;
                let drop = gauge.pascals() - back;
                if drop < S::c(LEAST_DROP) * gauge.pascals() {
                    return Ok(None);
                }
                line = JetLine { drop, back, feed: Feed::of(&fresh), exponent: line.exponent };
                (jet, before) = (Some(fresh), None);
            } else {
                before = Some((flow, look.surplus));
            }
            flow = flow + step.clamped(-S::c(0.5) * flow, flow);
        }
        Ok(None)
    }

    /// The burner at a trial flow.
    fn look(&self, flow: S, damper: S, line: &JetLine<S>) -> Look<S> {
        let two = S::c(2.0);
        let (pressure, pressure_slope) = self.blower.pressure_and_slope(flow);
        let volume = ActualVolumeFlow::from_cubic_meters_per_second(flow);
        let path = self.burner.path_loss(&self.air, volume, damper).pascals();
        let share = line.share(pressure - path);
        let feed = line.feed(share);
        let air = self.burner.air_of_one_head(volume.at(self.air.density).kilograms_per_second());
        let need = self.burner.head_need(&self.conditions, &self.air, feed, air);
        let asked = need.back_pressure();
        // All but the jets' own push goes with the square of the flow.
        let squared = asked + self.driven(feed.thrust);
        let air_share = air.kilograms_per_second() / (air.kilograms_per_second() + feed.gas);
        let back_slope = pressure_slope - two * path / flow;
        Look {
            pressure,
            path,
            surplus: pressure - path - asked,
            slope: back_slope - two * squared * air_share / flow,
            back_slope,
            need,
            share,
        }
    }

    /// The part of the push that does not depend on the air.
    fn driven(&self, thrust: S) -> S {
        self.burner.mixing_tube.map_or(S::zero(), |tube| thrust / tube_area(tube))
    }

    /// The jet of a gauge pressure into the open, from those around; none where nothing can be guessed.
    fn guessed_jet(&self, gauge: S) -> Option<JetLine<S>> {
        if gauge < S::c(LEAST_GAUGE) {
            return None;
        }
        let mut jets = self.jets.iter();
        let mut low = jets.next()?;
        let mut high = low;
        for next in jets {
            high = next;
            if gauge <= next.gauge {
                break;
            }
            low = next;
        }
        let width = high.gauge - low.gauge;
        let share = if width > S::zero() { (gauge - low.gauge) / width } else { S::zero() };
        let between = |low: S, high: S| low + share * (high - low);
        let gas = between(low.per_root, high.per_root) * gauge.sqrt();
        let thrust = between(low.thrust, high.thrust) * gas.squared();
        let feed = Feed { gas, thrust };
        let known = low.per_root > S::zero() && high.per_root > S::zero();
        let exponent = between(low.exponent, high.exponent);
        known.then_some(JetLine { drop: gauge, back: S::zero(), feed, exponent })
    }

    /// The flow where a blower of the parabola through its peak and its free delivery meets the guessed system,
    /// bettered by Newton on the blower's own curve.
    fn guessed_flow(&self, line: &JetLine<S>, damper: S) -> S {
        let free = self.blower.free_delivery().cubic_meters_per_second();
        let per_flow = self.air.density.kilograms_per_cubic_meter() / self.burner.head_count;
        let resistance = self.system.path + damper * self.system.damper;
        let driven = self.driven(line.feed.thrust);
        let most = self.blower.peak().1.pascals() + driven;
        let whole = resistance + self.system.head * per_flow.squared();
        let mut flow = free * (most / (most + whole * free.squared())).sqrt();
        for _ in 0..2 {
            let (pressure, slope) = self.blower.pressure_and_slope(flow);
            let both = per_flow * flow + line.feed.gas;
            let surplus = pressure + driven - resistance * flow.squared() - self.system.head * both.squared();
            let fall = slope - S::c(2.0) * (resistance * flow + self.system.head * both * per_flow);
            if fall < S::zero() {
                flow = flow - (surplus / fall).clamped(-S::c(0.5) * flow, S::c(0.5) * flow);
            }
        }
        flow
    }

    /// Whether no greater flow is met: right of the peak the blower falls and the system rises; left of it the
    /// system, which rises at least with the flow, must be above every later point of the curve.
    fn is_highest(&self, flow: S, pressure: S) -> bool {
        let per_flow = pressure / flow;
        self.blower.pressures().all(|(at, there)| at <= flow || there <= per_flow * at)
    }
}
