//! A smooth curve through points, which never swings beyond them.

use heapless::Vec;

use crate::error::{Error, Result};
use crate::limits::Input;
use crate::scalar::Scalar;
use crate::words::{Words, words};

/// Most steps of the inverse: Newton takes some five, and halving would take this many to the end of double.
const NEWTON_CAP: usize = 60;

/// Most points a [`Curve`] takes.
pub const POINT_CAP: usize = 16;

/// A piecewise cubic through up to 16 points, with a continuous first derivative.
///
/// Between two points it rises or falls as they do and nowhere turns, so a highest point of the curve
/// is one of those given. Left of the first point and right of the last it is a straight line.
///
/// # Source
///
/// Slopes: Fritsch and Butland, SIAM J. Sci. Stat. Comput. 5 (1984) 300; the three-point slopes of the
/// ends: Moler, Numerical Computing with MATLAB (2004), section 3.4.
///
/// # Examples
///
/// A straight row of points gives the straight line, and a valley stays as deep as its lowest point:
///
/// ```
/// use jetwright::{Input, interpolate::Curve};
/// let line = Curve::new(Input::AirFlow, &[(0.0, 3.0), (1.0, 5.0), (4.0, 11.0)]).unwrap();
/// assert!((line.value(2.5) - 8.0_f64).abs() < 1e-12);
/// let valley = Curve::new(Input::AirFlow, &[(0.0, 2.0), (1.0, 0.0), (2.0, 2.0)]).unwrap();
/// assert_eq!((valley.value(1.0), valley.slope(1.0)), (0.0, 0.0));
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct Curve<S = f64> {
    knots: Vec<Knot<S>, POINT_CAP>,
}

impl<S: Scalar> Words for Curve<S> {
    fn write(&self, put: &mut impl FnMut(f32)) {
        self.knots.write(put);
    }
    fn read(next: &mut impl FnMut() -> Option<f32>) -> Option<Self> {
        let knots: Vec<Knot<S>, POINT_CAP> = Words::read(next)?;
        let rising = knots.iter().zip(knots.iter().skip(1)).all(|(start, end)| start.x < end.x);
        (knots.len() >= 2 && rising).then_some(Self { knots })
    }
}

#[derive(Clone, Copy, Debug, PartialEq)]
struct Knot<S> {
    x: S,
    y: S,
    slope: S,
}

words!(Knot { x, y, slope });

impl<S: Scalar> Curve<S> {
    /// The curve through `(x, y)` points, `x` rising.
    ///
    /// # Range
    ///
    /// 2 to 16 points, finite, far enough apart that the slope between neighbors is finite.
    ///
    /// # Errors
    ///
    /// [`Error::Points`] naming `input`.
    pub fn new(input: Input, points: &[(S, S)]) -> Result<Self> {
        let refused = Error::Points { input };
        let mut knots = Vec::new();
        for &(x, y) in points {
            knots.push(Knot { x, y, slope: S::zero() }).map_err(|_| refused)?;
        }
        let sound = |pair: &[Knot<S>]| pair[1].x > pair[0].x && pair[1].x.is_finite() && secant(pair).is_finite();
        if knots.len() < 2 || !knots.windows(2).all(sound) {
            return Err(refused);
        }
        let mut curve = Self { knots };
        curve.set_slopes();
        if curve.knots.iter().all(|knot| knot.slope.is_finite()) { Ok(curve) } else { Err(refused) }
    }

    /// The height of the curve.
    #[must_use]
    pub fn value(&self, x: S) -> S {
        self.value_and_slope(x).0
    }

    /// The first derivative of the curve.
    #[must_use]
    pub fn slope(&self, x: S) -> S {
        self.value_and_slope(x).1
    }

