//! A burner under conditions that hold for a while, for a controller that asks it again and again.
//!
//! All that depends on the weather is worked out once. A setting is then found from a near guess in a few steps with
//! one evaluation of the jet, where [`Burner::run`] searches the whole curve of the blower with dozens.

use core::borrow::Borrow;

use super::guess::{JetGuesses, JetLine, SystemGuess};
use super::rig::{Air, Burner, Conditions, Feed, tube_area};
use super::running::Running;
use crate::air::Blower;
use crate::combustion::AirNeed;
use crate::error::{Error, Result};
use crate::limits::{Input, check};
use crate::quantity::{ActualVolumeFlow, GaugePressure, MassFlow, NetHeatRate, PressureDifference, Temperature};
use crate::scalar::Scalar;

/// Passes between gas and the pressure ahead of its jets, each of which leaves a small share of the error.
const PASSES: usize = 2;
/// Looks at the whole burner before the search is left to [`Burner::run`].
const LOOKS: usize = 8;
/// Below this gauge pressure the air stream has as much to say as the gas, and readings tell nothing, Pa.
const LEAST_GAUGE: f64 = 200.0;
/// Up to this share of the gauge pressure ahead of the jets they are guessed from those into the open.
const NEAR: f64 = 0.02;
/// A step this small, relative, is taken along the slopes and is the last: a look's slope is right to three hundredths
/// (in 99 of 100), and what bends it leaves half of the step's square.
const CLOSE: f64 = 1e-3;
/// How far the slope between two looks may be from that of the look itself, either way; a bend or another line of the
/// jets is between them otherwise.
const SECANT: f64 = 1.5;
/// A flow beyond so many free deliveries is left to the whole search, which refuses it.
const FURTHEST: f64 = 2.9;
/// How far the pressure ahead of the jets may follow that step, over their drop.
const FOLLOWED: f64 = 3e-3;
/// Below this share of the gauge pressure left to drive the gas, the whole search is made.
const LEAST_DROP: f64 = 0.02;
/// How far the pressure ahead of the jets may move, over its drop, before they are worked out again.
const MOVED: f64 = 1e-3;
/// How far it may move the flow of air by the jets' thrust, which goes otherwise than their flow.
const MOVED_BY_THRUST: f64 = 2e-5;

/// A burner with its conditions applied once; `B` is the burner, or a reference to it.
#[derive(Clone, Debug)]
pub struct Prepared<B, S = f64> {
    burner: B,
    conditions: Conditions<S>,
    air: Air<S>,
    air_need: AirNeed<S>,
    blower: Blower<S>,
    jets: JetGuesses<S>,
    system: SystemGuess<S>,
    /// Area of the jets over that of the mixing tube; zero without one.
    jet_share: S,
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
    ///
    /// # Source
    ///
    /// No physics of its own: the near guess ends where the balance of [`Burner::run`] closes.
    pub fn prepared(&self, conditions: &Conditions<S>) -> Result<Prepared<&Self, S>> {
        Prepared::new(self, conditions)
    }

    /// [`Burner::prepared`] that owns the burner.
    ///
    /// # Errors
    ///
    /// An input out of range.
    pub fn into_prepared(self, conditions: &Conditions<S>) -> Result<Prepared<Self, S>> {
        Prepared::new(self, conditions)
    }
}

impl<S: Scalar, B: Borrow<Burner<S>>> Prepared<B, S> {
    fn new(held: B, conditions: &Conditions<S>) -> Result<Self> {
        let burner = held.borrow();
        let lowest = GaugePressure::from_pascals(S::c(Input::GaugePressure.range().max / 2_000.0));
        burner.checked(conditions, lowest)?;
        let (air, air_need) = (conditions.air(), conditions.air_need());
        let blower = burner.blower_here(conditions)?;
        let jets = JetGuesses::new(burner, conditions);
        let system = SystemGuess::new(burner, conditions, &air, &air_need, &blower);
        let jet_area = burner.jet.count * burner.jet.bore.area().square_meters();
        let jet_share = burner.mixing_tube.map_or(S::zero(), |tube| jet_area / tube_area(tube));
        Ok(Self { burner: held, conditions: *conditions, air, air_need, blower, jets, system, jet_share })
    }

    /// The burner.
    #[must_use]
    pub fn burner(&self) -> &Burner<S> {
        self.burner.borrow()
    }

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

