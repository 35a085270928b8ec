//! How long something takes: the median of a few runs, so that one disturbed run does not count.
#![expect(clippy::disallowed_types, reason = "a stopwatch reads the clock; the session never does")]

use std::time::{Duration, Instant};

/// The median over `runs` runs of the time that one piece of work takes, each run doing it `repeats` times.
pub fn median(runs: usize, repeats: u32, mut work: impl FnMut()) -> Duration {
    // Once for nothing: pages are touched, caches are warm, the clock of the processor is up.
    work();
    let mut times: Vec<Duration> = (0..runs)
        .map(|_| {
            let began = Instant::now();
            for _ in 0..repeats {
                work();
            }
            began.elapsed() / repeats
        })
        .collect();
    times.sort_unstable();
    times[times.len() / 2]
}

/// How long one piece of work takes that is too long to be done often, and what came of it.
pub fn once<T>(work: impl FnOnce() -> T) -> (Duration, T) {
    let began = Instant::now();
    let result = work();
    (began.elapsed(), result)
}