    /// The points, in rising order.
    pub fn points(&self) -> impl DoubleEndedIterator<Item = (S, S)> + '_ {
        self.knots.iter().map(|knot| (knot.x, knot.y))
    }

    /// The highest point; the leftmost if several are equal.
    #[must_use]
    pub fn highest(&self) -> (S, S) {
        let start = self.first();
        self.points().fold(start, |best, point| if point.1 > best.1 { point } else { best })
    }

    /// The first point.
    #[must_use]
    pub fn first(&self) -> (S, S) {
        self.points().next().unwrap_or_default()
    }

    /// The last point.
    #[must_use]
    pub fn last(&self) -> (S, S) {
        self.points().next_back().unwrap_or_default()
    }

    /// The greatest `x` of a point or between two at which the curve is at `y` and falls, right of its highest point.
    #[must_use]
    pub fn falling_at(&self, y: S) -> Option<S> {
        let mut after = self.knots.iter().rev();
        let mut end = after.next()?;
        let highest = self.highest().0;
        for start in after {
            if end.x <= highest {
                return None;
            }
            if start.y >= y && y >= end.y {
                return Some(falling_between(start, end, y));
            }
            end = start;
        }
        None
    }

    /// The same in another number type.
    #[must_use]
    pub fn cast<T: Scalar>(&self) -> Curve<T> {
        let cast = |value: S| T::c(value.to_f64());
        let knots = self.knots.iter().map(|knot| Knot { x: cast(knot.x), y: cast(knot.y), slope: cast(knot.slope) });
        Curve { knots: knots.collect() }
    }

    /// The same curve with both axes stretched, by factors above zero.
    #[must_use]
    pub(crate) fn stretched(&self, x_factor: S, y_factor: S) -> Self {
        let mut curve = self.clone();
        for knot in &mut curve.knots {
            knot.x = knot.x * x_factor;
            knot.y = knot.y * y_factor;
            knot.slope = knot.slope * y_factor / x_factor;
        }
        curve
    }

    /// The same curve, every point higher by so much.
    #[must_use]
    pub(crate) fn raised(&self, by: S) -> Self {
        let mut curve = self.clone();
        for knot in &mut curve.knots {
            knot.y += by;
        }
        curve
    }

    /// Height and first derivative.
    #[must_use]
    pub fn value_and_slope(&self, x: S) -> (S, S) {
        let mut knots = self.knots.iter();
        let Some(mut start) = knots.next() else { return (S::zero(), S::zero()) };
        if x < start.x {
            return start.straight(x);
        }
        for end in knots {
            if x < end.x {
                return between(start, end, x);
            }
            start = end;
        }
        start.straight(x)
    }

    fn set_slopes(&mut self) {
        let last = self.knots.len() - 1;
        if last == 1 {
            let slope = secant(&self.knots);
            self.knots[0].slope = slope;
            self.knots[1].slope = slope;
            return;
        }
        for at in 1..last {
            self.knots[at].slope = inner_slope(self.knots[at - 1], self.knots[at], self.knots[at + 1]);
        }
        self.knots[0].slope = end_slope(self.knots[0], self.knots[1], self.knots[2]);
        self.knots[last].slope = end_slope(self.knots[last], self.knots[last - 1], self.knots[last - 2]);
    }
}

impl<S: Scalar> Knot<S> {
    /// The straight line on through this point: height and slope.
    fn straight(&self, x: S) -> (S, S) {
        (self.y + (x - self.x) * self.slope, self.slope)
    }
}

/// The cubic between two neighbors: height and slope.
fn between<S: Scalar>(start: &Knot<S>, end: &Knot<S>, x: S) -> (S, S) {
    let (two, three) = (S::c(2.0), S::c(3.0));
    let width = end.x - start.x;
    let t = (x - start.x) / width;
    let rise = (end.y - start.y) / width;
    let square = three * rise - two * start.slope - end.slope;
    let cube = start.slope + end.slope - two * rise;
    let value = start.y + width * t * (start.slope + t * (square + t * cube));
    (value, start.slope + t * (two * square + t * three * cube))
}

