//! The whole controller on both chips: paced by the timer, locked out by one bad reading, begun anew by the watchdog.

use super::burners::demo;
use super::emulator::{M0, M4F, build_for, built, directory, run_on};

/// The history that a program prints: millisecond, from, to, cause.
fn history(printed: &str) -> Vec<(u32, String)> {
    let lines = printed.lines().skip_while(|line| !line.starts_with("millisecond,")).skip(1);
    let events = lines.map_while(|line| {
        let (when, what) = line.split_once(',')?;
        Some((when.parse().ok()?, what.to_owned()))
    });
    events.collect()
}

#[test]
fn the_controller_fires_locks_out_for_good_and_is_begun_anew_when_it_hangs() {
    let Some(built) = built() else { return };
    let directory = directory("firmware-controller");
    let told = [M4F, M0].map(|chip| {
        let program = build_for(chip, &built, &demo(), &directory, "controller");
        (chip, run_on(chip, &program, &directory))
    });
    for (chip, printed) in &told {
        let events = history(printed);
        let order: Vec<&str> = events.iter().map(|(_, what)| what.as_str()).collect();
        let expected = [
            "off,pre-purge,",
            "pre-purge,ready,",
            "ready,lighting,",
            "lighting,firing,",
            "firing,lockout,a sensor gives no number",
            "lockout,off,",
        ];
        assert_eq!(order, expected, "{printed}");
        let at = |place: usize| events[place].0;
        // A tick every tenth of a second: the second one starts, the 500th reads no number, and nothing but the reset of
        // the 600th leaves the lockout.
        assert_eq!([at(0), at(4), at(5)], [100, 50_000, 60_000], "{printed}");
        // The two chips count alike, though one takes many times as long for a tick.
        assert_eq!(events, history(&told[0].1));
        let begun_anew = printed.contains("the watchdog began the chip anew: gas off");
        assert_eq!(begun_anew, chip.is_usual(), "{printed}");
    }
}
