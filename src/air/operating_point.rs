//! Where a blower and the system it purges agree.

use super::blower::Blower;
use crate::error::{Error, Result};
use crate::limits::Input;
use crate::quantity::{ActualVolumeFlow, PressureDifference};
use crate::scalar::Scalar;
use crate::solve;

/// Steps each stretch between two points of the curve is searched in.
const STEPS: usize = 4;
/// How far beyond free delivery the search reaches, for a system that draws.
const BEYOND_FREE_DELIVERY: [f64; 4] = [1.25, 1.5, 2.0, 3.0];

/// The flow at which a blower's pressure is what the system asks.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OperatingPoint<S = f64> {
    /// Flow, at the density of the blower's curve.
    pub flow: ActualVolumeFlow<S>,
    /// Static pressure of the blower there; below zero where the system draws more than free delivery.
    pub static_pressure: PressureDifference<S>,
    /// Whether the flow is less than at the blower's highest point, where it may surge.
    pub left_of_peak: bool,
    /// How often the system was asked.
    pub iterations: usize,
}

/// The operating point of a blower on a system: p_blower(Q) = p_system(Q), at the largest such flow,
/// which is the one that holds.
///
/// It is sought from free delivery downward over the curve's points, four steps between two of them, then
/// found in that bracket; two crossings within one step are not seen. A system that draws (a jet's push)
/// is followed to three times free delivery.
///
/// # Units
///
/// `system` takes the flow in m3/s at the density of the blower's curve and gives the pressure it needs in Pa.
///
/// # Errors
///
/// [`Error::NoSolution`] naming the air flow when the system asks more than the blower has at every flow,
/// with the least shortfall in Pa as a number below zero, or when it draws at three times free delivery,
/// with what it still draws; [`Error::NotConverged`] when the system gives a number that is not finite.
///
/// # Examples
///
/// A blower with p = 1000 (1 - (Q/0.06)^2) on a system that takes p = 1000 (Q/0.06)^2 settles at
/// 0.06/sqrt(2) m3/s and 500 Pa:
///
/// ```
/// use jetwright::air::{Blower, operating_point};
/// use jetwright::quantity::{ActualVolumeFlow, Density, PressureDifference};
/// let free = ActualVolumeFlow::from_cubic_meters_per_second(0.06_f64);
/// let shut_off = PressureDifference::from_pascals(1000.0);
/// let blower = Blower::from_two_numbers(shut_off, free, Density::from_kilograms_per_cubic_meter(1.2)).unwrap();
/// let point = operating_point(&blower, |flow| 1000.0 * (flow / 0.06) * (flow / 0.06)).unwrap();
/// assert!((point.flow.cubic_meters_per_second() - 0.0424264).abs() < 1e-5);
/// assert!((point.static_pressure.pascals() - 500.0).abs() < 0.2);
/// ```
pub fn operating_point<S: Scalar>(blower: &Blower<S>, mut system: impl FnMut(S) -> S) -> Result<OperatingPoint<S>> {
    let mut iterations = 0;
    let pressure = |flow: S| blower.static_pressure(ActualVolumeFlow::from_cubic_meters_per_second(flow));
    let mut surplus = |flow: S| {
        iterations += 1;
        pressure(flow).pascals() - system(flow)
    };
    let (low, high) = bracket(blower, &mut surplus)?;
    let root = solve::root(Input::AirFlow, low, high, &mut surplus)?;
    let flow = ActualVolumeFlow::from_cubic_meters_per_second(root.x);
    Ok(OperatingPoint {
        flow,
        static_pressure: pressure(root.x),
        left_of_peak: blower.is_left_of_peak(flow),
        iterations,
    })
}

/// Two flows, with a surplus of pressure at the lesser and none at the greater, and no such pair above them.
fn bracket<S: Scalar>(blower: &Blower<S>, surplus: &mut impl FnMut(S) -> S) -> Result<(S, S)> {
    let mut finite_surplus = |flow: S| {
        let surplus = surplus(flow);
        if surplus.is_finite() { Ok(surplus) } else { Err(Error::NotConverged { input: Input::AirFlow }) }
    };
    let free_delivery = blower.free_delivery().cubic_meters_per_second();
    let mut nearest = finite_surplus(free_delivery)?;
    let mut high = free_delivery;
    if nearest >= S::zero() {
        let mut low = free_delivery;
        for factor in BEYOND_FREE_DELIVERY {
            high = free_delivery * S::c(factor);
            nearest = finite_surplus(high)?;
            if nearest <= S::zero() {
                return Ok((low, high));
            }
            low = high;
        }
        return Err(Error::NoSolution { input: Input::AirFlow, nearest: nearest.to_f32() });
    }
    let flows = blower.flows().rev().map(ActualVolumeFlow::cubic_meters_per_second);
    for next in flows.chain(core::iter::once(S::zero())) {
        let start = high;
        for step in 1..=STEPS {
            let low = start + (next - start) * (S::c(step as f64) / S::c(STEPS as f64));
            if low >= high {
                break;
            }
            let here = finite_surplus(low)?;
            if here >= S::zero() {
                return Ok((low, high));
            }
            nearest = nearest.larger(here);
            high = low;
        }
    }
    Err(Error::NoSolution { input: Input::AirFlow, nearest: nearest.to_f32() })
}

