//! Straight lines between points: the steps of a lookup, and a property with its exact integral and the inverse of that.

use heapless::Vec;

use crate::error::{Error, Result};
use crate::limits::{Input, check};
use crate::scalar::Scalar;

/// The value at a share of the way from one to another.
#[inline]
pub(crate) fn at_share<S: Scalar>(from: S, to: S, share: S) -> S {
    from + share * (to - from)
}

/// The interval of a rising table that holds `x`, and how far along it `x` lies, from 0 to 1.
pub(crate) fn place<S: Scalar>(count: usize, at: impl Fn(usize) -> f64, x: S) -> (usize, S) {
    let mut low = 0;
    while low + 2 < count && x > S::c(at(low + 1)) {
        low += 1;
    }
    let (from, to) = (S::c(at(low)), S::c(at(low + 1)));
    (low, ((x - from) / (to - from)).clamped(S::zero(), S::one()))
}

/// A table joined by straight lines, held at its ends.
pub(crate) fn in_table<S: Scalar>(count: usize, row: impl Fn(usize) -> (f64, f64), x: S) -> S {
    let (low, share) = place(count, |index| row(index).0, x);
    at_share(S::c(row(low).1), S::c(row(low + 1).1), share)
}

/// Most points a [`Polyline`] takes.
pub const POLYLINE_CAP: usize = 8;

/// A property over temperature, straight between up to 8 points and level beyond its ends.
///
/// # Examples
///
/// ```
/// use jetwright::{Input, interpolate::Polyline};
/// let line = Polyline::new(Input::Conductivity, &[(300.0, 1.0), (500.0, 2.0_f64)]).unwrap();
/// assert_eq!((line.value(400.0), line.value(900.0)), (1.5, 2.0));
/// assert!((line.integral(300.0, 600.0) - 500.0).abs() < 1e-9); // 200 K at 1.5, 100 K at 2
/// assert!((line.end_for(300.0, 500.0) - 600.0).abs() < 1e-9);
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct Polyline<S = f64> {
    points: Vec<(S, S), POLYLINE_CAP>,
}

impl<S: Scalar> Polyline<S> {
    /// The line through points, temperatures in K rising, values within the range of `input`.
    ///
    /// # Errors
    ///
    /// [`Error::Points`] naming `input`, or a value out of its range.
    pub fn new(input: Input, points: &[(S, S)]) -> Result<Self> {
        let refused = Error::Points { input };
        let mut kept = Vec::new();
        for &(temperature, value) in points {
            check(Input::ChamberTemperature, temperature)?;
            check(input, value)?;
            kept.push((temperature, value)).map_err(|_| refused)?;
        }
        if kept.is_empty() || !kept.windows(2).all(|pair| pair[1].0 > pair[0].0) {
            return Err(refused);
        }
        Ok(Self { points: kept })
    }

    /// From a table of this crate: Celsius and value, known to be sound.
    pub(crate) fn of_table(table: &[(f64, f64)]) -> Self {
        let mut points = Vec::new();
        for &(celsius, value) in table.iter().take(POLYLINE_CAP) {
            // The table is no longer than the capacity.
            let _ = points.push((S::c(celsius + 273.15), S::c(value)));
        }
        Self { points }
    }

    /// The points, by rising temperature.
    #[must_use]
    pub fn points(&self) -> &[(S, S)] {
        &self.points
    }

    /// The same line with every value multiplied.
    ///
    /// # Errors
    ///
    /// A value out of the range of `input`.
    pub fn scaled(&self, input: Input, factor: S) -> Result<Self> {
        let mut line = self.clone();
        for point in &mut line.points {
            point.1 = check(input, point.1 * factor)?;
        }
        Ok(line)
    }

    /// The value at a temperature in K.
    #[must_use]
    pub fn value(&self, temperature: S) -> S {
        let (mut low, mut high) = (None, None);
        for point in &self.points {
            if point.0 <= temperature {
                low = Some(*point);
            } else if high.is_none() {
                high = Some(*point);
            }
        }
        match (low, high) {
            (Some(low), Some(high)) => low.1 + (temperature - low.0) * (high.1 - low.1) / (high.0 - low.0),
            (Some(only), None) | (None, Some(only)) => only.1,
            (None, None) => S::zero(),
        }
    }

