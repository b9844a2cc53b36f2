//! Cross-limiting: air leads going up, gas leads going down, and the mixture stays in its band on the way.

use super::control_error::ControlError;
use super::crosslimit_settings::CrossLimitSettings;
use super::fingerprint::Fingerprint;
use super::position::{Position, Travel};
use crate::limits::{Input, check};
use crate::quantity::{Duration, NetHeatRate};
use crate::scalar::Scalar;

/// The share of the smallest fire that a reading may always be off by, for one near zero.
const FLOOR: f64 = 0.02;

/// Why the gas must be off.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum MixtureFault {
    /// The time step is no number, or below zero.
    Time,
    /// A reading is no number, or below zero.
    Reading,
    /// The gas reads what its regulator cannot give after its commands.
    GasContradicts,
    /// The air reads what its actuator cannot give after its commands.
    AirContradicts,
    /// The mixture may be outside its band.
    OutsideBand,
}

/// What to command now.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Limited<S = f64> {
    /// Heat the gas is set for: look its gauge pressure up.
    pub gas: NetHeatRate<S>,
    /// Heat the air is set for: look its air setting up.
    pub air: NetHeatRate<S>,
    /// Set where the gas must be off.
    pub fault: Option<MixtureFault>,
}

/// Keeps gas and air together while they move.
///
/// Two measurements tell where each stands: its reading, and its commands estimated forward with the actuator's speed.
/// New commands hold the band between all that the actuators can pass on their way, whatever their speed and however
/// late the next step comes, and they do so by either measurement of the gas with either of the air: a sensor that lies or
/// an actuator that sticks, one on each side even, does not take the mixture out of its band before the two measurements
/// contradict each other and the gas is off.
///
/// Process control, not a flame safeguard: a listed one stays in charge of the gas valve.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CrossLimit<S = f64> {
    lowest: NetHeatRate<S>,
    highest: NetHeatRate<S>,
    gas_travel: Travel<S>,
    air_travel: Travel<S>,
    /// Air over gas, of nominal positions, that holds the band with the actuators' tolerance.
    richest: S,
    leanest: S,
    /// The leanest that is commanded, which leaves room for the readings' tolerance.
    leanest_commanded: S,
    /// A reading's ends as the nominal positions that have the same.
    reading_low: S,
    reading_high: S,
    least_of_reading: S,
    least_of_position: S,
    /// What a reading may be of a position.
    believed_low: S,
    believed_high: S,
    gas: Position<S>,
    air: Position<S>,
    command: (NetHeatRate<S>, NetHeatRate<S>),
    target: S,
}

/// The air as it reads, W: by the sensor that is believed, and the least that any sensor reads.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct AirReading<S> {
    pub believed: S,
    pub least: S,
}

impl<S: Scalar> AirReading<S> {
    fn of_one(reading: NetHeatRate<S>) -> Self {
        Self { believed: reading.watts(), least: reading.watts() }
    }
}

