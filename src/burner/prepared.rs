//! A burner under conditions that hold for a while, for a controller that asks it again and again.
//!
//! All that depends on the weather is worked out once. A setting is then found from a near guess in a few steps with
//! one evaluation of the jet, where [`Burner::run`] searches the whole curve of the blower with dozens.

use super::rig::{Air, Burner, Conditions, Feed, tube_area};
use super::running::Running;
use crate::air::Blower;
use crate::combustion::AirNeed;
use crate::error::Result;
use crate::limits::{Input, check};
use crate::quantity::{ActualVolumeFlow, GaugePressure, MassFlow, NetHeatRate, PressureDifference};
use crate::scalar::Scalar;

/// How many gauge pressures the jet is worked out at to guess from.
const GUESSES: usize = 12;
/// From one of them to the next.
const FURTHER: f64 = 1.95;
/// Below this gauge pressure the air stream has as much to say as the gas: the whole search is made, Pa.
const LEAST_GAUGE: f64 = 200.0;
/// How much more flow the powers of the resistances are taken over.
const MORE: f64 = 0.1;
/// Looks at the whole burner before the search is left to [`Burner::run`].
const LOOKS: usize = 8;
/// A step this small, relative, is taken along the slopes and is the last: the slopes are right to a fiftieth.
const CLOSE: f64 = 1e-4;
/// Below this share of the gauge pressure left to drive the gas, the whole search is made.
const LEAST_DROP: f64 = 0.25;
/// How far the pressure ahead of the jet may move, over its drop, before the jet is worked out again.
const MOVED: f64 = 8e-4;
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

/// Where a burner settles. Gas and air are those of all heads together.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Operating<S = f64> {
    /// Gas.
    pub gas: MassFlow<S>,
    /// Its heat, net.
    pub heat_net: NetHeatRate<S>,
    /// Air.
    pub air: MassFlow<S>,
    /// The same at the blower's inlet.
    pub air_flow: ActualVolumeFlow<S>,
    /// Air supplied over air needed; none where no gas flows.
    pub air_ratio: Option<S>,
    /// Static pressure of the blower.
    pub blower_pressure: PressureDifference<S>,
    /// Static pressure where the jets stand.
    pub back_pressure: GaugePressure<S>,
    /// Whether the blower runs left of its highest point, where it may surge.
    pub left_of_peak: bool,
    /// How often the whole burner was looked at.
    pub looks: usize,
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
    /// The powers of the flow that the first and the last really go with.
    powers: [S; 2],
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