    /// The jets without working them out anew: from those worked out when the burner was prepared, within half a
    /// percent of [`Jet::flow`](crate::orifice::Jet::flow) at 98 of 100 states in which the air stands at less than three
    /// tenths of the gauge, within three percent where the flow in a bore turns turbulent or the air stands at an
    /// atmosphere.
    ///
    /// The flow goes with the root of the density, by which a gas temperature other than that of the conditions is
    /// allowed for.
    fn feed_near(
        &self,
        gauge: GaugePressure<S>,
        back: GaugePressure<S>,
        gas_temperature: Temperature<S>,
    ) -> Result<Feed<S>> {
        check(Input::GaugePressure, gauge.pascals())?;
        check(Input::GasTemperature, gas_temperature.kelvin())?;
        let nothing = Error::NoSolution { input: Input::GaugePressure, nearest: LEAST_GAUGE as f32 };
        let is_enough = gauge.pascals() >= S::c(LEAST_GAUGE);
        let feed = self.jets.at(gauge.pascals(), back.pascals()).filter(|_| is_enough).ok_or(nothing)?.feed;
        let supply = gauge.to_absolute(self.conditions.ambient());
        let density = |temperature| {
            self.conditions.gas.density(supply, temperature).map(|found| found.kilograms_per_cubic_meter())
        };
        let denser = density(gas_temperature)? / density(self.conditions.gas_temperature)?;
        // The thrust goes with the pressures alone.
        Ok(Feed { gas: feed.gas * denser.sqrt(), ..feed })
    }

    /// Gas of all heads, and the pressure where the jets stand, when this much air passes the heads.
    ///
    /// The pressure is what the heads need for the mixture, so that no damper mark is trusted.
    ///
    /// # Errors
    ///
    /// Gauge pressure or gas temperature out of range; [`Error::NoSolution`] below 200 Pa, where the air stands against
    /// all of the gauge, and where the gas would be a liquid.
    pub fn gas_with_air(
        &self,
        gauge: GaugePressure<S>,
        gas_temperature: Temperature<S>,
        air: MassFlow<S>,
    ) -> Result<(MassFlow<S>, GaugePressure<S>)> {
        let one_head = self.burner().air_of_one_head(air.kilograms_per_second());
        let mut back = GaugePressure::from_pascals(S::zero());
        let mut feed = self.feed_near(gauge, back, gas_temperature)?;
        for _ in 0..PASSES {
            let need = self.burner().head_need(&self.conditions, &self.air, feed, one_head);
            back = GaugePressure::from_pascals(need.back_pressure().smaller(gauge.pascals()));
            feed = self.feed_near(gauge, back, gas_temperature)?;
        }
        Ok((MassFlow::from_kilograms_per_second(feed.gas * self.burner().head_count), back))
    }

    /// Where the burner settles, within 1e-4 of [`Burner::run`], within 5e-4 where a blower's curve bends sharply or the
    /// air stands against nearly all of the gauge.
    ///
    /// Where the near guess does not lead to an answer that is sure to be the same (where the air stands against nearly
    /// all of the gauge, far left of a blower's peak, beyond what the blower holds), the whole search is made.
    ///
    /// # Errors
    ///
    /// Those of [`Burner::run`].
    pub fn run(&self, gauge: GaugePressure<S>, opening: S) -> Result<Operating<S>> {
        let damper = self.burner().path.damper_loss_coefficient(opening)?;
        check(Input::GaugePressure, gauge.pascals())?;
        if let Some(found) = self.near(gauge, damper)? {
            return Ok(found);
        }
        let Running { gas, air, air_flow, air_ratio, blower_pressure, back_pressure, left_of_peak, iterations, .. } =
            self.burner().run_with_loss(&self.conditions, gauge, damper)?;
        let heat_net = self.conditions.gas.net_heating_value().of(gas);
        let looks = LOOKS + iterations;
        Ok(Operating { gas, heat_net, air, air_flow, air_ratio, blower_pressure, back_pressure, left_of_peak, looks })
    }