/// Where a falling cubic is at `y`: Newton kept in its bracket, which halves where it would leave it.
fn falling_between<S: Scalar>(start: &Knot<S>, end: &Knot<S>, y: S) -> S {
    let (mut low, mut high) = (start.x, end.x);
    let drop = start.y - end.y;
    if drop <= S::zero() {
        return high;
    }
    let mut x = low + (start.y - y) / drop * (high - low);
    for _ in 0..NEWTON_CAP {
        let (value, slope) = between(start, end, x);
        if value > y {
            low = x
        } else {
            high = x
        }
        let next = x + (y - value) / slope;
        let next = if next >= low && next <= high { next } else { S::c(0.5) * (low + high) };
        let step = (next - x).abs();
        x = next;
        if step <= S::c(8.0) * S::EPSILON * x {
            break;
        }
    }
    x
}

fn secant<S: Scalar>(pair: &[Knot<S>]) -> S {
    (pair[1].y - pair[0].y) / (pair[1].x - pair[0].x)
}

fn same_sign<S: Scalar>(a: S, b: S) -> bool {
    (a > S::zero() && b > S::zero()) || (a < S::zero() && b < S::zero())
}

/// The weighted harmonic mean of the slopes to either side; zero at a turn.
fn inner_slope<S: Scalar>(before: Knot<S>, here: Knot<S>, after: Knot<S>) -> S {
    let (left, right) = (here.x - before.x, after.x - here.x);
    let (rise_left, rise_right) = (secant(&[before, here]), secant(&[here, after]));
    if !same_sign(rise_left, rise_right) {
        return S::zero();
    }
    let (weight_left, weight_right) = (left + S::c(2.0) * right, S::c(2.0) * left + right);
    (weight_left + weight_right) / (weight_left / rise_left + weight_right / rise_right)
}

/// The slope at the end of the parabola through three points, held to what cannot overshoot.
fn end_slope<S: Scalar>(end: Knot<S>, next: Knot<S>, third: Knot<S>) -> S {
    let (near, far) = ((next.x - end.x).abs(), (third.x - next.x).abs());
    let (rise_near, rise_far) = (secant(&[end, next]), secant(&[next, third]));
    let parabola = rise_near + near / (near + far) * (rise_near - rise_far);
    let steepest = S::c(3.0) * rise_near;
    if !same_sign(parabola, rise_near) {
        S::zero()
    } else if !same_sign(rise_near, rise_far) && parabola.abs() > steepest.abs() {
        steepest
    } else {
        parabola
    }
}

#[cfg(test)]
mod tests {
    use super::Curve;
    use crate::{Error, Input, Scalar};
    use proptest::prelude::*;
    use std::vec::Vec;

    /// Value and slope; source: scipy 1.17.1 PchipInterpolator.
    const SCIPY: [(f64, f64, f64); 10] = [
        (0.0, 900.0, 8500.0),
        (0.003, 923.295_000_000_000_1, 6895.0),
        (0.01, 950.0, 0.0),
        (0.0125, 948.397_691_082_802_5, -1_234.872_611_464_968_3),
        (0.02, 930.0, -3_248.407_643_312_101_8),
        (0.03, 834.678_568_726_159_3, -14_028.308_563_340_404),
        (0.045, 540.299_641_638_962_3, -26_867.924_528_301_89),
        (0.05, 400.0, -28_832.951_945_080_098),
        (0.0575, 146.578_303_775_743_6, -37_752.202_517_162_49),
        (0.06, 50.0, -39_400.0),
    ];
    const POINTS: [(f64, f64); 6] =
        [(0.0, 900.0), (0.01, 950.0), (0.02, 930.0), (0.035, 760.0), (0.05, 400.0), (0.06, 50.0)];

