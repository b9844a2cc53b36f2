//! The table of settings: heat wanted to gauge pressure and air setting, evenly spaced, joined by straight lines.

use super::control_error::ControlError;
use super::fingerprint::Fingerprint;
use super::seal::{ImageError, burner_id};
use crate::burner::{AirSetting, Burner, Conditions};
use crate::interpolate::polyline::at_share;
use crate::limits::{Input, check};
use crate::quantity::{GaugePressure, HeatRate, NetHeatRate, PressureDifference};
use crate::scalar::Scalar;

/// Rows of the tables that the command and the C interface make.
pub const USUAL_ROWS: usize = 17;

/// What to set for a heat.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Setpoint<S = f64> {
    /// Gauge pressure before the jet.
    pub gauge: GaugePressure<S>,
    /// What the air's actuator is set to, such as a damper's opening.
    pub air: S,
}

/// How far a lookup can lie from the answer the table was built of, anywhere in its range.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct InterpolationBound<S = f64> {
    /// Of the gauge pressure.
    pub gauge: PressureDifference<S>,
    /// Of the air setting.
    pub air: S,
}

/// What a table is made for.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct MadeFor<S = f64> {
    /// The air ratio that its settings give: a limiter's target.
    pub air_ratio: S,
    /// The id of its burner, [`ChipBurner::burner_id`](super::ChipBurner::burner_id); any number where there is none.
    pub burner: u32,
}

impl<S> MadeFor<S> {
    /// Refuses a table of another burner than that of this id.
    pub(crate) fn check_burner(&self, id: u32) -> Result<(), ImageError> {
        if self.burner == id { Ok(()) } else { Err(ImageError::OtherBurner) }
    }
}

/// `N` settings at evenly spaced heats.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SetpointTable<const N: usize, S = f64> {
    pub(super) made_for: MadeFor<S>,
    pub(super) lowest: NetHeatRate<S>,
    pub(super) step: S,
    per_step: S,
    pub(super) rows: [Setpoint<S>; N],
    pub(super) bound: InterpolationBound<S>,
}

impl<const N: usize, S: Scalar> SetpointTable<N, S> {
    /// A table of what `answer` gives at `N` heats from `lowest` to `highest`, with a bound on the error between.
    ///
    /// Between every two rows `between` more heats are asked. Where a rising answer goes from f(a) to f(b) and the
    /// straight line from l(a) to l(b), they differ by at most max(f(b) - l(a), l(b) - f(a)), whatever the curve
    /// does between a and b. The largest of these, with the rounding of a lookup, is the bound: it needs no second
    /// derivative, only that the answer rises, which is refused where the heats asked show otherwise. The more
    /// heats, the sharper the bound; the table stays the same.
    ///
    /// # Errors
    ///
    /// What `answer` refuses; [`ControlError::NotRising`]; [`ControlError::Setting`] when the heats are not finite,
    /// above zero and in order; an air ratio out of its range.
    ///
    /// # Examples
    ///
    /// ```
    /// use jetwright::control::{MadeFor, Setpoint, SetpointTable};
    /// use jetwright::quantity::{GaugePressure, NetHeatRate};
    /// let kw = NetHeatRate::from_kilowatts;
    /// // A square law: 1 kPa at 10 kW, 4 kPa at 20 kW.
    /// let made_for = MadeFor { air_ratio: 1.05, burner: 0 };
    /// let table = SetpointTable::<3>::build(made_for, kw(10.0), kw(20.0), 9, |heat| {
    ///     let tens = heat.kilowatts() / 10.0;
    ///     Ok(Setpoint { gauge: GaugePressure::from_kilopascals(tens * tens), air: 0.3 * tens })
    /// }).unwrap();
    /// // Half way between the rows at 10 and 15 kW stands the mean of 1 and 2.25 kPa; the answer is 1.5625 kPa.
    /// let set = table.at(kw(12.5));
    /// assert!((set.gauge.kilopascals() - 1.625).abs() < 1e-12 && (set.air - 0.375).abs() < 1e-12);
    /// assert!(table.bound().gauge.pascals() >= 62.5);
    /// ```
    pub fn build(
        made_for: MadeFor<S>,
        lowest: NetHeatRate<S>,
        highest: NetHeatRate<S>,
        between: u16,
        mut answer: impl FnMut(NetHeatRate<S>) -> crate::Result<Setpoint<S>>,
    ) -> Result<Self, ControlError> {
        const { assert!(N >= 2) };
        check(Input::AirRatio, made_for.air_ratio)?;
        let (low, high) = (lowest.watts(), highest.watts());
        let step = (high - low) / S::count(N as u32 - 1);
        if !(low > S::zero() && step > S::zero() && high.is_finite()) {
            return Err(ControlError::Setting { name: "range of heat" });
        }
        let first = answer(lowest)?;
        let bound = InterpolationBound::default();
        let mut table = Self { made_for, lowest, step, per_step: S::one() / step, rows: [first; N], bound };
        let mut bound = InterpolationBound::<S>::default();
        let mut start = first;
        let parts = S::count(u32::from(between) + 1);
        for (index, row) in table.rows.iter_mut().enumerate().skip(1) {
            let base = low + S::count(index as u32 - 1) * step;
            let end = answer(NetHeatRate::from_watts(base + step))?;
            let on_line = |share: S| line(start, end, share);
            let (mut before, mut line_before) = (start, start);
            for part in 1..=u32::from(between) + 1 {
                let share = S::count(part) / parts;
                let heat = base + step * share;
                let (here, line_here) = if part == u32::from(between) + 1 {
                    (end, end)
                } else {
                    (answer(NetHeatRate::from_watts(heat))?, on_line(share))
                };
                let pascals = |set: Setpoint<S>| set.gauge.pascals();
                let gauge = apart(pascals(before), pascals(here), pascals(line_before), pascals(line_here))
                    .ok_or(ControlError::NotRising { column: Input::GaugePressure, heat: heat.to_f32() })?;
                let air = apart(before.air, here.air, line_before.air, line_here.air)
                    .ok_or(ControlError::NotRising { column: Input::DamperOpening, heat: heat.to_f32() })?;
                bound.gauge = PressureDifference::from_pascals(bound.gauge.pascals().larger(gauge));
                bound.air = bound.air.larger(air);
                (before, line_before) = (here, line_here);
            }
            *row = end;
            start = end;
        }
        // A lookup rounds four times; a row may be rounded once more on its way to a chip.
        let rounding = S::c(8.0) * S::EPSILON;
        bound.gauge = PressureDifference::from_pascals(bound.gauge.pascals() + rounding * start.gauge.pascals());
        bound.air += rounding * start.air.abs();
        table.bound = bound;
        Ok(table)
    }

