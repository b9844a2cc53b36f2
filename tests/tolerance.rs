//! The one place for tolerances of the tests, each with its reason. Rows of published values carry their own.

/// Single precision against double, relative: what a chip may lose of an answer over the whole range of inputs.
pub const SINGLE_PRECISION: f64 = 1e-4;

/// What the end of a search moves a flow that the law lets stand still, relative: Newton stops at a step of 1e-6 and
/// leaves about the square of it.
pub const STANDING: f64 = 1e-11;

/// Most a step of 1e-7 of the drop moves the flow, relative: laminar gas in a long bore flows as the difference of
/// the squares of the pressures, so up to the second power of it.
pub const STEP_OF_DROP: f64 = 2e-7;

/// Most a step of 1e-7 of a measure of the bore moves the flow, relative: the fourth power in laminar flow, and more
/// just beyond 1.5 diameters, where friction begins and a creeping stream feels it at once.
pub const STEP_OF_MEASURE: f64 = 1e-5;

/// An answer put back into its question, relative: what is left of double after a search to a few spacings.
pub const ROUND_TRIP: f64 = 1e-9;

/// Pressures and flows that must add up in a solved burner, relative to the largest of them.
pub const BALANCE: f64 = 1e-9;

/// One fourth-order step down the isentrope against many small ones, relative; it grows with the fifth power of the
/// logarithm of the pressures, and is largest at the throat of a gas near condensing.
pub const ONE_STEP: f64 = 2e-4;

/// A real gas at a few bar and above room temperature against the perfect gas of its own exponent, relative.
pub const NEARLY_PERFECT: f64 = 5e-3;

/// Atoms that must come out of a flame as they went in, relative: what Newton leaves in double.
pub const FLAME_BALANCE: f64 = 1e-9;

/// Heat that stays and heat that leaves, as shares of the net heat: what the rounding of double leaves.
pub const HEAT_CLOSES: f64 = 1e-10;

/// The flame at the lower limit from a hot mixture against a cold one, relative: the law takes one heat capacity for
/// gas and products, and 5 % of the limit would move the flame by 4 %.
pub const LIMIT_FLAME: f64 = 0.03;

/// How far beside the border of an error single precision may decide otherwise than double, relative.
pub const BORDER: f64 = 1e-3;

/// Energy of a transient, what enters less what leaves and is stored over the largest of them: asked of every one.
pub const ENERGY_CLOSES: f64 = 1e-3;

/// Single precision against double over hundreds of steps in time, each of which rounds.
pub const SINGLE_PRECISION_TRANSIENT: f64 = 1e-3;

/// Gas of the live estimate against the jet's own model, relative: a parabola through three of 32 pressures, and a gas
/// up to 15 K off the temperature these were worked out at.
pub const ESTIMATED_GAS: f64 = 5e-3;

/// A derivative carried by the number type against a difference of fourth order, relative, beside what that difference
/// leaves open itself.
pub const DERIVATIVE: f64 = 1e-4;

/// Spread of many draws against the first order, relative: what a budget promises where it calls itself straight, and
/// what a thousand draws leave open.
pub const SPREAD_OF_DRAWS: f64 = 0.12;

/// How far a value lies within `tolerance` of another: relative, unless the text ends with ` abs`.
///
/// The share of the tolerance that is used up, so at most one when it is met; not a number when the text is none.
pub fn share_used(found: f64, expected: f64, tolerance: &str) -> f64 {
    let difference = (found - expected).abs();
    match tolerance.strip_suffix(" abs") {
        Some(absolute) => difference / absolute.parse().unwrap_or(f64::NAN),
        None => difference / (expected.abs() * tolerance.parse().unwrap_or(f64::NAN)),
    }
}

#[test]
fn a_tolerance_is_relative_unless_it_says_otherwise() {
    assert!((share_used(101.0, 100.0, "0.02") - 0.5).abs() < 1e-9);
    assert!((share_used(101.0, 100.0, "0.5 abs") - 2.0).abs() < 1e-9);
    assert!(share_used(100.0, 100.0, "about").is_nan());
}
