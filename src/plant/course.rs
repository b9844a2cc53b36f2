//! What the coupled furnace does from cold to its last glow, every number with its ends.
//!
//! The plain run finds what is asked and the worst moment to lose the flame; the same questions are then put to the
//! furnace with each cause of doubt moved alone.

use heapless::Vec;

use crate::Scalar;
use crate::error::{Error, Result as CheckedResult};
use crate::furnace::coupled::{
    Bounded, Cause, Change, Content, Drive, Firing, Furnace, LIGHTS_ABOVE, LONGEST, MOST_PROMISED, Passed, Place,
    Settled, Stream, Unsure, Until, bounded_by,
};
use crate::limits::Input;
use crate::plant::answer::Number;
use crate::plant::coupled_furnace::drawing;

/// How long after warming up the fire is told that keeps the empty chamber, s.
pub const KEPT_FOR: f64 = 2400.0;
/// Down to this the steel of a head does not scale, K (from memory).
pub const HEAD_LASTS: f64 = 813.15;
/// A fire that nothing limits, over the largest one; of a burner without fire, W.
const UNLIMITED: f64 = 30.0;
const SOME_FIRE: f64 = 5e3;
/// Looks for the fire that heats a charge in a time, and how near the time must come, as a share.
const LOOKS: usize = 16;
const NEAR: f64 = 0.002;
/// The logarithm of a time that is never, over the time asked.
const BEYOND: f64 = 5.0;
/// What is above this, s, is as good as never.
const NEVER: f64 = 0.99 * LONGEST;

/// A furnace, its fires and what goes in.
#[derive(Clone)]
pub(crate) struct Model {
    /// With the products of the largest setting.
    pub largest: Furnace,
    /// With the products of the file's air ratio, which what is asked for burns at.
    pub asked: Furnace,
    /// What is not sure of either.
    pub unsure: [Unsure; 2],
    /// The largest setting's fire, W net.
    pub heat: f64,
    /// Its air, kg/s; none where the blower is not known.
    pub air: Option<f64>,
    /// Temperature the chamber works at, K.
    pub chamber: f64,
    /// The charge, the temperature it is brought to, K, and in what time, s.
    pub charge: Option<(Content, f64, f64)>,
    /// Where the gas lights by itself, K.
    pub lights: f64,
    /// Height of the chamber, m.
    pub height: f64,
    /// By how much a step may err, K.
    pub allowed: f64,
}

/// A charge heated.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Heated {
    /// How long it takes, s.
    pub time: f64,
    /// Lowest temperature of the chamber on the way, K.
    pub lowest: f64,
    /// Net heat burnt, J.
    pub fuel: f64,
    /// The largest fire, W net.
    pub peak: f64,
}

impl Heated {
    fn of(passed: &Passed) -> Self {
        Self { time: passed.time, lowest: passed.lowest, fuel: passed.ledger.fuel, peak: passed.most_fire }
    }

    /// The average fire, W net.
    #[must_use]
    pub fn mean(&self) -> f64 {
        self.fuel / self.time.max(1e-9)
    }
}

/// The charge in the furnace.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ChargeCourse {
    /// Time with the largest setting, s; none when it never gets there.
    pub time: Option<Number>,
    /// Lowest temperature of the chamber so, K.
    pub lowest: Number,
    /// The same run.
    pub heated: Heated,
    /// Time however large the fire, the chamber never above its temperature, s.
    pub least: f64,
    /// The fire that heats it in the time asked, W net; none where the chamber cannot.
    pub needed: Option<(Number, Heated)>,
}

