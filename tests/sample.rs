//! How much is drawn: a fixed sample, or what `tests/long.sh` asks for.

/// The draws of a sample that usually has so many: `JETWRIGHT_TIMES` as many, where no other `JETWRIGHT_SEED` draws.
pub fn sample(usual: usize) -> std::ops::Range<usize> {
    let asked = |name: &str| match std::env::var(name) {
        Ok(text) => {
            text.parse().unwrap_or_else(|_| panic!("{name}: given {text:?}, accepted is a whole number from 1"))
        }
        Err(_) => 1_usize,
    };
    let count = usual * asked("JETWRIGHT_TIMES").max(1);
    let first = (asked("JETWRIGHT_SEED").max(1) - 1) * count;
    first..first + count
}