    /// The setting from a near guess; none where that does not settle.
    fn near(&self, gauge: GaugePressure<S>, damper: S) -> Result<Option<Operating<S>>> {
        let line_at = |back| {
            if back < gauge.pascals() {
                self.jets.at(gauge.pascals(), back)
            } else {
                Some(JetLine::still(gauge.pascals()))
            }
        };
        let Some(mut line) = line_at(S::zero()) else { return Ok(None) };
        let driven = self.driven(line.feed.thrust);
        let (mut flow, back) = self.system.flow(&self.blower, driven, line.feed.gas, gauge.pascals(), damper);
        if back > S::c(NEAR) * gauge.pascals() {
            let Some(there) = line_at(back) else { return Ok(None) };
            line = there;
        }
        let flows = line.feed.gas > S::zero();
        let mut guessed = true;
        let mut before: Option<(S, S)> = None;
        for looks in 1..=LOOKS {
            let look = self.look(flow, damper, &line);
            let slope = match before {
                Some((other, surplus)) if other != flow => {
                    let secant = (look.surplus - surplus) / (flow - other);
                    let share = secant / look.slope;
                    if share < S::c(SECANT) && share > S::c(1.0 / SECANT) { secant } else { look.slope }
                }
                _ => look.slope,
            };
            // Where the surplus does not fall there may be a higher crossing.
            if !(slope < S::zero() && flow > S::zero() && flow < S::c(FURTHEST) * self.system.free) {
                return Ok(None);
            }
            let mut step = -look.surplus / slope;
            let back = look.back + look.back_slope * step;
            let by = (back - line.back).abs();
            let moved = by > S::c(MOVED) * line.drop || by * self.jet_share > -S::c(MOVED_BY_THRUST) * slope * flow;
            let mut surplus = look.surplus;
            let mut furthest = step.abs();
            if flows && (guessed || moved) {
                let jet = self.burner().jet_flow(&self.conditions, gauge, back)?;
                let drop = gauge.pascals() - back;
                if drop < S::c(LEAST_DROP) * gauge.pascals() {
                    return Ok(None);
                }
                // What the head asks more, and the jets push more, than the line before had it.
                let (feed, was) = (Feed::of(&jet), line.feed(line.share(back)));
                if was.gas <= S::zero() {
                    return Ok(None);
                }
                let asked = look.gas_asks * (feed.gas / was.gas - S::one());
                let pushed = self.driven(feed.thrust - was.thrust);
                surplus += pushed - asked;
                step = -surplus / slope;
                furthest = furthest.larger(step.abs());
                line = JetLine { drop, back, feed, exponent: line.exponent };
                guessed = false;
            }
            if furthest <= S::c(CLOSE) * flow && (!flows || (back - look.back).abs() <= S::c(FOLLOWED) * line.drop) {
                let back = look.back + look.back_slope * step;
                if flows != (back < gauge.pascals()) {
                    return Ok(None);
                }
                let pressure = look.pressure + look.pressure_slope * step;
                return Ok(self.settled(flow + step, pressure, back, &line, looks));
            }
            before = Some((flow, surplus));
            flow += step.clamped(-S::c(0.5) * flow, flow);
        }
        Ok(None)
    }

    /// What follows from the flow of air and the pressures there; none where another crossing may lie higher.
    fn settled(&self, flow: S, pressure: S, back: S, line: &JetLine<S>, looks: usize) -> Option<Operating<S>> {
        let left_of_peak = flow < self.system.peak[0];
        if left_of_peak && !self.is_highest(flow, pressure) {
            return None;
        }
        let air_flow = ActualVolumeFlow::from_cubic_meters_per_second(flow);
        let air = air_flow.at(self.air.density);
        let gas = MassFlow::from_kilograms_per_second(line.feed.gas * line.share(back) * self.burner().head_count);
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
        let path = self.burner().path_loss(&self.air, volume, damper).pascals();
        let back = pressure - path;
        let feed = line.feed(line.share(back));
        let air = self.burner().air_of_one_head(volume.at(self.air.density).kilograms_per_second());
        let head_need = self.burner().head_need(&self.conditions, &self.air, feed, air);
        let need = head_need.back_pressure();
        // All but the jets' own push goes with a power of the flow, the damper's loss with its square.
        let path_power = self.system.powers[0];
        let driven = self.driven(feed.thrust);
        let pushed = need + driven;
        let head_asks = S::c(2.0) * pushed + (head_need.head.power - S::c(2.0)) * head_need.head.pressure.pascals();
        let air_share = air.kilograms_per_second() / (air.kilograms_per_second() + feed.gas);
        let gas_share = S::one() - air_share;
        let mixture_asks = self.system.by_gas(gas_share) * pushed;
        let per_flow = S::one() / flow;
        let gate = self.system.damper * damper * flow.squared();
        // More air, less pressure ahead of the jets, more gas.
        let left = (line.drop + line.back - back).larger(S::c(LEAST_DROP) * line.drop);
        let gas_asks = head_asks * gas_share + mixture_asks * air_share;
        let line_asks = (gas_asks - S::c(2.0) * driven) * line.exponent / left;
        let back_slope = pressure_slope - (path_power * path + (S::c(2.0) - path_power) * gate) * per_flow;
        Look {
            pressure,
            pressure_slope,
            back,
            back_slope,
            surplus: back - need,
            gas_asks,
            slope: back_slope * (S::one() + line_asks) - (head_asks - mixture_asks) * air_share * per_flow,
        }
    }

    /// The part of the push that does not depend on the air.
    fn driven(&self, thrust: S) -> S {
        self.burner().mixing_tube.map_or(S::zero(), |tube| thrust / tube_area(tube))
    }

    /// Whether no greater flow is met: right of the peak the blower falls and the system rises; left of it the
    /// system, which rises at least with the flow, must be above every later point of the curve.
    fn is_highest(&self, flow: S, pressure: S) -> bool {
        let per_flow = pressure / flow;
        self.blower.pressures().all(|(at, there)| at <= flow || there <= per_flow * at)
    }
}