impl<S: Scalar> CrossLimit<S> {
    /// A limiter whose actuators may stand anywhere; they settle under [`hold`](Self::hold).
    ///
    /// # Errors
    ///
    /// [`ControlError::BandTooNarrow`] where the tolerances alone could leave the band, with what they need;
    /// [`ControlError::Setting`] naming what is not usable; an air ratio out of range.
    ///
    /// # Examples
    ///
    /// ```
    /// use jetwright::control::{AirRatioBand, CrossLimit, CrossLimitSettings, Travel};
    /// use jetwright::quantity::{Duration, NetHeatRate};
    /// let kw = NetHeatRate::from_kilowatts;
    /// let travel = Travel { slowest: 4_000.0, fastest: 10_000.0 };
    /// let mut limit = CrossLimit::new(&CrossLimitSettings {
    ///     band: AirRatioBand { lowest: 0.9, target: 1.05, highest: 1.3 },
    ///     lowest: kw(10.0), highest: kw(30.0), gas_travel: travel, air_travel: travel,
    ///     actuator_tolerance: 0.03, reading_tolerance: 0.01,
    /// }).unwrap();
    /// // Gas off, actuators sent to the smallest fire for longer than they need to get there.
    /// for _ in 0..20 { limit.hold(kw(10.0), kw(10.0), Duration::from_seconds(1.0)); }
    /// assert!(limit.is_settled_at(kw(10.0)));
    /// // Twice the fire is wanted: the air goes up first, by what the band allows; the gas waits for it.
    /// let set = limit.step(kw(20.0), kw(10.0), kw(10.0), Duration::from_seconds(0.1));
    /// assert_eq!(set.fault, None);
    /// assert_eq!(set.gas, kw(10.0));
    /// assert!(set.air > kw(11.0) && set.air < kw(12.4));
    /// ```
    pub fn new(settings: &CrossLimitSettings<S>) -> Result<Self, ControlError> {
        let CrossLimitSettings { band, lowest, highest, gas_travel, air_travel, .. } = *settings;
        let (actuator, reading) = (settings.actuator_tolerance, settings.reading_tolerance);
        for ratio in [band.lowest, band.target, band.highest] {
            check(Input::AirRatio, ratio)?;
        }
        for (usable, name) in [
            (lowest.watts() > S::zero() && highest > lowest && highest.watts().is_finite(), "range of heat"),
            (gas_travel.is_usable(), "speed of the gas regulator"),
            (air_travel.is_usable(), "speed of the air's actuator"),
            (Self::is_tolerable(actuator), "tolerance of the actuators"),
            (Self::is_tolerable(reading), "tolerance of the readings"),
        ] {
            if !usable {
                return Err(ControlError::Setting { name });
            }
        }
        let one = S::one();
        let spread = (one + actuator) / (one - actuator);
        // Readings of flows that are where they should be differ by as much, and a little for rounding.
        let noise = S::c(1.0001) * (one + reading) / (one - reading);
        let richest = band.lowest / band.target * spread;
        let leanest = band.highest / band.target / spread;
        let leanest_commanded = leanest / noise.squared();
        // A hundredth is left to move in.
        if !(richest * noise.squared() <= one && leanest_commanded >= S::c(1.01)) {
            let needed = spread * noise.squared();
            return Err(ControlError::BandTooNarrow {
                needed: ((one / needed).to_f32(), (S::c(1.01) * needed).to_f32()),
            });
        }
        let anywhere = Position::anywhere_to(S::c(2.0) * highest.watts());
        Ok(Self {
            lowest,
            highest,
            gas_travel,
            air_travel,
            richest,
            leanest,
            leanest_commanded,
            reading_low: (one - reading) / (one - actuator),
            reading_high: (one + reading) / (one + actuator),
            least_of_reading: one - reading,
            least_of_position: one - actuator,
            believed_low: (one - actuator) / (one + reading),
            believed_high: (one + actuator) / (one - reading),
            gas: anywhere,
            air: anywhere,
            command: (lowest, lowest),
            target: band.target,
        })
    }

    pub(super) fn is_tolerable(share: S) -> bool {
        share >= S::zero() && share < S::c(0.3)
    }

    /// The same by a clock that may be wrong by a share: what one second of it can move.
    pub(super) fn by_clock(self, tolerance: S) -> Self {
        let (gas_travel, air_travel) = (self.gas_travel.by_clock(tolerance), self.air_travel.by_clock(tolerance));
        Self { gas_travel, air_travel, ..self }
    }

    /// One step with the gas open: the readings of now, the time since the last step, the heat wanted.
    ///
    /// On a fault the commands are the smallest fire's, and the gas must be off.
    pub fn step(
        &mut self,
        wanted: NetHeatRate<S>,
        gas_reading: NetHeatRate<S>,
        air_reading: NetHeatRate<S>,
        elapsed: Duration<S>,
    ) -> Limited<S> {
        self.step_by(wanted, gas_reading, AirReading::of_one(air_reading), elapsed)
    }

    /// The same with the air of more than one sensor: the least of them counts for a mixture that is too rich.
    pub(super) fn step_by(
        &mut self,
        wanted: NetHeatRate<S>,
        gas_reading: NetHeatRate<S>,
        air_reading: AirReading<S>,
        elapsed: Duration<S>,
    ) -> Limited<S> {
        self.estimate(elapsed);
        match self.limited(wanted, gas_reading.watts(), air_reading, elapsed) {
            Ok(command) => {
                self.command = command;
                Limited { gas: command.0, air: command.1, fault: None }
            }
            Err(fault) => {
                self.command = (self.lowest, self.lowest);
                Limited { gas: self.lowest, air: self.lowest, fault: Some(fault) }
            }
        }
    }

