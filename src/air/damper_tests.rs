use super::super::fixture::{density, flow};
use super::{Damper, DamperKind, GAP_SPREAD, disc_gap};
use crate::quantity::Length;
use crate::{Error, Input, Scalar};
use proptest::prelude::*;

const KINDS: [DamperKind; 4] =
    [DamperKind::BlastGate, DamperKind::Butterfly, DamperKind::BallValve, DamperKind::GateValve];

fn damper<S: Scalar>(kind: DamperKind) -> Damper<S> {
    Damper::new(kind, Length::from_millimeters(S::c(76.0))).unwrap()
}

fn disc(gap: f64) -> Damper {
    Damper::disc(Length::from_millimeters(76.0), gap).unwrap()
}

/// The formula of the disc, by the sine of the platform.
fn formula(degrees: f64, gap: f64) -> f64 {
    let area = 1.0 - degrees.to_radians().sin() + gap;
    (1.0 / (area * (0.63 + 0.37 * area.powi(3))) - 1.0).powi(2) + 0.2 + 0.2 * (degrees / 20.0).min(1.0)
}

#[test]
fn the_disc_is_its_formula_between_the_points_of_its_curve() {
    for gap in [0.0, 0.02, 0.06] {
        for step in 0..=68 {
            let degrees = 12.0 + f64::from(step);
            let loss = disc(gap).loss_coefficient(1.0 - degrees / 90.0).unwrap();
            assert!((loss / formula(degrees, gap) - 1.0).abs() < 0.02, "{degrees} {gap}: {loss}");
        }
    }
}

#[test]
fn a_gate_is_the_loss_of_the_jet_through_its_crescent() {
    // A round gate lowered leaves a crescent: the circle less the lens two circles have in common.
    for open in [0.125_f64, 0.25, 0.375, 0.5] {
        let lens = (2.0 * f64::acos(open) - 2.0 * open * (1.0 - open * open).sqrt()) / core::f64::consts::PI;
        let area = 1.0 - lens;
        let jet = (1.0 / (area * (0.63 + 0.37 * area.powi(3))) - 1.0).powi(2);
        let ratio = damper::<f64>(DamperKind::BlastGate).loss_coefficient(open).unwrap() / jet;
        assert!((0.95..1.25).contains(&ratio), "{open}: {ratio}");
    }
}

#[test]
fn a_gap_measured_at_one_opening_gives_the_others() {
    for gap in [0.0, 0.01, 0.04, 0.1] {
        // A tight disc that is shut passes nothing.
        for degrees in [40.0, 60.0, 75.0, if gap > 0.0 { 90.0 } else { 80.0 }] {
            let found = disc_gap(1.0 - degrees / 90.0, formula(degrees, gap)).unwrap();
            assert!((found - gap).abs() < 1e-6, "{degrees} {gap}: {found}");
        }
        let ours = damper::<f64>(DamperKind::Butterfly).calibrated(0.5, formula(45.0, gap)).unwrap();
        assert!((ours.loss_coefficient(0.2).unwrap() / formula(72.0, gap) - 1.0).abs() < 0.03, "{gap}");
    }
    assert!(disc_gap(0.7, 5.0).is_err());
}

#[test]
fn a_loss_seen_that_no_gap_gives_becomes_a_factor() {
    let disc = damper::<f64>(DamperKind::Butterfly);
    let ours = disc.calibrated(0.9, 2.0 * disc.loss_coefficient(0.9).unwrap()).unwrap();
    assert!((ours.loss_coefficient(0.5).unwrap() / disc.loss_coefficient(0.5).unwrap() - 2.0).abs() < 1e-9);
    assert!(damper::<f64>(DamperKind::BlastGate).calibrated(0.5, 2.1e3).is_err());
}

#[test]
fn the_gap_rules_the_spread_of_a_disc_nearly_shut() {
    let (unknown, measured) = GAP_SPREAD;
    let disc = damper::<f64>(DamperKind::Butterfly);
    let spread = |opening, gap| disc.loss_spread(opening, gap).unwrap();
    // By hand from the losses of a gap of 0 and 4 % at 23 % open: ln(556 / 201) / 2.
    assert!((spread(0.23, unknown) - (0.509_f64.powi(2) + 0.17 * 0.17).sqrt()).abs() < 0.02);
    assert!(spread(0.23, measured) < 0.24);
    assert_eq!(damper::<f64>(DamperKind::BlastGate).loss_spread(0.2, unknown).unwrap(), 0.15);
}

#[test]
fn fully_open_is_next_to_nothing_and_outside_is_refused() {
    assert!(damper::<f64>(DamperKind::BlastGate).loss_coefficient(1.0).unwrap() < 0.1);
    assert!(damper::<f64>(DamperKind::Butterfly).loss_coefficient(1.0).unwrap() < 0.25);
    for kind in KINDS {
        for opening in [0.0, 0.0999, 1.001, f64::NAN] {
            assert!(damper::<f64>(kind).loss_coefficient(opening).is_err());
        }
    }
    let least = damper::<f64>(DamperKind::Butterfly).loss_coefficient(1.0).unwrap() as f32;
    let error = damper::<f64>(DamperKind::Butterfly).opening_for(0.05).unwrap_err();
    assert_eq!(error, Error::NoSolution { input: Input::DamperOpening, nearest: least });
    assert!(damper::<f64>(DamperKind::BlastGate).opening_for(999.0).is_err());
}

#[test]
fn its_pressure_is_so_many_dynamic_heads() {
    // 2.1 heads at 20 m/s in air of 1.2 kg/m3: 2.1 x 240 Pa.
    let gate = damper::<f64>(DamperKind::BlastGate);
    let at = flow(20.0 * core::f64::consts::FRAC_PI_4 * 0.076 * 0.076);
    assert!((gate.loss(at, density(1.2), gate.loss_coefficient(0.5).unwrap()).pascals() - 504.0).abs() < 1e-6);
}

proptest! {
    #[test]
    fn it_falls_with_opening_and_the_inverse_comes_back(
        opening in Input::DamperOpening.range().min..Input::DamperOpening.range().max - 1e-3,
    ) {
        for kind in KINDS {
            let (double, single) = (damper::<f64>(kind), damper::<f32>(kind));
            let loss = double.loss_coefficient(opening).unwrap();
            prop_assert!(double.loss_coefficient(opening + 1e-3).unwrap() < loss);
            let narrow = single.loss_coefficient((opening as f32).larger(0.1)).unwrap();
            prop_assert!((narrow.to_f64() / loss - 1.0).abs() < 1e-4);
            if loss < Input::DamperLoss.range().max {
                prop_assert!((double.opening_for(loss).unwrap() - opening).abs() < 1e-9);
                prop_assert!((single.opening_for(loss as f32).unwrap().to_f64() - opening).abs() < 1e-4);
            }
        }
    }
}
