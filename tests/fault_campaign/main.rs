//! A hundred thousand evenings of random readings, faults, time steps and commands, judged from outside by a referee
//! that knows where gas and air really stand. `tests/deliberate_faults.sh` breaks the logic line by line and wants each
//! caught here. Every number of the burner is invented.

mod evening;
mod plant;
mod random;
mod referee;

use evening::{Tally, evening};
use jetwright::Scalar;

const EVENINGS: u64 = 100_000;

/// Half of the evenings in one number type.
fn campaign<S: Scalar>(seeds: std::ops::Range<u64>) -> Tally {
    let mut tally = Tally::default();
    for seed in seeds {
        evening::<S>(seed, &mut tally).unwrap_or_else(|found| panic!("evening {seed}: {found}"));
    }
    tally
}

#[test]
fn in_single_precision_no_evening_breaks_a_rule() {
    judge(&campaign::<f32>(0..EVENINGS / 2));
}

#[test]
fn in_double_precision_no_evening_breaks_a_rule() {
    judge(&campaign::<f64>(EVENINGS / 2..EVENINGS));
}

/// A controller that never asks for gas would break no rule: the fires must have burnt, and the faults come into them.
fn judge(tally: &Tally) {
    let evenings = EVENINGS / 2;
    assert!(tally.fires > evenings / 2, "{tally:?}");
    assert!(tally.followed > evenings / 10, "{tally:?}");
    for (name, count) in tally.faults_in_fire {
        assert!(count > evenings / 200, "{name}: {tally:?}");
    }
}