#[cfg(test)]
mod tests {
    use super::super::fixture::{any_points, density, flow, invented, of};
    use super::operating_point;
    use crate::air::{Blower, Resistance};
    use crate::quantity::PressureDifference;
    use crate::{Error, Input, Scalar};
    use proptest::prelude::*;

    fn quadratic<S: Scalar>(k: f64) -> impl FnMut(S) -> S {
        move |at| Resistance::from_pascals_per_square_flow(S::c(k)).loss(flow(at)).pascals()
    }

    #[test]
    fn the_parabolas_meet_where_algebra_says() {
        // p0 (1 - (Q/Q0)^2) = k Q^2 gives Q = Q0 / sqrt(1 + k Q0^2 / p0).
        let blower =
            Blower::from_two_numbers(PressureDifference::from_pascals(800.0), flow(0.05), density(1.2)).unwrap();
        for k in [1e3, 1e5, 1e6, 1e7] {
            let expected = 0.05 / (1.0 + k * 0.05 * 0.05 / 800.0_f64).sqrt();
            let point = operating_point(&blower, quadratic(k)).unwrap();
            assert!((point.flow.cubic_meters_per_second() / expected - 1.0).abs() < 2e-3, "{k}");
            let needed = k * point.flow.cubic_meters_per_second().powi(2);
            assert!((point.static_pressure.pascals() / needed - 1.0).abs() < 1e-9);
        }
    }

    #[test]
    fn thinner_air_passes_the_same_volume_and_less_mass() {
        // Fan laws (AMCA 201): fans move a constant volume, so on k rho Q^2 the mass falls as the density.
        let sea = invented::<f64>();
        let hill = sea.scaled(density(1.2 * 0.8553), 1.0, 1.0).unwrap(); // ISO 2533, 1 600 m over sea level
        let here = operating_point(&sea, quadratic(3e5 * 1.2)).unwrap().flow;
        let there = operating_point(&hill, quadratic(3e5 * 1.2 * 0.8553)).unwrap().flow;
        let mass = there.at(hill.density()).kilograms_per_second() / here.at(sea.density()).kilograms_per_second();
        assert!((mass - 0.8553).abs() < 1e-9, "{mass}");
    }

    #[test]
    fn a_jet_that_draws_pulls_beyond_free_delivery() {
        // The end of the curve falls 39 400 Pa per m3/s: 100 Pa of draw add 100 / 39 400 m3/s.
        let blower = invented::<f64>();
        let point = operating_point(&blower, |_| -100.0).unwrap();
        let expected = blower.free_delivery().cubic_meters_per_second() + 100.0 / 39_400.0;
        assert!((point.flow.cubic_meters_per_second() / expected - 1.0).abs() < 1e-9);
        assert!((point.static_pressure.pascals() + 100.0).abs() < 1e-6);
        assert!(operating_point(&blower, |_| -1e6).is_err());
    }

    #[test]
    fn of_two_crossings_the_right_one_is_taken_and_the_left_of_the_peak_is_told() {
        // A steady 940 Pa meets the curve on both sides of its highest point, 0.01 m3/s.
        let blower = invented::<f64>();
        let point = operating_point(&blower, |_| 940.0).unwrap();
        assert!(point.flow.cubic_meters_per_second() > 0.01 && !point.left_of_peak);
        let choked = operating_point(&blower, quadratic(3e7)).unwrap();
        assert!(choked.flow.cubic_meters_per_second() < 0.01 && choked.left_of_peak);
    }

    #[test]
    fn a_system_beyond_the_blower_or_not_finite_is_an_error() {
        let blower = invented::<f64>();
        let error = operating_point(&blower, |_| 1000.0).unwrap_err();
        assert_eq!(error, Error::NoSolution { input: Input::AirFlow, nearest: -50.0 });
        let error = operating_point(&blower, |_| f64::NAN).unwrap_err();
        assert_eq!(error, Error::NotConverged { input: Input::AirFlow });
    }

    proptest! {
        #[test]
        fn more_resistance_is_less_flow_and_single_precision_follows(
            points in any_points(), share in 0.05..1.0_f64, more in 1.02..3.0_f64,
        ) {
            let blower = of::<f64>(&points);
            let free = blower.free_delivery().cubic_meters_per_second();
            let k = blower.peak().1.pascals() / (free * share).powi(2);
            let point = operating_point(&blower, quadratic(k)).unwrap();
            let at = point.flow.cubic_meters_per_second();
            let needed = k * at * at;
            prop_assert!((point.static_pressure.pascals() - needed).abs() <= 1e-9 * blower.peak().1.pascals());
            prop_assert!(point.iterations < 150);
            let tighter = operating_point(&blower, quadratic(k * more)).unwrap().flow.cubic_meters_per_second();
            prop_assert!(tighter < at);
            // A curve printed falling throughout meets the system once, at the same flow in either width.
            let mut falling = points;
            falling.sort_by(|a, b| a.0.total_cmp(&b.0));
            let mut pressures: std::vec::Vec<f64> = falling.iter().map(|p| p.1).collect();
            pressures.sort_by(|a, b| b.total_cmp(a));
            for (point, pressure) in falling.iter_mut().zip(pressures) { point.1 = pressure; }
            let double = operating_point(&of::<f64>(&falling), quadratic(k)).unwrap().flow.cubic_meters_per_second();
            let single = operating_point(&of::<f32>(&falling), quadratic(k)).unwrap().flow.cubic_meters_per_second();
            prop_assert!((single.to_f64() / double - 1.0).abs() < 1e-4, "{} {}", single, double);
        }
    }
}