/// From cold to the last glow.
#[derive(Clone, Debug, PartialEq)]
pub struct Course {
    /// From cold to the chamber's temperature with the largest setting, s; none when it never gets there.
    pub warm_up: Option<Number>,
    /// Heats of that: burnt, stored, with the gas, through the shell, J.
    pub warm_up_heats: [f64; 4],
    /// The fire that keeps the empty chamber, some time after warming up, W net.
    pub kept: Number,
    /// The same at steady state.
    pub kept_long: Number,
    /// Where that heat goes.
    pub kept_parts: Settled,
    /// Where the largest setting ends when left on, K; none without fire.
    pub ends: Option<Number>,
    /// The charge.
    pub charge: Option<ChargeCourse>,
    /// How long the walls light gas after a stop at the worst moment, s; the low end is what may be promised.
    pub least_lights: Number,
    /// How long they may light it, shut, with what is inside hot: until 760 C, and until the gas lights nowhere, s.
    pub may_light: [Number; 2],
    /// How long air must run, s, the charge taken out; the high end is what is to be kept.
    pub air_on: Option<Number>,
    /// The same with the charge left inside, at the high end.
    pub air_on_inside: Option<f64>,
    /// The cause that moves warming up, keeping, the charge and re-ignition most.
    pub dominant: [&'static str; 4],
}

/// The worst moment to lose the flame: in which fire's run, how late, s.
#[derive(Clone, Copy)]
enum Worst {
    Empty,
    Charge { most: f64, at: f64 },
}

/// The fire that heats a charge in its time.
#[derive(Clone, Copy)]
struct Needed {
    fire: f64,
    heated: Heated,
    slope: f64,
}

/// Answers of a run.
const MANY: usize = 11;

fn as_number(found: &Bounded) -> Number {
    let high = (found.high < NEVER).then_some(found.high);
    Number { value: found.value, low: Some(found.low), high }
}

impl Model {
    fn changed(&self, change: Change) -> Self {
        Self {
            largest: self.largest.changed(change, &self.unsure[0]),
            asked: self.asked.changed(change, &self.unsure[1]),
            charge: self.charge.as_ref().map(|(content, core, time)| (content.changed(change), *core, *time)),
            ..self.clone()
        }
    }

    /// What can move an answer at all.
    fn causes(&self) -> Vec<Cause, { Cause::ALL.len() }> {
        let drawn = self.largest.vents.iter().any(|vent| vent.place != Place::Sealed);
        let moves = |cause: &Cause| match cause {
            Cause::Discharge | Cause::LidExchange => drawn,
            Cause::AirRatio => self.unsure[0].streams.is_some(),
            Cause::Passage => !self.largest.openings.is_empty(),
            Cause::InsideFilm | Cause::ContentArea | Cause::ContentEmissivity => self.charge.is_some(),
            _ => true,
        };
        Cause::ALL.iter().copied().filter(moves).collect()
    }

    fn unlimited(&self) -> f64 {
        UNLIMITED * self.heat.max(SOME_FIRE)
    }

    fn keep(&self, most: f64) -> Drive {
        Drive::Keep { chamber: self.chamber, fire: (0.0, most) }
    }

    /// From cold to its temperature; what the largest fire does not reach is reached some other way.
    fn warm(&self) -> CheckedResult<(Firing<'_>, Passed)> {
        let mut firing = Firing::cold(&self.largest).within(self.allowed);
        let fire = Drive::Fire { heat: self.heat, leak: 0.0 };
        let until = if self.heat > 0.0 { Until::ChamberRisesTo(self.chamber) } else { Until::Time(0.0) };
        let mut passed = firing.run(&fire, until)?;
        if self.heat <= 0.0 {
            passed.ended = false;
        }
        if !passed.ended {
            firing = Firing::cold(&self.largest).within(self.allowed);
            firing.run(&self.keep(self.unlimited()), Until::Time(3600.0))?;
        }
        Ok((firing, passed))
    }

    /// The charge brought to its temperature in a warm chamber.
    fn heat_charge(&self, warm: &Firing<'_>, most: f64) -> CheckedResult<Option<Heated>> {
        let Some((content, core, _)) = &self.charge else { return Ok(None) };
        let mut firing = warm.clone();
        firing.put(content, self.largest.room)?;
        let passed = firing.run(&self.keep(most), Until::CoreRisesTo(*core))?;
        Ok(passed.ended.then(|| Heated::of(&passed)))
    }

