//! What dampers lose: a measured gate, a disc by the jet beside it, and two plumbing valves.

use crate::scalar::Scalar;

/// Opening and loss coefficient of a round slide gate, the opening being open height over diameter.
///
/// US Army Waterways Experiment Station, Hydraulic Design Chart 330-1, as reprinted by the USDA (1969), page B-25: the
/// whole range is measured. Weisbach's older gate lies within 8 % of it from 1/8 to 5/8 open and below it further up
/// (0.26 against 0.385 at 3/4, 0.07 against 0.175 at 7/8).
pub(super) const BLAST_GATE: [(f64, f64); 16] = [
    (0.125, 100.0),
    (0.1667, 43.0),
    (0.1875, 32.8),
    (0.2083, 25.5),
    (0.2292, 20.5),
    (0.25, 16.0),
    (0.3125, 8.8),
    (0.375, 5.25),
    (0.4375, 3.35),
    (0.5, 2.1),
    (0.5833, 1.18),
    (0.625, 0.88),
    (0.6667, 0.67),
    (0.75, 0.385),
    (0.875, 0.175),
    (1.0, 0.082),
];

/// A ball valve: log10 K = 2.9449 - 3.8397 x, a straight line of its logarithm.
///
/// Miller, Internal Flow Systems (1978), as fitted in the public Modelica.Fluid.Dissipation library.
pub(super) const BALL_VALVE: [(f64, f64); 2] = [(0.1, 363.9), (1.0, 0.1273)];

/// A threaded gate valve: means of three handbooks (0.9, 1.15, 1.3 at 3/4; 4.5, 5.6, 5.5 at 1/2; 24, 24 at 1/4), its
/// open loss of 0.17 from memory.
pub(super) const GATE_VALVE: [(f64, f64); 4] = [(0.25, 24.0), (0.5, 5.2), (0.75, 1.1), (1.0, 0.17)];

/// Openings at which the formula of the disc is laid down.
pub(super) const DISC_OPENINGS: [f64; 16] =
    [0.1, 0.13, 0.16, 0.2, 0.24, 0.28, 0.3333, 0.4, 0.47, 0.55, 0.62, 0.7, 0.7778, 0.86, 0.93, 1.0];

/// Free area of a tight disc as a share of the duct: 1 - sin(angle), the angle being 90 degrees times one less the
/// opening. 1 - cos(pi x / 2) = 2 sin^2(pi x / 4), the sine by its series, good to 4e-7.
pub(super) fn free_area<S: Scalar>(opening: S) -> S {
    let u = S::c(core::f64::consts::FRAC_PI_4) * opening;
    let square = u.squared();
    let series = S::one() - square / S::c(6.0) * (S::one() - square / S::c(20.0) * (S::one() - square / S::c(42.0)));
    S::c(2.0) * (u * series).squared()
}

/// What the blade itself takes: 0.2 open (published 0.1 to 0.6), 0.4 from 20 degrees on.
pub(super) fn blade<S: Scalar>(opening: S) -> S {
    let turned = (S::one() - opening) * S::c(4.5);
    S::c(0.2) + S::c(0.2) * turned.smaller(S::one())
}

/// Loss of the jet through a free area, contracted by Weisbach's 0.63 + 0.37 a^3, as it spreads to the duct again
/// (Borda and Carnot): (1 / (c a) - 1)^2.
pub(super) fn jet_loss<S: Scalar>(area: S) -> S {
    let area = area.smaller(S::one());
    (S::one() / (area * contraction(area)) - S::one()).squared()
}

/// The free area whose jet has a loss: the inverse of [`jet_loss`].
pub(super) fn area_of<S: Scalar>(loss: S) -> S {
    let stream = S::one() / (S::one() + loss.larger(S::zero()).sqrt());
    let mut area = (stream / S::c(0.63)).smaller(S::one());
    // Newton from above on a rising, hollow curve: it comes down to the root and does not pass it.
    for _ in 0..8 {
        let slope = S::c(0.63) + S::c(4.0 * 0.37) * area.squared() * area;
        area = area - (area * contraction(area) - stream) / slope;
    }
    area
}

fn contraction<S: Scalar>(area: S) -> S {
    S::c(0.63) + S::c(0.37) * area.squared() * area
}