    /// One step with the gas off: estimates on, and sends both actuators where they are wanted.
    pub fn hold(&mut self, gas: NetHeatRate<S>, air: NetHeatRate<S>, elapsed: Duration<S>) {
        self.estimate(elapsed);
        self.send(gas, air);
    }

    /// Sends both actuators somewhere without a step of time.
    pub(super) fn send(&mut self, gas: NetHeatRate<S>, air: NetHeatRate<S>) {
        self.command = (gas, air);
    }

    /// Whether both actuators have had the time to come to a heat they were sent to.
    #[must_use]
    pub fn is_settled_at(&self, heat: NetHeatRate<S>) -> bool {
        self.gas.is_at(heat) && self.air.is_at(heat)
    }

    /// The smallest and the largest fire.
    #[must_use]
    pub fn range(&self) -> (NetHeatRate<S>, NetHeatRate<S>) {
        (self.lowest, self.highest)
    }

    /// Whether the air reads what its actuator can give.
    #[must_use]
    pub fn believes_air(&self, reading: NetHeatRate<S>) -> bool {
        self.believes(&self.air, reading.watts())
    }

    /// Whether the gas reads what its regulator can give, with its valve open.
    #[must_use]
    pub fn believes_gas(&self, reading: NetHeatRate<S>) -> bool {
        self.believes(&self.gas, reading.watts())
    }

    /// Whether the mixture is not too rich by any measurement; gas that still rises may be too little.
    #[must_use]
    pub fn has_air_for(&self, gas_reading: NetHeatRate<S>, air_reading: NetHeatRate<S>) -> bool {
        self.has_air_by(gas_reading, AirReading::of_one(air_reading))
    }

    pub(super) fn has_air_by(&self, gas_reading: NetHeatRate<S>, air_reading: AirReading<S>) -> bool {
        let (gas, air) = self.by_either(gas_reading.watts(), air_reading);
        self.has_enough_air(&gas, &air)
    }

    /// Whether the mixture is in its band by any measurement.
    #[must_use]
    pub fn is_in_band(&self, gas_reading: NetHeatRate<S>, air_reading: NetHeatRate<S>) -> bool {
        self.is_in_band_by(gas_reading, AirReading::of_one(air_reading))
    }

    pub(super) fn is_in_band_by(&self, gas_reading: NetHeatRate<S>, air_reading: AirReading<S>) -> bool {
        let (gas, air) = self.by_either(gas_reading.watts(), air_reading);
        self.holds(&gas, &air)
    }

    /// The air ratio that it aims at.
    #[must_use]
    pub fn target(&self) -> S {
        self.target
    }

    pub(super) fn fingerprint(&self, to: &mut Fingerprint) {
        to.numbers([self.lowest.watts(), self.highest.watts(), self.target]);
        to.numbers(self.gas_travel.numbers().into_iter().chain(self.air_travel.numbers()));
        to.numbers([self.richest, self.leanest, self.leanest_commanded, self.reading_low, self.reading_high]);
        to.numbers([self.least_of_reading, self.least_of_position, self.believed_low, self.believed_high]);
        to.numbers([self.gas.low, self.gas.high, self.air.low, self.air.high]);
        to.numbers([self.command.0.watts(), self.command.1.watts()]);
    }

    /// The share of an air reading that is there by both measurements, at the worst of their tolerances.
    #[must_use]
    pub fn certain_share(&self, air_reading: NetHeatRate<S>) -> S {
        let reading = air_reading.watts();
        let estimated = self.air.low * self.least_of_position;
        let read = reading * self.least_of_reading;
        if read > S::zero() { estimated.smaller(read) / reading } else { S::zero() }
    }

    /// The nominal positions whose worst ends are those of the flows that read so.
    fn read(&self, reading: S) -> Position<S> {
        Position { low: reading * self.reading_low, high: reading * self.reading_high }
    }