    /// The fire that heats the charge in its time, sought from one, and by how much more of it, in logarithms, it is
    /// faster.
    fn needed(&self, warm: &Firing<'_>, from: (f64, f64)) -> CheckedResult<Option<Needed>> {
        let Some((_, _, asked)) = self.charge else { return Ok(None) };
        let (mut low, mut high) = (0.0, Scalar::ln(self.unlimited()));
        let (mut over, mut under) = (BEYOND, -BEYOND);
        let (mut at, mut slope) = (Scalar::ln(from.0), from.1);
        let mut best: Option<(f64, Heated)> = None;
        for look in 0..LOOKS {
            let heated = self.heat_charge(warm, Scalar::exp(at))?;
            // The time over the time asked; what never gets there is far beyond.
            let there = heated.map_or(BEYOND, |heated| Scalar::ln(heated.time / asked));
            if let Some(heated) = heated {
                best = Some((Scalar::exp(at), heated));
            }
            if there > 0.0 {
                (low, over) = (at, there);
            } else {
                (high, under) = (at, there);
            }
            if over < BEYOND && under > -BEYOND && (over - under) > NEAR {
                slope = ((high - low) / (over - under)).clamp(0.2, 5.0);
            }
            if there.abs() < NEAR {
                break;
            }
            // By the slope, and by halves where that creeps.
            let line = at + (there * slope).clamp(-0.7, 0.7);
            at = if look % 4 == 3 || line <= low || line >= high { 0.5 * (low + high) } else { line };
        }
        Ok(best.map(|(fire, heated)| Needed { fire, heated, slope }))
    }

    /// The same run put to each question; the worst moment is the plain run's.
    fn answers(&self, worst: Worst) -> CheckedResult<[f64; MANY]> {
        let (warm, up) = self.warm()?;
        let warm_up = if up.ended { up.time } else { LONGEST };
        let mut held = warm.clone().into(&self.asked);
        let kept = held.run(&self.keep(self.unlimited()), Until::Time(KEPT_FOR))?.fire;
        let kept_long = held.clone().settled(&self.keep(self.unlimited()))?.fire;
        let ends = if self.heat > 0.0 {
            warm.clone().settled(&Drive::Fire { heat: self.heat, leak: 0.0 })?.chamber
        } else {
            0.0
        };
        let (mut charge, mut lowest, mut stopped) = (0.0, 0.0, held.clone().into(&self.largest));
        if let Some((content, core, _)) = &self.charge {
            stopped = warm.clone();
            stopped.put(content, self.largest.room)?;
            let passed = stopped.run(&self.keep(self.heat), Until::CoreRisesTo(*core))?;
            (charge, lowest) = (if passed.ended { passed.time } else { LONGEST }, passed.lowest);
            // A fire too small for it lets the chamber cool for days: it is hottest kept empty.
            if !passed.ended {
                stopped = held.clone().into(&self.largest);
            }
        }
        let mut lost = warm.clone();
        if let (Worst::Charge { most, at }, Some((content, ..))) = (worst, &self.charge) {
            lost.put(content, self.largest.room)?;
            if at > 0.0 {
                lost.run(&self.keep(most), Until::Time(at))?;
            }
        }
        let least = lost.stays_above(LIGHTS_ABOVE, true)?;
        let drawn = drawing(&self.largest, self.height);
        let least_drawn = lost.clone().into(&drawn).stays_above(LIGHTS_ABOVE, true)?;
        let (shut, may_light) = stopped.clone().lights_shut(self.lights)?;
        stopped.take();
        let air_on = match self.air {
            Some(air) => stopped.air_on(air, HEAD_LASTS)?,
            None => 0.0,
        };
        Ok([warm_up, kept, kept_long, ends, charge, lowest, least, least_drawn, shut, may_light, air_on])
    }

