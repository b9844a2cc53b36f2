//! The one place for tolerances of the tests, each with its reason. Rows of published values carry their own.

/// Single precision against double, relative: what a chip may lose of an answer over the whole range of inputs.
pub const SINGLE_PRECISION: f64 = 1e-4;

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