    /// The table of a burner at an air ratio: gauge pressure, and damper opening for the ratio.
    ///
    /// # Errors
    ///
    /// As [`build`](Self::build), with what the burner cannot reach: a heat above its blower's largest fire, or an
    /// air flow for which the damper would have to close further than a tenth.
    pub fn for_burner(
        burner: &Burner<S>,
        conditions: &Conditions<S>,
        air_ratio: S,
        lowest: NetHeatRate<S>,
        highest: NetHeatRate<S>,
        between: u16,
    ) -> Result<Self, ControlError> {
        let made_for = MadeFor { air_ratio, burner: burner_id(burner, conditions) };
        Self::build(made_for, lowest, highest, between, |heat| {
            let gauge = burner.gauge_for_heat(conditions, HeatRate::Net(heat), AirSetting::Ratio(air_ratio))?;
            Ok(Setpoint { gauge, air: burner.opening_for(conditions, gauge, air_ratio)? })
        })
    }

    /// What to set for a heat; the first or last row outside the table's range, the first for no number.
    ///
    /// # Examples
    ///
    /// See [`build`](Self::build).
    #[must_use]
    #[inline]
    pub fn at(&self, heat: NetHeatRate<S>) -> Setpoint<S> {
        let steps = (heat.watts() - self.lowest.watts()) * self.per_step;
        let index = steps.whole().min(N as u32 - 2);
        let share = (steps - S::count(index)).clamped(S::zero(), S::one());
        match (self.rows.get(index as usize), self.rows.get(index as usize + 1)) {
            (Some(&start), Some(&end)) if share > S::zero() => line(start, end, share),
            (Some(&start), _) => start,
            _ => Setpoint::default(),
        }
    }