    /// The worst moment to lose the flame at.
    fn worst(&self, warm: &Firing<'_>, needed: Option<&Needed>) -> CheckedResult<Worst> {
        let mut worst = Worst::Empty;
        let Some((content, core, _)) = &self.charge else { return Ok(worst) };
        let mut lights_for = warm.stays_above(LIGHTS_ABOVE, true)?;
        let fires = [Some(self.heat).filter(|heat| *heat > 0.0), needed.map(|needed| needed.fire)];
        for most in fires.into_iter().flatten() {
            let mut firing = warm.clone();
            firing.put(content, self.largest.room)?;
            let (_, moment) = firing.worst_moment(&self.keep(most), Until::CoreRisesTo(*core), LIGHTS_ABOVE, true)?;
            if moment.lights_for < lights_for {
                (worst, lights_for) = (Worst::Charge { most, at: moment.at }, moment.lights_for);
            }
        }
        Ok(worst)
    }

    /// Goes through the furnace's course. `rough` is the same furnace, coarser: it finds where to look, and by what share
    /// each cause moves an answer.
    ///
    /// # Errors
    ///
    /// A charge too large for the chamber; a temperature that no fire of this gas keeps.
    pub(crate) fn course(&self, rough: &Self) -> CheckedResult<Course> {
        let (rough_warm, _) = rough.warm()?;
        let start = (self.heat.max(SOME_FIRE), 1.0);
        let found = rough.needed(&rough_warm.clone().into(&rough.asked), start)?;
        let worst = rough.worst(&rough_warm, found.as_ref())?;
        let (warm, up) = self.warm()?;
        let mut held = warm.clone().into(&self.asked);
        held.run(&self.keep(self.unlimited()), Until::Time(KEPT_FOR))?;
        let kept_parts = held.settled(&self.keep(self.unlimited()))?;
        let values = self.answers(worst)?;
        let mut shares = bounded_by(&self.causes(), |change| rough.changed(change).answers(worst))?;
        for (share, value) in shares.iter_mut().zip(values) {
            let scale = if share.value > 0.0 { value / share.value } else { 0.0 };
            *share = Bounded { value, low: share.low * scale, high: share.high * scale, ..*share };
        }
        let [warm_up, kept, kept_long, ends, time, lowest, least_lights, drawn, shut, may, air_on] = shares;
        let low = as_number(&drawn).low.map_or(MOST_PROMISED, |low| low.min(MOST_PROMISED));
        let charge = match &self.charge {
            Some(charge) => Some(self.charge_course(&warm, charge, (&time, &lowest), found)?),
            None => None,
        };
        Ok(Course {
            warm_up: (warm_up.value < NEVER).then(|| as_number(&warm_up)),
            warm_up_heats: [up.ledger.fuel, up.ledger.stored, up.ledger.flue, up.ledger.shell],
            kept: as_number(&kept),
            kept_long: as_number(&kept_long),
            kept_parts,
            ends: (self.heat > 0.0).then(|| as_number(&ends)),
            charge,
            least_lights: Number { value: least_lights.value, low: Some(low), high: as_number(&shut).high },
            may_light: [as_number(&shut), as_number(&may)],
            air_on: self.air.map(|_| as_number(&air_on)),
            air_on_inside: rough.air_on_inside(&rough_warm)?.map(|time| time * air_on.high / air_on.value.max(1.0)),
            dominant: [warm_up.dominant, kept.dominant, time.dominant, drawn.dominant].map(Cause::key),
        })
    }

    /// How long air must run with the charge left inside, s.
    fn air_on_inside(&self, warm: &Firing<'_>) -> CheckedResult<Option<f64>> {
        let (Some(air), Some((content, core, _))) = (self.air, &self.charge) else { return Ok(None) };
        let mut firing = warm.clone();
        firing.put(content, self.largest.room)?;
        firing.run(&self.keep(self.heat), Until::CoreRisesTo(*core))?;
        firing.air_on(air, HEAD_LASTS).map(Some)
    }