    #[test]
    fn values_and_slopes_are_those_of_a_public_library() {
        let curve = Curve::new(Input::AirFlow, &POINTS).unwrap();
        for (x, value, slope) in SCIPY {
            assert!((curve.value(x) - value).abs() < 1e-9, "{x}: {} {value}", curve.value(x));
            assert!((curve.slope(x) - slope).abs() < 1e-7, "{x}: {} {slope}", curve.slope(x));
        }
        // A rough row, whose ends and turns use every branch; source: scipy 1.17.1 PchipInterpolator.
        let rough = Curve::new(Input::AirFlow, &[(0.0, 0.0), (1.0, 2.0), (3.0, 2.5), (3.5, 6.0), (7.0, 5.0)]).unwrap();
        for (x, value, slope) in [
            (0.0, 0.0, 2.583_333_333_333_333_5),
            (0.4, 1.029_297_297_297_297_4, 2.414_324_324_324_324_3),
            (2.2, 2.246_557_947_778_287, 0.133_137_883_646_358_15),
            (3.1, 2.901_966_101_694_916, 6.909_830_508_474_581),
            (5.0, 5.921_282_798_833_819, -0.157_434_402_332_361_53),
            (7.0, 5.0, -0.857_142_857_142_857_2),
        ] {
            assert!((rough.value(x) - value).abs() < 1e-12, "{x}");
            assert!((rough.slope(x) - slope).abs() < 1e-12, "{x}");
        }
    }

    #[test]
    fn beyond_the_ends_it_is_straight() {
        let curve = Curve::new(Input::AirFlow, &POINTS).unwrap();
        assert!((curve.value(0.07) - (50.0 - 394.0)).abs() < 1e-9);
        assert!((curve.value(-0.01) - (900.0 - 85.0)).abs() < 1e-9);
    }

    #[test]
    fn bad_rows_of_points_are_refused() {
        let refused = Err(Error::Points { input: Input::AirFlow });
        let long: Vec<(f64, f64)> = (0..17).map(|i| (f64::from(i), 0.0)).collect();
        assert!(Curve::new(Input::AirFlow, &long[..16]).is_ok());
        for points in [
            &long[..],
            &[],
            &[(0.0, 1.0)],
            &[(0.0, 1.0), (0.0, 2.0)],
            &[(1.0, 1.0), (0.5, 1.0)],
            &[(0.0, f64::NAN), (1.0, 1.0)],
            &[(0.0, 1.0), (f64::INFINITY, 1.0)],
            &[(0.0, 1.0), (1e-320, 2.0)],
        ] {
            assert_eq!(Curve::new(Input::AirFlow, points), refused, "{points:?}");
        }
    }

    proptest! {
        #[test]
        fn it_never_leaves_the_band_of_its_neighbors_and_its_slope_is_its_derivative(
            steps in prop::collection::vec((0.02..1.0_f64, -1.0..1.0_f64), 2..=16), at in 0.0..1.0_f64,
        ) {
            let (mut x, mut y) = (0.0, 0.0);
            let points: Vec<(f64, f64)> = steps.iter().map(|step| { x += step.0; y += step.1; (x, y) }).collect();
            let curve = Curve::new(Input::AirFlow, &points).unwrap();
            let narrow: Vec<(f32, f32)> = points.iter().map(|point| (point.0 as f32, point.1 as f32)).collect();
            let single = Curve::new(Input::AirFlow, &narrow).unwrap();
            for pair in points.windows(2) {
                let width = pair[1].0 - pair[0].0;
                let x = pair[0].0 + at * width;
                let value = curve.value(x);
                prop_assert!(value >= pair[0].1.min(pair[1].1) - 1e-12 && value <= pair[0].1.max(pair[1].1) + 1e-12);
                prop_assert!((value - single.value(x as f32).to_f64()).abs() < 2e-4);
                let step = 1e-6 * width;
                let difference = (curve.value(x + step) - curve.value(x - step)) / (2.0 * step);
                let steepest = points.windows(2).map(|p| ((p[1].1 - p[0].1) / (p[1].0 - p[0].0)).abs()).fold(0.0, f64::max);
                prop_assert!((difference - curve.slope(x)).abs() < 1e-4 * (1.0 + steepest) , "{} {}", difference, curve.slope(x));
            }
        }
    }
}