    /// Whether its numbers are those of a table: heats above zero, rows that are finite and do not fall.
    pub(super) fn is_usable(&self) -> bool {
        let zero = S::zero();
        let heats = self.lowest.watts() > zero && self.step > zero && self.highest().watts().is_finite();
        let steps = (self.per_step * self.step - S::one()).abs() < S::c(1e-3);
        let bounds =
            [self.bound.gauge.pascals(), self.bound.air].into_iter().all(|bound| bound >= zero && bound.is_finite());
        let finite = self.rows.iter().all(|row| row.gauge.pascals().is_finite() && row.air.is_finite());
        let rising = self.rows.iter().zip(self.rows.iter().skip(1)).all(|(a, b)| a.gauge <= b.gauge && a.air <= b.air);
        let positive = self.rows.first().is_some_and(|row| row.gauge.pascals() >= zero);
        let air_ratio = check(Input::AirRatio, self.made_for.air_ratio).is_ok();
        heats && steps && bounds && finite && rising && positive && air_ratio
    }

    pub(super) fn fingerprint(&self, to: &mut Fingerprint) {
        to.numbers([self.made_for.air_ratio, self.lowest.watts(), self.step, self.per_step]);
        to.word(self.made_for.burner);
        to.rows(&self.rows);
    }

    /// How far a lookup can lie from the answers the table was built of.
    #[must_use]
    pub fn bound(&self) -> InterpolationBound<S> {
        self.bound
    }

    /// The air ratio that its settings give, and the id of the burner that gives it.
    #[must_use]
    pub fn made_for(&self) -> MadeFor<S> {
        self.made_for
    }

    /// The heat of the first row.
    #[must_use]
    #[inline]
    pub fn lowest(&self) -> NetHeatRate<S> {
        self.lowest
    }

    /// The heat of the last row.
    #[must_use]
    #[inline]
    pub fn highest(&self) -> NetHeatRate<S> {
        NetHeatRate::from_watts(self.lowest.watts() + S::count(N as u32 - 1) * self.step)
    }

    /// The rows, from the lowest heat up.
    #[must_use]
    pub fn rows(&self) -> &[Setpoint<S>; N] {
        &self.rows
    }

    /// The heat from row to row, watts.
    #[must_use]
    pub fn step(&self) -> NetHeatRate<S> {
        NetHeatRate::from_watts(self.step)
    }

    /// The table in single precision, with the rounding of its rows in its bound.
    #[must_use]
    pub fn to_single(&self) -> SetpointTable<N, f32> {
        let last = self.rows.last().copied().unwrap_or_default();
        let rounding = 8.0 * f32::EPSILON;
        let bound = InterpolationBound {
            gauge: PressureDifference::from_pascals(
                self.bound.gauge.pascals().to_f32() + rounding * last.gauge.pascals().to_f32(),
            ),
            air: self.bound.air.to_f32() + rounding * last.air.to_f32(),
        };
        let rows = self.rows.map(|row| Setpoint {
            gauge: GaugePressure::from_pascals(row.gauge.pascals().to_f32()),
            air: row.air.to_f32(),
        });
        let lowest = NetHeatRate::from_watts(self.lowest.watts().to_f32());
        let made_for = MadeFor { air_ratio: self.made_for.air_ratio.to_f32(), burner: self.made_for.burner };
        SetpointTable::stored(made_for, lowest, self.step.to_f32(), rows, bound)
    }
}

impl<const N: usize> SetpointTable<N, f32> {
    /// A table as its numbers were printed for a program's source, checked when it was built.
    ///
    /// `step` is the heat from row to row, watts.
    #[must_use]
    pub const fn stored(
        made_for: MadeFor<f32>,
        lowest: NetHeatRate<f32>,
        step: f32,
        rows: [Setpoint<f32>; N],
        bound: InterpolationBound<f32>,
    ) -> Self {
        const { assert!(N >= 2) };
        Self { made_for, lowest, step, per_step: 1.0 / step, rows, bound }
    }
}

/// The point at a share of the way from one setting to another.
#[inline]
fn line<S: Scalar>(start: Setpoint<S>, end: Setpoint<S>, share: S) -> Setpoint<S> {
    Setpoint {
        gauge: GaugePressure::from_pascals(at_share(start.gauge.pascals(), end.gauge.pascals(), share)),
        air: at_share(start.air, end.air, share),
    }
}

/// The most a rising answer from `f_a` to `f_b` can differ from a rising line from `l_a` to `l_b`; none where
/// either falls or is no number.
fn apart<S: Scalar>(f_a: S, f_b: S, l_a: S, l_b: S) -> Option<S> {
    (f_b >= f_a && l_b >= l_a && f_b.is_finite()).then(|| (f_b - l_a).larger(l_b - f_a))
}