    /// The charge, its time and the chamber's dip with their ends.
    fn charge_course(
        &self,
        warm: &Firing<'_>,
        (content, core, asked): &(Content, f64, f64),
        (time, lowest): (&Bounded, &Bounded),
        found: Option<Needed>,
    ) -> CheckedResult<ChargeCourse> {
        let mut firing = warm.clone();
        firing.put(content, self.largest.room)?;
        let heated = Heated::of(&firing.run(&self.keep(self.heat), Until::CoreRisesTo(*core))?);
        let asked_warm = warm.clone().into(&self.asked);
        let least = self.heat_charge(&asked_warm, self.unlimited())?.map_or(LONGEST, |heated| heated.time);
        let needed = match found.filter(|_| least <= *asked) {
            Some(found) => self.needed(&asked_warm, (found.fire, found.slope))?,
            None => None,
        };
        // What takes longer by some share needs more fire by the slope.
        let way = |end: f64, slope: f64| Scalar::exp(slope * Scalar::ln((end / time.value).clamp(0.05, 20.0)));
        let needed = needed.map(|Needed { fire, heated, slope }| {
            let ends = [time.low, time.high].map(|end| Some(fire * way(end, slope)));
            (Number { value: fire, low: ends[0], high: ends[1] }, heated)
        });
        let time = (time.value < NEVER).then(|| as_number(time));
        Ok(ChargeCourse { time, lowest: as_number(lowest), heated, least, needed })
    }
}

/// Several runs of one number, put to a value that a finer run found.
fn scaled(value: f64, found: CheckedResult<[Bounded; 1]>) -> Number {
    let Ok([found]) = found else { return Number::alone(value) };
    let scale = value / found.value;
    as_number(&Bounded { value, low: found.low * scale, high: found.high * scale, ..found })
}

impl Model {
    /// Where a fire, W net, of the file's air ratio ends that is left on.
    fn ends(furnace: &Furnace, heat: f64, allowed: f64) -> CheckedResult<Settled> {
        if heat <= 0.0 {
            return Err(Error::OutOfRange { input: Input::HeatRate, given: 0.0 });
        }
        Firing::cold(furnace).within(allowed).settled(&Drive::Fire { heat, leak: 0.0 })
    }

    /// Where a setting's fire, W net, ends that is left on.
    pub(crate) fn ends_with(&self, stream: Stream, heat: f64) -> CheckedResult<Settled> {
        Self::ends(&Furnace { stream, ..self.asked.clone() }, heat, self.allowed)
    }

    /// The ends of a temperature, K, that a fire was found to keep whose gas is known to a share.
    pub(crate) fn ends_within(&self, value: f64, heat: f64, gas: Option<f64>) -> Number {
        let end = |change, heat: f64| -> CheckedResult<[f64; 1]> {
            Ok([Self::ends(&self.asked.changed(change, &self.unsure[1]), heat, self.allowed)?.chamber])
        };
        let found = bounded_by(&self.causes(), |change| end(change, heat)).and_then(|[found]| {
            let Some(share) = gas else { return Ok([found]) };
            let moved = |factor: f64| -> CheckedResult<f64> {
                Ok(Scalar::ln(end(Change::default(), factor * heat)?[0] / found.value))
            };
            let join = |end: f64, moved: f64| Scalar::sqrt(Scalar::ln(end / found.value).squared() + moved.squared());
            let high = found.value * Scalar::exp(join(found.high, moved(1.0 + share)?));
            let low = found.value * Scalar::exp(-join(found.low, moved(1.0 - share)?));
            Ok([Bounded { low, high, ..found }])
        });
        scaled(value, found)
    }

    /// The fire that keeps the empty chamber at a temperature, K, at steady state.
    pub(crate) fn keeps(&self, kelvin: f64) -> CheckedResult<Settled> {
        keeps(&self.asked, kelvin, self.allowed)
    }

    /// The ends of such a fire, W.
    pub(crate) fn keeps_within(&self, value: f64, kelvin: f64) -> Number {
        let changed = |change| self.asked.changed(change, &self.unsure[1]);
        let run = |change| Ok([keeps(&changed(change), kelvin, self.allowed)?.fire]);
        scaled(value, bounded_by(&self.causes(), run))
    }
}

/// The fire that keeps an empty chamber at a temperature, K, at steady state.
pub(crate) fn keeps(furnace: &Furnace, kelvin: f64, allowed: f64) -> CheckedResult<Settled> {
    Firing::cold(furnace).within(allowed).settled(&Drive::Keep { chamber: kelvin, fire: (0.0, SOME_FIRE * 200.0) })
}
