//! How long something takes: the median of a few runs, so that one disturbed run does not count.
//!
//! Where the system tells it (Linux), time is the processor's own time of this thread or process, so that
//! other work on the machine, which makes everybody wait, does not count either. Elsewhere it is the clock's.
#![expect(clippy::disallowed_types, reason = "a stopwatch reads the clock; the session never does")]

use std::fs;
use std::sync::OnceLock;
use std::time::{Duration, Instant};

/// Ticks in a second of the times that Linux gives for a whole process.
const TICKS_PER_S: f64 = 100.0;

/// Runs of which the median counts.
const RUNS: usize = 5;
/// Least time of a run: the system counts a thread's time in steps of up to four milliseconds.
const LEAST: Duration = Duration::from_millis(100);

/// The median over a few runs of the time that one piece of work takes in this thread, each run doing it as
/// often as fills a tenth of a second.
pub fn median(mut work: impl FnMut()) -> Duration {
    let mut repeats = 1_u32;
    let mut run = |repeats: u32| {
        let began = of_this_thread();
        for _ in 0..repeats {
            work();
        }
        of_this_thread().saturating_sub(began)
    };
    while run(repeats) < LEAST {
        repeats *= 2;
    }
    let mut times: Vec<Duration> = (0..RUNS).map(|_| run(repeats) / repeats).collect();
    times.sort_unstable();
    times[times.len() / 2]
}

/// How long this thread takes for something that is too long to be done often, and what came of it.
pub fn once<T>(work: impl FnOnce() -> T) -> (Duration, T) {
    let began = of_this_thread();
    let result = work();
    (of_this_thread().saturating_sub(began), result)
}

/// How long something takes on so many threads that share it, and what came of it: the time of the process
/// over their number.
pub fn shared<T>(threads: u32, work: impl FnOnce() -> T) -> (Duration, T) {
    let began = of_this_process(threads);
    let result = work();
    (of_this_process(threads).saturating_sub(began) / threads, result)
}

/// Time that this thread has had so far.
pub fn of_this_thread() -> Duration {
    fs::read_to_string("/proc/thread-self/schedstat")
        .ok()
        .and_then(|text| text.split(' ').next()?.parse().ok())
        .map_or_else(by_the_clock, Duration::from_nanos)
}

fn of_this_process(threads: u32) -> Duration {
    fs::read_to_string("/proc/self/stat")
        .ok()
        .and_then(|text| {
            // The name in brackets may hold anything; user and system time are the 12th and 13th behind it.
            let mut fields = text.rsplit_once(')')?.1.split_whitespace().skip(11);
            let ticks = fields.next()?.parse::<f64>().ok()? + fields.next()?.parse::<f64>().ok()?;
            Some(Duration::from_secs_f64(ticks / TICKS_PER_S))
        })
        .unwrap_or_else(|| by_the_clock() * threads)
}

fn by_the_clock() -> Duration {
    static FIRST: OnceLock<Instant> = OnceLock::new();
    FIRST.get_or_init(Instant::now).elapsed()
}