    /// The same of the air: at least what the least of its sensors reads.
    fn read_air(&self, reading: AirReading<S>) -> Position<S> {
        Position { low: reading.least * self.reading_low, high: reading.believed * self.reading_high }
    }

    /// Where gas and air can stand by their readings or by estimate.
    fn by_either(&self, gas_reading: S, air_reading: AirReading<S>) -> (Position<S>, Position<S>) {
        // A reading that is no number stays none, and answers no to every comparison.
        (self.read(gas_reading).or(&self.gas), self.read_air(air_reading).or(&self.air))
    }

    fn believes(&self, position: &Position<S>, reading: S) -> bool {
        let floor = S::c(FLOOR) * self.lowest.watts();
        reading + floor >= position.low * self.believed_low && reading <= position.high * self.believed_high + floor
    }

    /// Brings both positions to now; a time that is none leaves them anywhere on their way.
    pub(super) fn estimate(&mut self, elapsed: Duration<S>) {
        let seconds = elapsed.seconds();
        if seconds >= S::zero() {
            self.gas = self.gas.after(self.command.0.watts(), seconds, &self.gas_travel);
            self.air = self.air.after(self.command.1.watts(), seconds, &self.air_travel);
        } else {
            self.gas = self.gas.toward(self.command.0.watts());
            self.air = self.air.toward(self.command.1.watts());
        }
    }

    fn limited(
        &self,
        wanted: NetHeatRate<S>,
        gas_reading: S,
        air_reading: AirReading<S>,
        elapsed: Duration<S>,
    ) -> Result<(NetHeatRate<S>, NetHeatRate<S>), MixtureFault> {
        // A number that is none answers no to every comparison.
        let is_forward = elapsed.seconds() >= S::zero();
        if !is_forward {
            return Err(MixtureFault::Time);
        }
        let air = air_reading.believed;
        if !(gas_reading >= S::zero() && air_reading.least >= S::zero() && (gas_reading + air).is_finite()) {
            return Err(MixtureFault::Reading);
        }
        if !self.believes(&self.gas, gas_reading) {
            return Err(MixtureFault::GasContradicts);
        }
        if !self.believes(&self.air, air) {
            return Err(MixtureFault::AirContradicts);
        }
        let (read_gas, read_air) = (self.read(gas_reading), self.read_air(air_reading));

        // Written so that no number is the smallest fire.
        let wanted =
            if wanted > self.lowest { wanted.watts().smaller(self.highest.watts()) } else { self.lowest.watts() };
        // No more gas than the air is there for; no less than keeps the air it has from being too much.
        let least = (self.air.high / self.leanest_commanded).larger(read_air.high / self.leanest);
        let most = self.air.low.smaller(read_air.low / self.richest);
        let gas = wanted.larger(least).smaller(most);
        // No less air than any gas on the way needs; no more than it can take.
        let least = self.gas.high.larger(gas).larger(self.richest * read_gas.high);
        let most = (self.leanest_commanded * self.gas.low.smaller(gas)).smaller(self.leanest * read_gas.low);
        let air = wanted.smaller(most).larger(least);

        // All that can pass from now on, by either measurement of each.
        let (from_gas, from_air) = self.by_either(gas_reading, air_reading);
        // Air that was held above the largest fire may ask for more gas than that.
        if !(gas <= self.highest.watts() && self.holds(&from_gas.toward(gas), &from_air.toward(air))) {
            return Err(MixtureFault::OutsideBand);
        }
        Ok((NetHeatRate::from_watts(gas), NetHeatRate::from_watts(air)))
    }

    /// Whether any pair of the positions has an air ratio within the band.
    fn holds(&self, gas: &Position<S>, air: &Position<S>) -> bool {
        self.has_enough_air(gas, air) && air.high <= self.leanest * gas.low * Self::slack()
    }

    fn has_enough_air(&self, gas: &Position<S>, air: &Position<S>) -> bool {
        air.low * Self::slack() >= self.richest * gas.high
    }

    /// A little for rounding: the bounds themselves are commanded.
    fn slack() -> S {
        S::one() + S::c(8.0) * S::EPSILON
    }
}