/// The burner at a trial flow of air, in pascals, and how that changes with the flow.
struct Look<S> {
    pressure: S,
    pressure_slope: S,
    back: S,
    back_slope: S,
    /// What the blower has over what the system asks.
    surplus: S,
    /// What the head asks more when the gas grows by its own size.
    gas_asks: S,
    /// Nearly.
    slope: S,
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
        let path = |flow, damper| self.path_loss(air, flow, damper).pascals();
        let head = |flow: ActualVolumeFlow<S>| {
            let one_head = self.air_of_one_head(flow.at(air.density).kilograms_per_second());
            let gas = one_head.kilograms_per_second() / air_need.mass_ratio;
            let need = self.head_need(conditions, air, Feed { gas, thrust: S::zero() }, one_head);
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
        SystemGuess {
            path: still / squared,
            damper: (path(flow, S::one()) - still) / squared,
            head: need / both.squared(),
            powers,
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

    /// Where the burner settles, within 1e-4 of [`Burner::run`].
    ///
    /// Where the near guess does not lead to an answer that is sure to be the same (at gauges of a few pascals, far
    /// left of a blower's peak, beyond what the blower holds), the whole search is made.
    ///
    /// # Errors
    ///
    /// Those of [`Burner::run`].
    pub fn run(&self, gauge: GaugePressure<S>, opening: S) -> Result<Operating<S>> {
        let damper = self.burner.path.damper_loss_coefficient(opening)?;
        check(Input::GaugePressure, gauge.pascals())?;
        if let Some(found) = self.near(gauge, damper)? {
            return Ok(found);
        }
        let Running { gas, air, air_flow, air_ratio, blower_pressure, back_pressure, left_of_peak, iterations, .. } =
            self.burner.run_with_loss(&self.conditions, gauge, damper)?;
        let heat_net = self.conditions.gas.net_heating_value().of(gas);
        let looks = LOOKS + iterations;
        Ok(Operating { gas, heat_net, air, air_flow, air_ratio, blower_pressure, back_pressure, left_of_peak, looks })
    }

    /// The setting from a near guess; none where that does not settle.
    fn near(&self, gauge: GaugePressure<S>, damper: S) -> Result<Option<Operating<S>>> {
        let Some(mut line) = self.guessed_jet(gauge.pascals()) else { return Ok(None) };
        let mut flow = self.guessed_flow(&line, damper);
        let mut guessed = true;
        let mut before: Option<(S, S)> = None;
        let most = S::c(MOVED_OF_BLOWER) * self.blower.peak().1.pascals();
        for looks in 1..=LOOKS {
            let look = self.look(flow, damper, &line);
            let slope = match before {
                Some((other, surplus)) if other != flow => (look.surplus - surplus) / (flow - other),
                _ => look.slope,
            };
            // Where the surplus does not fall there may be a higher crossing.
            if !(slope < S::zero() && flow > S::zero()) {
                return Ok(None);
            }
            let mut step = -look.surplus / slope;
            let back = look.back + look.back_slope * step;
            let moved = (back - line.back).abs() > (S::c(MOVED) * line.drop).smaller(most);
            if guessed || moved {
                let jet = self.burner.jet_flow(&self.conditions, gauge, back)?;
                let drop = gauge.pascals() - back;
                if drop < S::c(LEAST_DROP) * gauge.pascals() {
                    return Ok(None);
                }
                // What the head asks more, and the jets push more, than the line before had it.
                let (feed, was) = (Feed::of(&jet), line.feed(line.share(back)));
                let asked = look.gas_asks * (feed.gas / was.gas - S::one());
                let pushed = self.driven(feed.thrust - was.thrust);
                step += (asked - pushed) / slope;
                line = JetLine { drop, back, feed, exponent: line.exponent };
                (guessed, before) = (false, None);
            } else if step.abs() <= S::c(CLOSE) * flow {
                let pressure = look.pressure + look.pressure_slope * step;
                return Ok(self.settled(flow + step, pressure, back, &line, looks));
            } else {
                before = Some((flow, look.surplus));
            }
            flow += step.clamped(-S::c(0.5) * flow, flow);
        }
        Ok(None)
    }

    /// What follows from the flow of air and the pressures there; none where another crossing may lie higher.
    fn settled(&self, flow: S, pressure: S, back: S, line: &JetLine<S>, looks: usize) -> Option<Operating<S>> {
        let left_of_peak = flow < self.blower.peak().0.cubic_meters_per_second();
        if left_of_peak && !self.is_highest(flow, pressure) {
            return None;
        }
        let air_flow = ActualVolumeFlow::from_cubic_meters_per_second(flow);
        let air = air_flow.at(self.air.density);
        let gas = MassFlow::from_kilograms_per_second(line.feed.gas * line.share(back) * self.burner.head_count);
        Some(Operating {
            gas,
            heat_net: self.conditions.gas.net_heating_value().of(gas),
            air,
            air_flow,
            air_ratio: self.air_need.air_ratio(air, gas),
            blower_pressure: PressureDifference::from_pascals(pressure),
            back_pressure: GaugePressure::from_pascals(back),
            left_of_peak,
            looks,
        })
    }

    /// The burner at a trial flow.
    fn look(&self, flow: S, damper: S, line: &JetLine<S>) -> Look<S> {
        let (pressure, pressure_slope) = self.blower.pressure_and_slope(flow);
        let volume = ActualVolumeFlow::from_cubic_meters_per_second(flow);
        let path = self.burner.path_loss(&self.air, volume, damper).pascals();
        let back = pressure - path;
        let feed = line.feed(line.share(back));
        let air = self.burner.air_of_one_head(volume.at(self.air.density).kilograms_per_second());
        let need = self.burner.head_need(&self.conditions, &self.air, feed, air).back_pressure();
        // All but the jets' own push goes with a power of the flow, the damper's loss with its square.
        let [path_power, head_power] = self.system.powers;
        let driven = self.driven(feed.thrust);
        let pushed = need + driven;
        let air_share = air.kilograms_per_second() / (air.kilograms_per_second() + feed.gas);
        let per_flow = S::one() / flow;
        let gate = self.system.damper * damper * flow.squared();
        // More air, less pressure ahead of the jets, more gas.
        let gas_asks = head_power * pushed * (S::one() - air_share);
        let line_asks = (gas_asks - S::c(2.0) * driven) * line.exponent / line.drop;
        let back_slope = pressure_slope - (path_power * path + (S::c(2.0) - path_power) * gate) * per_flow;
        Look {
            pressure,
            pressure_slope,
            back,
            back_slope,
            surplus: back - need,
            gas_asks,
            slope: back_slope * (S::one() + line_asks) - head_power * pushed * air_share * per_flow,
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
        let (system, two) = (&self.system, S::c(2.0));
        let gate = damper * system.damper;
        let driven = self.driven(line.feed.thrust);
        let most = self.blower.peak().1.pascals() + driven;
        let whole = system.path + gate + system.head * per_flow.squared();
        let mut flow = free * (most / (most + whole * free.squared())).sqrt();
        for _ in 0..2 {
            let (pressure, slope) = self.blower.pressure_and_slope(flow);
            let both = per_flow * flow + line.feed.gas;
            // ln of the flow over half of the free one, nearly: what the powers of the resistances leave beside two.
            let further = two * (two * flow - free) / (two * flow + free);
            let [path, head] = [(system.path, 0), (system.head, 1)]
                .map(|(resistance, index)| resistance * (S::one() + (system.powers[index] - two) * further));
            let surplus = pressure + driven - (path + gate) * flow.squared() - head * both.squared();
            let fall = slope - two * ((path + gate) * flow + head * both * per_flow);
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