    /// The integral over temperature, exact; below zero when `to` is the colder.
    #[must_use]
    pub fn integral(&self, from: S, to: S) -> S {
        if to < from {
            return -self.integral(to, from);
        }
        let half = S::c(0.5);
        let (mut sum, mut at) = (S::zero(), from);
        for &(temperature, value) in &self.points {
            if temperature > at && temperature < to {
                sum += half * (self.value(at) + value) * (temperature - at);
                at = temperature;
            }
        }
        sum + half * (self.value(at) + self.value(to)) * (to - at)
    }

    /// The temperature up to which the integral from `from` reaches `integral`, which may be below zero.
    #[must_use]
    pub fn end_for(&self, from: S, integral: S) -> S {
        let up = integral > S::zero();
        let (mut at, mut left) = (from, integral);
        // Each point is passed once at most.
        for _ in 0..=POLYLINE_CAP {
            let beyond = |point: &&(S, S)| if up { point.0 > at } else { point.0 < at };
            let next = if up { self.points.iter().find(beyond) } else { self.points.iter().rev().find(beyond) };
            let here = self.value(at);
            let Some(&(temperature, value)) = next else {
                return at + left / here;
            };
            let whole = S::c(0.5) * (here + value) * (temperature - at);
            if whole.abs() > left.abs() {
                let slope = (value - here) / (temperature - at);
                let root = (here.squared() + S::c(2.0) * slope * left).larger(S::zero()).sqrt();
                return at + S::c(2.0) * left / (here + root);
            }
            left -= whole;
            at = temperature;
        }
        at
    }
}

#[cfg(test)]
mod tests {
    use super::{Polyline, in_table};
    use crate::Input;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn the_inverse_undoes_the_integral(
            values in prop::collection::vec(0.02..40.0_f64, 1..=8), from in 260.0..2000.0_f64, to in 260.0..2000.0_f64,
        ) {
            let mut points = std::vec::Vec::new();
            for (index, value) in values.iter().enumerate() {
                points.push((300.0 + 200.0 * index as f64, *value));
            }
            let line = Polyline::new(Input::Conductivity, &points).unwrap();
            let integral = line.integral(from, to);
            prop_assert!((line.end_for(from, integral) - to).abs() < 1e-6);
            // Simpson's rule on each of many small steps, straight pieces: an independent sum.
            let steps = 4000;
            let width = (to - from) / f64::from(steps);
            let sum: f64 = (0..steps).map(|step| line.value(from + (f64::from(step) + 0.5) * width) * width).sum();
            prop_assert!((sum - integral).abs() < 1e-3 * integral.abs() + 1e-6);
        }
    }

    #[test]
    fn a_table_is_met_at_its_rows_and_held_at_its_ends() {
        let rows = [(0.0, 1.0), (2.0, 5.0), (3.0, 4.0), (7.0, 0.0)];
        let at = |x: f64| in_table(rows.len(), |index| rows[index], x);
        for (x, y) in rows {
            assert_eq!(at(x), y);
        }
        // By hand: half, a quarter and three quarters of the way.
        for (x, y) in [(1.0, 3.0), (2.25, 4.75), (6.0, 1.0), (-3.0, 1.0), (9.0, 0.0)] {
            assert_eq!(at(x), y);
        }
    }

    #[test]
    fn points_that_do_not_rise_are_refused() {
        assert!(Polyline::new(Input::Conductivity, &[(500.0, 1.0), (400.0, 1.0)]).is_err());
        assert!(Polyline::<f64>::new(Input::Conductivity, &[]).is_err());
        assert!(Polyline::new(Input::Conductivity, &[(500.0, -1.0)]).is_err());
        assert!(Polyline::new(Input::Conductivity, &[(500.0, f64::NAN)]).is_err());
    }
}
